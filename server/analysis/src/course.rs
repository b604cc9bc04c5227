//! What two places of a course say differently, where the graph does not decide between them.
//!
//! A statement that the graph contradicts is told where it stands; here two statements are compared with each other. Told
//! are differences on which the graph is silent, and segments that the course reads now after one source, now after
//! another. Both places are told, each with the other.

use std::collections::BTreeMap;

use fascicle_model::{EntryId, Segments, Vocabulary};

use crate::claims::{Claim, ClaimKind, PartRole, What};
use crate::findings::{Finding, FindingKind, Severity};
use crate::settings::Settings;
use crate::text::Span;
use crate::verdicts::{Judgement, Verdict};

/// Two places of a course say different things about one fact.
pub const TOLD_DIFFERENTLY: &str = "told-differently";

/// A finding of a course.
#[derive(Clone, Debug, PartialEq)]
pub struct CourseFinding {
    /// The document in which it stands, by its place in the list of documents.
    pub document: usize,
    /// What is found.
    pub finding: Finding,
    /// The places that say otherwise, each with what they say.
    pub elsewhere: Vec<Elsewhere>,
}

/// A place of another document, or of the same.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Elsewhere {
    /// The document, by its place in the list.
    pub document: usize,
    /// Where in it.
    pub span: Span,
    /// What it says.
    pub says: String,
}

/// What a statement is about: kind, subject, and for a denial the rest of the statement.
pub type Key = (ClaimKind, EntryId, Option<EntryId>);

/// What a statement says of its subject.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Value {
    /// Segments.
    Segments(Segments),
    /// An entry.
    Entry(EntryId),
    /// A word for the nature of a nerve.
    Word(&'static str),
    /// That it is so, or that it is not.
    Holds(bool),
}

/// A statement in the form in which it can be compared with others: all that has to be kept of a document for that.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Stated {
    /// What it is about.
    pub key: Key,
    /// What it says.
    pub value: Value,
    /// What the graph says of it.
    pub verdict: Verdict,
    /// Where it stands.
    pub span: Span,
}

/// A statement with its document, by its place in the list of documents.
#[derive(Clone, Copy, Debug)]
struct Statement<'a> {
    document: usize,
    stated: &'a Stated,
}

/// What a document states, as far as it can be compared.
pub fn stated(claims: &[(Claim, Judgement)]) -> Vec<Stated> {
    let is_firm = |(claim, judgement): &&(Claim, Judgement)| !claim.hedged && judgement.verdict != Verdict::Contradicts;
    claims
        .iter()
        .filter(is_firm)
        .flat_map(|(claim, judgement)| {
            let of = |(key, value)| Stated { key, value, verdict: judgement.verdict, span: claim.span };
            statements(claim).into_iter().map(of)
        })
        .collect()
}

/// Compares the claims of the documents of a course. Each document is the list of its judged claims.
pub fn findings(
    documents: &[&[(Claim, Judgement)]],
    vocabulary: &Vocabulary,
    settings: &Settings,
) -> Vec<CourseFinding> {
    let documents: Vec<Vec<Stated>> = documents.iter().map(|claims| stated(claims)).collect();
    let all = documents.iter().enumerate().flat_map(|(at, list)| list.iter().map(move |stated| (at, stated)));
    compare(all, vocabulary, settings)
}

/// Compares statements, each given with its document, in the order of the course. Only statements with the same key have
/// to do with each other, so a part of the keys can be compared alone.
pub fn compare<'a>(
    statements: impl IntoIterator<Item = (usize, &'a Stated)>,
    vocabulary: &Vocabulary,
    settings: &Settings,
) -> Vec<CourseFinding> {
    if settings.off.iter().any(|code| code == TOLD_DIFFERENTLY) {
        return Vec::new();
    }
    let mut topics: BTreeMap<Key, Vec<Statement<'a>>> = BTreeMap::new();
    for (document, stated) in statements {
        topics.entry(stated.key).or_default().push(Statement { document, stated });
    }
    let mut list: Vec<CourseFinding> =
        topics.iter().flat_map(|(key, statements)| differences(key, statements, vocabulary)).collect();
    list.sort_by_key(|found| (found.document, found.finding.span));
    list
}

