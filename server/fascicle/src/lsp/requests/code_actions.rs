//! `textDocument/codeAction` and `codeAction/resolve`: what can be done at a place.
//!
//! Fixes of findings come with their edits. What needs more work (a table, a tree, all fixes) is made when it is chosen,
//! if the client can wait for that; what is to be made stands in `data` with the version that it is for.

use fascicle_analysis::features::places::Place;
use fascicle_analysis::features::{insert, rename};
use fascicle_analysis::lines::LineIndex;
use fascicle_analysis::misspellings::{MISSPELLED_NAME, MISSPELLED_WORD};
use fascicle_analysis::{Finding, FindingKind, Fix};
use fascicle_vocab::{EntryId, Kind, Standing};
use serde::{Deserialize, Serialize};
use serde_json::json;
use tower_lsp::jsonrpc::{Error, Result};
use tower_lsp::lsp_types as lsp;

use super::commands;
use super::diagnostics::{self, Found};
use super::differences;
use crate::course::{SETTINGS_FILE, settings};
use crate::lsp::everywhere::Everywhere;
use crate::lsp::state::View;
use crate::lsp::{from_proto, library, to_proto};

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
    /// All safe fixes, in all documents of the course.
    FixCourse,
    /// One fix, wherever the document or the whole course has the same finding of the same words.
    FixAlike { alike: Alike, course: bool },
}

/// A finding of some words with what mends it, wherever it stands and however its capitals are.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(rename_all = "camelCase")]
struct Alike {
    code: String,
    /// The words in small letters.
    written: String,
    /// The title of the fix in small letters.
    title: String,
}

impl Alike {
    /// What a finding and its first fix are like; `None` where nothing mends it.
    fn of(view: &View, finding: &Finding) -> Option<(Self, Fix)> {
        let fix = finding.fixes.first()?;
        let written = view.slice(finding.span).to_lowercase();
        Some((Self { code: finding.code.to_owned(), written, title: fix.title.to_lowercase() }, fix.clone()))
    }

    /// The fixes of the findings of a document that are so.
    fn fixes<'a>(
        &'a self,
        view: &'a View,
        found: impl Iterator<Item = &'a Finding> + 'a,
    ) -> impl Iterator<Item = Fix> + 'a {
        let is_same =
            |other: &Self| other.code == self.code && other.written == self.written && other.title == self.title;
        found.filter_map(move |finding| Self::of(view, finding).filter(|(other, _)| is_same(other)).map(|(_, fix)| fix))
    }
}

/// All safe fixes of the course. It is no kind below `source.fixAll`, which editors may apply whenever a document is saved.
pub const FIX_COURSE: lsp::CodeActionKind = lsp::CodeActionKind::new("source.fixCourse");

/// `textDocument/codeAction`
pub fn code_actions(all: &Everywhere, params: &lsp::CodeActionParams) -> lsp::CodeActionResponse {
    let view = &all.here;
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
        let found = diagnostics::findings(all, view);
        let here: Vec<&Found> = found
            .iter()
            .filter(|(finding, _)| finding.span.start <= span.end && finding.span.end >= span.start)
            .collect();
        list.extend(here.iter().flat_map(|found| quick_fixes(view, found)));
        list.extend(here.iter().flat_map(|one| fix_alike(all, &found, one)));
        list.extend(here.iter().flat_map(|found| allowances(view, found)));
    }
    let place = fascicle_analysis::features::places::at(view.reading(), span.start);
    if let Some(place) = place {
        if wants(&lsp::CodeActionKind::REFACTOR_REWRITE) {
            list.extend(names(view, &place));
        }
        if wants(&lsp::CodeActionKind::SOURCE) {
            list.extend(insertions(all, &place));
        }
    }
    let is_fixable = || view.reading().findings.iter().any(|finding| safe(finding).is_some());
    if wants(&lsp::CodeActionKind::SOURCE_FIX_ALL) && is_fixable() {
        let title = "Apply all safe fixes in this document";
        list.push(later(all, title, lsp::CodeActionKind::SOURCE_FIX_ALL, Make::FixAll));
    }
    // Reading a whole course takes its time, so it is offered only where it is done when it is chosen.
    if wants(&FIX_COURSE) && view.course.root.is_some() && view.can.resolve_edit {
        list.push(later(all, "Apply all safe fixes in the course", FIX_COURSE, Make::FixCourse));
    }
    list.into_iter().map(lsp::CodeActionOrCommand::CodeAction).collect()
}

