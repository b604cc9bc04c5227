//! Heads: what stands before a colon, dash or arrow, or above a value as heading, term or outer item, and what it says of
//! what the value is.
//!
//! A head may name the subject (*Deltoid:*), the relation (*Nerve:*), both in either order (*Nerve of deltoid:*,
//! *Deltoid, nerve:*, *masseter inserts on:*), a part of the subject (*medial half:*), a movement (*Flexors:*) or segments
//! (*C5, C6 =*). A head is **whole** when each of its words is understood; only then may a value behind it be read by what
//! its names are.

use std::borrow::Cow;

use fascicle_model::{EntryId, Kind, Vocabulary};

use super::stretches::begins_line;
use crate::claims::phrases::MovementForm;
use crate::claims::sentences::{Scope, Side, Subject};
use crate::claims::{ClaimKind, PartRole, What, segments};
use crate::lexicon::{self, Form, Label, ORDINALS};
use crate::mentions::{Mention, is_bare_adjective};
use crate::text::{Mark, Span};
use crate::words::{fold, lower};

/// A head has no more tokens than this.
const LONGEST: usize = 16;

/// What a head says.
#[derive(Clone, Debug, Default)]
pub struct Head {
    /// The structures that it names.
    pub names: Vec<Subject>,
    /// The relation that it tells, and the words that tell it.
    pub label: Option<(Label, String)>,
    /// The movement that it names.
    pub movement: Option<Side>,
    /// The segments that it gives.
    pub segments: Option<Side>,
    /// Words for parts of the subject ("medial", "first").
    pub parts: Vec<String>,
    /// Every word of it is understood.
    pub whole: bool,
}

impl Head {
    /// Whether it is nothing but names.
    pub const fn is_only_names(&self) -> bool {
        self.whole
            && !self.names.is_empty()
            && self.label.is_none()
            && self.movement.is_none()
            && self.segments.is_none()
            && self.parts.is_empty()
    }

    /// Whether it is nothing but words for parts.
    pub const fn is_only_parts(&self) -> bool {
        self.whole
            && !self.parts.is_empty()
            && self.names.is_empty()
            && self.label.is_none()
            && self.movement.is_none()
            && self.segments.is_none()
    }

    /// Whether it is nothing but a label, with words for parts.
    pub const fn is_only_label(&self) -> bool {
        self.whole
            && self.names.is_empty()
            && self.label.is_some()
            && self.movement.is_none()
            && self.segments.is_none()
    }
}

/// The label that begins at a token, and the token after it.
struct Found {
    label: Label,
    end: usize,
    /// The sides of a relation phrase and its form; none for a word that is a label.
    phrase: Option<(Form, PartRole, PartRole)>,
}

struct Reader<'a, 's> {
    scope: &'a Scope<'s>,
    from: usize,
    to: usize,
    /// The words in lower case, from `from` on.
    lower: Vec<Cow<'a, str>>,
    nouns: &'a [String],
}

/// Reads a stretch as a head. `nouns` are nouns that the names in it may miss ("lateral" for the lateral cord). `None` if it
/// says nothing that is understood.
pub fn read(scope: &Scope<'_>, from: usize, to: usize, nouns: &[String]) -> Option<Head> {
    let from = from + tag(scope, from, to);
    if from >= to || to - from > LONGEST {
        return None;
    }
    let tokens = scope.mentions.tokens.get(from..to)?;
    let words = tokens.iter().map(|token| lower(token.span.of(&scope.plain.text))).collect();
    let reader = Reader { scope, from, to, lower: words, nouns };
    let head = reader.head();
    // A part of the body may mean its skin, and an area may be described in words that are no name.
    let is_skin = reader.lower.iter().any(|word| word == "skin");
    let is_of_skin =
        |head: &Head| head.label.as_ref().is_none_or(|(label, _)| is_skin && label.kind == Some(ClaimKind::Skin));
    let is_muscle = |subject: &Subject| subject.candidates.iter().all(|id| scope.vocabulary.kind(*id) == Kind::Muscle);
    let is_of_muscle = |head: &Head| !is_skin && head.names.iter().any(is_muscle);
    let may_be_area = head
        .as_ref()
        .is_none_or(|head| is_of_skin(head) && head.movement.is_none() && !head.is_only_parts() && !is_of_muscle(head));
    let areas = match reader.written(from, to) {
        written if may_be_area && is_skin => scope.relations.areas_of_skin(written),
        written if may_be_area => scope.relations.areas(written),
        _ => Vec::new(),
    };
    if areas.is_empty() {
        return head;
    }
    let mut head = head.filter(|head| head.names.len() == 1 && head.parts.is_empty()).unwrap_or_default();
    head.whole = true;
    head.label = None;
    match head.names.first_mut() {
        Some(subject) => {
            let new: Vec<EntryId> = areas.into_iter().filter(|area| !subject.candidates.contains(area)).collect();
            subject.candidates.extend(new);
        }
        None => head.names.push(Subject { candidates: areas, span: reader.source(from, to) }),
    }
    Some(head)
}

