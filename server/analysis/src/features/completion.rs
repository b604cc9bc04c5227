//! Completion: names by fuzzy match, in the author's capitals, with what makes the sentence true first.

use fascicle_model::{EntryId, Kind, Standing, Vocabulary};
use fuzzy_matcher::FuzzyMatcher;
use fuzzy_matcher::skim::SkimMatcherV2;

use super::context::{self, Context};
use crate::blocks::Form;
use crate::knowledge::Knowledge;
use crate::reading::Reading;
use crate::text::Span;
use crate::words::fold;

/// The most items that are offered at once.
const MOST: usize = 60;

/// The most words of a name that are taken from before the cursor.
const MOST_WORDS: usize = 5;

/// A name that can be completed to.
#[derive(Clone, Debug)]
struct Name {
    /// As it is looked up.
    folded: String,
    /// As it is written.
    text: String,
    entry: EntryId,
    standing: Standing,
    letters: u32,
}

/// All names of a vocabulary, ready to be matched.
#[derive(Clone, Debug, Default)]
pub struct Names {
    /// Sorted by the folded name.
    list: Vec<Name>,
}

impl Names {
    /// Derives them.
    pub fn new(vocabulary: &Vocabulary) -> Self {
        let mut list: Vec<Name> = vocabulary
            .iter()
            .filter(|(_, entry)| entry.kind != Kind::Movement)
            .flat_map(|(id, entry)| {
                entry.names.iter().map(move |name| Name {
                    folded: fold(&name.text),
                    text: name.text.clone(),
                    entry: id,
                    standing: name.standing,
                    letters: letters(&fold(&name.text)),
                })
            })
            .collect();
        list.sort_by(|a, b| a.folded.cmp(&b.folded));
        Self { list }
    }

    fn starting_with<'a>(&'a self, prefix: &'a str) -> impl Iterator<Item = &'a Name> {
        let first = self.list.partition_point(|name| *name.folded < *prefix);
        self.list.iter().skip(first).take_while(move |name| name.folded.starts_with(prefix))
    }
}

/// A completion.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Item {
    /// The entry; segments have none.
    pub entry: Option<EntryId>,
    /// What is inserted.
    pub text: String,
    /// The name that the typed text matched, where it is another one ("APB").
    pub matched: Option<String>,
    /// It makes the sentence true.
    pub fits: bool,
}

/// What can be completed at a place.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Completion {
    /// What is replaced.
    pub span: Span,
    /// The likeliest first.
    pub items: Vec<Item>,
    /// There are more, which further typing would bring.
    pub more: bool,
}

/// Completes at a byte of a text. What makes the sentence true comes first, then what belongs to the section, then the
/// rest; where nothing was typed yet, only what makes the sentence true.
pub fn complete(
    text: &str,
    form: Form,
    offset: usize,
    reading: &Reading,
    names: &Names,
    knowledge: &Knowledge,
) -> Completion {
    let before = text.get(..offset).unwrap_or_default();
    let line = before.rsplit(['\n', '\r']).next().unwrap_or_default();
    let typed = typed(line, names);
    let span = Span::new(offset - typed.len(), offset);
    let context = context::context(text, form, span, reading, knowledge);
    let capital = starts_sentence(text, span.start);
    let mut items: Vec<Item> = Vec::new();
    let segments = context.segments.iter().filter(|written| written.starts_with(&typed.to_uppercase()));
    let segments = segments.map(|written| Item { entry: None, text: written.clone(), matched: None, fits: true });
    let folded = fold(typed);
    if folded.is_empty() {
        let fitting = context.fitting.iter().take(MOST);
        items.extend(fitting.map(|id| {
            let name = authors_name(*id, &context, &knowledge.vocabulary);
            let text = if capital { capitalised(name) } else { name.to_owned() };
            Item { entry: Some(*id), text, matched: None, fits: true }
        }));
        items.extend(segments);
        let more = !items.is_empty(); // what is typed next may be anything
        return Completion { span, items, more };
    }
    items.extend(segments);
    let matcher = SkimMatcherV2::default().ignore_case();
    let letters = letters(&folded);
    let mut best: Vec<(i64, &Name)> = Vec::new();
    for name in names.list.iter().filter(|name| name.letters & letters == letters) {
        let Some(score) = score(&matcher, name, &folded, typed) else { continue };
        best.push((score + boost(name.entry, &context, &knowledge.vocabulary), name));
    }
    best.sort_by(|a, b| b.0.cmp(&a.0).then(a.1.text.len().cmp(&b.1.text.len())).then(a.1.text.cmp(&b.1.text)));
    let mut more = false;
    for (_, name) in best {
        if items.iter().any(|item| item.entry == Some(name.entry)) {
            continue;
        }
        if items.len() == MOST {
            more = true;
            break;
        }
        let fits = context.fitting.contains(&name.entry);
        items.push(Item { fits, ..item(name, typed, capital, &context, &knowledge.vocabulary) });
    }
    Completion { span, items, more }
}

