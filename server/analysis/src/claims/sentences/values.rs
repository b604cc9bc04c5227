//! Values: what stands behind a label ("Nerve: …") or in a cell of a table. There is no verb; the label or header tells
//! what the names are to the subject.

use super::atoms::{AtomKind, atoms, atoms_where, is_usable};
use super::deficits::Effect;
use super::sides::Side;
use super::{Memory, Scope, Sentence};
use crate::claims::phrases::MovementForm;
use crate::claims::{ClaimKind, PartRole, What};
use crate::lexicon::{self, Form};

/// Reads a value: the names, segments or movements of a role, where a label or a header already tells what they are to
/// the subject. Names may be bare ("ulnar" for the ulnar nerve).
pub fn values(scope: &Scope<'_>, from: usize, to: usize, role: PartRole) -> Vec<Side> {
    let atoms = atoms_where(scope, from, to, &|_| true);
    if role == PartRole::Skin {
        let memory = Memory::default();
        let sentence = Sentence { scope, atoms: &atoms, memory: &memory };
        let from = (0..atoms.len()).find(|at| !lexicon::is_determiner(sentence.word(*at)));
        // "Knee" heads a column of joints as well as one of skin: then only what is an area's own name counts.
        let is_other = (0..atoms.len()).any(|at| matches!(sentence.class(at), Some(0 | 1 | 3)));
        return from.map_or_else(Vec::new, |from| sentence.areas_of(from, !is_other));
    }
    let memory = Memory::default();
    let sentence = Sentence { scope, atoms: &atoms, memory: &memory };
    if sentence.has_verb() || !sentence.asserts() {
        return Vec::new();
    }
    // "Its branches pierce scalenus medius": the muscle is passed, and no value.
    let passes = |kind: &AtomKind| matches!(kind, AtomKind::Relation(relation) if relation.kind == ClaimKind::Passage && relation.form == Form::Verb);
    let is_said = |at: usize| {
        let depth = |word: &str| i32::from(matches!(word, "(" | "[")) - i32::from(matches!(word, ")" | "]"));
        (0..at).map(|place| depth(sentence.word(place))).sum::<i32>() == 0
    };
    if role == PartRole::Muscle && atoms.iter().enumerate().any(|(at, atom)| passes(&atom.kind) && is_said(at)) {
        return Vec::new();
    }
    let mut sides = Vec::new();
    let mut at = 0;
    while at < atoms.len() {
        let word = sentence.word(at);
        // "all flexors but flexor carpi ulnaris"
        let takes_out = word == "but" && (0..at).any(|place| lexicon::means_all(sentence.word(place)));
        if lexicon::is_exception(word)
            || takes_out
            || lexicon::is_negation(word)
            || (role == PartRole::Nerve && lexicon::is_not_motor(word))
            || sentence.is_struck(at)
        {
            break;
        }
        if matches!(word, "(" | "[") && role != PartRole::Segments {
            let behind = sentence.behind_bracket(at);
            if behind > at {
                at = behind;
                continue;
            }
        }
        match &atoms.get(at).map(|atom| &atom.kind) {
            Some(AtomKind::Name(_)) if role == PartRole::Landmark && sentence.is_place_within(at) => {}
            // "the phrenic nerve, on scalenus anterior": the muscle tells where.
            Some(AtomKind::Name(_)) if role == PartRole::Muscle && sentence.tells_where(at) => {}
            // "Spines C7 to T12" are those of vertebrae, whatever single spine goes by the word.
            Some(AtomKind::Name(_)) if role == PartRole::Landmark && lexicon::is_of_many(&sentence.written(at)) => {}
            // "the deep branch of the ulnar": the branch is meant.
            Some(AtomKind::Name(_)) if role == PartRole::Nerve && sentence.is_stem_of_last(at, &sides) => {}
            // "IV, V1, VI": beside other nerves a number is one, whatever muscle goes by the same letters.
            Some(AtomKind::Name(_))
                if role == PartRole::Nerve && lexicon::is_cranial_number(&sentence.written(at).to_uppercase()) =>
            {
                sides.extend(sentence.side(at, role).or_else(|| sentence.bare_nerve(at).map(|(side, _)| side)));
            }
            Some(AtomKind::Name(_)) => sides.extend(sentence.side(at, role)),
            Some(AtomKind::Word) if role == PartRole::Nerve => {
                if let Some((side, end)) = sentence.bare_nerve(at) {
                    if !sentence.is_stem_of_last(at, &sides) {
                        sides.push(side);
                    }
                    at = end;
                    continue;
                }
            }
            Some(AtomKind::Segments(reading)) if role == PartRole::Segments => {
                sides.push(Side {
                    what: What::Segments(reading.main, reading.lesser),
                    span: sentence.source(at, at + 1),
                });
            }
            _ => {}
        }
        at += 1;
    }
    if role == PartRole::Segments && sides.len() > 1 {
        sides.clear();
    }
    sides
}

