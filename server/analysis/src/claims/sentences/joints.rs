//! Clauses that speak of one joint in words that no list knows: the kind of joint, the bones or the movements that they
//! name tell what is claimed ("belongs to the saddle joints", "is where A meets B").

use std::ops::Range;

use fascicle_model::Kind;

use super::Sentence;
use super::atoms::AtomKind;
use super::sides::Side;
use crate::claims::phrases::MovementForm;
use crate::claims::{Claim, ClaimKind, Part, PartRole, What};
use crate::lexicon;

/// How far behind a pronoun the word may stand by which bones are said to make the joint that it stands for.
const NEAR: usize = 7;

impl Sentence<'_, '_> {
    /// The claims of joints that other readings have not found.
    pub(super) fn typed_joint_claims(&self, known: &[Claim]) -> Vec<Claim> {
        let mut claims = Vec::new();
        let mut start = 0;
        while start < self.atoms.len() {
            let (_, stop) = self.clause_around(start);
            let stop = stop.max(start);
            let clause = start..stop;
            let is_told =
                |claim: &&Claim| claim.kind == ClaimKind::Joint && self.source(start, stop).contains(claim.span);
            if stop > start && known.iter().find(is_told).is_none() {
                claims.extend(self.joint_clause(clause));
            }
            start = stop + 1;
        }
        claims
    }

    fn joint_clause(&self, clause: Range<usize>) -> Vec<Claim> {
        let claims = self.typed_kinds(&clause);
        if !claims.is_empty() {
            return claims;
        }
        let claims = self.typed_bones(&clause);
        if claims.is_empty() { self.typed_movements(&clause) } else { claims }
    }

    fn is_joint(&self, at: usize) -> bool {
        self.class(at) == Some(3) && !self.is_struck(at) && !lexicon::names_surface(&self.written(at))
    }

    /// Whether a clause speaks of several joints without saying of what kind: "there are two joints between".
    fn speaks_of_several(&self, clause: &Range<usize>) -> bool {
        let is_plain = |at: usize| at > clause.start && self.kind_of_joint(at - 1).is_none();
        clause.clone().any(|at| self.word(at) == "joints" && is_plain(at))
    }

    /// Whether a name hangs on a preposition that tells where something else is.
    fn is_beside_only(&self, at: usize) -> bool {
        let mut before = at;
        while before.checked_sub(1).is_some_and(|place| lexicon::is_determiner(self.word(place))) {
            before -= 1;
        }
        let word = before.checked_sub(1).map_or("", |place| self.word(place));
        lexicon::is_preposition(word) && !matches!(word, "at" | "in" | "within" | "of" | "to" | "as" | "for" | "by")
            || matches!(word, "below" | "above")
    }

    /// The joint of which a clause speaks: the only one that it names, or the one that a pronoun stands for.
    fn joint_of_clause(&self, clause: &Range<usize>) -> Option<(Side, Option<usize>)> {
        let named: Vec<usize> = clause.clone().filter(|at| self.is_joint(*at)).collect();
        // "below NAME there are two joints": of others
        let is_of_others = |at: &usize| self.is_beside_only(*at);
        if named.iter().any(is_of_others) || (named.len() == 1 && self.speaks_of_several(clause)) {
            return None;
        }
        match named.as_slice() {
            [at] => self.side(*at, PartRole::Joint).map(|side| (side, Some(*at))),
            [] => {
                let begins = self.word(clause.start);
                let is_subject =
                    lexicon::is_auxiliary(self.word(clause.start + 1)) || self.begins_predicate(clause.start + 1);
                let is_meant = matches!(begins, "it" | "its" | "here")
                    || (begins == "this" && is_subject)
                    || lexicon::points_back(begins) && self.word(clause.start + 1) == "joint";
                let implied = if is_meant { self.recalled(PartRole::Joint, false) } else { Vec::new() };
                let [side] = implied.as_slice() else { return None };
                let is_joint = side.what.entries().iter().all(|id| self.scope.vocabulary.kind(*id) == Kind::Joint);
                is_joint.then(|| (side.clone(), None))
            }
            _ => None,
        }
    }

