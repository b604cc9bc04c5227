//! The documents of a course: those that are open, as they stand in the editor, and the others, as they stand on disk.

use std::fs;
use std::path::PathBuf;
use std::sync::Arc;

use fascicle_analysis::Form;
use fascicle_vocab::EntryId;
use tower_lsp::lsp_types::Url;

use super::document::Document;
use super::state::View;
use crate::course::index::{Index, Stamp};

/// A snapshot of all documents that belong with one of them.
#[derive(Clone, Debug)]
pub struct Everywhere {
    /// The document that was asked about, or any.
    pub here: View,
    /// The open documents, that one among them.
    pub open: Vec<View>,
    /// The indexes of the folders.
    pub indexes: Vec<Arc<Index>>,
}

impl Everywhere {
    /// Views of the documents that name one of these entries: the open ones first, then those on disk by path.
    pub fn naming(&self, entries: &[EntryId]) -> impl Iterator<Item = View> {
        let mut list = self.open.clone();
        let mut paths: Vec<&PathBuf> = self
            .indexes
            .iter()
            .flat_map(|index| &index.files)
            .filter(|(_, file)| file.contents.of(entries).next().is_some())
            .map(|(path, _)| path)
            .collect();
        paths.sort();
        paths.dedup();
        list.extend(paths.into_iter().filter_map(|path| self.closed(path)));
        list.into_iter()
    }

    /// A view of a document on disk; `None` if it is open, or no text, or gone.
    pub fn closed(&self, path: &PathBuf) -> Option<View> {
        let uri = Url::from_file_path(path).ok()?;
        if self.open.iter().any(|view| view.uri == uri) {
            return None;
        }
        on_disk(&self.here, uri, path)
    }
}

/// A view of a file, for which holds what holds for another view.
pub fn on_disk(like: &View, uri: Url, path: &PathBuf) -> Option<View> {
    let form = Form::of_name(path.file_name()?.to_str()?)?;
    Stamp::of(path)?;
    let text = fs::read_to_string(path).ok()?;
    Some(View { uri, document: Arc::new(Document::on_disk(form, &text)), ..like.clone() })
}
