//! How well misspelled names are found: found, right candidate first, right in the first three, false alarms, speed,
//! memory; beside a general-purpose spelling library that has the same words.
//!
//! `cargo run --release -p fascicle-tests --bin names-report -- [--each N] [--seed S] [--list] [--untimed] [TEXT …]`. `--each` is the
//! number of slips of each model and kind, `--list` shows what was missed and what was marked, `--untimed` leaves the times out. Each TEXT is a file of right
//! text, for false alarms; `tests/texts.py` makes them. What is marked in such a text is a slip of its author or a false
//! alarm: a reader has judged which, and `tests/reports/names-right.txt` has what was judged right.

use std::collections::BTreeMap;
use std::process::ExitCode;
use std::time::Instant;

use cpu_time::ThreadTime;
use fascicle_analysis::Knowledge;
use fascicle_analysis::blocks;
use fascicle_analysis::mentions;
use fascicle_analysis::misspellings;
use fascicle_analysis::{Finding, Form, Settings};
use fascicle_model::Entry;
use fascicle_tests::slips::{self, Left, Model, Phrases, Random};
use symspell::{SymSpell, UnicodeStringStrategy, Verbosity};

/// Sentences in which a name stands. None tells what it may be.
const CARRIERS: &[&str] = &[
    "The {} was shown on the second table.",
    "We went back to the {} after the break.",
    "Please label the {} in your drawing.",
    "Next comes the {}.",
    "Most students could not find the {} at first.",
    "{}",
];

/// What stands before the tables.
const HEAD: &str = "# How well misspelled names are found

Names of the vocabulary are misspelled in twelve ways by a generator (`tests/src/slips.rs`, seeded), put into sentences that
tell nothing about them, under a heading that names something else of the same region, and read. Made by

```sh
python3 tests/texts.py package debian ontologies texts    # says which packages to get
cat tests/course-clean/*/*.md > texts/course.md
cargo run --release -p fascicle-tests --bin names-report -- --each 100 --seed 1 \\
    texts/{novel,sayings,glosses,tissues}.txt texts/course.md > tests/reports/names.md
```

*Found*: something is told at the slip. *First*, *first three*: the name that was meant is the first candidate, or among the
first three; or the first fix restores it letter by letter. *Fix*: the first fix restores it. *Library*: a general-purpose
spelling library (the crate `symspell`, edit distance 2) with all words of the vocabulary, each as often as names have it,
asked for the name alone, without a sentence round it; every word that it does not have counts as found, so in a lecture it would
mark the words of plain English too. Slips that are names themselves are not counted.

*Word left out* counts what is left of a name only where that is broken, by this rule (`Phrases::left` in the generator), which
looks at the part of the name between words like *of* from which the word was taken:

- Without a word like *of*, or without a whole part, it is broken: *skin popliteal fossa*, *muscles of*, *of back*.
- An English part ends in its noun. Without a word before that it is a wider term (*muscles of forearm* for *radial muscles of
  forearm*) and right. Without the noun it is broken (*posterior of thigh*), unless the word that ends it now does so in other names
  too (*mandibular arch* for *mandibular arch muscles*), or the noun only tells the kind and ends the name (*the inferior alveolar*).
- A Latin part begins with its noun. Without its last word it is a shorter name (*musculus triceps*) and right; without its first it
  is broken; without one between it is broken where one structure alone can be meant (*extensor carpi longus*), and open, which is
  not counted either, where several can. *Musculus* and its cases may always go.

Because notes leave nouns out on purpose, a word is left out only in sentences. Where a right phrase is left, nothing should be
told; how often something is, stands below.
";

/// What stands behind the tables.
const TAIL: &str = "## What remains, and why

- *Word left out.* What is missed begins or ends as some name does (*clavicular head of major*), or has a wider term beside it. Where
  several names fill the hole (*of back*, *muscles of*), all are offered and the first is only the likeliest here.
- *Wrong Latin ending.* What comes out is often another right form of the word (*gluteus* for *glutei*) or a name of its own before
  a noun (*mentalis protuberance*); by itself it is no error.
- *Word split.* Two right words side by side (*snuff box*) are told only where the rest of a name speaks for it.
- *Two slips.* Two edits in a short word without neighbours (*elowb*, *ahplux*) could mean too many words.
- *Letter dropped*, *vowel confused*, *as it sounds.* A few come out as everyday words in a phrase that is possible.
- False alarms on UBERON's descriptions are right words that no list has: older spellings, words of animals' anatomy, Latin in
  English. Which marks are slips and which are false alarms was judged by reading each in its sentence.

