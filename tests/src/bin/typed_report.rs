//! How often completion offers the right name first after four letters.
//!
//! `cargo run --release -p fascicle-tests --bin typed-report` types names into right texts (see `fascicle_tests::typed`),
//! and writes `tests/reports/completion.md`. `--list` prints what did not come first of the half that the weights were
//! fitted to, and writes nothing; `--evidence FILE` writes what `tests/weigh.py` fits the weights to; `--most N` draws so
//! many names from each half.

use std::fmt::Write as _;
use std::process::ExitCode;

use fascicle_analysis::Knowledge;
use fascicle_analysis::features::completion::Names;
use fascicle_analysis::features::completion::evidence::Sign;
use fascicle_tests::typed::{self, Document, Shape, State, Typed, Way};

/// Parts the documents and draws the names.
const SEED: u64 = 20_261_125;

/// How many names are drawn from each half.
const MOST: usize = 300;

fn main() -> ExitCode {
    match report() {
        Ok(()) => ExitCode::SUCCESS,
        Err(problem) => {
            eprintln!("typed-report: {problem}");
            ExitCode::from(2)
        }
    }
}

/// The value of an argument.
fn argument(name: &str) -> Option<String> {
    std::env::args().skip_while(|argument| argument != name).nth(1)
}

fn report() -> Result<(), String> {
    let vocabulary = fascicle_vocab::built_in();
    let names = Names::new(&vocabulary);
    let knowledge = Knowledge::new(vocabulary);
    let most = argument("--most").and_then(|most| most.parse().ok()).unwrap_or(MOST);
    let [tuned, scored] = typed::halves(typed::documents(&knowledge)?, SEED, most);
    let of = |half: &[Document], way, state, evidence| -> Vec<Typed> {
        half.iter().flat_map(|document| typed::typed(document, way, state, evidence, &names, &knowledge)).collect()
    };
    if let Some(path) = argument("--evidence") {
        return write_evidence(
            &path,
            &of(&tuned, Way::FromTheStart, State::Written, true),
            &of(&tuned, Way::ByWords, State::Changed, true),
            &of(&tuned, Way::ByEachWord, State::Written, true),
        );
    }
    if std::env::args().any(|argument| argument == "--list") {
        let way = match argument("--way").as_deref() {
            Some("words") => Way::ByWords,
            Some("each") => Way::ByEachWord,
            _ => Way::FromTheStart,
        };
        let all = of(&tuned, way, State::Written, false);
        for Typed { document, place, before, name, letters, rank, first, .. } in &all {
            if *rank != Some(0) {
                let rank = rank.map_or_else(|| "-".to_owned(), |rank| (rank + 1).to_string());
                println!(
                    "{document} {:?}: {before}[{letters}] {name}: {first:?}, {rank}, {}",
                    place.shape, place.twins
                );
            }
        }
        let [first, _, _, count] = typed::counts(all.iter().filter(|typed| typed.place.main));
        println!("nerves and muscles: {} of {count}", share(first, count));
        return Ok(());
    }
    let out = table(&tuned, &scored, of);
    let path = fascicle_tests::folder().join("reports/completion.md");
    std::fs::write(&path, &out).map_err(|error| format!("{}: {error}", path.display()))?;
    println!("{out}");
    Ok(())
}