    /// "belongs to the saddle joints", "an example of a pivot joint is NAME"
    fn typed_kinds(&self, clause: &Range<usize>) -> Vec<Claim> {
        let words = || clause.clone().map(|at| self.word(at));
        let compares = words().any(|word| lexicon::is_negation(word) || lexicon::only_likens(word));
        let tells = clause.clone().any(|at| lexicon::tells_kind(self.first_token(at)));
        if compares || !tells {
            return Vec::new();
        }
        let kinds: Vec<(&'static str, usize)> =
            clause.clone().filter_map(|at| Some((self.kind_of_joint(at)?, at))).collect();
        let first = kinds.first().map(|(_, at)| *at);
        let Some(first) = first else { return Vec::new() };
        // "Examples of hinge joints are A and B": all of them are of that kind.
        let behind: Vec<usize> = (first..clause.end).filter(|at| self.is_joint(*at)).collect();
        let before = (clause.start..first).filter(|at| self.is_joint(*at)).count();
        let joints: Vec<Side> = match (before, behind.as_slice()) {
            (0, [one, ..]) => {
                let leads = clause.clone().take(3).any(|at| lexicon::leads_example(self.word(at)));
                let group = self.group_from(*one, true).filter(|_| leads);
                group.map(|group| self.sides(&group, PartRole::Joint)).unwrap_or_default()
            }
            (0 | 1, []) => self.joint_of_clause(clause).map(|(side, _)| side).into_iter().collect(),
            _ => Vec::new(),
        };
        let hedged = self.clause_hedged(first);
        let mut claims = Vec::new();
        for joint in joints {
            for (is, at) in &kinds {
                let told = self.source(*at, at + 1);
                let parts = vec![
                    Part { role: PartRole::Joint, span: joint.span, what: joint.what.clone() },
                    Part { role: PartRole::JointKind, span: told, what: What::Word(is) },
                ];
                let span = self.claim_span(*at, joint.span, told);
                claims.push(Claim { span, parts, hedged, ..self.empty_claim(ClaimKind::Joint) });
            }
        }
        claims
    }

    /// The kind of joint that a word is, where it stands as one: before "joint", "type" and the like, or at an end.
    fn kind_of_joint(&self, at: usize) -> Option<&'static str> {
        let word = self.word(at);
        let known = lexicon::JOINT_KINDS.iter().chain(lexicon::JOINT_CLASSES).find(|(known, _)| *known == word);
        let (_, is) = known?;
        let next = self.word(at + 1);
        let is_noun = lexicon::is_kind_of_joint_noun(next) || self.ends_clause(at + 1) || lexicon::is_hyphen(next);
        let is_plane = *is == "plane" && !lexicon::is_kind_of_joint_noun(next);
        (is_noun && !is_plane).then_some(*is)
    }

    /// "is where A meets B", "unites A and B": bones that are said to make a joint.
    fn typed_bones(&self, clause: &Range<usize>) -> Vec<Claim> {
        let Some((joint, named)) = self.joint_of_clause(clause) else { return Vec::new() };
        // A list may stand behind a colon.
        let is_listed = self.word(clause.end) == ":";
        let end = if is_listed { self.clause_around(clause.end + 1).1 } else { clause.end };
        // "is tender *between* A and B"
        let joins = |at: usize| {
            self.word(at) != "between"
                || at.checked_sub(1).is_some_and(|before| lexicon::leads_to_between(self.first_token(before)))
        };
        // "the shoulder *bones*" are more than those of its joint
        let is_compound = |at: usize| self.word(at) == "bones" && at > clause.start && self.is_joint(at - 1);
        let cue =
            clause.clone().find(|at| lexicon::joins_bones(self.first_token(*at)) && !is_compound(*at) && joins(*at));
        let Some(cue) = cue.filter(|cue| named.is_some() || *cue < clause.start + NEAR) else { return Vec::new() };
        let names: Vec<usize> =
            (clause.start..end).filter(|at| self.mention(*at).is_some() && !self.is_joint(*at)).collect();
        let are_bones = names.iter().all(|at| self.bone(*at).is_some());
        let denies =
            (clause.start..end).any(|at| lexicon::is_negation(self.word(at)) || lexicon::only_likens(self.word(at)));
        if names.is_empty() || !are_bones || denies || !names.iter().any(|at| *at > cue || names.len() > 1) {
            return Vec::new();
        }
        let hedged = self.clause_hedged(cue);
        let claim = |bone: Side| {
            let parts = vec![
                Part { role: PartRole::Joint, span: joint.span, what: joint.what.clone() },
                Part { role: PartRole::Landmark, span: bone.span, what: bone.what },
            ];
            let span = self.claim_span(cue, joint.span, bone.span);
            Claim { span, parts, hedged, ..self.empty_claim(ClaimKind::Joint) }
        };
        names.into_iter().filter_map(|at| self.bone(at)).map(claim).collect()
    }

    /// "Eversion is a movement of NAME", "in NAME only abduction is possible"
    fn typed_movements(&self, clause: &Range<usize>) -> Vec<Claim> {
        let Some((joint, _)) = self.joint_of_clause(clause) else { return Vec::new() };
        let tells = clause.clone().any(|at| lexicon::tells_movement(self.first_token(at)));
        // "plantar flexion of the ankle is an S1 movement" speaks of segments
        let others = clause.clone().any(|at| match self.atoms.get(at).map(|atom| &atom.kind) {
            Some(AtomKind::Segments(_)) => true,
            _ => self.mention(at).is_some() && !self.is_joint(at),
        });
        let denies = clause.clone().any(|at| {
            let word = self.word(at);
            lexicon::is_negation(word) || lexicon::denies_happening(word) || lexicon::is_loss(word) || word == "than"
        });
        if !tells || others || denies {
            return Vec::new();
        }
        let hedged = self.clause_hedged(clause.start);
        let mut claims = Vec::new();
        for at in clause.clone() {
            let Some(AtomKind::Movement(movement)) = self.atoms.get(at).map(|atom| &atom.kind) else { continue };
            if movement.form != MovementForm::Noun {
                continue;
            }
            let exact = self.with_adverb(at, at + 1, movement);
            let told = self.source(at, at + 1);
            let parts = vec![
                Part { role: PartRole::Joint, span: joint.span, what: joint.what.clone() },
                Part { role: PartRole::Movement, span: told, what: What::Entry(vec![exact.movement]) },
            ];
            let span = self.claim_span(at, joint.span, told);
            claims.push(Claim { span, parts, hedged, ..self.empty_claim(ClaimKind::Joint) });
        }
        claims
    }
}