/// How many tokens number a figure, plate or table at the beginning of a stretch: `Fig. 3 –`.
pub fn tag(scope: &Scope<'_>, from: usize, to: usize) -> usize {
    let word = |at: usize| {
        scope.mentions.tokens.get(at).filter(|_| at < to).map_or("", |token| token.span.of(&scope.plain.text))
    };
    let mut at = from;
    if begins_line(scope, from) {
        at += outline_number(&word, at);
    }
    while matches!(word(at), "*" | "•" | "☐" | "☑" | "✓" | "[" | "]" | "-" | "–") {
        at += 1;
    }
    // "**A** Deltoid": the letter or number of a label in a picture
    if let Some(own) = scope.mentions.tokens.get(at).filter(|_| at + 1 < to)
        && is_label_of_picture(word(at))
        && scope.plain.has_mark(own.span, Mark::Strong)
        && scope
            .mentions
            .tokens
            .get(at + 1)
            .is_some_and(|next| next.is_word && !scope.plain.has_mark(next.span, Mark::Strong))
    {
        at += 1;
    }
    let bullets = at - from;
    if !lexicon::is_figure(&word(at).to_lowercase()) {
        return bullets;
    }
    at += 1;
    if word(at) == "." {
        at += 1;
    }
    if !word(at).starts_with(|c: char| c.is_ascii_digit()) {
        return bullets;
    }
    at += 1;
    while matches!(word(at), "." | ":" | "–" | "—" | "-" | ")") {
        at += 1;
    }
    at - from
}

/// How many tokens number a line of an outline: `1.1.2`, `3)`, `a)`, `ii)`.
fn outline_number<'w>(word: &impl Fn(usize) -> &'w str, from: usize) -> usize {
    let is_dotted = |word: &str| word.contains('.') && word.split('.').all(|part| part.parse::<u8>().is_ok());
    if is_dotted(word(from)) && word(from + 1).starts_with(char::is_uppercase) {
        return 1;
    }
    let is_number = |word: &str| !word.is_empty() && word.len() <= 2 && word.bytes().all(|c| c.is_ascii_digit());
    let is_letter = |word: &str| {
        (word.len() == 1 && word.bytes().all(|c| c.is_ascii_lowercase()))
            || (!word.is_empty() && word.len() <= 4 && word.bytes().all(|c| matches!(c, b'i' | b'v' | b'x')))
    };
    if is_letter(word(from)) {
        return if word(from + 1) == ")" { 2 } else { 0 };
    }
    let mut at = from;
    let mut marks = 0;
    while is_number(word(at)) || (at > from && matches!(word(at), "." | ")")) {
        marks += usize::from(!is_number(word(at)));
        at += 1;
    }
    // "2.5 cm" is no number of a line.
    let is_text = word(at).starts_with(char::is_uppercase) || word(at - usize::from(at > from)) == ")";
    if marks > 0 && is_text { at - from } else { 0 }
}

/// Whether a word is one capital letter or a short number.
fn is_label_of_picture(word: &str) -> bool {
    word.len() <= 2
        && (word.bytes().all(|c| c.is_ascii_digit())
            || (word.len() == 1 && word.bytes().all(|c| c.is_ascii_uppercase())))
}

impl Reader<'_, '_> {
    fn word(&self, at: usize) -> &str {
        at.checked_sub(self.from).and_then(|place| self.lower.get(place)).map_or("", |word| word)
    }

    fn written(&self, from: usize, to: usize) -> &str {
        let tokens = &self.scope.mentions.tokens;
        match (tokens.get(from), to.checked_sub(1).and_then(|last| tokens.get(last))) {
            (Some(first), Some(last)) => Span::new(first.span.start, last.span.end).of(&self.scope.plain.text),
            _ => "",
        }
    }

    fn source(&self, from: usize, to: usize) -> Span {
        let tokens = &self.scope.mentions.tokens;
        match (tokens.get(from), to.checked_sub(1).and_then(|last| tokens.get(last))) {
            (Some(first), Some(last)) => self.scope.plain.to_source(Span::new(first.span.start, last.span.end)),
            _ => Span::default(),
        }
    }

