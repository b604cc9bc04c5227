//! Clauses whose words stand in an unusual order, or in which no verb joins the two: what the names are tells which is
//! which. "By the axillary nerve is supplied deltoid." "Deltoid is by the axillary nerve innervated." "The first two are
//! median." "Innervation is by the axillary nerve."

use fascicle_model::Kind;

use super::Sentence;
use super::atoms::AtomKind;
use super::groups::Group;
use super::sides::Side;
use crate::claims::{Claim, ClaimKind, Part, PartRole, What};
use crate::lexicon::{self, Form, RelationWord};

/// The relation of a supply told with the muscle on the left.
const SUPPLIED: RelationWord = RelationWord {
    phrase: "",
    kind: ClaimKind::Supply,
    form: Form::Verb,
    left: PartRole::Muscle,
    right: PartRole::Nerve,
    example: "",
};

impl Sentence<'_, '_> {
    /// A claim of supply in a clause that names one row of nerves and one of muscles, and has no word that is not
    /// understood, whatever their order.
    pub(super) fn typed_supply(&self, at: usize) -> Vec<Claim> {
        let ends = |word: &str| matches!(word, ";" | ":" | "—" | "–" | "(" | ")" | ".") || lexicon::is_contrast(word);
        let start = (0..at).rev().find(|place| ends(self.word(*place))).map_or(0, |place| place + 1);
        let end = (at..self.atoms.len()).find(|place| ends(self.word(*place))).unwrap_or(self.atoms.len());
        let (mut nerves, mut muscles): (Option<Group>, Option<Group>) = (None, None);
        let mut pronoun = None;
        let mut place = start;
        while place < end {
            match self.atoms.get(place).map(|atom| &atom.kind) {
                Some(AtomKind::Name(_)) => {
                    let Some(group) = self.group_from(place, true) else { return Vec::new() };
                    let slot = match self.class(place) {
                        Some(0) => &mut nerves,
                        Some(1 | 2) => &mut muscles,
                        _ => return Vec::new(),
                    };
                    if slot.is_some() || group.denied || !group.except.is_empty() {
                        return Vec::new();
                    }
                    place = group.end.max(place + 1);
                    *slot = Some(group);
                    continue;
                }
                Some(AtomKind::Relation(other)) if place != at && other.kind != ClaimKind::Membership => {
                    return Vec::new();
                }
                Some(AtomKind::Word) => {
                    let word = self.word(place);
                    if lexicon::is_pronoun(word) {
                        pronoun = Some(word);
                    } else if !(lexicon::is_determiner(word)
                        || lexicon::is_adverb(word)
                        || lexicon::is_auxiliary(word)
                        || lexicon::is_muscle_noun(word)
                        || lexicon::is_part_noun(word)
                        || lexicon::means_all(word)
                        || lexicon::is_in_plain_clause(word))
                    {
                        return Vec::new();
                    }
                }
                Some(AtomKind::Relation(_)) => {}
                _ => return Vec::new(),
            }
            place += 1;
        }
        let Some(nerves) = nerves else { return Vec::new() };
        let left = match (muscles, pronoun) {
            (Some(group), _) => self.sides(&group, PartRole::Muscle),
            (None, Some(word)) => self.implied(PartRole::Muscle, lexicon::is_plural_pronoun(word)),
            (None, None) => return Vec::new(),
        };
        self.supply_of(&left, &self.sides(&nerves, PartRole::Nerve), at, false)
    }

    /// "The first two lumbricals are median", "gracilis is obturator": an adjective that names a nerve.
    pub(super) fn adjective_claims(&self, at: usize) -> Vec<Claim> {
        let mut next = at + 1;
        let mut negated = false;
        while lexicon::is_adverb(self.word(next))
            || lexicon::is_negation(self.word(next))
            || matches!(self.word(next), "a" | "an" | "all" | "both")
        {
            negated |= lexicon::is_negation(self.word(next));
            next += 1;
        }
        let mut nerves = Vec::new();
        while let Some((side, end)) = self.bare_nerve(next) {
            nerves.push(side);
            next = end;
            if matches!(self.word(next), "and" | "&" | "/") && self.bare_nerve(next + 1).is_some() {
                next += 1;
            }
        }
        if nerves.is_empty() || (negated && nerves.len() > 1) {
            return Vec::new();
        }
        while matches!(self.word(next), "one" | "ones" | "muscle" | "muscles") || lexicon::repeats(self.word(next)) {
            next += 1;
        }
        if !self.ends_clause(next) && self.word(next) != "like" {
            return Vec::new();
        }
        // "MUSCLE, that's a median one": the verb is part of the pronoun
        let is_joined = !lexicon::is_auxiliary(self.word(at));
        let before = if is_joined { at } else { self.before_verb(at + 1).0 };
        let left = self.subject(before, &SUPPLIED, &[]);
        if !left.is_empty() {
            return self.supply_of(&left, &nerves, at, negated);
        }
        // "The forehead is ophthalmic", "back of the forearm, that's radial": an area of skin.
        let end = before - usize::from(before > 0 && is_joined && self.word(before - 1) == ",");
        // "Back is sciatic": of a side alone it is not known what is meant, muscles or skin.
        let is_side = |word: &str| lexicon::EVERYDAY_SIDES.iter().any(|(everyday, _)| *everyday == word);
        if end.checked_sub(1).is_some_and(|last| is_side(self.word(last))) {
            return Vec::new();
        }
        // "The tongue is hypoglossal": what has muscles that are named after it may mean these.
        let has_muscles = |group: &Group| !self.muscle_sides(group).is_empty();
        if self.group_to(end).is_some_and(|group| has_muscles(&group)) {
            return Vec::new();
        }
        self.felt(at, &nerves, &self.areas_to(end), negated, false)
    }