/// How far the place speaks for an entry: that it makes the statement true, that the column takes its kind, that it belongs
/// to the section (the earlier in the course of the nerve, the more; and more while the section has not named it), that it
/// belongs to what was just named, that the document names it, and that nerves and muscles are what courses name most. What
/// another row has named already seldom comes again.
fn boost(entry: EntryId, context: &Context, vocabulary: &Vocabulary) -> i64 {
    let given = |says: bool, weight: i64| if says { weight } else { 0 };
    let near = context.near.iter().position(|near| *near == entry).map_or(0, |place| {
        let order = 20_i64.saturating_sub(i64::try_from(place).unwrap_or(i64::MAX)).max(0);
        40 + given(!context.told.contains(&entry), 20 + order)
    });
    let kind = vocabulary.kind(entry);
    let is_part = vocabulary.entry(entry).part_of.is_some();
    // The rows of a table have each muscle once; a nerve may stand in many.
    let is_told_already = kind == Kind::Muscle && context.listed.contains(&entry);
    given(context.fitting.contains(&entry), 150)
        + given(context.kinds.contains(&kind), 60)
        + near
        + given(context.before.contains(&entry), 30)
        + given(context.named.contains(&entry), 40)
        + given(matches!(kind, Kind::Nerve | Kind::Muscle), 25)
        - given(is_part, 40)
        - given(is_told_already, 60)
}

/// Whether a place is the beginning of a sentence, item or cell, by what stands before it in its line.
fn starts_sentence(text: &str, at: usize) -> bool {
    let before = text.get(..at).unwrap_or_default();
    let line = before.rsplit(['\n', '\r']).next().unwrap_or_default();
    let bare = line.trim_end();
    bare.is_empty() || bare.ends_with(['.', '!', '?', '#']) || matches!(bare.trim_start(), "-" | "*" | "+")
}

/// Which letters a folded text has, one bit each, so that most names are passed over without being matched.
fn letters(folded: &str) -> u32 {
    folded.bytes().filter(u8::is_ascii_lowercase).fold(0, |set, letter| set | 1 << (letter - b'a'))
}

/// What was typed of a name: the words before the cursor that begin one, else the last word; empty where there is none.
fn typed<'a>(line: &'a str, names: &Names) -> &'a str {
    let mut starts: Vec<usize> = Vec::new();
    let mut inside = false;
    for (at, c) in line.char_indices() {
        let is_part = c.is_alphanumeric() || matches!(c, '\'' | '’' | '-');
        if is_part && !inside {
            starts.push(at);
        } else if !is_part && c != ' ' {
            starts.clear();
        }
        inside = is_part;
    }
    let words = starts.len().min(MOST_WORDS);
    let candidates = starts.get(starts.len() - words..).unwrap_or_default();
    let rest = |at: usize| line.get(at..).unwrap_or_default();
    for start in candidates {
        let typed = rest(*start);
        let several = typed.trim_end().contains(' ') || typed.ends_with(' ');
        if several && names.starting_with(&fold(typed)).next().is_some() {
            return typed;
        }
    }
    if inside { candidates.last().map_or("", |at| rest(*at)) } else { "" }
}

fn score(matcher: &SkimMatcherV2, name: &Name, folded: &str, typed: &str) -> Option<i64> {
    let mut score = matcher.fuzzy_match(&name.folded, folded)?;
    if name.folded.starts_with(folded) {
        score += 110;
    } else if name.folded.split([' ', '-']).any(|word| word.starts_with(folded)) {
        score += 25;
    }
    if name.standing == Standing::Abbreviation {
        score += if name.text == typed {
            100
        } else if name.folded == folded {
            40
        } else {
            -40
        };
    }
    score += match name.standing {
        Standing::Preferred => 12,
        Standing::Exact | Standing::Spelling | Standing::Short => 6,
        Standing::Eponym | Standing::Abbreviation => 0,
        Standing::Former | Standing::Informal => -80,
        // *Musculus* and *nervus* begin a thousand names.
        Standing::Latin => -40,
    };
    Some(score)
}

/// What the author calls an entry: as the document has called it, else in its language by the preferred name.
fn authors_name<'a>(id: EntryId, context: &'a Context, vocabulary: &'a Vocabulary) -> &'a str {
    let latin = || vocabulary.entry(id).latin().filter(|_| context.is_latin);
    context.written.get(&id).map(String::as_str).or_else(latin).unwrap_or_else(|| vocabulary.name(id))
}

/// The item for a name. Abbreviations, former, informal and short names complete to the one that the author uses, and so
/// does every other name that what was typed does not tell from it.
fn item(name: &Name, typed: &str, begins: bool, context: &Context, vocabulary: &Vocabulary) -> Item {
    let expands =
        matches!(name.standing, Standing::Abbreviation | Standing::Former | Standing::Informal | Standing::Short);
    let own = authors_name(name.entry, context, vocabulary);
    let text = if expands || fold(own).starts_with(&fold(typed)) { own } else { &*name.text };
    let mut written = typed.chars();
    let capital = written.next().is_some_and(char::is_uppercase)
        && (begins || written.next().is_none_or(|second| !second.is_uppercase()));
    Item {
        entry: Some(name.entry),
        text: if capital { capitalised(text) } else { text.to_owned() },
        matched: (expands || text != name.text).then(|| name.text.clone()),
        fits: false,
    }
}

/// A text with a capital first letter.
pub fn capitalised(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| first.to_uppercase().chain(chars).collect())
}
