//! Words by which a nerve or a segment is said to feel an area, or a structure to have segments, whatever verb joins the two.

use super::filter::Filter;
use super::words::word_lists;

word_lists! {
    /// Words that speak of feeling, so that a nerve and an area in their clause belong together ("*touch* at the tip of …").
    speaks_of_feeling:
        "sensation" "sensations" "sensory" "sensibility" "sensitivity" "sense" "feeling" "feel" "feels" "felt" "touch" "pinprick"
        "pin-prick" "pin" "prick" "pricking" "stroke" "stroking" "tickle" "scratch" "pinch" "pain" "itch" "temperature" "cotton"
        "wool" "afferents" "afferent" "cutaneous" "skin" "dermatome" "dermatomes" "dermatomal" "numb" "numbs" "numbness" "area" "distribution" "province" "preserve"
        "anaesthetises" "anaesthetizes" "anesthetizes" "tingling" "paraesthesia" "shingles" "rash" "vesicles" "somatosensory"
        "mucosa" "territory" "territories" "zone" "patch" "strip" "stripe" "band" "girdle" "field" "autonomous";
    /// Words by which an area is said to be a nerve's, or to be in its care ("*belongs* to", "is the *province* of").
    owns_area:
        "supplied" "supplies" "supply" "supplying" "innervated" "innervates" "innervation" "served" "serves" "covered" "covers" "reached" "cared" "catered"
        "handled" "handles" "managed" "claimed" "claims" "claim" "provided" "provides" "belongs" "belong" "province" "charge" "preserve" "country"
        "domain" "business" "responsibility" "responsible" "property" "area" "region" "distribution" "distributed" "depends" "depend" "relies" "rely"
        "answers" "answer" "reports" "report" "handed" "given" "allotted" "allocated" "assigned" "falls" "fall" "owes" "owe" "draws" "gets" "receives"
        "derives" "takes" "takes-over" "tested" "tests" "test" "checks" "check" "checked" "looked" "looks" "borne" "carried" "carries" "conveyed"
        "mediated" "transmitted" "matter" "job" "realm" "sphere" "department" "concern" "remit" "ground" "share" "lot" "sends" "communicates"
        "sensitive" "accounts" "account" "attended" "attends" "wired" "subserved" "subserves" "governed" "governs" "dealt" "deals" "includes" "include"
        "comprises" "corresponds" "correspond" "lies" "lie" "occupies" "occupy" "fibres" "fibers" "exclusive";
    /// Verbs of testing: a nerve that is tested over an area feels it.
    tests_feeling:
        "test" "tests" "tested" "testing" "check" "checks" "checked" "checking" "examine" "examined" "assess" "assessed" "prick" "touch" "stroke"
        "anaesthetised" "anesthetized" "sought" "looked";
    /// Words for which a nerve and an area in one clause do not belong together: they compare, deny, hurt, or speak of something
    /// other than the skin.
    parts_area:
        "muscle" "muscles" "muscular" "motor" "artery" "arteries" "vein" "veins" "vessel" "vessels" "bone" "bones" "joint" "joints" "fascia"
        "unlike" "than" "except" "save" "bar" "excepting" "sparing" "spares" "spared" "spare" "beyond" "not" "no" "never" "neither" "nor" "without" "cannot"
        "neighbouring" "neighboring" "adjacent" "adjoining" "overlaps" "overlap" "overlapping" "replaces" "replace" "instead" "rather"
        "swelling" "oedema" "edema" "lymph" "lymphatics" "vertebra" "vertebrae" "vertebral" "disc" "disk" "rib" "ribs" "needle" "inject" "injected" "injection"
        "incision" "palpable" "palpated" "palpate" "rolled" "roll" "transplant" "cut" "cuts" "sometimes" "sympathetic" "parasympathetic" "secretomotor" "sweat" "gland"
        "referred" "refers" "refer" "radiates" "radiating" "radiate" "intact" "normal" "recovers" "returns" "remains" "taste" "gustatory" "keeps" "keep" "inhibits" "inhibitory" "influence";
    /// Prepositions and the like by which the way of a nerve is told: an area that one of them governs is only passed.
    passes_area:
        "beneath" "under" "underneath" "past" "near" "beside" "below" "above" "deep" "superficial" "between" "into" "inside" "within"
        "towards" "toward" "across" "proximal" "distal" "crosses" "crossing" "enters" "entering" "leaves" "leaving" "lateral" "medial" "anterior"
        "posterior" "beyond" "around" "round" "through";
    /// Nouns before "of" that leave the area behind it the one that is meant ("the *pulp* of the thumb").
    is_neutral_of:
        "skin" "tip" "pulp" "pad" "end" "ball" "rest" "remainder" "whole" "much" "most" "majority" "all" "surface" "sensation" "feeling" "touch" "sensibility"
        "territory" "sensitivity" "dermatome" "level" "height" "mucosa" "membrane" "covering" "palmar" "front" "integument" "top" "stroking" "area" "patch"
        "strip" "band" "half" "part" "nerve" "nerves" "bulk" "crown";
    /// Adjectives before an area that leave it the one that is meant ("a *small* patch on the thigh").
    is_size:
        "small" "large" "larger" "smaller" "narrow" "broad" "wide" "long" "short" "variable" "little" "big" "coin-sized" "triangular" "oval"
        "thin" "adjoining" "corresponding" "overlying" "hairy" "hairless" "glabrous" "thick" "bare" "usual" "tiny" "whole" "entire" "classic";
    /// Nouns behind an area that leave it the one that is meant ("thumb *sensation*").
    is_neutral_behind:
        "sensation" "skin" "pulp" "tip" "pad" "feeling" "dermatome" "itself" "proper" "too" "alone" "area" "region" "where" "sensibility" "down" "up" "distally" "only" "proximally";
}

