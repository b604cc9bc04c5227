//! What a relation claims of its two sides, by what they are: "arises from" speaks of roots, of a parent nerve or of a
//! muscle's origin, "supplies" of a muscle or of skin.

use fascicle_model::{EntryId, Kind, Vocabulary};

use super::sides::{Side, fits};
use crate::claims::{ClaimKind, PartRole, What};
use crate::lexicon::{self, Ending, RelationWord};
use crate::verdicts::{can_pass, is_enclosed};

/// Which end of a muscle a relation phrase speaks of; `None` where it may be either.
pub(super) fn attachment_end(relation: &RelationWord, said: &str) -> Option<&'static str> {
    let phrase = relation.phrase;
    if phrase.contains("origin|insertion") || phrase.contains("insertion|tendon") {
        // The phrase lists both: what is said tells.
        let told = |end: &'static str| said.contains(end).then_some(end);
        return told("origin").or_else(|| told("insertion"));
    }
    // "The muscles *attached* to the process": either end, whatever other verbs the phrase lists.
    let says = |wanted: Ending| said.split(' ').any(|word| lexicon::ending(word) == Some(wanted));
    let is_either = says(Ending::Either) && !says(Ending::Insertion) && !says(Ending::Origin);
    let is_told = |words: &[&str]| words.iter().any(|word| said.contains(word));
    if is_either && !is_told(&["distal", "below", "proximal", "above"]) {
        return None;
    }
    if says(Ending::Origin) && said.ends_with(" above") {
        return Some("above");
    }
    // "runs from A to B": from which of its ends a muscle is followed is up to who follows it.
    if relation.kind == ClaimKind::Attachment && says(Ending::Way) && phrase.ends_with(" from") {
        return None;
    }
    let is_origin = matches!(relation.kind, ClaimKind::Branching | ClaimKind::Roots)
        || phrase.ends_with(" from")
        || ["start", "origin", "proximal attachment of"].iter().any(|first| phrase.starts_with(first));
    let is_insertion = phrase.contains("insert")
        || ["end", "converge", "distal attachment of"].iter().any(|first| phrase.starts_with(first));
    let is_origin = is_origin
        || ["originates", "attaches|attach proximally"].iter().any(|first| phrase.starts_with(first))
        || phrase.contains(" origin at");
    let is_insertion = is_insertion || phrase.starts_with("goes") || phrase.contains(" insertion|attachment|end at");
    if is_origin { Some("origin") } else { is_insertion.then_some("insertion") }
}

