//! The branch tree of a nerve: where it comes from, what it passes, what it gives, in order from proximal to distal.
//!
//! [`branch_tree`] gathers the rows; [`Tree::text`] writes them for a terminal or a card, [`Tree::svg`] draws them.

mod svg;
mod text;

use fascicle_model::{EntryId, Kind, Relation, Vocabulary};

/// A tree with more rows than this is drawn with fewer levels.
const ROWS: usize = 90;

/// What a row of the tree stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum RowKind {
    /// Spinal segments at the top.
    Roots,
    /// What the nerve comes from.
    Origin,
    /// The nerve that the tree is about, and its branches.
    Nerve,
    /// A muscle.
    Muscle,
    /// Skin, mucosa or a joint that is felt.
    Sensory,
    /// A place that the nerve passes.
    Landmark,
}

/// A row of the tree.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// How deep it stands; 0 for the nerve itself and for what is above it.
    pub depth: usize,
    /// What it stands for.
    pub kind: RowKind,
    /// Its words, each with the entry that it names.
    pub parts: Vec<(String, Option<EntryId>)>,
    /// What is said in front ("continues as") or empty.
    pub lead: String,
    /// What is said behind (segments, number of muscles below) or empty.
    pub remark: String,
    /// Some people only, or one source only.
    pub variant: bool,
    /// The structure that was asked for.
    pub marked: bool,
}

/// The branch tree of a nerve.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tree {
    /// The nerve.
    pub nerve: EntryId,
    /// From the roots down.
    pub rows: Vec<Row>,
}

/// The nerve whose tree shows a structure: the nerve itself; the nerve of a muscle, a skin area or a joint.
pub fn nerve_of(vocabulary: &Vocabulary, id: EntryId) -> Option<EntryId> {
    match vocabulary.kind(id) {
        Kind::Nerve | Kind::Plexus | Kind::Root => Some(id),
        Kind::Muscle => {
            let nerves = vocabulary.nerves_of(id);
            nerves.iter().find(|supply| !supply.variant).or(nerves.first()).map(|supply| supply.nerve)
        }
        Kind::Skin | Kind::Joint => vocabulary
            .pointing_at(id)
            .find(|(_, fact)| matches!(fact.relation, Relation::Feels { .. }) && !fact.variant)
            .map(|(owner, _)| owner)
            .or_else(|| {
                vocabulary.entry(id).facts.iter().find_map(|fact| match fact.relation {
                    Relation::FeltBy { nerve } => Some(nerve),
                    _ => None,
                })
            }),
        Kind::Landmark | Kind::Movement | Kind::Group => None,
    }
}

/// The branch tree that shows a structure, or `None` if no nerve belongs to it.
pub fn branch_tree(vocabulary: &Vocabulary, id: EntryId) -> Option<Tree> {
    let nerve = nerve_of(vocabulary, id)?;
    let mut rows = Vec::new();
    for levels in [3, 2, 1] {
        let mut gather = Gather { vocabulary, marked: id, levels, rows: Vec::new(), seen: vec![nerve] };
        gather.above(nerve);
        gather.push(0, RowKind::Nerve, nerve, "", false);
        gather.below(nerve, 1);
        rows = gather.rows;
        if rows.len() <= ROWS {
            break;
        }
    }
    Some(Tree { nerve, rows })
}

struct Gather<'v> {
    vocabulary: &'v Vocabulary,
    marked: EntryId,
    levels: usize,
    rows: Vec<Row>,
    seen: Vec<EntryId>,
}

