//! The lexicon's phrases and the vocabulary's movements, ready to be matched against tokens.

use std::cell::OnceCell;

use fascicle_model::{Entry, EntryId, Kind, Vocabulary};
use rustc_hash::{FxHashMap, FxHashSet};
use smallvec::SmallVec;

use super::ClaimKind;
use super::signs::Signs;
use crate::lexicon::{self, RELATIONS, RelationWord};
use crate::words::{fold, tokens, without_possessive};

/// A word for a movement.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MovementWord {
    /// The movement; more than one where the word does not tell.
    pub movement: EntryId,
    /// How the word stands in a sentence.
    pub form: MovementForm,
}

/// How a word for a movement stands in a sentence.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MovementForm {
    /// "flexes"
    Verb,
    /// "flexion"
    Noun,
    /// "flexor"
    Agent,
    /// "flexed"
    Participle,
}

/// A description that fits more areas than these tells none.
const MANY_AREAS: usize = 12;

/// A word of some phrase.
type WordIx = u16;

#[derive(Clone, Debug)]
struct Slot {
    words: SmallVec<[WordIx; 6]>,
    /// Any one to five words stand for it.
    is_any: bool,
    /// It stands in the way of something, so that what stands for it leads to no place of its own.
    is_of_way: bool,
    may_miss: bool,
}

/// Relation words and movement words, ready to be matched.
#[derive(Debug, Default)]
pub struct Relations {
    phrases: Vec<Vec<Slot>>,
    /// The words of all phrases.
    words: FxHashMap<&'static str, WordIx>,
    /// For each word of a phrase the phrases that can begin with it.
    first: Vec<Vec<u16>>,
    /// The same for two words that follow each other, for phrases whose second word is told.
    second: FxHashMap<(WordIx, WordIx), SmallVec<[u16; 4]>>,
    /// For each word of a phrase the phrases that can begin with it whose second word may be any.
    any_second: Vec<SmallVec<[u16; 4]>>,
    /// Words of movements, by their first word.
    movements: FxHashMap<String, Vec<(Vec<String>, MovementWord)>>,
    /// Signs of lesions.
    signs: Signs,
    /// Skin areas by the words that tell them apart.
    areas: FxHashMap<Vec<String>, Vec<EntryId>>,
    /// For each word of a description, the places of the descriptions in [`Self::described`] that hold it.
    area_words: FxHashMap<String, Vec<usize>>,
    /// The descriptions of skin areas, with the areas.
    described: Vec<(Vec<String>, Vec<EntryId>)>,
    /// Skin areas by the words of their names, without those for skin.
    named_areas: FxHashMap<String, Vec<EntryId>>,
    /// Those of them that are neither dermatomes nor points.
    plain_areas: FxHashSet<EntryId>,
    /// The last words of their names: each description of an area has one.
    area_nouns: FxHashSet<String>,
}

