//! `textDocument/hover`: the card of a structure, and what the graph says of a claim.

use fascicle_analysis::{features, picture};
use fascicle_vocab::EntryId;
use percent_encoding::{NON_ALPHANUMERIC, utf8_percent_encode};
use tower_lsp::lsp_types as lsp;

use crate::lsp::state::View;
use crate::lsp::{from_proto, to_proto};

/// No more lines of a tree are shown; all of it stands in the document of the entry.
const LINES: usize = 40;

/// `textDocument/hover`
pub fn hover(view: &View, params: &lsp::HoverParams) -> Option<lsp::Hover> {
    let at = view.offset(from_proto::position(params.text_document_position_params.position));
    let mut hover = features::hover::hover(view.reading(), at, view.course.knowledge())?;
    if let Some(tree) = hover.nerve.and_then(|nerve| tree(view, nerve)) {
        hover.markdown.push_str(&tree);
    }
    Some(lsp::Hover {
        contents: lsp::HoverContents::Markup(to_proto::markdown(hover.markdown)),
        range: Some(to_proto::range(view, hover.span)),
    })
}

/// The branches of a nerve: a picture where the client shows pictures, else text.
fn tree(view: &View, nerve: EntryId) -> Option<String> {
    let vocabulary = &view.course.knowledge().vocabulary;
    let tree = picture::branch_tree(vocabulary, nerve)?;
    if view.can.pictures {
        let svg = tree.svg(vocabulary);
        let picture = utf8_percent_encode(&svg, NON_ALPHANUMERIC);
        return Some(format!("\n\n![Branch tree](data:image/svg+xml,{picture})\n"));
    }
    let text = tree.text();
    let shown: Vec<&str> = text.lines().take(LINES).collect();
    let more = text.lines().count().saturating_sub(LINES);
    let rest = if more > 0 { format!("\n… {more} more lines") } else { String::new() };
    Some(format!("\n\n**Branch tree**\n\n```\n{}{rest}\n```\n", shown.join("\n")))
}
