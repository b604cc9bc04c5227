//! `textDocument/codeLens`: above a heading, what the section covers of the muscles of its nerve, and where else the course
//! teaches the same structure.

use fascicle_analysis::Span;
use fascicle_analysis::features::{coverage, outline};
use fascicle_vocab::EntryId;
use serde_json::json;
use tower_lsp::lsp_types as lsp;

use super::commands;
use crate::lsp::everywhere::Everywhere;
use crate::lsp::state::View;
use crate::lsp::{library, to_proto};

/// No more other places are named above one heading.
const MOST: usize = 3;

/// `textDocument/codeLens`
pub fn lenses(all: &Everywhere) -> Vec<lsp::CodeLens> {
    let view = &all.here;
    if view.course.settings.file.coverage == Some(false) || library::is_own(view) {
        return Vec::new();
    }
    let vocabulary = &view.course.knowledge().vocabulary;
    let mut list = Vec::new();
    for coverage in coverage::coverage(view.reading(), view.text().len(), vocabulary) {
        let range = to_proto::range(view, coverage.section.heading);
        let below = json!(range.end.line + 1);
        let arguments = vec![json!(view.uri), json!(vocabulary.entry(coverage.subject).id), below];
        list.push(lens(range, coverage.line(vocabulary), commands::INSERT_TABLE, arguments));
    }
    for section in outline::outline(view.reading(), view.text().len()) {
        let [subject] = *section.entries else { continue };
        let range = to_proto::range(view, section.heading);
        for place in elsewhere(all, subject, section.heading).take(MOST) {
            let (command, arguments) = if view.can.show_document {
                (commands::SHOW, vec![json!(place.uri), json!(place.range)])
            } else {
                ("", Vec::new()) // only to be read
            };
            list.push(lens(range, place.title, command, arguments));
        }
    }
    list.sort_by_key(|lens| lens.range.start);
    list
}

fn lens(range: lsp::Range, title: String, command: &str, arguments: Vec<serde_json::Value>) -> lsp::CodeLens {
    let arguments = (!arguments.is_empty()).then_some(arguments);
    lsp::CodeLens { range, command: Some(lsp::Command { title, command: command.to_owned(), arguments }), data: None }
}

/// A heading of the course under which a structure is taught.
struct Place {
    title: String,
    uri: lsp::Url,
    range: lsp::Range,
}

/// The other headings of the course that name a structure and no other: of open documents first.
fn elsewhere(all: &Everywhere, subject: EntryId, here: Span) -> impl Iterator<Item = Place> {
    let view = &all.here;
    let place = |view: &View, at: Span, title: &str| {
        let name = view.uri.path_segments().and_then(Iterator::last).unwrap_or_default();
        let name = percent_encoding::percent_decode_str(name).decode_utf8_lossy().into_owned();
        let title = format!("also taught: {name}, “{title}”");
        Place { title, uri: view.uri.clone(), range: to_proto::range(view, at) }
    };
    let is_of_course =
        |other: &&View| other.uri == view.uri || other.course.root.is_some() && other.course.root == view.course.root;
    let open = all.open.iter().filter(is_of_course).filter(|other| other.wanted_reading().is_some());
    let open = open.flat_map(move |other| {
        let sections = outline::outline(other.reading(), other.text().len());
        let taught = sections
            .into_iter()
            .filter(move |section| section.entries == [subject] && (other.uri != view.uri || section.heading != here));
        taught.map(move |section| place(other, section.heading, &section.title))
    });
    let mut paths: Vec<_> = all
        .folders
        .iter()
        .filter(|folder| folder.course.root.is_some() && folder.course.root == view.course.root)
        .flat_map(|folder| folder.index.files.iter().map(move |(path, file)| (path, file, folder)))
        .filter(|(_, file, _)| file.contents.headings.iter().any(|heading| heading.entry == Some(subject)))
        .collect();
    paths.sort_by_key(|(path, ..)| *path);
    let closed = paths.into_iter().flat_map(move |(path, file, folder)| {
        let view = all.closed(path, folder);
        let headings = file.contents.headings.iter().filter(move |heading| heading.entry == Some(subject));
        let at = |heading: u32| Span::new(heading as usize, heading as usize);
        headings.filter_map(move |heading| Some(place(view.as_ref()?, at(heading.start), &heading.title)))
    });
    open.chain(closed)
}
