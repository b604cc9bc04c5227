//! What the documents of a course state, kept so that what two of them say differently can be told in either.
//!
//! Reading statements takes longer than reading names, so it is done behind the index, a few documents at a time, and only
//! for documents that name a structure at all.

use std::collections::{BTreeMap, HashMap, HashSet};
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use fascicle_analysis::Form;
use fascicle_analysis::course::{Key, Stated, Value, stated};

use super::Course;
use super::index::{Index, Indexed, Stamp};

/// The statements of a course.
#[derive(Clone, Debug, Default)]
pub struct Statements {
    files: BTreeMap<PathBuf, (Stamp, Arc<[Stated]>)>,
    contested: HashSet<Key>,
    is_counted: bool,
}

impl Statements {
    /// What a document on disk states.
    pub fn of(&self, path: &Path) -> &[Stated] {
        self.files.get(path).map_or(&[], |(_, list)| list)
    }

    /// All of them, in the order of the paths.
    pub fn all(&self) -> impl Iterator<Item = (&Path, &Stated)> {
        self.files.iter().flat_map(|(path, (_, list))| list.iter().map(move |stated| (&**path, stated)))
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
    pub fn with(&self, read: Vec<(PathBuf, Stamp, Vec<Stated>)>, index: &Index) -> (Self, bool) {
        let mut files = self.files.clone();
        files.retain(|path, _| index.files.contains_key(path));
        let mut differs = files.len() != self.files.len();
        for (path, stamp, list) in read {
            differs |= self.of(&path) != &*list;
            files.insert(path, (stamp, list.into()));
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
        for stated in self.files.values().flat_map(|(_, list)| list.iter()) {
            if *first.entry(stated.key).or_insert(stated.value) != stated.value {
                self.contested.insert(stated.key);
            }
        }
        self.is_counted = true;
    }
}

/// Reads what a document on disk states; nothing if it is gone or no text.
pub fn read(path: &Path, course: &Course) -> Option<(Stamp, Vec<Stated>)> {
    let stamp = Stamp::of(path)?;
    let form = Form::of_name(path.file_name()?.to_str()?)?;
    let text = fs::read_to_string(path).ok()?;
    let reading = fascicle_analysis::read(&text, form, course.knowledge(), &course.settings.reading);
    Some((stamp, stated(&reading.claims)))
}
