//! From TOML to entries.
//!
//! Reading goes over the files twice: first every entry gets its place, then facts are read with their references
//! resolved. Nothing is dropped in silence: whatever is not understood becomes a [`Problem`] with file and line.
//! `vocab/data/README.md` describes the format. Here files are read; an entry, a fact and the fields of an inline table have
//! a module each.

mod entry;
mod fact;
mod fields;

use std::collections::HashMap;

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use self::fields::Fields;
use crate::Vocabulary;
use crate::entry::{Entry, EntryId, Kind, Region, Source};
use crate::overlay::{self, Change};
use crate::problem::{Problem, did_you_mean};

/// A data file: its name, as problems shall call it, and its text.
#[derive(Clone, Copy, Debug)]
pub struct File<'a> {
    /// Name for messages and for [`Entry::file`].
    pub name: &'a str,
    /// TOML text.
    pub text: &'a str,
}

/// Reads files into a vocabulary, on top of `base` if there is one.
///
/// An entry whose id the base has already changes that entry: its names are added, and each kind of fact that it brings
/// takes the place of the base's facts of that kind (an empty list takes them away). The other ends of facts so replaced
/// follow.
pub fn read(files: &[File<'_>], base: Option<&Vocabulary>) -> (Vocabulary, Vec<Problem>) {
    let mut problems = Vec::new();
    let tables: Vec<(File<'_>, Spanned<DeTable<'_>>)> =
        files.iter().filter_map(|file| parse(*file, &mut problems).map(|table| (*file, table))).collect();

    let mut entries: Vec<Entry> = base.map(|base| base.entries().to_vec()).unwrap_or_default();
    let mut sources: Vec<Source> = base.map(|base| base.sources().to_vec()).unwrap_or_default();
    let mut words: Vec<String> = base.map(|base| base.words().to_vec()).unwrap_or_default();
    let mut places: HashMap<String, EntryId> =
        entries.iter().zip(0..).map(|(entry, place)| (entry.id.clone(), EntryId(place))).collect();

    let in_base = entries.len();
    let mut found = Vec::new();
    for (file, table) in &tables {
        let mut reader = Reader { file: *file, problems: &mut problems };
        for (kind, table) in reader.entries(table.get_ref()) {
            let id = Reader::id_of(table);
            let next = EntryId(u32::try_from(entries.len()).unwrap_or(u32::MAX));
            match places.get(&id) {
                Some(place) if (place.0 as usize) < in_base => {
                    if entries[place.0 as usize].kind != kind {
                        let was = entries[place.0 as usize].kind.word();
                        reader.say(table.span().start, format!("`{id}` is a {was}, not a {}", kind.word()));
                        continue;
                    }
                    found.push((*file, kind, *place, table));
                }
                Some(place) => {
                    let first = &entries[place.0 as usize];
                    let message = format!(
                        "`{id}` is already an entry at {}:{}; give one of them an `id`",
                        first.file, first.line
                    );
                    reader.say(table.span().start, message);
                }
                None if id.is_empty() => reader.say(table.span().start, "an entry needs a `name`".to_owned()),
                None if !has_name(table) => {
                    let near = did_you_mean(&id, places.keys().map(String::as_str));
                    let message = format!("no entry has the id `{id}` yet, and a new one needs a `name`{near}");
                    reader.say(table.span().start, message);
                }
                None => {
                    let line = reader.line(table.span().start);
                    entries.push(blank(id.clone(), kind, file.name.to_owned(), line));
                    places.insert(id, next);
                    found.push((*file, kind, next, table));
                }
            }
        }
        sources.extend(reader.sources(table.get_ref()));
        words.extend(reader.words(table.get_ref()));
    }

    let kinds: Vec<Kind> = entries.iter().map(|entry| entry.kind).collect();
    let mut changes = Vec::new();
    for (file, kind, place, table) in found {
        let region = tables
            .iter()
            .find(|(other, _)| std::ptr::eq(other.text, file.text))
            .and_then(|(_, table)| table.get_ref().get("region"))
            .and_then(|region| region.get_ref().as_str())
            .and_then(Region::from_word);
        let mut reader = Reader { file, problems: &mut problems };
        let scope = Scope { places: &places, kinds: &kinds, sources: &sources };
        let entry = &mut entries[place.0 as usize];
        if (place.0 as usize) < in_base {
            // From here on the entry is the course's: what is wrong with it is told there.
            file.name.clone_into(&mut entry.file);
            entry.line = reader.line(table.span().start);
            for fact in &mut entry.facts {
                fact.line = entry.line;
            }
        }
        let kinds = reader.entry(table, kind, region, entry, &scope);
        changes.push(Change { entry: place, kinds });
    }
    if base.is_some() {
        overlay::mend(&mut entries, &changes);
        let ours: Vec<EntryId> = changes.iter().map(|change| change.entry).collect();
        overlay::mark_shared_names(&mut entries, &ours);
    }
    let overlays = base.map_or(&[][..], |_| files).iter().map(|file| file.name);
    (Vocabulary::new(entries, sources).with_words(words).with_overlays(overlays), problems)
}

/// The identifier that a preferred name has unless its entry says otherwise: lower-case ASCII, runs of other characters
/// turned into one hyphen.
pub fn slug(name: &str) -> String {
    let mut id = String::new();
    for c in name.to_lowercase().chars() {
        if c.is_ascii_alphanumeric() {
            id.push(c);
        } else if !id.ends_with('-') && !id.is_empty() {
            id.push('-');
        }
    }
    id.trim_end_matches('-').to_owned()
}

fn has_name(table: &Spanned<DeValue<'_>>) -> bool {
    table.get_ref().as_table().is_some_and(|table| table.contains_key("name"))
}

fn parse<'a>(file: File<'a>, problems: &mut Vec<Problem>) -> Option<Spanned<DeTable<'a>>> {
    match DeTable::parse(file.text) {
        Ok(table) => Some(table),
        Err(error) => {
            let at = error.span().map_or(0, |span| span.start);
            Reader { file, problems }.say(at, format!("not valid TOML: {}", error.message()));
            None
        }
    }
}

