//! How well claims are read: precision and recall on the annotated corpus.
//!
//! `cargo run -p fascicle-tests --bin corpus-report -- [tuned|held|all] [--list] [--kind KIND]`, or `--markdown` for the
//! text of `tests/reports/claims.md`. `--list` shows each miss and each false alarm with its place, its verdict and why;
//! `--kind` keeps to one kind of claim. A false statement is found when a contradiction is told at its mark; a
//! contradiction at a true or silent mark, or at unmarked text, is a false alarm.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::process::ExitCode;

use fascicle_analysis::Knowledge;
use fascicle_analysis::Span;
use fascicle_analysis::blocks::{self, BlockKind};
use fascicle_tests::corpus::{self, Document, Mark, Scored, Told, Truth};

/// What is counted for one kind of claim or one form of text.
#[derive(Default, Clone, Copy)]
struct Row {
    wrong: usize,
    found: usize,
    right_told: usize,
    right_offered: usize,
    alarms_true: usize,
    alarms_silent: usize,
    alarms_unmarked: usize,
    wrong_agreed: usize,
    truths: usize,
    agreed: usize,
    silent: usize,
}

impl Row {
    fn alarms(&self) -> usize {
        self.alarms_true + self.alarms_silent + self.alarms_unmarked
    }
}

/// A column of the report.
struct Column {
    /// Its head in the report that is kept.
    long: &'static str,
    /// Its head in a terminal.
    short: &'static str,
    /// How wide it is there.
    width: usize,
    /// What it says of a row.
    cell: fn(&Row) -> String,
}

const fn column(long: &'static str, short: &'static str, width: usize, cell: fn(&Row) -> String) -> Column {
    Column { long, short, width, cell }
}

/// The columns, in order.
const COLUMNS: [Column; 11] = [
    column("false", "-", 6, |row| row.wrong.to_string()),
    column("found", "found", 6, |row| row.found.to_string()),
    column("precision", "prec", 6, |row| ratio(row.found, row.found + row.alarms())),
    column("recall", "recall", 6, |row| ratio(row.found, row.wrong)),
    column("alarms: true", "alarm+", 6, |row| row.alarms_true.to_string()),
    column("silent", "alarm0", 6, |row| row.alarms_silent.to_string()),
    column("unmarked", "alarmU", 7, |row| row.alarms_unmarked.to_string()),
    column("false agreed", "-agreed", 7, |row| row.wrong_agreed.to_string()),
    column("offered", "right", 9, |row| format!("{}/{}", row.right_offered, row.right_told)),
    column("true", "+", 9, |row| row.truths.to_string()),
    column("agreed", "agreed", 6, |row| ratio(row.agreed, row.truths)),
];

fn main() -> ExitCode {
    match report() {
        Ok(()) => ExitCode::SUCCESS,
        Err(problem) => {
            eprintln!("corpus-report: {problem}");
            ExitCode::from(2)
        }
    }
}

fn report() -> Result<(), String> {
    let (mut part, mut list, mut only, mut markdown) = ("all".to_owned(), false, None, false);
    let mut arguments = std::env::args().skip(1);
    while let Some(argument) = arguments.next() {
        match argument.as_str() {
            "--list" => list = true,
            "--kind" => only = Some(arguments.next().ok_or("--kind needs a kind of claim")?),
            "--markdown" => markdown = true,
            "tuned" | "held" | "all" => part = argument,
            other => return Err(format!("`{other}` is none of tuned, held, all, --list, --kind KIND, --markdown")),
        }
    }
    let knowledge = Knowledge::new(fascicle_vocab::built_in());
    let tally = |part: &str| -> Result<Tally, String> {
        let documents = corpus::documents(part)?;
        let scored: Vec<Scored> = documents.iter().map(|document| corpus::score(document, &knowledge)).collect();
        Ok(Tally::new(&scored, only.as_deref(), list))
    };
    if markdown {
        print!("{HEAD}");
        for part in ["tuned", "held"] {
            print!("{}", tally(part)?.markdown(part));
        }
    } else {
        tally(&part)?.print(&part);
    }
    Ok(())
}

/// The beginning of the report that is kept.
const HEAD: &str = "\
# How well claims are read

The claim reader on the annotated corpus (`tests/corpus/README.md` says what it is and how far it can be trusted). Made by

```sh
cargo run -p fascicle-tests --bin corpus-report -- --markdown > tests/reports/claims.md
```

A false statement is *found* when a contradiction is told at its mark. *Precision*: of the contradictions told, how many
stand at a false statement; alarms are told at true, silent and unmarked text. *Recall*: of the false statements, how many
are found. *Agreed*: of the true statements, how many are read and found right. *Offered*: of the found ones whose right
answer the writer marked, how many offer it. The last table of each part goes by the numbers of the documents: 1 to 59 were written
before the reader was tuned, 60 to 129 for tuning, 130 to 153 for tuning in deliberately unusual wording, 154 to 173 in ordinary
wording. Those from 174 of `tuned/` and those from 30 of `held/` were written together, after all of that, every second one put aside.
What is found in a lot that has long been read for tuning says nothing of texts not met yet.
";

