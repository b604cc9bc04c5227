//! From TOML to entries.
//!
//! Reading goes over the files twice: first every entry gets its place, then facts are read with their references
//! resolved. Nothing is dropped in silence: whatever is not understood becomes a [`Problem`] with file and line.
//! `vocab/data/README.md` describes the format.

use std::collections::HashMap;
use std::mem::{Discriminant, discriminant};

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use crate::Vocabulary;
use crate::entry::{
    Citation, Entry, EntryId, Fact, Kind, Modality, Name, OPEN_WORDS, Region, Relation, Role, Source, Standing,
};
use crate::overlay::{self, Change};
use crate::problem::{Problem, did_you_mean};
use crate::segments::Segments;

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
    (Vocabulary::new(entries, sources).with_words(words), problems)
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

fn is_latin(name: &Name, text: &str) -> bool {
    name.standing == Standing::Latin && name.text == text
}

fn has_name(table: &Spanned<DeValue<'_>>) -> bool {
    table.get_ref().as_table().is_some_and(|table| table.contains_key("name"))
}

/// The key under which a fact is written.
const fn key_of(relation: &Relation) -> &'static str {
    match relation {
        Relation::SuppliedBy { .. } | Relation::FeltBy { .. } => "nerves",
        Relation::Roots { .. } => "roots",
        Relation::Origin { .. } | Relation::Insertion { .. } => "attaches",
        Relation::Acts { .. } => "acts",
        Relation::Member { .. } => "member",
        Relation::Carries { .. } => "carries",
        Relation::Modality { .. } => "modality",
        Relation::ArisesFrom { .. } => "arises",
        Relation::ContinuesAs { .. } => "continues",
        Relation::Passes { .. }
        | Relation::Gives { .. }
        | Relation::Supplies { .. }
        | Relation::Feels { .. }
        | Relation::Joins { .. }
        | Relation::Injured { .. } => "course",
        Relation::Sign { .. } => "signs",
        Relation::JointKind { .. } => "kind",
        Relation::Bone { .. } => "bones",
        Relation::Allows { .. } => "allows",
        Relation::Ligament { .. } => "ligaments",
        Relation::KeyMuscle { .. } => "key",
        Relation::KeyPoint { .. } => "point",
        Relation::Reflex { .. } => "reflex",
        Relation::MovedAt { .. } => "moved_at",
    }
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

/// Keys that every entry may have.
const COMMON_KEYS: &[&str] = &[
    "id", "name", "latin", "region", "names", "plural", "part_of", "short", "variant", "note", "open", "ids", "class",
];

