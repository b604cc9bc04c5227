//! What the documents of a course state and what they call things, kept so that what two of them say differently can be
//! told in either.
//!
//! Reading statements takes longer than reading names, so it is done behind the index, a few documents at a time, and only
//! for documents that name a structure at all.

use std::collections::{BTreeMap, HashMap, HashSet};
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use fascicle_analysis::Form;
use fascicle_analysis::consistency::Usage;
use fascicle_analysis::course::{Key, Stated, Value, stated};

use super::Course;
use super::index::{Index, Indexed, Stamp};

/// What is kept of a document.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Kept {
    /// What it states.
    pub stated: Vec<Stated>,
    /// What it calls things.
    pub usage: Usage,
}

/// The statements of a course.
#[derive(Clone, Debug, Default)]
pub struct Statements {
    files: BTreeMap<PathBuf, (Stamp, Arc<Kept>)>,
    contested: HashSet<Key>,
    is_counted: bool,
}

impl Statements {
    /// All of them, in the order of the paths.
    pub fn all(&self) -> impl Iterator<Item = (&Path, &Stated)> {
        self.files.iter().flat_map(|(path, (_, kept))| kept.stated.iter().map(move |stated| (&**path, stated)))
    }

    /// What each document on disk calls things, in the order of the paths.
    pub fn usages(&self) -> impl Iterator<Item = (&Path, &Usage)> {
        self.files.iter().map(|(path, (_, kept))| (&**path, &kept.usage))
    }

    /// Whether documents on disk say different things about something.
    pub fn is_contested(&self, key: &Key) -> bool {
        self.contested.contains(key)
    }

    /// The documents that are to be read again, or for the first time.
    pub fn missing<'a>(&'a self, index: &'a Index) -> impl Iterator<Item = &'a PathBuf> {
        let is_missing = |(path, indexed): &(&PathBuf, &Indexed)| {
            let names_something = !indexed.contents.spots.is_empty();
            names_something && self.files.get(*path).is_none_or(|(stamp, _)| *stamp != indexed.stamp)
        };
        index.files.iter().filter(is_missing).map(|(path, _)| path)
    }

    /// The same with what some documents state now, and without those that the index no longer has. Also whether anything
    /// differs.
    pub fn with(&self, read: Vec<(PathBuf, Stamp, Kept)>, index: &Index) -> (Self, bool) {
        let mut files = self.files.clone();
        files.retain(|path, _| index.files.contains_key(path));
        let mut differs = files.len() != self.files.len();
        for (path, stamp, kept) in read {
            differs |= files.get(&path).map_or(kept != Kept::default(), |(_, before)| **before != kept);
            files.insert(path, (stamp, kept.into()));
        }
        (Self { files, contested: self.contested.clone(), is_counted: self.is_counted && !differs }, differs)
    }

    /// Finds what is told in more than one way, once all documents are read.
    pub fn count(&mut self) {
        if self.is_counted {
            return;
        }
        let mut first: HashMap<Key, Value> = HashMap::new();
        self.contested.clear();
        for stated in self.files.values().flat_map(|(_, kept)| &kept.stated) {
            if *first.entry(stated.key).or_insert(stated.value) != stated.value {
                self.contested.insert(stated.key);
            }
        }
        self.is_counted = true;
    }
}

/// Reads what is to be kept of a document on disk; nothing if it is gone or no text.
pub fn read(path: &Path, course: &Course) -> Option<(Stamp, Kept)> {
    let stamp = Stamp::of(path)?;
    let form = Form::of_name(path.file_name()?.to_str()?)?;
    let text = fs::read_to_string(path).ok()?;
    let reading = fascicle_analysis::read(&text, form, course.knowledge(), &course.settings.reading);
    Some((stamp, Kept { stated: stated(&reading.claims), usage: reading.usage }))
}
