//! Claims in brackets behind a name: "MUSCLE (NERVE, C5–C6)".

use fascicle_model::{Kind, Vocabulary};

use super::Sentence;
use super::atoms::AtomKind;
use super::sides::Side;
use crate::claims::{Claim, ClaimKind, Part, PartRole, What};
use crate::lexicon;

impl Sentence<'_, '_> {
    /// What stands in brackets behind a name: segments are its roots, a nerve behind a muscle supplies it.
    pub(super) fn bracket_claims(&self, at: usize) -> Vec<Claim> {
        if !matches!(self.word(at + 1), "(" | "[") {
            return Vec::new();
        }
        let close = self.behind_bracket(at + 1);
        if close == at + 1 {
            return Vec::new();
        }
        let Some(host) = self.side(at, PartRole::Structure) else { return Vec::new() };
        let is_muscle = matches!(&host.what, What::Entry(ids) if ids.iter().all(|id| self.scope.vocabulary.kind(*id) == Kind::Muscle));
        let (mut segments, mut nerves) = (None, Vec::new());
        let mut hedged = self.clause_hedged(at);
        for place in at + 2..close - 1 {
            match &self.atoms.get(place).map(|atom| &atom.kind) {
                Some(AtomKind::Segments(reading)) if segments.is_none() => segments = Some((*reading, place)),
                Some(AtomKind::Name(_)) if is_muscle => match self.side(place, PartRole::Nerve) {
                    Some(side) => nerves.push(side),
                    None => return Vec::new(),
                },
                Some(AtomKind::Word) => {
                    let word = self.word(place);
                    hedged |= lexicon::is_hedge(word);
                    let skips = lexicon::is_adverb(word)
                        || lexicon::is_determiner(word)
                        || lexicon::is_conjunction(word)
                        || lexicon::is_in_bracket(word);
                    if !skips && !lexicon::is_hedge(word) {
                        return Vec::new();
                    }
                }
                _ => return Vec::new(),
            }
        }
        let whole = self.source(at, close);
        let claim = |kind, parts| Claim {
            kind,
            span: whole,
            parts,
            negated: false,
            hedged,
            all: false,
            block: self.scope.block,
            key: None,
        };
        let mut claims: Vec<Claim> = nerves
            .iter()
            .map(|nerve| {
                let parts = vec![
                    Part { role: PartRole::Nerve, span: nerve.span, what: nerve.what.clone() },
                    Part { role: PartRole::Muscle, span: host.span, what: host.what.clone() },
                ];
                claim(ClaimKind::Supply, parts)
            })
            .collect();
        if let Some((reading, place)) = segments
            && nerves.len() < 2
            && host_has_roots(self.scope.vocabulary, &host)
        {
            let owner = nerves.first().unwrap_or(&host);
            let parts = vec![
                Part { role: PartRole::Structure, span: owner.span, what: owner.what.clone() },
                Part {
                    role: PartRole::Segments,
                    span: self.source(place, place + 1),
                    what: What::Segments(reading.main, reading.lesser),
                },
            ];
            claims.push(claim(ClaimKind::Roots, parts));
        }
        claims
    }
}

fn host_has_roots(vocabulary: &Vocabulary, host: &Side) -> bool {
    matches!(&host.what, What::Entry(ids) if ids.iter().all(|id| matches!(vocabulary.kind(*id), Kind::Nerve | Kind::Plexus | Kind::Muscle)))
}
