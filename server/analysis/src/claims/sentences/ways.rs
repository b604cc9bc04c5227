//! The way of a nerve, whatever verb of moving or lying tells it and whatever stands between that verb and the place: "dives
//! *with the artery* deep to the muscle and *then, hugging the bone,* swings round its neck", "you will find it in the canal".
//!
//! A place behind a preposition that no other claim has taken is passed by what the verb before it is said of. Who that is,
//! is asked from verb to verb, back to a name, a pronoun or the beginning of the sentence; what is not understood on that
//! way ends the attempt.

use fascicle_model::{EntryId, Kind};

use super::Sentence;
use super::actions::action_relation;
use super::atoms::AtomKind;
use super::groups::Group;
use super::objects::Object;
use super::side_of;
use super::sides::Side;
use crate::claims::{Claim, ClaimKind, Part, PartRole, What};
use crate::lexicon::{self, Form, RelationWord};
use crate::verdicts::is_enclosed;

/// How many verbs are gone back over to find who does it.
const VERBS: usize = 6;

/// How many atoms may stand between a verb and the place that it leads to.
const REACH: usize = 24;

/// Where a place is named that something passes.
struct Place {
    /// The atom that tells the side.
    told: usize,
    /// What is passed.
    object: Object,
}

impl Sentence<'_, '_> {
    /// The ways that the sentence tells and that are not among the claims read so far.
    pub(super) fn way_claims(&self, claims: &[Claim]) -> Vec<Claim> {
        let mut found: Vec<Claim> = Vec::new();
        for at in 0..self.atoms.len() {
            let Some(place) = self.place(at).filter(|place| !self.is_taken(&place.object, claims)) else { continue };
            let who = match self.atoms.get(at).map(|atom| &atom.kind) {
                Some(AtomKind::Relation(_)) => self.goer(at, VERBS),
                _ => self.leading_verb(at).map(|verb| self.goer_of(verb)).unwrap_or_default(),
            };
            let (left, right) = (PartRole::Nerve, PartRole::Landmark);
            let relation = RelationWord { kind: ClaimKind::Passage, left, right, ..action_relation() };
            let hedged = self.clause_hedged(at);
            let mut own = self.combine(&relation, &who, &place.object, place.told, false, hedged, false);
            if let Some(side) = self.side_told(&place) {
                for claim in &mut own {
                    claim.parts.retain(|part| part.role != PartRole::Role);
                    let span = self.source(place.told, place.told + 1);
                    claim.parts.push(Part { role: PartRole::Role, span, what: What::Word(side) });
                }
            }
            found.extend(own);
        }
        found
    }

