//! The spelling index: which words of the vocabulary a written word may have been meant to be.

use fascicle_model::{Kind, Vocabulary};
use rustc_hash::{FxHashMap, FxHashSet};
use smallvec::SmallVec;

use super::distance::{LONGEST, Pattern};
use super::gaps::{Gap, Gaps};
use super::guard::{Known, RightWords};
use super::key::key;
use super::latin;
use super::shorter::without_one;
use super::sound::sound;
use crate::lexicon;
use crate::names::{Form, NameIndex, NameRef, WordId};
use crate::words::{fold, tokens};

/// A word that a slip may have been meant to be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Target {
    /// The word, folded.
    pub text: Box<str>,
    /// What it stands for in names; unknown for a word that is in no name (movements, relation words).
    pub form: Form,
    /// Everyday English has it too.
    pub common: bool,
}

/// What tells at a glance that a target is far from a word.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Look {
    /// One bit for every letter in it.
    letters: u32,
    /// Its first two letters.
    begin: [u8; 2],
}

impl Look {
    fn of(word: &str) -> Self {
        let letter = |at: usize| word.as_bytes().get(at).copied().unwrap_or_default();
        Self { letters: letters(word), begin: [letter(0), letter(1)] }
    }

    /// Whether another word may be at no more than `most` edits.
    fn may_be_near(self, other: Self, most: u32) -> bool {
        let ([first, second], [one, two]) = (self.begin, other.begin);
        // Of the first two letters one is kept, though perhaps not in its place.
        (first == one || second == two || first == two || second == one)
            && (self.letters ^ other.letters).count_ones() <= 2 * most
    }
}

/// A name with its words in their order.
pub type Arranged = (NameRef, Box<[WordId]>);

/// Names by their words in any order.
type ByWords = FxHashMap<u64, Vec<Arranged>>;

/// The place of a target in its index.
pub type TargetIx = u32;

/// A target that a written word is near to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Near {
    /// The target.
    pub target: TargetIx,
    /// Edits between the two.
    pub distance: u32,
    /// Both sound alike.
    pub sounds_alike: bool,
}

/// All that finding misspellings needs, made once from a vocabulary.
#[derive(Debug)]
pub struct SpellingIndex {
    /// English and medical words.
    pub right: RightWords,
    /// Sorted by length.
    targets: Vec<Target>,
    /// The look of each target.
    looks: Vec<Look>,
    /// For every length the place of the first target that is at least as long.
    by_length: Vec<usize>,
    by_sound: FxHashMap<Box<str>, Vec<TargetIx>>,
    by_stem: FxHashMap<Box<str>, Vec<TargetIx>>,
    /// Keys of Latin and English forms of vocabulary words, which are right words too.
    forms: FxHashSet<u64>,
    /// Keys of the targets.
    texts: FxHashSet<u64>,
    /// Targets by their keys and by the keys of what they are without one letter.
    beside: FxHashMap<u64, SmallVec<[TargetIx; 2]>>,
    /// One bit for every key of `beside` in a table that the processor keeps near: most words are told apart by it.
    hints: Box<[u64]>,
    /// For every word of the names the others of its family.
    families: Vec<Vec<WordId>>,
    /// Words that follow each other in some name.
    pairs: FxHashSet<(WordId, WordId)>,
    /// Names of three words and more by their words, whatever the order.
    by_words: ByWords,
    /// Names without one of their words.
    gaps: Gaps,
    /// English plurals of words whose plural is another one (*foramens*), with that.
    plurals: FxHashMap<u64, Box<str>>,
}

/// The fewest letters of a word that is looked at.
pub const SHORTEST: usize = 4;

