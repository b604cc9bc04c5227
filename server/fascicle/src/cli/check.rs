//! `fascicle check`: reads documents and says what is wrong, why, and what to do.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use std::sync::Arc;

use fascicle_analysis::allowances::Allowances;
use fascicle_analysis::claims::Claim;
use fascicle_analysis::consistency::{self, Usage};
use fascicle_analysis::course;
use fascicle_analysis::lines::{Encoding, LineIndex};
use fascicle_analysis::verdicts::Judgement;
use fascicle_analysis::{Finding, FindingKind, Form, Reading, Severity};

use super::courses::{Courses, Opened};
use super::excerpt::excerpt;
use super::files::{self, Document, FormName, Source};
use super::paint::{Look, Paint, columns, safe};
use super::report::{CheckReport, ElsewhereOut, FileFindings, FindingOut, VERSION, bytes, range};
use super::{Status, complain, fix, sarif};

/// How many fixes of a finding are shown to people.
const FIXES: usize = 3;

/// What to check and how to tell.
#[derive(Debug, clap::Args)]
pub struct Arguments {
    /// Files, folders (ignore files are respected), or `-` for standard input.
    #[arg(required = true, value_name = "PATH")]
    paths: Vec<PathBuf>,
    /// How to tell what is found.
    #[arg(long, value_name = "FORMAT", default_value = "human")]
    format: Format,
    /// Only findings of these kinds.
    #[arg(long, value_name = "KINDS", value_delimiter = ',')]
    only: Vec<Only>,
    /// Apply the fixes that need no decision. Files are replaced in one step; standard input is written, mended, to
    /// standard output.
    #[arg(long)]
    fix: bool,
    /// The form of documents whose name does not tell it.
    #[arg(long, value_name = "FORM", default_value = "markdown")]
    form: FormName,
}

/// A form of output.
#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
enum Format {
    /// For people.
    Human,
    /// JSON; the schema is published with the program.
    Json,
    /// SARIF 2.1.0.
    Sarif,
}

/// A kind of finding, as the command line calls it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
enum Only {
    /// How structures are called.
    #[value(alias = "name")]
    Names,
    /// What statements say.
    #[value(alias = "claim")]
    Claims,
    /// What two places of a course say.
    #[value(alias = "courses")]
    Course,
    /// Exam items and their keys.
    #[value(alias = "item")]
    Items,
    /// Generated blocks.
    #[value(alias = "block")]
    Blocks,
    /// Settings and overlays.
    #[value(alias = "setups")]
    Setup,
}

impl Only {
    const fn kind(self) -> FindingKind {
        match self {
            Self::Names => FindingKind::Name,
            Self::Claims => FindingKind::Claim,
            Self::Course => FindingKind::Course,
            Self::Items => FindingKind::Item,
            Self::Blocks => FindingKind::Block,
            Self::Setup => FindingKind::Setup,
        }
    }
}

/// What was found in one document.
struct Checked {
    /// The document, as it now is.
    document: Document,
    /// What is wrong with it, each with the places of the course that belong to it.
    findings: Vec<(Finding, Vec<ElsewhereOut>)>,
    /// What was read of it, without the findings.
    reading: Reading,
    /// The course that it belongs to.
    course: Arc<Opened>,
    /// How many fixes were applied.
    fixed: usize,
    /// Why they could not be applied.
    trouble: Option<String>,
}

/// Counts for the last line.
#[derive(Default)]
struct Sum {
    files: usize,
    files_with_findings: usize,
    by_severity: [usize; 4],
    fixable: usize,
    fixed: usize,
    files_fixed: usize,
    unread: usize,
}

