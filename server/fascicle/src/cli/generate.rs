//! `fascicle generate`: what a release ships beside the program. Hidden from the help, for the release script and the tests.

use std::io::{self, Write};

use clap::CommandFactory;
use schemars::JsonSchema;
use schemars::generate::SchemaSettings;

use super::Status;
use super::dump::FactsReport;
use super::report::{CheckReport, ClaimsReport};

/// What to make.
#[derive(Debug, clap::Args)]
pub struct Arguments {
    /// What to make.
    #[command(subcommand)]
    what: What,
}

#[derive(Debug, clap::Subcommand)]
enum What {
    /// The man page.
    Man,
    /// Completions for a shell.
    Completions {
        /// The shell.
        shell: clap_complete::Shell,
    },
    /// The JSON Schema of an output.
    Schema {
        /// The output.
        of: Output,
    },
}

/// An output that has a schema.
#[derive(Clone, Copy, Debug, clap::ValueEnum)]
enum Output {
    /// Of `check --format json`.
    Check,
    /// Of `claims --format json`.
    Claims,
    /// Of `facts --format json`.
    Facts,
    /// Of the settings file.
    Settings,
}

/// Runs the command.
///
/// # Errors
/// Standard output could not be written.
pub fn run(arguments: &Arguments) -> io::Result<Status> {
    let mut out = io::stdout().lock();
    match &arguments.what {
        What::Man => man(&mut out)?,
        What::Completions { shell } => {
            let mut bytes = Vec::new();
            clap_complete::generate(*shell, &mut super::Arguments::command(), "fascicle", &mut bytes);
            out.write_all(&bytes)?;
        }
        What::Schema { of } => {
            let schema = match of {
                Output::Check => written::<CheckReport>(),
                Output::Claims => written::<ClaimsReport>(),
                Output::Facts => written::<FactsReport<'_>>(),
                Output::Settings => crate::course::settings::schema(),
            };
            serde_json::to_writer_pretty(&mut out, &schema)?;
            out.write_all(b"\n")?;
        }
    }
    out.flush()?;
    Ok(Status::Clean)
}

/// The schema of what the program writes, in which what is left out where it is empty is not required.
fn written<T: JsonSchema>() -> serde_json::Value {
    SchemaSettings::draft2020_12().for_serialize().into_generator().into_root_schema_for::<T>().into()
}

/// One page for the program and its commands.
fn man(out: &mut impl Write) -> io::Result<()> {
    let mut command = super::Arguments::command();
    command.build();
    let page = clap_mangen::Man::new(command.clone());
    page.render_title(out)?;
    page.render_name_section(out)?;
    page.render_synopsis_section(out)?;
    page.render_description_section(out)?;
    page.render_options_section(out)?;
    for sub in command.get_subcommands().filter(|sub| !sub.is_hide_set() && sub.get_name() != "help") {
        let page = clap_mangen::Man::new(sub.clone());
        writeln!(out, ".SH \"{}\"", sub.get_name().to_uppercase())?;
        let mut body = Vec::new();
        page.render_synopsis_section(&mut body)?;
        page.render_description_section(&mut body)?;
        page.render_options_section(&mut body)?;
        // The sections of a command become subsections of the page.
        let body = String::from_utf8_lossy(&body).replace(".SH ", ".SS ");
        out.write_all(body.as_bytes())?;
    }
    page.render_extra_section(out)?;
    page.render_version_section(out)
}
