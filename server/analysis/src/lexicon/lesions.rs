//! Words by which lesions and their signs are told: what happens to a part of the body, on which side, what a sign points
//! to, and who has it.

use super::filter::Filter;

/// What everyday words say happens in a sign, each row under the word that stands for all of it.
pub const HAPPENINGS: &[(&str, &[&str])] = &[
    // "the foot drops"
    (
        "drop",
        &[
            "drop", "drops", "dropped", "dropping", "droop", "droops", "drooped", "drooping", "sag", "sags", "sagging",
            "hang", "hangs", "hanging", "tilt", "tilts", "falls", "dip", "dips", "dipping", "slap", "slaps", "flop",
            "flops", "sinks",
        ],
    ),
    // "the tongue points to the side of the lesion"
    (
        "turn",
        &[
            "turn",
            "turns",
            "turned",
            "turning",
            "deviate",
            "deviates",
            "deviated",
            "deviating",
            "deviation",
            "point",
            "points",
            "pointing",
            "swing",
            "swings",
            "veer",
            "veers",
            "look",
            "looks",
            "looking",
            "pull",
            "pulls",
            "pulled",
            "drawn",
            "drifts",
            "goes",
        ],
    ),
    // "the scapula wings"
    ("wing", &["wing", "wings", "winged", "winging"]),
    // "the knee gives way"
    ("buckle", &["buckle", "buckles", "buckling", "gives", "give"]),
    // "the eye does not close"
    ("close", &["close", "closes", "closed", "closing", "closure", "shut", "shuts"]),
    // "food collects in the cheek"
    ("gather", &["gather", "gathers", "gathering", "collect", "collects", "collecting", "lodges"]),
    // "the thenar eminence is wasted"
    (
        "waste",
        &[
            "waste",
            "wastes",
            "wasted",
            "wasting",
            "atrophy",
            "atrophies",
            "atrophied",
            "thin",
            "thinned",
            "hollow",
            "flattened",
            "flattening",
            "flat",
        ],
    ),
    ("claw", &["claw", "claws", "clawed", "clawing"]),
    ("stand", &["stand", "standing", "rise", "rising"]),
    ("tiptoe", &["tiptoe", "tiptoes"]),
    ("hoarse", &["hoarse", "hoarseness"]),
    ("swallow", &["swallow", "swallows", "swallowing"]),
    ("chew", &["chew", "chews", "chewing", "mastication"]),
    ("smell", &["smell", "smells", "smelling"]),
    ("whistle", &["whistle", "whistling"]),
    ("frown", &["frown", "frowning"]),
    ("dilate", &["dilate", "dilates", "dilated"]),
    ("constrict", &["constrict", "constricts", "constricted", "small"]),
];

/// What a word says happens, whatever its form.
pub fn happening(word: &str) -> Option<&'static str> {
    static FILTER: Filter<16> = {
        let mut filter = Filter::EMPTY;
        let mut row = 0;
        while row < HAPPENINGS.len() {
            let words = HAPPENINGS[row].1;
            let mut at = 0;
            while at < words.len() {
                filter.add(words[at].as_bytes(), words[at].len());
                at += 1;
            }
            row += 1;
        }
        filter
    };
    if !FILTER.may_have(word) {
        return None;
    }
    HAPPENINGS.iter().find(|(_, words)| words.contains(&word)).map(|(happening, _)| *happening)
}

/// Words behind which the name of a sign tells only when and where.
pub fn ends_sign(word: &str) -> bool {
    matches!(word, "on" | "when" | "with" | "to" | "at" | "from")
}

/// Nouns that make a name of a sign one that is found only as it is.
pub fn names_whole_sign(word: &str) -> bool {
    matches!(word, "palsy" | "syndrome" | "sign" | "gait" | "neuralgia" | "reflex" | "jerk" | "paradox" | "contour")
}

/// Nouns that make the name of a sign one of the lesion itself ("*carpal tunnel syndrome*").
pub fn names_lesion(word: &str) -> bool {
    matches!(word, "palsy" | "syndrome" | "paraesthetica" | "paresthetica")
}

/// Prepositions that tell where something turns ("*down* and out").
pub fn is_way(word: &str) -> bool {
    matches!(word, "down" | "out" | "up")
}

/// On which side of the body something shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BodySide {
    /// On that of the lesion, or of the muscle.
    Same,
    /// On the other.
    Opposite,
}

impl BodySide {
    /// The word for it in a claim.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Same => "same side",
            Self::Opposite => "opposite side",
        }
    }
}

