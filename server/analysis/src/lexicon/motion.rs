//! Verbs of moving and lying, as they are said of nerves and vessels, and the words between them and the places that these
//! pass. A verb stands here once, in its base form.

use super::words::is_preposition;

/// Base forms of verbs that tell where something goes or lies.
const MOTION: &[&str] = &[
    "pass",
    "run",
    "travel",
    "course",
    "go",
    "come",
    "leave",
    "enter",
    "exit",
    "emerge",
    "reemerge",
    "descend",
    "ascend",
    "wind",
    "swing",
    "slip",
    "dive",
    "dip",
    "duck",
    "cross",
    "recross",
    "curve",
    "curl",
    "hook",
    "loop",
    "turn",
    "bend",
    "sweep",
    "wrap",
    "thread",
    "squeeze",
    "burrow",
    "tunnel",
    "bore",
    "crawl",
    "creep",
    "snake",
    "weave",
    "slope",
    "slant",
    "spiral",
    "climb",
    "drop",
    "plunge",
    "slide",
    "glide",
    "skirt",
    "hug",
    "lie",
    "rest",
    "sit",
    "ride",
    "stand",
    "stay",
    "remain",
    "continue",
    "proceed",
    "advance",
    "extend",
    "stretch",
    "reach",
    "gain",
    "appear",
    "reappear",
    "surface",
    "issue",
    "escape",
    "disappear",
    "vanish",
    "sink",
    "penetrate",
    "pierce",
    "perforate",
    "traverse",
    "steer",
    "track",
    "follow",
    "drift",
    "arch",
    "bow",
    "straddle",
    "march",
    "step",
    "nip",
    "pop",
    "poke",
    "push",
    "break",
    "hurry",
    "wander",
    "move",
    "cut",
    "fit",
    "return",
    "recur",
    "reenter",
    "get",
    "wend",
    "occupy",
    "inhabit",
    "negotiate",
    "worm",
    "meander",
    "filter",
    "circle",
    "encircle",
    "round",
    "bypass",
    "journey",
    "accompany",
    "quit",
    "depart",
    "deviate",
    "veer",
    "zigzag",
    "hang",
    "lodge",
    "nestle",
    "flow",
    "use",
    "hop",
    "swerve",
    "sneak",
    "pursue",
    "approach",
    "rise",
    "fall",
    "stream",
    "hitch",
    "peek",
    "peep",
    "protrude",
    "project",
    "arrive",
    "detour",
    "double",
    "trace",
    "gallop",
    "shoot",
    "fly",
    "jump",
    "tuck",
    "snuggle",
    "cling",
    "perch",
    "begin",
    "start",
    "end",
    "divide",
    "split",
    "make",
    "take",
    "find",
    "pick",
    "work",
    "fight",
    "force",
    "have",
];

/// Past participles of verbs that tell where something is to be found.
const FOUND: &[&str] = &[
    "found",
    "seen",
    "located",
    "situated",
    "placed",
    "felt",
    "palpated",
    "traced",
    "followed",
    "identified",
    "exposed",
    "lodged",
    "housed",
    "held",
    "carried",
    "sandwiched",
    "positioned",
    "buried",
    "embedded",
    "contained",
    "enclosed",
    "compressed",
    "trapped",
    "entrapped",
    "squeezed",
    "pinched",
    "kinked",
    "rolled",
    "met",
    "encountered",
    "visible",
    "palpable",
    "tucked",
    "wedged",
    "directed",
    "conducted",
    "transmitted",
    "sheltered",
    "protected",
    "hidden",
    "covered",
    "picked",
    "reached",
    "conveyed",
    "lying",
    "displayed",
    "vulnerable",
    "compressible",
];

/// Verbs with what is found behind them: "you *find* it behind".
const FINDS: &[&str] = &[
    "find", "see", "trace", "follow", "identify", "locate", "expose", "palpate", "feel", "roll", "meet", "catch",
    "take", "pick", "carry", "bring", "lead", "transmit", "trap", "compress", "spot", "reveal", "show", "watch",
    "have",
];

