//! Keeps the indexes of the workspace folders fresh, in the background, one at a time, and shows how far it is.

use std::path::PathBuf;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use tokio::sync::mpsc;
use tower_lsp::lsp_types as lsp;

use super::state::Session;
use crate::course::Course;
use crate::course::index::{self, Index};

/// What is to be done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Order {
    /// Read a folder, all of it or what has changed.
    Folder(PathBuf),
    /// These files have changed, come or gone.
    Files(Vec<PathBuf>),
}

/// The way to the task.
#[derive(Clone, Debug)]
pub struct Indexer(mpsc::UnboundedSender<Order>);

impl Indexer {
    /// Starts the task.
    pub fn start(session: Session) -> Self {
        let (sender, receiver) = mpsc::unbounded_channel();
        tokio::spawn(run(session, receiver));
        Self(sender)
    }

    /// Orders something.
    pub fn order(&self, order: Order) {
        drop(self.0.send(order));
    }
}

async fn run(session: Session, mut orders: mpsc::UnboundedReceiver<Order>) {
    while let Some(first) = orders.recv().await {
        let mut waiting = vec![first];
        while let Ok(order) = orders.try_recv() {
            if !waiting.contains(&order) {
                waiting.push(order);
            }
        }
        for order in waiting {
            match order {
                Order::Folder(root) => folder(&session, root).await,
                Order::Files(paths) => files(&session, paths).await,
            }
        }
        session.bump();
    }
}

/// The folder's course and what its index holds now; `None` once the folder has left the workspace.
fn of_folder(session: &Session, root: &PathBuf) -> Option<(Arc<Course>, Arc<Index>)> {
    let state = session.state();
    let folder = state.folders.iter().find(|folder| folder.root == *root)?;
    Some((Arc::clone(&folder.course), Arc::clone(&folder.index)))
}

async fn folder(session: &Session, root: PathBuf) {
    let Some((course, before)) = of_folder(session, &root) else { return };
    let stop = Arc::new(AtomicBool::new(false));
    let (tell, told) = mpsc::unbounded_channel();
    let bar = tokio::spawn(show(session.clone(), told));
    let job = {
        let root = root.clone();
        tokio::task::spawn_blocking(move || {
            let exclude = &course.settings.file.exclude;
            index::build(&root, exclude, course.knowledge(), &before, &stop, &|done, all| {
                if tell.send((done, all)).is_err() {
                    stop.store(true, Ordering::Relaxed);
                }
            })
        })
    };
    if let Ok(index) = job.await {
        let mut state = session.state();
        if let Some(folder) = state.folders.iter_mut().find(|folder| folder.root == root) {
            folder.index = Arc::new(index);
            folder.is_indexed = true;
        }
    }
    drop(bar.await);
}

async fn files(session: &Session, paths: Vec<PathBuf>) {
    let roots: Vec<PathBuf> = session.state().folders.iter().map(|folder| folder.root.clone()).collect();
    for root in roots {
        let Some((course, before)) = of_folder(session, &root) else { continue };
        let own: Vec<PathBuf> = paths.iter().filter(|path| path.starts_with(&root)).cloned().collect();
        if own.is_empty() {
            continue;
        }
        let job = tokio::task::spawn_blocking(move || {
            let mut index = (*before).clone();
            for path in own {
                match index::file(&path, course.knowledge(), index.files.get(&path)) {
                    Some(indexed) => drop(index.files.insert(path, indexed)),
                    None => drop(index.files.remove(&path)),
                }
            }
            index
        });
        if let Ok(index) = job.await {
            let mut state = session.state();
            if let Some(folder) = state.folders.iter_mut().find(|folder| folder.root == root) {
                folder.index = Arc::new(index);
            }
        }
    }
}

/// Shows a bar with a count, if the client has one and the work is worth it.
async fn show(session: Session, mut told: mpsc::UnboundedReceiver<(usize, usize)>) {
    let can = session.state().can.progress;
    let Some((_, all)) = told.recv().await else { return };
    let token = lsp::NumberOrString::String("fascicle/index".to_owned());
    let create = lsp::WorkDoneProgressCreateParams { token: token.clone() };
    let is_shown =
        can && all > 0 && session.client.send_request::<lsp::request::WorkDoneProgressCreate>(create).await.is_ok();
    let send = |value: lsp::WorkDoneProgress| {
        let params = lsp::ProgressParams { token: token.clone(), value: lsp::ProgressParamsValue::WorkDone(value) };
        session.client.send_notification::<lsp::notification::Progress>(params)
    };
    let line = |done: usize, all: usize| Some(format!("{done} of {all} documents"));
    let percent = |done: usize, all: usize| u32::try_from(done * 100 / all.max(1)).ok();
    if is_shown {
        send(lsp::WorkDoneProgress::Begin(lsp::WorkDoneProgressBegin {
            title: "Reading the course".to_owned(),
            cancellable: Some(false),
            message: line(0, all),
            percentage: Some(0),
        }))
        .await;
    }
    let mut last = None;
    while let Some((mut done, mut all)) = told.recv().await {
        while let Ok(later) = told.try_recv() {
            (done, all) = (done.max(later.0), later.1);
        }
        let percentage = percent(done, all);
        if is_shown && last < percentage {
            last = percentage;
            let report = lsp::WorkDoneProgressReport { cancellable: Some(false), message: line(done, all), percentage };
            send(lsp::WorkDoneProgress::Report(report)).await;
        }
    }
    if is_shown {
        let end = lsp::WorkDoneProgressEnd { message: line(all, all) };
        send(lsp::WorkDoneProgress::End(end)).await;
    }
}
