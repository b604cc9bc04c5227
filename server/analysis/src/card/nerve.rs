//! The card of a nerve or a plexus: the way from the roots, its course, what it
//! supplies and feels, how it is injured.

use fascicle_model::graph::RootReading;
use fascicle_model::{EntryId, Kind, Modality, Relation, Segments};

use super::facts::usual_muscles;
use super::maker::{Maker, text};
use super::path::{path_from_roots, path_pieces};
use super::{Piece, Row, short_name};

impl Maker<'_> {
    pub(super) fn nerve(&mut self, id: EntryId) {
        let facts = &self.vocabulary.entry(id).facts;
        let own = self.vocabulary.roots_of(id).first().map_or(Segments::EMPTY, RootReading::all);
        let steps = path_from_roots(self.vocabulary, id, own);
        if steps.len() > 1 {
            self.section("Path", vec![Row { text: path_pieces(self.vocabulary, &steps), ..Row::default() }]);
        }
        self.segments(id);
        let mut rows = Vec::new();
        for fact in facts {
            match &fact.relation {
                Relation::Modality { is } => rows.push(Self::row(fact, vec![text(modality(*is))])),
                Relation::Carries { fibres } => {
                    rows.push(Self::row(fact, vec![text(format!("carries {fibres} fibres"))]));
                }
                _ => {}
            }
        }
        self.section("Carries", rows);
        let mut rows = Vec::new();
        for fact in facts {
            if let Relation::ArisesFrom { from, at } = fact.relation {
                rows.push(Self::row(fact, self.with_place(vec![self.entry(from)], at, "at")));
            }
        }
        self.section("Arises from", rows);
        self.course(id);
        self.muscles_by_branch(id);
        for (title, kind) in [("Skin and mucosa", Kind::Skin), ("Joints", Kind::Joint)] {
            let mut felt = Vec::new();
            for nerve in std::iter::once(id).chain(self.vocabulary.usual_descendants(id)) {
                for fact in self.vocabulary.entry(nerve).facts.iter().filter(|fact| !fact.variant) {
                    if let Relation::Feels { target } = fact.relation
                        && self.vocabulary.kind(target) == kind
                        && !felt.contains(&target)
                    {
                        felt.push(target);
                    }
                }
                for (owner, fact) in self.vocabulary.pointing_at(nerve) {
                    if matches!(fact.relation, Relation::FeltBy { .. })
                        && self.vocabulary.kind(owner) == kind
                        && !fact.variant
                        && !felt.contains(&owner)
                    {
                        felt.push(owner);
                    }
                }
            }
            if !felt.is_empty() {
                let row = Row { text: self.names(&felt), ..Row::default() };
                self.section(title, vec![row]);
            }
        }
        self.injuries(id);
        self.family(id);
    }

    /// The muscles that a nerve supplies as a rule: its own, then those of each of its branches. Those of a plexus are told
    /// by its branches alone.
    fn muscles_by_branch(&mut self, id: EntryId) {
        let all = usual_muscles(self.vocabulary, id);
        let mut told: Vec<EntryId> = Vec::new();
        let mut rows = Vec::new();
        let twigs = self.vocabulary.twigs(id);
        let own: Vec<EntryId> = twigs.iter().filter(|twig| !twig.variant).map(|twig| twig.muscle).collect();
        for (branch, muscles) in std::iter::once((id, own)).chain(
            self.vocabulary.branches(id).into_iter().map(|branch| (branch, usual_muscles(self.vocabulary, branch))),
        ) {
            let news: Vec<EntryId> =
                muscles.into_iter().filter(|muscle| all.contains(muscle) && !told.contains(muscle)).collect();
            if !news.is_empty() {
                told.extend(&news);
                let label = if branch == id { Vec::new() } else { vec![self.entry(branch)] };
                rows.push(Row { label, text: self.names(&news), ..Row::default() });
            }
        }
        let others: Vec<EntryId> = all.into_iter().filter(|muscle| !told.contains(muscle)).collect();
        if !others.is_empty() {
            rows.push(Row { text: self.names(&others), ..Row::default() });
        }
        self.section("Muscles", rows);
    }

    /// The branches of a plexus, by the part of it from which they come.
    fn branches_of_parts(&mut self, id: EntryId) {
        let parts = self.vocabulary.all_parts(id);
        let mut rows = Vec::new();
        for part in &parts {
            let branches: Vec<EntryId> =
                self.vocabulary.branches(*part).into_iter().filter(|branch| !parts.contains(branch)).collect();
            if !branches.is_empty() {
                let label = vec![Piece::Entry(*part, short_name(self.vocabulary, *part).to_owned())];
                rows.push(Row { label, text: self.names(&branches), ..Row::default() });
            }
        }
        self.section("Branches, by part", rows);
    }

    fn injuries(&mut self, id: EntryId) {
        let mut rows = Vec::new();
        for fact in &self.vocabulary.entry(id).facts {
            let (label, pieces) = match &fact.relation {
                Relation::Injured { at, cause } => {
                    let mut pieces = vec![self.entry(*at)];
                    if let Some(cause) = cause {
                        pieces.push(text(format!(": {cause}")));
                    }
                    ("Site", pieces)
                }
                Relation::Sign { sign, at } => ("Sign", self.with_place(vec![text(sign)], *at, "with a lesion at")),
                _ => continue,
            };
            rows.push(Row { label: vec![text(label)], ..Self::row(fact, pieces) });
        }
        self.add("Usual injury and its signs", rows, true);
    }

    /// The steps of a course, proximal to distal, then what no step names.
    pub(super) fn course(&mut self, id: EntryId) {
        let mut rows = Vec::new();
        let mut named = Vec::new();
        for fact in &self.vocabulary.entry(id).facts {
            let pieces = match &fact.relation {
                Relation::Passes { landmark, how } => {
                    let how = how.as_deref().unwrap_or("by");
                    vec![text(format!("passes {how} ")), self.entry(*landmark)]
                }
                Relation::Gives { nerve, at } => {
                    named.push(*nerve);
                    self.with_place(vec![text("gives "), self.entry(*nerve)], *at, "at")
                }
                Relation::Supplies { muscle, at } => {
                    self.with_place(vec![text("supplies "), self.entry(*muscle)], *at, "at")
                }
                Relation::Feels { target } => vec![text("sensory to "), self.entry(*target)],
                Relation::Joins { with } => vec![text("communicates with "), self.entry(*with)],
                Relation::ContinuesAs { nerve, at } => {
                    named.push(*nerve);
                    self.with_place(vec![text("continues as "), self.entry(*nerve)], *at, "at")
                }
                _ => continue,
            };
            let continues = matches!(fact.relation, Relation::ContinuesAs { .. });
            rows.push((continues, Self::row(fact, pieces)));
        }
        rows.sort_by_key(|(continues, _)| *continues);
        let mut rows: Vec<Row> = rows.into_iter().map(|(_, row)| row).collect();
        let others: Vec<EntryId> =
            self.vocabulary.branches(id).into_iter().filter(|branch| !named.contains(branch)).collect();
        if !others.is_empty() {
            let mut pieces = vec![text("gives ")];
            pieces.extend(self.names(&others));
            rows.push(Row { text: pieces, ..Row::default() });
        }
        let title = if self.vocabulary.is_neural(id) { "Course and branches, in order" } else { "Course, in order" };
        self.section(title, rows);
        if self.vocabulary.kind(id) == Kind::Plexus {
            self.branches_of_parts(id);
        }
    }
}

fn modality(modality: Modality) -> &'static str {
    match modality {
        Modality::Motor => "motor",
        Modality::Sensory => "sensory",
        Modality::Mixed => "motor and sensory",
    }
}
