//! Claims of movements: what a muscle does ("flexes the elbow", "is a flexor of the elbow"), and what a joint allows.

use fascicle_model::{EntryId, Kind};

use super::Sentence;
use super::atoms::AtomKind;
use super::groups::Group;
use super::objects::Object;
use super::sides::Side;
use crate::claims::phrases::{MovementForm, MovementWord};
use crate::claims::{Claim, ClaimKind, Part, PartRole, What};
use crate::lexicon::{self, Form, RelationWord};

/// How many atoms behind an everyday verb of moving its way stands.
const REACH_OF_WAY: usize = 5;

impl Sentence<'_, '_> {
    /// "flexes the elbow", "is a flexor of the elbow", "produces flexion of the elbow", "elbow flexion is produced by"
    pub(super) fn action_claims(&self, at: usize, movement: &MovementWord, last_subject: &mut Vec<Side>) -> Vec<Claim> {
        if movement.form == MovementForm::Noun {
            let joints = self.joint_movement_claims(at, movement);
            if !joints.is_empty() {
                return joints;
            }
        }
        // "side-flexes": no flexion
        let is_compound = at > 1 && lexicon::is_hyphen(self.word(at - 1)) && self.word(at - 2) == "side";
        if is_compound {
            return Vec::new();
        }
        if movement.form == MovementForm::Participle {
            return self.passive_claims(at, movement);
        }
        let (target, end) = self.moved(at);
        let exact = self.with_adverb(at, end, movement);
        if movement.form == MovementForm::Verb && exact.movement == movement.movement && self.everyday(at).is_some() {
            return self.everyday_claims(at, last_subject);
        }
        // "*bends* to the side": an everyday verb with a way, of which it is not said what goes there.
        let has_way = || {
            let clause = (at + 1..self.atoms.len()).take_while(|place| !lexicon::ends_phrase(self.word(*place)));
            clause.take(REACH_OF_WAY).any(|place| lexicon::ways::way(self.word(place)).is_some())
        };
        let is_everyday = lexicon::ways::manner(&self.first_token(at).to_lowercase()).is_some();
        if movement.form == MovementForm::Verb && target.is_none() && is_everyday && has_way() {
            return Vec::new();
        }
        let movement = &exact;
        let (muscles, negated, hedged) = match movement.form {
            MovementForm::Verb => self.doers(at, last_subject),
            MovementForm::Agent | MovementForm::Noun | MovementForm::Participle => {
                self.movers(at, end, movement.form, last_subject)
            }
        };
        let mut pairs: Vec<(Side, EntryId)> =
            muscles.iter().map(|muscle| (muscle.clone(), movement.movement)).collect();
        if muscles.len() > 1 && self.atoms.iter().any(|atom| atom.word == "respectively") {
            pairs = self.in_order(at, end, movement, &muscles);
        }
        // "to the opposite side"
        let side = self.body_side_told(at, &muscles).map(|side| {
            let span = self.source(at, at + 1);
            Part { role: PartRole::Role, span, what: What::Word(side.word()) }
        });
        let claim = |(muscle, movement)| {
            let mut claim = self.action(at, muscle, vec![movement], target.as_ref(), negated, hedged);
            claim.parts.extend(side.clone());
            claim
        };
        pairs.into_iter().map(claim).collect()
    }

    /// A claim that a muscle does one of these movements.
    pub(super) fn action(
        &self,
        at: usize,
        muscle: Side,
        movements: Vec<EntryId>,
        target: Option<&Side>,
        negated: bool,
        hedged: bool,
    ) -> Claim {
        let span = self.source(at, at + 1);
        let whole = self.claim_span(at, muscle.span, target.map_or(span, |target| target.span));
        let mut parts = vec![
            Part { role: PartRole::Muscle, span: muscle.span, what: muscle.what },
            Part { role: PartRole::Movement, span, what: What::Entry(movements) },
        ];
        parts.extend(target.map(|target| Part { role: PartRole::Joint, span: target.span, what: target.what.clone() }));
        Claim {
            kind: ClaimKind::Action,
            span: whole,
            parts,
            negated,
            hedged: hedged || self.clause_hedged(at),
            all: false,
            block: self.scope.block,
            key: None,
        }
    }

