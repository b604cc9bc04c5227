//! The card of a joint: kind, bones, movements with the muscles that carry them, ligaments, nerves.

use fascicle_model::{EntryId, Relation, Role};

use super::cite::cite;
use super::maker::{Maker, in_one_row, text};
use super::{Piece, Row};

/// Joints, or other targets, with the muscles that move them and how much each does.
pub(super) type Movers = Vec<(EntryId, Vec<(EntryId, Role)>)>;

impl Maker<'_> {
    pub(super) fn joint(&mut self, id: EntryId) {
        let facts = &self.vocabulary.entry(id).facts;
        let collect = |test: &dyn Fn(&Relation) -> Option<Vec<Piece>>| -> Vec<Row> {
            facts.iter().filter_map(|fact| Some(Self::row(fact, test(&fact.relation)?))).collect()
        };
        let kind = collect(&|relation| match relation {
            Relation::JointKind { class, subtype: Some(subtype) } => Some(vec![text(format!("{class}, {subtype}"))]),
            Relation::JointKind { class, subtype: None } => Some(vec![text(class)]),
            _ => None,
        });
        let bones = in_one_row(collect(&|relation| match relation {
            Relation::Bone { bone } => Some(vec![self.entry(*bone)]),
            _ => None,
        }));
        let ligaments = in_one_row(collect(&|relation| match relation {
            Relation::Ligament { ligament } => Some(vec![self.entry(*ligament)]),
            _ => None,
        }));
        let nerves = in_one_row(collect(&|relation| match relation {
            Relation::FeltBy { nerve } => Some(vec![self.entry(*nerve)]),
            _ => None,
        }));
        let movements = self.movements(id);
        self.section("Kind", kind);
        self.section("Bones", bones);
        self.section("Movements, with the muscles that carry them", movements);
        self.section("Ligaments", ligaments);
        self.section("Nerves", nerves);
        let mut member = Vec::new();
        for fact in &self.vocabulary.entry(id).facts {
            if let Relation::Member { of } = fact.relation {
                member.push(Self::row(fact, vec![self.entry(of)]));
            }
        }
        self.section("Group", member);
        self.family(id);
    }

    /// The movements of a joint with their range, each with its movers below.
    fn movements(&self, joint: EntryId) -> Vec<Row> {
        let movers = self.movers(joint);
        let mut rows = Vec::new();
        let mut told = Vec::new();
        for fact in &self.vocabulary.entry(joint).facts {
            let Relation::Allows { movement, degrees } = fact.relation else { continue };
            let mut row = Self::row(fact, vec![self.entry(movement)]);
            if let Some(degrees) = degrees {
                row.text.push(text(format!(" to {degrees}°")));
                if !fact.variant {
                    let sources: Vec<String> = fact.sources.iter().map(|at| cite(self.vocabulary, at)).collect();
                    row.notes.insert(0, sources.join(", "));
                }
            }
            rows.push(row);
            if !told.contains(&movement) {
                told.push(movement);
                let list = movers.iter().find(|(known, _)| *known == movement);
                rows.extend(list.into_iter().flat_map(|(_, list)| self.mover_rows(list)));
            }
        }
        for (movement, list) in movers.iter().filter(|(movement, _)| !told.contains(movement)) {
            rows.push(Row { text: vec![self.entry(*movement)], ..Row::default() });
            rows.extend(self.mover_rows(list));
        }
        rows
    }

    /// The muscles that act on a joint, by movement; a part is left out where its whole does the same.
    fn movers(&self, joint: EntryId) -> Movers {
        let mut list: Movers = Vec::new();
        for (muscle, fact) in self.vocabulary.pointing_at(joint) {
            let Relation::Acts { movement, role, .. } = fact.relation else { continue };
            if fact.variant {
                continue;
            }
            match list.iter_mut().find(|(known, _)| *known == movement) {
                Some((_, muscles)) => muscles.push((muscle, role)),
                None => list.push((movement, vec![(muscle, role)])),
            }
        }
        for (_, muscles) in &mut list {
            self.wholes_first(muscles);
        }
        list
    }

    /// Leaves out parts whose whole is there too; prime movers first.
    pub(super) fn wholes_first(&self, muscles: &mut Vec<(EntryId, Role)>) {
        let all: Vec<EntryId> = muscles.iter().map(|(muscle, _)| *muscle).collect();
        muscles.retain(|(muscle, _)| !self.vocabulary.wholes(*muscle).iter().any(|whole| all.contains(whole)));
        muscles.sort_by_key(|(_, role)| *role);
    }

    /// Muscles with their nerves, those that do most in one row, those that help in the next.
    pub(super) fn mover_rows(&self, muscles: &[(EntryId, Role)]) -> Vec<Row> {
        let mut rows = Vec::new();
        for (wanted, label) in [(Role::Prime, "prime movers"), (Role::Assistant, "assistants")] {
            let mut pieces = Vec::new();
            for (muscle, _) in muscles.iter().filter(|(_, role)| *role == wanted) {
                if !pieces.is_empty() {
                    pieces.push(text("; "));
                }
                pieces.push(self.entry(*muscle));
                let mut nerves: Vec<&str> = Vec::new();
                for supply in self.vocabulary.nerves_of(*muscle).iter().filter(|supply| !supply.variant) {
                    let name = self.vocabulary.name(supply.nerve);
                    if !nerves.contains(&name) {
                        nerves.push(name);
                    }
                }
                if !nerves.is_empty() {
                    pieces.push(text(format!(" ({})", nerves.join(", "))));
                }
            }
            if !pieces.is_empty() {
                rows.push(Row { depth: 1, label: vec![text(label)], text: pieces, ..Row::default() });
            }
        }
        rows
    }
}