/// What a claim says, in the forms in which it can be compared.
fn statements(claim: &Claim) -> Vec<(Key, Value)> {
    let mut list = Vec::new();
    let one = |role: PartRole| match claim.entries(role) {
        [id] => Some(*id),
        _ => None,
    };
    let (subject, object) = match claim.kind {
        ClaimKind::Roots => (PartRole::Structure, PartRole::Segments),
        ClaimKind::Supply => (PartRole::Muscle, PartRole::Nerve),
        ClaimKind::Branching => (PartRole::Nerve, PartRole::Parent),
        ClaimKind::Modality => (PartRole::Nerve, PartRole::Modality),
        _ => return list,
    };
    let Some(about) = one(subject) else { return list };
    let value = match claim.part(object).map(|part| &part.what) {
        Some(What::Segments(main, lesser)) => Value::Segments(main.union(*lesser)),
        Some(What::Entry(ids)) if ids.len() == 1 => ids.first().map_or(Value::Holds(true), |id| Value::Entry(*id)),
        Some(What::Word(word)) => Value::Word(word),
        _ => return list,
    };
    if let Value::Entry(id) = value {
        list.push(((claim.kind, about, Some(id)), Value::Holds(!claim.negated)));
    }
    if !claim.negated {
        list.push(((claim.kind, about, None), value));
    }
    list
}

