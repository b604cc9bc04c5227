//! `workspace/diagnostic`: the findings of every document of the course.
//!
//! A document of which nothing has changed is told as unchanged, by the name of the result that the client has. What the
//! client has a result of but is gone is told to be empty. Where nothing at all has changed there is no answer until
//! something does; [`super::super::server`] waits for that.

use std::collections::HashMap;
use std::hash::{DefaultHasher, Hash, Hasher};
use std::path::PathBuf;

use tower_lsp::lsp_types as lsp;

use super::diagnostics;
use super::differences::{self, Difference, Differences};
use crate::course::index::Stamp;
use crate::lsp::everywhere::Everywhere;
use crate::lsp::library;
use crate::lsp::state::{Folder, View};

/// What was last told of a file on disk, so that it need not be read again to say that nothing has changed: its state, what
/// the course tells differently from it, and the name of the result.
pub type Told = HashMap<PathBuf, (Stamp, u64, String)>;

/// The reports on all documents, each handed to `tell` as it is made, and what is to be remembered.
pub fn reports(
    all: &Everywhere,
    known: &Told,
    previous: Vec<lsp::PreviousResultId>,
    tell: &mut dyn FnMut(lsp::WorkspaceDocumentDiagnosticReport),
) -> Told {
    let mut previous: HashMap<lsp::Url, String> = previous.into_iter().map(|one| (one.uri, one.value)).collect();
    let mut told = Told::new();
    let mut courses: HashMap<Option<PathBuf>, Differences> = HashMap::new();
    for view in all.open.iter().filter(|view| !library::is_own(view)) {
        if view.wanted_reading().is_none() {
            return told;
        }
        let had = previous.remove(&view.uri);
        let found = courses
            .entry(view.course.root.clone())
            .or_insert_with(|| differences::of_course(all, &view.course))
            .get(&view.uri);
        let alone = if view.course.root.is_none() { differences::of_document(all, view) } else { Vec::new() };
        report(all, view, found.unwrap_or(&alone), had.as_ref(), tell);
    }
    let mut files: Vec<(&PathBuf, Stamp, &Folder)> = all
        .folders
        .iter()
        .flat_map(|folder| folder.index.files.iter().map(move |(path, file)| (path, file.stamp, folder)))
        .collect();
    files.sort_by_key(|(path, ..)| *path);
    files.dedup_by_key(|(path, ..)| *path);
    for (path, stamp, folder) in files {
        if !all.is_wanted() {
            return told;
        }
        let Ok(uri) = lsp::Url::from_file_path(path) else { continue };
        if all.is_open(&uri) {
            continue;
        }
        let found = courses
            .entry(folder.course.root.clone())
            .or_insert_with(|| differences::of_course(all, &folder.course))
            .get(&uri)
            .map_or(&[][..], Vec::as_slice);
        let (had, sum) = (previous.remove(&uri), sum(found));
        let is_known =
            |(seen, with, id): &&(Stamp, u64, String)| *seen == stamp && *with == sum && had.as_ref() == Some(id);
        if let Some((_, _, id)) = known.get(path).filter(is_known) {
            told.insert(path.clone(), (stamp, sum, id.clone()));
            tell(unchanged(uri, None, id.clone()));
            continue;
        }
        let Some(view) = all.closed(path, folder).filter(|view| view.wanted_reading().is_some()) else { continue };
        let id = report(all, &view, found, had.as_ref(), tell);
        told.insert(path.clone(), (stamp, sum, id));
    }
    for (uri, _) in previous {
        tell(full(uri, None, None, Vec::new()));
    }
    told
}

/// A number for what is told differently, by which it is seen whether that has changed.
fn sum(differences: &[Difference]) -> u64 {
    let mut hasher = DefaultHasher::new();
    for one in differences {
        (one.finding.span, &one.finding.message, &one.elsewhere).hash(&mut hasher);
    }
    hasher.finish()
}

fn report(
    all: &Everywhere,
    view: &View,
    differences: &[Difference],
    had: Option<&String>,
    tell: &mut dyn FnMut(lsp::WorkspaceDocumentDiagnosticReport),
) -> String {
    let (items, _) = diagnostics::of(all, view, differences);
    let id = diagnostics::result_id(&items);
    let version = view.document.version.map(i64::from);
    let uri = view.uri.clone();
    let is_same = had == Some(&id);
    tell(if is_same { unchanged(uri, version, id.clone()) } else { full(uri, version, Some(id.clone()), items) });
    id
}

fn unchanged(uri: lsp::Url, version: Option<i64>, result_id: String) -> lsp::WorkspaceDocumentDiagnosticReport {
    lsp::WorkspaceDocumentDiagnosticReport::Unchanged(lsp::WorkspaceUnchangedDocumentDiagnosticReport {
        uri,
        version,
        unchanged_document_diagnostic_report: lsp::UnchangedDocumentDiagnosticReport { result_id },
    })
}

fn full(
    uri: lsp::Url,
    version: Option<i64>,
    result_id: Option<String>,
    items: Vec<lsp::Diagnostic>,
) -> lsp::WorkspaceDocumentDiagnosticReport {
    lsp::WorkspaceDocumentDiagnosticReport::Full(lsp::WorkspaceFullDocumentDiagnosticReport {
        uri,
        version,
        full_document_diagnostic_report: lsp::FullDocumentDiagnosticReport { result_id, items },
    })
}

/// Whether a report says something new.
pub fn is_news(report: &lsp::WorkspaceDocumentDiagnosticReport) -> bool {
    matches!(report, lsp::WorkspaceDocumentDiagnosticReport::Full(_))
}