impl Relations {
    /// Compiles the lexicon, with the verbs of the vocabulary's movements.
    pub fn new(vocabulary: &Vocabulary) -> Self {
        let mut relations = Self::default();
        for (place, relation) in (0_u16..).zip(RELATIONS) {
            let slots = relations.slots(relation.phrase, relation.kind == ClaimKind::Passage);
            for slot in &slots {
                for word in &slot.words {
                    if let Some(list) = relations.first.get_mut(usize::from(*word)) {
                        list.push(place);
                    }
                }
                if !slot.may_miss {
                    break;
                }
            }
            relations.phrases.push(slots);
        }
        relations.index_seconds();
        for (id, entry) in vocabulary.iter().filter(|(_, entry)| entry.kind == Kind::Movement) {
            for name in &entry.names {
                relations.add_movement(&name.text, id, MovementForm::Noun);
            }
            let Some((verb, agent)) = &entry.verb else { continue };
            relations.add_verb(verb, id);
            relations.add_movement(agent, id, MovementForm::Agent);
            relations.add_movement(&format!("{agent}s"), id, MovementForm::Agent);
            if let Some(joined) = joined_agent(entry) {
                relations.add_movement(&joined, id, MovementForm::Agent);
                relations.add_movement(&format!("{joined}s"), id, MovementForm::Agent);
            }
            for name in entry.names.iter().skip(1) {
                // "internal rotation" beside the verb "medially rotate" gives "internally rotate"
                let (Some((adjective, _)), Some((_, base))) = (name.text.split_once(' '), verb.split_once(' ')) else {
                    continue;
                };
                relations.add_verb(&format!("{adjective}ly {base}"), id);
            }
        }
        for (verb, movement) in lexicon::PLAIN_VERBS {
            let named = vocabulary.iter().find(|(_, entry)| entry.kind == Kind::Movement && entry.name() == *movement);
            if let Some((id, _)) = named {
                relations.add_verb(verb, id);
            }
        }
        let is_noun = |word: &str| {
            let found = relations.movement_at(0, &|at| if at == 0 { word } else { "" });
            found.is_some_and(|(movement, _)| movement.form == MovementForm::Noun)
        };
        let signs = Signs::new(vocabulary, &is_noun);
        relations.signs = signs;
        for (id, entry) in vocabulary.iter().filter(|(_, entry)| entry.kind == Kind::Skin) {
            if entry.class.as_deref() == Some("area") {
                relations.plain_areas.insert(id);
            }
            for name in &entry.names {
                let noun = telling_noun(&name.text).filter(|_| entry.class.as_deref() != Some("dermatome"));
                relations.area_nouns.extend(noun);
                for list in [
                    relations.areas.entry(telling_words(&name.text)).or_default(),
                    relations.named_areas.entry(plain_words(&name.text)).or_default(),
                ] {
                    if !list.contains(&id) {
                        list.push(id);
                    }
                }
            }
        }
        relations.described = relations.areas.iter().map(|(words, areas)| (words.clone(), areas.clone())).collect();
        for (place, (words, _)) in relations.described.iter().enumerate() {
            for word in words {
                relations.area_words.entry(word.clone()).or_default().push(place);
            }
        }
        relations
    }

    /// Whether a word is the noun of some area of skin.
    pub fn is_area_noun(&self, word: &str) -> bool {
        let singular = word.strip_suffix('s').filter(|stem| stem.len() > 2).unwrap_or(word);
        let mut words = lexicon::AREA_WORDS.iter().chain(lexicon::EVERYDAY_SIDES);
        let everyday = words.find(|(other, _)| *other == singular).map(|(_, name)| *name);
        [Some(singular), everyday].into_iter().flatten().any(|word| self.area_nouns.contains(word))
    }

    /// The areas of skin that a text describes, whatever words for skin, surface and side it uses.
    pub fn areas(&self, text: &str) -> Vec<EntryId> {
        let is_known = |word: &str| self.area_words.contains_key(word);
        let Some(words) = telling_words_where(text, &is_known).filter(|words| !words.is_empty()) else {
            return Vec::new();
        };
        // "the forehead" is no "side of the forehead", though a side tells no area from another.
        if let Some(named) = self.named_areas.get(&plain_words(text)) {
            return named.clone();
        }
        self.areas.get(&words).cloned().unwrap_or_default()
    }

    /// The areas of skin that a text describes where a verb says that it is skin: everyday words for its sides are
    /// understood, and a place that has several areas means all of them.
    pub fn areas_of_skin(&self, text: &str) -> Vec<EntryId> {
        let may_be_known = |word: &str| {
            let is_other = |list: &[(&str, &str)]| list.iter().any(|(other, _)| *other == word);
            self.area_words.contains_key(word) || is_other(lexicon::EVERYDAY_SIDES) || is_other(lexicon::AREA_WORDS)
        };
        let Some(mut words) = telling_words_where(text, &may_be_known) else { return Vec::new() };
        let areas = self.areas(text);
        if !areas.is_empty() {
            return areas;
        }
        for word in &mut words {
            if let Some((_, side)) = lexicon::EVERYDAY_SIDES.iter().find(|(everyday, _)| everyday == word) {
                *word = (*side).to_owned();
            }
        }
        let found = self.areas_with(&mut words);
        if !found.is_empty() {
            return found;
        }
        for word in &mut words {
            if let Some((_, name)) = lexicon::AREA_WORDS.iter().find(|(other, _)| other == word) {
                *word = (*name).to_owned();
            }
        }
        self.areas_with(&mut words)
    }

