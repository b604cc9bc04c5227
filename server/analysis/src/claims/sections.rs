//! A document cut into sections, each of which is read as a document of its own.
//!
//! A section is a heading with what stands below it up to the next heading; over it stand the headings that it belongs to
//! and the title. What a statement means depends on these alone, so a section that has not changed, under headings that
//! have not changed, says what it said before, wherever it has moved to. (Exam items and their answers may stand far
//! apart: [`super::exam`] looks at the whole document.)

use std::hash::{Hash, Hasher};
use std::ops::Range;

use crate::blocks::{Block, BlockIx, BlockKind, Blocks};
use crate::memo::{Fingerprint, fingerprint};
use crate::mentions::Mentions;

/// A section and what it stands under.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Section {
    /// The title and the headings over it, in the order of the text.
    above: Vec<BlockIx>,
    /// Its blocks, its own heading first.
    own: Range<BlockIx>,
}

/// The sections of a document, in order; every block stands in one.
pub fn sections(blocks: &Blocks) -> Vec<Section> {
    let mut list: Vec<Section> = Vec::new();
    let mut start = 0;
    for (at, block) in blocks.list.iter().enumerate() {
        if matches!(block.kind, BlockKind::Heading(_)) && at > start {
            list.push(Section::new(blocks, start..at));
            start = at;
        }
    }
    if start < blocks.list.len() {
        list.push(Section::new(blocks, start..blocks.list.len()));
    }
    list
}

impl Section {
    fn new(blocks: &Blocks, own: Range<BlockIx>) -> Self {
        let mut above = Vec::new();
        let mut heading = blocks.list.get(own.start).and_then(|block| block.heading);
        while let Some(at) = heading.filter(|at| *at < own.start) {
            above.push(at);
            heading = blocks.list.get(at).and_then(|block| block.heading).filter(|up| *up < at);
        }
        let titles = blocks.list.iter().take(own.start).take_while(|block| block.kind == BlockKind::Title);
        above.extend((0..titles.count()).filter(|at| !above.contains(at)).collect::<Vec<_>>());
        above.sort_unstable();
        Self { above, own }
    }

    /// Its blocks and those over it, in the order of the text.
    fn places(&self) -> impl Iterator<Item = BlockIx> {
        self.above.iter().copied().chain(self.own.clone())
    }

    /// The place of a block of the document among its own.
    fn place_of(&self, block: BlockIx) -> Option<usize> {
        if self.own.contains(&block) {
            return Some(self.above.len() + block - self.own.start);
        }
        self.above.iter().position(|at| *at == block)
    }

    /// The section as a document of its own. Its blocks keep their places in the source.
    pub fn excerpt(&self, blocks: &Blocks, mentions: &[Mentions]) -> Excerpt {
        let mut excerpt = Excerpt { first: self.above.len(), ..Excerpt::default() };
        for at in self.places() {
            let (Some(block), Some(own)) = (blocks.list.get(at), mentions.get(at)) else { continue };
            excerpt.blocks.list.push(Block {
                heading: block.heading.and_then(|up| self.place_of(up)),
                parent: block.parent.and_then(|up| self.place_of(up)),
                ..block.clone()
            });
            excerpt.mentions.push(own.clone());
        }
        excerpt
    }

    /// All that the claims of the section depend on, but where it stands.
    pub fn fingerprint(
        &self,
        blocks: &Blocks,
        mentions: &[Mentions],
        is_left_out: &dyn Fn(BlockIx) -> bool,
    ) -> Fingerprint {
        fingerprint(|hasher| {
            hasher.write_usize(self.above.len());
            let start = blocks.list.get(self.own.start).map_or(0, |block| block.span.start);
            let mut first_table = None;
            for at in self.places() {
                let (Some(block), Some(own)) = (blocks.list.get(at), mentions.get(at)) else { continue };
                let origin = if self.own.contains(&at) { start } else { block.span.start };
                match block.kind {
                    // Tables are numbered through the document, which says nothing of a section.
                    BlockKind::Cell { table, row, column } => {
                        let first = *first_table.get_or_insert(table);
                        (u8::MAX, table.wrapping_sub(first), row, column).hash(hasher);
                    }
                    kind => kind.hash(hasher),
                }
                let up = |up: Option<BlockIx>| up.and_then(|up| self.place_of(up));
                (up(block.heading), up(block.parent), block.quoted, is_left_out(at)).hash(hasher);
                block.span.from(origin).hash(hasher);
                block.plain.hash_from(origin, hasher);
                own.list.hash(hasher);
            }
        })
    }

    /// Where each of its blocks begins in the source.
    pub fn starts(&self, blocks: &Blocks) -> Vec<usize> {
        self.places().filter_map(|at| Some(blocks.list.get(at)?.span.start)).collect()
    }

    /// The place in the document of one of its blocks.
    pub fn block(&self, place: usize) -> BlockIx {
        let into_own = place.checked_sub(self.above.len()).map(|into| self.own.start + into);
        into_own.or_else(|| self.above.get(place).copied()).unwrap_or(self.own.start)
    }
}

/// A section as a document of its own.
#[derive(Clone, Debug, Default)]
pub struct Excerpt {
    /// Its blocks, those over it first.
    pub blocks: Blocks,
    /// The mentions of each.
    pub mentions: Vec<Mentions>,
    /// Its first own block.
    pub first: BlockIx,
}
