//! What would make a sentence true: the entries that fit a place in a text.
//!
//! There is no second grammar for that. A stand-in of each kind is put at the place, the text round it is read as any
//! other, and where a claim takes the stand-in as one of its parts, the graph is asked which entries make that claim
//! agree. So whatever form the claim reader knows (sentence, bullet under a heading, table) can be completed.

use fascicle_model::{EntryId, Kind, Segments, Standing, Vocabulary};
use rustc_hash::{FxHashMap, FxHashSet};

use crate::blocks::{self, BlockIx, BlockKind, Form};
use crate::claims::{self, Claim, ClaimKind, PartRole, What};
use crate::knowledge::Knowledge;
use crate::lexicon;
use crate::mentions::{self, Mention, Mentions};
use crate::reading::Reading;
use crate::resolve;
use crate::text::Span;
use crate::verdicts::{self, Verdict};
use crate::words::fold;

/// The most text before and behind the place that is read with it, in bytes.
const REACH: usize = 2_000;

/// What fits a place.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Context<'a> {
    /// Entries that make the statement true, in the order of the vocabulary's facts where it has one.
    pub fitting: Vec<EntryId>,
    /// Entries that make it false.
    pub contrary: Vec<EntryId>,
    /// Kinds of entries with which a statement is read at all.
    pub taken: Vec<Kind>,
    /// Segments that make it true, as an author writes them.
    pub segments: Vec<Segments>,
    /// Kinds that the place takes, where its column or label says so.
    pub kinds: Vec<Kind>,
    /// Entries that the headings above name, nearest first.
    pub headed: Vec<EntryId>,
    /// These with what belongs to them.
    pub near: Vec<EntryId>,
    /// Entries that were named right before, the last first.
    pub last: Vec<EntryId>,
    /// Between what was named last and the place stands nothing but a mark or a space.
    pub follows_last: bool,
    /// Entries that the document names elsewhere, and how often.
    pub named: FxHashMap<EntryId, u32>,
    /// Entries that the section names elsewhere.
    pub told: FxHashSet<EntryId>,
    /// Entries that the paragraph, item or cell has named.
    pub in_block: Vec<EntryId>,
    /// Entries that the sentence has named.
    pub in_sentence: Vec<EntryId>,
    /// Entries that stand in the same place of another row, item or heading.
    pub listed: Vec<EntryId>,
    /// How the document calls entries, where it writes their names out: each wording once, the last at the end.
    pub written: FxHashMap<EntryId, Vec<&'a str>>,
    /// The document calls structures by their Latin names.
    pub is_latin: bool,
}

/// How many names before a place speak for what comes.
const LAST: usize = 6;

/// How far from the beginning of its block a name may stand to be what the item is about, in bytes.
const LEAD: usize = 4;

/// Finds what fits in place of a range of a text. Of the entries that fit or do not, only those that are `wanted`.
pub fn context<'a>(
    text: &str,
    form: Form,
    typed: Span,
    reading: &'a Reading,
    knowledge: &Knowledge,
    wanted: &dyn Fn(EntryId) -> bool,
) -> Context<'a> {
    let vocabulary = &knowledge.vocabulary;
    let mut around = Around::new(text, typed, reading);
    let mut context = Context { kinds: label_kinds(reading, typed.start), ..Context::default() };
    context.look_up(reading, typed.start, vocabulary);
    context.look_around(text, reading, typed);
    let mut asked: Vec<(ClaimKind, PartRole, Vec<What>)> = Vec::new();
    for kind in [Kind::Nerve, Kind::Muscle, Kind::Landmark, Kind::Skin, Kind::Group, Kind::Plexus, Kind::Joint] {
        let Some(probe) = stand_in(kind, knowledge) else { continue };
        for (claim, part, named) in around.claims_with(vocabulary.name(probe), form, knowledge) {
            let Some(role) = claim.parts.get(part).map(|part| part.role) else { continue };
            if !context.taken.contains(&kind) {
                context.taken.push(kind);
            }
            let others = claim.parts.iter().enumerate().filter(|(at, _)| *at != part);
            let question = (claim.kind, role, others.map(|(_, other)| other.what.clone()).collect());
            if asked.contains(&question) {
                continue;
            }
            asked.push(question);
            let is_named =
                |id: EntryId| named.contains(&id) || vocabulary.wholes(id).iter().any(|whole| named.contains(whole));
            let (fitting, contrary) = answers(claim, part, role, vocabulary, wanted);
            context.fitting.extend(
                fitting.into_iter().filter(|id| !context.fitting.contains(id) && !is_named(*id)).collect::<Vec<_>>(),
            );
            context.contrary.extend(contrary);
        }
    }
    // A single segment in brackets may be a level of the spine, and is not read.
    let probe = if around.is_in_brackets() { "C5, C6)" } else { "C5" };
    for (claim, part, _) in around.claims_with(probe, form, knowledge) {
        let told = claim.parts.get(part).is_some_and(|part| matches!(part.what, What::Segments(..)));
        if claim.kind != ClaimKind::Roots || !told {
            continue;
        }
        for id in claim.entries(PartRole::Structure) {
            for reading in vocabulary.roots_of(*id) {
                let all = reading.all();
                if !context.segments.contains(&all) {
                    context.segments.push(all);
                }
            }
        }
    }
    context
}

