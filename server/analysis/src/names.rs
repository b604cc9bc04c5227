//! The index of names: which entries a run of words names.
//!
//! Names are kept as a tree of words. A word is known by its form: the word itself, or a plural of it, regular or Latin.
//! The tree is walked without articles and hyphens, so *medial cutaneous nerve of the forearm* and *medial-cutaneous nerve
//! of forearm* are one name.

use std::num::NonZeroU32;

use fascicle_model::{EntryId, Kind, Standing, Vocabulary};
use rustc_hash::FxHashMap;
use smallvec::{SmallVec, smallvec};

use crate::words::{fold, fold_into, tokens};

/// A word of the index: its number, counted from one, so that none takes no room beside it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct WordId(NonZeroU32);

impl WordId {
    /// The word at a place of [`NameIndex::words`].
    fn at(place: usize) -> Self {
        Self(NonZeroU32::MIN.saturating_add(u32::try_from(place).unwrap_or(u32::MAX)))
    }

    /// Its place in [`NameIndex::words`].
    pub const fn place(self) -> usize {
        self.0.get() as usize - 1
    }

    /// Its number.
    pub const fn number(self) -> u64 {
        self.0.get() as u64
    }
}

/// What a written word can stand for: a word of a name, and a word of a name whose plural it is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Form {
    /// The word as it stands in a name.
    pub exact: Option<WordId>,
    /// The word in a name that it is the plural of.
    pub singular: Option<WordId>,
    /// The plural word in a name that it is the singular of.
    pub plural: Option<WordId>,
}

impl Form {
    /// Whether no name has it.
    pub const fn is_unknown(self) -> bool {
        self.exact.is_none() && self.singular.is_none() && self.plural.is_none()
    }
}

/// A name in the index.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NameRef {
    /// The entry.
    pub entry: EntryId,
    /// Which of its names.
    pub name: u16,
}

type Node = u32;

/// The index over all names of a vocabulary.
#[derive(Debug, Default)]
pub struct NameIndex {
    forms: FxHashMap<Box<str>, Form>,
    words: Vec<Box<str>>,
    /// From the root: where a word leads, [`NOWHERE`] where no name begins with it.
    first: Vec<Node>,
    /// For every node the place in `steps` where its steps begin; one more at the end.
    from: Vec<u32>,
    /// The steps of all nodes, each node's in the order of the words.
    steps: Vec<(WordId, Node)>,
    ends: Vec<End>,
}

/// What ends at a node.
#[derive(Debug, Default)]
struct End {
    names: SmallVec<[NameRef; 1]>,
    /// One of the names is written in capitals and read so only.
    case_bound: bool,
}

/// Steps of the tree while it grows.
type Growing = FxHashMap<(Node, WordId), Node>;

/// No node: the root is where nothing leads to.
const NOWHERE: Node = 0;

/// Where a walk has come to by a row of words, and whether one of them was a plural.
type Reached = SmallVec<[(Node, bool); 4]>;

/// What a walk down the tree found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Found {
    /// How many of the forms it took.
    pub len: usize,
    /// The names that end there.
    pub names: SmallVec<[NameRef; 2]>,
    /// Whether a word of it was a plural.
    pub plural: bool,
    /// One of the names is written in capitals and read so only ([`is_case_bound`]).
    pub case_bound: bool,
}

impl NameIndex {
    /// Indexes a vocabulary.
    pub fn new(vocabulary: &Vocabulary) -> Self {
        let mut index = Self { ends: vec![End::default()], ..Self::default() };
        let mut steps = Growing::default();
        for (id, entry) in vocabulary.iter() {
            if matches!(entry.kind, Kind::Movement) {
                continue;
            }
            for (number, name) in (0u16..).zip(entry.names.iter()) {
                if entry.kind == Kind::Root && name.text.len() < 4 {
                    continue; // a segment's own spelling is read as a number, with ranges and lists
                }
                let reference = NameRef { entry: id, name: number };
                let case_bound = is_case_bound(name.standing, &name.text);
                index.add(&name.text, reference, case_bound, &mut steps);
                if let Some(plural) = &name.plural {
                    index.add(plural, reference, case_bound, &mut steps);
                }
            }
            if let (Some(short), Some(_)) = (&entry.short, entry.part_of) {
                let case_bound = entry.names.first().is_some_and(|name| is_case_bound(name.standing, &name.text));
                index.add(short, NameRef { entry: id, name: 0 }, case_bound, &mut steps);
            }
        }
        index.lay_out(steps);
        index.add_plurals();
        index
    }

