//! What a course lays over a vocabulary, on a small vocabulary of its own.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use fascicle_model::check::check;
use fascicle_model::read::{File, read};
use fascicle_model::{EntryId, Relation, Standing, Vocabulary};

const BASE: &str = r#"
region = "arm"
words = ["elbow radial deltoid axillary posterior cord shaft humerus triceps brachii supinator extension hinge joint nerve"]

[[source]]
id = "book"
title = "A book"

[[source]]
id = "other"
title = "Another book"

[[root]]
name = "C5"
[[root]]
name = "C6"
[[root]]
name = "C7"
[[root]]
name = "C8"

[[plexus]]
name = "posterior cord"
class = "cord"
arises = [{ from = "c5", src = "book" }, { from = "c6", src = "book" }, { from = "c7", src = "book" }, { from = "c8", src = "book" }]
course = [{ gives = "radial-nerve", src = "book" }, { gives = "axillary-nerve", src = "book" }]

[[nerve]]
name = "radial nerve"
modality = { is = "mixed", src = "book" }
arises = [{ from = "posterior-cord", src = "book" }]
course = [
  { supplies = "triceps-brachii", src = "book" },
  { passes = "shaft-of-humerus", how = "behind", src = "book" },
  { supplies = "supinator", src = "book" },
]

[[nerve]]
name = "axillary nerve"
modality = { is = "mixed", src = "book" }
arises = [{ from = "posterior-cord", src = "book" }]
course = [{ supplies = "deltoid", src = "book" }]

[[muscle]]
name = "deltoid"
nerves = [{ nerve = "axillary-nerve", src = "book" }]
roots = [{ main = "C5 C6", src = "book" }]
attaches = [{ origin = "shaft-of-humerus", src = "book" }, { insertion = "shaft-of-humerus", src = "book" }]
acts = [{ joint = "elbow-joint", movement = "extension", role = "prime", src = "book" }]

[[muscle]]
name = "triceps brachii"
names = [{ text = "triceps", standing = "short" }]
nerves = [{ nerve = "radial-nerve", src = "book" }]
roots = [{ main = "C7 C8", src = "book" }, { main = "C6 C7 C8", src = "other", variant = true }]
attaches = [{ origin = "shaft-of-humerus", src = "book" }, { insertion = "shaft-of-humerus", src = "book" }]
acts = [{ joint = "elbow-joint", movement = "extension", role = "prime", src = "book" }]

[[muscle]]
name = "supinator"
nerves = [{ nerve = "radial-nerve", src = "book" }]
roots = [{ main = "C6 C7", src = "book" }]
attaches = [{ origin = "shaft-of-humerus", src = "book" }, { insertion = "shaft-of-humerus", src = "book" }]
acts = [{ joint = "elbow-joint", movement = "extension", role = "assistant", src = "book" }]

[[joint]]
name = "elbow joint"
kind = { class = "synovial", subtype = "hinge", src = "book" }
bones = [{ bone = "shaft-of-humerus", src = "book" }]
allows = [{ movement = "extension", src = "book" }]

[[movement]]
name = "extension"
verb = "extend"
agent = "extensor"

[[landmark]]
name = "shaft of humerus"
class = "bone feature"
"#;

fn base() -> Vocabulary {
    let (vocabulary, problems) = read(&[File { name: "base.toml", text: BASE }], None);
    assert_eq!(problems, []);
    assert_eq!(check(&vocabulary), []);
    vocabulary
}

/// The vocabulary with an overlay on it, and everything that reading and checking say.
fn laid(text: &str) -> (Vocabulary, Vec<String>) {
    let (vocabulary, mut problems) = read(&[File { name: "course.toml", text }], Some(&base()));
    problems.extend(check(&vocabulary));
    (vocabulary, problems.iter().map(ToString::to_string).collect())
}

fn id(vocabulary: &Vocabulary, id: &str) -> EntryId {
    vocabulary.find(id).expect(id)
}

