//! What a lesion is of: "injury to NERVE", "a NERVE palsy", "when NERVE is cut", "with NERVE gone", "a C5 lesion"; and where
//! along the nerve it sits ("at the wrist").

use fascicle_model::{EntryId, Kind};

use super::Sentence;
use super::atoms::{Atom, AtomKind};
use super::sides::{Side, side_of};
use crate::claims::signs::held;
use crate::claims::{PartRole, What};
use crate::lexicon::{self, Form, RelationWord};

/// The nerves of a lesion and the atoms that speak of it.
pub(super) struct Cause {
    pub(super) nerves: Vec<Side>,
    pub(super) from: usize,
    pub(super) to: usize,
    /// The landmark at which the nerve is hurt.
    pub(super) level: Option<Side>,
    /// Something before has said that only a part of the nerve, or only its lower course, is hurt.
    pub(super) is_partial: bool,
}

/// Marks between a nerve and what is lost with it, or between a sign and its nerve.
fn is_mark_of_value(word: &str) -> bool {
    matches!(word, ":" | "—" | "–" | "-" | "→" | "->" | "=")
}

impl Sentence<'_, '_> {
    /// Where a sentence that speaks of several lesions falls into clauses with one each: "A lesion of S1 abolishes the one jerk,
    /// an L4 lesion the other".
    pub(super) fn clauses_of_lesions(&self) -> Vec<(usize, usize)> {
        let causes = self.causes();
        if causes.len() < 2 {
            return Vec::new();
        }
        let divides =
            |at: &usize| matches!(self.word(*at), "," | ";" | "and" | ".") || lexicon::is_contrast(self.word(*at));
        let mut clauses = Vec::new();
        let mut start = 0;
        for pair in causes.windows(2) {
            let [one, other] = pair else { continue };
            let strong = |at: &usize| self.word(*at) == ";" || lexicon::is_contrast(self.word(*at));
            let between = || (one.to..other.from.max(one.to)).rev();
            let Some(cut) = between().find(strong).or_else(|| between().find(divides)) else { return Vec::new() };
            clauses.push((start, cut));
            start = cut + 1;
        }
        clauses.push((start, self.atoms.len()));
        clauses
    }

    /// A stretch of the sentence as one of its own.
    pub(super) fn part(&self, from: usize, to: usize) -> Self {
        Self { atoms: self.atoms.get(from..to).unwrap_or_default(), ..*self }
    }

    /// The lesion that the sentence speaks of; `None` if it speaks of none or of several.
    pub(super) fn cause(&self) -> Option<Cause> {
        let speaks_of_lesion = |atom: &Atom| {
            let word = &*atom.word;
            lexicon::is_lesion(word)
                || lexicon::lesions(word)
                || lexicon::is_cut(word)
                || lexicon::is_failing(word)
                || lexicon::points_to(word)
                || lexicon::hurts(word)
                || lexicon::names_lesion(word)
                || lexicon::hurts_by_pressing(word)
                || matches!(word, "out" | "points" | "point" | "think" | "typical" | "characteristic")
                || matches!(atom.kind, AtomKind::Relation(relation) if relation.form == Form::Participle)
        };
        // Few sentences have a value behind a mark; the rest need no look at signs by which they may begin.
        let has_value = self.atoms.iter().any(|atom| is_mark_of_value(&atom.word));
        if let Some(cause) = has_value.then(|| self.labelled_cause()).flatten() {
            return Some(cause);
        }
        let is_hurting = |at: usize| {
            let is_movement = matches!(
                self.atoms.get(at).map(|atom| &atom.kind),
                Some(AtomKind::Movement(_) | AtomKind::Relation(RelationWord { form: Form::Verb, .. }))
            );
            is_movement && (lexicon::hurts(&self.written(at)) || lexicon::is_cut(&self.written(at)))
        };
        let speaks = self.atoms.iter().any(speaks_of_lesion) || (0..self.atoms.len()).any(is_hurting);
        if !speaks && (!has_value || self.sign_at(0).is_none()) {
            return self.cause_before();
        }
        let mut causes = self.causes();
        match causes.len() {
            0 => {
                let own = self.named_cause().or_else(|| self.implied_cause());
                own.or_else(|| self.only_cause()).or_else(|| self.cause_before())
            }
            1 => causes.pop(),
            _ => None,
        }
    }

