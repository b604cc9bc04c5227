//! The service: every message of the protocol, and which function answers it.
//!
//! A notification changes the state before its first await. A request takes its view as its first act and works on it in
//! another thread. [`super::transport`] polls each handler as its message is read, so both happen in the order of the
//! messages.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::Instant;

use tokio::sync::Notify;
use tower_lsp::jsonrpc::{Error, ErrorCode, Result};
use tower_lsp::lsp_types as lsp;
use tower_lsp::{ClientSocket, LanguageServer, LspService};

use super::capabilities::{self, Can};
use super::document::Document;
use super::publish::Publisher;
use super::requests::{code_actions, completion, diagnostics, entry, hover, status, tree};
use super::state::{Session, View};
use super::{from_proto, transport};
use crate::course::Course;

/// The handlers.
#[derive(Debug)]
struct Server {
    session: Session,
    publisher: Publisher,
    gone: Arc<Notify>,
}

/// The service and its way to the client.
pub fn service(gone: Arc<Notify>) -> (LspService<impl LanguageServer>, ClientSocket) {
    LspService::build(|client| {
        let session = Session::new(client);
        let publisher = Publisher::start(session.clone());
        Server { session, publisher, gone }
    })
    .custom_method("fascicle/status", Server::status)
    .custom_method("fascicle/tree", Server::tree)
    .custom_method("fascicle/entry", Server::entry)
    .custom_method("$/setTrace", Server::set_trace)
    .finish()
}

/// Tells the work on a request that nobody waits for it any more.
struct TellWhenDropped(Arc<AtomicBool>);

impl Drop for TellWhenDropped {
    fn drop(&mut self) {
        self.0.store(true, Ordering::Relaxed);
    }
}

impl Server {
    fn view(&self, uri: &lsp::Url) -> Result<View> {
        self.session.view(uri).ok_or_else(|| Error {
            code: ErrorCode::InvalidParams,
            message: format!("{uri} is not open").into(),
            data: None,
        })
    }

    /// Answers a request in another thread. The view was taken before the first await.
    async fn answer<T: Send + 'static>(
        &self,
        method: &'static str,
        view: Result<View>,
        work: impl FnOnce(&View) -> T + Send + 'static,
    ) -> Result<T> {
        let view = view?;
        let began = Instant::now();
        let _tell = TellWhenDropped(Arc::clone(&view.cancelled));
        let job = tokio::task::spawn_blocking(move || {
            if view.is_cancelled() {
                return Err(Error::request_cancelled());
            }
            Ok(work(&view))
        });
        let answer = job.await.unwrap_or_else(|_| Err(Error::internal_error()));
        let mut state = self.session.state();
        let times = state.times.entry(method).or_default();
        times.count += 1;
        times.last = began.elapsed();
        times.longest = times.longest.max(times.last);
        answer
    }

    #[allow(clippy::unused_async)] // the shape that the service wants
    async fn status(&self) -> Result<status::Status> {
        Ok(status::status(&self.session))
    }

    async fn tree(&self, params: tree::TreeParams) -> Result<Option<tree::Tree>> {
        let view = self.view(&params.text_document.uri);
        self.answer("fascicle/tree", view, move |view| tree::tree(view, &params)).await
    }

    async fn entry(&self, params: entry::EntryParams) -> Result<Option<entry::Entry>> {
        let course = Arc::clone(&self.session.state().elsewhere);
        tokio::task::spawn_blocking(move || entry::entry(&course, &params)).await.map_err(|_| Error::internal_error())
    }

    #[allow(clippy::unused_async)] // the shape that the service wants
    async fn set_trace(&self, params: lsp::SetTraceParams) {
        self.session.state().trace = params.value == lsp::TraceValue::Verbose;
    }

    /// Tells the author once that a document has to be opened again.
    fn drop_document(&self, uri: &lsp::Url, why: &str) {
        let first = {
            let mut state = self.session.state();
            state.documents.remove(uri);
            state.dropped.insert(uri.clone())
        };
        tracing::error!(%uri, why, "document dropped");
        self.publisher.mark(uri.clone());
        if first {
            let client = self.session.client.clone();
            let message = format!("fascicle lost track of {uri} ({why}). Please close it and open it again.");
            tokio::spawn(async move { client.show_message(lsp::MessageType::ERROR, message).await });
        }
    }

    fn changed(&self, uri: lsp::Url) {
        if !self.session.state().can.pull_diagnostics {
            self.publisher.mark(uri);
        }
    }
}

