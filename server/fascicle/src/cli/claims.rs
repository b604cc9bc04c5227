//! `fascicle claims`: every statement that was read, what the graph says of it, and what was not read.

use std::fmt::Write as _;
use std::io::{self, Write};
use std::path::PathBuf;

use fascicle_analysis::claims::{Claim, PartRole, What};
use fascicle_analysis::coverage::{Sentence, coverage};
use fascicle_analysis::lines::LineIndex;
use fascicle_analysis::verdicts::{Judgement, Verdict};
use fascicle_analysis::{Severity, Span};
use fascicle_vocab::{Segments, Vocabulary};

use super::check::{counted, write_json};
use super::courses::Courses;
use super::files::{self, Document, FormName};
use super::paint::{Look, Paint, columns, safe};
use super::report::{ClaimOut, ClaimsReport, FileClaims, SentencesOut, VERSION};
use super::{Status, complain};

/// What to read and how to tell.
#[derive(Debug, clap::Args)]
pub struct Arguments {
    /// Files, folders (ignore files are respected), or `-` for standard input.
    #[arg(required = true, value_name = "PATH")]
    paths: Vec<PathBuf>,
    /// How to tell what was read.
    #[arg(long, value_name = "FORMAT", default_value = "table")]
    format: Format,
    /// The form of documents whose name does not tell it.
    #[arg(long, value_name = "FORM", default_value = "markdown")]
    form: FormName,
}

/// A form of output.
#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
enum Format {
    /// A table for people.
    #[value(alias = "human")]
    Table,
    /// JSON; the schema is published with the program.
    Json,
}

/// What was read of one document.
struct Audit {
    out: FileClaims,
    table: String,
    verdicts: Vec<Verdict>,
}

/// Runs the command. Claims are no findings: the status says only whether everything could be read.
///
/// # Errors
/// Standard output could not be written.
pub fn run(arguments: &Arguments, paint: Paint) -> io::Result<Status> {
    let courses = Courses::new();
    let (mut sources, troubles) = files::find(&arguments.paths, arguments.form);
    courses.drop_excluded(&mut sources);
    for trouble in &troubles {
        complain(trouble);
    }
    let mut failed = !troubles.is_empty();
    let columns = columns();
    let work = |document: Document| -> Result<Audit, String> {
        let opened = courses.of(&document.source);
        let (knowledge, settings) = (opened.course.knowledge(), &opened.course.settings.reading);
        let reading = fascicle_analysis::read(&document.text, document.source.form, knowledge, settings);
        let sentences = coverage(&reading);
        let read = sentences.iter().filter(|sentence| sentence.read).count();
        let claims = reading.claims.iter();
        let out = FileClaims {
            path: document.source.name.clone(),
            claims: claims.map(|(claim, judged)| ClaimOut::new(claim, judged, &knowledge.vocabulary)).collect(),
            sentences: SentencesOut { with_names: sentences.len(), read },
        };
        let table = match arguments.format {
            Format::Table => table(&document, &reading.claims, &sentences, &knowledge.vocabulary, columns, paint),
            Format::Json => String::new(),
        };
        let verdicts = reading.claims.iter().map(|(_, judged)| judged.verdict).collect();
        Ok(Audit { out, table, verdicts })
    };
    let mut out = io::BufWriter::new(io::stdout().lock());
    let mut report = ClaimsReport { version: VERSION, files: Vec::new() };
    let mut verdicts = Vec::new();
    files::each(&sources, work, |result| {
        match result {
            Ok(audit) => {
                out.write_all(audit.table.as_bytes())?;
                verdicts.extend(audit.verdicts);
                report.files.push(audit.out);
            }
            Err(trouble) => {
                out.flush()?;
                complain(&trouble);
                failed = true;
            }
        }
        Ok(())
    })?;
    match arguments.format {
        Format::Json => write_json(&mut out, &report)?,
        Format::Table => {
            let total = report.files.iter().fold(SentencesOut::default(), |sum, file| SentencesOut {
                with_names: sum.with_names + file.sentences.with_names,
                read: sum.read + file.sentences.read,
            });
            let files = counted(report.files.len(), "file", "files");
            let sum = format!("{} in {files}{}", counted(verdicts.len(), "claim", "claims"), shares(&verdicts));
            writeln!(out, "{}", paint.paint(Look::Title, &sum))?;
            writeln!(out, "{}", statistic(total))?;
        }
    }
    out.flush()?;
    Ok(if failed { Status::Failed } else { Status::Clean })
}

