//! Completion as it is typed: where a text names a structure, four letters of the name are typed in its stead, and what
//! completion offers first is compared with what the author wrote.
//!
//! The names are those of the clean demo course and of the tuned part of the annotated corpus, prose, lists, tables and
//! headings alike, but for names in statements that are marked as false or silent: there the name is not what a right text
//! would have. The stems and options of exam items assert nothing either; they are counted apart. The documents are parted in two halves by a seed, and of each half a sample is drawn by the same seed. The
//! weights of completion were fitted to the one half; the other is only scored.
//!
//! Two ways of typing are measured. *From the start* are the first four letters; where two names of a section begin with
//! the same word, no program can tell from these which is meant. *By words* are the first two letters of the first word and
//! of the last, which a fuzzy search takes as well; an author who knows that the first word says little types so.

use fascicle_analysis::blocks::BlockKind;
use fascicle_analysis::claims;
use fascicle_analysis::features::completion::evidence::Evidence;
use fascicle_analysis::features::completion::{self, Draft, Item, Names};
use fascicle_analysis::features::places;
use fascicle_analysis::reading::{self, Memo};
use fascicle_analysis::{Form, Knowledge, Reading, Settings, Span};
use fascicle_vocab::{EntryId, Kind, Standing};

use crate::corpus::{self, Mark, Truth};
use crate::course;

/// How four letters are typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// The first four letters of the name.
    FromTheStart,
    /// The first two letters of its first and of its last word; of a single word its first four.
    ByWords,
    /// Beginnings of all its words: of two words two letters each, of three two, one and one, of more one of each of the
    /// first four; of a single word its first four.
    ByEachWord,
}

impl Way {
    /// The letters that are typed of a name.
    pub fn letters(self, name: &str) -> String {
        // Nobody types the "of" of a name.
        let is_small = |word: &str| matches!(word, "" | "of" | "to" | "the" | "and" | "in");
        let words: Vec<&str> = name.split([' ', '-']).filter(|word| !is_small(word)).collect();
        match (self, words.as_slice()) {
            (Self::ByWords, [first, .., last]) | (Self::ByEachWord, [first, last]) => {
                first.chars().take(2).chain(last.chars().take(2)).collect()
            }
            (Self::ByEachWord, [first, second, third]) => {
                first.chars().take(2).chain(second.chars().take(1)).chain(third.chars().take(1)).collect()
            }
            (Self::ByEachWord, [_, _, _, _, ..]) => {
                words.iter().take(4).filter_map(|word| word.chars().next()).collect()
            }
            _ => name.chars().take(4).collect(),
        }
    }
}

/// How much of the text is there while a name is typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum State {
    /// Nothing stands behind the place yet, as in a text that is being written.
    Written,
    /// The rest of the text is there, as in one that is being changed.
    Changed,
}

/// In what form the text about a name is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shape {
    /// A paragraph.
    Prose,
    /// An item of a list, or what a definition list says.
    List,
    /// A cell.
    Table,
    /// A heading.
    Heading,
    /// An exam item outside of what is marked as true: its stem asks, and most of its options are wrong on purpose.
    Exam,
}

impl Shape {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::Prose, Self::List, Self::Table, Self::Heading, Self::Exam];

    const fn of(kind: BlockKind) -> Self {
        match kind {
            BlockKind::Title | BlockKind::Heading(_) => Self::Heading,
            BlockKind::Item(_) | BlockKind::Term | BlockKind::Definition => Self::List,
            BlockKind::Cell { .. } => Self::Table,
            BlockKind::Paragraph | BlockKind::Caption => Self::Prose,
        }
    }
}

/// A text with the places in it where names are typed.
#[derive(Clone, Debug)]
pub struct Document {
    /// Its path.
    pub name: String,
    /// The text.
    pub text: String,
    /// The names in it, in order.
    pub places: Vec<Place>,
}

/// A name in a text.
#[derive(Clone, Copy, Debug)]
pub struct Place {
    /// Where it stands.
    pub span: Span,
    /// What it means.
    pub entry: EntryId,
    /// In what form it stands.
    pub shape: Shape,
    /// The name is that of a nerve or muscle, and stands in no exam item.
    pub main: bool,
    /// Other names of the same section begin with the same letters.
    pub twins: bool,
}

/// All documents, with their names.
///
/// # Errors
/// A file that cannot be read.
pub fn documents(knowledge: &Knowledge) -> Result<Vec<Document>, String> {
    let root = course::clean_folder();
    let mut list = Vec::new();
    for path in crate::markdown_files(&root).map_err(|error| error.to_string())? {
        let name = path.strip_prefix(&root).unwrap_or(&path).to_string_lossy().replace('\\', "/");
        list.push(document(format!("course/{name}"), course::read(&path)?, &[], knowledge));
    }
    for marked in corpus::documents("tuned")? {
        list.push(document(marked.name, marked.text, &marked.marks, knowledge));
    }
    Ok(list)
}

fn read(text: &str, knowledge: &Knowledge, memo: &mut Memo) -> Reading {
    reading::read_again(text, Form::Markdown, knowledge, &Settings::default(), memo)
}

