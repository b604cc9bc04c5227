//! Names as a course uses them: one name for one structure, one spelling, abbreviations that are introduced.
//!
//! Nothing here is wrong by itself, so all of it is told as hints, each kind with a code of its own that a course can turn
//! off. What a course prefers is what its settings say (`prefer`, `avoid`, `spelling`), else what it writes most; where that
//! is even, what it writes first. The documents come in the course's order.
//!
//! What a document calls things is gathered once ([`usage`]) and is little; what the documents of a course are told
//! follows from that alone ([`compare`]), so the others need not be read again when one of them changes.

use std::collections::BTreeMap;
use std::hash::Hash;

use fascicle_model::{EntryId, Kind, Standing, Vocabulary};
use rustc_hash::{FxHashMap, FxHashSet};

use crate::blocks::{Block, Blocks};
use crate::findings::{Edit, Finding, FindingKind, Fix, Severity};
use crate::knowledge::Knowledge;
use crate::lexicon;
use crate::mentions::{Mention, Mentions};
use crate::names::{NameIndex, WordId};
use crate::settings::{EnglishSpelling, Settings};
use crate::text::{Mark, Span};
use crate::words::{fold, fold_into};

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

/// What a document calls things: all that has to be kept of it to compare it with the others of its course.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Usage {
    /// Full names, each once, in the order in which they first stand.
    names: Vec<NameUse>,
    british: Spelled,
    american: Spelled,
    /// Abbreviations introduced for something, in order.
    introduced: Vec<Introduced>,
    /// Abbreviations used before this document introduces them, each with what is told of it.
    early: Vec<(String, Finding)>,
}

/// A word or a name where it stands.
#[derive(Clone, Debug, PartialEq)]
struct Place {
    span: Span,
    written: String,
    /// Its source is one run of bytes, which an edit may change.
    verbatim: bool,
}

/// A name of an entry.
#[derive(Clone, Debug, PartialEq)]
struct NameUse {
    entry: EntryId,
    /// Which of the entry's names.
    name: usize,
    times: usize,
    first: Place,
}

/// How many words are spelled in one of the two ways, and the first of them with its other spelling.
#[derive(Clone, Debug, Default, PartialEq)]
struct Spelled {
    times: usize,
    first: Option<(Place, &'static str)>,
}

/// An abbreviation in brackets behind what it stands for.
#[derive(Clone, Debug, PartialEq)]
struct Introduced {
    abbreviation: String,
    meant: EntryId,
    place: Place,
}

impl Usage {
    /// What the others of the course may be told because of this document. It stays the same while only places change.
    pub fn for_others(&self) -> impl Hash + use<> {
        let names: Vec<(EntryId, usize, usize)> =
            self.names.iter().map(|one| (one.entry, one.name, one.times)).collect();
        let introduced: Vec<(String, EntryId)> =
            self.introduced.iter().map(|one| (one.abbreviation.clone(), one.meant)).collect();
        let early: Vec<String> = self.early.iter().map(|(abbreviation, _)| abbreviation.clone()).collect();
        (names, self.british.times, self.american.times, introduced, early)
    }
}

/// What a document calls things.
pub fn usage(blocks: &Blocks, mentions: &[Mentions], knowledge: &Knowledge) -> Usage {
    let own = own_blocks(blocks, mentions);
    let mut usage = Usage { names: names_of(&own, knowledge), ..Usage::default() };
    gather_spellings(&own, &mut usage);
    gather_abbreviations(&own, &knowledge.vocabulary, &mut usage);
    usage
}

/// What the documents of a course (or one document alone) have to be told, for each document in order.
pub fn compare(documents: &[&Usage], knowledge: &Knowledge, settings: &Settings) -> Vec<Vec<Finding>> {
    let mut out = vec![Vec::new(); documents.len()];
    names(documents, knowledge, settings, &mut out);
    spellings(documents, settings.spelling, &mut out);
    abbreviations(documents, &knowledge.vocabulary, &mut out);
    for list in &mut out {
        list.retain(|finding| !settings.off.iter().any(|code| code == finding.code));
        list.sort_by_key(|finding| (finding.span, finding.code));
    }
    out
}

/// A name as a document uses it.
struct Use<'a> {
    document: usize,
    of: &'a NameUse,
}

