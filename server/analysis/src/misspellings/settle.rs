//! What a fix leaves behind: a name that is put right in one word may still be wrong in another, which shows only now.
//!
//! In *branchas of femoral nervi* the first word hides that the last one is wrong too. So what a guess would write is read
//! once more, and what is found there becomes part of the guess: one fix mends the name as a whole.

use super::suspect::{Guess, Suspect};
use crate::knowledge::Knowledge;
use crate::mentions::{self, Mentions};
use crate::text::{Mark, Plain, Span};

/// How often the mended text is read again.
const ROUNDS: usize = 3;

/// Takes up into a guess what is found in the text as the guess would have it.
pub fn settle(
    guess: &mut Guess,
    plain: &Plain,
    mentions: &Mentions,
    knowledge: &Knowledge,
    look: impl Fn(&Plain, &Mentions) -> Vec<Suspect>,
) {
    for _ in 0..ROUNDS {
        let mended = Mended::new(guess, plain);
        let read = mentions::mentions(&mended.text, &knowledge.vocabulary, &knowledge.names);
        let found = look(&Plain::verbatim(&mended.text, 0), &read);
        let next = found.into_iter().filter_map(|suspect| suspect.guesses.into_iter().next());
        let mut next = next.filter(|next| next.span.overlaps(mended.span));
        if !next.next().is_some_and(|next| take_up(guess, next, &mended, plain, mentions)) {
            return;
        }
    }
}

/// A text as a guess would have it.
struct Mended {
    text: String,
    /// Where the name stands in it.
    span: Span,
    /// Where each replacement stands in it, with where it stood.
    places: Vec<(Span, Span)>,
}

impl Mended {
    fn new(guess: &Guess, plain: &Plain) -> Self {
        let mut text = String::with_capacity(plain.text.len() + 8);
        let mut places = Vec::new();
        let mut at = 0;
        for one in &guess.replacements {
            text.push_str(Span::new(at, one.span.start).of(&plain.text));
            let start = text.len();
            text.push_str(&one.text);
            places.push((Span::new(start, text.len()), one.span));
            at = one.span.end;
        }
        text.push_str(plain.text.get(at..).unwrap_or_default());
        let end = (guess.span.end + text.len()).saturating_sub(plain.text.len());
        Self { text, span: Span::new(guess.span.start, end), places }
    }

    /// Where a stretch of the mended text stands in the text as it was written; `None` where it cuts through a change.
    fn back(&self, span: Span) -> Option<Span> {
        Some(Span::new(self.back_at(span.start, false)?, self.back_at(span.end, true)?))
    }

    fn back_at(&self, at: usize, is_end: bool) -> Option<usize> {
        let mut shift = (0, 0);
        for (now, before) in &self.places {
            if (is_end && at == now.end) || (!is_end && at == now.start) {
                return Some(if is_end { before.end } else { before.start });
            }
            if now.start < at && at < now.end {
                return None;
            }
            if now.end <= at {
                shift = (now.end, before.end);
            }
        }
        Some(at - shift.0 + shift.1)
    }
}

/// Makes a guess about the mended text part of the guess that mended it.
fn take_up(guess: &mut Guess, next: Guess, mended: &Mended, plain: &Plain, mentions: &Mentions) -> bool {
    let mut replacements = guess.replacements.clone();
    for mut one in next.replacements {
        let Some(span) = mended.back(one.span) else { return false };
        if plain.has_mark(span, Mark::Struck) || plain.has_mark(span, Mark::Link) {
            return false;
        }
        one.span = span;
        let inside = replacements.iter().filter(|known| span.contains(known.span));
        one.distance += inside.map(|known| known.distance).sum::<u32>();
        replacements.retain(|known| !span.contains(known.span));
        replacements.push(one);
    }
    replacements.sort_by_key(|one| one.span);
    let Some(span) = mended.back(next.span) else { return false };
    let span = span.cover(guess.span);
    let place = |at: usize| mentions.tokens.partition_point(|token| token.span.start < at);
    guess.tokens = (place(span.start), place(span.end));
    guess.span = span;
    guess.names = next.names;
    guess.plural = next.plural;
    guess.exact = next.exact;
    guess.replacements = replacements;
    true
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn finds_the_way_back() {
        let mended = Mended {
            text: "the radial nerve is".to_owned(),
            span: Span::new(4, 16),
            places: vec![(Span::new(4, 10), Span::new(4, 9)), (Span::new(11, 16), Span::new(10, 17))],
        };
        assert_eq!(mended.back(Span::new(4, 10)), Some(Span::new(4, 9)));
        assert_eq!(mended.back(Span::new(4, 16)), Some(Span::new(4, 17)));
        assert_eq!(mended.back(Span::new(17, 19)), Some(Span::new(18, 20)));
        assert_eq!(mended.back(Span::new(6, 16)), None);
    }
}
