//! Completion: names by fuzzy match, in the author's capitals, with what makes the sentence true first.
//!
//! What may be meant is found by the letters ([`Names`]); which of it is meant, by what speaks for it at the place
//! ([`evidence`]).

mod beginnings;
pub mod evidence;
mod names;

use fascicle_model::{EntryId, Name, Segments, Standing, Vocabulary};
use fuzzy_matcher::FuzzyMatcher;
use fuzzy_matcher::skim::SkimMatcherV2;
use rustc_hash::{FxHashMap, FxHashSet};

use self::beginnings::beginnings;
use self::evidence::{Evidence, Match, Scene, weigh};
pub use self::names::Names;
use self::names::letters;
use super::context::{self, Context};
use crate::blocks::Form;
use crate::consistency;
use crate::knowledge::Knowledge;
use crate::reading::Reading;
use crate::settings::Settings;
use crate::text::Span;
use crate::words::fold;

/// The most items that are offered at once.
const MOST: usize = 60;

/// The most words of a name that are taken from before the cursor.
const MOST_WORDS: usize = 5;

/// The least letters that are looked for in the middle of words.
const LEAST_FUZZY: usize = 3;

/// How much better a fuzzy match must be than none: of the score of the text itself, the share that is asked for.
const LEAST_SHARE: f32 = 0.4;

/// A text that is being written, and what it is read by.
#[derive(Clone, Copy, Debug)]
pub struct Draft<'a> {
    /// The text.
    pub text: &'a str,
    /// Its form.
    pub form: Form,
    /// As it was read.
    pub reading: &'a Reading,
    /// What the reader knows.
    pub knowledge: &'a Knowledge,
    /// The names to offer.
    pub names: &'a Names,
    /// What the course decides.
    pub settings: &'a Settings,
}

/// A completion.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Item {
    /// The entry; segments have none.
    pub entry: Option<EntryId>,
    /// What is inserted.
    pub text: String,
    /// The name that the typed text matched, where it is another one ("APB").
    pub matched: Option<String>,
    /// It makes the sentence true.
    pub fits: bool,
}

/// What can be completed at a place.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Completion {
    /// What is replaced.
    pub span: Span,
    /// The likeliest first.
    pub items: Vec<Item>,
    /// Further typing may bring others than those of these that still match.
    pub more: bool,
}

/// Completes at a byte of a text. What makes the sentence true comes first, then what belongs to the section, then the
/// rest; where nothing was typed yet, only what makes the sentence true.
pub fn complete(draft: &Draft, offset: usize) -> Completion {
    let place = Place::new(draft, offset);
    let Place { span, typed, capital, .. } = place;
    let matches = place.matches(draft);
    let found: FxHashSet<EntryId> = matches.iter().map(|found| found.name.entry).collect();
    let is_wanted = |id: EntryId| place.folded.is_empty() || found.contains(&id);
    let context = context::context(draft.text, draft.form, span, draft.reading, draft.knowledge, &is_wanted);
    let own = OwnNames::new(draft, &context);
    let mut items: Vec<Item> = segments(place.line, typed, &context.segments)
        .into_iter()
        .map(|text| Item { entry: None, text, matched: None, fits: true })
        .collect();
    if place.folded.is_empty() {
        let fitting = context.fitting.iter().take(MOST).map(|id| {
            let name = own.spelled(&own.name(*id).text);
            Item { entry: Some(*id), text: if capital { capitalised(&name) } else { name }, matched: None, fits: true }
        });
        items.splice(0..0, fitting);
        let more = !items.is_empty(); // what is typed next may be anything
        return Completion { span, items, more };
    }
    let ranked = rank(&matches, &place, &context, &own, draft);
    let more = ranked.len() + items.len() > MOST;
    for (found, _) in ranked.into_iter().take(MOST.saturating_sub(items.len())) {
        let fits = context.fitting.contains(&found.name.entry);
        items.push(Item { fits, ..item(&found, &place, &own) });
    }
    let is_plain = |item: &Item| fold(&item.text).starts_with(&place.folded);
    let more = more || !items.iter().all(is_plain);
    Completion { span, items, more }
}

