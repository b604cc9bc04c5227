//! Call hierarchy (where a nerve comes from, what it reaches) and type hierarchy (what something is a part or kind of).

use fascicle_analysis::features::hierarchy::{self, Step};
use fascicle_vocab::EntryId;
use serde_json::json;
use tower_lsp::lsp_types as lsp;

use super::navigation;
use crate::course::Course;
use crate::lsp::library;
use crate::lsp::state::View;
use crate::lsp::to_proto;

/// `textDocument/prepareCallHierarchy`
pub fn prepare_calls(view: &View, position: lsp::Position) -> Option<Vec<lsp::CallHierarchyItem>> {
    let place = navigation::place(view, position)?;
    let items = place.entries.iter().filter_map(|id| call_item(&view.course, view.can.entry_documents, *id, None));
    Some(items.collect())
}

/// `callHierarchy/incomingCalls`
pub fn incoming(
    course: &Course,
    virtual_documents: bool,
    item: &lsp::CallHierarchyItem,
) -> Option<Vec<lsp::CallHierarchyIncomingCall>> {
    let vocabulary = &course.knowledge().vocabulary;
    let id = entry_of(course, item.data.as_ref())?;
    let call = |step: Step| {
        let from = call_item(course, virtual_documents, step.entry, Some(step))?;
        Some(lsp::CallHierarchyIncomingCall { from_ranges: vec![from.selection_range], from })
    };
    Some(hierarchy::incoming(id, vocabulary).into_iter().filter_map(call).collect())
}

/// `callHierarchy/outgoingCalls`
pub fn outgoing(
    course: &Course,
    virtual_documents: bool,
    item: &lsp::CallHierarchyItem,
) -> Option<Vec<lsp::CallHierarchyOutgoingCall>> {
    let vocabulary = &course.knowledge().vocabulary;
    let id = entry_of(course, item.data.as_ref())?;
    let call = |step: Step| {
        let to = call_item(course, virtual_documents, step.entry, Some(step))?;
        Some(lsp::CallHierarchyOutgoingCall { from_ranges: vec![item.selection_range], to })
    };
    Some(hierarchy::outgoing(id, vocabulary).into_iter().filter_map(call).collect())
}

fn call_item(
    course: &Course,
    virtual_documents: bool,
    id: EntryId,
    step: Option<Step>,
) -> Option<lsp::CallHierarchyItem> {
    let entry = course.knowledge().vocabulary.entry(id);
    let location = library::location(course, virtual_documents, id)?;
    Some(lsp::CallHierarchyItem {
        name: entry.name().to_owned(),
        kind: to_proto::symbol_kind(entry.kind),
        tags: None,
        detail: Some(detail(entry.kind.word(), step)),
        uri: location.uri,
        range: location.range,
        selection_range: location.range,
        data: Some(json!({ "entry": entry.id })),
    })
}

/// `textDocument/prepareTypeHierarchy`
pub fn prepare_types(view: &View, position: lsp::Position) -> Option<Vec<lsp::TypeHierarchyItem>> {
    let place = navigation::place(view, position)?;
    let items = place.entries.iter().filter_map(|id| type_item(&view.course, view.can.entry_documents, *id, None));
    Some(items.collect())
}

/// `typeHierarchy/supertypes`
pub fn supertypes(
    course: &Course,
    virtual_documents: bool,
    item: &lsp::TypeHierarchyItem,
) -> Option<Vec<lsp::TypeHierarchyItem>> {
    let id = entry_of(course, item.data.as_ref())?;
    let steps = hierarchy::above(id, &course.knowledge().vocabulary);
    Some(steps.into_iter().filter_map(|step| type_item(course, virtual_documents, step.entry, Some(step))).collect())
}

/// `typeHierarchy/subtypes`
pub fn subtypes(
    course: &Course,
    virtual_documents: bool,
    item: &lsp::TypeHierarchyItem,
) -> Option<Vec<lsp::TypeHierarchyItem>> {
    let id = entry_of(course, item.data.as_ref())?;
    let steps = hierarchy::below(id, &course.knowledge().vocabulary);
    Some(steps.into_iter().filter_map(|step| type_item(course, virtual_documents, step.entry, Some(step))).collect())
}

fn type_item(
    course: &Course,
    virtual_documents: bool,
    id: EntryId,
    step: Option<Step>,
) -> Option<lsp::TypeHierarchyItem> {
    let entry = course.knowledge().vocabulary.entry(id);
    let location = library::location(course, virtual_documents, id)?;
    Some(lsp::TypeHierarchyItem {
        name: entry.name().to_owned(),
        kind: to_proto::symbol_kind(entry.kind),
        tags: None,
        detail: Some(detail(entry.kind.word(), step)),
        uri: location.uri,
        range: location.range,
        selection_range: location.range,
        data: Some(json!({ "entry": entry.id })),
    })
}

fn detail(kind: &str, step: Option<Step>) -> String {
    match step {
        Some(Step { how, variant: true, .. }) => format!("{how}, in some people"),
        Some(Step { how, .. }) => how.to_owned(),
        None => kind.to_owned(),
    }
}

fn entry_of(course: &Course, data: Option<&serde_json::Value>) -> Option<EntryId> {
    course.knowledge().vocabulary.find(data?.get("entry")?.as_str()?)
}
