//! Lines and columns of a text, in the three encodings of the language server protocol.
//!
//! Lines end at LF, CRLF and CR, as the protocol has it, and at nothing else. Bad positions are normal: a column past the
//! end of its line means the end of the line, a line past the end means the end of the text, a column inside a character
//! means its beginning.

use crate::text::Span;

/// How columns are counted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Encoding {
    /// Bytes of UTF-8.
    Utf8,
    /// Units of UTF-16, the protocol's default.
    #[default]
    Utf16,
    /// Characters.
    Utf32,
}

impl Encoding {
    const fn width(self, c: char) -> usize {
        match self {
            Self::Utf8 => c.len_utf8(),
            Self::Utf16 => c.len_utf16(),
            Self::Utf32 => 1,
        }
    }
}

/// A line and a column, both from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Position {
    /// Line.
    pub line: u32,
    /// Column, in the units of the encoding that was asked for.
    pub column: u32,
}

/// Where the lines of a text begin.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LineIndex {
    starts: Vec<usize>,
    len: usize,
}

impl LineIndex {
    /// Indexes a text.
    pub fn new(text: &str) -> Self {
        let bytes = text.as_bytes();
        let mut starts = vec![0];
        for (at, byte) in bytes.iter().enumerate() {
            if *byte == b'\n' || (*byte == b'\r' && bytes.get(at + 1) != Some(&b'\n')) {
                starts.push(at + 1);
            }
        }
        Self { starts, len: text.len() }
    }

    /// How many lines there are, at least one.
    pub fn count(&self) -> usize {
        self.starts.len()
    }

    /// The bytes of a line without its line end; empty past the last.
    pub fn line(&self, line: usize, text: &str) -> Span {
        let Some(start) = self.starts.get(line).copied() else { return Span::new(self.len, self.len) };
        let end = self.starts.get(line + 1).copied().unwrap_or(self.len);
        let body = text.get(start..end).unwrap_or_default();
        Span::new(start, start + body.trim_end_matches(['\r', '\n']).len())
    }

    /// The line and column of a byte. `text` is the text that was indexed.
    pub fn position(&self, at: usize, text: &str, encoding: Encoding) -> Position {
        let at = at.min(self.len);
        let line = self.starts.partition_point(|start| *start <= at).saturating_sub(1);
        let start = self.starts.get(line).copied().unwrap_or(0);
        let mut at = at;
        while !text.is_char_boundary(at) {
            at -= 1;
        }
        let before = text.get(start..at).unwrap_or_default();
        let column = if before.is_ascii() { before.len() } else { before.chars().map(|c| encoding.width(c)).sum() };
        Position { line: u32::try_from(line).unwrap_or(u32::MAX), column: u32::try_from(column).unwrap_or(u32::MAX) }
    }

    /// The byte at a line and column. `text` is the text that was indexed.
    pub fn offset(&self, position: Position, text: &str, encoding: Encoding) -> usize {
        if position.line as usize >= self.starts.len() {
            return self.len;
        }
        let line = self.line(position.line as usize, text);
        let body = line.of(text);
        let mut column = 0;
        for (at, c) in body.char_indices() {
            column += encoding.width(c);
            if column > position.column as usize {
                return line.start + at;
            }
        }
        line.end
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn converts_both_ways() {
        let text = "a\u{2028}é𝔹x\r\nb\rc\n";
        let lines = LineIndex::new(text);
        assert_eq!(lines.count(), 4);
        let x = text.find('x').unwrap_or(0);
        for (encoding, column) in [(Encoding::Utf8, 10), (Encoding::Utf16, 5), (Encoding::Utf32, 4)] {
            let position = lines.position(x, text, encoding);
            assert_eq!(position, Position { line: 0, column });
            assert_eq!(lines.offset(position, text, encoding), x);
        }
        assert_eq!(lines.offset(Position { line: 0, column: 4 }, text, Encoding::Utf16), text.find('𝔹').unwrap_or(0));
        assert_eq!(lines.offset(Position { line: 0, column: 99 }, text, Encoding::Utf16), x + 1);
        assert_eq!(lines.offset(Position { line: 9, column: 0 }, text, Encoding::Utf16), text.len());
    }
}
