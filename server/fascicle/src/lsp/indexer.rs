//! Keeps the indexes of the workspace folders fresh, in the background, one at a time, and shows how far it is.

use std::path::PathBuf;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::time::{Duration, Instant};

use tokio::sync::mpsc;
use tower_lsp::lsp_types as lsp;

use super::publish::{self, Publisher};
use super::server::upkeep::refresh;
use super::state::{Folder, Session};
use crate::course::index;
use crate::course::{SETTINGS_FILE, statements};

/// How long statements are read before orders are looked at again.
const TURN: Duration = Duration::from_millis(100);

/// How often the folders are looked through where the client does not watch files for us.
const AGAIN: Duration = Duration::from_secs(5);

/// What is to be done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Order {
    /// Read a folder, all of it or what has changed.
    Folder(PathBuf),
    /// These files have changed, come or gone.
    Files(Vec<PathBuf>),
}

/// What the name of a bar begins with. Each reading of a folder has a bar of its own.
const BAR: &str = "fascicle/index/";

/// How the reading of a folder that goes on is stopped.
#[derive(Debug, Default)]
struct Reading {
    /// The number of its bar.
    number: AtomicUsize,
    /// Set when the author takes it back.
    stop: Arc<AtomicBool>,
}

/// The way to the task.
#[derive(Clone, Debug)]
pub struct Indexer {
    orders: mpsc::UnboundedSender<Order>,
    reading: Arc<Reading>,
}

impl Indexer {
    /// Starts the task.
    pub fn start(session: Session, publisher: Publisher) -> Self {
        let (orders, receiver) = mpsc::unbounded_channel();
        let reading = Arc::new(Reading::default());
        tokio::spawn(run(session, publisher, receiver, Arc::clone(&reading)));
        Self { orders, reading }
    }

    /// Orders something.
    pub fn order(&self, order: Order) {
        drop(self.orders.send(order));
    }

    /// Takes back what a bar shows. What was read until then stays; the rest is read when its folder is ordered again.
    pub fn cancel(&self, token: &lsp::ProgressToken) {
        if *token == bar(self.reading.number.load(Ordering::Relaxed)) {
            self.reading.stop.store(true, Ordering::Relaxed);
        }
    }
}

/// The name of a bar.
fn bar(number: usize) -> lsp::ProgressToken {
    lsp::NumberOrString::String(format!("{BAR}{number}"))
}

async fn run(
    session: Session,
    publisher: Publisher,
    mut orders: mpsc::UnboundedReceiver<Order>,
    reading: Arc<Reading>,
) {
    let mut at_work = false;
    let mut is_news = false;
    loop {
        // While statements are to be read, orders are only looked for between two turns.
        let first = if at_work {
            orders.try_recv().ok()
        } else if session.state().can.watch {
            let Some(order) = orders.recv().await else { return };
            Some(order)
        } else {
            match tokio::time::timeout(AGAIN, orders.recv()).await {
                Ok(None) => return,
                Ok(order) => order,
                Err(_) if look_again(&session, &reading).await => {
                    is_news = true;
                    None
                }
                Err(_) => continue,
            }
        };
        let mut waiting: Vec<Order> = first.into_iter().collect();
        while let Ok(order) = orders.try_recv() {
            if !waiting.contains(&order) {
                waiting.push(order);
            }
        }
        let has_orders = !waiting.is_empty();
        for order in waiting {
            match order {
                Order::Folder(root) => folder(&session, root, &reading).await,
                Order::Files(paths) => files(&session, paths).await,
            }
        }
        if has_orders {
            session.bump();
        }
        let (more, differs) = read_statements(&session).await;
        at_work = more;
        is_news |= differs;
        if is_news && !at_work {
            is_news = false;
            refresh(&session, &publisher);
        }
    }
}

/// What is held of a folder now; `None` once it has left the workspace.
fn of_folder(session: &Session, root: &PathBuf) -> Option<Folder> {
    session.state().folders.iter().find(|folder| folder.root == *root).cloned()
}

/// Changes what is held of a folder, if its course is still the one that was worked with.
fn change(session: &Session, seen: &Folder, change: impl FnOnce(&mut Folder)) {
    let mut state = session.state();
    let mut folders = state.folders.iter_mut();
    if let Some(folder) = folders.find(|now| now.root == seen.root && Arc::ptr_eq(&now.course, &seen.course)) {
        change(folder);
    }
}

async fn folder(session: &Session, root: PathBuf, reading: &Reading) {
    let mut roots = vec![root];
    while let Some(root) = roots.pop() {
        let Some(seen) = of_folder(session, &root) else { continue };
        let number = reading.number.fetch_add(1, Ordering::Relaxed) + 1;
        reading.stop.store(false, Ordering::Relaxed);
        let stop = Arc::clone(&reading.stop);
        let (tell, told) = mpsc::unbounded_channel();
        // The bar ends by itself when the work does. It is not waited for: a client may take its time to make one.
        tokio::spawn(show(session.clone(), bar(number), told));
        let work = seen.clone();
        let job = tokio::task::spawn_blocking(move || {
            let found = index::documents(&work.root, &work.course.settings.file.exclude);
            let index = index::build(&found.documents, work.course.knowledge(), &work.index, &stop, &|done, all| {
                let _ = tell.send((done, all));
            });
            let is_whole = !stop.load(Ordering::Relaxed);
            (index, found.nested, is_whole)
        });
        if let Ok((index, nested, is_whole)) = job.await {
            change(session, &seen, |folder| {
                folder.index = Arc::new(index);
                folder.is_indexed = is_whole;
            });
            let known = roots.len();
            {
                let mut state = session.state();
                roots.extend(nested.into_iter().filter(|root| state.add_folder(root.clone(), true)));
            }
            if roots.len() > known {
                publish::settings(session).await;
            }
        }
    }
}

