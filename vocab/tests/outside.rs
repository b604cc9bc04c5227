//! Outside checks: what published standards, handbooks and open data sets say, against the built-in vocabulary.
//!
//! Each set of values lies in `tests/data/` with its source. Whatever does not agree is listed, with a reason, in
//! `tests/disagreements/`; the lists are read in review, and a test fails when they and the comparison differ in either
//! direction. `cargo test -p fascicle-vocab --test outside -- --nocapture` prints the counts.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use fascicle_vocab::{EntryId, Relation, Segments, Vocabulary, built_in};
use serde::Deserialize;
use serde::de::DeserializeOwned;

/// How many rows of a source were compared, and which of them disagree.
struct Comparison {
    name: &'static str,
    compared: usize,
    disagree: BTreeSet<String>,
}

#[derive(Deserialize)]
struct Reviewed {
    #[serde(default)]
    disagreement: Vec<Reason>,
}

#[derive(Deserialize)]
struct Reason {
    what: String,
    why: String,
}

impl Comparison {
    fn new(name: &'static str) -> Self {
        Self { name, compared: 0, disagree: BTreeSet::new() }
    }

    fn row(&mut self, agrees: bool, what: impl FnOnce() -> String) {
        self.compared += 1;
        if !agrees {
            self.disagree.insert(what());
        }
    }

    /// Holds the disagreements against the reviewed list.
    fn settle(self, at_least: usize) {
        let file = Path::new("tests/disagreements").join(self.name).with_extension("toml");
        let text = std::fs::read_to_string(&file).unwrap_or_default();
        let reviewed: Reviewed = toml::from_str(&text).unwrap_or_else(|error| panic!("{}: {error}", file.display()));
        for reason in &reviewed.disagreement {
            assert!(reason.why.len() > 20, "{}: `{}` has no reason", file.display(), reason.what);
        }
        let known: BTreeSet<String> = reviewed.disagreement.into_iter().map(|reason| reason.what).collect();
        let agree = self.compared - self.disagree.len();
        let share = 100 * agree / self.compared.max(1);
        println!("{}: {} compared, {agree} agree ({share} %), {} disagree", self.name, self.compared, known.len());
        let new: Vec<_> = self.disagree.difference(&known).collect();
        let gone: Vec<_> = known.difference(&self.disagree).collect();
        assert!(new.is_empty(), "{}: look these up, then correct the fact or give a reason:\n{new:#?}", file.display());
        assert!(gone.is_empty(), "{}: these agree now, take them out:\n{gone:#?}", file.display());
        assert!(self.compared >= at_least, "{}: only {} rows", self.name, self.compared);
    }
}

fn data<T: DeserializeOwned>(name: &str) -> T {
    let file = Path::new("tests/data").join(name);
    toml::from_str(&std::fs::read_to_string(&file).unwrap())
        .unwrap_or_else(|error| panic!("{}: {error}", file.display()))
}

fn id(vocabulary: &Vocabulary, id: &str) -> EntryId {
    vocabulary.find(id).unwrap_or_else(|| panic!("`{id}` is no entry"))
}

/// A nerve agrees if it gives the twig as a rule, or stands above or below the nerve that does.
fn nerve_agrees(vocabulary: &Vocabulary, muscle: EntryId, nerve: EntryId) -> bool {
    vocabulary
        .nerves_of(muscle)
        .iter()
        .filter(|supply| !supply.variant)
        .any(|supply| vocabulary.is_or_above(nerve, supply.nerve) || vocabulary.is_or_above(supply.nerve, nerve))
}

/// Segments agree if the preferred reading of the muscle or of one of its parts holds them all, and one of them as a main
/// segment.
fn segments_agree(vocabulary: &Vocabulary, muscle: EntryId, segments: Segments) -> bool {
    let mut family = vec![muscle];
    family.extend(vocabulary.all_parts(muscle));
    let readings: Vec<_> =
        family.iter().flat_map(|member| vocabulary.roots_of(*member)).filter(|reading| !reading.fact.variant).collect();
    let all = readings.iter().fold(Segments::EMPTY, |all, reading| all.union(reading.all()));
    let main = readings.iter().fold(Segments::EMPTY, |all, reading| all.union(reading.main));
    segments.within(all) && !segments.intersection(main).is_empty()
}