#[test]
fn a_corrected_supply_moves_at_both_ends() {
    let (vocabulary, problems) = laid(
        r#"
[[muscle]]
id = "supinator"
nerves = [{ nerve = "axillary-nerve", src = "other" }]
roots = [{ main = "C5 C6", src = "other" }]
"#,
    );
    assert_eq!(problems, [""; 0]);
    let supplied = |nerve: &str| -> Vec<&str> {
        vocabulary.twigs(id(&vocabulary, nerve)).iter().map(|supply| vocabulary.name(supply.muscle)).collect()
    };
    assert_eq!(supplied("radial-nerve"), ["triceps brachii"]);
    assert_eq!(supplied("axillary-nerve"), ["deltoid", "supinator"]);
    let roots = vocabulary.roots_of(id(&vocabulary, "supinator"));
    assert_eq!(roots.first().unwrap().all().to_string(), "C5, C6");
    assert_eq!(vocabulary.entry(id(&vocabulary, "supinator")).file, "course.toml");
}

#[test]
fn a_corrected_course_keeps_its_order_and_moves_the_muscles() {
    let (vocabulary, problems) = laid(
        r#"
[[nerve]]
id = "radial-nerve"
course = [{ supplies = "triceps-brachii", src = "other" }, { supplies = "supinator", src = "other", variant = true }]
[[nerve]]
id = "axillary-nerve"
course = [{ supplies = "deltoid", src = "other" }, { supplies = "supinator", src = "other" }]
[[muscle]]
id = "supinator"
roots = [{ main = "C6", src = "other" }]
"#,
    );
    assert_eq!(problems, [""; 0]);
    let steps: Vec<&str> = vocabulary
        .entry(id(&vocabulary, "radial-nerve"))
        .facts
        .iter()
        .filter(|fact| matches!(fact.relation, Relation::Supplies { .. } | Relation::Passes { .. }))
        .map(|fact| vocabulary.name(fact.relation.target().unwrap()))
        .collect();
    assert_eq!(steps, ["triceps brachii", "shaft of humerus", "supinator"]);
    let nerves: Vec<(&str, bool)> = vocabulary
        .nerves_of(id(&vocabulary, "supinator"))
        .iter()
        .map(|supply| (vocabulary.name(supply.nerve), supply.variant))
        .collect();
    assert!(nerves.contains(&("axillary nerve", false)) && nerves.contains(&("radial nerve", true)), "{nerves:?}");
}

#[test]
fn a_new_branch_and_a_new_origin_follow() {
    let (vocabulary, problems) = laid(
        r#"
words = ["lateral twig local"]
[[nerve]]
name = "local lateral twig"
region = "arm"
modality = { is = "motor", src = "practice" }
arises = [{ from = "radial-nerve", src = "practice" }]
course = [{ supplies = "triceps-brachii", variant = true, src = "practice" }]
[[nerve]]
id = "axillary-nerve"
arises = [{ from = "radial-nerve", src = "practice" }]
[[source]]
id = "practice"
title = "common practice"
"#,
    );
    assert_eq!(problems, [""; 0]);
    let branches = |nerve: &str| -> Vec<&str> {
        vocabulary.branches(id(&vocabulary, nerve)).iter().map(|branch| vocabulary.name(*branch)).collect()
    };
    assert_eq!(branches("posterior-cord"), ["radial nerve"]);
    assert_eq!(branches("radial-nerve"), ["local lateral twig", "axillary nerve"]);
}

#[test]
fn names_are_added_preferred_and_told_apart() {
    let (vocabulary, problems) = laid(
        r#"
[[muscle]]
id = "triceps-brachii"
name = "triceps"
names = [{ text = "triceps brachii", standing = "former" }]
[[muscle]]
id = "deltoid"
names = [{ text = "triceps", standing = "informal", ambiguous = true }]
"#,
    );
    assert_eq!(problems.len(), 1, "{problems:?}");
    assert!(problems.first().unwrap().starts_with("course.toml:2: `triceps-brachii` shares the name \"triceps\""));
    let names = &vocabulary.entry(id(&vocabulary, "triceps-brachii")).names;
    let told: Vec<(&str, Standing)> = names.iter().map(|name| (&*name.text, name.standing)).collect();
    assert_eq!(told, [("triceps", Standing::Preferred), ("triceps brachii", Standing::Former)]);

    let (vocabulary, problems) = laid(
        r#"
[[muscle]]
id = "deltoid"
names = [{ text = "triceps", standing = "informal", ambiguous = true }]
"#,
    );
    assert_eq!(problems, [""; 0]);
    let built_in = &vocabulary.entry(id(&vocabulary, "triceps-brachii")).names;
    assert!(built_in.iter().any(|name| name.text == "triceps" && name.ambiguous));
}