fn document(name: String, text: String, marks: &[Mark], knowledge: &Knowledge) -> Document {
    let reading = read(&text, knowledge, &mut Memo::default());
    let (_, exam) = claims::of_exam(&reading.blocks, knowledge);
    let mut list: Vec<Place> = Vec::new();
    let mut sections = Vec::new();
    for place in places::all(&reading) {
        let Some(block) = reading.blocks.list.get(place.block) else { continue };
        let [entry] = *place.entries else { continue };
        let is_plain = place.editable && !place.shared && !place.plural && place.standing != Standing::Abbreviation;
        let kind = knowledge.vocabulary.kind(entry);
        let is_wanted = is_plain
            && place.span.len() >= 6
            && !block.quoted
            && !matches!(kind, Kind::Movement | Kind::Root)
            && marks.iter().all(|mark| mark.truth == Truth::True || !mark.span.overlaps(place.span));
        if is_wanted {
            sections.push(block.heading);
            let is_true = marks.iter().any(|mark| mark.span.overlaps(place.span));
            let is_exam = exam.contains(&place.block) && !is_true;
            let shape = if is_exam { Shape::Exam } else { Shape::of(block.kind) };
            let main = matches!(kind, Kind::Nerve | Kind::Muscle) && !is_exam;
            list.push(Place { span: place.span, entry, shape, main, twins: false });
        }
    }
    let begins = |place: &Place| Way::FromTheStart.letters(place.span.of(&text)).to_lowercase();
    let twins: Vec<bool> = (0..list.len())
        .map(|at| {
            list.iter().zip(&sections).any(|(other, section)| {
                sections.get(at) == Some(section)
                    && list.get(at).is_some_and(|own| other.entry != own.entry && begins(other) == begins(own))
            })
        })
        .collect();
    for (place, twins) in list.iter_mut().zip(twins) {
        place.twins = twins;
    }
    Document { name, text, places: list }
}

/// The two halves of some documents, each with so many of its places as are asked for, drawn by a seed.
pub fn halves(documents: Vec<Document>, seed: u64, most: usize) -> [Vec<Document>; 2] {
    let mut dice = Dice(seed);
    let mut halves = [Vec::new(), Vec::new()];
    for document in documents {
        let [tuned, scored] = &mut halves;
        if dice.roll() & 1 == 0 { tuned.push(document) } else { scored.push(document) }
    }
    for half in &mut halves {
        let mut all: Vec<(u64, usize, usize)> = Vec::new();
        for (at, document) in half.iter().enumerate() {
            all.extend((0..document.places.len()).map(|place| (dice.roll(), at, place)));
        }
        all.sort_unstable();
        all.truncate(most);
        for (at, document) in half.iter_mut().enumerate() {
            let mut place = 0;
            document.places.retain(|_| {
                place += 1;
                all.iter().any(|(_, of, drawn)| (*of, *drawn) == (at, place - 1))
            });
        }
    }
    halves
}

/// Numbers that look drawn by chance and are the same for the same seed (xorshift).
struct Dice(u64);

impl Dice {
    const fn roll(&mut self) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0.wrapping_mul(0x2545_F491_4F6C_DD1D) >> 16
    }
}

/// A name that was typed.
#[derive(Clone, Debug)]
pub struct Typed {
    /// The document.
    pub document: String,
    /// Where it stands.
    pub place: Place,
    /// The text before it.
    pub before: String,
    /// The name as it stands in the text.
    pub name: String,
    /// What was typed of it.
    pub letters: String,
    /// The place of the right structure among what was offered, from 0.
    pub rank: Option<usize>,
    /// What was offered first.
    pub first: Option<String>,
    /// The first is the author's own wording, to the letter.
    pub same_words: bool,
    /// What spoke for each structure that was found, the right one or not; where it was asked for.
    pub evidence: Vec<(bool, Evidence)>,
}

/// Types the names of a document.
pub fn typed(
    document: &Document,
    way: Way,
    state: State,
    evidence: bool,
    names: &Names,
    knowledge: &Knowledge,
) -> Vec<Typed> {
    let text = &*document.text;
    let mut list = Vec::new();
    let settings = Settings::default();
    let mut memo = Memo::default();
    for place in &document.places {
        let name = place.span.of(text);
        let letters = way.letters(name);
        let before = text.get(..place.span.start).unwrap_or_default();
        let tail = if state == State::Written { "\n" } else { text.get(place.span.end..).unwrap_or_default() };
        let partial = format!("{before}{letters}{tail}");
        let at = place.span.start + letters.len();
        let reading = read(&partial, knowledge, &mut memo);
        let draft =
            Draft { text: &partial, form: Form::Markdown, reading: &reading, knowledge, names, settings: &settings };
        let found = completion::complete(&draft, at);
        let is_it = |item: &Item| item.entry == Some(place.entry);
        let first = found.items.first().map(|item| item.text.clone());
        let all = if evidence { completion::evidence_at(&draft, at) } else { Vec::new() };
        let from = before.char_indices().rev().nth(60).map_or(0, |(at, _)| at);
        list.push(Typed {
            document: document.name.clone(),
            place: *place,
            before: before.get(from..).unwrap_or_default().replace('\n', "¶"),
            same_words: first.as_deref() == Some(name),
            name: name.to_owned(),
            rank: found.items.iter().position(is_it),
            first,
            letters,
            evidence: all.into_iter().map(|(id, evidence)| (id == place.entry, evidence)).collect(),
        });
    }
    list
}

/// How many of some that were typed came first, among the first three, and among the first five, of how many.
pub fn counts<'a>(list: impl Iterator<Item = &'a Typed>) -> [usize; 4] {
    let mut counts = [0; 4];
    for typed in list {
        for (slot, most) in counts.iter_mut().zip([1, 3, 5, usize::MAX]) {
            *slot += usize::from(most == usize::MAX || typed.rank.is_some_and(|rank| rank < most));
        }
    }
    counts
}
