//! How often completion offers the right name first after four letters.
//!
//! `cargo run --release -p fascicle-tests --bin typed-report -- [--list]` types every name of a nerve or muscle in the clean
//! demo course and in the annotated corpus, and writes `tests/reports/completion.md`. `--list` prints what did not come
//! first.

use std::fmt::Write as _;
use std::process::ExitCode;

use fascicle_analysis::Knowledge;
use fascicle_analysis::features::completion::Names;
use fascicle_tests::typed::{self, Typed, Way};
use fascicle_tests::{corpus, course, markdown_files};

fn main() -> ExitCode {
    match report(std::env::args().any(|argument| argument == "--list")) {
        Ok(()) => ExitCode::SUCCESS,
        Err(problem) => {
            eprintln!("typed-report: {problem}");
            ExitCode::from(2)
        }
    }
}

fn report(list: bool) -> Result<(), String> {
    let vocabulary = fascicle_vocab::built_in();
    let names = Names::new(&vocabulary);
    let knowledge = Knowledge::new(vocabulary);
    let mut texts: Vec<(&str, Vec<String>)> = Vec::new();
    let paths = markdown_files(&course::clean_folder()).map_err(|error| error.to_string())?;
    texts.push(("clean demo course", paths.iter().map(|path| course::read(path)).collect::<Result<_, _>>()?));
    let corpus = corpus::documents("tuned")?;
    texts.push(("annotated corpus", corpus.into_iter().map(|document| document.text).collect()));
    let mut out = String::from(
        "# Completion after four letters\n\n\
         Made by `cargo run --release -p fascicle-tests --bin typed-report`. Every name of a nerve or muscle that a right text \
         writes out is typed anew, four letters of it, and what completion offers first is compared with the name. *From the \
         start*: its first four letters. *By words*: two letters of its first word and two of its last. *Written*: nothing \
         stands behind the place; *changed*: the rest of the text does. *Alike*: another name of the same text begins with the \
         same letters, so that these alone do not tell which is meant.\n\n\
         | texts | typed | text is | names | first | of the first 3 | of the first 5 | alike | first, of those not alike |\n\
         |---|---|---|---|---|---|---|---|---|\n",
    );
    for (what, texts) in &texts {
        for (way, way_name) in [(Way::FromTheStart, "from the start"), (Way::ByWords, "by words")] {
            for (alone, state) in [(true, "written"), (false, "changed")] {
                let of = |text: &String| typed::typed(text, way, alone, &names, &knowledge);
                let all: Vec<Typed> = texts.iter().flat_map(of).collect();
                let [first, three, five, count] = typed::counts(&all);
                let apart: Vec<Typed> = all.iter().filter(|typed| typed.twins == 0).cloned().collect();
                let [first_apart, _, _, count_apart] = typed::counts(&apart);
                let _ = writeln!(
                    out,
                    "| {what} | {way_name} | {state} | {count} | {} | {} | {} | {} | {} |",
                    share(first, count),
                    share(three, count),
                    share(five, count),
                    count - count_apart,
                    share(first_apart, count_apart),
                );
                if list {
                    for typed in all.iter().filter(|typed| typed.rank != Some(0)) {
                        let Typed { name, letters, rank, first, twins } = typed;
                        println!("{what}, {way_name}, {state}: {letters} for {name}: {first:?}, {rank:?}, {twins}");
                    }
                }
            }
        }
    }
    let path = fascicle_tests::folder().join("reports/completion.md");
    std::fs::write(&path, &out).map_err(|error| format!("{}: {error}", path.display()))?;
    println!("{out}");
    Ok(())
}

fn share(part: usize, whole: usize) -> String {
    let tenths = (part * 1000 + whole / 2).checked_div(whole).unwrap_or(0);
    format!("{}.{} %", tenths / 10, tenths % 10)
}
