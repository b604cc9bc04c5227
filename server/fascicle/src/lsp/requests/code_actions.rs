//! `textDocument/codeAction` and `codeAction/resolve`: what can be done at a place.
//!
//! Fixes of findings come with their edits. What needs more work (a table, a tree, all fixes) is made when it is chosen,
//! if the client can wait for that; what is to be made stands in `data` with the version that it is for.

use fascicle_analysis::features::places::Place;
use fascicle_analysis::features::{insert, rename};
use fascicle_analysis::{Finding, Fix};
use fascicle_vocab::{EntryId, Kind, Standing};
use serde::{Deserialize, Serialize};
use serde_json::json;
use tower_lsp::jsonrpc::{Error, Result};
use tower_lsp::lsp_types as lsp;

use super::commands;
use crate::lsp::state::View;
use crate::lsp::{from_proto, to_proto};

/// What an action makes when it is chosen.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(rename_all = "camelCase")]
pub struct Later {
    /// The document.
    pub uri: lsp::Url,
    /// Its version when the action was offered.
    pub version: Option<i32>,
    /// What is made.
    make: Make,
}

#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(rename_all = "camelCase")]
enum Make {
    /// All safe fixes.
    FixAll,
    /// The supply table of an entry, before a line.
    Table { entry: String, line: u32 },
    /// The branch tree of an entry, before a line.
    Tree { entry: String, line: u32 },
}

/// `textDocument/codeAction`
pub fn code_actions(view: &View, params: &lsp::CodeActionParams) -> lsp::CodeActionResponse {
    let wants = |kind: &lsp::CodeActionKind| {
        params.context.only.as_ref().is_none_or(|only| {
            only.iter().any(|wanted| {
                kind == wanted || kind.as_str().strip_prefix(wanted.as_str()).is_some_and(|rest| rest.starts_with('.'))
            })
        })
    };
    let span = from_proto::span(view, params.range);
    let mut list: Vec<lsp::CodeAction> = Vec::new();
    if wants(&lsp::CodeActionKind::QUICKFIX) {
        let here = |finding: &&Finding| finding.span.start <= span.end && finding.span.end >= span.start;
        list.extend(view.reading().findings.iter().filter(here).flat_map(|finding| quick_fixes(view, finding)));
    }
    let place = fascicle_analysis::features::places::at(view.reading(), span.start);
    if let Some(place) = place {
        if wants(&lsp::CodeActionKind::REFACTOR_REWRITE) {
            list.extend(names(view, &place));
        }
        if wants(&lsp::CodeActionKind::SOURCE) {
            list.extend(insertions(view, &place));
        }
    }
    if wants(&lsp::CodeActionKind::SOURCE_FIX_ALL)
        && view.reading().findings.iter().any(|finding| safe(finding).is_some())
    {
        list.push(later(
            view,
            "Apply all safe fixes in this document",
            lsp::CodeActionKind::SOURCE_FIX_ALL,
            Make::FixAll,
        ));
    }
    list.into_iter().map(lsp::CodeActionOrCommand::CodeAction).collect()
}

fn quick_fixes<'a>(view: &'a View, finding: &'a Finding) -> impl Iterator<Item = lsp::CodeAction> + 'a {
    finding.fixes.iter().enumerate().map(move |(rank, fix)| lsp::CodeAction {
        title: fix.title.clone(),
        kind: Some(lsp::CodeActionKind::QUICKFIX),
        diagnostics: Some(vec![to_proto::diagnostic(view, finding)]),
        edit: Some(to_proto::workspace_edit(view, to_proto::text_edits(view, fix))),
        is_preferred: (rank == 0 && fix.safe).then_some(true),
        ..Default::default()
    })
}

/// The fix of a finding that may be applied without asking.
fn safe(finding: &Finding) -> Option<&Fix> {
    finding.fixes.first().filter(|fix| fix.safe)
}