impl SpellingIndex {
    /// Indexes the words of a vocabulary.
    pub fn new(vocabulary: &Vocabulary, names: &NameIndex) -> Self {
        let right = RightWords::built_in();
        let mut texts: FxHashMap<Box<str>, Form> = FxHashMap::default();
        for (text, form) in names.forms() {
            if form.exact.is_some() || right.known(text).is_some() {
                texts.insert(text.into(), form);
            }
        }
        let movements = vocabulary.entries().iter().filter(|entry| entry.kind == Kind::Movement);
        let mut more: Vec<String> =
            movements.flat_map(|entry| entry.names.iter().map(|name| name.text.clone())).collect();
        more.extend(relation_words().map(str::to_owned));
        let adverb = |word: &str| word.ends_with("al").then(|| format!("{word}ly"));
        more.extend(names.words().iter().filter_map(|word| adverb(word)).filter(|word| right.known(word).is_some()));
        for text in more {
            for token in tokens(&text).into_iter().filter(|token| token.is_word) {
                texts.entry(fold(token.span.of(&text)).into()).or_default();
            }
        }
        let mut targets: Vec<Target> = texts
            .into_iter()
            .filter(|(text, _)| (3..=LONGEST).contains(&text.len()) && text.bytes().all(|c| c.is_ascii_lowercase()))
            .map(|(text, form)| {
                let is_common = |word: &str| right.known(word) == Some(Known::Common);
                let one = || text.strip_suffix("ies").map(|stem| format!("{stem}y"));
                let common = is_common(&text) || one().is_some_and(|one| is_common(&one));
                Target { text, form, common }
            })
            .collect();
        targets.sort_by(|a, b| (a.text.len(), &a.text).cmp(&(b.text.len(), &b.text)));
        let by_length =
            (0..=LONGEST + 1).map(|length| targets.partition_point(|target| target.text.len() < length)).collect();
        let mut by_sound: FxHashMap<Box<str>, Vec<TargetIx>> = FxHashMap::default();
        let mut by_stem: FxHashMap<Box<str>, Vec<TargetIx>> = FxHashMap::default();
        let mut forms = FxHashSet::default();
        let mut derived = Vec::new();
        for (at, target) in (0u32..).zip(&targets) {
            by_sound.entry(sound(&target.text).into()).or_default().push(at);
            if target.text.len() > SHORTEST {
                by_stem.entry(latin::stem(&target.text).into()).or_default().push(at);
                derived.clear();
                latin::forms(&target.text, &mut derived);
                for (today, older) in latin::OLDER.iter().filter(|(today, _)| target.text.contains(today)) {
                    let older = target.text.replace(today, older);
                    latin::forms(&older, &mut derived);
                    derived.push(older);
                }
                forms.extend(derived.iter().map(|form| key(form)));
            }
        }
        let texts = targets.iter().map(|target| key(&target.text)).collect();
        let mut beside: FxHashMap<u64, SmallVec<[TargetIx; 2]>> = FxHashMap::default();
        for (at, target) in (0u32..).zip(&targets) {
            for key in without_one(&target.text) {
                let list = beside.entry(key).or_default();
                if list.last() != Some(&at) {
                    list.push(at);
                }
            }
        }
        let mut hints = vec![0; HINTS].into_boxed_slice();
        for key in beside.keys() {
            let (place, bit) = hint(*key);
            if let Some(slot) = hints.get_mut(place) {
                *slot |= bit;
            }
        }
        let families = names.words().iter().map(|word| family_words(word, &by_stem, &targets)).collect();
        let (pairs, by_words) = arrangements(vocabulary, names);
        let gaps = Gaps::new(vocabulary, names, &right);
        let plurals = false_plurals(vocabulary, names);
        Self {
            right,
            looks: targets.iter().map(|target| Look::of(&target.text)).collect(),
            targets,
            by_length,
            by_sound,
            by_stem,
            forms,
            texts,
            beside,
            hints,
            families,
            pairs,
            by_words,
            gaps,
            plurals,
        }
    }

    /// A target.
    pub fn target(&self, at: TargetIx) -> Option<&Target> {
        self.targets.get(at as usize)
    }