    /// The areas that are described by the words, or else by these and more.
    fn areas_with(&self, words: &mut [String]) -> Vec<EntryId> {
        words.sort_unstable();
        self.areas.get(&*words).cloned().unwrap_or_else(|| self.areas_within(words))
    }

    /// The areas whose descriptions hold all of the words and more, where the words tell a place that is not too wide:
    /// what is said of "the little finger" is said of its palmar and its dorsal skin.
    fn areas_within(&self, words: &[String]) -> Vec<EntryId> {
        if words.is_empty() || words.iter().all(|word| lexicon::is_wide_area(word)) {
            return Vec::new();
        }
        let holding = |word: &String| self.area_words.get(word).map_or(&[][..], Vec::as_slice);
        let fewest = words.iter().map(holding).min_by_key(|places| places.len()).unwrap_or_default();
        let mut list: Vec<EntryId> = Vec::new();
        for (known, areas) in fewest.iter().filter_map(|place| self.described.get(*place)) {
            if words.iter().all(|word| known.contains(word)) {
                list.extend(areas.iter().filter(|area| self.plain_areas.contains(area)));
            }
        }
        list.sort_unstable();
        list.dedup();
        if list.len() > MANY_AREAS { Vec::new() } else { list }
    }

    /// The signs of lesions.
    pub const fn signs(&self) -> &Signs {
        &self.signs
    }

    /// Notes with which two words each phrase can begin.
    fn index_seconds(&mut self) {
        self.any_second.resize_with(self.words.len(), SmallVec::new);
        for (place, slots) in (0_u16..).zip(&self.phrases) {
            let firsts = slots.iter().position(|slot| !slot.may_miss).map_or(slots.len(), |last| last + 1);
            for (at, slot) in slots.iter().enumerate().take(firsts) {
                let mut seconds: Vec<WordIx> = Vec::new();
                let mut is_open = true;
                for next in slots.get(at + 1..).unwrap_or_default() {
                    seconds.extend(&next.words);
                    is_open = next.is_any || (is_open && next.may_miss);
                    if next.is_any || !next.may_miss {
                        break;
                    }
                }
                for first in &slot.words {
                    if is_open {
                        if let Some(list) = self.any_second.get_mut(usize::from(*first)) {
                            list.push(place);
                        }
                        continue;
                    }
                    for second in &seconds {
                        let list = self.second.entry((*first, *second)).or_default();
                        if !list.contains(&place) {
                            list.push(place);
                        }
                    }
                }
            }
        }
    }

    /// The slots of a phrase, its words among the known ones.
    fn slots(&mut self, phrase: &'static str, is_of_way: bool) -> Vec<Slot> {
        let mut list = Vec::new();
        for slot in phrase.split(' ') {
            let (texts, may_miss) = slot.strip_suffix('?').map_or((slot, false), |texts| (texts, true));
            let mut words = SmallVec::new();
            for text in texts.split('|') {
                let next = WordIx::try_from(self.words.len()).unwrap_or(WordIx::MAX);
                words.push(*self.words.entry(text).or_insert(next));
            }
            self.first.resize_with(self.words.len(), Vec::new);
            list.push(Slot { words, is_any: texts == "~", is_of_way, may_miss });
        }
        list
    }

    fn add_verb(&mut self, verb: &str, id: EntryId) {
        for [before, behind] in &verb_forms(verb) {
            self.add_movement(before, id, MovementForm::Verb);
            if behind != before {
                self.add_movement(behind, id, MovementForm::Verb);
            }
        }
        let [before, behind] = &participle(verb);
        self.add_movement(before, id, MovementForm::Participle);
        if behind != before {
            self.add_movement(behind, id, MovementForm::Participle);
        }
    }

    fn add_movement(&mut self, words: &str, movement: EntryId, form: MovementForm) {
        let words: Vec<String> = words.split([' ', '-']).map(str::to_lowercase).collect();
        let Some(first) = words.first().cloned() else { return };
        self.movements.entry(first).or_default().push((words, MovementWord { movement, form }));
    }