    fn mention(&self, at: usize) -> Option<&Mention> {
        let list = &self.scope.mentions.list;
        let place = list.partition_point(|mention| mention.tokens.0 < at);
        list.get(place).filter(|mention| mention.tokens.0 == at && mention.tokens.1 <= self.to)
    }

    /// Whether a name of the text stands before a token, with marks between at most.
    fn mention_ends(&self, at: usize) -> bool {
        let list = &self.scope.mentions.list;
        let last = list.iter().rfind(|mention| mention.tokens.0 >= self.from && mention.tokens.1 <= at);
        last.is_some()
    }

    fn head(&self) -> Option<Head> {
        let vocabulary = self.scope.vocabulary;
        let mut head = Head { whole: true, ..Head::default() };
        let mut phrase: Option<(Form, PartRole, PartRole, usize)> = None;
        let mut joined = true;
        let mut at = self.from;
        while at < self.to {
            let word = self.word(at);
            if matches!(word, "(" | "[") {
                at = (at..self.to).find(|at| matches!(self.word(*at), ")" | "]")).map_or(self.to, |close| close + 1);
                continue;
            }
            let ahead = [word, self.word(at + 1), self.word(at + 2)];
            let ahead = ahead.get(..self.to - at).unwrap_or(&ahead);
            let each = if at > self.from { lexicon::said_of_each(ahead) } else { 0 };
            if each > 0 {
                at += each; // "Number of scalene muscles on each side"
                continue;
            }
            // "both heads of gastrocnemius": the muscle as a whole
            if matches!(word, "both" | "all") && lexicon::is_part_noun(self.word(at + 1)) && self.word(at + 2) == "of" {
                at += 3;
                continue;
            }
            // "zygomatic" below *Branches of the facial nerve* is a branch, whatever the word may mean elsewhere.
            let is_branch = |noun: &String| noun.starts_with("branch");
            if let Some(mention) = self.mention(at)
                && self.nouns.iter().any(is_branch)
                && mention.tokens.1 == mention.tokens.0 + 1
                && let Some((subject, end)) = self.completed(at)
                && subject.candidates.iter().all(|id| self.is_below_nerve_above(*id))
            {
                if !add(vocabulary, &mut head.names, subject, joined) {
                    return None;
                }
                joined = false;
                at = end;
                continue;
            }
            // "Heads of triceps": the noun tells what is counted, whatever it names elsewhere.
            let counts = || lexicon::label_of(word).is_some_and(|label| label.kind == Some(ClaimKind::Count));
            if let Some(mention) = self.mention(at).filter(|mention| !(mention.tokens.1 == at + 1 && counts())) {
                let end = mention.tokens.1;
                let is_of_noun =
                    matches!(self.word(end), "branch" | "branches") || lexicon::is_noun_of_place(self.word(end));
                if is_of_noun && is_bare_adjective(mention, vocabulary) {
                    return None; // "Pharyngeal branch": of which nerve is not known
                }
                if mention.candidates.iter().all(|id| vocabulary.kind(*id) == Kind::Movement) {
                    head.movement =
                        Some(Side { what: What::Entry(mention.candidates.clone()), span: self.source(at, end) });
                } else {
                    let is_of =
                        |neural: bool, ids: &[EntryId]| ids.iter().all(|id| vocabulary.is_neural(*id) == neural);
                    let is_other = head.names.first().is_some_and(|first| {
                        (is_of(true, &first.candidates) && is_of(false, &mention.candidates))
                            || (is_of(false, &first.candidates) && is_of(true, &mention.candidates))
                    });
                    if is_other && head.label.is_none() && head.movement.is_none() {
                        // "ulnar nerve, wrist": a nerve and where.
                        head.whole = false;
                        return Some(head);
                    }
                    let span = self.scope.plain.to_source(mention.span);
                    let subject = Subject { candidates: mention.candidates.clone(), span };
                    if !add(vocabulary, &mut head.names, subject, joined) {
                        return None;
                    }
                }
                joined = false;
                at = end;
                continue;
            }
            if let Some(reading) =
                segments::read(&self.scope.plain.text, self.scope.mentions.tokens.get(..self.to)?, at)
            {
                if head.segments.is_some() {
                    return None;
                }
                head.segments = Some(Side {
                    what: What::Segments(reading.main, reading.lesser),
                    span: self.source(at, reading.end),
                });
                at = reading.end;
                continue;
            }
            if let Some(found) = self.label_at(at) {
                let is_noun = head.label.as_ref().is_none_or(|(label, _)| is_of_nouns(*label));
                match (&head.label, found.phrase) {
                    (None, _) => {}
                    (Some((known, _)), None) if known.kind == found.label.kind => {
                        at = found.end;
                        continue;
                    }
                    (Some(_), Some(_)) if is_noun => {}
                    _ => return None,
                }
                phrase = found.phrase.map(|(form, left, right)| (form, left, right, head.names.len()));
                head.label = Some((found.label, self.written(at, found.end).to_owned()));
                at = found.end;
                continue;
            }
            if let Some((movement, end)) = self.scope.relations.movement_at(at, &|at| self.word(at))
                && end <= self.to
                && head.movement.is_none()
            {
                let is_sentence = movement.form == MovementForm::Verb && !head.names.is_empty();
                if is_sentence || movement.form == MovementForm::Participle {
                    return None; // "deltoid abducts": a sentence
                }
                head.movement = Some(Side { what: What::Entry(vec![movement.movement]), span: self.source(at, end) });
                at = end;
                continue;
            }
            if let Some((subject, end)) = self.completed(at) {
                // "Tympanic canal": an adjective of the canal, not the nerve that goes by it.
                let is_nerve = subject.candidates.iter().all(|id| vocabulary.is_neural(*id));
                if is_nerve && lexicon::is_noun_of_place(self.word(end)) {
                    return None;
                }
                if !add(vocabulary, &mut head.names, subject, joined) {
                    return None;
                }
                joined = false;
                at = end;
                continue;
            }
            if lexicon::is_conjunction(word) {
                joined = true;
            } else if word != "?" && !word.chars().any(char::is_alphanumeric) {
                // Stars, commas and stops say nothing.
            } else if lexicon::tells_part(word) || ORDINALS.contains(&word) {
                head.parts.push(word.to_owned());
            } else if !lexicon::fills_head(word) && !lexicon::is_determiner(word) {
                let is_named = at > self.from && self.mention_ends(at);
                if head.names.is_empty() || head.label.is_some() || head.movement.is_some() || !is_named {
                    return None;
                }
                // A name, and behind it something else: the name is known, the head is not.
                head.whole = false;
                head.parts.clear();
                return Some(head);
            }
            at += 1;
        }
        if let (Some((label, _)), Some((form, left, right, before))) = (&mut head.label, phrase) {
            let turned = (before == 0 && !head.names.is_empty()) || (form == Form::Noun && before == 0);
            (label.subject, label.value) = if turned { (right, left) } else { (left, right) };
        }
        let says = !head.names.is_empty()
            || head.label.is_some()
            || head.movement.is_some()
            || head.segments.is_some()
            || !head.parts.is_empty();
        says.then_some(head)
    }