fn blank(id: String, kind: Kind, file: String, line: u32) -> Entry {
    Entry {
        id,
        kind,
        region: Region::Body,
        names: Vec::new(),
        ids: Vec::new(),
        part_of: None,
        short: None,
        class: None,
        variant: false,
        open: Vec::new(),
        note: None,
        verb: None,
        opposite: None,
        facts: Vec::new(),
        file,
        line,
    }
}

/// What references are resolved against.
struct Scope<'a> {
    places: &'a HashMap<String, EntryId>,
    kinds: &'a [Kind],
    sources: &'a [Source],
}

/// One file being read.
struct Reader<'a, 'p> {
    file: File<'a>,
    problems: &'p mut Vec<Problem>,
}

/// What a muscle, a joint or skin is supplied by.
const ANY_NERVE: &[Kind] = &[Kind::Nerve, Kind::Plexus, Kind::Root];
/// What an origin, a landmark on the way or a movement may lie at.
const ANY_PLACE: &[Kind] =
    &[Kind::Landmark, Kind::Muscle, Kind::Joint, Kind::Group, Kind::Nerve, Kind::Plexus, Kind::Skin];

impl<'a> Reader<'a, '_> {
    fn line(&self, at: usize) -> u32 {
        let before = self.file.text.as_bytes().get(..at).unwrap_or_default();
        u32::try_from(before.split(|byte| *byte == b'\n').count()).unwrap_or(u32::MAX)
    }

    fn say(&mut self, at: usize, message: String) {
        let line = self.line(at);
        self.problems.push(Problem { file: self.file.name.to_owned(), line, message });
    }

    /// The tables of entries in a file, with their kinds.
    fn entries<'t>(&mut self, table: &'t DeTable<'a>) -> Vec<(Kind, &'t Spanned<DeValue<'a>>)> {
        let mut all = Vec::new();
        for (key, value) in table {
            let word = key.get_ref().as_ref();
            match (Kind::from_word(word), value.get_ref()) {
                (Some(kind), DeValue::Array(list)) => all.extend(list.iter().map(|item| (kind, item))),
                (None, DeValue::Array(_)) if matches!(word, "source" | "words") => {}
                (None, DeValue::String(name)) if word == "region" => {
                    if Region::from_word(name).is_none() {
                        let near = did_you_mean(name, Region::ALL.iter().map(|region| region.word()));
                        self.say(value.span().start, format!("no region is called `{name}`{near}"));
                    }
                }
                _ => {
                    let words = Kind::ALL.iter().map(|kind| kind.word()).chain(["source", "region", "words"]);
                    let near = did_you_mean(word, words);
                    self.say(
                        key.span().start,
                        format!("`{word}` is no kind of entry (write `[[nerve]]`, `[[muscle]]` …){near}"),
                    );
                }
            }
        }
        all
    }

    fn id_of(table: &Spanned<DeValue<'a>>) -> String {
        let get = |key: &str| table.get_ref().as_table()?.get(key)?.get_ref().as_str().map(str::to_owned);
        get("id").or_else(|| get("name").map(|name| slug(&name))).unwrap_or_default()
    }

    fn sources(&mut self, table: &DeTable<'a>) -> Vec<Source> {
        let Some(list) = table.get("source").and_then(|list| list.get_ref().as_array()) else { return Vec::new() };
        let mut all = Vec::new();
        for item in list {
            let mut fields = Fields::new(self, item, "source");
            let (Some(id), Some(title)) = (fields.text("id"), fields.text("title")) else {
                fields.reader.say(item.span().start, "a source needs an `id` and a `title`".to_owned());
                continue;
            };
            all.push(Source {
                id,
                title,
                author: fields.text("author"),
                year: fields.number("year"),
                open: fields.flag("open"),
                note: fields.text("note"),
            });
            fields.finish();
        }
        all
    }

    /// The words that a file lists as right.
    fn words(&mut self, table: &DeTable<'a>) -> Vec<String> {
        let list = table.get("words").and_then(|list| list.get_ref().as_array());
        let mut words = Vec::new();
        for item in list.into_iter().flat_map(|list| list.iter()) {
            match item.get_ref().as_str() {
                Some(text) => words.extend(text.split_whitespace().map(str::to_lowercase)),
                None => self.say(item.span().start, "`words` is a list of words in quotes".to_owned()),
            }
        }
        words
    }

    fn resolve(
        &mut self,
        value: &Spanned<DeValue<'a>>,
        kinds: &[Kind],
        id: &str,
        key: &str,
        scope: &Scope<'_>,
    ) -> Option<EntryId> {
        let at = value.span().start;
        let Some(target) = value.get_ref().as_str() else {
            self.say(at, format!("`{key}` of `{id}` is an entry's id in quotes"));
            return None;
        };
        let Some(place) = scope.places.get(target) else {
            let near = did_you_mean(target, scope.places.keys().map(String::as_str));
            self.say(at, format!("`{key}` of `{id}` names `{target}`, which is no entry{near}"));
            return None;
        };
        let kind = scope.kinds[place.0 as usize];
        if kinds.contains(&kind) {
            return Some(*place);
        }
        let wanted: Vec<&str> = kinds.iter().map(|kind| kind.word()).collect();
        self.say(
            at,
            format!("`{key}` of `{id}` names `{target}`, a {}; it takes a {}", kind.word(), wanted.join(" or ")),
        );
        None
    }
}
