//! The documents of a course: those that are open, as they stand in the editor, and the others, as they stand on disk.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use fascicle_analysis::Form;
use fascicle_vocab::{EntryId, Kind};
use tower_lsp::lsp_types::Url;

use super::document::Document;
use super::state::{Folder, View};
use crate::course::Course;
use crate::course::index::Indexed;

/// How many letters all forms of a word for a movement have in common ("flex").
const STEM: usize = 4;

/// What a text has that writes something which is no name.
enum Sign {
    /// This letter with a digit behind it ("C5", be it as the beginning of "C5–C8").
    Letter(String),
    /// A word that begins with this, in any case.
    Stem(String),
}

impl Sign {
    fn is_in(&self, text: &str) -> bool {
        match self {
            Self::Letter(letter) => {
                let is_digit = |at: usize| text.as_bytes().get(at).is_some_and(u8::is_ascii_digit);
                text.match_indices(&**letter).any(|(at, _)| is_digit(at + letter.len()))
            }
            Self::Stem(stem) => text.to_lowercase().contains(stem),
        }
    }
}

/// A snapshot of all documents that belong with one of them.
#[derive(Clone, Debug)]
pub struct Everywhere {
    /// The document that was asked about, or any.
    pub here: View,
    /// The open documents, that one among them, by address.
    pub open: Vec<View>,
    /// The folders with their indexes.
    pub folders: Vec<Folder>,
}

impl Everywhere {
    /// The same for an answer that is of use only while the document that was asked about is the latest version.
    pub fn only_latest(mut self) -> Self {
        self.here = self.here.only_latest();
        for view in &mut self.open {
            view.wish = self.here.wish.clone();
        }
        self
    }

    /// Whether somebody still waits for what is made of them.
    pub fn is_wanted(&self) -> bool {
        self.here.wish.holds()
    }

    /// Views of the documents that name one of these entries, read, each with the entries as its own course numbers them: the
    /// open ones first, then those on disk by path. It ends early once nobody waits for the answer.
    pub fn naming(&self, entries: &[EntryId]) -> impl Iterator<Item = (View, Vec<EntryId>)> + use<'_> {
        let signs = self.signs_of(entries);
        let list: Vec<(View, Vec<EntryId>)> =
            self.open.iter().map(|view| (view.clone(), self.entries_in(&view.course, entries))).collect();
        let mut paths: Vec<(&PathBuf, &Folder, Vec<EntryId>, bool)> = Vec::new();
        for folder in &self.folders {
            let own = self.entries_in(&folder.course, entries);
            let files = folder.index.files.iter();
            let names = |file: &Indexed| file.contents.of(&own).next().is_some();
            let files = files.map(|(path, file)| (path, names(file))).filter(|(_, names)| !signs.is_empty() || *names);
            paths.extend(files.map(|(path, names)| (path, folder, own.clone(), names)));
        }
        paths.sort_by_key(|(path, ..)| *path);
        paths.dedup_by_key(|(path, ..)| *path);
        let closed = paths.into_iter().filter_map(move |(path, folder, own, names)| {
            let view = self.closed(path, folder)?;
            (names || signs.iter().any(|sign| sign.is_in(view.text()))).then_some((view, own))
        });
        let wanted = list.into_iter().chain(closed).take_while(|_| self.is_wanted());
        wanted.filter(|(view, _)| view.wanted_reading().is_some())
    }

    /// Segments and movements are no names, so the index does not hold them: where one is asked for, the texts that have
    /// any of its signs are read.
    fn signs_of(&self, entries: &[EntryId]) -> Vec<Sign> {
        let vocabulary = &self.here.course.knowledge().vocabulary;
        let signs = |id: &EntryId| {
            let entry = vocabulary.entry(*id);
            match entry.kind {
                Kind::Root => {
                    let letter = entry.name().trim_end_matches(|c: char| c.is_ascii_digit());
                    vec![Sign::Letter(letter.to_owned())]
                }
                Kind::Movement => {
                    let verb = entry.verb.iter().map(|(verb, _)| verb);
                    let words = entry.names.iter().map(|name| &name.text).chain(verb).flat_map(|text| text.split(' '));
                    words.map(|word| Sign::Stem(word.chars().take(STEM).collect())).collect()
                }
                _ => Vec::new(),
            }
        };
        entries.iter().flat_map(signs).collect()
    }

    /// Entries of the course of the document that was asked about, as another course numbers them.
    fn entries_in(&self, course: &Course, entries: &[EntryId]) -> Vec<EntryId> {
        if course.knows_what(&self.here.course) {
            return entries.to_vec();
        }
        let (own, other) = (&self.here.course.knowledge().vocabulary, &course.knowledge().vocabulary);
        entries.iter().filter_map(|id| other.find(&own.entry(*id).id)).collect()
    }

    /// Whether a document is open.
    pub fn is_open(&self, uri: &Url) -> bool {
        self.open.binary_search_by(|view| view.uri.cmp(uri)).is_ok()
    }

    /// A view of a document on disk; `None` if it is open, or no text, or gone.
    pub fn closed(&self, path: &Path, folder: &Folder) -> Option<View> {
        let uri = Url::from_file_path(path).ok()?;
        if self.is_open(&uri) {
            return None;
        }
        let form = Form::of_name(path.file_name()?.to_str()?)?;
        let text = fs::read_to_string(path).ok()?;
        let document = Arc::new(Document::on_disk(form, &text));
        Some(View { uri, document, course: Arc::clone(&folder.course), ..self.here.clone() })
    }
}
