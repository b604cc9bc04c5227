//! `textDocument/documentSymbol`: headings with the structures that they teach.

use fascicle_analysis::features::outline::{self, Section};
use fascicle_vocab::Vocabulary;
use tower_lsp::lsp_types as lsp;

use crate::lsp::state::View;
use crate::lsp::to_proto;

/// `textDocument/documentSymbol`
pub fn document(view: &View) -> lsp::DocumentSymbolResponse {
    let vocabulary = &view.course.knowledge().vocabulary;
    let sections = outline::outline(view.reading(), view.text().len());
    if view.can.nested_symbols {
        return lsp::DocumentSymbolResponse::Nested(below(view, &sections, None, vocabulary));
    }
    let flat = sections.iter().map(|section| {
        #[allow(deprecated)] // the type has a field that is, and no other way to be made
        lsp::SymbolInformation {
            name: name(section),
            kind: kind(section, vocabulary),
            tags: None,
            deprecated: None,
            location: lsp::Location { uri: view.uri.clone(), range: to_proto::range(view, section.span) },
            container_name: section.parent.and_then(|parent| sections.get(parent)).map(name),
        }
    });
    lsp::DocumentSymbolResponse::Flat(flat.collect())
}

fn below(
    view: &View,
    sections: &[Section],
    parent: Option<usize>,
    vocabulary: &Vocabulary,
) -> Vec<lsp::DocumentSymbol> {
    let own = sections.iter().enumerate().filter(|(_, section)| section.parent == parent);
    own.map(|(at, section)| {
        let children = below(view, sections, Some(at), vocabulary);
        let taught: Vec<&str> = section.entries.iter().map(|id| vocabulary.name(*id)).collect();
        #[allow(deprecated)] // the type has a field that is, and no other way to be made
        lsp::DocumentSymbol {
            name: name(section),
            detail: (!taught.is_empty()).then(|| taught.join(", ")),
            kind: kind(section, vocabulary),
            tags: None,
            deprecated: None,
            range: to_proto::range(view, section.span),
            selection_range: to_proto::range(view, section.heading),
            children: (!children.is_empty()).then_some(children),
        }
    })
    .collect()
}

/// The title; a symbol without a name is none to the protocol.
fn name(section: &Section) -> String {
    if section.title.is_empty() { "(no title)".to_owned() } else { section.title.clone() }
}

fn kind(section: &Section, vocabulary: &Vocabulary) -> lsp::SymbolKind {
    match *section.entries {
        [entry] => to_proto::symbol_kind(vocabulary.kind(entry)),
        _ => lsp::SymbolKind::STRING,
    }
}
