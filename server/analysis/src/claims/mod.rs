//! From mentions to claims.
//!
//! A [`Claim`] is a typed statement found in the text: its kind, its parts with their places, and how it is meant. The
//! files of this folder each read one form: `sentences`, `labels`, `tables`, `exam`. What words mean stands in
//! [`crate::lexicon`] alone.

mod answers;
mod context;
mod exam;
mod fitting;
mod frames;
mod labels;
pub mod phrases;
mod rows;
mod sections;
pub mod segments;
mod sentences;
pub mod signs;
mod subjects;
mod tables;

use std::collections::BTreeSet;

use fascicle_model::{EntryId, Kind, Segments, Vocabulary};

use self::frames::Frames;
use self::sections::Excerpt;
use crate::blocks::{Block, BlockIx, BlockKind, Blocks};
use crate::knowledge::Knowledge;
use crate::mentions::Mentions;
use crate::text::Span;

pub use phrases::Relations;
pub use sections::{Section, sections};

/// What a claim is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum ClaimKind {
    /// A nerve supplies a muscle.
    Supply,
    /// A structure's spinal segments.
    Roots,
    /// A nerve arises from, or gives, another.
    Branching,
    /// A nerve goes on under another name.
    Renaming,
    /// A muscle moves a joint.
    Action,
    /// A nerve is motor, sensory or mixed.
    Modality,
    /// A nerve feels an area of skin.
    Skin,
    /// A nerve passes a landmark.
    Passage,
    /// A muscle's origin or insertion.
    Attachment,
    /// A joint's kind or movement.
    Joint,
    /// A muscle belongs to a group or compartment.
    Membership,
    /// How many there are.
    Count,
    /// What is lost after a lesion.
    Deficit,
}

impl ClaimKind {
    /// Every kind.
    pub const ALL: [Self; 13] = [
        Self::Supply,
        Self::Roots,
        Self::Branching,
        Self::Renaming,
        Self::Action,
        Self::Modality,
        Self::Skin,
        Self::Passage,
        Self::Attachment,
        Self::Joint,
        Self::Membership,
        Self::Count,
        Self::Deficit,
    ];

    /// The word for outputs.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Supply => "supply",
            Self::Roots => "roots",
            Self::Branching => "branching",
            Self::Renaming => "renaming",
            Self::Action => "action",
            Self::Modality => "modality",
            Self::Skin => "skin",
            Self::Passage => "passage",
            Self::Attachment => "attachment",
            Self::Joint => "joint",
            Self::Membership => "membership",
            Self::Count => "count",
            Self::Deficit => "deficit",
        }
    }
}

/// What a part of a claim plays in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum PartRole {
    /// The nerve that supplies, feels, branches, passes, is cut.
    Nerve,
    /// The nerve, plexus part or landmark that it comes from.
    Parent,
    /// The muscle.
    Muscle,
    /// The structure whose segments are told.
    Structure,
    /// The segments.
    Segments,
    /// The movement.
    Movement,
    /// The joint, or what else is moved.
    Joint,
    /// The role of a muscle in a movement.
    Role,
    /// Motor, sensory, mixed.
    Modality,
    /// The area of skin.
    Skin,
    /// The landmark passed or attached to.
    Landmark,
    /// The group or compartment.
    Group,
    /// The number.
    Number,
    /// The kind of a joint.
    JointKind,
    /// The trade's name for what a lesion shows.
    Sign,
    /// A member that is taken out of a group ("all but …").
    Except,
}

impl PartRole {
    /// The word for outputs.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Nerve => "nerve",
            Self::Parent => "parent",
            Self::Muscle => "muscle",
            Self::Structure => "structure",
            Self::Segments => "segments",
            Self::Movement => "movement",
            Self::Joint => "joint",
            Self::Role => "role",
            Self::Modality => "modality",
            Self::Skin => "skin",
            Self::Landmark => "landmark",
            Self::Group => "group",
            Self::Number => "number",
            Self::JointKind => "joint-kind",
            Self::Sign => "sign",
            Self::Except => "except",
        }
    }
}

/// What stands at a part of a claim.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum What {
    /// A structure; more than one id where the name is ambiguous and nothing decides.
    Entry(Vec<EntryId>),
    /// Segments, main and lesser.
    Segments(Segments, Segments),
    /// A word of a closed list (`motor`, `origin`, `hinge` …).
    Word(&'static str),
    /// The name of a sign, as the vocabulary has it.
    Sign(String),
    /// A number.
    Number(u32),
}

impl What {
    /// The entries that stand there, if it is a structure.
    pub fn entries(&self) -> &[EntryId] {
        if let Self::Entry(ids) = self { ids } else { &[] }
    }
}