#[derive(Deserialize)]
struct Supplies {
    supply: Vec<SupplyRow>,
    #[serde(default)]
    branch: Vec<BranchRow>,
}

#[derive(Deserialize)]
struct SupplyRow {
    muscle: String,
    nerve: Option<String>,
    segments: Option<String>,
}

#[derive(Deserialize)]
struct BranchRow {
    nerve: String,
    of: String,
}

fn compare_supplies(name: &'static str, rows: &Supplies) -> Comparison {
    let vocabulary = built_in();
    let mut comparison = Comparison::new(name);
    for row in &rows.supply {
        let muscle = id(&vocabulary, &row.muscle);
        if let Some(nerve) = &row.nerve {
            let agrees = nerve_agrees(&vocabulary, muscle, id(&vocabulary, nerve));
            comparison.row(agrees, || format!("{} supplied by {nerve}", row.muscle));
        }
        if let Some(segments) = &row.segments {
            let agrees = segments_agree(&vocabulary, muscle, Segments::parse(segments).unwrap());
            comparison.row(agrees, || format!("{} from {segments}", row.muscle));
        }
    }
    for row in &rows.branch {
        let (nerve, of) = (id(&vocabulary, &row.nerve), id(&vocabulary, &row.of));
        comparison.row(vocabulary.is_or_above(of, nerve), || format!("{} branch of {}", row.nerve, row.of));
    }
    comparison
}

#[test]
fn handbook_of_1918() {
    compare_supplies("gray1918", &data("gray1918.toml")).settle(200);
}

#[test]
fn commonly_tested_movements() {
    compare_supplies("tested-movements", &data("tested-movements.toml")).settle(45);
}

#[test]
fn open_data_sets() {
    compare_supplies("open-edges", &data("open-edges.toml")).settle(170);
}

#[derive(Deserialize)]
struct Labels {
    labels: BTreeMap<String, String>,
}

/// Every identifier of the ontology belongs to an entry that has the ontology's label among its names.
#[test]
fn open_identifiers() {
    let vocabulary = built_in();
    let Labels { labels } = data("uberon-names.toml");
    let mut comparison = Comparison::new("uberon-names");
    let plain = |name: &str| {
        let words: Vec<String> = name
            .to_lowercase()
            .split(|c: char| !c.is_alphanumeric())
            .filter(|word| !matches!(*word, "" | "the" | "muscle" | "musculus" | "bone"))
            .map(str::to_owned)
            .collect();
        words.join(" ")
    };
    for entry in vocabulary.entries() {
        for id in entry.ids.iter().filter(|id| id.starts_with("UBERON:")) {
            let label = labels.get(id).unwrap_or_else(|| panic!("`{}` cites {id}, which the list lacks", entry.id));
            let agrees = entry.names.iter().any(|name| plain(&name.text) == plain(label));
            comparison.row(agrees, || format!("{} is {id}, {label}", entry.id));
        }
    }
    assert_eq!(comparison.compared, labels.len(), "an identifier of the list is cited nowhere or twice");
    comparison.settle(500);
}

#[derive(Deserialize)]
struct Ranges {
    within: u16,
    range: Vec<RangeRow>,
}

#[derive(Deserialize)]
struct RangeRow {
    joint: String,
    movement: String,
    degrees: u16,
}

#[test]
fn ranges_of_motion() {
    let vocabulary = built_in();
    let rows: Ranges = data("ranges.toml");
    let mut comparison = Comparison::new("ranges");
    for row in &rows.range {
        let movement = id(&vocabulary, &row.movement);
        let ours = vocabulary.entry(id(&vocabulary, &row.joint)).usual().find_map(|relation| match relation {
            Relation::Allows { movement: other, degrees } if *other == movement => *degrees,
            _ => None,
        });
        let ours = ours.unwrap_or_else(|| panic!("{} has no range of {}", row.joint, row.movement));
        comparison.row(ours.abs_diff(row.degrees) <= rows.within, || {
            format!("{} {}: {} here, {} there", row.joint, row.movement, ours, row.degrees)
        });
    }
    comparison.settle(35);
}

