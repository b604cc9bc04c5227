//! How well claims are read: precision and recall on the annotated corpus.
//!
//! `cargo run -p fascicle-tests --bin corpus-report -- [tuned|held|all] [--list] [--kind KIND] [--mutate N]`. `--list` shows
//! each miss and each false alarm with its place, its verdict and why; `--kind` keeps to one kind of claim; `--mutate`
//! instead makes N false statements out of each part of a true one and counts those told. A false statement is
//! found when a contradiction is told at its mark; a contradiction at a true or silent mark, or at unmarked text, is a
//! false alarm.

use std::collections::BTreeMap;
use std::process::ExitCode;

use fascicle_analysis::Span;
use fascicle_analysis::blocks::{self, BlockKind};
use fascicle_analysis::reading::Knowledge;
use fascicle_tests::corpus::{self, Document, Mark, Scored, Told, Truth};
use fascicle_tests::mutation;

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
    let (mut part, mut list, mut only, mut each) = ("all".to_owned(), false, None, 0);
    let mut arguments = std::env::args().skip(1);
    while let Some(argument) = arguments.next() {
        match argument.as_str() {
            "--list" => list = true,
            "--kind" => only = Some(arguments.next().ok_or("--kind needs a kind of claim")?),
            "--mutate" => {
                each = arguments.next().and_then(|n| n.parse().ok()).ok_or("--mutate needs a number")?;
            }
            "tuned" | "held" | "all" => part = argument,
            other => return Err(format!("`{other}` is none of tuned, held, all, --list, --kind KIND, --mutate N")),
        }
    }
    let knowledge = Knowledge::new(fascicle_vocab::built_in());
    let documents = corpus::documents(&part)?;
    let scored: Vec<Scored> = documents.iter().map(|document| corpus::score(document, &knowledge)).collect();
    if each > 0 {
        mutate(&scored, &knowledge, each, list, only.as_deref());
        return Ok(());
    }

    let mut kinds: BTreeMap<String, Row> = BTreeMap::new();
    let mut forms: BTreeMap<String, Row> = BTreeMap::new();
    let mut all = Row::default();
    for scored in &scored {
        let blocks = blocks::blocks(&scored.document.text, fascicle_analysis::Form::Markdown);
        let form = |span: Span| {
            let block =
                blocks.list.iter().filter(|block| block.span.overlaps(span)).max_by_key(|block| block.span.start);
            block.map_or("nothing read", |block| form_word(block.kind)).to_owned()
        };
        for (mark, told) in &scored.marks {
            let kind = mark.kind.word();
            if only.as_deref().is_some_and(|only| only != kind) {
                continue;
            }
            for row in [kinds.entry(kind.to_owned()).or_default(), forms.entry(form(mark.span)).or_default(), &mut all]
            {
                count(row, mark, told);
            }
            if list {
                show_mark(scored.document, mark, told);
            }
        }
        for told in scored.unmarked.iter().filter(|told| told.contradicts()) {
            let kind = told.claim.kind.word();
            if only.as_deref().is_some_and(|only| only != kind) {
                continue;
            }
            for row in
                [kinds.entry(kind.to_owned()).or_default(), forms.entry(form(told.span())).or_default(), &mut all]
            {
                row.alarms_unmarked += 1;
            }
            if list {
                println!("ALARM unmarked {kind} {}", place(scored.document, told.span()));
                show_told(scored.document, told);
            }
        }
    }

    println!("{part}: {} documents, {} marked statements", documents.len(), all.wrong + all.truths + all.silent);
    println!("claims read where no mark stands: {}", scored.iter().map(|scored| scored.unmarked.len()).sum::<usize>());
    println!();
    heading("kind");
    for (kind, row) in &kinds {
        line(kind, row);
    }
    line("all", &all);
    println!();
    heading("form");
    for (form, row) in &forms {
        line(form, row);
    }
    println!();
    println!(
        "prec, recall: of contradictions told, of false statements found. alarm+ alarm0 alarmU: contradictions told"
    );
    println!("at true, silent and unmarked text. -agreed: false statements read as agreeing. right: of the found ones");
    println!("whose right answer is marked, how many offer it. agreed: true statements read as agreeing.");
    Ok(())
}

/// Counts the false statements made from true ones that are told, by kind of claim and by the part that was swapped.
fn mutate(scored: &[Scored], knowledge: &Knowledge, each: usize, list: bool, only: Option<&str>) {
    let mut rows: BTreeMap<(&str, &str), (usize, usize)> = BTreeMap::new();
    let (mut made, mut told) = (0, 0);
    for scored in scored {
        for mutant in mutation::mutants(scored, knowledge, each) {
            if only.is_some_and(|only| only != mutant.kind.word()) {
                continue;
            }
            let row = rows.entry((mutant.kind.word(), mutant.role)).or_default();
            row.0 += 1;
            row.1 += usize::from(mutant.told);
            made += 1;
            told += usize::from(mutant.told);
            if list && !mutant.told {
                println!(
                    "MISS {} {}:{} {:?} for {:?}",
                    mutant.kind.word(),
                    scored.document.name,
                    mutant.line,
                    mutant.is,
                    mutant.was
                );
            }
        }
    }
    println!("{:<12} {:<10} {:>6} {:>6} {:>6}", "kind", "swapped", "made", "told", "share");
    for ((kind, role), (made, told)) in &rows {
        println!("{kind:<12} {role:<10} {made:>6} {told:>6} {:>6}", ratio(*told, *made));
    }
    println!("{:<12} {:<10} {made:>6} {told:>6} {:>6}", "all", "", ratio(told, made));
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
    println!(
        "{first:<12} {:>6} {:>6} {:>6} {:>6} {:>6} {:>6} {:>7} {:>7} {:>9} {:>9} {:>6}",
        "-", "found", "prec", "recall", "alarm+", "alarm0", "alarmU", "-agreed", "right", "+", "agreed"
    );
}

fn line(name: &str, row: &Row) {
    println!(
        "{name:<12} {:>6} {:>6} {:>6} {:>6} {:>6} {:>6} {:>7} {:>7} {:>9} {:>9} {:>6}",
        row.wrong,
        row.found,
        ratio(row.found, row.found + row.alarms()),
        ratio(row.found, row.wrong),
        row.alarms_true,
        row.alarms_silent,
        row.alarms_unmarked,
        row.wrong_agreed,
        format!("{}/{}", row.right_offered, row.right_told),
        row.truths,
        ratio(row.agreed, row.truths)
    );
}

#[allow(clippy::cast_precision_loss)]
fn ratio(part: usize, whole: usize) -> String {
    if whole == 0 { "–".to_owned() } else { format!("{:.3}", part as f64 / whole as f64) }
}
