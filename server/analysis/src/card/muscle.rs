//! The card of a muscle: nerve, segments, attachments, actions, group.

use fascicle_model::graph::RootReading;
use fascicle_model::{EntryId, Relation, Role, Segments};

use super::Row;
use super::facts::{OwnedFacts, family_facts};
use super::maker::{Maker, merge, text};
use super::markdown::text_of;
use super::path::{path_from_roots, path_pieces};

impl Maker<'_> {
    pub(super) fn muscle(&mut self, id: EntryId) {
        self.muscle_nerves(id);
        self.segments(id);
        self.attachments(id);
        self.actions(id);
        let members = family_facts(self.vocabulary, id, |relation| matches!(relation, Relation::Member { .. }));
        let mut rows: Vec<Row> = Vec::new();
        for (owner, fact) in members {
            if let Relation::Member { of } = fact.relation {
                let label = if owner == id { Vec::new() } else { self.owner_label(id, owner) };
                let row = Row { label, ..Self::row(fact, vec![self.entry(of)]) };
                if !rows.iter().any(|known| known.text == row.text) {
                    rows.push(row);
                }
            }
        }
        self.section("Compartment or group", rows);
        self.course(id);
        self.family(id);
    }

    fn muscle_nerves(&mut self, id: EntryId) {
        let facts = family_facts(self.vocabulary, id, |relation| matches!(relation, Relation::SuppliedBy { .. }));
        // Parts that share a nerve share a row.
        let mut groups: Vec<(EntryId, bool, OwnedFacts<'_>)> = Vec::new();
        for (owner, fact) in facts {
            let Relation::SuppliedBy { nerve } = fact.relation else { continue };
            match groups.iter_mut().find(|(known, variant, _)| *known == nerve && *variant == fact.variant) {
                Some((.., list)) => list.push((owner, fact)),
                None => groups.push((nerve, fact.variant, vec![(owner, fact)])),
            }
        }
        groups.sort_by_key(|(_, variant, _)| *variant);
        let wanted = self.vocabulary.roots_of(id).first().map_or(Segments::EMPTY, RootReading::all);
        let mut rows = Vec::new();
        for (nerve, variant, facts) in groups {
            let mut row = Row { text: vec![self.entry(nerve)], variant, ..Row::default() };
            let parts = self.vocabulary.parts(id);
            let whole = facts.iter().any(|(owner, _)| *owner == id)
                || (!parts.is_empty() && parts.iter().all(|part| facts.iter().any(|(owner, _)| owner == part)));
            for (owner, fact) in &facts {
                row.notes
                    .extend(fact.note.iter().filter(|note| !row.notes.contains(note)).cloned().collect::<Vec<_>>());
                merge(&mut row.sources, &fact.sources);
                if !whole {
                    if !row.label.is_empty() {
                        row.label.push(text(", "));
                    }
                    row.label.extend(self.owner_label(id, *owner));
                }
            }
            rows.push(row);
            let steps = path_from_roots(self.vocabulary, nerve, wanted);
            if steps.len() > 1 && !variant {
                rows.push(Row { depth: 1, text: path_pieces(self.vocabulary, &steps), ..Row::default() });
            }
        }
        self.section("Nerve", rows);
    }

    fn attachments(&mut self, id: EntryId) {
        let mut rows: Vec<Row> = Vec::new();
        for (title, is_origin) in [("Origin", true), ("Insertion", false)] {
            let facts = family_facts(self.vocabulary, id, |relation| match relation {
                Relation::Origin { .. } => is_origin,
                Relation::Insertion { .. } => !is_origin,
                _ => false,
            });
            for (owner, fact) in facts {
                let (Relation::Origin { from: at } | Relation::Insertion { on: at }) = fact.relation else { continue };
                let mut label = vec![text(title)];
                let part = self.owner_label(id, owner);
                if !part.is_empty() {
                    label.push(text(", "));
                    label.extend(part);
                }
                let mut row = Row { label, ..Self::row(fact, vec![self.entry(at)]) };
                let notes = std::mem::take(&mut row.notes);
                if let Some(note) = notes.first().filter(|_| !fact.variant) {
                    row.text.push(text(format!(" ({})", note.trim_end_matches('.'))));
                } else {
                    row.notes = notes;
                }
                match rows.iter_mut().find(|known| known.label == row.label && !known.variant && !row.variant) {
                    Some(known) => {
                        known.text.push(text("; "));
                        known.text.extend(row.text);
                        merge(&mut known.sources, &row.sources);
                    }
                    None => rows.push(row),
                }
            }
        }
        self.section("Attachments", rows);
    }

    fn actions(&mut self, id: EntryId) {
        let is_action = |relation: &Relation| matches!(relation, Relation::Acts { .. });
        let mut facts = family_facts(self.vocabulary, id, is_action);
        // A part says only what it adds to its whole.
        for whole in self.vocabulary.wholes(id) {
            for fact in self.vocabulary.entry(whole).facts.iter().filter(|fact| is_action(&fact.relation)) {
                if !facts.iter().any(|(_, known)| known.relation == fact.relation) {
                    facts.push((whole, fact));
                }
            }
        }
        let mut rows: Vec<Row> = Vec::new();
        for (owner, fact) in facts {
            let Relation::Acts { movement, target, role } = fact.relation else { continue };
            let mut marks: Vec<String> = Vec::new();
            if owner != id {
                marks.push(text_of(&self.owner_label(id, owner)));
            }
            if role == Role::Assistant {
                marks.push(role.word().to_owned());
            }
            if fact.variant {
                marks.push("variant".to_owned());
            }
            marks.extend(fact.note.iter().map(|note| note.trim_end_matches('.').to_owned()));
            let mut pieces = vec![self.entry(movement)];
            if !marks.is_empty() {
                pieces.push(text(format!(" ({})", marks.join("; "))));
            }
            let label = vec![self.entry(target)];
            match rows.iter_mut().find(|row| row.label == label) {
                Some(row) => {
                    row.text.push(text(", "));
                    row.text.extend(pieces);
                    merge(&mut row.sources, &fact.sources);
                }
                None => rows.push(Row { label, text: pieces, sources: fact.sources.clone(), ..Row::default() }),
            }
        }
        self.section("Actions by joint", rows);
    }
}
