//! Where the structures of a document are named: its mentions, in the order of the source.

use fascicle_model::{EntryId, Kind, Segments, Standing, Vocabulary};

use crate::blocks::BlockIx;
use crate::claims::PartRole;
use crate::claims::phrases::MovementForm;
use crate::claims::segments;
use crate::knowledge::Knowledge;
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

/// The name at a byte, or the spinal segment, or the movement.
pub fn any_at(reading: &Reading, offset: usize, knowledge: &Knowledge) -> Option<Place> {
    at(reading, offset)
        .or_else(|| root_at(reading, offset, &knowledge.vocabulary))
        .or_else(|| movement_at(reading, offset, knowledge))
}

/// The spinal segment at a byte ("C6"), which is no name among the others: it is read as a part of a list or range.
pub fn root_at(reading: &Reading, offset: usize, vocabulary: &Vocabulary) -> Option<Place> {
    let entries = root_entries(vocabulary);
    blocks_at(reading, offset)
        .flat_map(|block| roots_in_block(reading, block, &entries))
        .filter(|place| place.entries.len() == 1 && touches(place.span, offset))
        .min_by_key(|place| (offset == place.span.end, place.span.len()))
}

/// The spinal segments that a document writes, each where it stands, and the ranges with the segments between their ends.
pub fn roots(reading: &Reading, vocabulary: &Vocabulary) -> impl Iterator<Item = Place> {
    let entries = root_entries(vocabulary);
    (0..reading.blocks.list.len()).flat_map(move |block| roots_in_block(reading, block, &entries))
}

/// The entries of the segments, with what each is.
fn root_entries(vocabulary: &Vocabulary) -> Vec<(Segments, EntryId)> {
    let roots = vocabulary.iter().filter(|(_, entry)| entry.kind == Kind::Root);
    roots.filter_map(|(id, entry)| Some((Segments::one(Segments::parse_one(entry.name())?), id))).collect()
}

fn roots_in_block(reading: &Reading, block: BlockIx, entries: &[(Segments, EntryId)]) -> Vec<Place> {
    let Some((body, mentions)) = reading.blocks.list.get(block).zip(reading.mentions.get(block)) else {
        return Vec::new();
    };
    let place = |(segments, span): (Segments, Span)| {
        let within = entries.iter().filter(|(segment, _)| segment.within(segments)).map(|(_, id)| *id);
        sign(body.plain.to_source(span), within.collect(), block)
    };
    segments::written(&body.plain.text, &mentions.tokens).into_iter().map(place).collect()
}

/// The word for a movement at a byte.
pub fn movement_at(reading: &Reading, offset: usize, knowledge: &Knowledge) -> Option<Place> {
    movements(reading, knowledge).filter(|place| touches(place.span, offset)).min_by_key(|place| place.span.len())
}

/// The words for movements in a document: nouns and names of movers ("flexion", "flexor") that are part of no other name,
/// and whatever word a claim takes for one ("flexes").
pub fn movements(reading: &Reading, knowledge: &Knowledge) -> impl Iterator<Item = Place> {
    let claimed = reading.claims.iter().flat_map(|(claim, _)| {
        let parts = claim.parts.iter().filter(|part| part.role == PartRole::Movement);
        parts.map(|part| sign(part.span, part.what.entries().to_vec(), claim.block))
    });
    let named = (0..reading.blocks.list.len()).flat_map(move |block| movements_in_block(reading, block, knowledge));
    named.chain(claimed)
}

fn movements_in_block(reading: &Reading, block: BlockIx, knowledge: &Knowledge) -> Vec<Place> {
    let Some((body, mentions)) = reading.blocks.list.get(block).zip(reading.mentions.get(block)) else {
        return Vec::new();
    };
    let tokens = &mentions.tokens;
    let lower: Vec<String> = tokens.iter().map(|token| token.span.of(&body.plain.text).to_lowercase()).collect();
    let word = |at: usize| lower.get(at).map_or("", String::as_str);
    let mut list = Vec::new();
    let mut at = 0;
    while at < tokens.len() {
        let Some((found, end)) = knowledge.relations.movement_at(at, &word) else {
            at += 1;
            continue;
        };
        let ends = tokens.get(at).zip(tokens.get(end.saturating_sub(1)));
        let span = ends.map(|(first, last)| Span::new(first.span.start, last.span.end));
        let is_free = |span: &Span| !mentions.list.iter().any(|mention| mention.span.overlaps(*span));
        if let Some(span) = span.filter(is_free)
            && matches!(found.form, MovementForm::Noun | MovementForm::Agent)
        {
            list.push(sign(body.plain.to_source(span), vec![found.movement], block));
        }
        at = end.max(at + 1);
    }
    list
}

/// What is no name of the vocabulary, and so is not for an edit.
const fn sign(span: Span, entries: Vec<EntryId>, block: BlockIx) -> Place {
    Place { span, entries, standing: Standing::Preferred, plural: false, shared: false, editable: false, block }
}

/// The blocks that hold a byte.
pub fn blocks_at(reading: &Reading, offset: usize) -> impl Iterator<Item = BlockIx> {
    reading.blocks.list.iter().enumerate().filter(move |(_, block)| touches(block.span, offset)).map(|(ix, _)| ix)
}

/// Whether a range holds a byte or ends right before it.
pub const fn touches(span: Span, offset: usize) -> bool {
    span.start <= offset && offset <= span.end
}
