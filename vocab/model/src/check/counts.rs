//! Numbers: what an entry is said to have so many of is as many as the graph holds, where it holds them.

use super::Problems;
use crate::{Entry, EntryId, Kind, Relation};

/// A group has as many muscles as it has members: those that everybody has at least, those that some have at most. A member
/// that is a group or a row of muscles, or a part of one, may be counted in more than one way.
pub(super) fn members(problems: &mut Problems<'_>, id: EntryId, entry: &Entry) {
    let vocabulary = problems.vocabulary;
    let members = vocabulary.members(id);
    let is_plain = |member: &EntryId| vocabulary.entry(*member).part_of.is_none();
    if entry.kind != Kind::Group || !members.iter().all(is_plain) {
        return;
    }
    let always = members.iter().filter(|member| !vocabulary.entry(**member).variant).count();
    for fact in entry.facts.iter().filter(|fact| !fact.variant) {
        let Relation::Count { of, number } = &fact.relation else { continue };
        let number = usize::from(*number);
        if of == "muscles" && !(always..=members.len()).contains(&number) {
            let what = format!("is said to have {number} muscles, and has {} members", members.len());
            problems.say(entry, Some(fact.line), &what);
        }
    }
}
