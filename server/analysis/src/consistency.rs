//! Names as a course uses them: one name for one structure, one spelling, abbreviations that are introduced.
//!
//! Nothing here is wrong by itself, so all of it is told as hints, each kind with a code of its own that a course can turn
//! off. What a course prefers is what its settings say (`prefer`, `avoid`, `spelling`), else what it writes most; where that
//! is even, what it writes first. The documents come in the course's order.

use std::collections::BTreeMap;

use fascicle_model::{EntryId, Kind, Standing, Vocabulary};
use rustc_hash::{FxHashMap, FxHashSet};

use crate::blocks::Block;
use crate::findings::{Edit, Finding, FindingKind, Fix, Severity};
use crate::knowledge::Knowledge;
use crate::lexicon;
use crate::mentions::{Mention, Mentions};
use crate::names::{NameIndex, WordId};
use crate::reading::Reading;
use crate::settings::{EnglishSpelling, Settings};
use crate::text::{Mark, Span};
use crate::words::fold_into;

/// Two names that are equally good for one structure.
pub const TWO_NAMES: &str = "two-names";
/// A name that the terminology has given up, where the course mostly writes another.
pub const FORMER_NAME: &str = "former-name";
/// A name after a person, where the course mostly writes another.
pub const EPONYM: &str = "eponym";
/// British and American spellings side by side.
pub const MIXED_SPELLING: &str = "mixed-spelling";
/// An abbreviation before the name that it stands for.
pub const ABBREVIATION: &str = "abbreviation-not-introduced";
/// An abbreviation that is introduced for two structures.
pub const TWO_MEANINGS: &str = "abbreviation-with-two-meanings";

/// All codes of this kind.
pub const CODES: [&str; 6] = [TWO_NAMES, FORMER_NAME, EPONYM, MIXED_SPELLING, ABBREVIATION, TWO_MEANINGS];

/// What the documents of a course (or one document alone) have to be told, for each document in order.
pub fn findings(documents: &[&Reading], knowledge: &Knowledge, settings: &Settings) -> Vec<Vec<Finding>> {
    let mut out = vec![Vec::new(); documents.len()];
    names(documents, knowledge, settings, &mut out);
    spellings(documents, settings.spelling, &mut out);
    abbreviations(documents, knowledge, &mut out);
    for list in &mut out {
        list.retain(|finding| !settings.off.iter().any(|code| code == finding.code));
        list.sort_by_key(|finding| (finding.span, finding.code));
    }
    out
}

/// A name as it was written.
struct Use {
    document: usize,
    entry: EntryId,
    /// Which of the entry's names.
    name: usize,
    written: String,
    span: Span,
    /// The source of the name is one run of bytes.
    verbatim: bool,
}

/// Blocks whose words are the author's own, with their mentions.
fn own_blocks(reading: &Reading) -> impl Iterator<Item = (&Block, &Mentions)> {
    reading.blocks.list.iter().zip(&reading.mentions).filter(|(block, _)| !block.quoted)
}

fn hint(code: &'static str, span: Span, message: String) -> Finding {
    Finding {
        code,
        kind: FindingKind::Name,
        severity: Severity::Hint,
        span,
        message,
        reason: Vec::new(),
        related: Vec::new(),
        fixes: Vec::new(),
        candidates: Vec::new(),
    }
}

/// Every use of a full name that means one entry.
fn uses(documents: &[&Reading], knowledge: &Knowledge) -> Vec<Use> {
    let mut keys: FxHashMap<EntryId, Vec<Vec<WordId>>> = FxHashMap::default();
    let mut known: FxHashMap<(EntryId, &str), Option<usize>> = FxHashMap::default();
    let mut list = Vec::new();
    for (document, reading) in documents.iter().enumerate() {
        for (block, mentions) in own_blocks(reading) {
            for mention in &mentions.list {
                let [entry] = mention.candidates[..] else { continue };
                if mention.shared
                    || matches!(mention.standing, Standing::Abbreviation | Standing::Short | Standing::Latin)
                    || block.plain.has_mark(mention.span, Mark::Struck)
                {
                    continue;
                }
                let written = mention.span.of(&block.plain.text);
                let name = *known.entry((entry, written)).or_insert_with(|| {
                    let names = keys.entry(entry).or_insert_with(|| {
                        let names = &knowledge.vocabulary.entry(entry).names;
                        names.iter().map(|name| key_of(&name.text, &knowledge.names)).collect()
                    });
                    let key = key_of(written, &knowledge.names);
                    names.iter().position(|name| *name == key)
                });
                let Some(name) = name else { continue };
                let span = block.plain.to_source(mention.span);
                let verbatim = block.plain.is_verbatim(mention.span) && !mention.plural;
                list.push(Use { document, entry, name, written: written.to_owned(), span, verbatim });
            }
        }
    }
    list
}