impl Gather<'_> {
    fn push(&mut self, depth: usize, kind: RowKind, id: EntryId, lead: &str, variant: bool) {
        let remark = match kind {
            RowKind::Muscle => {
                self.vocabulary.roots_of(id).first().map(|reading| reading.main.to_string()).unwrap_or_default()
            }
            _ => String::new(),
        };
        self.rows.push(Row {
            depth,
            kind,
            parts: vec![(self.vocabulary.name(id).to_owned(), Some(id))],
            lead: lead.to_owned(),
            remark,
            variant,
            marked: id == self.marked,
        });
    }

    /// Segments and plexus parts from which the nerve comes, the farthest first.
    fn above(&mut self, nerve: EntryId) {
        let vocabulary = self.vocabulary;
        let mut levels: Vec<Vec<EntryId>> = Vec::new();
        let mut level = vec![nerve];
        let mut seen = vec![nerve];
        while levels.len() < 6 {
            let mut next: Vec<EntryId> = Vec::new();
            for id in level.iter().flat_map(|id| vocabulary.origins(*id, false)) {
                if vocabulary.kind(id) != Kind::Root && !seen.contains(&id) {
                    seen.push(id);
                    next.push(id);
                }
            }
            if next.is_empty() {
                break;
            }
            levels.push(next.clone());
            level = next;
        }
        let segments = vocabulary.possible_segments(nerve);
        if !segments.is_empty() && vocabulary.kind(nerve) != Kind::Root {
            let text = segments.to_string();
            self.rows.push(Row {
                depth: 0,
                kind: RowKind::Roots,
                parts: vec![(text, None)],
                lead: String::new(),
                remark: String::new(),
                variant: false,
                marked: false,
            });
        }
        for level in levels.into_iter().rev() {
            let names: Vec<(&str, Option<EntryId>)> =
                level.iter().map(|id| (vocabulary.name(*id), Some(*id))).collect();
            self.rows.push(Row {
                depth: 0,
                kind: RowKind::Origin,
                marked: level.contains(&self.marked),
                parts: shared_words_once(&names),
                lead: String::new(),
                remark: String::new(),
                variant: false,
            });
        }
    }

    /// The steps of a nerve's course, its twigs and branches, in order.
    fn below(&mut self, nerve: EntryId, depth: usize) {
        let vocabulary = self.vocabulary;
        for fact in &vocabulary.entry(nerve).facts {
            match fact.relation {
                Relation::Passes { landmark, ref how } if depth == 1 && !fact.variant => {
                    self.push(depth, RowKind::Landmark, landmark, how.as_deref().unwrap_or("past"), false);
                }
                Relation::Gives { nerve, .. } => self.branch(nerve, depth, "", fact.variant),
                Relation::Supplies { muscle, .. } => self.leaf(muscle, depth, RowKind::Muscle, fact.variant),
                Relation::Feels { target } => self.leaf(target, depth, RowKind::Sensory, fact.variant),
                _ => {}
            }
        }
        for supply in vocabulary.twigs(nerve) {
            self.leaf(supply.muscle, depth, RowKind::Muscle, supply.variant);
        }
        let ends: Vec<EntryId> = vocabulary
            .entry(nerve)
            .facts
            .iter()
            .filter_map(|fact| match fact.relation {
                Relation::ContinuesAs { nerve, .. } => Some(nerve),
                _ => None,
            })
            .collect();
        for branch in vocabulary.branches(nerve) {
            let lead = if ends.contains(&branch) { "continues as" } else { "" };
            let variant = !vocabulary.origins(branch, false).any(|origin| origin == nerve) && lead.is_empty();
            self.branch(branch, depth, lead, variant);
        }
    }

    fn branch(&mut self, nerve: EntryId, depth: usize, lead: &str, variant: bool) {
        if self.seen.contains(&nerve) || (variant && depth > 1) {
            return;
        }
        self.seen.push(nerve);
        self.push(depth, RowKind::Nerve, nerve, lead, variant);
        if depth < self.levels {
            self.below(nerve, depth + 1);
        } else if let Some(row) = self.rows.last_mut() {
            row.remark = match self.vocabulary.muscles_of(nerve).len() {
                0 => String::new(),
                1 => "1 muscle".to_owned(),
                count => format!("{count} muscles"),
            };
        }
    }

    fn leaf(&mut self, id: EntryId, depth: usize, kind: RowKind, variant: bool) {
        let shown =
            self.rows.iter().rev().take_while(|row| row.depth >= depth).any(|row| {
                row.depth == depth && row.kind == kind && row.parts.iter().any(|(_, known)| *known == Some(id))
            });
        if !shown && (depth == 1 || !variant) {
            self.push(depth, kind, id, "", variant);
        }
    }
}

