//! `textDocument/diagnostic`, and what is published: the findings of a document.

use std::hash::{DefaultHasher, Hash, Hasher};

use fascicle_analysis::{Finding, FindingKind};
use tower_lsp::lsp_types as lsp;

use crate::lsp::state::View;
use crate::lsp::{library, to_proto};

/// The diagnostics of a document, and whether one was held back because its word is still being typed.
pub fn of(view: &View, settled: bool) -> (Vec<lsp::Diagnostic>, bool) {
    if library::is_own(view) {
        return (Vec::new(), false);
    }
    let growing = view.document.growing.filter(|_| !settled);
    let grows = |finding: &Finding| finding.kind == FindingKind::Name && growing == Some(finding.span.end);
    let findings = &view.reading().findings;
    let list = findings.iter().filter(|finding| !grows(finding)).map(|finding| to_proto::diagnostic(view, finding));
    (list.collect(), findings.iter().any(grows))
}

/// `textDocument/diagnostic`
pub fn document(view: &View, params: &lsp::DocumentDiagnosticParams) -> lsp::DocumentDiagnosticReportResult {
    let (items, _) = of(view, false);
    let id = result_id(&items);
    let report = if params.previous_result_id.as_ref() == Some(&id) {
        lsp::DocumentDiagnosticReport::Unchanged(lsp::RelatedUnchangedDocumentDiagnosticReport {
            related_documents: None,
            unchanged_document_diagnostic_report: lsp::UnchangedDocumentDiagnosticReport { result_id: id },
        })
    } else {
        lsp::DocumentDiagnosticReport::Full(lsp::RelatedFullDocumentDiagnosticReport {
            full_document_diagnostic_report: lsp::FullDocumentDiagnosticReport { result_id: Some(id), items },
            ..Default::default()
        })
    };
    lsp::DocumentDiagnosticReportResult::Report(report)
}

/// A name for a list of diagnostics: equal lists have equal names.
pub fn result_id(list: &[lsp::Diagnostic]) -> String {
    let mut hasher = DefaultHasher::new();
    serde_json::to_string(list).unwrap_or_default().hash(&mut hasher);
    format!("{:016x}", hasher.finish())
}