/// Other names for the structure at a place: the preferred one, the Latin one, what an abbreviation stands for.
fn names(view: &View, place: &Place) -> Vec<lsp::CodeAction> {
    let [entry] = *place.entries else { return Vec::new() };
    if !place.editable || place.shared {
        return Vec::new();
    }
    let vocabulary = &view.course.knowledge().vocabulary;
    let written = view.slice(place.span);
    let action = |title: String, new: &str, plural: Option<&str>| {
        let edit = lsp::TextEdit {
            range: to_proto::range(view, place.span),
            new_text: rename::replacement(written, place, new, plural),
        };
        lsp::CodeAction {
            title,
            kind: Some(lsp::CodeActionKind::REFACTOR_REWRITE),
            edit: Some(to_proto::workspace_edit(view, vec![edit])),
            ..Default::default()
        }
    };
    let mut list = Vec::new();
    for name in rename::other_names(entry, written, vocabulary) {
        let title = match name.standing {
            Standing::Preferred if place.standing == Standing::Abbreviation => format!("Write out: {}", name.text),
            Standing::Preferred => format!("Use the preferred name: {}", name.text),
            Standing::Latin => format!("Use the Latin name: {}", name.text),
            Standing::Abbreviation => {
                let full = format!("{written} ({})", name.text);
                let edit = lsp::TextEdit { range: to_proto::range(view, place.span), new_text: full };
                list.push(lsp::CodeAction {
                    title: format!("Introduce the abbreviation {}", name.text),
                    kind: Some(lsp::CodeActionKind::REFACTOR_REWRITE),
                    edit: Some(to_proto::workspace_edit(view, vec![edit])),
                    ..Default::default()
                });
                format!("Abbreviate: {}", name.text)
            }
            _ => continue,
        };
        list.push(action(title, &name.text, name.plural.as_deref()));
    }
    list
}

/// The table and the tree of the nerve at a place, behind its block.
fn insertions(view: &View, place: &Place) -> Vec<lsp::CodeAction> {
    let [entry] = *place.entries else { return Vec::new() };
    let vocabulary = &view.course.knowledge().vocabulary;
    let id = vocabulary.entry(entry).id.clone();
    let name = vocabulary.name(entry);
    let is_one = |kinds: &[Kind]| kinds.contains(&vocabulary.kind(entry));
    let block = view.reading().blocks.list.get(place.block).map_or(place.span, |block| block.span);
    let line = view.position(block.end).line + 1;
    let mut list = Vec::new();
    if is_one(&[Kind::Nerve, Kind::Plexus, Kind::Group]) && insert::supply_table(entry, vocabulary).is_some() {
        let title = format!("Insert the supply table of {name}");
        list.push(later(view, &title, lsp::CodeActionKind::SOURCE, Make::Table { entry: id.clone(), line }));
    }
    if is_one(&[Kind::Nerve, Kind::Plexus]) && insert::branch_tree(entry, vocabulary).is_some() {
        let title = format!("Insert the branch tree of {name}");
        list.push(later(view, &title, lsp::CodeActionKind::SOURCE, Make::Tree { entry: id, line }));
    }
    list
}

/// An action whose edit is made when it is chosen, or now if the client cannot wait.
fn later(view: &View, title: &str, kind: lsp::CodeActionKind, make: Make) -> lsp::CodeAction {
    let edit = if view.can.resolve_edit { None } else { edit(view, &make) };
    let data = Later { uri: view.uri.clone(), version: view.document.version, make };
    lsp::CodeAction { title: title.to_owned(), kind: Some(kind), edit, data: Some(json!(data)), ..Default::default() }
}

fn edit(view: &View, make: &Make) -> Option<lsp::WorkspaceEdit> {
    let vocabulary = &view.course.knowledge().vocabulary;
    let entry = |id: &str| -> Option<EntryId> { vocabulary.find(id) };
    match make {
        Make::FixAll => Some(to_proto::workspace_edit(view, fix_all(view))),
        Make::Table { entry: id, line } => {
            let text = insert::supply_table(entry(id)?, vocabulary)?;
            Some(commands::insertion(view, *line, &text))
        }
        Make::Tree { entry: id, line } => {
            let text = insert::branch_tree(entry(id)?, vocabulary)?;
            Some(commands::insertion(view, *line, &text))
        }
    }
}

/// The edits of all safe fixes, but for those that touch what another one changes.
fn fix_all(view: &View) -> Vec<lsp::TextEdit> {
    let mut taken: Vec<fascicle_analysis::Span> = Vec::new();
    let mut edits = Vec::new();
    for fix in view.reading().findings.iter().filter_map(safe) {
        let touches = |span: fascicle_analysis::Span| taken.iter().any(|taken| taken.overlaps(span) || *taken == span);
        if fix.edits.iter().any(|edit| touches(edit.span)) {
            continue;
        }
        taken.extend(fix.edits.iter().map(|edit| edit.span));
        edits.extend(to_proto::text_edits(view, fix));
    }
    edits
}

/// The document that an action is for.
pub fn later_of(action: &lsp::CodeAction) -> Option<Later> {
    serde_json::from_value(action.data.clone()?).ok()
}

/// `codeAction/resolve`
///
/// # Errors
/// The document has changed since the action was offered.
pub fn resolve(view: &View, later: &Later, mut action: lsp::CodeAction) -> Result<lsp::CodeAction> {
    if later.version != view.document.version {
        return Err(Error::content_modified());
    }
    if action.edit.is_none() {
        action.edit = edit(view, &later.make);
    }
    Ok(action)
}
