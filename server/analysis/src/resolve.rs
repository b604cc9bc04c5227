//! Which structure an ambiguous name means, by what stands around it.
//!
//! A part's short name ("long head", "head") means the part of a whole that is named near by; without one it means
//! nothing. A name that hand and foot share means the one of the limb that the section speaks of. What stays ambiguous
//! keeps all its candidates, and later only what is wrong for each of them is told.

use std::cell::LazyCell;

use fascicle_model::{EntryId, Kind, Region, Relation, Vocabulary};
use rustc_hash::FxHashMap;

use crate::blocks::{Block, BlockIx, BlockKind, Blocks};
use crate::knowledge::Knowledge;
use crate::lexicon;
use crate::mentions::{self, Mention, Mentions};
use crate::text::{Plain, Span};
use crate::words::{fold, tokens};

/// Narrows the candidates of the mentions of a document, and drops mentions that mean nothing where they stand.
pub fn resolve(blocks: &Blocks, mentions: &mut [Mentions], vocabulary: &Vocabulary) {
    let votes = Votes::count(blocks, mentions, vocabulary);
    for (at, block) in blocks.list.iter().enumerate() {
        let Some(own) = mentions.get_mut(at) else { continue };
        let text = &block.plain.text;
        let is_settled = |(place, mention): (usize, &Mention)| {
            mention.candidates.len() == 1
                && !may_be_of_a_part(mention, vocabulary)
                && own.list.get(place + 1).is_none_or(|next| !is_joined(mention, next, text))
        };
        if own.list.iter().enumerate().all(is_settled) {
            continue;
        }
        let list = std::mem::take(&mut own.list);
        // Few names need what stands around their block.
        let around = LazyCell::new(|| around(blocks, mentions, at));
        let mut kept: Vec<Mention> = Vec::with_capacity(list.len());
        let mut rest = list.into_iter().peekable();
        while let Some(mut mention) = rest.next() {
            let behind = rest.peek().filter(|next| is_joined(&mention, next, text));
            if !of_known_whole(&mut mention, text, behind, &kept, &around, vocabulary) {
                continue;
            }
            if !of_named_nerve(&mut mention, behind, vocabulary) {
                continue;
            }
            if mention.candidates.len() > 1 {
                votes.decide(&mut mention, block, vocabulary);
            }
            kept.push(mention);
        }
        drop(around);
        if let Some(own) = mentions.get_mut(at) {
            own.list = kept;
        }
    }
}

/// The mentions of a text that stands by itself, narrowed as those of a document are.
pub fn mentions_of(plain: &Plain, knowledge: &Knowledge) -> Mentions {
    let own = mentions::mentions(&plain.text, &knowledge.vocabulary, &knowledge.names);
    let block = Block {
        kind: BlockKind::Paragraph,
        span: plain.to_source(Span::new(0, plain.text.len())),
        plain: plain.clone().into(),
        heading: None,
        parent: None,
        quoted: false,
        ticked: None,
    };
    let mut list = [own];
    resolve(&Blocks { list: vec![block] }, &mut list, &knowledge.vocabulary);
    let [own] = list;
    own
}

/// Whether what stands between two mentions joins a part and its whole ("long head *of the* triceps").
fn is_joined(mention: &Mention, next: &Mention, text: &str) -> bool {
    let between = crate::text::Span::new(mention.span.end, next.span.start).of(text).trim();
    lexicon::joins_part_and_whole(between)
}

/// Whether a mention may be the short name of a part.
fn may_be_of_a_part(mention: &Mention, vocabulary: &Vocabulary) -> bool {
    mention.candidates.iter().any(|id| may_be_short(vocabulary, *id))
}

/// Whether an entry is a part that is called by a short name inside its whole.
fn may_be_short(vocabulary: &Vocabulary, id: EntryId) -> bool {
    let entry = vocabulary.entry(id);
    entry.part_of.is_some() && entry.short.is_some()
}