/// What speaks for each structure that may be meant at a byte of a text, the likeliest first: what the weights of
/// [`evidence`] are fitted to.
pub fn evidence_at(draft: &Draft, offset: usize) -> Vec<(EntryId, Evidence)> {
    let place = Place::new(draft, offset);
    let matches = place.matches(draft);
    let found: FxHashSet<EntryId> = matches.iter().map(|found| found.name.entry).collect();
    let is_wanted = |id: EntryId| found.contains(&id);
    let context = context::context(draft.text, draft.form, place.span, draft.reading, draft.knowledge, &is_wanted);
    let own = OwnNames::new(draft, &context);
    let ranked = rank(&matches, &place, &context, &own, draft);
    ranked.into_iter().map(|(found, evidence)| (found.name.entry, evidence)).collect()
}

/// The best match of each entry, the likeliest first.
fn rank<'a>(
    matches: &[Match<'a>],
    place: &Place,
    context: &Context,
    own: &OwnNames,
    draft: &Draft,
) -> Vec<(Match<'a>, Evidence)> {
    let scene = Scene::new(context, place.line, place.begins(), &draft.knowledge.vocabulary, draft.names);
    let mut best: FxHashMap<EntryId, (f32, Match, Evidence)> = FxHashMap::default();
    for found in matches {
        let is_own = own.name(found.name.entry).text == found.name.text;
        let evidence = scene.evidence(*found, &place.folded, place.typed, is_own);
        let weight = weigh(&evidence);
        let slot = best.entry(found.name.entry).or_insert((f32::MIN, *found, evidence));
        if weight > slot.0 {
            *slot = (weight, *found, evidence);
        }
    }
    let mut list: Vec<(f32, Match, Evidence)> = best.into_values().collect();
    list.sort_by(|(a, one, _), (b, other, _)| {
        b.total_cmp(a)
            .then_with(|| one.name.text.len().cmp(&other.name.text.len()))
            .then_with(|| one.name.text.cmp(&other.name.text))
    });
    list.into_iter().map(|(_, found, evidence)| (found, evidence)).collect()
}

/// What was typed, and where.
struct Place<'a> {
    /// What is replaced.
    span: Span,
    /// The line up to what was typed.
    line: &'a str,
    typed: &'a str,
    folded: String,
    /// A sentence or an item begins here.
    capital: bool,
}

impl<'a> Place<'a> {
    fn new(draft: &Draft<'a>, offset: usize) -> Self {
        let before = draft.text.get(..offset).unwrap_or_default();
        let line = before.rsplit(['\n', '\r']).next().unwrap_or_default();
        let typed = typed(line, draft.names);
        let span = Span::new(offset - typed.len(), offset);
        let line = line.get(..line.len() - typed.len()).unwrap_or_default();
        Self { span, line, typed, folded: fold(typed), capital: starts_sentence(line) }
    }

    /// A sentence, an item or a cell begins here, the cell in whatever capitals.
    fn begins(&self) -> bool {
        self.capital || self.line.trim_end().ends_with('|')
    }

    /// The names that what was typed may be meant for.
    fn matches<'n>(&self, draft: &Draft<'n>) -> Vec<Match<'n>> {
        let folded = &*self.folded;
        if folded.is_empty() {
            return Vec::new();
        }
        let matcher = SkimMatcherV2::default().ignore_case();
        let mask = letters(folded);
        #[allow(clippy::cast_precision_loss)] // scores are small
        let full = matcher.fuzzy_match(folded, folded).unwrap_or(1) as f32;
        let is_fuzzy = folded.len() >= LEAST_FUZZY;
        let mut list = Vec::new();
        for name in draft.names.list.iter().filter(|name| name.letters & mask == mask) {
            let begins_word = || name.folded.split([' ', '-']).any(|word| word.starts_with(folded));
            let begins = name.folded.starts_with(folded) || begins_word();
            if !begins && !is_fuzzy {
                continue;
            }
            #[allow(clippy::cast_precision_loss)]
            let share = matcher.fuzzy_match(&name.folded, folded).map_or(0.0, |score| score as f32 / full);
            let beginnings = beginnings(&name.folded, folded);
            if begins || beginnings.is_some() || share >= LEAST_SHARE {
                list.push(Match { name, letters: share.min(1.0), beginnings, coordinated: false });
            }
        }
        list.extend(self.coordinated(draft));
        list
    }

    /// Names that share their first words with the name before, where a conjunction stands between: "flexor carpi radialis
    /// and u…".
    fn coordinated<'n>(&self, draft: &Draft<'n>) -> Vec<Match<'n>> {
        let mut list = Vec::new();
        let Some(bare) = JOINS.iter().find_map(|join| self.line.trim_end().strip_suffix(join)) else { return list };
        let words: Vec<String> = bare.trim_end().rsplit(' ').take(MOST_WORDS).map(fold).collect();
        for count in 2..=words.len() {
            let written: Vec<&str> = words.iter().take(count).rev().map(String::as_str).collect();
            let written = written.join(" ");
            let is_name = draft.names.starting_with(&written).next().is_some_and(|name| name.folded == written);
            if !is_name {
                continue;
            }
            let shared = written.rsplit_once(' ').map_or("", |(shared, _)| shared);
            let wanted = format!("{shared} {}", self.folded);
            let names = draft.names.starting_with(&wanted).filter(|name| name.folded != written);
            list.extend(names.map(|name| Match { name, letters: 1.0, beginnings: None, coordinated: true }));
        }
        list
    }
}

