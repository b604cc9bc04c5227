//! A client that drives the built program over its real standard input and output.
#![allow(dead_code, clippy::unwrap_used, clippy::expect_used, clippy::missing_panics_doc)]

use std::collections::HashMap;
use std::fs;
use std::io::{BufRead, BufReader, Write};
use std::path::PathBuf;
use std::process::{Child, ChildStdin, Command, ExitStatus, Stdio};
use std::sync::mpsc::{Receiver, RecvTimeoutError, channel};
use std::time::{Duration, Instant};

use serde_json::{Value, json};

/// How long an answer may take before a test fails.
pub const PATIENCE: Duration = Duration::from_secs(180);

/// A running server and what it has said.
pub struct Server {
    pub child: Child,
    input: Option<ChildStdin>,
    incoming: Receiver<Value>,
    next: i64,
    answers: HashMap<i64, Value>,
    /// Notifications and requests of the server, in order.
    pub said: Vec<Value>,
    /// The diagnostics that an editor would show now, by document.
    shown: HashMap<String, Vec<Value>>,
    /// What the editor's settings say where the server asks for them.
    pub settings: Value,
    /// A request of the server that is never answered.
    pub unanswered: Option<&'static str>,
}

/// A message as bytes.
pub fn frame(message: &Value) -> Vec<u8> {
    let body = message.to_string();
    format!("Content-Length: {}\r\n\r\n{body}", body.len()).into_bytes()
}

/// A request as a message.
pub fn request(id: i64, method: &str, params: &Value) -> Value {
    json!({ "jsonrpc": "2.0", "id": id, "method": method, "params": params })
}

/// A notification as a message.
pub fn notification(method: &str, params: &Value) -> Value {
    json!({ "jsonrpc": "2.0", "method": method, "params": params })
}

impl Server {
    /// Starts the program and says nothing yet.
    pub fn spawn() -> Self {
        let mut child = Command::new(env!("CARGO_BIN_EXE_fascicle"))
            .arg("serve")
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        let input = child.stdin.take();
        let mut output = BufReader::new(child.stdout.take().unwrap());
        let (sender, incoming) = channel();
        std::thread::spawn(move || {
            while let Some(message) = read(&mut output) {
                if sender.send(message).is_err() {
                    return;
                }
            }
        });
        Self {
            child,
            input,
            incoming,
            next: 0,
            answers: HashMap::new(),
            said: Vec::new(),
            shown: HashMap::new(),
            settings: Value::Null,
            unanswered: None,
        }
    }

    /// Starts the program and agrees on an encoding, with a client that can do what `capabilities` says.
    pub fn start(encoding: &str, mut capabilities: Value, root: Option<&str>) -> Self {
        let mut server = Self::spawn();
        capabilities["general"] = json!({ "positionEncodings": [encoding] });
        let folders = root.map(|root| json!([{ "uri": root, "name": "course" }]));
        let params = json!({
            "processId": std::process::id(),
            "rootUri": root,
            "workspaceFolders": folders,
            "capabilities": capabilities,
        });
        let answer = server.ask("initialize", &params);
        assert_eq!(answer["capabilities"]["positionEncoding"], encoding, "{answer}");
        server.notify("initialized", &json!({}));
        server
    }

    /// A client that can do little, with UTF-16.
    pub fn plain() -> Self {
        Self::start("utf-16", json!({}), None)
    }

    /// Writes bytes as they are.
    pub fn write(&mut self, bytes: &[u8]) {
        let input = self.input.as_mut().unwrap();
        input.write_all(bytes).unwrap();
        input.flush().unwrap();
    }

    /// Sends a request and returns its number.
    pub fn send(&mut self, method: &str, params: &Value) -> i64 {
        self.next += 1;
        self.write(&frame(&request(self.next, method, params)));
        self.next
    }

    /// Sends a notification.
    pub fn notify(&mut self, method: &str, params: &Value) {
        self.write(&frame(&notification(method, params)));
    }

    /// A request and its result.
    pub fn ask(&mut self, method: &str, params: &Value) -> Value {
        let id = self.send(method, params);
        let answer = self.answer(id);
        assert!(answer.get("error").is_none(), "{method}: {answer}");
        answer["result"].clone()
    }

    /// The whole answer to a request.
    pub fn answer(&mut self, id: i64) -> Value {
        let until = Instant::now() + PATIENCE;
        loop {
            if let Some(answer) = self.answers.remove(&id) {
                return answer;
            }
            self.take(until).unwrap_or_else(|| panic!("no answer to request {id}"));
        }
    }

    /// The next message that the server sends of its own accord by a method, from those not looked at yet.
    pub fn wait_for(&mut self, method: &str) -> Value {
        self.wait(|message| message["method"] == method).unwrap_or_else(|| panic!("no {method}"))
    }

    /// The next message of the server's own that is wanted; the ones before it are dropped.
    pub fn wait(&mut self, wanted: impl Fn(&Value) -> bool) -> Option<Value> {
        let until = Instant::now() + PATIENCE;
        loop {
            if let Some(at) = self.said.iter().position(&wanted) {
                return self.said.drain(..=at).next_back();
            }
            self.take(until)?;
        }
    }

