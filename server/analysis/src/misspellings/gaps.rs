//! Names of which a word is left out: what is left of each name without one of its words, where that is no right phrase.
//!
//! Most of what is left when a word goes is right: *muscles of forearm* is a wider term than *radial muscles of forearm*,
//! *musculus triceps* a shorter one than *musculus triceps surae*, *the inferior alveolar* the way in which people speak of
//! a nerve. None of this is kept here. What is kept cannot stand: *of* without what is of it or with nothing behind it
//! (*the of back*, *the muscles of*), an adjective that no name uses as a noun (*posterior of thigh*, *skin of superior
//! gluteal*), Latin that begins with a genitive (*digitorum profundus*), and Latin with a hole in it that only one structure
//! fills (*extensor carpi longus*).

use fascicle_model::{EntryId, Kind, Standing, Vocabulary};
use rustc_hash::{FxHashMap, FxHashSet};
use smallvec::SmallVec;

use super::guard::{Known, RightWords};
use super::latin;
use crate::names::{NameIndex, NameRef, WordId};
use crate::words::{fold, tokens};

/// A name without one of its words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Gap {
    /// The name.
    pub name: NameRef,
    /// The word that is left out.
    pub word: WordId,
    /// Which word of the name it is.
    pub place: u8,
    /// What is left can stand by itself where more words follow.
    pub needs_end: bool,
}

/// Names by what is left of them without a word, in order.
#[derive(Debug)]
pub struct Gaps(FxHashMap<u64, SmallVec<[Gap; 1]>>);

impl Gaps {
    /// What is left of the names of a vocabulary.
    pub fn new(vocabulary: &Vocabulary, names: &NameIndex, right: &RightWords) -> Self {
        let all: Vec<Whole> = vocabulary
            .iter()
            .filter(|(_, entry)| !matches!(entry.kind, Kind::Movement | Kind::Root))
            .flat_map(|(id, entry)| {
                let full = (0u16..).zip(&entry.names).filter(|(_, name)| name.standing != Standing::Abbreviation);
                full.filter_map(move |(at, name)| Whole::new(NameRef { entry: id, name: at }, &name.text, names))
            })
            .collect();
        let seen = Seen::new(&all, names);
        let mut fills: FxHashMap<u64, Fills> = FxHashMap::default();
        for whole in &all {
            whole.each_rest(|key| fills.entry(key).or_insert(Fills::One(whole.name.entry)).add(whole.name.entry));
        }
        let mut gaps: FxHashMap<u64, SmallVec<[Gap; 1]>> = FxHashMap::default();
        for whole in all.iter().filter(|whole| whole.words.len() >= 3) {
            let texts = whole.texts(names);
            for place in (0..texts.len()).filter(|place| texts[*place].len() > 3 && !is_muscle(texts[*place])) {
                let rest: Vec<&str> = (0..texts.len()).filter(|at| *at != place).map(|at| texts[at]).collect();
                let key = in_order(whole.words.iter().enumerate().filter(|(at, _)| *at != place).map(|(_, word)| word));
                let is_hole = links(texts[place]) || is_inside_latin(&texts, place, right);
                let is_one = matches!(fills.get(&key), Some(Fills::One(_)));
                let needs_end = match is_no_phrase(&rest, &texts, place, &seen, right) {
                    Some(needs_end) => needs_end,
                    None if is_one && place == 0 && is_headless(&rest, right) => false,
                    None if is_one && is_hole => true,
                    None => continue,
                };
                let is_name = |text: &str| !names.lookup(text).is_empty();
                if is_name(&rest.join(" ")) || is_name(&format!("musculus {}", rest.join(" "))) {
                    continue;
                }
                let gap = Gap { name: whole.name, word: whole.words[place], place: place as u8, needs_end };
                gaps.entry(key).or_default().push(gap);
            }
        }
        gaps.shrink_to_fit();
        Self(gaps)
    }

    /// Names that some words are but for one.
    pub fn of(&self, words: &[WordId]) -> &[Gap] {
        self.0.get(&in_order(words.iter())).map_or(&[], SmallVec::as_slice)
    }