/// The words of a name whatever their number.
fn key_of(text: &str, names: &NameIndex) -> Vec<WordId> {
    names.forms_of(text).into_iter().filter_map(|form| form.exact.or(form.singular)).collect()
}

/// Which of its names a structure is to be called by.
struct Kept<'a> {
    /// Which of the entry's names.
    name: usize,
    /// How often it is used, in words.
    how_often: String,
    /// Where it stands.
    place: Option<&'a Use>,
    /// Who has chosen it.
    by: By,
}

/// How a name comes to be kept.
#[derive(Clone, Copy, PartialEq, Eq)]
enum By {
    /// It is used most.
    Use,
    /// The course prefers it to every other name.
    Preference,
    /// The course keeps from names of some kinds.
    Avoidance,
}

/// Whether a course keeps from a name.
fn is_avoided(standing: Standing, settings: &Settings) -> bool {
    settings.avoid.iter().any(|avoided| avoided == code_of(standing))
}

/// The name that the settings choose for an entry whose names are used so.
fn chosen_name(entry: EntryId, uses: &[Use], knowledge: &Knowledge, settings: &Settings) -> Option<(usize, By)> {
    let known = &knowledge.vocabulary.entry(entry).names;
    let preferred = settings.prefer.iter().find_map(|text| {
        let names = knowledge.names.lookup(text);
        names.iter().find(|name| name.entry == entry).map(|name| usize::from(name.name))
    });
    if let Some(name) = preferred {
        return Some((name, By::Preference));
    }
    let avoided = |name: usize| known.get(name).is_some_and(|name| is_avoided(name.standing, settings));
    let is_used = uses.iter().any(|one| avoided(one.name));
    (is_used && !avoided(0)).then_some((0, By::Avoidance))
}

/// The code of a finding about a name of some standing beside another.
const fn code_of(standing: Standing) -> &'static str {
    match standing {
        Standing::Former => FORMER_NAME,
        Standing::Eponym => EPONYM,
        Standing::Spelling => MIXED_SPELLING,
        _ => TWO_NAMES,
    }
}

fn names(documents: &[&Reading], knowledge: &Knowledge, settings: &Settings, out: &mut [Vec<Finding>]) {
    let mut by_entry: BTreeMap<EntryId, Vec<Use>> = BTreeMap::new();
    for one in uses(documents, knowledge) {
        by_entry.entry(one.entry).or_default().push(one);
    }
    for (entry, uses) in by_entry {
        let known = &knowledge.vocabulary.entry(entry).names;
        if !matches!(knowledge.vocabulary.kind(entry), Kind::Nerve | Kind::Plexus | Kind::Muscle | Kind::Joint) {
            continue; // bones and organs have everyday names beside their own
        }
        let Some(kept) = kept_name(entry, &uses, knowledge, settings) else { continue };
        let words = |name: usize| known.get(name).map(|name| key_of(&name.text, &knowledge.names)).unwrap_or_default();
        let kept_words = words(kept.name);
        let is_shorter = |name: usize| {
            let words = words(name);
            words.iter().all(|word| kept_words.contains(word)) || kept_words.iter().all(|word| words.contains(word))
        };
        let is_told = |one: &&Use| {
            let standing = known.get(one.name).map_or(Standing::Exact, |name| name.standing);
            one.name != kept.name
                && !is_shorter(one.name)
                && (kept.by != By::Avoidance || is_avoided(standing, settings))
        };
        let mut told = FxHashSet::default();
        for one in uses.iter().filter(is_told) {
            if !told.insert((one.document, one.name)) {
                continue; // the first of each document is enough
            }
            let Some(name) = known.get(one.name) else { continue };
            let Some(other) = known.get(kept.name) else { continue };
            let message = if kept.by == By::Use {
                format!(
                    "“{}” is also called “{}” here ({}); one name for one structure is easier to learn.",
                    one.written, other.text, kept.how_often
                )
            } else {
                format!("“{}” is called “{}” in this course.", one.written, other.text)
            };
            let mut finding = hint(code_of(name.standing), one.span, message);
            if let Some(preferred) = kept.place.filter(|preferred| preferred.document == one.document) {
                finding.related.push((preferred.span, format!("“{}” stands here.", preferred.written)));
            }
            if one.verbatim {
                let text = with_capital(&other.text, one.written.starts_with(char::is_uppercase));
                let title = format!("Write “{text}”");
                let edits = vec![Edit { span: one.span, text }];
                finding.fixes.push(Fix { title, edits, safe: false });
            }
            if let Some(list) = out.get_mut(one.document) {
                list.push(finding);
            }
        }
    }
}