/// Whether a word is a verb of moving or lying, in whatever form.
pub fn is_motion(word: &str) -> bool {
    FOUND.contains(&word) || is_form(word, MOTION)
}

/// Whether a word is a verb with what is found behind it.
pub fn is_finding(word: &str) -> bool {
    is_form(word, FINDS)
}

/// Whether a word is the base, the third person, the *-ing* form or the past of a regular verb of a list.
fn is_form(word: &str, bases: &[&str]) -> bool {
    if word.len() < 3 || is_preposition(word) {
        return bases.contains(&word);
    }
    let known = |stem: &str| bases.contains(&stem);
    let of_stem = |stem: &str| {
        let doubled = stem.len() > 2 && stem.as_bytes().iter().rev().nth(1) == stem.as_bytes().last();
        known(stem)
            || bases.iter().any(|base| base.strip_suffix('e') == Some(stem))
            || (doubled && stem.get(..stem.len() - 1).is_some_and(known))
            || stem
                .strip_suffix('y')
                .is_some_and(|short| bases.iter().any(|base| base.strip_suffix("ie") == Some(short)))
    };
    known(word)
        || word.strip_suffix('s').is_some_and(known)
        || word.strip_suffix("es").is_some_and(known)
        || word.strip_suffix("ies").is_some_and(|stem| bases.iter().any(|base| base.strip_suffix('y') == Some(stem)))
        || word.strip_suffix("ing").is_some_and(of_stem)
        || word.strip_suffix("ed").is_some_and(of_stem)
        || matches!(
            word,
            "ran" | "went" | "came" | "left" | "gone" | "wound" | "swung" | "lay" | "sat" | "stood" | "gave"
        )
}

/// How many words a preposition of place has that begins at a word, with the one of them that tells the side; and whether only
/// an opening can stand behind it.
pub fn place_words<'w>(at: usize, word: &dyn Fn(usize) -> &'w str) -> Option<PlaceWords> {
    let words = |len, told, opening_only| Some(PlaceWords { len, told, opening_only });
    match (word(at), word(at + 1), word(at + 2)) {
        ("in", "front", "of") => words(3, 1, false),
        ("by", "way" | "means", "of") => words(3, 0, true),
        ("under", "cover", "of") => words(3, 0, false),
        ("in", "company", "with") | ("in", "the", "company") => None,
        ("deep" | "superficial" | "anterior" | "posterior" | "lateral" | "medial", "to", _)
        | ("under", "cover of", _) => words(2, 0, false),
        ("out" | "down" | "up", "of", _) => words(2, 1, true),
        ("out" | "down" | "up", "through" | "along", _) => words(2, 1, false),
        (
            "through" | "via" | "behind" | "under" | "beneath" | "underneath" | "between" | "round" | "around" | "over"
            | "above" | "below" | "within" | "inside" | "across" | "along" | "alongside" | "beside" | "piercing"
            | "traversing" | "perforating" | "past",
            ..,
        ) => words(1, 0, false),
        ("in" | "by" | "at" | "into" | "from", ..) | ("on" | "upon" | "down" | "up", "the", _) => words(1, 0, true),
        _ => None,
    }
}

/// A preposition of place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PlaceWords {
    /// How many words it has.
    pub len: usize,
    /// Which of them tells the side.
    pub told: usize,
    /// Only an opening can stand behind it.
    pub opening_only: bool,
}

#[cfg(test)]
mod tests {
    use super::{is_finding, is_motion};

    #[test]
    fn knows_the_forms_of_a_verb() {
        for word in
            ["pass", "passes", "passing", "passed", "dipping", "curving", "lies", "lying", "slopes", "ran", "nipped"]
        {
            assert!(is_motion(word), "{word}");
        }
        for word in ["through", "under", "nerve", "supplies", "muscle", "s", "", "round-about", "arises"] {
            assert!(!is_motion(word), "{word}");
        }
        assert!(is_finding("carries") && is_finding("tracing") && !is_finding("muscle"));
    }
}
