//! The service: every message of the protocol, and which function answers it.
//!
//! A notification changes the state before its first await. A request takes its view as its first act and works on it in
//! another thread. [`super::transport`] polls each handler as its message is read, so both happen in the order of the
//! messages.

mod answers;
mod polling;
pub mod upkeep;

use std::path::PathBuf;
use std::sync::Arc;

use serde_json::Value;
use tokio::sync::Notify;
use tower_lsp::jsonrpc::{Error, Result};
use tower_lsp::lsp_types as lsp;
use tower_lsp::{ClientSocket, LanguageServer, LspService};

use self::answers::not_open;
use super::capabilities::{self, Can};
use super::document::Document;
use super::everywhere::Everywhere;
use super::indexer::{Indexer, Order};
use super::publish::{self, Publisher};
use super::requests::{
    code_actions, commands, completion, diagnostics, hierarchy, hover, lenses, navigation, references, status,
    structure, symbols, tokens, tree,
};
use super::state::{Folder, Session, View};
use super::transport::Output;
use super::{from_proto, transport};
use crate::course::SETTINGS_FILE;

/// The handlers.
#[derive(Debug)]
struct Server {
    session: Session,
    publisher: Publisher,
    indexer: Indexer,
    /// The direct way out, for what must be written before an answer.
    output: Output,
    gone: Arc<Notify>,
}

/// The service, its way to the client, and what it holds.
pub fn service(gone: Arc<Notify>, output: Output) -> (LspService<impl LanguageServer>, ClientSocket, Option<Session>) {
    let mut held = None;
    let (service, socket) = LspService::build(|client| {
        let session = Session::new(client);
        held = Some(session.clone());
        let publisher = Publisher::start(session.clone());
        let indexer = Indexer::start(session.clone(), publisher.clone());
        Server { session, publisher, indexer, output, gone }
    })
    .custom_method("fascicle/status", Server::status)
    .custom_method("fascicle/entry", Server::entry)
    .custom_method("fascicle/tree", Server::tree)
    .custom_method("$/setTrace", Server::set_trace)
    .custom_method("window/workDoneProgress/cancel", Server::cancel_progress)
    .finish();
    (service, socket, held)
}

impl Server {
    #[allow(clippy::unused_async)] // the shape that the service wants
    async fn status(&self) -> Result<status::Status> {
        Ok(status::status(&self.session))
    }

    async fn entry(&self, params: navigation::EntryParams) -> Result<Option<navigation::EntryDocument>> {
        let courses = navigation::courses_of_entry(&mut self.session.state(), &params);
        self.ask("fascicle/entry", None, move |_, can| {
            courses.iter().find_map(|course| navigation::entry(course, can.entry_documents, &params))
        })
        .await
    }

    async fn tree(&self, params: tree::TreeParams) -> Result<Option<tree::Tree>> {
        let view = self.view(&params.text_document.uri);
        self.answer("fascicle/tree", view, move |view| tree::tree(view, &params)).await
    }

    #[allow(clippy::unused_async)] // the shape that the service wants
    async fn set_trace(&self, params: lsp::SetTraceParams) {
        self.session.state().trace = params.value == lsp::TraceValue::Verbose;
    }

    /// The author has seen enough of a bar.
    #[allow(clippy::unused_async)] // the shape that the service wants
    async fn cancel_progress(&self, params: lsp::WorkDoneProgressCancelParams) {
        self.indexer.cancel(&params.token);
    }
}

/// Addresses that come as text.
fn addresses<'a>(list: impl Iterator<Item = &'a String>) -> impl Iterator<Item = lsp::Url> {
    list.filter_map(|uri| lsp::Url::parse(uri).ok())
}

