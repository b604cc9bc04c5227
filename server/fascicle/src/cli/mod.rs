//! The commands of the terminal.
//!
//! Each command has its file. What they share: [`files`] finds and reads documents, [`paint`] decides on colours,
//! [`excerpt`] shows a place of a text, [`report`] holds the shapes of the JSON outputs, which are published as JSON Schemas.
//!
//! Exit status: 0 nothing found, 1 something found, 2 something could not be read or done. Results go to standard output,
//! complaints to standard error.

mod audit;
mod check;
mod claims;
mod courses;
mod dump;
mod excerpt;
mod facts;
mod files;
mod fix;
mod generate;
mod paint;
mod report;
mod sarif;

use std::io;
use std::process::ExitCode;

/// Reads what lecturers write about nerves, muscles and joints, and helps.
#[derive(Debug, clap::Parser)]
#[command(version, about, arg_required_else_help = true)]
#[command(after_help = "Exit status: 0 nothing found, 1 something found, 2 something could not be read or done.")]
pub struct Arguments {
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
    /// When to use colours; `auto` is only on a terminal, and not if `NO_COLOR` is set.
    #[arg(long, global = true, value_name = "WHEN", default_value = "auto")]
    color: paint::When,
}

/// The commands.
#[derive(Debug, clap::Subcommand)]
pub enum Command {
    /// Check documents, and say what is wrong, why, and what to do.
    Check(check::Arguments),
    /// Show every statement that was read, and what the graph says of it.
    Claims(claims::Arguments),
    /// Show what the vocabulary holds of a structure.
    Facts(facts::Arguments),
    /// Speak the language server protocol on standard input and output.
    Serve,
    /// Make the man page, shell completions, or the JSON Schema of an output.
    #[command(hide = true)]
    Generate(generate::Arguments),
}

/// How a command ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Status {
    /// Nothing was found.
    Clean,
    /// Something was found.
    Found,
    /// Something could not be read or done.
    Failed,
}

impl From<Status> for ExitCode {
    fn from(status: Status) -> Self {
        Self::from(status as u8)
    }
}

/// Runs a command of the terminal. A reader that closes the pipe has seen enough: that is no error.
pub fn run(arguments: Arguments) -> ExitCode {
    let paint = paint::Paint::new(arguments.color);
    let ended = match arguments.command {
        Command::Check(arguments) => check::run(&arguments, paint),
        Command::Claims(arguments) => claims::run(&arguments, paint),
        Command::Facts(arguments) => facts::run(&arguments, paint),
        Command::Generate(arguments) => generate::run(&arguments),
        Command::Serve => return crate::lsp::serve(),
    };
    match ended {
        Ok(status) => status.into(),
        Err(error) if error.kind() == io::ErrorKind::BrokenPipe => ExitCode::SUCCESS,
        Err(error) => {
            complain(&format!("the output could not be written: {error}"));
            Status::Failed.into()
        }
    }
}

/// Says on standard error what went wrong. A closed standard error is no reason to stop.
fn complain(message: &str) {
    use io::Write as _;
    let _ = writeln!(io::stderr(), "fascicle: {message}");
}
