//! Claims of what a lesion takes away or spares: one cause (see [`super::lesions`]), and the effects before or behind it: a
//! muscle, a movement, feeling in an area, or a sign by its name.

use fascicle_model::{EntryId, Kind};

use super::atoms::AtomKind;
use super::groups::Group;
use super::lesions::Cause;
use super::sides::{Side, side_of};
use super::{Sentence, Subject};
use crate::claims::phrases::MovementForm;
use crate::claims::{Claim, ClaimKind, Part, PartRole, What};
use crate::lexicon;

/// What a lesion is said to take away.
#[derive(Clone, Debug)]
pub struct Effect {
    /// The muscle, the movement with its joint, the area, or the sign.
    pub parts: Vec<Part>,
    /// It is lost altogether, not only weakened.
    pub whole: bool,
}

impl Sentence<'_, '_> {
    /// "Injury to NERVE causes weakness of MUSCLE", "MUSCLE wastes after an ulnar lesion", "if NERVE is cut, the patient
    /// cannot extend the knee", "it spares MUSCLE": one cause, and what is lost or spared before or behind it.
    pub(super) fn deficits(&self, cause: Option<&Cause>) -> Vec<Claim> {
        let answer = if cause.is_none() && self.memory.asks { self.bare_answer() } else { None };
        let Some(cause) = cause.or(answer.as_ref()) else { return Vec::new() };
        let mut told = self.told_effects(Some(cause));
        if told.is_empty() {
            // "He cannot extend his wrist. The injured nerve is …"
            told.extend(self.memory.effects.iter().map(|effect| (effect.clone(), false)));
        }
        self.deficits_of(cause, told)
    }

    /// What a sentence says that somebody has lost, where it does not tell the lesion.
    pub(super) fn effects_of_case(&self, cause: Option<&Cause>) -> Vec<Effect> {
        // "A footballer cannot evert the foot"
        let is_somebody = matches!(self.word(0), "a" | "an")
            && (1..4).any(|at| matches!(self.word(at), "cannot" | "can't" | "can’t") || self.loss_at(at) == 2);
        let is_case = is_somebody || self.atoms.iter().any(|atom| lexicon::is_person(&atom.word));
        if !is_case || cause.is_some() {
            return Vec::new();
        }
        self.told_effects(None).into_iter().filter(|(_, spared)| !spared).map(|(effect, _)| effect).collect()
    }

    fn deficits_of(&self, cause: &Cause, effects: Vec<(Effect, bool)>) -> Vec<Claim> {
        let hedged = self.clause_hedged(cause.from);
        let mut claims: Vec<Claim> = Vec::new();
        for (effect, spared) in effects {
            for nerve in &cause.nerves {
                let Some(first) = effect.parts.first() else { continue };
                let mut parts = vec![Part { role: PartRole::Nerve, span: nerve.span, what: nerve.what.clone() }];
                parts.extend(effect.parts.iter().cloned());
                if let Some(level) = &cause.level {
                    parts.push(Part { role: PartRole::Landmark, span: level.span, what: level.what.clone() });
                }
                if claims.iter().any(|known| known.parts == parts) {
                    continue;
                }
                claims.push(Claim {
                    kind: ClaimKind::Deficit,
                    span: self.claim_span(cause.from, nerve.span, first.span),
                    parts,
                    negated: spared,
                    hedged,
                    all: effect.whole,
                    block: self.scope.block,
                    key: None,
                });
            }
        }
        claims
    }

    /// Whether a sign is what a clause is about, not what it tells: "…; in *Horner's syndrome* it is small".
    fn is_topic(&self, at: usize) -> bool {
        let before = |steps: usize| at.checked_sub(steps).map_or("", |place| self.word(place));
        before(1) == "in" && matches!(before(2), ";" | "while" | "whereas" | "but")
    }

