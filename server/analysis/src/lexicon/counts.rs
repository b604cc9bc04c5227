//! Numbers, and the nouns by which parts, members and branches are counted.

use crate::claims::PartRole;

/// Numbers in words.
pub const NUMBERS: &[&str] = &[
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
    "twenty",
];

/// The number that a word or numeral is.
pub fn number(word: &str) -> Option<u32> {
    let place = NUMBERS.iter().position(|known| *known == word).and_then(|place| u32::try_from(place).ok());
    place.or_else(|| word.parse().ok().filter(|number| *number < 100))
}

/// A noun by which something is counted.
#[derive(Clone, Copy, Debug)]
pub struct Counted {
    /// As it is written, one word or two.
    pub written: &'static str,
    /// The noun by which the vocabulary counts it.
    pub noun: &'static str,
    /// What has so many of them.
    pub of: PartRole,
    /// The class or name of the parts of a nerve or plexus that it names.
    pub class: Option<&'static str>,
}

const fn counted(written: &'static str, noun: &'static str, of: PartRole) -> Counted {
    Counted { written, noun, of, class: None }
}

const fn classed(written: &'static str, class: &'static str) -> Counted {
    Counted { written, noun: written, of: PartRole::Nerve, class: Some(class) }
}

/// Nouns by which parts are counted. Of two that fit, the first is read.
pub const COUNTED: &[Counted] = &[
    counted("heads", "heads", PartRole::Muscle),
    counted("head", "heads", PartRole::Muscle),
    counted("heads of origin", "heads", PartRole::Muscle),
    counted("bellies", "bellies", PartRole::Muscle),
    counted("belly", "bellies", PartRole::Muscle),
    counted("parts", "parts", PartRole::Muscle),
    counted("columns", "columns", PartRole::Muscle),
    counted("tendons", "tendons", PartRole::Muscle),
    counted("muscles", "muscles", PartRole::Group),
    counted("members", "muscles", PartRole::Group),
    counted("layers", "layers", PartRole::Group),
    counted("bones", "bones", PartRole::Structure),
    counted("vertebrae", "bones", PartRole::Structure),
    counted("phalanges", "phalanges", PartRole::Structure),
    counted("pairs", "pairs", PartRole::Structure),
    counted("degrees of freedom", "axes", PartRole::Joint),
    counted("degree of freedom", "axes", PartRole::Joint),
    counted("axes", "axes", PartRole::Joint),
    counted("axis", "axes", PartRole::Joint),
    counted("terminal branches", "terminal branches", PartRole::Nerve),
    counted("terminal nerves", "terminal branches", PartRole::Nerve),
    counted("end branches", "terminal branches", PartRole::Nerve),
    counted("final branches", "terminal branches", PartRole::Nerve),
    counted("branches", "branches", PartRole::Nerve),
    classed("trunks", "trunk"),
    classed("cords", "cord"),
    classed("divisions", "division"),
    classed("roots", "root"),
];

/// The counted noun that a row of words is, by whatever words it is written.
pub fn counted_noun(written: &str) -> Option<&'static Counted> {
    COUNTED.iter().find(|counted| counted.written == written)
}

/// How many words at a place say only of what there are so many: "four *on each side*".
pub fn said_of_each(words: &[&str]) -> usize {
    match words {
        ["on" | "in", "each" | "either", "side" | "hand" | "foot" | "limb" | "half" | "eye", ..] => 3,
        ["a" | "per", "side" | "hand" | "foot", ..] | ["in", "number" | "all" | "total", ..] => 2,
        ["altogether", ..] => 1,
        _ => 0,
    }
}

/// The number that a word is where something is counted: "a *single* head".
pub fn count(word: &str) -> Option<u32> {
    if word == "single" { Some(1) } else { number(word) }
}

/// Adjectives that tell how many of something there are ("a *biaxial* joint"), with the number and the noun.
const TOLD_NUMBERS: &[(&str, u32, &str)] = &[
    ("bicipital", 2, "heads"),
    ("tricipital", 3, "heads"),
    ("quadricipital", 4, "heads"),
    ("uniaxial", 1, "axes"),
    ("monoaxial", 1, "axes"),
    ("biaxial", 2, "axes"),
    ("triaxial", 3, "axes"),
    ("multiaxial", 3, "axes"),
    ("polyaxial", 3, "axes"),
];

