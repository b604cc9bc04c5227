//! Words that are wrong by themselves, where no name fits: very near to a word of the vocabulary and no right word of any
//! kind, a plural that the word does not have (*foramens*), a Latin case behind an English article (*the sartorium*).

use crate::names::is_article;

use super::find::Finder;
use super::index::SHORTEST;
use super::latin;
use super::suspect::{Guess, Replacement, Slip, Suspect, likeness};
use super::word::Status;

impl Finder<'_> {
    /// An English plural of a word that has another one (*foramens*).
    pub(super) fn false_plural(&self, at: usize) -> Option<Suspect> {
        if self.status(at) != Status::Vocabulary || !self.is_derived(at) {
            return None;
        }
        let right = self.index.right_plural(self.folded(at))?;
        let span = self.word_span(at);
        let change = Replacement {
            span,
            text: right.to_owned(),
            slip: Slip::WrongForm,
            distance: 1,
            sounds_alike: false,
            likeness: 0.9,
        };
        if self.is_no_prose(at) {
            return None;
        }
        let (tokens, names, replacements) = ((at, at + 1), Vec::new(), vec![change]);
        Some(Suspect { guesses: vec![Guess { tokens, span, names, plural: true, replacements, score: 0.9, exact: 0 }] })
    }

    /// The name whose Latin case or gender is wrong by itself behind an English article (*the sartorium*).
    pub(super) fn oblique(&self, at: usize) -> Vec<Guess> {
        let is_word = |status| !matches!(status, Status::Aside | Status::Passable | Status::Short | Status::Right(_));
        let has_article = at.checked_sub(1).is_some_and(|before| is_article(&self.text(before).to_lowercase()));
        let Some(own) = self.word(at).filter(|_| self.in_subject && has_article) else { return Vec::new() };
        if is_word(self.status(at + 1)) || self.is_no_prose(at) {
            return Vec::new();
        }
        let word = &*own.folded;
        let span = self.word_span(at);
        let targets = self.index.family(word).filter_map(|near| Some((near, self.index.target(near.target)?)));
        let meant = targets.filter(|(_, target)| latin::is_oblique_of(word, &target.text));
        meant
            .filter_map(|(near, target)| {
                let names = self.names.exactly(&[target.form])?;
                let likeness = likeness(word, &target.text, near.distance, false, Slip::WrongForm);
                let change = Replacement {
                    span,
                    text: target.text.to_string(),
                    slip: Slip::WrongForm,
                    distance: near.distance,
                    sounds_alike: false,
                    likeness,
                };
                Some(Guess {
                    tokens: (at, at + 1),
                    span,
                    names: names.names.into_vec(),
                    plural: false,
                    replacements: vec![change],
                    score: likeness * 0.7,
                    exact: 0,
                })
            })
            .collect()
    }

    /// Words that a word by itself may have been meant to be.
    pub(super) fn alone(&self, at: usize) -> Vec<Guess> {
        let span = self.word_span(at);
        let mut list = Vec::new();
        let Some(own) = self.word(at).filter(|word| word.folded.len() > SHORTEST) else { return list };
        let word = &*own.folded;
        for near in self.targets_near(at, own) {
            let Some(target) = self.index.target(near.target) else { continue };
            if target.common && (!self.in_subject || word.len() < 7 || near.distance > 1 + u32::from(word.len() >= 10))
            {
                continue;
            }
            if target.form.exact.is_none() && !target.form.is_unknown() && !self.in_subject {
                continue;
            }
            if !self.is_strong(span, &target.text, near.distance, near.sounds_alike) {
                continue;
            }
            let likeness = likeness(word, &target.text, near.distance, near.sounds_alike, Slip::Misspelled);
            list.push(Guess {
                tokens: (at, at + 1),
                span,
                names: Vec::new(),
                plural: false,
                replacements: vec![Replacement {
                    span,
                    text: target.text.to_string(),
                    slip: Slip::Misspelled,
                    distance: near.distance,
                    sounds_alike: near.sounds_alike,
                    likeness,
                }],
                score: likeness * 0.7,
                exact: 0,
            });
        }
        list
    }
}
