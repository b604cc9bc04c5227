//! Statements of what passes a place, where it takes more than the words of a relation to read them: words of belonging
//! that are said of a canal, lists of unlike things ("the nerve, the artery and the tendon"), lists behind a colon, and
//! clauses that begin with the place ("Through the canal run …").

use fascicle_model::{EntryId, Kind};

use super::Sentence;
use super::actions::action_relation;
use super::atoms::AtomKind;
use super::kinds::passer_role;
use super::objects::Object;
use super::sides::Side;
use crate::claims::{Claim, ClaimKind, PartRole, What};
use crate::lexicon::{self, Form, RelationWord};
use crate::verdicts::is_enclosed;

impl Sentence<'_, '_> {
    /// What a relation is, where words of belonging are said of a place that encloses what passes it: "the ulnar nerve *lies
    /// in* the cubital tunnel", "the femoral triangle *contains* the femoral nerve".
    pub(super) fn of_passage(
        &self,
        at: usize,
        relation: &RelationWord,
        before: usize,
        object: &Object,
    ) -> RelationWord {
        let Object::Names(group) = object else { return *relation };
        let is_place = |members: &[usize]| {
            members.iter().all(|at| {
                self.mention(*at).is_some_and(|mention| {
                    mention.candidates.iter().all(|id| {
                        self.scope.vocabulary.kind(*id) == Kind::Landmark && is_enclosed(self.scope.vocabulary, *id)
                    })
                })
            })
        };
        // "The nerve *crosses* scalenus anterior": what is no joint is only passed.
        let is_no_joint = || {
            group.members.iter().all(|at| {
                let mention = self.mention(*at);
                mention.is_some_and(|mention| {
                    self.fits(PartRole::Landmark, &mention.candidates)
                        && !self.fits(PartRole::Joint, &mention.candidates)
                })
            })
        };
        if relation.kind == ClaimKind::Joint && relation.phrase.starts_with("crosses") && is_no_joint() {
            let (left, right) = (PartRole::Nerve, PartRole::Landmark);
            return RelationWord { kind: ClaimKind::Passage, left, right, ..*relation };
        }
        let is_of_belonging = relation.kind == ClaimKind::Membership && relation.form == Form::Verb;
        if is_of_belonging && relation.right == PartRole::Group && is_place(&group.members) {
            let (left, right) = (PartRole::Nerve, PartRole::Landmark);
            return RelationWord { kind: ClaimKind::Passage, left, right, ..*relation };
        }
        // A sinus *receives* a vein that never passes it.
        let may_hold = (is_of_belonging && relation.left == PartRole::Group)
            || (relation.kind == ClaimKind::Roots && self.written(at).contains("contain"));
        if may_hold && self.group_to(before).is_some_and(|group| is_place(&group.members)) {
            let (left, right) = (PartRole::Landmark, PartRole::Nerve);
            return RelationWord { kind: ClaimKind::Passage, left, right, ..*relation };
        }
        *relation
    }

    /// Nerves, vessels and tendons with which a sentence begins, of more than one kind: "The axillary nerve and the
    /// posterior circumflex humeral artery *leave* …". `None` where the subject is of one kind.
    pub(super) fn passers_from_start(&self, end: usize) -> Option<Vec<Side>> {
        let mut sides = Vec::new();
        let mut classes = Vec::new();
        for at in 0..end {
            match self.atoms.get(at)?.kind {
                AtomKind::Name(_) => {
                    classes.push(self.class(at));
                    sides.push(self.passer(at)?);
                }
                AtomKind::Word if self.joins_passers(at) => {}
                _ => return None,
            }
        }
        classes.dedup();
        (classes.len() > 1).then_some(sides)
    }

    /// The object of a verb that tells what a place lets through, with the names behind it that are of another kind.
    pub(super) fn with_all_passers(&self, relation: &RelationWord, object: Object) -> Object {
        let Object::Names(group) = &object else { return object };
        if relation.kind != ClaimKind::Passage || relation.right != PartRole::Nerve || group.denied {
            return object;
        }
        let Some(first) = group.members.first() else { return object };
        let sides = self.passers(*first);
        if sides.len() > group.members.len() { Object::Meant(sides) } else { object }
    }

