//! What words mean, and nothing else: relation words, labels and headers of tables, and the words that decide whether a
//! sentence asserts anything.
//!
//! A new verb, label or header word is one line here, with an example beside it; the examples of [`RELATIONS`] are run by
//! the tests. No structure is named: structures are the vocabulary's.

mod belongings;
mod counts;
mod ends;
mod fields;
mod filter;
mod items;
mod joints;
mod labels;
mod lesions;
mod ligaments;
mod motion;
mod relations;
pub mod ways;
mod words;

use self::filter::Filter;

pub use belongings::*;
pub use counts::*;
pub use ends::*;
pub use fields::*;
pub use items::*;
pub use joints::*;
pub use labels::*;
pub use lesions::*;
pub use ligaments::*;
pub use motion::*;
pub use relations::*;
pub use words::*;

/// Words that join the members of a list.
pub fn is_conjunction(word: &str) -> bool {
    matches!(word, "and" | "or" | "nor" | "," | "/" | "&" | "+" | "And" | "plus")
}
/// Turns of phrase of several words that change nothing, as "however" does.
const ASIDES: &[&[&str]] = &[
    &["on", "the", "other", "hand"],
    &["on", "the", "one", "hand"],
    &["by", "contrast"],
    &["in", "contrast"],
    &["of", "course"],
    &["in", "turn"],
    &["in", "fact"],
    &["for", "its", "part"],
    &["as", "a", "rule"],
    &["for", "example"],
    &["for", "instance"],
    &["at", "last"],
    &["in", "addition"],
    &["in", "particular"],
];

/// How many words an aside has that begins at a word.
pub fn aside_at<'w>(at: usize, word: &dyn Fn(usize) -> &'w str) -> Option<usize> {
    static FILTER: Filter<4> = {
        let mut filter = Filter::EMPTY;
        let mut at = 0;
        while at < ASIDES.len() {
            filter.add(ASIDES[at][0].as_bytes(), ASIDES[at][0].len());
            at += 1;
        }
        filter
    };
    let first = word(at);
    if !FILTER.may_have(first) {
        return None;
    }
    let mut begun = ASIDES.iter().filter(|aside| aside.first() == Some(&first));
    begun.find(|aside| aside.iter().zip(at..).all(|(wanted, at)| word(at) == *wanted)).map(|aside| aside.len())
}

/// Whether a word or mark may stand behind a noun, so that an adjective right before it stands for one ("the *radial*
/// supplies").
pub fn ends_noun(word: &str) -> bool {
    if !word.chars().any(char::is_alphanumeric) {
        return !matches!(word, "'" | "’");
    }
    is_auxiliary(word)
        || is_adverb(word)
        || is_relative(word)
        || is_contrast(word)
        || is_conjunction(word)
        || stands_behind_noun(word)
}

/// A noun for a branch or part in the singular.
pub fn one_part(noun: &str) -> &str {
    match noun {
        "branches" => "branch",
        "bellies" => "belly",
        "rami" => "ramus",
        _ => noun.strip_suffix('s').filter(|one| !one.ends_with('u')).unwrap_or(noun),
    }
}

/// Rows of words that tell names from one another that are otherwise alike.
const CONTRASTS: &[&[&str]] = &[
    &ORDINALS,
    &["medial", "lateral", "intermediate"],
    &["anterior", "posterior"],
    &["superior", "inferior", "middle"],
    &["upper", "middle", "lower"],
    &["deep", "superficial"],
    &["internal", "external"],
    &["long", "short"],
    &["greater", "lesser"],
    &["dorsal", "ventral", "plantar", "palmar"],
];

/// The row of words from which a word tells its name: *inferior* from *superior*.
pub fn contrast_of(word: &str) -> Option<&'static [&'static str]> {
    CONTRASTS.iter().find(|row| row.contains(&word)).copied()
}

/// Whether the words of a relation phrase say that something goes through what it passes, not only by it.
pub fn goes_through(phrase: &str) -> bool {
    // "leaves through the apex *beneath*": the last word for a side counts.
    let stems = ["through", "pierc", "travers", "perforat"].iter().filter_map(|stem| phrase.rfind(stem));
    stems
        .max()
        .is_some_and(|at| side_of_passage(phrase.get(at..).unwrap_or_default()).is_none_or(|side| side == "through"))
}