/// Where a name can stand so that others stand in the same place elsewhere.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Slot {
    /// A column of a table.
    Column(u32, u32),
    /// The beginning of an item.
    Item,
    /// A heading of a level.
    Heading(u8),
}

impl<'a> Context<'a> {
    /// What the headings above name.
    fn look_up(&mut self, reading: &Reading, at: usize, vocabulary: &Vocabulary) {
        for heading in headings(reading, at).into_iter().rev() {
            for mention in reading.mentions.get(heading).into_iter().flat_map(|mentions| &mentions.list) {
                for id in &mention.candidates {
                    let own = std::iter::once(*id).chain(belonging(*id, vocabulary));
                    self.near.extend(own.filter(|id| !self.near.contains(id)).collect::<Vec<_>>());
                    if !self.headed.contains(id) {
                        self.headed.push(*id);
                    }
                }
            }
        }
    }

    /// What the document, the section and the last names say.
    fn look_around(&mut self, text: &str, reading: &'a Reading, typed: Span) {
        let list = &reading.blocks.list;
        let own = list.partition_point(|block| block.span.start <= typed.start).checked_sub(1);
        let own = own.filter(|own| list.get(*own).is_some_and(|block| typed.start <= block.span.end + 2));
        let section = headings(reading, typed.start).last().copied();
        let place = |block: BlockIx, mention: &Mention| {
            list.get(block).map(|block| block.plain.to_source(mention.span)).unwrap_or_default()
        };
        let slot = |block: BlockIx, at: usize| match list.get(block).map(|block| (block.kind, block.span.start)) {
            Some((BlockKind::Cell { table, row, column }, _)) if row > 0 => Some(Slot::Column(table, column)),
            Some((BlockKind::Item(_) | BlockKind::Term, start)) if at <= start + LEAD => Some(Slot::Item),
            Some((BlockKind::Heading(level), _)) => Some(Slot::Heading(level)),
            _ => None,
        };
        let own_slot = own.and_then(|own| slot(own, typed.start));
        let (mut latin, mut other) = (0_usize, 0_usize);
        for (block, mentions) in reading.mentions.iter().enumerate() {
            let Some(body) = list.get(block) else { continue };
            for mention in &mentions.list {
                let is_typed = body.span.start <= typed.end && typed.start <= body.span.end;
                if is_typed && place(block, mention).overlaps(typed) {
                    continue;
                }
                let is_near = matches!(own_slot, Some(Slot::Column(..) | Slot::Heading(_))) || body.heading == section;
                if is_near && own_slot.is_some() && slot(block, place(block, mention).start) == own_slot {
                    self.listed.extend(&mention.candidates);
                }
                if let [entry] = *mention.candidates
                    && !mention.plural
                    && !mention.shared
                    && !matches!(mention.standing, Standing::Abbreviation | Standing::Short)
                {
                    latin += usize::from(mention.standing == Standing::Latin);
                    other += usize::from(mention.standing != Standing::Latin);
                    let wordings = self.written.entry(entry).or_default();
                    let wording = mention.span.of(&body.plain.text);
                    if wordings.last() != Some(&wording) {
                        wordings.retain(|known| *known != wording);
                        wordings.push(wording);
                    }
                }
                for id in &mention.candidates {
                    *self.named.entry(*id).or_default() += 1;
                    if body.heading == section {
                        self.told.insert(*id);
                    }
                }
            }
        }
        self.is_latin = latin > other;
        let Some(own) = own else { return };
        let head = list.get(own).map_or(typed.start, |block| block.span.start);
        let sentence =
            text.get(head..typed.start).and_then(|before| before.rfind([';', '?', '!']).max(before.rfind(". ")));
        let sentence = head + sentence.unwrap_or_default();
        for block in (0..=own).rev() {
            for mention in reading.mentions.get(block).into_iter().flat_map(|mentions| mentions.list.iter().rev()) {
                let span = place(block, mention);
                if span.end > typed.start {
                    continue;
                }
                if self.last.is_empty() {
                    let between = text.get(span.end..typed.start).unwrap_or_default();
                    self.follows_last = !between.contains(|c: char| c.is_alphanumeric() || c == '\n');
                }
                if block == own {
                    self.in_block.extend(&mention.candidates);
                    if span.start >= sentence {
                        self.in_sentence.extend(&mention.candidates);
                    }
                }
                self.last.extend(mention.candidates.iter().filter(|id| !self.last.contains(id)).collect::<Vec<_>>());
            }
            if self.last.len() >= LAST {
                break;
            }
        }
        self.last.truncate(LAST);
    }

