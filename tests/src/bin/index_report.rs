//! How long the server takes to index a large course, how much memory the index needs, and how soon a change on disk counts.
//!
//! `cargo build --release && cargo run --release -p fascicle-tests --bin index-report -- target/release/fascicle [FILES]`
//! makes a folder of FILES (10,000) Markdown files of about 10 kB, of the paragraphs of the annotated corpus in turn, opens it
//! as an editor would, and writes `tests/reports/index.md`. The time of the processors is told beside the time of the clock, for
//! a machine that does other things at once is no measure.

use std::fmt::Write as _;
use std::io::{BufRead, BufReader, Read, Write};
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdin, ChildStdout, Command, ExitCode, Stdio};
use std::time::{Duration, Instant};

use fascicle_tests::corpus;
use serde_json::{Value, json};

/// About how long a file is, in bytes.
const FILE: usize = 10_000;

fn main() -> ExitCode {
    let mut arguments = std::env::args().skip(1);
    let program = arguments.next().unwrap_or_else(|| "target/release/fascicle".to_owned());
    let files = arguments.next().and_then(|count| count.parse().ok()).unwrap_or(10_000);
    match report(Path::new(&program), files) {
        Ok(()) => ExitCode::SUCCESS,
        Err(problem) => {
            eprintln!("index-report: {problem}");
            ExitCode::from(2)
        }
    }
}

/// A server, and the little of a client that is needed here.
struct Server {
    child: Child,
    input: ChildStdin,
    output: BufReader<ChildStdout>,
    next: i64,
}

impl Server {
    fn start(program: &Path, folder: &Path) -> Result<Self, String> {
        let mut child = Command::new(program)
            .arg("serve")
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .map_err(|error| format!("{}: {error}", program.display()))?;
        let (Some(input), Some(output)) = (child.stdin.take(), child.stdout.take()) else {
            return Err("no pipes".to_owned());
        };
        let mut server = Self { child, input, output: BufReader::new(output), next: 0 };
        let uri = format!("file://{}", folder.display());
        let folders = json!([{ "uri": uri, "name": "course" }]);
        server.ask("initialize", &json!({ "capabilities": {}, "workspaceFolders": folders }))?;
        Ok(server)
    }

    fn send(&mut self, message: &Value) -> Result<(), String> {
        let body = message.to_string();
        let sent = write!(self.input, "Content-Length: {}\r\n\r\n{body}", body.len()).and_then(|()| self.input.flush());
        sent.map_err(|error| error.to_string())
    }

    fn notify(&mut self, method: &str, params: &Value) -> Result<(), String> {
        self.send(&json!({ "jsonrpc": "2.0", "method": method, "params": params }))
    }

    fn ask(&mut self, method: &str, params: &Value) -> Result<Value, String> {
        self.next += 1;
        let id = self.next;
        self.send(&json!({ "jsonrpc": "2.0", "id": id, "method": method, "params": params }))?;
        loop {
            let message = self.read()?;
            if message["id"] == id && message.get("method").is_none() {
                return Ok(message["result"].clone());
            }
        }
    }

    fn read(&mut self) -> Result<Value, String> {
        let mut length = 0;
        loop {
            let mut line = String::new();
            if self.output.read_line(&mut line).map_err(|error| error.to_string())? == 0 {
                return Err("the server has ended".to_owned());
            }
            let line = line.trim_end();
            if line.is_empty() {
                break;
            }
            if let Some(value) = line.strip_prefix("Content-Length: ") {
                length = value.parse().map_err(|_| "no length")?;
            }
        }
        let mut body = vec![0; length];
        self.output.read_exact(&mut body).map_err(|error| error.to_string())?;
        serde_json::from_slice(&body).map_err(|error| error.to_string())
    }

    fn status(&mut self) -> Result<Value, String> {
        self.ask("fascicle/status", &Value::Null)
    }

    /// Time of the processors that the server has taken.
    fn processors(&self) -> Option<Duration> {
        let stat = std::fs::read_to_string(format!("/proc/{}/stat", self.child.id())).ok()?;
        let fields: Vec<&str> = stat.rsplit_once(')')?.1.split_whitespace().collect();
        let ticks = fields.get(11)?.parse::<u64>().ok()? + fields.get(12)?.parse::<u64>().ok()?;
        Some(Duration::from_millis(ticks * 10))
    }

