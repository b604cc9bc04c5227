//! Hover: the card of the structure at a place, and what the graph says of the claim there.

use fascicle_model::{EntryId, Kind};

use super::places;
use crate::knowledge::Knowledge;
use crate::reading::Reading;
use crate::text::Span;
use crate::verdicts::{Judgement, Verdict};

/// What is shown over a place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hover {
    /// What it speaks of.
    pub span: Span,
    /// Markdown.
    pub markdown: String,
    /// The nerve or plexus that is named there, if it is one and no other: its branches can be drawn.
    pub nerve: Option<EntryId>,
}

/// What is to be shown over a byte: the judged claims there, then the cards of what is named there.
pub fn hover(reading: &Reading, offset: usize, knowledge: &Knowledge) -> Option<Hover> {
    let place = places::any_at(reading, offset, knowledge);
    let mut parts: Vec<String> = Vec::new();
    let mut span = place.as_ref().map(|place| place.span);
    for (claim, judgement) in &reading.claims {
        let told = judgement.verdict == Verdict::Contradicts || place.is_none();
        let here = claim.parts.iter().any(|part| places::touches(part.span, offset));
        if here && told && judgement.verdict != Verdict::Unknown {
            parts.push(verdict(judgement));
            span.get_or_insert(claim.span);
        }
    }
    for finding in &reading.findings {
        let is_name = finding.kind == crate::findings::FindingKind::Name;
        if is_name && place.is_none() && places::touches(finding.span, offset) {
            parts.push(finding.message.clone());
            span.get_or_insert(finding.span);
        }
    }
    parts.dedup();
    if let Some(place) = &place {
        parts.extend(place.entries.iter().take(3).map(|id| card(knowledge, *id)));
    }
    let nerve = place.as_ref().and_then(|place| match *place.entries {
        [only] => matches!(knowledge.vocabulary.kind(only), Kind::Nerve | Kind::Plexus).then_some(only),
        _ => None,
    });
    Some(Hover { span: span?, markdown: parts.join("\n\n---\n\n"), nerve }).filter(|hover| !hover.markdown.is_empty())
}

/// A verdict with its reason and the path through the graph.
fn verdict(judgement: &Judgement) -> String {
    let lead = match judgement.verdict {
        Verdict::Agrees => "Agrees with the vocabulary",
        Verdict::Variant => "Agrees with a variant",
        Verdict::LessExact => "Agrees, told less exactly",
        Verdict::Contradicts => "Contradicts the vocabulary",
        Verdict::Unknown => "Not known to the vocabulary",
    };
    let mut text = format!("**{lead}.** {}", judgement.why);
    for step in &judgement.path {
        text.push_str("\n- ");
        text.push_str(step);
    }
    text
}

/// The card of an entry.
pub fn card(knowledge: &Knowledge, id: EntryId) -> String {
    crate::card::markdown(&knowledge.vocabulary, id)
}
