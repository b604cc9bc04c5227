//! Walks over the graph: where a nerve comes from, what it reaches, what supplies a muscle.
//!
//! Every walk keeps a list of what it has seen, so that a cycle (which the checks forbid) could not hang it.

use crate::{EntryId, Fact, Kind, Modality, Relation, Segments, Vocabulary};

/// One nerve of a muscle.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Supply {
    /// The muscle or part at which the fact stands.
    pub muscle: EntryId,
    /// The nerve that gives the twig.
    pub nerve: EntryId,
    /// Some people only, or one source only.
    pub variant: bool,
}

/// One reading of the segments of a structure.
#[derive(Clone, Copy, Debug)]
pub struct RootReading<'v> {
    /// Segments that every description of this reading names.
    pub main: Segments,
    /// Segments that contribute less or not always.
    pub lesser: Segments,
    /// The fact with its sources.
    pub fact: &'v Fact,
}

impl RootReading<'_> {
    /// Main and lesser segments together.
    pub const fn all(&self) -> Segments {
        self.main.union(self.lesser)
    }
}

impl Vocabulary {
    /// What a nerve or plexus part arises from, as a rule and (if asked) in variants.
    pub fn origins(&self, nerve: EntryId, with_variants: bool) -> impl Iterator<Item = EntryId> {
        self.entry(nerve).facts.iter().filter_map(move |fact| match fact.relation {
            Relation::ArisesFrom { from, .. } if with_variants || !fact.variant => Some(from),
            _ => None,
        })
    }

    /// The branches of a nerve or plexus part, in order, with what it continues as last.
    pub fn branches(&self, nerve: EntryId) -> Vec<EntryId> {
        let facts = &self.entry(nerve).facts;
        let mut list: Vec<EntryId> = Vec::new();
        for fact in facts {
            if let Relation::Gives { nerve, .. } = fact.relation
                && !list.contains(&nerve)
            {
                list.push(nerve);
            }
        }
        for fact in facts {
            if let Relation::ContinuesAs { nerve, .. } = fact.relation
                && !list.contains(&nerve)
            {
                list.push(nerve);
            }
        }
        for (owner, fact) in self.pointing_at(nerve) {
            if matches!(fact.relation, Relation::ArisesFrom { .. }) && !list.contains(&owner) {
                list.push(owner);
            }
        }
        list
    }

    /// The branches that a nerve or plexus part has as a rule, in order, with what it continues as last.
    pub fn usual_branches(&self, nerve: EntryId) -> Vec<EntryId> {
        let mut list = self.branches(nerve);
        list.retain(|branch| self.origins(*branch, false).any(|from| from == nerve));
        list
    }

    /// Everything that is below a nerve as a rule, its branches and its parts, nearest first, without the nerve.
    pub fn usual_descendants(&self, nerve: EntryId) -> Vec<EntryId> {
        self.reach(nerve, |vocabulary, id| {
            let mut list = vocabulary.usual_branches(id);
            list.extend_from_slice(vocabulary.parts(id));
            list
        })
    }

    /// The way from a nerve up to an ancestor, both included, the nerve first; `None` if the ancestor is not above it.
    pub fn path_up(&self, nerve: EntryId, ancestor: EntryId) -> Option<Vec<EntryId>> {
        self.search(nerve, |id| id == ancestor, Self::above)
    }

    /// What stands directly above a nerve: what it arises from, and the whole that it is a part of.
    fn above(&self, nerve: EntryId) -> Vec<EntryId> {
        let mut list: Vec<EntryId> = self.origins(nerve, true).collect();
        list.extend(self.entry(nerve).part_of);
        list
    }

    /// Whether a nerve arises, by however many steps, from itself.
    pub fn arises_from_itself(&self, nerve: EntryId) -> bool {
        let next = |vocabulary: &Self, id| vocabulary.origins(id, true).collect();
        self.origins(nerve, true).any(|from| self.search(from, |id| id == nerve, next).is_some())
    }

    /// Whether one nerve (or plexus part, or root) is the other or stands above it.
    pub fn is_or_above(&self, ancestor: EntryId, nerve: EntryId) -> bool {
        self.path_up(nerve, ancestor).is_some()
    }