    /// Waits until a state is reached, and says how long that took by the clock and by the processors.
    fn until(&mut self, is_reached: impl Fn(&Value) -> bool) -> Result<(Value, f64, f64), String> {
        let (began, before) = (Instant::now(), self.processors().unwrap_or_default());
        loop {
            let status = self.status()?;
            if status["folders"].get(0).is_some_and(&is_reached) {
                let took = self.processors().unwrap_or_default().saturating_sub(before);
                return Ok((status, began.elapsed().as_secs_f64(), took.as_secs_f64()));
            }
            std::thread::sleep(Duration::from_millis(20));
        }
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        drop(self.child.kill());
        drop(self.child.wait());
    }
}

/// A folder of a report's own, removed at its end.
struct Folder(PathBuf);

impl Drop for Folder {
    fn drop(&mut self) {
        drop(std::fs::remove_dir_all(&self.0));
    }
}

fn make(name: &str, files: usize) -> Result<(Folder, usize), String> {
    let folder = Folder(std::env::temp_dir().join(format!("fascicle-index-{name}-{}", std::process::id())));
    std::fs::create_dir_all(&folder.0).map_err(|error| error.to_string())?;
    let documents = corpus::documents("all")?;
    let pieces: Vec<&str> = documents.iter().flat_map(|document| document.text.split_inclusive("\n\n")).collect();
    let mut next = pieces.iter().cycle();
    let mut bytes = 0;
    for number in 0..files {
        let mut text = format!("# Notes {number}\n\n");
        while text.len() < FILE {
            text.push_str(next.next().ok_or("the corpus is empty")?);
        }
        bytes += text.len();
        let path = folder.0.join(format!("{number:05}.md"));
        std::fs::write(&path, text).map_err(|error| error.to_string())?;
    }
    Ok((folder, bytes))
}

#[allow(clippy::cast_precision_loss)]
fn report(program: &Path, files: usize) -> Result<(), String> {
    let (empty, _) = make("empty", 1)?;
    let mut server = Server::start(program, &empty.0)?;
    server.notify("initialized", &json!({}))?;
    let (status, ..) = server.until(|folder| folder["indexed"] == true && folder["unread"] == 0)?;
    let base = status["memory"].as_u64().unwrap_or(0);
    drop(server);

    let (folder, bytes) = make("full", files)?;
    let hundred = bytes as f64 / 1e8;
    let mut server = Server::start(program, &folder.0)?;
    server.status()?;
    std::thread::sleep(Duration::from_secs(2)); // the vocabulary is laid out meanwhile
    server.notify("initialized", &json!({}))?;
    let (status, clock, processors) = server.until(|folder| folder["indexed"] == true)?;
    let per_byte = |status: &Value| (status["memory"].as_u64().unwrap_or(0).saturating_sub(base)) as f64 / bytes as f64;
    let mut out = format!(
        "# Index of a large course\n\n\
         Made by `index-report`, whose head says how. {files} Markdown files, {:.1} MB, {} names; on {} processors.\n\n\
         | what | value |\n|---|---|\n",
        bytes as f64 / 1e6,
        status["folders"][0]["names"],
        std::thread::available_parallelism().map_or(1, usize::from),
    );
    let _ = writeln!(out, "| names indexed, clock, s per 100 MB | {:.2} |", clock / hundred);
    let _ = writeln!(out, "| the same, time of the processors | {:.2} |", processors / hundred);
    let _ = writeln!(
        out,
        "| memory beyond that of a server with one document, bytes per byte of text | {:.2} |",
        per_byte(&status)
    );
    let path = folder.0.join("00000.md");
    std::fs::write(&path, "Deltoid.\n").map_err(|error| error.to_string())?;
    let names = status["folders"][0]["names"].clone();
    let change = json!([{ "uri": format!("file://{}", path.display()), "type": 2 }]);
    server.notify("workspace/didChangeWatchedFiles", &json!({ "changes": change }))?;
    let (_, fresh, _) = server.until(|folder| folder["names"] != names)?;
    let _ = writeln!(out, "| a change on disk counts after, s | {fresh:.2} |");
    let (status, clock, processors) = server.until(|folder| folder["unread"] == 0)?;
    let _ = writeln!(out, "| statements read behind the index, clock, s per 100 MB | {:.1} |", clock / hundred);
    let _ = writeln!(out, "| the same, time of the processors | {:.1} |", processors / hundred);
    let _ = writeln!(out, "| memory with statements, bytes per byte of text | {:.2} |", per_byte(&status));
    let path = fascicle_tests::folder().join("reports/index.md");
    std::fs::write(&path, &out).map_err(|error| format!("{}: {error}", path.display()))?;
    println!("{out}");
    Ok(())
}
