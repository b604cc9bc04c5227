//! Whether what was typed are the beginnings of several words of a name: "flcr" for *flexor carpi radialis*, "tema" for
//! *teres major*. Who types so means to tell a name from its neighbours, so it says more than letters found anywhere.

use crate::lexicon;

/// Which words of a name were begun.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Beginnings {
    /// The first word was.
    pub first: bool,
    /// The last word that tells the name from others was.
    pub last: bool,
    /// How many telling words stand between those that were, and were not.
    pub skipped: u8,
}

/// The parting of typed letters into beginnings of two words of a name or more that skips the fewest; both folded.
pub(super) fn beginnings(name: &str, typed: &str) -> Option<Beginnings> {
    let words: Vec<&str> = name.split([' ', '-']).filter(|word| !word.is_empty() && !is_small(word)).collect();
    let typed: String = typed.split([' ', '-']).collect();
    if words.len() < 2 || typed.len() < 2 {
        return None;
    }
    let last_telling = words.iter().rposition(|word| !lexicon::is_kind_noun(word)).unwrap_or(words.len() - 1);
    let mut best: Option<Beginnings> = None;
    for first in 0..words.len() {
        let Some((skipped, last)) = part(words.get(first..)?, &typed, 0) else { continue };
        let found = Beginnings { first: first == 0, last: first + last >= last_telling, skipped };
        let is_better = best.is_none_or(|best| rank(found) > rank(best));
        if is_better {
            best = Some(found);
        }
    }
    best
}

fn rank(found: Beginnings) -> (bool, bool, u8) {
    (found.first, found.last, u8::MAX - found.skipped)
}

/// Words that are never begun by those who type the beginnings.
fn is_small(word: &str) -> bool {
    matches!(word, "of" | "to" | "the" | "and" | "in" | "for" | "with" | "from")
}

/// Parts letters into beginnings of words, of which the first must be one: how many words are skipped at the least before
/// the last one, and which one that is.
fn part(words: &[&str], typed: &str, depth: usize) -> Option<(u8, usize)> {
    let (word, rest) = words.split_first()?;
    let common = word.bytes().zip(typed.bytes()).take_while(|(a, b)| a == b).count();
    let mut best: Option<(u8, usize)> = None;
    for taken in (1..=common).rev() {
        let Some(left) = typed.get(taken..) else { continue };
        if left.is_empty() {
            if depth > 0 {
                return Some((0, 0));
            }
            continue;
        }
        for skip in 0..rest.len() {
            let Some((skipped, last)) = part(rest.get(skip..)?, left, depth + 1) else { continue };
            let telling = rest.iter().take(skip).filter(|word| !lexicon::is_kind_noun(word)).count();
            let skipped = skipped.saturating_add(u8::try_from(telling).unwrap_or(u8::MAX));
            if best.is_none_or(|(fewest, _)| skipped < fewest) {
                best = Some((skipped, last + skip + 1));
            }
        }
    }
    best
}

#[cfg(test)]
mod tests {
    use super::{Beginnings, beginnings};

    #[test]
    fn finds_the_words_that_were_begun() {
        let all =
            |name, typed| beginnings(name, typed).map(|Beginnings { first, last, skipped }| (first, last, skipped));
        assert_eq!(all("flexor carpi radialis", "flcr"), Some((true, true, 0)));
        assert_eq!(all("flexor carpi radialis", "flra"), Some((true, true, 1)));
        assert_eq!(all("teres major", "tema"), Some((true, true, 0)));
        assert_eq!(all("teres minor", "tema"), None);
        assert_eq!(all("common fibular nerve", "cofi"), Some((true, true, 0)));
        assert_eq!(all("long head of biceps brachii", "bibr"), Some((false, true, 0)));
        assert_eq!(all("teres", "tere"), None);
    }
}