#[test]
fn an_adopted_reference_has_the_preferred_reading() {
    let mut vocabulary = base();
    let roots = |vocabulary: &Vocabulary, muscle: &str| {
        vocabulary.roots_of(id(vocabulary, muscle)).first().unwrap().all().to_string()
    };
    assert_eq!(roots(&vocabulary, "triceps-brachii"), "C7, C8");
    assert_eq!(vocabulary.adopt("other"), 1);
    assert_eq!(roots(&vocabulary, "triceps-brachii"), "C6–C8");
    assert_eq!(roots(&vocabulary, "deltoid"), "C5, C6");
    assert_eq!(vocabulary.adopt("nobody"), 0);
}

#[test]
fn an_empty_list_takes_away() {
    let (vocabulary, problems) = laid("[[muscle]]\nid = \"supinator\"\nnerves = []\nopen = [\"nerves\"]\n");
    assert_eq!(problems, [""; 0]);
    assert!(vocabulary.nerves_of(id(&vocabulary, "supinator")).is_empty());
    assert_eq!(vocabulary.muscles_of(id(&vocabulary, "radial-nerve")).len(), 1);
}

#[test]
fn problems_name_file_line_and_remedy() {
    for (text, said) in [
        (
            "[[muscle]]\nid = \"supinatr\"\n",
            "course.toml:1: no entry has the id `supinatr` yet, and a new one needs a `name`; did you mean `supinator`?",
        ),
        (
            "[[muscle]]\nid = \"supinator\"\nnerves = [{ nerve = \"radial-nerv\", src = \"book\" }]\n",
            "course.toml:3: `nerve` of `supinator` names `radial-nerv`, which is no entry; did you mean `radial-nerve`?",
        ),
        (
            "[[muscle]]\nid = \"supinator\"\nnerves = [{ nerve = \"radial-nerve\" }]\n",
            "course.toml:3: a fact of `supinator` (`nerves`) has no source",
        ),
        (
            "[[muscle]]\nid = \"supinator\"\nroots = [{ main = \"C9\", src = \"book\" }]\n",
            "course.toml:3: `main` of `supinator`: `C9` is not a spinal segment",
        ),
        ("\n[[nerve]]\nid = \"supinator\"\n", "course.toml:2: `supinator` is a muscle, not a nerve"),
        (
            "[[muscle]]\nid = \"deltoid\"\nnerves = [\n  { nerve = \"axillary-nerve\", src = \"book\" },\n]\nroots = [\n  { main = \"C5 C6 T1\", src = \"book\" },\n]\n",
            "course.toml:7: `deltoid` has T1 among its segments, which no nerve of it (axillary nerve) carries",
        ),
        (
            "[[muscle]]\nid = \"deltoid\"\nnames = [{ text = \"deltoidd\", standing = \"exact\" }]\n",
            "list it under `words`; did you mean `deltoid`?",
        ),
        ("[[musle]]\nid = \"deltoid\"\n", "course.toml:1: `musle` is no kind of entry"),
        ("[[muscle]\n", "course.toml:1: not valid TOML"),
    ] {
        let (_, problems) = laid(text);
        assert!(problems.iter().any(|problem| problem.contains(said)), "{said}\n{problems:#?}");
    }
}

#[test]
fn nothing_that_a_file_holds_brings_the_reader_down() {
    for text in [
        "",
        "region = 3",
        "muscle = 3",
        "[[muscle]]",
        "[[muscle]]\nname = 3",
        "[muscle]\nname = \"x\"",
        "[[muscle]]\nname = \"x\"\nnerves = 3\nroots = \"C5\"\nnames = [3, {}]\nopen = 3\npart_of = []",
        "[[muscle]]\nname = \"\"\nid = \"\"",
        "words = 3",
        "words = [3]",
        "[[source]]\nid = 3",
        "\u{0}",
        "[[root]]\nname = \"C99\"",
        "[[nerve]]\nid = \"radial-nerve\"\npart_of = \"radial-nerve\"\narises = [{ from = \"radial-nerve\", src = \"book\" }]",
    ] {
        let (vocabulary, _) = laid(text);
        for (id, _) in vocabulary.iter() {
            let _ = (vocabulary.descendants(id), vocabulary.ancestors(id), vocabulary.muscles_of(id));
        }
    }
}