    /// How many words a slip may be meant for.
    pub fn len(&self) -> usize {
        self.targets.len()
    }

    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.targets.is_empty()
    }

    /// Whether a folded word is a form of a vocabulary word.
    pub fn is_form(&self, word: &str) -> bool {
        self.forms.contains(&key(word))
    }

    /// Whether a folded word is one that a slip may be meant for.
    pub fn is_name_word(&self, word: &str) -> bool {
        self.texts.contains(&key(word))
    }

    /// Whether a first part of a compound (*rostro*, *costo*) is one of a right word or a form of one.
    pub fn is_combining(&self, head: &str) -> bool {
        self.is_form(head)
            || self.right.known(head).is_some()
            || ["al", "ar", "us", "um", "a", "ic", "or", "ior"].iter().any(|end| {
                let word = format!("{}{end}", head.trim_end_matches('o'));
                self.right.known(&word).is_some() || self.is_name_word(&word)
            })
    }

    /// Whether another word of the family of a written word stands in some name behind or before one of two neighbours.
    pub fn may_be_wrong_form(&self, form: Form, before: Option<Form>, behind: Option<Form>) -> bool {
        // A plural that no name has may stand for the singular that it is of.
        let own = form.singular.filter(|_| form.exact.is_none());
        let family = words_of(form).filter_map(|word| self.families.get(word.place())).flatten();
        let mut family = family.copied().chain(own);
        family.any(|other| self.may_stand(other, before, behind))
    }

    /// Whether some name has a word of a form behind or before a neighbour, as it stands.
    pub fn stands_beside(&self, form: Form, before: Option<Form>, behind: Option<Form>) -> bool {
        words_of(form).any(|word| self.may_stand(word, before, behind))
    }

    /// Names that are made of some words in whatever order.
    pub fn of_words(&self, words: &[WordId]) -> &[Arranged] {
        self.by_words.get(&in_any_order(words)).map_or(&[], Vec::as_slice)
    }

    /// The plural of a word that was given an English one.
    pub fn right_plural(&self, word: &str) -> Option<&str> {
        self.plurals.get(&key(word)).map(|plural| &**plural)
    }

    /// Names that some words are but for one.
    pub fn without_one(&self, words: &[WordId]) -> &[Gap] {
        self.gaps.of(words)
    }

    /// Whether a folded word sounds like a target.
    pub fn sounds_known(&self, word: &str) -> bool {
        self.by_sound.contains_key(&*sound(word))
    }

    /// Whether some target may stand at one edit from a folded word. It is quick, and says yes a little too often.
    pub fn is_beside(&self, word: &str) -> bool {
        without_one(word).iter().any(|key| self.has_beside(*key))
    }

    fn has_beside(&self, key: u64) -> bool {
        let (place, bit) = hint(key);
        self.hints.get(place).is_some_and(|slot| slot & bit != 0) && self.beside.contains_key(&key)
    }

    /// Targets at exactly one edit.
    pub fn at_one_edit(&self, word: &str) -> SmallVec<[Near; 4]> {
        let mut list: SmallVec<[Near; 4]> = SmallVec::new();
        let Some(pattern) = Pattern::new(word) else { return list };
        let mut own: Option<String> = None;
        for key in without_one(word).into_iter().filter(|key| self.has_beside(*key)) {
            for at in self.beside.get(&key).into_iter().flatten() {
                if !list.iter().any(|near| near.target == *at)
                    && let Some(target) = self.target(*at)
                    && pattern.distance(&target.text, 1) == Some(1)
                {
                    let sounds_alike = *own.get_or_insert_with(|| sound(word)) == sound(&target.text);
                    list.push(Near { target: *at, distance: 1, sounds_alike });
                }
            }
        }
        list
    }

    /// Targets that are a word with one letter more at its end.
    pub fn with_one_more(&self, word: &str) -> impl Iterator<Item = Near> {
        let of_length = |length: usize| self.by_length.get(length).copied().unwrap_or(self.targets.len());
        let (from, to) = (of_length(word.len() + 1), of_length(word.len() + 2));
        let targets = self.targets.get(from..to).unwrap_or_default();
        let first = targets.partition_point(|target| &*target.text < word);
        let longer =
            targets.iter().zip(from..).skip(first).take_while(move |(target, _)| target.text.starts_with(word));
        longer.map(|(_, at)| Near { target: at as TargetIx, distance: 1, sounds_alike: false })
    }

    /// Whether a word stands in some name behind or before one of two neighbours.
    pub fn may_stand(&self, word: WordId, before: Option<Form>, behind: Option<Form>) -> bool {
        before.into_iter().flat_map(words_of).any(|other| self.pairs.contains(&(other, word)))
            || behind.into_iter().flat_map(words_of).any(|other| self.pairs.contains(&(word, other)))
    }

    /// Targets of the same Latin family, without the word itself.
    pub fn family(&self, word: &str) -> impl Iterator<Item = Near> {
        let members = if word.len() >= SHORTEST { self.by_stem.get(&*latin::stem(word)) } else { None };
        let pattern = members.and_then(|_| Pattern::new(word));
        members.map_or(&[][..], Vec::as_slice).iter().filter_map(move |at| {
            let target = self.target(*at)?;
            let distance = pattern.as_ref()?.distance(&target.text, 6)?;
            (distance > 0).then_some(Near { target: *at, distance, sounds_alike: false })
        })
    }

    /// Targets at no more than `most` edits, and those that sound alike at no more than twice as many.
    pub fn near(&self, word: &str, most: u32) -> Vec<Near> {
        let mut list = Vec::new();
        let Some(pattern) = Pattern::new(word) else { return list };
        let own = Look::of(word);
        let from = self.by_length.get(word.len().saturating_sub(most as usize)).copied().unwrap_or(0);
        let to = self.by_length.get(word.len() + most as usize + 1).copied().unwrap_or(self.targets.len());
        let key = sound(word);
        for (at, look) in (from..).zip(self.looks.get(from..to).unwrap_or_default()) {
            if !own.may_be_near(*look, most) {
                continue;
            }
            let Some(target) = self.targets.get(at) else { break };
            if let Some(distance) = pattern.distance(&target.text, most)
                && distance > 0
            {
                let sounds_alike = sound(&target.text) == key;
                list.push(Near { target: at as TargetIx, distance, sounds_alike });
            }
        }
        self.sounding(word, 2 * most, &mut list);
        list
    }

    /// Adds the targets that sound like a word and are at no more than `most` edits.
    pub fn sounding(&self, word: &str, most: u32, list: &mut Vec<Near>) {
        let key = sound(word);
        let Some(pattern) = Pattern::new(word) else { return };
        for at in self.by_sound.get(&*key).map_or(&[][..], Vec::as_slice) {
            if key.len() >= SHORTEST
                && !list.iter().any(|near| near.target == *at)
                && let Some(target) = self.target(*at)
                && let Some(distance) = pattern.distance(&target.text, most)
                && distance > 0
            {
                list.push(Near { target: *at, distance, sounds_alike: true });
            }
        }
    }

    /// Memory that the index takes, in bytes, as far as it can be counted.
    pub fn bytes(&self) -> usize {
        let texts: usize = self.targets.iter().map(|target| target.text.len() + size_of::<Target>()).sum();
        let keyed = |map: &FxHashMap<Box<str>, Vec<TargetIx>>| -> usize {
            let slots = map.capacity() * 8 / 7 * (size_of::<(Box<str>, Vec<TargetIx>)>() + 1);
            slots + map.iter().map(|(key, list)| key.len() + list.capacity() * size_of::<TargetIx>()).sum::<usize>()
        };
        let forms = (self.forms.capacity() + self.texts.capacity()) * 8 / 7 * (size_of::<u64>() + 1);
        let beside = self.beside.capacity() * 8 / 7 * (size_of::<(u64, SmallVec<[TargetIx; 2]>)>() + 1)
            + self.beside.values().filter(|list| list.spilled()).map(|list| list.capacity() * 4).sum::<usize>();
        let families: usize = self.families.iter().map(|list| size_of_val(list) + list.capacity() * 4).sum();
        let pairs = self.pairs.capacity() * 8 / 7 * (size_of::<(WordId, WordId)>() + 1);
        let by_words = self.by_words.capacity() * 8 / 7 * (size_of::<(u64, Vec<Arranged>)>() + 1)
            + self.by_words.values().map(|list| list.capacity() * (size_of::<Arranged>() + 16)).sum::<usize>();
        self.right.bytes()
            + texts
            + size_of_val(&*self.looks)
            + keyed(&self.by_sound)
            + keyed(&self.by_stem)
            + forms
            + beside
            + families
            + pairs
            + by_words
            + size_of_val(&*self.hints)
            + self.plurals.capacity() * 8 / 7 * (size_of::<(u64, Box<str>)>() + 1)
            + self.gaps.bytes()
    }
}

