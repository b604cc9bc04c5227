//! What a block stands under: the structures that a heading, an outer list item, a term or the title names, and the
//! relations that they tell. They are the scope of statements that name less.

use fascicle_model::{EntryId, Kind};

use super::context::is_unknown_branch;
use super::labels::{self, Head};
use super::sentences::{Scope, Subject};
use super::{ClaimKind, PartRole};
use crate::blocks::{BlockIx, BlockKind, Blocks};
use crate::knowledge::Knowledge;
use crate::lexicon::{self, Label};
use crate::mentions::{Mentions, is_bare_adjective};
use crate::text::{Mark, Span};

/// How many blocks below it a paragraph that is nothing but a name serves as a heading.
const HEAD_LINE_REACH: usize = 40;

/// A heading that is part of a name is no longer, in bytes.
const LONGEST_NAME: usize = 40;

/// A line above a list serves as its heading if it has no more words.
const LONGEST_HEAD_LINE: usize = 6;

/// With a colon at its end, or in bold, it may have more.
const LONGEST_LEAD_IN: usize = 14;

/// The scope of a block.
#[derive(Clone, Debug, Default)]
pub struct Above {
    /// The relation in which it stands, and the words that tell it.
    pub label: Option<(Label, String)>,
    /// The label is told together with of whom it is ("*Branches of the ulnar nerve*").
    pub is_of_names: bool,
    /// Words for the part of the subject that is meant.
    pub parts: Vec<String>,
    /// What it stands right under, if that is nothing but names.
    pub names: Option<Vec<Subject>>,
    /// The same of a paragraph, where a name that stands by itself may be anything.
    pub prose_names: Option<Vec<Subject>>,
    /// What it stands right under is nothing but words for a part of something further up.
    pub is_part: bool,
    /// The movement that it stands right under ("*Medial rotators*").
    pub movement: Option<Head>,
    /// Nouns that the names in it may leave out.
    pub nouns: Vec<String>,
    /// It speaks of vessels, of neighbours, of mistakes: what a bare value means is not known.
    pub silent: bool,
}

/// What one block says of those below it.
#[derive(Clone, Debug, Default)]
struct Level {
    head: Option<Head>,
    nouns: Vec<String>,
    silent: bool,
}

/// The subjects of all blocks.
pub struct Subjects<'a> {
    blocks: &'a Blocks,
    mentions: &'a [Mentions],
    knowledge: &'a Knowledge,
    /// For each block the line that serves as heading of its list.
    head_lines: Vec<Option<BlockIx>>,
    /// For each block below which others stand, what it says of them.
    levels: Vec<Option<Level>>,
}

impl<'a> Subjects<'a> {
    /// Looks at a document's blocks and mentions.
    pub fn new(blocks: &'a Blocks, mentions: &'a [Mentions], knowledge: &'a Knowledge) -> Self {
        let mut subjects = Self { blocks, mentions, knowledge, head_lines: Vec::new(), levels: Vec::new() };
        subjects.find_head_lines();
        let mut is_above = vec![false; blocks.list.len()];
        for (at, block) in blocks.list.iter().enumerate() {
            let above = [block.parent, block.heading, subjects.head_lines.get(at).copied().flatten()];
            for other in above.into_iter().flatten() {
                if let Some(slot) = is_above.get_mut(other) {
                    *slot = true;
                }
            }
        }
        subjects.levels = is_above.iter().enumerate().map(|(at, is)| is.then(|| subjects.level(at))).collect();
        subjects
    }

