//! Claims of what a lesion takes away: one cause ("injury to NERVE", "when NERVE is cut"), and the effects before or behind
//! it: a muscle, a movement, feeling in an area, or a sign by its name.

use super::Sentence;
use super::atoms::AtomKind;
use super::sides::Side;
use crate::claims::{Claim, ClaimKind, Part, PartRole, What};
use crate::lexicon;

/// What a lesion is said to take away.
pub struct Effect {
    /// The muscle, the movement with its joint, the area, or the sign.
    pub parts: Vec<Part>,
    /// It is lost altogether, not only weakened.
    pub whole: bool,
}

impl Sentence<'_, '_> {
    /// "Injury to NERVE causes weakness of MUSCLE", "MUSCLE wastes after an ulnar lesion", "if NERVE is cut, the patient
    /// cannot extend the knee": one cause, and what is lost before or behind it.
    pub(super) fn deficits(&self) -> Vec<Claim> {
        let speaks_of_lesion = |word: &str| lexicon::is_lesion(word) || lexicon::lesions(word) || lexicon::is_cut(word);
        if !self.atoms.iter().any(|atom| speaks_of_lesion(&atom.word)) {
            return Vec::new();
        }
        let Some((nerves, from, to)) = self.cause() else { return Vec::new() };
        let is_denied = self.atoms.iter().any(|atom| {
            lexicon::is_spared(&atom.word)
                || (lexicon::is_negation(&atom.word) && !matches!(&*atom.word, "cannot" | "no"))
        });
        if is_denied {
            return Vec::new();
        }
        let hedged = self.clause_hedged(from);
        let mut effects: Vec<Effect> = Vec::new();
        let mut at = 0;
        while at < self.atoms.len() {
            if (from..to).contains(&at) {
                at = to;
                continue;
            }
            if lexicon::is_loss(self.word(at)) || self.sign_at(at).is_some() || lexicon::is_numbness(self.word(at)) {
                let behind = self.effects_from(at, false);
                let is_sign = self.sign_at(at).is_some();
                effects.extend(if behind.is_empty() && !is_sign { self.effect_before(at) } else { behind });
                // The words of loss of one effect stand together.
                while lexicon::is_loss(self.word(at + 1)) {
                    at += 1;
                }
                if is_sign {
                    at += 1;
                }
            }
            at += 1;
        }
        let mut claims: Vec<Claim> = Vec::new();
        for nerve in &nerves {
            for effect in &effects {
                let Some(first) = effect.parts.first() else { continue };
                let span = self.claim_span(from, nerve.span, first.span);
                let mut parts = vec![Part { role: PartRole::Nerve, span: nerve.span, what: nerve.what.clone() }];
                parts.extend(effect.parts.iter().cloned());
                if claims.iter().any(|known| known.parts == parts) {
                    continue;
                }
                let block = self.scope.block;
                claims.push(Claim {
                    kind: ClaimKind::Deficit,
                    span,
                    parts,
                    negated: false,
                    hedged,
                    all: effect.whole,
                    block,
                    key: None,
                });
            }
        }
        claims
    }

    /// The nerves whose lesion the sentence speaks of, and the atoms that say so; `None` if it speaks of none or of several.
    fn cause(&self) -> Option<(Vec<Side>, usize, usize)> {
        let mut causes: Vec<(Vec<Side>, usize, usize)> = Vec::new();
        let mut at = 0;
        while at < self.atoms.len() {
            let found = self.cause_at(at).filter(|(nerves, ..)| !nerves.is_empty());
            at = found.as_ref().map_or(at + 1, |(.., end)| *end);
            causes.extend(found);
        }
        if causes.len() == 1 { causes.pop() } else { None }
    }

