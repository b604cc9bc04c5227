//! Whether a muscle crosses a joint: taken apart at that joint, the skeleton has ends of the muscle on both sides.

use fascicle_model::{EntryId, Fact, Kind, Relation, Vocabulary};
use rustc_hash::FxHashSet;

use super::{Judgement, Verdict, list, the};
use crate::moving::moved_joints;

/// Judges that a muscle crosses a joint, or acts on it.
pub fn judge(vocabulary: &Vocabulary, muscle: EntryId, joint: EntryId) -> Judgement {
    if vocabulary.kind(joint) != Kind::Joint || vocabulary.kind(muscle) != Kind::Muscle {
        return Judgement::unknown();
    }
    let joints = moved_joints(vocabulary, &[joint]);
    let mut family: Vec<EntryId> = std::iter::once(muscle).chain(vocabulary.all_parts(muscle)).collect();
    let facts = |family: &[EntryId]| -> Vec<&Fact> {
        family.iter().flat_map(|id| vocabulary.entry(*id).facts.iter()).collect()
    };
    let is_end = |fact: &&Fact, wanted: bool| match fact.relation {
        Relation::Origin { .. } => wanted,
        Relation::Insertion { .. } => !wanted,
        _ => false,
    };
    // A head has the insertion of its muscle where it has none of its own.
    let own = facts(&family);
    if !own.iter().any(|fact| is_end(fact, true)) || !own.iter().any(|fact| is_end(fact, false)) {
        family.extend(vocabulary.wholes(muscle));
    }
    let own = facts(&family);
    let told = |why: &str| format!("{} {why} {}", vocabulary.name(muscle), the(vocabulary, joint));
    let acts = own
        .iter()
        .any(|fact| matches!(fact.relation, Relation::Acts { target, .. } if joints.holds(vocabulary, target)));
    let bony = |wanted: bool| -> Vec<EntryId> {
        own.iter()
            .filter(|fact| is_end(fact, wanted))
            .filter_map(|fact| bone(vocabulary, fact.relation.target()?))
            .collect()
    };
    let (origins, insertions) = (bony(true), bony(false));
    let bones: Vec<EntryId> = origins.iter().chain(&insertions).copied().collect();
    // A septum or a ligament binds a muscle to nothing far away; a tract may.
    let is_near = |place: EntryId| {
        bone(vocabulary, place).is_some()
            || vocabulary.name(place).split(' ').any(crate::lexicon::binds_nearby)
                && bones.iter().any(|bone| vocabulary.entry(*bone).region == vocabulary.entry(place).region)
    };
    let all_near = own
        .iter()
        .filter(|fact| is_end(fact, true) || is_end(fact, false))
        .all(|fact| fact.relation.target().is_some_and(is_near));
    let skeleton = Skeleton::new(vocabulary);
    if acts || skeleton.has_on_both_sides(vocabulary, &bones, &joints.own, false) {
        return Judgement::new(Verdict::Agrees, told("crosses"));
    }
    let is_known = !origins.is_empty()
        && !insertions.is_empty()
        && all_near
        && bones.iter().all(|bone| skeleton.holds(*bone))
        && joints.own.iter().flat_map(|joint| bones_of(vocabulary, *joint)).count() > 1;
    if !is_known || skeleton.has_on_both_sides(vocabulary, &bones, &joints.own, true) {
        return Judgement::unknown();
    }
    let mut names: Vec<String> = Vec::new();
    for bone in bones {
        let name = the(vocabulary, bone);
        if !names.contains(&name) {
            names.push(name);
        }
    }
    Judgement::new(Verdict::Contradicts, format!("{}: it is attached to {}", told("does not cross"), list(&names)))
}

/// The bone of an attachment.
fn bone(vocabulary: &Vocabulary, place: EntryId) -> Option<EntryId> {
    std::iter::once(place)
        .chain(vocabulary.wholes(place))
        .find(|id| vocabulary.entry(*id).class.as_deref() == Some("bone"))
}

/// The bones that take part in a joint.
fn bones_of(vocabulary: &Vocabulary, joint: EntryId) -> impl Iterator<Item = EntryId> {
    vocabulary.entry(joint).facts.iter().filter_map(|fact| match fact.relation {
        Relation::Bone { bone } => Some(bone),
        _ => None,
    })
}

/// Which bones meet in which joint.
struct Skeleton {
    joints: Vec<(EntryId, Vec<EntryId>)>,
}

impl Skeleton {
    fn new(vocabulary: &Vocabulary) -> Self {
        let joints = vocabulary
            .iter()
            .filter(|(_, entry)| entry.kind == Kind::Joint)
            .map(|(id, _)| {
                (id, bones_of(vocabulary, id).map(|place| bone(vocabulary, place).unwrap_or(place)).collect())
            })
            .collect();
        Self { joints }
    }

    fn holds(&self, bone: EntryId) -> bool {
        self.joints.iter().any(|(_, bones)| bones.contains(&bone))
    }

    /// Whether these bones do not all hang together once some joints are taken away; `widely` also takes away every other
    /// joint between two bones of those.
    fn has_on_both_sides(&self, vocabulary: &Vocabulary, bones: &[EntryId], cut: &[EntryId], widely: bool) -> bool {
        let between: Vec<EntryId> = cut
            .iter()
            .flat_map(|joint| bones_of(vocabulary, *joint))
            .map(|place| bone(vocabulary, place).unwrap_or(place))
            .collect();
        let Some(first) = bones.first() else { return false };
        if between.is_empty() {
            return false;
        }
        let mut reached: FxHashSet<EntryId> = FxHashSet::default();
        let mut open = vec![*first];
        while let Some(bone) = open.pop() {
            if !reached.insert(bone) {
                continue;
            }
            for (joint, members) in self.joints.iter().filter(|(_, members)| members.contains(&bone)) {
                if cut.contains(joint) {
                    continue;
                }
                let parted = |other: &EntryId| widely && between.contains(&bone) && between.contains(other);
                open.extend(members.iter().copied().filter(|other| !parted(other)));
            }
        }
        let is_known = |bone: &EntryId| widely || self.holds(*bone);
        bones.iter().any(|bone| is_known(bone) && !reached.contains(bone))
    }
}