    /// Whether a noun that may mean a branch means a lesion ("*Division* of the nerve"): the sentence begins with it and tells of a
    /// loss.
    pub(super) fn is_cutting(&self, at: usize) -> bool {
        at == 0
            && lexicon::is_lesion(&self.first_token(at).to_lowercase())
            && (1..self.atoms.len()).any(|place| self.loss_at(place) > 0 || self.spared_at(place) > 0)
    }

    /// The lesions that the sentence names, in order.
    fn causes(&self) -> Vec<Cause> {
        let mut causes: Vec<Cause> = Vec::new();
        let mut at = 0;
        while at < self.atoms.len() {
            let found = self.cause_at(at).filter(|(nerves, ..)| !nerves.is_empty());
            let Some((nerves, from, to)) = found else {
                at += 1;
                continue;
            };
            let (level, end) = self.level(to);
            causes.push(Cause { nerves, from, to: end, level, is_partial: false });
            at = end;
        }
        causes
    }

    /// "NERVE: wrist drop", "NERVE at the wrist: the fingers cannot be spread": a head that names one nerve, and behind its mark
    /// what is lost with it.
    fn labelled_cause(&self) -> Option<Cause> {
        let mark = (0..self.atoms.len()).find(|at| is_mark_of_value(self.word(*at)))?;
        let first =
            (0..mark).find(|at| !lexicon::is_determiner(self.word(*at)) && !lexicon::is_bullet(self.word(*at)))?;
        let named = (first..mark).find(|at| self.class(*at) == Some(0));
        let (nerves, from, to) = match named {
            Some(at) => {
                let group = self.group_from(at, true)?;
                (self.sides(&group, PartRole::Nerve), at, group.end)
            }
            None => self.bare_nerve(first).map(|(side, end)| (vec![side], first, end))?,
        };
        let is_other = |at: usize| {
            matches!(self.class(at), Some(0..=2))
                || lexicon::asserts_nothing(self.word(at))
                || matches!(self.atoms.get(at).map(|atom| &atom.kind), Some(AtomKind::Segments(_)))
        };
        if nerves.is_empty() || to > mark || (first..from).chain(to..mark).any(is_other) {
            return None;
        }
        let begins =
            |at: usize| self.sign_at(at).is_some() || self.loss_at(at) > 0 || lexicon::is_numbness(self.word(at));
        let has_head_of_lesion = (first..mark).any(|at| {
            let word = self.word(at);
            lexicon::is_lesion(word) || lexicon::is_cut(word) || lexicon::is_injury(word)
        });
        let tells = begins(mark + 1)
            || ((has_head_of_lesion || self.scope.of_lesions)
                && (mark + 2..self.atoms.len()).any(|at| begins(at) || lexicon::is_state_of_loss(self.word(at))));
        let (level, _) = self.level(to);
        let is_partial = mark > to;
        tells.then_some(Cause { nerves, from: first, to: mark + 1, level, is_partial })
    }

    /// "It also paralyses MUSCLE", "The patient cannot …", "The foot drops": the lesion of the sentence before.
    fn cause_before(&self) -> Option<Cause> {
        let is_known = !self.memory.lesion.is_empty();
        let nerves = if is_known { self.memory.lesion.clone() } else { self.lesion_above() };
        if nerves.is_empty() {
            return None;
        }
        let cause = |from: usize, to: usize| {
            let level = self.memory.lesion_at.clone().filter(|_| is_known);
            // A heading may tell a place beside the nerve.
            Cause { nerves, from, to, level, is_partial: !is_known || self.memory.lesion_of_part }
        };
        // "In people it also …"
        if let Some(pronoun) = (0..3).find(|at| matches!(self.word(*at), "it" | "this")) {
            let verb = (pronoun + 1..self.atoms.len())
                .find(|at| !lexicon::is_adverb(self.word(*at)) && !lexicon::is_auxiliary(self.word(*at)))?;
            let word = self.word(verb);
            let takes = lexicon::is_loss(word)
                || lexicon::is_spared(word)
                || lexicon::brings_about(word)
                || lexicon::leaves(word);
            if takes {
                return Some(cause(pronoun, pronoun + 1));
            }
        }
        if self.tells_of_muscle_palsy() {
            return None;
        }
        // What goes on about the same lesion names no nerve, and brings nothing about.
        let is_other = |at: usize| {
            let word = self.word(at);
            matches!(self.class(at), Some(0))
                || (lexicon::is_lesion(word) && !lexicon::is_loss(word))
                || lexicon::brings_about(word)
                || (lexicon::is_condition(word) && !(word == "with" && self.loss_at(at + 1) > 0))
                || lexicon::is_contrast(word)
                || lexicon::points_to(word)
                || matches!(self.atoms.get(at).map(|atom| &atom.kind), Some(AtomKind::Segments(_)))
                || word == "unlike"
        };
        if (0..self.atoms.len()).any(is_other) {
            return None;
        }
        Some(cause(0, 0))
    }

