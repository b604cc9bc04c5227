//! Groups: names joined by commas and conjunctions, with the brackets behind them, the quantifiers before them ("all",
//! "both heads of") and the members that are taken out ("except …").

use fascicle_model::Kind;

use super::Sentence;
use super::atoms::AtomKind;
use crate::claims::ClaimKind;
use crate::lexicon;

/// Names joined by commas and conjunctions.
#[derive(Clone, Debug, Default)]
pub(super) struct Group {
    /// Places of the atoms that name its members.
    pub(super) members: Vec<usize>,
    /// Members that are taken out.
    pub(super) except: Vec<usize>,
    /// The atom after it.
    pub(super) end: usize,
    /// "all", "both", "every"
    pub(super) all: bool,
    /// "medial half of", "two of": a part that the name does not tell.
    pub(super) partial: bool,
    /// "neither", "no"
    pub(super) denied: bool,
}

impl Sentence<'_, '_> {
    /// The group that begins with the name at an atom. As an object it ends before a name that has a verb of its own.
    pub(super) fn group_from(&self, at: usize, is_object: bool) -> Option<Group> {
        let class = self.class(at)?;
        let is_same = |other: u8| other == class || (class, other) == (1, 2) || (class, other) == (2, 1);
        let mut group = Group { members: vec![at], end: self.behind_bracket(at + 1), ..Group::default() };
        self.quantify(at, &mut group);
        loop {
            let mut next = group.end;
            let is_but = self.word(next) == "but" && self.mention(next + 1).is_some() && group.all;
            if is_but
                || lexicon::is_exception(self.word(next))
                || (self.word(next) == "apart" && self.word(next + 1) == "from")
                || (self.word(next) == "with" && self.word(next + 2) == "exception")
            {
                self.take_exceptions(next, &mut group);
                break;
            }
            let is_as_well = self.word(next) == "as" && self.word(next + 1) == "well";
            if !lexicon::is_conjunction(self.word(next)) && !is_as_well {
                break;
            }
            while lexicon::is_conjunction(self.word(next))
                || lexicon::carries_list_on(self.word(next))
                || lexicon::is_determiner(self.word(next))
                || lexicon::is_muscle_noun(self.word(next))
                || lexicon::is_adverb(self.word(next))
            {
                next += 1;
            }
            // "and the lateral two lumbricals", "and the medial half of flexor digitorum profundus"
            let mut part = next;
            while lexicon::tells_part(self.word(part))
                || lexicon::number(self.word(part)).is_some()
                || matches!(self.word(part), "first" | "last" | "of" | "the" | "all" | "both" | "two")
            {
                part += 1;
            }
            if part > next && matches!(class, 1 | 2) && self.class(part).is_some_and(is_same) {
                next = part;
            }
            // "by the median and by the ulnar nerve"
            let is_same_word = |word: &str| self.governs(at) == Some(word);
            if is_object
                && matches!(self.word(next), "by" | "from" | "via" | "through" | "to")
                && (self.word(next) != "through" || is_same_word("through"))
                && next > group.end
            {
                let mut name = next + 1;
                while lexicon::is_determiner(self.word(name)) {
                    name += 1;
                }
                if self.class(name).is_some_and(is_same) && self.ends_clause(self.behind_bracket(name + 1)) {
                    next = name;
                }
            }
            if !self.class(next).is_some_and(is_same) {
                break;
            }
            let behind = self.behind_bracket(next + 1);
            let has_own_verb = self.begins_predicate(behind) || matches!(self.word(behind), "from" | "by" | "via");
            if is_object && has_own_verb {
                break;
            }
            group.members.push(next);
            group.end = behind;
        }
        Some(group)
    }

    /// The word that governs the name at an atom: the preposition before it, or the last word of the phrase before it.
    fn governs(&self, at: usize) -> Option<&str> {
        let mut before = at;
        while before.checked_sub(1).is_some_and(|place| lexicon::is_determiner(self.word(place))) {
            before -= 1;
        }
        let atom = self.atoms.get(before.checked_sub(1)?)?;
        let token = self.scope.mentions.tokens.get(atom.to.checked_sub(1)?)?;
        Some(token.span.of(&self.scope.plain.text))
    }

    fn group_from_plain(&self, at: usize) -> Option<Group> {
        self.group_from(at, true)
    }

