//! Claims of movements: what a muscle does ("flexes the elbow", "is a flexor of the elbow"), and what a joint allows.

use fascicle_model::Kind;

use super::Sentence;
use super::atoms::AtomKind;
use super::objects::Object;
use super::sides::Side;
use crate::claims::phrases::{MovementForm, MovementWord};
use crate::claims::{Claim, ClaimKind, Part, PartRole, What};
use crate::lexicon::{self, Form, RelationWord};

impl Sentence<'_, '_> {
    /// "flexes the elbow", "is a flexor of the elbow", "produces flexion of the elbow", "elbow flexion is produced by"
    pub(super) fn action_claims(&self, at: usize, movement: &MovementWord, last_subject: &mut Vec<Side>) -> Vec<Claim> {
        if movement.form == MovementForm::Noun {
            let joints = self.joint_movement_claims(at, movement);
            if !joints.is_empty() {
                return joints;
            }
        }
        let (target, end) = self.moved(at);
        let movement = &self.with_adverb(at, end, movement);
        let muscles = match movement.form {
            MovementForm::Verb => {
                let (before, negated, hedged) = self.before_verb(at);
                let relation = action_relation();
                let before = self.before_coordinated_verbs(before);
                let muscles = self.subject(before, &relation, last_subject);
                if !muscles.is_empty() {
                    (*last_subject).clone_from(&muscles);
                }
                (muscles, negated, hedged)
            }
            MovementForm::Agent | MovementForm::Noun => self.movers(at, end, movement.form, last_subject),
        };
        let (muscles, negated, hedged) = muscles;
        if muscles.len() > 1 && self.atoms.iter().any(|atom| atom.word == "respectively") {
            return Vec::new();
        }
        let hedged = hedged || self.clause_hedged(at);
        let span = self.source(at, at + 1);
        muscles
            .into_iter()
            .map(|muscle| {
                let whole = self.claim_span(at, muscle.span, target.as_ref().map_or(span, |target| target.span));
                let mut parts = vec![
                    Part { role: PartRole::Muscle, span: muscle.span, what: muscle.what },
                    Part { role: PartRole::Movement, span, what: What::Entry(vec![movement.movement]) },
                ];
                if let Some(target) = &target {
                    parts.push(Part { role: PartRole::Joint, span: target.span, what: target.what.clone() });
                }
                Claim {
                    kind: ClaimKind::Action,
                    span: whole,
                    parts,
                    negated,
                    hedged,
                    all: false,
                    block: self.scope.block,
                    key: None,
                }
            })
            .collect()
    }

    /// "The elbow joint allows flexion", "inversion occurs at the subtalar joint"
    fn joint_movement_claims(&self, at: usize, movement: &MovementWord) -> Vec<Claim> {
        let is_movement =
            |place: usize| matches!(&self.atoms.get(place).map(|atom| &atom.kind), Some(AtomKind::Movement(_)));
        let passes = |place: usize| {
            is_movement(place)
                || lexicon::is_conjunction(self.word(place))
                || lexicon::is_determiner(self.word(place))
                || lexicon::is_adverb(self.word(place))
        };
        let mut joints: Vec<Side> = Vec::new();
        let (mut negated, mut hedged) = (false, self.clause_hedged(at));
        if let Some(verb) = (0..at).rev().find(|place| !passes(*place))
            && let Some(AtomKind::Relation(relation)) = self.atoms.get(verb).map(|atom| &atom.kind)
            && relation.kind == ClaimKind::Joint
        {
            let (before, no, may) = self.before_verb(verb);
            (negated, hedged) = (no, hedged || may);
            let role = RelationWord { left: PartRole::Joint, ..action_relation() };
            joints = self.subject(before, &role, &[]);
        } else if let Some(verb) = (at + 1..self.atoms.len()).find(|place| !passes(*place))
            && lexicon::happens(self.word(verb))
        {
            let mut next = verb + 1;
            while next < self.atoms.len()
                && (lexicon::is_adverb(self.word(next))
                    || lexicon::is_determiner(self.word(next))
                    || lexicon::is_before_place(self.word(next)))
            {
                next += 1;
            }
            joints.extend(self.side(next, PartRole::Joint));
        }
        let span = self.source(at, at + 1);
        joints
            .into_iter()
            .filter(|joint| matches!(&joint.what, What::Entry(ids) if ids.iter().any(|id| self.scope.vocabulary.kind(*id) == Kind::Joint)))
            .map(|joint| {
                let whole = self.claim_span(at, joint.span, joint.span);
                let parts = vec![
                    Part { role: PartRole::Joint, span: joint.span, what: joint.what },
                    Part { role: PartRole::Movement, span, what: What::Entry(vec![movement.movement]) },
                ];
                Claim { kind: ClaimKind::Joint, span: whole, parts, negated, hedged, all: false, block: self.scope.block, key: None }
            })
            .collect()
    }