/// The fact keys of a kind of entry.
const fn fact_keys(kind: Kind) -> &'static [&'static str] {
    match kind {
        Kind::Muscle => &["nerves", "roots", "attaches", "acts", "member"],
        Kind::Nerve => &["modality", "carries", "arises", "continues", "roots", "course", "signs"],
        Kind::Plexus => &["arises", "continues", "roots", "course", "signs"],
        Kind::Joint => &["kind", "bones", "allows", "ligaments", "nerves", "member", "moved_at"],
        Kind::Root => &["key", "point", "reflex"],
        Kind::Skin => &["roots", "moved_at"],
        Kind::Movement => &["verb", "agent", "opposite"],
        Kind::Landmark | Kind::Group => &["moved_at"],
    }
}

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

    fn entry(
        &mut self,
        value: &Spanned<DeValue<'a>>,
        kind: Kind,
        region: Option<Region>,
        entry: &mut Entry,
        scope: &Scope<'_>,
    ) -> Vec<Discriminant<Relation>> {
        let mut kinds = Vec::new();
        let Some(table) = value.get_ref().as_table() else {
            self.say(value.span().start, "an entry is a table".to_owned());
            return kinds;
        };
        for key in table.keys() {
            let word = key.get_ref().as_ref();
            if !COMMON_KEYS.contains(&word) && !fact_keys(kind).contains(&word) {
                let near = did_you_mean(word, COMMON_KEYS.iter().chain(fact_keys(kind)).copied());
                self.say(
                    key.span().start,
                    format!("`{}` has `{word}`, which a {} does not have{near}", entry.id, kind.word()),
                );
            }
        }
        let text =
            |key: &str| table.get(key).and_then(|value| value.get_ref().as_str()).map(std::borrow::ToOwned::to_owned);

        let own = text("region").as_deref().and_then(Region::from_word).or(region);
        match own {
            Some(region) => entry.region = region,
            None if entry.names.is_empty() => {
                self.say(value.span().start, format!("`{}` has no `region`, nor has the file", entry.id));
            }
            None => {}
        }
        self.names(table, entry);
        if let Some(ids) = table.get("ids").and_then(|ids| ids.get_ref().as_array()) {
            entry.ids = ids.iter().filter_map(|id| id.get_ref().as_str()).map(std::borrow::ToOwned::to_owned).collect();
        }
        for (slot, key) in [(&mut entry.short, "short"), (&mut entry.class, "class"), (&mut entry.note, "note")] {
            if let Some(text) = text(key) {
                *slot = Some(text);
            }
        }
        entry.variant |= table.get("variant").and_then(|value| value.get_ref().as_bool()).unwrap_or(false);
        if let Some(open) = table.get("open") {
            entry.open = self.open_words(open, &entry.id);
        }
        if let (Some(verb), Some(agent)) = (text("verb"), text("agent")) {
            entry.verb = Some((verb, agent));
        }
        for (slot, key) in [(&mut entry.part_of, "part_of"), (&mut entry.opposite, "opposite")] {
            if let Some(target) = table.get(key) {
                *slot = self.resolve(target, &[kind], &entry.id, key, scope);
            }
        }
        for key in fact_keys(kind).iter().filter(|key| !matches!(**key, "verb" | "agent" | "opposite")) {
            let Some(value) = table.get(*key) else { continue };
            let lines: Vec<&Spanned<DeValue<'a>>> = match value.get_ref() {
                DeValue::Array(list) => list.iter().collect(),
                _ => vec![value],
            };
            let facts: Vec<Fact> =
                lines.into_iter().filter_map(|line| self.fact(line, kind, key, &entry.id, scope)).collect();
            if facts.is_empty() {
                // An empty list takes everything of its key away.
                let (gone, kept) = std::mem::take(&mut entry.facts)
                    .into_iter()
                    .partition(|fact: &Fact| key_of(&fact.relation) == *key);
                entry.facts = kept;
                kinds.extend(gone.iter().map(|fact| discriminant(&fact.relation)));
            } else {
                kinds.extend(facts.iter().map(|fact| discriminant(&fact.relation)));
                entry.facts = overlay::lay(&entry.facts, facts);
            }
        }
        kinds
    }

    /// The words of an `open` list; others are a problem.
    fn open_words(&mut self, value: &Spanned<DeValue<'a>>, id: &str) -> Vec<String> {
        let Some(list) = value.get_ref().as_array() else {
            self.say(value.span().start, format!("`open` of `{id}` is a list such as `[\"nerves\"]`"));
            return Vec::new();
        };
        let mut words = Vec::new();
        for item in list {
            let word = item.get_ref().as_str().unwrap_or_default();
            if OPEN_WORDS.contains(&word) {
                words.push(word.to_owned());
            } else {
                let message = format!("`open` of `{id}` has `{word}`; it takes {}", OPEN_WORDS.join(", "));
                self.say(item.span().start, message);
            }
        }
        words
    }

    fn names(&mut self, table: &DeTable<'a>, entry: &mut Entry) {
        let mut names = entry.names.clone();
        let get =
            |key: &str| table.get(key).and_then(|value| value.get_ref().as_str()).map(std::borrow::ToOwned::to_owned);
        if let Some(name) = get("name").filter(|name| names.first().is_none_or(|first| first.text != *name)) {
            // A name that the entry has already rises to the top.
            names.retain(|old| old.text != name || old.standing == Standing::Latin);
            names
                .insert(0, Name { text: name, standing: Standing::Preferred, plural: get("plural"), ambiguous: false });
            for former in names.iter_mut().skip(1).filter(|name| name.standing == Standing::Preferred) {
                former.standing = Standing::Exact;
            }
        }
        let in_base = if names.len() > 1 { names.len() } else { 0 };
        if let Some(latin) = get("latin").filter(|latin| !names.iter().any(|name| is_latin(name, latin))) {
            names.push(Name { text: latin, standing: Standing::Latin, plural: None, ambiguous: false });
        }
        let lines = table.get("names").and_then(|names| names.get_ref().as_array());
        for line in lines.into_iter().flat_map(|list| list.iter()) {
            let mut fields = Fields::new(self, line, "names");
            let text = fields.text("text");
            let standing = fields.word("standing", Standing::from_word, Standing::ALL.iter().map(|s| s.word()));
            let (plural, ambiguous) = (fields.text("plural"), fields.flag("ambiguous"));
            fields.finish();
            match (text, standing) {
                (Some(text), Some(standing)) => {
                    if names.first().is_some_and(|first| first.text == text) {
                        if let Some(first) = names.first_mut() {
                            first.ambiguous |= ambiguous;
                        }
                    } else {
                        let name = Name { text, standing, plural, ambiguous };
                        match names.iter_mut().take(in_base).find(|old| old.text == name.text) {
                            Some(old) => *old = name,
                            None => names.push(name),
                        }
                    }
                }
                _ => self.say(line.span().start, format!("a name of `{}` needs `text` and `standing`", entry.id)),
            }
        }
        entry.names = names;
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

    fn fact(
        &mut self,
        value: &Spanned<DeValue<'a>>,
        kind: Kind,
        key: &str,
        id: &str,
        scope: &Scope<'_>,
    ) -> Option<Fact> {
        let at = value.span().start;
        let line = self.line(at);
        let mut fields = Fields::new(self, value, id);
        let relation = relation(&mut fields, kind, key, scope);
        let sources = fields.citations(scope);
        let (note, variant) =
            (fields.text("note"), fields.flag("variant") | fields.flag("occasional") | fields.is_false("usual"));
        fields.finish();
        if sources.is_empty() {
            self.say(
                at,
                format!("a fact of `{id}` (`{key}`) has no source; write `src = \"memory\"` if it is from memory"),
            );
        }
        Some(Fact { relation: relation?, variant, note, sources, line })
    }
}