/// What is counted over one part of the corpus.
#[derive(Default)]
struct Tally {
    documents: usize,
    unmarked: usize,
    sentences: usize,
    sentences_read: usize,
    kinds: BTreeMap<String, Row>,
    forms: BTreeMap<String, Row>,
    lots: BTreeMap<String, Row>,
    all: Row,
}

impl Tally {
    /// Counts; with `list`, shows each miss and each false alarm on the way.
    fn new(scored: &[Scored], only: Option<&str>, list: bool) -> Self {
        let mut tally = Self { documents: scored.len(), ..Self::default() };
        for scored in scored {
            tally.add(scored, only, list);
        }
        tally
    }

    fn add(&mut self, scored: &Scored, only: Option<&str>, list: bool) {
        self.unmarked += scored.unmarked.len();
        self.sentences += scored.sentences.len();
        self.sentences_read += scored.sentences.iter().filter(|sentence| sentence.read).count();
        let blocks = blocks::blocks(&scored.document.text, fascicle_analysis::Form::Markdown);
        let form = |span: Span| {
            let block =
                blocks.list.iter().filter(|block| block.span.overlaps(span)).max_by_key(|block| block.span.start);
            block.map_or("nothing read", |block| form_word(block.kind)).to_owned()
        };
        for (mark, told) in &scored.marks {
            let kind = mark.kind.word();
            if only.is_some_and(|only| only != kind) {
                continue;
            }
            for row in self.rows(scored.document, kind, form(mark.span)) {
                count(row, mark, told);
            }
            if list {
                show_mark(scored.document, mark, told);
            }
        }
        for told in scored.unmarked.iter().filter(|told| told.contradicts()) {
            let kind = told.claim.kind.word();
            if only.is_some_and(|only| only != kind) {
                continue;
            }
            for row in self.rows(scored.document, kind, form(told.span())) {
                row.alarms_unmarked += 1;
            }
            if list {
                println!("ALARM unmarked {kind} {}", place(scored.document, told.span()));
                show_told(scored.document, told);
            }
        }
    }

    /// The rows in which a statement counts.
    fn rows(&mut self, document: &Document, kind: &str, form: String) -> [&mut Row; 4] {
        [
            self.kinds.entry(kind.to_owned()).or_default(),
            self.forms.entry(form).or_default(),
            self.lots.entry(lot(document).to_owned()).or_default(),
            &mut self.all,
        ]
    }

    fn statements(&self) -> usize {
        self.all.wrong + self.all.truths + self.all.silent
    }

    /// For a terminal.
    fn print(&self, part: &str) {
        println!("{part}: {} documents, {} marked statements", self.documents, self.statements());
        println!("claims read where no mark stands: {}", self.unmarked);
        println!(
            "sentences with two or more names: {}, read into claims: {} ({})",
            self.sentences,
            self.sentences_read,
            ratio(self.sentences_read, self.sentences)
        );
        println!();
        heading("kind");
        for (kind, row) in &self.kinds {
            line(kind, row);
        }
        line("all", &self.all);
        println!();
        heading("form");
        for (form, row) in &self.forms {
            line(form, row);
        }
        println!();
        heading("documents");
        for (lot, row) in &self.lots {
            line(lot, row);
        }
        println!();
        println!(
            "prec, recall: of contradictions told, of false statements found. alarm+ alarm0 alarmU: contradictions told"
        );
        println!(
            "at true, silent and unmarked text. -agreed: false statements read as agreeing. right: of the found ones"
        );
        println!("whose right answer is marked, how many offer it. agreed: true statements read as agreeing.");
    }

    /// A section of the report that is kept.
    fn markdown(&self, part: &str) -> String {
        let mut out = format!(
            "\n## `{part}/`\n\n{} documents, {} marked statements. Sentences (or table rows, items, captions) with two or \
             more names: {}; read into\nclaims: {} ({}). Claims read where no mark stands: {}.\n",
            self.documents,
            self.statements(),
            self.sentences,
            self.sentences_read,
            ratio(self.sentences_read, self.sentences),
            self.unmarked
        );
        for (first, rows) in [("kind", &self.kinds), ("form", &self.forms), ("documents", &self.lots)] {
            let heads: Vec<&str> = COLUMNS.iter().map(|column| column.long).collect();
            let _ = writeln!(out, "\n| {first} | {} |", heads.join(" | "));
            out += &"|---".repeat(COLUMNS.len() + 1);
            out += "|\n";
            for (name, row) in rows {
                out += &cells(name, row);
            }
            out += &cells("all", &self.all);
        }
        out
    }
}

