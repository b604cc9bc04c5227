//! The card of a spinal segment: what tests it, the muscles and the skin that belong to it.

use fascicle_model::{EntryId, Fact, Kind, Region, Relation};

use super::Row;
use super::maker::{Maker, in_one_row, text};

impl Maker<'_> {
    pub(super) fn root(&mut self, id: EntryId) {
        let segment = self.vocabulary.possible_segments(id);
        let mut rows = Vec::new();
        for fact in &self.vocabulary.entry(id).facts {
            let (label, pieces) = match &fact.relation {
                Relation::KeyMuscle { muscle, movement } => {
                    let acts = |fact: &&Fact| {
                        !fact.variant
                            && matches!(fact.relation, Relation::Acts { movement: known, .. } if known == *movement)
                    };
                    let at = self.vocabulary.entry(*muscle).facts.iter().find(acts);
                    let pieces = vec![self.entry(*muscle), text(", tested by "), self.entry(*movement)];
                    ("Key muscle", self.with_place(pieces, at.and_then(|fact| fact.relation.target()), "at"))
                }
                Relation::KeyPoint { skin } => ("Key sensory point", vec![self.entry(*skin)]),
                Relation::Reflex { reflex } => ("Reflex", vec![text(reflex)]),
                _ => continue,
            };
            rows.push(Row { label: vec![text(label)], ..Self::row(fact, pieces) });
        }
        self.section("Tested by", in_one_row(rows));
        let mut main = Vec::new();
        let mut lesser = Vec::new();
        let mut dermatomes = Vec::new();
        let mut areas = Vec::new();
        for (owner, entry) in self.vocabulary.iter() {
            let roots = entry.facts.iter().filter(|fact| !fact.variant).find_map(|fact| match fact.relation {
                Relation::Roots { main, lesser } => Some((main, lesser)),
                _ => None,
            });
            let Some((in_main, in_lesser)) = roots else { continue };
            match (entry.kind, entry.class.as_deref()) {
                (Kind::Muscle, _) if segment.within(in_main) => main.push(owner),
                (Kind::Muscle, _) if segment.within(in_lesser) => lesser.push(owner),
                (Kind::Skin, Some("point")) => {}
                (Kind::Skin, Some("dermatome")) if segment.within(in_main) => dermatomes.push(owner),
                (Kind::Skin, _) if segment.within(in_main) => areas.push(owner),
                _ => {}
            }
        }
        for (title, muscles) in [("Myotome", main), ("Myotome, lesser segment", lesser)] {
            let rows = self.by_region(&muscles);
            self.section(title, rows);
        }
        let mut rows = Vec::new();
        for (label, list) in [("Dermatome", &dermatomes), ("Skin", &areas)] {
            if !list.is_empty() {
                rows.push(Row { label: vec![text(label)], text: self.names(list), ..Row::default() });
            }
        }
        self.section("Dermatome and skin", rows);
        let branches = self.vocabulary.branches(id);
        if !branches.is_empty() {
            let row = Row { text: self.names(&branches), ..Row::default() };
            self.section("Gives rise to", vec![row]);
        }
    }

    /// Muscles in one row a region, from above; a part is left out where its whole is there.
    fn by_region(&self, muscles: &[EntryId]) -> Vec<Row> {
        let is_told = |id: &EntryId| self.vocabulary.wholes(*id).iter().any(|whole| muscles.contains(whole));
        let mut regions: Vec<(Region, Vec<EntryId>)> = Vec::new();
        for id in muscles.iter().filter(|id| !is_told(id)) {
            let region = self.vocabulary.entry(*id).region;
            match regions.iter_mut().find(|(known, _)| *known == region) {
                Some((_, list)) => list.push(*id),
                None => regions.push((region, vec![*id])),
            }
        }
        regions.sort_by_key(|(region, _)| *region);
        let row = |(region, list): (Region, Vec<EntryId>)| Row {
            label: vec![text(region.word())],
            text: self.names(&list),
            ..Row::default()
        };
        regions.into_iter().map(row).collect()
    }
}