/// Blocks whose words are the author's own, with their mentions.
fn own_blocks<'a>(blocks: &'a Blocks, mentions: &'a [Mentions]) -> Vec<(&'a Block, &'a Mentions)> {
    blocks.list.iter().zip(mentions).filter(|(block, _)| !block.quoted).collect()
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

/// The full names that mean one entry. Bones and organs have everyday names beside their own, so they are left out.
fn names_of(own: &[(&Block, &Mentions)], knowledge: &Knowledge) -> Vec<NameUse> {
    let vocabulary = &knowledge.vocabulary;
    let mut keys: FxHashMap<EntryId, Vec<Vec<WordId>>> = FxHashMap::default();
    let mut known: FxHashMap<(EntryId, &str), Option<usize>> = FxHashMap::default();
    let mut places: FxHashMap<(EntryId, usize), usize> = FxHashMap::default();
    let mut list: Vec<NameUse> = Vec::new();
    for (block, mentions) in own {
        for mention in &mentions.list {
            let [entry] = mention.candidates[..] else { continue };
            if mention.shared
                || matches!(mention.standing, Standing::Abbreviation | Standing::Short | Standing::Latin)
                || !matches!(vocabulary.kind(entry), Kind::Nerve | Kind::Plexus | Kind::Muscle | Kind::Joint)
                || block.plain.has_mark(mention.span, Mark::Struck)
            {
                continue;
            }
            let written = mention.span.of(&block.plain.text);
            let name = *known.entry((entry, written)).or_insert_with(|| {
                let names = keys.entry(entry).or_insert_with(|| {
                    let names = &vocabulary.entry(entry).names;
                    names.iter().map(|name| key_of(&name.text, &knowledge.names)).collect()
                });
                let key = key_of(written, &knowledge.names);
                names.iter().position(|name| *name == key)
            });
            let Some(name) = name else { continue };
            let at = *places.entry((entry, name)).or_insert_with(|| {
                let verbatim = block.plain.is_verbatim(mention.span) && !mention.plural;
                let first = Place { span: block.plain.to_source(mention.span), written: written.to_owned(), verbatim };
                list.push(NameUse { entry, name, times: 0, first });
                list.len() - 1
            });
            if let Some(one) = list.get_mut(at) {
                one.times += 1;
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
    place: Option<&'a Use<'a>>,
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
pub(crate) fn is_avoided(standing: Standing, settings: &Settings) -> bool {
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
    let is_used = uses.iter().any(|one| avoided(one.of.name));
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

fn names(documents: &[&Usage], knowledge: &Knowledge, settings: &Settings, out: &mut [Vec<Finding>]) {
    let mut by_entry: BTreeMap<EntryId, Vec<Use>> = BTreeMap::new();
    for (document, usage) in documents.iter().enumerate() {
        for of in &usage.names {
            by_entry.entry(of.entry).or_default().push(Use { document, of });
        }
    }
    for (entry, uses) in by_entry {
        let known = &knowledge.vocabulary.entry(entry).names;
        let Some(kept) = kept_name(entry, &uses, knowledge, settings) else { continue };
        let words = |name: usize| known.get(name).map(|name| key_of(&name.text, &knowledge.names)).unwrap_or_default();
        let kept_words = words(kept.name);
        let is_shorter = |name: usize| {
            let words = words(name);
            words.iter().all(|word| kept_words.contains(word)) || kept_words.iter().all(|word| words.contains(word))
        };
        let is_told = |one: &&Use| {
            let standing = known.get(one.of.name).map_or(Standing::Exact, |name| name.standing);
            one.of.name != kept.name
                && !is_shorter(one.of.name)
                && (kept.by != By::Avoidance || is_avoided(standing, settings))
        };
        for one in uses.iter().filter(is_told) {
            let Some(name) = known.get(one.of.name) else { continue };
            let Some(other) = known.get(kept.name) else { continue };
            let Place { span, written, verbatim } = &one.of.first;
            let message = if kept.by == By::Use {
                format!(
                    "“{written}” is also called “{}” here ({}); one name for one structure is easier to learn.",
                    other.text, kept.how_often
                )
            } else {
                format!("“{written}” is called “{}” in this course.", other.text)
            };
            let mut finding = hint(code_of(name.standing), *span, message);
            if let Some(preferred) = kept.place.filter(|preferred| preferred.document == one.document) {
                let Place { span, written, .. } = &preferred.of.first;
                finding.related.push((*span, format!("“{written}” stands here.")));
            }
            if *verbatim {
                finding.fixes.push(write(&other.text, &one.of.first));
            }
            if let Some(list) = out.get_mut(one.document) {
                list.push(finding);
            }
        }
    }
}

/// The fix that puts another word or name in a place, with its capital.
fn write(other: &str, place: &Place) -> Fix {
    let text = with_capital(other, place.written.starts_with(char::is_uppercase));
    Fix { title: format!("Write “{text}”"), edits: vec![Edit { span: place.span, text }], safe: false }
}

/// The name that a structure is to be called by: what the settings choose, else what is used most.
fn kept_name<'a>(entry: EntryId, uses: &'a [Use<'a>], knowledge: &Knowledge, settings: &Settings) -> Option<Kept<'a>> {
    let place = |name: usize| uses.iter().find(|one| one.of.name == name);
    if let Some((name, by)) = chosen_name(entry, uses, knowledge, settings) {
        return Some(Kept { name, how_often: String::new(), place: place(name), by });
    }
    let mut count: Vec<(usize, usize)> = Vec::new();
    for one in uses {
        match count.iter_mut().find(|(name, _)| *name == one.of.name) {
            Some((_, times)) => *times += one.of.times,
            None => count.push((one.of.name, one.of.times)),
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

/// A text in the spelling that a course has chosen.
pub(crate) fn respelled(text: &str, spelling: EnglishSpelling) -> String {
    let respell = |word: &str| {
        let folded = fold(word);
        let mut pairs = SPELLINGS.iter().map(|(british, american)| match spelling {
            EnglishSpelling::British => (*american, *british),
            EnglishSpelling::American => (*british, *american),
        });
        let other = pairs.find(|(from, _)| *from == folded).map(|(_, to)| to);
        other.map_or_else(|| word.to_owned(), |other| with_capital(other, word.starts_with(char::is_uppercase)))
    };
    text.split(' ').map(respell).collect::<Vec<_>>().join(" ")
}

/// Words that are spelled in the British or in the American way.
fn gather_spellings(own: &[(&Block, &Mentions)], usage: &mut Usage) {
    let british: FxHashMap<&str, &'static str> = SPELLINGS.iter().copied().collect();
    let american: FxHashMap<&str, &'static str> =
        SPELLINGS.iter().map(|(british, american)| (*american, *british)).collect();
    let mut word = String::new();
    for (block, mentions) in own {
        for token in mentions.tokens.iter().filter(|token| token.is_word && token.span.len() > 3) {
            let written = token.span.of(&block.plain.text);
            fold_into(written, &mut word);
            if word == "practice" || word == "meter" || word == "mold" {
                continue; // words of both
            }
            let (spelled, other) = match (british.get(&*word), american.get(&*word)) {
                (Some(other), _) => (&mut usage.british, *other),
                (_, Some(other)) => (&mut usage.american, *other),
                _ => continue,
            };
            spelled.times += 1;
            spelled.first.get_or_insert_with(|| {
                let verbatim = block.plain.is_verbatim(token.span);
                (Place { span: block.plain.to_source(token.span), written: written.to_owned(), verbatim }, other)
            });
        }
    }
}

fn spellings(documents: &[&Usage], chosen: Option<EnglishSpelling>, out: &mut [Vec<Finding>]) {
    let count = |of: fn(&Usage) -> &Spelled| documents.iter().map(|usage| of(usage).times).sum::<usize>();
    let (british, american) = (count(|usage| &usage.british), count(|usage| &usage.american));
    if chosen.is_none() && (british == 0 || american == 0) {
        return;
    }
    let mostly_british = chosen.map_or(british >= american, |chosen| chosen == EnglishSpelling::British);
    for (usage, list) in documents.iter().zip(out) {
        let (spelled, this, rest) = if mostly_british {
            (&usage.american, "American", "British")
        } else {
            (&usage.british, "British", "American")
        };
        let Some((place, other)) = &spelled.first else { continue };
        let written = &place.written;
        let message = if chosen.is_some() {
            format!("“{written}” is {this} spelling; this course spells “{other}”.")
        } else {
            format!("“{written}” is {this} spelling where the rest is mostly {rest} (“{other}”).")
        };
        let mut finding = hint(MIXED_SPELLING, place.span, message);
        if place.verbatim {
            finding.fixes.push(write(other, place));
        }
        list.push(finding);
    }
}

/// Whether a mention stands in brackets of its own: "*flexor digitorum profundus* (FDP)".
fn in_brackets(text: &str, mention: &Mention) -> bool {
    let before = text.get(..mention.span.start).unwrap_or_default().trim_end();
    let behind = text.get(mention.span.end..).unwrap_or_default().trim_start();
    before.ends_with(['(', '[']) && behind.starts_with([')', ']', ',', ';'])
}

/// Abbreviations that are introduced, and those that are used before they are.
fn gather_abbreviations(own: &[(&Block, &Mentions)], vocabulary: &Vocabulary, usage: &mut Usage) {
    let mut named: FxHashSet<EntryId> = FxHashSet::default();
    let later = named_anywhere(own);
    for (block, mentions) in own {
        let text = &block.plain.text;
        for (at, mention) in mentions.list.iter().enumerate() {
            if mention.standing != Standing::Abbreviation {
                named.extend(mention.candidates.iter().copied());
                continue;
            }
            let written = mention.span.of(text);
            if written.contains(' ') || written.contains(|c: char| c.is_ascii_digit()) {
                continue; // numbers of nerves ("CN IX", "V3") need no introduction
            }
            let abbreviation = written.trim_end_matches('s').to_owned();
            let before = at.checked_sub(1).and_then(|before| mentions.list.get(before));
            let full = before.filter(|full| {
                let between = text.get(full.span.end..mention.span.start).unwrap_or_default().trim();
                in_brackets(text, mention) && matches!(between, "(" | "[")
            });
            if let Some([meant]) = full.map(|full| &full.candidates[..]) {
                let verbatim = block.plain.is_verbatim(mention.span);
                let place = Place { span: block.plain.to_source(mention.span), written: written.to_owned(), verbatim };
                usage.introduced.push(Introduced { abbreviation, meant: *meant, place });
                continue;
            }
            let is_introduced = usage.introduced.iter().any(|one| one.abbreviation == abbreviation)
                || mention.candidates.iter().any(|id| named.contains(id))
                || name_follows(text, mention, mentions);
            // A course that never writes the name in full takes the abbreviation as known.
            let is_late = mention.candidates.iter().any(|id| later.contains(id));
            if !is_introduced && is_late && !usage.early.iter().any(|(other, _)| *other == abbreviation) {
                usage.early.push((abbreviation, not_introduced(block, mention, vocabulary)));
            }
        }
    }
}

fn abbreviations(documents: &[&Usage], vocabulary: &Vocabulary, out: &mut [Vec<Finding>]) {
    // Abbreviation to what it was introduced for.
    let mut introduced: FxHashMap<&str, EntryId> = FxHashMap::default();
    let mut told: FxHashSet<&str> = FxHashSet::default();
    for (usage, out) in documents.iter().zip(out) {
        for (abbreviation, finding) in &usage.early {
            if !introduced.contains_key(&**abbreviation) && told.insert(abbreviation) {
                out.push(finding.clone());
            }
        }
        for Introduced { abbreviation, meant, place } in &usage.introduced {
            match introduced.get(&**abbreviation) {
                Some(other) if other != meant => {
                    let message = format!(
                        "“{}” already stands for the {}; a second meaning is easily mistaken.",
                        place.written,
                        vocabulary.name(*other)
                    );
                    out.push(hint(TWO_MEANINGS, place.span, message));
                }
                _ => {
                    introduced.insert(abbreviation, *meant);
                }
            }
        }
    }
}

/// Entries that a document names in full somewhere.
fn named_anywhere(own: &[(&Block, &Mentions)]) -> FxHashSet<EntryId> {
    let full = own
        .iter()
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