/// What a relation claims of its two sides, by what they are: *arises from* speaks of roots, of a parent nerve or of a
/// muscle's origin.
pub(super) fn kind_of(
    vocabulary: &Vocabulary,
    relation: &RelationWord,
    left: &Side,
    right: &Side,
) -> Option<(ClaimKind, PartRole, PartRole)> {
    let first = |side: &Side| match &side.what {
        What::Entry(ids) => ids.first().map(|id| vocabulary.kind(*id)),
        _ => None,
    };
    let is_neural = |kind: Option<Kind>| matches!(kind, Some(Kind::Nerve | Kind::Plexus | Kind::Root));
    let all_fit = |role: PartRole, side: &Side| matches!(&side.what, What::Entry(ids) if ids.iter().any(|id| fits(vocabulary, role, *id)));
    match (&left.what, &right.what) {
        (What::Entry(_), What::Segments(..)) => {
            let speaks_of_roots =
                matches!(relation.kind, ClaimKind::Branching | ClaimKind::Roots | ClaimKind::Renaming)
                    && relation.left != PartRole::Parent;
            let supplied = relation.kind == ClaimKind::Supply && relation.left == PartRole::Muscle;
            let has_roots = is_neural(first(left)) || first(left) == Some(Kind::Muscle);
            let is_felt = first(left) == Some(Kind::Skin)
                && (speaks_of_roots || supplied || matches!(relation.kind, ClaimKind::Skin | ClaimKind::Membership));
            (is_felt || (has_roots && (speaks_of_roots || supplied))).then_some((
                ClaimKind::Roots,
                PartRole::Structure,
                PartRole::Segments,
            ))
        }
        (What::Segments(..), What::Entry(_)) => {
            let has_roots = is_neural(first(right)) || first(right) == Some(Kind::Muscle);
            let speaks_of_roots = relation.kind == ClaimKind::Roots
                || (relation.kind == ClaimKind::Supply && relation.left == PartRole::Nerve)
                || (relation.kind == ClaimKind::Branching && relation.left == PartRole::Parent)
                || relation.kind == ClaimKind::Membership;
            let feels = first(right) == Some(Kind::Skin) && (speaks_of_roots || relation.kind == ClaimKind::Skin);
            (feels || (has_roots && speaks_of_roots)).then_some((
                ClaimKind::Roots,
                PartRole::Segments,
                PartRole::Structure,
            ))
        }
        (What::Entry(_), What::Entry(_)) => {
            // "Semimembranosus goes to the medial condyle": no nerve supplies there.
            if relation.kind == ClaimKind::Supply
                && relation.phrase.starts_with("goes")
                && first(left) == Some(Kind::Muscle)
            {
                return (first(right) == Some(Kind::Landmark)).then_some((
                    ClaimKind::Attachment,
                    PartRole::Muscle,
                    PartRole::Landmark,
                ));
            }
            // "N hangs off P": of a nerve it tells where that comes from.
            if relation.kind == ClaimKind::Supply
                && relation.phrase.starts_with("hangs")
                && is_neural(first(left))
                && is_neural(first(right))
            {
                return Some((ClaimKind::Branching, PartRole::Nerve, PartRole::Parent));
            }
            // "The coracoid process gives origin to the short head"
            if relation.kind == ClaimKind::Branching
                && relation.left == PartRole::Parent
                && first(left) == Some(Kind::Landmark)
                && first(right) == Some(Kind::Muscle)
            {
                return relation.phrase.contains("origin").then_some((
                    ClaimKind::Attachment,
                    PartRole::Landmark,
                    PartRole::Muscle,
                ));
            }
            if relation.kind == ClaimKind::Passage {
                return passage(vocabulary, relation, left, right);
            }
            if relation.kind == ClaimKind::Membership && tells_passage(vocabulary, relation, left, right) {
                return passage(vocabulary, relation, left, right);
            }
            if matches!(relation.kind, ClaimKind::Supply | ClaimKind::Skin | ClaimKind::Membership) {
                let feels = match (is_neural(first(left)), is_neural(first(right))) {
                    (true, false) => first(right) == Some(Kind::Skin),
                    (false, true) => first(left) == Some(Kind::Skin),
                    _ => false,
                };
                if feels && is_neural(first(left)) {
                    return Some((ClaimKind::Skin, PartRole::Nerve, PartRole::Skin));
                } else if feels {
                    return Some((ClaimKind::Skin, PartRole::Skin, PartRole::Nerve));
                }
            }
            if relation.kind == ClaimKind::Membership
                && first(left) == Some(Kind::Muscle)
                && is_neural(first(right))
                && relation.phrase.starts_with("belongs")
            {
                return Some((ClaimKind::Supply, PartRole::Muscle, PartRole::Nerve));
            }
            // "draws on", "depends on" are said of roots and of a nerve, "ends in" of branches and of a muscle
            if relation.kind == ClaimKind::Roots
                && relation.left == PartRole::Structure
                && first(left) == Some(Kind::Muscle)
                && is_neural(first(right))
            {
                return (relation.phrase.ends_with("on|upon")).then_some((
                    ClaimKind::Supply,
                    PartRole::Muscle,
                    PartRole::Nerve,
                ));
            }
            if relation.kind == ClaimKind::Branching
                && relation.phrase.starts_with("ends")
                && is_neural(first(left))
                && first(right) == Some(Kind::Muscle)
            {
                return Some((ClaimKind::Supply, PartRole::Nerve, PartRole::Muscle));
            }
            // "runs to" is said of nerves and of muscles
            if relation.kind == ClaimKind::Attachment
                && relation.phrase.ends_with(" to")
                && is_neural(first(left))
                && first(right) == Some(Kind::Muscle)
            {
                return Some((ClaimKind::Supply, PartRole::Nerve, PartRole::Muscle));
            }
            // "is a muscle of" is said of nerves and of groups
            if relation.kind == ClaimKind::Supply
                && relation.phrase.ends_with("muscles of")
                && first(left) == Some(Kind::Muscle)
                && first(right) == Some(Kind::Group)
            {
                return Some((ClaimKind::Membership, PartRole::Muscle, PartRole::Group));
            }
            // "belongs to the lumbar plexus" is said of nerves; what trunks form is what comes from them
            if relation.kind == ClaimKind::Membership
                && relation.left == PartRole::Muscle
                && !relation.phrase.contains("form")
                && is_neural(first(left))
                && is_neural(first(right))
            {
                return Some((ClaimKind::Branching, PartRole::Nerve, PartRole::Parent));
            }
            // "takes part in", "is a ligament of" are said of bones and ligaments, "consists of" of joints
            if matches!(relation.kind, ClaimKind::Membership | ClaimKind::Joint) {
                match (first(left), first(right)) {
                    (Some(Kind::Landmark), Some(Kind::Joint)) if relation.left != PartRole::Group => {
                        return Some((ClaimKind::Joint, PartRole::Landmark, PartRole::Joint));
                    }
                    (Some(Kind::Joint), Some(Kind::Landmark)) if relation.left != PartRole::Muscle => {
                        return Some((ClaimKind::Joint, PartRole::Joint, PartRole::Landmark));
                    }
                    _ => {}
                }
            }
            if relation.kind == ClaimKind::Joint
                && [(relation.left, left), (relation.right, right)]
                    .iter()
                    .any(|(role, side)| *role == PartRole::Landmark && first(side) != Some(Kind::Landmark))
            {
                return None; // a muscle supports a joint in another way than a ligament does
            }
            if relation.kind == ClaimKind::Renaming && !(is_neural(first(left)) && is_neural(first(right))) {
                return None;
            }
            // "contains" and "is formed by" are said of roots, and of groups and their muscles
            let is_made = relation.right == PartRole::Parent
                && ["formed", "made", "composed", "built"].iter().any(|word| relation.phrase.contains(word));
            let contains = relation.kind == ClaimKind::Roots
                && ["contain", "composed", "formed"].iter().any(|word| relation.phrase.contains(word));
            if (contains || (relation.kind == ClaimKind::Branching && is_made))
                && all_fit(PartRole::Group, left)
                && !is_neural(first(left))
                && first(right) == Some(Kind::Muscle)
            {
                return Some((ClaimKind::Membership, PartRole::Group, PartRole::Muscle));
            }
            // "its origin is" is said of roots and of muscles
            if relation.kind == ClaimKind::Roots
                && first(left) == Some(Kind::Muscle)
                && first(right) == Some(Kind::Landmark)
            {
                return relation.phrase.contains("origin").then_some((
                    ClaimKind::Attachment,
                    PartRole::Muscle,
                    PartRole::Landmark,
                ));
            }
            if relation.kind == ClaimKind::Branching
                && relation.right == PartRole::Parent
                && (first(left) == Some(Kind::Muscle) || all_fit(PartRole::Muscle, left))
            {
                return (first(right) == Some(Kind::Landmark)).then_some((
                    ClaimKind::Attachment,
                    PartRole::Muscle,
                    PartRole::Landmark,
                ));
            }
            // "is formed by" and "joins" are said of joints and their bones
            if relation.kind == ClaimKind::Branching
                && first(left) == Some(Kind::Joint)
                && ["formed", "join"].iter().any(|word| relation.phrase.contains(word))
            {
                return (first(right) == Some(Kind::Landmark)).then_some((
                    ClaimKind::Joint,
                    PartRole::Joint,
                    PartRole::Landmark,
                ));
            }
            if relation.kind == ClaimKind::Branching
                && relation.left == PartRole::Parent
                && first(right) == Some(Kind::Muscle)
            {
                return None;
            }
            (all_fit(relation.left, left) && all_fit(relation.right, right)).then_some((
                relation.kind,
                relation.left,
                relation.right,
            ))
        }
        _ => None,
    }
}

