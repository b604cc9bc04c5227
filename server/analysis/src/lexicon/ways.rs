//! Everyday words for movements: a verb of moving and the way in which a part of the body is moved ("turns the sole
//! inwards", "pulls the shoulder down", "spreads the fingers").
//!
//! What such words mean depends on what is moved: turning the foot outwards is eversion, turning the thigh outwards lateral
//! rotation. So a line of [`WAYS`] lists all that the words can mean; which of them can happen at the part that is moved, the
//! vocabulary knows.

/// How something is moved, as everyday verbs tell it apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Manner {
    /// "turns", "rolls"
    Turn,
    /// "draws", "pulls", "pushes"
    Draw,
    /// "lifts", "raises"
    Lift,
    /// "lowers"
    Lower,
    /// "bends", "tips"
    Bend,
    /// "spreads"
    Spread,
    /// "points"
    Point,
    /// "tightens"
    Tighten,
    /// "slackens"
    Slacken,
}

/// Where something is moved to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// "outwards"
    Out,
    /// "inwards"
    In,
    /// "up"
    Up,
    /// "down"
    Down,
    /// "forward"
    Forward,
    /// "back"
    Back,
    /// "to the side"
    Aside,
    /// "apart"
    Apart,
    /// "together"
    Together,
    /// "to the ulnar side"
    Ulnar,
    /// "to the radial side"
    Radial,
    /// "across the palm"
    Across,
}

/// A manner, a way (`None`: no word for it is needed) and the movements that they can mean, with an example.
pub const WAYS: &[(Manner, Option<Way>, &[&str], &str)] = &[
    (Manner::Turn, Some(Way::Out), &["eversion", "lateral rotation", "abduction"], "turns the foot outwards"),
    (Manner::Turn, Some(Way::In), &["inversion", "medial rotation", "adduction"], "turns the foot inwards"),
    (Manner::Turn, Some(Way::Aside), &["rotation"], "turns the face to the opposite side"),
    (Manner::Turn, Some(Way::Up), &["upward rotation", "elevation", "supination"], "turns the eye upwards"),
    (Manner::Turn, Some(Way::Down), &["downward rotation", "depression", "pronation"], "turns the eye downwards"),
    (Manner::Draw, Some(Way::Forward), &["protraction", "protrusion", "flexion"], "pulls the scapula forward"),
    (Manner::Draw, Some(Way::Back), &["retraction", "extension"], "draws the scapula back"),
    (Manner::Draw, Some(Way::Up), &["elevation", "dorsiflexion"], "pulls the scapula up"),
    (Manner::Draw, Some(Way::Down), &["depression", "plantar flexion"], "pulls the scapula down"),
    (Manner::Draw, Some(Way::Out), &["eversion", "abduction", "protrusion"], "swings the thigh outwards"),
    (
        Manner::Draw,
        Some(Way::Across),
        &["opposition", "horizontal adduction", "adduction"],
        "pulls the thigh across the body",
    ),
    (Manner::Bend, Some(Way::Out), &["eversion"], "tips the sole outwards"),
    (Manner::Bend, Some(Way::In), &["inversion"], "tips the sole inwards"),
    (Manner::Draw, Some(Way::Aside), &["abduction"], "swings the thigh to the side"),
    (Manner::Draw, Some(Way::Apart), &["abduction", "protraction"], "draws the vocal folds apart"),
    (Manner::Draw, Some(Way::In), &["inversion", "adduction"], "pulls the thigh inwards"),
    (Manner::Draw, Some(Way::Together), &["adduction", "retraction"], "draws the vocal folds together"),
    (Manner::Lift, None, &["elevation", "dorsiflexion", "abduction", "flexion"], "lifts the scapula"),
    (Manner::Lift, Some(Way::Aside), &["abduction"], "lifts the thigh sideways"),
    (Manner::Lift, Some(Way::Out), &["abduction"], "lifts the thigh outwards"),
    (Manner::Lift, Some(Way::Forward), &["flexion"], "lifts the thigh forwards"),
    (Manner::Lift, Some(Way::Back), &["extension"], "lifts the thigh backwards"),
    (Manner::Lower, None, &["depression", "plantar flexion"], "lowers the scapula"),
    (Manner::Bend, Some(Way::Forward), &["flexion"], "bends the trunk forward"),
    (Manner::Bend, Some(Way::Back), &["extension"], "arches the trunk backwards"),
    (Manner::Bend, Some(Way::Aside), &["lateral flexion"], "tilts the head to the side"),
    (Manner::Spread, None, &["abduction"], "spreads the fingers"),
    (Manner::Point, Some(Way::Down), &["plantar flexion"], "points the foot down"),
    (Manner::Point, Some(Way::Up), &["dorsiflexion"], "points the foot up"),
    (Manner::Bend, Some(Way::Ulnar), &["ulnar deviation", "adduction"], "tilts the hand to the ulnar side"),
    (Manner::Bend, Some(Way::Radial), &["radial deviation", "abduction"], "tilts the hand to the radial side"),
    (Manner::Draw, Some(Way::Ulnar), &["ulnar deviation", "adduction"], "pulls the hand to the ulnar side"),
    (Manner::Draw, Some(Way::Radial), &["radial deviation", "abduction"], "pulls the hand to the radial side"),
    (Manner::Tighten, None, &["tension"], "tightens the vocal folds"),
    (Manner::Slacken, None, &["relaxation"], "slackens the vocal folds"),
];

