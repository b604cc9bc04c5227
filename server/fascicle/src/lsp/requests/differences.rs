//! What documents of a course tell differently or call differently: findings that no document has by itself.
//!
//! Open documents count as they stand in the editor, the others as they stand on disk. Only what some open document speaks
//! of, or what the documents on disk do not agree on, is compared, so a keystroke does not pay for the whole course.

use std::collections::{HashMap, HashSet};
use std::path::{Path, PathBuf};

use fascicle_analysis::consistency::{self, Usage};
use fascicle_analysis::course::{self, Key, Stated};
use fascicle_analysis::{Finding, Span};
use tower_lsp::lsp_types as lsp;

use crate::course::Course;
use crate::lsp::everywhere::Everywhere;
use crate::lsp::state::{Folder, View};
use crate::lsp::{library, to_proto};

/// A finding of a document, with the places of others that say otherwise.
#[derive(Clone, Debug)]
pub struct Difference {
    /// The finding.
    pub finding: Finding,
    /// Each place with what it says.
    pub elsewhere: Vec<(lsp::Url, Span, String)>,
}

/// By document.
pub type Differences = HashMap<lsp::Url, Vec<Difference>>;

/// What the documents of a course tell differently.
pub fn of_course(all: &Everywhere, course: &Course) -> Differences {
    let is_member = |view: &&View| course.root.is_some() && view.course.root == course.root && !library::is_own(view);
    // What nobody waits for any more is not read, and what comes out is not sent.
    let open: Vec<&View> = all.open.iter().filter(is_member).filter(|view| view.wanted_reading().is_some()).collect();
    let folders: Vec<&Folder> = all.folders.iter().filter(|folder| folder.course.root == course.root).collect();
    let mut found = among(all, &open, &folders, course);
    if course.is_declared {
        for (uri, finding) in called(all, &open, &folders, course) {
            found.entry(uri).or_default().push(Difference { finding, elsewhere: Vec::new() });
        }
    }
    found
}

/// Whether a finding of a document alone gives way to what the whole course says of the same.
pub fn is_for_the_course(finding: &Finding, course: &Course) -> bool {
    course.is_declared && consistency::CODES.contains(&finding.code)
}

/// Findings about what the documents of a course call things, in the order of their paths.
fn called(all: &Everywhere, open: &[&View], folders: &[&Folder], course: &Course) -> Vec<(lsp::Url, Finding)> {
    let mut documents: Vec<(PathBuf, lsp::Url, &Usage)> =
        open.iter().map(|view| (path_of(view), view.uri.clone(), &view.reading().usage)).collect();
    for (path, usage) in folders.iter().flat_map(|folder| folder.statements.usages()) {
        let Ok(uri) = lsp::Url::from_file_path(path) else { continue };
        if !all.is_open(&uri) {
            documents.push((path.to_path_buf(), uri, usage));
        }
    }
    documents.sort_by(|a, b| a.0.cmp(&b.0));
    documents.dedup_by(|a, b| a.0 == b.0);
    let usages: Vec<&Usage> = documents.iter().map(|(.., usage)| *usage).collect();
    let found = consistency::compare(&usages, course.knowledge(), &course.settings.reading);
    let with_address = documents.iter().zip(found);
    with_address.flat_map(|((_, uri, _), list)| list.into_iter().map(|finding| (uri.clone(), finding))).collect()
}

fn path_of(view: &View) -> PathBuf {
    view.uri.to_file_path().unwrap_or_else(|()| PathBuf::from(view.uri.path()))
}

/// What a document tells differently from the others of its course, or from itself where it has none.
pub fn of_document(all: &Everywhere, view: &View) -> Vec<Difference> {
    let mut found =
        if view.course.root.is_some() { of_course(all, &view.course) } else { among(all, &[view], &[], &view.course) };
    found.remove(&view.uri).unwrap_or_default()
}

fn among(all: &Everywhere, open: &[&View], folders: &[&Folder], course: &Course) -> Differences {
    let mut documents: Vec<(PathBuf, lsp::Url, Vec<Stated>)> = Vec::new();
    for view in open {
        documents.push((path_of(view), view.uri.clone(), course::stated(&view.reading().claims)));
    }
    let spoken: HashSet<Key> = documents.iter().flat_map(|(_, _, list)| list.iter().map(|stated| stated.key)).collect();
    for folder in folders {
        let wanted = |key: &Key| folders.len() > 1 || spoken.contains(key) || folder.statements.is_contested(key);
        let mut last: Option<(&Path, Vec<Stated>)> = None;
        let mut close = |last: Option<(&Path, Vec<Stated>)>| {
            let Some((path, list)) = last else { return };
            let Ok(uri) = lsp::Url::from_file_path(path) else { return };
            if !all.is_open(&uri) {
                documents.push((path.to_path_buf(), uri, list));
            }
        };
        for (path, stated) in folder.statements.all().filter(|(_, stated)| wanted(&stated.key)) {
            match &mut last {
                Some((same, list)) if *same == path => list.push(*stated),
                _ => close(last.replace((path, vec![*stated]))),
            }
        }
        close(last);
    }
    documents.sort_by(|a, b| a.0.cmp(&b.0));
    documents.dedup_by(|a, b| a.0 == b.0);
    let statements = documents.iter().enumerate().flat_map(|(at, (_, _, list))| list.iter().map(move |one| (at, one)));
    let mut found = Differences::new();
    for one in course::compare(statements, &course.knowledge().vocabulary, &course.settings.reading) {
        let Some((_, uri, _)) = documents.get(one.document) else { continue };
        let place = |elsewhere: course::Elsewhere| {
            let (_, uri, _) = documents.get(elsewhere.document)?;
            Some((uri.clone(), elsewhere.span, elsewhere.says))
        };
        let elsewhere = one.elsewhere.into_iter().filter_map(place).collect();
        found.entry(uri.clone()).or_default().push(Difference { finding: one.finding, elsewhere });
    }
    found
}

/// The places of other documents as the protocol has them.
pub fn related(all: &Everywhere, difference: &Difference) -> Vec<lsp::DiagnosticRelatedInformation> {
    let place = |(uri, span, says): &(lsp::Url, Span, String)| {
        let view = if let Some(view) = all.open.iter().find(|view| view.uri == *uri) {
            view.clone()
        } else {
            let path = uri.to_file_path().ok()?;
            let folder = all.folders.iter().find(|folder| folder.index.files.contains_key(&path))?;
            all.closed(&path, folder)?
        };
        let location = lsp::Location { uri: uri.clone(), range: to_proto::range(&view, *span) };
        Some(lsp::DiagnosticRelatedInformation { location, message: says.clone() })
    };
    difference.elsewhere.iter().filter_map(place).collect()
}
