//! How many false statements are told that differ from a true one in one name.
//!
//! `cargo run -p fascicle-tests --bin mutation-report -- [tuned|held] [--each N] [--seed S] [--kind KIND] [--list]`. Takes
//! each true statement of the corpus that the reader reads as agreeing, swaps one part of it in the text (nerve, muscle,
//! segments, movement, parent …) for another of the vocabulary that makes it false by the graph, reads the text again and
//! counts how many are told. `--each` is how many swaps of each part are made, `--list` shows what was not told (of `tuned`
//! alone: `held` is not read for tuning). What it writes is `tests/reports/mutation.md`.

use std::collections::BTreeMap;
use std::process::ExitCode;

use fascicle_analysis::Knowledge;
use fascicle_tests::corpus;
use fascicle_tests::mutation;

/// Of one kind and one part: statements made, and statements told.
type Rows = BTreeMap<(&'static str, &'static str), (usize, usize)>;

struct Arguments {
    parts: Vec<String>,
    each: usize,
    seed: u64,
    kind: Option<String>,
    list: bool,
}

fn arguments() -> Result<Arguments, String> {
    let mut found = Arguments { parts: Vec::new(), each: 2, seed: 1, kind: None, list: false };
    let mut rest = std::env::args().skip(1);
    let number = |value: Option<String>, option: &str| -> Result<u64, String> {
        value.and_then(|value| value.parse().ok()).ok_or_else(|| format!("{option} needs a number"))
    };
    while let Some(argument) = rest.next() {
        match &*argument {
            "--each" => found.each = usize::try_from(number(rest.next(), "--each")?).map_err(|e| e.to_string())?,
            "--seed" => found.seed = number(rest.next(), "--seed")?,
            "--kind" => found.kind = Some(rest.next().ok_or("--kind needs a kind of claim")?),
            "--list" => found.list = true,
            "tuned" | "held" => found.parts.push(argument),
            other => return Err(format!("`{other}` is none of tuned, held, --each N, --seed S, --kind KIND, --list")),
        }
    }
    if found.parts.is_empty() {
        found.parts = vec!["tuned".to_owned(), "held".to_owned()];
    }
    Ok(found)
}

fn main() -> ExitCode {
    match arguments().and_then(|arguments| report(&arguments)) {
        Ok(()) => ExitCode::SUCCESS,
        Err(problem) => {
            eprintln!("mutation-report: {problem}");
            ExitCode::from(2)
        }
    }
}

fn report(arguments: &Arguments) -> Result<(), String> {
    let Arguments { each, seed, .. } = arguments;
    let knowledge = Knowledge::new(fascicle_vocab::built_in());
    println!("# True statements made false\n");
    println!(
        "Each true statement of the corpus that is read as agreeing has one part swapped in its text for another of the"
    );
    println!(
        "vocabulary that makes it false by the graph; the text is read again. *Told*: a contradiction is told at the"
    );
    println!(
        "statement. The graph decides what is false, so this measures the reading, not the facts. A part that is written"
    );
    println!(
        "as a pronoun, or stands outside the statement, is not swapped, nor is a statement at which something is told already."
    );
    println!("True statements that are not read at all (see claims.md) are not in here. Made by\n");
    println!(
        "```sh\ncargo run -p fascicle-tests --bin mutation-report -- --each {each} --seed {seed} > tests/reports/mutation.md\n```"
    );
    for part in &arguments.parts {
        let mut rows = Rows::new();
        for document in corpus::documents(part)? {
            let scored = corpus::score(&document, &knowledge);
            for mutant in mutation::mutants(&scored, &knowledge, *each, *seed) {
                if arguments.kind.as_deref().is_some_and(|kind| kind != mutant.kind.word()) {
                    continue;
                }
                let (made, told) = rows.entry((mutant.kind.word(), mutant.role)).or_default();
                *made += 1;
                *told += usize::from(mutant.told);
                if arguments.list && part == "tuned" && !mutant.told {
                    let (kind, line) = (mutant.kind.word(), mutant.line);
                    eprintln!("MISS {kind} {}:{line} {:?} for {:?}", document.name, mutant.is, mutant.was);
                }
            }
        }
        println!("\n## `{part}/`\n");
        println!("| kind | swapped | made | told | share |\n|---|---|---|---|---|");
        for ((kind, role), counts) in &rows {
            println!("{}", row(kind, role, *counts));
        }
        let sum = rows.values().fold((0, 0), |sum, counts| (sum.0 + counts.0, sum.1 + counts.1));
        println!("{}", row("all", "", sum));
    }
    Ok(())
}

#[allow(clippy::cast_precision_loss)]
fn row(kind: &str, role: &str, (made, told): (usize, usize)) -> String {
    let share = if made == 0 { "–".to_owned() } else { format!("{:.3}", told as f64 / made as f64) };
    format!("| {kind} | {role} | {made} | {told} | {share} |")
}
