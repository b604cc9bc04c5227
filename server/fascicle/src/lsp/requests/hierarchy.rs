//! Call hierarchy (where a nerve comes from, what it reaches) and type hierarchy (what something is a part or kind of).

use fascicle_analysis::features::hierarchy::{self, JointClass, Step};
use fascicle_vocab::EntryId;
use serde_json::json;
use tower_lsp::lsp_types as lsp;

use super::navigation;
use crate::course::Course;
use crate::lsp::library;
use crate::lsp::state::View;
use crate::lsp::to_proto;

/// What holds for all items of an answer.
#[derive(Clone, Copy)]
struct Frame<'a> {
    course: &'a Course,
    virtual_documents: bool,
    /// The document for which the hierarchy was begun: its course decides what entries there are.
    of: Option<&'a lsp::Url>,
}

impl<'a> Frame<'a> {
    fn of_view(view: &'a View) -> Self {
        Self { course: &view.course, virtual_documents: view.can.entry_documents, of: Some(&view.uri) }
    }
}

/// `textDocument/prepareCallHierarchy`
pub fn prepare_calls(view: &View, position: lsp::Position) -> Option<Vec<lsp::CallHierarchyItem>> {
    let place = navigation::place(view, position)?;
    let items = place.entries.iter().filter_map(|id| call_item(Frame::of_view(view), *id, None));
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
    let of = navigation::about(item.data.as_ref());
    let frame = Frame { course, virtual_documents, of: of.as_ref() };
    let call = |step: Step| {
        let from = call_item(frame, step.entry, Some(step))?;
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
    let of = navigation::about(item.data.as_ref());
    let frame = Frame { course, virtual_documents, of: of.as_ref() };
    let call = |step: Step| {
        let to = call_item(frame, step.entry, Some(step))?;
        Some(lsp::CallHierarchyOutgoingCall { from_ranges: vec![item.selection_range], to })
    };
    Some(hierarchy::outgoing(id, vocabulary).into_iter().filter_map(call).collect())
}

/// The item of an entry.
fn call_item(frame: Frame<'_>, id: EntryId, step: Option<Step>) -> Option<lsp::CallHierarchyItem> {
    let entry = frame.course.knowledge().vocabulary.entry(id);
    let location = library::location(frame.course, frame.virtual_documents, id)?;
    Some(lsp::CallHierarchyItem {
        name: entry.name().to_owned(),
        kind: to_proto::symbol_kind(entry.kind),
        tags: None,
        detail: Some(detail(entry.kind.word(), step)),
        uri: location.uri,
        range: location.range,
        selection_range: location.range,
        data: Some(json!({ "entry": entry.id, "of": frame.of })),
    })
}

/// `textDocument/prepareTypeHierarchy`
pub fn prepare_types(view: &View, position: lsp::Position) -> Option<Vec<lsp::TypeHierarchyItem>> {
    let place = navigation::place(view, position)?;
    let items = place.entries.iter().filter_map(|id| type_item(Frame::of_view(view), *id, None));
    Some(items.collect())
}

/// `typeHierarchy/supertypes`
pub fn supertypes(
    course: &Course,
    virtual_documents: bool,
    item: &lsp::TypeHierarchyItem,
) -> Option<Vec<lsp::TypeHierarchyItem>> {
    let of = navigation::about(item.data.as_ref());
    let frame = Frame { course, virtual_documents, of: of.as_ref() };
    if let Some(class) = class_of(item.data.as_ref()) {
        return Some(class.above().map(|above| class_item(frame, &above, item)).into_iter().collect());
    }
    let id = entry_of(course, item.data.as_ref())?;
    let vocabulary = &course.knowledge().vocabulary;
    let steps = hierarchy::above(id, vocabulary);
    let mut list: Vec<_> = steps.into_iter().filter_map(|step| type_item(frame, step.entry, Some(step))).collect();
    list.extend(hierarchy::joint_classes(id, vocabulary).iter().map(|class| class_item(frame, class, item)));
    Some(list)
}

/// `typeHierarchy/subtypes`
pub fn subtypes(
    course: &Course,
    virtual_documents: bool,
    item: &lsp::TypeHierarchyItem,
) -> Option<Vec<lsp::TypeHierarchyItem>> {
    let of = navigation::about(item.data.as_ref());
    let frame = Frame { course, virtual_documents, of: of.as_ref() };
    let vocabulary = &course.knowledge().vocabulary;
    if let Some(class) = class_of(item.data.as_ref()) {
        let (kinds, joints) = hierarchy::below_class(&class, vocabulary);
        let kinds = kinds.iter().map(|kind| class_item(frame, kind, item));
        return Some(kinds.chain(joints.into_iter().filter_map(|id| type_item(frame, id, None))).collect());
    }
    let id = entry_of(course, item.data.as_ref())?;
    let steps = hierarchy::below(id, vocabulary);
    Some(steps.into_iter().filter_map(|step| type_item(frame, step.entry, Some(step))).collect())
}

/// The item of a class of joints. The vocabulary has no place of its own for it, so it stands where it was met.
fn class_item(frame: Frame<'_>, class: &JointClass, met: &lsp::TypeHierarchyItem) -> lsp::TypeHierarchyItem {
    lsp::TypeHierarchyItem {
        name: class.name(),
        kind: lsp::SymbolKind::INTERFACE,
        tags: None,
        detail: Some("class of joints".to_owned()),
        uri: met.uri.clone(),
        range: met.range,
        selection_range: met.selection_range,
        data: Some(json!({ "class": class.class, "subtype": class.subtype, "of": frame.of })),
    }
}

fn class_of(data: Option<&serde_json::Value>) -> Option<JointClass> {
    let text = |key: &str| data?.get(key)?.as_str().map(str::to_owned);
    Some(JointClass { class: text("class")?, subtype: text("subtype") })
}

/// The same for a hierarchy of types, whose items have the same fields.
fn type_item(frame: Frame<'_>, id: EntryId, step: Option<Step>) -> Option<lsp::TypeHierarchyItem> {
    let lsp::CallHierarchyItem { name, kind, detail, uri, range, selection_range, data, .. } =
        call_item(frame, id, step)?;
    Some(lsp::TypeHierarchyItem { name, kind, tags: None, detail, uri, range, selection_range, data })
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
