//! The settings of a course, as its `fascicle.toml` states them.

use std::collections::BTreeMap;

use fascicle_analysis::Span;
use fascicle_analysis::consistency;
use fascicle_analysis::settings::EnglishSpelling;
use fascicle_vocab::Problem;
use ignore::overrides::OverrideBuilder;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use toml::de::{DeTable, DeValue};

use crate::findings;

/// The name of the settings file of a course.
pub const SETTINGS_FILE: &str = "fascicle.toml";

/// What a course decides.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Settings {
    /// What reading follows.
    pub reading: fascicle_analysis::Settings,
    /// What the editor shows.
    pub file: File,
    /// Where the settings file says it.
    pub lines: Lines,
}

/// The lines of a settings file on which the values of its keys stand, each value of a list by itself. What the editor says
/// stands on none.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Lines(BTreeMap<String, Vec<u32>>);

impl Lines {
    /// The line of the value of a key, or of one of its list.
    pub fn of(&self, key: &str, place: usize) -> Option<u32> {
        self.0.get(key)?.get(place).copied()
    }
}

/// The settings file of a course, `fascicle.toml`. Editors send the same keys under `fascicle`.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(default)]
#[schemars(deny_unknown_fields)]
pub struct File {
    /// Words that are right in this course, whatever they look like.
    pub words: Vec<String>,
    /// Codes of findings that are not wanted, such as `former-name`.
    pub off: Vec<String>,
    /// Names that the course has chosen: a structure of one of these names is called by no other.
    pub prefer: Vec<String>,
    /// Kinds of names that the course keeps from even where it uses no other: `former-name`, `eponym`.
    pub avoid: Vec<Avoidable>,
    /// The spelling of English that the course has chosen. Without it, what the course writes most.
    pub spelling: Option<Spelling>,
    /// The source whose reading of roots the course adopts, by its identifier in the bibliography.
    pub reference: Option<String>,
    /// Vocabulary files of the course, relative to this file, laid over the built-in vocabulary.
    pub overlay: Vec<String>,
    /// Paths that are not read, in the syntax of ignore files.
    pub exclude: Vec<String>,
    /// Show the segments behind the names of nerves and muscles.
    pub segments: bool,
    /// Show above each heading what it covers.
    pub coverage: Option<bool>,
}

/// A kind of names that a course can keep from, by the code of its findings.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(inline)]
pub enum Avoidable {
    /// Names that the terminology has given up.
    FormerName,
    /// Names after persons.
    Eponym,
}

impl Avoidable {
    const fn code(self) -> &'static str {
        match self {
            Self::FormerName => consistency::FORMER_NAME,
            Self::Eponym => consistency::EPONYM,
        }
    }
}

/// A spelling of English.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
#[schemars(inline)]
pub enum Spelling {
    /// *fibre*, *oesophagus*.
    British,
    /// *fiber*, *esophagus*.
    American,
}

impl From<File> for Settings {
    fn from(file: File) -> Self {
        let reading = fascicle_analysis::Settings {
            words: file.words.clone(),
            off: file.off.clone(),
            prefer: file.prefer.clone(),
            avoid: file.avoid.iter().map(|kind| kind.code().to_owned()).collect(),
            spelling: file.spelling.map(|spelling| match spelling {
                Spelling::British => EnglishSpelling::British,
                Spelling::American => EnglishSpelling::American,
            }),
            reference: file.reference.clone(),
        };
        Self { reading, file, lines: Lines::default() }
    }
}

