//! Mutation of what is true: one part of a statement that the reader found right is swapped for another structure, or
//! other segments, that the graph says makes it false; the reader ought to tell.
//!
//! The graph decides what is false, so this measures the reading: whether a statement that was understood is understood
//! with another name in it. Swaps come from a seed, so that every run makes the same.

use fascicle_analysis::claims::phrases::verb_forms;
use fascicle_analysis::claims::{Claim, ClaimKind, What};
use fascicle_analysis::verdicts::{self, Verdict};
use fascicle_analysis::{FindingKind, Form, Settings, Span};
use fascicle_analysis::{Knowledge, reading};
use fascicle_vocab::{Entry, EntryId, Segments};

use crate::corpus::{Document, Scored, Truth};
use crate::slips::Random;

/// A true statement made false.
#[derive(Clone, Debug)]
pub struct Mutant {
    /// What it is about.
    pub kind: ClaimKind,
    /// The part that was swapped, as outputs call it.
    pub role: &'static str,
    /// What stood there.
    pub was: String,
    /// What was put there.
    pub is: String,
    /// The line of the document, from 1.
    pub line: usize,
    /// The reader told that it is false.
    pub told: bool,
}

/// Up to `each` mutants of every part of every true statement of a document that was read as agreeing. What is made of a
/// document hangs on the seed and on this document alone.
pub fn mutants(scored: &Scored, knowledge: &Knowledge, each: usize, seed: u64) -> Vec<Mutant> {
    let mut random = Random::new(seed ^ scored.document.text.len() as u64);
    let mut mutants = Vec::new();
    // Where something is told already, nothing shows whether the swap was noticed.
    let before = told_of(&scored.document.text, knowledge);
    for (mark, told) in &scored.marks {
        if before.iter().any(|span| span.overlaps(mark.span)) {
            continue;
        }
        if mark.truth != Truth::True || told.iter().any(|told| !told.agrees() || told.claim.negated) {
            continue;
        }
        for told in told.iter().filter(|told| told.claim.kind == mark.kind) {
            for at in 0..told.claim.parts.len() {
                for _ in 0..each {
                    mutants.extend(mutant(scored.document, mark.span, &told.claim, at, knowledge, &mut random));
                }
            }
        }
    }
    mutants
}

/// Where a text is told to be wrong.
fn told_of(text: &str, knowledge: &Knowledge) -> Vec<Span> {
    let findings = reading::read(text, Form::Markdown, knowledge, &Settings::default()).findings;
    let of_claims = findings.iter().filter(|finding| matches!(finding.kind, FindingKind::Claim | FindingKind::Item));
    of_claims.map(|finding| finding.span).collect()
}

/// Swaps one part of a claim; `None` if it is not written as a name of its own inside the mark, or nothing false is found.
fn mutant(
    document: &Document,
    mark: Span,
    claim: &Claim,
    at: usize,
    knowledge: &Knowledge,
    random: &mut Random,
) -> Option<Mutant> {
    let part = claim.parts.get(at)?;
    let was = part.span.of(&document.text);
    if !mark.contains(part.span) {
        return None;
    }
    let mut false_claim = claim.clone();
    let is = (0..40).find_map(|_| {
        let (what, name) = match &part.what {
            What::Entry(ids) => {
                let id = *ids.first()?;
                let (other, name) = other_entry(id, was, knowledge, random)?;
                (What::Entry(vec![other]), name)
            }
            What::Segments(..) => {
                let from = u8::try_from(random.below(27)).ok()?;
                let set = Segments::range(from, from + 1);
                (What::Segments(set, Segments::default()), set.to_string())
            }
            What::Word(_) | What::Number(_) | What::Sign(_) => return None,
        };
        false_claim.parts.get_mut(at)?.what = what;
        (verdicts::judge(&false_claim, &knowledge.vocabulary).verdict == Verdict::Contradicts).then_some(name)
    })?;
    let is = if was.starts_with(char::is_uppercase) { capital(&is) } else { is };
    let mut text = document.text.clone();
    text.replace_range(part.span.start..part.span.end, &is);
    let grown = Span::new(mark.start, mark.end - was.len() + is.len());
    let told = told_of(&text, knowledge).iter().any(|span| span.overlaps(grown));
    Some(Mutant {
        kind: claim.kind,
        role: part.role.word(),
        was: was.to_owned(),
        is,
        line: document.line(part.span.start),
        told,
    })
}

/// Another entry of the same kind and, if there is one, region, with its name in the form of the text: a name where the
/// text is a name, the same form of the verb where it is a verb.
fn other_entry(id: EntryId, text: &str, knowledge: &Knowledge, random: &mut Random) -> Option<(EntryId, String)> {
    let vocabulary = &knowledge.vocabulary;
    let entry = vocabulary.entry(id);
    let text = text.to_lowercase();
    let is_name = entry.names.iter().any(|name| name.text.to_lowercase() == text);
    let form = if is_name { None } else { Some(verbs(entry).iter().position(|form| *form == text)?) };
    let others: Vec<EntryId> =
        vocabulary.iter().filter(|(other, e)| *other != id && e.kind == entry.kind).map(|(other, _)| other).collect();
    let near: Vec<EntryId> =
        others.iter().copied().filter(|other| vocabulary.entry(*other).region == entry.region).collect();
    // Half of the swaps stay in the region, as lecturers' slips do.
    let pool = if near.is_empty() || random.below(2) == 0 { &others } else { &near };
    let other = *random.of(pool)?;
    let name = match form {
        None => vocabulary.name(other).to_owned(),
        Some(form) => verbs(vocabulary.entry(other)).into_iter().nth(form)?,
    };
    Some((other, name))
}

/// The forms in which a movement is written as a verb, and the word for the muscle that does it.
fn verbs(entry: &Entry) -> Vec<String> {
    let Some((verb, agent)) = &entry.verb else { return Vec::new() };
    verb_forms(verb).into_iter().flatten().chain([agent.clone(), format!("{agent}s")]).collect()
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}