Times are those of one core; the ratio to the Markdown parser, measured over the same bytes
in the same run, is the figure to compare. The parser has little to do in plain paragraphs, so the ratio is high there.
";

#[derive(Default, Clone, Copy)]
struct Row {
    made: u32,
    found: u32,
    first: u32,
    three: u32,
    restored: u32,
    other_found: u32,
    other_first: u32,
    other_three: u32,
}

impl Row {
    fn add(&mut self, other: Self) {
        self.made += other.made;
        self.found += other.found;
        self.first += other.first;
        self.three += other.three;
        self.restored += other.restored;
        self.other_found += other.other_found;
        self.other_first += other.other_first;
        self.other_three += other.other_three;
    }

    fn line(&self, name: &str) -> String {
        let share = |count: u32| format!("{:5.1}", 100.0 * f64::from(count) / f64::from(self.made.max(1)));
        format!(
            "| {name} | {} | {} | {} | {} | {} | {} | {} | {} |",
            self.made,
            share(self.found),
            share(self.first),
            share(self.three),
            share(self.restored),
            share(self.other_found),
            share(self.other_first),
            share(self.other_three)
        )
    }
}

struct Arguments {
    each: usize,
    seed: u64,
    list: bool,
    /// No times are taken.
    untimed: bool,
    texts: Vec<String>,
}

fn arguments() -> Arguments {
    let mut found = Arguments { each: 40, seed: 1, list: false, untimed: false, texts: Vec::new() };
    let mut rest = std::env::args().skip(1);
    while let Some(argument) = rest.next() {
        match &*argument {
            "--each" => found.each = rest.next().and_then(|number| number.parse().ok()).unwrap_or(found.each),
            "--seed" => found.seed = rest.next().and_then(|number| number.parse().ok()).unwrap_or(found.seed),
            "--list" => found.list = true,
            "--untimed" => found.untimed = true,
            _ => found.texts.push(argument),
        }
    }
    found
}

fn main() -> ExitCode {
    let arguments = arguments();
    let start = Instant::now();
    let knowledge = Knowledge::new(fascicle_vocab::built_in());
    let ready = start.elapsed().as_secs_f64() * 1000.0;
    println!("{HEAD}");
    println!(
        "Index: {} words that a slip may be meant for, {:.2} MB with the lists of right words, ready {ready:.0} ms after the start.\n",
        knowledge.spelling.len(),
        megabytes(knowledge.spelling.bytes())
    );
    slips(&arguments, &knowledge);
    let mut texts = Vec::new();
    for path in &arguments.texts {
        match std::fs::read_to_string(path) {
            Ok(text) => texts.push((path.as_str(), text)),
            Err(error) => {
                eprintln!("{path}: {error}");
                return ExitCode::FAILURE;
            }
        }
    }
    texts.sort_by_key(|(path, _)| Form::of_name(path) == Some(Form::Markdown));
    alarms(&texts, &knowledge, arguments.list);
    if !arguments.untimed {
        speeds(&texts, &knowledge);
    }
    println!("\n{TAIL}");
    ExitCode::SUCCESS
}

fn megabytes(bytes: usize) -> f64 {
    f64::from(u32::try_from(bytes / 1000).unwrap_or(u32::MAX)) / 1000.0
}

/// A name of the vocabulary that slips are made of.
struct Subject {
    kind: &'static str,
    text: String,
    ids: Vec<String>,
    /// Another name of the same region.
    beside: String,
}

fn subjects(knowledge: &Knowledge) -> Vec<Subject> {
    let mut by_text: BTreeMap<String, Subject> = BTreeMap::new();
    for entry in knowledge.vocabulary.entries() {
        let kind = entry.kind.word();
        if matches!(kind, "movement" | "root") {
            continue;
        }
        for name in &entry.names {
            let plain = name.text.bytes().all(|c| c.is_ascii_lowercase() || c == b' ');
            if name.standing.word() == "abbreviation" || !plain || name.text.len() < 5 {
                continue;
            }
            let subject = by_text.entry(name.text.clone()).or_insert_with(|| Subject {
                kind,
                text: name.text.clone(),
                ids: Vec::new(),
                beside: neighbour(entry, knowledge),
            });
            subject.ids.push(entry.id.clone());
        }
    }
    by_text.into_values().collect()
}

