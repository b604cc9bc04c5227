//! Muscles that are described and not named: by what they do ("the extensors of the wrist", "the hip abductors"), or by
//! where they are ("the muscles on the front of the thigh", "no muscle of the forearm"). What is said of them is said of any
//! of them: it is contradicted only where it is so of none.

use fascicle_model::{EntryId, Kind, Relation, Role};

use super::atoms::AtomKind;
use super::sides::Side;
use super::{Object, Sentence};
use crate::claims::phrases::MovementForm;
use crate::claims::{Claim, ClaimKind, PartRole, What};
use crate::lexicon::{self, RelationWord};
use crate::moving::moved_joints;
use crate::words::lower;

/// How many atoms a description may have.
const LONGEST: usize = 9;

/// Muscles that are described.
pub(super) struct Described {
    /// Any of these.
    pub(super) side: Side,
    /// The atom behind it.
    pub(super) end: usize,
    /// "no muscle of", "none of the flexors of"
    pub(super) denied: bool,
    /// They are described by what they do, so that the author may count others among them.
    by_action: bool,
}

impl Sentence<'_, '_> {
    /// Claims of supply of muscles that are described.
    pub(super) fn described_supply(&self, at: usize, relation: &RelationWord, last: &[Side]) -> Vec<Claim> {
        let (before, negated, hedged) = self.before_verb(at);
        let (muscles, nerves) = match (relation.left, relation.right) {
            (PartRole::Muscle, PartRole::Nerve) => {
                let Some(object) = self.object_of(at + 1, PartRole::Nerve) else { return Vec::new() };
                let Some(described) = self.described_to(before) else { return Vec::new() };
                (described, object)
            }
            (PartRole::Nerve, PartRole::Muscle) => {
                let Some(described) = self.described_behind(at + 1) else { return Vec::new() };
                let nerves = self.subject(before, relation, last);
                if nerves.is_empty()
                    || !self.ends_clause(described.end) && !lexicon::is_exception(self.word(described.end))
                {
                    return Vec::new();
                }
                (described, Object::Meant(nerves))
            }
            _ => return Vec::new(),
        };
        self.supply_of_described(&muscles, &nerves, at, negated, hedged)
    }

    /// The claims that these nerves supply muscles that are described.
    pub(super) fn supply_of_described(
        &self,
        muscles: &Described,
        nerves: &Object,
        at: usize,
        negated: bool,
        hedged: bool,
    ) -> Vec<Claim> {
        // "does not supply the flexors" leaves open whether it supplies one of them.
        if negated || (muscles.denied && muscles.by_action && self.speaks_of_exceptions()) {
            return Vec::new();
        }
        let supplied = RelationWord {
            kind: ClaimKind::Supply,
            left: PartRole::Muscle,
            right: PartRole::Nerve,
            ..super::actions::action_relation()
        };
        let hedged = hedged || self.clause_hedged(at);
        let sides = match nerves {
            Object::Names(group) => self.sides(group, PartRole::Nerve),
            Object::Meant(sides) => sides.clone(),
            Object::Segments(..) => Vec::new(),
        };
        // Of several nerves each has its share of the muscles, and it is not told which.
        let shared = match sides.as_slice() {
            [first, .., last] if !muscles.denied => {
                let ids = sides.iter().flat_map(|side| side.what.entries().iter().copied()).collect();
                Some(Object::Meant(vec![Side { what: What::Entry(ids), span: first.span.cover(last.span) }]))
            }
            _ => None,
        };
        let mut claims = self.combine(
            &supplied,
            std::slice::from_ref(&muscles.side),
            shared.as_ref().unwrap_or(nerves),
            at,
            muscles.denied,
            hedged,
            muscles.denied,
        );
        for place in self.taken_out(at) {
            claims.extend(
                sides
                    .iter()
                    .filter_map(|nerve| self.exception_claim(&supplied, nerve, place, at, muscles.denied, hedged)),
            );
        }
        claims
    }