    /// The muscles that are the subject of a verb of movement, and what was said of the verb: "flexes", "helps to flex",
    /// "the action of MUSCLE is to flex".
    pub(super) fn doers(&self, at: usize, last_subject: &mut Vec<Side>) -> (Vec<Side>, bool, bool) {
        let (before, negated, hedged) = self.before_verb(self.before_helper(at));
        let relation = action_relation();
        // "*Raising the lid* is the task of MUSCLE": not of what the sentence before speaks of
        let given = if at == 0 { self.given_to_behind(at, before) } else { Vec::new() };
        let muscles = match self.task_owner(at, before) {
            _ if !given.is_empty() => given,
            Some(owner) => owner,
            None => self.subject(self.before_coordinated_verbs(before), &relation, last_subject),
        };
        let muscles = if muscles.is_empty() { self.told_behind(at, before) } else { muscles };
        let muscles = if muscles.is_empty() { self.given_to_behind(at, before) } else { muscles };
        let is_finite = !self.written(at).split(' ').any(|word| word.ends_with("ing"));
        let has_object = lexicon::is_determiner(self.word(at + 1)) || self.side(at + 1, PartRole::Joint).is_some();
        let muscles = if muscles.is_empty() && is_finite && has_object && !self.is_to(at) {
            self.ending_muscles(at, before, at)
        } else {
            muscles
        };
        if !muscles.is_empty() {
            (*last_subject).clone_from(&muscles);
        }
        (muscles, negated, hedged)
    }

    /// "The muscle that flexes the elbow is MUSCLE": the muscles behind the verb.
    fn told_behind(&self, at: usize, before: usize) -> Vec<Side> {
        let is_of_kind = before.checked_sub(2).is_some_and(|noun| {
            lexicon::is_relative(self.word(noun + 1)) && matches!(self.word(noun), "muscle" | "muscles" | "one")
        });
        if !is_of_kind {
            return Vec::new();
        }
        let (_, mut end) = self.moved(at);
        while lexicon::ways::way(self.word(end)).is_some() {
            end += 1;
        }
        if matches!(self.word(end), "is" | "are") { self.agents(end) } else { Vec::new() }
    }

    fn is_to(&self, at: usize) -> bool {
        at.checked_sub(1).is_some_and(|place| self.word(place) == "to")
    }

    /// "*Bending the elbow* is the work of MUSCLE", "we *close the eye* with MUSCLE", "*to straighten the knee* you need MUSCLE":
    /// the muscles behind what is moved, in the same clause.
    fn given_to_behind(&self, at: usize, before: usize) -> Vec<Side> {
        let is_gerund =
            self.first_token(at).to_lowercase().ends_with("ing") && self.begins_anew(self.before_determiners(at));
        let is_purpose = self.is_to(at) && (at < 2 || self.begins_anew(at - 1));
        let is_of_person = before.checked_sub(1).is_some_and(|place| lexicon::is_mover_person(self.word(place)));
        if !(is_gerund || is_purpose || is_of_person) {
            return Vec::new();
        }
        let (_, end) = self.moved(at);
        let mut is_given = false;
        for place in end..(end + 9).min(self.atoms.len()) {
            let word = self.word(place);
            if matches!(self.class(place), Some(1 | 2)) {
                let group = self.group_from(place, true).filter(|_| is_given);
                return group.map(|group| self.sides(&group, PartRole::Muscle)).unwrap_or_default();
            }
            if lexicon::is_negation(word) || matches!(word, ";" | ":" | "." | "(") || lexicon::is_contrast(word) {
                break;
            }
            let written = self.written(place);
            is_given |= written.split(' ').any(lexicon::gives_to_doer)
                || written.starts_with("depend")
                || written.starts_with("rel");
        }
        Vec::new()
    }

    /// Steps back over a helping verb: "helps (MUSCLE) to flex", "acts to flex", "is able to flex".
    fn before_helper(&self, at: usize) -> usize {
        let Some(to) = at.checked_sub(1).filter(|to| self.word(*to) == "to") else { return at };
        (to.saturating_sub(3)..to)
            .rev()
            .take_while(|place| {
                let word = self.word(*place);
                lexicon::is_helper(word)
                    || lexicon::is_adverb(word)
                    || lexicon::is_before_moved(word)
                    || word == "with"
                    || word.is_empty()
            })
            .find(|place| lexicon::is_helper(self.first_token(*place)))
            .unwrap_or(at)
    }

