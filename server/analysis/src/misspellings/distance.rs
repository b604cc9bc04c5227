//! Edit distance: letters dropped, added, replaced, or two neighbours swapped (optimal string alignment).

/// The most letters of a word that is compared; longer ones are no names.
pub const LONGEST: usize = 40;

/// A word that others are compared with: for every letter the places at which it has it.
#[derive(Debug)]
pub struct Pattern {
    places: [u64; 26],
    length: u32,
}

impl Pattern {
    /// Of a word in small ASCII letters; `None` for another, and for one that is too long.
    pub fn new(word: &str) -> Option<Self> {
        let mut places = [0; 26];
        if word.is_empty() || word.len() > LONGEST {
            return None;
        }
        for (at, letter) in word.bytes().enumerate() {
            *places.get_mut(usize::from(letter.wrapping_sub(b'a')))? |= 1 << at;
        }
        Some(Self { places, length: word.len() as u32 })
    }

    /// The distance of another word, if it is at most `most`.
    ///
    /// The rows of the table of edits are not filled cell by cell: each is kept as two numbers, which have a bit where the
    /// next cell is one more and one less, and all cells of a row are found at once (H. Hyyrö, *A bit-vector algorithm for
    /// computing Levenshtein and Damerau edit distances*, 2003).
    pub fn distance(&self, other: &str, most: u32) -> Option<u32> {
        if (other.len() as u32).abs_diff(self.length) > most || other.len() > LONGEST {
            return None;
        }
        let last = 1_u64 << (self.length - 1);
        let (mut more, mut less) = (u64::MAX, 0_u64);
        let (mut same, mut known, mut distance) = (0_u64, 0_u64, self.length);
        for (left, letter) in (0..other.len() as u32).rev().zip(other.bytes()) {
            let own = self.places.get(usize::from(letter.wrapping_sub(b'a'))).copied().unwrap_or(0);
            let swapped = ((!same & own) << 1) & known;
            same = (((own & more).wrapping_add(more)) ^ more) | own | less | swapped;
            let (above, below) = (less | !(same | more), same & more);
            if above & last != 0 {
                distance += 1;
            } else if below & last != 0 {
                distance -= 1;
            }
            // Each letter that is left takes off one at most.
            if distance > most + left {
                return None;
            }
            let (above, below) = (above << 1 | 1, below << 1);
            more = below | !(same | above);
            less = above & same;
            known = own;
        }
        (distance <= most).then_some(distance)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn distance(a: &str, b: &str, most: u32) -> Option<u32> {
        Pattern::new(a).and_then(|pattern| pattern.distance(b, most))
    }

    #[test]
    fn counts_edits() {
        for (a, b, expected) in [
            ("pollicus", "pollicis", 1),
            ("radail", "radial", 1),
            ("peroneous", "peroneus", 1),
            ("sternocleidomastiod", "sternocleidomastoid", 1),
            ("anteriro", "anterior", 1),
            ("sytlohyoid", "stylohyoid", 1),
            ("diapgragmatic", "diaphragmatic", 1),
            ("same", "same", 0),
            ("abc", "", 3),
            ("minimus", "minimi", 2),
        ] {
            assert_eq!(distance(a, b, 3), Some(expected), "{a} {b}");
            assert_eq!(distance(b, a, 3), Some(expected).filter(|_| !b.is_empty()), "{b} {a}");
        }
        assert_eq!(distance("scapula", "clavicle", 3), None);
    }

    /// The table of edits, cell by cell.
    fn independent(a: &[u8], b: &[u8]) -> u32 {
        let mut table = vec![vec![0_u32; b.len() + 1]; a.len() + 1];
        for i in 0..=a.len() {
            for j in 0..=b.len() {
                table[i][j] = if i == 0 || j == 0 {
                    (i + j) as u32
                } else {
                    let beside = (table[i - 1][j] + 1).min(table[i][j - 1] + 1);
                    let mut best = beside.min(table[i - 1][j - 1] + u32::from(a[i - 1] != b[j - 1]));
                    if i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1] {
                        best = best.min(table[i - 2][j - 2] + 1);
                    }
                    best
                };
            }
        }
        table[a.len()][b.len()]
    }

    #[test]
    fn counts_as_cell_by_cell() {
        let mut seed = 1_u64;
        let mut number = |below: u64| {
            seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (seed >> 33) % below
        };
        for _ in 0..20_000 {
            let mut word = || -> String { (0..=number(12)).map(|_| (b'a' + number(4) as u8) as char).collect() };
            let (a, b) = (word(), word());
            let expected = independent(a.as_bytes(), b.as_bytes());
            for most in 0..5 {
                assert_eq!(distance(&a, &b, most), Some(expected).filter(|found| *found <= most), "{a} {b} {most}");
            }
        }
    }
}