    /// The group that ends right before an atom.
    pub(super) fn group_to(&self, end: usize) -> Option<Group> {
        let mut last = end.checked_sub(1)?;
        if matches!(self.word(last), ")" | "]") {
            last = (0..last).rev().find(|place| matches!(self.word(*place), "(" | "["))?.checked_sub(1)?;
        }
        let class = self.class(last)?;
        let mut members = vec![last];
        let mut at = last;
        while let Some(mut before) = at.checked_sub(1) {
            while lexicon::is_determiner(self.word(before)) || lexicon::is_muscle_noun(self.word(before)) {
                let Some(next) = before.checked_sub(1) else { break };
                before = next;
            }
            if !lexicon::is_conjunction(self.word(before)) {
                break;
            }
            let mut joined = false;
            while lexicon::is_conjunction(self.word(before)) {
                joined |= self.word(before) != ",";
                let Some(next) = before.checked_sub(1) else { break };
                before = next;
            }
            if matches!(self.word(before), ")" | "]") {
                let Some(open) = (0..before)
                    .rev()
                    .find(|place| matches!(self.word(*place), "(" | "["))
                    .and_then(|open| open.checked_sub(1))
                else {
                    break;
                };
                before = open;
            }
            if self.class(before) != Some(class) || (members.len() == 1 && !joined) {
                break;
            }
            members.push(before);
            at = before;
        }
        members.reverse();
        if members.len() > 1 && members.first().is_some_and(|first| self.is_object_of_another(*first)) {
            members.drain(..members.len() - 1);
        }
        let first = members.first().copied()?;
        let mut group = Group { members, end, ..Group::default() };
        self.quantify(first, &mut group);
        Some(group)
    }

    /// What stands before a group: "all", "both heads of", "the medial half of".
    fn quantify(&self, at: usize, group: &mut Group) {
        let mut before = at;
        while let Some(place) = before.checked_sub(1) {
            let word = self.word(place);
            // "the deep *and not the superficial* branch"
            let is_set_against =
                word == "not" && place.checked_sub(1).is_some_and(|before| lexicon::is_conjunction(self.word(before)));
            if matches!(word, "neither" | "no" | "none") || is_set_against {
                group.denied = true;
                break;
            }
            if lexicon::means_all(word) {
                group.all = true;
                if place.checked_sub(1).is_some_and(|before| lexicon::takes_back_all(self.word(before))) {
                    group.all = false;
                    group.partial = true;
                    break;
                }
            } else if lexicon::number(word).is_some_and(|number| number > 1)
                && place.checked_sub(1).is_some_and(|before| matches!(self.word(before), "the" | "all" | "these"))
            {
                // "the four muscles of": all there are
            } else if self.word(place + 1) == "of" && self.mention(place).is_some_and(|mention| mention.plural) {
                // "all heads of": the parts are named as well
            } else if matches!(word, "intrinsic" | "extrinsic" | "small" | "short" | "skeletal" | "voluntary") {
                // "all the intrinsic muscles of": a word of the name that the name does without
            } else if lexicon::means_part(word) {
                group.partial = true;
            } else if !(lexicon::is_determiner(word) || lexicon::is_muscle_noun(word) || word == "of" || word == "in") {
                break;
            }
            before = place;
        }
    }

    fn take_exceptions(&self, at: usize, group: &mut Group) {
        let mut next = at;
        while next < self.atoms.len()
            && self.mention(next).is_none()
            && !matches!(self.word(next), "." | ";" | ":")
            && !self.begins_predicate(next)
        {
            next += 1;
        }
        if self.begins_predicate(next) {
            group.end = next; // "all bar one are"
            return;
        }
        if let Some(except) = self.mention(next).and_then(|_| self.group_from_plain(next)) {
            group.end = except.end;
            group.except = except.members;
        }
    }

    /// Whether the sentence has a word that speaks of exceptions, so that "all" need not mean all.
    pub(super) fn speaks_of_exceptions(&self) -> bool {
        let is_without = |at: usize| at.checked_sub(1).is_some_and(|place| self.word(place) == "without");
        (0..self.atoms.len()).any(|at| lexicon::speaks_of_exceptions(self.word(at)) && !is_without(at))
    }