/// Turns of phrase for a side; the other side first, since it may be told by the first ("away from the side of the lesion").
const BODY_SIDES: &[(&str, BodySide)] = &[
    ("away from", BodySide::Opposite),
    ("opposite side", BodySide::Opposite),
    ("opposite hip", BodySide::Opposite),
    ("opposite to the", BodySide::Opposite),
    ("other side", BodySide::Opposite),
    ("sound side", BodySide::Opposite),
    ("unsupported side", BodySide::Opposite),
    ("swinging side", BodySide::Opposite),
    ("raised side", BodySide::Opposite),
    ("healthy side", BodySide::Opposite),
    ("normal side", BodySide::Opposite),
    ("good side", BodySide::Opposite),
    ("unaffected side", BodySide::Opposite),
    ("uninjured side", BodySide::Opposite),
    ("contralateral", BodySide::Opposite),
    ("side of the lesion", BodySide::Same),
    ("side of the injury", BodySide::Same),
    ("side of the damage", BodySide::Same),
    ("side of the palsy", BodySide::Same),
    ("towards the lesion", BodySide::Same),
    ("same side", BodySide::Same),
    ("affected side", BodySide::Same),
    ("injured side", BodySide::Same),
    ("damaged side", BodySide::Same),
    ("paralysed side", BodySide::Same),
    ("paralyzed side", BodySide::Same),
    ("weak side", BodySide::Same),
    ("own side", BodySide::Same),
    ("own shoulder", BodySide::Same),
    ("ipsilateral", BodySide::Same),
];

/// The side that a text in lower case tells, if it tells one.
pub fn body_side(text: &str) -> Option<BodySide> {
    BODY_SIDES.iter().find(|(phrase, _)| text.contains(phrase)).map(|(_, side)| *side)
}

/// Verbs by which a sign points to what is hurt ("weak dorsiflexion *suggests* the nerve").
pub fn points_to(word: &str) -> bool {
    matches!(
        word,
        "suggests"
            | "suggest"
            | "indicates"
            | "indicate"
            | "means"
            | "mean"
            | "implies"
            | "imply"
            | "signals"
            | "betrays"
            | "suspect"
            | "blame"
            | "implicates"
            | "incriminates"
            | "spells"
            | "signifies"
            | "betokens"
            | "reveals"
    )
}

/// Verbs and nouns that point to what is hurt with a preposition behind them ("*points* to", "*think* of").
pub fn points_with_preposition(word: &str, preposition: &str) -> bool {
    match preposition {
        "to" | "towards" | "toward" | "at" => {
            matches!(word, "points" | "point" | "pointing" | "leads" | "back" | "localises" | "localizes")
        }
        "of" => matches!(word, "think" | "speaks" | "typical" | "characteristic" | "suggestive" | "tells"),
        _ => false,
    }
}

/// Verbs by which something hurts a nerve, in the forms that may stand before its name ("a fracture *damages* the nerve",
/// "*sever* the nerve").
pub fn hurts(word: &str) -> bool {
    matches!(
        word,
        "sever"
            | "severs"
            | "damages"
            | "injure"
            | "injures"
            | "crush"
            | "crushes"
            | "destroy"
            | "destroys"
            | "lose"
            | "pinch"
            | "pinches"
            | "squash"
            | "traps"
            | "trap"
            | "compress"
            | "compresses"
            | "knock"
            | "knocks"
            | "kill"
            | "kills"
            | "nick"
            | "nicks"
            | "bruise"
            | "bruises"
            | "transect"
            | "transects"
            | "stretches"
            | "tears"
            | "blocks"
            | "cuts"
            | "anaesthetise"
            | "hits"
            | "endangers"
            | "affects"
            | "affect"
            | "involves"
            | "involve"
            | "invades"
            | "invade"
            | "infiltrates"
            | "infiltrate"
            | "entraps"
            | "entrap"
            | "avulses"
            | "avulse"
            | "ruptures"
            | "rupture"
            | "hurts"
            | "hurt"
            | "harms"
            | "harm"
            | "lacerates"
            | "lacerate"
            | "contuses"
            | "irritates"
            | "irritate"
            | "anaesthetises"
            | "anesthetizes"
            | "anesthetize"
            | "numb"
            | "denervate"
            | "threatens"
            | "threaten"
            | "divides"
            | "disables"
            | "disable"
            | "sacrifice"
            | "sacrifices"
            | "strikes"
            | "strike"
            | "catches"
            | "catch"
    )
}

