//! Words by which a muscle is said to end somewhere: verbs, participles and nouns of attachment, the prepositions that they
//! take, and what may stand between them and the place.

/// What a word says of the end of a muscle.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ending {
    /// "springs from", "starts at": the origin.
    Origin,
    /// "comes from": the origin, with "from" alone.
    Source,
    /// "ends on": the insertion.
    Insertion,
    /// "is fixed to": either.
    Either,
    /// "descends from … to …": a way that leads from one end to the other.
    Way,
    /// "grips": either, with the place right behind it.
    Holds,
    /// "links … with …": both, the first place right behind it.
    Links,
}

/// What a word says of the end of a muscle, if it is a word for that.
pub fn ending(word: &str) -> Option<Ending> {
    Some(match word {
        "arise" | "arises" | "arising" | "arose" | "originate" | "originates" | "originating" | "spring"
        | "springs" | "springing" | "sprung" | "start" | "starts" | "starting" | "started" | "begin" | "begins"
        | "beginning" | "origin" | "origins" => Ending::Origin,
        "come" | "comes" | "coming" | "stem" | "stems" | "stemming" | "emerge" | "emerges" | "emerging" | "derive"
        | "derives" | "derived" | "rise" | "rises" | "rising" | "issue" | "issues" | "sprout" | "sprouts" | "grows" => {
            Ending::Source
        }
        "insert" | "inserts" | "inserting" | "inserted" | "insertion" | "insertions" | "end" | "ends" | "ending"
        | "ended" | "terminate" | "terminates" | "terminating" | "terminated" | "termination" | "finish"
        | "finishes" | "finishing" | "stop" | "stops" | "stopping" | "land" | "lands" | "landing" | "converge"
        | "converges" | "converging" | "implanted" | "settle" | "settles" | "meet" | "meets" | "meeting" => {
            Ending::Insertion
        }
        "attach" | "attaches" | "attaching" | "attached" | "attachment" | "attachments" | "fix" | "fixes" | "fixed"
        | "fixing" | "anchor" | "anchors" | "anchored" | "anchoring" | "anchorage" | "fasten" | "fastens"
        | "fastened" | "fastening" | "hook" | "hooks" | "hooked" | "cling" | "clings" | "clinging" | "secured"
        | "tethered" | "bound" | "tied" | "pinned" | "adheres" | "adherent" | "rooted" | "hitched" | "connected"
        | "joined" | "latches" | "holds" | "bolted" | "moored" | "affixed" | "foothold" | "purchase" | "pull"
        | "pulls" | "pulling" | "tug" | "tugs" | "fast" => Ending::Either,
        "run" | "runs" | "running" | "pass" | "passes" | "passing" | "go" | "goes" | "going" | "descend"
        | "descends" | "descending" | "ascend" | "ascends" | "ascending" | "extend" | "extends" | "extending"
        | "extended" | "stretch" | "stretches" | "stretching" | "stretched" | "drop" | "drops" | "dropping"
        | "climb" | "climbs" | "climbing" | "sweep" | "sweeps" | "sweeping" | "fan" | "fans" | "fanning" | "spread"
        | "spreads" | "spreading" | "slant" | "slants" | "slanting" | "travel" | "travels" | "travelling"
        | "traveling" | "course" | "courses" | "coursing" | "proceed" | "proceeds" | "incline" | "inclines"
        | "hang" | "hangs" | "hanging" | "span" | "spans" | "spanning" | "continue" | "continues" | "continuing"
        | "taper" | "tapers" | "tapering" | "narrow" | "narrows" | "narrowing" | "dive" | "dives" | "fall"
        | "falls" | "swing" | "swings" | "slung" | "suspended" | "lead" | "leads" | "radiate" | "radiates"
        | "radiating" | "cross" | "crosses" | "crossing" | "head" | "heads" | "heading" | "plunge" | "plunges"
        | "reaching" | "slip" | "slips" | "fibres" | "fibers" | "bundles" | "tendon" | "tendons" | "way"
        | "expansion" | "connect" | "connects" | "connecting" => Ending::Way,
        "reach" | "reaches" | "reached" | "gain" | "gains" | "gaining" | "grip" | "grips" | "gripping" | "grasp"
        | "grasps" | "grasping" | "clasp" | "clasps" | "grab" | "grabs" => Ending::Holds,
        "link" | "links" | "linking" | "join" | "joins" | "joining" | "unite" | "unites" | "uniting" | "bridge"
        | "bridges" | "bridging" | "ties" | "tie" | "tying" => Ending::Links,
        _ => return None,
    })
}

/// The end that a word and the preposition behind it tell, or `None` in the inner option where it may be either; `None`
/// where the two tell none.
pub fn end_told(ending: Ending, preposition: &str) -> Option<Option<&'static str>> {
    let from = matches!(preposition, "from" | "off");
    let to = matches!(preposition, "to" | "into" | "onto");
    let at = matches!(preposition, "on" | "upon" | "at" | "in" | "along");
    match ending {
        Ending::Origin if from || at => Some(Some("origin")),
        Ending::Source if from => Some(Some("origin")),
        Ending::Insertion if to || at => Some(Some("insertion")),
        Ending::Either if to || at || from => Some(None),
        Ending::Way if from || to => Some(None),
        _ => None,
    }
}

/// Prepositions that can bind a place to a word of attachment.
pub fn binds_end(word: &str) -> bool {
    matches!(word, "from" | "off" | "to" | "into" | "onto" | "on" | "upon" | "at" | "in" | "along")
}

/// Whether a name is that of a cartilage.
pub fn is_cartilage(name: &str) -> bool {
    name.ends_with(" cartilage")
}

/// On which side of a place the note of an attachment says that it is.
pub fn side_in_note(note: &str) -> Option<&'static str> {
    let has = |words: &[&str]| words.iter().any(|word| note.split(' ').any(|other| other == *word));
    match (has(&["above", "proximal"]), has(&["below", "distal"])) {
        (true, false) => Some("above"),
        (false, true) => Some("below"),
        _ => None,
    }
}
