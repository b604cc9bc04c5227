//! Claims of ligaments: what they keep a joint from ("checks extension", "keeps the tibia from sliding forward"), and what
//! they are attached to ("runs from the tibia to the femur"). What the names of the clause are tells which is which.

use fascicle_model::{EntryId, Kind, MOTIONS};

use super::Sentence;
use super::atoms::AtomKind;
use super::sides::Side;
use crate::claims::phrases::MovementForm;
use crate::claims::{Claim, ClaimKind, Part, PartRole, What};
use crate::lexicon::{self, Form, Restraint};

/// How many atoms may stand between the direction in which a bone slides and the word that says that it slides.
const REACH: usize = 4;

impl Sentence<'_, '_> {
    /// The claims of the ligaments of a sentence.
    pub(super) fn ligament_claims(&self) -> Vec<Claim> {
        let mut claims = Vec::new();
        let mut from = 0;
        for cue in 0..self.atoms.len() {
            if let Some(restraint) = self.restraint(cue) {
                claims.extend(self.limits_at(cue, restraint, from));
                from = cue + 1;
            }
        }
        for at in 0..self.atoms.len() {
            claims.extend(self.bonds_at(at));
        }
        claims
    }

    /// How a word at an atom says that something is held back.
    fn restraint(&self, at: usize) -> Option<Restraint> {
        let is_phrase = match self.atoms.get(at).map(|atom| &atom.kind) {
            Some(AtomKind::Word) => true,
            Some(AtomKind::Relation(relation)) => relation.form == Form::Verb,
            _ => false,
        };
        lexicon::restraint(self.first_token(at)).filter(|_| is_phrase)
    }

    fn is_ligament(&self, at: usize) -> bool {
        self.mention(at).is_some_and(|mention| mention.candidates.iter().all(|id| self.is_ligament_id(*id)))
    }

    fn is_ligament_id(&self, id: EntryId) -> bool {
        self.scope.vocabulary.entry(id).class.as_deref() == Some("ligament")
    }

    /// The ligaments of which a pronoun or a clause without a subject speaks.
    fn ligament_meant(&self) -> Vec<Side> {
        let is_ligament = |side: &Side| side.what.entries().iter().all(|id| self.is_ligament_id(*id));
        let own = self.main_group().filter(|group| group.members.len() == 1);
        let own = own.map(|group| self.sides(&group, PartRole::Landmark)).filter(|sides| sides.iter().all(is_ligament));
        if let Some(sides) = own.filter(|sides| !sides.is_empty()) {
            return sides;
        }
        let named: Vec<usize> = (0..self.atoms.len()).filter(|at| self.is_ligament(*at)).collect();
        if let [only] = named.as_slice() {
            return self.side(*only, PartRole::Landmark).into_iter().collect();
        }
        let sides = self.recalled(PartRole::Landmark, false);
        sides.into_iter().filter(is_ligament).collect()
    }