#[derive(Deserialize)]
struct Standard {
    key: Vec<KeyRow>,
    point: Vec<PointRow>,
}

#[derive(Deserialize)]
struct KeyRow {
    segment: String,
    movement: String,
    joint: String,
    muscles: Vec<String>,
}

#[derive(Deserialize)]
struct PointRow {
    segment: String,
    at: String,
}

#[test]
fn key_muscles_and_key_points() {
    let vocabulary = built_in();
    let standard: Standard = data("isncsci.toml");
    let mut comparison = Comparison::new("isncsci");
    for row in &standard.key {
        let segment = id(&vocabulary, &row.segment);
        let (movement, joint) = (id(&vocabulary, &row.movement), id(&vocabulary, &row.joint));
        let set = Segments::parse(vocabulary.name(segment)).unwrap();
        let named = vocabulary.entry(segment).facts.iter().any(|fact| match fact.relation {
            Relation::KeyMuscle { muscle, movement: by } => {
                by == movement && row.muscles.iter().any(|name| id(&vocabulary, name) == muscle)
            }
            _ => false,
        });
        comparison.row(named, || format!("{} has the key muscle {}", row.segment, row.muscles.join(" or ")));
        for name in &row.muscles {
            let muscle = id(&vocabulary, name);
            comparison.row(segments_agree(&vocabulary, muscle, set), || format!("{name} from {}", row.segment));
            let mut family = vec![muscle];
            family.extend(vocabulary.all_parts(muscle));
            let acts = family.iter().flat_map(|member| &vocabulary.entry(*member).facts).any(|fact| {
                matches!(fact.relation, Relation::Acts { movement: by, target, .. } if by == movement && target == joint)
            });
            comparison.row(acts, || format!("{name} acts by {} of {}", row.movement, row.joint));
        }
    }
    for row in &standard.point {
        let segment = id(&vocabulary, &row.segment);
        let set = Segments::parse(vocabulary.name(segment)).unwrap();
        let agrees = vocabulary.entry(segment).facts.iter().any(|fact| match fact.relation {
            Relation::KeyPoint { skin } => {
                let place = vocabulary.entry(skin).note.as_deref().unwrap_or_default().to_lowercase();
                let of_segment = vocabulary.roots_of(skin).iter().any(|reading| set.within(reading.main));
                of_segment && place.contains(&row.at)
            }
            _ => false,
        });
        comparison.row(agrees, || format!("{} has its point at {}", row.segment, row.at));
    }
    assert_eq!((standard.key.len(), standard.point.len()), (10, 28));
    comparison.settle(60);
}

#[derive(Deserialize)]
struct Actions {
    action: Vec<ActionRow>,
}

#[derive(Deserialize)]
struct ActionRow {
    muscle: String,
    line: Option<u8>,
    joint: String,
    movement: String,
}

/// What a muscle does by the sign of its moment arm in a model is among its actions, prime or assistant.
#[test]
fn moment_arms() {
    let vocabulary = built_in();
    let rows: Actions = data("moment-arms.toml");
    let mut comparison = Comparison::new("moment-arms");
    for row in &rows.action {
        let (muscle, joint) = (id(&vocabulary, &row.muscle), id(&vocabulary, &row.joint));
        let movement = id(&vocabulary, &row.movement);
        let mut family = vec![muscle];
        family.extend(vocabulary.all_parts(muscle));
        family.extend(vocabulary.wholes(muscle));
        let acts = family.iter().flat_map(|member| &vocabulary.entry(*member).facts).any(|fact| {
            matches!(fact.relation, Relation::Acts { movement: by, target, .. } if by == movement && target == joint)
        });
        let line = row.line.map(|line| format!(", line {line}")).unwrap_or_default();
        comparison.row(acts, || format!("{}{line}: {} of {}", row.muscle, row.movement, row.joint));
    }
    comparison.settle(60);
}
