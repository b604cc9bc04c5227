//! `textDocument/references`, `textDocument/prepareRename`, `textDocument/rename` and `workspace/symbol`: over the course.

use std::collections::{HashMap, HashSet};
use std::path::PathBuf;

use fascicle_analysis::Span;
use fascicle_analysis::features::index::Contents;
use fascicle_analysis::features::places::Place;
use fascicle_analysis::features::{index, rename};
use fascicle_vocab::{Entry, EntryId, Standing, Vocabulary};
use fuzzy_matcher::FuzzyMatcher;
use fuzzy_matcher::skim::SkimMatcherV2;
use tower_lsp::jsonrpc::{Error, Result};
use tower_lsp::lsp_types as lsp;

use super::navigation;
use crate::course::Course;
use crate::lsp::everywhere::Everywhere;
use crate::lsp::state::{Folder, View};
use crate::lsp::{library, to_proto};

/// The most symbols that are told at once.
const MOST: usize = 300;

/// `textDocument/references`
pub fn references(all: &Everywhere, position: lsp::Position, with_definition: bool) -> Option<Vec<lsp::Location>> {
    let place = navigation::place(&all.here, position)?;
    let mut list = Vec::new();
    if with_definition {
        let can = &all.here.can;
        list.extend(
            place.entries.iter().filter_map(|id| library::location(&all.here.course, can.entry_documents, *id)),
        );
    }
    for (view, entries) in all.naming(&place.entries) {
        list.extend(
            navigation::names_of(&view, &entries)
                .into_iter()
                .map(|place| lsp::Location { uri: view.uri.clone(), range: to_proto::range(&view, place.span) }),
        );
    }
    Some(list)
}

/// `textDocument/prepareRename`
pub fn prepare(view: &View, position: lsp::Position) -> Option<lsp::PrepareRenameResponse> {
    let place = navigation::place(view, position).filter(can_be_renamed)?;
    Some(lsp::PrepareRenameResponse::RangeWithPlaceholder {
        range: to_proto::range(view, place.span),
        placeholder: view.slice(place.span).to_owned(),
    })
}

/// Whether the source shows the name as it is read, whole, and of one structure.
fn can_be_renamed(place: &Place) -> bool {
    place.editable && !place.shared && place.entries.len() == 1
}

/// `textDocument/rename`: the same name of the same structure, wherever the course writes it.
///
/// # Errors
/// The new name is that of another structure.
pub fn rename(all: &Everywhere, position: lsp::Position, new: &str) -> Result<Option<lsp::WorkspaceEdit>> {
    let here = &all.here;
    let knowledge = here.course.knowledge();
    let vocabulary = &knowledge.vocabulary;
    let new = new.trim();
    if new.is_empty() || new.contains(['\n', '\r']) {
        return Err(Error::invalid_params("a name is one line of text"));
    }
    let Some(place) = navigation::place(here, position).filter(can_be_renamed) else { return Ok(None) };
    let Some(entry) = place.entries.first().copied() else { return Ok(None) };
    let others = knowledge.names.lookup(new);
    if let Some(other) = others.first().filter(|_| others.iter().all(|name| name.entry != entry)) {
        let message = format!("{new} is a name of another structure: {}", vocabulary.name(other.entry));
        return Err(Error::invalid_params(message));
    }
    let old = name_used(here.slice(place.span), &place, entry, vocabulary);
    let plural =
        vocabulary.entry(entry).names.iter().find(|name| name.text == new).and_then(|name| name.plural.as_deref());
    let mut edits = Vec::new();
    for (view, entries) in all.naming(&place.entries) {
        let same = navigation::names_of(&view, &entries).into_iter().filter(|place| {
            let quoted = view.reading().blocks.list.get(place.block).is_some_and(|block| block.quoted);
            can_be_renamed(place) && !quoted && name_used(view.slice(place.span), place, entry, vocabulary) == old
        });
        let own: Vec<lsp::TextEdit> = same
            .map(|place| lsp::TextEdit {
                range: to_proto::range(&view, place.span),
                new_text: rename::replacement(view.slice(place.span), &place, new, plural),
            })
            .collect();
        if !own.is_empty() {
            edits.push((view, own));
        }
    }
    Ok(Some(to_proto::workspace_edits(&here.can, edits)))
}

