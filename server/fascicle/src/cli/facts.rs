//! `fascicle facts`: the card of a structure, its branch tree, its supply table, or the whole vocabulary.

use std::fmt::Write as _;
use std::io::{self, Write};
use std::path::PathBuf;

use fascicle_analysis::card::{self, Card};
use fascicle_analysis::words::{fold, tokens};
use fascicle_analysis::{Knowledge, picture, tables};
use fascicle_vocab::{EntryId, Kind, Standing, Vocabulary};

use super::check::{counted, write_json};
use super::dump::{self, AskedOut};
use super::paint::{Look, Paint, columns, safe};
use super::{Status, audit, complain};

/// How like a known name a misspelled one must be, from 0 to 1.
const LIKENESS: f64 = 0.7;
/// How many cards of an ambiguous name are shown; of more, only the names.
const CARDS: usize = 4;

/// What to show.
#[derive(Debug, clap::Args)]
pub struct Arguments {
    /// Names of structures: English, Latin, former, abbreviated, even misspelled. Words that make one name together are
    /// taken together. Without a name: what the vocabulary holds.
    #[arg(value_name = "NAME")]
    names: Vec<String>,
    /// How to show it.
    #[arg(long, value_name = "FORMAT", default_value = "card")]
    format: Format,
    /// Check the vocabulary, with overlay files laid over it if any are named: references, circles, both ends of every
    /// fact, segments reachable through nerves, names, Latin, spelling.
    #[arg(long, value_name = "OVERLAY", num_args = 0.., conflicts_with_all = ["names", "format", "audit", "coverage"])]
    verify: Option<Vec<PathBuf>>,
    /// Say on what the facts rest, and list the weakest of them.
    #[arg(long, conflicts_with_all = ["names", "format", "coverage"])]
    audit: bool,
    /// List every muscle, nerve and joint by region, as Markdown.
    #[arg(long, conflicts_with_all = ["names", "format"])]
    coverage: bool,
}

/// A form of output.
#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
enum Format {
    /// For people.
    #[value(alias = "human")]
    Card,
    /// JSON; the schema is published with the program.
    Json,
    /// The branch tree of a nerve.
    Tree,
    /// The supply table of a nerve or group, as Markdown.
    Table,
}

/// What a name was taken for.
struct Asked {
    name: String,
    taken_for: Option<String>,
    ids: Vec<EntryId>,
}

/// Runs the command.
///
/// # Errors
/// Standard output could not be written.
pub fn run(arguments: &Arguments, paint: Paint) -> io::Result<Status> {
    let mut out = io::BufWriter::new(io::stdout().lock());
    let vocabulary = fascicle_vocab::built_in();
    let status = if let Some(overlays) = &arguments.verify {
        audit::verify(&vocabulary, overlays, &mut out)?
    } else if arguments.audit {
        audit::audit(&vocabulary, paint, &mut out)?
    } else if arguments.coverage {
        audit::coverage(&vocabulary, &mut out)?
    } else if arguments.names.is_empty() {
        match arguments.format {
            Format::Card => summary(&vocabulary, paint, &mut out)?,
            Format::Json => write_json(&mut out, &dump::everything(&vocabulary))?,
            Format::Tree | Format::Table => {
                complain("a tree or table needs the name of a structure");
                return Ok(Status::Failed);
            }
        }
        Status::Clean
    } else {
        named(arguments, vocabulary, paint, &mut out)?
    };
    out.flush()?;
    Ok(status)
}

fn named(arguments: &Arguments, vocabulary: Vocabulary, paint: Paint, out: &mut impl Write) -> io::Result<Status> {
    let knowledge = Knowledge::new(vocabulary);
    let vocabulary = &knowledge.vocabulary;
    let mut status = Status::Clean;
    let mut found = Vec::new();
    for asked in resolve(&arguments.names, &knowledge) {
        if asked.ids.is_empty() {
            complain(&format!("nothing is called “{}”, or nearly so", safe(&asked.name)));
            status = Status::Failed;
        } else {
            found.push(asked);
        }
    }
    if arguments.format == Format::Json {
        let mut ids: Vec<EntryId> = Vec::new();
        for asked in &found {
            ids.extend(asked.ids.iter().filter(|id| !ids.contains(id)).copied().collect::<Vec<_>>());
        }
        let asked = found.into_iter().map(|asked| AskedOut {
            name: asked.name,
            taken_for: asked.taken_for,
            ids: asked.ids.iter().map(|id| vocabulary.entry(*id).id.clone()).collect(),
        });
        write_json(out, &dump::some(vocabulary, asked.collect(), &ids))?;
        return Ok(status);
    }
    for (number, asked) in found.iter().enumerate() {
        if number > 0 {
            writeln!(out)?;
        }
        for line in taken_for(vocabulary, asked) {
            writeln!(out, "{}\n", paint.paint(Look::Faint, &line))?;
        }
        if asked.ids.len() > CARDS {
            for id in &asked.ids {
                let entry = vocabulary.entry(*id);
                writeln!(out, "  {} ({}, {})", entry.name(), entry.kind.word(), entry.region.word())?;
            }
            continue;
        }
        for (number, id) in asked.ids.iter().enumerate() {
            if number > 0 {
                writeln!(out)?;
            }
            let shown = match arguments.format {
                Format::Tree => picture::branch_tree(vocabulary, *id).map(|tree| tree.text()),
                Format::Table => tables::supply_table(vocabulary, *id),
                Format::Card | Format::Json => {
                    Some(card_text(&card::card(vocabulary, *id), vocabulary, columns(), paint))
                }
            };
            if let Some(shown) = shown {
                writeln!(out, "{}", shown.trim_end())?;
            } else {
                let what = if arguments.format == Format::Tree { "branches" } else { "muscles" };
                complain(&format!("{} has no {what}", vocabulary.name(*id)));
                status = Status::Failed;
            }
        }
    }
    Ok(status)
}

