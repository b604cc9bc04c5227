//! `fascicle/tree`: the branch tree of what stands at a place, as a picture and as text.

use std::collections::BTreeMap;

use fascicle_analysis::features::places;
use fascicle_analysis::picture;
use fascicle_vocab::EntryId;
use serde::{Deserialize, Serialize};
use tower_lsp::lsp_types as lsp;

use crate::lsp::state::View;
use crate::lsp::{from_proto, to_proto};

/// What is asked for.
#[derive(Debug, Deserialize)]
#[serde(rename_all = "camelCase")]
pub struct TreeParams {
    /// The document.
    pub text_document: lsp::TextDocumentIdentifier,
    /// The place in it.
    pub position: lsp::Position,
    /// The entry whose tree is wanted, in place of what stands at the position.
    pub id: Option<String>,
}

/// The answer; `null` where no nerve belongs to the place.
#[derive(Debug, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Tree {
    /// Identifier of the entry that was found at the place.
    id: String,
    /// Its name.
    name: String,
    /// The nerve whose tree it is.
    nerve: String,
    /// The picture.
    svg: String,
    /// The same as lines of text.
    text: String,
    /// For each of these lines the entry that it names first, so that an editor without pictures can follow a choice.
    lines: Vec<Option<String>>,
    /// For entries of the tree that the document names: where it does so first.
    mentions: BTreeMap<String, lsp::Range>,
}

/// `fascicle/tree`
pub fn tree(view: &View, params: &TreeParams) -> Option<Tree> {
    let vocabulary = &view.course.knowledge().vocabulary;
    let wanted: Vec<EntryId> = match &params.id {
        Some(id) => vocabulary.find(id).into_iter().collect(),
        None => places::at(view.reading(), view.offset(from_proto::position(params.position)))?.entries,
    };
    let (id, tree) = wanted.into_iter().find_map(|id| Some((id, picture::branch_tree(vocabulary, id)?)))?;
    let shown: Vec<EntryId> =
        tree.rows.iter().flat_map(|row| row.parts.iter().filter_map(|(_, entry)| *entry)).collect();
    let mut mentions = BTreeMap::new();
    for place in places::all(view.reading()) {
        for entry in place.entries.iter().filter(|entry| shown.contains(entry)) {
            mentions.entry(vocabulary.entry(*entry).id.clone()).or_insert_with(|| to_proto::range(view, place.span));
        }
    }
    Some(Tree {
        id: vocabulary.entry(id).id.clone(),
        name: vocabulary.name(id).to_owned(),
        nerve: vocabulary.entry(tree.nerve).id.clone(),
        svg: tree.svg(vocabulary),
        text: tree.text(),
        lines: tree
            .rows
            .iter()
            .map(|row| row.parts.iter().find_map(|(_, id)| *id).map(|id| vocabulary.entry(id).id.clone()))
            .collect(),
        mentions,
    })
}