/// The name of the next entry of the same region.
fn neighbour(entry: &Entry, knowledge: &Knowledge) -> String {
    let same = |other: &&Entry| other.region == entry.region && other.id > entry.id;
    let next = knowledge.vocabulary.entries().iter().filter(same).min_by_key(|other| &other.id);
    next.map_or_else(|| "radius".to_owned(), |other| other.name().to_owned())
}

fn slips(arguments: &Arguments, knowledge: &Knowledge) {
    let subjects = subjects(knowledge);
    let library = library(knowledge);
    let mut kinds: Vec<&str> = subjects.iter().map(|subject| subject.kind).collect();
    kinds.sort_unstable();
    kinds.dedup();
    let mut random = Random::new(arguments.seed);
    let mut by_model: BTreeMap<Model, Row> = BTreeMap::new();
    let mut by_kind: BTreeMap<&str, Row> = BTreeMap::new();
    let mut names_again = 0;
    let mut right_left: BTreeMap<Left, Row> = BTreeMap::new();
    let all_names = knowledge.vocabulary.entries().iter();
    let phrases = Phrases::new(all_names.flat_map(|entry| entry.names.iter().map(|name| (&*name.text, &*entry.id))));
    let mut time = std::time::Duration::ZERO;
    let mut other_time = std::time::Duration::ZERO;
    for kind in kinds {
        let of_kind: Vec<&Subject> = subjects.iter().filter(|subject| subject.kind == kind).collect();
        for model in Model::ALL {
            let mut made = 0;
            for _ in 0..arguments.each * 20 {
                if made == arguments.each {
                    break;
                }
                let Some(subject) = random.of(&of_kind) else { break };
                let left_out = if model == Model::Lost { slips::lost(&subject.text, &mut random) } else { None };
                let slip = match left_out {
                    Some(at) => Some(slips::without(&subject.text.split(' ').collect::<Vec<_>>(), at)),
                    None if model == Model::Lost => None,
                    None => model.slip(&subject.text, &mut random),
                };
                let Some(slip) = slip else { continue };
                if !knowledge.names.lookup(&slip).is_empty() {
                    names_again += 1;
                    continue;
                }
                // Notes leave nouns out on purpose, so a word is left out only in sentences.
                let carriers = if left_out.is_some() { &CARRIERS[..CARRIERS.len() - 1] } else { CARRIERS };
                let carrier = random.of(carriers).copied().unwrap_or("{}");
                if let Some(left) =
                    left_out.map(|at| phrases.left(&subject.text, at)).filter(|left| *left != Left::Broken)
                {
                    let mut row = Row { made: 1, ..Row::default() };
                    ours(&mut row, carrier, subject, &slip, knowledge, None);
                    if arguments.list {
                        println!("left {left:?}: {slip} <- {}: {}", subject.text, row.found);
                    }
                    right_left.entry(left).or_default().add(row);
                    continue;
                }
                made += 1;
                let mut row = Row { made: 1, ..Row::default() };
                let begun = Instant::now();
                ours(&mut row, carrier, subject, &slip, knowledge, arguments.list.then_some(model));
                time += begun.elapsed();
                let begun = Instant::now();
                theirs(&mut row, subject, &slip, &library);
                other_time += begun.elapsed();
                by_model.entry(model).or_default().add(row);
                by_kind.entry(kind).or_default().add(row);
            }
        }
    }
    println!(
        "Names: {}. Slips that were names themselves and were not counted: {names_again}. Seed {}.\n",
        subjects.len(),
        arguments.seed
    );
    let of = |left: Left| right_left.get(&left).copied().unwrap_or_default();
    let (right, open) = (of(Left::Right), of(Left::Open));
    println!(
        "Words left out after which a right phrase is left, not counted: {}, of which something was told of {}; after which \
         several structures may be meant, not counted: {}, told {}.\n",
        right.made, right.found, open.made, open.found
    );
    let head = "| made | found % | first % | first three % | fix % | library: found % | first % | first three % |\n| --- | --- | --- | --- | --- | --- | --- | --- | --- |";
    println!("## By the way of misspelling\n");
    println!("| slip {head}");
    let mut all = Row::default();
    let mut letters = Row::default();
    for (model, row) in &by_model {
        println!("{}", row.line(model.word()));
        all.add(*row);
        if !matches!(model, Model::Lost | Model::Order) {
            letters.add(*row);
        }
    }
    println!("{}", letters.line("all but left out and order"));
    println!("{}\n", all.line("all"));
    println!("## By the kind of structure\n");
    println!("| kind {head}");
    for (kind, row) in &by_kind {
        println!("{}", row.line(kind));
    }
    let each = |time: std::time::Duration| time.as_secs_f64() * 1e6 / f64::from(all.made.max(1));
    println!(
        "\nTime for a text with a slip: {:.0} µs; library, the name alone: {:.0} µs.\n",
        each(time),
        each(other_time)
    );
}

