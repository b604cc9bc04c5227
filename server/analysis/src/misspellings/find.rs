//! From the tokens of a block to suspects: words and runs of words that are no right names, each with what may be meant.
//!
//! A name is looked for by walking the tree of names from every word that a suspect word may belong to, where a word that
//! is not right may stand for any word that it is near to. The neighbours decide: *flexor pollicus brevis* is a walk of
//! three steps of which two are exact. Only where no longer name fits is a word judged by itself, and then it must be no
//! right word of any kind and stand very near to a word of the vocabulary.

use std::cell::OnceCell;
use std::rc::Rc;

use fascicle_model::{EntryId, Kind, Vocabulary};
use smallvec::SmallVec;

use crate::knowledge::Knowledge;
use crate::lexicon;
use crate::mentions::Mentions;
use crate::names::{Form, NameIndex, NameRef, WordId, is_article};
use crate::text::{Mark, Plain, Span};
use crate::words::fold_into;

use super::guard::Known;
use super::index::{Near, SHORTEST, SpellingIndex, TargetIx};
use super::latin;
use super::word::{LONG, PREFIXES, Status, Word, Words, without_possessive};

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
    fn explains_two(&self) -> bool {
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
    fn score(&self) -> f64 {
        self.guesses.first().map_or(0.0, |best| best.score)
    }

    fn overlaps(&self, other: &Self) -> bool {
        match (self.guesses.first(), other.guesses.first()) {
            (Some(one), Some(two)) => one.tokens.0 < two.tokens.1 && two.tokens.0 < one.tokens.1,
            _ => false,
        }
    }
}

/// A way in which a walk may go on over a token.
#[derive(Clone, Debug)]
struct Choice {
    /// Forms to step by, one or two.
    steps: [Option<Form>; 2],
    /// How many tokens it takes.
    takes: usize,
    /// What has to change; nothing for a word that is right.
    change: Option<Replacement>,
}

/// A step of a walk.
struct Taken<'s> {
    at: usize,
    choice: &'s Choice,
    plural: bool,
}

/// A walk down the tree of names from one token.
struct Walk<'s> {
    start: usize,
    /// The token that has to be wrong.
    trigger: usize,
    path: Vec<Taken<'s>>,
    out: Vec<Guess>,
}

/// Looks for suspects in one block.
pub struct Finder<'a> {
    plain: &'a Plain,
    mentions: &'a Mentions,
    vocabulary: &'a Vocabulary,
    names: &'a NameIndex,
    index: &'a SpellingIndex,
    words: &'a Words<'a>,
    /// The words of the tokens, found out when they are asked for.
    of_tokens: Vec<OnceCell<Rc<Word>>>,
    /// The document speaks of anatomy round about.
    in_subject: bool,
    status: Vec<Status>,
    /// Tokens that may be wrong.
    triggers: Vec<usize>,
    /// The ways over each token, found out when a walk comes by.
    choices: Vec<OnceCell<Vec<Choice>>>,
}

