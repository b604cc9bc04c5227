//! What a document is about, and what that says about which name was meant.
//!
//! A hand lecture means *pollicis* where a pelvis lecture may not; under the heading of a nerve its muscles and branches
//! are likelier than others; a name that the document has elsewhere is likelier than one that it never uses.

use fascicle_model::{EntryId, Region};
use rustc_hash::{FxHashMap, FxHashSet};

use super::suspect::Guess;
use crate::blocks::{BlockIx, Blocks};
use crate::knowledge::Knowledge;
use crate::mentions::Mentions;
use crate::names::NameRef;

/// What a place in the same region of the body adds to a score.
const REGION: f64 = 0.03;
/// What a fact that links a guess with the heading adds.
const HEADING: f64 = 0.03;
/// What another mention in the document adds.
const MENTIONED: f64 = 0.02;

/// Whether a document speaks of anatomy: it has a name in every so many words.
pub fn is_anatomy(mentions: &[Mentions]) -> bool {
    const WORDS_A_NAME: usize = 40;
    let words: usize = mentions.iter().map(|mentions| mentions.tokens.len()).sum();
    let names: usize = mentions.iter().map(|mentions| mentions.list.len()).sum();
    names > 0 && words <= names * WORDS_A_NAME
}

/// What a document is about. It is found out when it is first asked for.
pub struct Subject<'a> {
    blocks: &'a Blocks,
    mentions: &'a [Mentions],
    knowledge: &'a Knowledge,
    gathered: Option<Gathered>,
}

#[derive(Default)]
struct Gathered {
    regions: FxHashMap<Region, u32>,
    most: u32,
    entries: FxHashSet<EntryId>,
}

impl<'a> Subject<'a> {
    /// The subject of a document.
    pub fn new(blocks: &'a Blocks, mentions: &'a [Mentions], knowledge: &'a Knowledge) -> Self {
        Self { blocks, mentions, knowledge, gathered: None }
    }

    fn gather(&self) -> Gathered {
        let mut gathered = Gathered::default();
        for mention in self.mentions.iter().flat_map(|mentions| &mentions.list) {
            for id in &mention.candidates {
                gathered.entries.insert(*id);
            }
            if let [only] = mention.candidates[..] {
                *gathered.regions.entry(self.knowledge.vocabulary.entry(only).region).or_default() += 1;
            }
        }
        gathered.most = gathered.regions.values().copied().max().unwrap_or(0);
        gathered
    }

    /// Entries that the headings over a block name.
    fn headings(&self, block: BlockIx) -> Vec<EntryId> {
        let mut list = Vec::new();
        let mut at = self.blocks.list.get(block).and_then(|block| block.heading);
        while let Some(heading) = at {
            let mentions = self.mentions.get(heading);
            list.extend(mentions.iter().flat_map(|mentions| &mentions.list).flat_map(|mention| &mention.candidates));
            at = self.blocks.list.get(heading).and_then(|block| block.heading);
        }
        list
    }

    /// Orders guesses, the likeliest first.
    pub fn rank(&mut self, block: BlockIx, guesses: &mut [Guess]) {
        if self.gathered.is_none() {
            self.gathered = Some(self.gather());
        }
        let Some(gathered) = &self.gathered else { return };
        let headings = self.headings(block);
        let vocabulary = &self.knowledge.vocabulary;
        for guess in guesses.iter_mut() {
            let bonus_of = |name: &NameRef| {
                let entry = vocabulary.entry(name.entry);
                let mut bonus = 0.0;
                if let Some(count) = gathered.regions.get(&entry.region) {
                    bonus += REGION * f64::from(*count) / f64::from(gathered.most.max(1));
                }
                if gathered.entries.contains(&name.entry) {
                    bonus += MENTIONED;
                }
                let linked = |heading: &EntryId| {
                    *heading == name.entry
                        || entry.facts.iter().any(|fact| fact.relation.target() == Some(*heading))
                        || vocabulary
                            .entry(*heading)
                            .facts
                            .iter()
                            .any(|fact| fact.relation.target() == Some(name.entry))
                };
                if headings.iter().any(linked) {
                    bonus += HEADING;
                }
                bonus
            };
            let mut names: Vec<(f64, NameRef)> = guess.names.iter().map(|name| (bonus_of(name), *name)).collect();
            names.sort_by(|a, b| b.0.total_cmp(&a.0));
            guess.score += names.first().map_or(0.0, |(bonus, _)| *bonus);
            guess.names = names.into_iter().map(|(_, name)| name).collect();
        }
        guesses.sort_by(|a, b| b.score.total_cmp(&a.score).then_with(|| a.tokens.cmp(&b.tokens)));
    }
}