fn quick_fixes<'a>(view: &'a View, (finding, related): &'a Found) -> impl Iterator<Item = lsp::CodeAction> + 'a {
    finding.fixes.iter().enumerate().map(move |(rank, fix)| lsp::CodeAction {
        title: fix.title.clone(),
        kind: Some(lsp::CodeActionKind::QUICKFIX),
        diagnostics: Some(vec![to_proto::diagnostic(view, finding, related)]),
        edit: Some(to_proto::workspace_edit(view, to_proto::text_edits(view, fix))),
        is_preferred: (rank == 0 && fix.safe).then_some(true),
        ..Default::default()
    })
}

/// The first fix of a name, wherever the document has it to be fixed more than once, and wherever the course has.
fn fix_alike(all: &Everywhere, found: &[Found], (finding, related): &Found) -> Vec<lsp::CodeAction> {
    let view = &all.here;
    let Some((alike, fix)) = Alike::of(view, finding).filter(|_| finding.kind == FindingKind::Name) else {
        return Vec::new();
    };
    let several = alike.fixes(view, found.iter().map(|(finding, _)| finding)).nth(1).is_some();
    // Reading a whole course takes its time, so that is offered only where it is done when it is chosen.
    let in_course = view.course.root.is_some() && view.can.resolve_edit;
    let places = [("in this document", false, several), ("in the course", true, in_course)];
    let offered = places.into_iter().filter(|(.., is_offered)| *is_offered);
    offered
        .map(|(place, course, _)| {
            let title = format!("{} everywhere {place}", fix.title);
            let make = Make::FixAlike { alike: alike.clone(), course };
            let diagnostics = Some(vec![to_proto::diagnostic(view, finding, related)]);
            lsp::CodeAction { diagnostics, ..later(all, &title, lsp::CodeActionKind::QUICKFIX, make) }
        })
        .collect()
}

/// Ways to keep what was found: the word is right in this course, the finding is allowed here, it is not wanted at all.
fn allowances(view: &View, (finding, related): &Found) -> Vec<lsp::CodeAction> {
    let action = |title: String, edit: lsp::WorkspaceEdit| lsp::CodeAction {
        title,
        kind: Some(lsp::CodeActionKind::QUICKFIX),
        diagnostics: Some(vec![to_proto::diagnostic(view, finding, related)]),
        edit: Some(edit),
        ..Default::default()
    };
    let mut list = Vec::new();
    if matches!(finding.code, MISSPELLED_NAME | MISSPELLED_WORD) {
        let wrong = finding.fixes.first().and_then(|fix| fix.edits.first()).map_or(finding.span, |edit| edit.span);
        let word = view.slice(wrong);
        let edit = settings_edit(view, "words", word).filter(|_| !word.trim().is_empty());
        list.extend(edit.map(|edit| action(format!("Add “{word}” to the words of the course"), edit)));
    }
    let here = fascicle_analysis::allowances::allow(view.text(), view.document.form, view.reading(), finding);
    if let Some(edit) = here {
        let edits = vec![lsp::TextEdit { range: to_proto::range(view, edit.span), new_text: edit.text }];
        list.push(action(format!("Allow `{}` here", finding.code), to_proto::workspace_edit(view, edits)));
    }
    let course = settings_edit(view, "off", finding.code);
    list.extend(course.map(|edit| action(format!("Allow `{}` in the whole course", finding.code), edit)));
    list
}

