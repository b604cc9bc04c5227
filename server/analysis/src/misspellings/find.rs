//! From the tokens of a block to suspects: words and runs of words that are no right names, each with what may be meant.
//!
//! Every word is told apart first ([`Status`]). Words that may be wrong ([`triggers`]) begin a search for the names that they
//! may belong to ([`walk`]), of which only plausible ones are kept ([`plausible`]); where no name fits, a word is judged by
//! itself ([`alone`]). Names of right words are looked through too: for their order ([`order`]) and for a word that is left
//! out ([`incomplete`]).
//!
//! [`triggers`]: super::triggers
//! [`walk`]: super::walk
//! [`plausible`]: super::plausible
//! [`alone`]: super::alone
//! [`order`]: super::order
//! [`incomplete`]: super::incomplete

use std::cell::OnceCell;
use std::rc::Rc;

use fascicle_model::Vocabulary;

use crate::knowledge::Knowledge;
use crate::lexicon;
use crate::mentions::Mentions;
use crate::names::NameIndex;
use crate::text::{Mark, Plain, Span};
use crate::words::without_possessive;

use super::index::SpellingIndex;
use super::suspect::Suspect;
use super::walk::Choice;
use super::word::{Status, Word, Words};

/// Looks for suspects in one block.
pub struct Finder<'a> {
    pub(super) plain: &'a Plain,
    pub(super) mentions: &'a Mentions,
    pub(super) vocabulary: &'a Vocabulary,
    pub(super) names: &'a NameIndex,
    pub(super) index: &'a SpellingIndex,
    pub(super) words: &'a Words<'a>,
    /// The words of the tokens, found out when they are asked for.
    pub(super) of_tokens: Vec<OnceCell<Rc<Word>>>,
    /// The document speaks of anatomy round about.
    pub(super) in_subject: bool,
    pub(super) status: Vec<Status>,
    /// Tokens that may be wrong.
    pub(super) triggers: Vec<usize>,
    /// The ways over each token, found out when a walk comes by.
    pub(super) choices: Vec<OnceCell<Vec<Choice>>>,
}

impl<'a> Finder<'a> {
    /// A finder over a block.
    pub fn new(
        plain: &'a Plain,
        mentions: &'a Mentions,
        knowledge: &'a Knowledge,
        words: &'a Words<'a>,
        in_subject: bool,
    ) -> Self {
        let Knowledge { vocabulary, names, spelling: index, .. } = knowledge;
        let count = mentions.tokens.len();
        let (status, of_tokens) = (Vec::with_capacity(count), (0..count).map(|_| OnceCell::new()).collect());
        let (triggers, choices) = (Vec::new(), Vec::new());
        let mut finder =
            Self { plain, mentions, vocabulary, names, index, words, of_tokens, in_subject, status, triggers, choices };
        for at in 0..count {
            let status = finder.status_of(at);
            finder.status.push(status);
        }
        finder
    }