/// The entries that stand around a block: what it stands under and the block before it, nearest first.
fn around(blocks: &Blocks, mentions: &[Mentions], at: BlockIx) -> Vec<EntryId> {
    let mut places = Vec::new();
    let block = blocks.list.get(at);
    let mut parent = block.and_then(|block| block.parent);
    while let Some(up) = parent {
        places.push(up);
        parent = blocks.list.get(up).and_then(|block| block.parent);
    }
    if let Some(BlockKind::Cell { table, row, .. }) = block.map(|block| block.kind) {
        places.extend((0..at).rev().take_while(|other| matches!(blocks.list.get(*other).map(|block| block.kind), Some(BlockKind::Cell { table: t, row: r, .. }) if t == table && (r == row || r == 0))));
    } else {
        places.extend(at.checked_sub(1));
    }
    let mut heading = block.and_then(|block| block.heading);
    while let Some(up) = heading {
        places.push(up);
        heading = blocks.list.get(up).and_then(|block| block.heading);
    }
    places
        .into_iter()
        .filter_map(|place| mentions.get(place))
        .flat_map(|mentions| mentions.list.iter().rev())
        .flat_map(|mention| mention.candidates.iter().copied())
        .collect()
}

/// "the buccal branch of the mandibular nerve": keeps of a nerve only what comes from the nerve that is named behind it.
fn of_named_nerve(mention: &mut Mention, behind: Option<&Mention>, vocabulary: &Vocabulary) -> bool {
    let Some(behind) = behind.filter(|behind| behind.candidates.iter().all(|id| vocabulary.is_neural(*id))) else {
        return true;
    };
    if !mention.candidates.iter().all(|id| vocabulary.is_neural(*id)) {
        return true;
    }
    mention.candidates.retain(|id| behind.candidates.iter().any(|other| vocabulary.is_or_above(*other, *id)));
    !mention.candidates.is_empty()
}

/// Keeps of a part's short name only the part of a whole that is named near by. False if nothing is left.
fn of_known_whole(
    mention: &mut Mention,
    text: &str,
    behind: Option<&Mention>,
    before: &[Mention],
    around: &LazyCell<Vec<EntryId>, impl FnOnce() -> Vec<EntryId>>,
    vocabulary: &Vocabulary,
) -> bool {
    if !may_be_of_a_part(mention, vocabulary) {
        return true;
    }
    let written = words(mention.span.of(text));
    let is_short = |id: &EntryId| {
        let entry = vocabulary.entry(*id);
        entry.part_of.is_some()
            && entry.short.as_ref().is_some_and(|short| same(short, &written))
            && !entry
                .names
                .iter()
                .any(|name| name.standing != fascicle_model::Standing::Short && same(&name.text, &written))
    };
    let (short, full): (Vec<EntryId>, Vec<EntryId>) = mention.candidates.iter().partition(|id| is_short(id));
    let is_sole = mention.candidates.len() == 1 && behind.is_none();
    let is_place = short.iter().all(|id| vocabulary.kind(*id) == Kind::Landmark);
    // Of several words ("greater tubercle"), a name that nothing else has needs no whole beside it.
    if short.is_empty() || (is_sole && (!is_place || written.len() > 1)) {
        return true;
    }
    let belongs = |part: &EntryId, whole: EntryId| {
        let up = |id: &EntryId| vocabulary.entry(*id).part_of;
        // No way up is longer than there are entries, were it a circle, which the checks of the vocabulary forbid.
        std::iter::successors(up(part), up).take(vocabulary.entries().len()).any(|id| id == whole)
    };
    let pick = |wholes: &mut dyn Iterator<Item = EntryId>| -> Vec<EntryId> {
        for whole in wholes {
            let found: Vec<EntryId> = short.iter().copied().filter(|part| belongs(part, whole)).collect();
            if !found.is_empty() {
                return found;
            }
        }
        Vec::new()
    };
    let found = match behind {
        Some(behind) => pick(&mut behind.candidates.iter().copied()),
        None => pick(
            &mut before
                .iter()
                .rev()
                .flat_map(|mention| mention.candidates.iter().copied())
                .chain(std::iter::once(around).flat_map(|around| around.iter().copied())),
        ),
    };
    let found = if found.is_empty() && is_place && behind.is_none() {
        on_their_bones(&short, before.iter().flat_map(|mention| &mention.candidates).chain(around.iter()), vocabulary)
    } else {
        found
    };
    mention.candidates = if found.is_empty() { full } else { found };
    !mention.candidates.is_empty()
}

