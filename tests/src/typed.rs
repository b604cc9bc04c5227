//! Completion as it is typed: where a right text names a nerve or muscle, four letters of the name are typed in its stead,
//! and what completion offers first is compared with the name.
//!
//! Two ways of typing are measured. *From the start* are the first four letters; where two names of a section begin with
//! the same word, no program can tell from these which is meant. *By words* are the first two letters of the first word and
//! of the last, which a fuzzy search takes as well; an author who knows that the first word says little types so.

use fascicle_analysis::features::completion::{self, Item, Names};
use fascicle_analysis::features::places;
use fascicle_analysis::{Form, Knowledge, Settings, Span};
use fascicle_vocab::{EntryId, Kind, Standing};

/// How four letters are typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// The first four letters of the name.
    FromTheStart,
    /// The first two letters of its first and of its last word; of a single word its first four.
    ByWords,
}

impl Way {
    /// The letters that are typed of a name.
    pub fn letters(self, name: &str) -> String {
        let words: Vec<&str> = name.split([' ', '-']).filter(|word| !word.is_empty()).collect();
        match (self, words.as_slice()) {
            (Self::ByWords, [first, .., last]) => first.chars().take(2).chain(last.chars().take(2)).collect(),
            _ => name.chars().take(4).collect(),
        }
    }
}

/// A name that was typed.
#[derive(Clone, Debug)]
pub struct Typed {
    /// The name as it stands in the text.
    pub name: String,
    /// What was typed of it.
    pub letters: String,
    /// The place of the right structure among what was offered, from 0.
    pub rank: Option<usize>,
    /// What was offered first.
    pub first: Option<String>,
    /// The structures that a reader could not tell apart by what was typed, for names that begin so are in the same
    /// section.
    pub twins: usize,
}

/// Types every name of a nerve or muscle in a text. With `alone`, nothing stands behind the place yet, as in a text that is
/// being written; else the rest of the text is there, as in one that is being changed.
pub fn typed(text: &str, way: Way, alone: bool, names: &Names, knowledge: &Knowledge) -> Vec<Typed> {
    let read = |text: &str| fascicle_analysis::read(text, Form::Markdown, knowledge, &Settings::default());
    let reading = read(text);
    let wanted: Vec<(Span, EntryId)> = places::all(&reading)
        .filter_map(|place| {
            let [entry] = *place.entries else { return None };
            let is_plain = place.editable && !place.shared && !place.plural && place.standing != Standing::Abbreviation;
            let is_wanted = is_plain
                && place.span.len() >= 6
                && matches!(knowledge.vocabulary.kind(entry), Kind::Nerve | Kind::Muscle);
            is_wanted.then_some((place.span, entry))
        })
        .collect();
    let mut list = Vec::new();
    for (span, entry) in &wanted {
        let name = span.of(text);
        let letters = way.letters(name);
        let tail = if alone { "\n" } else { text.get(span.end..).unwrap_or_default() };
        let partial = format!("{}{letters}{tail}", text.get(..span.start).unwrap_or_default());
        let at = span.start + letters.len();
        let found = completion::complete(&partial, Form::Markdown, at, &read(&partial), names, knowledge);
        let is_it = |item: &Item| item.entry == Some(*entry);
        let begins = |(_, other): &&(Span, EntryId)| {
            other != entry && way.letters(knowledge.vocabulary.name(*other)).eq_ignore_ascii_case(&letters)
        };
        let mut twins: Vec<EntryId> = wanted.iter().filter(begins).map(|(_, other)| *other).collect();
        twins.sort_unstable();
        twins.dedup();
        list.push(Typed {
            name: name.to_owned(),
            rank: found.items.iter().position(is_it),
            first: found.items.first().map(|item| item.text.clone()),
            letters,
            twins: twins.len(),
        });
    }
    list
}

/// How many of those typed came first, among the first three, and among the first five, of how many.
pub fn counts(list: &[Typed]) -> [usize; 4] {
    let within = |most: usize| list.iter().filter(|typed| typed.rank.is_some_and(|rank| rank < most)).count();
    [within(1), within(3), within(5), list.len()]
}