    /// The longest relation phrase that begins at a token, with the token after its last. `word` gives the folded word
    /// of a token (empty where a phrase may not run).
    pub fn phrase_at<'w>(&self, at: usize, word: &dyn Fn(usize) -> &'w str) -> Option<(&'static RelationWord, usize)> {
        let first = *self.words.get(word(at))?;
        let line = Line { from: at, words: &self.words, word, known: [const { OnceCell::new() }; LINE] };
        // Words that are passed over may stand between the first two; else these two tell most phrases from the others.
        let mut open = SmallVec::<[u16; 16]>::new();
        if line.is_passed(at + 1) {
            open.extend_from_slice(self.first.get(usize::from(first))?);
        } else {
            open.extend_from_slice(self.any_second.get(usize::from(first))?);
            let told = line.word(at + 1).and_then(|second| self.second.get(&(first, second)));
            open.extend_from_slice(told.map_or(&[], SmallVec::as_slice));
            open.sort_unstable();
        }
        let mut best: Option<(&'static RelationWord, usize)> = None;
        for place in open.iter().map(|place| usize::from(*place)) {
            let (Some(slots), Some(relation)) = (self.phrases.get(place), RELATIONS.get(place)) else { continue };
            if let Some(end) = match_slots(slots, at, &line, true)
                && best.is_none_or(|(_, longest)| end > longest)
            {
                best = Some((relation, end));
            }
        }
        best
    }

    /// The longest word for a movement that begins at a token, with the token after its last.
    pub fn movement_at<'w>(&self, at: usize, word: &dyn Fn(usize) -> &'w str) -> Option<(MovementWord, usize)> {
        let candidates = self.movements.get(word(at))?;
        candidates
            .iter()
            .filter(|(words, _)| words.iter().zip(at..).all(|(wanted, at)| word(at) == wanted))
            .max_by_key(|(words, _)| words.len())
            .map(|(words, movement)| (movement.clone(), at + words.len()))
    }

    /// The movement that a text names, if it names one and nothing else.
    pub fn movement(&self, text: &str) -> Option<EntryId> {
        let words: Vec<String> = text.split([' ', '-']).map(str::to_lowercase).collect();
        let word = |at: usize| words.get(at).map_or("", String::as_str);
        let (movement, end) = self.movement_at(0, &word)?;
        (end == words.len()).then_some(movement.movement)
    }
}

/// The base form, the third person and the *-ing* form of a verb, each with its adverb before it and behind it.
pub fn verb_forms(verb: &str) -> [[String; 2]; 3] {
    let (adverb, last) = match verb.split_once(' ') {
        // "turn outwards": the verb comes first
        Some((first, rest)) if rest.ends_with("wards") => (rest, first),
        Some(_) => verb.rsplit_once(' ').unwrap_or(("", verb)),
        None => ("", verb),
    };
    let stem = last.strip_suffix('e').unwrap_or(last);
    let third = if last.ends_with('x') || last.ends_with("ss") { format!("{last}es") } else { format!("{last}s") };
    [last.to_owned(), third, format!("{stem}ing")]
        .map(|form| [format!("{adverb} {form}").trim().to_owned(), format!("{form} {adverb}").trim().to_owned()])
}

/// The word for the muscle that does a movement, in one word where a name of the movement is one: "plantarflexor" beside
/// "plantarflexion".
fn joined_agent(movement: &Entry) -> Option<String> {
    let (first, last) = movement.verb.as_ref()?.1.split_once(' ')?;
    let is_one_word = movement.names.iter().any(|name| name.text.starts_with(first) && !name.text.contains(' '));
    is_one_word.then(|| format!("{first}{last}"))
}

/// The past participle of a regular verb, with its adverb before it and behind it.
fn participle(verb: &str) -> [String; 2] {
    let (adverb, last) = match verb.split_once(' ') {
        Some((first, rest)) if rest.ends_with("wards") => (rest, first),
        Some(_) => verb.rsplit_once(' ').unwrap_or(("", verb)),
        None => ("", verb),
    };
    let form = format!("{}ed", last.strip_suffix('e').unwrap_or(last));
    [format!("{adverb} {form}").trim().to_owned(), format!("{form} {adverb}").trim().to_owned()]
}

/// The words of a description of an area that tell it from others, in order of the alphabet.
fn telling_words(text: &str) -> Vec<String> {
    telling_words_where(text, &|_| true).unwrap_or_default()
}

