//! The card of a structure: what a hover or the terminal shows of it.
//!
//! [`card`] gathers what the vocabulary holds into plain data: a title, and sections of rows whose pieces are texts and
//! links to other entries. [`markdown`] writes it for editors; the terminal lays out the same data in its own way. Which
//! sections there are depends on the kind of the entry; none of them names a structure.

mod cite;
mod facts;
mod group;
mod joint;
mod landmark;
mod maker;
mod markdown;
mod movement;
mod muscle;
mod nerve;
mod path;
mod root;
mod skin;

use std::fmt::Write as _;

use fascicle_model::{Citation, Entry, EntryId, Kind, Segments, Standing, Vocabulary};

pub use cite::cite;
pub use facts::{family_facts, usual_muscles};
pub use markdown::{markdown, name_with_standing, tail, text_of};
pub use path::{path_from_roots, path_pieces};

use self::cite::bibliography;
use self::maker::Maker;

/// What a reader is told wherever the effect of a lesion is shown.
pub const CAUTION: &str = "For teaching, not for diagnosis or treatment: people vary, and the course's adopted \
                           reference, local rules and licensed practice decide.";

/// A stretch of a row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Piece {
    /// Text.
    Text(String),
    /// The preferred name of another entry.
    Entry(EntryId, String),
}

impl Piece {
    /// What a reader sees.
    pub fn text(&self) -> &str {
        match self {
            Self::Text(text) | Self::Entry(_, text) => text,
        }
    }
}

/// One line of a section.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Row {
    /// 0 at the margin, 1 below the row above.
    pub depth: u8,
    /// What the row is about ("Origin", a joint, a part).
    pub label: Vec<Piece>,
    /// What it says.
    pub text: Vec<Piece>,
    /// Another source's reading, or an arrangement that some people have.
    pub variant: bool,
    /// Remarks.
    pub notes: Vec<String>,
    /// Where it was read.
    pub sources: Vec<Citation>,
}

/// Rows under a heading.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Section {
    /// The heading.
    pub title: String,
    /// Its rows, never none.
    pub rows: Vec<Row>,
    /// The section tells what a lesion does, and carries [`CAUTION`].
    pub caution: bool,
}

/// The card of an entry.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Card {
    /// The entry.
    pub id: EntryId,
    /// Its preferred name.
    pub title: String,
    /// What it is and where: "muscle, arm", "variant muscle (not everyone has it), thorax".
    pub what: String,
    /// International Latin name.
    pub latin: Option<String>,
    /// Other names, each with its standing.
    pub names: Vec<(Standing, String)>,
    /// One sentence.
    pub note: Option<String>,
    /// Where a course of its own writes or changes the entry: file and line.
    pub course: Option<(String, u32)>,
    /// The sections.
    pub sections: Vec<Section>,
    /// Short citations of every source of the card, each once.
    pub sources: Vec<String>,
}

/// Gathers the card of an entry.
pub fn card(vocabulary: &Vocabulary, id: EntryId) -> Card {
    let entry = vocabulary.entry(id);
    let mut maker = Maker { vocabulary, sections: Vec::new() };
    match entry.kind {
        Kind::Muscle => maker.muscle(id),
        Kind::Nerve | Kind::Plexus => maker.nerve(id),
        Kind::Joint => maker.joint(id),
        Kind::Root => maker.root(id),
        Kind::Landmark => maker.landmark(id),
        Kind::Skin => maker.skin(id),
        Kind::Group => maker.group(id),
        Kind::Movement => maker.movement(id),
    }
    let sections = maker.sections;
    let rows = sections.iter().flat_map(|section| &section.rows);
    let sources = bibliography(vocabulary, rows.flat_map(|row| &row.sources));
    Card {
        id,
        title: entry.name().to_owned(),
        what: what(entry),
        latin: entry.latin().map(str::to_owned),
        names: other_names(entry),
        note: entry.note.clone(),
        course: vocabulary.course_line(id).map(|(file, line)| (file.to_owned(), line)),
        sections,
        sources,
    }
}

fn what(entry: &Entry) -> String {
    let mut what = match (entry.kind, entry.class.as_deref()) {
        (Kind::Skin, Some("area") | None) => "area of skin".to_owned(),
        (Kind::Skin, Some("point")) => "key sensory point".to_owned(),
        (Kind::Plexus | Kind::Landmark | Kind::Group | Kind::Skin, Some(class)) => class.to_owned(),
        (Kind::Root, _) => "spinal segment".to_owned(),
        (kind, _) => kind.word().to_owned(),
    };
    if entry.kind == Kind::Muscle && entry.part_of.is_some() {
        "part of a muscle".clone_into(&mut what);
    }
    if entry.region.word() != "body" {
        let _ = write!(what, ", {}", entry.region.word());
    }
    if entry.variant {
        what.push_str(", not in everyone");
    }
    what
}

fn other_names(entry: &Entry) -> Vec<(Standing, String)> {
    let latin = entry.latin();
    let names = entry.names.iter().skip(1).filter(|name| Some(&*name.text) != latin);
    let mut list: Vec<(Standing, String)> = names.map(|name| (name.standing, name.text.clone())).collect();
    list.sort_by_key(|(standing, _)| *standing);
    list
}

/// Segments, the lesser ones told apart: "C7, C8; lesser C6".
pub fn segments(main: Segments, lesser: Segments) -> String {
    match (main.is_empty(), lesser.is_empty()) {
        (_, true) => main.to_string(),
        (true, false) => format!("lesser {lesser}"),
        (false, false) => format!("{main}; lesser {lesser}"),
    }
}

/// How a part is called where its whole is known; the preferred name of anything else.
pub fn short_name(vocabulary: &Vocabulary, id: EntryId) -> &str {
    let entry = vocabulary.entry(id);
    if entry.part_of.is_none() {
        return entry.name();
    }
    let listed = entry.names.iter().find(|name| name.standing == Standing::Short);
    entry.short.as_deref().or(listed.map(|name| &*name.text)).unwrap_or_else(|| entry.name())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use fascicle_model::Relation;

    use super::*;

    #[test]
    fn every_entry_has_a_card_that_tells_its_facts() {
        let vocabulary = fascicle_vocab::built_in();
        for (id, entry) in vocabulary.iter() {
            let card = card(&vocabulary, id);
            let told = entry.facts.iter().filter(|fact| !matches!(fact.relation, Relation::Member { .. }));
            for fact in told {
                for citation in &fact.sources {
                    let here = cite(&vocabulary, &Citation { place: None, ..citation.clone() });
                    assert!(card.sources.iter().any(|source| source.starts_with(&here)), "{}: {here}", entry.id);
                }
            }
            assert!(card.sections.iter().all(|section| !section.rows.is_empty()), "{}", entry.id);
            assert!(markdown(&vocabulary, id).starts_with("**"), "{}", entry.id);
        }
    }

    #[test]
    fn a_path_begins_at_the_roots_that_the_muscle_has() {
        let vocabulary = fascicle_vocab::built_in();
        let nerve = vocabulary.find("axillary-nerve").unwrap();
        let steps = path_from_roots(&vocabulary, nerve, Segments::parse("C5 C6").unwrap());
        let path = text_of(&path_pieces(&vocabulary, &steps));
        assert_eq!(path, "C5, C6 → upper trunk → posterior division of upper trunk → posterior cord → axillary nerve");
    }
}