fn name_findings(text: &str, form: Form, knowledge: &Knowledge) -> Vec<Finding> {
    let blocks = blocks::blocks(text, form);
    let mentions: Vec<mentions::Mentions> = blocks
        .list
        .iter()
        .map(|block| mentions::mentions(&block.plain.text, &knowledge.vocabulary, &knowledge.names))
        .collect();
    let repairs = misspellings::repairs(&blocks, &mentions, knowledge, &Settings::default());
    misspellings::findings(&blocks, &repairs)
}

fn ours(row: &mut Row, carrier: &str, subject: &Subject, slip: &str, knowledge: &Knowledge, list: Option<Model>) {
    let head = format!("# Notes on the {}\n\n", subject.beside);
    let from = head.len() + carrier.find("{}").unwrap_or(0);
    let carrier = format!("{head}{carrier}");
    let text = carrier.replace("{}", slip);
    let here: Vec<Finding> = name_findings(&text, Form::Markdown, knowledge)
        .into_iter()
        .filter(|finding| finding.span.start < from + slip.len() && from < finding.span.end)
        .collect();
    let mut restored = text.clone();
    let mut edits: Vec<_> =
        here.iter().filter_map(|finding| finding.fixes.first()).flat_map(|fix| fix.edits.clone()).collect();
    edits.sort_by_key(|edit| edit.span);
    for edit in edits.iter().rev() {
        restored.replace_range(edit.span.start..edit.span.end, &edit.text);
    }
    let is_restored = restored == carrier.replace("{}", &subject.text);
    let place = here.iter().filter_map(|finding| {
        finding.candidates.iter().position(|candidate| {
            subject.ids.contains(&candidate.id)
                || candidate.id.is_empty() && subject.text.split(' ').any(|word| word == candidate.name)
        })
    });
    let place = if is_restored { Some(0) } else { place.min() };
    row.found += u32::from(!here.is_empty());
    row.first += u32::from(place == Some(0));
    row.three += u32::from(place.is_some_and(|place| place < 3));
    row.restored += u32::from(is_restored);
    if let Some(model) = list
        && place != Some(0)
    {
        let told: Vec<String> = here
            .iter()
            .map(|finding| {
                let names: Vec<String> =
                    finding.candidates.iter().map(|one| format!("{} {:.2}", one.name, one.score)).collect();
                format!("{} [{}]", finding.message, names.join(", "))
            })
            .collect();
        println!("{}: {slip} <- {}: {}", model.word(), subject.text, told.join(" "));
    }
}

/// A general-purpose spelling library with the vocabulary's words, each as often as names have it.
fn library(knowledge: &Knowledge) -> SymSpell<UnicodeStringStrategy> {
    let mut count: BTreeMap<String, u32> = BTreeMap::new();
    for entry in knowledge.vocabulary.entries() {
        for name in &entry.names {
            for word in name.text.split([' ', '-']) {
                *count.entry(word.to_lowercase()).or_default() += 1;
            }
        }
    }
    let mut library = SymSpell::default();
    for (word, count) in count {
        library.load_dictionary_line(&format!("{word} {count}"), 0, 1, " ");
    }
    library
}

