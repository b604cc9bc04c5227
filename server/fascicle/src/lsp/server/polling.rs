//! `workspace/diagnostic` as it is asked for again and again: in parts as they are found, and with no answer until there is
//! one worth giving.

use std::sync::Arc;
use std::time::{Duration, Instant};

use serde_json::json;
use tokio::sync::mpsc;
use tower_lsp::jsonrpc::{Error, Result};
use tower_lsp::lsp_types as lsp;

use super::Server;
use crate::lsp::requests::workspace_diagnostics;

/// How often a partial result is sent at most.
const PART: Duration = Duration::from_millis(50);

impl Server {
    pub(super) async fn poll_diagnostics(
        &self,
        params: lsp::WorkspaceDiagnosticParams,
    ) -> Result<lsp::WorkspaceDiagnosticReportResult> {
        let mut changes = self.session.changes();
        let token = params.partial_result_params.partial_result_token;
        loop {
            let all = self.session.anywhere();
            let known = Arc::clone(&self.session.state().told);
            let _tell = all.here.wish.until_dropped();
            let (sender, mut parts) = mpsc::unbounded_channel();
            let previous = params.previous_result_ids.clone();
            let job = tokio::task::spawn_blocking(move || {
                workspace_diagnostics::reports(&all, &known, previous, &mut |report| drop(sender.send(report)))
            });
            let mut items = Vec::new();
            let (mut is_news, mut is_streamed) = (false, false);
            let mut last = Instant::now();
            while let Some(report) = parts.recv().await {
                is_news |= workspace_diagnostics::is_news(&report);
                items.push(report);
                if let Some(token) = token.as_ref().filter(|_| is_news && last.elapsed() > PART) {
                    self.send_part(token, &std::mem::take(&mut items));
                    (last, is_streamed) = (Instant::now(), true);
                }
            }
            let told = job.await.map_err(|_| Error::internal_error())?;
            self.session.state().told = Arc::new(told);
            if let Some(token) = token.as_ref().filter(|_| is_streamed && !items.is_empty()) {
                // Who sends a part sends all in parts.
                self.send_part(token, &std::mem::take(&mut items));
            }
            if is_news {
                let report = lsp::WorkspaceDiagnosticReport { items };
                return Ok(lsp::WorkspaceDiagnosticReportResult::Report(report));
            }
            // Nothing is new: the answer waits until something is, so that the client need not ask again and again.
            if changes.changed().await.is_err() {
                return Err(Error::internal_error());
            }
        }
    }

    /// Sends a part of a result. It must be written before the answer, which the way through the client does not promise.
    fn send_part(&self, token: &lsp::ProgressToken, items: &[lsp::WorkspaceDocumentDiagnosticReport]) {
        let params = json!({ "token": token, "value": { "items": items } });
        self.output.send(&json!({ "jsonrpc": "2.0", "method": "$/progress", "params": params }));
    }
}
