//! Mutation of what is true: one part of a statement that the reader found right is swapped for another structure, or
//! other segments, that the graph says makes it false; the reader ought to tell.
//!
//! The graph decides what is false, so this measures the reading: whether a statement that was understood is understood
//! with another name in it. Swaps are random, and the same in every run.

use fascicle_analysis::claims::{Claim, ClaimKind, What};
use fascicle_analysis::reading::{self, Knowledge};
use fascicle_analysis::verdicts::{self, Verdict};
use fascicle_analysis::{FindingKind, Form, Settings, Span};
use fascicle_vocab::{EntryId, Segments};

use crate::corpus::{Document, Scored, Truth};

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

/// A small generator of numbers that look random (xorshift), so that every run swaps alike.
struct Dice(u64);

impl Dice {
    fn below(&mut self, limit: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        usize::try_from(self.0 % limit.max(1) as u64).unwrap_or(0)
    }
}

/// Up to `each` mutants of every part of every true statement of a document that was read as agreeing.
pub fn mutants(scored: &Scored, knowledge: &Knowledge, each: usize) -> Vec<Mutant> {
    let mut dice = Dice(0x9e37_79b9_7f4a_7c15 ^ scored.document.text.len() as u64);
    let mut mutants = Vec::new();
    for (mark, told) in &scored.marks {
        if mark.truth != Truth::True || told.iter().any(|told| !told.agrees() || told.claim.negated) {
            continue;
        }
        for told in told.iter().filter(|told| told.claim.kind == mark.kind) {
            for at in 0..told.claim.parts.len() {
                for _ in 0..each {
                    mutants.extend(mutant(scored.document, mark.span, &told.claim, at, knowledge, &mut dice));
                }
            }
        }
    }
    mutants
}

/// Swaps one part of a claim; `None` if it is not written as a name of its own inside the mark, or nothing false is found.
fn mutant(
    document: &Document,
    mark: Span,
    claim: &Claim,
    at: usize,
    knowledge: &Knowledge,
    dice: &mut Dice,
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
                let other = other_entry(id, was, knowledge, dice)?;
                (What::Entry(vec![other]), knowledge.vocabulary.name(other).to_owned())
            }
            What::Segments(..) => {
                let from = u8::try_from(dice.below(27)).ok()?;
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
    let told = reading::read(&text, Form::Markdown, knowledge, &Settings::default())
        .findings
        .iter()
        .any(|finding| matches!(finding.kind, FindingKind::Claim | FindingKind::Item) && finding.span.overlaps(grown));
    Some(Mutant {
        kind: claim.kind,
        role: part.role.word(),
        was: was.to_owned(),
        is,
        line: document.line(part.span.start),
        told,
    })
}

/// Another entry of the same kind and, if there is one, region, if the text is a full name of this one.
fn other_entry(id: EntryId, text: &str, knowledge: &Knowledge, dice: &mut Dice) -> Option<EntryId> {
    let vocabulary = &knowledge.vocabulary;
    let entry = vocabulary.entry(id);
    let text = text.to_lowercase();
    if !entry.names.iter().any(|name| name.text.to_lowercase() == text) {
        return None;
    }
    let others: Vec<EntryId> =
        vocabulary.iter().filter(|(other, e)| *other != id && e.kind == entry.kind).map(|(other, _)| other).collect();
    let near: Vec<EntryId> =
        others.iter().copied().filter(|other| vocabulary.entry(*other).region == entry.region).collect();
    // Half of the swaps stay in the region, as lecturers' slips do.
    let pool = if near.is_empty() || dice.below(2) == 0 { &others } else { &near };
    pool.get(dice.below(pool.len())).copied()
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}
