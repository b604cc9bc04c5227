//! The claims of a document with what the graph says of each. A section that was judged before is not read again.

use std::sync::Arc;

use fascicle_model::EntryId;

use crate::blocks::{BlockIx, Blocks};
use crate::claims::{self, Claim, Section, What};
use crate::knowledge::Knowledge;
use crate::memo::Kept;
use crate::mentions::Mentions;
use crate::stages::Stage;
use crate::text::{Plain, Span};
use crate::verdicts::{self, Judgement, Verdict};

/// Reads the claims of a document and judges them, in the order of the text; nothing once they are not wanted any more.
/// `ended` is told of the two stages in turn.
pub fn judged(
    blocks: &Blocks,
    mentions: &[Mentions],
    knowledge: &Knowledge,
    kept: &mut Kept<Arc<JudgedSection>>,
    is_wanted: &dyn Fn() -> bool,
    ended: &mut dyn FnMut(Stage),
) -> Option<Vec<(Claim, Judgement)>> {
    // `place` tells where in the document the block of a claim stands.
    let judge = |claim: Claim, place: &dyn Fn(BlockIx) -> BlockIx| {
        let judgement = verdicts::judge(&claim, &knowledge.vocabulary);
        let block = place(claim.block);
        let judgement = match blocks.list.get(block).zip(mentions.get(block)) {
            Some((block, mentions)) if judgement.verdict == Verdict::Contradicts => {
                elsewhere(&claim, &block.plain, mentions, knowledge).unwrap_or(judgement)
            }
            _ => judgement,
        };
        (claim, judgement)
    };
    let (exam, taken) = claims::of_exam(blocks, knowledge);
    ended(Stage::Claims);
    let mut list: Vec<(Claim, Judgement)> = exam.into_iter().map(|claim| judge(claim, &|block| block)).collect();
    ended(Stage::Verdicts);
    for section in claims::sections(blocks) {
        if !is_wanted() {
            return None;
        }
        let key = section.fingerprint(blocks, mentions, &|block| taken.contains(&block));
        let read = kept.of(key, || {
            let claims = claims::of_section(&section, blocks, mentions, knowledge, &taken);
            ended(Stage::Claims);
            let claims = claims.into_iter().map(|claim| judge(claim, &|block| section.block(block))).collect();
            ended(Stage::Verdicts);
            Arc::new(JudgedSection { starts: section.starts(blocks), claims })
        });
        list.extend(read.moved(&section, blocks));
    }
    list.sort_by_key(|(claim, _)| (claim.span, claim.kind));
    ended(Stage::Claims);
    Some(list)
}

/// The judgement of a contradicted claim with a name of it taken for what it means in another region of the body, where that
/// is true: what stands round a name decides what it means, yet "interossei" in a table of all limbs may be of hand or foot.
fn elsewhere(claim: &Claim, plain: &Plain, mentions: &Mentions, knowledge: &Knowledge) -> Option<Judgement> {
    let vocabulary = &knowledge.vocabulary;
    (0..claim.parts.len()).find_map(|at| {
        let part = claim.parts.get(at)?;
        let ids = part.what.entries();
        let mention = mentions.list.iter().find(|mention| plain.to_source(mention.span) == part.span)?;
        let is_far = |id: &EntryId| {
            ids.iter().all(|own| own != id && vocabulary.entry(*own).region != vocabulary.entry(*id).region)
        };
        let names = knowledge.names.lookup(mention.span.of(&plain.text));
        let others: Vec<EntryId> = names.iter().map(|name| name.entry).filter(is_far).collect();
        // What the course itself calls so is nothing else.
        let is_by_name = ids.iter().all(|id| names.iter().any(|name| name.entry == *id));
        if ids.is_empty() || others.is_empty() || !is_by_name {
            return None;
        }
        let mut other = claim.clone();
        other.parts.get_mut(at)?.what = What::Entry(others);
        let judgement = verdicts::judge(&other, vocabulary);
        (judgement.verdict == Verdict::Agrees).then_some(judgement)
    })
}

/// The judged claims of a section, as they stood where it was read.
#[derive(Clone, Debug)]
pub struct JudgedSection {
    /// Where each of its blocks began.
    starts: Vec<usize>,
    /// Its claims.
    claims: Vec<(Claim, Judgement)>,
}

impl JudgedSection {
    /// The claims where the section stands now.
    fn moved(&self, section: &Section, blocks: &Blocks) -> Vec<(Claim, Judgement)> {
        let starts = section.starts(blocks);
        let at = |byte: usize, of: usize| {
            let place = self.starts.partition_point(|start| *start <= of).saturating_sub(1);
            let (before, now) = (self.starts.get(place).copied(), starts.get(place).copied());
            (byte + now.unwrap_or(0)).saturating_sub(before.unwrap_or(0))
        };
        let moved = |span: Span| {
            Span::new(at(span.start, span.start), at(span.end, span.end.saturating_sub(1).max(span.start)))
        };
        self.claims
            .iter()
            .map(|(claim, judgement)| {
                let mut claim = claim.clone();
                claim.span = moved(claim.span);
                claim.block = section.block(claim.block);
                for part in &mut claim.parts {
                    part.span = moved(part.span);
                }
                if let Some(key) = &mut claim.key {
                    key.span = moved(key.span);
                }
                (claim, judgement.clone())
            })
            .collect()
    }
}
