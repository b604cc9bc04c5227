//! From a block's visible text to tokens.
//!
//! A token is a word, or one punctuation mark. Words are letters and digits with what may stand inside a word: combining
//! marks, soft hyphens, an apostrophe between letters. A word is looked up folded: lower case, no accents, no ligatures, no
//! soft hyphens.

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

/// Cuts a text into tokens. White space is none.
pub fn tokens(text: &str) -> Vec<Token> {
    let mut list = Vec::with_capacity(text.len() / 5);
    let mut start = None;
    let mut chars = text.char_indices().peekable();
    while let Some((at, c)) = chars.next() {
        let inside = start.is_some();
        let is_part = c.is_alphanumeric()
            || (inside && (JOINERS.contains(&c) || is_combining_mark(c)))
            || (inside && matches!(c, '\'' | '’') && chars.peek().is_some_and(|(_, next)| next.is_alphabetic()));
        if is_part {
            start.get_or_insert(at);
            continue;
        }
        if let Some(from) = start.take() {
            list.push(Token { span: Span::new(from, at), is_word: true });
        }
        if !c.is_whitespace() {
            list.push(Token { span: Span::new(at, at + c.len_utf8()), is_word: false });
        }
    }
    if let Some(from) = start {
        list.push(Token { span: Span::new(from, text.len()), is_word: true });
    }
    list
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

/// A word as it is looked up.
pub fn fold(word: &str) -> String {
    let mut folded = String::new();
    fold_into(word, &mut folded);
    folded
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cuts_and_folds() {
        let text = "Bell’s na\u{AD}sociliary, C5–T1 (œsopha\u{308}ge\u{FB01}al).";
        let words: Vec<String> = tokens(text).iter().map(|token| fold(token.span.of(text))).collect();
        assert_eq!(words, ["bell's", "nasociliary", ",", "c5", "–", "t1", "(", "oesophagefial", ")", "."]);
    }
}