/// No name has more words.
const MOST_WORDS: usize = 12;
/// No more words of a name are wrong at once.
const MOST_WRONG: usize = 3;
/// No more than so many tokens are one word when joined.
const MOST_PARTS: usize = 5;
/// Longer rare words are what they are, though they sound like a name's.
const LONGEST_HEARD: usize = 6;

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

    fn text(&self, at: usize) -> &'a str {
        self.mentions.tokens.get(at).map_or("", |token| token.span.of(&self.plain.text))
    }

    fn word(&self, at: usize) -> Option<&Word> {
        let token = self.mentions.tokens.get(at).filter(|token| token.is_word)?;
        let form = self.mentions.forms.get(at).copied().unwrap_or_default();
        Some(self.of_tokens.get(at)?.get_or_init(|| self.words.get(token.span.of(&self.plain.text), form)))
    }

    /// The word of a token as it is looked up; empty for what is no word.
    fn folded(&self, at: usize) -> &str {
        self.word(at).map_or("", |word| &word.folded)
    }

    /// Whether a token is no word, or one so short that a name may have another one behind it that counts.
    fn is_small(&self, at: usize) -> bool {
        let Some(token) = self.mentions.tokens.get(at).filter(|token| token.is_word) else { return true };
        let text = token.span.of(&self.plain.text);
        if text.is_ascii() { without_possessive(text) <= 3 } else { self.folded(at).len() <= 3 }
    }

    /// A word without the possessive ending.
    fn word_span(&self, at: usize) -> Span {
        let Some(token) = self.mentions.tokens.get(at) else { return Span::default() };
        Span::new(token.span.start, token.span.start + without_possessive(token.span.of(&self.plain.text)))
    }

    fn status_of(&self, at: usize) -> Status {
        let Some(token) = self.mentions.tokens.get(at) else { return Status::Aside };
        let text = token.span.of(&self.plain.text);
        if !token.is_word {
            return if lexicon::is_hyphen(text) { Status::Passable } else { Status::Aside };
        }
        let form = self.mentions.forms.get(at).copied().unwrap_or_default();
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
    fn is_no_prose(&self, at: usize) -> bool {
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

    /// Names whose words stand in another order than they should (*flexor brevis pollicis*).
    fn out_of_order(&self) -> Vec<Suspect> {
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

    /// An English plural of a word that has another one (*foramens*).
    fn false_plural(&self, at: usize) -> Option<Suspect> {
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

    /// Names of which a word is left out, where what is left cannot stand by itself (*posterior of thigh*).
    fn incomplete(&self) -> Vec<Suspect> {
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

    /// Whether an article stands right before a token.
    fn has_article(&self, at: usize) -> bool {
        let before = at.checked_sub(1).filter(|before| self.status(*before) == Status::Passable);
        before.and_then(|before| self.mentions.tokens.get(before)).is_some_and(|token| token.is_word)
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

    /// Whether a word is none of a name's, but the plural or singular of one by rule.
    fn is_derived(&self, at: usize) -> bool {
        self.mentions.forms.get(at).is_some_and(|form| form.exact.is_none())
    }

    fn status(&self, at: usize) -> Status {
        self.status.get(at).copied().unwrap_or(Status::Aside)
    }

    /// The next word that a name could go on with.
    fn neighbour(&self, at: usize, back: bool) -> Option<usize> {
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

    fn is_trigger(&self, at: usize) -> bool {
        let beside_vocabulary = || {
            [true, false].into_iter().any(|back| {
                let next = self.neighbour(at, back);
                let small = |place: &usize| self.is_small(*place);
                let next = next.filter(small).and_then(|place| self.neighbour(place, back)).or(next);
                next.is_some_and(|place| self.status(place) == Status::Vocabulary && !small(&place))
            })
        };
        match self.status(at) {
            Status::Unknown => beside_vocabulary() || self.may_be_meant(at),
            Status::Inflected => true,
            Status::Stub => self.begins_word(at),
            Status::Aside | Status::Passable => false,
            Status::Vocabulary => self.may_be_out_of_place(at),
            Status::Short => PREFIXES.contains(&self.folded(at)) && self.begins_word(at),
            Status::Right(Known::Rare) => beside_vocabulary() && self.may_slip(at),
            Status::Right(Known::Common) => self.in_subject && beside_vocabulary() && self.may_slip(at),
        }
    }

    /// Whether a word of the vocabulary stands where no name has it, and one near to it would make a name with its
    /// neighbours: another form (*plexus pharyngeum*), or a word at one edit (*ulna nerve*).
    fn may_be_out_of_place(&self, at: usize) -> bool {
        let form = |place: usize| self.mentions.forms.get(place).copied();
        let own = form(at).unwrap_or_default();
        if self.word_span(at).len() < SHORTEST {
            return false;
        }
        let before = self.neighbour(at, true);
        let is_known = |place: Option<usize>| place.and_then(form).is_some_and(|form| !form.is_unknown());
        if own.exact.is_some() && !is_known(before) && !is_known(self.neighbour(at, false)) {
            return false;
        }
        let Some(word) = self.word(at).filter(|word| word.folded.len() >= SHORTEST) else { return false };
        if own.exact.is_none() && self.begins_word(at) {
            return true;
        }
        let list = &self.mentions.list;
        let mention = list.get(list.partition_point(|mention| mention.tokens.1 <= at));
        let mention = mention.filter(|one| one.tokens.0 <= at && one.tokens.1 - one.tokens.0 > 1);
        // The first word of a name inside a longer one may have the wrong case (*ramus posterior nervus axillaris*).
        let is_led = |before: usize| latin::looks_latin(self.folded(before)) && latin::looks_latin(&word.folded);
        if mention.is_some_and(|one| one.tokens.0 < at || !before.is_some_and(is_led)) {
            return false;
        }
        let behind = self.neighbour(at, false).filter(|_| mention.is_none());
        let (before, behind) = (before.and_then(form), behind.and_then(form));
        let stands = |near: Near, before: Option<Form>, behind: Option<Form>| {
            let form = self.index.target(near.target).map(|target| target.form).unwrap_or_default();
            self.index.stands_beside(form, before, behind)
        };
        self.index.may_be_wrong_form(own, before, behind)
            || own.exact.is_none() && self.index.family(&word.folded).any(|near| stands(near, before, behind))
            || [(before, None), (None, behind)].into_iter().any(|(before, behind)| {
                let is_known = before.or(behind).is_some_and(|form| !form.is_unknown());
                is_known
                    && !self.index.stands_beside(own, before, behind)
                    && self.endings(at, word).any(|near| stands(near, before, behind))
            })
    }

    /// Targets that differ from a word of the vocabulary in its end and are of another family: a letter is lost there, or the
    /// word is no name's itself.
    fn endings<'w>(&'w self, at: usize, word: &'w Word) -> impl Iterator<Item = Near> + 'w {
        let folded = &*word.folded;
        let is_derived = self.is_derived(at);
        let is_end = move |near: &&Near| {
            let Some(target) = self.index.target(near.target) else { return false };
            let same = folded.bytes().zip(target.text.bytes()).take_while(|(a, b)| a == b).count();
            let lost = same == folded.len() && target.text.len() == same + 1;
            (lost || is_derived && same + 3 >= folded.len()) && latin::stem(folded) != latin::stem(&target.text)
        };
        word.at_one_edit(self.index).iter().filter(is_end).copied()
    }

    /// Whether a right word stands so near to a word of the vocabulary that its neighbours would make a name with that.
    fn may_slip(&self, at: usize) -> bool {
        let Some(word) = self.word(at) else { return false };
        let rare = self.status(at) == Status::Right(Known::Rare);
        if !rare && !word.is_beside(self.index) {
            return self.begins_word(at);
        }
        let (before, behind) = (self.neighbour(at, true), self.neighbour(at, false));
        let unknown = |place: Option<usize>| place.is_some_and(|place| self.status(place) == Status::Unknown);
        if unknown(before) || unknown(behind) {
            return true;
        }
        let form = |place: Option<usize>| place.and_then(|place| self.mentions.forms.get(place).copied());
        let (before, behind) = (form(before), form(behind));
        let fits = |near: Near| {
            let form = self.index.target(near.target).map(|target| target.form).unwrap_or_default();
            [form.exact, form.singular].into_iter().flatten().any(|word| self.index.may_stand(word, before, behind))
        };
        let heard = rare && word.folded.len() <= LONGEST_HEARD;
        if heard && word.nearest(self.index).iter().copied().any(fits)
            || rare && self.index.family(&word.folded).any(fits)
        {
            return true;
        }
        word.at_one_edit(self.index).iter().copied().any(fits) || self.begins_word(at)
    }

    /// Whether an unknown word by itself may be a slip: a long one, or one near to a word of the vocabulary.
    fn may_be_meant(&self, at: usize) -> bool {
        let Some(word) = self.word(at) else { return false };
        let folded = &word.folded;
        folded.len() >= LONG
            || word.is_beside(self.index)
            || self.index.sounds_known(folded)
            || self.begins_word(at)
            || (3..folded.len().saturating_sub(2)).any(|cut| {
                let (head, tail) = folded.split_at(cut);
                self.index.is_name_word(head) && self.index.is_name_word(tail)
            })
    }

    /// Whether a word and its neighbour make one word of the vocabulary together.
    fn begins_word(&self, at: usize) -> bool {
        let mut joined = String::new();
        [at.checked_sub(1), Some(at)].into_iter().flatten().any(|first| {
            let (head, tail) = (self.folded(first), self.folded(first + 1));
            if head.is_empty() || tail.is_empty() || head.len() + tail.len() <= 6 {
                return false;
            }
            joined.clear();
            joined.push_str(head);
            joined.push_str(tail);
            self.index.is_name_word(&joined)
        })
    }

    /// What the suspect word at a token may be part of.
    fn suspect_at(&self, at: usize) -> Option<Suspect> {
        let mut starts = vec![at];
        let mut place = at;
        for _ in 0..6 {
            let short =
                place.checked_sub(1).filter(|before| matches!(self.status(*before), Status::Short | Status::Stub));
            let Some(before) = short.or_else(|| self.neighbour(place, true)) else { break };
            starts.push(before);
            place = before;
        }
        let mut guesses = Vec::new();
        for start in starts {
            let mut walk = Walk { start, trigger: at, path: Vec::new(), out: Vec::new() };
            self.walk(&mut walk, start, 0, 0);
            guesses.append(&mut walk.out);
        }
        guesses.retain(|guess| self.is_plausible(guess));
        if guesses.is_empty() {
            guesses = match self.status(at) {
                Status::Unknown => self.alone(at),
                Status::Inflected => self.oblique(at),
                _ => guesses,
            };
        }
        if guesses.is_empty() {
            return None;
        }
        guesses.sort_by(|a, b| b.score.total_cmp(&a.score).then_with(|| a.tokens.cmp(&b.tokens)));
        Some(Suspect { guesses })
    }

    fn walk<'s>(&'s self, walk: &mut Walk<'s>, at: usize, node: u32, words: usize) {
        if node != 0 && at > walk.trigger {
            self.end(walk, at, node);
        }
        if words >= MOST_WORDS || at >= self.status.len() {
            return;
        }
        if self.status(at) == Status::Passable {
            if at > walk.start {
                self.walk(walk, at + 1, node, words);
            }
            return;
        }
        let wrong = walk.path.iter().filter(|step| step.choice.change.is_some()).count();
        for choice in self.choices(at) {
            if choice.change.is_some() && (wrong >= MOST_WRONG || wrong > 0 && wrong > words) {
                continue;
            }
            let wrong_form = choice.change.as_ref().is_some_and(|change| change.slip == Slip::WrongForm)
                || choice.change.is_some() && self.status(at) == Status::Vocabulary;
            let mut reached = vec![(node, false)];
            for step in choice.steps.iter().flatten() {
                let mut next = Vec::new();
                for (node, plural) in &reached {
                    for (word, is_plural) in [(step.exact, false), (step.singular, true)] {
                        if is_plural && wrong_form {
                            continue;
                        }
                        if let Some(node) = word.and_then(|word| self.names.step(*node, word)) {
                            next.push((node, *plural | is_plural));
                        }
                    }
                }
                reached = next;
            }
            let steps = choice.steps.iter().flatten().count();
            for (node, plural) in reached {
                walk.path.push(Taken { at, choice, plural });
                self.walk(walk, at + choice.takes, node, words + steps);
                walk.path.pop();
            }
        }
    }

    /// A name ends here.
    fn end(&self, walk: &mut Walk<'_>, end: usize, node: u32) {
        let names = self.names.ending(node);
        let touches = walk
            .path
            .iter()
            .any(|step| step.choice.change.is_some() && (step.at..step.at + step.choice.takes).contains(&walk.trigger));
        if names.is_empty() || !touches {
            return;
        }
        let mut replacements = Vec::new();
        let mut exact = 0;
        let mut support = 0.0;
        for Taken { at, choice, .. } in &walk.path {
            if let Some(change) = &choice.change {
                replacements.push(change.clone());
            } else {
                exact += 1;
                support += weight(self.text(*at));
            }
        }
        let Some(span) = self.span(walk.start, end) else { return };
        let count = f64::from(replacements.len() as u32);
        let likeness = replacements.iter().map(|replacement| replacement.likeness).sum::<f64>() / count;
        let context = 1.0 - 0.5f64.powf(support);
        let unknown = walk
            .path
            .iter()
            .filter(|step| step.choice.change.is_some() && self.status(step.at) == Status::Unknown)
            .count();
        // More right words of one name say more than fewer.
        let explained = 0.05 * f64::from(unknown.saturating_sub(1) as u32) + 0.01 * f64::from(exact.min(6));
        let score = likeness * (0.72 + 0.28 * context) + explained - 0.03 * (count - f64::from(unknown.max(1) as u32));
        walk.out.push(Guess {
            tokens: (walk.start, end),
            span,
            names: names.to_vec(),
            plural: walk.path.iter().any(|step| step.plural),
            replacements,
            score,
            exact,
        });
    }

    fn span(&self, from: usize, to: usize) -> Option<Span> {
        let first = self.mentions.tokens.get(from)?.span;
        let last = self.word_span(to.checked_sub(1)?);
        Some(Span::new(first.start, last.end))
    }

    /// The ways over a token.
    fn choices(&self, at: usize) -> &[Choice] {
        self.choices.get(at).map_or(&[], |slot| slot.get_or_init(|| self.make_choices(at)))
    }

    fn make_choices(&self, at: usize) -> Vec<Choice> {
        let mut list = Vec::new();
        let span = self.word_span(at);
        let Some(own) = self.word(at) else { return list };
        let word = &*own.folded;
        let status = self.status(at);
        let form = self.names.form(word);
        if status == Status::Vocabulary {
            list.push(Choice { steps: [Some(form), None], takes: 1, change: None });
        }
        let is_unknown = |place: usize| self.status(place) == Status::Unknown;
        let may_be_wrong = self.triggers.binary_search(&at).is_ok()
            || [true, false].into_iter().any(|back| self.neighbour(at, back).is_some_and(is_unknown));
        if matches!(status, Status::Aside | Status::Passable) {
            return list;
        }
        if !may_be_wrong && status != Status::Unknown {
            self.split(at, &mut list);
            return list;
        }
        let may_differ = matches!(status, Status::Right(_) | Status::Inflected);
        let slip = match status {
            Status::Unknown => Slip::Misspelled,
            Status::Right(Known::Common) => Slip::CommonWord,
            Status::Right(Known::Rare) => Slip::RareWord,
            _ => Slip::WrongForm,
        };
        let mut add = |target: TargetIx, slip: Slip, distance: u32, sounds_alike: bool| {
            let Some(target) = self.index.target(target) else { return };
            let is_plural = target.form.exact.is_none();
            if target.form.is_unknown() || is_plural && slip == Slip::WrongForm {
                return;
            }
            let mut likeness = likeness(word, &target.text, distance, sounds_alike, slip);
            if is_plural && !word.ends_with(['s', 'i', 'a', 'e']) {
                likeness -= 0.1;
            }
            if is_plural {
                likeness -= 0.05;
            }
            let change = Replacement { span, text: target.text.to_string(), slip, distance, sounds_alike, likeness };
            list.push(Choice { steps: [Some(target.form), None], takes: 1, change: Some(change) });
        };
        if !matches!(status, Status::Unknown | Status::Short | Status::Stub) {
            for near in self.index.family(word) {
                add(near.target, Slip::WrongForm, near.distance, false);
            }
        }
        if status == Status::Unknown {
            for near in self.targets_near(at, own) {
                add(near.target, slip, near.distance, near.sounds_alike);
            }
        } else if status == Status::Vocabulary {
            for near in self.endings(at, own) {
                add(near.target, Slip::RareWord, near.distance, near.sounds_alike);
            }
        } else if may_differ {
            let rare = status == Status::Right(Known::Rare) && word.len() <= LONGEST_HEARD;
            for near in if rare { own.nearest(self.index) } else { own.at_one_edit(self.index) } {
                add(near.target, slip, near.distance, near.sounds_alike);
            }
        }
        if matches!(status, Status::Unknown | Status::Inflected) {
            self.joined(word, span, &mut list);
        }
        self.split(at, &mut list);
        list
    }

    /// Targets near to an unknown word: more of them where something speaks for it.
    fn targets_near<'w>(&self, at: usize, word: &'w Word) -> &'w [Near] {
        let is_spoken_for = |back: bool| {
            self.neighbour(at, back).is_some_and(|place| self.status(place) != Status::Right(Known::Common))
        };
        if self.in_subject || is_spoken_for(true) || is_spoken_for(false) {
            word.near(self.index)
        } else {
            word.nearest(self.index)
        }
    }

    /// *flexorpollicis*: two words of one name written as one.
    fn joined(&self, word: &str, span: Span, list: &mut Vec<Choice>) {
        for cut in 3..word.len().saturating_sub(2) {
            let (head, tail) = word.split_at(cut);
            let (first, second) = (self.names.form(head), self.names.form(tail));
            if first.is_unknown() || second.is_unknown() {
                continue;
            }
            let text = format!("{head} {tail}");
            let change =
                Replacement { span, text, slip: Slip::Joined, distance: 1, sounds_alike: true, likeness: 0.94 };
            list.push(Choice { steps: [Some(first), Some(second)], takes: 1, change: Some(change) });
        }
    }

    /// *brachio radialis*, *sterno-cleido-mastoid*: one word written as several.
    fn split(&self, at: usize, list: &mut Vec<Choice>) {
        let mut joined = String::new();
        let mut unknown = false;
        let mut hyphens = 0;
        let mut parts: u32 = 0;
        for end in at..(at + MOST_PARTS).min(self.status.len()) {
            let Some(token) = self.mentions.tokens.get(end) else { return };
            if !token.is_word {
                if self.status(end) != Status::Passable || end == at {
                    return;
                }
                hyphens += 1;
                continue;
            }
            let folded = self.folded(end);
            if !folded.bytes().all(|c| c.is_ascii_lowercase()) || folded.len() < 2 {
                return;
            }
            joined.push_str(folded);
            let is_part = PREFIXES.contains(&folded) || folded.len() > 3 && folded.ends_with('o');
            unknown |= match self.status(end) {
                Status::Vocabulary if self.is_derived(end) => true,
                Status::Vocabulary | Status::Right(Known::Common) => is_part && parts == 0,
                Status::Short => {
                    let is_known = self.index.right.known(folded).is_some() || lexicon::is_small_word(folded);
                    !is_known || is_part && parts == 0
                }
                _ => true,
            };
            parts += 1;
            let form = self.names.form(&joined);
            if parts < 2 || form.is_unknown() || joined.len() < 7 {
                continue;
            }
            let Some(span) = self.span(at, end + 1) else { return };
            let slip = if hyphens > 0 && hyphens == parts - 1 {
                Slip::Hyphenated
            } else if unknown {
                Slip::Split
            } else {
                Slip::SplitWords
            };
            let change = Replacement {
                span,
                text: joined.clone(),
                slip,
                distance: parts - 1,
                sounds_alike: true,
                likeness: 0.95,
            };
            list.push(Choice { steps: [Some(form), None], takes: end + 1 - at, change: Some(change) });
        }
    }

    /// Whether a name is plausibly meant: enough of it is right, and no true name stands there.
    fn is_plausible(&self, guess: &Guess) -> bool {
        let words = guess.exact as usize + guess.replacements.len();
        let (start, end) = guess.tokens;
        let only_unknown = !guess.has(Slip::WrongForm) && !guess.has(Slip::RareWord) && !guess.has(Slip::CommonWord);
        for mention in &self.mentions.list {
            let (from, to) = mention.tokens;
            if from >= end || to <= start {
                continue;
            }
            let inside = start <= from && to <= end && (to - from) < (end - start);
            if !inside {
                return false;
            }
            // A name of its own before a noun of kind ("subscapularis nerve") is no wrong form.
            let next = self.text(to).to_lowercase();
            let is_led = from > start && self.status(from - 1) == Status::Vocabulary && guess.exact >= 2;
            let is_muscle = |id: &EntryId| self.vocabulary.kind(*id) == Kind::Muscle;
            let is_owner = !lexicon::is_nerve_noun(&next) || mention.candidates.iter().any(is_muscle);
            if !only_unknown && lexicon::is_kind_noun(&next) && is_owner && !is_led {
                return false;
            }
        }
        let place = |span: Span| self.mentions.tokens.partition_point(|token| token.span.start < span.start);
        if guess.replacements.iter().any(|replacement| self.is_no_prose(place(replacement.span))) {
            return false;
        }
        let support: f64 = (start..end)
            .filter(|at| {
                self.status(*at) == Status::Vocabulary
                    && !guess.replacements.iter().any(|replacement| {
                        self.mentions.tokens.get(*at).is_some_and(|token| replacement.span.overlaps(token.span))
                    })
            })
            .map(|at| weight(self.text(at)))
            .sum();
        guess.replacements.iter().all(|replacement| match replacement.slip {
            Slip::Misspelled if words == 1 => {
                self.is_strong(replacement.span, &replacement.text, replacement.distance, replacement.sounds_alike)
            }
            Slip::Misspelled if support >= 0.9 || guess.explains_two() => true,
            Slip::Misspelled if self.in_subject && edits_heard(replacement) <= 1 => true,
            Slip::Misspelled => {
                let least = match edits_heard(replacement) {
                    1 if support >= 0.5 => 4,
                    1 => 6,
                    2 if support >= 0.5 => 7,
                    2 => 9,
                    _ => 12,
                };
                replacement.text.len() >= least
            }
            Slip::Joined | Slip::Split | Slip::Hyphenated | Slip::Order | Slip::Missing => true,
            Slip::SplitWords => support >= 0.7,
            Slip::WrongForm => {
                // A neighbour that is misspelled by one letter speaks for the name nearly as well as a right one.
                let others = guess.replacements.iter().filter(|one| one.slip == Slip::Misspelled && one.distance == 1);
                self.is_wrong_form(replacement, guess, words, support + 0.7 * f64::from(others.count() as u32))
            }
            Slip::RareWord => {
                support >= if replacement.span.len() > SHORTEST { 0.5 } else { 1.0 }
                    && replacement.text.len() > SHORTEST
            }
            Slip::CommonWord => {
                support >= if replacement.span.len() > SHORTEST { 0.5 } else { 1.3 }
                    && replacement.text.len() > SHORTEST
                    && !is_number(replacement.span.of(&self.plain.text))
            }
        }) && !guess.replacements.iter().all(|one| {
            matches!(one.slip, Slip::WrongForm | Slip::CommonWord | Slip::RareWord)
                && latin::is_number_pair(one.span.of(&self.plain.text), &one.text)
        })
    }

    /// Whether a form of a word is wrong in its place, and no other reading of it is right.
    fn is_wrong_form(&self, one: &Replacement, guess: &Guess, words: usize, support: f64) -> bool {
        let mut written = String::new();
        fold_into(one.span.of(&self.plain.text), &mut written);
        let tokens = &self.mentions.tokens;
        let at = tokens.partition_point(|token| token.span.start < one.span.start);
        let is_last = at + 1 >= guess.tokens.1;
        let before = (at > guess.tokens.0).then(|| self.text(at - 1).to_lowercase());
        let behind: SmallVec<[&str; 2]> =
            (at + 1..guess.tokens.1.min(at + 3)).map(|place| self.folded(place)).collect();
        let disagrees = latin::disagrees(&written, &one.text, &behind);
        if latin::is_plural_of(&written, &one.text) && before.as_deref().is_none_or(latin::is_adjective) && !disagrees {
            return false; // one structure where the name speaks of several, or the other way round
        }
        if latin::is_adjective(&written) && is_last && words < 3 {
            return false; // an adjective whose noun follows
        }
        let next = self.text(at + 1).to_lowercase();
        let before_noun = self.index.right.known(&next) == Some(Known::Common) && !lexicon::is_no_part_of_muscle(&next);
        let is_led = at > guess.tokens.0 && guess.exact >= 2;
        if !is_last && !is_led && before_noun && self.names.exactly(&[self.names.form(&written)]).is_some() {
            return false; // a name of its own that goes before a noun ("temporalis fascia")
        }
        let is_own = self.status(at) == Status::Vocabulary;
        let is_english = latin::is_adjective(&one.text) && !one.text.ends_with("ous");
        if is_own && written.ends_with("us") && !written.ends_with("oideus") && is_english {
            return false; // Latin among English ("internal abdominal obliquus") is a matter of taste
        }
        if is_own && latin::is_adjective(&written) && latin::is_adjective(&one.text) {
            return false; // two English adjectives of one noun ("spinal process", "spinous process")
        }
        let known = self.index.right.known(&written) == Some(Known::Common);
        if known && !self.in_subject {
            return false; // a word of everyday English ("medium heel")
        }
        let led = guess.tokens.0.checked_sub(1).map_or("", |place| self.folded(place));
        if at == guess.tokens.0 && led.ends_with('i') && written.ends_with("is") && led.len() > 3 {
            return false; // "musculi flexoris digitorum" is the genitive of the name
        }
        let is_latin = |word: &str| ["alis", "aris", "eus", "oideus", "icus"].iter().any(|end| word.ends_with(end));
        let agrees = before.as_deref().is_none_or(|before| !before.ends_with(['i', 'e']));
        if words == 2 && agrees && is_latin(&written) && ["ae", "i", "is"].iter().any(|end| one.text.ends_with(end)) {
            return false; // "ramus mandibularis" is good Latin beside "ramus mandibulae"
        }
        if guess.plural {
            return false; // all of it may stand in the plural
        }
        let known = self.status(at) == Status::Vocabulary && !self.is_derived(at);
        let latin_for_english = is_latin(&written) && latin::is_adjective(&one.text);
        let is_of_gender =
            before.as_deref().is_some_and(|before| latin::differs_in_gender(before, &written, &one.text));
        support >= if known && !latin_for_english && !is_of_gender { 0.7 } else { 0.3 }
    }

    /// Whether one word by itself is so near to another that it must have been meant.
    fn is_strong(&self, span: Span, meant: &str, distance: u32, sounds_alike: bool) -> bool {
        let written = span.of(&self.plain.text);
        let length = meant.len().min(written.len());
        let same_start = written.get(..1).is_some_and(|first| first.eq_ignore_ascii_case(&meant[..1]));
        let swapped_start = written.get(..2).is_some_and(|two| {
            let two: Vec<char> = two.to_ascii_lowercase().chars().rev().collect();
            meant.chars().take(2).eq(two)
        });
        let most = match length {
            0..=4 => 0,
            5..=7 => u32::from(self.in_subject),
            8..=9 => 1,
            10..=14 => 2,
            _ => 3,
        };
        let behind = self.plain.text.get(span.end..).unwrap_or_default();
        let named = behind.strip_prefix(' ').is_some_and(|next| next.starts_with(char::is_uppercase));
        let proper = written.starts_with(char::is_uppercase) && (named || !self.begins_sentence(span));
        if proper && (!self.in_subject || length < 9 || distance > 1 && length < 11) || self.is_named(span) {
            return false;
        }
        let (least, least_heard) = if self.in_subject { (8, 6) } else { (9, 7) };
        let heard_start = sounds_alike && self.in_subject && length >= least_heard;
        let first_lost = self.in_subject && meant.get(1..) == Some(written) && length >= SHORTEST;
        if !same_start && !swapped_start && !heard_start && !first_lost && (distance > 1 || length < least) {
            return false;
        }
        distance <= most || sounds_alike && length >= least_heard && distance <= most + 1
    }

    /// Whether a word in small letters follows a proper name, as that of a species does (*Danio rerio*).
    fn is_named(&self, span: Span) -> bool {
        let at = self.mentions.tokens.partition_point(|token| token.span.start < span.start);
        let Some(before) = at.checked_sub(1).filter(|_| span.of(&self.plain.text).starts_with(char::is_lowercase))
        else {
            return false;
        };
        let is_other = matches!(self.status(before), Status::Unknown | Status::Right(Known::Rare));
        let place = self.word_span(before);
        is_other && self.text(before).starts_with(char::is_uppercase) && !self.begins_sentence(place)
    }

    fn begins_sentence(&self, span: Span) -> bool {
        let before = self.plain.text.get(..span.start).unwrap_or_default().trim_end_matches(|c: char| {
            c.is_whitespace() || matches!(c, '(' | '"' | '“' | '‘' | '[' | '*' | '-' | '–')
        });
        before.is_empty() || before.ends_with(['.', '!', '?', ':', ';', '|'])
    }

    /// The name whose Latin case or gender is wrong by itself behind an English article (*the sartorium*).
    fn oblique(&self, at: usize) -> Vec<Guess> {
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
    fn alone(&self, at: usize) -> Vec<Guess> {
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

/// The edits of a replacement, one fewer where both sound alike.
fn edits_heard(replacement: &Replacement) -> u32 {
    replacement.distance.saturating_sub(u32::from(replacement.sounds_alike && replacement.distance > 1))
}

/// Whether a word is a small number ("*eight* cervical nerves").
fn is_number(word: &str) -> bool {
    let numbers = ["three", "four", "five", "seven", "eight", "nine", "twelve"];
    numbers.iter().any(|number| number.eq_ignore_ascii_case(word))
}

/// How much a right word says about the name that it stands in.
fn weight(word: &str) -> f64 {
    let lower = word.to_lowercase();
    match &*lower {
        "of" | "to" | "the" | "and" | "in" => 0.0,
        "nerve" | "nerves" | "muscle" | "muscles" | "plexus" => 0.5,
        "branch" | "branches" | "joint" | "joints" | "artery" | "vein" | "head" | "heads" | "part" | "parts"
        | "surface" | "border" | "bone" | "bones" | "gland" | "glands" | "ligament" | "region" | "line" | "area" => 0.3,
        _ if lower.len() < 4 => 0.3,
        _ => 1.0,
    }
}

/// How alike two words are, from 0 to 1.
fn likeness(written: &str, meant: &str, distance: u32, sounds_alike: bool, slip: Slip) -> f64 {
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