/// What happens at a neighbouring joint while something is lifted.
pub const LIFTED_WITH: &[&str] = &["upward rotation"];

/// The manner of a verb of moving.
pub fn manner(verb: &str) -> Option<Manner> {
    Some(match verb {
        "turn" | "turns" | "turning" | "rotate" | "rotates" | "rotating" | "roll" | "rolls" | "rolling" | "twist"
        | "twists" | "twisting" | "swivel" | "swivels" => Manner::Turn,
        "draw" | "draws" | "drawing" | "pull" | "pulls" | "pulling" | "push" | "pushes" | "pushing" | "bring"
        | "brings" | "bringing" | "swing" | "swings" | "swinging" | "drag" | "drags" | "thrust" | "thrusts"
        | "take" | "takes" | "haul" | "hauls" | "tug" | "tugs" | "shift" | "shifts" | "move" | "moves" | "cock"
        | "cocks" | "carry" | "carries" | "carrying" | "stick" | "sticks" | "sticking" | "poke" | "pokes"
        | "poking" | "jut" | "juts" | "moving" | "taking" | "dragging" | "hauling" | "shifting" => Manner::Draw,
        "lift" | "lifts" | "lifting" | "raise" | "raises" | "raising" | "hitch" | "hitches" | "hoist" | "hoists" => {
            Manner::Lift
        }
        "lower" | "lowers" | "lowering" | "drop" | "drops" | "dropping" => Manner::Lower,
        "bend" | "bends" | "bending" | "tip" | "tips" | "tipping" | "tilt" | "tilts" | "tilting" | "arch"
        | "arches" | "arching" | "lean" | "leans" => Manner::Bend,
        "spread" | "spreads" | "spreading" | "splay" | "splays" | "splaying" => Manner::Spread,
        "point" | "points" | "pointing" => Manner::Point,
        "tighten" | "tightens" | "tightening" | "stretch" | "stretches" | "tauten" | "tautens" => Manner::Tighten,
        "slacken" | "slackens" | "loosen" | "loosens" => Manner::Slacken,
        _ => return None,
    })
}

/// The manner of a participle of such a verb ("the foot is *turned* inwards by").
pub fn manner_done(participle: &str) -> Option<Manner> {
    Some(match participle {
        "turned" | "rotated" | "rolled" | "twisted" | "swivelled" => Manner::Turn,
        "drawn" | "pulled" | "pushed" | "brought" | "swung" | "dragged" | "taken" | "hauled" | "moved" | "carried"
        | "shifted" | "cocked" | "stuck" => Manner::Draw,
        "lifted" | "raised" | "hitched" | "hoisted" => Manner::Lift,
        "lowered" | "dropped" => Manner::Lower,
        "bent" | "tipped" | "tilted" | "arched" => Manner::Bend,
        "spread" | "splayed" => Manner::Spread,
        "pointed" => Manner::Point,
        "tightened" | "stretched" | "tautened" => Manner::Tighten,
        "slackened" | "loosened" => Manner::Slacken,
        _ => return None,
    })
}