/// The name that a structure is to be called by: what the settings choose, else what is used most.
fn kept_name<'a>(entry: EntryId, uses: &'a [Use], knowledge: &Knowledge, settings: &Settings) -> Option<Kept<'a>> {
    let place = |name: usize| uses.iter().find(|one| one.name == name);
    if let Some((name, by)) = chosen_name(entry, uses, knowledge, settings) {
        return Some(Kept { name, how_often: String::new(), place: place(name), by });
    }
    let mut count: Vec<(usize, usize)> = Vec::new();
    for one in uses {
        match count.iter_mut().find(|(name, _)| *name == one.name) {
            Some((_, times)) => *times += 1,
            None => count.push((one.name, 1)),
        }
    }
    let most = count.iter().map(|(_, times)| *times).max().unwrap_or(0);
    let (name, times) = count.iter().find(|(_, times)| *times == most).copied()?;
    let how_often = if times == 1 { "once".to_owned() } else { format!("{times} times") };
    Some(Kept { name, how_often, place: place(name), by: By::Use })
}

fn with_capital(text: &str, capital: bool) -> String {
    let mut chars = text.chars();
    match chars.next() {
        Some(first) if capital => first.to_uppercase().chain(chars).collect(),
        _ => text.to_owned(),
    }
}

/// British and American spellings of words that anatomy is written with.
const SPELLINGS: &[(&str, &str)] = &[
    ("fibre", "fiber"),
    ("fibres", "fibers"),
    ("centre", "center"),
    ("centres", "centers"),
    ("colour", "color"),
    ("colours", "colors"),
    ("tumour", "tumor"),
    ("tumours", "tumors"),
    ("grey", "gray"),
    ("litre", "liter"),
    ("metre", "meter"),
    ("oesophagus", "esophagus"),
    ("oesophageal", "esophageal"),
    ("oedema", "edema"),
    ("haemorrhage", "hemorrhage"),
    ("haematoma", "hematoma"),
    ("anaesthesia", "anesthesia"),
    ("anaesthetic", "anesthetic"),
    ("paraesthesia", "paresthesia"),
    ("ischaemia", "ischemia"),
    ("ischaemic", "ischemic"),
    ("anaemia", "anemia"),
    ("orthopaedic", "orthopedic"),
    ("paediatric", "pediatric"),
    ("caecum", "cecum"),
    ("foetus", "fetus"),
    ("foetal", "fetal"),
    ("paralyse", "paralyze"),
    ("paralysed", "paralyzed"),
    ("analyse", "analyze"),
    ("behaviour", "behavior"),
    ("neighbouring", "neighboring"),
    ("labelled", "labeled"),
    ("travelling", "traveling"),
    ("channelled", "channeled"),
    ("mould", "mold"),
    ("sulphur", "sulfur"),
    ("gynaecology", "gynecology"),
    ("defence", "defense"),
    ("practise", "practice"),
];

fn spellings(documents: &[&Reading], chosen: Option<EnglishSpelling>, out: &mut [Vec<Finding>]) {
    let british: FxHashMap<&str, &str> = SPELLINGS.iter().copied().collect();
    let american: FxHashMap<&str, &str> = SPELLINGS.iter().map(|(british, american)| (*american, *british)).collect();
    let mut word = String::new();
    let mut count = (0usize, 0usize);
    let mut first: Vec<(usize, bool, String, Span, &str, bool)> = Vec::new();
    for (document, reading) in documents.iter().enumerate() {
        for (block, mentions) in own_blocks(reading) {
            for token in mentions.tokens.iter().filter(|token| token.is_word && token.span.len() > 3) {
                let written = token.span.of(&block.plain.text);
                fold_into(written, &mut word);
                let (is_british, other) = match (british.get(&*word), american.get(&*word)) {
                    (Some(other), _) => (true, *other),
                    (_, Some(other)) => (false, *other),
                    _ => continue,
                };
                if word == "practice" || word == "meter" || word == "mold" {
                    continue; // words of both
                }
                if is_british {
                    count.0 += 1;
                } else {
                    count.1 += 1;
                }
                if !first.iter().any(|one| one.0 == document && one.1 == is_british) {
                    let span = block.plain.to_source(token.span);
                    let verbatim = block.plain.is_verbatim(token.span);
                    first.push((document, is_british, written.to_owned(), span, other, verbatim));
                }
            }
        }
    }
    if chosen.is_none() && (count.0 == 0 || count.1 == 0) {
        return;
    }
    let mostly_british = chosen.map_or(count.0 >= count.1, |chosen| chosen == EnglishSpelling::British);
    for (document, is_british, written, span, other, verbatim) in first {
        if is_british == mostly_british {
            continue;
        }
        let (this, rest) = if is_british { ("British", "American") } else { ("American", "British") };
        let message = if chosen.is_some() {
            format!("“{written}” is {this} spelling; this course spells “{other}”.")
        } else {
            format!("“{written}” is {this} spelling where the rest is mostly {rest} (“{other}”).")
        };
        let mut finding = hint(MIXED_SPELLING, span, message);
        if verbatim {
            let text = with_capital(other, written.starts_with(char::is_uppercase));
            finding
                .fixes
                .push(Fix { title: format!("Write “{text}”"), edits: vec![Edit { span, text }], safe: false });
        }
        if let Some(list) = out.get_mut(document) {
            list.push(finding);
        }
    }
}

