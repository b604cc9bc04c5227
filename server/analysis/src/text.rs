//! Ranges of text, and the visible text of a block with the way back to the source.
//!
//! Everything in this crate speaks of bytes. A [`Span`] is a range of bytes of a document's source. A [`Plain`] is what a
//! reader sees of a block, without markup; it remembers which of its pieces stands where in the source, so that a finding
//! in the visible text becomes a range of the source.

use std::hash::{Hash, Hasher};

/// A range of bytes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Span {
    /// First byte.
    pub start: usize,
    /// Byte after the last.
    pub end: usize,
}

impl Span {
    /// The range from `start` up to and without `end`.
    pub const fn new(start: usize, end: usize) -> Self {
        Self { start, end }
    }

    /// The range told from another place on: what stood at `origin` stands at 0.
    #[must_use]
    pub const fn from(self, origin: usize) -> Self {
        Self { start: self.start.wrapping_sub(origin), end: self.end.wrapping_sub(origin) }
    }

    /// Its length in bytes.
    pub const fn len(self) -> usize {
        self.end.saturating_sub(self.start)
    }

    /// Whether it holds nothing.
    pub const fn is_empty(self) -> bool {
        self.end <= self.start
    }

    /// Whether the other lies within it.
    pub const fn contains(self, other: Self) -> bool {
        self.start <= other.start && other.end <= self.end
    }

    /// Whether the two share a byte.
    pub const fn overlaps(self, other: Self) -> bool {
        self.start < other.end && other.start < self.end
    }

    /// The smallest range that holds both.
    pub fn cover(self, other: Self) -> Self {
        Self::new(self.start.min(other.start), self.end.max(other.end))
    }

    /// The text at the range; empty where the range does not fit the text.
    pub fn of(self, text: &str) -> &str {
        text.get(self.start..self.end).unwrap_or_default()
    }
}

/// What markup says of a stretch of visible text.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Mark {
    /// Emphasis.
    Emphasis,
    /// Strong emphasis.
    Strong,
    /// Struck through: no longer meant.
    Struck,
    /// The text of a link or wiki link.
    Link,
}

/// The visible text of a block, with the way back to the source.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Plain {
    /// The visible text. What is not prose (code, mathematics, HTML) stands in it as [`Plain::GAP`].
    pub text: String,
    /// Pieces in order, each a run of bytes that is the same in the text and in the source.
    pieces: Vec<Piece>,
    /// Stretches of the text with markup.
    pub marks: Vec<(Span, Mark)>,
    /// Where line ends of the source are shown as blanks.
    breaks: Vec<usize>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Piece {
    plain: usize,
    source: usize,
    len: usize,
    source_len: usize,
}

impl Plain {
    /// Stands for something that is not prose. It is no letter, so no name runs across it.
    pub const GAP: char = '\u{FFFC}';

    /// A text that is its own source, from a place of the source on.
    pub fn verbatim(text: &str, source: usize) -> Self {
        let mut plain = Self::default();
        plain.push(text, source);
        plain
    }

    /// Adds visible text that stands at `source` as it is.
    pub fn push(&mut self, text: &str, source: usize) {
        self.push_as(text, Span::new(source, source + text.len()));
    }

    /// Adds visible text for a stretch of the source that reads otherwise (an entity, a line break, a gap).
    pub fn push_as(&mut self, text: &str, source: Span) {
        if text.is_empty() {
            return;
        }
        let same = text.len() == source.len();
        if let Some(last) = self.pieces.last_mut()
            && same
            && last.len == last.source_len
            && last.source + last.len == source.start
        {
            last.len += text.len();
            last.source_len += text.len();
        } else {
            let plain = self.text.len();
            self.pieces.push(Piece { plain, source: source.start, len: text.len(), source_len: source.len() });
        }
        self.text.push_str(text);
    }

    /// Appends another plain text.
    pub fn append(&mut self, other: &Self) {
        let shift = self.text.len();
        self.text.push_str(&other.text);
        self.pieces.extend(other.pieces.iter().map(|piece| Piece { plain: piece.plain + shift, ..*piece }));
        let moved = other.marks.iter().map(|(span, mark)| (Span::new(span.start + shift, span.end + shift), *mark));
        self.marks.extend(moved);
        self.breaks.extend(other.breaks.iter().map(|at| at + shift));
    }

    /// A stretch of it as a text of its own.
    pub fn slice(&self, span: Span) -> Self {
        let mut out = Self::default();
        for piece in &self.pieces {
            let (start, end) = (piece.plain.max(span.start), (piece.plain + piece.len).min(span.end));
            if start >= end {
                continue;
            }
            let source = if piece.len == piece.source_len {
                Span::new(piece.source + start - piece.plain, piece.source + end - piece.plain)
            } else {
                Span::new(piece.source, piece.source + piece.source_len)
            };
            out.push_as(Span::new(start, end).of(&self.text), source);
        }
        out.breaks =
            self.breaks.iter().filter(|at| (span.start..span.end).contains(*at)).map(|at| at - span.start).collect();
        for (at, mark) in &self.marks {
            let (start, end) = (at.start.max(span.start), at.end.min(span.end));
            if start < end {
                out.marks.push((Span::new(start - span.start, end - span.start), *mark));
            }
        }
        out
    }