/// Ways that are told by a place to which something is moved, or from which.
const PLACES_OF_WAYS: &[(&[&str], &[&str], Way)] = &[
    (&["towards", "toward", "to"], &["midline", "nose", "body", "trunk", "median"], Way::In),
    (&["from"], &["midline", "nose", "body", "trunk", "palm", "side", "median"], Way::Out),
    (&["towards", "toward"], &["thumb", "radius"], Way::Radial),
    (&["towards", "toward"], &["little", "ulna"], Way::Ulnar),
    (&["towards", "toward", "to"], &["spine", "vertebral", "spinal", "backbone"], Way::Together),
    (&["to"], &["right", "left"], Way::Aside),
    (&["across"], &["palm", "chest", "body", "hand", "front"], Way::Across),
];

/// The way that several words tell ("*away from the midline*", "*across the palm*"), with how many they are.
pub fn way_to_place<'w>(word: &dyn Fn(usize) -> &'w str) -> Option<(Way, usize)> {
    let first = usize::from(word(0) == "away");
    let article = first + 1;
    let place = article + usize::from(matches!(word(article), "the" | "its" | "one's" | "your"));
    let found = PLACES_OF_WAYS.iter().find(|(before, places, _)| {
        before.contains(&word(first)) && places.contains(&word(place)) && (first == 0 || word(first) == "from")
    });
    found.map(|(.., way)| (*way, place + 1))
}

/// The way that a word tells.
pub fn way(word: &str) -> Option<Way> {
    Some(match word {
        "outwards" | "outward" | "laterally" | "externally" | "out" => Way::Out,
        "inwards" | "inward" | "medially" | "internally" => Way::In,
        "up" | "upwards" | "upward" | "superiorly" | "skywards" => Way::Up,
        "down" | "downwards" | "downward" | "inferiorly" => Way::Down,
        "forward" | "forwards" | "anteriorly" => Way::Forward,
        "back" | "backwards" | "backward" | "posteriorly" => Way::Back,
        "sideways" | "side" | "aside" => Way::Aside,
        "apart" | "away" => Way::Apart,
        "together" => Way::Together,
        "ulnar" | "ulnarwards" => Way::Ulnar,
        "radial" | "radially" => Way::Radial,
        _ => return None,
    })
}

/// Words that may stand between what is moved and the way ("turns the face *to the* side").
pub fn is_before_way(word: &str) -> bool {
    matches!(
        word,
        "to" | "towards"
            | "toward"
            | "the"
            | "straight"
            | "gently"
            | "strongly"
            | "bodily"
            | "well"
            | "further"
            | "slightly"
            | "opposite"
            | "other"
            | "own"
    )
}

/// The movements that a verb and a way can mean.
pub fn meanings(manner: Manner, way: Option<Way>) -> &'static [&'static str] {
    let exact = WAYS.iter().find(|(known, wanted, ..)| *known == manner && *wanted == way);
    let any = || {
        let agrees = match manner {
            Manner::Lift => matches!(way, None | Some(Way::Up)),
            Manner::Lower => matches!(way, None | Some(Way::Down)),
            Manner::Spread => matches!(way, None | Some(Way::Apart | Way::Out)),
            _ => false,
        };
        WAYS.iter().find(|(known, wanted, ..)| agrees && *known == manner && wanted.is_none())
    };
    exact.or_else(any).map_or(&[], |(_, _, movements, _)| movements)
}

/// Adjectives of direction that alone name no place ("the *anterior* and lateral surfaces").
pub fn is_direction(text: &str) -> bool {
    matches!(
        text,
        "anterior"
            | "posterior"
            | "medial"
            | "lateral"
            | "superior"
            | "inferior"
            | "upper"
            | "lower"
            | "inner"
            | "outer"
            | "deep"
            | "superficial"
            | "proximal"
            | "distal"
            | "dorsal"
            | "ventral"
            | "palmar"
            | "plantar"
    )
}