    /// A short line right above a list serves as its heading.
    fn find_head_lines(&mut self) {
        let mut line: Option<BlockIx> = None;
        for (at, block) in self.blocks.list.iter().enumerate() {
            let mut own = None;
            match block.kind {
                BlockKind::Item(_) | BlockKind::Term | BlockKind::Definition => own = line,
                BlockKind::Paragraph => {
                    let text = block.plain.text.trim_end();
                    let words = self
                        .mentions
                        .get(at)
                        .map_or(usize::MAX, |mentions| mentions.tokens.iter().filter(|token| token.is_word).count());
                    let is_sentence = text.ends_with(['.', '?', '!', ';']) && text.contains(' ');
                    let is_bold = self.mentions.get(at).is_some_and(|mentions| {
                        mentions.tokens.iter().all(|token| block.plain.has_mark(token.span, Mark::Strong))
                    });
                    let longest = if text.ends_with(':') || is_bold { LONGEST_LEAD_IN } else { LONGEST_HEAD_LINE };
                    line = (words <= longest && !is_sentence).then_some(at);
                }
                _ => line = None,
            }
            self.head_lines.push(own);
        }
    }

    fn scope<'s>(&'s self, at: BlockIx, subjects: &'s [Subject]) -> Option<Scope<'s>> {
        let block = self.blocks.list.get(at)?;
        Some(Scope::new(self.knowledge, &block.plain, self.mentions.get(at)?, at).under(subjects))
    }

    fn level(&self, at: BlockIx) -> Level {
        let Some(scope) = self.scope(at, &[]) else { return Level::default() };
        let text = &scope.plain.text;
        let to = scope.mentions.tokens.len();
        let is_heading =
            self.blocks.list.get(at).is_some_and(|block| {
                matches!(block.kind, BlockKind::Heading(_) | BlockKind::Title | BlockKind::Paragraph)
            });
        let head = labels::head(&scope, 0, to, &[]);
        // "Branches of the facial nerve on the face", "Motor, for contrast": what a heading adds changes nothing.
        let head = head.filter(|head| head.whole).or_else(|| {
            let cut = (1..to.min(12)).rev().find(|at| {
                let word = scope.mentions.tokens.get(*at).map_or("", |token| token.span.of(text));
                word == "," || lexicon::begins_addition(word)
            });
            cut.filter(|_| is_heading).and_then(|cut| labels::head(&scope, 0, cut, &[]))
        });
        let mut head = head.filter(|head| head.whole);
        if head.as_ref().is_none_or(|head| head.names.is_empty()) {
            head = self.named_within(&scope, at).or(head);
        }
        // "Who comes from whom": a question tells no relation of what stands below.
        let asks =
            scope.mentions.tokens.first().is_some_and(|first| lexicon::asks_for(&first.span.of(text).to_lowercase()));
        if let Some(head) = head.as_mut().filter(|head| asks && head.names.is_empty()) {
            head.label = None;
        }
        let words = head.as_ref().and_then(|head| head.label.as_ref()).map_or(text.as_str(), |(_, words)| words);
        let nouns = labels::nouns(words);
        // "Lesion": as a header it names a nerve, as a heading it tells what is lost.
        if let Some((label, _)) = head.as_mut().and_then(|head| head.label.as_mut())
            && label.kind.is_none()
            && label.value == PartRole::Nerve
        {
            *label = Label { kind: Some(ClaimKind::Deficit), value: PartRole::Sign, subject: PartRole::Nerve };
        }
        // "Cords", "Arm and plexus": nouns of structures, which tell no relation of what stands below.
        if let Some(head) = &mut head
            && head.label.as_ref().is_some_and(|(label, _)| {
                label.kind == Some(ClaimKind::Branching) && label.value == PartRole::Parent && !nouns.is_empty()
            })
        {
            head.label = None;
        }
        Level { head, nouns, silent: self.is_silent(at) }
    }

    /// "Anterior compartment" below *Leg*: words that are a name together with what stands above them.
    fn named_within(&self, scope: &Scope<'_>, at: BlockIx) -> Option<Head> {
        let text = scope.plain.text.trim();
        if text.len() > LONGEST_NAME || scope.mentions.tokens.len() > LONGEST_HEAD_LINE {
            return None;
        }
        if let Some(branch) = self.branch_within(scope, at) {
            return Some(Head { names: vec![branch], whole: true, ..Head::default() });
        }
        let names = self.levels_above(at).into_iter().find_map(|up| {
            let above = self.blocks.list.get(up)?.plain.text.trim();
            if above.len() > LONGEST_NAME {
                return None;
            }
            let names = self.knowledge.names.lookup(&format!("{text} of {above}"));
            (!names.is_empty()).then_some(names)
        })?;
        let candidates = names.iter().map(|name| name.entry).collect();
        let span = scope.plain.to_source(Span::new(0, scope.plain.text.len()));
        Some(Head { names: vec![Subject { candidates, span }], whole: true, ..Head::default() })
    }