    /// What the words outside of the cause say is lost, and what is spared (`true`).
    fn told_effects(&self, cause: Option<&Cause>) -> Vec<(Effect, bool)> {
        let mut list: Vec<(Effect, bool)> = Vec::new();
        let mut tell = |effects: Vec<Effect>, spared: bool| {
            list.extend(effects.into_iter().map(|effect| (effect, spared)));
        };
        let (from, to) = cause.map_or((0, 0), |cause| (cause.from, cause.to));
        let mut at = 0;
        while at < self.atoms.len() {
            if (from..to).contains(&at) {
                at = to;
                continue;
            }
            let word = self.word(at);
            if lexicon::is_spared(word) {
                let behind = self.effects_from(at, true);
                let effects = if behind.is_empty() { self.effects_before(at) } else { behind };
                let is_part = matches!(self.word(at + 1), "most" | "some" | "part" | "much" | "half");
                let has_level = cause.is_none_or(|cause| cause.level.is_some() || self.tells_a_level(cause));
                if !has_level && !is_part {
                    tell(effects, true);
                }
                at += 1;
                continue;
            }
            let sign = self.sign_at(at).filter(|_| !self.is_topic(at));
            let is_sign = sign.is_some();
            let loss = self.loss_at(at);
            let tells = loss > 0 || is_sign || self.is_numbness(at);
            if tells && (sign.as_ref().is_some_and(|sign| sign.is_of_loss) || !self.is_denied(at)) {
                // "flexion of the knee is lost, and the knee jerk is absent"
                let is_predicate = loss == 1
                    && self.before_change(at) < at
                    && (lexicon::ends_phrase(self.word(at + 1)) || self.word(at + 1) == "and");
                let before = if is_predicate { self.effects_before(at) } else { Vec::new() };
                let behind = if before.is_empty() { self.effects_from(at, false) } else { before };
                tell(if behind.is_empty() && !is_sign { self.effects_before(at) } else { behind }, false);
                at += loss.saturating_sub(1);
                // The words of loss of one effect stand together.
                while self.loss_at(at + 1) > 0 {
                    at += 1;
                }
                if let Some(sign) = sign {
                    at = self.behind_words(at, sign.len);
                    continue;
                }
            }
            at += 1;
        }
        list
    }

    /// Whether an atom is a word for feeling or its loss; "sensation over" is read as one phrase.
    fn is_numbness(&self, at: usize) -> bool {
        let is_phrase = || {
            matches!(self.atoms.get(at).map(|atom| &atom.kind), Some(AtomKind::Relation(relation))
                if relation.kind == ClaimKind::Skin && relation.form == lexicon::Form::Noun)
        };
        lexicon::is_numbness(self.word(at))
            || (self.word(at).is_empty() && is_phrase() && self.written(at).split(' ').any(lexicon::is_numbness))
    }

    /// How many atoms from one on tell of a loss: "lost", "no longer", "can not".
    pub(super) fn loss_at(&self, at: usize) -> usize {
        let (word, next) = (self.word(at), self.word(at + 1));
        match word {
            "no" if next == "longer" => 2,
            "not" if next == "able" => 2,
            "can" | "could" if next == "not" => 2,
            "out" if matches!(next, "of") && matches!(self.word(at + 2), "action" | "order" | "use") => 3,
            _ => usize::from(lexicon::is_loss(word)),
        }
    }

    /// Whether the clause of a word of loss denies it: "is not weakened", "no paralysis".
    fn is_denied(&self, at: usize) -> bool {
        let ends =
            |place: &usize| matches!(self.word(*place), "," | ";" | ":") || lexicon::is_contrast(self.word(*place));
        let denies = |place: usize| {
            let word = self.word(place);
            (lexicon::is_negation(word)
                && word != "cannot"
                && self.loss_at(place) == 0
                && !(place > 0 && self.loss_at(place - 1) == 2))
                || lexicon::is_spared(word)
        };
        let forth = (at + 1..self.atoms.len()).take_while(|place| !ends(place) && self.word(*place) != "and");
        (0..at).rev().take_while(|place| !ends(place)).any(denies) || forth.into_iter().any(denies)
    }