/// The words that a form stands for.
fn words_of(form: Form) -> impl Iterator<Item = WordId> {
    [form.exact, form.singular].into_iter().flatten()
}

/// The words of names that are of the family of a word.
fn family_words(word: &str, by_stem: &FxHashMap<Box<str>, Vec<TargetIx>>, targets: &[Target]) -> Vec<WordId> {
    if word.len() < SHORTEST {
        return Vec::new();
    }
    let members = by_stem.get(&*latin::stem(word)).map_or(&[][..], Vec::as_slice);
    let others = members.iter().filter_map(|at| targets.get(*at as usize)).filter(|target| &*target.text != word);
    others.filter_map(|target| target.form.exact).collect()
}

/// Words that follow each other in names, and the names of three words and more by their words.
fn arrangements(vocabulary: &Vocabulary, names: &NameIndex) -> (FxHashSet<(WordId, WordId)>, ByWords) {
    let mut pairs = FxHashSet::default();
    let mut by_words = ByWords::default();
    for (id, entry) in vocabulary.iter() {
        for (number, name) in (0u16..).zip(&entry.names) {
            for text in [Some(&name.text), name.plural.as_ref()].into_iter().flatten() {
                let words: Vec<WordId> = names.forms_of(text).into_iter().filter_map(|form| form.exact).collect();
                pairs.extend(words.windows(2).map(|pair| (pair[0], pair[1])));
                let plain = text.split(' ').all(|word| word.len() >= SHORTEST);
                if words.len() >= 3 && plain && entry.kind != Kind::Movement {
                    let key = in_any_order(&words);
                    by_words.entry(key).or_default().push((NameRef { entry: id, name: number }, words.into()));
                }
            }
        }
    }
    (pairs, by_words)
}

