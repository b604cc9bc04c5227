//! Semantic tokens: which kind of structure a stretch of text names, and what is to be said of the name.

use fascicle_model::{Kind, Standing, Vocabulary};

use super::places::{self, Place};
use crate::knowledge::Knowledge;
use crate::reading::Reading;
use crate::text::Span;
use crate::verdicts::Verdict;

/// A named stretch of the source. Tokens stand in order and do not overlap.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::struct_excessive_bools)]
pub struct Token {
    /// Where it stands.
    pub span: Span,
    /// What it names.
    pub kind: Kind,
    /// It is an abbreviation.
    pub abbreviation: bool,
    /// It is a name that the terminology has given up.
    pub former: bool,
    /// A statement that takes it as a part contradicts the vocabulary.
    pub contradicted: bool,
    /// It can mean more than one structure.
    pub ambiguous: bool,
}

/// The names of a document.
pub fn tokens(reading: &Reading, vocabulary: &Vocabulary) -> Vec<Token> {
    of_places(places::all(reading), reading, vocabulary)
}

/// Its names, its spinal segments and its movements.
pub fn all(reading: &Reading, knowledge: &Knowledge) -> Vec<Token> {
    let vocabulary = &knowledge.vocabulary;
    let roots = places::roots(reading, vocabulary).filter(|place| place.entries.len() == 1);
    let list = places::all(reading).chain(roots).chain(places::movements(reading, knowledge));
    of_places(list, reading, vocabulary)
}

fn of_places(list: impl Iterator<Item = Place>, reading: &Reading, vocabulary: &Vocabulary) -> Vec<Token> {
    let wrong: Vec<Span> = reading
        .claims
        .iter()
        .filter(|(_, judgement)| judgement.verdict == Verdict::Contradicts)
        .flat_map(|(claim, _)| claim.parts.iter().map(|part| part.span))
        .collect();
    let mut list: Vec<Token> = list
        .filter_map(|place| {
            let kind = vocabulary.kind(*place.entries.first()?);
            Some(Token {
                span: place.span,
                kind,
                abbreviation: place.standing == Standing::Abbreviation,
                former: place.standing == Standing::Former,
                contradicted: wrong.iter().any(|span| span.overlaps(place.span)),
                ambiguous: place.entries.len() > 1,
            })
        })
        .collect();
    list.sort_by_key(|token| (token.span.start, std::cmp::Reverse(token.span.end)));
    let mut end = 0;
    list.retain(|token| {
        let keep = token.span.start >= end && !token.span.is_empty();
        if keep {
            end = token.span.end;
        }
        keep
    });
    list
}