    /// Lays the steps out for walking.
    fn lay_out(&mut self, steps: Growing) {
        let mut steps: Vec<((Node, WordId), Node)> = steps.into_iter().collect();
        steps.sort_unstable();
        self.first = vec![NOWHERE; self.words.len()];
        self.from = Vec::with_capacity(self.ends.len() + 1);
        self.steps = Vec::with_capacity(steps.len());
        for ((node, word), next) in steps {
            while self.from.len() <= node as usize {
                self.from.push(self.steps.len() as u32);
            }
            if node == 0
                && let Some(slot) = self.first.get_mut(word.place())
            {
                *slot = next;
            }
            self.steps.push((word, next));
        }
        self.from.resize(self.ends.len() + 1, self.steps.len() as u32);
    }

    fn add(&mut self, name: &str, reference: NameRef, case_bound: bool, steps: &mut Growing) {
        let mut node = 0;
        for token in tokens(name).into_iter().filter(|token| token.is_word) {
            let word = fold(token.span.of(name));
            if is_article(&word) {
                continue;
            }
            let id = self.word(&word);
            let next = u32::try_from(self.ends.len()).unwrap_or(u32::MAX);
            node = *steps.entry((node, id)).or_insert(next);
            if node == next {
                self.ends.push(End::default());
            }
        }
        if let Some(end) = self.ends.get_mut(node as usize)
            && node != 0
            && !end.names.iter().any(|known| known.entry == reference.entry)
        {
            end.names.push(reference);
            end.case_bound |= case_bound;
        }
    }

    fn word(&mut self, word: &str) -> WordId {
        if let Some(Form { exact: Some(id), .. }) = self.forms.get(word) {
            return *id;
        }
        let id = WordId::at(self.words.len());
        self.words.push(word.into());
        self.forms.entry(word.into()).or_default().exact = Some(id);
        id
    }

    fn add_plurals(&mut self) {
        let words: Vec<(WordId, Box<str>)> = (0..).map(WordId::at).zip(self.words.iter().cloned()).collect();
        for (id, word) in words {
            if let Some(stem) = word.strip_suffix('s').filter(|stem| stem.len() > 3 && !stem.ends_with(['s', 'u', 'i']))
            {
                self.forms.entry(stem.into()).or_default().plural = Some(id);
            }
            for plural in plurals(&word) {
                self.forms.entry(plural.into()).or_default().singular = Some(id);
            }
        }
    }

    /// The words of all names, folded; the place of a word is its [`WordId`].
    pub fn words(&self) -> &[Box<str>] {
        &self.words
    }

    /// Every written form of a word, with what it can stand for.
    pub fn forms(&self) -> impl Iterator<Item = (&str, Form)> {
        self.forms.iter().map(|(text, form)| (&**text, *form))
    }

    /// One step down the tree of words; the walk begins at 0.
    pub fn step(&self, node: u32, word: WordId) -> Option<u32> {
        if node == 0 {
            return self.first.get(word.place()).copied().filter(|next| *next != NOWHERE);
        }
        let (from, to) = (*self.from.get(node as usize)?, *self.from.get(node as usize + 1)?);
        let steps = self.steps.get(from as usize..to as usize)?;
        let place = if steps.len() <= 8 {
            steps.iter().position(|(known, _)| *known == word)?
        } else {
            steps.binary_search_by_key(&word, |(known, _)| *known).ok()?
        };
        steps.get(place).map(|(_, next)| *next)
    }

    /// Whether a name begins with a word of a form.
    pub fn begins(&self, form: Form) -> bool {
        [form.exact, form.singular, form.plural].into_iter().flatten().any(|word| self.step(0, word).is_some())
    }

    /// The names that end at a place of the tree.
    pub fn ending(&self, node: u32) -> &[NameRef] {
        self.ends.get(node as usize).map_or(&[], |end| &end.names)
    }

