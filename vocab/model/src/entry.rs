//! What an entry and a fact are.
//!
//! An [`Entry`] is one structure (a nerve, a muscle, a landmark …) with its names; a [`Fact`] is one statement about it,
//! with its sources.

use serde::{Deserialize, Serialize};

use crate::segments::Segments;

/// What an entry may leave open: its nerves or segments, the muscles that it supplies, its attachments or actions, what
/// passes it.
pub const OPEN_WORDS: &[&str] = &["nerves", "roots", "supplies", "origin", "insertion", "acts", "passers"];

/// What an entry can be said to have a number of.
pub const COUNTED_WORDS: &[&str] = &[
    "heads",
    "bellies",
    "parts",
    "columns",
    "tendons",
    "muscles",
    "bones",
    "compartments",
    "nerves",
    "cranial nerves",
    "phalanges",
    "pairs",
    "layers",
    "roots",
    "trunks",
    "divisions",
    "cords",
    "branches",
    "terminal branches",
    "axes",
];

/// What a ligament can keep a joint from, each with its opposite.
pub const MOTIONS: &[(&str, &str)] = &[
    ("flexion", "extension"),
    ("abduction", "adduction"),
    ("medial rotation", "lateral rotation"),
    ("inversion", "eversion"),
    ("valgus", "varus"),
    ("forward", "backward"),
];

/// The place of an entry in its [`crate::Vocabulary`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
pub struct EntryId(pub u32);

macro_rules! words {
    ($(#[$doc:meta])* $name:ident { $($(#[$vdoc:meta])* $variant:ident = $word:literal),+ $(,)? }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
        pub enum $name { $($(#[$vdoc])* $variant),+ }

        impl $name {
            /// Every value, in order.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];

            /// The word by which the data files and the outputs call it.
            pub const fn word(self) -> &'static str {
                match self { $(Self::$variant => $word),+ }
            }

            /// The value that a word names.
            pub fn from_word(word: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|value| value.word() == word)
            }
        }
    };
}

words! {
    /// What kind of structure an entry is.
    Kind {
        /// A named nerve or branch.
        Nerve = "nerve",
        /// A plexus, trunk, division, cord or ramus.
        Plexus = "plexus",
        /// A spinal segment with its nerve root.
        Root = "root",
        /// A muscle, or a named part or head of one.
        Muscle = "muscle",
        /// A joint.
        Joint = "joint",
        /// A bone, bone feature, passage, ligament, organ or other thing that facts point at.
        Landmark = "landmark",
        /// A cutaneous area, dermatome or sensory point.
        Skin = "skin",
        /// A movement.
        Movement = "movement",
        /// A compartment, layer or group of muscles or joints.
        Group = "group",
    }
}

words! {
    /// Where in the body an entry is listed.
    Region {
        /// Head.
        Head = "head",
        /// Neck.
        Neck = "neck",
        /// Back.
        Back = "back",
        /// Thorax.
        Thorax = "thorax",
        /// Abdomen.
        Abdomen = "abdomen",
        /// Pelvis and perineum.
        Pelvis = "pelvis",
        /// Shoulder and axilla.
        Shoulder = "shoulder",
        /// Arm and elbow.
        Arm = "arm",
        /// Forearm.
        Forearm = "forearm",
        /// Wrist and hand.
        Hand = "hand",
        /// Hip and buttock.
        Hip = "hip",
        /// Thigh and knee.
        Thigh = "thigh",
        /// Leg.
        Leg = "leg",
        /// Ankle and foot.
        Foot = "foot",
        /// The body as a whole.
        Body = "body",
    }
}

words! {
    /// What standing a name has.
    Standing {
        /// The name that fascicle uses in English.
        Preferred = "preferred",
        /// Another correct name.
        Exact = "exact",
        /// The international Latin name.
        Latin = "latin",
        /// A name after a person.
        Eponym = "eponym",
        /// A name that the terminology has given up.
        Former = "former",
        /// A regional spelling.
        Spelling = "spelling",
        /// An abbreviation.
        Abbreviation = "abbreviation",
        /// A short form, clear in context.
        Short = "short",
        /// An informal name.
        Informal = "informal",
    }
}

words! {
    /// What a nerve carries.
    Modality {
        /// To muscles only.
        Motor = "motor",
        /// From skin, mucosa or joints only.
        Sensory = "sensory",
        /// Both.
        Mixed = "mixed",
    }
}

words! {
    /// How much a muscle does for a movement.
    Role {
        /// It carries the movement.
        Prime = "prime",
        /// It helps.
        Assistant = "assistant",
    }
}

/// A name of an entry.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Name {
    /// As it is written in the middle of a sentence.
    pub text: String,
    /// Its standing.
    pub standing: Standing,
    /// The plural, where it is not regular English.
    pub plural: Option<String>,
    /// Another entry has the same name, and both say so.
    pub ambiguous: bool,
}

/// Where a fact was read: a source of the bibliography and, where known, the place in it.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Citation {
    /// Identifier of the [`Source`].
    pub source: String,
    /// Page, table or section.
    pub place: Option<String>,
}

