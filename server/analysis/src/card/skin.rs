//! The card of an area of skin: its nerves and segments.

use fascicle_model::graph::RootReading;
use fascicle_model::{EntryId, Relation, Segments};

use super::Row;
use super::maker::{Maker, text};
use super::path::{path_from_roots, path_pieces};

impl Maker<'_> {
    pub(super) fn skin(&mut self, id: EntryId) {
        let mut rows = Vec::new();
        for (owner, fact) in self.vocabulary.pointing_at(id) {
            match fact.relation {
                Relation::Feels { .. } => {
                    rows.push(Self::row(fact, vec![self.entry(owner)]));
                    let wanted = self.vocabulary.roots_of(owner).first().map_or(Segments::EMPTY, RootReading::all);
                    let steps = path_from_roots(self.vocabulary, owner, wanted);
                    if steps.len() > 1 && !fact.variant {
                        rows.push(Row { depth: 1, text: path_pieces(self.vocabulary, &steps), ..Row::default() });
                    }
                }
                Relation::KeyPoint { .. } => {
                    let row = Self::row(fact, vec![self.entry(owner)]);
                    rows.push(Row { label: vec![text("Key point of")], ..row });
                }
                _ => {}
            }
        }
        self.section("Nerves", rows);
        self.segments(id);
        self.family(id);
    }
}
