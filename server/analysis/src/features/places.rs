//! Where the structures of a document are named: its mentions, in the order of the source.

use fascicle_model::{EntryId, Kind, Segments, Standing, Vocabulary};

use crate::blocks::BlockIx;
use crate::claims::segments;
use crate::reading::Reading;
use crate::text::Span;

/// A name in a document.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Place {
    /// Where it stands in the source.
    pub span: Span,
    /// The entries that it can mean.
    pub entries: Vec<EntryId>,
    /// The standing of the name that was written.
    pub standing: Standing,
    /// It speaks of several.
    pub plural: bool,
    /// It is half of a name, and a neighbour has the other half.
    pub shared: bool,
    /// The source reads exactly as the text does, so that an edit may replace it.
    pub editable: bool,
    /// The block that it stands in.
    pub block: BlockIx,
}

/// The names of one block, in order.
pub fn in_block(reading: &Reading, block: BlockIx) -> impl Iterator<Item = Place> {
    let pair = reading.blocks.list.get(block).zip(reading.mentions.get(block));
    pair.into_iter().flat_map(move |(body, mentions)| {
        mentions.list.iter().map(move |mention| Place {
            span: body.plain.to_source(mention.span),
            entries: mention.candidates.clone(),
            standing: mention.standing,
            plural: mention.plural,
            shared: mention.shared,
            editable: body.plain.is_verbatim(mention.span),
            block,
        })
    })
}

/// All names of a document, in the order of its blocks.
pub fn all(reading: &Reading) -> impl Iterator<Item = Place> {
    (0..reading.blocks.list.len()).flat_map(move |block| in_block(reading, block))
}

/// The name at a byte, or right before it; the narrowest where several touch it.
pub fn at(reading: &Reading, offset: usize) -> Option<Place> {
    blocks_at(reading, offset)
        .flat_map(|block| in_block(reading, block))
        .filter(|place| touches(place.span, offset))
        .min_by_key(|place| (offset == place.span.end, place.span.len()))
}

/// The spinal segment at a byte ("C6"), which is no name among the others: it is read as a part of a list or range.
pub fn root_at(reading: &Reading, offset: usize, vocabulary: &Vocabulary) -> Option<Place> {
    blocks_at(reading, offset)
        .flat_map(|block| roots_in_block(reading, block, vocabulary))
        .filter(|place| place.entries.len() == 1 && touches(place.span, offset))
        .min_by_key(|place| (offset == place.span.end, place.span.len()))
}

/// The spinal segments that a document writes, each where it stands, and the ranges with the segments between their ends.
pub fn roots(reading: &Reading, vocabulary: &Vocabulary) -> impl Iterator<Item = Place> {
    (0..reading.blocks.list.len()).flat_map(move |block| roots_in_block(reading, block, vocabulary))
}

fn roots_in_block(reading: &Reading, block: BlockIx, vocabulary: &Vocabulary) -> Vec<Place> {
    let Some((body, mentions)) = reading.blocks.list.get(block).zip(reading.mentions.get(block)) else {
        return Vec::new();
    };
    let written = segments::written(&body.plain.text, &mentions.tokens);
    let place = |(segments, span): (Segments, Span)| {
        let names: Vec<String> = segments.iter().map(Segments::name).collect();
        let roots = vocabulary.iter().filter(|(_, entry)| entry.kind == Kind::Root);
        let entries = roots.filter(|(_, entry)| names.iter().any(|name| name == entry.name())).map(|(id, _)| id);
        Place {
            span: body.plain.to_source(span),
            entries: entries.collect(),
            standing: Standing::Preferred,
            plural: false,
            shared: false,
            editable: false,
            block,
        }
    };
    written.into_iter().map(place).collect()
}

/// The blocks that hold a byte.
pub fn blocks_at(reading: &Reading, offset: usize) -> impl Iterator<Item = BlockIx> {
    reading.blocks.list.iter().enumerate().filter(move |(_, block)| touches(block.span, offset)).map(|(ix, _)| ix)
}

/// Whether a range holds a byte or ends right before it.
pub const fn touches(span: Span, offset: usize) -> bool {
    span.start <= offset && offset <= span.end
}