const ANY_NERVE: &[Kind] = &[Kind::Nerve, Kind::Plexus, Kind::Root];
const ANY_PLACE: &[Kind] =
    &[Kind::Landmark, Kind::Muscle, Kind::Joint, Kind::Group, Kind::Nerve, Kind::Plexus, Kind::Skin];

/// Reads one fact line. Each arm is one key of the format.
fn relation(fields: &mut Fields<'_, '_, '_>, kind: Kind, key: &str, scope: &Scope<'_>) -> Option<Relation> {
    match key {
        "roots" => {
            let main = fields.segments("main").unwrap_or_default();
            let lesser = fields.segments("lesser").unwrap_or_default();
            Some(Relation::Roots { main, lesser })
        }
        "nerves" if kind == Kind::Joint => Some(Relation::FeltBy { nerve: fields.id("nerve", ANY_NERVE, scope)? }),
        "nerves" => Some(Relation::SuppliedBy { nerve: fields.id("nerve", ANY_NERVE, scope)? }),
        "attaches" if fields.has("origin") => Some(Relation::Origin { from: fields.id("origin", ANY_PLACE, scope)? }),
        "attaches" => Some(Relation::Insertion { on: fields.id("insertion", ANY_PLACE, scope)? }),
        "acts" => {
            let movement = fields.id("movement", &[Kind::Movement], scope);
            let role = fields.word("role", Role::from_word, Role::ALL.iter().map(|role| role.word()));
            let target = if fields.has("joint") {
                fields.id("joint", &[Kind::Joint], scope)
            } else {
                fields.id("on", ANY_PLACE, scope)
            };
            Some(Relation::Acts { movement: movement?, target: target?, role: role? })
        }
        "member" => Some(Relation::Member { of: fields.id("of", &[Kind::Group], scope)? }),
        "modality" => {
            let is = fields.word("is", Modality::from_word, Modality::ALL.iter().map(|is| is.word()))?;
            Some(Relation::Modality { is })
        }
        "carries" => Some(Relation::Carries { fibres: fields.required("fibres")? }),
        "arises" => {
            let from = fields.id("from", &[Kind::Nerve, Kind::Plexus, Kind::Root, Kind::Landmark], scope);
            let at = fields.optional_id("at", scope);
            Some(Relation::ArisesFrom { from: from?, at })
        }
        "continues" => {
            let nerve = fields.id("as", &[Kind::Nerve, Kind::Plexus], scope);
            let at = fields.optional_id("at", scope);
            Some(Relation::ContinuesAs { nerve: nerve?, at })
        }
        "course" => course_step(fields, scope),
        "signs" => {
            let sign = fields.required("sign");
            let at = fields.optional_id("at", scope);
            Some(Relation::Sign { sign: sign?, at })
        }
        "kind" => {
            let class = fields.required("class");
            let subtype = fields.text("subtype");
            Some(Relation::JointKind { class: class?, subtype })
        }
        "bones" => Some(Relation::Bone { bone: fields.id("bone", ANY_PLACE, scope)? }),
        "allows" => {
            let movement = fields.id("movement", &[Kind::Movement], scope);
            let degrees = fields.number("degrees");
            Some(Relation::Allows { movement: movement?, degrees })
        }
        "ligaments" => Some(Relation::Ligament { ligament: fields.id("ligament", &[Kind::Landmark], scope)? }),
        "key" => {
            let muscle = fields.id("muscle", &[Kind::Muscle], scope);
            let movement = fields.id("movement", &[Kind::Movement], scope);
            Some(Relation::KeyMuscle { muscle: muscle?, movement: movement? })
        }
        "point" => Some(Relation::KeyPoint { skin: fields.id("skin", &[Kind::Skin], scope)? }),
        "reflex" => Some(Relation::Reflex { reflex: fields.required("reflex")? }),
        "moved_at" => Some(Relation::MovedAt { joint: fields.id("joint", &[Kind::Joint], scope)? }),
        _ => None,
    }
}