    /// What a folded word can stand for.
    pub fn form(&self, folded: &str) -> Form {
        let known = |word: &str| self.forms.get(word).copied().unwrap_or_default();
        let form = known(folded);
        // "3rd" stands for "third" in every name.
        match crate::lexicon::ordinal(folded) {
            Some(ordinal) => Form { plural: form.plural.or(known(ordinal).exact), ..form },
            None => form,
        }
    }

    /// The longest name that a run of forms begins with. `forms` gives the form at a step and whether the walk may pass
    /// over it (articles, hyphens).
    pub fn longest(&self, forms: impl Iterator<Item = (Form, bool)>) -> Option<Found> {
        let mut reached: Reached = smallvec![(0, false)];
        let mut next = Reached::new();
        let mut best: Option<(usize, Reached)> = None;
        for (at, (form, may_skip)) in forms.enumerate() {
            for (node, plural) in &reached {
                for (word, is_plural) in [(form.exact, false), (form.singular, true), (form.plural, false)] {
                    if let Some(node) = word.and_then(|word| self.step(*node, word)) {
                        next.push((node, plural | is_plural));
                    }
                }
            }
            if next.is_empty() {
                if may_skip && at > 0 {
                    continue;
                }
                break;
            }
            let by_plural_only = at == 0 && form.exact.is_none() && form.singular.is_none();
            std::mem::swap(&mut reached, &mut next);
            next.clear();
            if by_plural_only {
                continue; // the singular of a plural name of one word is an ordinary word
            }
            if reached.iter().any(|(node, _)| !self.ending(*node).is_empty()) {
                best = Some((at + 1, Reached::from_slice(&reached)));
            }
        }
        let (len, reached) = best?;
        let mut ended = reached.iter().filter(|(node, _)| !self.ending(*node).is_empty());
        let plural = ended.next().is_some_and(|(_, plural)| *plural);
        let ends = || reached.iter().filter_map(|(node, _)| self.ends.get(*node as usize));
        let names = ends().flat_map(|end| end.names.iter().copied()).collect();
        Some(Found { len, names, plural, case_bound: ends().any(|end| end.case_bound) })
    }

    /// The names that a run of forms is, from the first to the last.
    pub fn exactly(&self, forms: &[Form]) -> Option<Found> {
        self.longest(forms.iter().map(|form| (*form, false))).filter(|found| found.len == forms.len())
    }

    /// The names that a text is, whatever its case.
    pub fn lookup(&self, text: &str) -> Vec<NameRef> {
        let forms: Vec<Form> = self.forms_of(text);
        self.exactly(&forms).map(|found| found.names.into_vec()).unwrap_or_default()
    }

    /// The forms of the words of a text, without articles.
    pub fn forms_of(&self, text: &str) -> Vec<Form> {
        let mut folded = String::new();
        let mut list = Vec::new();
        for token in tokens(text).into_iter().filter(|token| token.is_word) {
            fold_into(token.span.of(text), &mut folded);
            if !is_article(&folded) {
                list.push(self.form(&folded));
            }
        }
        list
    }
}

/// Whether a folded word is an article, which names do not tell apart.
pub fn is_article(folded: &str) -> bool {
    folded == "the"
}

/// Plurals of a word, regular English and Latin. Some are no words; they only ever widen what is read.
fn plurals(word: &str) -> Vec<String> {
    let mut list = Vec::new();
    if word.len() < 3 || !word.chars().all(char::is_alphabetic) {
        return list;
    }
    let sibilant = ["s", "x", "ch", "sh"].iter().any(|end| word.ends_with(end));
    if sibilant {
        list.push(format!("{word}es"));
    } else if let Some(stem) = word.strip_suffix('y') {
        list.push(format!("{stem}ies"));
        list.push(format!("{word}s"));
    } else {
        list.push(format!("{word}s"));
    }
    for (end, plural) in
        [("us", "i"), ("um", "a"), ("a", "ae"), ("is", "es"), ("ex", "ices"), ("ix", "ices"), ("oideus", "oidei")]
    {
        if let Some(stem) = word.strip_suffix(end) {
            list.push(format!("{stem}{plural}"));
        }
    }
    list
}

/// Whether a name of this standing is written in capitals and read so only.
pub fn is_case_bound(standing: Standing, text: &str) -> bool {
    standing == Standing::Abbreviation && text.chars().any(char::is_uppercase)
}
