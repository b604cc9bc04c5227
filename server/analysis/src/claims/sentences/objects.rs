//! What is done to: the names or segments behind a relation phrase.

use super::Sentence;
use super::atoms::AtomKind;
use super::groups::Group;
use super::sides::Side;
use crate::claims::{PartRole, segments};
use crate::lexicon;

/// What stands on the right of a relation phrase.
pub(super) enum Object {
    Names(Group),
    Segments(segments::Reading, usize),
}

impl Sentence<'_, '_> {
    /// The object of a relation phrase that begins at an atom.
    pub(super) fn object(&self, at: usize) -> Option<Object> {
        let mut at = at;
        let mut after_noun = false;
        loop {
            let atom = self.atoms.get(at)?;
            match &atom.kind {
                AtomKind::Name(_) => {
                    let group = self.group_from(at, true)?;
                    if self.word(group.end) == "'s" {
                        return None;
                    }
                    return Some(Object::Names(group));
                }
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
                        || (after_noun && matches!(word, "of" | "in" | "to"));
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
