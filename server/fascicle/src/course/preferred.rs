//! The names that a course prefers, held against what the vocabulary has: one that it does not know would be preferred to
//! nothing, and of two for one structure only the first counts.

use fascicle_analysis::Knowledge;
use fascicle_vocab::EntryId;
use fascicle_vocab::problem::did_you_mean;

/// What is preferred in vain, each with its place in the list. `is_known_elsewhere` is asked about names that this
/// vocabulary does not have.
pub fn in_vain(
    prefer: &[String],
    knowledge: &Knowledge,
    is_known_elsewhere: &dyn Fn(&str) -> bool,
) -> Vec<(usize, String)> {
    let mut told = Vec::new();
    let mut chosen: Vec<(EntryId, &str)> = Vec::new();
    for (place, name) in prefer.iter().enumerate() {
        let found = knowledge.names.lookup(name);
        if found.is_empty() {
            if !is_known_elsewhere(name) {
                told.push((place, format!("`prefer`: nothing is called `{name}`{}", nearest(name, knowledge))));
            }
            continue;
        }
        let of_structure = |id: EntryId| chosen.iter().find(|(known, _)| *known == id);
        let before = found.iter().find_map(|name| of_structure(name.entry));
        if let Some((_, first)) = before.filter(|_| found.iter().all(|name| of_structure(name.entry).is_some())) {
            told.push((place, format!("`prefer`: `{name}` is called `{first}` already, by the name before it")));
        }
        chosen.extend(found.iter().map(|found| (found.entry, &**name)));
    }
    told
}

fn nearest(name: &str, knowledge: &Knowledge) -> String {
    let entries = knowledge.vocabulary.iter();
    let names = entries.flat_map(|(_, entry)| entry.names.iter().map(|name| &*name.text));
    did_you_mean(&name.to_lowercase(), names)
}
