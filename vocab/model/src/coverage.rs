//! What a vocabulary covers, as a page for people: by region, every muscle, nerve and joint by name, and what is known of
//! them.

use std::fmt::Write as _;

use crate::{Entry, EntryId, Kind, Region, Relation, Segments, Vocabulary};

/// The page, as Markdown.
pub fn page(vocabulary: &Vocabulary) -> String {
    let mut page = String::from(
        "# What the vocabulary holds\n\n\
         Made by `fascicle facts --coverage`; a test holds this page against the data. Parts of muscles, variants (in italics)\n\
         and branches count as entries of their own.\n\n",
    );
    totals(vocabulary, &mut page);
    by_region(vocabulary, &mut page);
    for region in Region::ALL {
        names_of(vocabulary, *region, &mut page);
    }
    page
}

fn of_kind(vocabulary: &Vocabulary, kind: Kind) -> impl Iterator<Item = (EntryId, &Entry)> {
    vocabulary.iter().filter(move |(_, entry)| entry.kind == kind)
}

fn totals(vocabulary: &Vocabulary, page: &mut String) {
    let count = |kind: Kind| of_kind(vocabulary, kind).count();
    let share = |kind: Kind, test: &dyn Fn(EntryId, &Entry) -> bool| {
        let all = count(kind);
        let with = of_kind(vocabulary, kind).filter(|(id, entry)| test(*id, entry)).count();
        format!("{with} of {all}")
    };
    let muscle = |test: &dyn Fn(&Relation) -> bool| {
        share(Kind::Muscle, &|id, entry| {
            let mut family = vec![id];
            family.extend(vocabulary.all_parts(id));
            family.extend(vocabulary.wholes(id));
            entry.facts.iter().any(|fact| test(&fact.relation))
                || family.iter().any(|member| vocabulary.entry(*member).facts.iter().any(|fact| test(&fact.relation)))
        })
    };
    let segments = share(Kind::Muscle, &|id, _| {
        let supplies = vocabulary.nerves_of(id);
        let spinal =
            supplies.iter().fold(Segments::EMPTY, |all, supply| all.union(vocabulary.possible_segments(supply.nerve)));
        let mut family = vec![id];
        family.extend(vocabulary.all_parts(id));
        let named = family.iter().any(|member| !vocabulary.roots_of(*member).is_empty());
        named || (spinal.is_empty() && !supplies.is_empty())
    });
    let rows = [
        ("Muscles, whole", of_kind(vocabulary, Kind::Muscle).filter(|(_, e)| e.part_of.is_none()).count().to_string()),
        ("Muscles with their named parts", count(Kind::Muscle).to_string()),
        ("Nerves and branches", count(Kind::Nerve).to_string()),
        ("Plexuses, trunks, divisions, cords, rami", count(Kind::Plexus).to_string()),
        ("Joints", count(Kind::Joint).to_string()),
        ("Bones, features, passages and other landmarks", count(Kind::Landmark).to_string()),
        ("Areas of skin and mucosa, dermatomes, points", count(Kind::Skin).to_string()),
        ("Compartments, layers, groups, moved parts", count(Kind::Group).to_string()),
        ("Names", vocabulary.entries().iter().map(|entry| entry.names.len()).sum::<usize>().to_string()),
        ("Facts", vocabulary.fact_count().to_string()),
        (
            "Entries with identifiers of open data sets",
            vocabulary.entries().iter().filter(|entry| !entry.ids.is_empty()).count().to_string(),
        ),
        ("Muscles with a nerve", share(Kind::Muscle, &|id, _| !vocabulary.nerves_of(id).is_empty())),
        ("Muscles with segments or a cranial nerve", segments),
        ("Muscles with an origin", muscle(&|relation| matches!(relation, Relation::Origin { .. }))),
        ("Muscles with an insertion", muscle(&|relation| matches!(relation, Relation::Insertion { .. }))),
        ("Muscles with an action", muscle(&|relation| matches!(relation, Relation::Acts { .. }))),
        ("Nerves with an origin", share(Kind::Nerve, &|id, _| vocabulary.origins(id, true).next().is_some())),
        ("Nerves with a modality", share(Kind::Nerve, &|id, _| vocabulary.modality(id).is_some())),
    ];
    page.push_str("| What | How many |\n| --- | --- |\n");
    for (what, number) in rows {
        let _ = writeln!(page, "| {what} | {number} |");
    }
}

fn by_region(vocabulary: &Vocabulary, page: &mut String) {
    const KINDS: [Kind; 5] = [Kind::Muscle, Kind::Nerve, Kind::Joint, Kind::Landmark, Kind::Skin];
    page.push_str(
        "\n| Region | Muscles | Nerves | Joints | Landmarks | Skin |\n| --- | --- | --- | --- | --- | --- |\n",
    );
    for region in Region::ALL {
        let _ = write!(page, "| {} |", title(*region));
        for kind in KINDS {
            let count = of_kind(vocabulary, kind).filter(|(_, entry)| entry.region == *region).count();
            let _ = write!(page, " {count} |");
        }
        page.push('\n');
    }
}

fn names_of(vocabulary: &Vocabulary, region: Region, page: &mut String) {
    let mut heading = false;
    for (kind, word) in [(Kind::Muscle, "Muscles"), (Kind::Nerve, "Nerves"), (Kind::Joint, "Joints")] {
        let mut names: Vec<String> = of_kind(vocabulary, kind)
            .filter(|(_, entry)| entry.region == region)
            .map(|(_, entry)| if entry.variant { format!("*{}*", entry.name()) } else { entry.name().to_owned() })
            .collect();
        if names.is_empty() {
            continue;
        }
        names.sort_by_key(|name| name.trim_matches('*').to_lowercase());
        if !heading {
            let _ = write!(page, "\n## {}\n", title(region));
            heading = true;
        }
        let _ = write!(page, "\n{word}: {}.\n", names.join(", "));
    }
}

fn title(region: Region) -> String {
    let word = region.word();
    let mut letters = word.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