fn cells(name: &str, row: &Row) -> String {
    let cells: Vec<String> = COLUMNS.iter().map(|column| (column.cell)(row)).collect();
    format!("| {name} | {} |\n", cells.join(" | "))
}

/// The lot to which a document belongs by its number: `tests/corpus/README.md` says how each was written.
fn lot(document: &Document) -> &'static str {
    let file = document.name.rsplit('/').next().unwrap_or_default();
    let number = file.split('-').next().and_then(|number| number.parse::<u32>().ok());
    match number {
        Some(1..=29) if document.name.starts_with("held") => "1 to 29",
        _ if document.name.starts_with("held") => "from 30",
        Some(1..=59) => "1 to 59",
        Some(60..=129) => "60 to 129",
        Some(130..=153) => "130 to 153",
        Some(154..=173) => "154 to 173",
        _ => "from 174",
    }
}

const fn form_word(kind: BlockKind) -> &'static str {
    match kind {
        BlockKind::Title | BlockKind::Heading(_) => "heading",
        BlockKind::Paragraph => "paragraph",
        BlockKind::Item(_) => "list item",
        BlockKind::Cell { .. } => "table cell",
        BlockKind::Term | BlockKind::Definition => "definition",
        BlockKind::Caption => "caption",
    }
}

fn count(row: &mut Row, mark: &Mark, told: &[Told]) {
    let contradictions = told.iter().filter(|told| told.contradicts()).count();
    match mark.truth {
        Truth::False => {
            row.wrong += 1;
            if contradictions > 0 {
                row.found += 1;
                if mark.right.is_some() {
                    row.right_told += 1;
                    row.right_offered += usize::from(offers_right(mark, told));
                }
            } else if told.iter().any(|told| told.claim.kind == mark.kind && told.agrees()) {
                row.wrong_agreed += 1;
            }
        }
        Truth::True => {
            row.truths += 1;
            row.alarms_true += contradictions;
            let agrees = told.iter().any(|told| told.claim.kind == mark.kind && told.agrees());
            row.agreed += usize::from(agrees && contradictions == 0);
        }
        Truth::Silent => {
            row.silent += 1;
            row.alarms_silent += contradictions;
        }
    }
}

/// Whether one of the remedies is what the writer marked as right; the dash of a range and capitals do not count.
fn offers_right(mark: &Mark, told: &[Told]) -> bool {
    let plain = |text: &str| text.to_lowercase().replace('–', "-").replace("the ", "");
    let Some(right) = mark.right.as_deref().map(plain) else { return false };
    told.iter().filter(|told| told.contradicts()).flat_map(|told| &told.judgement.remedies).any(|(_, text)| {
        let text = plain(text);
        text.contains(&right) || right.contains(&text)
    })
}

fn place(document: &Document, span: Span) -> String {
    format!("{}:{} {:?}", document.name, document.line(span.start), span.of(&document.text))
}

fn show_mark(document: &Document, mark: &Mark, told: &[Told]) {
    let contradicted = told.iter().any(Told::contradicts);
    let word = match mark.truth {
        Truth::False if !contradicted => "MISS",
        Truth::True if contradicted => "ALARM at true",
        Truth::Silent if contradicted => "ALARM at silent",
        Truth::True if !told.iter().any(|told| told.claim.kind == mark.kind && told.agrees()) => "UNREAD true",
        _ => return,
    };
    let right = mark.right.as_ref().map(|right| format!(" (right: {right})")).unwrap_or_default();
    println!("{word} {} {}{right}", mark.kind.word(), place(document, mark.span));
    for told in told {
        show_told(document, told);
    }
}

fn show_told(document: &Document, told: &Told) {
    let parts: Vec<String> = told
        .claim
        .parts
        .iter()
        .map(|part| format!("{} {:?}", part.role.word(), part.span.of(&document.text)))
        .collect();
    let flags = [(" negated", told.claim.negated), (" hedged", told.claim.hedged), (" all", told.claim.all)];
    let flags: String = flags.iter().filter(|(_, on)| *on).map(|(word, _)| *word).collect();
    println!(
        "      {} {}{flags} [{}] {}",
        told.judgement.verdict.word(),
        told.claim.kind.word(),
        parts.join(", "),
        told.judgement.why
    );
}

fn heading(first: &str) {
    print_line(first, |column| column.short.to_owned());
}

fn line(name: &str, row: &Row) {
    print_line(name, |column| (column.cell)(row));
}

fn print_line(first: &str, cell: impl Fn(&Column) -> String) {
    let cells: Vec<String> =
        COLUMNS.iter().map(|column| format!("{:>width$}", cell(column), width = column.width)).collect();
    println!("{first:<12} {}", cells.join(" "));
}

#[allow(clippy::cast_precision_loss)]
fn ratio(part: usize, whole: usize) -> String {
    if whole == 0 { "–".to_owned() } else { format!("{:.3}", part as f64 / whole as f64) }
}
