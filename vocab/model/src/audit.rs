//! On what the facts rest.
//!
//! A fact names its sources. Here they are counted: how many facts have a source that was read, how many rest on memory
//! alone or on common practice, and which are the weakest of those that examinations ask for.

use std::collections::BTreeMap;

use crate::{Entry, EntryId, Fact, Kind, Relation, Vocabulary};

/// The source that stands for the writer's memory.
pub const MEMORY: &str = "memory";
/// The source that stands for a convention of the trade.
pub const PRACTICE: &str = "practice";

/// Facts by what they rest on. The four classes add up to `facts`.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tally {
    /// All of them.
    pub facts: usize,
    /// Two or more works that were read.
    pub several: usize,
    /// One work that was read.
    pub one: usize,
    /// Common practice, no work.
    pub practice: usize,
    /// Memory alone.
    pub memory: usize,
}

impl Tally {
    fn add(&mut self, fact: &Fact) {
        let mut works: Vec<&str> = fact.sources.iter().map(|citation| &*citation.source).collect();
        works.sort_unstable();
        works.dedup();
        let practice = works.contains(&PRACTICE);
        works.retain(|work| !matches!(*work, MEMORY | PRACTICE));
        self.facts += 1;
        *match (works.len(), practice) {
            (0, true) => &mut self.practice,
            (0, false) => &mut self.memory,
            (1, _) => &mut self.one,
            _ => &mut self.several,
        } += 1;
    }

    /// How many rest on a work that was read.
    pub const fn checked(&self) -> usize {
        self.one + self.several
    }
}

/// What an audit counts.
#[derive(Clone, Debug)]
pub struct Audit {
    /// All facts.
    pub all: Tally,
    /// Facts by kind, by the kind's word.
    pub by_kind: BTreeMap<&'static str, Tally>,
    /// How many facts cite a source of the bibliography, by its identifier.
    pub by_source: BTreeMap<String, usize>,
    /// Muscles and nerves whose usual supply, segments, origin or modality rests on memory alone, with the words of those
    /// facts: the weakest places of what examinations ask for.
    pub weakest: Vec<(EntryId, Vec<&'static str>)>,
}

/// Counts on what the facts of a vocabulary rest.
pub fn audit(vocabulary: &Vocabulary) -> Audit {
    let mut audit =
        Audit { all: Tally::default(), by_kind: BTreeMap::new(), by_source: BTreeMap::new(), weakest: Vec::new() };
    for (id, entry) in vocabulary.iter() {
        for fact in &entry.facts {
            audit.all.add(fact);
            audit.by_kind.entry(fact.relation.word()).or_default().add(fact);
            let mut cited: Vec<&str> = fact.sources.iter().map(|citation| &*citation.source).collect();
            cited.sort_unstable();
            cited.dedup();
            for source in cited {
                *audit.by_source.entry(source.to_owned()).or_default() += 1;
            }
        }
        let weak = weak_words(entry);
        if !weak.is_empty() {
            audit.weakest.push((id, weak));
        }
    }
    audit.weakest.sort_by_key(|(id, weak)| (std::cmp::Reverse(weak.len()), vocabulary.entry(*id).region, *id));
    audit
}

/// What examinations ask for first, where none of an entry's facts of that kind was read in a work.
fn weak_words(entry: &Entry) -> Vec<&'static str> {
    if !matches!(entry.kind, Kind::Muscle | Kind::Nerve) || entry.variant {
        return Vec::new();
    }
    let mut by_word: BTreeMap<&'static str, Tally> = BTreeMap::new();
    for fact in entry.facts.iter().filter(|fact| !fact.variant) {
        if matches!(
            fact.relation,
            Relation::SuppliedBy { .. }
                | Relation::Roots { .. }
                | Relation::ArisesFrom { .. }
                | Relation::Supplies { .. }
        ) {
            by_word.entry(fact.relation.word()).or_default().add(fact);
        }
    }
    by_word.into_iter().filter(|(_, tally)| tally.memory == tally.facts).map(|(word, _)| word).collect()
}