/// The same; `None` if one of them is not known.
fn telling_words_where(text: &str, is_known: &dyn Fn(&str) -> bool) -> Option<Vec<String>> {
    let mut words: Vec<String> = tokens(text)
        .iter()
        .filter(|token| token.is_word)
        .map(|token| token.span.of(text))
        .map(|word| fold(word.get(..without_possessive(word)).unwrap_or(word)))
        .filter(|word| !lexicon::is_area_noun(word) && !lexicon::is_determiner(word))
        .map(|mut word| {
            if word.ends_with('s') && word.len() > 3 {
                word.pop();
            }
            is_known(&word).then_some(word)
        })
        .collect::<Option<_>>()?;
    words.sort_unstable();
    words.dedup();
    Some(words)
}

/// The last word of a description of an area, if it tells it from others.
fn telling_noun(text: &str) -> Option<String> {
    let last = tokens(text).into_iter().rfind(|token| token.is_word)?;
    let word = fold(last.span.of(text));
    let is_adjective = lexicon::EVERYDAY_SIDES.iter().any(|(_, side)| *side == word) || lexicon::is_area_noun(&word);
    let singular = word.strip_suffix('s').filter(|stem| stem.len() > 2).map(str::to_owned);
    (!is_adjective).then(|| singular.unwrap_or(word))
}

/// The words of a description of an area without articles and words for skin.
fn plain_words(text: &str) -> String {
    let words = tokens(text).into_iter().filter(|token| token.is_word).map(|token| fold(token.span.of(text)));
    let words =
        words.filter(|word| !lexicon::is_determiner(word) && !matches!(&**word, "skin" | "overlying" | "covering"));
    let words: Vec<String> = words.collect();
    let from = words.iter().position(|word| !matches!(&**word, "of" | "over" | "on")).unwrap_or(words.len());
    words.get(from..).unwrap_or_default().join(" ")
}

/// How many words of a text are remembered while phrases are matched.
const LINE: usize = 16;

/// The words of a text from a place on, as words of phrases, each looked up once.
struct Line<'l, 'w> {
    from: usize,
    words: &'l FxHashMap<&'static str, WordIx>,
    word: &'l dyn Fn(usize) -> &'w str,
    known: [OnceCell<Option<WordIx>>; LINE],
}

impl Line<'_, '_> {
    /// The word at a place, if some phrase has it.
    fn word(&self, at: usize) -> Option<WordIx> {
        let find = || self.words.get((self.word)(at)).copied();
        self.known.get(at.wrapping_sub(self.from)).map_or_else(find, |slot| *slot.get_or_init(find))
    }

    /// Whether the word at a place leads to another place, or denies.
    fn leads_elsewhere(&self, at: usize) -> bool {
        let word = (self.word)(at);
        lexicon::tells_way(word) || lexicon::is_negation(word)
    }

    /// Whether the word at a place may stand between the words of a phrase.
    fn is_passed(&self, at: usize) -> bool {
        let word = (self.word)(at);
        lexicon::is_adverb(word) || word == "not"
    }
}

/// Matches slots from a token on; the token after the last one taken.
fn match_slots(slots: &[Slot], at: usize, line: &Line<'_, '_>, is_first: bool) -> Option<usize> {
    let Some((slot, rest)) = slots.split_first() else { return Some(at) };
    if slot.is_any {
        // As few words as will do, none that leads to a place of its own, and none that turns the statement round: "leaves
        // the canal *without* passing through".
        let is_open =
            |at: usize| !lexicon::is_negation((line.word)(at)) && !(slot.is_of_way && line.leads_elsewhere(at));
        return (1..=5)
            .take_while(|len| is_open(at + len - 1))
            .find_map(|len| match_slots(rest, at + len, line, false));
    }
    let mut best = None;
    if line.word(at).is_some_and(|here| slot.words.contains(&here)) {
        best = match_slots(rest, at + 1, line, false);
    }
    if slot.may_miss {
        best = best.max(match_slots(rest, at, line, is_first));
    }
    if best.is_none() && !is_first && line.is_passed(at) {
        best = match_slots(slots, at + 1, line, false);
    }
    best
}
