//! `fascicle/status`: what the server holds and how long its answers took.

use serde::Serialize;

use crate::lsp::state::{self, Session, Times};

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
    /// How often they were read.
    readings: Readings,
    /// The workspace folders.
    folders: Vec<Folder>,
    /// Requests by method.
    requests: Vec<Latency>,
}

/// How often the open documents were read.
#[derive(Debug, Serialize)]
#[serde(rename_all = "camelCase")]
struct Readings {
    /// How many readings have begun.
    begun: usize,
    /// How many of them ended midway, for nobody waited for them any more.
    given_up: usize,
}

/// A workspace folder.
#[derive(Debug, Serialize)]
#[serde(rename_all = "camelCase")]
struct Folder {
    /// Its path.
    path: String,
    /// Its index is complete.
    indexed: bool,
    /// How many documents it has.
    documents: usize,
    /// How many bytes they have.
    bytes: u64,
    /// How many names are in them.
    names: usize,
    /// Of how many it is not read yet what they state.
    unread: usize,
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
    let folder = |folder: &state::Folder| Folder {
        path: folder.root.display().to_string(),
        indexed: folder.is_indexed,
        documents: folder.index.files.len(),
        bytes: folder.index.files.values().map(|file| file.stamp.len).sum(),
        names: folder.index.files.values().map(|file| file.contents.spots.len()).sum(),
        unread: folder.statements.missing(&folder.index).count(),
    };
    let readings = || state.documents.values().map(|document| document.readings());
    let readings = Readings {
        begun: readings().map(|readings| readings.begun).sum(),
        given_up: readings().map(|readings| readings.given_up).sum(),
    };
    Status {
        version: env!("CARGO_PKG_VERSION"),
        memory: memory(),
        documents: state.documents.len(),
        text: state.documents.values().map(|document| document.len()).sum(),
        readings,
        folders: state.folders.iter().map(folder).collect(),
        requests: state.times.iter().map(latency).collect(),
    }
}

/// Resident memory: the second number of `/proc/self/statm`, in pages of 4 KiB.
fn memory() -> Option<u64> {
    let statm = std::fs::read_to_string("/proc/self/statm").ok()?;
    Some(statm.split_whitespace().nth(1)?.parse::<u64>().ok()? * 4096)
}
