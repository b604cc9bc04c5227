//! From plain data to the protocol's types.

use fascicle_analysis::lines::{Encoding, Position};
use fascicle_analysis::{Finding, Fix, Severity, Span};
use tower_lsp::lsp_types as lsp;

use super::state::View;

/// Where the findings are explained; a finding's code is the anchor.
const FINDINGS_PAGE: &str = "fascicle:/docs/findings";

/// A position.
pub fn position(position: Position) -> lsp::Position {
    lsp::Position { line: position.line, character: position.column }
}

/// A range.
pub fn range(view: &View, span: Span) -> lsp::Range {
    lsp::Range { start: position(view.position(span.start)), end: position(view.position(span.end)) }
}

/// The name of an encoding.
pub fn encoding(encoding: Encoding) -> lsp::PositionEncodingKind {
    match encoding {
        Encoding::Utf8 => lsp::PositionEncodingKind::UTF8,
        Encoding::Utf16 => lsp::PositionEncodingKind::UTF16,
        Encoding::Utf32 => lsp::PositionEncodingKind::UTF32,
    }
}

/// Markdown.
pub fn markdown(value: String) -> lsp::MarkupContent {
    lsp::MarkupContent { kind: lsp::MarkupKind::Markdown, value }
}

/// A severity.
pub const fn severity(severity: Severity) -> lsp::DiagnosticSeverity {
    match severity {
        Severity::Error => lsp::DiagnosticSeverity::ERROR,
        Severity::Warning => lsp::DiagnosticSeverity::WARNING,
        Severity::Information => lsp::DiagnosticSeverity::INFORMATION,
        Severity::Hint => lsp::DiagnosticSeverity::HINT,
    }
}

/// A finding.
pub fn diagnostic(view: &View, finding: &Finding) -> lsp::Diagnostic {
    let mut message = finding.message.clone();
    for step in &finding.reason {
        message.push_str("\n• ");
        message.push_str(step);
    }
    let related: Vec<lsp::DiagnosticRelatedInformation> = finding
        .related
        .iter()
        .map(|(span, remark)| lsp::DiagnosticRelatedInformation {
            location: lsp::Location { uri: view.uri.clone(), range: range(view, *span) },
            message: remark.clone(),
        })
        .collect();
    lsp::Diagnostic {
        range: range(view, finding.span),
        severity: Some(severity(finding.severity)),
        code: Some(lsp::NumberOrString::String(finding.code.to_owned())),
        code_description: code_page(finding.code).map(|href| lsp::CodeDescription { href }),
        source: Some("fascicle".to_owned()),
        message,
        related_information: (!related.is_empty() && view.can.related_information).then_some(related),
        tags: None,
        data: None,
    }
}

/// Where a code is explained.
pub fn code_page(code: &str) -> Option<lsp::Url> {
    lsp::Url::parse(&format!("{FINDINGS_PAGE}#{code}")).ok()
}

/// The changes of a fix.
pub fn text_edits(view: &View, fix: &Fix) -> Vec<lsp::TextEdit> {
    fix.edits.iter().map(|edit| lsp::TextEdit { range: range(view, edit.span), new_text: edit.text.clone() }).collect()
}

/// Changes to one version of one document.
pub fn workspace_edit(view: &View, edits: Vec<lsp::TextEdit>) -> lsp::WorkspaceEdit {
    if view.can.document_changes {
        let edit = lsp::TextDocumentEdit {
            text_document: lsp::OptionalVersionedTextDocumentIdentifier {
                uri: view.uri.clone(),
                version: Some(view.document.version),
            },
            edits: edits.into_iter().map(lsp::OneOf::Left).collect(),
        };
        lsp::WorkspaceEdit { document_changes: Some(lsp::DocumentChanges::Edits(vec![edit])), ..Default::default() }
    } else {
        lsp::WorkspaceEdit { changes: Some([(view.uri.clone(), edits)].into()), ..Default::default() }
    }
}