/// On which side of it a relation phrase says that something passes, where it says so: the last word for a side counts
/// ("enters the *front* of the thigh *beneath*").
pub fn side_of_passage(phrase: &str) -> Option<&'static str> {
    if phrase.ends_with(" with") || phrase.ends_with("company of") {
        return Some("along");
    }
    let phrase = format!(" {phrase}");
    let found = WORDS_FOR_SIDES.iter().filter_map(|(word, side)| phrase.rfind(word).map(|at| (at, *side)));
    found.max_by_key(|(at, _)| *at).map(|(_, side)| side)
}

/// What words for a side begin with or are, and the side.
const WORDS_FOR_SIDES: [(&str, &str); 38] = [
    (" within", "through"),
    (" inside", "through"),
    (" pierc", "through"),
    (" perforat", "through"),
    (" behind", "behind"),
    (" posterior", "behind"),
    (" front", "in front of"),
    (" anterior", "in front of"),
    (" between", "between"),
    (" accompan", "along"),
    (" along", "along"),
    (" superficial", "superficial to"),
    (" over", "superficial to"),
    (" above", "superficial to"),
    (" deep", "deep to"),
    (" under", "deep to"),
    (" beneath", "deep to"),
    (" below", "deep to"),
    (" beside", "along"),
    (" the back of", "behind"),
    (" on the surface", "superficial to"),
    (" lateral to", "lateral to"),
    (" lateral border", "lateral to"),
    (" lateral edge", "lateral to"),
    (" lateral margin", "lateral to"),
    (" outer border", "lateral to"),
    (" outer edge", "lateral to"),
    (" medial to", "medial to"),
    (" medial border", "medial to"),
    (" medial edge", "medial to"),
    (" medial margin", "medial to"),
    (" inner border", "medial to"),
    (" inner edge", "medial to"),
    (" upper border", "above"),
    (" superior border", "above"),
    (" lower border", "below"),
    (" inferior border", "below"),
    ("round", "around"),
];

/// Sides that exclude each other, as the vocabulary writes them.
pub const OPPOSITE_SIDES: &[(&[&str], &[&str])] = &[
    (&["behind"], &["in front of"]),
    (&["deep to", "under"], &["superficial to", "over"]),
    (&["lateral to"], &["medial to"]),
    (&["above"], &["under"]),
    (&["below"], &["over"]),
];

/// Whether a side, as the vocabulary writes it, is outside what is passed.
pub fn is_outside(side: &str) -> bool {
    matches!(side, "behind" | "in front of" | "superficial to" | "over" | "deep to" | "under" | "around")
}

/// Whether a side, as the vocabulary writes it, is one of the two beside what is passed.
pub fn is_beside(side: &str) -> bool {
    matches!(side, "lateral to" | "medial to")
}

/// Whether a side, as the vocabulary writes it, is that of company: the one runs with the other, or round it.
pub fn is_company(side: &str) -> bool {
    matches!(side, "along" | "around")
}

/// Whether two words for a side, as the vocabulary writes them, mean the same one.
pub fn are_one_side(a: &str, b: &str) -> bool {
    a == b
        || OPPOSITE_SIDES.iter().any(|(one, other)| [one, other].iter().any(|row| row.contains(&a) && row.contains(&b)))
}

/// Everyday words for a side, with the trade's, for descriptions of an area.
pub const EVERYDAY_SIDES: &[(&str, &str)] = &[
    ("back", "posterior"),
    ("front", "anterior"),
    ("outer", "lateral"),
    ("inner", "medial"),
    ("outside", "lateral"),
    ("inside", "medial"),
    ("pad", "palmar"),
    ("pulp", "palmar"),
    ("shin", "leg"),
];

/// Other words for what the names of areas have, for descriptions that fit none as they are.
pub const AREA_WORDS: &[(&str, &str)] = &[
    ("finger", "digit"),
    ("big", "great"),
    ("ulnar", "medial"),
    ("radial", "lateral"),
    ("volar", "palmar"),
    ("corneal", "cornea"),
    ("facial", "face"),
    ("jaw", "mandible"),
];

/// Whether the words between two names make the first a part of the second ("heads *of the* triceps").
pub fn joins_part_and_whole(between: &str) -> bool {
    matches!(between, "of" | "of the" | "of all" | "of all the" | "of both" | "of each")
}

