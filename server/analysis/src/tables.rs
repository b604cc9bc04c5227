//! The supply table of a nerve or a group, as Markdown: which muscles, by which branch, from which segments, for what.
//!
//! The table is made from the vocabulary, in the order in which the branches leave. A muscle whose parts all hang on the
//! nerve stands as one row; where another nerve has a share, the parts stand by themselves.

use fascicle_model::{EntryId, Kind, Relation, Role, Vocabulary};

use crate::card::{segments, usual_muscles};

/// The heads of the columns.
const HEADS: [&str; 4] = ["Muscle", "Nerve", "Segments", "Main actions"];

/// The supply table of a nerve, plexus or group; `None` where it would have no row.
pub fn supply_table(vocabulary: &Vocabulary, id: EntryId) -> Option<String> {
    let rows: Vec<[String; 4]> =
        muscles(vocabulary, id).into_iter().map(|muscle| row(vocabulary, id, muscle)).collect();
    (!rows.is_empty()).then(|| aligned(&rows))
}

/// The muscles of a table, wholes in place of their parts where the parts have no nerve of their own.
pub fn muscles(vocabulary: &Vocabulary, id: EntryId) -> Vec<EntryId> {
    let (all, under): (Vec<EntryId>, Vec<EntryId>) = match vocabulary.kind(id) {
        Kind::Nerve | Kind::Plexus | Kind::Root => {
            let under = std::iter::once(id).chain(vocabulary.usual_descendants(id)).collect();
            (usual_muscles(vocabulary, id), under)
        }
        Kind::Group => (vocabulary.members(id), Vec::new()),
        Kind::Muscle => (vec![id], Vec::new()),
        _ => (Vec::new(), Vec::new()),
    };
    let wholly = |whole: EntryId| {
        let supplies = vocabulary.nerves_of(whole);
        supplies.iter().filter(|supply| !supply.variant).all(|supply| under.contains(&supply.nerve))
    };
    let mut list = Vec::new();
    for muscle in all.iter().copied() {
        let whole = vocabulary
            .wholes(muscle)
            .into_iter()
            .filter(|whole| vocabulary.kind(*whole) == Kind::Muscle)
            .take_while(|whole| under.is_empty() && all.contains(whole) || wholly(*whole) && !under.is_empty())
            .last();
        let shown = whole.unwrap_or(muscle);
        if !list.contains(&shown) {
            list.push(shown);
        }
    }
    list
}

fn row(vocabulary: &Vocabulary, of: EntryId, muscle: EntryId) -> [String; 4] {
    let is_neural = vocabulary.is_neural(of);
    let mut nerves: Vec<&str> = Vec::new();
    for supply in vocabulary.nerves_of(muscle).iter().filter(|supply| !supply.variant) {
        let name = vocabulary.name(supply.nerve);
        if (!is_neural || vocabulary.is_or_above(of, supply.nerve)) && !nerves.contains(&name) {
            nerves.push(name);
        }
    }
    let roots = vocabulary.roots_of(muscle).first().map_or_else(String::new, |all| segments(all.main, all.lesser));
    [vocabulary.name(muscle).to_owned(), nerves.join(", "), roots, actions(vocabulary, muscle).join("; ")]
}

/// What a muscle is a prime mover of, by joint; of a muscle that only helps, what it helps with.
fn actions(vocabulary: &Vocabulary, muscle: EntryId) -> Vec<String> {
    let family = std::iter::once(muscle).chain(vocabulary.all_parts(muscle)).chain(vocabulary.wholes(muscle));
    let mut by_target: Vec<(Role, EntryId, Vec<EntryId>)> = Vec::new();
    for owner in family {
        for relation in vocabulary.entry(owner).usual() {
            let Relation::Acts { movement, target, role } = *relation else { continue };
            match by_target.iter_mut().find(|(known, at, _)| *known == role && *at == target) {
                Some((.., movements)) if !movements.contains(&movement) => movements.push(movement),
                Some(_) => {}
                None => by_target.push((role, target, vec![movement])),
            }
        }
    }
    let best = by_target.iter().map(|(role, ..)| *role).min();
    let told = by_target.iter().filter(|(role, ..)| Some(*role) == best);
    let say = told.map(|(_, target, movements)| {
        let movements: Vec<&str> = movements.iter().map(|movement| vocabulary.name(*movement)).collect();
        format!("{} of {}", listed(&movements), vocabulary.name(*target))
    });
    say.collect()
}

/// Words as an enumeration: "a", "a and b", "a, b and c".
fn listed(words: &[&str]) -> String {
    match words {
        [] => String::new(),
        [one] => (*one).to_owned(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

/// Rows as a table whose columns stand below each other in the source.
fn aligned(rows: &[[String; 4]]) -> String {
    let heads = HEADS.map(str::to_owned);
    let cell = |text: &str| text.replace('|', "\\|");
    let mut widths = [3; 4];
    for row in std::iter::once(&heads).chain(rows) {
        for (width, text) in widths.iter_mut().zip(row) {
            *width = (*width).max(cell(text).chars().count());
        }
    }
    let line = |row: &[String; 4]| {
        let cells: Vec<String> = row.iter().zip(widths).map(|(text, width)| format!("{:width$}", cell(text))).collect();
        format!("| {} |\n", cells.join(" | "))
    };
    let rule: Vec<String> = widths.iter().map(|width| "-".repeat(*width)).collect();
    let body: String = rows.iter().map(line).collect();
    format!("{}| {} |\n{body}", line(&heads), rule.join(" | "))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;

    #[test]
    fn a_table_holds_every_muscle_of_its_nerve() {
        let vocabulary = fascicle_vocab::built_in();
        for (id, entry) in vocabulary.iter().filter(|(_, entry)| entry.kind == Kind::Nerve) {
            let shown = muscles(&vocabulary, id);
            for muscle in usual_muscles(&vocabulary, id) {
                let mut family = std::iter::once(muscle).chain(vocabulary.wholes(muscle));
                assert!(family.any(|id| shown.contains(&id)), "{}: {}", entry.id, vocabulary.name(muscle));
            }
            assert_eq!(supply_table(&vocabulary, id).is_some(), !shown.is_empty(), "{}", entry.id);
        }
    }

    #[test]
    fn a_table_is_a_table() {
        let vocabulary = fascicle_vocab::built_in();
        let table = supply_table(&vocabulary, vocabulary.find("axillary-nerve").unwrap()).unwrap();
        let lines: Vec<&str> = table.lines().collect();
        assert_eq!(lines.len(), 4, "{table}");
        assert!(lines.windows(2).all(|pair| pair[0].chars().count() == pair[1].chars().count()), "{table}");
        assert!(table.contains("| deltoid") && table.contains("| teres minor"), "{table}");
    }
}
