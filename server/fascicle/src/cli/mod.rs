//! The commands of the terminal.

use std::process::ExitCode;

/// Reads what lecturers write about nerves, muscles and joints, and helps.
#[derive(Debug, clap::Parser)]
#[command(version, about)]
pub struct Arguments {
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
}

/// The commands.
#[derive(Debug, clap::Subcommand)]
pub enum Command {
    /// Speak the language server protocol on standard input and output.
    Serve,
    /// Show what the vocabulary holds.
    Facts,
}

/// Shows how much the vocabulary holds.
pub fn facts() -> ExitCode {
    let vocabulary = fascicle_vocab::built_in();
    println!("{} entries, {} facts", vocabulary.entries().len(), vocabulary.fact_count());
    ExitCode::SUCCESS
}