/// Whether a mention stands in brackets of its own: "*flexor digitorum profundus* (FDP)".
fn in_brackets(text: &str, mention: &Mention) -> bool {
    let before = text.get(..mention.span.start).unwrap_or_default().trim_end();
    let behind = text.get(mention.span.end..).unwrap_or_default().trim_start();
    before.ends_with(['(', '[']) && behind.starts_with([')', ']', ',', ';'])
}

fn abbreviations(documents: &[&Reading], knowledge: &Knowledge, out: &mut [Vec<Finding>]) {
    let vocabulary = &knowledge.vocabulary;
    // Abbreviation, folded, to what it was introduced for.
    let mut introduced: FxHashMap<String, EntryId> = FxHashMap::default();
    let mut told: FxHashSet<String> = FxHashSet::default();
    for (document, reading) in documents.iter().enumerate() {
        let Some(out) = out.get_mut(document) else { continue };
        let mut named: FxHashSet<EntryId> = FxHashSet::default();
        let later = named_anywhere(reading);
        for (block, mentions) in own_blocks(reading) {
            let text = &block.plain.text;
            for (place, mention) in mentions.list.iter().enumerate() {
                if mention.standing != Standing::Abbreviation {
                    named.extend(mention.candidates.iter().copied());
                    continue;
                }
                let written = mention.span.of(text);
                if written.contains(' ') || written.contains(|c: char| c.is_ascii_digit()) {
                    continue; // numbers of nerves ("CN IX", "V3") need no introduction
                }
                let abbreviation = written.trim_end_matches('s').to_owned();
                let before = place.checked_sub(1).and_then(|before| mentions.list.get(before));
                let full = before.filter(|full| {
                    let between = text.get(full.span.end..mention.span.start).unwrap_or_default().trim();
                    in_brackets(text, mention) && matches!(between, "(" | "[")
                });
                if let Some([meant]) = full.map(|full| &full.candidates[..]) {
                    match introduced.get(&abbreviation) {
                        Some(other) if other != meant => {
                            let message = format!(
                                "“{written}” already stands for the {}; a second meaning is easily mistaken.",
                                vocabulary.name(*other)
                            );
                            out.push(hint(TWO_MEANINGS, block.plain.to_source(mention.span), message));
                        }
                        _ => {
                            introduced.insert(abbreviation, *meant);
                        }
                    }
                    continue;
                }
                let is_introduced = introduced.contains_key(&abbreviation)
                    || mention.candidates.iter().any(|id| named.contains(id))
                    || name_follows(text, mention, mentions);
                // A course that never writes the name in full takes the abbreviation as known.
                let is_late = mention.candidates.iter().any(|id| later.contains(id));
                if !is_introduced && is_late && told.insert(abbreviation) {
                    out.push(not_introduced(block, mention, vocabulary));
                }
            }
        }
    }
}

/// Entries that a document names in full somewhere.
fn named_anywhere(reading: &Reading) -> FxHashSet<EntryId> {
    let full = own_blocks(reading)
        .flat_map(|(_, mentions)| &mentions.list)
        .filter(|mention| mention.standing != Standing::Abbreviation);
    full.flat_map(|mention| mention.candidates.iter().copied()).collect()
}

/// *FDP (flexor digitorum profundus)*: the name follows at once.
fn name_follows(text: &str, mention: &Mention, mentions: &Mentions) -> bool {
    mentions.list.iter().any(|full| {
        let between = text.get(mention.span.end..full.span.start).unwrap_or("-").trim();
        lexicon::joins_name_and_alias(between)
            && full.span.start > mention.span.start
            && full.candidates.iter().any(|id| mention.candidates.contains(id))
    })
}

fn not_introduced(block: &Block, mention: &Mention, vocabulary: &Vocabulary) -> Finding {
    let written = mention.span.of(&block.plain.text);
    let names: Vec<&str> = mention.candidates.iter().map(|id| vocabulary.name(*id)).collect();
    let message = format!("“{written}” is used before it is introduced ({}).", names.join(" or "));
    let span = block.plain.to_source(mention.span);
    let mut finding = hint(ABBREVIATION, span, message);
    if let [name] = names[..]
        && block.plain.is_verbatim(mention.span)
        && !mention.plural
    {
        let text = format!("{name} ({written})");
        finding.fixes.push(Fix { title: format!("Write “{text}”"), edits: vec![Edit { span, text }], safe: false });
    }
    finding
}
