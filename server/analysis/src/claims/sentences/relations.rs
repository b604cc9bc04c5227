//! Claims of relation phrases: `LEFT phrase RIGHT` with a verb or participle ("NERVE supplies MUSCLE"), and
//! `phrase RIGHT is LEFT` with a noun ("the innervation of MUSCLE is by NERVE"). What a phrase claims depends on what its
//! two sides are.

use fascicle_model::{Kind, Vocabulary};

use super::Sentence;
use super::atoms::AtomKind;
use super::groups::Group;
use super::objects::Object;
use super::sides::{Side, fits};
use crate::claims::{Claim, ClaimKind, Part, PartRole, What};
use crate::lexicon::{self, Form, RelationWord};
use crate::text::Span;

impl Sentence<'_, '_> {
    /// Claims of `LEFT phrase RIGHT`.
    pub(super) fn verb_claims(&self, at: usize, relation: &RelationWord, last_subject: &mut Vec<Side>) -> Vec<Claim> {
        let (before, negated, hedged) = self.before_verb(at);
        let is_apposition = relation.form == Form::Participle && lexicon::is_determiner(self.first_word(at));
        let begins_clause = before.checked_sub(1).is_none_or(|place| lexicon::begins_clause(self.word(place)));
        if is_apposition && begins_clause && before == at {
            return Vec::new(); // "The anterior divisions of …" begins a clause: it is a subject, no apposition
        }
        if relation.kind == ClaimKind::Skin {
            return self.skin_claims(at, before, negated, hedged, relation, last_subject);
        }
        let Some(object) = self.object(at + 1) else {
            let can_feel =
                relation.kind == ClaimKind::Supply && relation.left == PartRole::Nerve && relation.form == Form::Verb;
            return if can_feel {
                self.skin_claims(at, before, negated, hedged, relation, last_subject)
            } else {
                Vec::new()
            };
        };
        let negated = negated || self.group_to(before).is_some_and(|group| group.denied);
        let mut left = self.subject(before, relation, last_subject);
        if left.is_empty() && relation.form == Form::Participle && relation.left == PartRole::Muscle {
            left = self.listed_behind(&object);
        }
        if left.is_empty() && relation.kind == ClaimKind::Supply && relation.form == Form::Participle {
            return self.skin_supplied(at, before, &object, negated, hedged);
        }
        if left.is_empty() {
            return Vec::new();
        }
        (*last_subject).clone_from(&left);
        let hedged = hedged || self.clause_hedged(at);
        let mut claims = self.combine(relation, &left, &object, at, negated, hedged);
        if relation.kind == ClaimKind::Attachment
            && relation.phrase.ends_with(" from")
            && let Object::Names(from) = &object
            && self.word(from.end) == "to"
            && let Some(to) = self.object(from.end + 1)
        {
            let insertion = RelationWord { phrase: "insert", ..*relation };
            claims.extend(self.combine(&insertion, &left, &to, at, negated, hedged));
        }
        claims
    }

    /// Claims of `phrase RIGHT is LEFT`.
    pub(super) fn noun_claims(&self, at: usize, relation: &RelationWord) -> Vec<Claim> {
        let Some(Object::Names(object)) = self.object(at + 1) else { return Vec::new() };
        let right = self.sides(&object, relation.right);
        if right.is_empty() {
            return Vec::new();
        }
        let mut next = object.end;
        let (mut linked, mut negated, mut hedged) = (false, false, false);
        loop {
            let word = self.word(next);
            if lexicon::is_link(word) {
                linked = true;
            } else if lexicon::is_negation(word) {
                negated = true;
            } else if lexicon::is_hedge(word) {
                hedged = true;
            } else if !(lexicon::is_adverb(word) || lexicon::is_determiner(word) || lexicon::is_muscle_noun(word)) {
                break;
            }
            next += 1;
        }
        // A participle may be the link: "is supplied by", "is derived from".
        if let Some(AtomKind::Relation(link)) = self.atoms.get(next).map(|atom| &atom.kind)
            && matches!(link.kind, ClaimKind::Supply | ClaimKind::Branching)
        {
            linked = true;
            next += 1;
            while lexicon::is_determiner(self.word(next)) {
                next += 1;
            }
        }
        if !linked {
            return Vec::new();
        }
        let hedged = hedged || self.clause_hedged(at);
        let left: Vec<Side> = match self.atoms.get(next).map(|atom| &atom.kind) {
            Some(AtomKind::Name(_)) => {
                self.group_from(next, true).map(|group| self.sides(&group, relation.left)).unwrap_or_default()
            }
            Some(AtomKind::Segments(reading)) => {
                vec![Side { what: What::Segments(reading.main, reading.lesser), span: self.source(next, next + 1) }]
            }
            _ => Vec::new(),
        };
        self.combine(relation, &left, &Object::Names(object), at, negated, hedged)
    }