    /// Whether the sentence says where along the nerve the lesion sits, or that it is a part of it.
    fn tells_a_level(&self, cause: &Cause) -> bool {
        let behind = self.word(cause.to);
        if lexicon::is_preposition(behind) && !matches!(behind, "with" | "by" | "of" | "for") {
            return true;
        }
        (0..self.atoms.len()).filter(|at| !(cause.from..cause.to).contains(at)).any(|at| {
            lexicon::is_level(self.word(at))
                || (lexicon::is_preposition(self.word(at))
                    && (at + 1..at + 4).any(|place| {
                        self.mention(place).is_some_and(|mention| {
                            mention
                                .candidates
                                .iter()
                                .all(|id| matches!(self.scope.vocabulary.kind(*id), Kind::Landmark | Kind::Joint))
                        })
                    }))
        })
    }

    /// What a lesion is said to take away, from a word of loss on: muscles, movements, feeling, or a sign by its name. As a
    /// value ("Deficit: foot drop") it needs no word of loss.
    pub(super) fn effects_from(&self, start: usize, is_value: bool) -> Vec<Effect> {
        let mut effects: Vec<Effect> = Vec::new();
        let (mut whole, mut lost) = (false, is_value);
        let mut next = start;
        while next < self.atoms.len() {
            let word = self.word(next);
            lost |= self.loss_at(next) > 0 && !lexicon::brings_about(word);
            whole |= lexicon::is_whole_loss(word);
            if let Some(found) = self.sign_at(next) {
                effects.push(Effect { parts: self.sign_parts(next, found), whole });
                break;
            }
            if self.is_numbness(next)
                || (lexicon::is_loss(word) && matches!(self.word(next + 1), "of") && self.is_numbness(next + 2))
            {
                let mut at = next + 1;
                while lexicon::is_of_numbness(self.word(at)) || self.is_numbness(at) {
                    at += 1;
                }
                let areas = self.areas_of(at, true).into_iter();
                effects.extend(areas.map(|side| Effect {
                    parts: vec![Part { role: PartRole::Skin, span: side.span, what: side.what }],
                    whole,
                }));
                break;
            }
            match &self.atoms.get(next).map(|atom| &atom.kind) {
                Some(AtomKind::Name(_)) if lost => {
                    let Some(group) = self.group_from(next, true) else { break };
                    // "elbow flexion": a joint before its movement
                    if matches!(&self.atoms.get(group.end).map(|atom| &atom.kind), Some(AtomKind::Movement(_))) {
                        next = group.end;
                        continue;
                    }
                    let is_moved = !effects.is_empty();
                    let sides = if is_moved { self.sides(&group, PartRole::Muscle) } else { self.muscle_sides(&group) };
                    for side in sides {
                        effects.push(Effect {
                            parts: vec![Part { role: PartRole::Muscle, span: side.span, what: side.what }],
                            whole,
                        });
                    }
                    break;
                }
                Some(AtomKind::Word | AtomKind::Movement(_)) if lost && self.everyday(next).is_some() => {
                    let Some(everyday) = self.everyday(next) else { break };
                    let span = self.source(next, next + 1);
                    let target = everyday.target;
                    let parts = vec![
                        Part { role: PartRole::Movement, span, what: What::Entry(everyday.movements) },
                        Part { role: PartRole::Joint, span: target.span, what: target.what },
                    ];
                    effects.push(Effect { parts, whole });
                    break;
                }
                Some(AtomKind::Movement(movement)) if lost => {
                    if movement.form == MovementForm::Participle {
                        // "the eye cannot be abducted"
                        if next.checked_sub(1).is_some_and(|before| matches!(self.word(before), "be" | "being")) {
                            let before = self.group_to(self.before_change(start));
                            let target = before.and_then(|group| self.side(*group.members.last()?, PartRole::Joint));
                            effects.extend(
                                target.map(|target| self.movement_effect(next, movement.movement, Some(target), whole)),
                            );
                        }
                        break;
                    }
                    let (target, end) = self.moved(next);
                    let movement = self.with_adverb(next, end, movement);
                    effects.push(self.movement_effect(next, movement.movement, target, whole));
                    next += 1;
                    continue;
                }
                Some(AtomKind::Word) if matches!(word, "." | ";") || lexicon::is_not_motor(word) => break,
                _ => {}
            }
            let skips = next == start
                || self.loss_at(next) > 0
                || lexicon::brings_about(word)
                || lexicon::is_determiner(word)
                || lexicon::is_muscle_noun(word)
                || lexicon::means_all(word)
                || lexicon::is_adverb(word)
                || lexicon::is_conjunction(word)
                || lexicon::is_of_loss(word);
            if !skips {
                break;
            }
            next += 1;
        }
        effects
    }

