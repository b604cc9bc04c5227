//! `textDocument/codeAction`: what can be done about the findings at a place.

use tower_lsp::lsp_types as lsp;

use crate::lsp::state::View;
use crate::lsp::{from_proto, to_proto};

/// `textDocument/codeAction`
pub fn code_actions(view: &View, params: &lsp::CodeActionParams) -> lsp::CodeActionResponse {
    let span = from_proto::span(view, params.range);
    let wants = |kind: &lsp::CodeActionKind| {
        params.context.only.as_ref().is_none_or(|only| {
            only.iter().any(|wanted| {
                kind == wanted || kind.as_str().strip_prefix(wanted.as_str()).is_some_and(|rest| rest.starts_with('.'))
            })
        })
    };
    let mut list = Vec::new();
    if wants(&lsp::CodeActionKind::QUICKFIX) {
        for finding in &view.reading().findings {
            if finding.span.start > span.end || finding.span.end < span.start {
                continue;
            }
            for (rank, fix) in finding.fixes.iter().enumerate() {
                list.push(lsp::CodeActionOrCommand::CodeAction(lsp::CodeAction {
                    title: fix.title.clone(),
                    kind: Some(lsp::CodeActionKind::QUICKFIX),
                    diagnostics: Some(vec![to_proto::diagnostic(view, finding)]),
                    edit: Some(to_proto::workspace_edit(view, to_proto::text_edits(view, fix))),
                    is_preferred: (rank == 0 && fix.safe).then_some(true),
                    ..Default::default()
                }));
            }
        }
    }
    list
}