    /// "The action of MUSCLE is to flex": the muscles whose task a verb tells.
    fn task_owner(&self, at: usize, before: usize) -> Option<Vec<Side>> {
        let to = at.checked_sub(1).filter(|to| self.word(*to) == "to")?;
        let is = to.checked_sub(1).filter(|is| matches!(self.word(*is), "is" | "are"))?;
        if before > at { None } else { self.owner_of_task(is) }
    }

    /// The muscles of "the action of MUSCLE" that ends before an atom.
    fn owner_of_task(&self, end: usize) -> Option<Vec<Side>> {
        // "*its main job* is to flex"
        if let Some(noun) = end.checked_sub(1).filter(|noun| lexicon::is_task(self.word(*noun))) {
            if matches!(noun.checked_sub(1).and_then(|place| self.class(place)), Some(1 | 2)) {
                return self.group_to(noun).map(|owner| self.sides(&owner, PartRole::Muscle)); // "MUSCLE's job is to flex"
            }
            let its = (0..noun).rev().take(3).find(|place| matches!(self.word(*place), "its" | "their"))?;
            let is_plain = (its + 1..noun).all(|place| !self.word(place).is_empty());
            return is_plain.then(|| self.possessor(its, PartRole::Muscle, self.word(its) == "their"));
        }
        let group = self.group_to(end)?;
        let mut of = group.members.first()?.checked_sub(1)?;
        while lexicon::is_determiner(self.word(of)) {
            of = of.checked_sub(1)?;
        }
        let noun = of.checked_sub(1).filter(|_| self.word(of) == "of")?;
        lexicon::is_task(self.first_token(noun)).then(|| self.sides(&group, PartRole::Muscle))
    }

    /// "A and B flex and extend it, respectively", "A and B rotate it laterally and medially, respectively": each muscle
    /// with its own movement.
    fn in_order(&self, at: usize, end: usize, movement: &MovementWord, muscles: &[Side]) -> Vec<(Side, EntryId)> {
        let is_verb = |place: usize| matches!(self.atoms.get(place).map(|atom| &atom.kind), Some(AtomKind::Movement(word)) if word.form == movement.form);
        let joins = |place: usize| lexicon::is_conjunction(self.word(place));
        let mut from = at;
        while from.checked_sub(1).is_some_and(|place| is_verb(place) || joins(place)) {
            from -= 1;
        }
        let mut to = at + 1;
        while is_verb(to) || joins(to) {
            to += 1;
        }
        let verbs: Vec<usize> = (from..to).filter(|place| is_verb(*place)).collect();
        if verbs.len() == muscles.len() {
            let own = verbs.iter().position(|place| *place == at).and_then(|place| muscles.get(place));
            return own.map(|muscle| (muscle.clone(), movement.movement)).into_iter().collect();
        }
        let verb = self.first_token(at);
        let ways: Vec<EntryId> = (end..self.atoms.len())
            .take_while(|place| !self.word(*place).is_empty() && self.word(*place) != "respectively")
            .filter_map(|place| self.scope.relations.movement(&format!("{verb} {}", self.word(place))))
            .collect();
        if ways.len() == muscles.len() { muscles.iter().cloned().zip(ways).collect() } else { Vec::new() }
    }

    /// "The forearm is supinated by MUSCLE"
    fn passive_claims(&self, at: usize, movement: &MovementWord) -> Vec<Claim> {
        // "is turned outwards by": what it means depends on what is turned
        let everyday = self.everyday_passive(at);
        if !everyday.is_empty() {
            return everyday;
        }
        let (before, negated, hedged) = self.before_verb(at);
        let mut by = at + 1;
        while lexicon::is_adverb(self.word(by)) {
            by += 1;
        }
        if before == at || !matches!(self.word(by), "by" | "through") {
            return Vec::new();
        }
        let muscles = self.agents(by);
        let Some(target) = self.group_to(before).and_then(|group| self.side(*group.members.last()?, PartRole::Joint))
        else {
            return Vec::new();
        };
        let movement = vec![movement.movement];
        let claim = |muscle| self.action(at, muscle, movement.clone(), Some(&target), negated, hedged);
        muscles.into_iter().map(claim).collect()
    }