word_lists! {
    /// Words that speak of spinal segments, so that a structure and segments in their clause belong together.
    speaks_of_segments:
        "root" "roots" "segment" "segments" "segmental" "segmentally" "fibres" "fibers" "fibre" "fiber" "value" "values" "spinal" "myotome"
        "myotomes" "rami" "ramus" "origin" "origins" "supply" "supplied" "supplies" "innervation" "innervated" "innervates" "derived" "derives"
        "derive" "comes" "come" "arises" "arise" "arising" "formed" "built" "made" "put" "composed" "constituted" "woven" "drawn" "draws" "gathers"
        "gathered" "assembled" "contributions" "contribution" "contribute" "contributes" "tests" "test" "tested" "testing" "checks" "check" "driven" "powered"
        "controlled" "served" "serves" "fed" "feeds" "wired" "owes" "relies" "depends" "belongs" "belong" "reached" "gets" "get" "receives" "takes"
        "stems" "springs" "originates" "represented" "represents" "carries" "carry" "contains" "contain" "conveys" "kept" "keeps" "answers"
        "governed" "commanded" "numbers" "neurones" "neurons" "rootlets" "cord" "union" "unite" "unites" "join" "combine" "combines" "fuse" "merge" "indicator" "marker" "key" "due" "assigned" "innervate" "supplying" "innervating" "enters" "enter" "goes" "go" "runs" "run"
        "through" "inside" "starts" "start" "begins" "begin";
    /// Nouns and verbs of what goes into a nerve ("the *roots* contributing to the sciatic nerve").
    goes_into:
        "root" "roots" "segments" "contributing" "contribute" "contributes" "contribution" "contributions" "enter" "enters" "go" "goes" "supplying" "supplies"
        "supply" "given";
    /// Words for which a structure and segments in one clause do not belong together.
    parts_segments:
        "vertebra" "vertebrae" "vertebral" "disc" "discs" "disk" "rib" "ribs" "foramen" "foramina" "communicating" "communicates" "communication" "twig" "twigs"
        "slip" "often" "frequently" "sometimes" "sympathetic" "parasympathetic" "preganglionic" "postganglionic" "ganglion" "ganglia" "dermatome" "dermatomes" "skin"
        "cutaneous" "body" "transverse" "process" "processes" "spinous" "spine" "interspace" "puncture" "needle" "not" "no" "never" "neither" "nor" "without" "unlike" "than"
        "except" "save" "prefixed" "postfixed" "artery" "vein" "crosses" "cross" "passes" "pass" "lies" "lie" "opposite" "between" "behind" "beneath"
        "height" "joined" "above" "below" "bifurcates" "bifurcation" "divides" "ends" "end" "half" "upper" "lower" "before" "after" "beside" "besides"
        "alongside" "instead" "rather" "level" "levels" "pain" "referred" "proprioception" "proprioceptive" "sensory" "lowest" "highest" "largest" "biggest" "main" "mainly-from" "most" "part" "some"
        "where" "when" "joins" "adds" "added" "extra" "additional" "additionally" "anastomosis" "loop" "nucleus" "nuclei"
        "lamina" "horn" "grey" "gray" "extends" "extend" "column" "columns" "tract";
}

word_lists! {
    /// Nouns for a reflex.
    is_reflex_noun: "jerk" "jerks" "reflex" "reflexes";
    /// Words and marks between a movement or reflex and the segments that carry it ("the ankle jerk *is mediated by*").
    joins_level:
        ":" "—" "–" "-" "=" "(" ")" "." "," "→" "*" "•" "root" "roots" "segment" "segments" "nerve" "spinal" "value" "values" "level" "levels" "of" "by" "via" "through"
        "in" "at" "from" "on" "for" "to" "with" "the" "mediated" "carried" "served" "subserved" "tests" "test" "tested" "checks" "checked" "assesses" "assessed"
        "examines" "examined" "mainly" "chiefly" "mostly" "largely" "essentially" "primarily" "predominantly" "myotome" "myotomes" "dermatome" "tendon" "deep" "stretch"
        "arc" "runs" "goes" "passes" "travels" "depends" "belongs" "comes" "represents" "represented" "corresponds" "movement" "action" "powered" "controlled" "governed"
        "driven" "done" "performed" "produced" "integrity" "function" "innervated" "supplied" "key" "muscle" "motor" "its" "has" "uses" "relies" "elicited" "supplies"
        "innervates" "controls" "responsible" "is" "are" "and" "active" "resisted" "strength" "power" "afferent" "efferent" "limbs" "main" "centre" "center";
}

/// Other names of tendon reflexes, by the muscle or the tendon that is struck.
pub const REFLEX_WORDS: &[(&str, &str)] = &[
    ("patellar", "knee"),
    ("patella", "knee"),
    ("quadriceps", "knee"),
    ("achilles", "ankle"),
    ("supinator", "brachioradialis"),
];
