//! Claims of movements in everyday words: "turns the sole inwards", "pulls the shoulder down", "spreads the fingers".
//!
//! The words can mean several movements; those stay that happen at what is moved (see [`crate::lexicon::ways`]). The claim
//! says that it was told in such words, so that it is judged with more patience.

use fascicle_model::EntryId;

use super::Sentence;
use super::sides::Side;
use crate::claims::{Claim, Part, PartRole, What};
use crate::lexicon::{self, ways};
use crate::moving::{happens_at, moved_joints, of_the_region};

/// What a verb of moving can mean, and what is moved.
pub(super) struct Everyday {
    pub(super) movements: Vec<EntryId>,
    pub(super) target: Side,
}

impl Sentence<'_, '_> {
    /// "MUSCLE turns the sole inwards"
    pub(super) fn everyday_claims(&self, at: usize, last_subject: &mut Vec<Side>) -> Vec<Claim> {
        let Some(everyday) = self.everyday(at) else { return Vec::new() };
        if self.atoms.iter().any(|atom| atom.word == "respectively") {
            return Vec::new();
        }
        let (muscles, negated, hedged) = self.doers(at, last_subject);
        let side = lexicon::body_side(&self.clause_from(at)).map_or("everyday", lexicon::BodySide::word);
        let role = Part { role: PartRole::Role, span: self.source(at, at + 1), what: What::Word(side) };
        let claim = |muscle| {
            let movements = everyday.movements.clone();
            let mut claim = self.action(at, muscle, movements, Some(&everyday.target), negated, hedged);
            claim.parts.push(role.clone());
            claim
        };
        muscles.into_iter().map(claim).collect()
    }

    /// The words of a clause from an atom on, in lower case.
    pub(super) fn clause_from(&self, at: usize) -> String {
        let end = (at..self.atoms.len()).find(|place| lexicon::ends_phrase(self.word(*place)));
        let words: Vec<String> = (at..end.unwrap_or(self.atoms.len())).map(|place| self.written(place)).collect();
        words.join(" ")
    }

    /// The movements that a verb of moving, what is moved and the way of it can mean; `None` if they mean none.
    pub(super) fn everyday(&self, at: usize) -> Option<Everyday> {
        let atom = self.atoms.get(at)?;
        if atom.to > atom.from + 1 {
            return None;
        }
        let manner = ways::manner(&self.first_token(at).to_lowercase())?;
        let (mut target, mut way, mut next) = (None, None, at + 1);
        while next < self.atoms.len() && next < at + 9 {
            let word = self.word(next);
            if let Some(side) = self.side(next, PartRole::Joint).filter(|_| target.is_none()) {
                target = Some(side);
            } else if let Some(told) = ways::way(word).filter(|_| way.is_none()) {
                way = Some(told);
            } else if matches!(word, "it" | "them") && target.is_none() {
                target = self.moved_before(at);
            } else if !(lexicon::is_determiner(word)
                || lexicon::is_adverb(word)
                || lexicon::means_all(word)
                || ways::is_before_way(word)
                || (word == "of" && target.is_some())
                || (self.mention(next).is_some() && self.word(next - 1) == "of"))
            {
                break;
            }
            next += 1;
            if target.is_some() && way.is_some() {
                break;
            }
        }
        let target = target?;
        let What::Entry(ids) = &target.what else { return None };
        let meanings: Vec<EntryId> =
            ways::meanings(manner, way).iter().filter_map(|name| self.scope.relations.movement(name)).collect();
        let vocabulary = self.scope.vocabulary;
        let joints = moved_joints(vocabulary, ids).all;
        let at_joints = |joints: &[EntryId]| -> Vec<EntryId> {
            meanings.iter().copied().filter(|movement| happens_at(vocabulary, *movement, joints)).collect()
        };
        let mut movements = at_joints(&joints);
        let mut target = target;
        if movements.is_empty() && !meanings.is_empty() {
            // "pulls the shoulder down": it is a neighbour that moves so
            let near = of_the_region(vocabulary, &joints);
            movements = at_joints(&near);
            target.what = What::Entry(joints.iter().chain(&near).copied().collect());
        }
        (!movements.is_empty()).then_some(Everyday { movements, target })
    }
}