    /// Memory that they take, in bytes, as far as it can be counted.
    pub fn bytes(&self) -> usize {
        let lists = self.0.values().filter(|list| list.spilled()).map(|list| list.capacity() * size_of::<Gap>());
        self.0.capacity() * 8 / 7 * (size_of::<(u64, SmallVec<[Gap; 1]>)>() + 1) + lists.sum::<usize>()
    }
}

/// A name with all its words.
struct Whole {
    name: NameRef,
    words: Vec<WordId>,
}

impl Whole {
    /// A name of plain words.
    fn new(name: NameRef, text: &str, names: &NameIndex) -> Option<Self> {
        let words: Vec<WordId> = names.forms_of(text).into_iter().map(|form| form.exact).collect::<Option<_>>()?;
        let plain = |text: &str| text.bytes().all(|c| c.is_ascii_lowercase());
        let is_plain = tokens(text).iter().all(|token| plain(&fold(token.span.of(text))));
        (is_plain && !words.is_empty()).then_some(Self { name, words })
    }

    fn texts<'n>(&self, names: &'n NameIndex) -> Vec<&'n str> {
        self.words.iter().map(|word| names.words().get(word.place()).map_or("", |word| &**word)).collect()
    }

    /// Calls a function with a number for what is left without each word, and without each two of them.
    fn each_rest(&self, mut call: impl FnMut(u64)) {
        let count = self.words.len();
        for one in 0..count {
            for two in one..count {
                let rest = self.words.iter().enumerate().filter(|(at, _)| *at != one && *at != two);
                if count > 1 + usize::from(one != two) {
                    call(in_order(rest.map(|(_, word)| word)));
                }
            }
        }
    }
}

/// The structures that can fill a hole.
enum Fills {
    One(EntryId),
    Several,
}

impl Fills {
    fn add(&mut self, entry: EntryId) {
        if matches!(self, Self::One(known) if *known != entry) {
            *self = Self::Several;
        }
    }
}

/// Where words stand in names.
#[derive(Default)]
struct Seen<'n> {
    /// Words that end a name.
    ends: FxHashSet<&'n str>,
    /// Words that stand before *of*.
    before_of: FxHashSet<&'n str>,
    /// Words that begin a name.
    leads: FxHashSet<&'n str>,
    /// Words that stand behind one like *of*.
    behind: FxHashSet<&'n str>,
    /// Words that stand before the noun of a part of a name, and never are it.
    modifiers: FxHashSet<&'n str>,
}

impl<'n> Seen<'n> {
    fn new(all: &[Whole], names: &'n NameIndex) -> Self {
        let mut seen = Self::default();
        for whole in all {
            let texts = whole.texts(names);
            seen.ends.extend(texts.last());
            seen.before_of.extend(texts.windows(2).filter(|pair| is_of(pair[1])).map(|pair| pair[0]));
            seen.leads.extend(texts.first());
            seen.behind.extend(texts.windows(2).filter(|pair| links(pair[0])).map(|pair| pair[1]));
            seen.modifiers.extend(texts.windows(2).filter(|pair| !links(pair[1])).map(|pair| pair[0]));
        }
        let nouns = all.iter().flat_map(|whole| {
            let texts = whole.texts(names);
            let is_noun = |at: &usize| texts.get(at + 1).is_none_or(|next| links(next));
            (0..texts.len()).filter(is_noun).filter_map(|at| texts.get(at).copied()).collect::<Vec<_>>()
        });
        for noun in nouns {
            seen.modifiers.remove(noun);
        }
        seen.modifiers.retain(|word| !latin::looks_latin(word) && !is_side(word) && !links(word));
        seen
    }
}

fn is_of(word: &str) -> bool {
    word == "of"
}

/// Whether a word stands between the nouns of a name.
fn links(word: &str) -> bool {
    matches!(
        word,
        "of" | "to" | "over" | "with" | "for" | "on" | "in" | "below" | "above" | "behind" | "around" | "and"
    )
}