    /// Where a stretch of the visible text stands in the source.
    pub fn to_source(&self, span: Span) -> Span {
        if span.is_empty() {
            let at = self.source_at(span.start);
            return Span::new(at, at);
        }
        let start = self.source_at(span.start);
        let last = self.source_end(span.end);
        Span::new(start, last.max(start))
    }

    fn source_at(&self, at: usize) -> usize {
        let after = self.pieces.partition_point(|piece| piece.plain <= at);
        let Some(piece) = after.checked_sub(1).and_then(|place| self.pieces.get(place)) else {
            return self.pieces.first().map_or(0, |piece| piece.source);
        };
        let into = at - piece.plain;
        if piece.len == piece.source_len {
            piece.source + into.min(piece.len)
        } else if into >= piece.len {
            piece.source + piece.source_len
        } else {
            piece.source
        }
    }

    /// The end of the source of the character before `end`.
    fn source_end(&self, end: usize) -> usize {
        let after = self.pieces.partition_point(|piece| piece.plain < end);
        let Some(piece) = after.checked_sub(1).and_then(|place| self.pieces.get(place)) else { return 0 };
        let into = end - piece.plain;
        if piece.len == piece.source_len { piece.source + into.min(piece.len) } else { piece.source + piece.source_len }
    }

    /// Its lines: cut at line ends of the source and at hard breaks.
    pub fn lines(&self) -> Vec<Self> {
        let mut cuts: Vec<usize> = self.breaks.clone();
        cuts.extend(self.text.match_indices('\n').map(|(at, _)| at));
        cuts.sort_unstable();
        cuts.push(self.text.len());
        let mut start = 0;
        let mut list = Vec::new();
        for cut in cuts {
            list.push(self.slice(Span::new(start, cut)));
            start = cut + 1;
        }
        list
    }

    /// Without white space at its ends.
    #[must_use]
    pub fn trimmed(&self) -> Self {
        let start = self.text.len() - self.text.trim_start().len();
        self.slice(Span::new(start, self.text.trim_end().len().max(start)))
    }

    /// Whether a stretch stands for a line end of the source that is shown as a blank.
    pub fn is_line_break(&self, span: Span) -> bool {
        self.breaks.iter().any(|at| span.start <= *at && *at < span.end)
    }

    /// Adds a line end of the source, shown as a blank.
    pub fn push_break(&mut self, source: Span) {
        self.breaks.push(self.text.len());
        self.push_as(" ", source);
    }

    /// Where a byte of the source stands in the visible text, if it does.
    pub fn from_source(&self, source: usize) -> Option<usize> {
        let piece =
            self.pieces.iter().find(|piece| (piece.source..=piece.source + piece.source_len).contains(&source))?;
        Some(piece.plain + (source - piece.source).min(piece.len))
    }

    /// Whether a stretch carries a mark anywhere.
    pub fn has_mark(&self, span: Span, mark: Mark) -> bool {
        self.marks.iter().any(|(at, what)| *what == mark && at.overlaps(span))
    }

    /// Writes it into a hasher, its places in the source told from `origin` on.
    pub fn hash_from(&self, origin: usize, hasher: &mut impl Hasher) {
        (&self.text, &self.marks, &self.breaks).hash(hasher);
        for piece in &self.pieces {
            (piece.plain, piece.source.wrapping_sub(origin), piece.len, piece.source_len).hash(hasher);
        }
    }

    /// Whether the source of a stretch is the same run of bytes, so that an edit may replace it.
    pub fn is_verbatim(&self, span: Span) -> bool {
        self.to_source(span).len() == span.len()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn finds_the_way_back() {
        // "a **b** &amp; c"
        let mut plain = Plain::default();
        plain.push("a ", 0);
        plain.push("b", 4);
        plain.push(" ", 7);
        plain.push_as("&", Span::new(8, 13));
        plain.push(" c", 13);
        assert_eq!(plain.text, "a b & c");
        assert_eq!(plain.to_source(Span::new(0, 3)), Span::new(0, 5));
        assert_eq!(plain.to_source(Span::new(2, 3)), Span::new(4, 5));
        assert_eq!(plain.to_source(Span::new(4, 5)), Span::new(8, 13));
        assert_eq!(plain.to_source(Span::new(6, 7)), Span::new(14, 15));
        assert_eq!(plain.slice(Span::new(2, 5)).to_source(Span::new(0, 3)), Span::new(4, 13));
    }
}