/// Runs the command.
///
/// # Errors
/// Standard output could not be written.
pub fn run(arguments: &Arguments, paint: Paint) -> io::Result<Status> {
    let courses = Courses::new();
    let (mut sources, mut troubles) = files::find(&arguments.paths, arguments.form);
    courses.drop_excluded(&mut sources);
    for trouble in &troubles {
        complain(trouble);
    }
    let mends_input = arguments.fix && sources.iter().any(|source| source.path.is_none());
    if mends_input && (sources.len() > 1 || arguments.format != Format::Human) {
        complain("`--fix` with `-` writes the mended text to standard output: give it no other path and no `--format`");
        return Ok(Status::Failed);
    }
    let work = |document: Document| -> Result<Checked, String> {
        let course = courses.of(&document.source);
        Ok(check(document, arguments, course))
    };
    let mut sum = Sum::default();
    let mut list: Vec<Checked> = Vec::new();
    files::each(&sources, work, |result| {
        match result {
            Ok(checked) => list.push(checked),
            Err(trouble) => {
                complain(&trouble);
                troubles.push(trouble);
                sum.unread += 1;
            }
        }
        Ok(())
    })?;
    if arguments.wants(FindingKind::Course) {
        compare(&mut list);
    }
    if arguments.wants(FindingKind::Name) {
        compare_names(&mut list);
    }
    if arguments.wants(FindingKind::Setup) {
        let met = courses.met();
        list.splice(0..0, met.iter().flat_map(|(root, opened)| check_settings(root, opened)));
    }
    let mut failed = !troubles.is_empty();
    let mut out = io::BufWriter::new(io::stdout().lock());
    let mut report = CheckReport { version: VERSION, files: Vec::new() };
    let columns = columns();
    for checked in &list {
        if let Some(trouble) = &checked.trouble {
            complain(&format!("{}: {trouble}", safe(&checked.document.source.name)));
            failed = true;
        }
        sum.add(checked);
        match arguments.format {
            Format::Human if mends_input => {
                out.write_all(checked.document.text.as_bytes())?;
                let _ = io::stderr().write_all(tell(checked, columns, paint).as_bytes());
            }
            Format::Human => out.write_all(tell(checked, columns, paint).as_bytes())?,
            Format::Json | Format::Sarif => {
                let Document { source, text } = &checked.document;
                let index = LineIndex::new(text);
                let told = checked.findings.iter();
                let findings = told.map(|(finding, elsewhere)| FindingOut::new(finding, elsewhere, text, &index));
                report.files.push(FileFindings { path: source.name.clone(), findings: findings.collect() });
            }
        }
    }
    match arguments.format {
        Format::Human if mends_input => {
            let _ = writeln!(io::stderr(), "{}", sum.line(paint));
        }
        Format::Human => writeln!(out, "{}", sum.line(paint))?,
        Format::Json => write_json(&mut out, &report)?,
        Format::Sarif => write_json(&mut out, &sarif::log(&report, &troubles))?,
    }
    out.flush()?;
    Ok(match (failed, sum.files_with_findings) {
        (true, _) => Status::Failed,
        (false, 0) => Status::Clean,
        (false, _) => Status::Found,
    })
}

/// Writes a value as JSON, in lines for people on a terminal.
pub fn write_json(out: &mut impl Write, value: &impl serde::Serialize) -> io::Result<()> {
    use std::io::IsTerminal;
    let written = if io::stdout().is_terminal() {
        serde_json::to_writer_pretty(&mut *out, value)
    } else {
        serde_json::to_writer(&mut *out, value)
    };
    written?;
    out.write_all(b"\n")
}

impl Arguments {
    fn wants(&self, kind: FindingKind) -> bool {
        self.only.is_empty() || self.only.iter().any(|only| only.kind() == kind)
    }
}

/// The documents of each course, by their places in the list. A course is a folder with a settings file; without one, what
/// was found in one folder, or the files that were named.
fn courses(list: &[Checked]) -> Vec<Vec<usize>> {
    let mut groups: BTreeMap<(Option<PathBuf>, Option<PathBuf>), Vec<usize>> = BTreeMap::new();
    for (place, checked) in list.iter().enumerate() {
        let root = checked.course.course.root.clone();
        let folder = if root.is_some() { None } else { checked.document.source.folder.clone() };
        groups.entry((root, folder)).or_default().push(place);
    }
    groups.into_values().collect()
}

/// Compares what the documents of each course call things, in place of what each was told alone. Documents that lie in one
/// folder need not belong together in that: only a settings file makes them a course that has one way to call things.
fn compare_names(list: &mut [Checked]) {
    for places in courses(list).into_iter().filter(|places| places.len() > 1) {
        let members: Vec<&Checked> = places.iter().filter_map(|place| list.get(*place)).collect();
        let Some(first) = members.first() else { continue };
        let course = &first.course.course;
        if course.root.is_none() {
            continue;
        }
        let usages: Vec<&Usage> = members.iter().map(|checked| &checked.reading.usage).collect();
        let found = consistency::compare(&usages, course.knowledge(), &course.settings.reading);
        for (place, found) in places.into_iter().zip(found) {
            let Some(checked) = list.get_mut(place) else { continue };
            checked.findings.retain(|(finding, _)| !consistency::CODES.contains(&finding.code));
            let Document { source, text } = &checked.document;
            let allowed = Allowances::of(text, source.form);
            let told = found.into_iter().filter(|finding| !allowed.allows(finding));
            checked.findings.extend(told.map(|finding| (finding, Vec::new())));
            checked.findings.sort_by_key(|(finding, _)| (finding.span, finding.code));
        }
    }
}

