//! What reading goes by: the vocabulary, and the indexes that are made of it once.

use fascicle_model::Vocabulary;

use crate::claims::Relations;
use crate::misspellings::SpellingIndex;
use crate::names::NameIndex;

/// What the reader knows: the vocabulary and what is derived from it, made once and shared by all documents.
#[derive(Debug)]
pub struct Knowledge {
    /// Entries and facts.
    pub vocabulary: Vocabulary,
    /// The index of their names.
    pub names: NameIndex,
    /// What tells a misspelled name.
    pub spelling: SpellingIndex,
    /// Relation words, ready to be matched.
    pub relations: Relations,
}

impl Knowledge {
    /// Derives what reading needs.
    pub fn new(vocabulary: Vocabulary) -> Self {
        let names = NameIndex::new(&vocabulary);
        let spelling = SpellingIndex::new(&vocabulary, &names);
        let relations = Relations::new(&vocabulary);
        Self { vocabulary, names, spelling, relations }
    }
}
