//! Whether a guess is to be told: enough of the name is right, no true name stands there, and what is written is not right in
//! another reading. What is in doubt is left alone.

use fascicle_model::{EntryId, Kind};
use smallvec::SmallVec;

use crate::lexicon;
use crate::text::Span;
use crate::words::fold_into;

use super::find::Finder;
use super::guard::Known;
use super::index::SHORTEST;
use super::latin;
use super::suspect::{Guess, Replacement, Slip};
use super::word::Status;

impl Finder<'_> {
    /// Whether a name is plausibly meant: enough of it is right, and no true name stands there.
    pub(super) fn is_plausible(&self, guess: &Guess) -> bool {
        let words = guess.exact as usize + guess.replacements.len();
        let (start, end) = guess.tokens;
        let only_unknown = !guess.has(Slip::WrongForm) && !guess.has(Slip::RareWord) && !guess.has(Slip::CommonWord);
        for mention in &self.mentions.list {
            let (from, to) = mention.tokens;
            if from >= end || to <= start {
                continue;
            }
            let inside = start <= from && to <= end && (to - from) < (end - start);
            if !inside {
                return false;
            }
            // A name of its own before a noun of kind ("subscapularis nerve") is no wrong form.
            let next = self.text(to).to_lowercase();
            let is_led = from > start && self.status(from - 1) == Status::Vocabulary && guess.exact >= 2;
            let is_muscle = |id: &EntryId| self.vocabulary.kind(*id) == Kind::Muscle;
            let is_owner = !lexicon::is_nerve_noun(&next) || mention.candidates.iter().any(is_muscle);
            if !only_unknown && lexicon::is_kind_noun(&next) && is_owner && !is_led {
                return false;
            }
        }
        let place = |span: Span| self.mentions.tokens.partition_point(|token| token.span.start < span.start);
        if guess.replacements.iter().any(|replacement| self.is_no_prose(place(replacement.span))) {
            return false;
        }
        let support: f64 = (start..end)
            .filter(|at| {
                self.status(*at) == Status::Vocabulary
                    && !guess.replacements.iter().any(|replacement| {
                        self.mentions.tokens.get(*at).is_some_and(|token| replacement.span.overlaps(token.span))
                    })
            })
            .map(|at| weight(self.text(at)))
            .sum();
        guess.replacements.iter().all(|replacement| match replacement.slip {
            Slip::Misspelled if words == 1 => {
                self.is_strong(replacement.span, &replacement.text, replacement.distance, replacement.sounds_alike)
            }
            Slip::Misspelled if support >= 0.9 || guess.explains_two() => true,
            Slip::Misspelled if self.in_subject && edits_heard(replacement) <= 1 => true,
            Slip::Misspelled => {
                let least = match edits_heard(replacement) {
                    1 if support >= 0.5 => 4,
                    1 => 6,
                    2 if support >= 0.5 => 7,
                    2 => 9,
                    _ => 12,
                };
                replacement.text.len() >= least
            }
            Slip::Joined | Slip::Split | Slip::Hyphenated | Slip::Order | Slip::Missing => true,
            Slip::SplitWords => support >= 0.7,
            Slip::WrongForm => {
                // A neighbour that is misspelled by one letter speaks for the name nearly as well as a right one.
                let others = guess.replacements.iter().filter(|one| one.slip == Slip::Misspelled && one.distance == 1);
                self.is_wrong_form(replacement, guess, words, support + 0.7 * f64::from(others.count() as u32))
            }
            Slip::RareWord => {
                support >= if replacement.span.len() > SHORTEST { 0.5 } else { 1.0 }
                    && replacement.text.len() > SHORTEST
            }
            Slip::CommonWord => {
                support >= if replacement.span.len() > SHORTEST { 0.5 } else { 1.3 }
                    && replacement.text.len() > SHORTEST
                    && !is_number(replacement.span.of(&self.plain.text))
            }
        }) && !guess.replacements.iter().all(|one| {
            matches!(one.slip, Slip::WrongForm | Slip::CommonWord | Slip::RareWord)
                && latin::is_number_pair(one.span.of(&self.plain.text), &one.text)
        })
    }

    /// Whether a form of a word is wrong in its place, and no other reading of it is right.
    fn is_wrong_form(&self, one: &Replacement, guess: &Guess, words: usize, support: f64) -> bool {
        let mut written = String::new();
        fold_into(one.span.of(&self.plain.text), &mut written);
        let tokens = &self.mentions.tokens;
        let at = tokens.partition_point(|token| token.span.start < one.span.start);
        let is_last = at + 1 >= guess.tokens.1;
        let before = (at > guess.tokens.0).then(|| self.text(at - 1).to_lowercase());
        let behind: SmallVec<[&str; 2]> =
            (at + 1..guess.tokens.1.min(at + 3)).map(|place| self.folded(place)).collect();
        let disagrees = latin::disagrees(&written, &one.text, &behind);
        if latin::is_plural_of(&written, &one.text) && before.as_deref().is_none_or(latin::is_adjective) && !disagrees {
            return false; // one structure where the name speaks of several, or the other way round
        }
        if latin::is_adjective(&written) && is_last && words < 3 {
            return false; // an adjective whose noun follows
        }
        let next = self.text(at + 1).to_lowercase();
        let before_noun = self.index.right.known(&next) == Some(Known::Common) && !lexicon::is_no_part_of_muscle(&next);
        let is_led = at > guess.tokens.0 && guess.exact >= 2;
        if !is_last && !is_led && before_noun && self.names.exactly(&[self.names.form(&written)]).is_some() {
            return false; // a name of its own that goes before a noun ("temporalis fascia")
        }
        let is_own = self.status(at) == Status::Vocabulary;
        let is_english = latin::is_adjective(&one.text) && !one.text.ends_with("ous");
        if is_own && written.ends_with("us") && !written.ends_with("oideus") && is_english {
            return false; // Latin among English ("internal abdominal obliquus") is a matter of taste
        }
        if is_own && latin::is_adjective(&written) && latin::is_adjective(&one.text) {
            return false; // two English adjectives of one noun ("spinal process", "spinous process")
        }
        let known = self.index.right.known(&written) == Some(Known::Common);
        if known && !self.in_subject {
            return false; // a word of everyday English ("medium heel")
        }
        let led = guess.tokens.0.checked_sub(1).map_or("", |place| self.folded(place));
        if at == guess.tokens.0 && led.ends_with('i') && written.ends_with("is") && led.len() > 3 {
            return false; // "musculi flexoris digitorum" is the genitive of the name
        }
        let is_latin = |word: &str| ["alis", "aris", "eus", "oideus", "icus"].iter().any(|end| word.ends_with(end));
        let agrees = before.as_deref().is_none_or(|before| !before.ends_with(['i', 'e']));
        if words == 2 && agrees && is_latin(&written) && ["ae", "i", "is"].iter().any(|end| one.text.ends_with(end)) {
            return false; // "ramus mandibularis" is good Latin beside "ramus mandibulae"
        }
        if guess.plural {
            return false; // all of it may stand in the plural
        }
        let known = self.status(at) == Status::Vocabulary && !self.is_derived(at);
        let latin_for_english = is_latin(&written) && latin::is_adjective(&one.text);
        let is_of_gender =
            before.as_deref().is_some_and(|before| latin::differs_in_gender(before, &written, &one.text));
        support >= if known && !latin_for_english && !is_of_gender { 0.7 } else { 0.3 }
    }

    /// Whether one word by itself is so near to another that it must have been meant.
    pub(super) fn is_strong(&self, span: Span, meant: &str, distance: u32, sounds_alike: bool) -> bool {
        let written = span.of(&self.plain.text);
        let length = meant.len().min(written.len());
        let same_start = written.get(..1).is_some_and(|first| first.eq_ignore_ascii_case(&meant[..1]));
        let swapped_start = written.get(..2).is_some_and(|two| {
            let two: Vec<char> = two.to_ascii_lowercase().chars().rev().collect();
            meant.chars().take(2).eq(two)
        });
        let most = match length {
            0..=4 => 0,
            5..=7 => u32::from(self.in_subject),
            8..=9 => 1,
            10..=14 => 2,
            _ => 3,
        };
        let behind = self.plain.text.get(span.end..).unwrap_or_default();
        let named = behind.strip_prefix(' ').is_some_and(|next| next.starts_with(char::is_uppercase));
        let proper = written.starts_with(char::is_uppercase) && (named || !self.begins_sentence(span));
        if proper && (!self.in_subject || length < 9 || distance > 1 && length < 11) || self.is_named(span) {
            return false;
        }
        let (least, least_heard) = if self.in_subject { (8, 6) } else { (9, 7) };
        let heard_start = sounds_alike && self.in_subject && length >= least_heard;
        let first_lost = self.in_subject && meant.get(1..) == Some(written) && length >= SHORTEST;
        if !same_start && !swapped_start && !heard_start && !first_lost && (distance > 1 || length < least) {
            return false;
        }
        distance <= most || sounds_alike && length >= least_heard && distance <= most + 1
    }

    /// Whether a word in small letters follows a proper name, as that of a species does (*Danio rerio*).
    fn is_named(&self, span: Span) -> bool {
        let at = self.mentions.tokens.partition_point(|token| token.span.start < span.start);
        let Some(before) = at.checked_sub(1).filter(|_| span.of(&self.plain.text).starts_with(char::is_lowercase))
        else {
            return false;
        };
        let is_other = matches!(self.status(before), Status::Unknown | Status::Right(Known::Rare));
        let place = self.word_span(before);
        is_other && self.text(before).starts_with(char::is_uppercase) && !self.begins_sentence(place)
    }

    fn begins_sentence(&self, span: Span) -> bool {
        let before = self.plain.text.get(..span.start).unwrap_or_default().trim_end_matches(|c: char| {
            c.is_whitespace() || matches!(c, '(' | '"' | '“' | '‘' | '[' | '*' | '-' | '–')
        });
        before.is_empty() || before.ends_with(['.', '!', '?', ':', ';', '|'])
    }
}

/// The edits of a replacement, one fewer where both sound alike.
fn edits_heard(replacement: &Replacement) -> u32 {
    replacement.distance.saturating_sub(u32::from(replacement.sounds_alike && replacement.distance > 1))
}

/// Whether a word is a small number ("*eight* cervical nerves").
fn is_number(word: &str) -> bool {
    let numbers = ["three", "four", "five", "seven", "eight", "nine", "twelve"];
    numbers.iter().any(|number| number.eq_ignore_ascii_case(word))
}

/// How much a right word says about the name that it stands in.
pub(super) fn weight(word: &str) -> f64 {
    let lower = word.to_lowercase();
    match &*lower {
        "of" | "to" | "the" | "and" | "in" => 0.0,
        "nerve" | "nerves" | "muscle" | "muscles" | "plexus" => 0.5,
        "branch" | "branches" | "joint" | "joints" | "artery" | "vein" | "head" | "heads" | "part" | "parts"
        | "surface" | "border" | "bone" | "bones" | "gland" | "glands" | "ligament" | "region" | "line" | "area" => 0.3,
        _ if lower.len() < 4 => 0.3,
        _ => 1.0,
    }
}