/// English plurals of the words that the vocabulary gives a Latin plural, and no name an English one.
fn false_plurals(vocabulary: &Vocabulary, names: &NameIndex) -> FxHashMap<u64, Box<str>> {
    let mut found: FxHashMap<u64, Box<str>> = FxHashMap::default();
    let all = vocabulary.entries().iter().flat_map(|entry| &entry.names);
    for (name, plural) in all.filter_map(|name| Some((&name.text, name.plural.as_ref()?))) {
        let words =
            |text: &str| -> Vec<String> { tokens(text).iter().map(|token| fold(token.span.of(text))).collect() };
        for (one, many) in words(name).into_iter().zip(words(plural)) {
            let english = format!("{one}s");
            let is_latin = one.ends_with("en") && many.ends_with("ina");
            if is_latin && names.form(&english).exact.is_none() {
                found.insert(key(&english), many.into());
            }
        }
    }
    found
}

/// Words of 64 bits in the table of hints.
const HINTS: usize = 1 << 13;

/// The place and the bit of a key in the table of hints.
const fn hint(key: u64) -> (usize, u64) {
    let mixed = key.wrapping_mul(0x9e37_79b9_7f4a_7c15);
    ((mixed >> 51) as usize, 1 << (mixed >> 45 & 63))
}

/// A number that is the same for the same words in any order.
fn in_any_order(words: &[WordId]) -> u64 {
    words.iter().fold(words.len() as u64, |sum, word| {
        let mixed = word.number().wrapping_mul(0x9e37_79b9_7f4a_7c15);
        sum.wrapping_add((mixed ^ (mixed >> 31)).wrapping_mul(0xbf58_476d_1ce4_e5b9))
    })
}

/// The longer words of relation phrases.
fn relation_words() -> impl Iterator<Item = &'static str> {
    const LONG: usize = 8;
    let words = lexicon::RELATIONS.iter().flat_map(|relation| relation.phrase.split([' ', '|', '?']));
    words.filter(|word| word.len() >= LONG)
}

/// One bit for every letter that a word has.
fn letters(word: &str) -> u32 {
    word.bytes().filter(u8::is_ascii_lowercase).fold(0, |bits, c| bits | 1 << (c - b'a'))
}
