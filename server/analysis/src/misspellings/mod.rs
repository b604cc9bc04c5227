//! Misspelled names: found, with what was meant, and nothing else touched.
//!
//! ```text
//! vocabulary ─► index (words by length, sound, Latin family) ─┐
//! word lists ─► guard (right words)                           ├─► find (suspects) ─► rank ─► repairs ─► findings
//! block, tokens, mentions ────────────────────────────────────┘
//! ```
//!
//! A [`Repair`] is data: where the wrong words stand, what should stand there, which entries are meant. The reader may
//! take it as a mention ([`apply`]), so that a statement about a misspelled name is understood; [`findings`] tells the
//! author.

mod alone;
mod distance;
mod find;
mod gaps;
mod guard;
mod incomplete;
mod index;
mod key;
mod latin;
mod order;
mod plausible;
mod rank;
mod settle;
mod shorter;
mod sound;
mod suspect;
mod triggers;
mod walk;
mod word;

use std::sync::Arc;

use fascicle_model::{EntryId, Standing};
use rustc_hash::FxHashSet;

pub use guard::{Known, RightWords};
pub use index::SpellingIndex;
pub use sound::sound;
pub use suspect::{Replacement, Slip, Suspect};

use crate::blocks::{BlockIx, BlockKind, Blocks};
use crate::findings::{Candidate, Edit, Finding, FindingKind, Fix, Severity};
use crate::knowledge::Knowledge;
use crate::memo::{Kept, fingerprint_of};
use crate::mentions::{Mention, Mentions};
use crate::names::NameRef;
use crate::settings::Settings;
use crate::text::{Plain, Span};
use crate::words::{fold, tokens};

use find::Finder;
use suspect::Guess;
use word::Words;

/// The code of a finding about a name.
pub const MISSPELLED_NAME: &str = "misspelled-name";
/// The code of a finding about a word of the field that is no name by itself.
pub const MISSPELLED_WORD: &str = "misspelled-word";

/// The code of a finding about a name whose words are all right and in another order.
pub const WORD_ORDER: &str = "word-order";

/// The code of a finding about a name of which a word is left out.
pub const INCOMPLETE_NAME: &str = "incomplete-name";

/// How far the best candidate must be ahead to be taken without asking.
const CLEARLY_AHEAD: f64 = 0.04;
/// No more candidates are told.
const MOST_CANDIDATES: usize = 6;

/// A misspelled name with what was probably meant.
#[derive(Clone, Debug, PartialEq)]
pub struct Repair {
    /// The block.
    pub block: BlockIx,
    /// The tokens of the block that the name takes.
    pub tokens: (usize, usize),
    /// Where the name stands in the visible text of the block.
    pub span: Span,
    /// What has to change for the best candidate, in order, in the visible text.
    pub replacements: Vec<Replacement>,
    /// Names that the best candidate is; none for a word that is no name by itself.
    pub names: Vec<NameRef>,
    /// The best candidate speaks of several.
    pub plural: bool,
    /// The standing of the name that was meant.
    pub standing: Standing,
    /// The best candidate is clearly ahead of the next.
    pub sure: bool,
    /// What may be meant, the likeliest first.
    pub candidates: Vec<Candidate>,
}

impl Repair {
    /// The repair as a mention of what was meant.
    pub fn mention(&self) -> Option<Mention> {
        let mut candidates: Vec<EntryId> = self.names.iter().map(|name| name.entry).collect();
        candidates.dedup();
        (!candidates.is_empty()).then_some(Mention {
            span: self.span,
            tokens: self.tokens,
            candidates,
            standing: self.standing,
            plural: self.plural,
            shared: false,
        })
    }
}

impl Repair {
    /// Only a hyphen is too much (*sterno-cleido-mastoid*), which many write and nobody misreads.
    fn is_style(&self) -> bool {
        self.replacements.iter().all(|one| one.slip == Slip::Hyphenated)
    }
}

/// Finds the misspelled names of a document.
pub fn repairs(blocks: &Blocks, mentions: &[Mentions], knowledge: &Knowledge, settings: &Settings) -> Vec<Repair> {
    repairs_again(blocks, mentions, knowledge, settings, &mut Kept::default(), &|| true).unwrap_or_default()
}