/// Which of the names of a structure was written: its place in the list of names, or the text where none fits.
fn name_used(
    written: &str,
    place: &Place,
    entry: EntryId,
    vocabulary: &Vocabulary,
) -> std::result::Result<usize, String> {
    let fold = |text: &str| fascicle_analysis::words::fold(text).replace('-', " ");
    let folded = fold(written);
    let bare = folded.strip_suffix(" muscles").or_else(|| folded.strip_suffix(" muscle")).unwrap_or(&folded).to_owned();
    let names = &vocabulary.entry(entry).names;
    let fits = |text: &str| [&folded, &bare].into_iter().any(|known| *known == fold(text));
    names
        .iter()
        .position(|name| {
            let exact = (name.standing == Standing::Abbreviation) == (place.standing == Standing::Abbreviation);
            let plural = || name.plural.clone().unwrap_or_else(|| rename::plural_of(&name.text));
            exact && (fits(&name.text) || place.plural && fits(&plural()))
        })
        .ok_or(folded.clone())
}

/// `workspace/symbol`: headings, and structures at the first place where each document names them.
pub fn symbols(all: &Everywhere, query: &str) -> Vec<lsp::SymbolInformation> {
    let mut search = Search { matcher: SkimMatcherV2::default().ignore_case(), query, found: Vec::new() };
    for view in &all.open {
        let contents = index::contents(view.text(), view.document.form, view.course.knowledge());
        let scores = search.scores(&view.course);
        search.look(Document::Open(view), &contents, &view.course, &scores);
    }
    for folder in &all.folders {
        let scores = search.scores(&folder.course);
        for (path, file) in &folder.index.files {
            search.look(Document::Closed(path, folder), &file.contents, &folder.course, &scores);
        }
    }
    let mut found = search.found;
    found.sort_by(|a, b| b.score.cmp(&a.score).then_with(|| a.name.cmp(&b.name)).then(a.at.cmp(&b.at)));
    let mut views: HashMap<&PathBuf, Option<View>> = HashMap::new();
    let symbols = found.into_iter().filter_map(|found| {
        let view = match found.document {
            Document::Open(view) => view,
            Document::Closed(path, folder) => views.entry(path).or_insert_with(|| all.closed(path, folder)).as_ref()?,
        };
        let span = Span::new(found.at as usize, found.at as usize);
        #[allow(deprecated)] // the type has a field that is, and no other way to be made
        Some(lsp::SymbolInformation {
            name: found.name,
            kind: found.kind,
            tags: None,
            deprecated: None,
            location: lsp::Location { uri: view.uri.clone(), range: to_proto::range(view, span) },
            container_name: None,
        })
    });
    symbols.take(MOST).collect()
}

/// A search and what it has found.
struct Search<'a> {
    matcher: SkimMatcherV2,
    query: &'a str,
    found: Vec<Found<'a>>,
}

impl<'a> Search<'a> {
    fn score(&self, name: &str) -> Option<i64> {
        if self.query.is_empty() { Some(0) } else { self.matcher.fuzzy_match(name, self.query) }
    }

    /// How well each entry of a course fits.
    fn scores(&self, course: &Course) -> Vec<Option<i64>> {
        let best = |entry: &Entry| entry.names.iter().filter_map(|name| self.score(&name.text)).max();
        course.knowledge().vocabulary.entries().iter().map(best).collect()
    }

    fn look(&mut self, document: Document<'a>, contents: &Contents, course: &Course, scores: &[Option<i64>]) {
        let vocabulary = &course.knowledge().vocabulary;
        for heading in &contents.headings {
            let Some(score) = self.score(&heading.title) else { continue };
            let kind = heading.entry.map_or(lsp::SymbolKind::STRING, |id| to_proto::symbol_kind(vocabulary.kind(id)));
            let name = if heading.title.is_empty() { "(no title)".to_owned() } else { heading.title.to_string() };
            self.found.push(Found { score: score + 10, document, at: heading.start, name, kind });
        }
        let mut told: HashSet<EntryId> = HashSet::new();
        for spot in contents.spots.iter().filter(|_| !self.query.is_empty()) {
            let Some(score) = scores.get(spot.entry.0 as usize).copied().flatten() else { continue };
            if told.insert(spot.entry) {
                let kind = to_proto::symbol_kind(vocabulary.kind(spot.entry));
                let name = vocabulary.name(spot.entry).to_owned();
                self.found.push(Found { score, document, at: spot.start, name, kind });
            }
        }
    }
}

/// What a search found.
struct Found<'a> {
    score: i64,
    document: Document<'a>,
    at: u32,
    name: String,
    kind: lsp::SymbolKind,
}

/// A document of a search.
#[derive(Clone, Copy)]
enum Document<'a> {
    Open(&'a View),
    Closed(&'a PathBuf, &'a Folder),
}