/// One part of a claim.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Part {
    /// What it plays.
    pub role: PartRole,
    /// Where it stands in the source.
    pub span: Span,
    /// What it is.
    pub what: What,
}

/// A typed statement found in a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Claim {
    /// What it is about.
    pub kind: ClaimKind,
    /// Where it stands in the source.
    pub span: Span,
    /// Its parts.
    pub parts: Vec<Part>,
    /// It says that this is not so.
    pub negated: bool,
    /// It says that this may be so.
    pub hedged: bool,
    /// It speaks of all members, of the whole or, for a passage, of going through.
    pub all: bool,
    /// The block in which it was read.
    pub block: BlockIx,
    /// It is what the key of an exam item says.
    pub key: Option<Box<Key>>,
}

/// The key of an exam item, beside the claim that it makes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Key {
    /// What is replaced to correct it.
    pub span: Span,
    /// The options, each as the key would name it and as what it is.
    pub options: Vec<(String, What)>,
    /// Which part of the claim the option is.
    pub part: Option<usize>,
}

impl Claim {
    /// The first part of a role.
    pub fn part(&self, role: PartRole) -> Option<&Part> {
        self.parts.iter().find(|part| part.role == role)
    }

    /// It speaks of fibres that a nerve carries beside its own: taste, autonomic ones.
    pub fn is_of_passengers(&self) -> bool {
        matches!(self.part(PartRole::Modality).map(|part| &part.what),
            Some(What::Word(word)) if crate::lexicon::carried(word).is_some())
    }

    /// The entries at the first part of a role.
    pub fn entries(&self, role: PartRole) -> &[EntryId] {
        match self.part(role).map(|part| &part.what) {
            Some(What::Entry(ids)) => ids,
            _ => &[],
        }
    }
}

/// Among how many claims before it one is looked for that says the same.
const SAID_TWICE_WITHIN: usize = 8;

/// Reads the claims of a document.
pub fn claims(blocks: &Blocks, mentions: &[Mentions], knowledge: &Knowledge) -> Vec<Claim> {
    let (mut claims, taken) = of_exam(blocks, knowledge);
    for section in sections(blocks) {
        let own = of_section(&section, blocks, mentions, knowledge, &taken);
        claims.extend(own.into_iter().map(|claim| Claim { block: section.block(claim.block), ..claim }));
    }
    claims.sort_by_key(|claim| (claim.span, claim.kind));
    claims
}

/// A segment that an area of skin is said to have is what feels it.
fn as_skin(claim: &mut Claim, vocabulary: &Vocabulary) {
    let is_of_skin = |part: &Part| {
        let ids = part.what.entries();
        !ids.is_empty() && ids.iter().all(|id| vocabulary.kind(*id) == Kind::Skin)
    };
    let structure = claim.parts.iter().position(|part| part.role == PartRole::Structure && is_of_skin(part));
    if let Some(area) = structure.filter(|_| claim.kind == ClaimKind::Roots).and_then(|at| claim.parts.get_mut(at)) {
        area.role = PartRole::Skin;
        claim.kind = ClaimKind::Skin;
    }
    if claim.kind != ClaimKind::Skin {
        return;
    }
    for part in &mut claim.parts {
        if let What::Segments(main, lesser) = part.what {
            part.role = PartRole::Nerve;
            part.what = What::Entry(roots(vocabulary, main.union(lesser)));
        }
    }
}

/// The spinal nerves of segments.
fn roots(vocabulary: &Vocabulary, segments: Segments) -> Vec<EntryId> {
    let names: Vec<String> = segments.iter().map(Segments::name).collect();
    let is_one = |id: EntryId| names.iter().any(|name| name == vocabulary.name(id));
    vocabulary.iter().filter(|(id, entry)| entry.kind == Kind::Root && is_one(*id)).map(|(id, _)| id).collect()
}

/// Reads the claims of exam items; with the blocks that the items take up, which are read no other way.
pub fn of_exam(blocks: &Blocks, knowledge: &Knowledge) -> (Vec<Claim>, BTreeSet<BlockIx>) {
    let (mut claims, taken) = exam::read(blocks, knowledge);
    for claim in &mut claims {
        as_skin(claim, &knowledge.vocabulary);
    }
    (claims, taken)
}