    /// The muscles that do a movement told by a noun.
    fn movers(&self, at: usize, end: usize, form: MovementForm, last: &[Side]) -> (Vec<Side>, bool, bool) {
        let relation = action_relation();
        // "… is produced by MUSCLE"
        let mut next = end;
        while lexicon::is_auxiliary(self.word(next)) || lexicon::is_adverb(self.word(next)) {
            next += 1;
        }
        if form == MovementForm::Noun
            && lexicon::is_done(self.word(next))
            && self.word(next + 1) == "by"
            && let Some(Object::Names(group)) = self.object(next + 2)
        {
            return (self.sides(&group, PartRole::Muscle), false, false);
        }
        // "MUSCLE is the main flexor of", "MUSCLE produces (…) flexion of"
        let (mut place, mut negated, mut hedged, mut found) = (at, false, false, false);
        let mut is_mover = false;
        while let Some(before) = place.checked_sub(1) {
            let word = self.word(before);
            negated |= lexicon::is_negation(word);
            hedged |= lexicon::is_hedge(word);
            let is_verb = if form == MovementForm::Agent {
                lexicon::is_auxiliary(word)
            } else {
                lexicon::does(word) || (is_mover && lexicon::is_auxiliary(word))
            };
            is_mover |= lexicon::is_mover(word);
            let is_joint = self.side(before, PartRole::Joint).is_some();
            let is_movement = matches!(&self.atoms.get(before).map(|atom| &atom.kind), Some(AtomKind::Movement(_)));
            if is_verb {
                found = true;
            } else if !(is_joint
                || is_movement
                || lexicon::is_determiner(word)
                || lexicon::is_conjunction(word)
                || lexicon::is_adverb(word)
                || lexicon::is_negation(word)
                || lexicon::is_hedge(word)
                || lexicon::is_before_movement(word))
            {
                break;
            }
            place = before;
            if found
                && !place.checked_sub(1).is_some_and(|before| {
                    lexicon::is_auxiliary(self.word(before))
                        || lexicon::is_adverb(self.word(before))
                        || lexicon::is_negation(self.word(before))
                        || lexicon::is_hedge(self.word(before))
                        || lexicon::does(self.word(before))
                })
            {
                break;
            }
        }
        if found { (self.subject(place, &relation, last), negated, hedged) } else { (Vec::new(), negated, hedged) }
    }

    /// What a movement word moves: the joint or moved part behind it ("of the elbow", "the elbow") or right before a noun.
    pub(super) fn moved(&self, at: usize) -> (Option<Side>, usize) {
        let mut next = at + 1;
        while next < self.atoms.len() {
            if let Some(side) = self.side(next, PartRole::Joint) {
                return (Some(side), next + 1);
            }
            let word = self.word(next);
            let is_movement = matches!(&self.atoms.get(next).map(|atom| &atom.kind), Some(AtomKind::Movement(_)));
            if is_movement
                || lexicon::is_determiner(word)
                || lexicon::is_conjunction(word)
                || lexicon::is_adverb(word)
                || lexicon::is_before_moved(word)
            {
                next += 1;
            } else {
                break;
            }
        }
        if let Some(before) = at.checked_sub(1)
            && let Some(side) = self.side(before, PartRole::Joint)
        {
            return (Some(side), at + 1);
        }
        (None, at + 1)
    }

    /// "rotates the arm medially": the adverb behind what is moved belongs to the verb.
    pub(super) fn with_adverb(&self, at: usize, end: usize, movement: &MovementWord) -> MovementWord {
        let tokens = &self.scope.mentions.tokens;
        let verb = self
            .atoms
            .get(at)
            .and_then(|atom| tokens.get(atom.from))
            .map_or("", |token| token.span.of(&self.scope.plain.text));
        let joined = format!("{verb} {}", self.word(end));
        match self.scope.relations.movement(&joined) {
            Some(found) if movement.form == MovementForm::Verb => MovementWord { movement: found, form: movement.form },
            _ => movement.clone(),
        }
    }

    /// Steps back over verbs that share a subject: "flexes, adducts and medially rotates".
    fn before_coordinated_verbs(&self, end: usize) -> usize {
        let mut at = end;
        while let Some(before) = at.checked_sub(1) {
            let is_verb = matches!(&self.atoms.get(before).map(|atom| &atom.kind), Some(AtomKind::Movement(word)) if word.form == MovementForm::Verb);
            if is_verb
                || lexicon::is_adverb(self.word(before))
                || (lexicon::is_conjunction(self.word(before))
                    && before.checked_sub(1).is_some_and(|place| {
                        matches!(&self.atoms.get(place).map(|atom| &atom.kind), Some(AtomKind::Movement(_)))
                    }))
            {
                at = before;
            } else {
                break;
            }
        }
        at
    }
}

pub(super) const fn action_relation() -> RelationWord {
    RelationWord {
        phrase: "",
        kind: ClaimKind::Action,
        form: Form::Verb,
        left: PartRole::Muscle,
        right: PartRole::Movement,
        example: "",
    }
}
