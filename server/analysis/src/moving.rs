//! What is moved: the joints that a named joint or part of the body stands for, and the movements that happen there.

use fascicle_model::{EntryId, Relation, Vocabulary};

/// The joints that a named joint or moved part stands for, with their parts and wholes.
pub fn moved_joints(vocabulary: &Vocabulary, targets: &[EntryId]) -> Vec<EntryId> {
    let mut list: Vec<EntryId> = Vec::new();
    for target in targets {
        list.push(*target);
        for fact in &vocabulary.entry(*target).facts {
            if let Relation::MovedAt { joint } = fact.relation {
                list.push(joint);
            }
        }
    }
    let mut all = list.clone();
    for id in list {
        all.extend(vocabulary.all_parts(id));
        all.extend(vocabulary.wholes(id));
    }
    all
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
        .filter(|(_, entry)| entry.kind == fascicle_model::Kind::Joint && regions.contains(&entry.region))
        .map(|(id, _)| id)
        .collect()
}