    /// How the document has last called an entry, if by one of its names.
    pub fn name_in_use<'v>(&self, id: EntryId, vocabulary: &'v Vocabulary) -> Option<&'v fascicle_model::Name> {
        let wordings = self.written.get(&id)?;
        let names = &vocabulary.entry(id).names;
        wordings.iter().rev().find_map(|wording| {
            let wording = fold(wording);
            names.iter().find(|name| fold(&name.text) == wording)
        })
    }
}

/// What belongs to a structure: of a nerve its muscles, branches and origins, of a muscle its nerves, of a group its
/// members.
fn belonging(id: EntryId, vocabulary: &Vocabulary) -> Vec<EntryId> {
    match vocabulary.kind(id) {
        Kind::Nerve | Kind::Plexus => {
            let muscles = vocabulary.muscles_of(id).into_iter().map(|supply| supply.muscle);
            muscles.chain(vocabulary.branches(id)).chain(vocabulary.origins(id, false)).collect()
        }
        Kind::Muscle => vocabulary.nerves_of(id).into_iter().map(|supply| supply.nerve).collect(),
        Kind::Group => vocabulary.members(id),
        _ => Vec::new(),
    }
}

/// Of the entries that are wanted, those with which a claim agrees when they stand at a part of it, and those that
/// contradict it. First comes what the facts of its other parts name, in the order of these facts; wholes before parts.
fn answers(
    mut claim: Claim,
    part: usize,
    role: PartRole,
    vocabulary: &Vocabulary,
    wanted: &dyn Fn(EntryId) -> bool,
) -> (Vec<EntryId>, Vec<EntryId>) {
    let (mut fitting, mut contrary) = (Vec::new(), Vec::new());
    let told: Vec<EntryId> = claim
        .parts
        .iter()
        .enumerate()
        .filter(|(at, _)| *at != part)
        .flat_map(|(_, other)| other.what.entries())
        .flat_map(|id| vocabulary.entry(*id).usual().filter_map(fascicle_model::Relation::target))
        .collect();
    for (id, entry) in vocabulary.iter() {
        if !takes(role, entry.kind) || !wanted(id) {
            continue;
        }
        let Some(slot) = claim.parts.get_mut(part) else { continue };
        slot.what = What::Entry(vec![id]);
        match verdicts::judge(&claim, vocabulary).verdict {
            Verdict::Agrees => fitting.push(id),
            Verdict::Contradicts => contrary.push(id),
            Verdict::Variant | Verdict::LessExact | Verdict::Unknown => {}
        }
    }
    let rank = |id: &EntryId| told.iter().position(|told| told == id).unwrap_or(usize::MAX);
    fitting.sort_by_key(|id| (rank(id), vocabulary.wholes(*id).len()));
    (fitting, contrary)
}