    /// "Superficial" below *Common fibular nerve*: the one branch of the nerve whose name begins so.
    fn branch_within(&self, scope: &Scope<'_>, at: BlockIx) -> Option<Subject> {
        let text = scope.plain.text.trim().trim_end_matches(':').to_lowercase();
        let up = self.blocks.list.get(at)?.parent?;
        let vocabulary = &self.knowledge.vocabulary;
        if text.contains(' ') || lexicon::contrast_of(&text).is_none() {
            return None;
        }
        let owner = self.named_above(up)?;
        let begins = |name: &str| name.strip_prefix(&*text).is_some_and(|rest| rest.starts_with(' '));
        let branches = owner.candidates.iter().flat_map(|nerve| vocabulary.usual_branches(*nerve));
        let candidates: Vec<EntryId> =
            branches.filter(|id| vocabulary.entry(*id).names.iter().any(|name| begins(&name.text))).collect();
        let span = scope.plain.to_source(Span::new(0, scope.plain.text.len()));
        (candidates.len() == 1).then_some(Subject { candidates, span })
    }

    /// The nerve that an outer item names, be it without its noun.
    fn named_above(&self, at: BlockIx) -> Option<Subject> {
        let scope = self.scope(at, &[])?;
        let head = labels::head(&scope, 0, scope.mentions.tokens.len(), &[]).filter(Head::is_only_names)?;
        let [only] = head.names.as_slice() else { return None };
        let is_nerve = |id: &EntryId| self.knowledge.vocabulary.kind(*id) == Kind::Nerve;
        only.candidates.iter().all(is_nerve).then(|| only.clone())
    }

    /// The blocks that a block stands under, nearest first.
    fn levels_above(&self, block: BlockIx) -> Vec<BlockIx> {
        let mut list = Vec::new();
        let Some(own) = self.blocks.list.get(block) else { return list };
        let mut parent = own.parent;
        while let Some(at) = parent {
            list.push(at);
            parent = self.blocks.list.get(at).and_then(|block| block.parent);
        }
        let outermost = list.last().copied().unwrap_or(block);
        list.extend(self.head_lines.get(outermost).copied().flatten());
        let mut heading = own.heading;
        while let Some(at) = heading {
            list.push(at);
            heading = self.blocks.list.get(at).and_then(|block| block.heading);
        }
        list
    }

    /// The scope that a block stands in.
    pub fn above(&self, block: BlockIx) -> Above {
        let mut above = Above::default();
        let is_value = self
            .blocks
            .list
            .get(block)
            .is_some_and(|block| matches!(block.kind, BlockKind::Item(_) | BlockKind::Definition));
        let is_prose = self.blocks.list.get(block).is_some_and(|block| block.kind == BlockKind::Paragraph);
        let mut is_clear = true;
        for (count, at) in self.levels_above(block).into_iter().enumerate() {
            let Some(level) = self.levels.get(at).and_then(Option::as_ref) else { continue };
            // A relation that is told right here holds, whatever the rest of the document speaks of.
            above.silent |= level.silent && above.label.is_none();
            if above.nouns.is_empty() {
                above.nouns.clone_from(&level.nouns);
            }
            match &level.head {
                Some(head) if is_clear => {
                    if above.label.is_none() {
                        above.label.clone_from(&head.label);
                        above.is_of_names = head.label.is_some() && !head.names.is_empty();
                    }
                    if above.parts.is_empty() && head.names.is_empty() {
                        above.parts.clone_from(&head.parts);
                    }
                    if count == 0 && is_value && head.movement.is_some() && head.label.is_none() {
                        above.movement = Some(head.clone());
                    }
                    if count == 0 && is_prose {
                        above.prose_names = head.is_only_names().then(|| head.names.clone());
                    }
                    if count == 0 && is_value {
                        above.names = head.is_only_names().then(|| head.names.clone());
                        above.is_part = head.is_only_parts();
                    }
                }
                // What is not understood stands between this block and the labels further up.
                _ => is_clear = false,
            }
        }
        above
    }