/// Reads a settings file over what the editor says. What is not understood is told and left out; the rest holds.
pub fn read(text: &str, editor: &File) -> (Settings, Vec<Problem>) {
    let line_at = |at: usize| {
        let before = text.as_bytes().get(..at).unwrap_or_default();
        u32::try_from(before.split(|byte| *byte == b'\n').count()).unwrap_or(u32::MAX)
    };
    let problem = |at: usize, message: String| Problem { file: SETTINGS_FILE.to_owned(), line: line_at(at), message };
    let mut problems = Vec::new();
    let table = match DeTable::parse(text) {
        Ok(table) => table,
        Err(error) => {
            let at = error.span().map_or(0, |span| span.start);
            return (editor.clone().into(), vec![problem(at, format!("not valid TOML: {}", error.message()))]);
        }
    };
    let known = keys();
    let mut lines = Lines::default();
    let mut good = toml::Table::try_from(editor).unwrap_or_default();
    for (key, value) in table.get_ref() {
        let word = key.get_ref().as_ref();
        if !known.iter().any(|known| known == word) {
            let near = fascicle_vocab::problem::did_you_mean(word, known.iter().map(String::as_str));
            problems.push(problem(key.span().start, format!("no setting is called `{word}`{near}")));
            continue;
        }
        // Each key is tried alone, so that a bad one does not take the others with it.
        let source = text.get(value.span()).unwrap_or_default();
        let alone = format!("{word} = {source}");
        match (toml::from_str::<File>(&alone), toml::from_str::<toml::Table>(&alone)) {
            (Ok(file), Ok(one)) => {
                good.extend(one);
                let starts = match value.get_ref().as_array() {
                    Some(list) => list.iter().map(|item| line_at(item.span().start)).collect(),
                    None => vec![line_at(value.span().start)],
                };
                lines.0.insert(word.to_owned(), starts);
                for (place, message) in vain(&file) {
                    let item = value.get_ref().as_array().and_then(|list| list.get(place));
                    problems.push(problem(item.map_or(value.span(), toml::Spanned::span).start, message));
                }
            }
            (Err(error), _) | (_, Err(error)) => {
                problems.push(problem(value.span().start, format!("`{word}`: {}", error.message())));
            }
        }
    }
    problems.sort_by_key(|problem| problem.line);
    let file: File = good.try_into().unwrap_or_default();
    (Settings { lines, ..file.into() }, problems)
}

/// Reads settings as an editor sends them. Also what is not understood, each with the nearest right key.
pub fn from_client(value: &serde_json::Value) -> (Option<File>, Vec<String>) {
    let Some(object) = value.as_object() else { return (None, Vec::new()) };
    let known = keys();
    let mut wrong = Vec::new();
    let mut good = serde_json::Map::new();
    for (key, value) in object {
        if matches!(&**key, "server" | "trace" | "path") {
            continue; // these are the editor extension's own
        }
        if !known.contains(key) {
            let near = fascicle_vocab::problem::did_you_mean(key, known.iter().map(String::as_str));
            wrong.push(format!("no setting is called `{key}`{near}"));
            continue;
        }
        match serde_json::from_value::<File>(serde_json::json!({ key: value })) {
            Ok(file) => {
                wrong.extend(vain(&file).into_iter().map(|(_, message)| message));
                good.insert(key.clone(), value.clone());
            }
            Err(error) => wrong.push(format!("`{key}`: {error}")),
        }
    }
    (serde_json::from_value(serde_json::Value::Object(good)).ok(), wrong)
}

/// What settings say in vain: codes that no finding has, patterns that are none; each with its place in its list.
fn vain(file: &File) -> Vec<(usize, String)> {
    let is_code = |code: &str| findings::codes().any(|known| known == code);
    let codes = file.off.iter().enumerate().filter(|(_, code)| !is_code(code)).map(|(place, code)| {
        let near = fascicle_vocab::problem::did_you_mean(code, findings::codes());
        (place, format!("`off`: no finding has the code `{code}`{near}"))
    });
    let patterns = file.exclude.iter().enumerate().filter_map(|(place, pattern)| {
        let error = OverrideBuilder::new("").add(&format!("!{pattern}")).err()?;
        Some((place, format!("`exclude`: `{pattern}` is no pattern: {error}")))
    });
    codes.chain(patterns).collect()
}