/// As [`repairs`]; what is suspect in a text that was looked at before is not looked for again. The mentions are those
/// that [`crate::mentions::mentions`] has found in the texts of the blocks.
pub fn repairs_again(
    blocks: &Blocks,
    mentions: &[Mentions],
    knowledge: &Knowledge,
    settings: &Settings,
    kept: &mut Kept<Arc<Vec<Suspect>>>,
    is_wanted: &dyn Fn() -> bool,
) -> Option<Vec<Repair>> {
    let course: FxHashSet<String> = settings
        .words
        .iter()
        .flat_map(|word| tokens(word).into_iter().map(|token| fold(token.span.of(word))).collect::<Vec<_>>())
        .collect();
    let mut list = Vec::new();
    let in_subject = rank::is_anatomy(mentions);
    let (names, spelling) = (&knowledge.names, &knowledge.spelling);
    let words = Words::new(names, spelling, &course);
    let mut subject = rank::Subject::new(blocks, mentions, knowledge);
    for (at, (block, mentions)) in blocks.list.iter().zip(mentions).enumerate() {
        if !is_wanted() {
            return None;
        }
        if block.kind == BlockKind::Title {
            continue; // front matter
        }
        let key = fingerprint_of(&block.plain.text, &(&block.plain.marks, in_subject, &settings.words));
        let suspects =
            kept.of(key, || Arc::new(Finder::new(&block.plain, mentions, knowledge, &words, in_subject).suspects()));
        for suspect in &*suspects {
            let mut guesses = suspect.guesses.clone();
            subject.rank(at, &mut guesses);
            let look = |plain: &Plain, mentions: &Mentions| {
                Finder::new(plain, mentions, knowledge, &words, in_subject).suspects()
            };
            if let Some(best) = guesses.first_mut() {
                settle::settle(best, &block.plain, mentions, knowledge, look);
            }
            list.extend(repair(at, &block.plain, &guesses, knowledge));
        }
    }
    Some(list)
}

/// Adds what was meant to the mentions of each block, in place of mentions of parts of it.
pub fn apply(mentions: &mut [Mentions], repairs: &[Repair]) {
    for repair in repairs.iter().filter(|repair| repair.sure) {
        let (Some(mention), Some(mentions)) = (repair.mention(), mentions.get_mut(repair.block)) else { continue };
        mentions.list.retain(|other| !other.span.overlaps(mention.span));
        let place = mentions.list.partition_point(|other| other.span.start < mention.span.start);
        mentions.list.insert(place, mention);
    }
}

/// What is told of the misspelled names of a document.
pub fn findings(blocks: &Blocks, repairs: &[Repair]) -> Vec<Finding> {
    let plain = |repair: &Repair| blocks.list.get(repair.block).map(|block| &block.plain);
    let told = repairs.iter().filter(|repair| !repair.is_style());
    told.filter_map(|repair| Some(finding(repair, plain(repair)?))).collect()
}

fn repair(block: BlockIx, plain: &Plain, guesses: &[Guess], knowledge: &Knowledge) -> Option<Repair> {
    let best = guesses.first()?;
    let mut candidates: Vec<Candidate> = Vec::new();
    let mut runner_up: Option<f64> = None;
    for guess in guesses {
        if runner_up.is_none() && wording(guess) != wording(best) {
            runner_up = Some(guess.score);
        }
        let shown = |entry: EntryId, name: &str| Candidate {
            name: name.to_owned(),
            id: knowledge.vocabulary.entry(entry).id.clone(),
            distance: guess.distance(),
            sounds_alike: guess.sounds_alike(),
            score: (guess.score.clamp(0.0, 1.0) * 1000.0).round() / 1000.0,
        };
        if guess.names.is_empty() {
            let text = wording(guess).into_iter().map(|(_, text)| text).collect::<Vec<_>>().join(" ");
            let lone = Candidate { name: text, id: String::new(), ..shown(EntryId(0), "") };
            candidates.push(lone);
        }
        for name in &guess.names {
            let entry = knowledge.vocabulary.entry(name.entry);
            let Some(name_text) = entry.names.get(name.name as usize).map(|name| &*name.text) else { continue };
            if !candidates.iter().any(|known| known.id == entry.id) {
                candidates.push(shown(name.entry, name_text));
            }
        }
    }
    candidates.truncate(MOST_CANDIDATES);
    let standing = best
        .names
        .first()
        .and_then(|name| knowledge.vocabulary.entry(name.entry).names.get(name.name as usize))
        .map_or(Standing::Exact, |name| name.standing);
    let ahead = runner_up.is_none_or(|score| best.score - score >= CLEARLY_AHEAD);
    let sure =
        ahead && !best.has(Slip::CommonWord) && !best.has(Slip::Order) && !best.has(Slip::Missing) && best.score >= 0.6;
    let replacements = best
        .replacements
        .iter()
        .map(|one| Replacement { text: cased(one, best, plain, knowledge), ..one.clone() })
        .collect();
    Some(Repair {
        block,
        tokens: best.tokens,
        span: best.span,
        replacements,
        names: best.names.clone(),
        plural: best.plural,
        standing,
        sure,
        candidates,
    })
}

/// What a guess puts where.
fn wording(guess: &Guess) -> Vec<(Span, &str)> {
    guess.replacements.iter().map(|one| (one.span, &*one.text)).collect()
}

