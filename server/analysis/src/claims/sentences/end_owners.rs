//! Whose end a place is: the muscle, or the part of one, that a word of attachment speaks of. It stands right before the word,
//! is told by a part of it ("*its upper fibres*", "*the middle ones*"), or is left out and was spoken of before.

use fascicle_model::{EntryId, Kind};

use super::Sentence;
use super::groups::Group;
use super::sides::{Side, fits};
use crate::claims::{PartRole, What};
use crate::lexicon;

impl Sentence<'_, '_> {
    pub(super) fn names_no_nerve(&self) -> bool {
        (0..self.atoms.len()).all(|place| self.class(place) != Some(0))
    }

    /// Where the phrase for a part of a muscle begins that ends with an atom: "*the upper fibres*", "*its lower end*".
    pub(super) fn part_phrase(&self, last: usize) -> Option<usize> {
        if !lexicon::is_part_of_muscle(self.word(last)) {
            return None;
        }
        let mut start = last;
        while let Some(before) = start.checked_sub(1) {
            let word = self.word(before);
            if !(lexicon::is_determiner(word) || lexicon::describes_part(word)) {
                break;
            }
            start = before;
        }
        let is_led = start < last || self.word(last) == "all" || self.word(last) == "both";
        (is_led && self.begins_anew(start)).then_some(start)
    }

    /// Whether a clause, or one of several subjects, begins with an atom.
    pub(super) fn begins_anew(&self, at: usize) -> bool {
        at.checked_sub(1).is_none_or(|before| {
            let word = self.word(before);
            lexicon::begins_clause(word)
                || lexicon::is_contrast(word)
                || lexicon::is_bullet(word)
                || lexicon::is_adverb(word)
                || lexicon::keeps_subject(word)
                || matches!(word, "," | ")" | "where" | "because" | "as" | "since" | "so" | "when" | "whose" | "with")
        })
    }

    /// The muscle whose part a phrase speaks of: one that this sentence has named as its subject, or the one before.
    pub(super) fn owners_of_part(&self, start: usize) -> Vec<Side> {
        let owners = self.owners_of(start);
        // "External intercostals lift the ribs, *internal ones* …": of another muscle.
        let words: Vec<&str> = (start..start + 4).map(|place| self.word(place)).collect();
        let is_other = |side: &Side| {
            let first = side.what.entries().first();
            let name = first.map_or("", |id| self.scope.vocabulary.name(*id));
            let has = |word: &str| name.split(' ').any(|own| own == word);
            let row = name.split(' ').find_map(lexicon::contrast_of);
            row.is_some_and(|row| words.iter().any(|word| row.contains(word) && !has(word)))
        };
        if owners.iter().any(is_other) {
            return Vec::new();
        }
        let part = |side: &Side| self.part_told(start, side).unwrap_or_else(|| side.clone());
        owners.iter().map(part).collect()
    }

    /// "the *lower* ones", "its *anterior* fibres": the part of a muscle that an adjective tells, where it has a name.
    pub(super) fn part_told(&self, start: usize, owner: &Side) -> Option<Side> {
        let end = (start..start + 4).find(|place| lexicon::is_part_of_muscle(self.word(*place)))?;
        let adjective = end.checked_sub(1).filter(|place| *place >= start).map(|place| self.word(place))?;
        let vocabulary = self.scope.vocabulary;
        let [whole] = owner.what.entries() else { return None };
        let parts = vocabulary.all_parts(*whole);
        let names = vocabulary.entry(*whole).names.iter();
        let found = names
            .flat_map(|name| ["fibres", "part", "head"].map(|noun| format!("{adjective} {noun} of {}", name.text)));
        let part = found.flat_map(|name| self.scope.names.lookup(&name)).find(|name| parts.contains(&name.entry))?;
        Some(Side { what: What::Entry(vec![part.entry]), span: self.source(start, end + 1) })
    }

    pub(super) fn owners_of(&self, start: usize) -> Vec<Side> {
        let main = self.main_sides_ending_before(start, PartRole::Muscle);
        if !main.is_empty() {
            return main;
        }
        let named = (0..start).any(|place| matches!(self.class(place), Some(0..=2)) && !self.is_governed(place));
        if named { Vec::new() } else { self.muscle_spoken_of(matches!(self.word(start), "their")) }
    }

