//! The claims of a document with what the graph says of each. A section that was judged before is not read again.

use std::sync::Arc;

use crate::blocks::Blocks;
use crate::claims::{self, Claim, Section};
use crate::knowledge::Knowledge;
use crate::memo::Kept;
use crate::mentions::Mentions;
use crate::stages::Stage;
use crate::text::Span;
use crate::verdicts::{self, Judgement};

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
    let judge = |claim: Claim| {
        let judgement = verdicts::judge(&claim, &knowledge.vocabulary);
        (claim, judgement)
    };
    let (exam, taken) = claims::of_exam(blocks, knowledge);
    ended(Stage::Claims);
    let mut list: Vec<(Claim, Judgement)> = exam.into_iter().map(judge).collect();
    ended(Stage::Verdicts);
    for section in claims::sections(blocks) {
        if !is_wanted() {
            return None;
        }
        let key = section.fingerprint(blocks, mentions, &|block| taken.contains(&block));
        let read = kept.of(key, || {
            let claims = claims::of_section(&section, blocks, mentions, knowledge, &taken);
            ended(Stage::Claims);
            let claims = claims.into_iter().map(judge).collect();
            ended(Stage::Verdicts);
            Arc::new(JudgedSection { starts: section.starts(blocks), claims })
        });
        list.extend(read.moved(&section, blocks));
    }
    list.sort_by_key(|(claim, _)| (claim.span, claim.kind));
    ended(Stage::Claims);
    Some(list)
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