/// Whether a word stands inside a part of a name that is built as Latin is, neither first nor last in it: a part between
/// words like *of* without an English word and with one that only Latin has.
fn is_inside_latin(texts: &[&str], place: usize, right: &RightWords) -> bool {
    let from = (0..place).rev().find(|at| links(texts[*at])).map_or(0, |at| at + 1);
    let to = (place..texts.len()).find(|at| links(texts[*at])).unwrap_or(texts.len());
    let part = &texts[from..to];
    place > from
        && place + 1 < to
        && part.iter().all(|word| !is_english(word, right))
        && part.iter().any(|word| latin::looks_latin(word))
}

/// Whether a word is English and not Latin.
fn is_english(word: &str, right: &RightWords) -> bool {
    latin::is_adjective(word) && !word.ends_with("ior")
        || right.known(word) == Some(Known::Common)
            && !latin::looks_latin(word)
            && !word.ends_with(['r', 'x', 's', 'a'])
}

/// Whether what is left of a name cannot stand by itself: `Some(false)` never, `Some(true)` where nothing follows.
fn is_no_phrase(rest: &[&str], whole: &[&str], place: usize, seen: &Seen, right: &RightWords) -> Option<bool> {
    let (first, last) = (rest.first()?, rest.last()?);
    let is_adjective = |word: &str| latin::is_adjective(word) || seen.modifiers.contains(word);
    let lone = |word: &str| is_adjective(word) && !seen.before_of.contains(word);
    let no_lead = |word: &str| latin::looks_latin(word) && !seen.behind.contains(word) && !seen.leads.contains(word);
    let is_hole = |pair: &[&str]| {
        links(pair[1]) && links(pair[0]) || is_of(pair[1]) && lone(pair[0]) || links(pair[0]) && no_lead(pair[1])
    };
    if links(first) || rest.windows(2).any(is_hole) {
        return Some(false);
    }
    if links(last) {
        return Some(true);
    }
    let is_end_gone = place + 1 == whole.len();
    let is_spoken = whole.get(place).is_some_and(|word| is_often_left_out(word));
    let is_lone_end = latin::is_adjective(last)
        || seen.modifiers.contains(*last)
            && is_english(last, right)
            && !rest.iter().any(|word| latin::looks_latin(word));
    if is_end_gone && !is_spoken && is_lone_end && !seen.ends.contains(*last) {
        return Some(true);
    }
    (place == 0 && is_headless(rest, right) && !seen.leads.contains(*first)).then_some(false)
}

/// Whether what is left of a name without its first word is Latin, which begins with its noun.
fn is_headless(rest: &[&str], right: &RightWords) -> bool {
    rest.len() >= 2
        && rest.iter().all(|word| !is_english(word, right) && !links(word))
        && rest.iter().any(|word| latin::looks_latin(word))
}

/// Whether a word before *of* tells a side ("left of the midline").
fn is_side(word: &str) -> bool {
    matches!(word, "left" | "right")
}

/// The Latin noun without which Latin names muscles as often as with it (*caput longum tricipitis brachii*).
fn is_muscle(word: &str) -> bool {
    matches!(word, "musculus" | "musculi" | "musculorum")
}

/// Nouns that tell only what kind of structure an adjective names, which people leave to be understood (*the inferior
/// alveolar*, *the first carpometacarpal*).
fn is_often_left_out(word: &str) -> bool {
    let one = word.strip_suffix('s').unwrap_or(word);
    let nouns =
        ["nerve", "muscle", "joint", "ligament", "plexu", "plexus", "bone", "vessel", "vein", "ganglion", "lymphatic"];
    nouns.contains(&one)
        || matches!(word, "artery" | "arteries" | "plexuses" | "ganglia" | "articulation" | "articulations")
}

/// A number for some words in their order.
fn in_order<'a>(words: impl Iterator<Item = &'a WordId>) -> u64 {
    words.fold(0xcbf2_9ce4_8422_2325, |sum, word| {
        let mixed = (sum ^ word.number()).wrapping_mul(0x9e37_79b9_7f4a_7c15);
        mixed ^ (mixed >> 31)
    })
}