    /// The label or relation phrase that begins at a token; of two, the longer.
    fn label_at(&self, at: usize) -> Option<Found> {
        let word = self.word(at);
        if !word.starts_with(char::is_alphabetic) {
            return None;
        }
        if let Some(end) = self.way_at(at) {
            let label = Label { kind: Some(ClaimKind::Passage), value: PartRole::Nerve, subject: PartRole::Landmark };
            return Some(Found { label, end, phrase: None });
        }
        let is_sole = |end: usize| at == self.from && end == self.to;
        let most = if lexicon::may_begin_label(word) { 6 } else { 0 };
        let label = (1..=most).rev().filter(|len| at + len <= self.to).find_map(|len| {
            let end = at + len;
            let written = self.written(at, end);
            // Letters and small words are labels only where they stand alone.
            let is_small = written.len() <= 2 || lexicon::is_preposition(written) || lexicon::is_auxiliary(written);
            if is_small && !is_sole(end) && !(is_sole(end + 1) && self.word(end) == ".") {
                return None;
            }
            let label = lexicon::label_of(written)?;
            let end = if self.word(end) == "." && end < self.to && len == 1 { end + 1 } else { end };
            Some(Found { label, end, phrase: None })
        });
        let phrase = self
            .scope
            .relations
            .phrase_at(at, &|at| if self.mention(at).is_some() { "" } else { self.word(at) })
            .filter(|(_, end)| *end <= self.to && label.as_ref().is_none_or(|label| *end > label.end));
        match phrase {
            Some((relation, end)) => Some(Found {
                label: Label { kind: Some(relation.kind), value: relation.right, subject: relation.left },
                end,
                phrase: Some((relation.form, relation.left, relation.right)),
            }),
            None => label,
        }
    }