/// Reads the movements of a value, each with what it moves.
/// The last tells whether it is told in everyday words, which can mean several.
pub fn movement_values(scope: &Scope<'_>, from: usize, to: usize) -> Vec<(Side, Option<Side>, bool)> {
    let atoms = atoms_where(scope, from, to, &|mention| is_usable(mention, scope));
    let memory = Memory::default();
    let sentence = Sentence { scope, atoms: &atoms, memory: &memory };
    if !sentence.asserts() {
        return Vec::new();
    }
    let mut list = Vec::new();
    for at in 0..atoms.len() {
        let word = sentence.word(at);
        if lexicon::is_negation(word)
            || lexicon::is_hedge(word)
            || word == "resists"
            || word == "prevents"
            || word == "against"
        {
            break;
        }
        // "side-bends" is not "bends".
        let is_compound = at > 1 && lexicon::is_hyphen(sentence.word(at - 1)) && !sentence.word(at - 2).is_empty();
        if let Some(everyday) = sentence.everyday(at).filter(|_| !is_compound) {
            let side = Side { what: What::Entry(everyday.movements), span: sentence.source(at, at + 1) };
            list.push((side, Some(everyday.target), true));
            continue;
        }
        if let Some(AtomKind::Movement(movement)) = atoms.get(at).map(|atom| &atom.kind).filter(|_| !is_compound)
            && movement.form != MovementForm::Participle
        {
            let side = Side { what: What::Entry(vec![movement.movement]), span: sentence.source(at, at + 1) };
            list.push((side, sentence.moved(at).0, false));
        }
    }
    list
}

/// Reads a value that tells what a lesion takes away.
pub fn effects(scope: &Scope<'_>, from: usize, to: usize) -> Vec<Effect> {
    let atoms = atoms(scope, from, to);
    let memory = Memory::default();
    let sentence = Sentence { scope, atoms: &atoms, memory: &memory };
    // What names a nerve or a root of its own tells what is lost with that one.
    let names_another = (0..atoms.len()).any(|at| {
        sentence.class(at) == Some(0) || matches!(atoms.get(at).map(|atom| &atom.kind), Some(AtomKind::Segments(_)))
    });
    if !sentence.asserts() || names_another || sentence.tells_of_muscle_palsy() {
        return Vec::new();
    }
    let ends = |at: usize| matches!(sentence.word(at), "," | ";" | "/" | "+" | "." | "and" | "with");
    let begins = |at: usize| {
        at == 0
            || (ends(at - 1)
                && (sentence.sign_at(at).is_some()
                    || sentence.loss_at(at) > 0
                    || matches!(atoms.get(at).map(|atom| &atom.kind), Some(AtomKind::Movement(movement))
                        if movement.form == MovementForm::Noun)))
    };
    let mut effects: Vec<Effect> = Vec::new();
    for start in (0..atoms.len()).filter(|at| begins(*at)) {
        let end = (start..atoms.len()).find(|at| matches!(sentence.word(*at), "," | ";" | ".")).unwrap_or(atoms.len());
        // "dorsiflexion normal"
        if (start..end).any(|at| sentence.spared_at(at) > 0 || lexicon::is_hedge(sentence.word(at))) {
            continue;
        }
        for effect in sentence.effects_from(start, true) {
            if !effects.iter().any(|known| known.parts == effect.parts) {
                effects.push(effect);
            }
        }
    }
    effects
}

impl Sentence<'_, '_> {
    /// Whether the name at an atom only tells whose branch was named before: "the deep branch *of the ulnar*".
    fn is_stem_of_last(&self, at: usize, sides: &[Side]) -> bool {
        let mut before = at;
        while before.checked_sub(1).is_some_and(|place| lexicon::is_determiner(self.word(place))) {
            before -= 1;
        }
        let follows_of = before.checked_sub(1).is_some_and(|place| self.word(place) == "of");
        let behind_name = before.checked_sub(2).is_some_and(|place| self.mention(place).is_some());
        follows_of && behind_name && !sides.is_empty()
    }

    /// Whether the name at an atom stands behind a word of place.
    fn tells_where(&self, at: usize) -> bool {
        let before = (0..at).rev().find(|place| !lexicon::is_determiner(self.word(*place)));
        before.is_some_and(|place| matches!(self.word(place), "on" | "behind" | "beside" | "beneath" | "under"))
    }

    /// "floor of the orbit": the name tells what holds the place that is meant.
    fn is_place_within(&self, at: usize) -> bool {
        let mut before = at;
        while before.checked_sub(1).is_some_and(|place| lexicon::is_determiner(self.word(place))) {
            before -= 1;
        }
        let Some(of) = before.checked_sub(1).filter(|place| self.word(*place) == "of") else { return false };
        of.checked_sub(1).is_some_and(|noun| {
            let word = self.word(noun);
            !word.is_empty() && !lexicon::is_part_noun(word) && !lexicon::is_stretch(word)
        })
    }
}
