//! Names whose words are all right and stand in another order (*flexor brevis pollicis*).

use smallvec::SmallVec;

use crate::names::WordId;
use crate::words::fold_into;

use super::find::Finder;
use super::suspect::{Guess, Replacement, Slip, Suspect};
use super::word::Status;

impl Finder<'_> {
    /// Names whose words stand in another order than they should (*flexor brevis pollicis*).
    pub(super) fn out_of_order(&self) -> Vec<Suspect> {
        let mut list = Vec::new();
        let mut at = 0;
        while at < self.status.len() {
            let run = self.status.get(at..).unwrap_or_default();
            let length = run.iter().take_while(|status| **status == Status::Vocabulary).count();
            let mut from = at;
            while from + 3 <= at + length {
                let most = (at + length - from).min(6);
                match (3..=most).rev().find_map(|words| self.reordered(from, from + words)) {
                    Some(guess) => {
                        from = guess.tokens.1;
                        list.push(Suspect { guesses: vec![guess] });
                    }
                    None => from += 1,
                }
            }
            at += length.max(1);
        }
        list
    }

    /// The name that a run of words is in another order, if no name stands there as it is.
    fn reordered(&self, from: usize, to: usize) -> Option<Guess> {
        let list = &self.mentions.list;
        let next = list.partition_point(|mention| mention.tokens.1 <= from);
        let overlapping = list.iter().skip(next).take_while(|one| one.tokens.0 < to);
        let mut overlapping = overlapping.map(|one| one.tokens);
        let is_free = overlapping.all(|(start, end)| from <= start && end <= to && end - start < to - from);
        if !is_free {
            return None;
        }
        let forms = self.mentions.forms.get(from..to)?;
        let words: SmallVec<[WordId; 8]> =
            forms.iter().map(|form| form.exact.or(form.singular)).collect::<Option<_>>()?;
        let (name, right) = self.index.of_words(&words).first()?;
        if (from..to).any(|at| self.is_no_prose(at)) {
            return None;
        }
        let mut replacements = Vec::new();
        for (at, text) in (from..to).zip(right.iter().filter_map(|id| self.names.words().get(id.place()))) {
            let span = self.word_span(at);
            let mut written = String::new();
            fold_into(span.of(&self.plain.text), &mut written);
            if written != **text {
                replacements.push(Replacement {
                    span,
                    text: text.to_string(),
                    slip: Slip::Order,
                    distance: 1,
                    sounds_alike: false,
                    likeness: 0.9,
                });
            }
        }
        (right.len() == to - from && replacements.len() > 1).then_some(())?;
        let span = self.span(from, to)?;
        Some(Guess { tokens: (from, to), span, names: vec![*name], plural: false, replacements, score: 0.85, exact: 1 })
    }
}
