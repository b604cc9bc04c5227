//! Lists of single words, each a function that says whether a word is of the list.

use super::filter::Filter;

macro_rules! word_lists {
    ($($(#[$doc:meta])* $name:ident: $($word:literal)+;)+) => {
        $(
            $(#[$doc])*
            pub fn $name(word: &str) -> bool {
                static FILTER: Filter<16> = Filter::of(&[$($word),+]);
                FILTER.may_have(word) && matches!(word, $($word)|+)
            }
        )+
    };
}

pub(super) use word_lists;

word_lists! {
    /// A word behind a name that makes it the name of something else ("radial *artery*").
    changes_the_structure:
        "artery" "arteries" "vein" "veins" "vessel" "vessels" "fascia" "fasciae" "ligament" "ligaments" "tuberosity"
        "region" "regions" "area" "triangle" "sheath" "bursa" "bursae" "groove" "fossa" "notch" "line" "lines" "gland"
        "glands" "node" "nodes" "lymph" "aponeurosis" "crest" "surface" "border" "borders" "collateral" "recurrent"
        "lesion-like" "tubercle" "impression" "flap" "graft";
    /// Articles, possessives and quantifiers before a name.
    is_determiner:
        "the" "a" "an" "its" "their" "his" "her" "this" "that" "these" "those" "each" "every" "any" "some" "such"
        "following" "remaining" "named" "respective" "same";
    /// Words that make a statement one about every member.
    means_all: "all" "both" "every" "each" "entire" "whole";
    /// Auxiliary verbs between a subject and its relation word.
    is_auxiliary:
        "is" "are" "was" "were" "be" "been" "being" "has" "have" "does" "do" "did" "can" "will" "gets" "get";
    /// Adverbs and the like that change nothing.
    is_adverb:
        "also" "mainly" "mostly" "usually" "normally" "typically" "generally" "chiefly" "primarily" "then" "therefore"
        "thus" "directly" "only" "solely" "exclusively" "together" "largely" "principally" "predominantly" "finally"
        "subsequently" "always" "entirely" "purely" "itself" "themselves" "alone" "further" "next" "first" "later"
        "ultimately" "eventually" "instead" "indeed" "thereby" "hence" "here" "there" "commonly" "classically"
        "in-turn" "meanwhile" "lastly" "besides" "additionally" "furthermore" "simply" "just" "still" "even" "too" "however" "moreover" "likewise"
        "similarly" "immediately" "promptly" "shortly" "soon" "now" "distally" "proximally" "again" "nevertheless" "conversely" "naturally" "completely";
    /// Negations.
    is_negation:
        "not" "no" "never" "neither" "nor" "without" "cannot" "n't" "doesn't" "isn't" "aren't" "don't" "lacks";
    /// Words that say that something may be so, or is so in some people.
    is_hedge:
        "may" "might" "sometimes" "occasionally" "rarely" "perhaps" "possibly" "variably" "inconstantly" "probably"
        "infrequently" "seldom" "bodies" "individuals" "subjects" "persons" "people";
    /// Relative pronouns.
    is_relative: "which" "that" "who";
    /// Words that begin a new clause with a subject of its own.
    is_contrast: "while" "whereas" "but" "although" "though";
    /// Words that take members out.
    is_exception: "bar" "except" "excepting" "excluding" "besides" "but-for" "save" "barring";
    /// Pronouns that stand for the subject of the sentence before.
    is_pronoun: "it" "they" "this" "these" "both" "them";
    /// Words before a name of which the statement before holds as well.
    begins_comparison: "likewise" "similarly" "ditto" "like";
    /// Words with which a reason or a correction begins.
    begins_reason: "because" "since" "as" "its" "their" "that" "those" "there" "rather" "not" "no" "he" "she" "see" "for";
    /// Nouns that name a kind, so that "this nerve" stands for the last nerve.
    is_kind_noun:
        "nerve" "nerves" "muscle" "muscles" "branch" "branches" "structure" "structures" "trunk" "cord" "joint";
    /// Nouns of what no muscle has, so that a muscle's name before them is the wrong form of an adjective ("brachialis plexus").
    is_no_part_of_muscle:
        "plexus" "plexuses" "bone" "bones" "cavity" "sinus" "sinuses" "region" "suture" "foramen" "canal" "joint" "joints"
        "lobe" "gyrus" "ganglion" "tooth" "teeth" "nucleus";
    /// Nouns before "of" that leave the name behind it what it is ("branches of the radial nerve", "both heads of biceps").
    is_part_noun:
        "branch" "branches" "twig" "twigs" "fibres" "fibers" "part" "parts" "head" "heads" "belly" "bellies" "half"
        "halves" "all" "both" "most" "portion" "division" "divisions" "muscle" "muscles" "muscles:" "trunk" "root"
        "roots" "component" "union" "junction" "contributions" "contribution" "two" "three" "four" "rest" "remainder" "each" "one"
        "tendon" "tendons";
    /// Nouns that may stand between a relation word and the names that it takes ("supplies the muscles deltoid and …").
    is_muscle_noun:
        "muscle" "muscles" "following" "heads" "head" "belly" "bellies" "parts" "part" "both" "all" "of" "two" "three"
        "four" "five" "six" "seven" "namely" "nerve" "nerves" "called" "named" "branch" "branches:" "intrinsic:" "i.e"
        "viz";
    /// Words that link a noun with its value ("the innervation of deltoid *is by* …").
    is_link:
        "is" "are" "comes" "come" "by" "from" "via" "through" ":" "was" "were" "provided" "given" "supplied"
        "mediated" "derives" "derived" "arises" "carried" "—" "–" "=" "->" "→";
    /// Nouns behind the name of a muscle that leave it what acts ("the MUSCLE *tendon* is attached to").
    is_of_muscle: "tendon" "tendons" "fibres" "fibers" "contraction" "belly";
    /// Words before the place at which a muscle is attached ("the insertion of … *lies on*").
    is_at: "lies" "on" "at" "into" "in" "to" "occurs";
    /// Prepositions: a name behind one is no subject.
    is_preposition:
        "of" "to" "with" "in" "at" "from" "by" "via" "through" "under" "over" "behind" "between" "beneath" "near" "on"
        "into" "onto" "around" "round" "along" "across" "towards" "toward" "deep" "superficial" "against" "beside"
        "for" "than" "unlike" "like" "within" "as" "after" "before" "lateral" "medial" "posterior" "anterior"
        "proximal" "distal";
    /// Words with which a sentence asserts nothing of its own.
    asserts_nothing:
        "suppose" "imagine" "hypothetical" "hypothetically" "would" "could" "should" "whether" "mistake" "mistakes"
        "misconception" "misconceptions" "myth" "wrongly" "incorrectly" "incorrect" "erroneously" "falsely" "confuse"
        "confused" "confuses" "mistaken" "mistakenly" "false" "untrue" "wrong" "dog" "dogs" "canine" "cat" "cats"
        "feline" "horse" "horses" "equine" "rat" "rats" "mouse" "mice" "rabbit" "rabbits" "sheep" "pig" "pigs"
        "porcine" "bovine" "cattle" "monkey" "monkeys" "frog" "frogs" "primate" "primates" "ape" "apes" "quadruped" "quadrupeds"
        "mammals" "amphibian" "amphibians" "fish" "bird" "birds" "reptile" "reptiles" "embryo" "embryonic"
        "embryologically" "embryology" "branchial" "somite" "somites" "historically" "formerly" "previously" "thought"
        "reported" "reports" "studies" "study" "cadavers" "cadaveric" "specimens" "variant" "variants" "variation"
        "variations" "anomalous" "anomaly" "anomalies" "variably" "instead" "write" "writes" "wrote" "think" "thinks"
        "mnemonic" "nobody" "no-one" "doubt" "doubts" "believes" "believed" "neither-of";
    /// Words with which a heading asks for somebody or something.
    asks_for: "who" "what" "which" "where" "how" "why";
    /// Words with which only a question begins, whether or not it ends with a question mark.
    begins_question: "does" "do" "did" "why" "whose";
    /// Words in a heading or before a list that take back what stands below ("*Common mistakes*", "*In the dog:*").
    is_frame_word:
        "mistake" "mistakes" "error" "errors" "howler" "howlers" "misconception" "misconceptions" "myth" "myths"
        "wrong" "wrongly" "incorrect" "untrue" "fallacy" "fallacies" "blunder" "blunders" "confusions" "pitfalls"
        "dog" "dogs" "canine" "cat" "cats" "feline" "horse" "horses" "equine" "rat" "rats" "mouse" "mice" "rabbit"
        "rabbits" "sheep" "pig" "pigs" "porcine" "bovine" "cattle" "monkey" "monkeys" "frog" "frogs" "quadrupeds"
        "embryology" "embryo" "variants" "variations" "anomalies";
    /// Words that make what follows no motor supply: vessels, sensation, nuclei.
    is_not_motor:
        "artery" "arteries" "arterial" "blood" "vein" "veins" "venous" "vascular" "perfusion" "vessel" "vessels"
        "lymphatic" "sympathetic" "parasympathetic" "autonomic" "proprioceptive" "proprioception" "nucleus" "nuclei"
        "tract" "tracts" "cortex" "skin" "cutaneous" "sensory" "sensation" "mucosa" "membrane" "articular" "capsule"
        "periosteum" "dermatome" "vasomotor" "secretomotor" "dura";
    /// Participles of doing: "flexion is *produced* by".
    is_done:
        "produced" "performed" "caused" "effected" "achieved" "carried" "assisted" "initiated" "brought";
    /// Verbs of doing: "*produces* flexion".
    does:
        "produces" "produce" "performs" "perform" "causes" "cause" "effects" "effect" "assists" "assist" "aids" "aid"
        "helps" "help" "contributes" "contribute" "initiates" "initiate" "enables" "enable" "does" "do" "brings"
        "about" "start" "starts" "starting" "begins" "begin" "acts" "act" "in" "responsible" "for" "serves" "serve" "functions" "works";
    /// Verbs that help another ("*helps* to flex").
    is_helper:
        "helps" "help" "acts" "act" "serves" "serve" "works" "work" "contracts" "contract" "functions" "function"
        "assists" "assist" "able" "used" "tends" "tend" "combine" "combines" "unite";
    /// Verbs that list who does it ("the flexors *include*").
    includes: "include" "includes" "comprise" "comprises" "number";
    /// Nouns for what a muscle does ("the *action* of").
    is_task: "action" "actions" "function" "job" "task" "role" "work" "effect" "contraction" "pull" "use" "business";
    /// Nouns for a lesion.
    is_lesion:
        "injury" "injuries" "lesion" "lesions" "damage" "section" "division" "radiculopathy" "avulsion" "severance" "neuritis" "irritation" "palsy" "palsies" "transection"
        "neuropathy" "compression" "loss" "paralysis" "entrapment" "block" "laceration" "cut" "pressure" "trauma"
        "injured"
        "harm" "insult" "crush" "contusion" "traction" "rupture" "ligation" "resection" "destruction" "impingement" "infiltration" "denervation" "neurectomy" "neurapraxia" "neurotmesis" "axonotmesis" "blockade" "failure" "dysfunction" "involvement" "interruption" "sacrifice";
    /// Verbs of lesion: "*cutting* the nerve".
    lesions:
        "cutting" "severing" "dividing" "injuring" "damaging" "compressing" "blocking" "destroying" "losing"
        "crushing" "tearing" "stretching" "trapping" "bruising" "pinching" "squashing" "anaesthetising"
        "sacrificing" "harvesting" "removing" "resecting" "transecting" "ligating" "sectioning" "nicking" "avulsing" "rupturing" "numbing" "anaesthetizing" "anesthetizing" "freezing" "entrapping" "lacerating" "infiltrating";
    /// Participles that tell of a lesion: "when the nerve is *cut*".
    is_cut:
        "cut" "divided" "severed" "damaged" "injured" "bruised" "compressed" "torn" "crushed" "destroyed" "blocked"
        "trapped" "transected" "paralysed" "paralyzed" "lost" "sectioned" "stretched" "lesioned" "gone" "squeezed"
        "pinched" "nicked" "caught" "interrupted" "sacrificed" "anaesthetised" "anesthetized" "dead"
        "hurt" "harmed" "affected" "involved" "implicated" "avulsed" "ruptured" "wounded" "defective" "diseased" "entrapped" "impinged" "irritated" "infiltrated" "invaded" "ligated" "resected" "excised" "removed" "harvested" "functionless" "nonfunctional" "lacerated" "contused" "overstretched" "anaesthetized" "numbed" "frozen" "disabled" "denervated";
    /// Verbs by which a nerve fails, at the end of a clause ("when the nerve *goes*").
    is_failing: "goes" "fails" "fail" "suffers" "suffer" "dies"
        "malfunctions" "degenerates" "succumbs";
    /// Adjectives before a noun for a lesion that may mean something else ("*surgical* division of").
    is_before_division:
        "surgical" "complete" "accidental" "isolated" "total" "deliberate" "traumatic" "unilateral" "inadvertent";
    /// Nouns for a lesion that mean nothing else.
    is_injury:
        "injury" "injuries" "lesion" "lesions" "damage" "transection" "neuropathy" "radiculopathy" "entrapment" "palsy" "laceration"
        "lacerations" "transections" "palsies" "entrapments" "neuropathies" "radiculopathies" "neurapraxia" "neurotmesis" "axonotmesis";
    /// Words that tell where along a nerve, or how much of it, is hurt.
    is_level:
        "level" "distal" "proximal" "distally" "proximally" "above" "below" "beyond" "high" "low" "higher" "lower"
        "there" "here" "partial" "incomplete" "branch" "branches" "fascicle" "early" "mild" "sometimes";
    /// Verbs of becoming, before a word of loss ("*goes* numb").
    is_change:
        "goes" "go" "becomes" "become" "feels" "feel" "gets" "get" "turns" "being" "remains" "remain" "made" "stays"
        "stay"
        "seems" "seem" "appears" "appear" "becoming";
    /// Verbs with a muscle and what becomes of it behind them ("*leaves* it weak").
    leaves: "leaves" "leave" "makes" "make" "renders" "render" "keeps" "keep";
    /// Words with which a statement about a lesion is only negative.
    is_spared:
        "spares" "spare" "spared" "sparing" "intact" "unaffected" "preserved" "escapes" "escape" "normal" "untouched"
        "unharmed" "retained" "kept" "unimpaired"
        "undamaged" "uninjured" "uninvolved" "survives" "survive" "survived" "uncompromised" "safe" "undisturbed";
    /// Words that make a condition of a lesion.
    is_condition: "if" "when" "whenever" "once" "after" "following" "with";
    /// Words that tell of a loss.
    is_loss:
        "lacks" "paralysis" "paralyses" "paralyzes" "paralyse" "paralyze" "weakness" "weakens" "weaken" "denervation"
        "denervates" "wasting" "wastes" "atrophy" "palsy" "paresis" "paralysed" "paralyzed" "weak" "weakened"
        "denervated" "lost" "loses" "lose" "loss" "abolishes" "abolish" "abolished" "impairs" "impair" "impaired"
        "cannot" "can't" "can’t" "unable" "inability" "difficulty" "impossible" "costs" "cost" "wipes" "wipe" "knocks"
        "knock" "robs" "rob" "prevents" "prevent" "limits" "limit" "restricts" "restrict" "absent" "diminished" "diminishes" "fails" "fail" "failure" "waste" "wasted" "paretic" "flaccid" "useless" "ceases"
        "flat" "flattened" "flattening"
        "suffers" "suffer" "deprives" "deprive" "disables" "disable" "cripples" "cripple" "eliminates" "eliminate" "compromises" "compromise" "compromised" "atrophies" "atrophied" "atrophic" "immobile" "motionless" "powerless" "feeble" "reduced" "reduces" "decreased" "disappears" "disappear" "vanishes" "limp" "withers" "withered" "shrinks" "shrunken" "trouble" "struggles" "struggle" "wither" "hampers" "hamper" "incapacitates" "undermines" "deficient" "defective";
    /// Nouns for skin and its places that tell no area from another.
    is_area_noun:
        "skin" "of" "over" "on" "in" "to" "surface" "surfaces" "aspect" "aspects" "side" "sides" "border" "margin"
        "edge" "part" "area" "region" "and" "covering" "overlying" "most" "strip" "patch" "mucosa" "mucous" "membrane"
        "between" "from" "at" "level";
    /// Verbs of taking place: "inversion *occurs* at".
    happens:
        "occur" "occurs" "takes" "take" "happens" "happen" "is" "are" "cannot" "can" "does" "do" "can't" "can’t";
    /// Words that deny that something takes place ("is *impossible* at").
    denies_happening: "cannot" "can't" "can’t" "not" "impossible" "absent" "never";
    /// Words for vessels and blood.
    is_vessel:
        "artery" "arteries" "vein" "veins" "vessel" "vessels" "blood" "perfusion" "lymphatic" "lymphatics" "drainage"
        "vasculature";
    /// Words that tell of a loss of all, not of some.
    is_whole_loss:
        "abolishes" "abolish" "abolished" "cannot" "can't" "can’t" "unable" "inability" "impossible" "wipes" "loses"
        "lose" "lost" "loss" "paralysis"
        "paralyses" "paralysed" "paralyzed"
        "eliminates" "eliminate" "disappears" "disappear" "vanishes";
    /// Words of a heading below which an area alone is what a nerve feels.
    is_of_skin: "skin" "cutaneous" "sensory" "sensation" "feeling" "dermatome" "dermatomes";
    /// Words for a loss of feeling.
    is_numbness: "numbness" "numb" "numbs" "deadens" "anaesthesia" "anesthesia" "sensation" "feeling" "sensory" "tingling"
        "tingles" "paraesthesia" "paresthesia" "paraesthesiae" "paresthesias" "hypoaesthesia" "hypoesthesia"
        "insensitivity" "insensibility" "insensible" "insensate" "hypaesthesia" "hypesthesia" "dysaesthesia" "dysesthesia" "desensitises" "anaesthetic" "anesthetic" "sensibility";
    /// Words that may stand between a word of loss and what is lost.
    is_of_loss:
        "of" "in" "to" "power" "function" "complete" "partial" "or" "and" "patient" "with" "active" "marked" "total"
        "severe" "use" "ability" "able" "be" "movement" "movements" "person" "longer" "no" "strength" "hand-grip"
        "ipsilateral" "corresponding" "one" "whole" "entire" "that" "dome" "difficulty" "him" "her" "them" "you" "out" "not" "sufferer" "victim" "fully" "properly" "actively" "small" "half"
        "side";
    /// Verbs by which a lesion brings about a sign: "causes wrist drop".
    brings_about:
        "causes" "cause" "produces" "produce" "results" "result" "leads" "lead" "gives" "give" "brings" "bring"
        "shows" "show" "presents" "present" "means"
        "manifests" "manifest" "entails" "entail" "yields" "yield" "renders" "render" "leaves" "leave" "makes" "make" "creates" "create" "induces" "induce" "exhibits" "exhibit" "displays" "display";
}

word_lists! {
    // Sentences: where they and their clauses end, who is meant.
    /// Abbreviations whose full stop ends no sentence.
    is_abbreviation: "e.g" "i.e" "cf" "fig" "vs" "mm" "nn" "approx" "ca" "al" "dr" "prof" "no";
    /// Marks and words behind which a clause begins.
    begins_clause: ";" ":" "and" "but" "–" "—";
    /// Marks at which a phrase ends.
    ends_phrase: "." "," ";" ":" "(";
    /// Pronouns that stand for more than one.
    is_plural_pronoun: "they" "these" "both" "them";
    /// Words before a noun for a kind that mean what was named last ("*this* nerve").
    points_back: "this" "these" "the" "both" "that" "same" "latter";
    /// Marks and words, besides conjunctions, behind which a verb may keep the subject of the verb before.
    keeps_subject: "then" "but" ";" "–" "—" "while";
    /// Marks and words before the subject of a sentence ("*So* the radial nerve …").
    may_lead: "," "*" "•" "-" "–" "and" "so" "again" "since" "because" ":";
    /// Marks that begin an item whose subject stands above it.
    is_bullet: "•" "*" ":" "→";

    /// Words for which a stretch between commas is not passed over: it hedges, denies or sets a condition.
    is_weighty: "if" "when" "unless" "not" "no" "never" "nor" "neither" "or" "except" "save" "bar" "apart";
    /// Prepositions that join the two of a clause whose verb the clause before has ("B *by* M").
    carries_gap: "by" "from" "via" "through" "to" "into" "in" "on" "onto" "at";
    /// Marks and words at which a clause is over.
    closes_clause: "." "," ";" ":" ")" "—" "–" "and" "because" "since" "so" "or";
    /// Auxiliaries that stand for the verb of the clause before ("so *does* B").
    stands_for_verb: "does" "do" "is" "are" "did" "was" "were" "has" "have";
    /// Words with which a question asks for a name.
    asks: "which" "what" "who" "whose" "where";
    /// Words before the name that an answer gives.
    opens_answer: "by" "it's" "that's" "of" "it" "is" "from" "via" "through" "answer" ":" "yes" "—" "–" "-" ",";
    /// Words that say that a statement is made again ("B does *too*").
    repeats: "too" "likewise" "also" "similarly" "well" "same";
    /// Words by which a statement is said to be one of another as well ("the same *is true* of B").
    holds: "true" "holds" "hold" "goes" "applies" "said" "case" "serves";
    /// Words of a clause of supply that change nothing, whatever its order.
    is_in_plain_clause:
        "by" "through" "via" "from" "responsible" "for" "what" "it" "that" "which" "," "and" "same" "entirety" "of" "in"
        "takes" "place" "occurs" "occur" "effected" "comes" "way" "means" "also" "group" "groups" "whole";
    /// Words between "is" and "muscle" besides articles ("is *another* muscle supplied by").
    is_before_only: "only" "sole" "another" "also" "other" "first" "second" "third" "large" "small" "main";
    /// Words before "all" that take it back ("*nearly* all").
    takes_back_all: "not" "nearly" "almost" "hardly" "virtually" "practically" "but";
    /// Words that speak of exceptions, named or not.
    speaks_of_exceptions:
        "except" "exception" "exceptions" "apart" "bar" "barring" "save" "besides" "excepting" "excluding" "but"
        "mostly" "mainly" "nearly" "almost" "largely" "usually";
    /// Words that tell no area of skin from others by themselves: sides, and regions too wide.
    is_wide_area:
        "arm" "forearm" "thigh" "leg" "hand" "foot" "face" "neck" "trunk" "shoulder" "abdomen" "chest" "back"
        "buttock" "head" "scalp" "perineum" "limb" "body" "thorax" "digit" "dorsum" "tip" "root" "half" "third"
        "two" "three" "one" "top" "bottom" "rest" "medial" "lateral" "anterior" "posterior" "superior" "inferior" "upper" "lower" "proximal"
        "distal" "dorsal" "palmar" "plantar" "middle" "central" "deep" "superficial" "left" "right" "base" "angle"
        "muscle" "joint" "nerve" "tooth" "teeth" "surface" "mater" "adjacent" "oral" "mucosa" "mucous" "membrane" "skin" "neighbouring" "wall" "cavity" "sinus" "duct" "first" "second";
    /// Nouns for what a nerve gives a muscle, where the sentence names no muscle ("*Innervation* is by").
    is_supply_noun: "innervation" "supply" "nerve";
    /// Words by which a clause speaks of motor supply, whatever its verb.
    tells_supply:
        "supplied" "supplies" "supply" "supplying" "innervated" "innervates" "innervate" "innervating" "innervation" "innervations"
        "motor" "denervated-by" "nerve-supply" "serves" "served";
    /// Nouns for what a muscle has from its nerve ("is given a *branch* by").
    is_gift:
        "branch" "branches" "twig" "twigs" "fibre" "fibres" "fiber" "fibers" "filament" "filaments" "nerve" "nerves"
        "offshoot" "offshoots" "impulses" "power" "orders" "commands";
    /// Verbs of giving and getting ("*is given* a branch by").
    gives_or_gets:
        "give" "gives" "gave" "given" "giving" "send" "sends" "sent" "sending" "receive" "receives" "received"
        "receiving" "get" "gets" "got" "getting" "take" "takes" "took" "taken" "taking" "obtain" "obtains" "obtained" "acquire"
        "acquires" "has" "have" "had" "having" "draw" "draws" "drawn" "drawing" "contributes" "contribute" "contributed"
        "distributes" "distribute" "distributed" "deliver" "delivers" "delivered" "bring" "brings" "brought" "carry"
        "carries" "carried" "provide" "provides" "provided" "furnish" "furnishes" "furnished" "issues" "issue" "issued"
        "dispatches" "dispatched" "lends" "lend" "lent" "derives" "derive" "derived" "owes" "owe" "offers" "offered" "allots"
        "allotted" "assigned" "assigns" "gains" "gained" "affords" "afforded" "collects" "collected" "granted" "grants";
    /// Nouns for what is a nerve's own ("is the nerve's *business*").
    is_domain:
        "muscle" "muscles" "business" "territory" "domain" "property" "province" "responsibility" "charge" "job" "task"
        "preserve" "realm" "share" "work" "affair";
    /// Adjectives and nouns for a side.
    is_side:
        "lateral" "medial" "anterior" "posterior" "superior" "inferior" "proximal" "distal" "external" "internal"
        "superficial" "deep" "caudal" "cranial" "dorsal" "ventral";
    /// Words by which a clause tells where a nerve and a muscle are, or what they are to each other, and no supply.
    is_away_from_supply:
        "behind" "between" "beneath" "underneath" "below" "above" "over" "across" "along" "alongside" "beside" "around"
        "round" "against" "past" "towards" "toward" "adjacent" "parallel" "close" "front" "back" "amid" "into" "onto"
        "pierces" "pierce" "pierced" "piercing" "perforates" "perforated" "perforating" "traverses" "traversed"
        "traversing" "crossed" "crossing" "covers" "cover" "covered" "covering" "overlies" "overlie" "overlying" "overlain"
        "overlaps" "overlapped" "hides" "hidden" "hide" "concealed" "conceals" "shielded" "shields" "protects" "protected"
        "contains" "contained" "containing" "encloses" "enclosed" "enclosing" "separates" "separated" "separating"
        "separate" "borders" "bordered" "bounds" "bounded" "bounding" "flanked" "flanks" "accompanied" "accompanies"
        "accompanying" "accompany" "followed" "follows" "follow" "following" "joined" "joins" "joining" "join" "surrounded"
        "surrounds" "embedded" "buried" "lying" "passing" "running" "winding" "descending" "ascending" "entering"
        "leaving" "emerging" "divides" "dividing" "splits" "split" "ends" "ending" "begins" "beginning" "grooves"
        "grooved" "related" "relation" "relations" "landmark" "landmarks" "neighbour" "neighbor" "neighbours" "guide"
        "guides" "marks" "marked" "seen" "palpated" "felt" "exposed" "expose" "retracted" "retract" "reflected"
        "reflect" "trace" "traced" "traces" "identify" "identified" "dissect" "communicates" "communicating"
        "communication" "connects" "connected" "connecting" "anastomosis" "stimulation" "stimulating" "stimulate"
        "stimulated" "test" "tests" "tested" "testing" "like" "unlike" "than" "same" "similar" "differs" "different"
        "compared" "comparable" "reflex" "reflexes" "homologous" "homologue" "arch" "arches" "developed" "develops"
        "develop" "derivative" "migrated" "migrates" "named" "called" "antagonist" "antagonists" "synergist" "synergists"
        "opponent" "opponents" "crosses" "cross" "passes" "pass" "lies" "lie" "runs" "run" "skirts" "skirted" "hugs"
        "straddles" "straddled" "interposed" "sandwiched" "wedged" "forms" "form" "formed" "roof" "floor" "wall" "boundary"
        "boundaries" "apart" "injected" "injection" "needle" "blocks" "anaesthetise" "spinal" "level" "weakened";
    /// Verbs and words between a noun for feeling and the nerve ("sensation from the palm *travels in* …"), or between a
    /// nerve's territory and what it is.
    links_feeling:
        "travels" "travel" "runs" "run" "passes" "pass" "goes" "go" "transmitted" "conveyed" "relayed" "taken" "brought"
        "along" "in" "with" "reaches" "depends" "on" "belongs" "to" "served" "covers" "includes" "comprises" "over" "at"
        "lies" "sits" "corresponds";
    /// Verbs and words between such a noun and the nerve.
    links_supply:
        "occurs" "occur" "takes" "effected" "receives" "receive" "gets" "get" "has" "remains" "way" "means" "course";
    /// Verbs that say of a nerve that it has fibres of a kind ("*carries* no motor fibres").
    has_fibres:
        "carries" "carry" "contains" "contain" "has" "have" "conveys" "convey" "with" "without" "lacks" "bears" "holds"
        "transmits" "includes" "composed" "consists" "made" "up" "is" "are";
    /// Prepositions that bind what stands before a verb to it, where the verb's subject stands behind it ("*out of* it
    /// come").
    leads_inverted: "from" "of" "off" "to" "by" "through" "via" "for" "within" "in" "among";
    /// Words that may stand behind a noun, besides auxiliaries, adverbs and conjunctions.
    stands_behind_noun:
        "by" "in" "at" "on" "from" "through" "to" "via" "for" "with" "beyond" "near" "below" "above" "behind" "between"
        "before" "after" "alone" "too" "as" "unlike" "like" "into" "over" "under" "round" "around" "along" "supplies"
        "innervates" "serves" "gives" "sends" "carries" "passes" "runs" "arises" "comes" "leaves" "enters" "pierces"
        "divides" "ends" "continues" "becomes" "feels" "goes" "winds" "lies" "crosses" "descends" "emerges" "controls"
        "takes" "keeps" "gets" "supplying" "innervating" "branches" "does";
    /// Nouns behind segments that leave them what is meant ("the C5 *root* supplies").
    is_segment_noun: "root" "roots" "nerve" "segment" "segments" "dermatome" "dermatomes" "level" "fibres" "fibers";
    /// Words before the segments of a ramus ("the *anterior primary rami* of C5").
    is_ramus_word: "anterior" "ventral" "posterior" "dorsal" "primary" "ramus" "rami" "division" "divisions";

    // Groups and objects.
    /// Words beside a conjunction that carry a list on ("as *well* as").
    carries_list_on: "as" "well" "also" "with" "then";
    /// Words before a name that make a statement one about a part of it ("the medial *half* of").
    means_part:
        "half" "halves" "two" "three" "four" "most" "part" "parts" "portion" "lateral" "medial" "upper" "lower" "rest"
        "some" "fibres" "fibers" "terminal" "remaining" "remainder" "deep" "superficial" "other" "anterior" "posterior" "one";
    /// Words and marks between a relation word and its object ("supplies the *medial half* of").
    is_before_object:
        "medial" "lateral" "half" ":" "*" "both" "anterior" "posterior" "rami" "ramus" "ventral" "primary" "upper"
        "lower" "roots" "outer" "inner" "front" "back" "surface" "surfaces" "external" "internal" "end" "third"
        "thirds" "edge" "margin" "aspect" "free";
    /// Nouns for a part of an object, with "of" behind them ("the *rami* of").
    is_division:
        "front" "back" "surface" "surfaces" "half" "rami" "ramus" "roots" "end" "third" "thirds" "edge" "margin" "aspect";
    /// Nouns for a nerve, behind an adjective that names it ("the radial *nerve*").
    is_nerve_noun: "n" "nn" "nerve" "nerves";
    /// Nouns for a side or stretch of a place, which leave the place the one that is meant ("*shaft* of the humerus").
    is_stretch: "front" "back" "surfaces" "surface" "side" "aspect" "third" "thirds" "border" "end" "shaft" "body" "upper" "lower";

    // Forms of claims.
    /// Words between "is" and the group that a muscle belongs to ("is *one of* the hamstrings").
    is_before_group: "one" "of" "member" "muscle" "muscles";
    /// Words for one of a group that is not named again ("is *another* of them", "is the *fourth*").
    is_one_of_some:
        "one" "member" "members" "another" "second" "third" "fourth" "fifth" "sixth" "last" "part";
    /// Adverbs that deny everything else ("*purely* sensory").
    means_only: "purely" "pure" "entirely" "solely" "exclusively" "wholly" "only";
    /// Nouns behind a word for what a nerve carries ("motor *fibres*").
    is_fibre_noun:
        "with" "parasympathetic" "sympathetic" "autonomic" "special" "somatic" "visceral" "fibres" "fibers" "fibre" "fiber" "component" "components" "branches" "function" "supply";
    /// Words and marks in brackets beside segments or a nerve ("(*root value* C5)").
    is_in_bracket:
        "from" "root" "roots" "value" "values" "segments" "segment" ":" "spinal" "by" "of" "anterior" "ventral" "rami"
        ";" "nerve" "levels" "–";
    /// Words before a count of parts ("*has* three heads").
    precedes_parts: "has" "have" "with" "by" "of" "into" "are" "is" "possesses" "in";
    /// Words before a count of structures ("there *are* four dorsal interossei").
    precedes_count: "are" "has" "have" "were";
    /// Verbs and participles of being made of parts ("is *formed* by three heads").
    is_made_of: "formed" "made" "composed" "consists" "comprises" "up" "divides" "splits" "arises";
    /// Words between a verb of taking place and the joint ("occurs *only at* the elbow").
    is_before_place:
        "place" "at" "in" "possible" "only" "carried" "out" "performed" "occur" "occurs" "happen" "take" "available"
        "allowed" "permitted" "impossible";
    /// Words between a verb and the movement that it brings about ("is the *chief* flexor of").
    is_before_movement:
        "main" "chief" "prime" "powerful" "strong" "weak" "important" "of" "at" "in" "to" "with" "for" "mover"
        "principal" "primary" "strongest" "pure" "one" "active" "as" "most" "only" "second" "small" "large" "great" "common"
        "true" "key" "major";
    /// Adjectives before the noun for what a muscle does ("the *chief* adductors").
    tells_role:
        "main" "chief" "prime" "powerful" "strong" "weak" "important" "principal" "primary" "strongest" "pure" "true"
        "key" "major" "great";
    /// Nouns for a muscle by what it does ("the *mover* of the elbow is").
    is_mover: "workhorse" "mover" "movers" "agent" "agents" "muscle" "muscles";
    /// Words between a movement and what is moved ("flexion *at* the elbow").
    is_before_moved: "of" "at" "both" "it" "them";

    /// Words by which a muscle and that of the other side are meant together.
    means_both_sides: "both" "together" "bilaterally" "bilateral" "two" "pair" "jointly" "unison" "sides" "simultaneously";
    /// Words between a movement and the muscles that do it, wherever they stand ("bending the elbow is *the work of*").
    gives_to_doer:
        "by" "with" "using" "of" "to" "through" "via" "is" "are" "needs" "need" "uses" "use" "requires" "require" "takes" "involves"
        "employs" "recruits" "demands" "asks" "falls" "comes";
    /// Words for a person who moves something ("*we* close the eye with").
    is_mover_person: "we" "you" "one" "she" "he" "people" "they" "i";
    // Ends of muscles.
    /// Words that tell of a place which part of it is meant ("the *medial two-thirds of the* supraspinous fossa").
    describes_place:
        "the" "a" "an" "its" "their" "both" "all" "each" "every" "adjacent" "adjoining" "neighbouring" "neighboring" "nearby"
        "of" "upper" "lower" "middle" "medial" "lateral" "anterior" "posterior" "superior" "inferior" "inner" "outer"
        "deep" "superficial" "external" "internal" "front" "back" "top" "bottom" "proximal" "distal" "dorsal" "ventral"
        "palmar" "plantar" "volar" "hinder" "fore" "central" "median" "costal" "gluteal" "concave" "convex" "bony" "rough"
        "roughened" "flat" "smooth" "small" "large" "long" "short" "broad" "narrow" "thick" "thin" "whole" "entire" "full"
        "common" "oblique" "vertical" "curved" "sharp" "prominent" "surface" "surfaces" "side" "sides" "border" "borders" "margin" "margins"
        "edge" "edges" "lip" "lips" "ridge" "ridges" "line" "lines" "crest" "crests" "part" "parts" "half" "halves"
        "third" "thirds" "quarter" "quarters" "fourth" "fourths" "fifth" "fifths" "tip" "tips" "apex" "base" "bases" "shaft" "shafts" "body"
        "bodies" "neck" "end" "ends" "extremity" "length" "area" "region" "aspect" "aspects" "face" "faces" "floor"
        "roof" "wall" "walls" "corner" "point" "spot" "place" "patch" "strip" "impression" "impressions" "facet" "facets" "cartilage" "cartilages"
        "process" "processes" "spine" "spines" "tubercle" "tubercles" "transverse" "spinous" "articular" "cervical" "thoracic"
        "lumbar" "sacral" "vertebra" "vertebrae" "vertebral" "rib" "ribs" "bone" "bones" "metacarpal" "metacarpals"
        "metatarsal" "metatarsals" "phalanx" "phalanges" "digit" "digits" "fascia" "covering" "overlying" "ligament"
        "membrane" "septum" "septa" "tendon" "tendons" "capsule" "one" "two" "three" "four" "five" "six" "seven" "eight"
        "nine" "ten" "twelve" "first" "second" "sixth" "seventh" "eighth" "ninth" "tenth" "eleventh" "twelfth" "last" "next"
        "most" "half-way" "ramus" "rami" "arch" "under" "groove" "fossa" "pit" "notch" "laminae" "lamina" "tuberosity" "trochanter" "condyle" "condyles"
        "epicondyle" "angle" "angles" "just" "partly" "mainly" "chiefly" "also" "even" "only" "right" "left" "very" "same" "opposite" "corresponding";
    /// Prepositions behind which a name only helps to find the place that is meant ("the line *below* the lesser trochanter").
    is_beside_place:
        "above" "below" "near" "beside" "behind" "beneath" "beyond" "between" "under" "over" "around" "round" "opposite"
        "alongside" "underneath" "past";
    /// Words between a word of attachment and its preposition ("fixed *by a short tendon* to", "descends *obliquely* to").
    fills_ending:
        "above" "below" "proximally" "distally" "medially" "laterally" "anteriorly" "posteriorly" "superiorly" "inferiorly"
        "obliquely" "steeply" "straight" "vertically" "horizontally" "transversely" "upwards" "upward" "downwards"
        "downward" "outwards" "outward" "inwards" "inward" "backwards" "backward" "forwards" "forward" "back" "up" "down"
        "out" "off" "over" "across" "away" "along" "in" "on" "right" "all" "partly" "mainly" "chiefly" "largely" "firmly"
        "directly" "indirectly" "separately" "together" "also" "only" "and" "," "then" "finally" "by" "as" "via" "through" "with" "way"
        "means" "of" "a" "an" "the" "its" "their" "his" "it" "common" "conjoint" "conjoined" "single" "shared" "flat" "short" "long"
        "strong" "thick" "thin" "broad" "narrow" "stout" "slender" "round" "rounded" "tendinous" "fleshy" "muscular" "fibrous" "aponeurotic"
        "powerful" "tendon" "tendons" "aponeurosis" "slip" "slips" "fibres" "fibers" "bundles" "digitations" "two" "three"
        "four" "five" "six" "main" "proper" "bony" "far" "whole" "into" "to" "fan-like" "fan" "band" "bands" "sheet" "strap"
        "like" "wide" "origin" "insertion" "attachment" "attachments" "head" "heads" "each" "other" "very" "tip" "point" "narrowly" "widely" "broadly"
        "half" "halfway" "part" "ligament" "way-down" "eventually" "ultimately" "course" "side" "lower" "upper" "distal" "proximal"
        "behind" "front" "either" "mostly" "high" "low" "medial" "lateral" "anterior" "posterior" "superior" "inferior" "solely" "at";
    /// Words that leave what a muscle's part is the subject ("its *upper* end", "the *middle* ones").
    describes_part:
        "upper" "lower" "middle" "medial" "lateral" "anterior" "posterior" "superior" "inferior" "inner" "outer" "deep"
        "superficial" "external" "internal" "front" "back" "proximal" "distal" "long" "short" "first" "second" "third"
        "fourth" "two" "three" "four" "five" "other" "remaining" "intermediate" "highest" "lowest" "uppermost" "lowermost" "deepest" "main"
        "largest" "smaller" "larger" "small" "large" "clavicular" "sternal" "straight" "reflected" "oblique" "transverse" "humeral"
        "ulnar" "radial" "flat" "strong" "tendinous" "fleshy" "muscular" "whole" "common" "broad" "thick" "thin" "slender" "stout" "round" "rounded"
        "horizontal" "vertical" "central" "costal" "both" "all" "descending" "ascending" "each" "of" "single" "terminal" "muscle" "muscles" "these" "those" "extreme" "hindmost" "foremost";
    /// Nouns for a part or an end of a muscle.
    is_part_of_muscle:
        "fibres" "fibers" "part" "parts" "portion" "portions" "head" "heads" "belly" "bellies" "ones" "half" "halves" "third"
        "end" "ends" "tendon" "tendons" "slip" "slips" "bundle" "bundles" "digitation" "digitations" "origin" "insertion"
        "attachment" "attachments" "tip" "base" "apex" "three" "two" "four" "muscle" "aponeurosis" "anchor" "side" "pole" "all"
        "both" "expansion" "body";
    /// Nouns for a place on a bone ("the *groove* on the clavicle").
    is_noun_of_bony_place:
        "groove" "area" "part" "surface" "impression" "facet" "ridge" "line" "crest" "spot" "lip" "fossa" "pit" "depression"
        "notch" "tuberosity" "border" "margin" "strip" "patch" "place" "point" "tubercle" "mark" "marking";
    /// Nouns for a rib or a part of it.
    is_rib_noun: "rib" "ribs" "costal";
    /// Nouns for a place of its own on what is named behind them ("the *cartilage* of the first rib").
    is_feature_noun:
        "process" "processes" "spine" "spines" "tubercle" "tubercles" "cartilage" "cartilages" "facet" "facets" "angle" "angles"
        "lamina" "laminae" "bodies" "condyle" "condyles" "epicondyle" "epicondyles" "tuberosity" "tuberosities" "ligament" "ligaments"
        "membrane" "membranes" "capsule" "fascia" "septum" "septa" "tendon" "tendons" "articular";

    // Areas and lesions.
    /// Marks and words behind which the description of an area begins.
    precedes_area: "," ";" ":" "." "—" "and";
    /// Marks and words at which the description of an area ends.
    ends_area: "." "," ";" ":" "(" "while" "but" "whereas" "which";
    /// Words between a noun for a lesion and the nerve ("injury *to* the nerve").
    is_before_injured: "of" "to" "on" "or" "through" "one" "both" "either" "across";
    /// Words before a noun for a lesion that mean the nerve last spoken of ("*its* division").
    is_lesion_of_last: "its" "their" "such" "this";
    /// Words between a word for a loss of feeling and the area ("numbness *over the* thumb").
    is_of_numbness:
        "of" "over" "in" "on" "to" "the" "sensation" "feeling" "loss" "patch" "area" "strip" "along" "across" "affecting"
        "involving"
        "cutaneous" "skin" "complete" "partial" "some" "marked" "definite" "found" "noted" "present" "felt" "experienced" "perceived" "limited" "confined" "restricted" "occurs" "occur" "is" "are" "lost" "impaired" "reduced" "diminished" "absent" "decreased" "disturbed" "affected" "altered" "abolished" "there" "mainly" "mostly" "usually" "often";

    // Segments.
    /// Words and marks between the members of a list of segments ("C5, C6 *and* C7").
    joins_segments: "," "/" "&" "and" "+" "." "or";
    /// Words and marks between the ends of a range of segments ("C5 *to* T1").
    spans_segments: "-" "–" "—" "to" "through" "‐" "‑";
    /// Words and marks between segments in words ("fifth *and* sixth cervical").
    joins_ordinals: "and" "," "to" "the" "or" "through";
    /// Nouns that make a number one of bones, discs or ribs, not of segments ("C5 *vertebra*").
    is_vertebral: "vertebra" "vertebrae" "vertebral" "rib" "ribs" "intercostal" "level" "disc" "disk";

    // Labels, headings, cells and keys.
    /// Marks between a label and its value.
    is_value_sign: ":" "—" "–" "-" "=";
    /// The last mark of an arrow to the right.
    is_arrow: "→" "⟶" "⇒" "➔" "►" "▶" ">";
    /// Marks between labels that stand in one line.
    separates_labels: "—" "–" "|" "·" "•";
    /// Nouns before the number of a picture or table ("*Fig.* 3").
    is_figure: "fig" "figs" "figure" "plate" "table" "box" "card" "slide" "panel" "image" "photo";
    /// Words for who says what is quoted ("> **Student:** …").
    is_speaker:
        "student" "students" "candidate" "candidates" "patient" "pupil" "learner" "examiner" "question" "q" "he" "she"
        "they" "quote" "quoted" "from" "wrong" "mistake" "error" "myth";
    /// Latin adjectives behind the noun of a muscle's name.
    ends_muscle_name:
        "major" "minor" "maximus" "medius" "minimus" "magnus" "longus" "brevis" "longissimus" "superior" "inferior"
        "superioris" "inferioris" "internus" "externus" "profundus" "superficialis" "tertius" "intermedius";
    /// Latin nouns before a word that is a muscle's name elsewhere ("*ramus* nasalis").
    begins_latin_name: "ramus" "rami" "arteria" "arteriae" "vena" "venae" "nervus" "nervi" "fossa" "linea" "tuberositas";
    /// Labels that tell how a limb stands after a lesion.
    tells_posture: "deformity" "Deformity" "posture" "Posture" "attitude" "Attitude" "position" "Position" "deformities" "Deformities";
    /// Nouns for what a structure gives a muscle that is no supply ("gives *attachment* to").
    is_other_gift:
        "attachment" "attachments" "origin" "insertion" "passage" "room" "support" "cover" "protection" "shelter"
        "anchorage" "purchase" "way" "lining";
    /// Words before a participle that tells when the subject of the sentence does something else ("*After* leaving A, it").
    fronts_participle: "after" "before" "on" "upon" "by" "while" "when" "since";
    /// Nouns of structures of which many have no entry, so that a pronoun behind them means no other.
    is_other_structure:
        "artery" "arteries" "vein" "veins" "gland" "glands" "duct" "ducts" "sinus" "sinuses" "cartilage" "cartilages"
        "bursa" "vessel" "vessels" "membrane" "ligament" "retinaculum" "fascia" "aponeurosis";
    /// Adjectives before the noun of a header ("*one* muscle").
    is_header_adjective:
        "one" "a" "an" "example" "main" "chief" "typical" "sample" "principal" "usual" "important" "major" "some"
        "first" "named" "only";
    /// Words beside the kind of a joint that change nothing ("a *simple synovial joint* of the hinge *type*").
    fills_joint_kind:
        "and" "socket" "type" "variety" "kind" "class" "joint" "articulation" "synovial" "typical" "simple" "compound"
        "modified" "uniaxial" "biaxial" "multiaxial" "true" "of" "the" "a";
    /// Words with which a paper asks to find what belongs together.
    asks_to_match: "match" "matching" "matches" "pair" "pairs";
    /// Headers of columns that say anything of what leads the row.
    is_header_of_notes:
        "notes" "note" "comment" "comments" "remark" "remarks" "key facts" "key fact" "key points" "key point" "details" "detail"
        "description" "facts" "features" "key features" "points to note" "note well" "what to know" "know" "in short" "summary"
        "special features" "special points" "observations" "point" "points" "more" "other" "also";
    /// Words of headers that speak of feeling, or of the area that is felt.
    tells_feeling:
        "area" "areas" "dermatome" "dermatomes" "territory" "territories" "sensory" "sensation" "sensations" "feeling" "feels"
        "felt" "numb" "numbness" "anaesthesia" "anesthesia";
    /// Words that say that it is skin of which a description speaks, or a surface.
    tells_surface:
        "skin" "side" "aspect" "surface" "surfaces" "dorsum" "palm" "sole" "web" "fingertip" "fingertips" "digits" "fingers"
        "toes" "cutaneous";
    /// Adjectives with which a predicate tells one structure from its like ("the *longest* branch of").
    sets_off_one:
        "chief" "main" "principal" "prime" "longest" "largest" "smallest" "shortest" "strongest" "thickest" "deepest"
        "biggest" "widest" "direct" "sole" "only" "continuation" "most" "terminal" "major";
    /// Words that leave a head what it is ("nerve *of* deltoid", "*main* action").
    fills_head:
        "of" "to" "for" "by" "from" "via" "in" "is" "are" "main" "chief" "n" "nn" "m" "mm" "with" "most" "own" "'s"
        "s" "usual" "their" "it" "who" "that" "which" "proper" "name" "muscle" "muscles" "nerve" "nerves" "branch"
        "branches" "structure" "structures" "tendon" "tendons" "vessel" "vessels" "things";
    /// Words for a part of a muscle or nerve, beside ordinals ("*medial* half").
    tells_part:
        "medial" "lateral" "upper" "lower" "superficial" "deep" "anterior" "posterior" "long" "short" "dorsal" "palmar"
        "plantar" "superior" "inferior" "middle" "half" "belly" "head" "part" "portion" "fibres" "fibers" "division"
        "oblique" "transverse" "clavicular" "sternal" "sternocostal" "humeral" "ulnar-head" "adductor" "hamstring"
        "ischiocondylar" "pubofemoral" "reflected" "straight" "external" "internal" "left" "right" "recti" "obliques";
    /// Words with which a heading adds where or why ("Branches of CN VII *on* the face").
    begins_addition: "on" "in" "at" "for" "about" "from" "with";
    /// Words of a heading below which names stand side by side without a relation that is ours.
    is_of_neighbours:
        "relation" "relations" "near" "close" "neighbour" "neighbours" "neighbor" "neighbors" "beside" "behind"
        "around" "adjacent" "landmarks" "gland" "glands" "organs" "organ" "articular" "proprioception"
        "autonomic" "sympathetic" "parasympathetic" "embryology" "development" "arches" "reflex" "reflexes" "wrong"
        "errors" "error" "mistakes" "slips" "synergists" "synergist" "antagonists" "antagonist" "opponents"
        "palpation" "palpate" "vertebral" "discs" "disc" "vertebrae" "arts" "art";
    /// Words of a heading below which nothing is said of the anatomy that is taught: other animals, errors, variations.
    is_of_others:
        "dog" "dogs" "canine" "cat" "cats" "feline" "horse" "horses" "equine" "rat" "rats" "mouse" "mice" "rabbit"
        "rabbits" "sheep" "pig" "pigs" "porcine" "bovine" "cattle" "cow" "cows" "goat" "goats" "monkey" "monkeys"
        "ape" "apes" "quadruped" "quadrupeds" "animal" "animals" "veterinary" "species" "mistake" "mistakes" "myth"
        "myths" "misconception" "misconceptions" "wrong" "wrongly" "variation" "variations" "variant" "variants"
        "anomaly" "anomalies" "embryo" "embryology";
    /// Nouns that names below or behind them may leave out ("*cords*: lateral").
    is_completing_noun:
        "cord" "cords" "trunk" "trunks" "plexus" "branch" "branches" "division" "divisions" "canal" "foramen"
        "foramina" "foramens" "tunnel" "head" "heads" "belly" "bellies" "fossa" "compartment" "compartments" "group"
        "nerves";
    /// Nouns of places and vessels, before which an adjective that may name a nerve names none ("tympanic *canal*").
    is_noun_of_place:
        "canal" "canals" "foramen" "foramina" "fossa" "groove" "notch" "membrane" "cavity" "tubercle" "process" "bone"
        "tunnel" "region" "arch" "gland" "fissure" "sinus" "duct" "fascia" "artery" "arteries" "vein" "veins" "ganglion"
        "bursa" "area" "surface" "border" "side" "joint" "ligament";
    /// Shortened words behind which a full stop ends no sentence.
    is_short_word:
        "nn" "mm" "ant" "post" "med" "lat" "sup" "inf" "prox" "dist" "orig" "ins" "act" "fig" "figs" "nerv" "musc"
        "br" "brs" "div" "ext" "int" "digit" "long" "brev" "vs" "approx" "no" "e.g" "i.e";
    /// Marks and words before a label ("*its* innervation:").
    precedes_label: ":" "—" "–" "-" "," "*" "•" "(" ")" "its";
    /// Nouns for a branch or a part, before which an adjective is a name where it is known of what ("its deep *branch*").
    is_noun_of_part:
        "branch" "branches" "division" "divisions" "head" "heads" "belly" "bellies" "part" "parts" "trunk" "trunks" "cord"
        "cords" "ramus" "rami" "root" "roots";
    /// Prepositions that tell what a nerve comes from, whatever the verb before them ("hops *off* the posterior cord").
    tells_source: "from" "off" "out";
    /// Prepositions that tell what a nerve passes, whatever the verb before them ("squeezes *through* the canal").
    tells_way:
        "through" "behind" "under" "beneath" "round" "around" "between" "over" "via" "front" "underneath" "deep"
        "superficial" "within" "inside" "below" "above" "alongside";
    /// Prepositions behind which a header says where ("opening *in* the skull base").
    begins_where: "in" "of" "at" "from" "on" "out" "into" "for";
    /// Nouns in the plural that name no single feature of a bone.
    is_of_many: "spines" "processes" "borders" "angles";
    /// Nouns that announce a list of names ("three *nerves* use the foramen: …").
    announces:
        "nerves" "muscles" "structures" "tendons" "vessels" "branches" "roots" "trunks" "things" "arteries" "veins"
        "ones";
    /// Verbs of moving and lying, behind the place that a clause begins with ("through it *go* …").
    moves_on:
        "go" "goes" "run" "runs" "pass" "passes" "come" "comes" "lie" "lies" "travel" "travels" "course" "courses"
        "emerge" "emerges" "leave" "leaves" "enter" "enters" "descend" "descends" "ascend" "ascends" "wind" "winds"
        "slip" "slips" "appear" "appears" "exit" "exits" "sit" "sits" "hook" "hooks" "curve" "curves" "turn" "turns"
        "cross" "crosses" "is" "are" "swing" "swings" "dive" "dives" "step" "steps" "found";
    /// Prepositions that tell where a muscle lies, whatever the verb before them ("lodges *in* the lateral compartment").
    tells_place: "in" "within" "inside" "among";
    /// Adjectives that any branch may have, before its noun ("its deep *terminal* branch").
    is_of_any_branch: "terminal" "main" "final" "primary" "principal" "major";
    /// Words and marks behind which a row of branches begins without an article ("divides *into* superficial and deep branches").
    opens_row:
        "into" "in" "as" "off" "gives" "has" "with" ":" "—" "–" "(" "," "are" "by" "two" "three" "four" "five" "six" "namely" "give"
        "have";
    /// Nouns for what comes off a nerve.
    is_branch_noun:
        "branch" "branches" "twig" "twigs" "offshoot" "offshoots" "division" "divisions" "ramus" "rami" "offspring" "shoot"
        "shoots" "child" "children" "daughter" "daughters" "scion" "sprig" "derivative" "derivatives" "tributary" "tributaries" "descendant"
        "descendants";
    /// Words that join a noun for a branch with the names behind it ("its branches *include*").
    joins_branches: "is" "are" "include" "includes" "including" "comprise" "comprises" "being" ":" "—" "–" "namely" "called" "named";
    /// Words between a copula and a noun for a branch ("is *the larger of the two* branches of").
    is_before_branch:
        "the" "a" "an" "one" "two" "three" "four" "five" "of" "larger" "smaller" "largest" "smallest" "longer" "longest" "shortest" "other" "another"
        "also" "both" "all" "only" "first" "second" "third" "fourth" "fifth" "last" "main" "chief" "terminal" "named" "cutaneous" "muscular"
        "motor" "sensory" "among" "amongst" "thickest" "thinnest" "biggest" "highest" "lowest" "some" "just" "really" "simply"
        "actually" "still" "final" "direct" "important" "principal" "major" "minor" "lateral" "medial" "anterior" "posterior" "superior" "inferior"
        "upper" "lower" "deep" "superficial" "collateral" "most" "next" "sole" "single" "large" "small" "long" "short";
    /// Nouns for a way, which point at the one told last ("takes the same *course*").
    is_noun_of_way:
        "way" "route" "course" "path" "road" "opening" "hole" "door" "foramen" "canal" "tunnel" "passage" "space" "gap" "place" "exit" "line" "thing"
        "journey" "fissure" "doorway" "direction" "window" "notch";
    /// Nouns for an opening, which point at the last one named ("through the *tunnel*").
    is_noun_of_opening:
        "tunnel" "canal" "foramen" "opening" "notch" "groove" "fissure" "space" "interval" "hiatus" "sheath" "ring"
        "arcade" "meatus" "hole" "gap" "fossa" "triangle" "axilla" "muscle" "ligament" "retinaculum" "septum" "membrane"
        "epicondyle" "malleolus";
    /// Marks and words at which the way of a nerve ends that a verb tells.
    ends_way:
        "." ";" ":" "(" ")" "skin" "supply" "supplying" "innervate" "innervating" "towards" "toward" "because" "since" "if" "when"
        "unless" "fracture" "fractures" "injury" "lesion" "operation" "operations" "incision" "than" "instead" "except";
    /// Words and marks between two verbs of one subject ("passes through A *to* enter B").
    goes_on_with_subject: "," "and" "then" "to" "by" "before" "after" "on" "upon" "—" "–" "having" "without" "while" "when" "whilst" "but" ";" "or";
    /// Words beside a verb of moving that change nothing ("runs *obliquely* down").
    is_manner:
        "obliquely" "vertically" "horizontally" "backwards" "forwards" "medially" "laterally" "anteriorly" "posteriorly"
        "superiorly" "inferiorly" "deeply" "superficially" "straight" "closely" "quickly" "suddenly" "gently" "sharply" "steeply" "soon" "early" "late" "now"
        "can" "must" "easily" "readily" "often" "firmly" "safely" "immediately" "re" "-" "own" "way" "re-emerges";
    /// Words between an unusual verb and its preposition ("nips *back in* through").
    is_particle:
        "back" "down" "up" "out" "in" "on" "off" "straight" "right" "forward" "forwards" "backwards" "backward"
        "outwards" "inwards" "downwards" "upwards" "sideways" "along" "across" "about" "its" "way" "itself" "just" "away";
    /// Words by which two structures are said to be apart, so that "from" tells no origin.
    sets_apart:
        "differs" "differed" "separates" "separated" "distinguishes" "distinguished" "distinct" "apart" "away" "far"
        "divided" "protected" "shielded" "freed" "removed" "told" "tells" "varies" "retracted" "shares" "suffers"
        "learned" "learns" "protects" "dissected" "isolated" "cleared" "reflected" "lifted" "inches" "fingers"
        "centimetres" "centimeters" "millimetres" "fibres" "twigs" "messages" "impulses" "signals" "contributions"
        "referred" "spreads" "inherits" "needs" "excludes" "excluded" "transferred" "borrows" "borrowed";
    /// Prepositions with which the way of a nerve is told without a verb ("ulnar nerve: *behind* the medial epicondyle").
    begins_way: "behind" "through" "under" "round" "around" "beneath" "between" "via" "deep" "superficial" "Behind" "Through"
        "Under" "Round" "Around" "Beneath" "Between" "Via" "Deep" "Superficial";
    /// Marks behind a name that stands at the head of an item.
    ends_head: ":" "—" "–" "-" "." "(" ",";
    /// Words beside the names of a value that is nothing but names.
    joins_values: "n" "nn" "m" "mm" "nerve" "nerves" "of" "supplies" "via" "motor" "to" "medial" "lateral";
    /// Words of a heading that add nothing to the name in it.
    adds_nothing: "the" "nerve" "n" "and" "to";
    /// Marks and words for a cell that says nothing.
    is_empty_cell: "-" "–" "—" "/" "n/a" "none";
    /// Answers to a statement that is true.
    is_true: "true" "t" "1" "yes";
    /// Answers to a statement that is false.
    is_false: "false" "f" "0" "no";

    // Names.
    /// Hyphens and the dash that is written for one.
    is_hyphen: "-" "‐" "‑" "–";
    /// Words of two letters.
    is_small_word:
        "am" "an" "as" "at" "be" "by" "do" "go" "he" "if" "in" "is" "it" "me" "my" "no" "of" "on" "or" "so" "to" "up" "we";
    /// Marks at which a clause ends.
    ends_clause: "." ";" ":" "!" "?" ",";
    /// Words that begin no noun phrase: what stands before one has ended.
    ends_noun_phrase:
        "is" "are" "was" "were" "be" "been" "has" "have" "had" "does" "did" "may" "can" "will" "must" "in" "at" "on" "by"
        "with" "from" "for" "after" "before" "during" "into" "onto" "over" "under" "through" "to" "as" "but"
        "when" "while" "because" "if" "so" "then" "than" "lies" "runs" "passes" "arises" "supplies" "not";
    /// Adjectives of names that no ending tells ("*deep*").
    is_plain_adjective:
        "upper" "lower" "middle" "deep" "first" "second" "third" "fourth" "fifth" "inner" "outer" "great" "small"
        "lesser" "greater" "long" "short";
}