/// A work of the bibliography.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Source {
    /// The identifier that citations use.
    pub id: String,
    /// Author or editor, if any.
    pub author: Option<String>,
    /// Title.
    pub title: String,
    /// Year of the edition.
    pub year: Option<u16>,
    /// Whether anyone may read it.
    pub open: bool,
    /// A remark.
    pub note: Option<String>,
}

/// What a fact says of its entry. The fields are named for their role; each variant says what it means.
#[allow(missing_docs)]
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Relation {
    /// Muscle: this nerve gives its motor twig.
    SuppliedBy { nerve: EntryId },
    /// Muscle, nerve, plexus part or skin: spinal segments.
    Roots { main: Segments, lesser: Segments },
    /// Muscle: arises from.
    Origin { from: EntryId },
    /// Muscle: inserts on.
    Insertion { on: EntryId },
    /// Muscle: moves a joint or, where no joint moves, a structure.
    Acts { movement: EntryId, target: EntryId, role: Role },
    /// Muscle or joint: belongs to a group or compartment.
    Member { of: EntryId },
    /// Nerve: what it carries.
    Carries { fibres: String },
    /// Nerve: motor, sensory or mixed.
    Modality { is: Modality },
    /// Nerve or plexus part: arises from.
    ArisesFrom { from: EntryId, at: Option<EntryId> },
    /// Nerve: goes on under another name.
    ContinuesAs { nerve: EntryId, at: Option<EntryId> },
    /// Nerve, muscle with its tendon, or vessel, step of its course: passes a landmark.
    Passes { landmark: EntryId, how: Option<String> },
    /// Nerve, step of its course: gives a branch.
    Gives { nerve: EntryId, at: Option<EntryId> },
    /// Nerve, step of its course: gives a twig to a muscle.
    Supplies { muscle: EntryId, at: Option<EntryId> },
    /// Nerve, step of its course: sensory to skin, mucosa or joint.
    Feels { target: EntryId },
    /// Nerve, step of its course: communicates with.
    Joins { with: EntryId },
    /// Nerve, step of its course: a usual site of injury or entrapment.
    Injured { at: EntryId, cause: Option<String> },
    /// Nerve: the trade's name for what a lesion shows.
    Sign { sign: String, at: Option<EntryId> },
    /// Joint: its class and subtype.
    JointKind { class: String, subtype: Option<String> },
    /// Joint: a bone that takes part.
    Bone { bone: EntryId },
    /// Joint: a movement, with the usual end of its range in degrees.
    Allows { movement: EntryId, degrees: Option<u16> },
    /// Joint: a ligament.
    Ligament { ligament: EntryId },
    /// Joint: a nerve.
    FeltBy { nerve: EntryId },
    /// Segment: its key muscle, tested by a movement.
    KeyMuscle { muscle: EntryId, movement: EntryId },
    /// Segment: its key sensory point.
    KeyPoint { skin: EntryId },
    /// Segment: a reflex that tests it.
    Reflex { reflex: String },
    /// Part of the body that authors say is moved ("flexes the thumb"): a joint at which that happens.
    MovedAt { joint: EntryId },
    /// Ligament: a bone or a feature of one to which it is attached.
    Binds { place: EntryId },
    /// Ligament: what it keeps the joint from, one of [`MOTIONS`], and the bone that moves so.
    Limits { motion: String, of: Option<EntryId> },
    /// How many of something it has, where the graph alone does not tell: one of [`COUNTED_WORDS`].
    Count { of: String, number: u16 },
}

/// One statement about an entry.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Fact {
    /// What it says.
    pub relation: Relation,
    /// Another source's reading, or an arrangement that some people have.
    pub variant: bool,
    /// A short remark.
    pub note: Option<String>,
    /// Where it was read; never empty.
    pub sources: Vec<Citation>,
    /// Line in the entry's file, from 1.
    pub line: u32,
}

/// One structure.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Entry {
    /// Identifier, a slug of the preferred name.
    pub id: String,
    /// What it is.
    pub kind: Kind,
    /// Where it is listed.
    pub region: Region,
    /// All names, the preferred one first.
    pub names: Vec<Name>,
    /// Identifiers in open data sets (`UBERON:…`, `FMA:…`, `TA2:…`), each confirmed by one.
    pub ids: Vec<String>,
    /// The whole that it is a part of.
    pub part_of: Option<EntryId>,
    /// What it is called inside its whole ("long head").
    pub short: Option<String>,
    /// Finer kind: `foramen`, `cord`, `dermatome`, `compartment` …
    pub class: Option<String>,
    /// Not everyone has it.
    pub variant: bool,
    /// What the vocabulary does not claim to know in full, in the words of [`OPEN_WORDS`]: silence means unknown there,
    /// and what is said is not the whole. Where a word is absent, the list is complete.
    pub open: Vec<String>,
    /// One sentence for the card.
    pub note: Option<String>,
    /// Movement: the verb ("flex") and the word for the muscle that does it ("flexor").
    pub verb: Option<(String, String)>,
    /// Movement: its opposite.
    pub opposite: Option<EntryId>,
    /// What is known of it, in the order of the file: along a nerve that is proximal to distal.
    pub facts: Vec<Fact>,
    /// File below the data folder, or of the overlay.
    pub file: String,
    /// Line of the entry in it, from 1.
    pub line: u32,
}

