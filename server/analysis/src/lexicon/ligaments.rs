//! Words for what ligaments do: hold back, and join.

/// How a word says that something is held back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Restraint {
    /// "*checks* extension", "extension is *checked* by"
    Verb,
    /// "*guards* against extension": only with such a preposition.
    With,
    /// "is *taut* in extension"
    Taut,
    /// "is *torn* by a valgus force": only by what tears ligaments.
    Torn,
}

/// How a word says that something is held back.
pub fn restraint(word: &str) -> Option<Restraint> {
    Some(match word {
        "prevents" | "prevent" | "preventing" | "prevented" | "limits" | "limit" | "limiting" | "limited"
        | "checks" | "check" | "checking" | "checked" | "resists" | "resist" | "resisting" | "resisted"
        | "restrains" | "restrain" | "restraining" | "restrained" | "restricts" | "restrict" | "restricting"
        | "restricted" | "opposes" | "oppose" | "opposing" | "opposed" | "stops" | "stop" | "stopping" | "stopped"
        | "blocks" | "block" | "blocking" | "blocked" | "counters" | "counter" | "countered" | "counteracts"
        | "counteract" | "counteracted" | "curbs" | "curb" | "restraint" | "brake" | "brakes" | "arrests"
        | "withstands" | "withstand" | "halts" | "forbids" | "hinders" | "controls" | "avoids" | "impedes" => {
            Restraint::Verb
        }
        "guards" | "guard" | "guarding" | "guarded" | "protects" | "protect" | "protecting" | "protection"
        | "stabilises" | "stabilise" | "stabilizes" | "stabilize" | "secures" | "defends" | "steadies" | "braces"
        | "brace" | "fortifies" | "supports" | "strengthens" | "stabiliser" | "stabilizer" | "keeps" | "keep"
        | "keeping" | "stability" | "safeguards" | "reinforces" | "stabilising" | "stabilizing" | "strong"
        | "holds" | "defence" | "safeguard" => Restraint::With,
        "taut" | "tight" | "tightens" | "tighten" | "tense" | "tensed" | "tightened" | "stretch" | "stretched"
        | "strained" | "stressed" | "tension" | "tautens" | "stresses" => Restraint::Taut,
        "torn" | "tears" | "tear" | "ruptured" | "ruptures" | "sprained" | "injured" | "damaged" | "sprains"
        | "rupture" => Restraint::Torn,
        _ => return None,
    })
}

/// Words by which a ligament is told to be other than it should be: "a *contracture* of the ligament limits".
pub fn changes_ligament(word: &str) -> bool {
    matches!(
        word,
        "contracture"
            | "contracted"
            | "shortened"
            | "shortening"
            | "tightness"
            | "calcification"
            | "calcified"
            | "graft"
            | "brace"
            | "splint"
            | "swelling"
            | "pain"
            | "scarring"
            | "thickening"
            | "deficient"
            | "absent"
            | "insufficiency"
    )
}

/// Prepositions before what is held off: "guards *against* varus", "keeps it *from* sliding".
pub fn is_against(word: &str) -> bool {
    matches!(word, "against" | "from")
}

/// The motion that a direction of sliding is.
pub fn sliding(word: &str) -> Option<&'static str> {
    Some(match word {
        "forward" | "forwards" | "anterior" | "anteriorly" => "forward",
        "backward" | "backwards" | "posterior" | "posteriorly" | "back" => "backward",
        _ => return None,
    })
}

/// Phrases that say that a bone slides on another.
pub fn tells_sliding(phrase: &str) -> bool {
    [
        "displac",
        "translat",
        "slid",
        "slip",
        "glid",
        "shift",
        "dislocat",
        "drawer",
        "sublux",
        "moving",
        "movement",
        "migrat",
        "driven",
        "pushed",
        "travel",
        "excursion",
    ]
    .iter()
    .any(|stem| phrase.starts_with(stem))
}

/// Verbs by which a ligament is said to be attached to what stands behind them: "*runs* from the tibia to the femur".
pub fn binds(word: &str) -> bool {
    matches!(
        word,
        "holds"
            | "hold"
            | "runs"
            | "run"
            | "running"
            | "passes"
            | "pass"
            | "passing"
            | "goes"
            | "go"
            | "extends"
            | "extend"
            | "extending"
            | "stretches"
            | "stretch"
            | "stretching"
            | "spans"
            | "span"
            | "spanning"
            | "bridges"
            | "bridge"
            | "bridging"
            | "connects"
            | "connect"
            | "connecting"
            | "links"
            | "link"
            | "linking"
            | "joins"
            | "join"
            | "joining"
            | "ties"
            | "tie"
            | "tying"
            | "binds"
            | "bind"
            | "binding"
            | "anchors"
            | "anchor"
            | "anchoring"
            | "unites"
            | "unite"
            | "uniting"
            | "attaches"
            | "attached"
            | "attach"
            | "inserts"
            | "fans"
            | "fan"
            | "radiates"
            | "arises"
            | "arise"
            | "originates"
            | "fastens"
            | "fixes"
            | "secures"
            | "tethers"
            | "spreads"
            | "ascends"
            | "descends"
            | "travels"
            | "leads"
            | "fused"
            | "fuses"
            | "blends"
            | "blended"
            | "adherent"
            | "adheres"
            | "merges"
            | "anchored"
            | "encircles"
            | "encircle"
            | "surrounds"
            | "lashes"
            | "moors"
            | "straps"
            | "ends"
            | "begins"
            | "starts"
    )
}

/// Words right before a bone to which a ligament is attached: "*from* the tibia *to* the femur".
pub fn leads_to_bond(word: &str) -> bool {
    matches!(word, "from" | "to" | "between" | "and" | "," | "with" | "onto" | "on" | "into" | "at" | "or")
}
