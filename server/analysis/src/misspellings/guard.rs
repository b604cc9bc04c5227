//! Right words: English and medical English that no vocabulary name has to explain.
//!
//! The lists stand in `words/` with their licences. They are kept as two filters of 16 bits a word, about 0.7 MB: a listed
//! word is always found, and one unlisted word in 65,000 passes for listed, which at worst leaves a slip unmarked.

use xorf::{BinaryFuse16, Descriptor, Filter as _};

use super::key::key;

/// How well known a word is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Known {
    /// A word of everyday or educated English.
    Common,
    /// A rare word, a proper name, a medical term.
    Rare,
}

/// The lists.
#[derive(Debug)]
pub struct RightWords {
    common: BinaryFuse16,
    other: BinaryFuse16,
}

impl RightWords {
    /// The lists that the program brings along.
    pub fn built_in() -> Self {
        Self {
            common: filter(include_bytes!(concat!(env!("OUT_DIR"), "/common.filter"))),
            other: filter(include_bytes!(concat!(env!("OUT_DIR"), "/other.filter"))),
        }
    }

    /// Whether and how well a folded word is known.
    pub fn known(&self, word: &str) -> Option<Known> {
        let key = key(word);
        if self.common.contains(&key) {
            Some(Known::Common)
        } else if self.other.contains(&key) {
            Some(Known::Rare)
        } else {
            None
        }
    }

    /// Whether a folded word is one of everyday or educated English.
    pub fn is_common(&self, word: &str) -> bool {
        self.common.contains(&key(word))
    }

    /// Memory that the lists take, in bytes.
    pub fn bytes(&self) -> usize {
        (self.common.fingerprints.len() + self.other.fingerprints.len()) * size_of::<u16>()
    }
}

/// Reads a filter as the build wrote it: seed, three lengths, fingerprints, all little-endian.
fn filter(bytes: &[u8]) -> BinaryFuse16 {
    let number = |at: usize| {
        let mut four = [0; 4];
        for (slot, byte) in four.iter_mut().zip(bytes.iter().skip(at)) {
            *slot = *byte;
        }
        u32::from_le_bytes(four)
    };
    let descriptor = Descriptor {
        seed: u64::from(number(0)) | u64::from(number(4)) << 32,
        segment_length: number(8),
        segment_length_mask: number(12),
        segment_count_length: number(16),
    };
    let prints = bytes.get(Descriptor::DMA_LEN..).unwrap_or_default();
    let fingerprints = prints.chunks_exact(2).map(|pair| u16::from_le_bytes([pair[0], pair[1]])).collect();
    BinaryFuse16 { descriptor, fingerprints }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn knows_listed_words() {
        let words = RightWords::built_in();
        assert_eq!(words.known("lumber"), Some(Known::Common));
        assert_eq!(words.known("humoral"), Some(Known::Rare));
        assert_eq!(words.known("glomerulus"), Some(Known::Rare));
        assert_eq!(words.known("pollicus"), None);
        assert!(words.bytes() < 1_000_000);
    }
}
