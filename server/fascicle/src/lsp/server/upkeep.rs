//! What the client's notifications set going: documents told anew, files and folders read again, settings asked for.

use std::path::PathBuf;
use std::sync::Arc;

use fascicle_analysis::Form;
use serde_json::{Value, json};
use tower_lsp::lsp_types as lsp;

use super::{Server, path};
use crate::course::settings;
use crate::lsp::capabilities;
use crate::lsp::indexer::Order;
use crate::lsp::publish::{self, Publisher};
use crate::lsp::state::Session;

impl Server {
    /// Tells the author once that a document has to be opened again.
    pub(super) fn drop_document(&self, uri: &lsp::Url, why: &str) {
        let first = {
            let mut state = self.session.state();
            state.remove(uri);
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

    /// A document has changed.
    pub(super) fn changed(&self, uri: lsp::Url) {
        if !self.session.state().can.pull_diagnostics {
            self.publisher.mark(uri);
        }
        self.session.bump();
    }

    /// Files or folders have come, changed or gone.
    pub(super) fn files_changed(&self, files: impl Iterator<Item = lsp::Url>) {
        let mut documents = Vec::new();
        let mut folders = false;
        let mut settings = false;
        for path in files.filter_map(|uri| path(&uri)) {
            settings |= path.extension().is_some_and(|extension| extension == "toml");
            let is_document = path.file_name().and_then(|name| name.to_str()).and_then(Form::of_name).is_some();
            folders |= !is_document;
            if is_document {
                documents.push(path);
            }
        }
        if settings {
            self.reopen();
        } else if folders {
            // What was in a folder that is gone is not known; what has not changed costs nothing.
            let roots: Vec<PathBuf> = self.session.state().folders.iter().map(|folder| folder.root.clone()).collect();
            for root in roots {
                self.indexer.order(Order::Folder(root));
            }
        } else if !documents.is_empty() {
            self.indexer.order(Order::Files(documents));
        }
    }

    /// Settings or vocabulary have changed: everything is read and told anew.
    pub(super) fn reopen(&self) {
        let folders: Vec<PathBuf> = {
            let mut state = self.session.state();
            state.reopen_courses();
            state.folders.iter().map(|folder| folder.root.clone()).collect()
        };
        for root in folders {
            self.indexer.order(Order::Folder(root));
        }
        refresh(&self.session, &self.publisher);
    }

    /// Asks for the editor's settings, and takes them.
    pub(super) fn ask_settings(&self, pushed: Option<Value>) {
        let (session, publisher, indexer) = (self.session.clone(), self.publisher.clone(), self.indexer.clone());
        tokio::spawn(async move {
            let item = lsp::ConfigurationItem { scope_uri: None, section: Some("fascicle".to_owned()) };
            let can = session.state().can.configuration;
            let value = if can {
                session.client.configuration(vec![item]).await.ok().and_then(|list| list.into_iter().next())
            } else {
                pushed.map(|all| all.get("fascicle").cloned().unwrap_or(all))
            };
            let Some(value) = value.filter(Value::is_object) else { return };
            let (editor, wrong) = settings::from_client(&value);
            publish::tell_once(&session, wrong).await;
            let Some(editor) = editor else { return };
            let folders: Vec<PathBuf> = {
                let mut state = session.state();
                if state.editor == editor {
                    return;
                }
                state.editor = editor;
                state.reopen_courses();
                state.folders.iter().map(|folder| folder.root.clone()).collect()
            };
            for root in folders {
                indexer.order(Order::Folder(root));
            }
            refresh(&session, &publisher);
        });
    }

    /// Asks the client to watch the files that we read, and to tell of its settings.
    pub(super) fn watch(&self) {
        let can = Arc::clone(&self.session.state().can);
        let glob = |pattern: &str| lsp::FileSystemWatcher {
            glob_pattern: lsp::GlobPattern::String(pattern.to_owned()),
            kind: None,
        };
        let registration = |id: &str, method: &str, options: Option<Value>| lsp::Registration {
            id: id.to_owned(),
            method: method.to_owned(),
            register_options: options,
        };
        let mut list = Vec::new();
        if can.watch {
            let options = lsp::DidChangeWatchedFilesRegistrationOptions { watchers: vec![glob(capabilities::FILES)] };
            let options = serde_json::to_value(options).ok();
            list.push(registration("fascicle/files", "workspace/didChangeWatchedFiles", options));
        }
        if can.settings_on_demand {
            let options = json!({ "section": "fascicle" });
            list.push(registration("fascicle/settings", "workspace/didChangeConfiguration", Some(options)));
        }
        let client = self.session.client.clone();
        for registration in list {
            let client = client.clone();
            tokio::spawn(async move {
                let method = registration.method.clone();
                if let Err(error) = client.register_capability(vec![registration]).await {
                    tracing::warn!(%error, method, "the client does not tell of changes");
                }
            });
        }
    }
}

/// Has everything told anew.
pub fn refresh(session: &Session, publisher: &Publisher) {
    session.bump();
    let (can, open) = {
        let state = session.state();
        (Arc::clone(&state.can), state.documents.keys().cloned().collect::<Vec<_>>())
    };
    if !can.pull_diagnostics {
        for uri in open {
            publisher.mark(uri);
        }
    }
    let session = session.clone();
    tokio::spawn(async move {
        publish::settings(&session).await;
        let client = &session.client;
        let (lenses, hints, tokens) = can.refresh;
        if can.pull_diagnostics && can.refresh_diagnostics {
            drop(client.workspace_diagnostic_refresh().await);
        }
        if lenses {
            drop(client.code_lens_refresh().await);
        }
        if hints {
            drop(client.inlay_hint_refresh().await);
        }
        if tokens {
            drop(client.semantic_tokens_refresh().await);
        }
    });
}