    /// "*Trapezius palsy* also lets the scapula wing": another lesion than the one that is spoken of, told by the muscle.
    pub(super) fn tells_of_muscle_palsy(&self) -> bool {
        (0..self.atoms.len()).any(|at| {
            let verb = (at + 2..self.atoms.len())
                .find(|at| !lexicon::is_adverb(self.word(*at)) && !lexicon::is_hedge(self.word(*at)));
            self.class(at) == Some(1)
                && lexicon::is_lesion(self.word(at + 1))
                && verb.is_some_and(|verb| {
                    let word = self.word(verb);
                    lexicon::brings_about(word) || matches!(word, "lets" | "allows" | "can" | "alone" | "does")
                })
        })
    }

    /// The nerve that a sentence stands under where that speaks of lesions: "Axillary nerve injury", and below it "abduction
    /// of the arm is weak".
    fn lesion_above(&self) -> Vec<Side> {
        let nearest = self.scope.subjects.first().filter(|_| self.scope.of_lesions);
        nearest.and_then(|subject| side_of(self.scope.vocabulary, subject, PartRole::Nerve)).into_iter().collect()
    }

    /// "Which nerve? The femoral.": the nerve that a sentence names, and nothing else.
    pub(super) fn bare_answer(&self) -> Option<Cause> {
        let at = (0..self.atoms.len())
            .find(|at| !lexicon::is_determiner(self.word(*at)) && !lexicon::opens_answer(self.word(*at)))?;
        self.mention(at)?;
        let group = self.group_from(at, true)?;
        let nerves = self.sides(&group, PartRole::Nerve);
        (!nerves.is_empty() && self.ends_clause(group.end) && group.end + 2 > self.atoms.len()).then_some(Cause {
            nerves,
            from: at,
            to: group.end,
            level: None,
            is_partial: false,
        })
    }

    /// "In carpal tunnel syndrome the thenar muscles waste": the lesion that goes by a name of its own.
    fn named_cause(&self) -> Option<Cause> {
        let vocabulary = self.scope.vocabulary;
        let mut causes = (0..self.atoms.len()).filter_map(|at| {
            let found =
                self.sign_at(at).filter(|found| found.sign.rsplit(' ').next().is_some_and(lexicon::names_lesion))?;
            let owners: Vec<(EntryId, Option<EntryId>)> = held(vocabulary)
                .filter(|(_, sign, _)| *sign == found.sign)
                .map(|(owner, _, place)| (owner, place))
                .collect();
            let to = self.behind_words(at, found.len);
            let span = self.source(at, to);
            let nerves = owners.iter().map(|(owner, _)| *owner).collect();
            let place = owners.first().and_then(|(_, place)| *place).filter(|_| owners.len() == 1);
            let level = place.map(|place| Side { what: What::Entry(vec![place]), span });
            let nerves = vec![Side { what: What::Entry(nerves), span }];
            Some(Cause { nerves, from: at, to, level, is_partial: false })
        });
        let first = causes.next()?;
        causes.next().is_none().then_some(first)
    }

    /// "Damage causes a claw hand": the nerve of which the text speaks.
    fn implied_cause(&self) -> Option<Cause> {
        let is_block = |at: usize| {
            let before = at.checked_sub(1).map_or("", |place| self.word(place));
            self.word(at) == "block" && lexicon::is_determiner(before)
        };
        let injuries: Vec<usize> =
            (0..self.atoms.len()).filter(|at| lexicon::is_injury(self.word(*at)) || is_block(*at)).collect();
        let [at] = *injuries else { return None };
        let names_a_nerve = (0..self.atoms.len()).any(|at| self.side(at, PartRole::Nerve).is_some());
        // "a *trapezius* palsy" is not one of the nerve that was spoken of.
        let is_another = at
            .checked_sub(1)
            .is_some_and(|place| matches!(self.word(place), "other" | "another") || self.class(place) == Some(1));
        if names_a_nerve || is_another || lexicon::is_before_injured(self.word(at + 1)) {
            return None;
        }
        let nerves = self.implied(PartRole::Nerve, false);
        let (level, to) = self.level(at + 1);
        (nerves.len() == 1).then_some(Cause { nerves, from: at, to, level, is_partial: false })
    }