    /// "*Behind* the medial malleolus:", "*deep to* the flexor retinaculum": a preposition of a way at the head of a line,
    /// with a landmark behind it. The token behind the preposition.
    fn way_at(&self, at: usize) -> Option<usize> {
        if at != self.from {
            return None;
        }
        let end = match (self.word(at), self.word(at + 1), self.word(at + 2)) {
            ("in", "front", "of") => at + 3,
            ("deep" | "superficial", "to", _) => at + 2,
            (word, ..) if lexicon::begins_way(word) || matches!(word, "above" | "below") => at + 1,
            _ => return None,
        };
        let name = (end..self.to).find(|at| !lexicon::is_determiner(self.word(*at)))?;
        let is_place = |id: &EntryId| matches!(self.scope.vocabulary.kind(*id), Kind::Landmark | Kind::Muscle);
        let is_last = |mention: &&Mention| {
            (mention.tokens.1..self.to).all(|at| !self.word(at).starts_with(char::is_alphanumeric))
        };
        self.mention(name).filter(is_last).filter(|mention| mention.candidates.iter().all(is_place)).map(|_| end)
    }

    fn is_below_nerve_above(&self, id: EntryId) -> bool {
        let vocabulary = self.scope.vocabulary;
        self.scope.subjects.iter().any(|subject| {
            subject
                .candidates
                .iter()
                .any(|nerve| vocabulary.is_neural(*nerve) && *nerve != id && vocabulary.is_or_above(*nerve, id))
        })
    }

    /// Words that are a name once the noun that is understood stands behind them: "facial" (nerve), "lateral" (cord).
    fn completed(&self, at: usize) -> Option<(Subject, usize)> {
        let first = self.word(at);
        let is_unknown = || {
            let forms = self.scope.names.forms_of(lexicon::full_adjective(first).unwrap_or(first));
            forms.iter().any(|form| form.is_unknown())
        };
        if lexicon::is_determiner(first) || is_unknown() {
            return None;
        }
        (1..=4).rev().filter(|len| at + len <= self.to).find_map(|len| {
            let end = at + len;
            let next = self.word(end);
            // "Pharyngeal branch" is not the pharyngeal nerve.
            let is_of_branch = matches!(next, "branch" | "branches");
            if lexicon::changes_the_structure(next) || lexicon::is_vessel(next) || is_of_branch {
                return None;
            }
            let mut candidates = completed(self.scope, self.written(at, end), self.nouns);
            // Below the name of a nerve its branches are meant.
            let near: Vec<EntryId> = candidates.iter().copied().filter(|id| self.is_below_nerve_above(*id)).collect();
            if !near.is_empty() {
                candidates = near;
            }
            (!candidates.is_empty()).then(|| (Subject { candidates, span: self.source(at, end) }, end))
        })
    }
}

/// The entries that words mean once one of the nouns stands behind them.
pub fn completed(scope: &Scope<'_>, written: &str, nouns: &[String]) -> Vec<EntryId> {
    let is_ordinal = ORDINALS.iter().any(|ordinal| written.eq_ignore_ascii_case(ordinal))
        || lexicon::ordinal(&lower(written)).is_some();
    if !written.starts_with(char::is_alphabetic) || written.len() < 2 || is_ordinal {
        return Vec::new();
    }
    let full: Vec<&str> = written.split(' ').map(|word| lexicon::full_adjective(word).unwrap_or(word)).collect();
    let full = full.join(" ");
    let forms = scope.names.forms_of(&full);
    if forms.iter().any(|form| form.is_unknown()) {
        return Vec::new();
    }
    let look = |noun: &str| -> Vec<EntryId> {
        let mut forms = forms.clone();
        forms.extend(scope.names.forms_of(noun));
        scope.names.exactly(&forms).map_or_else(Vec::new, |found| found.names.iter().map(|name| name.entry).collect())
    };
    if lexicon::is_cranial_number(written) {
        return scope.names.lookup(&format!("CN {written}")).iter().map(|name| name.entry).collect();
    }
    let by_noun = nouns.iter().map(|noun| look(noun)).find(|ids| !ids.is_empty());
    // "superficial" below *Terminal branches* of a nerve is the superficial branch of that nerve.
    let by_noun = by_noun.or_else(|| {
        let noun = nouns.first().filter(|noun| lexicon::is_part_noun(noun))?;
        let nerve = scope
            .subjects
            .iter()
            .find(|subject| subject.candidates.iter().all(|id| scope.vocabulary.is_neural(*id)))?;
        let names = nerve.candidates.iter().flat_map(|id| &scope.vocabulary.entry(*id).names);
        let full = full.to_lowercase();
        let named = names.map(|name| scope.names.lookup(&format!("{full} {noun} of {}", name.text)));
        let found: Vec<EntryId> = named.flatten().map(|name| name.entry).collect();
        (!found.is_empty()).then_some(found)
    });
    by_noun.unwrap_or_else(|| if lexicon::tells_part(&full.to_lowercase()) { Vec::new() } else { look("nerve") })
}

