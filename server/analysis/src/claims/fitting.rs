//! Parts of a claim whose words leave open which structure they mean, fitted to what the claim says of them: "recurrent" among
//! the branches of a nerve is that nerve's recurrent branch, and a "body" on a muscle's line may be that of any bone.

use fascicle_model::{EntryId, Vocabulary};

use super::{Claim, ClaimKind, PartRole, What};
use crate::blocks::Blocks;
use crate::lexicon;
use crate::text::Span;

/// Fits the parts of a claim to each other.
pub fn fit(claim: &mut Claim, blocks: &Blocks, vocabulary: &Vocabulary) {
    match claim.kind {
        ClaimKind::Branching => add_own_branches(claim, blocks, vocabulary),
        ClaimKind::Attachment => doubt_bare_place(claim, blocks),
        _ => {}
    }
}

/// The words of a part as they are written.
fn written<'b>(claim: &Claim, part: Span, blocks: &'b Blocks) -> Option<&'b str> {
    let plain = &blocks.list.get(claim.block)?.plain;
    let (from, last) = (plain.from_source(part.start)?, plain.from_source(part.end.checked_sub(1)?)?);
    plain.text.get(from..=last)
}

/// "The vagus gives *pharyngeal* … branches": an adjective may mean a nerve of that name, or the branch of the nerve that is
/// said to give it.
fn add_own_branches(claim: &mut Claim, blocks: &Blocks, vocabulary: &Vocabulary) {
    let Some(child) = claim.part(PartRole::Nerve).map(|part| part.span) else { return };
    let Some(written) = written(claim, child, blocks).map(str::to_lowercase) else { return };
    if written.split(' ').any(|word| lexicon::is_nerve_noun(word) || lexicon::is_part_noun(word)) {
        return;
    }
    let is_called = |id: &EntryId| {
        vocabulary.entry(*id).names.iter().any(|name| {
            let rest = name.text.strip_prefix(&*written).and_then(|rest| rest.strip_prefix(' '));
            rest.is_some_and(|rest| rest.split(' ').next().is_some_and(lexicon::is_part_noun))
        })
    };
    let parents = claim.entries(PartRole::Parent).iter();
    let mut own: Vec<EntryId> = parents.flat_map(|id| vocabulary.descendants(*id)).filter(is_called).collect();
    let part = claim.parts.iter_mut().find(|part| part.role == PartRole::Nerve);
    if let Some(What::Entry(ids)) = part.map(|part| &mut part.what) {
        own.retain(|id| !ids.contains(id));
        ids.extend(own);
    }
}

/// "Psoas: *bodies* and transverse processes": one word that many bones share tells none of them.
fn doubt_bare_place(claim: &mut Claim, blocks: &Blocks) {
    let Some(part) = claim.part(PartRole::Landmark) else { return };
    let is_shared = part.what.entries().len() > 1;
    let is_bare = written(claim, part.span, blocks).is_some_and(|text| !text.trim().contains(' '));
    claim.hedged |= is_shared && is_bare;
}
