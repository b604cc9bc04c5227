//! Words for what joints are, what makes them and what they allow.

/// Words by which a joint is said to be of a kind: "*belongs* to the saddle joints".
pub fn tells_kind(word: &str) -> bool {
    matches!(
        word,
        "is" | "are"
            | "belongs"
            | "belong"
            | "classed"
            | "classified"
            | "considered"
            | "regarded"
            | "counted"
            | "reckoned"
            | "acts"
            | "act"
            | "works"
            | "work"
            | "behaves"
            | "functions"
            | "function"
            | "described"
            | "termed"
            | "called"
            | "ranks"
            | "counts"
            | "represents"
            | "forms"
            | "form"
            | "as"
            | "labelled"
            | "known"
            | "include"
            | "includes"
            | "exemplifies"
            | "constitutes"
            | "provides"
            | "being"
            | "remains"
            | "makes"
    )
}

/// Words by which what follows is only compared or denied: "*looks* like a hinge".
pub fn only_likens(word: &str) -> bool {
    matches!(
        word,
        "like"
            | "unlike"
            | "resembles"
            | "resemble"
            | "looks"
            | "look"
            | "than"
            | "rather"
            | "if"
            | "almost"
            | "similar"
            | "instead"
            | "compared"
            | "neither"
            | "nor"
            | "seems"
            | "appears"
            | "or"
            | "both"
    )
}

/// Nouns and marks behind the word for the kind of a joint: "hinge *type*".
pub fn is_kind_of_joint_noun(word: &str) -> bool {
    matches!(
        word,
        "joint"
            | "joints"
            | "type"
            | "variety"
            | "kind"
            | "one"
            | "ones"
            | "articulation"
            | "articulations"
            | "class"
            | "synovial"
            | "and"
            | "family"
            | "group"
            | "sort"
            | "form"
    )
}

/// Words with which a clause begins that gives examples of a kind: "an *example* of a pivot joint is".
pub fn leads_example(word: &str) -> bool {
    matches!(word, "example" | "examples" | "instance" | "hinge" | "pivot" | "saddle" | "typical" | "best" | "body's")
        || crate::lexicon::JOINT_KINDS.iter().any(|(known, _)| *known == word)
}

/// Short names of joints that name the surfaces in them as well.
pub fn names_surface(word: &str) -> bool {
    matches!(word, "facet" | "facets")
}

/// Words by which bones are said to make a joint: "is where A *meets* B".
pub fn joins_bones(word: &str) -> bool {
    matches!(
        word,
        "between"
            | "unites"
            | "unite"
            | "uniting"
            | "joins"
            | "join"
            | "joining"
            | "connects"
            | "connect"
            | "connecting"
            | "links"
            | "link"
            | "linking"
            | "formed"
            | "made"
            | "meet"
            | "meets"
            | "meeting"
            | "together"
            | "articulates"
            | "articulate"
            | "articulation"
            | "articulating"
            | "bones"
            | "consists"
            | "involves"
            | "union"
            | "composed"
            | "comprises"
            | "fits"
            | "rests"
            | "bounded"
            | "participate"
            | "contribute"
            | "brings"
            | "couples"
            | "includes"
    )
}

/// Words right before "between" with which it tells what a joint joins: "is formed *between*".
pub fn leads_to_between(word: &str) -> bool {
    matches!(
        word,
        "is" | "are"
            | "joint"
            | "articulation"
            | "union"
            | "formed"
            | "place"
            | "made"
            | "connection"
            | "exists"
            | "found"
            | "lies"
            | "one"
            | "junction"
            | "made up"
            | "occurs"
            | "contact"
            | "meeting"
    )
}

/// Words by which movements are said to take place at a joint: "the only movement *possible* at".
pub fn tells_movement(word: &str) -> bool {
    matches!(
        word,
        "movement"
            | "movements"
            | "motion"
            | "motions"
            | "allows"
            | "allow"
            | "allowed"
            | "permits"
            | "permit"
            | "permitted"
            | "possible"
            | "available"
            | "occurs"
            | "occur"
            | "happens"
            | "happen"
            | "place"
            | "performed"
            | "capable"
            | "matter"
            | "business"
            | "belongs"
            | "belong"
            | "belonging"
            | "confined"
            | "restricted"
            | "carried"
    )
}
