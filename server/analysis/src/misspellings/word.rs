//! What a written word is, as far as spelling goes. Words of plain English are told at a glance; what is known of another
//! is found out once for every distinct word of a document, and only when it is asked for.

use std::cell::{OnceCell, RefCell};
use std::rc::Rc;

use rustc_hash::{FxHashMap, FxHashSet};
use smallvec::SmallVec;

use super::guard::Known;
use super::index::{Near, SHORTEST, SpellingIndex};
use super::key::key;
use crate::names::{Form, NameIndex, is_article};
use crate::words::{fold_into, without_possessive};

/// What a token is, as far as spelling goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Status {
    /// No word, or one that is left alone.
    Aside,
    /// An article or a hyphen, over which a name may run.
    Passable,
    /// A word of the vocabulary.
    Vocabulary,
    /// A form of a word of the vocabulary.
    Inflected,
    /// A right word.
    Right(Known),
    /// A word of two or three letters.
    Short,
    /// No word, but two or three letters, as words split by mistake leave them.
    Stub,
    /// No right word.
    Unknown,
}

/// From so many letters on a word may have more than one edit although nothing else speaks for it.
pub const LONG: usize = 10;

/// Beginnings of words that are often written apart.
pub const PREFIXES: &[&str] = &[
    "sub", "supra", "infra", "inter", "intra", "semi", "super", "trans", "retro", "peri", "epi", "hypo", "hyper",
    "quadri", "bi", "tri", "uni", "multi", "mono", "poly", "para", "endo", "meso", "ante", "post", "pre", "extra",
    "meta", "fore",
];

/// A distinct word.
#[derive(Debug)]
pub struct Word {
    /// As it is looked up, without the possessive ending.
    pub folded: Box<str>,
    /// What it is wherever it stands.
    pub status: Status,
    beside: OnceCell<bool>,
    near: OnceCell<Vec<Near>>,
    nearest: OnceCell<Vec<Near>>,
    at_one_edit: OnceCell<SmallVec<[Near; 4]>>,
}

impl Word {
    /// Whether some target may stand at one edit.
    pub fn is_beside(&self, index: &SpellingIndex) -> bool {
        *self.beside.get_or_init(|| index.is_beside(&self.folded))
    }

    /// Targets at exactly one edit.
    pub fn at_one_edit(&self, index: &SpellingIndex) -> &[Near] {
        self.at_one_edit
            .get_or_init(|| if self.is_beside(index) { index.at_one_edit(&self.folded) } else { SmallVec::new() })
    }

    /// Targets at no more edits than neighbours may speak for, and those that sound alike.
    pub fn near(&self, index: &SpellingIndex) -> &[Near] {
        self.near.get_or_init(|| index.near(&self.folded, most_edits(self.folded.len())))
    }

    /// The same for a word for which nothing speaks but itself: a short one has no second edit.
    pub fn nearest(&self, index: &SpellingIndex) -> &[Near] {
        if self.folded.len() >= LONG {
            return self.near(index);
        }
        self.nearest.get_or_init(|| {
            let mut list = self.at_one_edit(index).to_vec();
            index.sounding(&self.folded, 2, &mut list);
            list
        })
    }
}

/// The distinct words of a document.
#[derive(Debug)]
pub struct Words<'k> {
    names: &'k NameIndex,
    index: &'k SpellingIndex,
    /// Words that the course declared right, folded.
    course: &'k FxHashSet<String>,
    /// By the key of a word as it is written.
    known: RefCell<FxHashMap<u64, Rc<Word>>>,
}

impl<'k> Words<'k> {
    /// No words yet.
    pub fn new(names: &'k NameIndex, index: &'k SpellingIndex, course: &'k FxHashSet<String>) -> Self {
        Self { names, index, course, known: RefCell::default() }
    }

    /// A word; `form` is what it stands for in names.
    pub fn get(&self, text: &str, form: Form) -> Rc<Word> {
        let key = key(text);
        if let Some(word) = self.known.borrow().get(&key) {
            return Rc::clone(word);
        }
        let mut folded = String::new();
        fold_into(text.get(..without_possessive(text)).unwrap_or(text), &mut folded);
        let status = self.status(text, &folded, form);
        let (beside, near, nearest, at_one_edit) = Default::default();
        let word = Rc::new(Word { folded: folded.into(), status, beside, near, nearest, at_one_edit });
        self.known.borrow_mut().insert(key, Rc::clone(&word));
        word
    }

