//! Diagnostics for clients that do not ask for them.
//!
//! One task sends them all, so that they come in order. A document that changes while it is read is read again, and what
//! was read of the older version is never sent. A word that the author is still typing is left alone until he pauses.

use std::collections::HashMap;
use std::sync::Arc;
use std::time::Duration;

use tokio::sync::mpsc;
use tower_lsp::lsp_types::Url;

use super::requests::diagnostics;
use super::state::Session;
use super::to_proto;
use crate::course::{Course, SETTINGS_FILE};

/// How long a word may grow before it is looked at.
const PAUSE: Duration = Duration::from_millis(700);

/// A document whose diagnostics are to be sent.
#[derive(Clone, Debug)]
pub struct Mark {
    /// Its address.
    pub uri: Url,
    /// The version of which the author has paused.
    pub settled: Option<i32>,
}

/// The way to the task.
#[derive(Clone, Debug)]
pub struct Publisher(mpsc::UnboundedSender<Mark>);

impl Publisher {
    /// Starts the task.
    pub fn start(session: Session) -> Self {
        let (sender, receiver) = mpsc::unbounded_channel();
        tokio::spawn(run(session, sender.downgrade(), receiver));
        Self(sender)
    }

    /// Sends the diagnostics of a document when its turn comes; for one that is closed, that there are none.
    pub fn mark(&self, uri: Url) {
        drop(self.0.send(Mark { uri, settled: None }));
    }
}

async fn run(session: Session, again: mpsc::WeakUnboundedSender<Mark>, mut marks: mpsc::UnboundedReceiver<Mark>) {
    while let Some(first) = marks.recv().await {
        let mut waiting: HashMap<Url, Option<i32>> = HashMap::from([(first.uri, first.settled)]);
        while let Ok(mark) = marks.try_recv() {
            let settled = waiting.entry(mark.uri).or_default();
            *settled = (*settled).max(mark.settled);
        }
        for (uri, settled) in waiting {
            let Some(view) = session.view(&uri) else {
                session.client.publish_diagnostics(uri, Vec::new(), None).await;
                continue;
            };
            let has_settled = settled.is_some() && settled == view.document.version;
            if settled.is_some() && !has_settled {
                continue; // the author went on typing; a later mark is on its way
            }
            let job = view.clone();
            let Ok((list, held_back)) = tokio::task::spawn_blocking(move || diagnostics::of(&job, has_settled)).await
            else {
                continue;
            };
            if !session.is_latest(&view) {
                continue;
            }
            let version = view.document.version;
            session.client.publish_diagnostics(uri.clone(), list, version).await;
            if held_back {
                let again = again.clone();
                tokio::spawn(async move {
                    tokio::time::sleep(PAUSE).await;
                    if let Some(sender) = again.upgrade() {
                        drop(sender.send(Mark { uri, settled: version }));
                    }
                });
            }
        }
    }
}

/// Tells what is wrong with the settings and the vocabulary files of the workspace folders, at their lines. Clients do not
/// ask about these files, so it is sent to all of them.
pub async fn settings(session: &Session) {
    let courses: Vec<Arc<Course>> = session.state().folders.iter().map(|folder| Arc::clone(&folder.course)).collect();
    for course in courses {
        let Some(root) = course.root.clone() else { continue };
        let mut files: Vec<String> = vec![SETTINGS_FILE.to_owned()];
        files.extend(course.settings.file.overlay.iter().cloned());
        let Ok(problems) = tokio::task::spawn_blocking(move || course.problems()).await else { continue };
        for file in files {
            let path = root.join(&file);
            let Some(uri) = Url::from_file_path(&path).ok().filter(|_| path.is_file()) else { continue };
            let list = problems.iter().filter(|problem| problem.file == file).map(to_proto::problem).collect();
            session.client.publish_diagnostics(uri, list, None).await;
        }
    }
}
