//! What the graph says of a claim.

use fascicle_model::Vocabulary;

use crate::claims::Claim;
use crate::findings::Finding;

/// The graph's answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Verdict {
    /// So it is.
    Agrees,
    /// So it is in some people or by some sources.
    Variant,
    /// So it is, told less exactly (a parent for the branch).
    LessExact,
    /// It is not so.
    Contradicts,
    /// The graph does not say.
    Unknown,
}

impl Verdict {
    /// The word for outputs.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Agrees => "agrees",
            Self::Variant => "variant",
            Self::LessExact => "less-exact",
            Self::Contradicts => "contradicts",
            Self::Unknown => "unknown",
        }
    }
}

/// A verdict with its reason.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Judgement {
    /// The verdict.
    pub verdict: Verdict,
    /// One sentence that says why.
    pub why: String,
    /// The path through the graph, one step a line.
    pub path: Vec<String>,
    /// What may stand instead of a part of the claim: the place of the part in [`Claim::parts`], and the texts.
    pub remedies: Vec<(usize, String)>,
}

/// Judges a claim.
pub fn judge(_claim: &Claim, _vocabulary: &Vocabulary) -> Judgement {
    Judgement { verdict: Verdict::Unknown, why: String::new(), path: Vec::new(), remedies: Vec::new() }
}

/// The finding that a judged claim makes, if it makes one.
pub fn finding(_claim: &Claim, _judgement: &Judgement, _vocabulary: &Vocabulary) -> Option<Finding> {
    None
}