    /// What a word is wherever it stands.
    pub fn status_of(&self, text: &str, form: Form) -> Status {
        if !form.is_unknown() {
            return Status::Vocabulary;
        }
        let is_plain = text.bytes().all(|c| c.is_ascii_lowercase());
        if is_plain && text.len() >= SHORTEST && self.course.is_empty() && self.index.right.is_common(text) {
            return Status::Right(Known::Common);
        }
        if is_plain && text.len() < SHORTEST { self.status(text, text, form) } else { self.get(text, form).status }
    }

    fn status(&self, text: &str, folded: &str, form: Form) -> Status {
        if !form.is_unknown() {
            return Status::Vocabulary;
        }
        if is_article(folded) {
            return Status::Passable;
        }
        if !folded.bytes().all(|c| c.is_ascii_lowercase()) {
            return Status::Aside;
        }
        let right = &self.index.right;
        if folded.len() < SHORTEST {
            let is_stub = folded.len() == 3 && text == folded && right.known(folded) != Some(Known::Common);
            return if is_stub { Status::Stub } else { Status::Short };
        }
        if folded.len() < text.len() && !self.names.form(folded).is_unknown() {
            return Status::Vocabulary; // "the nerve's"
        }
        if self.course.contains(folded) {
            return Status::Aside;
        }
        if let Some(known) = right.known(folded) {
            return Status::Right(known);
        }
        // "Atlantics", "epineurals": English plurals of words that are right.
        let is_right = |stem: &str| {
            let is_long = stem.len() > 5 || text.starts_with(char::is_uppercase);
            is_long && !stem.ends_with('s') && right.known(stem).is_some()
        };
        if self.index.is_form(folded)
            || is_compound(folded, self.index) && !is_slip_of_compound(folded, self.index)
            || folded.strip_suffix('s').is_some_and(is_right)
        {
            return Status::Inflected;
        }
        Status::Unknown
    }
}

/// Whether a word is made of right ones: *subparotid*, *rostromedial*, *posteriormost*, *breastband*.
fn is_compound(folded: &str, index: &SpellingIndex) -> bool {
    const ENDS: &[&str] = &["most", "like", "ward", "wards", "ize", "ized", "ise", "ised"];
    let is_right =
        |word: &str| word.len() >= SHORTEST && (index.right.known(word).is_some() || index.is_name_word(word));
    let is_common = |word: &str| index.right.known(word) == Some(Known::Common);
    let led = |head: &str| {
        PREFIXES.contains(&head)
            || head.len() > 3 && head.ends_with('o') && !index.is_name_word(head) && index.is_combining(head)
    };
    ENDS.iter().any(|end| folded.strip_suffix(end).is_some_and(is_right))
        || (2..=folded.len().saturating_sub(SHORTEST)).any(|cut| {
            let (head, tail) = folded.split_at(cut);
            led(head) && is_right(tail) || cut >= 3 && cut + 2 * tail.len() >= 12 && is_common(head) && is_common(tail)
        })
}

/// Whether a compound is one edit in its first part away from a word of the vocabulary (*tyrohyoid*, *ileopubic*).
fn is_slip_of_compound(folded: &str, index: &SpellingIndex) -> bool {
    let same_tail = |target: &str| target.bytes().rev().zip(folded.bytes().rev()).take_while(|(a, b)| a == b).count();
    // The second part of the compound, behind its "o", is the same in both.
    let is_led = |same: usize| {
        (4..=folded.len().saturating_sub(SHORTEST)).any(|cut| {
            let (head, tail) = folded.split_at(cut);
            let is_word = || index.right.known(tail).is_some() || index.is_name_word(tail);
            head.ends_with('o') && tail.len() <= same && is_word()
        })
    };
    let is_beside = |near: &Near| index.target(near.target).is_some_and(|target| is_led(same_tail(&target.text)));
    let is_prefixed = PREFIXES.iter().any(|prefix| folded.starts_with(prefix));
    !is_prefixed && index.is_beside(folded) && index.at_one_edit(folded).iter().any(is_beside)
}

/// The most edits in a word of some length, where the neighbours speak for it.
pub const fn most_edits(length: usize) -> u32 {
    match length {
        0..=4 => 1,
        5..=9 => 2,
        _ => 3,
    }
}