    /// What a block stands under, nearest first.
    pub fn of(&self, block: BlockIx) -> Vec<Subject> {
        let mut list = Vec::new();
        let mut outermost = block;
        let mut parent = self.blocks.list.get(block).and_then(|block| block.parent);
        while let Some(at) = parent {
            list.extend(self.named_first(at));
            outermost = at;
            parent = self.blocks.list.get(at).and_then(|block| block.parent);
        }
        // "Branches of the posterior cord:" right above the list
        let lead_in = self.head_lines.get(outermost).copied().flatten();
        let lead_in = lead_in.and_then(|at| self.levels.get(at)?.as_ref()?.head.as_ref());
        if let Some([only]) = lead_in.map(|head| head.names.as_slice()) {
            list.push(only.clone());
        }
        list.extend(self.head_line(block));
        let mut heading = self.blocks.list.get(block).and_then(|block| block.heading);
        while let Some(at) = heading {
            if self.is_of_something_else(at) {
                break;
            }
            list.extend(self.named_alone(at));
            heading = self.blocks.list.get(at).and_then(|block| block.heading);
        }
        list
    }

    /// The structure with which a list item or a term begins, or which its words describe.
    fn named_first(&self, at: BlockIx) -> Option<Subject> {
        if let Some(head) = self.levels.get(at).and_then(Option::as_ref).and_then(|level| level.head.as_ref())
            && let [only] = head.names.as_slice()
        {
            return Some(only.clone());
        }
        let mention = self.mentions.get(at)?.list.first()?;
        let is_first = mention.tokens.0 <= 2 || self.blocks.list.get(at)?.kind == BlockKind::Term;
        is_first.then(|| self.subject(at, 0)).flatten()
    }

    /// A paragraph above, under the same heading, that is nothing but one name: it serves as a heading.
    fn head_line(&self, block: BlockIx) -> Option<Subject> {
        let own = self.blocks.list.get(block)?;
        for at in (block.saturating_sub(HEAD_LINE_REACH)..block).rev() {
            let other = self.blocks.list.get(at)?;
            if other.heading != own.heading || matches!(other.kind, BlockKind::Heading(_) | BlockKind::Title) {
                return None;
            }
            let mentions = self.mentions.get(at)?;
            let words = mentions.tokens.iter().filter(|token| token.is_word).count();
            if other.kind == BlockKind::Paragraph
                && let [only] = mentions.list.as_slice()
                && only.tokens.1 - only.tokens.0 >= words
            {
                return self.subject(at, 0);
            }
        }
        None
    }

    /// Whether a block or what stands above it speaks of vessels.
    pub fn is_of_vessels(&self, block: BlockIx) -> bool {
        let Some(own) = self.blocks.list.get(block) else { return false };
        let Some(mentions) = self.mentions.get(block) else { return false };
        let text = &own.plain.text;
        mentions.tokens.iter().any(|token| lexicon::is_vessel(token.span.of(text)))
            || own.heading.is_some_and(|heading| self.is_of_something_else(heading))
    }

    /// Whether what a block stands under speaks of lesions.
    pub fn is_of_lesions(&self, block: BlockIx) -> bool {
        self.is_below(block, &|word| lexicon::is_injury(word) || lexicon::is_loss(word))
            || self.levels_above(block).into_iter().any(|at| self.tells_of_failing(at))
    }

