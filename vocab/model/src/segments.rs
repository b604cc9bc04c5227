//! Sets of spinal segments.
//!
//! The roots of a nerve are a set of spinal segments, C1 to Co1. A set is one machine word; the order of the bits is the
//! order of the segments down the cord.

use std::fmt;

use serde::{Deserialize, Serialize};

/// How many spinal segments there are: eight cervical, twelve thoracic, five lumbar, five sacral, one coccygeal.
pub const COUNT: u8 = 31;

/// A set of spinal segments.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Segments(pub u32);

/// The letter of a region of the cord, the place of its first segment, and how many segments it has.
const REGIONS: [(&str, u8, u8); 5] = [("C", 0, 8), ("T", 8, 12), ("L", 20, 5), ("S", 25, 5), ("Co", 30, 1)];

impl Segments {
    /// The empty set.
    pub const EMPTY: Self = Self(0);

    /// The set of one segment, numbered from 0 (C1) to 30 (Co1); the empty set beyond.
    pub const fn one(index: u8) -> Self {
        if index < COUNT { Self(1 << index) } else { Self(0) }
    }

    /// The number (0 to 30) of a segment, from its region's letter (`C T L S Co`, any case) and its place in the region.
    pub fn index(region: &str, number: u8) -> Option<u8> {
        let (_, first, count) = REGIONS.iter().find(|(letter, ..)| letter.eq_ignore_ascii_case(region))?;
        (1..=*count).contains(&number).then(|| first + number - 1)
    }

    /// The name of a segment by its number: `C5`.
    pub fn name(index: u8) -> String {
        REGIONS
            .iter()
            .find(|(_, first, count)| (*first..first + count).contains(&index))
            .map_or_else(String::new, |(letter, first, _)| format!("{letter}{}", index - first + 1))
    }

    /// All segments from one to another, both included; empty where they stand in the wrong order.
    pub fn range(from: u8, to: u8) -> Self {
        (from..=to.min(COUNT - 1)).fold(Self::EMPTY, |set, index| set.union(Self::one(index)))
    }

    /// Reads segments as the vocabulary writes them: names with blanks or commas between them, ranges with a hyphen
    /// (`C5 C6`, `C8-T1`).
    ///
    /// # Errors
    /// The word that is not a segment.
    pub fn parse(text: &str) -> Result<Self, String> {
        let mut set = Self::EMPTY;
        for word in text.split([' ', ',']).filter(|word| !word.is_empty()) {
            let bad = || format!("`{word}` is not a spinal segment or a range such as `C5-T1`");
            let mut ends = word.split(['-', '–']);
            let (first, last) = (ends.next().and_then(Self::parse_one), ends.next().map(Self::parse_one));
            set = match (first, last, ends.next()) {
                (Some(one), None, None) => set.union(Self::one(one)),
                (Some(from), Some(Some(to)), None) if from < to => set.union(Self::range(from, to)),
                _ => return Err(bad()),
            };
        }
        Ok(set)
    }

    /// The number of a segment written as `C5`.
    pub fn parse_one(word: &str) -> Option<u8> {
        let digits = word.find(|c: char| c.is_ascii_digit())?;
        let (letter, number) = word.split_at(digits);
        Self::index(letter, number.parse().ok()?)
    }

    /// Both sets together.
    #[must_use]
    pub const fn union(self, other: Self) -> Self {
        Self(self.0 | other.0)
    }

    /// What both sets hold.
    #[must_use]
    pub const fn intersection(self, other: Self) -> Self {
        Self(self.0 & other.0)
    }

    /// What this set holds and the other does not.
    #[must_use]
    pub const fn minus(self, other: Self) -> Self {
        Self(self.0 & !other.0)
    }

    /// Whether every segment of this set is in the other.
    pub const fn within(self, other: Self) -> bool {
        self.0 & !other.0 == 0
    }

    /// Whether the set is empty.
    pub const fn is_empty(self) -> bool {
        self.0 == 0
    }

    /// How many segments the set holds.
    pub const fn len(self) -> u32 {
        self.0.count_ones()
    }

    /// The numbers of the segments, down the cord.
    pub fn iter(self) -> impl Iterator<Item = u8> {
        (0..COUNT).filter(move |index| self.0 & (1 << index) != 0)
    }
}

impl fmt::Display for Segments {
    /// Runs of three or more as a range, the rest one by one: `C5, C6`, `C5–T1`, `L2–L4, S1`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let all: Vec<u8> = self.iter().collect();
        let mut parts = Vec::new();
        for run in all.chunk_by(|a, b| a + 1 == *b) {
            match run {
                [first, .., last] if run.len() > 2 => {
                    parts.push(format!("{}–{}", Self::name(*first), Self::name(*last)));
                }
                _ => parts.extend(run.iter().map(|index| Self::name(*index))),
            }
        }
        f.write_str(&parts.join(", "))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_and_shows() {
        for (written, shown) in [
            ("C5 C6", "C5, C6"),
            ("C5-T1", "C5–T1"),
            ("L2-L4 S1", "L2–L4, S1"),
            ("T12,L1", "T12, L1"),
            ("S4 S5 Co1", "S4–Co1"),
        ] {
            assert_eq!(Segments::parse(written).map(|set| set.to_string()), Ok(shown.to_owned()));
        }
        for bad in ["C9", "T1-C5", "X1", "C5-", "C5-C6-C7", "5"] {
            assert!(Segments::parse(bad).is_err(), "{bad}");
        }
    }
}
