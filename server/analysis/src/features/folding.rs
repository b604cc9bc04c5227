//! What can be folded: sections, list items with what hangs on them, tables, front matter and generated blocks.

use super::outline;
use crate::blocks::BlockKind;
use crate::reading::Reading;
use crate::text::Span;

/// The ranges of a document that can be folded, each of more than one line of the source. The end of a section leaves out
/// the empty lines before the next.
pub fn folding(text: &str, reading: &Reading) -> Vec<Span> {
    let mut list: Vec<Span> = outline::outline(reading, text.len()).iter().map(|section| section.span).collect();
    let blocks = &reading.blocks.list;
    for (at, block) in blocks.iter().enumerate() {
        match block.kind {
            BlockKind::Item(_) | BlockKind::Term => {
                let inner = blocks.iter().filter(|inner| inner.parent == Some(at)).map(|inner| inner.span);
                list.push(inner.fold(block.span, Span::cover));
            }
            BlockKind::Cell { row: 0, column: 0, table } => {
                let cells = blocks
                    .iter()
                    .filter(|cell| matches!(cell.kind, BlockKind::Cell { table: other, .. } if other == table));
                list.push(cells.fold(block.span, |span, cell| span.cover(cell.span)));
            }
            _ => {}
        }
    }
    list.extend(fenced(text));
    for span in &mut list {
        let body = span.of(text);
        span.end = span.start + body.trim_end().len();
    }
    list.retain(|span| span.of(text).contains(['\n', '\r']));
    list.sort_by_key(|span| (span.start, std::cmp::Reverse(span.end)));
    list.dedup();
    list
}

/// What stands between HTML comments that begin and end a block (`<!-- fascicle:table … -->` to `<!-- /fascicle -->`).
fn fenced(text: &str) -> Vec<Span> {
    let mut list = Vec::new();
    let mut from = 0;
    while let Some(start) = text.get(from..).and_then(|rest| rest.find("<!-- fascicle:")).map(|at| from + at) {
        let Some(end) = text.get(start..).and_then(|rest| rest.find("<!-- /fascicle")).map(|at| start + at) else {
            break;
        };
        list.push(Span::new(start, end));
        from = end + 1;
    }
    list
}