/// Compares what the documents of each course state.
fn compare(list: &mut [Checked]) {
    let mut found: Vec<(usize, Finding, Vec<ElsewhereOut>)> = Vec::new();
    for places in courses(list) {
        let members: Vec<&Checked> = places.iter().filter_map(|place| list.get(*place)).collect();
        let Some(first) = members.first() else { continue };
        let claims: Vec<&[(Claim, Judgement)]> = members.iter().map(|checked| &*checked.reading.claims).collect();
        let course = &first.course.course;
        for one in course::findings(&claims, &course.knowledge().vocabulary, &course.settings.reading) {
            let elsewhere = one.elsewhere.iter().filter_map(|place| {
                let Document { source, text } = &members.get(place.document)?.document;
                Some(ElsewhereOut {
                    path: source.name.clone(),
                    bytes: bytes(place.span),
                    range: range(place.span, text, &LineIndex::new(text)),
                    message: place.says.clone(),
                })
            });
            let elsewhere = elsewhere.collect();
            found.extend(places.get(one.document).map(|place| (*place, one.finding, elsewhere)));
        }
    }
    for (place, finding, elsewhere) in found {
        let Some(checked) = list.get_mut(place) else { continue };
        let Document { source, text } = &checked.document;
        if !Allowances::of(text, source.form).allows(&finding) {
            checked.findings.push((finding, elsewhere));
            checked.findings.sort_by_key(|(finding, _)| (finding.span, finding.code));
        }
    }
}

/// What is wrong with the settings and the vocabulary files of a course, file by file.
fn check_settings(root: &Path, opened: &Arc<Opened>) -> Vec<Checked> {
    let mut by_file: BTreeMap<String, Vec<fascicle_vocab::Problem>> = BTreeMap::new();
    for problem in opened.course.problems() {
        by_file.entry(problem.file.clone()).or_default().push(problem);
    }
    let here = std::env::current_dir().and_then(|folder| folder.canonicalize()).unwrap_or_default();
    let checked = by_file.into_iter().map(|(file, problems)| {
        let path = root.join(file);
        let name = files::shown(path.strip_prefix(&here).unwrap_or(&path));
        let text = std::fs::read_to_string(&path).unwrap_or_default();
        let index = LineIndex::new(&text);
        let finding = |problem: &fascicle_vocab::Problem| Finding {
            code: "setting",
            kind: FindingKind::Setup,
            severity: Severity::Error,
            span: index.line(problem.line.saturating_sub(1) as usize, &text),
            message: problem.message.clone(),
            reason: Vec::new(),
            related: Vec::new(),
            fixes: Vec::new(),
            candidates: Vec::new(),
        };
        let findings = problems.iter().map(|problem| (finding(problem), Vec::new())).collect();
        let source = Source { name, path: Some(path), form: Form::Plain, folder: None };
        let document = Document { source, text };
        Checked { document, findings, reading: Reading::default(), course: Arc::clone(opened), fixed: 0, trouble: None }
    });
    checked.collect()
}

fn check(document: Document, arguments: &Arguments, opened: Arc<Opened>) -> Checked {
    let course = &opened.course;
    let read = |text: &str, form: Form| {
        let mut reading = fascicle_analysis::read(text, form, course.knowledge(), &course.settings.reading);
        let mut findings = std::mem::take(&mut reading.findings);
        findings.retain(|finding| arguments.wants(finding.kind));
        (findings, reading)
    };
    let (mut findings, mut reading) = read(&document.text, document.source.form);
    let (mut document, mut fixed, mut trouble) = (document, 0, None);
    if arguments.fix {
        let mut text = document.text.clone();
        for _ in 0..fix::ROUNDS {
            let (edits, count) = fix::safe_edits(&findings);
            let Some(new) = fix::apply(&text, &edits).filter(|new| count > 0 && *new != text) else { break };
            text = new;
            fixed += count;
            (findings, reading) = read(&text, document.source.form);
        }
        if fixed > 0 {
            let written = match &document.source.path {
                Some(path) => fix::replace(path, &document.text, &text),
                None => Ok(()),
            };
            match written {
                Ok(()) => document.text = text,
                Err(why) => {
                    (fixed, trouble) = (0, Some(why));
                    (findings, reading) = read(&document.text, document.source.form);
                }
            }
        }
    }
    let findings = findings.into_iter().map(|finding| (finding, Vec::new())).collect();
    Checked { document, findings, reading, course: opened, fixed, trouble }
}