    /// The description that ends right before an atom.
    pub(super) fn described_to(&self, end: usize) -> Option<Described> {
        // "the muscles of the front of the arm (A, B and C) are"
        let is_open = |place: &usize| matches!(self.word(*place), "(" | "[");
        let closes = end.checked_sub(1).is_some_and(|last| matches!(self.word(last), ")" | "]"));
        let end = if closes { (0..end).rev().find(is_open)? } else { end };
        let starts = end.saturating_sub(LONGEST)..end;
        starts.into_iter().find_map(|start| self.described_from(start).filter(|described| described.end == end))
    }

    /// The description behind a verb, with the articles and adjectives before it.
    fn described_behind(&self, at: usize) -> Option<Described> {
        let mut place = at;
        while place < at + LONGEST {
            if let Some(described) = self.described_from(place) {
                return Some(described);
            }
            let word = self.word(place);
            let passes = lexicon::is_determiner(word)
                || lexicon::means_all(word)
                || lexicon::is_adverb(word)
                || lexicon::is_negation(word)
                || lexicon::is_muscle_noun(word)
                || lexicon::tells_part(word)
                || matches!(word, "none" | "any" | "most");
            if !passes || word.is_empty() {
                return None;
            }
            place += 1;
        }
        None
    }

    /// The description that begins at an atom, without what stands before its noun.
    pub(super) fn described_from(&self, at: usize) -> Option<Described> {
        let mut denied = false;
        let mut before = at;
        while let Some(place) = before.checked_sub(1) {
            let word = self.word(place);
            denied |= matches!(word, "no" | "none" | "neither");
            let passes = lexicon::is_determiner(word)
                || word == "of"
                || lexicon::tells_part(word)
                || lexicon::is_muscle_noun(word);
            if denied || !passes || word.is_empty() {
                break;
            }
            before = place;
        }
        let (ids, end, by_action) = self.movers_from(at, denied).map(|(ids, end)| (ids, end, true)).or_else(|| {
            let (ids, end) = self.muscles_at_place(at)?;
            Some((ids, end, false))
        })?;
        if ids.is_empty() {
            return None;
        }
        let side = Side { what: What::Entry(ids), span: self.source(at, end) };
        Some(Described { side, end, denied, by_action })
    }

    /// "flexors of the wrist and fingers", "hip abductors": the muscles that do it there.
    fn movers_from(&self, at: usize, with_helpers: bool) -> Option<(Vec<EntryId>, usize)> {
        let agent = |place: usize| match self.atoms.get(place).map(|atom| &atom.kind) {
            Some(AtomKind::Movement(movement)) if movement.form == MovementForm::Agent => {
                self.written(place).ends_with('s').then_some(movement.movement)
            }
            _ => None,
        };
        let mut movements = Vec::new();
        if let Some(place) = self.side(at, PartRole::Joint) {
            movements.push(agent(at + 1)?);
            return Some((self.who_do(&movements, &[place], with_helpers), at + 2));
        }
        let mut next = at;
        while let Some(movement) = agent(next) {
            movements.push(movement);
            next += 1;
            if lexicon::is_conjunction(self.word(next)) && agent(next + 1).is_some() {
                next += 1;
            }
        }
        let is_relative = matches!(self.word(at), "muscle" | "muscles") && lexicon::is_relative(self.word(at + 1));
        if let Some(AtomKind::Movement(movement)) = self.atoms.get(at + 2).map(|atom| &atom.kind)
            && is_relative
            && movement.form == MovementForm::Verb
        {
            // "muscles that extend the knee"
            movements.push(movement.movement);
            next = at + 3;
        } else if movements.is_empty() || !matches!(self.word(next), "of" | "at" | "in") {
            return None;
        } else {
            next += 1;
        }
        let mut places = Vec::new();
        let mut end = next;
        loop {
            while lexicon::is_determiner(self.word(next)) || lexicon::means_all(self.word(next)) {
                next += 1;
            }
            let Some(place) = self.side(next, PartRole::Joint) else { break };
            places.push(place);
            end = next + 1;
            next = end;
            if !lexicon::is_conjunction(self.word(next)) {
                break;
            }
            next += 1;
        }
        (!places.is_empty()).then(|| (self.who_do(&movements, &places, with_helpers), end))
    }

