//! `textDocument/definition`, `declaration`, `typeDefinition`, `references`, `documentHighlight`, and `fascicle/entry`.

use std::sync::Arc;

use fascicle_analysis::features::places::{self, Place};
use fascicle_vocab::{EntryId, Kind};
use serde::{Deserialize, Serialize};
use tower_lsp::lsp_types as lsp;

use crate::course::Course;
use crate::findings;
use crate::lsp::state::{State, View};
use crate::lsp::{from_proto, library, to_proto};

/// The name at a position, or the spinal segment, or the movement.
pub fn place(view: &View, position: lsp::Position) -> Option<Place> {
    let at = view.offset(from_proto::position(position));
    places::any_at(view.reading(), at, view.course.knowledge())
}

/// `textDocument/definition`: where the structure is described.
pub fn definition(view: &View, position: lsp::Position) -> Option<lsp::GotoDefinitionResponse> {
    let place = place(view, position)?;
    let targets: Vec<lsp::Location> =
        place.entries.iter().filter_map(|id| library::location(&view.course, view.can.entry_documents, *id)).collect();
    if view.can.definition_links {
        let origin = to_proto::range(view, place.span);
        let link = |target: lsp::Location| lsp::LocationLink {
            origin_selection_range: Some(origin),
            target_uri: target.uri,
            target_range: target.range,
            target_selection_range: target.range,
        };
        return Some(lsp::GotoDefinitionResponse::Link(targets.into_iter().map(link).collect()));
    }
    Some(lsp::GotoDefinitionResponse::Array(targets))
}

/// `textDocument/typeDefinition`: where that is described of which the structure is a part or a member.
pub fn type_definition(view: &View, position: lsp::Position) -> Option<lsp::GotoDefinitionResponse> {
    let place = place(view, position)?;
    let vocabulary = &view.course.knowledge().vocabulary;
    let above = place.entries.iter().flat_map(|id| fascicle_analysis::features::hierarchy::above(*id, vocabulary));
    let targets = above.filter_map(|step| library::location(&view.course, view.can.entry_documents, step.entry));
    Some(lsp::GotoDefinitionResponse::Array(targets.collect()))
}

/// The names of a structure in a document; of a spinal segment also where it stands in a list or within a range, of a
/// movement every word for it.
pub fn names_of(view: &View, entries: &[EntryId]) -> Vec<Place> {
    let knowledge = view.course.knowledge();
    let is_about = |kind: Kind| entries.iter().any(|id| knowledge.vocabulary.kind(*id) == kind);
    let names_it = |place: &Place| place.entries.iter().any(|id| entries.contains(id));
    let mut list: Vec<Place> = places::all(view.reading()).filter(names_it).collect();
    if is_about(Kind::Root) {
        list.extend(places::roots(view.reading(), &knowledge.vocabulary).filter(names_it));
    }
    if is_about(Kind::Movement) {
        list.extend(places::movements(view.reading(), knowledge).filter(names_it));
    }
    list.sort_by_key(|place| (place.span.start, place.span.end));
    list.dedup_by_key(|place| place.span);
    list
}

/// `textDocument/documentHighlight`
pub fn highlight(view: &View, position: lsp::Position) -> Option<Vec<lsp::DocumentHighlight>> {
    let place = place(view, position)?;
    let names = names_of(view, &place.entries);
    let highlight = |place: Place| lsp::DocumentHighlight {
        range: to_proto::range(view, place.span),
        kind: Some(lsp::DocumentHighlightKind::TEXT),
    };
    Some(names.into_iter().map(highlight).collect())
}

/// `textDocument/linkedEditingRange`: the same name in the same block, written the same way.
pub fn linked(view: &View, position: lsp::Position) -> Option<lsp::LinkedEditingRanges> {
    let here = place(view, position).filter(|place| place.editable && !place.shared)?;
    let written = view.slice(here.span);
    let same = |place: &Place| place.editable && !place.shared && view.slice(place.span) == written;
    let ranges: Vec<lsp::Range> = places::in_block(view.reading(), here.block)
        .filter(same)
        .map(|place| to_proto::range(view, place.span))
        .collect();
    (ranges.len() > 1).then_some(lsp::LinkedEditingRanges { ranges, word_pattern: None })
}

/// The document for which something was offered that is now to be worked out: its course decides what entries there are.
pub fn about(data: Option<&serde_json::Value>) -> Option<lsp::Url> {
    serde_json::from_value(data?.get("of")?.clone()).ok()
}

/// What `fascicle/entry` asks for: an entry by its identifier, as the course of a document has it, or by the address of its
/// document; or the page of findings by its address.
#[derive(Debug, Deserialize)]
#[serde(rename_all = "camelCase")]
pub struct EntryParams {
    /// Identifier.
    id: Option<String>,
    /// Address.
    uri: Option<lsp::Url>,
    /// The document in which the identifier was met. Without one, the first course that has the entry is asked.
    text_document: Option<lsp::TextDocumentIdentifier>,
}

/// The courses that are asked for an entry, one after the other.
pub fn courses_of_entry(state: &mut State, params: &EntryParams) -> Vec<Arc<Course>> {
    if let Some(document) = &params.text_document {
        return vec![state.course_of(&document.uri)];
    }
    if let Some(uri) = params.uri.as_ref().filter(|uri| !library::is_findings(uri)) {
        let Some(shelf) = library::shelf_of(uri) else { return Vec::new() };
        // A course that is not open has no entries; the built-in vocabulary always has.
        let is_open = shelf.is_empty() || state.course_on(&shelf).is_some();
        return is_open.then(|| state.course_of(uri)).into_iter().collect();
    }
    let folders = state.folders.iter().map(|folder| &folder.course);
    folders.chain([&state.elsewhere]).cloned().collect()
}

/// The answer to `fascicle/entry`.
#[derive(Debug, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct EntryDocument {
    /// Identifier.
    id: String,
    /// Address.
    uri: Option<lsp::Url>,
    /// Markdown.
    text: String,
}

/// `fascicle/entry`
pub fn entry(course: &Course, virtual_documents: bool, params: &EntryParams) -> Option<EntryDocument> {
    if let Some(uri) = params.uri.clone().filter(library::is_findings) {
        return Some(EntryDocument { id: String::new(), uri: Some(uri), text: findings::PAGE.to_owned() });
    }
    let vocabulary = &course.knowledge().vocabulary;
    let by_id = params.id.as_deref().and_then(|id| vocabulary.find(id));
    let id = by_id.or_else(|| params.uri.as_ref().and_then(|uri| library::entry_at(course, uri)))?;
    Some(EntryDocument {
        id: vocabulary.entry(id).id.clone(),
        uri: library::address(course, virtual_documents, id),
        text: library::text(course, id),
    })
}