/// The findings of a document for people.
fn tell(checked: &Checked, columns: usize, paint: Paint) -> String {
    let Document { source, text } = &checked.document;
    let index = LineIndex::new(text);
    let mut out = String::new();
    for (finding, elsewhere) in &checked.findings {
        let place = index.position(finding.span.start, text, Encoding::Utf32);
        let severity = paint.paint(Look::Severity(finding.severity), finding.severity.word());
        let place =
            paint.paint(Look::Title, &format!("{}:{}:{}", safe(&source.name), place.line + 1, place.column + 1));
        let code = paint.paint(Look::Faint, &format!("[{}]", finding.code));
        let head = format!("{place}: {severity}: {} {code}\n", safe(&finding.message));
        out.push_str(&head);
        out.push_str(&excerpt(text, &index, finding.span, finding.severity, columns, paint));
        let mut say = |word: &str, lines: &mut dyn Iterator<Item = String>| {
            for (number, line) in lines.enumerate() {
                let lead = if number == 0 { format!("{word}:") } else { String::new() };
                let first = format!("      {} ", paint.paint(Look::Heading, &format!("{lead:<5}")));
                let rest = " ".repeat(12);
                let width = columns.saturating_sub(12).max(20);
                for (place, line) in textwrap::wrap(&safe(&line), width).iter().enumerate() {
                    out.push_str(if place == 0 { &first } else { &rest });
                    out.push_str(line);
                    out.push('\n');
                }
            }
        };
        say("why", &mut finding.reason.iter().cloned());
        let related = finding.related.iter().map(|(span, remark)| {
            let place = index.position(span.start, text, Encoding::Utf32);
            format!("line {}: {remark}", place.line + 1)
        });
        let elsewhere =
            elsewhere.iter().map(|one| format!("{}:{}: {}", one.path, one.range.start.line + 1, one.message));
        say("see", &mut related.chain(elsewhere));
        say("fix", &mut finding.fixes.iter().take(FIXES).map(|fix| fix.title.clone()));
        out.push('\n');
    }
    out
}

impl Sum {
    fn add(&mut self, checked: &Checked) {
        self.files += 1;
        self.files_with_findings += usize::from(!checked.findings.is_empty());
        self.fixed += checked.fixed;
        self.files_fixed += usize::from(checked.fixed > 0);
        for (finding, _) in &checked.findings {
            let at = match finding.severity {
                Severity::Error => 0,
                Severity::Warning => 1,
                Severity::Information => 2,
                Severity::Hint => 3,
            };
            if let Some(count) = self.by_severity.get_mut(at) {
                *count += 1;
            }
            self.fixable += usize::from(finding.fixes.iter().any(|fix| fix.safe));
        }
    }

    /// The last line for people.
    fn line(&self, paint: Paint) -> String {
        let mut line = String::new();
        if self.fixed > 0 {
            let (fixes, files) = (counted(self.fixed, "fix", "fixes"), counted(self.files_fixed, "file", "files"));
            line = format!("{fixes} applied in {files}. ");
        }
        let all: usize = self.by_severity.iter().sum();
        let files = counted(self.files, "file", "files");
        if self.files == 0 {
            line.push_str("No document was read.");
        } else if all == 0 {
            line += &paint.paint(Look::Good, &format!("Nothing found in {files}."));
        } else {
            let words = [("error", "errors"), ("warning", "warnings"), ("remark", "remarks"), ("hint", "hints")];
            let counts = words.iter().zip(self.by_severity).filter(|(_, count)| *count > 0);
            let parts: Vec<String> = counts.map(|((one, many), count)| counted(count, one, many)).collect();
            let found = counted(all, "finding", "findings");
            let place = if self.files == 1 { files } else { format!("{} of {files}", self.files_with_findings) };
            line += &paint.paint(Look::Title, &format!("{found} in {place}"));
            let _ = write!(line, ": {}.", parts.join(", "));
        }
        if self.fixable > 0 && self.fixed == 0 {
            let _ = write!(line, " `--fix` mends {}.", self.fixable);
        }
        if self.unread > 0 && self.files > 0 {
            let _ = write!(line, " {} could not be read.", counted(self.unread, "file", "files"));
        }
        line
    }
}

/// A number with its noun.
pub fn counted(count: usize, one: &str, many: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { many })
}