/// Whether the words between two names make them names of one thing ("FDP *(*flexor digitorum profundus)").
pub fn joins_name_and_alias(between: &str) -> bool {
    matches!(between, "(" | "[" | "," | "=" | ":" | "—" | "–" | "-" | ", the" | ", or")
}

/// The adjective that a shortened one stands for ("lat" for "lateral").
pub fn full_adjective(short: &str) -> Option<&'static str> {
    Some(match short.trim_end_matches('.').to_lowercase().as_str() {
        "lat" => "lateral",
        "med" => "medial",
        "post" => "posterior",
        "ant" => "anterior",
        "sup" => "superior",
        "inf" => "inferior",
        "mid" => "middle",
        _ => return None,
    })
}

/// Whether a cell says that it is as the cell above it.
pub fn is_ditto(cell: &str) -> bool {
    matches!(
        cell.to_lowercase().as_str(),
        "\"" | "″"
            | "as above"
            | "ditto"
            | "do."
            | "do"
            | "〃"
            | "same"
            | "see above"
            | "same as above"
            | "''"
            | "〃."
            | "the same"
    )
}

/// Everyday verbs for movements, with the movement that they mean.
pub const PLAIN_VERBS: &[(&str, &str)] = &[
    ("bend", "flexion"),
    ("straighten", "extension"),
    ("hyperextend", "extension"),
    ("side-flex", "lateral flexion"),
    ("side-bend", "lateral flexion"),
    ("evert", "eversion"),
    ("invert", "inversion"),
    ("plantar-flex", "plantar flexion"),
    ("dorsi-flex", "dorsiflexion"),
    ("lift", "elevation"),
    ("raise", "elevation"),
    ("turn outwards", "lateral rotation"),
    ("turn inwards", "medial rotation"),
    ("rotate outwards", "lateral rotation"),
    ("rotate inwards", "medial rotation"),
];

/// Ordinals, from the first on.
pub const ORDINALS: [&str; 12] = [
    "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh",
    "twelfth",
];

/// Whether digits, and what goes with them, are counted from a side in a region: the thumb is the first of the hand and lies
/// laterally, the great toe of the foot and lies medially.
pub fn counts_from(region: &str, side: &str) -> Option<bool> {
    Some(match (region, side) {
        ("hand", "lateral" | "radial" | "outer") | ("foot", "medial" | "inner") => true,
        ("hand", "medial" | "ulnar" | "inner") | ("foot", "lateral" | "outer") => false,
        _ => return None,
    })
}

/// The ordinal that is written in figures ("3rd").
pub fn ordinal(figures: &str) -> Option<&'static str> {
    let number = ["st", "nd", "rd", "th"].iter().find_map(|end| figures.strip_suffix(end))?;
    ORDINALS.get(number.parse::<usize>().ok()?.checked_sub(1)?).copied()
}

/// Whether a word is the number of a cranial nerve, as it stands for the nerve. "I" and "X" alone may be other words.
pub fn is_cranial_number(word: &str) -> bool {
    matches!(word, "II" | "III" | "IV" | "V" | "VI" | "VII" | "VIII" | "IX" | "X" | "XI" | "XII")
}

/// Nouns of bone features so small that a muscle which is attached to one is not attached to another of the same bone.
pub const POINTS: &[&str] = &[
    "tuberosity",
    "tubercle",
    "trochanter",
    "epicondyle",
    "process",
    "acromion",
    "olecranon",
    "spine",
    "malleolus",
    "patella",
    "angle",
];

/// Those of them that no line or border of the bone ends at.
pub const CLEAR_POINTS: &[&str] =
    &["tuberosity", "tubercle", "trochanter", "epicondyle", "process", "acromion", "olecranon", "malleolus", "patella"];

/// Nouns of bone features that have a place of their own on the bone, though they are long or wide.
pub const PLACES: &[&str] = &[
    "line", "linea", "lip", "crest", "fossa", "groove", "sulcus", "fovea", "border", "facet", "neck", "notch",
    "condyle",
];

/// Whether a word of a soft structure's name says that it binds what is attached to it to the bones near by.
pub fn binds_nearby(word: &str) -> bool {
    matches!(word, "septum" | "arch" | "ligament" | "tendon" | "membrane" | "fascia" | "capsule" | "raphe" | "sheath")
}

