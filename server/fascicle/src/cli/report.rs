//! The shapes of the JSON outputs of `check` and `claims`.
//!
//! They are a contract: `version` counts up when a field changes its meaning or goes; a new field may come at any time.
//! `schemas/` holds the JSON Schemas made from these types. Bytes count from the beginning of the file (a byte order mark
//! included), ranges are lines and UTF-16 units from 0, as in the language server protocol.

use fascicle_analysis::claims::{Claim, ClaimKind, PartRole, What};
use fascicle_analysis::lines::{Encoding, LineIndex};
use fascicle_analysis::verdicts::{Judgement, Verdict};
use fascicle_analysis::{Candidate, Edit, Finding, FindingKind, Fix, Severity, Span};
use fascicle_vocab::{Segments, Vocabulary};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::Serialize;

/// The version of the shapes.
pub const VERSION: u32 = 1;

pub(super) fn version_schema(_: &mut SchemaGenerator) -> Schema {
    json_schema!({ "const": VERSION })
}

fn kind_schema(_: &mut SchemaGenerator) -> Schema {
    let all = [
        FindingKind::Name,
        FindingKind::Claim,
        FindingKind::Course,
        FindingKind::Item,
        FindingKind::Block,
        FindingKind::Setup,
    ];
    json_schema!({ "enum": all.map(FindingKind::word) })
}

fn severity_schema(_: &mut SchemaGenerator) -> Schema {
    let all = [Severity::Error, Severity::Warning, Severity::Information, Severity::Hint];
    json_schema!({ "enum": all.map(Severity::word) })
}

fn claim_kind_schema(_: &mut SchemaGenerator) -> Schema {
    json_schema!({ "enum": ClaimKind::ALL.map(ClaimKind::word) })
}

fn verdict_schema(_: &mut SchemaGenerator) -> Schema {
    let all = [Verdict::Agrees, Verdict::Variant, Verdict::LessExact, Verdict::Contradicts, Verdict::Unknown];
    json_schema!({ "enum": all.map(Verdict::word) })
}

/// What `fascicle check --format json` writes.
#[derive(Debug, Serialize, JsonSchema)]
pub struct CheckReport {
    /// Version of this shape.
    #[schemars(schema_with = "version_schema")]
    pub version: u32,
    /// Every document that was read, in order.
    pub files: Vec<FileFindings>,
}

/// The findings of one document.
#[derive(Debug, Serialize, JsonSchema)]
pub struct FileFindings {
    /// The path as it was given, `-` for standard input.
    pub path: String,
    /// In the order of the text.
    pub findings: Vec<FindingOut>,
}

/// One finding.
#[derive(Debug, Serialize, JsonSchema)]
pub struct FindingOut {
    /// Plain words in kebab-case.
    pub code: String,
    /// What it is about.
    #[schemars(schema_with = "kind_schema")]
    pub kind: &'static str,
    /// How serious it is.
    #[schemars(schema_with = "severity_schema")]
    pub severity: &'static str,
    /// First byte, and the byte after the last.
    pub bytes: [usize; 2],
    /// The same as lines and UTF-16 units.
    pub range: RangeOut,
    /// What stands there.
    pub text: String,
    /// One sentence.
    pub message: String,
    /// The steps of the path through the graph, or other reasons.
    pub reason: Vec<String>,
    /// What may be done, the likeliest first.
    pub fixes: Vec<FixOut>,
    /// For a name: what it may mean, the likeliest first.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub candidates: Vec<CandidateOut>,
    /// Other places of the document that belong to it.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub related: Vec<RelatedOut>,
    /// Places of the course, in this document or another, that belong to it.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub elsewhere: Vec<ElsewhereOut>,
}

/// A range of lines and UTF-16 units.
#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
pub struct RangeOut {
    /// Where it begins.
    pub start: PositionOut,
    /// Where it ends; this place does not belong to it.
    pub end: PositionOut,
}

/// A place in a text.
#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
pub struct PositionOut {
    /// Line, from 0.
    pub line: u32,
    /// UTF-16 units from the beginning of the line.
    pub character: u32,
}

/// Something that may be done.
#[derive(Debug, Serialize, JsonSchema)]
pub struct FixOut {
    /// What it does.
    pub title: String,
    /// Its changes, none overlapping.
    pub edits: Vec<EditOut>,
}

/// A change.
#[derive(Debug, Serialize, JsonSchema)]
pub struct EditOut {
    /// What is replaced.
    pub bytes: [usize; 2],
    /// By what.
    pub text: String,
}

/// A name that a misspelling may mean.
#[derive(Debug, Serialize, JsonSchema)]
pub struct CandidateOut {
    /// The name.
    pub name: String,
    /// Identifier of the entry.
    pub id: String,
    /// Edits between what was written and the name.
    pub distance: u32,
    /// Both sound alike.
    pub sounds_alike: bool,
    /// From 0 to 1.
    pub score: f64,
}

/// Another place that belongs to a finding.
#[derive(Debug, Serialize, JsonSchema)]
pub struct RelatedOut {
    /// Where.
    pub bytes: [usize; 2],
    /// The same as lines and UTF-16 units.
    pub range: RangeOut,
    /// Why it belongs here.
    pub message: String,
}

/// A place of the course that belongs to a finding.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct ElsewhereOut {
    /// The document.
    pub path: String,
    /// Where in it.
    pub bytes: [usize; 2],
    /// The same as lines and UTF-16 units.
    pub range: RangeOut,
    /// What it says.
    pub message: String,
}

/// What `fascicle claims --format json` writes.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ClaimsReport {
    /// Version of this shape.
    #[schemars(schema_with = "version_schema")]
    pub version: u32,
    /// Every document that was read, in order.
    pub files: Vec<FileClaims>,
}