    /// Whether one nerve is the other or stands above it as a rule, variants of origin aside.
    pub fn is_usually_or_above(&self, ancestor: EntryId, nerve: EntryId) -> bool {
        let above = |vocabulary: &Self, id| {
            let mut list: Vec<EntryId> = vocabulary.origins(id, false).collect();
            list.extend(vocabulary.entry(id).part_of);
            list
        };
        self.search(nerve, |id| id == ancestor, above).is_some()
    }

    /// Everything above a nerve, nearest first, without the nerve.
    pub fn ancestors(&self, nerve: EntryId) -> Vec<EntryId> {
        self.reach(nerve, Self::above)
    }

    /// Everything below a nerve, its branches and its parts, nearest first, without the nerve.
    pub fn descendants(&self, nerve: EntryId) -> Vec<EntryId> {
        self.reach(nerve, |vocabulary, id| {
            let mut list = vocabulary.branches(id);
            list.extend_from_slice(vocabulary.parts(id));
            list
        })
    }

    /// The parts of a structure and their parts, without the structure.
    pub fn all_parts(&self, whole: EntryId) -> Vec<EntryId> {
        self.reach(whole, |vocabulary, id| vocabulary.parts(id).to_vec())
    }

    /// The wholes that a structure is a part of, nearest first.
    pub fn wholes(&self, part: EntryId) -> Vec<EntryId> {
        self.reach(part, |vocabulary, id| vocabulary.entry(id).part_of.into_iter().collect())
    }

    /// The muscles of a group, in the vocabulary's order; groups within it included.
    pub fn members(&self, group: EntryId) -> Vec<EntryId> {
        let inner = |id: EntryId| -> Vec<EntryId> {
            self.parts(id).iter().copied().filter(|id| self.kind(*id) == Kind::Group).collect()
        };
        let mut groups = vec![group];
        groups.extend(self.reach(group, |_, id| inner(id)));
        let mut list = Vec::new();
        for group in groups {
            for (owner, fact) in self.pointing_at(group) {
                if matches!(fact.relation, Relation::Member { .. }) && !fact.variant && !list.contains(&owner) {
                    list.push(owner);
                }
            }
        }
        list.sort_unstable();
        list
    }

    /// The nerves of a muscle. A whole has those of its parts too; a part without its own has those of its whole.
    pub fn nerves_of(&self, muscle: EntryId) -> Vec<Supply> {
        let own = |id: EntryId| {
            self.entry(id).facts.iter().filter_map(move |fact| match fact.relation {
                Relation::SuppliedBy { nerve } => Some(Supply { muscle: id, nerve, variant: fact.variant }),
                _ => None,
            })
        };
        let mut list: Vec<Supply> = own(muscle).collect();
        for part in self.all_parts(muscle) {
            list.extend(own(part));
        }
        if !list.iter().any(|supply| !supply.variant) {
            for whole in self.wholes(muscle) {
                if own(whole).next().is_some() {
                    list.extend(own(whole));
                    break;
                }
            }
        }
        list
    }

    /// The muscles that a nerve supplies itself, in the order of its course; `variant` ones included.
    pub fn twigs(&self, nerve: EntryId) -> Vec<Supply> {
        let own = self.entry(nerve).facts.iter().filter_map(|fact| match fact.relation {
            Relation::Supplies { muscle, .. } => Some(Supply { muscle, nerve, variant: fact.variant }),
            _ => None,
        });
        let mut list: Vec<Supply> = own.collect();
        for (muscle, fact) in self.pointing_at(nerve) {
            if matches!(fact.relation, Relation::SuppliedBy { .. })
                && !list.iter().any(|supply| supply.muscle == muscle)
            {
                list.push(Supply { muscle, nerve, variant: fact.variant });
            }
        }
        list
    }

    /// The muscles that a nerve supplies itself and through its branches, as a rule, each once, in order.
    pub fn muscles_of(&self, nerve: EntryId) -> Vec<Supply> {
        let mut list: Vec<Supply> = Vec::new();
        for branch in std::iter::once(nerve).chain(self.descendants(nerve)) {
            for supply in self.twigs(branch) {
                if !supply.variant && !list.iter().any(|known| known.muscle == supply.muscle) {
                    list.push(supply);
                }
            }
        }
        list
    }

