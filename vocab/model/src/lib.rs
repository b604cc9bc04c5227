//! The data model of anatomical facts.
//!
//! A [`Vocabulary`] is a list of entries with their facts, read from TOML ([`read`]), checked ([`check`]), and asked
//! ([`graph`]). No text of an author, no file and no protocol is known here.

pub mod audit;
pub mod check;
pub mod coverage;
pub mod entry;
pub mod graph;
mod overlay;
pub mod problem;
pub mod read;
pub mod segments;

use std::collections::HashMap;

pub use entry::{
    Citation, Entry, EntryId, Fact, Kind, MOTIONS, Modality, Name, Region, Relation, Role, Source, Standing,
};
pub use problem::Problem;
pub use segments::Segments;

/// Entries and facts, with the indexes that questions need.
#[derive(Clone, Debug)]
pub struct Vocabulary {
    entries: Vec<Entry>,
    sources: Vec<Source>,
    by_id: HashMap<String, EntryId>,
    /// For every entry the facts of other entries that point at it: (owner, place of the fact in the owner's list).
    pointing: Vec<Vec<(EntryId, usize)>>,
    parts: Vec<Vec<EntryId>>,
    /// Words that the data files list as right.
    words: Vec<String>,
    /// The source whose reading of the segments a course has adopted.
    adopted: Option<String>,
    /// The files that a course has laid over it.
    overlays: Vec<String>,
}

impl Vocabulary {
    /// Makes the indexes over entries and sources. References must be places in `entries`.
    pub fn new(entries: Vec<Entry>, sources: Vec<Source>) -> Self {
        let mut pointing = vec![Vec::new(); entries.len()];
        let mut parts = vec![Vec::new(); entries.len()];
        let mut by_id = HashMap::with_capacity(entries.len());
        for (place, entry) in (0u32..).zip(entries.iter()) {
            let id = EntryId(place);
            by_id.insert(entry.id.clone(), id);
            for (number, fact) in entry.facts.iter().enumerate() {
                if let Some(slot) = fact.relation.target().and_then(|target| pointing.get_mut(target.0 as usize)) {
                    slot.push((id, number));
                }
            }
            if let Some(slot) = entry.part_of.and_then(|whole| parts.get_mut(whole.0 as usize)) {
                slot.push(id);
            }
        }
        Self { entries, sources, by_id, pointing, parts, words: Vec::new(), adopted: None, overlays: Vec::new() }
    }

    /// The same with words that names may have though no two names do.
    #[must_use]
    pub fn with_words(mut self, words: Vec<String>) -> Self {
        self.words = words;
        self
    }

    /// The same with the names of the files that a course laid over it.
    #[must_use]
    pub(crate) fn with_overlays<'a>(mut self, files: impl Iterator<Item = &'a str>) -> Self {
        self.overlays.extend(files.map(str::to_owned));
        self
    }

    /// The file of a course and the line in it at which the course writes an entry or changes it; `None` for an entry that
    /// is as the vocabulary has it.
    pub fn course_line(&self, id: EntryId) -> Option<(&str, u32)> {
        let entry = self.entry(id);
        self.overlays.contains(&entry.file).then_some((&entry.file, entry.line))
    }

    /// Words that the data files list as right, in lower case.
    pub fn words(&self) -> &[String] {
        &self.words
    }

    /// All entries; the place of an entry is its [`EntryId`].
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// All entries with their places.
    pub fn iter(&self) -> impl Iterator<Item = (EntryId, &Entry)> {
        (0..).map(EntryId).zip(self.entries.iter())
    }

    /// The bibliography.
    pub fn sources(&self) -> &[Source] {
        &self.sources
    }

    /// The entry at a place.
    ///
    /// # Panics
    /// Never for an id that this vocabulary gave out.
    pub fn entry(&self, id: EntryId) -> &Entry {
        &self.entries[id.0 as usize]
    }

    /// The preferred name of an entry.
    pub fn name(&self, id: EntryId) -> &str {
        self.entry(id).name()
    }

    /// The kind of an entry.
    pub fn kind(&self, id: EntryId) -> Kind {
        self.entry(id).kind
    }

    /// The entry that an identifier names.
    pub fn find(&self, id: &str) -> Option<EntryId> {
        self.by_id.get(id).copied()
    }

    /// The parts of an entry.
    pub fn parts(&self, id: EntryId) -> &[EntryId] {
        self.parts.get(id.0 as usize).map_or(&[], Vec::as_slice)
    }

    /// Facts of other entries that point at this one, with their owners.
    pub fn pointing_at(&self, id: EntryId) -> impl Iterator<Item = (EntryId, &Fact)> {
        let list = self.pointing.get(id.0 as usize).map_or(&[][..], Vec::as_slice);
        list.iter().filter_map(|(owner, number)| Some((*owner, self.entry(*owner).facts.get(*number)?)))
    }

    /// How many facts there are.
    pub fn fact_count(&self) -> usize {
        self.entries.iter().map(|entry| entry.facts.len()).sum()
    }
}