/// Of places with a short name those on a bone to which a muscle that is named near by is attached.
fn on_their_bones<'e>(
    short: &[EntryId],
    near: impl Iterator<Item = &'e EntryId>,
    vocabulary: &Vocabulary,
) -> Vec<EntryId> {
    for muscle in near.filter(|id| vocabulary.kind(**id) == Kind::Muscle) {
        let family = std::iter::once(*muscle).chain(vocabulary.all_parts(*muscle));
        let bones: Vec<EntryId> = family
            .flat_map(|id| &vocabulary.entry(id).facts)
            .filter_map(|fact| match fact.relation {
                Relation::Origin { from } => Some(from),
                Relation::Insertion { on } => Some(on),
                _ => None,
            })
            .flat_map(|place| std::iter::once(place).chain(vocabulary.wholes(place)))
            .collect();
        let found: Vec<EntryId> = short
            .iter()
            .copied()
            .filter(|place| vocabulary.wholes(*place).iter().any(|whole| bones.contains(whole)))
            .collect();
        if !found.is_empty() {
            return found;
        }
    }
    Vec::new()
}

fn words(text: &str) -> Vec<String> {
    tokens(text)
        .iter()
        .filter(|token| token.is_word)
        .map(|token| fold(token.span.of(text)))
        .filter(|word| word != "the")
        .collect()
}

/// Whether a text has these words, singular or plural.
fn same(text: &str, written: &[String]) -> bool {
    if !text.is_ascii() || text.contains('\'') {
        let words = words(text);
        let bare = |word: &String| word.trim_end_matches('s').len();
        return words.len() == written.len()
            && words.iter().zip(written).all(|(a, b)| a.get(..bare(a)) == b.get(..bare(b)));
    }
    // Nearly all names are of plain letters, whose words can be compared as they stand.
    let words = text.split(|c: char| !c.is_ascii_alphanumeric());
    let mut words = words.filter(|word| !word.is_empty() && !word.eq_ignore_ascii_case("the"));
    written.iter().all(|other| {
        words
            .next()
            .is_some_and(|word| word.trim_end_matches(['s', 'S']).eq_ignore_ascii_case(other.trim_end_matches('s')))
    }) && words.next().is_none()
}

/// A part of the body within which names are not shared.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Quarter {
    Head,
    Trunk,
    Upper,
    Lower,
}

const fn quarter(region: Region) -> Option<Quarter> {
    Some(match region {
        Region::Head | Region::Neck => Quarter::Head,
        Region::Back | Region::Thorax | Region::Abdomen | Region::Pelvis => Quarter::Trunk,
        Region::Shoulder | Region::Arm | Region::Forearm | Region::Hand => Quarter::Upper,
        Region::Hip | Region::Thigh | Region::Leg | Region::Foot => Quarter::Lower,
        Region::Body => return None,
    })
}

/// How often unambiguous names speak of each quarter, in each section and in the whole.
struct Votes {
    sections: FxHashMap<Option<BlockIx>, [usize; 4]>,
    whole: [usize; 4],
}

impl Votes {
    fn count(blocks: &Blocks, mentions: &[Mentions], vocabulary: &Vocabulary) -> Self {
        let mut votes = Self { sections: FxHashMap::default(), whole: [0; 4] };
        for (at, (block, mentions)) in blocks.list.iter().zip(mentions).enumerate() {
            let section =
                if matches!(block.kind, BlockKind::Heading(_) | BlockKind::Title) { Some(at) } else { block.heading };
            for mention in &mentions.list {
                let mut quarters = mention.candidates.iter().map(|id| quarter(vocabulary.entry(*id).region));
                let Some(Some(first)) = quarters.next() else { continue };
                if !quarters.all(|other| other == Some(first)) {
                    continue;
                }
                let weight = if matches!(block.kind, BlockKind::Heading(_) | BlockKind::Title) { 3 } else { 1 };
                votes.whole[first as usize] += weight;
                votes.sections.entry(section).or_default()[first as usize] += weight;
            }
        }
        votes
    }

    /// Keeps the candidates of the quarter that the section, or else the document, speaks of.
    fn decide(&self, mention: &mut Mention, block: &Block, vocabulary: &Vocabulary) {
        let section = self.sections.get(&block.heading).copied();
        for counts in section.into_iter().chain([self.whole]) {
            let of = |id: &EntryId| quarter(vocabulary.entry(*id).region).map_or(0, |quarter| counts[quarter as usize]);
            let most = mention.candidates.iter().map(of).max().unwrap_or(0);
            let rest = mention.candidates.iter().map(of).filter(|count| *count != most).max().unwrap_or(0);
            if most > 2 * rest && most > 0 {
                mention.candidates.retain(|id| of(id) == most);
                if mention.candidates.len() == 1 {
                    return;
                }
            }
        }
    }
}