/// Reads one step of a nerve's course.
fn course_step(fields: &mut Fields<'_, '_, '_>, scope: &Scope<'_>) -> Option<Relation> {
    if fields.has("passes") {
        let landmark = fields.id("passes", ANY_PLACE, scope);
        let how = fields.text("how");
        Some(Relation::Passes { landmark: landmark?, how })
    } else if fields.has("gives") {
        let nerve = fields.id("gives", &[Kind::Nerve, Kind::Plexus], scope);
        let at = fields.optional_id("at", scope);
        Some(Relation::Gives { nerve: nerve?, at })
    } else if fields.has("supplies") {
        let muscle = fields.id("supplies", &[Kind::Muscle], scope);
        let at = fields.optional_id("at", scope);
        Some(Relation::Supplies { muscle: muscle?, at })
    } else if fields.has("feels") {
        let target = fields.id("feels", &[Kind::Skin, Kind::Joint, Kind::Landmark], scope);
        fields.optional_id("at", scope);
        Some(Relation::Feels { target: target? })
    } else if fields.has("joins") {
        let with = fields.id("joins", ANY_NERVE, scope);
        fields.optional_id("at", scope);
        Some(Relation::Joins { with: with? })
    } else if fields.has("injured") {
        let at = fields.id("injured", ANY_PLACE, scope);
        let cause = fields.text("cause");
        Some(Relation::Injured { at: at?, cause })
    } else {
        let at = fields.at();
        fields.reader.say(
            at,
            "a step of a course has one of `passes`, `gives`, `supplies`, `feels`, `joins`, `injured`".to_owned(),
        );
        None
    }
}

/// One inline table being read; keeps account of the keys that were used.
struct Fields<'r, 'a, 'p> {
    reader: &'r mut Reader<'a, 'p>,
    owner: &'r str,
    value: &'r Spanned<DeValue<'a>>,
    used: Vec<String>,
}

impl<'r, 'a, 'p> Fields<'r, 'a, 'p> {
    fn new(reader: &'r mut Reader<'a, 'p>, value: &'r Spanned<DeValue<'a>>, owner: &'r str) -> Self {
        Self { reader, owner, value, used: Vec::new() }
    }

    fn at(&self) -> usize {
        self.value.span().start
    }

