//! `fascicle/entry`: an entry of the vocabulary as a read-only document.
//!
//! Its address is `fascicle://entry/ID.md`; clients fill the document that such an address opens with the answer.

use fascicle_analysis::card;
use serde::{Deserialize, Serialize};
use tower_lsp::lsp_types as lsp;

use crate::course::Course;

/// What is asked for.
#[derive(Debug, Deserialize)]
pub struct EntryParams {
    /// The document's address.
    pub uri: lsp::Url,
}

/// The answer; `null` if no entry has that address.
#[derive(Debug, Serialize)]
pub struct Entry {
    /// Identifier.
    id: String,
    /// Preferred name.
    name: String,
    /// The document, in Markdown.
    text: String,
}

/// The identifier that an address names.
fn identifier(uri: &lsp::Url) -> Option<&str> {
    if uri.scheme() != "fascicle" {
        return None;
    }
    uri.path().rsplit('/').next()?.strip_suffix(".md")
}

/// `fascicle/entry`
pub fn entry(course: &Course, params: &EntryParams) -> Option<Entry> {
    let vocabulary = &course.knowledge().vocabulary;
    let id = vocabulary.find(identifier(&params.uri)?)?;
    Some(Entry {
        id: vocabulary.entry(id).id.clone(),
        name: vocabulary.name(id).to_owned(),
        text: card::markdown(vocabulary, id),
    })
}