    fn cause_at(&self, at: usize) -> Option<(Vec<Side>, usize, usize)> {
        let word = self.word(at);
        let before = at.checked_sub(1).map_or("", |before| self.word(before));
        if let Some(found) = self.hurt_by(at) {
            return Some(found);
        }
        // "Division of", which may also be a branch of
        if matches!(self.atoms.get(at)?.kind, AtomKind::Relation(_)) {
            // "after *high* division of"
            let how = at.checked_sub(1).filter(|_| lexicon::is_level(before) || lexicon::is_before_division(before));
            let before = how.map_or(before, |place| place.checked_sub(1).map_or("", |place| self.word(place)));
            let begins = at == 0
                || how == Some(0)
                || lexicon::is_determiner(before)
                || lexicon::is_preposition(before)
                || lexicon::is_condition(before);
            let first = self.first_token(at).to_lowercase();
            let group = (begins && first != "divisions" && lexicon::is_lesion(&first)).then(|| {
                let next = (at + 1..at + 4).find(|place| !lexicon::is_determiner(self.word(*place)))?;
                self.group_from(next, true)
            })??;
            return Some((self.sides(&group, PartRole::Nerve), at, group.end));
        }
        if let Some(found) = self.told_to_be(at) {
            return Some(found);
        }
        if lexicon::is_lesion(word) || lexicon::lesions(word) {
            let mut next = at + 1;
            while lexicon::is_determiner(self.word(next))
                || lexicon::means_all(self.word(next))
                || (lexicon::is_lesion(word) && lexicon::is_before_injured(self.word(next)))
            {
                next += 1;
            }
            if next > at + 1 && lexicon::is_kind_noun(self.word(next)) && lexicon::points_back(self.word(next - 1)) {
                return Some((self.implied(PartRole::Nerve, false), at, next + 1));
            }
            if (next > at + 1 || lexicon::lesions(word)) && self.mention(next).is_some() {
                let group = self.group_from(next, true)?;
                return Some((self.sides(&group, PartRole::Nerve), at, group.end));
            }
            // "pressure of a plaster on the nerve"
            let mut on = next;
            let ends = |place: usize| {
                let word = self.word(place);
                matches!(word, "on" | "to" | "," | ";" | ".") || lexicon::is_lesion(word) || lexicon::points_to(word)
            };
            while on < at + 7 && self.class(on) != Some(0) && !ends(on) {
                on += 1;
            }
            if next > at + 1 && on > next && matches!(self.word(on), "on" | "to") {
                let nerve = (on + 1..on + 4).find(|place| !lexicon::is_determiner(self.word(*place)))?;
                let group = self.mention(nerve).and_then(|_| self.group_from(nerve, true));
                let nerves = group.as_ref().map(|group| self.sides(group, PartRole::Nerve)).unwrap_or_default();
                if let Some(group) = group.filter(|_| !nerves.is_empty()) {
                    return Some((nerves, at, group.end));
                }
            }
            if let Some(roots) = self.roots_at(next).filter(|_| next > at + 1 || lexicon::lesions(word)) {
                return Some((vec![roots], at, next + 1));
            }
            let is_its = lexicon::is_lesion_of_last(before)
                || (lexicon::is_determiner(before)
                    && at.checked_sub(2).is_some_and(|place| self.word(place) == "such"));
            return is_its.then(|| (self.implied(PartRole::Nerve, false), at, at + 1));
        }
        if let Some(roots) = self.roots_at(at) {
            let noun = at + 1 + usize::from(lexicon::is_segment_noun(self.word(at + 1)));
            if lexicon::is_lesion(self.word(noun)) {
                return Some((vec![roots], at, noun + 1));
            }
            if let Some(found) = self.pointed_at(at) {
                return Some(found);
            }
            let is_with = at.checked_sub(1).is_some_and(|place| self.word(place) == "with");
            return self.hurt(noun, is_with).map(|end| (vec![roots], at, end));
        }
        // "an axillary nerve lesion", "ulnar palsy"
        let lesion_follows = (at + 1..at + 5).any(|place| lexicon::is_lesion(self.word(place)));
        let bare = if word.is_empty() || !lesion_follows { None } else { self.bare_nerve(at) };
        if let Some((side, end)) = bare
            && lexicon::is_lesion(self.word(end))
        {
            return Some((vec![side], at, end + 1));
        }
        // "Cut there: …"
        if at == 0 && lexicon::is_cut(word) && matches!(self.word(at + 1), "there" | "here" | ":") {
            return Some((self.implied(PartRole::Nerve, false), at, at + 2));
        }
        // "when *the nerve is damaged*"
        if word == "nerve" && matches!(before, "the" | "this") {
            let end = self.hurt(at + 1, false)?;
            return Some((self.implied(PartRole::Nerve, false), at, end));
        }
        // "when it is cut"
        if matches!(word, "it" | "they") {
            let end = self.hurt(at + 1, false)?;
            return Some((self.implied(PartRole::Nerve, word == "they"), at, end));
        }
        if let Some(found) = self.pointed_at(at) {
            return Some(found);
        }
        self.mention(at)?;
        let group = self.group_from(at, true)?;
        let nerves = self.sides(&group, PartRole::Nerve);
        if lexicon::is_lesion(self.word(group.end)) {
            return Some((nerves, at, group.end + 1));
        }
        // "when the nerve is cut", "with the nerve gone"
        let mut with = at.checked_sub(1);
        while with.is_some_and(|place| lexicon::is_determiner(self.word(place))) {
            with = with.and_then(|place| place.checked_sub(1));
        }
        let is_with = with.is_some_and(|place| self.word(place) == "with");
        let end = self.hurt(group.end, is_with)?;
        Some((nerves, at, end))
    }

