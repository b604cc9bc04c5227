//! From the protocol's types to plain data.

use fascicle_analysis::lines::{Encoding, Position};
use fascicle_analysis::{Form, Span};
use tower_lsp::lsp_types as lsp;

use super::document::Change;
use super::state::View;

/// A position.
pub fn position(position: lsp::Position) -> Position {
    Position { line: position.line, column: position.character }
}

/// A range of bytes. One that ends before it begins is empty.
pub fn span(view: &View, range: lsp::Range) -> Span {
    let start = view.offset(position(range.start));
    Span::new(start, view.offset(position(range.end)).max(start))
}

/// A change.
pub fn change(change: lsp::TextDocumentContentChangeEvent) -> Change {
    Change { range: change.range.map(|range| (position(range.start), position(range.end))), text: change.text }
}

/// The form of a document, by its name or else by what the client calls its language.
pub fn form(uri: &lsp::Url, language: &str) -> Form {
    Form::of_name(uri.path()).unwrap_or(match language.to_ascii_lowercase().as_str() {
        "plaintext" | "text" => Form::Plain,
        "webvtt" | "vtt" | "srt" | "subtitles" | "subrip" => Form::Captions,
        _ => Form::Markdown,
    })
}

/// The encoding of columns: of what the client offers, the one that costs us least.
pub fn encoding(offered: Option<&[lsp::PositionEncodingKind]>) -> Encoding {
    let offers = |kind: &lsp::PositionEncodingKind| offered.is_some_and(|offered| offered.contains(kind));
    if offers(&lsp::PositionEncodingKind::UTF8) {
        Encoding::Utf8
    } else if offers(&lsp::PositionEncodingKind::UTF32) {
        Encoding::Utf32
    } else {
        Encoding::Utf16
    }
}
