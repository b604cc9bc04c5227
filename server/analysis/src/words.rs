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
    if text.is_ascii() {
        ascii_tokens(text.as_bytes(), &mut list);
        return list;
    }
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

/// The same for a text in ASCII, which most are.
fn ascii_tokens(text: &[u8], list: &mut Vec<Token>) {
    let mut at = 0;
    while let Some(c) = text.get(at) {
        if c.is_ascii_alphanumeric() {
            let start = at;
            let inner =
                |at: usize| text.get(at) == Some(&b'\'') && text.get(at + 1).is_some_and(u8::is_ascii_alphabetic);
            while text.get(at).is_some_and(u8::is_ascii_alphanumeric) || inner(at) {
                at += 1;
            }
            list.push(Token { span: Span::new(start, at), is_word: true });
        } else {
            // A vertical tab is white space too.
            if !c.is_ascii_whitespace() && *c != 0x0B {
                list.push(Token { span: Span::new(at, at + 1), is_word: false });
            }
            at += 1;
        }
    }
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
    fn cuts_ascii_as_all_else() {
        let spans = |text: &str| tokens(text).into_iter().map(|token| (token.span, token.is_word)).collect::<Vec<_>>();
        for text in ["It's 'quoted' rock'n'roll, dogs' C5-T1\t(x)\u{B}\n1'2 a'", "", "'", "a''b", "--", "\u{1}x\u{7F}"]
        {
            let other = format!("{text} é");
            let mut expected = spans(&other);
            expected.pop();
            assert_eq!(spans(text), expected, "{text:?}");
        }
    }

    #[test]
    fn cuts_and_folds() {
        let text = "Bell’s na\u{AD}sociliary, C5–T1 (œsopha\u{308}ge\u{FB01}al).";
        let words: Vec<String> = tokens(text).iter().map(|token| fold(token.span.of(text))).collect();
        assert_eq!(words, ["bell's", "nasociliary", ",", "c5", "–", "t1", "(", "oesophagefial", ")", "."]);
    }
}