/// Whether a part of a claim can be an entry of a kind.
const fn takes(role: PartRole, kind: Kind) -> bool {
    match role {
        PartRole::Nerve | PartRole::Parent => matches!(kind, Kind::Nerve | Kind::Plexus),
        PartRole::Muscle => matches!(kind, Kind::Muscle),
        PartRole::Structure => matches!(kind, Kind::Nerve | Kind::Muscle),
        PartRole::Joint => matches!(kind, Kind::Joint),
        PartRole::Skin => matches!(kind, Kind::Skin),
        PartRole::Landmark => matches!(kind, Kind::Landmark),
        PartRole::Group => matches!(kind, Kind::Group),
        PartRole::Movement => matches!(kind, Kind::Movement),
        PartRole::Segments
        | PartRole::Role
        | PartRole::Modality
        | PartRole::Number
        | PartRole::JointKind
        | PartRole::Sign
        | PartRole::Except => false,
    }
}

/// An entry of a kind whose name can mean nothing else.
fn stand_in(kind: Kind, knowledge: &Knowledge) -> Option<EntryId> {
    let vocabulary = &knowledge.vocabulary;
    let is_clear = |id: EntryId| {
        let names = knowledge.names.lookup(vocabulary.name(id));
        matches!(&*names, [only] if only.entry == id)
    };
    vocabulary
        .iter()
        .find(|(id, entry)| entry.kind == kind && entry.part_of.is_none() && is_clear(*id))
        .map(|(id, _)| id)
}

/// The text round a place, as far as what is said there can depend on it: its headings, the paragraph before, its own.
struct Around {
    before: String,
    after: String,
    /// The names of blocks that were read already, by their text.
    known: FxHashMap<String, Mentions>,
}

impl Around {
    fn new(text: &str, typed: Span, reading: &Reading) -> Self {
        let mut before = String::new();
        for heading in headings(reading, typed.start) {
            if let Some(block) = reading.blocks.list.get(heading) {
                before.push_str(block.span.of(text));
                before.push_str("\n\n");
            }
        }
        let head = text.get(..typed.start).unwrap_or_default();
        let tail = text.get(typed.end..).unwrap_or_default();
        let own = chunk_start(head);
        let chunk = head.get(own..).unwrap_or_default();
        if !chunk.trim_start().starts_with('#') {
            let above = head.get(..own).unwrap_or_default().trim_end();
            let previous = above.get(chunk_start(above)..).unwrap_or_default();
            if previous.len() < REACH && !previous.trim_start().starts_with('#') {
                before.push_str(previous);
                before.push_str("\n\n");
            }
        }
        if chunk.len() > REACH {
            // Of a long table its header and the row, of anything else what stands nearest.
            let header: Vec<&str> = chunk.split_inclusive('\n').take(2).filter(|line| line.contains('|')).collect();
            before.extend(header);
            let cut = chunk.len() - REACH;
            let from = chunk.char_indices().map(|(at, _)| at).find(|at| *at >= cut && starts_line(chunk, *at));
            before.push_str(chunk.get(from.unwrap_or(chunk.len())..).unwrap_or_default());
        } else {
            before.push_str(chunk);
        }
        let line = tail.find(['\n', '\r']).unwrap_or(tail.len());
        let after = tail.get(..line.min(REACH)).unwrap_or_default().to_owned();
        Self { before, after, known: FxHashMap::default() }
    }

    /// Whether a bracket is open at the place, and nothing closes it yet.
    fn is_in_brackets(&self) -> bool {
        let open = self.before.rfind('(');
        open.is_some_and(|open| self.before.rfind([')', '\n']).is_none_or(|shut| shut < open))
            && !self.after.contains(')')
    }