    /// The diagnostics shown for a document once they are as wanted, whatever came of other documents in the meantime.
    pub fn shows(&mut self, uri: &str, wanted: impl Fn(&[Value]) -> bool) -> Vec<Value> {
        let until = Instant::now() + PATIENCE;
        loop {
            if let Some(list) = self.shown.get(uri).filter(|list| wanted(list)) {
                return list.clone();
            }
            let shown = self.shown.get(uri).cloned();
            self.take(until).unwrap_or_else(|| panic!("no such diagnostics of {uri}, but {shown:?}"));
        }
    }

    /// Takes in all that comes within a time.
    pub fn listen(&mut self, time: Duration) {
        let until = Instant::now() + time;
        while self.take(until).is_some() {}
    }

    fn take(&mut self, until: Instant) -> Option<()> {
        let left = until.saturating_duration_since(Instant::now());
        match self.incoming.recv_timeout(left) {
            Ok(message) => {
                if message.get("method").is_some() {
                    let is_answered = self.unanswered.is_none_or(|method| message["method"] != method);
                    if message.get("id").is_some() && is_answered {
                        // The server asks us something: a client that grants everything.
                        let asks_settings = message["method"] == "workspace/configuration";
                        let result = if asks_settings { json!([self.settings]) } else { Value::Null };
                        let answer = json!({ "jsonrpc": "2.0", "id": message["id"], "result": result });
                        self.write(&frame(&answer));
                    }
                    if message["method"] == "textDocument/publishDiagnostics" {
                        let uri = message["params"]["uri"].as_str().unwrap().to_owned();
                        self.shown.insert(uri, message["params"]["diagnostics"].as_array().unwrap().clone());
                    }
                    self.said.push(message);
                } else {
                    self.answers.insert(message["id"].as_i64().unwrap_or(-1), message);
                }
                Some(())
            }
            Err(RecvTimeoutError::Timeout | RecvTimeoutError::Disconnected) => None,
        }
    }

    /// Opens a document.
    pub fn open(&mut self, uri: &str, version: i64, text: &str) {
        let document = json!({ "uri": uri, "languageId": "markdown", "version": version, "text": text });
        self.notify("textDocument/didOpen", &json!({ "textDocument": document }));
    }

    /// Replaces the text of a document.
    pub fn replace(&mut self, uri: &str, version: i64, text: &str) {
        let change =
            json!({ "textDocument": { "uri": uri, "version": version }, "contentChanges": [{ "text": text }] });
        self.notify("textDocument/didChange", &change);
    }

    /// Closes the server's input.
    pub fn close_input(&mut self) {
        self.input = None;
    }

    /// Waits for the end of the process; fails if it does not come in time.
    pub fn end(&mut self, within: Duration) -> ExitStatus {
        let until = Instant::now() + within;
        loop {
            if let Some(status) = self.child.try_wait().unwrap() {
                return status;
            }
            assert!(Instant::now() < until, "the server is still running after {within:?}");
            std::thread::sleep(Duration::from_millis(5));
        }
    }

    /// Ends the server as the protocol says, and checks that it ends well.
    pub fn shut_down(mut self) {
        let id = self.send("shutdown", &Value::Null);
        assert!(self.answer(id)["error"].is_null());
        self.notify("exit", &Value::Null);
        assert_eq!(self.end(Duration::from_secs(5)).code(), Some(0));
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        drop(self.child.kill());
        drop(self.child.wait());
    }
}

fn read(output: &mut impl BufRead) -> Option<Value> {
    let mut length = 0;
    loop {
        let mut line = String::new();
        if output.read_line(&mut line).ok()? == 0 {
            return None;
        }
        let line = line.trim_end();
        if line.is_empty() {
            break;
        }
        if let Some(value) = line.strip_prefix("Content-Length: ") {
            length = value.parse().ok()?;
        }
    }
    let mut body = vec![0; length];
    output.read_exact(&mut body).ok()?;
    serde_json::from_slice(&body).ok()
}

/// Where a document is, by line and character.
pub fn at(uri: &str, line: u64, character: u64) -> Value {
    json!({ "textDocument": { "uri": uri }, "position": { "line": line, "character": character } })
}

/// A folder of a test's own, removed at its end.
pub struct Folder(pub PathBuf);

impl Folder {
    /// Makes it, with files.
    pub fn new(name: &str, files: &[(&str, &str)]) -> Self {
        let path = std::env::temp_dir().join(format!("fascicle-{}-{name}", std::process::id()));
        drop(fs::remove_dir_all(&path));
        fs::create_dir_all(&path).unwrap();
        let folder = Self(path.canonicalize().unwrap());
        for (name, text) in files {
            folder.write(name, text);
        }
        folder
    }

    /// Writes a file.
    pub fn write(&self, name: &str, text: &str) {
        fs::write(self.0.join(name), text).unwrap();
    }

    /// The address of a file, or of the folder.
    pub fn uri(&self, name: &str) -> String {
        format!("file://{}", self.0.join(name).display()).trim_end_matches('/').to_owned()
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        drop(fs::remove_dir_all(&self.0));
    }
}
