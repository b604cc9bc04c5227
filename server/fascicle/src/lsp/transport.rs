//! The way of messages between the client and the service, and the end of the process.
//!
//! `tower-lsp` has a server loop of its own. It keeps no order after a handler's first await, lets four slow requests
//! block changes and cancellation, ends on a panic or on one malformed message, and does not end on `exit`. This loop
//! takes its place. Its rules:
//!
//! - Each message is given to the service as it is read, and its handler is polled once, at once. So whatever a handler
//!   does before its first await happens in the order of the messages. What is left of it becomes a task.
//! - A panic answers its own request with an internal error and touches nothing else.
//! - A message that is none is answered as JSON-RPC says, and reading goes on behind it.
//! - The process ends on `exit` (status 0 after `shutdown`, 1 without), at the end of its input, when its output is
//!   gone, and when its parent has died.

use std::io::{self, BufRead, Read, Write};
use std::panic::AssertUnwindSafe;
use std::process::ExitCode;
use std::sync::Arc;
use std::thread;
use std::time::Duration;

use futures::{FutureExt, SinkExt, StreamExt};
use serde_json::{Value, json};
use tokio::sync::{Notify, mpsc};
use tower::Service;
use tower_lsp::jsonrpc::{Error, Id, Request, Response};
use tower_lsp::{ClientSocket, ExitedError};

/// The longest message that is taken, in bytes.
const LONGEST: usize = 512 * 1024 * 1024;

/// The longest header line that is taken, in bytes.
const LONGEST_HEADER: u64 = 8 * 1024;

/// What came in.
enum Incoming {
    /// A message of JSON.
    Message(Value),
    /// Bytes that are no message, with the answer to them.
    Malformed(Error),
}

/// Serves until the client leaves, and says with which status the process is to end.
///
/// `gone` is notified when the parent process has died. `complete` may add to the result of a method.
pub async fn serve<S>(
    mut service: S,
    socket: ClientSocket,
    output: Output,
    gone: Arc<Notify>,
    complete: impl Fn(&str, &mut Value) + Clone + Send + 'static,
) -> ExitCode
where
    S: Service<Request, Response = Option<Response>, Error = ExitedError>,
    S::Future: Send + 'static,
{
    let (mut from_server, mut answers) = socket.split();
    let mut input = reader();
    let mut shut_down = false;
    let at_work = Arc::new(());
    loop {
        let incoming = tokio::select! {
            incoming = input.recv() => incoming,
            Some(request) = from_server.next() => {
                output.send(&request);
                continue;
            }
            () = gone.notified() => None,
        };
        let Some(incoming) = incoming else {
            finish_work(&at_work).await;
            return end(output, u8::from(!shut_down));
        };
        let message = match incoming {
            Incoming::Message(message) => with_words_of_the_types(without_empty_params(message)),
            Incoming::Malformed(error) => {
                output.send(&Response::from_error(Id::Null, error));
                continue;
            }
        };
        if message.get("method").is_none() {
            match serde_json::from_value::<Response>(message) {
                Ok(response) => drop(answers.send(response).await),
                Err(_) => output.send(&Response::from_error(Id::Null, Error::invalid_request())),
            }
            continue;
        }
        let id = id_of(&message);
        let Ok(request) = serde_json::from_value::<Request>(message) else {
            output.send(&Response::from_error(id.unwrap_or(Id::Null), Error::invalid_request()));
            continue;
        };
        match request.method() {
            "exit" => return end(output, u8::from(!shut_down)),
            "shutdown" => shut_down = true,
            _ => {}
        }
        let method = request.method().to_owned();
        let complete = complete.clone();
        let finish = move |response: Response| -> Response {
            let (id, result) = response.into_parts();
            Response::from_parts(
                id,
                result.map(|mut result| {
                    complete(&method, &mut result);
                    result
                }),
            )
        };
        if let Some(rest) = first_poll(&mut service, request, id, &finish, &output).await {
            let (output, at_work) = (output.clone(), Arc::clone(&at_work));
            tokio::spawn(async move {
                if let Some(response) = rest.await {
                    output.send(&finish(response));
                }
                drop(at_work);
            });
        }
    }
}

