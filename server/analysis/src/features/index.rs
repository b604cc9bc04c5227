//! What a course index keeps of a document: which structures it names where, and its headings. No text.

use fascicle_model::EntryId;

use crate::blocks::{self, BlockKind, Form};
use crate::knowledge::Knowledge;
use crate::mentions::{self, Mentions};
use crate::resolve;
use crate::text::Span;

/// A name in a document: 12 bytes, for a course has millions.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Spot {
    /// First byte.
    pub start: u32,
    /// Length in bytes; names are short.
    pub len: u16,
    /// It is one of several that the name can mean.
    pub ambiguous: bool,
    /// The entry.
    pub entry: EntryId,
}

impl Spot {
    /// Where it stands.
    pub const fn span(self) -> Span {
        Span::new(self.start as usize, self.start as usize + self.len as usize)
    }
}

/// A heading in a document.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Heading {
    /// First byte.
    pub start: u32,
    /// Its visible text.
    pub title: Box<str>,
    /// The structure that it names, if it names one.
    pub entry: Option<EntryId>,
}

/// What is kept of a document.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Contents {
    /// Its names, in order.
    pub spots: Box<[Spot]>,
    /// Its headings, in order.
    pub headings: Box<[Heading]>,
}

impl Contents {
    /// Where a structure is named.
    pub fn of(&self, entries: &[EntryId]) -> impl Iterator<Item = Spot> {
        self.spots.iter().copied().filter(move |spot| entries.contains(&spot.entry))
    }
}

/// Reads a document as far as its index needs.
pub fn contents(text: &str, form: Form, knowledge: &Knowledge) -> Contents {
    let blocks = blocks::blocks(text, form);
    let mut mentions: Vec<Mentions> = blocks
        .list
        .iter()
        .map(|block| mentions::mentions(&block.plain.text, &knowledge.vocabulary, &knowledge.names))
        .collect();
    resolve::resolve(&blocks, &mut mentions, &knowledge.vocabulary);
    let mut spots = Vec::new();
    let mut headings = Vec::new();
    for (block, mentions) in blocks.list.iter().zip(&mentions) {
        for mention in &mentions.list {
            let span = block.plain.to_source(mention.span);
            let (Ok(start), Ok(len)) = (u32::try_from(span.start), u16::try_from(span.len())) else { continue };
            let ambiguous = mention.candidates.len() > 1;
            spots.extend(mention.candidates.iter().map(|entry| Spot { start, len, ambiguous, entry: *entry }));
        }
        if let BlockKind::Heading(_) | BlockKind::Title = block.kind
            && let Ok(start) = u32::try_from(block.span.start)
        {
            let entry = match &*mentions.list {
                [only] => only.candidates.first().copied(),
                _ => None,
            };
            headings.push(Heading { start, title: block.plain.text.trim().into(), entry });
        }
    }
    spots.sort_by_key(|spot| spot.start);
    Contents { spots: spots.into(), headings: headings.into() }
}