    /// The muscle of the sentence before or of the heading, unless that speaks of something else.
    pub(super) fn muscle_spoken_of(&self, plural: bool) -> Vec<Side> {
        let vocabulary = self.scope.vocabulary;
        let is_muscle =
            |subject: &super::Subject| subject.candidates.iter().any(|id| fits(vocabulary, PartRole::Muscle, *id));
        let is_other = |list: &[super::Subject]| !list.is_empty() && !list.iter().any(is_muscle);
        let is_of_other = |subject: &super::Subject| {
            subject
                .candidates
                .iter()
                .all(|id| vocabulary.is_neural(*id) || matches!(vocabulary.kind(*id), Kind::Landmark | Kind::Joint))
        };
        if is_other(&self.memory.subject)
            || (self.memory.named.is_empty() && self.scope.subjects.first().is_some_and(is_of_other))
        {
            return Vec::new();
        }
        // What the sentence before only names beside other things is not what it speaks of.
        if self.memory.subject.is_empty() && self.memory.named.len() > 1 {
            return Vec::new();
        }
        let sides = self.recalled(PartRole::Muscle, plural);
        // "their common tendon" is not that of one.
        let is_one = sides.len() == 1 && !sides.iter().all(|side| self.is_of_several(side));
        if plural && is_one { Vec::new() } else { sides }
    }

    /// Whether a side is a group, or a muscle of several parts.
    pub(super) fn is_of_several(&self, side: &Side) -> bool {
        let vocabulary = self.scope.vocabulary;
        let is_several = |id: &EntryId| vocabulary.kind(*id) == Kind::Group || vocabulary.parts(*id).len() > 1;
        side.what.entries().iter().any(is_several)
    }

    /// The muscles of which a word of attachment speaks that stands at `cue` and whose words begin at `before`.
    pub(super) fn ending_muscles(&self, cue: usize, before: usize, place: usize) -> Vec<Side> {
        // "the origin *of MUSCLE* is from"
        if self.word(cue + 1) == "of" {
            let name = (cue + 2..place).find(|at| !lexicon::is_determiner(self.word(*at)));
            if let Some(group) = name.filter(|at| self.mention(*at).is_some()).and_then(|at| self.group_from(at, true))
            {
                return self.sides(&group, PartRole::Muscle);
            }
        }
        let mut at = before;
        while let Some(place) = at.checked_sub(1) {
            let word = self.word(place);
            if lexicon::is_relative(word) && word != "that" || (word == "that" && self.is_relative_that(place)) {
                let antecedent = self.group_to(place - usize::from(place > 0 && self.word(place - 1) == ","));
                if antecedent.as_ref().is_some_and(|group| self.is_beside_what_is_defined(group)) {
                    return Vec::new(); // "A muscle behind MUSCLE that arises from"
                }
                if let Some(group) = antecedent {
                    return self.sides(&group, PartRole::Muscle);
                }
                at = place;
                continue;
            }
            if matches!(word, ";" | ":" | "." | "—" | "–" | "(" | ")") || lexicon::is_contrast(word) {
                // "MUSCLE: a broad sheet that springs from"
                let head = self.main_group().filter(|group| lexicon::is_value_sign(word) && group.end == place);
                return match head {
                    Some(head) => self.sides(&head, PartRole::Muscle),
                    None if lexicon::is_value_sign(word) => Vec::new(), // a label
                    None => self.subject_left_out(place + 1, before),
                };
            }
            // "…, winds round the thigh and *finishes* on": a verb that goes on with the subject of the one before
            if self.begins_other_subject(place) {
                return Vec::new();
            }
            let is_verb = lexicon::ending(word).is_some() && !lexicon::is_part_of_muscle(word) && word.ends_with('s');
            if is_verb && place > 0 && self.begins_anew(place) {
                return self.subject_left_out(place, place);
            }
            match self.class(place) {
                Some(1 | 2) => {
                    let Some(group) = self.group_to(place + 1) else { return Vec::new() };
                    let first = group.members.first().copied().unwrap_or(place);
                    if self.is_subject_at(first) {
                        return self.sides(&group, PartRole::Muscle);
                    }
                    at = first;
                    continue;
                }
                Some(_) if self.is_subject_at(place) => return Vec::new(),
                _ => {}
            }
            if lexicon::is_pronoun(word) && self.begins_anew(place) {
                let main = self.main_sides_ending_before(place, PartRole::Muscle);
                let plural = lexicon::is_plural_pronoun(word);
                if main.len() > 1 && !plural {
                    return Vec::new();
                }
                return if main.is_empty() { self.muscle_spoken_of(plural) } else { main };
            }
            if matches!(word, "its" | "their") && self.begins_anew(place) {
                return self.owners_of_part(place);
            }
            let is_next = || {
                (place + 1..before).all(|place| {
                    lexicon::is_adverb(self.word(place))
                        || lexicon::is_auxiliary(self.word(place))
                        || lexicon::is_relative(self.word(place))
                        || lexicon::fills_ending(self.word(place))
                        || self.written(place).split(' ').any(|word| lexicon::ending(word).is_some())
                })
            };
            if let Some(start) = self.part_phrase(place).filter(|_| is_next()) {
                return self.owners_of_part(start);
            }
            at = place;
        }
        self.subject_left_out(0, before)
    }

