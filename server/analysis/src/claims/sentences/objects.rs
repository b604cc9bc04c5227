//! What is done to: the names or segments behind a relation phrase.

use fascicle_model::{EntryId, Kind};

use super::Sentence;
use super::atoms::AtomKind;
use super::groups::Group;
use super::sides::Side;
use crate::claims::{ClaimKind, PartRole, segments};
use crate::lexicon::{self, Form};

/// What stands on the right of a relation phrase.
pub(super) enum Object {
    Names(Group),
    Segments(segments::Reading, usize),
    /// What a pronoun or a bare adjective stands for.
    Meant(Vec<Side>),
}

impl Sentence<'_, '_> {
    /// The object of a relation phrase that begins at an atom; it may be a pronoun ("supplies *it*", "of *that nerve*") or
    /// an adjective that names a nerve ("by *ulnar*").
    pub(super) fn object_of(&self, at: usize, role: PartRole) -> Option<Object> {
        if let Some(object) = self.object(at) {
            return Some(object);
        }
        let mut next = at;
        while lexicon::is_adverb(self.word(next)) {
            next += 1;
        }
        // "by *the same nerve*", and not "by the same nerve as"
        next += usize::from(lexicon::is_determiner(self.word(next)) && self.word(next + 1) == "same");
        let word = self.word(next);
        let ends = word != "same" || self.ends_clause(next + 2);
        let is_back = lexicon::points_back(word) && lexicon::is_kind_noun(self.word(next + 1)) && ends;
        let sides = if matches!(word, "it" | "them") || is_back {
            self.meant(next, role)
        } else if matches!(role, PartRole::Nerve | PartRole::Parent) {
            if lexicon::is_determiner(word) {
                next += 1;
            }
            let named = self.bare_nerve(next).filter(|(_, end)| lexicon::ends_noun(self.word(*end)));
            named.map(|(side, _)| side).into_iter().collect()
        } else {
            Vec::new()
        };
        (!sides.is_empty()).then_some(Object::Meant(sides))
    }

    /// What a pronoun behind a verb stands for: the subject of the sentence, where it fits and is not the verb's own; else
    /// that of the sentence before.
    fn meant(&self, at: usize, role: PartRole) -> Vec<Side> {
        let own = self.main_sides_ending_before(at, role);
        if own.is_empty() && self.word(at) == "them" && (0..at).any(|place| self.word(place) == ";") {
            // "Four muscles form GROUP; MUSCLE is one of *them*", and where the clause before names no group, they are
            // named nowhere: "several others do; MUSCLE is one of *them*".
            let group = (0..at).rev().find(|place| self.class(*place) == Some(2));
            return group.and_then(|group| self.side(group, role)).into_iter().collect();
        }
        let mut meant = if own.is_empty() { self.implied(role, self.word(at) == "them") } else { own };
        if role == PartRole::Group && self.word(at) == "them" {
            // "A is one of *them*": of several muscles, not of the parts of the one that was named last.
            let is_group = |id: &EntryId| self.scope.vocabulary.kind(*id) == Kind::Group;
            meant.retain(|side| side.what.entries().iter().all(is_group));
        }
        meant
    }

    /// The object of a relation phrase that begins at an atom.
    pub(super) fn object(&self, at: usize) -> Option<Object> {
        let mut at = at;
        let mut after_noun = false;
        loop {
            let atom = self.atoms.get(at)?;
            match &atom.kind {
                AtomKind::Name(_) => {
                    let group = self.group_from(at, true)?;
                    let last = group.members.last().copied().unwrap_or(at);
                    let has_part = (last + 1..last + 4).any(|place| lexicon::is_part_noun(self.word(place)));
                    let is_owner = self.is_possessive(last) && !has_part;
                    if self.word(group.end) == "'s" || is_owner {
                        return None;
                    }
                    return Some(Object::Names(group));
                }
                // "supplied by *a branch of* the radial nerve"
                AtomKind::Relation(_) if self.tells_branch(at) => at += 1,
                // "carries C1 to geniohyoid": fibres that only go along are no roots of what carries them.
                AtomKind::Segments(_) if self.word(at + 1) == "to" && self.class(at + 2) == Some(1) => return None,
                AtomKind::Segments(reading) => return Some(Object::Segments(*reading, at)),
                AtomKind::Word => {
                    let word = &*atom.word;
                    if lexicon::is_not_motor(word) || lexicon::is_negation(word) {
                        return None;
                    }
                    let skips = lexicon::is_determiner(word)
                        || lexicon::is_adverb(word)
                        || lexicon::is_muscle_noun(word)
                        || lexicon::means_all(word)
                        || lexicon::is_part_noun(word)
                        || lexicon::is_before_object(word)
                        || (after_noun && matches!(word, "of" | "in" | "to" | "from"));
                    if !skips {
                        return None;
                    }
                    after_noun = after_noun
                        || lexicon::is_part_noun(word)
                        || lexicon::is_muscle_noun(word)
                        || lexicon::is_division(word);
                    at += 1;
                }
                _ => return None,
            }
        }
    }

    /// "a branch of", "twigs from": words that leave the nerve behind them the one that supplies.
    pub(super) fn tells_branch(&self, at: usize) -> bool {
        let Some(AtomKind::Relation(relation)) = self.atoms.get(at).map(|atom| &atom.kind) else { return false };
        // "has its own branch from": a noun
        let is_noun = relation.form == Form::Participle
            || at.checked_sub(1).is_some_and(|place| {
                lexicon::is_determiner(self.word(place))
                    || matches!(
                        self.word(place),
                        "own" | "small" | "separate" | "special" | "direct" | "motor" | "muscular"
                    )
            });
        relation.kind == ClaimKind::Branching
            && is_noun
            && !lexicon::is_auxiliary(self.first_token(at))
            && self.written(at).split(' ').any(lexicon::is_part_noun)
    }

    /// "Posterior thigh - innervated by NERVE; MUSCLE, MUSCLE": the muscles stand behind a semicolon or colon.
    pub(super) fn listed_behind(&self, object: &Object) -> Vec<Side> {
        let Object::Names(group) = object else { return Vec::new() };
        if !matches!(self.word(group.end), ";" | ":") || self.class(group.end + 1) != Some(1) {
            return Vec::new();
        }
        let listed = self.group_from(group.end + 1, false);
        listed
            .filter(|listed| listed.end + 1 >= self.atoms.len() || matches!(self.word(listed.end), "." | "*" | ";"))
            .map(|listed| self.sides(&listed, PartRole::Muscle))
            .unwrap_or_default()
    }
}