    /// "Three nerves use the jugular foramen: A, B and C": what a noun for a kind announces stands behind a colon.
    pub(super) fn announced_behind(&self, before: usize, relation: &RelationWord, object: &Object) -> Vec<Side> {
        let Object::Names(group) = object else { return Vec::new() };
        let noun = before.checked_sub(1).map_or("", |place| self.word(place));
        let announced = lexicon::announces(noun) && noun.ends_with('s');
        if !announced || !matches!(self.word(group.end), ":" | "—" | "–") {
            return Vec::new();
        }
        let is_muscle = |side: &Side| match &side.what {
            What::Entry(ids) => self.fits(PartRole::Muscle, ids),
            _ => false,
        };
        let mut first = group.end + 1;
        while lexicon::is_determiner(self.word(first)) || lexicon::is_muscle_noun(self.word(first)) {
            first += 1;
        }
        let mut sides = self.passers(first);
        if relation.kind == ClaimKind::Attachment {
            sides.retain(is_muscle);
        }
        sides
    }

    /// "Through the triangular interval go A and B", "Behind the medial malleolus runs A": the preposition at an atom begins
    /// a clause, the place follows, then the verb and who does it.
    pub(super) fn inverted_passage(&self, at: usize) -> Vec<Claim> {
        let begins = at.checked_sub(1).is_none_or(|place| {
            let word = self.word(place);
            lexicon::begins_clause(word) || matches!(word, "," | "*" | "•" | "-") || lexicon::is_contrast(word)
        });
        if !begins {
            return Vec::new();
        }
        let behind = match (self.word(at), self.word(at + 1), self.word(at + 2)) {
            ("in", "front", "of") => at + 3,
            (_, "to", _) => at + 2,
            _ => at + 1,
        };
        let Some(Object::Names(places)) = self.object(behind) else { return Vec::new() };
        if places.members.iter().any(|place| !matches!(self.class(*place), Some(1 | 4))) {
            return Vec::new();
        }
        let mut next = places.end;
        let mut has_verb = false;
        while next < self.atoms.len() && self.mention(next).is_none() {
            let is_verb = match self.atoms.get(next).map(|atom| &atom.kind) {
                Some(AtomKind::Relation(relation)) => {
                    let moves = matches!(relation.kind, ClaimKind::Passage | ClaimKind::Branching);
                    relation.form == Form::Verb && (moves || lexicon::moves_on(&self.written(next)))
                }
                Some(AtomKind::Word) => lexicon::moves_on(self.word(next)),
                _ => return Vec::new(),
            };
            let word = self.word(next);
            let is_passed = lexicon::is_determiner(word)
                || lexicon::is_adverb(word)
                || lexicon::is_part_noun(word)
                || lexicon::is_muscle_noun(word)
                || lexicon::is_particle(word)
                || lexicon::is_auxiliary(word);
            if !is_verb && !is_passed {
                return Vec::new();
            }
            has_verb |= is_verb;
            next += 1;
        }
        if !has_verb {
            return Vec::new();
        }
        let sides = self.passers(next);
        let (left, right) = (PartRole::Landmark, PartRole::Nerve);
        let relation = RelationWord { kind: ClaimKind::Passage, left, right, ..action_relation() };
        let landmarks = self.sides(&places, PartRole::Landmark);
        self.combine(&relation, &landmarks, &Object::Meant(sides), at, false, self.clause_hedged(at), false)
    }

    /// "passes under A, *through B* and *between C and D*": what further prepositions tell of the way.
    pub(super) fn further_passages(&self, who: &[Side], from: usize, negated: bool, hedged: bool) -> Vec<Claim> {
        let (left, right) = (PartRole::Nerve, PartRole::Landmark);
        let relation = RelationWord { kind: ClaimKind::Passage, left, right, ..action_relation() };
        let mut claims = Vec::new();
        let mut at = from;
        loop {
            while lexicon::is_conjunction(self.word(at))
                || lexicon::is_adverb(self.word(at))
                || matches!(self.word(at), "then" | "down" | "up" | "on" | "out")
            {
                at += 1;
            }
            let (place, behind) = match (self.word(at), self.word(at + 1), self.word(at + 2)) {
                ("in", "front", "of") => (at + 1, at + 3),
                ("deep" | "superficial", "to", _) => (at, at + 2),
                (word, ..) if lexicon::tells_way(word) && word != "front" => (at, at + 1),
                _ => return claims,
            };
            let Some(Object::Names(group)) = self.object(behind) else { return claims };
            if group.members.iter().any(|member| !matches!(self.class(*member), Some(1 | 4)))
                || self.begins_predicate(group.end)
            {
                return claims;
            }
            at = group.end;
            claims.extend(self.combine(&relation, who, &Object::Names(group), place, negated, hedged, false));
        }
    }