    /// The muscles that do one of these movements at one of these places: those that carry it, where several do and their
    /// helpers are not asked for.
    fn who_do(&self, movements: &[EntryId], places: &[Side], with_helpers: bool) -> Vec<EntryId> {
        let vocabulary = self.scope.vocabulary;
        let joints: Vec<_> = places.iter().map(|place| moved_joints(vocabulary, place.what.entries())).collect();
        let does = |relation: &Relation, chief: bool| match relation {
            Relation::Acts { movement, target, role } => {
                movements.contains(movement)
                    && (!chief || *role == Role::Prime)
                    && joints.iter().any(|joints| joints.holds(vocabulary, *target))
            }
            _ => false,
        };
        let who =
            |chief: bool| self.supplied_muscles(&|_, entry| entry.facts.iter().any(|fact| does(&fact.relation, chief)));
        let chief = who(true);
        let found = if with_helpers || chief.len() < 2 { who(false) } else { chief };
        // Where the vocabulary knows of one alone, the author may know of another.
        if found.len() > 1 { found } else { Vec::new() }
    }

    /// The muscles with a nerve for which something holds.
    fn supplied_muscles(&self, holds: &dyn Fn(EntryId, &fascicle_model::Entry) -> bool) -> Vec<EntryId> {
        let vocabulary = self.scope.vocabulary;
        let is_muscle = |id: EntryId, entry: &fascicle_model::Entry| {
            entry.kind == Kind::Muscle && !entry.variant && holds(id, entry) && !vocabulary.nerves_of(id).is_empty()
        };
        vocabulary.iter().filter(|(id, entry)| is_muscle(*id, entry)).map(|(id, _)| id).collect()
    }

    /// "muscles on the front of the thigh", "muscle of the forearm": those of a compartment, or of a region.
    fn muscles_at_place(&self, at: usize) -> Option<(Vec<EntryId>, usize)> {
        if !matches!(self.word(at), "muscle" | "muscles")
            || !matches!(self.word(at + 1), "of" | "on" | "in" | "at" | "along")
        {
            return None;
        }
        let vocabulary = self.scope.vocabulary;
        let mut end = at + 2;
        while end < at + LONGEST && self.mention(end).is_none() {
            let word = self.word(end);
            let passes = lexicon::is_determiner(word)
                || lexicon::is_preposition(word)
                || side_of_place(word).is_some()
                || lexicon::is_stretch(word);
            if !passes || word.is_empty() {
                return None;
            }
            end += 1;
        }
        let written: Vec<String> = (at + 2..=end)
            .flat_map(|place| self.written(place).split(' ').map(str::to_owned).collect::<Vec<_>>())
            .collect();
        let side = written.iter().find_map(|word| side_of_place(word));
        let region = written.last().map(|word| lower(word).into_owned())?;
        let found = |text: &str| -> Vec<EntryId> {
            self.scope
                .names
                .lookup(text)
                .iter()
                .map(|name| name.entry)
                .filter(|id| vocabulary.kind(*id) == Kind::Group)
                .collect()
        };
        if let Some(side) = side {
            let groups = found(&format!("{side} compartment of {region}"));
            Some((groups.into_iter().filter(|id| !vocabulary.members(*id).is_empty()).collect(), end + 1))
        } else {
            // A part of the body that gives a region its name, and no more than this part is named.
            let ids = self.mention(end)?.candidates.as_slice();
            let home = ids.iter().find(|id| {
                vocabulary.kind(**id) == Kind::Group
                    && vocabulary.members(**id).is_empty()
                    && vocabulary.entry(**id).region.word() == vocabulary.name(**id)
            })?;
            let region = vocabulary.entry(*home).region;
            Some((self.supplied_muscles(&|_, entry| entry.region == region), end + 1))
        }
    }
}

/// The trade's word for a side of a part of the body.
fn side_of_place(word: &str) -> Option<&'static str> {
    let everyday = lexicon::EVERYDAY_SIDES.iter().find(|(everyday, _)| *everyday == word).map(|(_, side)| *side);
    let told = ["anterior", "posterior", "medial", "lateral"].into_iter().find(|side| *side == word);
    told.or_else(|| everyday.filter(|side| matches!(*side, "anterior" | "posterior" | "medial" | "lateral")))
}