/// The change to a settings file that adds a value to one of its lists: what is replaced, by what. `None` if the file is not
/// valid or the key holds something else.
pub fn addition(text: &str, key: &str, value: &str) -> Option<(Span, String)> {
    let table = DeTable::parse(text).ok()?;
    let value = toml::Value::String(value.to_owned()).to_string();
    let Some((_, list)) = table.get_ref().iter().find(|(known, _)| known.get_ref() == key) else {
        // Tables come behind all other keys, so a key may stand at the end only where there are none.
        let is_table = |(_, value): (&_, &toml::Spanned<DeValue<'_>>)| value.get_ref().is_table();
        let at = if table.get_ref().iter().any(is_table) { 0 } else { text.len() };
        let lead = if at == 0 || text.ends_with('\n') { "" } else { "\n" };
        return Some((Span::new(at, at), format!("{lead}{key} = [{value}]\n")));
    };
    let items = list.get_ref().as_array()?;
    let (at, new) = match items.iter().last() {
        Some(last) => (last.span().end, format!(", {value}")),
        None => (list.span().start + 1, value),
    };
    Some((Span::new(at, at), new))
}

/// The JSON Schema of the settings.
pub fn schema() -> serde_json::Value {
    schemars::schema_for!(File).into()
}

/// The keys of the settings, as the schema has them.
fn keys() -> Vec<String> {
    schema()
        .get("properties")
        .and_then(serde_json::Value::as_object)
        .map(|properties| properties.keys().cloned().collect())
        .unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keeps_what_is_right_and_tells_what_is_not() {
        let text = "words = [\"sartoriad\"]\nofff = []\nreference = 3\nsegments = true\n";
        let (settings, problems) = read(text, &File::default());
        assert_eq!(settings.reading.words, ["sartoriad"]);
        assert!(settings.file.segments);
        let told: Vec<(u32, &str)> = problems.iter().map(|problem| (problem.line, &*problem.message)).collect();
        assert_eq!(told.first().map(|told| told.0), Some(2));
        assert!(told.first().is_some_and(|told| told.1.contains("did you mean `off`?")), "{told:?}");
        assert_eq!(told.get(1).map(|told| told.0), Some(3));
        assert_eq!(told.len(), 2);
        let (_, vain) =
            read("off = [\n  \"eponym\",\n  \"missspelled-name\",\n]\nexclude = [\"a[\"]\n", &File::default());
        let vain: Vec<(u32, &str)> = vain.iter().map(|problem| (problem.line, &*problem.message)).collect();
        assert_eq!(vain.iter().map(|told| told.0).collect::<Vec<_>>(), [3, 5]);
        assert!(vain.first().is_some_and(|told| told.1.contains("did you mean `misspelled-name`?")), "{vain:?}");
        let (chosen, told) =
            read("prefer = [\"fibular nerve\"]\navoid = [\"eponym\"]\nspelling = \"british\"\n", &File::default());
        assert!(told.is_empty(), "{told:?}");
        assert_eq!(chosen.reading.avoid, ["eponym"]);
        assert_eq!(chosen.reading.spelling, Some(EnglishSpelling::British));
        assert_eq!(read("avoid = [\"two-names\"]\nspelling = \"welsh\"\n", &File::default()).1.len(), 2);
        let editor = File { words: vec!["x".to_owned()], exclude: vec!["old".to_owned()], ..File::default() };
        let (layered, _) = read(text, &editor);
        assert_eq!(
            (&*layered.file.words, &*layered.file.exclude),
            (&["sartoriad".to_owned()][..], &["old".to_owned()][..])
        );
        let (_, broken) = read("a = \n", &File::default());
        assert_eq!(broken.first().map(|problem| problem.line), Some(1));
    }

    #[test]
    fn a_value_is_added_wherever_its_list_stands() {
        for (text, expected) in [
            ("", "off = [\"x\"]\n"),
            ("words = []", "words = []\noff = [\"x\"]\n"),
            ("off = [] # none yet\n", "off = [\"x\"] # none yet\n"),
            ("off = [\n  \"a\",\n]\nwords = []\n", "off = [\n  \"a\", \"x\",\n]\nwords = []\n"),
            ("[a]\nb = 1\n", "off = [\"x\"]\n[a]\nb = 1\n"),
        ] {
            let (span, new) = addition(text, "off", "x").unwrap_or_default();
            let mut changed = text.to_owned();
            changed.replace_range(span.start..span.end, &new);
            assert_eq!(changed, expected);
            assert!(toml::from_str::<toml::Table>(&changed).is_ok(), "{changed}");
        }
        assert_eq!(addition("off = 1", "off", "x"), None);
        assert_eq!(addition("off = [", "off", "x"), None);
    }

    #[test]
    fn keys_of_the_editor_are_told_with_the_nearest() {
        let (file, wrong) =
            from_client(&serde_json::json!({ "segmets": true, "words": 3, "server": {}, "off": ["eponym"] }));
        assert_eq!(file.map(|file| file.off), Some(vec!["eponym".to_owned()]));
        assert!(wrong.iter().any(|line| line.contains("did you mean `segments`?")), "{wrong:?}");
        assert!(wrong.len() == 2 && wrong.iter().any(|line| line.contains("`words`: invalid type")), "{wrong:?}");
    }
}
