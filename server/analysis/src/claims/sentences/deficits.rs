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
            told = self.named_effects(cause).into_iter().map(|effect| (effect, false)).collect();
        }
        if told.is_empty() {
            told = self.loose_effects(cause).into_iter().map(|effect| (effect, false)).collect();
        }
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
            let spared = self.spared_at(at);
            if spared > 0 {
                let behind = self.effects_from(at + spared - 1, true);
                let effects = if behind.is_empty() { self.effects_before(at) } else { behind };
                let is_part = matches!(self.word(at + 1), "most" | "some" | "part" | "much" | "half");
                // Where the place is known, so is what leaves the nerve above it.
                let has_level =
                    cause.is_none_or(|cause| cause.level.is_none() && (cause.is_partial || self.tells_a_level(cause)));
                if !has_level && !is_part {
                    tell(effects, true);
                }
                at += spared;
                continue;
            }
            let sign = self.sign_at(at).filter(|_| !self.is_topic(at));
            let is_sign = sign.is_some();
            let loss = self.loss_at(at);
            let tells = loss > 0 || is_sign || self.is_numbness(at);
            if tells && (sign.as_ref().is_some_and(|sign| sign.is_of_loss) || !self.is_denied(at)) {
                // "flexion of the knee is lost, and the knee jerk is absent"
                let is_last = at + 1 >= self.atoms.len() || lexicon::ends_phrase(self.word(at + 1));
                let is_predicate =
                    (loss == 1 && self.before_change(at) < at && (is_last || self.word(at + 1) == "and"))
                        || (is_last && lexicon::is_state_of_loss(self.word(at)));
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
                if relation.kind == ClaimKind::Skin
                    && (relation.form == lexicon::Form::Noun || lexicon::is_numbness(self.first_token(at))))
        };
        lexicon::is_numbness(self.word(at))
            || (self.word(at).is_empty() && is_phrase() && self.written(at).split(' ').any(lexicon::is_numbness))
    }

    /// "is found over": words between a loss of feeling and the area that are read as a phrase of their own.
    fn is_found_over(&self, at: usize) -> bool {
        matches!(self.atoms.get(at).map(|atom| &atom.kind), Some(AtomKind::Relation(_)))
            && self.written(at).split(' ').all(lexicon::is_of_numbness)
    }

    /// How many atoms from one on tell of a loss: "lost", "no longer", "can not".
    pub(super) fn loss_at(&self, at: usize) -> usize {
        let (word, next) = (self.word(at), self.word(at + 1));
        match word {
            "no" if next == "longer" => 2,
            "not" if next == "able" => 2,
            "can" | "could" if next == "not" => 2,
            // "makes it *hard to* shrug"
            _ if lexicon::is_hard(word) && next == "to" => 2,
            // "*affects* the muscles of the hand"
            _ if self.affects_at(at) => 1,
            "out" if matches!(next, "of") && matches!(self.word(at + 2), "action" | "order" | "use") => 3,
            _ => usize::from(lexicon::is_loss(word)),
        }
    }

    /// Whether a word says of the muscle or the movement right behind it that it is affected.
    fn affects_at(&self, at: usize) -> bool {
        let written = if self.word(at).is_empty() { self.written(at) } else { String::new() };
        let word = if written.is_empty() { self.word(at) } else { &*written };
        let is_passed = |place: &usize| {
            let word = self.word(*place);
            lexicon::is_determiner(word) || lexicon::means_all(word) || lexicon::is_adverb(word)
        };
        lexicon::affects(word)
            && (at + 1..at + 5).find(|place| !is_passed(place)).is_some_and(|place| {
                matches!(self.class(place), Some(1 | 2))
                    || matches!(self.atoms.get(place).map(|atom| &atom.kind), Some(AtomKind::Movement(movement))
                        if movement.form == MovementForm::Noun)
            })
    }

    /// How many atoms from one on say that something is spared: "intact", "still works", "can still", "keeps working",
    /// "is not affected".
    pub(super) fn spared_at(&self, at: usize) -> usize {
        let (word, next) = (self.word(at), self.word(at + 1));
        let works = |place: usize| {
            let word = self.word(place);
            let written = if word.is_empty() { self.written(place) } else { String::new() };
            lexicon::works_on(if written.is_empty() { word } else { &written })
        };
        let is_last = |place: usize| place >= self.atoms.len() || lexicon::ends_phrase(self.word(place));
        match word {
            _ if lexicon::is_spared(word) => 1,
            "still" | "keeps" | "keep" | "kept" if works(at + 1) => 2,
            "can" | "could" if next == "still" => 2,
            "remains" | "remain" if next == "able" => 2,
            "continues" | "continue" if next == "to" && works(at + 2) => 3,
            // "is *not affected*": what is not lost
            "not" => {
                let state = (at + 1..at + 4)
                    .find(|place| !lexicon::is_adverb(self.word(*place)) && !lexicon::is_degree(self.word(*place)));
                let is_denied = |place: &usize| {
                    let word = self.word(*place);
                    (lexicon::is_state_of_loss(word) || lexicon::is_cut(word)) && is_last(place + 1)
                };
                let before = at.checked_sub(1).map_or("", |place| self.word(place));
                state.filter(is_denied).filter(|_| lexicon::is_auxiliary(before)).map_or(0, |place| place + 1 - at)
            }
            _ => 0,
        }
    }

    /// What each clause of a sentence takes away that speaks of several lesions. One that has no word of loss has that of the one
    /// before: "…, an L4 lesion the triceps jerk".
    pub(super) fn deficits_by_clause(&self) -> Vec<Claim> {
        let mut claims = Vec::new();
        for (from, to) in self.clauses_of_lesions() {
            let clause = self.part(from, to);
            let Some(cause) = clause.cause() else { continue };
            let mut told = clause.told_effects(Some(&cause));
            if told.is_empty() && !claims.is_empty() && !(0..clause.atoms.len()).any(|at| clause.spared_at(at) > 0) {
                let effects = clause.effects_from(cause.to, true);
                told.extend(effects.into_iter().map(|effect| (effect, false)));
            }
            claims.extend(clause.deficits_of(&cause, told));
        }
        claims
    }

    /// What is lost where other words stand between the word of loss and the one muscle, movement or sign that its clause names.
    fn loose_effects(&self, cause: &Cause) -> Vec<Effect> {
        let ends =
            |place: &usize| matches!(self.word(*place), ";" | "." | ":") || lexicon::is_contrast(self.word(*place));
        let start = (0..cause.from).rev().find(ends).map_or(0, |place| place + 1);
        let end = (cause.to..self.atoms.len()).find(ends).unwrap_or(self.atoms.len());
        let mut cues: Vec<usize> = Vec::new();
        let mut objects: Vec<usize> = Vec::new();
        let mut at = start;
        while at < end {
            if (cause.from..cause.to).contains(&at) {
                at = cause.to;
                continue;
            }
            let word = self.word(at);
            let says_other = lexicon::is_negation(word) && self.loss_at(at) == 0
                || self.spared_at(at) > 0
                || lexicon::is_exception(word)
                || matches!(word, "least" | "unlikely" | "if" | "unless")
                || matches!(
                    word,
                    "than" | "unlike" | "because" | "since" | "as" | "by" | "via" | "through" | "which" | "whose"
                )
                || self.class(at) == Some(0);
            if says_other {
                return Vec::new();
            }
            if self.loss_at(at) > 0 || lexicon::is_state_of_loss(word) {
                cues.push(at);
            }
            let is_governed = at.checked_sub(1).is_some_and(|place| {
                let place = if lexicon::is_determiner(self.word(place)) { place.saturating_sub(1) } else { place };
                matches!(
                    self.word(place),
                    "at" | "behind" | "under" | "beneath" | "near" | "on" | "over" | "from" | "during"
                )
            });
            match self.atoms.get(at).map(|atom| &atom.kind) {
                Some(AtomKind::Relation(_)) => return Vec::new(),
                Some(AtomKind::Movement(_)) if !is_governed => objects.push(at),
                Some(AtomKind::Name(_)) if matches!(self.class(at), Some(1 | 2)) && !is_governed => {
                    objects.push(at);
                    at = self.group_from(at, true).map_or(at, |group| group.end.saturating_sub(1)).max(at);
                }
                _ => {}
            }
            at += 1;
        }
        let ([object], false) = (objects.as_slice(), cues.is_empty()) else { return Vec::new() };
        let whole = cues.iter().any(|at| lexicon::is_whole_loss(self.word(*at)));
        let effects = self.effects_from(*object, true);
        effects.into_iter().map(|effect| Effect { whole, ..effect }).collect()
    }

    /// "The *muscle* paralysed by a lesion of NERVE *is* MUSCLE", "the movement lost is …": what is lost stands behind the verb,
    /// and a noun for it before.
    fn named_effects(&self, cause: &Cause) -> Vec<Effect> {
        let is_noun = |at: &usize| {
            matches!(
                self.word(*at),
                "muscle" | "muscles" | "movement" | "movements" | "action" | "function" | "deformity" | "sign"
            )
        };
        let Some(noun) = (0..self.atoms.len()).find(is_noun) else { return Vec::new() };
        let links = |at: &usize| matches!(self.word(*at), "is" | "are" | "was" | "were" | ":" | "—" | "–" | "include");
        // The last verb behind the noun and what it says of it has the answer behind it.
        let Some(link) = (noun + 1..self.atoms.len()).rev().find(links).filter(|link| *link >= cause.to) else {
            return Vec::new();
        };
        let tells_loss =
            |at: usize| self.loss_at(at) > 0 || lexicon::is_cut(self.word(at)) || lexicon::is_failing(self.word(at));
        let denies = |at: usize| {
            let word = self.word(at);
            lexicon::is_spared(word)
                || lexicon::is_negation(word)
                || matches!(word, "least" | "unlikely" | "except" | "but")
        };
        if !(noun + 1..link).any(tells_loss) || (0..link).any(denies) {
            return Vec::new();
        }
        let mut first = link + 1;
        while lexicon::is_determiner(self.word(first)) || lexicon::is_adverb(self.word(first)) {
            first += 1;
        }
        let whole = (noun..link).any(|at| lexicon::is_whole_loss(self.word(at)));
        let effects = self.effects_from(first, true);
        effects.into_iter().map(|effect| Effect { whole, ..effect }).collect()
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
                || matches!(word, "least" | "unlikely" | "except")
                || lexicon::is_spared(word)
        };
        let forth = (at + 1..self.atoms.len()).take_while(|place| !ends(place) && self.word(*place) != "and");
        (0..at).rev().take_while(|place| !ends(place)).any(denies) || forth.into_iter().any(denies)
    }

    /// Whether the sentence says where along the nerve the lesion sits, or that it is a part of it.
    pub(super) fn tells_a_level(&self, cause: &Cause) -> bool {
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
                while lexicon::is_of_numbness(self.word(at))
                    || lexicon::is_degree(self.word(at))
                    || self.is_numbness(at)
                    || self.is_found_over(at)
                {
                    at += 1;
                }
                let areas = self.areas_of(at, true).into_iter();
                effects.extend(areas.map(|side| Effect {
                    parts: vec![Part { role: PartRole::Skin, span: side.span, what: side.what }],
                    whole,
                }));
                break;
            }
            if lost && lexicon::carried(word) == Some("taste") {
                effects.push(self.taste_effect(next, whole));
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
                    if self.spared_at(group.end) > 0 {
                        break; // "…, brachioradialis spared"
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
                    // "dry, open eye": what stands behind a comma in a value names what is lost, it does not tell to do it
                    let is_lost = || (start..next).any(|at| self.loss_at(at) > 0);
                    if is_value && next > start && movement.form == MovementForm::Verb && !is_lost() {
                        break;
                    }
                    let (target, end) = self.moved(next);
                    if self.spared_at(end) > 0 || self.spared_at(next + 1) > 0 {
                        break; // "…, dorsiflexion normal"
                    }
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
                || lexicon::is_degree(word)
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

    /// The loss of taste that a word tells, with the area behind it: "taste from the front of the tongue".
    fn taste_effect(&self, at: usize, whole: bool) -> Effect {
        let ends = |place: &usize| matches!(self.word(*place), ";" | "." | ":" | ",");
        let end = (at..self.atoms.len()).find(ends).unwrap_or(self.atoms.len());
        let told = Part { role: PartRole::Modality, span: self.source(at, at + 1), what: What::Word("taste") };
        let area = self.place_of_fibres(at, end);
        let area = area.map(|side| Part { role: PartRole::Structure, span: side.span, what: side.what });
        Effect { parts: std::iter::once(told).chain(area).collect(), whole }
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
        while at.checked_sub(1).is_some_and(|place| {
            let word = self.word(place);
            lexicon::is_change(word) || lexicon::is_degree(word)
        }) {
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
        // "taste from the front of the tongue is lost"
        let clause = (0..before).rev().take_while(|place| !lexicon::ends_phrase(self.word(*place)));
        if let Some(taste) = clause.into_iter().find(|place| lexicon::carried(self.word(*place)) == Some("taste")) {
            return vec![self.taste_effect(taste, whole)];
        }
        if let Some(group) = self.group_to(before) {
            let muscles = self.muscle_sides(&group);
            let part = |side: Side| Part { role: PartRole::Muscle, span: side.span, what: side.what };
            if !muscles.is_empty() {
                return muscles.into_iter().map(|side| Effect { parts: vec![part(side)], whole }).collect();
            }
        }
        // "It wastes in ulnar palsy", "the group is paralysed by …": the muscle of which the text speaks.
        let stands_for = |place: usize| {
            let word = self.word(place);
            matches!(word, "it" | "they")
                || (matches!(word, "group" | "muscle" | "muscles")
                    && place.checked_sub(1).is_some_and(|before| lexicon::points_back(self.word(before))))
        };
        if before.checked_sub(1).is_some_and(stands_for) {
            let muscles = self.implied(PartRole::Muscle, true);
            let part = |side: Side| Part { role: PartRole::Muscle, span: side.span, what: side.what };
            return muscles.into_iter().map(|side| Effect { parts: vec![part(side)], whole }).collect();
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
        // "On inspiration the paralysed half …": when, not what.
        if place.checked_sub(1).is_some_and(|when| matches!(self.word(when), "on" | "during" | "with" | "for")) {
            effects.clear();
        }
        effects
    }
}