/// Second halves of adjectives that tell how many there are ("two-*headed*"), with the noun.
const NUMBERED: &[(&str, &str)] =
    &[("headed", "heads"), ("bellied", "bellies"), ("part", "parts"), ("axis", "axes"), ("axial", "axes")];

/// The number and noun that an adjective tells: "biaxial".
pub fn told_number(word: &str) -> Option<(u32, &'static str)> {
    TOLD_NUMBERS.iter().find(|(known, ..)| *known == word).map(|(_, number, noun)| (*number, *noun))
}

/// The number and noun that a compound tells: "two-headed".
pub fn told_by_compound(first: &str, second: &str) -> Option<(u32, &'static str)> {
    let noun = NUMBERED.iter().find(|(known, _)| *known == second).map(|(_, noun)| *noun)?;
    let number = match first {
        "single" => 1,
        "double" => 2,
        "triple" => 3,
        _ => number(first)?,
    };
    Some((number, noun))
}

/// What has so many of what a noun counts.
pub fn owner_of_counted(noun: &str) -> PartRole {
    COUNTED.iter().find(|counted| counted.noun == noun).map_or(PartRole::Structure, |counted| counted.of)
}

/// Adjectives between a number and what is counted that leave it all there are: "three *separate* heads".
pub fn is_before_counted(word: &str) -> bool {
    matches!(
        word,
        "separate"
            | "distinct"
            | "different"
            | "individual"
            | "fleshy"
            | "named"
            | "component"
            | "constituent"
            | "muscular"
            | "articulating"
    )
}

/// Adjectives of size between a number and what is counted: "two *large* branches".
pub fn tells_size(word: &str) -> bool {
    matches!(word, "main" | "major" | "chief" | "principal" | "big" | "large" | "great" | "small" | "minor")
}

/// Words between a structure and the number of what it has: "*divides into* three", "*is a muscle with* two".
pub fn leads_to_count(word: &str) -> bool {
    matches!(
        word,
        "has"
            | "have"
            | "with"
            | "by"
            | "of"
            | "into"
            | "in"
            | "from"
            | "is"
            | "are"
            | "being"
            | "made"
            | "formed"
            | "composed"
            | "built"
            | "constructed"
            | "comprised"
            | "up"
            | "possesses"
            | "possess"
            | "shows"
            | "described"
            | "come"
            | "comes"
            | "owns"
            | "holds"
            | "houses"
            | "contains"
            | "includes"
            | "counts"
            | "numbers"
            | "gives"
            | "ends"
            | "end"
            | "dividing"
            | "splitting"
            | "breaking"
            | "branching"
            | "divides"
            | "divided"
            | "splits"
            | "split"
            | "breaks"
            | "broken"
            | "bifurcates"
            | "terminates"
            | "arises"
            | "originates"
            | "springs"
            | "giving"
            | "off"
            | "rise"
            | "to"
            | "out"
            | "its"
            | "their"
            | "the"
            | "a"
            | "an"
            | "muscle"
            | "group"
            | "joint"
            | "nerve"
            | "through"
            | "as"
            | "moves"
            | "move"
            | "allows"
            | "around"
            | "about"
            | "at"
            | "there"
    )
}

/// Words by which a count of branches is one of those in which a nerve ends: "*divides* into three branches".
pub fn ends_in_branches(phrase: &str) -> bool {
    ["divid", "split", "break", "broken", "ends", "end ", "terminat", "fork", "bifurcat", "parts into"]
        .iter()
        .any(|stem| phrase.contains(stem))
}

/// Words before "the" that take only some of what stands behind it: "*between* the two heads", "*two of* the three".
pub fn binds_some(word: &str) -> bool {
    matches!(word, "between" | "other" | "remaining")
}

/// Verbs by which members are said to be all there are: "three muscles *occupy* the compartment".
pub fn fills(phrase: &str) -> bool {
    matches!(
        phrase.split(' ').next().unwrap_or_default(),
        "occupy"
            | "fill"
            | "form"
            | "make"
            | "compose"
            | "constitute"
            | "comprise"
            | "build"
            | "belong"
            | "share"
            | "populate"
    )
}

/// Verbs by which bones are said to be those of a joint: "three bones *meet* at the elbow".
pub fn meets(phrase: &str) -> bool {
    matches!(
        phrase.split(' ').next().unwrap_or_default(),
        "meet" | "articulate" | "take" | "participate" | "form" | "make" | "contribute" | "enter" | "join"
    )
}