    /// The claims of the word of restraint at an atom; what stands before `from` belongs to the one before it.
    fn limits_at(&self, cue: usize, restraint: Restraint, from: usize) -> Vec<Claim> {
        let (start, stop) = self.clause_around(cue);
        // "…, the posterior from sliding backwards": said of another.
        let turns = |place: usize| self.word(place) == "," && matches!(self.word(place + 1), "the" | "and" | "its");
        let ends = |place: &usize| self.restraint(*place).is_some() || turns(*place);
        let last = (cue + 1..stop).find(ends).unwrap_or(stop);
        if restraint == Restraint::With && !(cue + 1..last).any(|place| lexicon::is_against(self.word(place))) {
            return Vec::new();
        }
        // "Rupture of the ligament limits flexion": what is not there holds nothing back.
        let is_hurt = |place: usize| {
            let word = self.word(place);
            lexicon::is_lesion(word)
                || lexicon::is_cut(word)
                || lexicon::is_loss(word)
                || lexicon::restraint(word) == Some(Restraint::Torn)
                || lexicon::changes_ligament(word)
        };
        if restraint != Restraint::Torn && (start..cue).any(is_hurt) {
            return Vec::new();
        }
        let mut behind = cue + 1;
        while lexicon::is_adverb(self.word(behind)) || self.word(behind) == "primarily" {
            behind += 1;
        }
        let is_passive = restraint == Restraint::Verb && self.written(behind).starts_with("by");
        let range = if is_passive { start.max(from)..cue } else { cue..last };
        let ligaments = if is_passive {
            let first = (behind..stop).find(|place| self.mention(*place).is_some());
            let first = first.filter(|place| self.is_ligament(*place));
            first.and_then(|first| self.group_from(first, true)).map(|group| self.sides(&group, PartRole::Landmark))
        } else {
            let named = (start..cue).rev().find(|place| self.is_ligament(*place));
            match named {
                Some(place) => self.group_to(place + 1).map(|group| self.sides(&group, PartRole::Landmark)),
                None if (start..cue).any(|place| self.mention(place).is_some()) => None,
                None => Some(self.ligament_meant()),
            }
        };
        let ligaments = ligaments.unwrap_or_default();
        let negated = (start.max(from)..cue).any(|place| lexicon::is_negation(self.word(place)));
        let hedged = self.clause_hedged(cue);
        let motions = self.motions(range.clone(), restraint == Restraint::Torn);
        let moved = self.moved_bone(range);
        let mut claims = Vec::new();
        for ligament in &ligaments {
            for (motion, first, end) in &motions {
                let told = self.source(*first, *end);
                let mut parts = vec![
                    Part { role: PartRole::Landmark, span: ligament.span, what: ligament.what.clone() },
                    Part { role: PartRole::Role, span: told, what: What::Word(motion) },
                ];
                let slides = matches!(*motion, "forward" | "backward");
                parts.extend(moved.iter().filter(|_| slides).map(|bone| Part {
                    role: PartRole::Structure,
                    span: bone.span,
                    what: bone.what.clone(),
                }));
                let span = self.claim_span(cue, ligament.span, told);
                claims.push(Claim { span, parts, negated, hedged, ..self.empty_claim(ClaimKind::Joint) });
            }
        }
        claims
    }

