//! The shape of the graph: no circles, nothing that stands alone, nothing said twice, identifiers well formed.

use super::Problems;
use crate::{Entry, EntryId, Fact, Kind, Relation};

/// Nothing arises from itself or is a part of itself, by however long a way.
pub(super) fn circles(problems: &mut Problems<'_>, id: EntryId, entry: &Entry) {
    let vocabulary = problems.vocabulary;
    if vocabulary.arises_from_itself(id) {
        problems.say(entry, None, "arises from itself, by way of its own branches");
    }
    if entry.part_of.is_some_and(|whole| whole == id || vocabulary.wholes(whole).contains(&id)) {
        problems.say(entry, None, "is a part of itself");
    }
}

/// Nothing stands alone: an entry says something, is pointed at, or is a part or a whole. A landmark may: a text that
/// names it is read better when its name is known.
pub(super) fn alone(problems: &mut Problems<'_>, id: EntryId, entry: &Entry) {
    let vocabulary = problems.vocabulary;
    if entry.kind == Kind::Group {
        let says = |fact: &Fact| matches!(fact.relation, Relation::MovedAt { .. } | Relation::Count { .. });
        if vocabulary.members(id).is_empty() && !entry.facts.iter().any(says) {
            problems.say(entry, None, "has no members, counts nothing and is moved at no joint");
        }
        return;
    }
    let joined = entry.kind == Kind::Landmark
        || !entry.facts.is_empty()
        || entry.part_of.is_some()
        || entry.opposite.is_some()
        || !vocabulary.parts(id).is_empty()
        || problems.mentioned.contains(&id);
    if !joined {
        problems.say(entry, None, "stands alone: no fact speaks of it, and it is neither a part nor a whole");
    }
}

/// An entry says a thing once.
pub(super) fn twice(problems: &mut Problems<'_>, entry: &Entry) {
    for (number, fact) in entry.facts.iter().enumerate() {
        // A nerve may pass a structure twice (deep to it, then through it), and be injured there in more than one way.
        if matches!(fact.relation, Relation::Passes { .. } | Relation::Injured { .. }) {
            continue;
        }
        let again =
            entry.facts.iter().skip(number + 1).find(|other| {
                other.relation == fact.relation && other.variant == fact.variant && other.note == fact.note
            });
        if let Some(again) = again {
            problems.say(entry, Some(again.line), &format!("says `{}` of the same thing twice", fact.relation.word()));
        }
    }
}

/// The identifiers of other data sets that an entry may carry, with how each begins.
const SETS: [&str; 3] = ["UBERON:", "FMA:", "TA2:"];

/// An identifier is one of a known data set.
pub(super) fn identifiers(problems: &mut Problems<'_>, entry: &Entry) {
    for id in &entry.ids {
        let number = SETS.iter().find_map(|set| id.strip_prefix(set));
        if !number.is_some_and(|number| !number.is_empty() && number.bytes().all(|byte| byte.is_ascii_digit())) {
            let what =
                format!("has the identifier `{id}`; write one such as `UBERON:0001111`, `FMA:37670` or `TA2:2392`");
            problems.say(entry, None, &what);
        }
    }
}
