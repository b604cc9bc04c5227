//! The way of the fibres from the roots to a nerve.

use fascicle_model::{EntryId, Kind, Segments, Vocabulary};

use super::maker::text;
use super::{Piece, short_name};

/// What stands between the steps of a path.
const ARROW: &str = " → ";

/// The way of the fibres from the roots (or the brainstem) to a nerve, in steps from above, the nerve last. Where several
/// structures stand side by side, a step holds them all. Only what carries one of `wanted` is followed, if any is wanted.
pub fn path_from_roots(vocabulary: &Vocabulary, nerve: EntryId, wanted: Segments) -> Vec<Vec<EntryId>> {
    let carries = |id: EntryId| {
        let segments = vocabulary.possible_segments(id);
        wanted.is_empty() || segments.is_empty() || !segments.intersection(wanted).is_empty()
    };
    let above = |id: EntryId| -> Vec<EntryId> {
        let mut all: Vec<EntryId> = vocabulary.origins(id, false).collect();
        if all.is_empty() {
            all.extend(vocabulary.entry(id).part_of);
        }
        let some: Vec<EntryId> = all.iter().copied().filter(|id| carries(*id)).collect();
        if some.is_empty() { all } else { some }
    };
    // The depth of a structure is its longest distance from the nerve, so that it stands above all that it gives.
    let mut depth: Vec<(EntryId, usize)> = vec![(nerve, 0)];
    let mut open = vec![nerve];
    let bound = vocabulary.entries().len();
    let mut rounds = 0;
    while let Some(id) = open.pop() {
        rounds += 1;
        if rounds > bound {
            break; // a circle, which the checks of the vocabulary forbid
        }
        let here = depth.iter().find(|(known, _)| *known == id).map_or(0, |(_, depth)| *depth);
        for parent in above(id) {
            match depth.iter_mut().find(|(known, _)| *known == parent) {
                Some((_, known)) if *known > here => {}
                Some((_, known)) => {
                    *known = here + 1;
                    open.push(parent);
                }
                None => {
                    depth.push((parent, here + 1));
                    open.push(parent);
                }
            }
        }
    }
    let deepest = depth.iter().map(|(_, depth)| *depth).max().unwrap_or(0);
    let (roots, others): (Vec<_>, Vec<_>) = depth.into_iter().partition(|(id, _)| vocabulary.kind(*id) == Kind::Root);
    let mut steps: Vec<Vec<EntryId>> = Vec::new();
    let mut first: Vec<EntryId> = roots.into_iter().map(|(id, _)| id).collect();
    first.sort_by_key(|id| vocabulary.possible_segments(*id).0);
    steps.push(first);
    for level in (0..=deepest).rev() {
        let mut step: Vec<EntryId> = others.iter().filter(|(_, depth)| *depth == level).map(|(id, _)| *id).collect();
        step.sort_unstable();
        steps.push(step);
    }
    steps.retain(|step| !step.is_empty());
    steps
}

/// The steps of [`path_from_roots`] in one line.
pub fn path_pieces(vocabulary: &Vocabulary, steps: &[Vec<EntryId>]) -> Vec<Piece> {
    let mut pieces = Vec::new();
    for (number, step) in steps.iter().enumerate() {
        if number > 0 {
            pieces.push(text(ARROW));
        }
        if step.iter().all(|id| vocabulary.kind(*id) == Kind::Root) && step.len() > 1 {
            let all = step.iter().fold(Segments::EMPTY, |all, id| all.union(vocabulary.possible_segments(*id)));
            pieces.push(text(all.to_string()));
        } else {
            for (place, id) in step.iter().enumerate() {
                if place > 0 {
                    pieces.push(text(" + "));
                }
                pieces.push(Piece::Entry(*id, short_name(vocabulary, *id).to_owned()));
            }
        }
    }
    pieces
}