fn table(tuned: &[Document], scored: &[Document], of: impl Fn(&[Document], Way, State, bool) -> Vec<Typed>) -> String {
    let mut out = format!(
        "# Completion after four letters\n\n\
         Made by `cargo run --release -p fascicle-tests --bin typed-report`. Names that right texts write out (the clean demo \
         course and the tuned part of the annotated corpus, without statements that are marked as false or silent) are typed \
         anew, four letters of each, and what completion offers first is compared with what the author meant. The documents \
         are parted in two halves by a seed ({SEED}): the weights of completion were fitted to the half *fitted*, the half \
         *scored* is only scored. Stems and options of exam items, which assert nothing, are counted apart.\n\n\
         *From the start*: the first four letters of a name. *By words*: two of its first word and two of its last. \
         *By each word*: beginnings of all its words, two letters of each of two words, two, one and one of three, one of \
         each of the first four. *Written*: nothing stands behind the place yet; *changed*: the rest of the text does. *In the author's words*: what \
         is inserted is the author's own wording to the letter, not only the same structure. *Apart*: names that no other \
         name of the same section begins like, so that four letters can tell which is meant.\n\n\
         ## Nerves and muscles\n\n\
         | half | typed | text is | names | first | of the first 3 | of the first 5 | in the author's words | apart | first, \
         of those apart |\n|---|---|---|---|---|---|---|---|---|---|\n",
    );
    let mut rest = String::from(
        "\n## By form and kind\n\nTyped from the start, the text being written.\n\n\
         | half | names | number | first | of the first 3 |\n|---|---|---|---|---|\n",
    );
    for (half, half_name) in [(scored, "scored"), (tuned, "fitted")] {
        for (way, way_name) in
            [(Way::FromTheStart, "from the start"), (Way::ByWords, "by words"), (Way::ByEachWord, "by each word")]
        {
            for (state, state_name) in [(State::Written, "written"), (State::Changed, "changed")] {
                let all = of(half, way, state, false);
                let main = || all.iter().filter(|typed| typed.place.main);
                let [first, three, five, count] = typed::counts(main());
                let same = main().filter(|typed| typed.same_words).count();
                let [first_apart, _, _, count_apart] = typed::counts(main().filter(|typed| !typed.place.twins));
                let _ = writeln!(
                    out,
                    "| {half_name} | {way_name} | {state_name} | {count} | {} | {} | {} | {} | {count_apart} | {} |",
                    share(first, count),
                    share(three, count),
                    share(five, count),
                    share(same, count),
                    share(first_apart, count_apart),
                );
                if (way, state) != (Way::FromTheStart, State::Written) {
                    continue;
                }
                let mut row = |what: &str, list: &mut dyn Iterator<Item = &Typed>| {
                    let [first, three, _, count] = typed::counts(list);
                    let (first, three) = (share(first, count), share(three, count));
                    let _ = writeln!(rest, "| {half_name} | {what} | {count} | {first} | {three} |");
                };
                for (shape, what) in Shape::ALL.into_iter().zip(["prose", "lists", "tables", "headings"]) {
                    let what = format!("nerves and muscles in {what}");
                    row(&what, &mut main().filter(|typed| typed.place.shape == shape));
                }
                let is_exam = |typed: &&Typed| typed.place.shape == Shape::Exam;
                row("all kinds in exam items", &mut all.iter().filter(is_exam));
                let mut others = all.iter().filter(|typed| !typed.place.main && !is_exam(typed));
                row("joints, landmarks, skin, groups, plexuses", &mut others);
            }
        }
    }
    out + &rest
}

/// A line for each structure that was found: the number of the name, whether it is a nerve's or muscle's, whether it is the
/// right structure, and the signs that are not 0.
fn write_evidence(path: &str, first: &[Typed], second: &[Typed], third: &[Typed]) -> Result<(), String> {
    let mut out = Sign::ALL.iter().map(|sign| sign.word()).collect::<Vec<_>>().join(" ");
    out.push('\n');
    for (number, typed) in first.iter().chain(second).chain(third).enumerate() {
        for (right, evidence) in &typed.evidence {
            let _ = write!(out, "{number} {} {}", u8::from(typed.place.main), u8::from(*right));
            for (sign, value) in evidence.iter().enumerate().filter(|(_, value)| **value != 0.0) {
                let _ = write!(out, " {sign}:{value}");
            }
            out.push('\n');
        }
    }
    std::fs::write(path, out).map_err(|error| format!("{path}: {error}"))
}

fn share(part: usize, whole: usize) -> String {
    let tenths = (part * 1000 + whole / 2).checked_div(whole).unwrap_or(0);
    format!("{}.{} %", tenths / 10, tenths % 10)
}
