//! From plain data to the protocol's types.

use std::fmt::Write as _;

use fascicle_analysis::lines::{Encoding, Position};
use fascicle_analysis::{Finding, Fix, Severity, Span};
use fascicle_vocab::Kind;
use tower_lsp::lsp_types as lsp;

use super::capabilities::Can;
use super::library;
use super::state::View;

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

/// A finding. `elsewhere` are the places of other documents that belong to it.
pub fn diagnostic(view: &View, finding: &Finding, elsewhere: &[lsp::DiagnosticRelatedInformation]) -> lsp::Diagnostic {
    let mut message = finding.message.clone();
    for step in &finding.reason {
        message.push_str("\n• ");
        message.push_str(step);
    }
    if !view.can.related_information {
        for place in elsewhere {
            let name = place.location.uri.path_segments().and_then(Iterator::last).unwrap_or_default();
            let line = place.location.range.start.line + 1;
            let _ = write!(message, "\n• {name}, line {line}: {}", place.message);
        }
    }
    let mut related: Vec<lsp::DiagnosticRelatedInformation> = finding
        .related
        .iter()
        .map(|(span, remark)| lsp::DiagnosticRelatedInformation {
            location: lsp::Location { uri: view.uri.clone(), range: range(view, *span) },
            message: remark.clone(),
        })
        .collect();
    related.extend(elsewhere.iter().cloned());
    let is_given_up = finding.code == fascicle_analysis::consistency::FORMER_NAME && view.can.deprecated_tag;
    lsp::Diagnostic {
        range: range(view, finding.span),
        severity: Some(severity(finding.severity)),
        code: Some(lsp::NumberOrString::String(finding.code.to_owned())),
        code_description: library::code_page(view.can.entry_documents, finding.code)
            .map(|href| lsp::CodeDescription { href }),
        source: Some("fascicle".to_owned()),
        message,
        related_information: (!related.is_empty() && view.can.related_information).then_some(related),
        tags: is_given_up.then(|| vec![lsp::DiagnosticTag::DEPRECATED]),
        data: None,
    }
}

/// What is wrong at a line of a settings or vocabulary file.
pub fn problem(problem: &fascicle_vocab::Problem) -> lsp::Diagnostic {
    let line = problem.line.saturating_sub(1);
    lsp::Diagnostic {
        range: lsp::Range {
            start: lsp::Position { line, character: 0 },
            end: lsp::Position { line: line + 1, character: 0 },
        },
        severity: Some(lsp::DiagnosticSeverity::ERROR),
        code: Some(lsp::NumberOrString::String("setting".to_owned())),
        source: Some("fascicle".to_owned()),
        message: problem.message.clone(),
        ..Default::default()
    }
}

/// The changes of a fix.
pub fn text_edits(view: &View, fix: &Fix) -> Vec<lsp::TextEdit> {
    fix.edits.iter().map(|edit| lsp::TextEdit { range: range(view, edit.span), new_text: edit.text.clone() }).collect()
}

/// Changes to one version of one document.
pub fn workspace_edit(view: &View, edits: Vec<lsp::TextEdit>) -> lsp::WorkspaceEdit {
    workspace_edits(&view.can, vec![(view.clone(), edits)])
}

/// Changes to documents; those that are open are changed in the version that was seen, or not at all.
pub fn workspace_edits(can: &Can, edits: Vec<(View, Vec<lsp::TextEdit>)>) -> lsp::WorkspaceEdit {
    if !can.document_changes {
        let changes = edits.into_iter().map(|(view, edits)| (view.uri, edits)).collect();
        return lsp::WorkspaceEdit { changes: Some(changes), ..Default::default() };
    }
    let edit = |(view, edits): (View, Vec<lsp::TextEdit>)| lsp::TextDocumentEdit {
        text_document: lsp::OptionalVersionedTextDocumentIdentifier { uri: view.uri, version: view.document.version },
        edits: edits.into_iter().map(lsp::OneOf::Left).collect(),
    };
    let edits = edits.into_iter().map(edit).collect();
    lsp::WorkspaceEdit { document_changes: Some(lsp::DocumentChanges::Edits(edits)), ..Default::default() }
}

/// A change to a file that is no open document, made first if it is new.
pub fn edit_of_file(can: &Can, uri: lsp::Url, edit: lsp::TextEdit, is_new: bool) -> lsp::WorkspaceEdit {
    if !can.document_changes {
        return lsp::WorkspaceEdit { changes: Some([(uri, vec![edit])].into()), ..Default::default() };
    }
    let create = lsp::ResourceOp::Create(lsp::CreateFile {
        uri: uri.clone(),
        options: Some(lsp::CreateFileOptions { overwrite: Some(false), ignore_if_exists: Some(true) }),
        annotation_id: None,
    });
    let text_document = lsp::OptionalVersionedTextDocumentIdentifier { uri, version: None };
    let edit = lsp::TextDocumentEdit { text_document, edits: vec![lsp::OneOf::Left(edit)] };
    let changes = if is_new && can.create_files {
        let edit = lsp::DocumentChangeOperation::Edit(edit);
        lsp::DocumentChanges::Operations(vec![lsp::DocumentChangeOperation::Op(create), edit])
    } else {
        lsp::DocumentChanges::Edits(vec![edit])
    };
    lsp::WorkspaceEdit { document_changes: Some(changes), ..Default::default() }
}

/// What a client shows for a kind of structure.
pub const fn symbol_kind(kind: Kind) -> lsp::SymbolKind {
    match kind {
        Kind::Nerve => lsp::SymbolKind::FUNCTION,
        Kind::Plexus => lsp::SymbolKind::MODULE,
        Kind::Root => lsp::SymbolKind::CONSTANT,
        Kind::Muscle => lsp::SymbolKind::CLASS,
        Kind::Joint => lsp::SymbolKind::INTERFACE,
        Kind::Landmark => lsp::SymbolKind::KEY,
        Kind::Skin => lsp::SymbolKind::FIELD,
        Kind::Movement => lsp::SymbolKind::EVENT,
        Kind::Group => lsp::SymbolKind::ENUM,
    }
}