/// What may be told as a passage: something that can pass on the one side, and a landmark on the other, with the roles that
/// they play.
fn passage(
    vocabulary: &Vocabulary,
    relation: &RelationWord,
    left: &Side,
    right: &Side,
) -> Option<(ClaimKind, PartRole, PartRole)> {
    let is_turned = relation.left == PartRole::Landmark || relation.left == PartRole::Group;
    let (passer, place) = if is_turned { (right, left) } else { (left, right) };
    let passer = passer_role(vocabulary, &passer.what)?;
    let is_place = |id: &EntryId| {
        fits(vocabulary, PartRole::Landmark, *id) || vocabulary.entry(*id).class.as_deref() == Some("compartment")
    };
    if !place.what.entries().iter().any(is_place) {
        return None;
    }
    Some(if is_turned {
        (ClaimKind::Passage, PartRole::Landmark, passer)
    } else {
        (ClaimKind::Passage, passer, PartRole::Landmark)
    })
}

/// What role something plays that passes a landmark; `None` if it is nothing that can.
pub fn passer_role(vocabulary: &Vocabulary, what: &What) -> Option<PartRole> {
    let ids: Vec<EntryId> = what.entries().iter().copied().filter(|id| can_pass(vocabulary, *id)).collect();
    let first = ids.first()?;
    Some(match vocabulary.kind(*first) {
        _ if ids.iter().any(|id| vocabulary.is_neural(*id)) => PartRole::Nerve,
        Kind::Muscle => PartRole::Muscle,
        _ => PartRole::Structure,
    })
}

/// Whether words of belonging are said of a place and what passes it: "the femoral triangle *contains* the femoral nerve",
/// "the ulnar nerve *lies in* the cubital tunnel".
fn tells_passage(vocabulary: &Vocabulary, relation: &RelationWord, left: &Side, right: &Side) -> bool {
    let is_place = |side: &Side| {
        let ids = side.what.entries();
        !ids.is_empty() && ids.iter().all(|id| vocabulary.kind(*id) == Kind::Landmark && is_enclosed(vocabulary, *id))
    };
    match (relation.left, relation.right) {
        (PartRole::Group, PartRole::Muscle) => is_place(left),
        (PartRole::Muscle, PartRole::Group) => is_place(right),
        _ => false,
    }
}