/// What stands between names that share a word.
const JOINS: [&str; 6] = [" and", " or", ",", " &", "/", " et"];

/// The segments that go on from those of a list that is being written, of readings of the segments of a structure.
fn segments(line: &str, typed: &str, readings: &[Segments]) -> Vec<String> {
    let is_part = |c: char| c.is_ascii_alphanumeric() || matches!(c, ' ' | ',' | '-' | '–');
    let tail = line.rsplit(|c: char| !is_part(c)).next().unwrap_or_default();
    let words = tail.split([' ', ',']).filter(|word| !word.is_empty());
    let written: Vec<Segments> =
        words.rev().map_while(|word| Segments::parse(word.trim_end_matches(['-', '–'])).ok()).collect();
    let done = written.iter().fold(Segments::EMPTY, |all, one| all.union(*one));
    let is_range = tail.trim_end().ends_with(['-', '–']);
    let typed = typed.to_uppercase();
    let mut list: Vec<String> = Vec::new();
    for all in readings.iter().filter(|all| done.within(**all)) {
        let last = done.iter().last();
        let rest = all.minus(done).iter().filter(|index| last.is_none_or(|last| *index > last));
        let rest = rest.fold(Segments::EMPTY, |set, index| set.union(Segments::one(index)));
        let written = match (is_range, rest.iter().last()) {
            (true, Some(end)) => Segments::name(end),
            _ => rest.to_string(),
        };
        if !written.is_empty() && written.to_uppercase().starts_with(&typed) && !list.contains(&written) {
            list.push(written);
        }
    }
    list
}

/// What entries are called: as the course has chosen, else as the document calls them, else in its language.
struct OwnNames<'a> {
    context: &'a Context<'a>,
    vocabulary: &'a Vocabulary,
    settings: &'a Settings,
    preferred: FxHashMap<EntryId, &'a Name>,
}

impl<'a> OwnNames<'a> {
    fn new(draft: &Draft<'a>, context: &'a Context<'a>) -> Self {
        let vocabulary = &draft.knowledge.vocabulary;
        let preferred = draft.settings.prefer.iter().rev().flat_map(|text| draft.knowledge.names.lookup(text));
        let preferred = preferred
            .filter_map(|found| Some((found.entry, vocabulary.entry(found.entry).names.get(usize::from(found.name))?)));
        Self { context, vocabulary, settings: draft.settings, preferred: preferred.collect() }
    }

    fn is_avoided(&self, name: &Name) -> bool {
        consistency::is_avoided(name.standing, self.settings)
    }