    pub(super) fn text(&self, at: usize) -> &'a str {
        self.mentions.tokens.get(at).map_or("", |token| token.span.of(&self.plain.text))
    }

    pub(super) fn word(&self, at: usize) -> Option<&Word> {
        let token = self.mentions.tokens.get(at).filter(|token| token.is_word)?;
        let form = self.mentions.forms.get(at).copied().unwrap_or_default();
        Some(self.of_tokens.get(at)?.get_or_init(|| self.words.get(token.span.of(&self.plain.text), form)))
    }

    /// The word of a token as it is looked up; empty for what is no word.
    pub(super) fn folded(&self, at: usize) -> &str {
        self.word(at).map_or("", |word| &word.folded)
    }

    /// Whether a token is no word, or one so short that a name may have another one behind it that counts.
    pub(super) fn is_small(&self, at: usize) -> bool {
        let Some(token) = self.mentions.tokens.get(at).filter(|token| token.is_word) else { return true };
        let text = token.span.of(&self.plain.text);
        if text.is_ascii() { without_possessive(text) <= 3 } else { self.folded(at).len() <= 3 }
    }

    /// A word without the possessive ending.
    pub(super) fn word_span(&self, at: usize) -> Span {
        let Some(token) = self.mentions.tokens.get(at) else { return Span::default() };
        Span::new(token.span.start, token.span.start + without_possessive(token.span.of(&self.plain.text)))
    }

    pub(super) fn span(&self, from: usize, to: usize) -> Option<Span> {
        let first = self.mentions.tokens.get(from)?.span;
        let last = self.word_span(to.checked_sub(1)?);
        Some(Span::new(first.start, last.end))
    }

    fn status_of(&self, at: usize) -> Status {
        let form = self.mentions.forms.get(at).copied().unwrap_or_default();
        if !form.is_unknown() {
            return Status::Vocabulary;
        }
        let Some(token) = self.mentions.tokens.get(at) else { return Status::Aside };
        let text = token.span.of(&self.plain.text);
        if !token.is_word {
            return if lexicon::is_hyphen(text) { Status::Passable } else { Status::Aside };
        }
        let status = self.words.status_of(text, form);
        if status != Status::Unknown {
            return status;
        }
        let Some(word) = self.word(at) else { return Status::Aside };
        // "ponto-mesencephalic" has the first part of a compound.
        let leads = word.folded.ends_with('o') && self.is_led_by(at);
        if self.is_no_prose(at) {
            Status::Aside
        } else if leads {
            Status::Inflected
        } else {
            Status::Unknown
        }
    }

    /// Whether a hyphen and a word stand right behind a word.
    fn is_led_by(&self, at: usize) -> bool {
        let tokens = self.mentions.tokens.get(at..at + 3);
        tokens.is_some_and(|tokens| {
            let touch = tokens.windows(2).all(|pair| pair[0].span.end == pair[1].span.start);
            touch && lexicon::is_hyphen(self.text(at + 1)) && tokens[2].is_word
        })
    }

    /// Whether a word belongs to an address, a key, a file name, an attribute, a link or struck text.
    pub(super) fn is_no_prose(&self, at: usize) -> bool {
        let Some(token) = self.mentions.tokens.get(at) else { return true };
        let text = &self.plain.text;
        if self.plain.has_mark(token.span, Mark::Struck) || self.plain.has_mark(token.span, Mark::Link) {
            return true;
        }
        let word = token.span.of(text);
        let inner_capitals = word.chars().skip(1).any(char::is_uppercase) && word.chars().any(char::is_lowercase);
        if inner_capitals {
            return true;
        }
        let before = text.get(..token.span.start).unwrap_or_default();
        let from = before.rfind(char::is_whitespace).map_or(0, |place| place + 1);
        let behind = text.get(token.span.end..).unwrap_or_default();
        let to = token.span.end + behind.find(char::is_whitespace).unwrap_or(behind.len());
        let run = text.get(from..to).unwrap_or_default();
        let sign = run.contains(['@', '_', '\\', '=', '{', '}', '<', '>', '#', '~', '^', '$', '`', Plain::GAP]);
        let file = behind.strip_prefix('.').is_some_and(|rest| rest.starts_with(char::is_alphanumeric));
        let named = before.ends_with('.') && before.trim_end_matches('.').ends_with(char::is_alphanumeric);
        sign || file || named || run.contains("://") || run.starts_with("www.") || run.contains("][")
    }

    pub(super) fn status(&self, at: usize) -> Status {
        self.status.get(at).copied().unwrap_or(Status::Aside)
    }

    /// Whether a word is none of a name's, but the plural or singular of one by rule.
    pub(super) fn is_derived(&self, at: usize) -> bool {
        self.mentions.forms.get(at).is_some_and(|form| form.exact.is_none())
    }

    /// Whether an article stands right before a token.
    pub(super) fn has_article(&self, at: usize) -> bool {
        let before = at.checked_sub(1).filter(|before| self.status(*before) == Status::Passable);
        before.and_then(|before| self.mentions.tokens.get(before)).is_some_and(|token| token.is_word)
    }

    /// The next word that a name could go on with.
    pub(super) fn neighbour(&self, at: usize, back: bool) -> Option<usize> {
        let mut place = at;
        loop {
            place = if back { place.checked_sub(1)? } else { place + 1 };
            match self.status(place) {
                Status::Passable => {}
                Status::Aside | Status::Short | Status::Stub => return None,
                _ => return Some(place),
            }
            if place >= self.status.len() {
                return None;
            }
        }
    }

    /// Looks through the block.
    pub fn suspects(&mut self) -> Vec<Suspect> {
        self.triggers = (0..self.status.len()).filter(|at| self.is_trigger(*at)).collect();
        let mut found = self.out_of_order();
        if self.in_subject {
            found.extend(self.incomplete());
            found.extend((0..self.status.len()).filter_map(|at| self.false_plural(at)));
        }
        if self.triggers.is_empty() && found.is_empty() {
            return Vec::new();
        }
        self.choices = vec![OnceCell::new(); self.status.len()];
        found.extend(self.triggers.iter().filter_map(|at| self.suspect_at(*at)));
        // Two wrong words of one name make two suspects: the likelier one stands.
        found.sort_by(|a, b| b.score().total_cmp(&a.score()));
        let mut list: Vec<Suspect> = Vec::new();
        for suspect in found {
            if !list.iter().any(|other| other.overlaps(&suspect)) {
                list.push(suspect);
            }
        }
        list.sort_by_key(|suspect| suspect.guesses.first().map_or(0, |best| best.tokens.0));
        if self.is_foreign(&list) { Vec::new() } else { list }
    }

    /// Most of the words are of another language.
    fn is_foreign(&self, suspects: &[Suspect]) -> bool {
        let explained = |at: usize| {
            suspects
                .iter()
                .filter_map(|suspect| suspect.guesses.first())
                .any(|guess| (guess.tokens.0..guess.tokens.1).contains(&at))
        };
        let words = self.status.iter().filter(|status| !matches!(status, Status::Aside | Status::Passable)).count();
        let strange = (0..self.status.len())
            .filter(|at| self.status.get(*at) == Some(&Status::Unknown) && !explained(*at))
            .count();
        strange >= 3 && strange * 10 >= words * 3
    }
}