/// The claims of one document.
#[derive(Debug, Serialize, JsonSchema)]
pub struct FileClaims {
    /// The path as it was given, `-` for standard input.
    pub path: String,
    /// In the order of the text.
    pub claims: Vec<ClaimOut>,
    /// How much of the document was read into claims.
    pub sentences: SentencesOut,
}

/// One claim.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ClaimOut {
    /// What it is about.
    #[schemars(schema_with = "claim_kind_schema")]
    pub kind: &'static str,
    /// Where it stands.
    pub bytes: [usize; 2],
    /// Its parts.
    pub parts: Vec<PartOut>,
    /// What the graph says.
    #[schemars(schema_with = "verdict_schema")]
    pub verdict: &'static str,
    /// One sentence; empty where there is nothing to say.
    pub why: String,
    /// The path through the graph.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub path: Vec<String>,
    /// It says that this is not so.
    #[serde(skip_serializing_if = "is_false")]
    pub negated: bool,
    /// It says that this may be so.
    #[serde(skip_serializing_if = "is_false")]
    pub hedged: bool,
}

/// A part of a claim.
#[derive(Debug, Serialize, JsonSchema)]
pub struct PartOut {
    /// What it plays in the claim.
    pub role: &'static str,
    /// Identifier of the entry; for segments their names with blanks between; else the word or number.
    pub id: String,
    /// Where it stands.
    pub bytes: [usize; 2],
    /// Further entries that the name can mean, where nothing decides.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub or: Vec<String>,
    /// Segments told as lesser ones.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub lesser: String,
}

/// How many sentences could have been read, and how many were.
#[derive(Clone, Copy, Debug, Default, Serialize, JsonSchema)]
pub struct SentencesOut {
    /// Sentences (or cells, bullets, captions) with two or more names.
    pub with_names: usize,
    /// Those of them of which a claim was read.
    pub read: usize,
}

#[allow(clippy::trivially_copy_pass_by_ref)] // the signature that serde asks for
const fn is_false(value: &bool) -> bool {
    !*value
}

/// A range as a pair of bytes.
pub const fn bytes(span: Span) -> [usize; 2] {
    [span.start, span.end]
}

/// A range of a text in lines and UTF-16 units.
pub fn range(span: Span, text: &str, index: &LineIndex) -> RangeOut {
    let position = |at: usize| {
        let found = index.position(at, text, Encoding::Utf16);
        PositionOut { line: found.line, character: found.column }
    };
    RangeOut { start: position(span.start), end: position(span.end) }
}

impl FindingOut {
    /// A finding of a text.
    pub fn new(finding: &Finding, elsewhere: &[ElsewhereOut], text: &str, index: &LineIndex) -> Self {
        Self {
            elsewhere: elsewhere.to_vec(),
            code: finding.code.to_string(),
            kind: finding.kind.word(),
            severity: finding.severity.word(),
            bytes: bytes(finding.span),
            range: range(finding.span, text, index),
            text: finding.span.of(text).to_owned(),
            message: finding.message.clone(),
            reason: finding.reason.clone(),
            fixes: finding.fixes.iter().map(FixOut::from).collect(),
            candidates: finding.candidates.iter().map(CandidateOut::from).collect(),
            related: finding
                .related
                .iter()
                .map(|(span, message)| RelatedOut {
                    bytes: bytes(*span),
                    range: range(*span, text, index),
                    message: message.clone(),
                })
                .collect(),
        }
    }
}

impl From<&Fix> for FixOut {
    fn from(fix: &Fix) -> Self {
        Self { title: fix.title.clone(), edits: fix.edits.iter().map(EditOut::from).collect() }
    }
}

impl From<&Edit> for EditOut {
    fn from(edit: &Edit) -> Self {
        Self { bytes: bytes(edit.span), text: edit.text.clone() }
    }
}

impl From<&Candidate> for CandidateOut {
    fn from(candidate: &Candidate) -> Self {
        Self {
            name: candidate.name.clone(),
            id: candidate.id.clone(),
            distance: candidate.distance,
            sounds_alike: candidate.sounds_alike,
            score: candidate.score,
        }
    }
}

impl ClaimOut {
    /// A judged claim.
    pub fn new(claim: &Claim, judgement: &Judgement, vocabulary: &Vocabulary) -> Self {
        let part = |part: &fascicle_analysis::claims::Part| {
            let mut out = PartOut {
                role: PartRole::word(part.role),
                id: String::new(),
                bytes: bytes(part.span),
                or: Vec::new(),
                lesser: String::new(),
            };
            match &part.what {
                What::Entry(ids) => {
                    let mut ids = ids.iter().map(|id| vocabulary.entry(*id).id.clone());
                    out.id = ids.next().unwrap_or_default();
                    out.or = ids.collect();
                }
                What::Segments(main, lesser) => {
                    out.id = segment_list(*main);
                    out.lesser = segment_list(*lesser);
                }
                What::Word(word) => out.id.push_str(word),
                What::Sign(sign) => out.id.push_str(sign),
                What::Number(number) => out.id = number.to_string(),
            }
            out
        };
        Self {
            kind: claim.kind.word(),
            bytes: bytes(claim.span),
            parts: claim.parts.iter().map(part).collect(),
            verdict: judgement.verdict.word(),
            why: judgement.why.clone(),
            path: judgement.path.clone(),
            negated: claim.negated,
            hedged: claim.hedged,
        }
    }
}

/// Every segment of a set by its name, with blanks between: what a program compares most easily.
pub fn segment_list(segments: Segments) -> String {
    let names: Vec<String> = segments.iter().map(Segments::name).collect();
    names.join(" ")
}
