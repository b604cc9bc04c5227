//! One inline table: its fields, and account of those that were read.

use toml::Spanned;
use toml::de::DeValue;

use super::{ANY_PLACE, Reader, Scope};
use crate::entry::{Citation, EntryId, Kind};
use crate::problem::did_you_mean;
use crate::segments::Segments;

/// One inline table being read; keeps account of the keys that were used.
pub(super) struct Fields<'r, 'a, 'p> {
    pub(super) reader: &'r mut Reader<'a, 'p>,
    owner: &'r str,
    value: &'r Spanned<DeValue<'a>>,
    used: Vec<String>,
}

impl<'r, 'a, 'p> Fields<'r, 'a, 'p> {
    pub(super) fn new(reader: &'r mut Reader<'a, 'p>, value: &'r Spanned<DeValue<'a>>, owner: &'r str) -> Self {
        Self { reader, owner, value, used: Vec::new() }
    }

    pub(super) fn at(&self) -> usize {
        self.value.span().start
    }

    pub(super) fn has(&self, key: &str) -> bool {
        self.value.get_ref().as_table().is_some_and(|table| table.contains_key(key))
    }

    pub(super) fn get(&mut self, key: &str) -> Option<&'r Spanned<DeValue<'a>>> {
        self.used.push(key.to_owned());
        self.value.get_ref().as_table()?.get(key)
    }

    pub(super) fn text(&mut self, key: &str) -> Option<String> {
        self.get(key)?.get_ref().as_str().map(std::borrow::ToOwned::to_owned)
    }

    pub(super) fn required(&mut self, key: &str) -> Option<String> {
        let text = self.text(key);
        if text.is_none() {
            self.reader.say(self.value.span().start, format!("a line of `{}` lacks `{key}`", self.owner));
        }
        text
    }

    pub(super) fn number(&mut self, key: &str) -> Option<u16> {
        self.get(key)?.get_ref().as_integer()?.as_str().parse().ok()
    }

    pub(super) fn flag(&mut self, key: &str) -> bool {
        self.get(key).and_then(|value| value.get_ref().as_bool()).unwrap_or(false)
    }

    pub(super) fn is_false(&mut self, key: &str) -> bool {
        self.get(key).and_then(|value| value.get_ref().as_bool()) == Some(false)
    }

    pub(super) fn segments(&mut self, key: &str) -> Option<Segments> {
        let value = self.get(key)?;
        match Segments::parse(value.get_ref().as_str().unwrap_or_default()) {
            Ok(segments) => Some(segments),
            Err(why) => {
                self.reader.say(value.span().start, format!("`{key}` of `{}`: {why}", self.owner));
                None
            }
        }
    }

    pub(super) fn word<T>(
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

    pub(super) fn id(&mut self, key: &str, kinds: &[Kind], scope: &Scope<'_>) -> Option<EntryId> {
        let Some(value) = self.get(key) else {
            self.reader.say(self.value.span().start, format!("a line of `{}` lacks `{key}`", self.owner));
            return None;
        };
        self.reader.resolve(value, kinds, self.owner, key, scope)
    }

    pub(super) fn optional_id(&mut self, key: &str, scope: &Scope<'_>) -> Option<EntryId> {
        let value = self.get(key)?;
        self.reader.resolve(value, ANY_PLACE, self.owner, key, scope)
    }

    pub(super) fn citations(&mut self, scope: &Scope<'_>) -> Vec<Citation> {
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
    pub(super) fn finish(self) {
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