    /// Claims of all pairs of the two sides, or of pairs in order where the sentence says "respectively".
    fn combine(
        &self,
        relation: &RelationWord,
        left: &[Side],
        object: &Object,
        at: usize,
        negated: bool,
        hedged: bool,
    ) -> Vec<Claim> {
        let vocabulary = self.scope.vocabulary;
        let (group, right): (Option<&Group>, Vec<Side>) = match object {
            Object::Names(group) => (Some(group), self.sides(group, PartRole::Structure)),
            Object::Segments(reading, place) => {
                let span = self.source(*place, *place + 1);
                (None, vec![Side { what: What::Segments(reading.main, reading.lesser), span }])
            }
        };
        if group.is_some_and(|group| group.partial) && relation.kind != ClaimKind::Supply {
            return Vec::new();
        }
        let pairwise = self.atoms.iter().any(|atom| atom.word == "respectively");
        if pairwise && matches!(object, Object::Segments(..)) {
            return Vec::new();
        }
        let mut claims = Vec::new();
        for (l, left) in left.iter().enumerate() {
            for (r, right) in right.iter().enumerate() {
                if pairwise && l != r {
                    continue;
                }
                let Some((kind, left_role, right_role)) = kind_of(vocabulary, relation, left, right) else { continue };
                let mut all = group.is_some_and(|group| group.all && !group.partial);
                all &= group.is_none_or(|group| group.except.is_empty());
                if kind == ClaimKind::Passage {
                    all = lexicon::goes_through(&self.written(at));
                }
                let mut parts = vec![
                    Part { role: left_role, span: left.span, what: left.what.clone() },
                    Part { role: right_role, span: right.span, what: right.what.clone() },
                ];
                if kind == ClaimKind::Attachment
                    && let Some(end) = attachment_end(relation)
                {
                    parts.push(Part { role: PartRole::Role, span: self.source(at, at + 1), what: What::Word(end) });
                }
                let span = self.claim_span(at, left.span, right.span);
                claims.push(Claim { kind, span, parts, negated, hedged, all, block: self.scope.block, key: None });
            }
            if let Some(group) = group
                && relation.kind == ClaimKind::Supply
                && !group.except.is_empty()
            {
                claims.extend(self.exception_claims(relation, left, group, at, negated, hedged));
            }
        }
        if pairwise && left.len() != right.len() {
            claims.clear();
        }
        claims
    }

    /// "all … except X": that X is not supplied.
    fn exception_claims(
        &self,
        relation: &RelationWord,
        left: &Side,
        group: &Group,
        at: usize,
        negated: bool,
        hedged: bool,
    ) -> Vec<Claim> {
        let mut claims = Vec::new();
        for except in &group.except {
            let Some(right) = self.side(*except, PartRole::Structure) else { continue };
            let Some((kind, left_role, right_role)) = kind_of(self.scope.vocabulary, relation, left, &right) else {
                continue;
            };
            let span = self.claim_span(at, left.span, right.span);
            let parts = vec![
                Part { role: left_role, span: left.span, what: left.what.clone() },
                Part { role: right_role, span: right.span, what: right.what },
            ];
            claims.push(Claim {
                kind,
                span,
                parts,
                negated: !negated,
                hedged,
                all: false,
                block: self.scope.block,
                key: None,
            });
        }
        claims
    }

    /// The stretch of the source that a claim covers: its phrase and the parts that stand in this sentence.
    pub(super) fn claim_span(&self, at: usize, left: Span, right: Span) -> Span {
        let whole = self.source(0, self.atoms.len());
        let mut span = self.source(at, at + 1);
        for side in [left, right] {
            if whole.contains(side) {
                span = span.cover(side);
            }
        }
        span
    }
}

/// Which end of a muscle a relation phrase speaks of; `None` where it may be either.
fn attachment_end(relation: &RelationWord) -> Option<&'static str> {
    if relation.kind == ClaimKind::Branching || relation.phrase.ends_with(" from") {
        Some("origin")
    } else {
        (relation.phrase.contains("insert")).then_some("insertion")
    }
}

/// What a relation claims of its two sides, by what they are: *arises from* speaks of roots, of a parent nerve or of a
/// muscle's origin.
fn kind_of(
    vocabulary: &Vocabulary,
    relation: &RelationWord,
    left: &Side,
    right: &Side,
) -> Option<(ClaimKind, PartRole, PartRole)> {
    let first = |side: &Side| match &side.what {
        What::Entry(ids) => ids.first().map(|id| vocabulary.kind(*id)),
        _ => None,
    };
    let is_neural = |kind: Option<Kind>| matches!(kind, Some(Kind::Nerve | Kind::Plexus | Kind::Root));
    let all_fit = |role: PartRole, side: &Side| matches!(&side.what, What::Entry(ids) if ids.iter().any(|id| fits(vocabulary, role, *id)));
    match (&left.what, &right.what) {
        (What::Entry(_), What::Segments(..)) => {
            let speaks_of_roots =
                matches!(relation.kind, ClaimKind::Branching | ClaimKind::Roots) && relation.left != PartRole::Parent;
            let supplied = relation.kind == ClaimKind::Supply && relation.left == PartRole::Muscle;
            let has_roots = is_neural(first(left)) || first(left) == Some(Kind::Muscle);
            (has_roots && (speaks_of_roots || supplied)).then_some((
                ClaimKind::Roots,
                PartRole::Structure,
                PartRole::Segments,
            ))
        }
        (What::Segments(..), What::Entry(_)) => {
            let has_roots = is_neural(first(right)) || first(right) == Some(Kind::Muscle);
            let speaks_of_roots = relation.kind == ClaimKind::Roots
                || (relation.kind == ClaimKind::Supply && relation.left == PartRole::Nerve);
            (has_roots && speaks_of_roots).then_some((ClaimKind::Roots, PartRole::Segments, PartRole::Structure))
        }
        (What::Entry(_), What::Entry(_)) => {
            if relation.kind == ClaimKind::Branching
                && relation.right == PartRole::Parent
                && first(left) == Some(Kind::Muscle)
            {
                return (first(right) == Some(Kind::Landmark)).then_some((
                    ClaimKind::Attachment,
                    PartRole::Muscle,
                    PartRole::Landmark,
                ));
            }
            if relation.kind == ClaimKind::Branching
                && relation.left == PartRole::Parent
                && first(right) == Some(Kind::Muscle)
            {
                return None;
            }
            (all_fit(relation.left, left) && all_fit(relation.right, right)).then_some((
                relation.kind,
                relation.left,
                relation.right,
            ))
        }
        _ => None,
    }
}
