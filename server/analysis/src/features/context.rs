//! What would make a sentence true: the entries that fit a place in a text.
//!
//! There is no second grammar for that. A stand-in of each kind is put at the place, the text round it is read as any
//! other, and where a claim takes the stand-in as one of its parts, the graph is asked which entries make that claim
//! agree. So whatever form the claim reader knows (sentence, bullet under a heading, table) can be completed.

use std::collections::HashMap;

use fascicle_model::{EntryId, Kind, Standing, Vocabulary};

use crate::blocks::{self, BlockKind, Form};
use crate::claims::{self, Claim, PartRole, What};
use crate::knowledge::Knowledge;
use crate::lexicon;
use crate::mentions;
use crate::reading::Reading;
use crate::text::Span;
use crate::verdicts::{self, Verdict};
use crate::words::fold;

/// The most text before and behind the place that is read with it, in bytes.
const REACH: usize = 2_000;

/// What fits a place.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Context {
    /// Entries that make the statement true, in the order of the vocabulary's facts where it has one.
    pub fitting: Vec<EntryId>,
    /// Segments that make it true, as an author writes them.
    pub segments: Vec<String>,
    /// Kinds that the place takes, where its column or label says so.
    pub kinds: Vec<Kind>,
    /// Entries that belong to what the section is about, nearest first.
    pub near: Vec<EntryId>,
    /// Entries that belong to what was named right before.
    pub before: Vec<EntryId>,
    /// Entries that the document names elsewhere.
    pub named: Vec<EntryId>,
    /// Entries that the section names elsewhere.
    pub told: Vec<EntryId>,
    /// Entries that another row of the table names in the same column.
    pub listed: Vec<EntryId>,
    /// How the document calls entries, where it writes their names out: the last name of each.
    pub written: HashMap<EntryId, String>,
    /// The document calls structures by their Latin names.
    pub is_latin: bool,
}

/// How many names before a place speak for what comes.
const LAST: usize = 6;

/// Finds what fits in place of a range of a text.
pub fn context(text: &str, form: Form, typed: Span, reading: &Reading, knowledge: &Knowledge) -> Context {
    let vocabulary = &knowledge.vocabulary;
    let around = Around::new(text, typed, reading);
    let mut context = Context { near: near(reading, typed.start, vocabulary), ..Context::default() };
    context.kinds = column_kinds(reading, typed.start);
    context.look_around(reading, typed, vocabulary);
    for kind in [Kind::Nerve, Kind::Muscle, Kind::Landmark, Kind::Skin, Kind::Group, Kind::Plexus] {
        let Some(probe) = stand_in(kind, knowledge) else { continue };
        for (claim, part, named) in around.claims_with(vocabulary.name(probe), form, knowledge) {
            let Some(role) = claim.parts.get(part).map(|part| part.role) else { continue };
            let is_named =
                |id: EntryId| named.contains(&id) || vocabulary.wholes(id).iter().any(|whole| named.contains(whole));
            for id in fitting(claim, part, role, vocabulary) {
                if !context.fitting.contains(&id) && !is_named(id) {
                    context.fitting.push(id);
                }
            }
        }
    }
    for (claim, part, _) in around.claims_with("C5", form, knowledge) {
        let told = claim.parts.get(part).is_some_and(|part| matches!(part.what, What::Segments(..)));
        if claim.kind != claims::ClaimKind::Roots || !told {
            continue;
        }
        for id in claim.entries(PartRole::Structure) {
            for reading in vocabulary.roots_of(*id) {
                let written = reading.all().to_string();
                if !context.segments.contains(&written) {
                    context.segments.push(written);
                }
            }
        }
    }
    context
}