    /// The muscles behind "by" or "through" ("by the action of MUSCLE").
    pub(super) fn agents(&self, by: usize) -> Vec<Side> {
        let mut next = by + 1;
        while lexicon::is_determiner(self.word(next))
            || lexicon::is_task(self.first_token(next))
            || self.word(next) == "of"
        {
            next += 1;
        }
        match self.object(next) {
            Some(Object::Names(group)) => self.sides(&group, PartRole::Muscle),
            _ => Vec::new(),
        }
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
        } else if let Some(verb) = (0..at).rev().find(|place| !passes(*place))
            && matches!(self.word(verb), "lacks" | "lack")
        {
            let role = RelationWord { left: PartRole::Joint, ..action_relation() };
            negated = true;
            joints = self.subject(verb, &role, &[]);
        } else if let Some(verb) = (self.behind_moved(at)..self.atoms.len()).find(|place| !passes(*place))
            && lexicon::happens(self.word(verb))
        {
            negated = at.checked_sub(1).is_some_and(|place| matches!(self.word(place), "no" | "neither"));
            let mut next = verb;
            while next == verb || lexicon::denies_happening(self.word(next)) || lexicon::is_auxiliary(self.word(next)) {
                negated |= lexicon::denies_happening(self.word(next));
                next += 1;
            }
            while next < self.atoms.len()
                && (lexicon::is_adverb(self.word(next))
                    || lexicon::is_determiner(self.word(next))
                    || lexicon::is_before_place(self.word(next)))
            {
                next += 1;
            }
            joints.extend(self.side(next, PartRole::Joint));
            // "At the subtalar joint inversion occurs"
            if joints.is_empty() && matches!(self.word(0), "at" | "in") && !matches!(self.word(verb), "is" | "are") {
                let place = (1..at).find(|place| !lexicon::is_determiner(self.word(*place)));
                joints.extend(place.and_then(|place| self.side(place, PartRole::Joint)));
            }
        }
        if joints.is_empty()
            && let Some(verb) = (0..at).rev().find(|place| !passes(*place))
        {
            joints.extend(self.joint_of_movements(verb));
        }
        // "cannot occur at the elbow *alone*"
        let is_alone =
            |atom: &super::atoms::Atom| matches!(&*atom.word, "alone" | "only" | "itself" | "proper" | "without");
        if negated && self.atoms.iter().any(is_alone) {
            joints.clear();
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

    /// The atom behind the part of the body whose movement is told: "rotation *of the head* occurs at".
    fn behind_moved(&self, at: usize) -> usize {
        let name = (at + 2..at + 4).find(|place| self.mention(*place).is_some());
        let is_of_part = |name: usize| {
            self.word(at + 1) == "of" && self.side(name, PartRole::Joint).is_some() && self.class(name) != Some(3)
        };
        name.filter(|name| is_of_part(*name)).map_or(at + 1, |name| name + 1)
    }

    /// "The movements at JOINT *include*", "the chief movement of JOINT *is*": the joint whose movements a verb tells.
    fn joint_of_movements(&self, verb: usize) -> Option<Side> {
        let is_telling = matches!(self.word(verb), "is" | "are") || lexicon::includes(self.first_token(verb));
        let mut place = verb.checked_sub(1).filter(|_| is_telling)?;
        while lexicon::is_adverb(self.word(place)) {
            place = place.checked_sub(1)?;
        }
        let joint = self.side(place, PartRole::Joint)?;
        let mut of = place.checked_sub(1)?;
        while lexicon::is_determiner(self.word(of)) {
            of = of.checked_sub(1)?;
        }
        let noun = of.checked_sub(1).filter(|_| matches!(self.word(of), "of" | "at" | "in"))?;
        matches!(&*self.written(noun), "movement" | "movements" | "motion" | "motions").then_some(joint)
    }

    /// The muscles that do a movement told by a noun.
    fn movers(&self, at: usize, end: usize, form: MovementForm, last: &[Side]) -> (Vec<Side>, bool, bool) {
        let relation = action_relation();
        // "… is produced by MUSCLE"
        let mut next = end;
        while lexicon::is_auxiliary(self.word(next)) || lexicon::is_adverb(self.word(next)) {
            next += 1;
        }
        if form == MovementForm::Noun {
            // "… is the work of MUSCLE", "… is due to MUSCLE"
            let is_link = next > end
                && ((lexicon::is_task(self.first_token(next + 1)) && self.word(next + 2) == "of")
                    || (self.word(next) == "due" && self.word(next + 1) == "to"));
            let mut by = if lexicon::is_done(self.word(next)) { next + 1 } else { next };
            if by > next && matches!(self.word(by), "out" | "about") {
                by += 1;
            }
            // "is the job of", which is said of nerves too
            let is_link = is_link
                || matches!(self.atoms.get(end).map(|atom| &atom.kind), Some(AtomKind::Relation(relation)) if relation.kind == ClaimKind::Supply && relation.right == PartRole::Nerve);
            if is_link || matches!(self.word(by), "by" | "through") {
                let muscles = self.agents(by);
                if !muscles.is_empty() {
                    return (muscles, false, self.clause_hedged(at));
                }
            }
        }
        // "MUSCLE is the main flexor of", "MUSCLE produces (…) flexion of"
        let (mut place, mut negated, mut hedged, mut found) = (at, false, false, false);
        let mut is_mover = false;
        while let Some(before) = place.checked_sub(1) {
            let word = self.word(before);
            negated |= lexicon::is_negation(word);
            hedged |= lexicon::is_hedge(word);
            let is_verb = if form == MovementForm::Agent {
                lexicon::is_auxiliary(word) || lexicon::is_helper(self.first_token(before))
            } else {
                let is_responsible = matches!(self.atoms.get(before).map(|atom| &atom.kind), Some(AtomKind::Relation(relation)) if relation.kind == ClaimKind::Supply && relation.left == PartRole::Nerve && relation.form == Form::Verb);
                lexicon::does(word) || is_responsible || (is_mover && lexicon::is_auxiliary(word))
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
                || lexicon::is_mover(word)
                || word == "both"
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
        let muscles = match self.task_owner(place, place).filter(|_| found) {
            Some(owner) => owner,
            None if found => self.subject(place, &relation, last),
            None => Vec::new(),
        };
        // "It is *the prime mover in* protraction"
        let mut noun = place;
        while noun.checked_sub(1).is_some_and(|before| {
            let word = self.word(before);
            lexicon::is_mover(word) || lexicon::is_before_movement(word) || lexicon::is_determiner(word)
        }) {
            noun -= 1;
        }
        let is = noun.checked_sub(1).filter(|is| noun < place && matches!(self.word(*is), "is" | "are"));
        if muscles.is_empty()
            && found
            && let Some(is) = is
        {
            let (before, not, may) = self.before_verb(is + 1);
            return (self.subject(before, &relation, last), negated || not, hedged || may);
        }
        if muscles.is_empty()
            && form == MovementForm::Agent
            && let Some(group) = self.apposed_to(at)
        {
            return (self.sides(&group, PartRole::Muscle), false, hedged);
        }
        // "The main flexor of the elbow is MUSCLE", "the prime mover in flexion of the elbow is MUSCLE"
        let is_mover = is_mover || (at.saturating_sub(6)..at).any(|place| lexicon::is_mover(self.word(place)));
        if muscles.is_empty() && (form == MovementForm::Agent || is_mover) && next > end {
            return (self.agents(next - 1), negated, hedged);
        }
        // "The flexors of the elbow include MUSCLE"
        if muscles.is_empty() && form == MovementForm::Agent && lexicon::includes(self.first_token(next)) {
            return (self.agents(next), negated, hedged);
        }
        // "The action of MUSCLE is extension", "its main action is extension"
        if muscles.is_empty() && form == MovementForm::Noun {
            return self.told_task(at);
        }
        (muscles, negated, hedged)
    }

    /// "MUSCLE*, the main flexor of* the elbow": the muscle that an agent behind a comma is said of.
    fn apposed_to(&self, at: usize) -> Option<Group> {
        let mut first = at;
        while let Some(before) = first.checked_sub(1) {
            let word = self.word(before);
            let is_joint = self.side(before, PartRole::Joint).is_some();
            if !(is_joint
                || lexicon::is_before_movement(word)
                || lexicon::is_adverb(word)
                || lexicon::tells_role(word)
                || matches!(word, "a" | "an" | "the"))
            {
                break;
            }
            first = before;
        }
        let comma = first.checked_sub(1).filter(|place| self.word(*place) == ",")?;
        let leads = matches!(self.word(first), "a" | "an" | "the") || lexicon::tells_role(self.word(first));
        // In "the extensors, the flexors and …" the comma joins members of a list.
        let group = self.group_to(comma).filter(|_| leads)?;
        let is_list = (at..self.atoms.len()).take(6).any(|place| {
            lexicon::is_conjunction(self.word(place))
                && self.word(place) != ","
                && matches!(self.class(place + 1), Some(1 | 2))
        });
        (!is_list).then_some(group)
    }

    /// "The action of MUSCLE is extension", "its main action is extension": whose task a noun of movement tells, and whether
    /// that is denied or softened.
    fn told_task(&self, at: usize) -> (Vec<Side>, bool, bool) {
        let mut from = at;
        while from.checked_sub(1).is_some_and(|before| {
            lexicon::is_determiner(self.word(before))
                || lexicon::is_before_movement(self.word(before))
                || lexicon::is_conjunction(self.word(before))
                || self.side(before, PartRole::Joint).is_some()
                || matches!(self.atoms.get(before).map(|atom| &atom.kind), Some(AtomKind::Movement(word)) if word.form == MovementForm::Noun)
        }) {
            from -= 1;
        }
        let (before, negated, hedged) = self.before_verb(from);
        if before == from || !(before..from).any(|place| matches!(self.word(place), "is" | "are")) {
            return (Vec::new(), negated, hedged);
        }
        let owner = self.owner_of_task(before).or_else(|| {
            let noun = before.checked_sub(1).filter(|noun| lexicon::is_task(self.word(*noun)))?;
            let its = (0..noun).rev().take(3).find(|place| matches!(self.word(*place), "its" | "their"))?;
            let between = (its + 1..noun).all(|place| !self.word(place).is_empty());
            between.then(|| self.implied(PartRole::Muscle, self.word(its) == "their"))
        });
        (owner.unwrap_or_default(), negated, hedged)
    }

    /// What a movement word moves: the joint or moved part behind it ("of the elbow", "the elbow") or right before a noun.
    pub(super) fn moved(&self, at: usize) -> (Option<Side>, usize) {
        let mut next = at + 1;
        let mut pronoun = None;
        while next < self.atoms.len() {
            if let Some(side) = self.side(next, PartRole::Joint) {
                // "knee flexion, hip extension": what stands right before a movement is moved by that one
                let is_of_next = next > at + 1
                    && matches!(self.atoms.get(next + 1).map(|atom| &atom.kind), Some(AtomKind::Movement(word)) if word.form == MovementForm::Noun);
                if is_of_next {
                    break;
                }
                return (Some(side), next + 1);
            }
            let word = self.word(next);
            let is_movement = matches!(&self.atoms.get(next).map(|atom| &atom.kind), Some(AtomKind::Movement(_)));
            if matches!(word, "it" | "them") {
                pronoun = Some(next);
            }
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
        if let Some(pronoun) = pronoun {
            return (self.moved_before(at), pronoun + 1);
        }
        if let Some(before) = at.checked_sub(1)
            && let Some(side) = self.side(before, PartRole::Joint)
        {
            return (Some(side), at + 1);
        }
        (None, at + 1)
    }

    /// What "it" or "them" behind a verb of movement stands for: the one joint or moved part that was named before.
    pub(super) fn moved_before(&self, at: usize) -> Option<Side> {
        let mut before: Vec<Side> = Vec::new();
        for place in 0..at {
            let Some(side) = self.side(place, PartRole::Joint) else { continue };
            if !before.iter().any(|known| known.what == side.what) {
                before.push(side);
            }
        }
        match before.as_slice() {
            [] => self.implied(PartRole::Joint, false).into_iter().next(),
            [one] => Some(one.clone()),
            _ => None,
        }
    }

    /// "rotates the arm medially": the adverb behind what is moved belongs to the verb.
    pub(super) fn with_adverb(&self, at: usize, end: usize, movement: &MovementWord) -> MovementWord {
        let verb = self.first_token(at);
        // "not laterally but medially"
        let is_corrected = self.word(end) == "not" && self.word(end + 2) == "but";
        let end = if is_corrected { end + 3 } else { end };
        let joined = format!("{verb} {}", self.word(end));
        match self.scope.relations.movement(&joined) {
            Some(found) if movement.form == MovementForm::Verb => MovementWord { movement: found, form: movement.form },
            _ => movement.clone(),
        }
    }

    /// The first word of an atom, as it is written.
    pub(super) fn first_token(&self, at: usize) -> &str {
        let token = self.atoms.get(at).and_then(|atom| self.scope.mentions.tokens.get(atom.from));
        token.map_or("", |token| token.span.of(&self.scope.plain.text))
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
