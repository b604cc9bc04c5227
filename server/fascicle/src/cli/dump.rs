//! The vocabulary as JSON: what `fascicle facts --format json` writes.
//!
//! The shape is a contract, as that of [`super::report`] is. A fact is an edge. Where it points at an entry, `to` is that
//! entry's identifier; else `to` is what the fact says: segments by name with blanks between, a modality, a sign.

use fascicle_vocab::{Citation, Entry, EntryId, Fact, Kind, Relation, Source, Vocabulary};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::Serialize;

use super::report::{VERSION, segment_list, version_schema};

fn kind_schema(_: &mut SchemaGenerator) -> Schema {
    let words: Vec<&str> = Kind::ALL.iter().map(|kind| kind.word()).collect();
    json_schema!({ "enum": words })
}

/// What `fascicle facts --format json` writes: all of the vocabulary, or what belongs to the structures that were asked for.
#[derive(Debug, Serialize, JsonSchema)]
pub struct FactsReport<'v> {
    /// Version of this shape.
    #[schemars(schema_with = "version_schema")]
    pub version: u32,
    /// What was asked for, and what it was taken for; empty where everything was.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub asked: Vec<AskedOut>,
    /// The structures.
    pub entries: Vec<EntryOut<'v>>,
    /// The facts.
    pub edges: Vec<EdgeOut<'v>>,
    /// The bibliography.
    pub sources: Vec<SourceOut<'v>>,
}

/// A name that was asked for.
#[derive(Debug, Serialize, JsonSchema)]
pub struct AskedOut {
    /// As it was written.
    pub name: String,
    /// The name that it was taken for, where it was misspelled.
    pub taken_for: Option<String>,
    /// Identifiers of the entries that it names.
    pub ids: Vec<String>,
}

/// A structure.
#[derive(Debug, Serialize, JsonSchema)]
pub struct EntryOut<'v> {
    /// Identifier.
    pub id: &'v str,
    /// What it is.
    #[schemars(schema_with = "kind_schema")]
    pub kind: &'static str,
    /// Where in the body it is listed.
    pub region: &'static str,
    /// Preferred English name.
    pub name: &'v str,
    /// International Latin name.
    pub latin: Option<&'v str>,
    /// All names, the preferred one first.
    pub names: Vec<NameOut<'v>>,
    /// Identifiers in open data sets.
    pub ids: &'v [String],
    /// The whole that it is a part of.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub part_of: Option<&'v str>,
    /// What it is called within its whole.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub short: Option<&'v str>,
    /// Finer kind.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub class: Option<&'v str>,
    /// Not everyone has it.
    #[serde(skip_serializing_if = "is_false")]
    pub variant: bool,
    /// Lists of facts about it that are not complete.
    #[serde(skip_serializing_if = "<[String]>::is_empty")]
    pub open: &'v [String],
    /// A remark.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub note: Option<&'v str>,
    /// Movement: its verb.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub verb: Option<&'v str>,
    /// Movement: its opposite.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub opposite: Option<&'v str>,
}

/// A name.
#[derive(Debug, Serialize, JsonSchema)]
pub struct NameOut<'v> {
    /// As it is written in the middle of a sentence.
    pub text: &'v str,
    /// Its standing.
    pub standing: &'static str,
    /// Another entry has it too.
    #[serde(skip_serializing_if = "is_false")]
    pub ambiguous: bool,
}

/// A fact.
#[derive(Debug, Default, Serialize, JsonSchema)]
pub struct EdgeOut<'v> {
    /// Identifier of the entry that the fact is about.
    pub from: &'v str,
    /// What the fact says of it.
    pub edge: &'static str,
    /// Identifier of the entry that it points at, else what it says.
    pub to: String,
    /// Where the fact is about a part, or points at one: what the part is called within its whole.
    pub part: Option<&'v str>,
    /// A remark.
    pub note: Option<&'v str>,
    /// For another source's reading, or what only some people have: the `to` of the usual fact, or `usual` where there is
    /// none of the kind.
    pub variant_of: Option<String>,
    /// Where it was read: identifiers of sources, with the place behind a colon.
    pub sources: Vec<String>,
    /// The landmark at which a branch leaves, a name changes, or a sign belongs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at: Option<&'v str>,
    /// The movement that a muscle carries, a joint allows, or a key muscle is tested by.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub movement: Option<&'v str>,
    /// Prime mover or assistant.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub role: Option<&'static str>,
    /// Usual end of a range of movement.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub degrees: Option<u16>,
    /// How a nerve passes a landmark.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub how: Option<&'v str>,
    /// What injures a nerve there.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cause: Option<&'v str>,
    /// Segments that contribute less.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub lesser: String,
}

/// A work of the bibliography.
#[derive(Debug, Serialize, JsonSchema)]
pub struct SourceOut<'v> {
    /// The identifier that facts use.
    pub id: &'v str,
    /// Author or editor.
    pub author: Option<&'v str>,
    /// Title.
    pub title: &'v str,
    /// Year of the edition.
    pub year: Option<u16>,
    /// Anyone may read it.
    pub open: bool,
    /// A remark.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub note: Option<&'v str>,
}

#[allow(clippy::trivially_copy_pass_by_ref)] // the signature that serde asks for
const fn is_false(value: &bool) -> bool {
    !*value
}

/// All of the vocabulary.
pub fn everything(vocabulary: &Vocabulary) -> FactsReport<'_> {
    let all = vocabulary.iter();
    FactsReport {
        version: VERSION,
        asked: Vec::new(),
        entries: all.map(|(_, entry)| entry_out(vocabulary, entry)).collect(),
        edges: vocabulary.iter().flat_map(|(id, _)| edges_of(vocabulary, id)).collect(),
        sources: vocabulary.sources().iter().map(source_out).collect(),
    }
}

