//! Abbreviations that a document makes for itself: "MN = median nerve", "the medial plantar nerve (MPN)".
//!
//! An abbreviation is a word in capitals whose letters stand in the name in this order. Where it is told, what it stands for
//! holds in the whole document, whatever the vocabulary has it for. One that is told twice for different structures means
//! nothing, and so does one for which the vocabulary has another structure, unless it is told by a key with an equals sign or
//! is made of the initials of the name.

use fascicle_model::{EntryId, Standing, Vocabulary};

use crate::blocks::{BlockIx, Blocks};
use crate::mentions::{Mention, Mentions};
use crate::words::Token;

/// Letters of an abbreviation, least and most.
const LETTERS: std::ops::RangeInclusive<usize> = 2..=6;

/// Adds mentions for the abbreviations that a document explains.
pub fn apply(blocks: &Blocks, mentions: &mut [Mentions], vocabulary: &Vocabulary) {
    let told = told(blocks, mentions, vocabulary);
    if told.is_empty() {
        return;
    }
    for (number, (block, own)) in blocks.list.iter().zip(mentions).enumerate() {
        let text = &block.plain.text;
        let meaning = |at: usize| {
            let word = own.tokens.get(at).map_or("", |token| token.span.of(text));
            let known = told.iter().find(|told| is_short(word) && told.short == word)?;
            let is_told_here = known.meant.is_none() && known.brackets.contains(&(number, at));
            (!is_told_here && !is_part_of_name(own, at)).then_some(known.meant.as_ref())
        };
        let mentions = |(at, token): (usize, &Token)| {
            let candidates = meaning(at)??.clone();
            let (span, tokens, standing) = (token.span, (at, at + 1), Standing::Abbreviation);
            Some(Mention { span, tokens, candidates, standing, plural: false, shared: false })
        };
        let added: Vec<Mention> = own.tokens.iter().enumerate().filter_map(mentions).collect();
        let is_kept = |mention: &Mention| meaning(mention.tokens.0).is_none();
        let kept: Vec<Mention> = own.list.iter().filter(|mention| is_kept(mention)).cloned().collect();
        if !added.is_empty() || kept.len() < own.list.len() {
            own.list = kept;
            own.list.extend(added);
            own.list.sort_by_key(|mention| mention.span.start);
        }
    }
}

/// An abbreviation that is told.
struct Told {
    short: String,
    /// What it stands for; `None` where that is told in two ways or is not clear.
    meant: Option<Vec<EntryId>>,
    /// Where it is told in brackets, block and token: there it is introduced, whatever it means elsewhere.
    brackets: Vec<(BlockIx, usize)>,
}

/// The abbreviations that are told.
fn told(blocks: &Blocks, mentions: &[Mentions], vocabulary: &Vocabulary) -> Vec<Told> {
    let mut told: Vec<Told> = Vec::new();
    for (number, (block, own)) in blocks.list.iter().zip(mentions).enumerate() {
        let text = &block.plain.text;
        for mention in own.list.iter().filter(|mention| mention.standing != Standing::Abbreviation) {
            let Some((at, is_key)) = short_beside(text, own, mention) else { continue };
            let short = own.tokens.get(at).map_or("", |token| token.span.of(text));
            let known = abbreviation_at(own, at);
            let is_initials = are_initials(short, mention.span.of(text));
            // What stands around decides which of several is meant, and "TA = tibial nerve" tells a muscle's nerve.
            let is_of_kind = |known: &Mention| {
                let kinds = |mention: &Mention| mention.candidates.first().map(|id| vocabulary.kind(*id));
                kinds(known) == kinds(mention)
            };
            let is_same = |known: &Mention| known.candidates.iter().any(|id| mention.candidates.contains(id));
            if known.is_some_and(|known| !is_key && is_same(known) || !is_initials && !is_of_kind(known)) {
                continue;
            }
            let name = mention.candidates.iter().any(|id| {
                let names = &vocabulary.entry(*id).names;
                names.iter().any(|name| stands_for(short, &name.text)) || stands_for(short, mention.span.of(text))
            });
            if !name {
                continue;
            }
            let is_clear = known.is_none() || is_key || is_initials;
            let meant = is_clear.then(|| mention.candidates.clone());
            let place = (!is_key).then_some((number, at));
            match told.iter_mut().find(|known| known.short == short) {
                Some(known) => {
                    known.meant = known.meant.take().filter(|known| meant.as_ref() == Some(known));
                    known.brackets.extend(place);
                }
                None => told.push(Told { short: short.to_owned(), meant, brackets: place.into_iter().collect() }),
            }
        }
    }
    told
}