/// How many claims have which verdict.
fn shares(verdicts: &[Verdict]) -> String {
    let all = [
        (Verdict::Agrees, "agrees", "agree"),
        (Verdict::Variant, "agrees with a variant", "agree with a variant"),
        (Verdict::LessExact, "agrees, less exact", "agree, less exact"),
        (Verdict::Contradicts, "contradicts", "contradict"),
        (Verdict::Unknown, "unknown", "unknown"),
    ];
    let counts =
        all.map(|(verdict, one, many)| (verdicts.iter().filter(|known| **known == verdict).count(), one, many));
    let parts: Vec<String> = counts
        .into_iter()
        .filter(|(count, ..)| *count > 0)
        .map(|(count, one, many)| counted(count, one, many))
        .collect();
    if parts.is_empty() { String::new() } else { format!(": {}", parts.join(", ")) }
}

fn statistic(sentences: SentencesOut) -> String {
    let SentencesOut { with_names, read } = sentences;
    if with_names == 0 {
        return "No sentence has two or more names.".to_owned();
    }
    format!("Read: {read} of {} with two or more names.", counted(with_names, "sentence", "sentences"))
}

/// The table of one document: a line for each claim, then what was not read.
fn table(
    document: &Document,
    claims: &[(Claim, Judgement)],
    sentences: &[Sentence],
    vocabulary: &Vocabulary,
    columns: usize,
    paint: Paint,
) -> String {
    let Document { source, text } = document;
    let index = LineIndex::new(text);
    let line_of = |span: Span| index.position(span.start, text, fascicle_analysis::lines::Encoding::Utf8).line + 1;
    let mut out = format!("{}\n", paint.paint(Look::Title, &safe(&source.name)));
    for (claim, judged) in claims {
        let (verdict, look) = match judged.verdict {
            Verdict::Agrees => ("agrees", Look::Good),
            Verdict::Variant => ("variant", Look::Good),
            Verdict::LessExact => ("less exact", Look::Severity(Severity::Hint)),
            Verdict::Contradicts => ("CONTRADICTS", Look::Severity(Severity::Error)),
            Verdict::Unknown => ("unknown", Look::Faint),
        };
        let lead = format!("{:>6}  {:<10}  ", line_of(claim.span), claim.kind.word());
        let verdict = paint.paint(look, &format!("{verdict:<11}"));
        let said = said(claim, vocabulary);
        let width = columns.saturating_sub(lead.len() + 13).max(20);
        let mut lines: Vec<String> = textwrap::wrap(&said, width).into_iter().map(String::from).collect();
        if judged.verdict != Verdict::Agrees && !judged.why.is_empty() {
            lines.extend(textwrap::wrap(&safe(&judged.why), width).iter().map(|line| paint.paint(Look::Faint, line)));
        }
        for (number, line) in lines.iter().enumerate() {
            let _ = if number == 0 {
                writeln!(out, "{lead}{verdict}  {line}")
            } else {
                writeln!(out, "{:1$}{line}", "", lead.len() + 13)
            };
        }
    }
    if claims.is_empty() {
        let _ = writeln!(out, "        no claim");
    }
    let silent: Vec<&Sentence> = sentences.iter().filter(|sentence| !sentence.read).collect();
    if !silent.is_empty() {
        let _ = writeln!(out, "  {}", paint.paint(Look::Heading, "not read, with two or more names"));
        for sentence in silent {
            let flat = safe(&sentence.span.of(text).split_whitespace().collect::<Vec<_>>().join(" "));
            let width = columns.saturating_sub(10).max(20);
            let mut lines = textwrap::wrap(&flat, width).into_iter();
            let first = lines.next().unwrap_or_default();
            let cut = if lines.next().is_some() { " …" } else { "" };
            let _ =
                writeln!(out, "{:>6}  {}", line_of(sentence.span), paint.paint(Look::Faint, &format!("{first}{cut}")));
        }
    }
    let read = sentences.iter().filter(|sentence| sentence.read).count();
    let _ = writeln!(out, "  {}\n", statistic(SentencesOut { with_names: sentences.len(), read }));
    out
}

/// A claim in a line: its parts by what they are.
fn said(claim: &Claim, vocabulary: &Vocabulary) -> String {
    let part = |part: &fascicle_analysis::claims::Part| match &part.what {
        What::Entry(ids) => ids.iter().map(|id| vocabulary.name(*id).to_owned()).collect::<Vec<_>>().join(" or "),
        What::Segments(main, lesser) if *lesser == Segments::EMPTY => main.to_string(),
        What::Segments(main, lesser) => format!("{main} ({lesser})"),
        What::Word(word) => (*word).to_owned(),
        What::Sign(sign) => sign.clone(),
        What::Number(number) => number.to_string(),
    };
    let mut parts: Vec<String> =
        claim.parts.iter().map(|one| format!("{} {}", PartRole::word(one.role), part(one))).collect();
    if claim.negated {
        parts.insert(0, "not".to_owned());
    }
    if claim.hedged {
        parts.insert(0, "perhaps".to_owned());
    }
    parts.join(" · ")
}