/// Pairs of words that make the names of two places of one structure, at one of which something is.
pub const TWINS: &[(&str, &str)] = &[
    ("medial", "lateral"),
    ("anterior", "posterior"),
    ("superior", "inferior"),
    ("greater", "lesser"),
    ("upper", "lower"),
    ("ulnar", "radial"),
    ("supraglenoid", "infraglenoid"),
    ("coracoid", "coronoid"),
];

/// Whether one name has a word where the other has its counterpart, and is the same otherwise: "medial epicondyle of humerus"
/// and "lateral epicondyle of humerus".
pub fn are_twins(a: &str, b: &str) -> bool {
    let mut differing = 0;
    let (mut left, mut right) = (a.split(' '), b.split(' '));
    loop {
        match (left.next(), right.next()) {
            (None, None) => return differing == 1,
            (Some(a), Some(b)) if a == b => {}
            (Some(a), Some(b)) if TWINS.iter().any(|pair| *pair == (a, b) || *pair == (b, a)) => differing += 1,
            _ => return false,
        }
    }
}

/// Classes of joints by what joins the bones.
pub const JOINT_CLASSES: &[(&str, &str)] =
    &[("synovial", "synovial"), ("fibrous", "fibrous"), ("cartilaginous", "cartilaginous")];

/// Words for what a nerve carries, with the modality.
pub const MODALITIES: &[(&str, &str)] = &[
    ("motor", "motor"),
    ("sensory", "sensory"),
    ("cutaneous", "sensory"),
    ("mixed", "mixed"),
    ("sensorimotor", "mixed"),
];

/// The fibres that a word names which are neither motor nor of the skin, as the vocabulary writes them.
pub fn carried(word: &str) -> Option<&'static str> {
    Some(match word {
        "taste" | "gustatory" | "gustation" => "taste",
        "parasympathetic" | "parasympathetics" | "secretomotor" | "secretory" => "parasympathetic",
        "sympathetic" => "sympathetic",
        _ => return None,
    })
}

/// Nouns behind such a word that make it the name of something else ("taste *buds*", "sympathetic *trunk*").
pub fn is_behind_carried(noun: &str) -> bool {
    matches!(
        noun,
        "ganglion"
            | "ganglia"
            | "nucleus"
            | "nuclei"
            | "bud"
            | "buds"
            | "trunk"
            | "trunks"
            | "chain"
            | "chains"
            | "root"
            | "roots"
            | "system"
            | "plexus"
            | "plexuses"
            | "tone"
            | "outflow"
            | "cell"
            | "cells"
            | "neurons"
            | "neurones"
            | "branches"
            | "area"
    )
}

/// Words for the subtypes of joints, with the subtype as the vocabulary writes it.
pub const JOINT_KINDS: &[(&str, &str)] = &[
    ("hinge", "hinge"),
    ("ginglymus", "hinge"),
    ("pivot", "pivot"),
    ("trochoid", "pivot"),
    ("condyloid", "condyloid"),
    ("ellipsoid", "condyloid"),
    ("ellipsoidal", "condyloid"),
    ("condylar", "condyloid"),
    ("saddle", "saddle"),
    ("sellar", "saddle"),
    ("ball-and-socket", "ball and socket"),
    ("ball", "ball and socket"),
    ("spheroidal", "ball and socket"),
    ("plane", "plane"),
    ("gliding", "plane"),
    ("bicondylar", "bicondylar"),
    ("suture", "suture"),
    ("syndesmosis", "syndesmosis"),
    ("gomphosis", "gomphosis"),
    ("synchondrosis", "synchondrosis"),
    ("symphysis", "symphysis"),
    ("hinges", "hinge"),
    ("pivots", "pivot"),
    ("sutures", "suture"),
    ("syndesmoses", "syndesmosis"),
    ("gomphoses", "gomphosis"),
    ("synchondroses", "synchondrosis"),
    ("symphyses", "symphysis"),
];

/// Whether a text is nothing but words for the kind of a joint: "Pivot", "synovial hinge joint".
pub fn is_joint_kind(text: &str) -> bool {
    let lower = text.to_lowercase();
    let mut words = lower.split(|c: char| !c.is_alphanumeric() && c != '-').filter(|word| !word.is_empty());
    let is_kind = |word: &str| JOINT_KINDS.iter().chain(JOINT_CLASSES).any(|(known, _)| *known == word);
    is_kind(lower.split(' ').next().unwrap_or_default())
        && words.all(|word| is_kind(word) || matches!(word, "joint" | "and" | "socket" | "type"))
}
