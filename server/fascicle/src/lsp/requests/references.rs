//! `textDocument/references`, `textDocument/prepareRename`, `textDocument/rename` and `workspace/symbol`: over the course.

use std::collections::HashMap;
use std::path::PathBuf;
use std::sync::Arc;

use fascicle_analysis::Span;
use fascicle_analysis::features::places::Place;
use fascicle_analysis::features::{index, rename};
use fascicle_vocab::{EntryId, Standing, Vocabulary};
use fuzzy_matcher::FuzzyMatcher;
use fuzzy_matcher::skim::SkimMatcherV2;
use tower_lsp::jsonrpc::{Error, Result};
use tower_lsp::lsp_types as lsp;

use super::navigation;
use crate::lsp::everywhere::Everywhere;
use crate::lsp::state::View;
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
    for view in all.naming(&place.entries) {
        if all.here.is_cancelled() {
            return None;
        }
        list.extend(
            navigation::names_of(&view, &place.entries)
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
    for view in all.naming(&place.entries) {
        let same = navigation::names_of(&view, &[entry]).into_iter().filter(|place| {
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
    let matcher = SkimMatcherV2::default().ignore_case();
    let vocabulary = &all.here.course.knowledge().vocabulary;
    let score = |name: &str| if query.is_empty() { Some(0) } else { matcher.fuzzy_match(name, query) };
    let scores: Vec<Option<i64>> = vocabulary
        .entries()
        .iter()
        .map(|entry| entry.names.iter().filter_map(|name| score(&name.text)).max())
        .collect();
    let knowledge = all.here.course.knowledge();
    let open = all
        .open
        .iter()
        .map(|view| (Document::Open(view), Arc::new(index::contents(view.text(), view.document.form, knowledge))));
    let closed = all.indexes.iter().flat_map(|index| &index.files);
    let closed = closed.map(|(path, file)| (Document::Closed(path), Arc::clone(&file.contents)));
    let mut found: Vec<(i64, Document<'_>, u32, String, lsp::SymbolKind)> = Vec::new();
    for (document, contents) in open.chain(closed) {
        for heading in &contents.headings {
            let Some(score) = score(&heading.title) else { continue };
            let kind = heading.entry.map_or(lsp::SymbolKind::STRING, |id| to_proto::symbol_kind(vocabulary.kind(id)));
            found.push((score + 10, document, heading.start, heading.title.to_string(), kind));
        }
        let mut told: Vec<EntryId> = Vec::new();
        for spot in contents.spots.iter().filter(|_| !query.is_empty()) {
            let Some(score) = scores.get(spot.entry.0 as usize).copied().flatten() else { continue };
            if told.contains(&spot.entry) {
                continue;
            }
            told.push(spot.entry);
            let kind = to_proto::symbol_kind(vocabulary.kind(spot.entry));
            found.push((score, document, spot.start, vocabulary.name(spot.entry).to_owned(), kind));
        }
    }
    found.sort_by(|a, b| b.0.cmp(&a.0).then_with(|| a.3.cmp(&b.3)).then(a.2.cmp(&b.2)));
    found.truncate(MOST);
    let mut views: HashMap<&PathBuf, Option<View>> = HashMap::new();
    found
        .into_iter()
        .filter_map(|(_, document, at, name, kind)| {
            let view = match document {
                Document::Open(view) => view,
                Document::Closed(path) => views.entry(path).or_insert_with(|| all.closed(path)).as_ref()?,
            };
            let span = Span::new(at as usize, at as usize);
            #[allow(deprecated)] // the type has a field that is, and no other way to be made
            Some(lsp::SymbolInformation {
                name: if name.is_empty() { "(no title)".to_owned() } else { name },
                kind,
                tags: None,
                deprecated: None,
                location: lsp::Location { uri: view.uri.clone(), range: to_proto::range(view, span) },
                container_name: None,
            })
        })
        .collect()
}

/// A document of a search.
#[derive(Clone, Copy)]
enum Document<'a> {
    Open(&'a View),
    Closed(&'a PathBuf),
}