impl Context {
    /// What the document, the section and the last names say.
    fn look_around(&mut self, reading: &Reading, typed: Span, vocabulary: &Vocabulary) {
        let section = headings(reading, typed.start).last().copied();
        let mut last: Vec<EntryId> = Vec::new();
        let own_block = super::places::blocks_at(reading, typed.start).next();
        let own_kind = own_block.and_then(|block| reading.blocks.list.get(block)).map(|block| block.kind);
        let is_listed = |block: usize| match (reading.blocks.list.get(block).map(|block| block.kind), own_kind) {
            (
                Some(BlockKind::Cell { table, column, .. }),
                Some(BlockKind::Cell { table: own_table, column: own_column, .. }),
            ) => table == own_table && column == own_column,
            _ => false,
        };
        let (mut latin, mut other) = (0_usize, 0_usize);
        for place in super::places::all(reading).filter(|place| !place.span.overlaps(typed)) {
            if is_listed(place.block) {
                self.listed.extend(&place.entries);
            }
            if let [entry] = *place.entries
                && !place.plural
                && !place.shared
                && !matches!(place.standing, Standing::Abbreviation | Standing::Short)
            {
                latin += usize::from(place.standing == Standing::Latin);
                other += usize::from(place.standing != Standing::Latin);
                let block = reading.blocks.list.get(place.block);
                let mention = block.and_then(|block| {
                    Some(block.plain.from_source(place.span.start)?..block.plain.from_source(place.span.end)?)
                });
                let written = block.zip(mention).and_then(|(block, range)| block.plain.text.get(range));
                let written = written.map(fold).unwrap_or_default();
                let names = &vocabulary.entry(entry).names;
                if let Some(name) = names.iter().find(|name| fold(&name.text) == written) {
                    self.written.insert(entry, name.text.clone());
                }
            }
            let heading = reading.blocks.list.get(place.block).and_then(|block| block.heading);
            for id in &place.entries {
                if !self.named.contains(id) {
                    self.named.push(*id);
                }
                if heading == section && !self.told.contains(id) {
                    self.told.push(*id);
                }
            }
            if place.span.end <= typed.start {
                last.extend(&place.entries);
            }
        }
        self.is_latin = latin > other;
        for id in last.into_iter().rev().take(LAST) {
            let own = belonging(id, vocabulary);
            self.before.extend(own.into_iter().filter(|id| !self.before.contains(id)).collect::<Vec<_>>());
        }
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

/// The entries with which a claim agrees when they stand at a part of it: first what the facts of its other parts name,
/// in the order of these facts; wholes before parts.
fn fitting(mut claim: Claim, part: usize, role: PartRole, vocabulary: &Vocabulary) -> Vec<EntryId> {
    let mut list = Vec::new();
    let told: Vec<EntryId> = claim
        .parts
        .iter()
        .enumerate()
        .filter(|(at, _)| *at != part)
        .filter_map(|(_, other)| match &other.what {
            What::Entry(ids) => Some(ids),
            _ => None,
        })
        .flatten()
        .flat_map(|id| vocabulary.entry(*id).usual().filter_map(fascicle_model::Relation::target))
        .collect();
    for (id, entry) in vocabulary.iter() {
        if !takes(role, entry.kind) {
            continue;
        }
        let Some(slot) = claim.parts.get_mut(part) else { continue };
        slot.what = What::Entry(vec![id]);
        if verdicts::judge(&claim, vocabulary).verdict == Verdict::Agrees {
            list.push(id);
        }
    }
    let rank = |id: &EntryId| told.iter().position(|told| told == id).unwrap_or(usize::MAX);
    list.sort_by_key(|id| (rank(id), vocabulary.wholes(*id).len()));
    list
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
        Self { before, after: tail.get(..line.min(REACH)).unwrap_or_default().to_owned() }
    }

    /// The claims that have a stand-in as a part, with the place of the part and what else is named in its role.
    fn claims_with(&self, stand_in: &str, form: Form, knowledge: &Knowledge) -> Vec<(Claim, usize, Vec<EntryId>)> {
        let text = format!("{}{stand_in}{}", self.before, self.after);
        let place = Span::new(self.before.len(), self.before.len() + stand_in.len());
        let blocks = blocks::blocks(&text, form);
        let mentions: Vec<mentions::Mentions> = blocks
            .list
            .iter()
            .map(|block| mentions::mentions(&block.plain.text, &knowledge.vocabulary, &knowledge.names))
            .collect();
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

/// What belongs to the structures that the headings above a place name: of a nerve its muscles and branches, of a muscle
/// its nerves and attachments.
fn near(reading: &Reading, at: usize, vocabulary: &Vocabulary) -> Vec<EntryId> {
    let mut list: Vec<EntryId> = Vec::new();
    for heading in headings(reading, at).into_iter().rev() {
        for place in super::places::in_block(reading, heading) {
            for id in place.entries {
                let own = belonging(id, vocabulary);
                list.extend(std::iter::once(id).chain(own).filter(|id| !list.contains(id)).collect::<Vec<_>>());
            }
        }
    }
    list
}

/// The kinds that the column of a table takes, by its header.
fn column_kinds(reading: &Reading, at: usize) -> Vec<Kind> {
    let list = &reading.blocks.list;
    let before = list.partition_point(|block| block.span.start <= at);
    let Some(BlockKind::Cell { table, row, column }) = before
        .checked_sub(1)
        .and_then(|own| list.get(own))
        .filter(|block| at <= block.span.end + 2)
        .map(|block| block.kind)
    else {
        return Vec::new();
    };
    if row == 0 {
        return Vec::new();
    }
    let header = list.iter().find(|block| block.kind == BlockKind::Cell { table, row: 0, column });
    let label = header.and_then(|header| lexicon::label_of(&header.plain.text));
    let all = [Kind::Nerve, Kind::Plexus, Kind::Muscle, Kind::Joint, Kind::Landmark, Kind::Skin, Kind::Group];
    label.map_or_else(Vec::new, |label| all.into_iter().filter(|kind| takes(label.value, *kind)).collect())
}
