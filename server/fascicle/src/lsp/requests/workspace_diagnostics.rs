//! `workspace/diagnostic`: the findings of every document of the course.
//!
//! A document of which nothing has changed is told as unchanged, by the name of the result that the client has. What the
//! client has a result of but is gone is told to be empty. Where nothing at all has changed there is no answer until
//! something does; [`super::super::server`] waits for that.

use std::collections::HashMap;
use std::path::PathBuf;

use tower_lsp::lsp_types as lsp;

use super::diagnostics;
use crate::course::index::Stamp;
use crate::lsp::everywhere::Everywhere;
use crate::lsp::library;
use crate::lsp::state::View;

/// What was last told of a file on disk, so that it need not be read again to say that nothing has changed.
pub type Told = HashMap<PathBuf, (Stamp, String)>;

/// The reports on all documents, each handed to `tell` as it is made, and what is to be remembered.
pub fn reports(
    all: &Everywhere,
    known: &Told,
    previous: Vec<lsp::PreviousResultId>,
    tell: &mut dyn FnMut(lsp::WorkspaceDocumentDiagnosticReport),
) -> Told {
    let mut previous: HashMap<lsp::Url, String> = previous.into_iter().map(|one| (one.uri, one.value)).collect();
    let mut told = Told::new();
    for view in all.open.iter().filter(|view| !library::is_own(view)) {
        let had = previous.remove(&view.uri);
        report(view, had.as_ref(), tell);
    }
    let mut paths: Vec<&PathBuf> = all.indexes.iter().flat_map(|index| index.files.keys()).collect();
    paths.sort();
    paths.dedup();
    for path in paths {
        if all.here.is_cancelled() {
            return told;
        }
        let Ok(uri) = lsp::Url::from_file_path(path) else { continue };
        let (Some(stamp), had) = (Stamp::of(path), previous.remove(&uri)) else { continue };
        if let Some((_, id)) = known.get(path).filter(|(seen, id)| *seen == stamp && had.as_ref() == Some(id)) {
            told.insert(path.clone(), (stamp, id.clone()));
            tell(unchanged(uri, None, id.clone()));
            continue;
        }
        let Some(view) = all.closed(path) else { continue };
        let id = report(&view, had.as_ref(), tell);
        told.insert(path.clone(), (stamp, id));
    }
    for (uri, _) in previous {
        tell(full(uri, None, None, Vec::new()));
    }
    told
}

fn report(view: &View, had: Option<&String>, tell: &mut dyn FnMut(lsp::WorkspaceDocumentDiagnosticReport)) -> String {
    let (items, _) = diagnostics::of(view, false);
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
