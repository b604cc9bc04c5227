//! What the cards of all kinds are made of: sections, rows, and what several kinds have in common.

use fascicle_model::{Citation, EntryId, Fact, Relation, Vocabulary};

use super::{Piece, Row, Section, segments, short_name};

/// Makes the sections of a card. Each kind of entry has a file with the sections of its own.
pub(super) struct Maker<'v> {
    pub(super) vocabulary: &'v Vocabulary,
    pub(super) sections: Vec<Section>,
}

impl Maker<'_> {
    pub(super) fn entry(&self, id: EntryId) -> Piece {
        Piece::Entry(id, self.vocabulary.name(id).to_owned())
    }

    pub(super) fn section(&mut self, title: &str, rows: Vec<Row>) {
        self.add(title, rows, false);
    }

    pub(super) fn add(&mut self, title: &str, rows: Vec<Row>, caution: bool) {
        if !rows.is_empty() {
            self.sections.push(Section { title: title.to_owned(), rows, caution });
        }
    }

    pub(super) fn row(fact: &Fact, pieces: Vec<Piece>) -> Row {
        Row {
            text: pieces,
            variant: fact.variant,
            notes: fact.note.iter().cloned().collect(),
            sources: fact.sources.clone(),
            ..Row::default()
        }
    }

    /// The label of a fact that stands at a part, or at the whole of a part.
    pub(super) fn owner_label(&self, card: EntryId, owner: EntryId) -> Vec<Piece> {
        if owner == card {
            Vec::new()
        } else if self.vocabulary.entry(owner).part_of.is_some() && !self.vocabulary.wholes(card).contains(&owner) {
            vec![Piece::Entry(owner, short_name(self.vocabulary, owner).to_owned())]
        } else {
            vec![text("whole muscle")]
        }
    }

    pub(super) fn names(&self, ids: &[EntryId]) -> Vec<Piece> {
        joined(self.vocabulary, ids, ", ")
    }

    pub(super) fn segments(&mut self, id: EntryId) {
        let mut rows: Vec<Row> = Vec::new();
        for reading in self.vocabulary.roots_of(id) {
            rows.push(Self::row(reading.fact, vec![text(segments(reading.main, reading.lesser))]));
        }
        let preferred = self.vocabulary.roots_of(id).first().map(|reading| (reading.main, reading.lesser));
        for part in self.vocabulary.all_parts(id) {
            for fact in &self.vocabulary.entry(part).facts {
                if let Relation::Roots { main, lesser } = fact.relation
                    && Some((main, lesser)) != preferred
                {
                    let label = self.owner_label(id, part);
                    rows.push(Row { label, ..Self::row(fact, vec![text(segments(main, lesser))]) });
                }
            }
        }
        self.section("Segments", rows);
    }

    /// Wholes and parts, and for a part of the body the joints at which it is moved.
    pub(super) fn family(&mut self, id: EntryId) {
        let counts = self.vocabulary.entry(id).facts.iter().filter_map(|fact| match &fact.relation {
            Relation::Count { of, number } => Some(Self::row(fact, vec![text(format!("{number} {of}"))])),
            _ => None,
        });
        let counts = counts.collect();
        self.section("How many", in_one_row(counts));
        let mut rows = Vec::new();
        let mut is_itself = false;
        for fact in &self.vocabulary.entry(id).facts {
            match fact.relation {
                Relation::MovedAt { joint } if joint == id => is_itself = true,
                Relation::MovedAt { joint } => rows.push(Self::row(fact, vec![self.entry(joint)])),
                _ => {}
            }
        }
        self.section(if is_itself { "Moved together with" } else { "Moved at" }, in_one_row(rows));
        let wholes = self.vocabulary.wholes(id);
        if !wholes.is_empty() {
            let row = Row { text: joined(self.vocabulary, &wholes, ", of "), ..Row::default() };
            self.section("Part of", vec![row]);
        }
        let parts = self.vocabulary.parts(id).to_vec();
        if !parts.is_empty() {
            let row = Row { text: self.names(&parts), ..Row::default() };
            self.section("Parts", vec![row]);
        }
    }

    pub(super) fn with_place(&self, mut pieces: Vec<Piece>, at: Option<EntryId>, word: &str) -> Vec<Piece> {
        if let Some(at) = at {
            pieces.push(text(format!(" {word} ")));
            pieces.push(self.entry(at));
        }
        pieces
    }
}

pub(super) fn text(text: impl Into<String>) -> Piece {
    Piece::Text(text.into())
}

pub(super) fn joined(vocabulary: &Vocabulary, ids: &[EntryId], between: &str) -> Vec<Piece> {
    let mut pieces = Vec::new();
    for id in ids {
        if !pieces.is_empty() {
            pieces.push(text(between));
        }
        pieces.push(Piece::Entry(*id, vocabulary.name(*id).to_owned()));
    }
    pieces
}

/// Whether a row says no more than its text.
pub(super) fn is_plain(row: &Row) -> bool {
    !row.variant && row.notes.is_empty()
}

/// Rows of one label in one row, but for those that say more than a name.
pub(super) fn in_one_row(rows: Vec<Row>) -> Vec<Row> {
    let mut list: Vec<Row> = Vec::new();
    for row in rows {
        match list.last_mut().filter(|last| is_plain(last) && is_plain(&row) && last.label == row.label) {
            Some(last) => {
                last.text.push(text(", "));
                last.text.extend(row.text);
                merge(&mut last.sources, &row.sources);
            }
            None => list.push(row),
        }
    }
    list
}

pub(super) fn merge(into: &mut Vec<Citation>, more: &[Citation]) {
    for citation in more {
        if !into.contains(citation) {
            into.push(citation.clone());
        }
    }
}