    fn cause_at(&self, at: usize) -> Option<(Vec<Side>, usize, usize)> {
        let word = self.word(at);
        let before = at.checked_sub(1).map_or("", |before| self.word(before));
        if lexicon::is_lesion(word) || lexicon::lesions(word) {
            let mut next = at + 1;
            while lexicon::is_determiner(self.word(next))
                || (lexicon::is_lesion(word) && lexicon::is_before_injured(self.word(next)))
            {
                next += 1;
            }
            if next > at + 1 && self.mention(next).is_some() {
                let group = self.group_from(next, true)?;
                return Some((self.sides(&group, PartRole::Nerve), at, group.end));
            }
            let is_its = lexicon::is_lesion_of_last(before);
            return is_its.then(|| (self.implied(PartRole::Nerve, false), at, at + 1));
        }
        // "an axillary nerve lesion", "ulnar palsy"
        let lesion_follows = (at + 1..at + 5).any(|place| lexicon::is_lesion(self.word(place)));
        let bare = if word.is_empty() || !lesion_follows { None } else { self.bare_nerve(at) };
        if let Some((side, end)) = bare
            && lexicon::is_lesion(self.word(end))
        {
            return Some((vec![side], at, end + 1));
        }
        self.mention(at)?;
        let group = self.group_from(at, true)?;
        let nerves = self.sides(&group, PartRole::Nerve);
        if lexicon::is_lesion(self.word(group.end)) {
            return Some((nerves, at, group.end + 1));
        }
        // "when the nerve is cut"
        let mut next = group.end;
        while lexicon::is_auxiliary(self.word(next)) || lexicon::is_adverb(self.word(next)) {
            next += 1;
        }
        (next > group.end && lexicon::is_cut(self.word(next))).then_some((nerves, at, next + 1))
    }

    /// What a lesion is said to take away, from a word of loss on: muscles, movements, feeling, or a sign by its name. As a
    /// value ("Deficit: foot drop") it needs no word of loss.
    pub(super) fn effects_from(&self, start: usize, is_value: bool) -> Vec<Effect> {
        let mut effects: Vec<Effect> = Vec::new();
        let (mut whole, mut lost) = (false, is_value);
        let mut next = start;
        while next < self.atoms.len() {
            let word = self.word(next);
            lost |= lexicon::is_loss(word) && !lexicon::brings_about(word);
            whole |= lexicon::is_whole_loss(word);
            if let Some((sign, len)) = self.sign_at(next) {
                let span = self.source(next, next + 1).cover(self.source_of_tokens(next, len));
                effects
                    .push(Effect { parts: vec![Part { role: PartRole::Sign, span, what: What::Sign(sign) }], whole });
                break;
            }
            if lexicon::is_numbness(word)
                || (lexicon::is_loss(word)
                    && matches!(self.word(next + 1), "of")
                    && lexicon::is_numbness(self.word(next + 2)))
            {
                let mut at = next + 1;
                while lexicon::is_of_numbness(self.word(at)) {
                    at += 1;
                }
                let area = self.area(at);
                effects.extend(area.map(|side| Effect {
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
                    for side in self.sides(&group, PartRole::Muscle) {
                        effects.push(Effect {
                            parts: vec![Part { role: PartRole::Muscle, span: side.span, what: side.what }],
                            whole,
                        });
                    }
                    break;
                }
                Some(AtomKind::Movement(movement)) if lost => {
                    let (target, end) = self.moved(next);
                    let movement = self.with_adverb(next, end, movement);
                    let span = self.source(next, next + 1);
                    let mut parts =
                        vec![Part { role: PartRole::Movement, span, what: What::Entry(vec![movement.movement]) }];
                    parts.extend(target.map(|side| Part { role: PartRole::Joint, span: side.span, what: side.what }));
                    effects.push(Effect { parts, whole });
                    next += 1;
                    continue;
                }
                Some(AtomKind::Word) if matches!(word, "." | ";") || lexicon::is_not_motor(word) => break,
                _ => {}
            }
            let skips = next == start
                || lexicon::is_loss(word)
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

    /// The muscle or movement right before a word of loss: "brachialis wastes", "extension is lost".
    fn effect_before(&self, at: usize) -> Vec<Effect> {
        let whole = lexicon::is_whole_loss(self.word(at));
        let (before, ..) = self.before_verb(at);
        if let Some(group) = self.group_to(before) {
            let muscles = self.sides(&group, PartRole::Muscle);
            return muscles
                .into_iter()
                .map(|side| Effect {
                    parts: vec![Part { role: PartRole::Muscle, span: side.span, what: side.what }],
                    whole,
                })
                .collect();
        }
        Vec::new()
    }

    /// The sign of a lesion that begins at an atom, with how many words it has.
    fn sign_at(&self, at: usize) -> Option<(String, usize)> {
        let tokens = &self.scope.mentions.tokens;
        let from = self.atoms.get(at)?.from;
        let words: Vec<String> = tokens
            .iter()
            .skip(from)
            .take(4)
            .map(|token| token.span.of(&self.scope.plain.text).to_lowercase())
            .collect();
        self.scope.relations.sign_at(0, &|at| words.get(at).map_or("", String::as_str))
    }
}
