//! `textDocument/hover`: the card of a structure, and what the graph says of a claim.

use fascicle_analysis::features;
use tower_lsp::lsp_types as lsp;

use crate::lsp::state::View;
use crate::lsp::{from_proto, to_proto};

/// `textDocument/hover`
pub fn hover(view: &View, params: &lsp::HoverParams) -> Option<lsp::Hover> {
    let at = view.offset(from_proto::position(params.text_document_position_params.position));
    let hover = features::hover::hover(view.reading(), at, view.course.knowledge())?;
    Some(lsp::Hover {
        contents: lsp::HoverContents::Markup(to_proto::markdown(hover.markdown)),
        range: Some(to_proto::range(view, hover.span)),
    })
}