/// Says what a name was taken for, where it is not simply the structure's name.
fn taken_for(vocabulary: &Vocabulary, asked: &Asked) -> Vec<String> {
    let mut lines = Vec::new();
    let written = asked.taken_for.as_ref().unwrap_or(&asked.name);
    if let Some(taken) = &asked.taken_for {
        lines.push(format!("Nothing is called “{}”; taken for “{taken}”.", safe(&asked.name)));
    }
    if asked.ids.len() > 1 {
        let count = counted(asked.ids.len(), "structure", "structures");
        let more = if asked.ids.len() > CARDS { "; say which:" } else { "." };
        lines.push(format!("“{}” is a name of {count}{more}", safe(written)));
    } else if let Some(id) = asked.ids.first() {
        let entry = vocabulary.entry(*id);
        let name = entry.names.iter().skip(1).find(|name| plain(&name.text) == plain(written));
        if let Some(name) = name {
            let what = match name.standing {
                Standing::Latin => "the Latin name",
                Standing::Eponym => "an eponym",
                Standing::Former => "a former name",
                Standing::Abbreviation => "an abbreviation",
                Standing::Informal => "an informal name",
                Standing::Short => "a short form",
                Standing::Preferred | Standing::Exact | Standing::Spelling => "another name",
            };
            lines.push(format!("“{}” is {what} of {}.", name.text, entry.name()));
        }
    }
    lines
}

/// What the words of the command line name: all of them together if that is a name, else each by itself.
fn resolve(words: &[String], knowledge: &Knowledge) -> Vec<Asked> {
    let together = words.join(" ");
    let asked =
        |name: &str, taken_for: Option<String>, ids: Vec<EntryId>| Asked { name: name.to_owned(), taken_for, ids };
    let ids = exact(&together, knowledge);
    if !ids.is_empty() {
        return vec![asked(&together, None, ids)];
    }
    let each: Vec<Asked> = words.iter().map(|word| asked(word, None, exact(word, knowledge))).collect();
    if words.len() > 1
        && each.iter().any(|asked| asked.ids.is_empty())
        && let Some((name, ids)) = nearest(&together, knowledge)
    {
        return vec![asked(&together, Some(name), ids)];
    }
    let mend = |one: Asked| match nearest(&one.name, knowledge) {
        Some((name, ids)) if one.ids.is_empty() => asked(&one.name, Some(name), ids),
        _ => one,
    };
    each.into_iter().map(mend).collect()
}

/// The entries that a text names, whatever its case, the preferred names first.
fn exact(text: &str, knowledge: &Knowledge) -> Vec<EntryId> {
    let vocabulary = &knowledge.vocabulary;
    if text.contains('-')
        && let Some(id) = vocabulary.find(text)
    {
        return vec![id];
    }
    let mut wanted = plain(text);
    let mut ids = names_that_are(&wanted, vocabulary);
    if let (true, Some(bare)) = (ids.is_empty(), wanted.strip_suffix(" muscle")) {
        wanted = bare.to_owned();
        ids = names_that_are(&wanted, vocabulary);
    }
    if ids.is_empty() {
        for name in knowledge.names.lookup(text) {
            if !ids.contains(&name.entry) {
                ids.push(name.entry);
            }
        }
    }
    ids
}