/// Polls the handler of a request once. What is left of it is handed back.
async fn first_poll<S>(
    service: &mut S,
    request: Request,
    id: Option<Id>,
    finish: &impl Fn(Response) -> Response,
    output: &Output,
) -> Option<futures::future::BoxFuture<'static, Option<Response>>>
where
    S: Service<Request, Response = Option<Response>, Error = ExitedError>,
    S::Future: Send + 'static,
{
    if futures::future::poll_fn(|context| service.poll_ready(context)).await.is_err() {
        return None;
    }
    let failed = move || id.map(|id| Response::from_error(id, Error::internal_error()));
    let Ok(future) = std::panic::catch_unwind(AssertUnwindSafe(|| service.call(request))) else {
        if let Some(response) = failed() {
            output.send(&response);
        }
        return None;
    };
    let mut rest = AssertUnwindSafe(future)
        .catch_unwind()
        .map(move |outcome| match outcome {
            Ok(Ok(response)) => response,
            Ok(Err(_)) => None,
            Err(_) => failed(),
        })
        .boxed();
    match (&mut rest).now_or_never() {
        Some(response) => {
            if let Some(response) = response {
                output.send(&finish(response));
            }
            None
        }
        None => Some(rest),
    }
}

/// Lets the requests that are at work at the end of the input be answered, for a short time.
async fn finish_work(at_work: &Arc<()>) {
    for _ in 0..1_000 {
        if Arc::strong_count(at_work) == 1 {
            return;
        }
        tokio::time::sleep(Duration::from_millis(5)).await;
    }
}

/// Requests that say nothing but their name.
const WITHOUT_PARAMS: [&str; 2] = ["shutdown", "fascicle/status"];

/// Some clients write `"params": null` or `"params": {}` where there are none, which `tower-lsp` refuses.
fn without_empty_params(mut message: Value) -> Value {
    let has_none = |method: &Value| WITHOUT_PARAMS.iter().any(|known| method == known);
    let has_none = message.get("method").is_some_and(has_none);
    if let Some(object) = message.as_object_mut()
        && object.get("params").is_some_and(|params| params.is_null() || has_none)
    {
        object.remove("params");
    }
    message
}

/// The protocol says `workspace.diagnostics` where the types of `lsp-types` say `diagnostic`. Unread, a client that asks for
/// diagnostics would never be told to ask again.
fn with_words_of_the_types(mut message: Value) -> Value {
    if message.get("method").is_some_and(|method| method == "initialize")
        && let Some(workspace) = message.pointer_mut("/params/capabilities/workspace").and_then(Value::as_object_mut)
        && let Some(diagnostics) = workspace.remove("diagnostics")
    {
        workspace.insert("diagnostic".to_owned(), diagnostics);
    }
    message
}

fn id_of(message: &Value) -> Option<Id> {
    serde_json::from_value(message.get("id")?.clone()).ok()
}

fn end(output: Output, status: u8) -> ExitCode {
    output.finish();
    ExitCode::from(status)
}

/// Reads messages on a thread of its own, for reading standard input blocks. The channel closes at the end of input.
fn reader() -> mpsc::Receiver<Incoming> {
    let (sender, receiver) = mpsc::channel(256);
    thread::spawn(move || {
        let mut input = io::stdin().lock();
        while let Ok(Some(incoming)) = next_message(&mut input) {
            if sender.blocking_send(incoming).is_err() {
                return;
            }
        }
    });
    receiver
}

/// The next message; `None` at the end of the input, be it within a message.
fn next_message(input: &mut impl BufRead) -> io::Result<Option<Incoming>> {
    let mut length = None;
    let mut junk = false;
    let mut line = Vec::new();
    loop {
        line.clear();
        let read = input.by_ref().take(LONGEST_HEADER).read_until(b'\n', &mut line)?;
        if read == 0 {
            return Ok(None);
        }
        let text = line.trim_ascii();
        if text.is_empty() {
            if length.is_some() || junk {
                break;
            }
            continue; // blank lines between messages
        }
        let colon = text.iter().position(|byte| *byte == b':').unwrap_or(text.len());
        let (name, value) = text.split_at(colon);
        let value = value.get(1..).unwrap_or_default().trim_ascii();
        if name.eq_ignore_ascii_case(b"content-length") {
            length = std::str::from_utf8(value).ok().and_then(|value| value.parse::<usize>().ok());
            junk |= length.is_none();
        } else if !name.eq_ignore_ascii_case(b"content-type") {
            junk = true;
        }
    }
    let Some(length) = length.filter(|length| *length <= LONGEST) else {
        return Ok(Some(Incoming::Malformed(Error {
            message: "a message needs a `Content-Length` header with its length in bytes".into(),
            ..Error::parse_error()
        })));
    };
    let mut body = Vec::new();
    if input.by_ref().take(length as u64).read_to_end(&mut body)? < length {
        return Ok(None);
    }
    Ok(Some(match serde_json::from_slice::<Value>(&body) {
        Ok(message) if message.is_object() => Incoming::Message(message),
        Ok(_) => Incoming::Malformed(Error {
            message: "a message is one JSON object; batches are no part of the protocol".into(),
            ..Error::invalid_request()
        }),
        Err(error) => {
            Incoming::Malformed(Error { message: format!("not JSON: {error}").into(), ..Error::parse_error() })
        }
    }))
}