/// A replacement with the accents and capitals of the name, and with the capitals of what was written.
fn cased(one: &Replacement, guess: &Guess, plain: &Plain, knowledge: &Knowledge) -> String {
    let written = one.span.of(&plain.text);
    let own = guess.names.first().and_then(|name| {
        let name = knowledge.vocabulary.entry(name.entry).names.get(name.name as usize)?;
        tokens(&name.text).into_iter().map(|token| token.span.of(&name.text)).find(|word| fold(word) == one.text)
    });
    let text = own.unwrap_or(&one.text);
    let capitals = written.chars().filter(|c| c.is_uppercase()).count();
    let letters = written.chars().filter(|c| c.is_alphabetic()).count();
    if capitals == letters && letters > 1 {
        text.to_uppercase()
    } else if written.starts_with(char::is_uppercase) {
        let mut chars = text.chars();
        chars.next().map_or_else(String::new, |first| first.to_uppercase().chain(chars).collect())
    } else {
        text.to_owned()
    }
}

fn finding(repair: &Repair, plain: &Plain) -> Finding {
    let wrong = repair.replacements.iter().map(|one| one.span).reduce(Span::cover).unwrap_or(repair.span);
    let written = repair.span.of(&plain.text);
    let right = put_right(repair, plain);
    let word_alone = repair.names.is_empty();
    let has = |slip: Slip| repair.replacements.iter().any(|one| one.slip == slip);
    let two = repair.tokens.1 - repair.tokens.0 == 2;
    let mild = has(Slip::CommonWord) || has(Slip::RareWord) && two && plain_kind(repair, plain);
    let (order, missing) = (has(Slip::Order), has(Slip::Missing));
    let message = if missing {
        format!("A word of the name seems to be left out in “{written}”; did you mean “{right}”?")
    } else if order {
        format!("The words of “{written}” are out of order; the name is “{right}”.")
    } else if mild {
        format!("“{written}” is no name; did you mean “{right}”?")
    } else if has(Slip::WrongForm) && word_alone {
        format!("“{written}” has another plural in anatomy: “{right}”.")
    } else if has(Slip::WrongForm) && repair.replacements.len() == 1 {
        format!("“{written}” has the wrong form of a word; the name is “{right}”.")
    } else {
        format!("“{written}” is misspelled; “{right}” is probably meant.")
    };
    let mut fixes = Vec::new();
    if let Some(edits) = edits(&repair.replacements, plain) {
        fixes.push(Fix { title: format!("Write “{right}”"), edits, safe: repair.sure });
    }
    Finding {
        code: if missing {
            INCOMPLETE_NAME
        } else if order {
            WORD_ORDER
        } else if word_alone {
            MISSPELLED_WORD
        } else {
            MISSPELLED_NAME
        },
        kind: FindingKind::Name,
        severity: if mild || order || missing || word_alone && has(Slip::WrongForm) {
            Severity::Hint
        } else {
            Severity::Warning
        },
        span: plain.to_source(wrong),
        message,
        reason: Vec::new(),
        related: Vec::new(),
        fixes,
        candidates: repair.candidates.clone(),
    }
}

/// Whether the one right word of a name of two only tells its kind ("fascial *nerve*").
fn plain_kind(repair: &Repair, plain: &Plain) -> bool {
    let words = tokens(repair.span.of(&plain.text));
    words.iter().any(|word| crate::lexicon::is_kind_noun(word.span.of(repair.span.of(&plain.text))))
}

/// The name with its wrong words replaced.
fn put_right(repair: &Repair, plain: &Plain) -> String {
    let mut out = String::new();
    let mut at = repair.span.start;
    for one in &repair.replacements {
        out.push_str(Span::new(at, one.span.start).of(&plain.text));
        out.push_str(&one.text);
        at = one.span.end;
    }
    out.push_str(Span::new(at, repair.span.end).of(&plain.text));
    out
}

/// The changes to the source. A word that markup runs through is changed only where its letters differ; where markup
/// stands between these, there is no edit.
fn edits(replacements: &[Replacement], plain: &Plain) -> Option<Vec<Edit>> {
    replacements
        .iter()
        .map(|one| {
            if plain.is_verbatim(one.span) {
                return Some(Edit { span: plain.to_source(one.span), text: one.text.clone() });
            }
            let written = one.span.of(&plain.text);
            let head: usize =
                written.chars().zip(one.text.chars()).take_while(|(a, b)| a == b).map(|(c, _)| c.len_utf8()).sum();
            let (written, text) = (written.get(head..)?, one.text.get(head..)?);
            let backwards = written.chars().rev().zip(text.chars().rev());
            let tail: usize = backwards.take_while(|(a, b)| a == b).map(|(c, _)| c.len_utf8()).sum();
            let inner = Span::new(one.span.start + head, one.span.end - tail);
            let fits = !inner.is_empty() && plain.is_verbatim(inner);
            fits.then(|| Edit { span: plain.to_source(inner), text: text[..text.len() - tail].to_owned() })
        })
        .collect()
}
