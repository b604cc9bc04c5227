//! `fascicle/status`: what the server holds and how long its answers took.

use serde::Serialize;

use crate::lsp::state::{Session, Times};

/// The answer to `fascicle/status`.
#[derive(Debug, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Status {
    /// Version of the program.
    version: &'static str,
    /// Resident memory in bytes, where the system tells.
    memory: Option<u64>,
    /// How many documents are open.
    documents: usize,
    /// How many bytes of text they have.
    text: usize,
    /// How many courses there are.
    courses: usize,
    /// Requests by method.
    requests: Vec<Latency>,
}

#[derive(Debug, Serialize)]
#[serde(rename_all = "camelCase")]
struct Latency {
    method: &'static str,
    count: u64,
    last_milliseconds: f64,
    longest_milliseconds: f64,
}

/// `fascicle/status`
pub fn status(session: &Session) -> Status {
    let state = session.state();
    let latency = |(method, times): (&&'static str, &Times)| Latency {
        method,
        count: times.count,
        last_milliseconds: times.last.as_secs_f64() * 1e3,
        longest_milliseconds: times.longest.as_secs_f64() * 1e3,
    };
    Status {
        version: env!("CARGO_PKG_VERSION"),
        memory: memory(),
        documents: state.documents.len(),
        text: state.documents.values().map(|document| document.len()).sum(),
        courses: state.courses.len(),
        requests: state.times.iter().map(latency).collect(),
    }
}

/// Resident memory: the second number of `/proc/self/statm`, in pages of 4 KiB.
fn memory() -> Option<u64> {
    let statm = std::fs::read_to_string("/proc/self/statm").ok()?;
    Some(statm.split_whitespace().nth(1)?.parse::<u64>().ok()? * 4096)
}
