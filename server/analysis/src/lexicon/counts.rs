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
    counted("compartments", "compartments", PartRole::Structure),
    counted("fascial compartments", "compartments", PartRole::Structure),
    counted("osteofascial compartments", "compartments", PartRole::Structure),
    counted("cranial nerves", "cranial nerves", PartRole::Structure),
    counted("nerves", "nerves", PartRole::Structure),
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

/// The noun by which the vocabulary counts what a noun means as well: the nerves that a cord gives are its branches.
pub fn also_counted(noun: &str) -> Option<&'static str> {
    (noun == "nerves").then_some("branches")
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

/// The number that a word is where something is counted: "a *single* head", "a *pair* of heads".
pub fn count(word: &str) -> Option<u32> {
    if word == "single" { Some(1) } else { number(word).or_else(|| tens(word)).or_else(|| number_noun(word)) }
}

/// The number of tens that a word begins with: "*thirty*-one".
pub fn tens(word: &str) -> Option<u32> {
    let place = ["twenty", "thirty", "forty", "fifty"].iter().position(|known| *known == word)?;
    u32::try_from(place).ok().map(|place| 10 * (place + 2))
}

/// The number that a noun before "of" tells: "a *pair* of heads".
pub fn number_noun(word: &str) -> Option<u32> {
    Some(match word {
        "pair" | "couple" | "duo" | "brace" => 2,
        "trio" | "triad" => 3,
        "quartet" | "foursome" => 4,
        "quintet" => 5,
        "dozen" => 12,
        _ => return None,
    })
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
    matches!(
        word,
        "main"
            | "major"
            | "chief"
            | "principal"
            | "big"
            | "large"
            | "great"
            | "small"
            | "minor"
            | "short"
            | "long"
            | "flat"
            | "thin"
            | "thick"
            | "broad"
            | "slender"
            | "strong"
            | "powerful"
            | "little"
    )
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

/// Words before a number that leave open how many there are: "*about* three", "at *least* two".
pub fn leaves_number_open(word: &str) -> bool {
    matches!(
        word,
        "about"
            | "around"
            | "roughly"
            | "approximately"
            | "some"
            | "least"
            | "most"
            | "to"
            | "over"
            | "nearly"
            | "almost"
            | "under"
            | "perhaps"
            | "or"
            | "another"
            | "other"
            | "other's"
            | "first"
            | "last"
            | "these"
            | "those"
            | "next"
            | "any"
            | "between"
            | "every"
            | "than"
    )
}

/// Words before a number that make it a rough one, or one bound of it: "*about* thirty".
pub fn is_roughly(word: &str) -> bool {
    matches!(
        word,
        "about" | "around" | "roughly" | "approximately" | "least" | "nearly" | "almost" | "some" | "over" | "under"
    )
}

/// Words that speak of both sides of the body: "*both* feet have".
pub fn tells_both(word: &str) -> bool {
    matches!(word, "both" | "together" | "sides" | "hands" | "feet" | "limbs" | "body" | "total" | "altogether")
}

/// Phrases that tell of all that there is: "*consists of* three", "*there* are four".
pub fn tells_all(phrase: &str) -> bool {
    phrase.split(' ').any(|word| {
        matches!(
            word,
            "has"
                | "have"
                | "having"
                | "consists"
                | "consist"
                | "comprises"
                | "comprise"
                | "composed"
                | "comprised"
                | "made"
                | "formed"
                | "forms"
                | "form"
                | "make"
                | "makes"
                | "built"
                | "divides"
                | "divided"
                | "divide"
                | "splits"
                | "split"
                | "breaks"
                | "broken"
                | "ends"
                | "terminates"
                | "numbers"
                | "number"
                | "counts"
                | "counted"
                | "come"
                | "comes"
                | "meet"
                | "pass"
                | "possesses"
                | "possess"
                | "contains"
                | "contain"
                | "holds"
                | "houses"
                | "there"
                | "total"
                | "produces"
                | "produce"
                | "run"
                | "runs"
                | "yields"
                | "yield"
                | "sends"
                | "supplies"
                | "boasts"
                | "owns"
                | "arises"
                | "originates"
                | "presents"
                | "springs"
                | "spring"
                | "altogether"
                | "branches"
                | "gives"
                | "give"
                | "transmits"
                | "transmit"
                | "exist"
                | "exists"
                | "we"
                | "one"
                | "moved"
                | "constitute"
                | "constitutes"
                | "union"
                | "tendons"
                | "subdivided"
                | "partitioned"
                | "arranged"
                | "organised"
                | "organized"
                | "separated"
                | "includes"
                | "totals"
                | "only"
                | "just"
                | "no"
                | "forks"
                | "bifurcates"
                | "parts"
                | "resolves"
                | "distinguish"
                | "distinguishes"
                | "recognise"
                | "recognises"
                | "recognize"
                | "recognizes"
                | "composes"
                | "compose"
                | "with"
        )
    })
}

/// Participles by which parts are said to be all there are: "two heads of NAME are *described*".
pub fn tells_of_parts(word: &str) -> bool {
    matches!(
        word,
        "described"
            | "recognised"
            | "recognized"
            | "distinguished"
            | "present"
            | "known"
            | "found"
            | "named"
            | "seen"
            | "counted"
            | "listed"
            | "identified"
    )
}

/// Words between a group and the number of its members at the end of a clause: "of NAME *there are* five".
pub fn is_before_number(word: &str) -> bool {
    matches!(
        word,
        "is" | "are"
            | "there"
            | ","
            | "in"
            | "number"
            | "all"
            | "total"
            | "only"
            | "just"
            | "has"
            | "have"
            | "exist"
            | "one"
            | "counts"
            | "count"
            | "we"
            | "come"
            | "comes"
            | "to"
            | "muscles"
            | "group"
            | "altogether"
            | "makes"
            | "make"
            | "you"
            | "will"
            | "find"
            | "finds"
    )
}

/// Words before the group whose members are counted: "*of the* NAME there are five".
pub fn is_before_owner(word: &str) -> bool {
    matches!(word, "of" | "the" | "as" | "for" | "and" | "," | "muscles" | "these" | "in" | "all")
}

/// Words that speak of one side or part of what there is: "on the *medial* side there are two".
pub fn tells_side(word: &str) -> bool {
    matches!(
        word,
        "medial"
            | "lateral"
            | "anterior"
            | "posterior"
            | "front"
            | "back"
            | "side"
            | "half"
            | "upper"
            | "lower"
            | "superficial"
            | "deep"
            | "left"
            | "right"
            | "inner"
            | "outer"
            | "proximal"
            | "distal"
            | "superior"
            | "inferior"
            | "ventral"
            | "dorsal"
            | "medially"
            | "laterally"
            | "above"
            | "below"
            | "behind"
    )
}
