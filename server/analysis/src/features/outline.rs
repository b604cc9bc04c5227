//! The outline of a document: its headings, how far their sections reach, and the structures that they name.

use fascicle_model::EntryId;

use super::places;
use crate::blocks::{BlockIx, BlockKind};
use crate::reading::Reading;
use crate::text::Span;

/// A heading with its section.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Section {
    /// The heading's block.
    pub block: BlockIx,
    /// Level, 1 to 6.
    pub level: u8,
    /// The visible text of the heading.
    pub title: String,
    /// Where the heading stands.
    pub heading: Span,
    /// From the heading to the next one of its level or above, or to the end.
    pub span: Span,
    /// The structures that the heading names.
    pub entries: Vec<EntryId>,
    /// The section that it is a part of, by its place in the list.
    pub parent: Option<usize>,
}

/// The sections of a document, in the order of the text. `len` is the length of the source.
pub fn outline(reading: &Reading, len: usize) -> Vec<Section> {
    let mut list: Vec<Section> = Vec::new();
    let mut open: Vec<usize> = Vec::new();
    for (block, body) in reading.blocks.list.iter().enumerate() {
        let BlockKind::Heading(level) = body.kind else { continue };
        while let Some(last) = open.pop_if(|last| list.get(*last).is_none_or(|section| section.level >= level)) {
            if let Some(section) = list.get_mut(last) {
                section.span.end = body.span.start;
            }
        }
        let mut entries: Vec<EntryId> = Vec::new();
        for id in places::in_block(reading, block).flat_map(|place| place.entries) {
            if !entries.contains(&id) {
                entries.push(id);
            }
        }
        list.push(Section {
            block,
            level,
            title: body.plain.text.trim().to_owned(),
            heading: Span::new(body.span.start, body.plain.to_source(Span::new(0, body.plain.text.len())).end),
            span: Span::new(body.span.start, len),
            entries,
            parent: open.last().copied(),
        });
        open.push(list.len() - 1);
    }
    list
}
