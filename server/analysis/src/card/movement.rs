//! The card of a movement: its words, and the muscles that do it.

use fascicle_model::{EntryId, Relation};

use super::Row;
use super::joint::Movers;
use super::maker::{Maker, text};

impl Maker<'_> {
    pub(super) fn movement(&mut self, id: EntryId) {
        let entry = self.vocabulary.entry(id);
        let mut rows = Vec::new();
        if let Some((verb, agent)) = &entry.verb {
            rows.push(Row { text: vec![text(format!("to {verb}; {agent}"))], ..Row::default() });
        }
        if let Some(opposite) = entry.opposite {
            rows.push(Row { label: vec![text("Opposite")], text: vec![self.entry(opposite)], ..Row::default() });
        }
        self.section("Words", rows);
        let mut by_target: Movers = Vec::new();
        for (muscle, entry) in self.vocabulary.iter() {
            for fact in entry.facts.iter().filter(|fact| !fact.variant) {
                let Relation::Acts { movement, target, role } = fact.relation else { continue };
                if movement != id {
                    continue;
                }
                match by_target.iter_mut().find(|(known, _)| *known == target) {
                    Some((_, list)) => list.push((muscle, role)),
                    None => by_target.push((target, vec![(muscle, role)])),
                }
            }
        }
        by_target.sort_by_key(|(target, _)| self.vocabulary.entry(*target).region);
        let mut rows = Vec::new();
        for (target, mut list) in by_target {
            self.wholes_first(&mut list);
            rows.push(Row { text: vec![self.entry(target)], ..Row::default() });
            rows.extend(self.mover_rows(&list));
        }
        self.section("Muscles, by what they move", rows);
    }
}
