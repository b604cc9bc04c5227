//! Inlay hints: the segments behind the name of a nerve or muscle, where the author did not write them.

use fascicle_model::{EntryId, Kind, Vocabulary};

use super::places;
use crate::reading::Reading;
use crate::text::Span;

/// A hint.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hint {
    /// Behind which byte it stands.
    pub at: usize,
    /// The segments.
    pub text: String,
    /// Whose they are.
    pub entry: EntryId,
}

/// The hints of a range, one a structure and block.
pub fn hints(text: &str, reading: &Reading, within: Span, vocabulary: &Vocabulary) -> Vec<Hint> {
    let mut list: Vec<Hint> = Vec::new();
    for block in 0..reading.blocks.list.len() {
        let mut told: Vec<EntryId> = Vec::new();
        for place in places::in_block(reading, block) {
            let [entry] = *place.entries else { continue };
            let is_wanted = matches!(vocabulary.kind(entry), Kind::Nerve | Kind::Muscle) && !place.plural;
            if !is_wanted || told.contains(&entry) || !within.overlaps(place.span) {
                continue;
            }
            told.push(entry);
            let Some(segments) = vocabulary.roots_of(entry).first().map(|reading| reading.all().to_string()) else {
                continue;
            };
            if !segments.is_empty() && !has_segments(text, place.span.end) {
                list.push(Hint { at: place.span.end, text: segments, entry });
            }
        }
    }
    list
}

/// Whether the author tells segments in the same line behind a place, or in a cell of the same row.
fn has_segments(text: &str, at: usize) -> bool {
    let rest = text.get(at..).unwrap_or_default();
    let line = rest.split(['\n', '\r']).next().unwrap_or_default();
    let is_row = line.contains('|');
    let reach = if is_row { line } else { line.split('.').next().unwrap_or_default() };
    let letters = reach.as_bytes();
    letters.windows(2).enumerate().any(|(place, pair)| {
        let begins = place == 0 || !letters.get(place - 1).is_some_and(u8::is_ascii_alphanumeric);
        begins && matches!(pair, [b'C' | b'T' | b'L' | b'S', digit] if digit.is_ascii_digit())
    })
}