/// Words for somebody who has a lesion, by whom a case is told from a lesson.
pub fn is_person(word: &str) -> bool {
    matches!(
        word,
        "patient"
            | "he"
            | "she"
            | "boy"
            | "girl"
            | "man"
            | "woman"
            | "child"
            | "baby"
            | "newborn"
            | "examination"
            | "his"
            | "her"
            | "old"
            | "player"
            | "worker"
            | "student"
            | "casualty"
    )
}

/// Words that say that something is hard to do: losses where they stand behind what is done ("shrugging is *difficult*").
pub fn is_hard(word: &str) -> bool {
    matches!(word, "difficult" | "hard" | "harder" | "laboured" | "feeble" | "poor" | "gone" | "limp" | "powerless")
}

/// Verbs before "not" that say of somebody that they do not do a thing ("the eye *does* not close").
pub fn may_fail(word: &str) -> bool {
    matches!(word, "will" | "does" | "do" | "can" | "could")
}

/// Adverbs between "is" and a participle of a lesion ("is *easily* damaged").
pub fn is_before_hurt(word: &str) -> bool {
    matches!(
        word,
        "had" | "easily" | "often" | "most" | "frequently" | "accidentally" | "completely" | "partly" | "badly"
    )
}

/// Verbs that say of a sign where it comes from ("numbness of the sole *follows* damage").
pub fn comes_of(word: &str) -> bool {
    matches!(word, "follows" | "results" | "comes" | "occurs" | "accompanies" | "arises" | "points" | "goes")
}

/// Words that say of what lies against a nerve that it hurts it, with "on" behind them ("a disc *pressing* on C6").
pub fn hurts_by_pressing(word: &str) -> bool {
    matches!(
        word,
        "press"
            | "presses"
            | "pressing"
            | "pressed"
            | "impinges"
            | "impinging"
            | "impinge"
            | "pressure"
            | "pulling"
            | "traction"
    )
}

/// Whether a word tells how much or in what way something is so: "*severely* impaired".
pub fn is_degree(word: &str) -> bool {
    (word.len() > 4 && word.ends_with("ly"))
        || matches!(
            word,
            "much" | "very" | "rather" | "quite" | "somewhat" | "so" | "badly" | "half" | "often" | "almost"
        )
}

/// Verbs of working, for muscles that a lesion leaves alone ("still *works*").
pub fn works_on(word: &str) -> bool {
    matches!(
        word,
        "work"
            | "works"
            | "working"
            | "contract"
            | "contracts"
            | "contracting"
            | "function"
            | "functions"
            | "functioning"
            | "act"
            | "acts"
            | "acting"
            | "respond"
            | "responds"
            | "fire"
            | "fires"
            | "move"
            | "moves"
    )
}

/// Adjectives and participles of loss that need no verb behind what is lost ("eversion *weak*").
pub fn is_state_of_loss(word: &str) -> bool {
    matches!(
        word,
        "weak"
            | "weakened"
            | "lost"
            | "paralysed"
            | "paralyzed"
            | "absent"
            | "impaired"
            | "reduced"
            | "diminished"
            | "abolished"
            | "impossible"
            | "feeble"
            | "wasted"
            | "atrophied"
            | "flaccid"
            | "denervated"
            | "affected"
            | "gone"
            | "limited"
            | "decreased"
            | "compromised"
            | "paretic"
            | "numb"
            | "poor"
            | "restricted"
    )
}

/// Verbs that take away where the name of a muscle or a movement stands right behind them ("*affects* the hypothenar muscles").
pub fn affects(word: &str) -> bool {
    matches!(
        word,
        "affects" | "affect" | "affecting" | "involves" | "involve" | "involving" | "hits" | "attacks" | "targets"
    )
}

/// Whether a heading tells of what fails: "What goes *wrong*", "When things go *wrong*", not of errors.
pub fn tells_of_failing(text: &str) -> bool {
    let text = text.to_lowercase();
    ["go wrong", "goes wrong", "going wrong", "gone wrong", "went wrong"].iter().any(|phrase| text.contains(phrase))
}

/// Nouns for what a nerve has of a kind ("no motor *function*", "a sensory *component*", "a cutaneous *territory*").
pub fn is_function_noun(word: &str, of_skin: bool) -> bool {
    matches!(
        word,
        "function" | "functions" | "component" | "components" | "element" | "elements" | "role" | "part" | "content"
    ) || (of_skin && matches!(word, "distribution" | "territory" | "supply" | "area"))
}
