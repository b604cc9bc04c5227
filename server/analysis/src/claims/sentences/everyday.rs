//! Claims of movements in everyday words: "turns the sole inwards", "pulls the shoulder down", "spreads the fingers".
//!
//! The words can mean several movements; those stay that happen at what is moved (see [`crate::lexicon::ways`]). The claim
//! says that it was told in such words, so that it is judged with more patience.

use fascicle_model::EntryId;

use super::Sentence;
use super::atoms::AtomKind;
use super::sides::Side;
use crate::claims::phrases::MovementForm;
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
        self.done_by(at, &everyday, muscles, negated, hedged)
    }

    /// The claims that muscles do what everyday words say, to the side that is told.
    fn done_by(&self, at: usize, everyday: &Everyday, muscles: Vec<Side>, negated: bool, hedged: bool) -> Vec<Claim> {
        let side = self.body_side_told(at, &muscles).map_or("everyday", lexicon::BodySide::word);
        let role = Part { role: PartRole::Role, span: self.source(at, at + 1), what: What::Word(side) };
        let claim = |muscle| {
            let movements = everyday.movements.clone();
            let mut claim = self.action(at, muscle, movements, Some(&everyday.target), negated, hedged);
            claim.parts.push(role.clone());
            claim
        };
        muscles.into_iter().map(claim).collect()
    }

    /// "The foot is turned inwards by MUSCLE", "the thumb is carried across the palm by MUSCLE"
    pub(super) fn everyday_passive(&self, at: usize) -> Vec<Claim> {
        let words = self.written(at);
        let mut words = words.split(' ');
        let Some(manner) = words.next().and_then(ways::manner_done) else { return Vec::new() };
        let within = words.next().and_then(ways::way);
        let (before, negated, hedged) = self.before_verb(at);
        if before == at {
            return Vec::new();
        }
        let target = match before.checked_sub(1).map(|place| (place, self.word(place))) {
            Some((place, "it" | "they")) => self.moved_before(place),
            _ => self.group_to(before).and_then(|group| self.side(*group.members.last()?, PartRole::Joint)),
        };
        let Some(target) = target else { return Vec::new() };
        let (mut way, mut next) = (within, at + 1);
        while next < self.atoms.len() && !matches!(self.word(next), "by" | "through" | "," | "." | ";") {
            if let Some((told, end)) = self.way_at(next).filter(|_| way.is_none()) {
                (way, next) = (Some(told), end);
            } else {
                next += 1;
            }
        }
        if !matches!(self.word(next), "by" | "through") {
            return Vec::new();
        }
        let Some(everyday) = self.meaning(manner, way, target) else { return Vec::new() };
        let muscles = self.agents(next);
        self.done_by(at, &everyday, muscles, negated, hedged)
    }

    /// The side to which a movement is told, up to the next movement: "tilts the head *to the same side* and turns the face
    /// to the opposite side"; of a muscle of one side by that: "the *right* MUSCLE turns it *to the left*".
    pub(super) fn body_side_told(&self, at: usize, muscles: &[Side]) -> Option<lexicon::BodySide> {
        let moves = |place: usize| {
            matches!(&self.atoms.get(place).map(|atom| &atom.kind), Some(AtomKind::Movement(word)) if word.form == MovementForm::Verb)
                || ways::manner(self.word(place)).is_some()
        };
        let ends = |place: usize| {
            lexicon::ends_phrase(self.word(place))
                || (place > at + 1 && lexicon::is_conjunction(self.word(place - 1)) && moves(place))
        };
        let end = (at..self.atoms.len()).find(|place| ends(*place)).unwrap_or(self.atoms.len());
        let words: Vec<String> = (at..end).map(|place| self.written(place)).collect();
        let text = words.join(" ");
        if let Some(side) = lexicon::body_side(&text) {
            return Some(side);
        }
        let muscle = muscles.first().filter(|_| muscles.len() == 1)?;
        let is_muscle = |place: &usize| self.source(*place, *place + 1) == muscle.span;
        let name = (0..self.atoms.len()).find(is_muscle)?;
        let own = self.word(name.checked_sub(1)?);
        let told = ["left", "right"]
            .into_iter()
            .find(|side| text.contains(&format!("to the {side}")) || text.contains(&format!("{side}wards")))?;
        match own {
            "left" | "right" if own == told => Some(lexicon::BodySide::Same),
            "left" | "right" => Some(lexicon::BodySide::Opposite),
            _ => None,
        }
    }

    /// The way that begins at an atom, with the atom behind it.
    fn way_at(&self, at: usize) -> Option<(ways::Way, usize)> {
        let from = self.atoms.get(at)?.from;
        let tokens = &self.scope.mentions.tokens;
        let word = |place: usize| tokens.get(from + place).map_or("", |token| token.span.of(&self.scope.plain.text));
        if let Some((way, count)) = ways::way_to_place(&word) {
            let end = (at..self.atoms.len())
                .find(|place| self.atoms.get(*place).is_some_and(|atom| atom.from >= from + count));
            return Some((way, end.unwrap_or(self.atoms.len())));
        }
        ways::way(self.word(at)).map(|way| (way, at + 1))
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
            } else if let Some((told, end)) = self.way_at(next).filter(|_| way.is_none()) {
                way = Some(told);
                next = end - 1;
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
        self.meaning(manner, way, target?)
    }

    /// The movements that a manner and a way can mean of what is moved.
    fn meaning(&self, manner: ways::Manner, way: Option<ways::Way>, target: Side) -> Option<Everyday> {
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
        // What is turned is moved in one way alone: the thigh inwards is no adduction, though the eye's turning in is one.
        if manner == ways::Manner::Turn {
            movements.truncate(1);
        }
        if manner == ways::Manner::Lift && !movements.is_empty() {
            // "lifts the arm": its girdle turns with it
            let near = of_the_region(vocabulary, &joints);
            let turning = ways::LIFTED_WITH.iter().filter_map(|name| self.scope.relations.movement(name));
            let turning: Vec<EntryId> = turning.filter(|movement| happens_at(vocabulary, *movement, &near)).collect();
            if !turning.is_empty() {
                movements.extend(turning);
                target.what = What::Entry(joints.iter().chain(&near).copied().collect());
            }
        }
        (!movements.is_empty()).then_some(Everyday { movements, target })
    }
}
