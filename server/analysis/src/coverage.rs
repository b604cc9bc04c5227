//! How much of a document was read into claims, so that silence is visible.
//!
//! A sentence that names two or more structures is one that could state a relation between them. Which of those were read
//! is a statistic for the author; it takes no part in reading.

use crate::blocks::{Block, BlockKind};
use crate::mentions::{Mention, Mentions};
use crate::reading::Reading;
use crate::text::Span;

/// A sentence, or the row of a table, with two or more names.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sentence {
    /// Where it stands in the source.
    pub span: Span,
    /// How many names it has.
    pub names: usize,
    /// A claim was read of it.
    pub read: bool,
}

/// The sentences of a document that have two or more names, in order.
pub fn coverage(reading: &Reading) -> Vec<Sentence> {
    let mut list: Vec<Sentence> = Vec::new();
    let mut row: Option<((u32, u32), Span, usize)> = None;
    let blocks = reading.blocks.list.iter().zip(&reading.mentions);
    for (block, mentions) in blocks {
        if let BlockKind::Cell { table, row: number, .. } = block.kind {
            let names = mentions.list.len();
            row = match row.take() {
                Some((at, span, count)) if at == (table, number) => Some((at, span.cover(block.span), count + names)),
                before => {
                    list.extend(before.map(|(_, span, names)| Sentence { span, names, read: false }));
                    Some(((table, number), block.span, names))
                }
            };
            continue;
        }
        list.extend(row.take().map(|(_, span, names)| Sentence { span, names, read: false }));
        list.extend(sentences(block, mentions));
    }
    list.extend(row.map(|(_, span, names)| Sentence { span, names, read: false }));
    list.retain(|sentence| sentence.names >= 2);
    for sentence in &mut list {
        sentence.read = reading.claims.iter().any(|(claim, _)| {
            claim.span.overlaps(sentence.span) || claim.parts.iter().any(|part| part.span.overlaps(sentence.span))
        });
    }
    list
}

fn sentences(block: &Block, mentions: &Mentions) -> Vec<Sentence> {
    let text = &block.plain.text;
    let mut list = Vec::new();
    let mut start = 0;
    let mut close = |end: usize| {
        let span = Span::new(start, end);
        start = end;
        let within = |mention: &&Mention| span.contains(mention.span);
        let names = mentions.list.iter().filter(within).count();
        let body = span.of(text);
        let lead = body.len() - body.trim_start().len();
        let trimmed = Span::new(span.start + lead, span.start + lead + body.trim().len());
        if !trimmed.is_empty() {
            list.push(Sentence { span: block.plain.to_source(trimmed), names, read: false });
        }
    };
    for pair in mentions.tokens.windows(3) {
        let [before, mark, next] = pair else { continue };
        let ends = match mark.span.of(text) {
            "?" | "!" => true,
            "." => {
                mark.span.end < next.span.start
                    && before.span.of(text).chars().count() > 1
                    && next.span.of(text).chars().next().is_some_and(|c| !c.is_lowercase())
            }
            _ => false,
        };
        if ends && !mark.is_word {
            close(mark.span.end);
        }
    }
    close(text.len());
    list
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Form, Knowledge, Settings};

    #[test]
    fn counts_sentences_and_rows_with_two_names() {
        let knowledge = Knowledge::new(fascicle_vocab::built_in());
        let text = "The deltoid is large. The radial nerve meets the ulnar nerve nowhere. Fine.\n\n\
                    | muscle | nerve |\n|---|---|\n| deltoid | axillary nerve |\n";
        let reading = crate::read(text, Form::Markdown, &knowledge, &Settings::default());
        let list = coverage(&reading);
        let told: Vec<(&str, usize)> = list.iter().map(|sentence| (sentence.span.of(text), sentence.names)).collect();
        assert_eq!(told, [("The radial nerve meets the ulnar nerve nowhere.", 2), (" deltoid | axillary nerve ", 2)]);
    }
}
