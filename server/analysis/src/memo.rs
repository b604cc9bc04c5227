//! What the last reading of a document made of its pieces, so that the next reading works only on what has changed.
//!
//! Every piece that is kept is the answer of a function of nothing but the piece: the names in a visible text, the
//! suspects in it, the judged claims of a section with what it stands under. So a piece is known again by a fingerprint
//! of all that went in, wherever it now stands. Two pieces with one fingerprint of 128 bits are taken for the same.

use std::hash::{Hash, Hasher};

use rustc_hash::{FxHashMap, FxHasher};
use xxhash_rust::xxh3::{Xxh3, xxh3_128_with_seed};

/// All that goes into a piece, in 128 bits.
pub type Fingerprint = u128;

/// The fingerprint of what is written into a hasher.
pub fn fingerprint(write: impl FnOnce(&mut Xxh3)) -> Fingerprint {
    let mut hasher = Xxh3::new();
    write(&mut hasher);
    hasher.digest128()
}

/// The fingerprint of a text with what little else goes in.
pub fn fingerprint_of(text: &str, rest: &(impl Hash + ?Sized)) -> Fingerprint {
    let mut hasher = FxHasher::default();
    rest.hash(&mut hasher);
    xxh3_128_with_seed(text.as_bytes(), hasher.finish())
}

/// Answers of this reading and of the one before.
#[derive(Debug)]
pub struct Kept<T> {
    now: FxHashMap<Fingerprint, T>,
    before: FxHashMap<Fingerprint, T>,
    /// How many answers have been found since the last turn, and between the two turns before.
    found: [usize; 2],
}

impl<T> Default for Kept<T> {
    fn default() -> Self {
        Self { now: FxHashMap::default(), before: FxHashMap::default(), found: [0; 2] }
    }
}

impl<T: Clone> Kept<T> {
    /// The answer for a fingerprint, found now if it was not found before.
    pub fn of(&mut self, key: Fingerprint, find: impl FnOnce() -> T) -> T {
        if let Some(known) = self.now.get(&key) {
            return known.clone();
        }
        let answer = self.before.remove(&key).unwrap_or_else(|| {
            self.found[0] += 1;
            find()
        });
        self.now.insert(key, answer.clone());
        answer
    }

    /// How many answers had to be found in the last reading.
    pub const fn found(&self) -> usize {
        self.found[1]
    }

    /// Ends a reading: what it had no use for is forgotten.
    pub fn turn(&mut self) {
        self.before = std::mem::take(&mut self.now);
        self.found = [0, self.found[0]];
    }
}