    /// Nerves of which the words before an atom, or right behind the place that they pass, tell the side of the body: "*on the
    /// left* it hooks under A, *the right* under B", "under A *on the left*".
    pub(super) fn of_side(&self, who: &[Side], at: usize, end: Option<usize>) -> Vec<Side> {
        let ends = |place: &usize| matches!(self.word(*place), ";" | ":") || lexicon::is_contrast(self.word(*place));
        let start = (0..at).rev().find(ends).map_or(0, |place| place + 1);
        let is_side = |place: &usize| {
            let first = place.checked_sub(1).filter(|before| self.word(*before) == "the");
            matches!(self.word(*place), "left" | "right") && first.is_some() && self.word(place + 1) != "of"
        };
        // "under A on the left and under B": that side is told of A.
        let leads = |place: &usize| {
            let first = place - 1 - usize::from(*place > 1 && self.word(place - 2) == "on");
            let before = first.checked_sub(1).map_or("", |before| self.word(before));
            first == 0
                || lexicon::is_conjunction(before)
                || lexicon::begins_clause(before)
                || lexicon::is_contrast(before)
        };
        let behind = end.map(|end| end + 2).filter(|place| self.word(place - 2) == "on" && is_side(place));
        let before = || (start..at).rev().find(|place| is_side(place) && leads(place));
        let Some(side) = behind.or_else(before).map(|place| self.word(place)) else { return who.to_vec() };
        let vocabulary = self.scope.vocabulary;
        let of_side = |id: &EntryId| {
            let name = vocabulary.name(*id);
            let bare = name.strip_prefix("left ").or_else(|| name.strip_prefix("right "));
            let whole = vocabulary.entry(*id).part_of.filter(|_| bare.is_some()).unwrap_or(*id);
            let wanted = format!("{side} {}", bare.unwrap_or(name));
            vocabulary.parts(whole).iter().copied().find(|part| vocabulary.name(*part) == wanted).unwrap_or(*id)
        };
        let on_side = |who: &Side| match &who.what {
            What::Entry(ids) => Side { what: What::Entry(ids.iter().map(of_side).collect()), span: who.span },
            _ => who.clone(),
        };
        who.iter().map(on_side).collect()
    }

    /// The names of a list that begins at an atom, of whatever kind, as far as they can pass something; none if what begins
    /// behind the list is a clause of its last member.
    fn passers(&self, from: usize) -> Vec<Side> {
        let mut sides = Vec::new();
        let mut at = from;
        let mut last = from;
        while at < self.atoms.len() {
            at = self.behind_bracket(at);
            match self.atoms.get(at).map(|atom| &atom.kind) {
                Some(AtomKind::Name(_)) => {
                    let has_own_verb = self.begins_predicate(self.behind_bracket(at + 1));
                    let Some(side) = self.passer(at).filter(|_| !has_own_verb || sides.is_empty()) else { break };
                    last = at;
                    sides.push(side);
                }
                Some(AtomKind::Word) if self.joins_passers(at) => {}
                _ => break,
            }
            at += 1;
        }
        if self.begins_predicate(self.behind_bracket(last + 1)) { Vec::new() } else { sides }
    }

    /// A name as something that can pass a landmark.
    fn passer(&self, at: usize) -> Option<Side> {
        let side = self.side(at, PartRole::Structure)?;
        passer_role(self.scope.vocabulary, &side.what).map(|_| side)
    }

    /// Whether a word may stand between the names of a list of what passes.
    fn joins_passers(&self, at: usize) -> bool {
        let word = self.word(at);
        lexicon::is_conjunction(word)
            || lexicon::is_determiner(word)
            || lexicon::is_muscle_noun(word)
            || lexicon::is_part_noun(word)
            || lexicon::carries_list_on(word)
            || lexicon::means_all(word)
    }
}
