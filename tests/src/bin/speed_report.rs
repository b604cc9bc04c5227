//! What each stage of reading costs beside the Markdown parser alone and beside the names stage, on the same text in one
//! run.
//!
//! `cargo run --release -p fascicle-tests --bin speed-report -- [TEXT …]`. Without a TEXT it reads the annotated corpus,
//! without its marks, as one text. Each stage is run several times in turn with the others and its best time is taken, by
//! the time of the thread, so that what else the machine does matters little. The ratios can be compared between machines;
//! the times cannot.

use std::process::ExitCode;

use cpu_time::ThreadTime;
use fascicle_analysis::Knowledge;
use fascicle_analysis::blocks;
use fascicle_analysis::claims;
use fascicle_analysis::features::index::contents;
use fascicle_analysis::mentions::{self, Mentions};
use fascicle_analysis::misspellings;
use fascicle_analysis::resolve;
use fascicle_analysis::verdicts;
use fascicle_analysis::{Form, Memo, Settings, read_again};
use fascicle_tests::corpus;

/// How often each stage is run.
const ROUNDS: usize = 9;

fn main() -> ExitCode {
    match report() {
        Ok(()) => ExitCode::SUCCESS,
        Err(problem) => {
            eprintln!("speed-report: {problem}");
            ExitCode::from(2)
        }
    }
}

fn report() -> Result<(), String> {
    let knowledge = Knowledge::new(fascicle_vocab::built_in());
    let paths: Vec<String> = std::env::args().skip(1).collect();
    if paths.is_empty() {
        let documents = corpus::documents("all")?;
        let text: String = documents.iter().map(|document| document.text.clone() + "\n\n").collect();
        measure("annotated corpus", &text, Form::Markdown, &knowledge);
    }
    for path in paths {
        let text = std::fs::read_to_string(&path).map_err(|error| format!("{path}: {error}"))?;
        measure(&path, &text, Form::of_name(&path).unwrap_or(Form::Plain), &knowledge);
    }
    Ok(())
}

fn timed<T>(best: &mut f64, run: impl FnOnce() -> T) -> T {
    let begun = ThreadTime::now();
    let made = run();
    *best = best.min(begun.elapsed().as_secs_f64());
    made
}

fn measure(name: &str, text: &str, form: Form, knowledge: &Knowledge) {
    let vocabulary = &knowledge.vocabulary;
    let settings = Settings::default();
    let [mut parse, mut cut, mut find, mut mend, mut clear, mut claim, mut judge, mut index] = [f64::MAX; 8];
    let mut count = 0;
    for _ in 0..ROUNDS {
        let options = pulldown_cmark::Options::all();
        std::hint::black_box(timed(&mut parse, || pulldown_cmark::Parser::new_ext(text, options).count()));
        let blocks = timed(&mut cut, || blocks::blocks(text, form));
        let mut mentions: Vec<Mentions> = timed(&mut find, || {
            let of = |block: &blocks::Block| mentions::mentions(&block.plain.text, vocabulary, &knowledge.names);
            blocks.list.iter().map(of).collect()
        });
        let repairs = timed(&mut mend, || misspellings::repairs(&blocks, &mentions, knowledge, &settings));
        timed(&mut clear, || {
            misspellings::apply(&mut mentions, &repairs);
            resolve::resolve(&blocks, &mut mentions, vocabulary);
        });
        let list = timed(&mut claim, || claims::claims(&blocks, &mentions, knowledge));
        count = list.len();
        let judged = timed(&mut judge, || list.iter().map(|one| verdicts::judge(one, vocabulary)).collect::<Vec<_>>());
        std::hint::black_box(judged);
        std::hint::black_box(timed(&mut index, || contents(text, form, knowledge)));
    }
    println!("## {name}: {} bytes, {count} claims\n", text.len());
    println!("| stage | ms | MB/s | times the parser | times the names |\n|---|---|---|---|---|");
    let names = find + mend;
    let stages = [
        ("Markdown parser alone", parse),
        ("blocks", cut),
        ("finding names", find),
        ("misspellings", mend),
        ("names, both together", names),
        ("ambiguity", clear),
        ("claims", claim),
        ("verdicts", judge),
        ("claims and verdicts", claim + judge),
        ("contents for the index of a course", index),
    ];
    let size = f64::from(u32::try_from(text.len()).unwrap_or(u32::MAX)) / 1e6;
    for (stage, time) in stages {
        println!("| {stage} | {:.2} | {:.1} | {:.2} | {:.2} |", time * 1000.0, size / time, time / parse, time / names);
    }
    println!();
    reread(text, form, knowledge, &settings);
}

/// What reading costs after a word is typed in the middle, beside reading for the first time.
fn reread(text: &str, form: Form, knowledge: &Knowledge, settings: &Settings) {
    let mut edited = text.to_owned();
    let place = text.get(text.len() / 2..).and_then(|half| half.find(". ")).unwrap_or(0) + text.len() / 2;
    if !edited.is_char_boundary(place) {
        return;
    }
    edited.insert_str(place, " again");
    let [mut first, mut again] = [f64::MAX; 2];
    for _ in 0..ROUNDS {
        let mut memo = Memo::default();
        std::hint::black_box(timed(&mut first, || read_again(text, form, knowledge, settings, &mut memo)));
        std::hint::black_box(timed(&mut again, || read_again(&edited, form, knowledge, settings, &mut memo)));
    }
    println!("| reading | ms | ratio |\n|---|---|---|");
    for (what, time) in [("for the first time", first), ("again, with a word typed in the middle", again)] {
        println!("| {what} | {:.1} | {:.2} |", time * 1000.0, time / first);
    }
    println!();
}
