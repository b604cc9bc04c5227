//! One entry: its names, its properties and its facts.

use std::mem::{Discriminant, discriminant};

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use super::fact::key_of;
use super::fields::Fields;
use super::{Reader, Scope};
use crate::entry::{Entry, Fact, Kind, Name, OPEN_WORDS, Region, Relation, Standing};
use crate::overlay;
use crate::problem::did_you_mean;

/// Keys that every entry may have.
const COMMON_KEYS: &[&str] = &[
    "id", "name", "latin", "region", "names", "plural", "part_of", "short", "variant", "note", "open", "ids", "class",
];

/// The fact keys of a kind of entry.
const fn fact_keys(kind: Kind) -> &'static [&'static str] {
    match kind {
        Kind::Muscle => &["nerves", "roots", "attaches", "acts", "member", "course", "counts"],
        Kind::Nerve => &["modality", "carries", "arises", "continues", "roots", "course", "signs", "counts"],
        Kind::Plexus => &["arises", "continues", "roots", "course", "signs", "counts"],
        Kind::Joint => &["kind", "bones", "allows", "ligaments", "nerves", "member", "moved_at", "counts"],
        Kind::Root => &["key", "point", "reflex"],
        Kind::Skin => &["roots", "moved_at"],
        Kind::Movement => &["verb", "agent", "opposite"],
        Kind::Landmark => &["moved_at", "course", "counts", "binds", "limits"],
        Kind::Group => &["moved_at", "counts"],
    }
}

impl<'a> Reader<'a, '_> {
    /// Reads what a table says of an entry into it. Returns the kinds of facts that it brings or takes away.
    pub(super) fn entry(
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

    /// Lays the names of a table over those that the entry has.
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
}

fn is_latin(name: &Name, text: &str) -> bool {
    name.standing == Standing::Latin && name.text == text
}