fn theirs(row: &mut Row, subject: &Subject, slip: &str, library: &SymSpell<UnicodeStringStrategy>) {
    let words: Vec<&str> = slip.split(' ').collect();
    let suggestions: Vec<Vec<String>> = words
        .iter()
        .map(|word| library.lookup(word, Verbosity::All, 2).into_iter().map(|one| one.term).collect())
        .collect();
    let unknown =
        |at: usize| suggestions.get(at).is_none_or(|list| list.first().map(String::as_str) != words.get(at).copied());
    let found = (0..words.len()).any(unknown);
    let compound = library.lookup_compound(slip, 2).first().map(|one| one.term.clone()).unwrap_or_default();
    let first = found && compound == subject.text;
    let meant: Vec<&str> = subject.text.split(' ').collect();
    let three = found
        && (first
            || words.len() == meant.len()
                && suggestions.iter().zip(&meant).all(|(list, meant)| list.iter().take(3).any(|one| one == meant)));
    row.other_found += u32::from(found);
    row.other_first += u32::from(first);
    row.other_three += u32::from(three);
}

/// What was judged right by a reader although it was marked: the text's name and the marked words.
const RIGHT: &str = include_str!("../../reports/names-right.txt");

/// What is marked in right text.
fn alarms(texts: &[(&str, String)], knowledge: &Knowledge, list: bool) {
    println!("## Right text\n");
    println!("| text | words | marked | slips of the text itself | false alarms | one in … words |");
    println!("| --- | --- | --- | --- | --- | --- |");
    let mut told = String::new();
    for (path, text) in texts {
        let words = text.split_whitespace().count();
        let name = path.rsplit('/').next().unwrap_or(path);
        let stem = name.split('.').next().unwrap_or(name);
        let is_right = |written: &str| {
            let judged = |line: &str| line.split_once(": ") == Some((stem, written));
            RIGHT.lines().any(judged)
        };
        let mut right = Vec::new();
        let findings = name_findings(text, Form::of_name(path).unwrap_or(Form::Plain), knowledge);
        for finding in &findings {
            let written = finding.span.of(text);
            if is_right(written) {
                right.push(written);
            }
            if list {
                let line = text.get(..finding.span.start).unwrap_or_default().matches('\n').count() + 1;
                println!("{name}:{line}: {} {}: {}", written, finding.severity.word(), finding.message);
            }
        }
        let rate = words.checked_div(right.len()).map_or_else(|| "–".to_owned(), |words| words.to_string());
        let slips = findings.len() - right.len();
        println!("| {name} | {words} | {} | {slips} | {} | {rate} |", findings.len(), right.len());
        if !right.is_empty() {
            told.extend(["False alarms in ", name, ": ", &right.join(", "), ".\n"]);
        }
    }
    println!("\n{told}");
}

/// Times over each text: as often as it takes for a megabyte, each time anew.
fn speeds(texts: &[(&str, String)], knowledge: &Knowledge) {
    println!("## Speed\n");
    println!("| text | MB | parser MB/s | reading names MB/s | misspellings MB/s | misspellings, parser's times |");
    println!("| --- | --- | --- | --- | --- | --- |");
    for (path, text) in texts {
        let name = path.rsplit('/').next().unwrap_or(path);
        speed(name, text, Form::of_name(path).unwrap_or(Form::Plain), knowledge);
    }
}

fn speed(name: &str, text: &str, form: Form, knowledge: &Knowledge) {
    let size = megabytes(text.len());
    let passes = 1_000_000 / text.len().max(1) + 1;
    let best = |run: &mut dyn FnMut()| {
        let rounds = (0..7).map(|_| {
            let begun = ThreadTime::now();
            for _ in 0..passes {
                run();
            }
            begun.elapsed().as_secs_f64() / f64::from(u32::try_from(passes).unwrap_or(u32::MAX))
        });
        rounds.fold(f64::MAX, f64::min)
    };
    let parser = best(&mut || {
        std::hint::black_box(pulldown_cmark::Parser::new_ext(text, pulldown_cmark::Options::all()).count());
    });
    let blocks = blocks::blocks(text, form);
    let read = || -> Vec<mentions::Mentions> {
        blocks
            .list
            .iter()
            .map(|block| mentions::mentions(&block.plain.text, &knowledge.vocabulary, &knowledge.names))
            .collect()
    };
    let finding_names = best(&mut || {
        std::hint::black_box(read());
    });
    let mentions = read();
    let settings = Settings::default();
    let spelling = best(&mut || {
        std::hint::black_box(misspellings::repairs(&blocks, &mentions, knowledge, &settings));
    });
    println!(
        "| {name} | {size:.2} | {:.0} | {:.0} | {:.0} | {:.1} |",
        size / parser,
        size / finding_names,
        size / spelling,
        spelling / parser
    );
}
