//! `textDocument/diagnostic`, and what is published: the findings of a document.

use std::hash::{DefaultHasher, Hash, Hasher};

use fascicle_analysis::allowances::Allowances;
use fascicle_analysis::{Finding, FindingKind};
use tower_lsp::lsp_types as lsp;

use super::differences::{self, Difference};
use crate::lsp::everywhere::Everywhere;
use crate::lsp::state::View;
use crate::lsp::{library, to_proto};

/// A finding with the places of other documents that belong to it.
pub type Found = (Finding, Vec<lsp::DiagnosticRelatedInformation>);

/// The findings of a document: its own, and what it tells otherwise than the rest of its course.
pub fn findings(all: &Everywhere, view: &View) -> Vec<Found> {
    with_differences(all, view, &differences::of_document(all, view))
}

/// The same where it is known what the document tells otherwise.
pub fn with_differences(all: &Everywhere, view: &View, differences: &[Difference]) -> Vec<Found> {
    if library::is_own(view) {
        return Vec::new();
    }
    let own = view.reading().findings.iter().filter(|finding| !differences::is_for_the_course(finding, &view.course));
    let mut list: Vec<Found> = own.map(|finding| (finding.clone(), Vec::new())).collect();
    let allowed = Allowances::of(view.text(), view.document.form);
    let told = differences.iter().filter(|one| !allowed.allows(&one.finding));
    list.extend(told.map(|one| (one.finding.clone(), differences::related(all, one))));
    list.sort_by_key(|(finding, _)| (finding.span, finding.code));
    list
}

/// The diagnostics of a document, and whether one was held back because its word is still being typed.
pub fn of(all: &Everywhere, view: &View, differences: &[Difference]) -> (Vec<lsp::Diagnostic>, bool) {
    // A client that asks and cannot be told to ask again would never hear of what is held back.
    let is_asked_again = !view.can.pull_diagnostics || view.can.refresh_diagnostics;
    let growing = view.document.growing().filter(|_| is_asked_again);
    let grows = |finding: &Finding| finding.kind == FindingKind::Name && growing == Some(finding.span.end);
    let findings = with_differences(all, view, differences);
    let shown = findings.iter().filter(|(finding, _)| !grows(finding));
    let list = shown.map(|(finding, related)| to_proto::diagnostic(view, finding, related)).collect();
    (list, findings.iter().any(|(finding, _)| grows(finding)))
}

/// `textDocument/diagnostic`, and whether a finding was held back.
pub fn document(
    all: &Everywhere,
    params: &lsp::DocumentDiagnosticParams,
) -> (lsp::DocumentDiagnosticReportResult, bool) {
    let view = &all.here;
    let (items, held_back) = of(all, view, &differences::of_document(all, view));
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
    (lsp::DocumentDiagnosticReportResult::Report(report), held_back)
}

/// A name for a list of diagnostics: equal lists have equal names.
pub fn result_id(list: &[lsp::Diagnostic]) -> String {
    let mut hasher = DefaultHasher::new();
    serde_json::to_string(list).unwrap_or_default().hash(&mut hasher);
    format!("{:016x}", hasher.finish())
}