/// Reads the claims of a section as of a document of its own (so the block of a claim is its place in the section),
/// without the blocks that exam items have taken.
pub fn of_section(
    section: &Section,
    blocks: &Blocks,
    mentions: &[Mentions],
    knowledge: &Knowledge,
    taken: &BTreeSet<BlockIx>,
) -> Vec<Claim> {
    let Excerpt { blocks, mentions, first } = section.excerpt(blocks, mentions);
    let subjects = subjects::Subjects::new(&blocks, &mentions, knowledge);
    let frames = Frames::new(&blocks);
    let mut claims = Vec::new();
    let mut memory = sentences::Memory::default();
    let mut last = None;
    for (at, block) in blocks.list.iter().enumerate().skip(first) {
        let Some(block_mentions) = mentions.get(at).filter(|_| !taken.contains(&section.block(at))) else {
            continue;
        };
        if matches!(block.kind, BlockKind::Cell { .. } | BlockKind::Heading(_) | BlockKind::Title) || block.quoted {
            memory = sentences::Memory::default();
            last = None;
            continue;
        }
        // From caption to caption all carries over, to another block beside it only what a pronoun may stand for.
        if block.kind != BlockKind::Caption {
            let is_beside = last.is_some_and(|last| is_beside(block, last));
            memory = if is_beside { memory.of_block_before() } else { sentences::Memory::default() };
        }
        last = Some(block);
        let above = subjects.of(at);
        let block_mentions = &*context::named(knowledge, &block.plain.text, block_mentions, &above);
        let scope = sentences::Scope {
            of_vessels: subjects.is_of_vessels(at),
            of_lesions: subjects.is_of_lesions(at),
            of_skin: subjects.is_of_skin(at),
            end_of_key: frames.end_of_key(at),
            ..sentences::Scope::new(knowledge, &block.plain, block_mentions, at).under(&above)
        };
        claims.extend(sentences::read(&scope, 0, &mut memory));
        claims.extend(labels::read(&scope, &subjects.above(at)));
        if block.kind != BlockKind::Caption {
            let (mut answered, backs) = answers::read(&blocks, at, knowledge);
            claims.retain(|claim| claim.block != at || !backs.iter().any(|back| back.overlaps(claim.span)));
            let is_known = |own: &Claim| claims.iter().any(|claim| claim.block == at && says_the_same(claim, own));
            answered.retain(|own| !is_known(own));
            claims.extend(answered);
            if !claims.iter().any(|claim| claim.block == at) {
                claims.extend(answers::led_in(&blocks, at, knowledge));
            }
        }
    }
    claims.extend(tables::read(&blocks, &mentions, knowledge, &subjects, &|cell| taken.contains(&section.block(cell))));
    for claim in &mut claims {
        as_skin(claim, &knowledge.vocabulary);
        fitting::fit(claim, &blocks, &knowledge.vocabulary);
    }
    claims = frames.settle(claims, &blocks);
    claims.sort_by_key(|claim| (claim.span, claim.kind));
    // A line may be read as a sentence and by its label.
    let mut kept: Vec<Claim> = Vec::with_capacity(claims.len());
    for claim in claims {
        let is_same = |known: &Claim| {
            known.block == claim.block
                && known.kind == claim.kind
                && known.parts.len() == claim.parts.len()
                && known.parts.iter().all(|part| claim.parts.contains(part))
        };
        if kept.iter().rev().take(SAID_TWICE_WITHIN).any(is_same) {
            continue;
        }
        // … and the one way may tell more of it than the other: which end of a muscle it is.
        let tells_less = |known: &Claim, more: &Claim| {
            known.kind == ClaimKind::Attachment
                && known.kind == more.kind
                && known.block == more.block
                && known.parts.len() < more.parts.len()
                && known.parts.iter().all(|part| more.parts.contains(part))
        };
        let from = kept.len().saturating_sub(SAID_TWICE_WITHIN);
        let near = kept.split_off(from);
        let is_told = near.iter().any(|known| tells_less(&claim, known));
        kept.extend(near.into_iter().filter(|known| !tells_less(known, &claim)));
        if !is_told {
            kept.push(claim);
        }
    }
    kept
}

/// Whether two claims say the same of the same structures, wherever these are named.
fn says_the_same(a: &Claim, b: &Claim) -> bool {
    let has = |part: &Part| b.parts.iter().any(|other| other.role == part.role && other.what == part.what);
    a.kind == b.kind && a.parts.len() == b.parts.len() && a.parts.iter().all(has)
}

/// Whether a block goes on where another one ended: in the same list, or as the next paragraph.
fn is_beside(block: &Block, last: &Block) -> bool {
    let is_same =
        block.kind == last.kind || matches!((block.kind, last.kind), (BlockKind::Item(_), BlockKind::Item(_)));
    is_same && block.parent == last.parent && block.heading == last.heading
}