    /// The names that the clause of an atom takes out: "all … except X", "with the exception of X, every …".
    pub(super) fn taken_out(&self, at: usize) -> Vec<usize> {
        let ends = |place: &usize| matches!(self.word(*place), ";" | ":" | "—");
        let start = (0..at).rev().find(ends).map_or(0, |place| place + 1);
        let end = (at..self.atoms.len()).find(ends).unwrap_or(self.atoms.len());
        let mut list = Vec::new();
        let mut place = start;
        while place < end {
            if self.mention(place).is_some()
                && self.is_exception_to(place)
                && let Some(group) = self.group_from(place, true)
            {
                place = group.end.max(place + 1);
                list.extend(group.members);
            } else {
                place += 1;
            }
        }
        list
    }

    /// Whether the name at an atom is taken out of what stands before it: "all muscles but X".
    pub(super) fn is_exception_to(&self, at: usize) -> bool {
        let mut before = at;
        while before.checked_sub(1).is_some_and(|place| lexicon::is_determiner(self.word(place))) {
            before -= 1;
        }
        let Some(place) = before.checked_sub(1) else { return false };
        let word = self.word(place);
        let two = place.checked_sub(1).map_or("", |place| self.word(place));
        // "…, *but* A is" begins a clause of its own.
        lexicon::is_exception(word)
            || (word == "but" && two != ",")
            || (word == "from" && two == "apart")
            || (word == "of" && two == "exception")
            || (word == "than" && two == "other")
            || (word == "for" && matches!(two, "except" | "save"))
    }

    /// Whether a verb or another word of content stands right before a name, so that what follows an "and" behind it
    /// begins a clause of its own.
    fn is_object_of_another(&self, at: usize) -> bool {
        let mut before = at;
        while before.checked_sub(1).is_some_and(|place| {
            lexicon::is_determiner(self.word(place))
                || lexicon::means_all(self.word(place))
                || lexicon::is_muscle_noun(self.word(place))
        }) {
            before -= 1;
        }
        let Some(place) = before.checked_sub(1) else { return false };
        match self.atoms.get(place).map(|atom| &atom.kind) {
            Some(AtomKind::Relation(_) | AtomKind::Movement(_)) => true,
            Some(AtomKind::Word) => {
                let word = self.word(place);
                let leads = lexicon::is_conjunction(word)
                    || lexicon::is_contrast(word)
                    || lexicon::is_preposition(word)
                    || lexicon::is_adverb(word)
                    || lexicon::is_part_noun(word)
                    || lexicon::is_negation(word);
                word.chars().all(char::is_alphabetic) && !leads
            }
            _ => false,
        }
    }

    /// The atom behind a bracket that opens at an atom; the atom itself if none does.
    pub(super) fn behind_bracket(&self, at: usize) -> usize {
        if !matches!(self.word(at), "(" | "[") {
            return at;
        }
        (at + 1..self.atoms.len()).find(|place| matches!(self.word(*place), ")" | "]")).map_or(at, |close| close + 1)
    }

    pub(super) fn is_place(&self, group: &Group) -> bool {
        group.members.first().is_some_and(|at| {
            self.mention(*at).is_some_and(|mention| {
                mention.candidates.iter().all(|id| {
                    matches!(self.scope.vocabulary.kind(*id), Kind::Landmark | Kind::Joint | Kind::Skin | Kind::Group)
                })
            })
        })
    }

    /// Whether the name at an atom hangs on a preposition, so that it is no subject.
    pub(super) fn is_governed(&self, at: usize) -> bool {
        let mut before = at;
        while let Some(place) = before.checked_sub(1) {
            let word = self.word(place);
            if lexicon::is_determiner(word) || lexicon::means_all(word) || lexicon::is_muscle_noun(word) {
                before = place;
                continue;
            }
            // "the *continuation of* A": not A is spoken of, but what goes on with it.
            if let Some(AtomKind::Relation(relation)) = self.atoms.get(place).map(|atom| &atom.kind)
                && relation.kind == ClaimKind::Renaming
                && relation.phrase.ends_with(" of")
            {
                return true;
            }
            if word == "of" {
                let noun = place.checked_sub(1).map_or("", |noun| self.word(noun));
                return !lexicon::is_part_noun(noun);
            }
            return lexicon::is_preposition(word);
        }
        false
    }
}
