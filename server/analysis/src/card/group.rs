//! The card of a group: its members with their nerves.

use fascicle_model::EntryId;

use super::maker::{Maker, merge, text};
use super::{Row, segments};

impl Maker<'_> {
    pub(super) fn group(&mut self, id: EntryId) {
        let mut rows: Vec<Row> = Vec::new();
        for member in self.vocabulary.members(id) {
            let mut row = Row { text: vec![self.entry(member)], ..Row::default() };
            let mut nerves = Vec::new();
            for supply in self.vocabulary.nerves_of(member).iter().filter(|supply| !supply.variant) {
                if !nerves.contains(&supply.nerve) {
                    nerves.push(supply.nerve);
                }
            }
            if !nerves.is_empty() {
                row.text.push(text(": "));
                row.text.extend(self.names(&nerves));
            }
            if let Some(reading) = self.vocabulary.roots_of(member).first() {
                row.text.push(text(format!(" ({})", segments(reading.main, reading.lesser))));
            }
            for (_, fact) in self.vocabulary.pointing_at(id).filter(|(owner, _)| *owner == member) {
                merge(&mut row.sources, &fact.sources);
                row.notes.extend(fact.note.iter().cloned());
            }
            rows.push(row);
        }
        self.section("Members", rows);
        self.family(id);
    }
}