/// The findings on one topic.
fn differences(key: &Key, statements: &[Statement<'_>], vocabulary: &Vocabulary) -> Vec<CourseFinding> {
    let mut groups: Vec<Vec<&Statement<'_>>> = Vec::new();
    for statement in statements {
        match groups
            .iter_mut()
            .find(|group| group.first().is_some_and(|first| first.stated.value == statement.stated.value))
        {
            Some(group) => group.push(statement),
            None => groups.push(vec![statement]),
        }
    }
    let most = groups.iter().map(Vec::len).max().unwrap_or(0);
    let mut list = Vec::new();
    for (place, group) in groups.iter().enumerate() {
        let Some(first) = group.first() else { continue };
        let others = groups.iter().enumerate().filter(|(other, _)| *other != place);
        let against: Vec<&Statement<'_>> = others
            .filter_map(|(_, other)| {
                other
                    .iter()
                    .find(|other| differ(first, other, vocabulary) && !names_both(statements, first, other))
                    .copied()
            })
            .collect();
        if against.is_empty() {
            continue;
        }
        // What the course says most is told once; what differs from it, wherever it stands.
        let told = if group.len() == most { 1 } else { group.len() };
        for statement in group.iter().take(told) {
            let elsewhere = against.iter().map(|other| Elsewhere {
                document: other.document,
                span: other.stated.span,
                says: says(key, &other.stated.value, vocabulary),
            });
            let finding = Finding {
                code: TOLD_DIFFERENTLY,
                kind: FindingKind::Course,
                severity: if key.0 == ClaimKind::Roots { Severity::Information } else { Severity::Warning },
                span: statement.stated.span,
                message: format!(
                    "{}; elsewhere the course says otherwise.",
                    says(key, &statement.stated.value, vocabulary)
                ),
                reason: Vec::new(),
                related: Vec::new(),
                fixes: Vec::new(),
                candidates: Vec::new(),
            };
            list.push(CourseFinding { document: statement.document, finding, elsewhere: elsewhere.collect() });
        }
    }
    list
}

/// Whether one document gives both values: a muscle may have two nerves, and who tells both readings tells neither wrong.
fn names_both(statements: &[Statement<'_>], one: &Statement<'_>, other: &Statement<'_>) -> bool {
    let has = |document: usize, value: &Value| {
        statements.iter().any(|statement| statement.document == document && statement.stated.value == *value)
    };
    !matches!(one.stated.value, Value::Holds(_))
        && [one, other]
            .iter()
            .any(|side| has(side.document, &one.stated.value) && has(side.document, &other.stated.value))
}

/// Whether two statements on one topic cannot stand side by side, and the graph does not say which is right.
fn differ(one: &Statement<'_>, other: &Statement<'_>, vocabulary: &Vocabulary) -> bool {
    let (one, other) = (one.stated, other.stated);
    let silent = one.verdict == Verdict::Unknown && other.verdict == Verdict::Unknown;
    match (&one.value, &other.value) {
        (Value::Segments(one_has), Value::Segments(other_has)) => {
            let by_source = one.verdict == Verdict::Variant || other.verdict == Verdict::Variant;
            one_has != other_has && (silent || by_source)
        }
        (Value::Entry(one), Value::Entry(other)) => {
            silent && !vocabulary.is_or_above(*one, *other) && !vocabulary.is_or_above(*other, *one)
        }
        (Value::Word(one), Value::Word(other)) => silent && one != other,
        (Value::Holds(one), Value::Holds(other)) => silent && one != other,
        _ => false,
    }
}

/// A statement in words.
fn says(key: &Key, value: &Value, vocabulary: &Vocabulary) -> String {
    let (kind, subject, rest) = key;
    let subject = vocabulary.name(*subject);
    let object = rest.map(|id| vocabulary.name(id)).unwrap_or_default();
    let verb = |holds: bool| match (kind, holds) {
        (ClaimKind::Branching, true) => "arises from",
        (ClaimKind::Branching, false) => "does not arise from",
        (_, true) => "is supplied by",
        (_, false) => "is not supplied by",
    };
    match value {
        Value::Segments(segments) => format!("{subject}: {segments}"),
        Value::Entry(id) => format!("{subject} {} {}", verb(true), vocabulary.name(*id)),
        Value::Word(word) => format!("{subject} is {word}"),
        Value::Holds(holds) => format!("{subject} {} {object}", verb(*holds)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Form, Knowledge, Reading};

    fn told(texts: &[&str], settings: &Settings) -> Vec<(usize, String)> {
        let knowledge = Knowledge::new(fascicle_vocab::built_in());
        let read = |text: &&str| crate::read(text, Form::Markdown, &knowledge, settings);
        let readings: Vec<Reading> = texts.iter().map(read).collect();
        let claims: Vec<&[(Claim, Judgement)]> = readings.iter().map(|reading| &*reading.claims).collect();
        let list = findings(&claims, &knowledge.vocabulary, settings);
        assert!(list.iter().all(|found| !found.elsewhere.is_empty()));
        list.into_iter().map(|found| (found.document, found.finding.message)).collect()
    }

    #[test]
    fn segments_after_two_sources_are_told_at_both_places() {
        // The vocabulary holds both readings of teres minor, the second as a variant.
        let texts = ["The nerve roots of the teres minor are C5 and C6.", "**Teres minor**: C5"];
        let list = told(&texts, &Settings::default());
        let places: Vec<usize> = list.iter().map(|(document, _)| *document).collect();
        assert_eq!(places, [0, 1], "{list:?}");
        assert_eq!(told(&texts[..1], &Settings::default()), []);
        let off = Settings { off: vec![TOLD_DIFFERENTLY.to_owned()], ..Settings::default() };
        assert_eq!(told(&texts, &off), []);
    }

    #[test]
    fn who_tells_both_tells_neither_wrong() {
        let both = "Sternalis is supplied by the long thoracic nerve and the accessory nerve.";
        assert_eq!(told(&[both], &Settings::default()), []);
        assert_eq!(told(&[both, "Sternalis is supplied by the accessory nerve."], &Settings::default()), []);
    }

    #[test]
    fn what_the_graph_decides_or_allows_is_not_told_here() {
        let texts = [
            "The deltoid is supplied by the axillary nerve.",
            "The deltoid is supplied by the radial nerve.",
            "The flexor digitorum profundus is supplied by the ulnar nerve.",
            "The flexor digitorum profundus is supplied by the anterior interosseous nerve.",
        ];
        assert_eq!(told(&texts, &Settings::default()), []);
    }
}
