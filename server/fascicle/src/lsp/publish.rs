//! Diagnostics for clients that do not ask for them.
//!
//! One task sends them all, so that they come in order. A document that changes while it is read is read again, and what
//! was read of the older version is never sent. A word that the author is still typing is left alone until he pauses.

use std::collections::{HashMap, HashSet};
use std::hash::{DefaultHasher, Hash, Hasher};
use std::path::PathBuf;
use std::sync::Arc;
use std::time::Duration;

use fascicle_analysis::course::stated;
use tokio::sync::mpsc;
use tower_lsp::lsp_types::{MessageType, Url};

use super::everywhere::Everywhere;
use super::requests::{diagnostics, differences};
use super::state::{Session, View};
use super::to_proto;
use crate::course::{Course, SETTINGS_FILE};

/// How long a word may grow before it is looked at.
const PAUSE: Duration = Duration::from_millis(700);

/// The way to the task.
#[derive(Clone, Debug)]
pub struct Publisher(mpsc::UnboundedSender<Url>);

impl Publisher {
    /// Starts the task.
    pub fn start(session: Session) -> Self {
        let (sender, receiver) = mpsc::unbounded_channel();
        tokio::spawn(run(session, sender.downgrade(), receiver));
        Self(sender)
    }

    /// Sends the diagnostics of a document when its turn comes; for one that is closed, that there are none.
    pub fn mark(&self, uri: Url) {
        drop(self.0.send(uri));
    }
}

/// What was sent of a document.
struct Sent {
    version: Option<i32>,
    result: String,
    /// A number for what it states and calls things, by which others of its course are known to be told anew.
    states: u64,
}

async fn run(session: Session, again: mpsc::WeakUnboundedSender<Url>, mut marks: mpsc::UnboundedReceiver<Url>) {
    let mut sent: HashMap<Url, Sent> = HashMap::new();
    while let Some(first) = marks.recv().await {
        let mut waiting = HashSet::from([first]);
        while let Ok(mark) = marks.try_recv() {
            waiting.insert(mark);
        }
        for uri in waiting {
            let Some(all) = session.everywhere(&uri).map(Everywhere::only_latest) else {
                if sent.remove(&uri).is_some() {
                    mark_others(&session, &again, &uri);
                }
                session.client.publish_diagnostics(uri, Vec::new(), None).await;
                continue;
            };
            let view = all.here.clone();
            let job = tokio::task::spawn_blocking(move || {
                let view = &all.here;
                view.wanted_reading()?;
                let (list, held_back) = diagnostics::of(&all, view, &differences::of_document(&all, view));
                Some((list, held_back, states(view)))
            });
            let Ok(Some((list, held_back, states))) = job.await else { continue };
            if !view.is_latest() {
                continue; // a later mark is on its way
            }
            let version = view.document.version;
            let result = diagnostics::result_id(&list);
            let before = sent.insert(uri.clone(), Sent { version, result: result.clone(), states });
            if before.as_ref().is_none_or(|before| before.states != states) {
                mark_others(&session, &again, &uri);
            }
            if before.is_none_or(|before| before.version != version || before.result != result) {
                session.client.publish_diagnostics(uri.clone(), list, version).await;
            }
            if held_back {
                let again = again.clone();
                settle_later(view, move || {
                    if let Some(sender) = again.upgrade() {
                        drop(sender.send(uri));
                    }
                });
            }
        }
    }
}

/// Documents of one course may say different things, so what one states has to do with what is told of the others.
fn mark_others(session: &Session, again: &mpsc::WeakUnboundedSender<Url>, uri: &Url) {
    let Some(sender) = again.upgrade() else { return };
    let others: Vec<Url> = {
        let mut state = session.state();
        let root = state.course_of(uri).root.clone();
        let open: Vec<Url> = state.documents.keys().filter(|other| *other != uri).cloned().collect();
        open.into_iter().filter(|other| root.is_some() && state.course_of(other).root == root).collect()
    };
    for other in others {
        drop(sender.send(other));
    }
}

fn states(view: &View) -> u64 {
    let mut hasher = DefaultHasher::new();
    let reading = view.reading();
    stated(&reading.claims).hash(&mut hasher);
    reading.usage.for_others().hash(&mut hasher);
    hasher.finish()
}

/// Calls `then` when the author has paused at a version with a word that was left alone while it grew.
pub fn settle_later(view: View, then: impl FnOnce() + Send + 'static) {
    tokio::spawn(async move {
        tokio::time::sleep(PAUSE).await;
        if view.is_latest() {
            view.document.settle();
            then();
        }
    });
}

/// Tells what is wrong with the settings and the vocabulary files of the courses, at their lines, and clears what was told
/// of files that are no longer theirs. Clients do not ask about these files, so it is sent to all of them.
pub async fn settings(session: &Session) {
    let mut courses: Vec<Arc<Course>> = Vec::new();
    {
        let state = session.state();
        let folders = state.folders.iter().map(|folder| &folder.course);
        for course in folders.chain([&state.elsewhere]) {
            if !courses.iter().any(|known| known.root == course.root) {
                courses.push(Arc::clone(course));
            }
        }
    }
    let job = tokio::task::spawn_blocking(move || {
        let problems = |course: &Arc<Course>| {
            (course.root.clone(), course.settings.file.overlay.clone(), course.problems_beside(&courses))
        };
        courses.iter().map(problems).collect::<Vec<(Option<PathBuf>, _, _)>>()
    });
    let Ok(all) = job.await else { return };
    let mut told = HashSet::new();
    let mut nowhere = Vec::new();
    for (root, overlay, problems) in all {
        // Settings of the editor hold without a file, so what is wrong with them has no line.
        let Some(root) = root.filter(|root| root.join(SETTINGS_FILE).is_file()) else {
            let own = problems.iter().filter(|problem| problem.file == SETTINGS_FILE);
            nowhere.extend(own.map(|problem| problem.message.clone()));
            continue;
        };
        let files = std::iter::once(SETTINGS_FILE.to_owned()).chain(overlay);
        for file in files {
            let path = root.join(&file);
            let Some(uri) = Url::from_file_path(&path).ok().filter(|_| path.is_file()) else { continue };
            let list: Vec<_> = problems.iter().filter(|problem| problem.file == file).map(to_proto::problem).collect();
            if !list.is_empty() {
                told.insert(uri.clone());
                session.client.publish_diagnostics(uri, list, None).await;
            }
        }
    }
    nowhere.dedup();
    tell_once(session, nowhere).await;
    let before = std::mem::replace(&mut session.state().told_settings, told.clone());
    for uri in before.difference(&told) {
        session.client.publish_diagnostics(uri.clone(), Vec::new(), None).await;
    }
}

/// Tells what is wrong where there is no line to tell it at, each thing once.
pub async fn tell_once(session: &Session, wrong: Vec<String>) {
    let news: Vec<String> = {
        let mut state = session.state();
        wrong.into_iter().filter(|message| state.told_at_no_line.insert(message.clone())).collect()
    };
    if !news.is_empty() {
        let message = format!("fascicle: {}", news.join("; "));
        session.client.show_message(MessageType::WARNING, message).await;
    }
}