fn names_that_are(wanted: &str, vocabulary: &Vocabulary) -> Vec<EntryId> {
    if wanted.is_empty() {
        return Vec::new();
    }
    let mut found: Vec<(bool, EntryId)> = Vec::new();
    for (id, entry) in vocabulary.iter() {
        let is_short = || entry.part_of.is_some() && entry.short.as_deref().is_some_and(|short| plain(short) == wanted);
        let is_plural = |name: &fascicle_vocab::Name| name.plural.as_deref().is_some_and(|name| plain(name) == wanted);
        if entry.names.iter().any(|name| plain(&name.text) == wanted || is_plural(name)) || is_short() {
            found.push((plain(entry.name()) != wanted, id));
        }
    }
    found.sort_unstable();
    found.into_iter().map(|(_, id)| id).collect()
}

/// The known name that a misspelled one is most like, and the entries that have it.
fn nearest(text: &str, knowledge: &Knowledge) -> Option<(String, Vec<EntryId>)> {
    let wanted = plain(text);
    let names = knowledge.vocabulary.entries().iter().flat_map(|entry| &entry.names);
    // A name that is much longer or shorter is not like it, whatever its letters are.
    let fits = |length: usize| length * 10 >= wanted.len() * 6 && length * 6 <= wanted.len() * 10;
    let (likeness, name) = names
        .filter(|name| fits(name.text.len()))
        .map(|name| (strsim::normalized_damerau_levenshtein(&wanted, &plain(&name.text)), &name.text))
        .max_by(|a, b| a.0.total_cmp(&b.0))?;
    (likeness >= LIKENESS).then(|| (name.clone(), exact(name, knowledge)))
}

/// A name as it is compared: its words folded, without articles, hyphens and marks.
fn plain(name: &str) -> String {
    let words = tokens(name).into_iter().filter(|token| token.is_word).map(|token| fold(token.span.of(name)));
    words.filter(|word| !fascicle_analysis::names::is_article(word)).collect::<Vec<_>>().join(" ")
}

/// A card laid out for a terminal.
fn card_text(card: &Card, vocabulary: &Vocabulary, columns: usize, paint: Paint) -> String {
    let mut out = format!("{} · {}\n", paint.paint(Look::Title, &card.title), card.what);
    if let Some(latin) = &card.latin {
        let _ = writeln!(out, "{}", paint.paint(Look::Latin, latin));
    }
    if !card.names.is_empty() {
        let names: Vec<String> =
            card.names.iter().map(|(standing, name)| card::name_with_standing(*standing, name)).collect();
        wrap(&mut out, "", "      ", &format!("Also: {}", names.join(", ")), columns);
    }
    if let Some(note) = &card.note {
        out.push('\n');
        wrap(&mut out, "", "", note, columns);
    }
    for section in &card.sections {
        let _ = writeln!(out, "\n{}", paint.paint(Look::Heading, &section.title));
        for row in &section.rows {
            let mut line = String::new();
            if !row.label.is_empty() {
                let _ = write!(line, "{}: ", card::text_of(&row.label));
            }
            line.push_str(&card::text_of(&row.text));
            line.push_str(&card::tail(vocabulary, row));
            let (first, rest) = if row.depth == 0 { ("  ", "    ") } else { ("      ", "      ") };
            wrap(&mut out, first, rest, &line, columns);
        }
        if section.caution {
            let mut caution = String::new();
            wrap(&mut caution, "  ", "  ", card::CAUTION, columns);
            out.push_str(&paint.paint(Look::Faint, &caution));
        }
    }
    if !card.sources.is_empty() {
        let mut sources = String::new();
        wrap(&mut sources, "", "  ", &format!("Sources: {}", card.sources.join("; ")), columns);
        out.push('\n');
        out.push_str(&paint.paint(Look::Faint, &sources));
    }
    if let Some((file, line)) = &card.course {
        let _ = writeln!(out, "\nFrom the course's own {file}, line {line}.");
    }
    out
}

fn wrap(out: &mut String, first: &str, rest: &str, text: &str, columns: usize) {
    let options = textwrap::Options::new(columns).initial_indent(first).subsequent_indent(rest).break_words(false);
    for line in textwrap::wrap(text, options) {
        out.push_str(&line);
        out.push('\n');
    }
}

/// How much the vocabulary holds, by kind.
fn summary(vocabulary: &Vocabulary, paint: Paint, out: &mut impl Write) -> io::Result<()> {
    let entries = counted(vocabulary.entries().len(), "structure", "structures");
    let facts = counted(vocabulary.fact_count(), "fact", "facts");
    let sources = counted(vocabulary.sources().len(), "source", "sources");
    writeln!(out, "{}", paint.paint(Look::Title, &format!("{entries}, {facts}, {sources}")))?;
    for kind in Kind::ALL {
        let count = vocabulary.entries().iter().filter(|entry| entry.kind == *kind).count();
        writeln!(out, "{count:>7}  {}", kind.word())?;
    }
    writeln!(out, "\n`fascicle facts NAME` shows a card; `--format json` writes everything.")
}
