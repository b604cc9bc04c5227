//! Names of which a word is left out, where what is left cannot stand by itself (*posterior of thigh*).

use smallvec::SmallVec;

use crate::lexicon;
use crate::names::{WordId, is_article};

use super::find::Finder;
use super::suspect::{Guess, Replacement, Slip, Suspect};
use super::word::Status;

impl Finder<'_> {
    /// Names of which a word is left out, where what is left cannot stand by itself (*posterior of thigh*).
    pub(super) fn incomplete(&self) -> Vec<Suspect> {
        let mut list = Vec::new();
        let mut at = 0;
        while at < self.status.len() {
            let run = self.status.get(at..).unwrap_or_default();
            let passes = |place: &usize| {
                matches!(run.get(*place), Some(Status::Vocabulary))
                    || *place > 0
                        && matches!(run.get(*place), Some(Status::Passable))
                        && is_article(self.text(at + place))
            };
            let length = (0..run.len()).take_while(passes).count();
            let is_trimmed = length > 0 && run.get(length - 1) == Some(&Status::Vocabulary);
            if length >= 2 && is_trimmed {
                // "Went back to the muscles of … in your drawing": a name begins behind an article, and may end before any
                // word that begins no noun phrase.
                let (first, last) = (at, at + length);
                let begins = (first..last).filter(|from| self.has_article(*from));
                let ends = |from: usize| {
                    let ends = (from + 2..=last).rev();
                    ends.filter(move |to| *to == last || lexicon::ends_noun_phrase(self.text(*to)))
                };
                let mut runs = begins.flat_map(|from| ends(from).map(move |to| (from, to)));
                list.extend(runs.find_map(|(from, to)| self.incomplete_run(from, to)));
            }
            at += length.max(1);
        }
        list
    }

    /// The names that a whole run of words is but for one word. Notes leave nouns out on purpose (*Carpometacarpal of
    /// thumb: saddle*); a sentence, which has an article before the run, does not.
    fn incomplete_run(&self, from: usize, to: usize) -> Option<Suspect> {
        let list = &self.mentions.list;
        let next = list.partition_point(|mention| mention.tokens.1 <= from);
        if list.get(next).is_some_and(|one| one.tokens.0 <= from && one.tokens.1 >= to) {
            return None;
        }
        let vocabulary = |at: &usize| self.status(*at) == Status::Vocabulary;
        let places: SmallVec<[usize; 8]> = (from..to).filter(vocabulary).collect();
        let forms = places.iter().filter_map(|at| self.mentions.forms.get(*at));
        let words: SmallVec<[WordId; 8]> = forms.map(|form| form.exact.or(form.singular)).collect::<Option<_>>()?;
        let gaps = self.index.without_one(&words);
        if gaps.is_empty() {
            return None;
        }
        let joined = |at: Option<usize>| {
            at.is_some_and(|at| lexicon::is_conjunction(self.text(at)) || lexicon::is_hyphen(self.text(at)))
        };
        if joined(from.checked_sub(1)) || joined(Some(to)) || (from..to).any(|at| self.is_no_prose(at)) {
            return None;
        }
        // What ends in "of" is ended by what no noun phrase begins with, and an adjective by what is no noun.
        let next = self.text(to).to_lowercase();
        let is_ended = next.is_empty() || lexicon::ends_clause(&next) || lexicon::ends_noun_phrase(&next);
        let span = self.span(from, to)?;
        let mut guesses: Vec<Guess> = Vec::new();
        for gap in gaps.iter().filter(|gap| is_ended || !gap.needs_end) {
            let missing = self.names.words().get(gap.word.place())?;
            // "The fibular collateral ligament … the tibial collateral": the noun is understood.
            if gap.needs_end && (0..from).any(|at| self.folded(at).starts_with(&**missing)) {
                continue;
            }
            let place = usize::from(gap.place);
            let (beside, is_first) = (place.saturating_sub(1), place == 0);
            let at = *places.get(beside)?;
            let span_of = self.word_span(at);
            let written = span_of.of(&self.plain.text);
            let text = if is_first { format!("{missing} {written}") } else { format!("{written} {missing}") };
            let known = guesses.iter_mut().find(|guess| guess.replacements.first().is_some_and(|one| one.text == text));
            if let Some(known) = known {
                known.names.push(gap.name);
                continue;
            }
            let change = Replacement {
                span: span_of,
                text,
                slip: Slip::Missing,
                distance: 1,
                sounds_alike: false,
                likeness: 0.8,
            };
            guesses.push(Guess {
                tokens: (from, to),
                span,
                names: vec![gap.name],
                plural: false,
                replacements: vec![change],
                score: 0.7,
                exact: places.len() as u32,
            });
        }
        (!guesses.is_empty()).then_some(Suspect { guesses })
    }
}
