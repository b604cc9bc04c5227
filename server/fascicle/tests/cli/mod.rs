//! Runs the built program in a folder of its own, as a person in a terminal would.
#![allow(dead_code, clippy::unwrap_used, clippy::expect_used, clippy::missing_panics_doc)]

use std::ffi::OsStr;
use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use serde_json::Value;

/// How a run ended.
#[derive(Debug)]
pub struct Ran {
    pub status: i32,
    pub out: String,
    pub err: String,
}

impl Ran {
    /// Standard output as JSON.
    pub fn json(&self) -> Value {
        serde_json::from_str(&self.out).unwrap_or_else(|error| panic!("{error}: {}\n{}", self.out, self.err))
    }
}

/// A folder with a little course in it, gone when the test ends.
pub struct Desk {
    folder: tempfile::TempDir,
}

impl Desk {
    /// An empty folder.
    pub fn new() -> Self {
        Self { folder: tempfile::tempdir().unwrap() }
    }

    /// A folder with files.
    pub fn with(files: &[(&str, &str)]) -> Self {
        let desk = Self::new();
        for (name, text) in files {
            desk.write(name, text.as_bytes());
        }
        desk
    }

    /// The folder.
    pub fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    /// Writes a file.
    pub fn write(&self, name: &str, bytes: &[u8]) {
        let path = self.path(name);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, bytes).unwrap();
    }

    /// What a file holds.
    pub fn read(&self, name: &str) -> String {
        fs::read_to_string(self.path(name)).unwrap()
    }

    /// The program, in this folder.
    pub fn command<S: AsRef<OsStr>>(&self, arguments: &[S]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_fascicle"));
        command.args(arguments).current_dir(self.folder.path()).env_remove("NO_COLOR").env_remove("FASCICLE_LOG");
        command
    }

    /// Runs the program to its end.
    pub fn run<S: AsRef<OsStr>>(&self, arguments: &[S]) -> Ran {
        self.run_with(arguments, b"")
    }

    /// Runs the program with standard input.
    pub fn run_with<S: AsRef<OsStr>>(&self, arguments: &[S], input: &[u8]) -> Ran {
        finish(self.command(arguments), input)
    }
}

/// Runs a command to its end.
pub fn finish(mut command: Command, input: &[u8]) -> Ran {
    let command = command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped());
    let mut child = command.spawn().unwrap();
    let mut stdin = child.stdin.take().unwrap();
    // The program may refuse before it has read everything.
    let _ = stdin.write_all(input);
    drop(stdin);
    let output = child.wait_with_output().unwrap();
    Ran {
        status: output.status.code().unwrap_or(-1),
        out: String::from_utf8(output.stdout).unwrap(),
        err: String::from_utf8(output.stderr).unwrap(),
    }
}

/// Compares an output with the snapshot of that name. `UPDATE_SNAPSHOTS=1` writes it anew, to be read in review.
pub fn snapshot(name: &str, output: &str) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/snapshots").join(name);
    if std::env::var_os("UPDATE_SNAPSHOTS").is_some() {
        fs::write(&path, output).unwrap();
    }
    let kept = fs::read_to_string(&path).unwrap_or_default();
    assert_eq!(output, kept, "\n{name} has changed; if that is meant, run with UPDATE_SNAPSHOTS=1\n{output}");
}

/// A published schema.
pub fn schema(name: &str) -> Value {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("schemas").join(format!("{name}.schema.json"));
    serde_json::from_str(&fs::read_to_string(path).unwrap()).unwrap()
}

/// What of a value does not keep to a schema.
pub fn violations(schema: &Value, value: &Value) -> Vec<String> {
    let validator = jsonschema::validator_for(schema).unwrap();
    validator.iter_errors(value).map(|error| format!("{}: {error}", error.instance_path)).collect()
}

/// A note with a false statement, two misspelled names and a true statement.
pub const NOTE: &str = "# The arm\n\n\
    The axillary nerve supplies the biceps brachii. The flexor pollicus brevis is a thenar muscle.\n\n\
    The deltoid is supplied by the axillary nerve (C5, C6).\n\n\
    The sternocleidomastiod turns the head; the radial nerve and the ulnar nerve are long.\n";

/// A note in which nothing is wrong.
pub const CLEAN: &str = "# The shoulder\n\nThe deltoid is supplied by the axillary nerve.\n";
