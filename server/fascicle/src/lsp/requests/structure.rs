//! What hangs on the structure of a text: folding, selection ranges, links, inlay hints.

use fascicle_analysis::features::{folding, hints, links, selection};
use serde_json::json;
use tower_lsp::lsp_types as lsp;

use crate::course::Course;
use crate::lsp::state::View;
use crate::lsp::{from_proto, library, to_proto};

/// `textDocument/foldingRange`
pub fn folding(view: &View) -> Vec<lsp::FoldingRange> {
    let ranges = folding::folding(view.text(), view.reading()).into_iter().map(|span| to_proto::range(view, span));
    ranges
        .filter(|range| range.start.line < range.end.line)
        .map(|range| lsp::FoldingRange {
            start_line: range.start.line,
            end_line: range.end.line,
            start_character: None,
            end_character: None,
            kind: Some(lsp::FoldingRangeKind::Region),
            collapsed_text: None,
        })
        .collect()
}

/// `textDocument/selectionRange`
pub fn selection(view: &View, positions: &[lsp::Position]) -> Vec<lsp::SelectionRange> {
    positions
        .iter()
        .map(|position| {
            let at = view.offset(from_proto::position(*position));
            let mut outer = None;
            for span in selection::selection(view.text(), view.reading(), at).into_iter().rev() {
                outer = Some(lsp::SelectionRange { range: to_proto::range(view, span), parent: outer.map(Box::new) });
            }
            let here = lsp::Range { start: *position, end: *position };
            outer.unwrap_or(lsp::SelectionRange { range: here, parent: None })
        })
        .collect()
}

/// `textDocument/documentLink`: links to documents that are there.
pub fn links(view: &View) -> Vec<lsp::DocumentLink> {
    let folder = view.uri.to_file_path().ok().and_then(|path| path.parent().map(std::path::Path::to_path_buf));
    let target = |link: &links::Link| {
        let (path, anchor) = link.destination.split_once('#').unwrap_or((&link.destination, ""));
        if path.contains("://") || path.starts_with("mailto:") {
            return lsp::Url::parse(&link.destination).ok();
        }
        if path.is_empty() {
            let mut own = view.uri.clone();
            own.set_fragment(Some(anchor));
            return Some(own);
        }
        if library::is_own(view) {
            return library::linked(&view.course, &view.uri, &link.destination);
        }
        let folder = folder.as_ref()?;
        let plain = path.replace("%20", " ");
        let names = if link.wiki { vec![format!("{plain}.md"), plain] } else { vec![plain] };
        let found = names.into_iter().map(|name| folder.join(name)).find(|path| path.is_file())?;
        let mut url = lsp::Url::from_file_path(found.canonicalize().ok()?).ok()?;
        if !anchor.is_empty() {
            url.set_fragment(Some(anchor));
        }
        Some(url)
    };
    links::links(view.text(), view.document.form)
        .iter()
        .filter_map(|link| {
            Some(lsp::DocumentLink {
                range: to_proto::range(view, link.span),
                target: Some(target(link)?),
                tooltip: None,
                data: None,
            })
        })
        .collect()
}

/// `textDocument/inlayHint`: the segments behind names, where the course or the editor wants them.
pub fn hints(view: &View, range: lsp::Range) -> Vec<lsp::InlayHint> {
    if !view.course.settings.file.segments {
        return Vec::new();
    }
    let vocabulary = &view.course.knowledge().vocabulary;
    let within = from_proto::span(view, range);
    hints::hints(view.text(), view.reading(), within, vocabulary)
        .into_iter()
        .map(|hint| lsp::InlayHint {
            position: to_proto::position(view.position(hint.at)),
            label: lsp::InlayHintLabel::String(hint.text),
            kind: None,
            text_edits: None,
            tooltip: None,
            padding_left: Some(true),
            padding_right: None,
            data: Some(json!({
                "entry": vocabulary.entry(hint.entry).id,
                "of": view.uri,
                "version": view.document.version,
            })),
        })
        .collect()
}

/// `inlayHint/resolve`: every reading of the segments, with who says so, and the edit that writes the hint down.
pub fn resolve_hint(course: &Course, mut hint: lsp::InlayHint) -> lsp::InlayHint {
    let vocabulary = &course.knowledge().vocabulary;
    let id = hint.data.as_ref().and_then(|data| data.get("entry")).and_then(|id| vocabulary.find(id.as_str()?));
    let Some(id) = id else { return hint };
    let mut text = format!("Segments of {}:", vocabulary.name(id));
    for reading in vocabulary.roots_of(id) {
        let sources: Vec<String> =
            reading.fact.sources.iter().map(|source| fascicle_analysis::card::cite(vocabulary, source)).collect();
        let segments = fascicle_analysis::card::segments(reading.main, reading.lesser);
        text = format!("{text}\n- {segments} ({})", sources.join("; "));
    }
    hint.tooltip = Some(lsp::InlayHintTooltip::MarkupContent(to_proto::markdown(text)));
    if let lsp::InlayHintLabel::String(label) = &hint.label {
        let range = lsp::Range { start: hint.position, end: hint.position };
        hint.text_edits = Some(vec![lsp::TextEdit { range, new_text: format!(" ({label})") }]);
    }
    hint
}