    /// "Innervation is by the axillary nerve", "its nerve is the axillary": the muscle is the one spoken of.
    pub(super) fn noun_of_implied(&self, at: usize) -> Vec<Claim> {
        let word = self.word(at);
        if !(lexicon::is_supply_noun(word) || (word.is_empty() && lexicon::is_supply_noun(&self.written(at)))) {
            return Vec::new();
        }
        let mut before = at;
        while before.checked_sub(1).is_some_and(|place| matches!(self.word(place), "motor" | "nerve" | "muscular")) {
            before -= 1;
        }
        let owner = before.checked_sub(1).map_or("", |place| self.word(place));
        let first = match owner {
            "its" | "their" | "the" => before - 1,
            _ => before,
        };
        let begins = first.checked_sub(1).is_none_or(|place| self.begins_clause_at(place));
        // "deltoid's nerve is"
        let named = before
            .checked_sub(1)
            .filter(|place| self.is_possessive(*place) && matches!(self.class(*place), Some(1 | 2)));
        let is_own = matches!(owner, "its" | "their") || named.is_some();
        if !begins && !is_own {
            return Vec::new();
        }
        let (mut next, mut linked, mut negated) = (at + 1, false, false);
        loop {
            let word = self.word(next);
            if lexicon::is_value_sign(word) {
                return Vec::new(); // a label
            } else if lexicon::is_link(word) || lexicon::links_supply(word) {
                linked = true;
            } else if lexicon::is_negation(word) {
                negated = true;
            } else if let Some(AtomKind::Relation(relation)) = self.atoms.get(next).map(|atom| &atom.kind) {
                // "… is derived from", "… it receives from"; yet a nerve that arises is no supply that does
                if word.is_empty() && owner == "the" && self.word(at) == "nerve" {
                    return Vec::new();
                }
                if !matches!(relation.kind, ClaimKind::Branching | ClaimKind::Supply | ClaimKind::Roots) {
                    return Vec::new();
                }
                linked = true;
            } else if !(lexicon::is_adverb(word) || lexicon::is_determiner(word) || lexicon::is_in_plain_clause(word)) {
                break;
            }
            next += 1;
        }
        if !linked || self.class(next) != Some(0) {
            return Vec::new();
        }
        let Some(group) = self.group_from(next, true) else { return Vec::new() };
        let left = if let Some(named) = named {
            self.group_to(named + 1).map(|group| self.sides(&group, PartRole::Muscle)).unwrap_or_default()
        } else if is_own {
            self.possessor(first, PartRole::Muscle, owner == "their")
        } else {
            self.implied(PartRole::Muscle, false)
        };
        self.supply_of(&left, &self.sides(&group, PartRole::Nerve), at, negated)
    }

    /// Whether a word that may be a verb stands as a noun does ("its *supply*").
    pub(super) fn is_noun(&self, at: usize) -> bool {
        at.checked_sub(1).is_none_or(|place| {
            let word = self.word(place);
            lexicon::is_determiner(word) || matches!(word, "motor" | "nerve" | "muscular" | "nervous")
        })
    }

    fn begins_clause_at(&self, before: usize) -> bool {
        let word = self.word(before);
        lexicon::begins_clause(word) || lexicon::is_bullet(word) || lexicon::is_contrast(word)
    }

    /// Claims that nerves supply muscles, where the muscles are known by their names alone.
    fn supply_of(&self, muscles: &[Side], nerves: &[Side], at: usize, negated: bool) -> Vec<Claim> {
        let is_muscle = |side: &&Side| matches!(&side.what, What::Entry(ids) if ids.iter().all(|id| matches!(self.scope.vocabulary.kind(*id), Kind::Muscle | Kind::Group)));
        let hedged = self.clause_hedged(at);
        let mut claims = Vec::new();
        for muscle in muscles.iter().filter(is_muscle) {
            for nerve in nerves {
                let parts = vec![
                    Part { role: PartRole::Muscle, span: muscle.span, what: muscle.what.clone() },
                    Part { role: PartRole::Nerve, span: nerve.span, what: nerve.what.clone() },
                ];
                let span = self.claim_span(at, muscle.span, nerve.span);
                claims.push(Claim { span, parts, negated, hedged, ..self.empty_claim(ClaimKind::Supply) });
            }
        }
        claims
    }

    /// A claim of a kind, without parts, in this block.
    pub(super) fn empty_claim(&self, kind: ClaimKind) -> Claim {
        Claim {
            kind,
            span: crate::text::Span::default(),
            parts: Vec::new(),
            negated: false,
            hedged: false,
            all: false,
            block: self.scope.block,
            key: None,
        }
    }
}