/// Whether a label is a noun for a structure, which a relation phrase behind it makes clear: "nerves that pierce".
fn is_of_nouns(label: Label) -> bool {
    label.kind.is_none() || label.kind == Some(ClaimKind::Supply)
}

/// Adds a name to those of a head. False if it does not stand beside them: the head is something else.
fn add(vocabulary: &Vocabulary, names: &mut Vec<Subject>, subject: Subject, joined: bool) -> bool {
    let Some(last) = names.last_mut() else {
        names.push(subject);
        return true;
    };
    let within = |parts: &[EntryId], wholes: &[EntryId]| {
        parts.iter().all(|part| wholes.iter().any(|whole| vocabulary.wholes(*part).contains(whole)))
    };
    if within(&last.candidates, &subject.candidates) {
        return true; // "the short head of biceps femoris"
    }
    if within(&subject.candidates, &last.candidates) {
        *last = subject; // "biceps femoris, short head"
        return true;
    }
    if last.candidates.iter().any(|id| subject.candidates.contains(id)) {
        return true; // "FDP = flexor digitorum profundus"
    }
    names.push(subject);
    joined
}

/// The parts of a structure that words tell ("medial", "first"): of "first and second" one each.
pub fn parts_of(vocabulary: &Vocabulary, subject: &Subject, words: &[String]) -> Vec<Subject> {
    let mut ordinals: Vec<usize> =
        words.iter().filter_map(|word| ORDINALS.iter().position(|known| known == word)).collect();
    if let ([from, to], true) = (ordinals.as_slice(), words.iter().any(|word| word == "to")) {
        ordinals = (*from..=*to).collect();
    }
    let telling: Vec<&str> = words
        .iter()
        .map(String::as_str)
        .filter(|word| !ORDINALS.contains(word) && !lexicon::is_part_noun(word) && *word != "to")
        .collect();
    let all = |whole: EntryId| vocabulary.all_parts(whole).into_iter().chain(vocabulary.members(whole));
    let named = |wanted: &[&str]| -> Option<Subject> {
        let mut candidates: Vec<EntryId> = subject
            .candidates
            .iter()
            .flat_map(|whole| all(*whole))
            .filter(|part| {
                vocabulary.entry(*part).names.iter().any(|name| {
                    let name = fold(&name.text);
                    wanted.iter().all(|word| name.split([' ', '-']).any(|own| own == *word))
                })
            })
            .collect();
        candidates.sort_unstable();
        candidates.dedup();
        // A part whose own parts fit as well stands for them.
        let wholes: Vec<EntryId> = candidates.clone();
        candidates.retain(|part| !vocabulary.wholes(*part).iter().any(|whole| wholes.contains(whole)));
        (!candidates.is_empty()).then_some(Subject { candidates, span: subject.span })
    };
    if ordinals.is_empty() {
        return if telling.is_empty() { Vec::new() } else { named(&telling).into_iter().collect() };
    }
    ordinals
        .into_iter()
        .filter_map(|ordinal| {
            let mut wanted = telling.clone();
            wanted.push(ORDINALS.get(ordinal)?);
            named(&wanted)
        })
        .collect()
}

/// The nouns that the words of a label or heading leave out of the names beside them: "cords" gives "cord".
pub fn nouns(words: &str) -> Vec<String> {
    let all = words.split_whitespace().map(|word| word.trim_matches(|c: char| !c.is_alphabetic()).to_lowercase());
    let Some(noun) = all.rev().find(|word| lexicon::is_completing_noun(word)) else { return Vec::new() };
    if noun.starts_with("foram") {
        return vec!["foramen".to_owned()];
    }
    let one = noun.strip_suffix(if noun.ends_with("ches") { "es" } else { "s" }).unwrap_or(&noun).to_owned();
    if noun == "plexus" || one == noun { vec![noun] } else { vec![one, noun] }
}