    /// "A fracture *damages* NERVE", "*knock* out NERVE", "an *injured* NERVE": a verb or an adjective right before the nerve.
    fn hurt_by(&self, at: usize) -> Option<(Vec<Side>, usize, usize)> {
        // "compresses" is a movement as well, "involves" is said of joints
        let movement = match self.atoms.get(at)?.kind {
            AtomKind::Movement(_) => self.written(at),
            AtomKind::Relation(relation) if relation.form == Form::Verb => self.written(at),
            _ => String::new(),
        };
        let word = if movement.is_empty() { self.word(at) } else { &*movement };
        let before = at.checked_sub(1).map_or("", |before| self.word(before));
        let is_adjective = lexicon::is_cut(word) && (lexicon::is_determiner(before) || before == "with" || at == 0);
        // "a knife *severed* the nerve"
        let is_past = lexicon::is_cut(word)
            && !is_adjective
            && lexicon::is_determiner(self.word(at + 1))
            && !lexicon::is_auxiliary(before)
            && !lexicon::is_adverb(before);
        let presses = lexicon::hurts_by_pressing(word) && matches!(self.word(at + 1), "on" | "upon" | "against");
        if !is_adjective && !is_past && !presses && !lexicon::hurts(word) {
            return None;
        }
        let mut next = at + 1 + usize::from(presses);
        while !is_adjective && (lexicon::is_determiner(self.word(next)) || matches!(self.word(next), "out" | "off")) {
            next += 1;
        }
        // "Erb's palsy *involves* C5 and C6"
        if let Some(roots) = self.roots_at(next).filter(|_| !is_adjective) {
            return Some((vec![roots], at, next + 1));
        }
        self.mention(next)?;
        let group = self.group_from(next, true)?;
        let nerves = self.sides(&group, PartRole::Nerve);
        (!nerves.is_empty()).then_some((nerves, at, group.end))
    }

