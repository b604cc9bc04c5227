//! From a block's visible text to tokens.
//!
//! A token is a word, or one punctuation mark. Words are letters and digits with what may stand inside a word: combining
//! marks, soft hyphens, an apostrophe between letters. A word is looked up folded: lower case, no accents, no ligatures, no
//! soft hyphens.

use std::borrow::Cow;

use unicode_normalization::UnicodeNormalization;
use unicode_normalization::char::is_combining_mark;

use crate::text::Span;

/// A word or a punctuation mark of a text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Token {
    /// Where it stands in the text.
    pub span: Span,
    /// Whether it is a word; else it is one mark.
    pub is_word: bool,
}

const SOFT_HYPHEN: char = '\u{AD}';
const JOINERS: [char; 3] = [SOFT_HYPHEN, '\u{200D}', '\u{200C}'];

/// What a byte of a text is, as far as tokens go.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Class {
    Blank,
    Mark,
    Word,
    /// Part of a character beyond ASCII.
    Wide,
}

/// The classes of all bytes.
const CLASSES: [Class; 256] = {
    let mut classes = [Class::Mark; 256];
    let mut byte = 0;
    while byte < 256 {
        let c = byte as u8;
        classes[byte] = if !c.is_ascii() {
            Class::Wide
        } else if c.is_ascii_alphanumeric() {
            Class::Word
        } else if c.is_ascii_whitespace() || c == 0x0B {
            Class::Blank // a vertical tab is white space too
        } else {
            Class::Mark
        };
        byte += 1;
    }
    classes
};

/// The character at a place of a text.
fn char_at(text: &str, at: usize) -> Option<char> {
    text.get(at..)?.chars().next()
}

/// Cuts a text into tokens. White space is none.
pub fn tokens(text: &str) -> Vec<Token> {
    let mut list = Vec::with_capacity(text.len() / 4 + 2);
    let mut at = 0;
    while let Some(byte) = text.as_bytes().get(at) {
        let (end, is_word) = match CLASSES[usize::from(*byte)] {
            Class::Blank => {
                at += 1;
                continue;
            }
            Class::Mark => (at + 1, false),
            Class::Word => (word_end(text, at + 1), true),
            Class::Wide => {
                let Some(c) = char_at(text, at) else { break };
                let end = at + c.len_utf8();
                if c.is_whitespace() {
                    at = end;
                    continue;
                }
                if c.is_alphanumeric() { (word_end(text, end), true) } else { (end, false) }
            }
        };
        list.push(Token { span: Span::new(at, end), is_word });
        at = end;
    }
    list
}

/// The end of a word of which a place is inside or behind.
fn word_end(text: &str, mut at: usize) -> usize {
    let is_before_letter = |at: usize| char_at(text, at).is_some_and(char::is_alphabetic);
    while let Some(byte) = text.as_bytes().get(at) {
        match CLASSES[usize::from(*byte)] {
            Class::Word => at += 1,
            Class::Mark if *byte == b'\'' && is_before_letter(at + 1) => at += 1,
            Class::Wide => {
                let Some(c) = char_at(text, at) else { break };
                let end = at + c.len_utf8();
                let is_part = c.is_alphanumeric()
                    || JOINERS.contains(&c)
                    || is_combining_mark(c)
                    || c == '’' && is_before_letter(end);
                if !is_part {
                    break;
                }
                at = end;
            }
            Class::Mark | Class::Blank => break,
        }
    }
    at
}

/// How many bytes of a word stand before its possessive ending.
pub fn without_possessive(text: &str) -> usize {
    if !text.ends_with(['s', 'S']) || !text.contains(['\'', '’']) {
        return text.len();
    }
    ["'s", "’s", "'S", "’S"].iter().find_map(|end| text.strip_suffix(end)).map_or(text.len(), str::len)
}

/// A word as it is looked up, written into `into`, which is cleared first.
pub fn fold_into(word: &str, into: &mut String) {
    into.clear();
    if word.is_ascii() {
        into.push_str(word);
        into.make_ascii_lowercase();
        return;
    }
    for c in word.nfkd().filter(|c| !is_combining_mark(*c) && !JOINERS.contains(c)) {
        match c {
            'æ' | 'Æ' => into.push_str("ae"),
            'œ' | 'Œ' => into.push_str("oe"),
            '’' => into.push('\''),
            _ => into.extend(c.to_lowercase()),
        }
    }
}

/// A word in lower case.
pub fn lower(word: &str) -> Cow<'_, str> {
    if word.bytes().all(|c| c.is_ascii() && !c.is_ascii_uppercase()) { word.into() } else { word.to_lowercase().into() }
}

/// A word as it is looked up.
pub fn fold(word: &str) -> String {
    let mut folded = String::new();
    fold_into(word, &mut folded);
    folded
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    /// The same, character by character.
    fn independent(text: &str) -> Vec<(Span, bool)> {
        let mut list: Vec<(Span, bool)> = Vec::new();
        let mut is_inside = false;
        for (at, c) in text.char_indices() {
            let end = at + c.len_utf8();
            let next = text[end..].chars().next();
            let is_inner = JOINERS.contains(&c)
                || is_combining_mark(c)
                || matches!(c, '\'' | '’') && next.is_some_and(char::is_alphabetic);
            if is_inside && (c.is_alphanumeric() || is_inner) {
                list.last_mut().unwrap().0.end = end;
            } else if !c.is_whitespace() {
                is_inside = c.is_alphanumeric();
                list.push((Span::new(at, end), is_inside));
            } else {
                is_inside = false;
            }
        }
        list
    }

    #[test]
    fn cuts_as_character_by_character() {
        let pieces = [
            "a", "Z", "7", "'", "’", " ", "\n", "\u{B}", "\u{85}", "\u{A0}", "-", "–", ".", "é", "e\u{301}", "\u{AD}",
            "\u{200D}", "\u{FB01}", "œ", "𝔹", "\u{FFFC}", "\u{7F}", "\u{1}", "½", "中",
        ];
        let mut seed = 1_u64;
        for _ in 0..20_000 {
            let mut text = String::new();
            for _ in 0..12 {
                seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
                text.push_str(pieces[(seed >> 33) as usize % pieces.len()]);
            }
            let cut: Vec<_> = tokens(&text).into_iter().map(|token| (token.span, token.is_word)).collect();
            assert_eq!(cut, independent(&text), "{text:?}");
        }
    }

    #[test]
    fn cuts_and_folds() {
        let text = "Bell’s na\u{AD}sociliary, C5–T1 (œsopha\u{308}ge\u{FB01}al).";
        let words: Vec<String> = tokens(text).iter().map(|token| fold(token.span.of(text))).collect();
        assert_eq!(words, ["bell's", "nasociliary", ",", "c5", "–", "t1", "(", "oesophagefial", ")", "."]);
    }
}