    fn has(&self, key: &str) -> bool {
        self.value.get_ref().as_table().is_some_and(|table| table.contains_key(key))
    }

    fn get(&mut self, key: &str) -> Option<&'r Spanned<DeValue<'a>>> {
        self.used.push(key.to_owned());
        self.value.get_ref().as_table()?.get(key)
    }

    fn text(&mut self, key: &str) -> Option<String> {
        self.get(key)?.get_ref().as_str().map(std::borrow::ToOwned::to_owned)
    }

    fn required(&mut self, key: &str) -> Option<String> {
        let text = self.text(key);
        if text.is_none() {
            self.reader.say(self.value.span().start, format!("a line of `{}` lacks `{key}`", self.owner));
        }
        text
    }

    fn number(&mut self, key: &str) -> Option<u16> {
        self.get(key)?.get_ref().as_integer()?.as_str().parse().ok()
    }

    fn flag(&mut self, key: &str) -> bool {
        self.get(key).and_then(|value| value.get_ref().as_bool()).unwrap_or(false)
    }

    fn is_false(&mut self, key: &str) -> bool {
        self.get(key).and_then(|value| value.get_ref().as_bool()) == Some(false)
    }

    fn segments(&mut self, key: &str) -> Option<Segments> {
        let value = self.get(key)?;
        match Segments::parse(value.get_ref().as_str().unwrap_or_default()) {
            Ok(segments) => Some(segments),
            Err(why) => {
                self.reader.say(value.span().start, format!("`{key}` of `{}`: {why}", self.owner));
                None
            }
        }
    }

    fn word<T>(
        &mut self,
        key: &str,
        read: impl Fn(&str) -> Option<T>,
        all: impl Iterator<Item = &'static str>,
    ) -> Option<T> {
        let text = self.required(key)?;
        let value = read(&text);
        if value.is_none() {
            let words: Vec<&str> = all.collect();
            self.reader.say(
                self.value.span().start,
                format!("`{key}` of `{}` is `{text}`; it is one of {}", self.owner, words.join(", ")),
            );
        }
        value
    }

    fn id(&mut self, key: &str, kinds: &[Kind], scope: &Scope<'_>) -> Option<EntryId> {
        let Some(value) = self.get(key) else {
            self.reader.say(self.value.span().start, format!("a line of `{}` lacks `{key}`", self.owner));
            return None;
        };
        self.reader.resolve(value, kinds, self.owner, key, scope)
    }

    fn optional_id(&mut self, key: &str, scope: &Scope<'_>) -> Option<EntryId> {
        let value = self.get(key)?;
        self.reader.resolve(value, ANY_PLACE, self.owner, key, scope)
    }

    fn citations(&mut self, scope: &Scope<'_>) -> Vec<Citation> {
        let Some(value) = self.get("src") else { return Vec::new() };
        let words: Vec<&str> = match value.get_ref() {
            DeValue::Array(list) => list.iter().filter_map(|item| item.get_ref().as_str()).collect(),
            other => other.as_str().into_iter().collect(),
        };
        let mut citations = Vec::new();
        for word in words {
            let (source, place) = word.split_once(':').map_or((word, None), |(source, place)| (source, Some(place)));
            if !scope.sources.iter().any(|known| known.id == source) {
                let near = did_you_mean(source, scope.sources.iter().map(|known| &*known.id));
                self.reader.say(
                    value.span().start,
                    format!("`{}` cites `{source}`, which is not in the bibliography{near}", self.owner),
                );
            }
            citations.push(Citation { source: source.to_owned(), place: place.map(str::to_owned) });
        }
        citations
    }

    /// Complains about keys that nothing asked for.
    fn finish(self) {
        let Some(table) = self.value.get_ref().as_table() else {
            self.reader.say(self.value.span().start, format!("a line of `{}` is a table in braces", self.owner));
            return;
        };
        for key in table.keys() {
            let word = key.get_ref().as_ref();
            if !self.used.iter().any(|used| used == word) {
                let near = did_you_mean(word, self.used.iter().map(String::as_str));
                self.reader.say(
                    key.span().start,
                    format!("a line of `{}` has `{word}`, which means nothing there{near}", self.owner),
                );
            }
        }
    }
}
