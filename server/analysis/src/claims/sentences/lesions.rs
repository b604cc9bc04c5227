//! What a lesion is of: "injury to NERVE", "a NERVE palsy", "when NERVE is cut", "with NERVE gone", "a C5 lesion"; and where
//! along the nerve it sits ("at the wrist").

use fascicle_model::{EntryId, Kind, Segments};

use super::Sentence;
use super::atoms::{Atom, AtomKind};
use super::sides::Side;
use crate::claims::{PartRole, What};
use crate::lexicon::{self, Form};

/// The nerves of a lesion and the atoms that speak of it.
pub(super) struct Cause {
    pub(super) nerves: Vec<Side>,
    pub(super) from: usize,
    pub(super) to: usize,
    /// The landmark at which the nerve is hurt.
    pub(super) level: Option<Side>,
}

impl Sentence<'_, '_> {
    /// The lesion that the sentence speaks of; `None` if it speaks of none or of several.
    pub(super) fn cause(&self) -> Option<Cause> {
        let speaks_of_lesion = |atom: &Atom| {
            let word = &*atom.word;
            lexicon::is_lesion(word)
                || lexicon::lesions(word)
                || lexicon::is_cut(word)
                || lexicon::is_failing(word)
                || word == "out"
                || matches!(atom.kind, AtomKind::Relation(relation) if relation.form == Form::Participle)
        };
        if !self.atoms.iter().any(speaks_of_lesion) {
            return self.cause_before();
        }
        let mut causes: Vec<Cause> = Vec::new();
        let mut at = 0;
        while at < self.atoms.len() {
            let found = self.cause_at(at).filter(|(nerves, ..)| !nerves.is_empty());
            let Some((nerves, from, to)) = found else {
                at += 1;
                continue;
            };
            let (level, end) = self.level(to);
            causes.push(Cause { nerves, from, to: end, level });
            at = end;
        }
        match causes.len() {
            0 => self.implied_cause(),
            1 => causes.pop(),
            _ => None,
        }
    }

    /// "It also paralyses MUSCLE": the lesion of the sentence before.
    fn cause_before(&self) -> Option<Cause> {
        if self.memory.lesion.is_empty() {
            return None;
        }
        // "In people it also …"
        let pronoun = (0..3).find(|at| matches!(self.word(*at), "it" | "this"))?;
        let verb = (pronoun + 1..self.atoms.len())
            .find(|at| !lexicon::is_adverb(self.word(*at)) && !lexicon::is_auxiliary(self.word(*at)))?;
        let word = self.word(verb);
        let takes =
            lexicon::is_loss(word) || lexicon::is_spared(word) || lexicon::brings_about(word) || lexicon::leaves(word);
        takes.then(|| Cause { nerves: self.memory.lesion.clone(), from: pronoun, to: pronoun + 1, level: None })
    }

    /// "Damage causes a claw hand": the nerve of which the text speaks.
    fn implied_cause(&self) -> Option<Cause> {
        let injuries: Vec<usize> = (0..self.atoms.len()).filter(|at| lexicon::is_injury(self.word(*at))).collect();
        let [at] = *injuries else { return None };
        let names_a_nerve = (0..self.atoms.len()).any(|at| self.side(at, PartRole::Nerve).is_some());
        if names_a_nerve || lexicon::is_before_injured(self.word(at + 1)) {
            return None;
        }
        let nerves = self.implied(PartRole::Nerve, false);
        (nerves.len() == 1).then_some(Cause { nerves, from: at, to: at + 1, level: None })
    }

    fn cause_at(&self, at: usize) -> Option<(Vec<Side>, usize, usize)> {
        let word = self.word(at);
        let before = at.checked_sub(1).map_or("", |before| self.word(before));
        // "Division of", which may also be a branch of
        if matches!(self.atoms.get(at)?.kind, AtomKind::Relation(_)) {
            let begins = at == 0 || lexicon::is_preposition(before) || lexicon::is_condition(before);
            let first = self.first_token(at).to_lowercase();
            let group = (begins && first != "divisions" && lexicon::is_lesion(&first)).then(|| {
                let next = (at + 1..at + 4).find(|place| !lexicon::is_determiner(self.word(*place)))?;
                self.group_from(next, true)
            })??;
            return Some((self.sides(&group, PartRole::Nerve), at, group.end));
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
            while on < at + 7
                && self.mention(on).is_none()
                && !matches!(self.word(on), "" | "on" | "to" | "," | ";" | ".")
            {
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
            let noun = at + 1 + usize::from(matches!(self.word(at + 1), "root" | "nerve" | "segment"));
            return lexicon::is_lesion(self.word(noun)).then(|| (vec![roots], at, noun + 1));
        }
        // "an axillary nerve lesion", "ulnar palsy"
        let lesion_follows = (at + 1..at + 5).any(|place| lexicon::is_lesion(self.word(place)));
        let bare = if word.is_empty() || !lesion_follows { None } else { self.bare_nerve(at) };
        if let Some((side, end)) = bare
            && lexicon::is_lesion(self.word(end))
        {
            return Some((vec![side], at, end + 1));
        }
        // "when it is cut"
        if matches!(word, "it" | "they") {
            let end = self.hurt(at + 1, false)?;
            return Some((self.implied(PartRole::Nerve, word == "they"), at, end));
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

    /// Whether it is said from an atom on that a nerve is hurt: "is cut", "is out of action", "fails"; the atom behind.
    fn hurt(&self, at: usize, may_miss_verb: bool) -> Option<usize> {
        let mut next = at;
        while lexicon::is_auxiliary(self.word(next)) || lexicon::is_adverb(self.word(next)) {
            next += 1;
        }
        let word = self.word(next);
        let ends = next + 1 >= self.atoms.len() || lexicon::ends_phrase(self.word(next + 1));
        if lexicon::is_failing(word) && (ends || self.word(next + 1) == "the") {
            return Some(next + 1);
        }
        if next == at && !may_miss_verb {
            return None;
        }
        if word == "out" && self.word(next + 1) == "of" && self.word(next + 2) == "action" {
            return Some(next + 3);
        }
        lexicon::is_cut(word).then_some(next + 1)
    }

    /// Spinal segments as what is hurt, any of which may be the one that counts.
    fn roots_at(&self, at: usize) -> Option<Side> {
        let AtomKind::Segments(reading) = self.atoms.get(at)?.kind else { return None };
        let vocabulary = self.scope.vocabulary;
        let names: Vec<String> = reading.main.union(reading.lesser).iter().map(Segments::name).collect();
        let is_one = |id: EntryId| names.iter().any(|name| name == vocabulary.name(id));
        let roots: Vec<EntryId> =
            vocabulary.iter().filter(|(id, entry)| entry.kind == Kind::Root && is_one(*id)).map(|(id, _)| id).collect();
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