/// The token of the abbreviation that stands beside a name, before it or behind it with an equals sign or in brackets, and
/// whether that is an equals sign, as keys have it.
fn short_beside(text: &str, own: &Mentions, mention: &Mention) -> Option<(usize, bool)> {
    let word = |at: usize| own.tokens.get(at).map_or("", |token: &Token| token.span.of(text));
    let (from, to) = mention.tokens;
    let fits = |at: usize| is_short(word(at)) && !is_part_of_name(own, at);
    if word(to) == "(" && word(to + 2) == ")" && fits(to + 1) || word(to) == "=" && fits(to + 1) {
        return Some((to + 1, word(to) == "="));
    }
    let mut before = from.checked_sub(1)?;
    if word(before) == "the" {
        before = before.checked_sub(1)?;
    }
    let at = before.checked_sub(1)?;
    (matches!(word(before), "=" | "(") && fits(at)).then_some((at, word(before) == "="))
}

/// The mention that has a token.
fn mention_at(own: &Mentions, at: usize) -> Option<&Mention> {
    let next = own.list.partition_point(|mention| mention.tokens.1 <= at);
    own.list.get(next).filter(|mention| mention.tokens.0 <= at)
}

/// The mention of an abbreviation of the vocabulary that a token is.
fn abbreviation_at(own: &Mentions, at: usize) -> Option<&Mention> {
    let is_whole = |mention: &&Mention| mention.tokens == (at, at + 1) && mention.standing == Standing::Abbreviation;
    mention_at(own, at).filter(is_whole)
}

/// Whether a token belongs to a name and is no abbreviation by itself.
fn is_part_of_name(own: &Mentions, at: usize) -> bool {
    mention_at(own, at).is_some() && abbreviation_at(own, at).is_none()
}

fn is_short(word: &str) -> bool {
    LETTERS.contains(&word.len()) && word.bytes().all(|c| c.is_ascii_uppercase())
}

/// Whether the letters of an abbreviation stand in a name in their order, the first at its beginning.
fn stands_for(short: &str, name: &str) -> bool {
    let mut letters = name.chars().filter(|c| c.is_alphabetic()).map(|c| c.to_ascii_uppercase());
    let mut short = short.chars();
    if letters.next() != short.next() {
        return false;
    }
    short.all(|c| letters.any(|letter| letter == c))
}

/// Whether an abbreviation is made of the first letters of the words of a name.
fn are_initials(short: &str, name: &str) -> bool {
    let first = |word: &str| word.chars().next().map(|c| c.to_ascii_uppercase());
    let words = name.split([' ', '-']).filter(|word| !matches!(*word, "of" | "the" | "and"));
    words.filter_map(first).eq(short.chars())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_stand_in_the_name() {
        for (short, name) in [("MPN", "medial plantar nerve"), ("AX", "axillary nerve"), ("LTN", "long thoracic nerve")]
        {
            assert!(stands_for(short, name), "{short}");
        }
        for (short, name) in [("PMN", "medial plantar nerve"), ("AXZ", "axillary nerve"), ("NM", "median nerve")] {
            assert!(!stands_for(short, name), "{short}");
        }
        assert!(are_initials("MBBT", "medial border of the big-toe") && !are_initials("ME", "median nerve"));
        assert!(!is_short("Mn") && !is_short("C5") && is_short("MN"));
    }
}
