//! What the client can do, and what we offer it.

use fascicle_analysis::lines::Encoding;
use tower_lsp::lsp_types as lsp;

use super::to_proto;

/// What the client can do, as far as we act on it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[allow(clippy::struct_excessive_bools)]
pub struct Can {
    /// It asks for diagnostics itself.
    pub pull_diagnostics: bool,
    /// It shows places that belong to a diagnostic.
    pub related_information: bool,
    /// It takes edits with the version that they are for.
    pub document_changes: bool,
    /// It resolves the edit of a code action when it is chosen.
    pub resolve_edit: bool,
}

impl Can {
    /// Reads the client's capabilities.
    pub fn read(client: &lsp::ClientCapabilities) -> Self {
        let text = client.text_document.as_ref();
        let workspace = client.workspace.as_ref();
        let edit = workspace.and_then(|workspace| workspace.workspace_edit.as_ref());
        let action = text.and_then(|text| text.code_action.as_ref());
        Self {
            pull_diagnostics: text.is_some_and(|text| text.diagnostic.is_some()),
            related_information: text
                .and_then(|text| text.publish_diagnostics.as_ref())
                .and_then(|publish| publish.related_information)
                .unwrap_or(false),
            document_changes: edit.and_then(|edit| edit.document_changes).unwrap_or(false),
            resolve_edit: action
                .and_then(|action| action.resolve_support.as_ref())
                .is_some_and(|resolve| resolve.properties.iter().any(|property| property == "edit")),
        }
    }
}

/// What we offer.
pub fn ours(encoding: Encoding) -> lsp::ServerCapabilities {
    lsp::ServerCapabilities {
        position_encoding: Some(to_proto::encoding(encoding)),
        text_document_sync: Some(lsp::TextDocumentSyncCapability::Options(lsp::TextDocumentSyncOptions {
            open_close: Some(true),
            change: Some(lsp::TextDocumentSyncKind::INCREMENTAL),
            ..Default::default()
        })),
        hover_provider: Some(lsp::HoverProviderCapability::Simple(true)),
        completion_provider: Some(lsp::CompletionOptions { resolve_provider: Some(true), ..Default::default() }),
        code_action_provider: Some(lsp::CodeActionProviderCapability::Options(lsp::CodeActionOptions {
            code_action_kinds: Some(vec![lsp::CodeActionKind::QUICKFIX]),
            ..Default::default()
        })),
        diagnostic_provider: Some(lsp::DiagnosticServerCapabilities::Options(lsp::DiagnosticOptions {
            identifier: Some("fascicle".to_owned()),
            inter_file_dependencies: true,
            workspace_diagnostics: false,
            ..Default::default()
        })),
        ..Default::default()
    }
}