    /// The members of a group as muscles; a part of the body stands for the muscles that are named after it ("paralysis of
    /// the *tongue*").
    pub(super) fn muscle_sides(&self, group: &Group) -> Vec<Side> {
        let sides = self.sides(group, PartRole::Muscle);
        let [only] = group.members.as_slice() else { return sides };
        if !sides.is_empty() || self.is_struck(*only) {
            return sides;
        }
        let written = self.written(*only);
        let named = [format!("muscles of {written}"), format!("{written} muscles")];
        let mut candidates: Vec<EntryId> =
            named.iter().flat_map(|name| self.scope.names.lookup(name)).map(|name| name.entry).collect();
        candidates.dedup();
        let subject = Subject { candidates, span: self.source(*only, *only + 1) };
        side_of(self.scope.vocabulary, &subject, PartRole::Muscle).into_iter().collect()
    }

    fn movement_effect(&self, at: usize, movement: EntryId, target: Option<Side>, whole: bool) -> Effect {
        let span = self.source(at, at + 1);
        let mut parts = vec![Part { role: PartRole::Movement, span, what: What::Entry(vec![movement]) }];
        parts.extend(target.map(|side| Part { role: PartRole::Joint, span: side.span, what: side.what }));
        Effect { parts, whole }
    }

    /// Steps back from a word of loss over the verb that it completes: "goes numb", "is weak", "becomes impossible".
    fn before_change(&self, at: usize) -> usize {
        let mut at = self.before_verb(at).0;
        while at.checked_sub(1).is_some_and(|place| lexicon::is_change(self.word(place))) {
            at = self.before_verb(at - 1).0;
        }
        at
    }

    /// The areas before a word for numbness. Behind what else its clause tells, an area begins with its article: "after
    /// division of the nerve at the wrist *the thumb* is numb".
    fn numb_areas(&self, end: usize) -> Vec<Side> {
        let areas = self.areas_to(end);
        if !areas.is_empty() {
            return areas;
        }
        let begins = |at: &usize| {
            lexicon::is_determiner(self.word(*at))
                && at.checked_sub(1).is_some_and(|before| !lexicon::is_preposition(self.word(before)))
        };
        let start = (0..end).rev().find(begins);
        start.map_or_else(Vec::new, |start| self.areas_of(start + 1, true))
    }

    /// What stands right before a word of loss or sparing: "brachialis wastes", "extension of the wrist is lost", "the
    /// skin of the palm goes numb".
    fn effects_before(&self, at: usize) -> Vec<Effect> {
        let whole = lexicon::is_whole_loss(self.word(at));
        let before = self.before_change(at);
        if self.is_numbness(at) {
            let areas = if before < at { self.numb_areas(before) } else { Vec::new() };
            let part = |side: Side| Part { role: PartRole::Skin, span: side.span, what: side.what };
            return areas.into_iter().map(|side| Effect { parts: vec![part(side)], whole }).collect();
        }
        if let Some(group) = self.group_to(before) {
            let muscles = self.muscle_sides(&group);
            let part = |side: Side| Part { role: PartRole::Muscle, span: side.span, what: side.what };
            if !muscles.is_empty() {
                return muscles.into_iter().map(|side| Effect { parts: vec![part(side)], whole }).collect();
            }
        }
        let mut effects = Vec::new();
        let mut place = before;
        while let Some(left) = place.checked_sub(1) {
            let word = self.word(left);
            match self.atoms.get(left).map(|atom| &atom.kind) {
                Some(AtomKind::Movement(movement)) if movement.form == MovementForm::Noun => {
                    effects.push(self.movement_effect(left, movement.movement, self.moved(left).0, whole));
                }
                Some(AtomKind::Name(_)) if self.side(left, PartRole::Joint).is_some() => {}
                _ if lexicon::is_determiner(word)
                    || lexicon::is_before_moved(word)
                    || word == "in"
                    || (lexicon::is_conjunction(word) && word != ",") => {}
                _ => break,
            }
            place = left;
        }
        effects
    }
}