    /// Whether a subject that is not understood begins with an atom: "…, and *gravity* extends it", "…, and *the skin* …".
    pub(super) fn begins_other_subject(&self, at: usize) -> bool {
        let word = self.word(at);
        if word.is_empty() || at == 0 || !self.begins_anew(at) || !word.starts_with(char::is_alphabetic) {
            return false;
        }
        let is_article = lexicon::is_determiner(word) && !matches!(word, "its" | "their");
        let before_verb = self.begins_predicate(at + 1) && !lexicon::is_auxiliary(word) && !word.ends_with('s');
        let is_known = lexicon::is_adverb(word)
            || lexicon::is_pronoun(word)
            || lexicon::is_relative(word)
            || lexicon::is_preposition(word)
            || lexicon::fills_ending(word)
            || lexicon::is_helper(word)
            || lexicon::ending(word).is_some();
        is_article || (before_verb && !is_known)
    }

    /// Whether a "that" is relative: what stands before it is a noun of a muscle or a name.
    pub(super) fn is_relative_that(&self, at: usize) -> bool {
        at.checked_sub(1).is_some_and(|before| {
            let word = self.word(before);
            self.mention(before).is_some()
                || lexicon::is_part_of_muscle(word)
                || lexicon::is_kind_noun(word)
                || word == ","
        })
    }

    /// Whether the name at an atom is the subject of a clause: it hangs on no preposition, and a clause begins before it.
    pub(super) fn is_subject_at(&self, at: usize) -> bool {
        if self.is_governed(at) {
            return false;
        }
        let mut first = at;
        while first.checked_sub(1).is_some_and(|before| {
            let word = self.word(before);
            lexicon::is_determiner(word)
                || lexicon::means_all(word)
                || lexicon::is_muscle_noun(word)
                || lexicon::is_part_of_muscle(word)
                || lexicon::describes_part(word)
        }) {
            first -= 1;
        }
        self.begins_anew(first)
    }

    /// The subject of a clause that begins without one: that of the sentence, or what it stands under.
    pub(super) fn subject_left_out(&self, start: usize, before: usize) -> Vec<Side> {
        let is_plain = (start..before).all(|place| {
            let word = self.word(place);
            lexicon::is_adverb(word)
                || lexicon::is_auxiliary(word)
                || lexicon::is_conjunction(word)
                || lexicon::is_bullet(word)
                || lexicon::fills_ending(word)
                || lexicon::is_part_of_muscle(word)
                || lexicon::describes_part(word)
        });
        if !is_plain {
            return Vec::new();
        }
        if start > 0 {
            let main: Option<Group> = self.main_group().filter(|group| group.end <= start);
            if let Some(main) = main {
                return self.sides(&main, PartRole::Muscle);
            }
        }
        self.muscle_spoken_of(false)
    }
}
