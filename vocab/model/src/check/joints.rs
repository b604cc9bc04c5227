//! Joints: what each must have, and that muscles do at it what it allows.

use super::Problems;
use crate::{Entry, Kind, Relation};

/// A joint has a kind and bones.
pub(super) fn joint(problems: &mut Problems<'_>, entry: &Entry) {
    if !entry.facts.iter().any(|fact| matches!(fact.relation, Relation::JointKind { .. })) {
        problems.say(entry, None, "has no `kind`");
    }
    if !entry.facts.iter().any(|fact| matches!(fact.relation, Relation::Bone { .. })) {
        problems.say(entry, None, "has no `bones`");
    }
}

/// A muscle moves a joint in a way that the joint (or one of its parts or wholes) allows.
pub(super) fn actions(problems: &mut Problems<'_>, entry: &Entry) {
    let vocabulary = problems.vocabulary;
    for fact in &entry.facts {
        let Relation::Acts { movement, target, .. } = fact.relation else { continue };
        if vocabulary.kind(target) != Kind::Joint {
            continue;
        }
        let mut joints = vec![target];
        joints.extend(vocabulary.all_parts(target));
        joints.extend(vocabulary.wholes(target));
        let allowed: Vec<_> = joints
            .iter()
            .flat_map(|joint| &vocabulary.entry(*joint).facts)
            .filter_map(|fact| match fact.relation {
                Relation::Allows { movement, .. } => Some(movement),
                _ => None,
            })
            .collect();
        if !allowed.is_empty() && !allowed.contains(&movement) && !vocabulary.entry(movement).is_effect() {
            let what = format!(
                "acts on `{}` by {}, which is not among the movements that the joint `allows`",
                vocabulary.entry(target).id,
                vocabulary.name(movement)
            );
            problems.say(entry, Some(fact.line), &what);
        }
    }
}