    /// "The *lesion is of* NERVE", "the *injured nerve is* NERVE", "she has *injured* her NERVE".
    fn told_to_be(&self, at: usize) -> Option<(Vec<Side>, usize, usize)> {
        let word = self.word(at);
        let before = at.checked_sub(1).map_or("", |before| self.word(before));
        let mut next = at + 1;
        if lexicon::is_cut(word) && (matches!(before, "has" | "have" | "had") || lexicon::is_adverb(before)) {
            // the nerve follows at once
        } else if let Some(end) = self.nerve_at_fault(at) {
            next = end;
            let mut linked = false;
            while matches!(self.word(next), "is" | "was" | "must" | "be" | "will" | ":" | "—" | "–" | "here")
                || lexicon::is_adverb(self.word(next))
                || lexicon::is_hedge(self.word(next))
            {
                linked |= matches!(self.word(next), "is" | "was" | "be" | ":" | "—" | "–");
                next += 1;
            }
            if !linked {
                return None;
            }
        } else if (lexicon::is_cut(word) && self.word(next) == "nerve") || lexicon::is_injury(word) {
            next += usize::from(self.word(next) == "nerve");
            let mut linked = false;
            loop {
                // "is of" and "lies in" are read as one
                let written = self.written(next);
                let verb = written.split(' ').next().unwrap_or_default();
                linked |= matches!(verb, "is" | "was" | "be" | "lies");
                let goes_on = matches!(written.as_str(), "is of" | "is in" | "lies in" | "was in" | "was of")
                    || lexicon::is_auxiliary(&written)
                    || matches!(written.as_str(), "must" | "lies" | "of" | "in" | "to");
                if !goes_on {
                    break;
                }
                next += 1;
            }
            if !linked {
                return None;
            }
        } else {
            return None;
        }
        while lexicon::is_determiner(self.word(next)) {
            next += 1;
        }
        self.mention(next)?;
        let group = self.group_from(next, true)?;
        let nerves = self.sides(&group, PartRole::Nerve);
        (!nerves.is_empty()).then_some((nerves, at, group.end))
    }

    /// "The *nerve affected* is …", "the *nerve most likely to be damaged* is …", "the *culprit* is …": the atom behind the words
    /// for the nerve that is hurt.
    fn nerve_at_fault(&self, at: usize) -> Option<usize> {
        let word = self.word(at);
        if word == "culprit" {
            return Some(at + 1);
        }
        if !matches!(word, "nerve" | "root" | "trunk" | "cord" | "structure") {
            return None;
        }
        let mut next = at + 1;
        while matches!(self.word(next), "that" | "which" | "most" | "to" | "have" | "likely" | "must" | "probably")
            || lexicon::is_auxiliary(self.word(next))
            || lexicon::is_adverb(self.word(next))
            || lexicon::is_before_hurt(self.word(next))
        {
            next += 1;
        }
        let word = if self.word(next).is_empty() { self.written(next) } else { self.word(next).to_owned() };
        if word == "at" && self.word(next + 1) == "fault" {
            return Some(next + 2);
        }
        let is_hurt = (lexicon::is_cut(&word) && word != "removed") || matches!(&*word, "responsible" | "concerned");
        is_hurt.then_some(next + 1)
    }

    /// "The ulnar nerve, when it is caught behind the elbow, …": the one nerve that the sentence names, where a word of lesion
    /// stands beside nothing else.
    fn only_cause(&self) -> Option<Cause> {
        let is_neural = |at: &usize| self.class(*at) == Some(0);
        let first = (0..self.atoms.len()).find(is_neural)?;
        let group = self.group_from(first, true)?;
        let is_other = |at: usize| {
            matches!(self.atoms.get(at).map(|atom| &atom.kind), Some(AtomKind::Segments(_)))
                || (is_neural(&at) && !group.members.contains(&at))
                || matches!(self.word(at), "not" | "no" | "nor" | "never" | "unlike" | "than")
                || lexicon::is_contrast(self.word(at))
        };
        let is_hurt = |at: usize| {
            let word = self.word(at);
            lexicon::is_injury(word) || matches!(word, "crush" | "compression" | "division" | "section" | "severance")
        };
        let supplies = |atom: &Atom| {
            matches!(atom.kind, AtomKind::Relation(relation) if relation.form != Form::Noun
                && relation.kind != crate::claims::ClaimKind::Passage)
        };
        let is_alone = group.members.len() == 1
            && !(0..self.atoms.len()).any(is_other)
            && !self.atoms.iter().any(supplies)
            && (0..self.atoms.len()).any(is_hurt);
        let nerves = self.sides(&group, PartRole::Nerve);
        (is_alone && !nerves.is_empty()).then_some(Cause {
            nerves,
            from: first,
            to: group.end,
            level: None,
            is_partial: true,
        })
    }