fn path(uri: &lsp::Url) -> Option<PathBuf> {
    uri.to_file_path().ok()
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
        {
            let mut state = self.session.state();
            state.encoding = encoding;
            state.can = Arc::new(Can::read(&params));
            state.trace = params.trace == Some(lsp::TraceValue::Verbose);
            for root in folders.iter().filter_map(path) {
                state.add_folder(root, false);
            }
        }
        if let Some(process) = params.process_id {
            transport::watch_parent(process, Arc::clone(&self.gone));
        }
        // The answer does not wait for the vocabulary; whoever needs it first does.
        let known = self.session.known.clone();
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

    async fn initialized(&self, _: lsp::InitializedParams) {
        let roots: Vec<PathBuf> = self.session.state().folders.iter().map(|folder| folder.root.clone()).collect();
        for root in roots {
            self.indexer.order(Order::Folder(root));
        }
        self.watch();
        self.ask_settings(None);
        let session = self.session.clone();
        tokio::spawn(async move { publish::settings(&session).await });
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
            state.put(uri.clone(), document);
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
                    state.put(uri.clone(), next);
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

    async fn did_save(&self, params: lsp::DidSaveTextDocumentParams) {
        if params.text_document.uri.path().ends_with(SETTINGS_FILE) {
            self.reopen();
        }
    }

    async fn did_close(&self, params: lsp::DidCloseTextDocumentParams) {
        let uri = params.text_document.uri;
        {
            let mut state = self.session.state();
            state.remove(&uri);
            state.dropped.remove(&uri);
            state.tokens.remove(&uri);
        }
        // What stands on disk counts again.
        if let Some(path) = path(&uri) {
            self.indexer.order(Order::Files(vec![path]));
        }
        self.changed(uri);
    }

    async fn did_change_configuration(&self, params: lsp::DidChangeConfigurationParams) {
        self.ask_settings(Some(params.settings));
    }

    async fn did_change_workspace_folders(&self, params: lsp::DidChangeWorkspaceFoldersParams) {
        let added: Vec<PathBuf> = params.event.added.iter().filter_map(|folder| path(&folder.uri)).collect();
        let removed: Vec<PathBuf> = params.event.removed.iter().filter_map(|folder| path(&folder.uri)).collect();
        {
            let mut state = self.session.state();
            let has_left = |folder: &Folder| removed.iter().any(|root| folder.root.starts_with(root));
            state.folders.retain(|folder| !has_left(folder));
            for root in added {
                state.add_folder(root, false);
            }
        }
        self.reopen();
    }

    async fn did_change_watched_files(&self, params: lsp::DidChangeWatchedFilesParams) {
        self.files_changed(params.changes.iter().map(|change| change.uri.clone()));
    }

    async fn did_create_files(&self, params: lsp::CreateFilesParams) {
        self.files_changed(addresses(params.files.iter().map(|file| &file.uri)));
    }

    async fn did_rename_files(&self, params: lsp::RenameFilesParams) {
        self.files_changed(addresses(params.files.iter().flat_map(|file| [&file.old_uri, &file.new_uri])));
    }

    async fn did_delete_files(&self, params: lsp::DeleteFilesParams) {
        self.files_changed(addresses(params.files.iter().map(|file| &file.uri)));
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
        let about = navigation::about(item.data.as_ref());
        self.ask("completionItem/resolve", about, move |course, _| completion::resolve(course, item)).await
    }

    async fn code_action(&self, params: lsp::CodeActionParams) -> Result<Option<lsp::CodeActionResponse>> {
        let uri = params.text_document.uri.clone();
        self.answer_from_all("textDocument/codeAction", &uri, move |all| {
            Ok(Some(code_actions::code_actions(all, &params)))
        })
        .await
    }

    async fn code_action_resolve(&self, action: lsp::CodeAction) -> Result<lsp::CodeAction> {
        let Some(later) = code_actions::later_of(&action) else { return Ok(action) };
        if self.session.view(&later.uri).is_none() {
            return Err(Error::content_modified());
        }
        let uri = later.uri.clone();
        self.answer_from_all("codeAction/resolve", &uri, move |all| code_actions::resolve(all, &later, action)).await
    }

    async fn execute_command(&self, params: lsp::ExecuteCommandParams) -> Result<Option<Value>> {
        let client = self.session.client.clone();
        // The client's answer is not waited for: a handler that waits for its client could wait for ever.
        if params.command == commands::SHOW {
            let Some(show) = commands::show(&params.arguments) else {
                return Err(Error::invalid_params("the arguments are the address of a document and a range"));
            };
            tokio::spawn(async move {
                if let Err(error) = client.show_document(show).await {
                    tracing::warn!(%error, "the client did not show a document");
                }
            });
            return Ok(None);
        }
        let Some(view) = commands::view(&self.session, &params.arguments) else {
            return Err(Error::invalid_params("the first argument is the address of an open document"));
        };
        let edit = self
            .answer("workspace/executeCommand", Ok(view), move |view| {
                commands::edit(view, &params.command, &params.arguments)
            })
            .await?;
        let Some(edit) = edit else { return Err(Error::invalid_params("no such command, or nothing to insert")) };
        tokio::spawn(async move {
            if let Err(error) = client.apply_edit(edit).await {
                tracing::warn!(%error, "the client did not apply an edit");
            }
        });
        Ok(None)
    }

    async fn diagnostic(&self, params: lsp::DocumentDiagnosticParams) -> Result<lsp::DocumentDiagnosticReportResult> {
        let uri = params.text_document.uri.clone();
        let all = self.session.everywhere(&uri).map(Everywhere::only_latest).ok_or_else(|| not_open(&uri))?;
        let (view, seen) = (Ok(all.here.clone()), all.here.clone());
        let work = move |_: &View| diagnostics::document(&all, &params);
        let (report, held_back) = self.answer_latest("textDocument/diagnostic", view, work).await?;
        if held_back {
            let session = self.session.clone();
            publish::settle_later(seen, move || {
                session.bump();
                tokio::spawn(async move { drop(session.client.workspace_diagnostic_refresh().await) });
            });
        }
        Ok(report)
    }

    async fn workspace_diagnostic(
        &self,
        params: lsp::WorkspaceDiagnosticParams,
    ) -> Result<lsp::WorkspaceDiagnosticReportResult> {
        self.poll_diagnostics(params).await
    }

    async fn goto_definition(&self, params: lsp::GotoDefinitionParams) -> Result<Option<lsp::GotoDefinitionResponse>> {
        let at = params.text_document_position_params;
        let view = self.view(&at.text_document.uri);
        self.answer("textDocument/definition", view, move |view| navigation::definition(view, at.position)).await
    }

    async fn goto_declaration(&self, params: lsp::GotoDefinitionParams) -> Result<Option<lsp::GotoDefinitionResponse>> {
        let at = params.text_document_position_params;
        let view = self.view(&at.text_document.uri);
        self.answer("textDocument/declaration", view, move |view| navigation::definition(view, at.position)).await
    }

    async fn goto_type_definition(
        &self,
        params: lsp::GotoDefinitionParams,
    ) -> Result<Option<lsp::GotoDefinitionResponse>> {
        let at = params.text_document_position_params;
        let view = self.view(&at.text_document.uri);
        self.answer("textDocument/typeDefinition", view, move |view| navigation::type_definition(view, at.position))
            .await
    }

    async fn references(&self, params: lsp::ReferenceParams) -> Result<Option<Vec<lsp::Location>>> {
        let at = params.text_document_position;
        let with_definition = params.context.include_declaration;
        self.answer_from_all("textDocument/references", &at.text_document.uri, move |all| {
            Ok(references::references(all, at.position, with_definition))
        })
        .await
    }

    async fn document_highlight(
        &self,
        params: lsp::DocumentHighlightParams,
    ) -> Result<Option<Vec<lsp::DocumentHighlight>>> {
        let at = params.text_document_position_params;
        let view = self.view(&at.text_document.uri);
        self.answer("textDocument/documentHighlight", view, move |view| navigation::highlight(view, at.position)).await
    }

    async fn linked_editing_range(
        &self,
        params: lsp::LinkedEditingRangeParams,
    ) -> Result<Option<lsp::LinkedEditingRanges>> {
        let at = params.text_document_position_params;
        let view = self.view(&at.text_document.uri);
        self.answer("textDocument/linkedEditingRange", view, move |view| navigation::linked(view, at.position)).await
    }

    async fn prepare_rename(&self, at: lsp::TextDocumentPositionParams) -> Result<Option<lsp::PrepareRenameResponse>> {
        let view = self.view(&at.text_document.uri);
        self.answer("textDocument/prepareRename", view, move |view| references::prepare(view, at.position)).await
    }

    async fn rename(&self, params: lsp::RenameParams) -> Result<Option<lsp::WorkspaceEdit>> {
        let at = params.text_document_position;
        let new = params.new_name;
        self.answer_from_all("textDocument/rename", &at.text_document.uri, move |all| {
            references::rename(all, at.position, &new)
        })
        .await
    }

    async fn document_symbol(&self, params: lsp::DocumentSymbolParams) -> Result<Option<lsp::DocumentSymbolResponse>> {
        let view = self.view(&params.text_document.uri);
        self.answer_latest("textDocument/documentSymbol", view, |view| Some(symbols::document(view))).await
    }

    async fn symbol(&self, params: lsp::WorkspaceSymbolParams) -> Result<Option<Vec<lsp::SymbolInformation>>> {
        let all = self.session.anywhere();
        let view = Ok(all.here.clone());
        self.answer("workspace/symbol", view, move |_| Some(references::symbols(&all, &params.query))).await
    }

    async fn prepare_call_hierarchy(
        &self,
        params: lsp::CallHierarchyPrepareParams,
    ) -> Result<Option<Vec<lsp::CallHierarchyItem>>> {
        let at = params.text_document_position_params;
        let view = self.view(&at.text_document.uri);
        self.answer("textDocument/prepareCallHierarchy", view, move |view| hierarchy::prepare_calls(view, at.position))
            .await
    }

    async fn incoming_calls(
        &self,
        params: lsp::CallHierarchyIncomingCallsParams,
    ) -> Result<Option<Vec<lsp::CallHierarchyIncomingCall>>> {
        let about = navigation::about(params.item.data.as_ref());
        self.ask("callHierarchy/incomingCalls", about, move |course, can| {
            hierarchy::incoming(course, can.entry_documents, &params.item)
        })
        .await
    }

    async fn outgoing_calls(
        &self,
        params: lsp::CallHierarchyOutgoingCallsParams,
    ) -> Result<Option<Vec<lsp::CallHierarchyOutgoingCall>>> {
        let about = navigation::about(params.item.data.as_ref());
        self.ask("callHierarchy/outgoingCalls", about, move |course, can| {
            hierarchy::outgoing(course, can.entry_documents, &params.item)
        })
        .await
    }

    async fn prepare_type_hierarchy(
        &self,
        params: lsp::TypeHierarchyPrepareParams,
    ) -> Result<Option<Vec<lsp::TypeHierarchyItem>>> {
        let at = params.text_document_position_params;
        let view = self.view(&at.text_document.uri);
        self.answer("textDocument/prepareTypeHierarchy", view, move |view| hierarchy::prepare_types(view, at.position))
            .await
    }

    async fn supertypes(
        &self,
        params: lsp::TypeHierarchySupertypesParams,
    ) -> Result<Option<Vec<lsp::TypeHierarchyItem>>> {
        let about = navigation::about(params.item.data.as_ref());
        self.ask("typeHierarchy/supertypes", about, move |course, can| {
            hierarchy::supertypes(course, can.entry_documents, &params.item)
        })
        .await
    }

    async fn subtypes(&self, params: lsp::TypeHierarchySubtypesParams) -> Result<Option<Vec<lsp::TypeHierarchyItem>>> {
        let about = navigation::about(params.item.data.as_ref());
        self.ask("typeHierarchy/subtypes", about, move |course, can| {
            hierarchy::subtypes(course, can.entry_documents, &params.item)
        })
        .await
    }

    async fn code_lens(&self, params: lsp::CodeLensParams) -> Result<Option<Vec<lsp::CodeLens>>> {
        self.answer_from_all("textDocument/codeLens", &params.text_document.uri, |all| Ok(Some(lenses::lenses(all))))
            .await
    }

    async fn inlay_hint(&self, params: lsp::InlayHintParams) -> Result<Option<Vec<lsp::InlayHint>>> {
        let view = self.view(&params.text_document.uri);
        self.answer_latest("textDocument/inlayHint", view, move |view| Some(structure::hints(view, params.range))).await
    }

    async fn inlay_hint_resolve(&self, hint: lsp::InlayHint) -> Result<lsp::InlayHint> {
        let about = navigation::about(hint.data.as_ref());
        // It carries an edit, which would go to the wrong place in a later version.
        let version = hint.data.as_ref().and_then(|data| data.get("version")?.as_i64());
        let now = about.as_ref().and_then(|uri| self.session.state().documents.get(uri)?.version);
        if version != now.map(i64::from) {
            return Err(Error::content_modified());
        }
        self.ask("inlayHint/resolve", about, move |course, _| structure::resolve_hint(course, hint)).await
    }

    async fn semantic_tokens_full(
        &self,
        params: lsp::SemanticTokensParams,
    ) -> Result<Option<lsp::SemanticTokensResult>> {
        let uri = params.text_document.uri;
        let view = self.view(&uri);
        let data = self.answer_latest("textDocument/semanticTokens/full", view, tokens::full).await?;
        let result_id = self.session.state().keep_tokens(uri, &data);
        Ok(Some(lsp::SemanticTokensResult::Tokens(lsp::SemanticTokens { result_id: Some(result_id), data })))
    }

    async fn semantic_tokens_full_delta(
        &self,
        params: lsp::SemanticTokensDeltaParams,
    ) -> Result<Option<lsp::SemanticTokensFullDeltaResult>> {
        let uri = params.text_document.uri;
        let view = self.view(&uri);
        let old = self.session.state().tokens.get(&uri).filter(|(id, _)| *id == params.previous_result_id).cloned();
        let data = self.answer_latest("textDocument/semanticTokens/full/delta", view, tokens::full).await?;
        let result_id = Some(self.session.state().keep_tokens(uri, &data));
        Ok(Some(match old {
            Some((_, old)) => lsp::SemanticTokensFullDeltaResult::TokensDelta(lsp::SemanticTokensDelta {
                result_id,
                edits: tokens::delta(&old, &data),
            }),
            None => lsp::SemanticTokensFullDeltaResult::Tokens(lsp::SemanticTokens { result_id, data }),
        }))
    }

    async fn semantic_tokens_range(
        &self,
        params: lsp::SemanticTokensRangeParams,
    ) -> Result<Option<lsp::SemanticTokensRangeResult>> {
        let view = self.view(&params.text_document.uri);
        let data = self
            .answer_latest("textDocument/semanticTokens/range", view, move |view| tokens::range(view, params.range))
            .await?;
        Ok(Some(lsp::SemanticTokensRangeResult::Tokens(lsp::SemanticTokens { result_id: None, data })))
    }

    async fn folding_range(&self, params: lsp::FoldingRangeParams) -> Result<Option<Vec<lsp::FoldingRange>>> {
        let view = self.view(&params.text_document.uri);
        self.answer_latest("textDocument/foldingRange", view, |view| Some(structure::folding(view))).await
    }

    async fn selection_range(&self, params: lsp::SelectionRangeParams) -> Result<Option<Vec<lsp::SelectionRange>>> {
        let view = self.view(&params.text_document.uri);
        self.answer("textDocument/selectionRange", view, move |view| {
            Some(structure::selection(view, &params.positions))
        })
        .await
    }

    async fn document_link(&self, params: lsp::DocumentLinkParams) -> Result<Option<Vec<lsp::DocumentLink>>> {
        let view = self.view(&params.text_document.uri);
        self.answer_latest("textDocument/documentLink", view, |view| Some(structure::links(view))).await
    }
}