/// Names in a row, with the words that all of them begin or end with said once: *upper + middle + lower trunk*.
fn shared_words_once(names: &[(&str, Option<EntryId>)]) -> Vec<(String, Option<EntryId>)> {
    let words: Vec<Vec<&str>> = names.iter().map(|(name, _)| name.split(' ').collect()).collect();
    let shortest = words.iter().map(Vec::len).min().unwrap_or(0).saturating_sub(1);
    let shared = |word: &dyn Fn(&Vec<&str>, usize) -> Option<String>, most: usize| {
        (0..most).take_while(|at| words.windows(2).all(|pair| word(&pair[0], *at) == word(&pair[1], *at))).count()
    };
    let front = shared(&|list, at| list.get(at).map(ToString::to_string), shortest);
    let back = shared(&|list, at| list.iter().rev().nth(at).map(ToString::to_string), shortest - front);
    let last = names.len().saturating_sub(1);
    let cut = |number: usize, list: &Vec<&str>| {
        let from = if number == 0 { 0 } else { front };
        let to = if number == last { list.len() } else { list.len() - back };
        list.get(from..to).unwrap_or_default().join(" ")
    };
    words.iter().enumerate().zip(names).map(|((number, list), (_, id))| (cut(number, list), *id)).collect()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;

    fn tree(id: &str) -> (Vocabulary, Tree) {
        let vocabulary = fascicle_vocab::built_in();
        let id = vocabulary.find(id).expect("an entry");
        let tree = branch_tree(&vocabulary, id).expect("a tree");
        (vocabulary, tree)
    }

    #[test]
    fn a_tree_goes_from_the_roots_to_the_muscles() {
        let (vocabulary, tree) = tree("axillary-nerve");
        let text = tree.text();
        let at = |what: &str| text.find(what).unwrap_or_else(|| panic!("{what} in\n{text}"));
        assert!(at("C5") < at("posterior cord of brachial plexus"));
        assert!(at("posterior cord of brachial plexus") < at("\n↓ axillary nerve"));
        assert!(at("\n↓ axillary nerve") < at("through quadrangular space"));
        assert!(at("through quadrangular space") < at("deltoid"));
        let svg = tree.svg(&vocabulary);
        assert!(svg.contains("data-id=\"deltoid\"") && svg.contains("data-id=\"teres-minor\""));
    }

    #[test]
    fn what_a_nerve_comes_from_is_said_shortly() {
        let (_, tree) = tree("median-nerve");
        let text = tree.text();
        assert!(text.contains("\n↓ lateral + medial cord of brachial plexus\n"), "{text}");
        assert!(text.contains("\n↓ anterior division of upper + middle + lower trunk of brachial plexus\n"), "{text}");
    }

    #[test]
    fn a_muscle_is_marked_in_the_tree_of_its_nerve() {
        let (vocabulary, tree) = tree("deltoid");
        assert_eq!(vocabulary.entry(tree.nerve).id, "axillary-nerve");
        let marked: Vec<&Row> = tree.rows.iter().filter(|row| row.marked).collect();
        assert!(!marked.is_empty() && marked.iter().all(|row| row.kind == RowKind::Muscle));
    }

    #[test]
    fn every_nerve_of_the_vocabulary_can_be_drawn() {
        let vocabulary = fascicle_vocab::built_in();
        let mut drawn = 0;
        for (id, _) in vocabulary.iter().filter(|(id, _)| vocabulary.is_neural(*id)) {
            let tree = branch_tree(&vocabulary, id).expect("a tree");
            let svg = tree.svg(&vocabulary);
            assert_eq!(svg.matches("<g ").count(), tree.rows.len());
            assert_eq!(tree.text().lines().count(), tree.rows.len());
            assert_eq!(svg.matches("<text").count(), svg.matches("</text>").count());
            drawn += 1;
        }
        assert!(drawn > 200, "{drawn}");
    }
}
