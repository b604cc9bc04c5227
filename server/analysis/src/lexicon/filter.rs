//! A quick no: whether a word may be one of a list, told by its length and three of its letters. Most words of a text are
//! of none of the lists, and are not compared with each of their words.

/// What some words look like, in `64 * N` bits, made when the program is compiled. Upper and lower case look alike.
pub(super) struct Filter<const N: usize>([u64; N]);

impl<const N: usize> Filter<N> {
    /// The filter of no words.
    pub(super) const EMPTY: Self = Self([0; N]);

    /// The filter of some words.
    pub(super) const fn of(words: &[&str]) -> Self {
        let mut filter = Self::EMPTY;
        let mut at = 0;
        while at < words.len() {
            filter.add(words[at].as_bytes(), words[at].len());
            at += 1;
        }
        filter
    }

    /// Adds the first `len` bytes of a word.
    pub(super) const fn add(&mut self, word: &[u8], len: usize) {
        let (slot, bit) = Self::place(word, len);
        self.0[slot] |= bit;
    }

    /// False only for a word that was not added.
    #[inline]
    pub(super) const fn may_have(&self, word: &str) -> bool {
        let (slot, bit) = Self::place(word.as_bytes(), word.len());
        self.0[slot] & bit != 0
    }

    #[inline]
    const fn place(word: &[u8], len: usize) -> (usize, u64) {
        let mut look = len as u32 & 0xFF;
        if len > 0 {
            look |= lower(word[0]) << 8 | lower(word[len / 2]) << 16 | lower(word[len - 1]) << 24;
        }
        let mixed = (look.wrapping_mul(0x9E37_79B1) >> 8) as usize;
        (mixed / 64 % N, 1 << (mixed % 64))
    }
}

#[inline]
const fn lower(letter: u8) -> u32 {
    letter.to_ascii_lowercase() as u32
}

#[cfg(test)]
mod tests {
    use super::Filter;

    #[test]
    fn has_all_and_little_else() {
        const WORDS: &[&str] = &["", "a", "nerve", "Nerves", "muscle", "→", "artery"];
        static FILTER: Filter<16> = Filter::of(WORDS);
        assert!(WORDS.iter().all(|word| FILTER.may_have(word)));
        assert!(FILTER.may_have("NERVE"));
        let others = ["walk", "nerv", "median", "muscles", "of", "the", "supplies", "deltoid", "vein", "é"];
        assert!(others.iter().filter(|word| FILTER.may_have(word)).count() < 3);
    }
}