/// The edit that adds a value to a list of the course's settings file, which it makes if there is none.
fn settings_edit(view: &View, key: &str, value: &str) -> Option<lsp::WorkspaceEdit> {
    let path = view.course.root.as_ref()?.join(SETTINGS_FILE);
    let text = std::fs::read_to_string(&path).unwrap_or_default();
    let (span, new) = settings::addition(&text, key, value)?;
    let uri = lsp::Url::from_file_path(&path).ok()?;
    let lines = LineIndex::new(&text);
    let position = |at: usize| to_proto::position(lines.position(at, &text, view.encoding));
    let edit =
        lsp::TextEdit { range: lsp::Range { start: position(span.start), end: position(span.end) }, new_text: new };
    Some(to_proto::edit_of_file(&view.can, uri, edit, !path.is_file()))
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
fn insertions(all: &Everywhere, place: &Place) -> Vec<lsp::CodeAction> {
    let view = &all.here;
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
        list.push(later(all, &title, lsp::CodeActionKind::SOURCE, Make::Table { entry: id.clone(), line }));
    }
    if is_one(&[Kind::Nerve, Kind::Plexus]) && insert::branch_tree(entry, vocabulary).is_some() {
        let title = format!("Insert the branch tree of {name}");
        list.push(later(all, &title, lsp::CodeActionKind::SOURCE, Make::Tree { entry: id, line }));
    }
    list
}

/// An action whose edit is made when it is chosen, or now if the client cannot wait.
fn later(all: &Everywhere, title: &str, kind: lsp::CodeActionKind, make: Make) -> lsp::CodeAction {
    let view = &all.here;
    let edit = if view.can.resolve_edit { None } else { edit(all, &make) };
    let data = Later { uri: view.uri.clone(), version: view.document.version, make };
    lsp::CodeAction { title: title.to_owned(), kind: Some(kind), edit, data: Some(json!(data)), ..Default::default() }
}

fn edit(all: &Everywhere, make: &Make) -> Option<lsp::WorkspaceEdit> {
    let view = &all.here;
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
        Make::FixCourse => Some(everywhere(all, |_| true, fix_all)),
        Make::FixAlike { alike, course } => {
            let differences = differences::of_course(all, &view.course);
            let edits = |view: &View| -> Vec<lsp::TextEdit> {
                let told = differences.get(&view.uri).map_or(&[][..], Vec::as_slice);
                let found = diagnostics::with_differences(all, view, told);
                let fixes: Vec<Fix> = alike.fixes(view, found.iter().map(|(finding, _)| finding)).collect();
                fixes.iter().flat_map(|fix| to_proto::text_edits(view, fix)).collect()
            };
            if !course {
                return Some(to_proto::workspace_edit(view, edits(view)));
            }
            Some(everywhere(all, |text| text.to_lowercase().contains(&alike.written), edits))
        }
    }
}

/// The edits of every document of the course whose text is worth reading.
fn everywhere(
    all: &Everywhere,
    is_worth_it: impl Fn(&str) -> bool,
    edits: impl Fn(&View) -> Vec<lsp::TextEdit>,
) -> lsp::WorkspaceEdit {
    let root = &all.here.course.root;
    let open = all.open.iter().filter(|view| view.course.root == *root && !library::is_own(view)).cloned();
    let folders = all.folders.iter().filter(|folder| folder.course.root == *root);
    let mut paths: Vec<_> =
        folders.flat_map(|folder| folder.index.files.keys().map(move |path| (path, folder))).collect();
    paths.sort_by_key(|(path, _)| *path);
    let closed = paths.into_iter().filter_map(|(path, folder)| all.closed(path, folder));
    let mut list = Vec::new();
    for view in open.chain(closed).filter(|view| is_worth_it(view.text())) {
        if !all.is_wanted() || view.wanted_reading().is_none() {
            break;
        }
        let own = edits(&view);
        if !own.is_empty() {
            list.push((view, own));
        }
    }
    to_proto::workspace_edits(&all.here.can, list)
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
pub fn resolve(all: &Everywhere, later: &Later, mut action: lsp::CodeAction) -> Result<lsp::CodeAction> {
    if later.version != all.here.document.version {
        return Err(Error::content_modified());
    }
    if action.edit.is_none() {
        action.edit = edit(all, &later.make);
    }
    Ok(action)
}