    /// The readings of a structure's segments, the preferred one first. A nerve without its own has those of what it
    /// continues; a part without its own has those of its whole, unless it is a nerve that arises elsewhere.
    pub fn roots_of(&self, id: EntryId) -> Vec<RootReading<'_>> {
        let own = |id: EntryId| -> Vec<RootReading<'_>> {
            let mut list: Vec<RootReading<'_>> = Vec::new();
            for fact in &self.entry(id).facts {
                if let Relation::Roots { main, lesser } = fact.relation {
                    list.push(RootReading { main, lesser, fact });
                }
            }
            list.sort_by_key(|reading| reading.fact.variant);
            list
        };
        let list = own(id);
        if !list.is_empty() {
            return list;
        }
        let elsewhere = self.origins(id, true).next().is_some()
            && !self.entry(id).part_of.is_some_and(|whole| self.origins(id, true).any(|from| from == whole));
        if elsewhere {
            return list;
        }
        self.wholes(id).into_iter().map(own).find(|list| !list.is_empty()).unwrap_or_default()
    }

    /// Every segment that any reading gives a nerve or, where it has none, what it arises from.
    pub fn possible_segments(&self, nerve: EntryId) -> Segments {
        if self.kind(nerve) == Kind::Root {
            return Segments::parse(self.name(nerve)).unwrap_or_default();
        }
        let own = self.roots_of(nerve).iter().fold(Segments::EMPTY, |all, reading| all.union(reading.all()));
        if !own.is_empty() {
            return own;
        }
        let mut seen = Vec::new();
        let mut open: Vec<EntryId> = self.origins(nerve, true).collect();
        let mut all = Segments::EMPTY;
        while let Some(id) = open.pop() {
            if seen.contains(&id) {
                continue;
            }
            seen.push(id);
            let here = if self.kind(id) == Kind::Root {
                Segments::parse(self.name(id)).unwrap_or_default()
            } else {
                self.roots_of(id).iter().fold(Segments::EMPTY, |all, reading| all.union(reading.all()))
            };
            if here.is_empty() {
                open.extend(self.origins(id, true));
            }
            all = all.union(here);
        }
        all
    }

    /// Motor, sensory or mixed, where the vocabulary says so.
    pub fn modality(&self, nerve: EntryId) -> Option<Modality> {
        self.entry(nerve).facts.iter().find_map(|fact| match fact.relation {
            Relation::Modality { is } if !fact.variant => Some(is),
            _ => None,
        })
    }

    /// Whether an entry is a spinal segment or anything that carries nerve fibres.
    pub fn is_neural(&self, id: EntryId) -> bool {
        matches!(self.kind(id), Kind::Nerve | Kind::Plexus | Kind::Root)
    }

    fn reach(&self, start: EntryId, next: impl Fn(&Self, EntryId) -> Vec<EntryId>) -> Vec<EntryId> {
        let mut seen = vec![start];
        let mut at = 0;
        while let Some(id) = seen.get(at).copied() {
            for id in next(self, id) {
                if !seen.contains(&id) {
                    seen.push(id);
                }
            }
            at += 1;
        }
        seen.remove(0);
        seen
    }

    /// The shortest way from `start` to an entry that `is_goal` accepts.
    fn search(
        &self,
        start: EntryId,
        is_goal: impl Fn(EntryId) -> bool,
        next: impl Fn(&Self, EntryId) -> Vec<EntryId>,
    ) -> Option<Vec<EntryId>> {
        let mut seen: Vec<(EntryId, usize)> = vec![(start, usize::MAX)];
        let mut at = 0;
        while let Some((id, _)) = seen.get(at).copied() {
            if is_goal(id) {
                let mut path = Vec::new();
                let mut step = at;
                while let Some((id, from)) = seen.get(step) {
                    path.push(*id);
                    step = *from;
                }
                path.reverse();
                return Some(path);
            }
            for id in next(self, id) {
                if !seen.iter().any(|(known, _)| *known == id) {
                    seen.push((id, at));
                }
            }
            at += 1;
        }
        None
    }
}
