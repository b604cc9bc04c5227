//! The program: the language server and the commands of the terminal.

use std::process::ExitCode;

use clap::Parser;

mod cli;
mod course;
mod findings;
mod lsp;

/// Reading makes very many small allocations, in several threads at once; the system's allocator is slow at that.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

fn main() -> ExitCode {
    tracing_subscriber::fmt()
        .with_env_filter(tracing_subscriber::EnvFilter::from_env("FASCICLE_LOG"))
        .with_writer(std::io::stderr)
        .init();
    cli::run(cli::Arguments::parse())
}