    /// "What goes wrong": a heading of lesions, not of errors.
    fn tells_of_failing(&self, at: BlockIx) -> bool {
        self.blocks.list.get(at).is_some_and(|block| lexicon::tells_of_failing(&block.plain.text))
    }

    /// Whether what a block stands under speaks of skin and feeling.
    pub fn is_of_skin(&self, block: BlockIx) -> bool {
        self.is_below(block, &lexicon::is_of_skin)
    }

    /// Whether what a block stands under speaks of something in words outside of names.
    fn is_below(&self, block: BlockIx, is_such: &dyn Fn(&str) -> bool) -> bool {
        self.levels_above(block).into_iter().any(|at| self.has_word(at, is_such))
    }

    /// A heading that speaks of vessels and the like: what stands above it is not the subject of what stands below.
    fn is_of_something_else(&self, at: BlockIx) -> bool {
        self.has_word(at, &|word| lexicon::changes_the_structure(word) || lexicon::is_vessel(word))
    }

    /// A heading below which what a bare value means is not known.
    fn is_silent(&self, at: BlockIx) -> bool {
        let is_of_nerves = |word: &str| matches!(word, "nerve" | "nerves" | "innervation" | "neurovascular");
        (self.has_word(at, &lexicon::is_vessel) && !self.has_word(at, &is_of_nerves))
            || (!self.tells_of_failing(at)
                && self.has_word(at, &|word| {
                    lexicon::is_of_neighbours(word) || lexicon::is_of_others(word) || lexicon::asserts_nothing(word)
                }))
            || (self.has_word(at, &|word| matches!(word, "joint" | "joints"))
                && self.has_word(at, &|word| matches!(word, "nerve" | "nerves")))
    }

    /// Whether one of the words of a block, outside of its names, is such a word.
    fn has_word(&self, at: BlockIx, is_such: &dyn Fn(&str) -> bool) -> bool {
        let (Some(block), Some(mentions)) = (self.blocks.list.get(at), self.mentions.get(at)) else { return false };
        let is_named =
            |place: usize| mentions.list.iter().any(|mention| (mention.tokens.0..mention.tokens.1).contains(&place));
        let mut words = mentions.tokens.iter().enumerate().filter(|(place, token)| token.is_word && !is_named(*place));
        words.any(|(_, token)| is_such(&token.span.of(&block.plain.text).to_lowercase()))
    }

    /// The structure that a heading names, if it names one.
    fn named_alone(&self, at: BlockIx) -> Option<Subject> {
        if let Some(head) = self.levels.get(at).and_then(Option::as_ref).and_then(|level| level.head.as_ref())
            && let [only] = head.names.as_slice()
        {
            return Some(only.clone());
        }
        let mentions = &self.mentions.get(at)?.list;
        let vocabulary = &self.knowledge.vocabulary;
        let neural =
            mentions.iter().filter(|mention| mention.candidates.iter().any(|id| vocabulary.is_neural(*id))).count();
        if mentions.len() == 1 || (neural == 1 && mentions.len() == 2 && mentions.first()?.tokens.0 == 0) {
            return self.subject(at, 0);
        }
        None
    }

    fn subject(&self, at: BlockIx, number: usize) -> Option<Subject> {
        let mentions = self.mentions.get(at)?;
        let mention = mentions.list.get(number)?;
        let text = &self.blocks.list.get(at)?.plain.text;
        // "Tympanic canal": an adjective of some other noun names no nerve.
        let next = mentions.tokens.get(mention.tokens.1).map_or("", |token| token.span.of(text));
        let is_of_noun = is_bare_adjective(mention, &self.knowledge.vocabulary)
            && !lexicon::is_nerve_noun(next)
            && !lexicon::ends_noun(next);
        if is_unknown_branch(mention, mentions, text, &self.knowledge.vocabulary) || (is_of_noun && !next.is_empty()) {
            return None;
        }
        let span = self.blocks.list.get(at)?.plain.to_source(mention.span);
        Some(Subject { candidates: mention.candidates.clone(), span })
    }
}
