//! Bytes and UTF-16 units of one text.

/// Where a text holds characters for which bytes and units differ.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Units {
    /// After each such character: its end in bytes and in units.
    ends: Vec<(usize, usize)>,
    len: usize,
}

impl Units {
    /// Counts a text.
    pub fn new(text: &str) -> Self {
        let mut ends = Vec::new();
        let mut surplus = 0;
        for (at, c) in text.char_indices().filter(|(_, c)| !c.is_ascii()) {
            surplus += c.len_utf8() - c.len_utf16();
            let end = at + c.len_utf8();
            ends.push((end, end - surplus));
        }
        Self { ends, len: text.len() }
    }

    /// The unit at which a byte stands. The byte must begin a character.
    pub fn unit(&self, byte: usize) -> usize {
        let byte = byte.min(self.len);
        let before = self.ends.partition_point(|(end, _)| *end <= byte);
        let (bytes, units) = before.checked_sub(1).and_then(|at| self.ends.get(at)).copied().unwrap_or((0, 0));
        units + (byte - bytes)
    }

    /// The byte at which a unit stands; past the end, the end; inside a character, somewhere in it.
    pub fn byte(&self, unit: usize) -> usize {
        let before = self.ends.partition_point(|(_, end)| *end <= unit);
        let (bytes, units) = before.checked_sub(1).and_then(|at| self.ends.get(at)).copied().unwrap_or((0, 0));
        (bytes + (unit - units)).min(self.len)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bytes_and_units_agree_with_the_standard_library() {
        let text = "n. 𝔹ulnaris – naïve\u{2028}é";
        let units = Units::new(text);
        for (byte, _) in text.char_indices().chain([(text.len(), ' ')]) {
            let unit = text.get(..byte).unwrap_or_default().encode_utf16().count();
            assert_eq!((units.unit(byte), units.byte(unit)), (unit, byte));
        }
        assert_eq!(units.byte(1000), text.len());
        assert_eq!(Units::default().byte(3), 0);
    }
}
