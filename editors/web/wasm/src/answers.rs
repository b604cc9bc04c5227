//! What the page is told, as it is written in JSON.

use fascicle_analysis::features::{completion, places, tokens};
use fascicle_analysis::{Knowledge, Reading};
use fascicle_analysis::{Span, card};
use fascicle_vocab::{EntryId, Vocabulary};
use serde::Serialize;

use crate::units::Units;

/// A range of the text.
#[derive(Clone, Copy, Debug, Serialize)]
pub struct Range {
    from: usize,
    to: usize,
}

impl Range {
    fn new(span: Span, units: &Units) -> Self {
        Self { from: units.unit(span.start), to: units.unit(span.end) }
    }
}

/// Everything that was found in a document, in the order of the text.
#[derive(Debug, Serialize)]
pub struct Read {
    findings: Vec<Finding>,
    names: Vec<Name>,
    claims: usize,
}

#[derive(Debug, Serialize)]
struct Finding {
    #[serde(flatten)]
    range: Range,
    code: &'static str,
    kind: &'static str,
    severity: &'static str,
    message: String,
    reason: Vec<String>,
    fixes: Vec<Fix>,
}

/// A name in the text, and which kind of structure it names.
#[derive(Debug, Serialize)]
struct Name {
    #[serde(flatten)]
    range: Range,
    kind: &'static str,
}

#[derive(Debug, Serialize)]
struct Fix {
    title: String,
    safe: bool,
    edits: Vec<Edit>,
}

#[derive(Debug, Serialize)]
struct Edit {
    #[serde(flatten)]
    range: Range,
    insert: String,
}

impl Read {
    /// What a reading found.
    pub fn new(reading: &Reading, units: &Units, vocabulary: &Vocabulary) -> Self {
        let fix = |fix: &fascicle_analysis::Fix| Fix {
            title: fix.title.clone(),
            safe: fix.safe,
            edits: fix
                .edits
                .iter()
                .map(|edit| Edit { range: Range::new(edit.span, units), insert: edit.text.clone() })
                .collect(),
        };
        let findings = reading
            .findings
            .iter()
            .map(|finding| Finding {
                range: Range::new(finding.span, units),
                code: finding.code,
                kind: finding.kind.word(),
                severity: finding.severity.word(),
                message: finding.message.clone(),
                reason: finding.reason.clone(),
                fixes: finding.fixes.iter().map(fix).collect(),
            })
            .collect();
        let names = tokens::tokens(reading, vocabulary)
            .iter()
            .map(|token| Name { range: Range::new(token.span, units), kind: token.kind.word() })
            .collect();
        Self { findings, names, claims: reading.claims.len() }
    }
}

/// A name in the text.
#[derive(Debug, Serialize)]
pub struct Place {
    #[serde(flatten)]
    range: Range,
    entries: Vec<String>,
}

impl Place {
    /// The name at a byte, the narrowest where several touch it.
    pub fn new(reading: &Reading, at: usize, units: &Units, knowledge: &Knowledge) -> Option<Self> {
        let place = places::at(reading, at)?;
        let entries = place.entries.iter().map(|id| knowledge.vocabulary.entry(*id).id.clone()).collect();
        Some(Self { range: Range::new(place.span, units), entries })
    }
}

/// What can be completed at a place.
#[derive(Debug, Serialize)]
pub struct Completion {
    #[serde(flatten)]
    range: Range,
    items: Vec<Item>,
    more: bool,
}

#[derive(Debug, Serialize)]
struct Item {
    text: String,
    matched: Option<String>,
    /// The entry; segments have none.
    id: Option<String>,
    kind: &'static str,
}

impl Completion {
    /// A completion of the reader.
    pub fn new(completion: completion::Completion, units: &Units, vocabulary: &Vocabulary) -> Self {
        let item = |item: completion::Item| Item {
            text: item.text,
            matched: item.matched,
            id: item.entry.map(|id| vocabulary.entry(id).id.clone()),
            kind: item.entry.map_or("segments", |id| vocabulary.kind(id).word()),
        };
        Self {
            range: Range::new(completion.span, units),
            more: completion.more,
            items: completion.items.into_iter().map(item).collect(),
        }
    }
}

/// The branch tree of a nerve.
#[derive(Debug, Serialize)]
pub struct Branches {
    /// The nerve's name.
    pub nerve: String,
    /// The picture.
    pub svg: String,
}

/// The card of an entry.
#[derive(Debug, Serialize)]
pub struct Card {
    id: String,
    title: String,
    what: String,
    latin: Option<String>,
    names: Vec<OtherName>,
    note: Option<String>,
    sections: Vec<Section>,
    sources: Vec<String>,
    caution: &'static str,
}

#[derive(Debug, Serialize)]
struct OtherName {
    text: String,
    standing: &'static str,
}

#[derive(Debug, Serialize)]
struct Section {
    title: String,
    caution: bool,
    rows: Vec<Row>,
}

#[derive(Debug, Serialize)]
struct Row {
    depth: u8,
    label: Vec<Piece>,
    text: Vec<Piece>,
    variant: bool,
    notes: Vec<String>,
}

#[derive(Debug, Serialize)]
struct Piece {
    text: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    id: Option<String>,
}

impl Card {
    /// The card of an entry.
    pub fn new(vocabulary: &Vocabulary, id: EntryId) -> Self {
        let piece = |piece: &card::Piece| Piece {
            text: piece.text().to_owned(),
            id: match piece {
                card::Piece::Entry(id, _) => Some(vocabulary.entry(*id).id.clone()),
                card::Piece::Text(_) => None,
            },
        };
        let row = |row: &card::Row| Row {
            depth: row.depth,
            label: row.label.iter().map(piece).collect(),
            text: row.text.iter().map(piece).collect(),
            variant: row.variant,
            notes: row.notes.clone(),
        };
        let made = card::card(vocabulary, id);
        Self {
            id: vocabulary.entry(id).id.clone(),
            sections: made
                .sections
                .iter()
                .map(|section| Section {
                    title: section.title.clone(),
                    caution: section.caution,
                    rows: section.rows.iter().map(row).collect(),
                })
                .collect(),
            names: made
                .names
                .into_iter()
                .map(|(standing, text)| OtherName { text, standing: standing.word() })
                .collect(),
            title: made.title,
            what: made.what,
            latin: made.latin,
            note: made.note,
            sources: made.sources,
            caution: card::CAUTION,
        }
    }
}