    /// "Weak dorsiflexion *points to* NERVE", "wasting of MUSCLE *suggests* NERVE": the nerve at an atom, where words before it
    /// say that what was told points to it.
    fn pointed_at(&self, at: usize) -> Option<(Vec<Side>, usize, usize)> {
        let (nerves, end) = match self.mention(at) {
            Some(_) => {
                let group = self.group_from(at, true)?;
                (self.sides(&group, PartRole::Nerve), group.end)
            }
            None => (vec![self.roots_at(at)?], at + 1 + usize::from(lexicon::is_segment_noun(self.word(at + 1)))),
        };
        let mut before = at;
        while before
            .checked_sub(1)
            .is_some_and(|place| lexicon::is_determiner(self.word(place)) || lexicon::is_adverb(self.word(place)))
        {
            before -= 1;
        }
        let last = before.checked_sub(1)?;
        let word = self.word(last);
        let verb = last.checked_sub(1).map_or("", |place| self.word(place));
        // "Wrist drop: NERVE"
        let is_value = lexicon::is_value_sign(word) || matches!(word, "→" | "->");
        let is_of_sign = is_value
            && self.ends_clause(end)
            && self.sign_at(0).is_some_and(|found| self.behind_words(0, found.len) == last);
        let points = lexicon::points_to(word) || lexicon::points_with_preposition(verb, word) || is_of_sign;
        let is_denied =
            (0..last).rev().take(3).any(|place| lexicon::is_negation(self.word(place)) && self.loss_at(place) == 0);
        (points && !nerves.is_empty() && !is_denied).then_some((nerves, before, end))
    }

    /// Whether it is said from an atom on that a nerve is hurt: "is cut", "is out of action", "fails"; the atom behind.
    fn hurt(&self, at: usize, may_miss_verb: bool) -> Option<usize> {
        let mut next = at;
        while lexicon::is_auxiliary(self.word(next))
            || lexicon::is_adverb(self.word(next))
            || lexicon::is_before_hurt(self.word(next))
        {
            next += 1;
        }
        // "compressed" is read as a movement, "compressed at" as a passage
        let written = if self.word(next).is_empty() { self.written(next) } else { String::new() };
        let first = written.split(' ').next().unwrap_or_default();
        let word = if first.is_empty() { self.word(next) } else { first };
        let ends = next + 1 >= self.atoms.len() || lexicon::ends_phrase(self.word(next + 1));
        if lexicon::is_failing(word) && (ends || self.word(next + 1) == "the") {
            return Some(next + 1);
        }
        if next == at && !may_miss_verb {
            return None;
        }
        let follows = (self.word(next + 1), self.word(next + 2));
        if word == "out" && follows.0 == "of" && matches!(follows.1, "action" | "order" | "use") {
            return Some(next + 3);
        }
        if matches!((word, follows.0), ("at", "fault") | ("to", "blame")) {
            return Some(next + 2);
        }
        // "The nerve is *involved in* abduction" hurts nothing.
        if matches!(word, "involved" | "implicated") && self.word(next + 1) == "in" {
            return None;
        }
        lexicon::is_cut(word).then_some(next + 1)
    }

    /// Spinal segments as what is hurt, any of which may be the one that counts.
    fn roots_at(&self, at: usize) -> Option<Side> {
        let AtomKind::Segments(reading) = self.atoms.get(at)?.kind else { return None };
        let vocabulary = self.scope.vocabulary;
        let roots = crate::claims::roots(vocabulary, reading.main.union(reading.lesser));
        (!roots.is_empty()).then(|| Side { what: What::Entry(roots), span: self.source(at, at + 1) })
    }

    /// The landmark at which a nerve is hurt, right behind it ("in the carpal tunnel"), and the atom behind.
    fn level(&self, at: usize) -> (Option<Side>, usize) {
        if !lexicon::is_preposition(self.word(at)) || matches!(self.word(at), "with" | "by" | "for" | "of") {
            return (None, at);
        }
        let mut next = at + 1;
        while lexicon::is_determiner(self.word(next)) {
            next += 1;
        }
        let is_place = self.mention(next).is_some_and(|mention| {
            mention.candidates.iter().all(|id| matches!(self.scope.vocabulary.kind(*id), Kind::Landmark | Kind::Joint))
        });
        if is_place { (self.side(next, PartRole::Structure), next + 1) } else { (None, at) }
    }
}
