//! What a search for misspellings finds: suspects, each with guesses at what was meant, each with what would have to change.

use crate::names::NameRef;
use crate::text::Span;

use super::latin;

/// Why a word may be wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Slip {
    /// It is no right word.
    Misspelled,
    /// It is another form of the right word.
    WrongForm,
    /// It is a right word, but a rare one.
    RareWord,
    /// It is a word of everyday English.
    CommonWord,
    /// It stands in the place of another word of the name.
    Order,
    /// Two words are written as one.
    Joined,
    /// One word is written as several.
    Split,
    /// The same, where each part is a right word.
    SplitWords,
    /// One word is written as several with hyphens between.
    Hyphenated,
    /// A word of the name is left out beside it.
    Missing,
}

/// A replacement of one wrong word.
#[derive(Clone, Debug, PartialEq)]
pub struct Replacement {
    /// Where the wrong word stands in the visible text.
    pub span: Span,
    /// What should stand there, folded.
    pub text: String,
    /// What is wrong.
    pub slip: Slip,
    /// Edits.
    pub distance: u32,
    /// Both sound alike.
    pub sounds_alike: bool,
    /// How alike the two are, from 0 to 1.
    pub(super) likeness: f64,
}

/// What a suspect may have been meant to be.
#[derive(Clone, Debug, PartialEq)]
pub struct Guess {
    /// The tokens that it takes.
    pub tokens: (usize, usize),
    /// Where it stands in the visible text.
    pub span: Span,
    /// The names that it would be; none for a word that is right by itself.
    pub names: Vec<NameRef>,
    /// Whether a word of the name is a plural.
    pub plural: bool,
    /// What would have to change, in order.
    pub replacements: Vec<Replacement>,
    /// From 0 to 1.
    pub score: f64,
    /// Words of the name that are right.
    pub exact: u32,
}

impl Guess {
    /// Edits over all words.
    pub fn distance(&self) -> u32 {
        self.replacements.iter().map(|replacement| replacement.distance).sum()
    }

    /// Every wrong word sounds like the right one.
    pub fn sounds_alike(&self) -> bool {
        self.replacements.iter().all(|replacement| replacement.sounds_alike)
    }

    /// Two words that are no words both fit the name, each speaking for the other.
    pub(super) fn explains_two(&self) -> bool {
        let unknown = self.replacements.iter().filter(|one| one.slip == Slip::Misspelled && one.distance <= 2);
        unknown.count() > 1
    }

    /// Whether one of the wrong words is wrong in this way.
    pub fn has(&self, slip: Slip) -> bool {
        self.replacements.iter().any(|replacement| replacement.slip == slip)
    }
}

/// A stretch that is probably a misspelled name, with the guesses, the likeliest first.
#[derive(Clone, Debug, PartialEq)]
pub struct Suspect {
    /// Never empty.
    pub guesses: Vec<Guess>,
}

impl Suspect {
    pub(super) fn score(&self) -> f64 {
        self.guesses.first().map_or(0.0, |best| best.score)
    }

    pub(super) fn overlaps(&self, other: &Self) -> bool {
        match (self.guesses.first(), other.guesses.first()) {
            (Some(one), Some(two)) => one.tokens.0 < two.tokens.1 && two.tokens.0 < one.tokens.1,
            _ => false,
        }
    }
}

/// How alike two words are, from 0 to 1.
pub(super) fn likeness(written: &str, meant: &str, distance: u32, sounds_alike: bool, slip: Slip) -> f64 {
    let mut edits = f64::from(distance);
    match slip {
        Slip::WrongForm => edits = 0.5 + 0.25 * edits,
        Slip::RareWord => edits += 0.3,
        Slip::CommonWord => edits += 0.8,
        _ => {}
    }
    if slip == Slip::Misspelled && latin::stem(written) == latin::stem(meant) {
        edits = edits.min(0.5 + 0.25 * edits);
    }
    if sounds_alike {
        edits -= 0.35;
    }
    let (w, m) = (written.as_bytes(), meant.as_bytes());
    if w.first() != m.first() && !(w.first() == m.get(1) && w.get(1) == m.first()) {
        edits += 0.4;
    }
    let mut sorted = (w.to_vec(), m.to_vec());
    sorted.0.sort_unstable();
    sorted.1.sort_unstable();
    if sorted.0 == sorted.1 {
        edits -= 0.3;
    }
    let length = f64::from(written.len().max(meant.len()) as u32);
    (1.0 - edits / length).clamp(0.0, 1.0)
}