/// Looks through the folders for documents that have come, changed or gone, for courses that are new, and for another state
/// of the files that say how to read them. Returns whether there is anything.
async fn look_again(session: &Session, reading: &Reading) -> bool {
    let mut folders = session.state().folders.clone();
    let work = folders.clone();
    let Ok(is_stale) = tokio::task::spawn_blocking(move || work.iter().any(is_stale)).await else { return false };
    if is_stale {
        session.state().reopen_courses();
        folders = session.state().folders.clone();
        for seen in &folders {
            folder(session, seen.root.clone(), reading).await;
        }
        session.bump();
        return true;
    }
    let roots: Vec<PathBuf> = folders.iter().map(|folder| folder.root.clone()).collect();
    let mut differs = false;
    for seen in folders.into_iter().filter(|folder| folder.is_indexed) {
        let work = seen.clone();
        let job = tokio::task::spawn_blocking(move || {
            let found = index::documents(&work.root, &work.course.settings.file.exclude);
            let go_on = AtomicBool::new(false);
            let index = index::build(&found.documents, work.course.knowledge(), &work.index, &go_on, &|_, _| {});
            let stamp = |path: &PathBuf| work.index.files.get(path).map(|file| file.stamp);
            let is_same = index.files.len() == work.index.files.len()
                && index.files.iter().all(|(path, file)| stamp(path) == Some(file.stamp));
            ((!is_same).then_some(index), found.nested)
        });
        let Ok((index, nested)) = job.await else { continue };
        if nested.iter().any(|root| !roots.contains(root)) {
            session.state().reopen_courses();
            folder(session, seen.root.clone(), reading).await;
            differs = true;
        } else if let Some(index) = index {
            change(session, &seen, |folder| folder.index = Arc::new(index));
            differs = true;
        }
    }
    if differs {
        session.bump();
    }
    differs
}

/// Whether the settings of a folder are no longer what they were when they were read.
fn is_stale(folder: &Folder) -> bool {
    let is_own = folder.course.root.as_ref() == Some(&folder.root);
    folder.course.is_stale() || !is_own && folder.root.join(SETTINGS_FILE).is_file()
}

async fn files(session: &Session, paths: Vec<PathBuf>) {
    let folders = session.state().folders.clone();
    let holder = |path: &PathBuf| {
        let within = folders.iter().filter(|folder| path.starts_with(&folder.root));
        within.max_by_key(|folder| folder.root.as_os_str().len()).map(|folder| &folder.root)
    };
    for seen in &folders {
        let own: Vec<PathBuf> = paths.iter().filter(|path| holder(path) == Some(&seen.root)).cloned().collect();
        if own.is_empty() {
            continue;
        }
        let work = seen.clone();
        let job = tokio::task::spawn_blocking(move || {
            let mut index = (*work.index).clone();
            let found = index::documents(&work.root, &work.course.settings.file.exclude).documents;
            for path in own {
                let is_wanted = found.binary_search(&path).is_ok();
                let before = index.files.get(&path);
                match index::file(&path, work.course.knowledge(), before).filter(|_| is_wanted) {
                    Some(indexed) => drop(index.files.insert(path, indexed)),
                    None => drop(index.files.remove(&path)),
                }
            }
            index
        });
        if let Ok(index) = job.await {
            change(session, seen, |folder| folder.index = Arc::new(index));
        }
    }
}

/// Reads what documents state, for one turn. Returns whether there is more to be read, and whether what was read differs
/// from what was known.
async fn read_statements(session: &Session) -> (bool, bool) {
    let folders = session.state().folders.clone();
    let (mut more, mut differs) = (false, false);
    for seen in folders {
        let work = seen.clone();
        let job = tokio::task::spawn_blocking(move || {
            let until = Instant::now() + TURN;
            let mut read = Vec::new();
            let mut is_done = true;
            for path in work.statements.missing(&work.index) {
                if Instant::now() > until {
                    is_done = false;
                    break;
                }
                if let Some((stamp, kept)) = statements::read(path, &work.course) {
                    read.push((path.clone(), stamp, kept));
                }
            }
            let (mut statements, differs) = work.statements.with(read, &work.index);
            if is_done {
                statements.count();
            }
            (statements, is_done, differs)
        });
        if let Ok((statements, is_done, is_news)) = job.await {
            change(session, &seen, |folder| folder.statements = Arc::new(statements));
            more |= !is_done;
            differs |= is_news;
        }
    }
    (more, differs)
}

/// Shows a bar with a count, if the client has one and the work is worth it.
async fn show(session: Session, token: lsp::ProgressToken, mut told: mpsc::UnboundedReceiver<(usize, usize)>) {
    let can = session.state().can.progress;
    let Some((_, all)) = told.recv().await else { return };
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
            cancellable: Some(true),
            message: line(0, all),
            percentage: Some(0),
        }))
        .await;
    }
    let (mut last, mut done) = (None, 0);
    while let Some((now, _)) = told.recv().await {
        done = now.max(done);
        while let Ok((later, _)) = told.try_recv() {
            done = later.max(done);
        }
        let percentage = percent(done, all);
        if is_shown && last < percentage {
            last = percentage;
            let report = lsp::WorkDoneProgressReport { cancellable: Some(true), message: line(done, all), percentage };
            send(lsp::WorkDoneProgress::Report(report)).await;
        }
    }
    if is_shown {
        let words = if done < all { "stopped at " } else { "" };
        let end = lsp::WorkDoneProgressEnd { message: line(done, all).map(|line| format!("{words}{line}")) };
        send(lsp::WorkDoneProgress::End(end)).await;
    }
}