/// The card of some entries: the facts that are about them, and those of others that point at them.
pub fn some<'v>(vocabulary: &'v Vocabulary, asked: Vec<AskedOut>, ids: &[EntryId]) -> FactsReport<'v> {
    let mut edges: Vec<EdgeOut<'v>> = Vec::new();
    for id in ids {
        edges.extend(edges_of(vocabulary, *id));
        for (owner, fact) in vocabulary.pointing_at(*id).filter(|(owner, _)| !ids.contains(owner)) {
            edges.push(edge_out(vocabulary, owner, fact));
        }
    }
    let cited = |source: &&Source| {
        let is_of = |text: &String| text == &source.id || text.starts_with(&format!("{}:", source.id));
        edges.iter().any(|edge| edge.sources.iter().any(is_of))
    };
    let sources = vocabulary.sources().iter().filter(cited).map(source_out).collect();
    let entries = ids.iter().map(|id| entry_out(vocabulary, vocabulary.entry(*id))).collect();
    FactsReport { version: VERSION, asked, entries, edges, sources }
}

fn entry_out<'v>(vocabulary: &'v Vocabulary, entry: &'v Entry) -> EntryOut<'v> {
    let name = |name: &'v fascicle_vocab::Name| NameOut {
        text: &name.text,
        standing: name.standing.word(),
        ambiguous: name.ambiguous,
    };
    EntryOut {
        id: &entry.id,
        kind: entry.kind.word(),
        region: entry.region.word(),
        name: entry.name(),
        latin: entry.latin(),
        names: entry.names.iter().map(name).collect(),
        ids: &entry.ids,
        part_of: entry.part_of.map(|id| &*vocabulary.entry(id).id),
        short: entry.short.as_deref(),
        class: entry.class.as_deref(),
        variant: entry.variant,
        open: &entry.open,
        note: entry.note.as_deref(),
        verb: entry.verb.as_ref().map(|(verb, _)| &**verb),
        opposite: entry.opposite.map(|id| &*vocabulary.entry(id).id),
    }
}

fn edges_of(vocabulary: &Vocabulary, id: EntryId) -> impl Iterator<Item = EdgeOut<'_>> {
    vocabulary.entry(id).facts.iter().map(move |fact| edge_out(vocabulary, id, fact))
}

fn edge_out<'v>(vocabulary: &'v Vocabulary, owner: EntryId, fact: &'v Fact) -> EdgeOut<'v> {
    let id = |id: EntryId| &*vocabulary.entry(id).id;
    let entry = vocabulary.entry(owner);
    let mut edge = EdgeOut {
        from: &entry.id,
        edge: fact.relation.word(),
        to: target(vocabulary, &fact.relation),
        part: part_name(vocabulary, owner)
            .or_else(|| fact.relation.target().and_then(|target| part_name(vocabulary, target))),
        note: fact.note.as_deref(),
        sources: fact.sources.iter().map(cite).collect(),
        ..EdgeOut::default()
    };
    if fact.variant {
        let usual = entry
            .facts
            .iter()
            .find(|other| !other.variant && other.relation.word() == fact.relation.word())
            .map(|other| target(vocabulary, &other.relation));
        edge.variant_of = Some(usual.unwrap_or_else(|| "usual".to_owned()));
    }
    match &fact.relation {
        Relation::Roots { lesser, .. } => edge.lesser = segment_list(*lesser),
        Relation::Acts { movement, role, .. } => {
            edge.movement = Some(id(*movement));
            edge.role = Some(role.word());
        }
        Relation::Allows { degrees, .. } => edge.degrees = *degrees,
        Relation::KeyMuscle { movement, .. } => edge.movement = Some(id(*movement)),
        Relation::Passes { how, .. } => edge.how = how.as_deref(),
        Relation::Injured { cause, .. } => edge.cause = cause.as_deref(),
        Relation::ArisesFrom { at, .. }
        | Relation::ContinuesAs { at, .. }
        | Relation::Gives { at, .. }
        | Relation::Supplies { at, .. }
        | Relation::Sign { at, .. } => edge.at = at.map(id),
        _ => {}
    }
    edge
}

/// What a fact points at, or what it says.
fn target(vocabulary: &Vocabulary, relation: &Relation) -> String {
    if let Some(target) = relation.target() {
        return vocabulary.entry(target).id.clone();
    }
    match relation {
        Relation::Roots { main, .. } => segment_list(*main),
        Relation::Carries { fibres } => fibres.clone(),
        Relation::Modality { is } => is.word().to_owned(),
        Relation::Sign { sign, .. } => sign.clone(),
        Relation::JointKind { class, subtype: Some(subtype) } => format!("{class}, {subtype}"),
        Relation::JointKind { class, subtype: None } => class.clone(),
        Relation::Reflex { reflex } => reflex.clone(),
        Relation::Count { of, number } => format!("{number} {of}"),
        Relation::Limits { motion, .. } => motion.clone(),
        _ => String::new(),
    }
}

/// What a part of a muscle is called within it.
fn part_name(vocabulary: &Vocabulary, id: EntryId) -> Option<&str> {
    let entry = vocabulary.entry(id);
    let is_part = entry.kind == Kind::Muscle && entry.part_of.is_some();
    is_part.then(|| fascicle_analysis::card::short_name(vocabulary, id))
}

fn cite(citation: &Citation) -> String {
    let Citation { source, place } = citation;
    place.as_ref().map_or_else(|| source.clone(), |place| format!("{source}:{place}"))
}

fn source_out(source: &Source) -> SourceOut<'_> {
    SourceOut {
        id: &source.id,
        author: source.author.as_deref(),
        title: &source.title,
        year: source.year,
        open: source.open,
        note: source.note.as_deref(),
    }
}
