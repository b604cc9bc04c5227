//! How a request is answered: in another thread, from a view that was taken before the first await, for as long as somebody
//! waits; and how long it took.

use std::borrow::Cow;
use std::future::Future;
use std::sync::Arc;
use std::time::{Duration, Instant};

use tower_lsp::jsonrpc::{Error, ErrorCode, Result};
use tower_lsp::lsp_types as lsp;

use super::Server;
use crate::course::Course;
use crate::lsp::capabilities::Can;
use crate::lsp::document::Document;
use crate::lsp::everywhere::Everywhere;
use crate::lsp::state::View;

/// A step of the work on a request, with when it was done.
type Mark = (Cow<'static, str>, Instant);

fn milliseconds(time: Duration) -> String {
    format!("{:.2} ms", time.as_secs_f64() * 1e3)
}

/// The step of reading a document, with how long each stage of it took.
fn reading_step(document: &Document, was_read: bool) -> String {
    let stages = document.times().into_iter().flatten();
    let stages: Vec<String> = stages.map(|(stage, time)| format!("{} {}", stage.name(), milliseconds(*time))).collect();
    let before = if was_read { "before this request: " } else { "" };
    format!("read the document ({before}{})", stages.join(", "))
}

pub(super) fn not_open(uri: &lsp::Url) -> Error {
    Error { code: ErrorCode::InvalidParams, message: format!("{uri} is not open").into(), data: None }
}

impl Server {
    pub(super) fn view(&self, uri: &lsp::Url) -> Result<View> {
        self.session.view(uri).ok_or_else(|| not_open(uri))
    }

    /// Answers a request about a document in another thread. The view was taken before the first await.
    pub(super) fn answer<T: Send + 'static>(
        &self,
        method: &'static str,
        view: Result<View>,
        work: impl FnOnce(&View) -> T + Send + 'static,
    ) -> impl Future<Output = Result<T>> + Send {
        self.try_answer(method, view, |view| Ok(work(view)))
    }

    /// The same for what the client asks for again after each change: work on a version that is overtaken ends.
    pub(super) fn answer_latest<T: Send + 'static>(
        &self,
        method: &'static str,
        view: Result<View>,
        work: impl FnOnce(&View) -> T + Send + 'static,
    ) -> impl Future<Output = Result<T>> + Send {
        self.answer(method, view.map(View::only_latest), work)
    }

    async fn try_answer<T: Send + 'static>(
        &self,
        method: &'static str,
        view: Result<View>,
        work: impl FnOnce(&View) -> Result<T> + Send + 'static,
    ) -> Result<T> {
        let view = view?;
        let began = Instant::now();
        let _tell = view.wish.until_dropped();
        let is_traced = self.session.state().trace;
        let job = tokio::task::spawn_blocking(move || {
            let mut marks = vec![("waited for a thread".into(), Instant::now())];
            // A request that was taken back is answered as such already, so this says why a version is not spoken of.
            let unwanted = || Err(Error::content_modified());
            if !view.wish.holds() {
                return (unwanted(), marks);
            }
            view.course.knowledge();
            marks.push(("waited for the vocabulary".into(), Instant::now()));
            let was_read = view.document.times().is_some();
            if view.wanted_reading().is_none() {
                marks.push(("gave up reading the document, for a later version has come".into(), Instant::now()));
                return (unwanted(), marks);
            }
            if is_traced {
                marks.push((reading_step(&view.document, was_read).into(), Instant::now()));
            }
            let answer = work(&view);
            marks.push(("answered".into(), Instant::now()));
            (if view.wish.holds() { answer } else { unwanted() }, marks)
        });
        let Ok((answer, marks)) = job.await else { return Err(Error::internal_error()) };
        self.note(method, began, is_traced, &marks);
        answer
    }

    /// Keeps how long a request took, and tells the client if it wants to know.
    fn note(&self, method: &'static str, began: Instant, is_traced: bool, marks: &[Mark]) {
        let took = began.elapsed();
        {
            let mut state = self.session.state();
            let times = state.times.entry(method).or_default();
            times.count += 1;
            times.last = took;
            times.longest = times.longest.max(took);
        }
        if is_traced {
            let mut from = began;
            let mut steps = Vec::new();
            for (what, at) in marks {
                steps.push(format!("{what}: {}", milliseconds(at.saturating_duration_since(from))));
                from = *at;
            }
            let params = lsp::LogTraceParams {
                message: format!("{method}: {}", milliseconds(took)),
                verbose: Some(steps.join("\n")),
            };
            let client = self.session.client.clone();
            tokio::spawn(async move { client.send_notification::<lsp::notification::LogTrace>(params).await });
        }
    }

    /// Answers a request about the vocabulary of a document's course in another thread.
    pub(super) async fn ask<T: Send + 'static>(
        &self,
        method: &'static str,
        about: Option<lsp::Url>,
        work: impl FnOnce(&Course, &Can) -> T + Send + 'static,
    ) -> Result<T> {
        let (course, can) = {
            let mut state = self.session.state();
            let course = match &about {
                Some(uri) => state.course_of(uri),
                None => Arc::clone(state.folders.first().map_or(&state.elsewhere, |folder| &folder.course)),
            };
            (course, Arc::clone(&state.can))
        };
        let began = Instant::now();
        let answer =
            tokio::task::spawn_blocking(move || work(&course, &can)).await.map_err(|_| Error::internal_error());
        self.note(method, began, false, &[]);
        answer
    }

    /// Answers a request about a document and all others in another thread. What was seen of them was seen before the first
    /// await.
    pub(super) async fn answer_from_all<T: Send + 'static>(
        &self,
        method: &'static str,
        uri: &lsp::Url,
        work: impl FnOnce(&Everywhere) -> Result<T> + Send + 'static,
    ) -> Result<T> {
        let all = self.session.everywhere(uri).ok_or_else(|| not_open(uri))?;
        let view = Ok(all.here.clone());
        self.try_answer(method, view, move |_| work(&all)).await
    }
}