    /// The claims that have a stand-in as a part, with the place of the part and what else is named in its role.
    fn claims_with(&mut self, stand_in: &str, form: Form, knowledge: &Knowledge) -> Vec<(Claim, usize, Vec<EntryId>)> {
        let text = format!("{}{stand_in}{}", self.before, self.after);
        let place = Span::new(self.before.len(), self.before.len() + stand_in.len());
        let blocks = blocks::blocks(&text, form);
        let mut mentions: Vec<Mentions> = Vec::with_capacity(blocks.list.len());
        for block in &blocks.list {
            let text = &block.plain.text;
            let find = || mentions::mentions(text, &knowledge.vocabulary, &knowledge.names);
            mentions.push(self.known.entry(text.clone()).or_insert_with(find).clone());
        }
        resolve::resolve(&blocks, &mut mentions, &knowledge.vocabulary);
        let all = claims::claims(&blocks, &mentions, knowledge);
        let mut found = Vec::new();
        for claim in all.iter().filter(|claim| !claim.negated) {
            let Some(part) = claim.parts.iter().position(|part| part.span.overlaps(place)) else { continue };
            let role = claim.parts.get(part).map(|part| part.role);
            let siblings = all.iter().filter(|other| other.kind == claim.kind && other.block == claim.block);
            let named = siblings
                .flat_map(|other| other.parts.iter())
                .filter(|other| Some(other.role) == role && !other.span.overlaps(place))
                .filter_map(|other| match &other.what {
                    What::Entry(ids) => Some(ids.clone()),
                    _ => None,
                })
                .flatten()
                .collect();
            found.push((claim.clone(), part, named));
        }
        found
    }
}

/// Where the run of lines without an empty one, which a text ends with, begins.
fn chunk_start(text: &str) -> usize {
    let mut end = text.len();
    for line in text.split_inclusive('\n').rev() {
        let start = end - line.len();
        let is_last = end == text.len() && !line.ends_with('\n');
        if line.trim().is_empty() && !is_last {
            return end;
        }
        end = start;
    }
    0
}

fn starts_line(text: &str, at: usize) -> bool {
    at == 0 || text.as_bytes().get(at - 1) == Some(&b'\n')
}

/// The headings above a place, the highest first.
fn headings(reading: &Reading, at: usize) -> Vec<usize> {
    let list = &reading.blocks.list;
    let before = list.partition_point(|block| block.span.start <= at);
    let Some(own) = before.checked_sub(1) else { return Vec::new() };
    let mut next = match list.get(own).map(|block| block.kind) {
        Some(BlockKind::Heading(_)) if list.get(own).is_some_and(|block| block.span.end < at) => Some(own),
        _ => list.get(own).and_then(|block| block.heading),
    };
    let mut above = Vec::new();
    while let Some(heading) = next.filter(|heading| !above.contains(heading)) {
        above.push(heading);
        next = list.get(heading).and_then(|block| block.heading);
    }
    above.reverse();
    above
}

/// The kinds that a place takes, by the header of its column, else by the label or heading that it stands under.
fn label_kinds(reading: &Reading, at: usize) -> Vec<Kind> {
    let list = &reading.blocks.list;
    let before = list.partition_point(|block| block.span.start <= at);
    let Some(own) = before.checked_sub(1).and_then(|own| list.get(own)).filter(|block| at <= block.span.end + 2) else {
        return Vec::new();
    };
    let above = match own.kind {
        BlockKind::Cell { row: 0, .. } => None,
        BlockKind::Cell { table, column, .. } => {
            list.iter().find(|block| block.kind == BlockKind::Cell { table, row: 0, column })
        }
        BlockKind::Item(_) | BlockKind::Definition => own.parent.or(own.heading).and_then(|above| list.get(above)),
        _ => None,
    };
    let label = above.and_then(|above| lexicon::label_of(above.plain.text.trim().trim_end_matches(':')));
    let all = [Kind::Nerve, Kind::Plexus, Kind::Muscle, Kind::Joint, Kind::Landmark, Kind::Skin, Kind::Group];
    label.map_or_else(Vec::new, |label| all.into_iter().filter(|kind| takes(label.value, *kind)).collect())
}