    /// The motions that a stretch of a sentence names, each with its atoms. `of_tearing`: those alone that tear a ligament.
    fn motions(&self, range: std::ops::Range<usize>, of_tearing: bool) -> Vec<(&'static str, usize, usize)> {
        let mut found: Vec<(&'static str, usize, usize)> = Vec::new();
        for at in range.clone() {
            let motion = match self.atoms.get(at).map(|atom| &atom.kind) {
                Some(AtomKind::Movement(movement)) if movement.form == MovementForm::Noun => {
                    let exact = self.with_adverb(at, at + 1, movement);
                    known_motion(self.scope.vocabulary.name(exact.movement))
                }
                Some(AtomKind::Name(_)) => {
                    let mention = self.mention(at).and_then(|mention| mention.candidates.first());
                    let movement = mention.filter(|id| self.scope.vocabulary.kind(**id) == Kind::Movement);
                    movement.and_then(|id| known_motion(self.scope.vocabulary.name(*id)))
                }
                Some(AtomKind::Word) => {
                    let word = self.word(at);
                    let near = at.saturating_sub(REACH).max(range.start)..(at + REACH).min(range.end);
                    let slides = near.into_iter().any(|place| lexicon::tells_sliding(&self.written(place)));
                    let plain = word.trim_start_matches("hyper").trim_start_matches("over");
                    lexicon::sliding(word).filter(|_| slides).or_else(|| known_motion(plain))
                }
                _ => None,
            };
            let Some(motion) = motion else { continue };
            let tears = matches!(motion, "valgus" | "varus" | "inversion" | "eversion");
            if (tears || !of_tearing) && !found.iter().any(|(known, ..)| *known == motion) {
                found.push((motion, at, at + 1));
            }
        }
        found
    }

    /// The bone that is said to slide: the first that a stretch names.
    fn moved_bone(&self, mut range: std::ops::Range<usize>) -> Option<Side> {
        range.find_map(|place| self.bone(place))
    }

    /// The bone, or feature of one, that an atom names.
    pub(super) fn bone(&self, at: usize) -> Option<Side> {
        let vocabulary = self.scope.vocabulary;
        let is_bone = |id: &EntryId| {
            std::iter::once(*id)
                .chain(vocabulary.wholes(*id))
                .any(|id| vocabulary.entry(id).class.as_deref() == Some("bone"))
        };
        let side = self.side(at, PartRole::Structure)?;
        let ids: Vec<EntryId> = side.what.entries().iter().copied().filter(is_bone).collect();
        (!ids.is_empty()).then_some(Side { what: What::Entry(ids), ..side })
    }

    /// The claims of the ligament at an atom, or of a pronoun that stands for one, and of what it is attached to.
    fn bonds_at(&self, at: usize) -> Vec<Claim> {
        let ligaments = if self.is_ligament(at) {
            // "arises from the radius and the interosseous membrane, and inserts on": said of another.
            let (start, _) = self.clause_around(at);
            let is_first = (start..at).all(|place| self.mention(place).is_none());
            if !is_first || !self.leads_clause(at) || self.is_struck(at) {
                return Vec::new();
            }
            self.side(at, PartRole::Landmark).into_iter().collect()
        } else if at == 0 && matches!(self.word(at), "it" | "this") {
            self.ligament_meant()
        } else {
            Vec::new()
        };
        let [ligament] = ligaments.as_slice() else { return Vec::new() };
        let Some(verb) = self.bond_verb(at + 1) else { return Vec::new() };
        let negated = (at..verb).any(|place| lexicon::is_negation(self.word(place)));
        let hedged = self.clause_hedged(verb);
        let claim = |bone: Side| {
            let span = self.claim_span(verb, ligament.span, bone.span);
            let parts = vec![
                Part { role: PartRole::Landmark, span: ligament.span, what: ligament.what.clone() },
                Part { role: PartRole::Parent, span: bone.span, what: bone.what },
            ];
            Claim { span, parts, negated, hedged, ..self.empty_claim(ClaimKind::Joint) }
        };
        let places = self.bonds(verb, at);
        places.into_iter().map(claim).collect()
    }

    /// The verb by which the subject before an atom is said to be attached to something, or the sign that stands for one.
    fn bond_verb(&self, from: usize) -> Option<usize> {
        let is_sign = lexicon::is_value_sign(self.word(from));
        let begins_bond = matches!(self.word(from + 1), "from" | "between") || self.bone(from + 1).is_some();
        if is_sign && begins_bond {
            return Some(from);
        }
        let mut place = self.behind_bracket(from);
        while place < self.atoms.len() {
            if lexicon::binds(self.first_token(place)) {
                return Some(place);
            }
            let word = self.word(place);
            let is_plain = matches!(self.atoms.get(place).map(|atom| &atom.kind), Some(AtomKind::Word))
                && !matches!(word, ";" | "." | ":" | "but");
            if !is_plain {
                return None;
            }
            place += 1;
        }
        None
    }

    /// The bones that stand behind a verb of binding.
    fn bonds(&self, verb: usize, ligament: usize) -> Vec<Side> {
        let mut found: Vec<Side> = Vec::new();
        // "*passes over* the head of the humerus"
        let phrase = self.written(verb);
        let last = phrase.split(' ').next_back().unwrap_or_default();
        let mut governed = !lexicon::is_preposition(last) || lexicon::leads_to_bond(last);
        for place in verb + 1..self.atoms.len() {
            let word = self.word(place);
            if self.mention(place).is_some() {
                let other = || self.side(place, PartRole::Landmark).filter(|_| self.class(place) == Some(4));
                let bone = self.bone(place).or_else(other).filter(|_| governed && place != ligament);
                found.extend(bone);
                continue;
            }
            let is_word = matches!(self.atoms.get(place).map(|atom| &atom.kind), Some(AtomKind::Word));
            let ends =
                matches!(word, ";" | "." | ":" | "(") || lexicon::is_contrast(word) || lexicon::is_relative(word);
            if !is_word || ends || lexicon::is_auxiliary(word) || self.restraint(place).is_some() {
                break;
            }
            if lexicon::leads_to_bond(word) {
                governed = true;
            } else if lexicon::is_preposition(word) && word != "of" {
                governed = false; // "passes from A to B *behind* C"
            }
        }
        found
    }
}

/// A motion as the vocabulary writes it.
fn known_motion(name: &str) -> Option<&'static str> {
    MOTIONS.iter().flat_map(|(one, other)| [*one, *other]).find(|known| *known == name)
}
