//! What is moved: the joints that a named joint or part of the body stands for, and the movements that happen there.

use fascicle_model::{EntryId, Kind, Relation, Vocabulary};

/// The joints that a named joint or moved part stands for.
#[derive(Clone, Debug, Default)]
pub struct Moved {
    /// Themselves and their parts.
    pub own: Vec<EntryId>,
    /// These, and the wholes that they are parts of.
    pub all: Vec<EntryId>,
}

impl Moved {
    /// Whether a fact about a joint or another moved thing speaks of one of these: it is one, or a part of one; what is told
    /// of a neighbouring joint in the same whole is not told of it.
    pub fn holds(&self, vocabulary: &Vocabulary, target: EntryId) -> bool {
        self.all.is_empty()
            || self.all.contains(&target)
            || vocabulary.wholes(target).iter().any(|whole| {
                self.own.contains(whole) || (self.all.contains(whole) && vocabulary.kind(target) != Kind::Joint)
            })
    }
}

/// The joints that a named joint or moved part stands for, with their parts and wholes.
pub fn moved_joints(vocabulary: &Vocabulary, targets: &[EntryId]) -> Moved {
    let mut list: Vec<EntryId> = Vec::new();
    for target in targets {
        list.push(*target);
        for fact in &vocabulary.entry(*target).facts {
            if let Relation::MovedAt { joint } = fact.relation {
                list.push(joint);
            }
        }
    }
    let mut own = list.clone();
    for id in &list {
        own.extend(vocabulary.all_parts(*id));
    }
    let mut all = own.clone();
    for id in list {
        all.extend(vocabulary.wholes(id));
    }
    Moved { own, all }
}

/// Whether any muscle is known to do a movement at one of these joints, as a rule.
pub fn happens_at(vocabulary: &Vocabulary, movement: EntryId, joints: &[EntryId]) -> bool {
    joints.iter().any(|joint| {
        vocabulary.pointing_at(*joint).any(|(_, fact)| {
            !fact.variant
                && matches!(fact.relation, Relation::Acts { movement: held, target, .. } if held == movement && target == *joint)
        })
    })
}

/// Joints and other moved things of the regions in which these lie.
pub fn of_the_region(vocabulary: &Vocabulary, joints: &[EntryId]) -> Vec<EntryId> {
    let regions: Vec<_> = joints.iter().map(|joint| vocabulary.entry(*joint).region).collect();
    vocabulary
        .iter()
        .filter(|(_, entry)| entry.kind == Kind::Joint && regions.contains(&entry.region))
        .map(|(id, _)| id)
        .collect()
}
