//! Growing a selection: word, name, claim, sentence, block, section, document.

use super::{outline, places};
use crate::reading::Reading;
use crate::text::Span;

/// The ranges round a byte, the smallest first, each within the next.
pub fn selection(text: &str, reading: &Reading, offset: usize) -> Vec<Span> {
    let mut list = vec![word(text, offset)];
    list.extend(places::at(reading, offset).map(|place| place.span));
    let claims = reading.claims.iter().map(|(claim, _)| claim.span);
    list.extend(claims.filter(|span| places::touches(*span, offset)));
    for block in places::blocks_at(reading, offset).filter_map(|block| reading.blocks.list.get(block)) {
        if let Some(at) = block.plain.from_source(offset) {
            list.push(block.plain.to_source(sentence(&block.plain.text, at)));
        }
        list.push(block.span);
    }
    list.extend(
        outline::outline(reading, text.len())
            .into_iter()
            .map(|section| section.span)
            .filter(|span| places::touches(*span, offset)),
    );
    list.push(Span::new(0, text.len()));
    list.sort_by_key(|span| span.len());
    let mut grown: Vec<Span> = Vec::new();
    for span in list {
        if grown.last().is_none_or(|last| span.contains(*last) && span != *last) {
            grown.push(span);
        }
    }
    grown
}

/// The word at a byte, empty where there is none.
pub fn word(text: &str, offset: usize) -> Span {
    let is_part = |c: char| c.is_alphanumeric() || matches!(c, '\'' | '’' | '\u{AD}');
    let before = text.get(..offset).unwrap_or_default();
    let behind = text.get(offset..).unwrap_or_default();
    let start = before.char_indices().rev().take_while(|(_, c)| is_part(*c)).last().map_or(offset, |(at, _)| at);
    let end = behind.find(|c| !is_part(c)).map_or(text.len(), |at| offset + at);
    Span::new(start, end)
}

/// The sentence at a byte of a visible text.
fn sentence(text: &str, at: usize) -> Span {
    let ends = |(place, c): (usize, char)| {
        let behind = text.get(place + c.len_utf8()..).unwrap_or_default();
        let is_end = matches!(c, '.' | '!' | '?') && behind.chars().next().is_none_or(char::is_whitespace);
        is_end.then_some(place + c.len_utf8())
    };
    let cuts: Vec<usize> = text.char_indices().filter_map(ends).collect();
    let start = cuts.iter().copied().rfind(|cut| *cut <= at.saturating_sub(1)).unwrap_or(0);
    let end = cuts.iter().copied().find(|cut| *cut >= at.max(1)).unwrap_or(text.len());
    let body = text.get(start..end).unwrap_or_default();
    Span::new(end - body.trim_start().len(), end)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn finds_words_and_sentences() {
        let text = "One two. Three four! Five";
        for (at, expected) in [(0, "One two."), (5, "One two."), (10, "Three four!"), (24, "Five")] {
            assert_eq!(sentence(text, at).of(text), expected, "{at}");
        }
        assert_eq!(word(text, 5).of(text), "two");
        assert_eq!(word(text, 8).of(text), "");
    }
}
