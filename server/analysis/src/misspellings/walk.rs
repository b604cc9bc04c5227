//! The names that a word may belong to. The tree of names is walked from every word that the name may begin with, where a
//! word that is not right may stand for any word that it is near to. The neighbours decide: *flexor pollicus brevis* is a walk
//! of three steps of which two are exact.

use crate::lexicon;
use crate::names::Form;
use crate::text::Span;

use super::find::Finder;
use super::guard::Known;
use super::index::{Near, TargetIx};
use super::plausible::weight;
use super::suspect::{Guess, Replacement, Slip, Suspect, likeness};
use super::triggers::LONGEST_HEARD;
use super::word::{PREFIXES, Status, Word};

/// A way in which a walk may go on over a token.
#[derive(Clone, Debug)]
pub(super) struct Choice {
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

/// No name has more words.
const MOST_WORDS: usize = 12;
/// No more words of a name are wrong at once.
const MOST_WRONG: usize = 3;
/// No more than so many tokens are one word when joined.
const MOST_PARTS: usize = 5;

impl Finder<'_> {
    /// What the suspect word at a token may be part of.
    pub(super) fn suspect_at(&self, at: usize) -> Option<Suspect> {
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

    /// The ways over a token.
    pub(super) fn choices(&self, at: usize) -> &[Choice] {
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
    pub(super) fn targets_near<'w>(&self, at: usize, word: &'w Word) -> &'w [Near] {
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
}