impl Entry {
    /// The preferred name.
    pub fn name(&self) -> &str {
        self.names.first().map_or(&*self.id, |name| &*name.text)
    }

    /// The international Latin name, if known.
    pub fn latin(&self) -> Option<&str> {
        self.names.iter().find(|name| name.standing == Standing::Latin).map(|name| &*name.text)
    }

    /// Whether the vocabulary leaves something about the entry open: one of [`OPEN_WORDS`].
    pub fn is_open(&self, what: &str) -> bool {
        self.open.iter().any(|word| word == what)
    }

    /// Movement: something that a muscle does for a structure and that no joint is said to allow (steadying, tightening).
    pub fn is_effect(&self) -> bool {
        self.class.as_deref() == Some("effect")
    }

    /// Facts that hold as a rule: all but variants.
    pub fn usual(&self) -> impl Iterator<Item = &Relation> {
        self.facts.iter().filter(|fact| !fact.variant).map(|fact| &fact.relation)
    }
}

impl Kind {
    /// Whether entries of this kind may be the near end of a fact that is entered at two ends.
    pub(crate) const fn can_have(self, relation: &Relation) -> bool {
        match relation {
            Relation::SuppliedBy { .. } => matches!(self, Self::Muscle),
            Relation::Supplies { .. }
            | Relation::Gives { .. }
            | Relation::ContinuesAs { .. }
            | Relation::ArisesFrom { .. } => matches!(self, Self::Nerve | Self::Plexus),
            _ => false,
        }
    }
}

impl Relation {
    /// The word by which outputs call the edge.
    pub const fn word(&self) -> &'static str {
        match self {
            Self::SuppliedBy { .. } => "supplied-by",
            Self::Roots { .. } => "roots",
            Self::Origin { .. } => "origin",
            Self::Insertion { .. } => "insertion",
            Self::Acts { .. } => "acts",
            Self::Member { .. } => "member",
            Self::Carries { .. } => "carries",
            Self::Modality { .. } => "modality",
            Self::ArisesFrom { .. } => "arises-from",
            Self::ContinuesAs { .. } => "continues-as",
            Self::Passes { .. } => "passes",
            Self::Gives { .. } => "gives",
            Self::Supplies { .. } => "supplies",
            Self::Feels { .. } => "feels",
            Self::Joins { .. } => "joins",
            Self::Injured { .. } => "injured-at",
            Self::Sign { .. } => "sign",
            Self::JointKind { .. } => "joint-kind",
            Self::Bone { .. } => "bone",
            Self::Allows { .. } => "allows",
            Self::Ligament { .. } => "ligament",
            Self::FeltBy { .. } => "felt-by",
            Self::KeyMuscle { .. } => "key-muscle",
            Self::KeyPoint { .. } => "key-point",
            Self::Reflex { .. } => "reflex",
            Self::MovedAt { .. } => "moved-at",
            Self::Binds { .. } => "binds",
            Self::Limits { .. } => "limits",
            Self::Count { .. } => "count",
        }
    }

    /// Every entry of which the fact speaks: its target, and the place, movement or nerve that goes with it.
    pub fn mentions(&self) -> impl Iterator<Item = EntryId> {
        let second = match self {
            Self::ArisesFrom { at, .. }
            | Self::ContinuesAs { at, .. }
            | Self::Gives { at, .. }
            | Self::Supplies { at, .. }
            | Self::Sign { at, .. } => *at,
            Self::Acts { movement, .. } | Self::KeyMuscle { movement, .. } => Some(*movement),
            _ => None,
        };
        self.target().into_iter().chain(second)
    }

    /// The entry that the fact points at, where it points at one.
    pub const fn target(&self) -> Option<EntryId> {
        Some(match self {
            Self::SuppliedBy { nerve: id }
            | Self::Origin { from: id }
            | Self::Insertion { on: id }
            | Self::Acts { target: id, .. }
            | Self::Member { of: id }
            | Self::ArisesFrom { from: id, .. }
            | Self::ContinuesAs { nerve: id, .. }
            | Self::Passes { landmark: id, .. }
            | Self::Gives { nerve: id, .. }
            | Self::Supplies { muscle: id, .. }
            | Self::Feels { target: id }
            | Self::Joins { with: id }
            | Self::Injured { at: id, .. }
            | Self::Bone { bone: id }
            | Self::Allows { movement: id, .. }
            | Self::Ligament { ligament: id }
            | Self::FeltBy { nerve: id }
            | Self::KeyMuscle { muscle: id, .. }
            | Self::KeyPoint { skin: id }
            | Self::Binds { place: id }
            | Self::MovedAt { joint: id } => *id,
            Self::Roots { .. }
            | Self::Carries { .. }
            | Self::Modality { .. }
            | Self::Sign { .. }
            | Self::JointKind { .. }
            | Self::Reflex { .. }
            | Self::Limits { .. }
            | Self::Count { .. } => return None,
        })
    }
}