#[tower_lsp::async_trait]
impl LanguageServer for Server {
    async fn initialize(&self, params: lsp::InitializeParams) -> Result<lsp::InitializeResult> {
        let offered = params.capabilities.general.as_ref().and_then(|general| general.position_encodings.as_deref());
        let encoding = from_proto::encoding(offered);
        #[allow(deprecated)] // older clients send nothing else
        let root = params.root_uri.clone();
        let folders: Vec<lsp::Url> = match &params.workspace_folders {
            Some(folders) => folders.iter().map(|folder| folder.uri.clone()).collect(),
            None => root.into_iter().collect(),
        };
        let known = self.session.known.clone();
        {
            let mut state = self.session.state();
            state.encoding = encoding;
            state.can = Arc::new(Can::read(&params.capabilities));
            state.trace = params.trace == Some(lsp::TraceValue::Verbose);
            state.courses = folders
                .iter()
                .filter_map(|uri| uri.to_file_path().ok())
                .map(|root| Arc::new(Course::open(&root, &known)))
                .collect();
        }
        if let Some(process) = params.process_id {
            transport::watch_parent(process, Arc::clone(&self.gone));
        }
        // The answer does not wait for the vocabulary; whoever needs it first does.
        tokio::task::spawn_blocking(move || {
            known.get();
        });
        Ok(lsp::InitializeResult {
            capabilities: capabilities::ours(encoding),
            server_info: Some(lsp::ServerInfo {
                name: "fascicle".to_owned(),
                version: Some(env!("CARGO_PKG_VERSION").to_owned()),
            }),
        })
    }

    async fn shutdown(&self) -> Result<()> {
        Ok(())
    }

    async fn did_open(&self, params: lsp::DidOpenTextDocumentParams) {
        let lsp::TextDocumentItem { uri, language_id, version, text } = params.text_document;
        let document = Document::new(version, from_proto::form(&uri, &language_id), &text);
        {
            let mut state = self.session.state();
            state.dropped.remove(&uri);
            state.documents.insert(uri.clone(), Arc::new(document));
        }
        self.changed(uri);
    }

    async fn did_change(&self, params: lsp::DidChangeTextDocumentParams) {
        let lsp::VersionedTextDocumentIdentifier { uri, version } = params.text_document;
        let changes: Vec<_> = params.content_changes.into_iter().map(from_proto::change).collect();
        let outcome = {
            let mut state = self.session.state();
            let encoding = state.encoding;
            match state.documents.get(&uri).map(|document| document.changed(version, &changes, encoding)) {
                Some(Ok(next)) => {
                    state.documents.insert(uri.clone(), Arc::new(next));
                    Ok(())
                }
                Some(Err(_)) => Err("an edit ends before it begins"),
                None => Err("it was changed before it was opened"),
            }
        };
        match outcome {
            Ok(()) => self.changed(uri),
            Err(why) => self.drop_document(&uri, why),
        }
    }

    async fn did_close(&self, params: lsp::DidCloseTextDocumentParams) {
        let uri = params.text_document.uri;
        {
            let mut state = self.session.state();
            state.documents.remove(&uri);
            state.dropped.remove(&uri);
        }
        self.changed(uri);
    }

    async fn hover(&self, params: lsp::HoverParams) -> Result<Option<lsp::Hover>> {
        let view = self.view(&params.text_document_position_params.text_document.uri);
        self.answer("textDocument/hover", view, move |view| hover::hover(view, &params)).await
    }

    async fn completion(&self, params: lsp::CompletionParams) -> Result<Option<lsp::CompletionResponse>> {
        let view = self.view(&params.text_document_position.text_document.uri);
        self.answer("textDocument/completion", view, move |view| Some(completion::completion(view, &params))).await
    }

    async fn completion_resolve(&self, item: lsp::CompletionItem) -> Result<lsp::CompletionItem> {
        let course = Arc::clone(&self.session.state().elsewhere);
        tokio::task::spawn_blocking(move || completion::resolve(&course, item))
            .await
            .map_err(|_| Error::internal_error())
    }

    async fn code_action(&self, params: lsp::CodeActionParams) -> Result<Option<lsp::CodeActionResponse>> {
        let view = self.view(&params.text_document.uri);
        self.answer("textDocument/codeAction", view, move |view| Some(code_actions::code_actions(view, &params))).await
    }

    async fn diagnostic(&self, params: lsp::DocumentDiagnosticParams) -> Result<lsp::DocumentDiagnosticReportResult> {
        let view = self.view(&params.text_document.uri);
        self.answer("textDocument/diagnostic", view, move |view| diagnostics::document(view, &params)).await
    }
}