    fn name(&self, id: EntryId) -> &'a Name {
        let names = &self.vocabulary.entry(id).names;
        let latin = || names.iter().find(|name| name.standing == Standing::Latin).filter(|_| self.context.is_latin);
        let in_use = || self.context.name_in_use(id, self.vocabulary).filter(|name| !self.is_avoided(name));
        let first = || names.iter().find(|name| !self.is_avoided(name));
        let chosen = self.preferred.get(&id).copied().or_else(in_use).or_else(latin).or_else(first);
        chosen.or_else(|| names.first()).unwrap_or(&NAMELESS)
    }

    /// The name that a match completes to if not to itself: of a short name, one that begins as it was typed.
    fn full_name(&self, name: &names::Name, folded: &str) -> &'a str {
        let own = self.name(name.entry);
        if name.standing != Standing::Short || self.is_chosen(name.entry) || fold(&own.text).starts_with(folded) {
            return &own.text;
        }
        let is_full =
            |other: &&Name| matches!(other.standing, Standing::Preferred | Standing::Exact | Standing::Spelling);
        let names = self.vocabulary.entry(name.entry).names.iter().filter(is_full);
        let begins = names.filter(|other| !self.is_avoided(other)).find(|other| fold(&other.text).starts_with(folded));
        &begins.unwrap_or(own).text
    }

    /// The course has chosen the name.
    fn is_chosen(&self, id: EntryId) -> bool {
        self.preferred.contains_key(&id)
    }

    /// A name in the spelling that the course has chosen.
    fn spelled(&self, name: &str) -> String {
        self.settings.spelling.map_or_else(|| name.to_owned(), |spelling| consistency::respelled(name, spelling))
    }
}

/// What an entry without a name would be called; the vocabulary has none.
static NAMELESS: Name = Name { text: String::new(), standing: Standing::Preferred, plural: None, ambiguous: false };

/// Whether a place is the beginning of a sentence, item or cell, by what stands before it in its line.
fn starts_sentence(line: &str) -> bool {
    let bare = line.trim_end();
    bare.is_empty() || bare.ends_with(['.', '!', '?', '#']) || matches!(bare.trim_start(), "-" | "*" | "+")
}

/// What was typed of a name: the words before the cursor that begin one, else the last word; empty where there is none.
fn typed<'a>(line: &'a str, names: &Names) -> &'a str {
    let mut starts: Vec<usize> = Vec::new();
    let mut inside = false;
    for (at, c) in line.char_indices() {
        let is_part = c.is_alphanumeric() || matches!(c, '\'' | '’' | '-');
        if is_part && !inside {
            starts.push(at);
        } else if !is_part && c != ' ' {
            starts.clear();
        }
        inside = is_part;
    }
    let words = starts.len().min(MOST_WORDS);
    let candidates = starts.get(starts.len() - words..).unwrap_or_default();
    let rest = |at: usize| line.get(at..).unwrap_or_default();
    for start in candidates {
        let typed = rest(*start);
        let several = typed.trim_end().contains(' ') || typed.ends_with(' ');
        if several && names.starting_with(&fold(typed)).next().is_some() {
            return typed;
        }
    }
    if inside { candidates.last().map_or("", |at| rest(*at)) } else { "" }
}

/// The item for a match. Abbreviations, former, informal and short names complete to the one that the author uses, and so
/// does every other name that what was typed does not tell from it, or that the course keeps from.
fn item(found: &Match, place: &Place, own: &OwnNames) -> Item {
    let name = found.name;
    let expands =
        matches!(name.standing, Standing::Abbreviation | Standing::Former | Standing::Informal | Standing::Short);
    let is_avoided = consistency::is_avoided(name.standing, own.settings) || own.is_chosen(name.entry);
    let full = own.full_name(name, &place.folded);
    let (text, matched) = if found.coordinated {
        let rest = name.folded.find(&format!(" {}", place.folded)).and_then(|at| name.text.get(at + 1..));
        (rest.unwrap_or(full), Some(name.text.clone()))
    } else {
        let takes_own = expands || is_avoided || fold(full).starts_with(&place.folded);
        let text = if takes_own { full } else { &*name.text };
        (text, (expands || text != name.text).then(|| name.text.clone()))
    };
    let text = own.spelled(text);
    let mut written = place.typed.chars();
    let capital = written.next().is_some_and(char::is_uppercase)
        && (place.capital || written.next().is_none_or(|second| !second.is_uppercase()));
    Item { entry: Some(name.entry), text: if capital { capitalised(&text) } else { text }, matched, fits: false }
}

/// A text with a capital first letter.
pub fn capitalised(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| first.to_uppercase().chain(chars).collect())
}