    /// The side that a noun between a preposition and its place tells: "down *the front of* the muscle".
    fn side_told(&self, place: &Place) -> Option<&'static str> {
        let Object::Names(group) = &place.object else { return None };
        let first = group.members.first().copied()?;
        let noun = (place.told + 1..first).find(|at| lexicon::is_division(self.word(*at)))?;
        let words: Vec<String> = (place.told..=noun + 1).map(|at| self.written(at)).collect();
        lexicon::side_of_passage(&words.join(" "))
    }

    /// Whether a noun for a side stands between an atom and a place.
    fn tells_side(&self, from: usize, object: &Object) -> bool {
        let Object::Names(group) = object else { return false };
        let first = group.members.first().copied().unwrap_or(from);
        (from..first).any(|at| lexicon::is_division(self.word(at)))
    }

    /// "N does the same", "N goes that way too", "N takes the same course", "and N as well": the way told last, of N.
    pub(super) fn same_way_claims(&self, claims: &[Claim]) -> Vec<Claim> {
        let Some((who, at)) = (0..self.atoms.len()).find_map(|at| self.same_way_at(at)) else { return Vec::new() };
        let begins = self.source(0, at).start;
        let own: Vec<&Claim> = claims
            .iter()
            .filter(|claim| claim.span.start >= begins && claim.span.end <= self.source(at, at + 1).end)
            .collect();
        let told = if own.is_empty() { self.memory.told.iter().collect() } else { own };
        let is_way = |claim: &&&Claim| claim.kind == ClaimKind::Passage && !claim.negated;
        // The last place that is told to be passed; an opening rather than another.
        let place = |claim: &Claim| claim.entries(PartRole::Landmark).to_vec();
        let is_opening = |claim: &&&Claim| {
            let ids = place(claim);
            !ids.is_empty() && ids.iter().all(|id| is_enclosed(self.scope.vocabulary, *id))
        };
        let ways: Vec<&Claim> = told.iter().filter(is_way).copied().collect();
        let model = ways.iter().rev().find(is_opening).or(ways.last());
        let Some(model) = model else { return Vec::new() };
        let is_told = |side: &Side| {
            claims
                .iter()
                .any(|claim| claim.kind == ClaimKind::Passage && claim.parts.iter().any(|part| part.span == side.span))
        };
        let hedged = self.clause_hedged(at);
        let of = |side: Side| {
            let mut parts = model.parts.clone();
            let part = parts
                .iter_mut()
                .find(|part| matches!(part.role, PartRole::Nerve | PartRole::Muscle | PartRole::Structure))?;
            if part.what == side.what {
                return None;
            }
            *part = Part { role: PartRole::Nerve, span: side.span, what: side.what };
            let span = self.claim_span(at, side.span, side.span);
            Some(Claim { span, parts, hedged, block: self.scope.block, ..(*model).clone() })
        };
        who.into_iter().filter(|side| !is_told(side)).filter_map(of).collect()
    }

    /// Who is said at an atom to go the way that was told.
    fn same_way_at(&self, at: usize) -> Option<(Vec<Side>, usize)> {
        let word = self.word(at);
        let behind = |from: usize| {
            let mut end = from;
            while lexicon::repeats(self.word(end)) || matches!(self.word(end), "as" | "also") {
                end += 1;
            }
            self.ends_clause(end)
        };
        let is_same = match word {
            "same" => {
                let noun = self.word(at + 1);
                let is_way = lexicon::is_noun_of_way(noun);
                (is_way && behind(at + 2)) || behind(at + 1)
            }
            "so" => lexicon::repeats(self.word(at + 1)) && behind(at + 1),
            "this" | "that" => {
                matches!(self.word(at + 1), "way" | "route" | "course")
                    && lexicon::repeats(self.word(at + 2))
                    && behind(at + 2)
            }
            "too" | "likewise" => self.class(at.checked_sub(1)?) == Some(0) && self.ends_clause(at + 1),
            "as" => {
                self.word(at + 1) == "well" && self.class(at.checked_sub(1)?) == Some(0) && self.ends_clause(at + 2)
            }
            _ => return None,
        };
        if !is_same {
            return None;
        }
        let mut end = at;
        if self.class(at.checked_sub(1)?) != Some(0) {
            let mut verbs = 0;
            while let Some(place) = end.checked_sub(1) {
                let word = self.word(place);
                let first = self.first_token(place).to_lowercase();
                let is_verb = self.class(place).is_none()
                    && (lexicon::stands_for_verb(&first)
                        || lexicon::is_motion(&first)
                        || matches!(&*first, "takes" | "take" | "shares" | "share" | "follows" | "uses"));
                if is_verb {
                    verbs += 1;
                } else if !(lexicon::is_determiner(word)
                    || lexicon::is_adverb(word)
                    || lexicon::is_particle(word)
                    || matches!(word, "by" | "through" | "via" | "just"))
                {
                    break;
                }
                end = place;
            }
            if verbs == 0 {
                return None;
            }
        }
        let group = self.group_to(end)?;
        let first = group.members.first().copied()?;
        let is_fit = group.members.iter().all(|member| self.class(*member) == Some(0)) && !group.denied;
        let begins = self.preposition_of(first).is_none();
        (is_fit && begins).then(|| (self.sides(&group, PartRole::Nerve), at))
    }

    /// The place that the words from an atom on lead to.
    fn place(&self, at: usize) -> Option<Place> {
        if self.is_struck(at) {
            return None;
        }
        match &self.atoms.get(at)?.kind {
            AtomKind::Relation(relation) => {
                let leads = relation.kind == ClaimKind::Passage
                    && relation.left == PartRole::Nerve
                    && relation.form != Form::Noun
                    && relation.right == PartRole::Landmark;
                let object = self.passed(at + 1).filter(|_| leads)?;
                Some(Place { told: at, object })
            }
            AtomKind::Word => {
                let covers = |at: usize| self.word(at).is_empty() && self.written(at) == "cover of";
                let words = lexicon::place_words(at, &|at| if covers(at) { "cover of" } else { self.word(at) })?;
                let object = self.passed(at + words.len)?;
                let is_opening =
                    |side: &Side| side.what.entries().iter().all(|id| is_enclosed(self.scope.vocabulary, *id));
                let on_side = self.tells_side(at + words.len, &object);
                let fits = !words.opening_only || on_side || self.sides_of(&object).iter().all(is_opening);
                fits.then_some(Place { told: at + words.told, object })
            }
            _ => None,
        }
    }

    /// What is passed, behind a preposition or verb: landmarks or muscles, or one of the sentence before that a noun points at
    /// ("through *the tunnel*").
    fn passed(&self, from: usize) -> Option<Object> {
        match self.object(from) {
            Some(Object::Names(group)) => {
                let is_place = group.members.iter().all(|member| matches!(self.class(*member), Some(1 | 4)));
                let behind = self.word(group.end);
                let is_owner = behind == "'s"
                    || lexicon::changes_the_structure(behind)
                    || matches!(
                        behind,
                        "nerve" | "branch" | "branches" | "syndrome" | "syndromes" | "surgery" | "release"
                    );
                (is_place && !is_owner && !group.denied).then_some(Object::Names(group))
            }
            Some(_) => None,
            None => self.place_named_before(from).map(|side| Object::Meant(vec![side])),
        }
    }

    fn sides_of(&self, object: &Object) -> Vec<Side> {
        match object {
            Object::Names(group) => self.sides(group, PartRole::Landmark),
            Object::Meant(sides) => sides.clone(),
            Object::Segments(..) => Vec::new(),
        }
    }

    /// "the tunnel", "that foramen": the last place named before whose name has this noun.
    fn place_named_before(&self, from: usize) -> Option<Side> {
        let article = self.word(from);
        let last = from + 1 + usize::from(self.word(from + 1) == "same");
        let noun = self.word(last);
        if !(matches!(article, "the" | "this" | "that") && lexicon::is_noun_of_opening(noun)) {
            return None;
        }
        let own = (0..from).rev().filter_map(|at| self.subject_at(at));
        let mut named = own.chain(self.memory.named.iter().rev().cloned());
        named.find_map(|subject| {
            let side = side_of(self.scope.vocabulary, &subject, PartRole::Landmark)?;
            let is_called = |id: &EntryId| {
                self.scope.vocabulary.entry(*id).names.iter().any(|name| name.text.split(' ').any(|word| word == noun))
            };
            let has_noun = |id: &EntryId| match noun {
                "muscle" => self.scope.vocabulary.kind(*id) == Kind::Muscle,
                "opening" | "hole" | "gap" | "space" => is_enclosed(self.scope.vocabulary, *id),
                _ => is_called(id),
            };
            let is_meant = side.what.entries().iter().all(has_noun);
            is_meant.then(|| Side { span: self.source(from, last + 1), ..side })
        })
    }

    /// Whether another claim speaks of the place already.
    fn is_taken(&self, object: &Object, claims: &[Claim]) -> bool {
        let Object::Names(group) = object else { return false };
        let is_told = |member: &usize| {
            let span = self.source(*member, *member + 1);
            claims.iter().any(|claim| claim.span.contains(span) && claim.parts.iter().any(|part| part.span == span))
        };
        group.members.iter().any(is_told)
    }

    /// The verb that leads to the preposition at an atom: the next one before it, if it is one of moving.
    fn leading_verb(&self, at: usize) -> Option<usize> {
        let mut place = at;
        while place > 0 && at - place < REACH {
            place -= 1;
            let word = self.word(place);
            match &self.atoms.get(place)?.kind {
                AtomKind::Relation(relation) => {
                    if relation.form == Form::Noun {
                        return None;
                    }
                    let is_of_going = lexicon::is_motion(&self.first_token(place).to_lowercase());
                    let gives = relation.kind == ClaimKind::Branching && relation.left == PartRole::Parent;
                    return (is_of_going && !gives).then_some(place);
                }
                AtomKind::Movement(_) | AtomKind::Segments(_) => return None,
                AtomKind::Name(_) => {
                    let is_place = matches!(self.class(place), Some(1..=5));
                    if !is_place && !self.is_found(place) {
                        return None;
                    }
                    if self.is_found(place) {
                        return self.finder(place);
                    }
                }
                AtomKind::Word => {
                    if lexicon::is_negation(word)
                        || lexicon::is_relative(word)
                        || lexicon::is_contrast(word)
                        || lexicon::ends_way(word)
                    {
                        return None;
                    }
                    if matches!(word, "it" | "them") && self.is_found(place) {
                        return self.finder(place);
                    }
                    if self.goes(place) {
                        return Some(place);
                    }
                }
            }
        }
        None
    }

    /// Whether a verb of moving stands at an atom; behind an article it is a noun ("*the* course").
    fn goes(&self, at: usize) -> bool {
        let before = at.checked_sub(1).map_or("", |place| self.word(place));
        lexicon::is_motion(self.word(at)) && !matches!(before, "the" | "a" | "an" | "its" | "their" | "of")
    }

    /// Whether a verb of finding stands right before a name or pronoun.
    fn is_found(&self, at: usize) -> bool {
        self.finder(at).is_some()
    }

    fn finder(&self, at: usize) -> Option<usize> {
        let mut before = at.checked_sub(1)?;
        while lexicon::is_determiner(self.word(before)) {
            before = before.checked_sub(1)?;
        }
        lexicon::is_finding(self.word(before)).then_some(before)
    }

    /// What a verb at an atom is said of; what is found stands behind its verb.
    fn goer_of(&self, verb: usize) -> Vec<Side> {
        if lexicon::is_finding(self.word(verb)) {
            let mut behind = verb + 1;
            while lexicon::is_determiner(self.word(behind)) {
                behind += 1;
            }
            if matches!(self.word(behind), "it" | "them") {
                return self.possessor(behind, PartRole::Nerve, self.word(behind) == "them");
            }
            if self.class(behind) == Some(0) {
                return self
                    .group_from(behind, true)
                    .map(|group| self.sides(&group, PartRole::Nerve))
                    .unwrap_or_default();
            }
        }
        self.goer(verb, VERBS)
    }

    /// Who goes, asked from the verb at an atom back.
    pub(super) fn goer(&self, verb: usize, depth: usize) -> Vec<Side> {
        let Some(depth) = depth.checked_sub(1) else { return Vec::new() };
        let mut at = verb;
        loop {
            let Some(place) = at.checked_sub(1) else { return self.implied(PartRole::Nerve, false) };
            let word = self.word(place);
            match self.atoms.get(place).map(|atom| &atom.kind) {
                Some(AtomKind::Name(_)) => {
                    let Some(group) = self.group_to(at) else { return Vec::new() };
                    let first = group.members.first().copied().unwrap_or(place);
                    let Some(before) = self.preposition_of(first) else { return self.who(&group) };
                    if self.class(place) == Some(0) {
                        return Vec::new();
                    }
                    at = before;
                }
                Some(AtomKind::Word) => {
                    if lexicon::is_negation(word) || lexicon::asserts_nothing(word) {
                        return Vec::new();
                    } else if lexicon::is_relative(word) && place + 1 == at {
                        let before = place - usize::from(place > 0 && self.word(place - 1) == ",");
                        return self.group_to(before).map(|group| self.who(&group)).unwrap_or_default();
                    } else if matches!(word, "it" | "they") {
                        if self.has_unknown_subject(place) || self.memory.topic.is_vessel {
                            return Vec::new();
                        }
                        return self.possessor(place, PartRole::Nerve, word == "they");
                    } else if matches!(word, "this" | "these" | "latter") && place + 1 == at {
                        return self.recalled(PartRole::Nerve, false);
                    } else if lexicon::is_branch_noun(word)
                        && place
                            .checked_sub(1)
                            .is_some_and(|before| matches!(self.word(before), "'s" | "'" | "’s" | "’"))
                    {
                        return self.group_to(place - 1).map(|group| self.who(&group)).unwrap_or_default();
                    } else if lexicon::is_kind_noun(word) || word == "one" {
                        let points = place.checked_sub(1).is_some_and(|before| lexicon::points_back(self.word(before)));
                        let is_nerve = matches!(word, "nerve" | "nerves" | "one");
                        return if points && is_nerve {
                            self.possessor(place, PartRole::Nerve, word == "nerves")
                        } else {
                            Vec::new()
                        };
                    } else if let Some(side) = self.labelling(place) {
                        return vec![side];
                    } else if lexicon::is_bullet(word) {
                        return self.implied(PartRole::Nerve, false);
                    } else if lexicon::goes_on_with_subject(word) {
                        let Some(other) = self.verb_before(place) else {
                            return self.who_begins(place);
                        };
                        return self.goer(other, depth);
                    } else if lexicon::is_auxiliary(word)
                        || lexicon::is_adverb(word)
                        || lexicon::is_particle(word)
                        || lexicon::is_determiner(word)
                        || lexicon::is_manner(word)
                    {
                        at = place;
                    } else {
                        return Vec::new();
                    }
                }
                // "leaves A by *piercing* B"
                Some(AtomKind::Relation(other)) if other.kind == ClaimKind::Passage => return self.goer(place, depth),
                _ => return Vec::new(),
            }
        }
    }

    /// "Saphenous: …": the nerve whose name without its noun is all that stands before a colon.
    pub(super) fn labelling(&self, colon: usize) -> Option<Side> {
        let first = usize::from(lexicon::is_bullet(self.word(0)) || self.word(0) == "-");
        let is_colon = self.word(colon) == ":" && colon > first;
        self.bare_nerve(first).filter(|(_, end)| is_colon && *end == colon).map(|(side, _)| side)
    }

    /// A group as what goes somewhere: nerves, vessels whose way is known.
    fn who(&self, group: &Group) -> Vec<Side> {
        let is_fit = group.members.iter().all(|member| matches!(self.class(*member), Some(0 | 4)));
        if is_fit && !group.denied { self.sides(group, PartRole::Structure) } else { Vec::new() }
    }

    /// The preposition on which the name at an atom hangs.
    fn preposition_of(&self, at: usize) -> Option<usize> {
        let mut place = at.checked_sub(1)?;
        while lexicon::is_determiner(self.word(place))
            || lexicon::means_all(self.word(place))
            || lexicon::is_muscle_noun(self.word(place))
            || lexicon::is_before_object(self.word(place))
        {
            place = place.checked_sub(1)?;
        }
        // "the *continuation of* A": not A goes there, but what goes on with it.
        let goes_on = matches!(
            self.atoms.get(place).map(|atom| &atom.kind),
            Some(AtomKind::Relation(relation)) if relation.kind == ClaimKind::Renaming && relation.phrase.ends_with(" of")
        );
        (goes_on || lexicon::is_preposition(self.word(place)) || lexicon::tells_way(self.word(place))).then_some(place)
    }

    /// The last verb before an atom in its sentence.
    fn verb_before(&self, at: usize) -> Option<usize> {
        let ends = |place: &usize| matches!(self.word(*place), ";" | ":") || lexicon::is_contrast(self.word(*place));
        let start = (0..at).rev().find(ends).map_or(0, |place| place + 1);
        (start..at).rev().find(|place| match self.atoms.get(*place).map(|atom| &atom.kind) {
            Some(AtomKind::Relation(relation)) => relation.form != Form::Noun,
            Some(AtomKind::Movement(_)) => true,
            Some(AtomKind::Word) => self.goes(*place) || matches!(self.word(*place), "is" | "are" | "has" | "have"),
            _ => false,
        })
    }

    /// Whether a sentence whose first verb stands behind an atom begins with anything but a preposition, an adverb or a verb.
    fn begins_with_noun(&self, at: usize) -> bool {
        let first = (0..at).find(|place| !lexicon::is_bullet(self.word(*place)) && self.word(*place) != "-");
        first.is_some_and(|place| {
            let word = self.word(place);
            !(lexicon::is_preposition(word)
                || lexicon::tells_way(word)
                || lexicon::is_adverb(word)
                || lexicon::is_manner(word)
                || lexicon::is_particle(word)
                || lexicon::is_conjunction(word)
                || lexicon::is_motion(word)
                || matches!(word, "" | "then" | "still" | "once" | "having" | "when" | "while"))
        })
    }

    /// Who a sentence speaks of whose first verb stands behind an atom.
    fn who_begins(&self, at: usize) -> Vec<Side> {
        let ends = |place: &usize| matches!(self.word(*place), ";" | ":") || lexicon::is_contrast(self.word(*place));
        let start = (0..at).rev().find(ends).map_or(0, |place| place + 1);
        let names: Vec<usize> = (start..at).filter(|place| self.mention(*place).is_some()).collect();
        let is_free = |place: &&usize| self.preposition_of(**place).is_none();
        match names.iter().find(is_free) {
            Some(name) => self.group_from(*name, false).map(|group| self.who(&group)).unwrap_or_default(),
            // "Two roots, one from the lateral cord …": who it is has no name.
            None if start > 0 || self.begins_with_noun(at) => Vec::new(),
            None => self.implied(PartRole::Nerve, false),
        }
    }
}