/// The way out: messages are written by a thread of its own, in the order in which they were sent.
#[derive(Clone, Debug)]
pub struct Output {
    sender: std::sync::mpsc::Sender<Option<Vec<u8>>>,
    done: Arc<std::sync::Mutex<Option<thread::JoinHandle<()>>>>,
}

impl Output {
    /// Sends a message. It is written before all that is sent later.
    pub fn send(&self, message: &impl serde::Serialize) {
        let body = serde_json::to_vec(message).unwrap_or_else(|error| {
            let error = json!({ "code": -32603, "message": error.to_string() });
            json!({ "jsonrpc": "2.0", "id": null, "error": error }).to_string().into_bytes()
        });
        drop(self.sender.send(Some(body)));
    }

    /// Waits until all that was sent is written, but not for ever: a client that does not read must not keep us.
    fn finish(self) {
        drop(self.sender.send(None));
        let handle = self.done.lock().unwrap_or_else(std::sync::PoisonError::into_inner).take();
        if let Some(handle) = handle {
            for _ in 0..100 {
                if handle.is_finished() {
                    return;
                }
                thread::sleep(Duration::from_millis(10));
            }
        }
    }
}

/// Begins to write. `gone` is notified when nobody reads any more.
pub fn writer(gone: Arc<Notify>) -> Output {
    let (sender, receiver) = std::sync::mpsc::channel::<Option<Vec<u8>>>();
    let handle = thread::spawn(move || {
        let mut output = io::BufWriter::new(io::stdout().lock());
        let mut write = |body: &[u8]| -> io::Result<()> {
            write!(output, "Content-Length: {}\r\n\r\n", body.len())?;
            output.write_all(body)?;
            output.flush()
        };
        while let Ok(Some(body)) = receiver.recv() {
            if write(&body).is_err() {
                gone.notify_one();
                return;
            }
        }
    });
    Output { sender, done: Arc::new(std::sync::Mutex::new(Some(handle))) }
}

/// Watches the process that started us, and notifies when it is gone. A process that cannot be seen from the start (it
/// lives in another container) is not watched.
pub fn watch_parent(process: u32, gone: Arc<Notify>) {
    if !is_alive(process) {
        return;
    }
    thread::spawn(move || {
        while is_alive(process) {
            thread::sleep(Duration::from_millis(500));
        }
        gone.notify_one();
    });
}

#[cfg(unix)]
fn is_alive(process: u32) -> bool {
    let Some(pid) = i32::try_from(process).ok().and_then(rustix::process::Pid::from_raw) else { return false };
    match rustix::process::test_kill_process(pid) {
        Ok(()) => !is_zombie(process),
        Err(error) => error == rustix::io::Errno::PERM,
    }
}

/// Whether a process has ended and is only kept for its status.
#[cfg(unix)]
fn is_zombie(process: u32) -> bool {
    std::fs::read_to_string(format!("/proc/{process}/stat"))
        .ok()
        .and_then(|stat| stat.rsplit_once(')').map(|(_, rest)| rest.trim_start().starts_with('Z')))
        .unwrap_or(false)
}

/// Elsewhere the end of the input tells that the parent is gone.
#[cfg(not(unix))]
fn is_alive(_process: u32) -> bool {
    false
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn all(bytes: &[u8]) -> Vec<String> {
        let mut input = io::BufReader::new(bytes);
        let mut list = Vec::new();
        while let Some(incoming) = next_message(&mut input).unwrap() {
            list.push(match incoming {
                Incoming::Message(message) => message.to_string(),
                Incoming::Malformed(error) => error.code.code().to_string(),
            });
        }
        list
    }

    #[test]
    fn reads_on_behind_what_is_no_message() {
        assert_eq!(all(b"Content-Length: 2\r\n\r\n{}content-length:2\r\nContent-Type: x\r\n\r\n{}"), ["{}", "{}"]);
        assert_eq!(all(b"junk\r\n\r\nContent-Length: 2\r\n\r\n{}"), ["-32700", "{}"]);
        assert_eq!(all(b"Content-Length: x\r\n\r\nContent-Length: 2\r\n\r\n{}"), ["-32700", "{}"]);
        assert_eq!(all(b"Content-Length: 2\r\n\r\n{]Content-Length: 2\r\n\r\n[]"), ["-32700", "-32600"]);
        assert_eq!(all(b"Content-Length: 1\r\n\r\n\xFFContent-Length: 2\r\n\r\n{}"), ["-32700", "{}"]);
        assert_eq!(all(b"Content-Length: 20\r\n\r\n{}"), Vec::<String>::new());
        assert_eq!(all(b"Content-Le"), Vec::<String>::new());
    }
}
