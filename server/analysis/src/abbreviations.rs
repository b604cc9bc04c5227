//! Abbreviations that a document makes for itself: "MN = median nerve", "the medial plantar nerve (MPN)".
//!
//! An abbreviation is a word in capitals whose letters stand in the name in this order. Where it is told, what it stands for
//! holds in the whole document. One that is told twice for different structures means nothing.

use fascicle_model::{EntryId, Standing, Vocabulary};

use crate::blocks::Blocks;
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
    for (block, own) in blocks.list.iter().zip(mentions) {
        let text = &block.plain.text;
        let mut added = Vec::new();
        for (at, token) in own.tokens.iter().enumerate() {
            let word = token.span.of(text);
            if !is_short(word) || is_named(own, at) {
                continue;
            }
            if let Some((_, Some(candidates))) = told.iter().find(|(short, _)| short == word) {
                added.push(Mention {
                    span: token.span,
                    tokens: (at, at + 1),
                    candidates: candidates.clone(),
                    standing: Standing::Abbreviation,
                    plural: false,
                    shared: false,
                });
            }
        }
        if !added.is_empty() {
            own.list.extend(added);
            own.list.sort_by_key(|mention| mention.span.start);
        }
    }
}

/// The abbreviations that are told, each with what it stands for; `None` where that is told in two ways.
fn told(blocks: &Blocks, mentions: &[Mentions], vocabulary: &Vocabulary) -> Vec<(String, Option<Vec<EntryId>>)> {
    let mut told: Vec<(String, Option<Vec<EntryId>>)> = Vec::new();
    for (block, own) in blocks.list.iter().zip(mentions) {
        let text = &block.plain.text;
        for mention in &own.list {
            let Some(short) = short_beside(text, own, mention) else { continue };
            let name = mention.candidates.iter().any(|id| {
                let names = &vocabulary.entry(*id).names;
                names.iter().any(|name| stands_for(short, &name.text)) || stands_for(short, mention.span.of(text))
            });
            if !name {
                continue;
            }
            match told.iter_mut().find(|(known, _)| known == short) {
                Some((_, known)) if known.as_ref().is_some_and(|known| *known != mention.candidates) => *known = None,
                Some(_) => {}
                None => told.push((short.to_owned(), Some(mention.candidates.clone()))),
            }
        }
    }
    told
}

/// The abbreviation that stands beside a name: before it with an equals sign, or behind it in brackets.
fn short_beside<'t>(text: &'t str, own: &Mentions, mention: &Mention) -> Option<&'t str> {
    let word = |at: usize| own.tokens.get(at).map_or("", |token: &Token| token.span.of(text));
    let (from, to) = mention.tokens;
    let behind = [to, to + 1];
    if word(behind[0]) == "(" && word(to + 2) == ")" && is_short(word(behind[1])) && !is_named(own, to + 1) {
        return own.tokens.get(to + 1).map(|token| token.span.of(text));
    }
    if word(to) == "=" && is_short(word(to + 1)) && !is_named(own, to + 1) {
        return own.tokens.get(to + 1).map(|token| token.span.of(text));
    }
    let mut before = from.checked_sub(1)?;
    if word(before) == "the" {
        before = before.checked_sub(1)?;
    }
    let at = before.checked_sub(1)?;
    let tells = matches!(word(before), "=" | "(") && is_short(word(at)) && !is_named(own, at);
    tells.then(|| own.tokens.get(at).map(|token: &Token| token.span.of(text))).flatten()
}

fn is_named(own: &Mentions, at: usize) -> bool {
    let next = own.list.partition_point(|mention| mention.tokens.1 <= at);
    own.list.get(next).is_some_and(|mention| mention.tokens.0 <= at)
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
        assert!(!is_short("Mn") && !is_short("C5") && is_short("MN"));
    }
}
