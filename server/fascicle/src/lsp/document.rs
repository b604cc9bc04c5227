//! One version of an open document.
//!
//! A version never changes; an edit makes the next one. So a snapshot is a pointer, and what is read from a version is
//! read once, however many requests ask for it. What reading one version has found is handed on to the next, so that an
//! edit in a long document costs what the edit is worth.

use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::sync::{Arc, Mutex, MutexGuard, OnceLock, TryLockError};
use std::thread;
use std::time::{Duration, Instant};

use fascicle_analysis::lines::{Encoding, LineIndex, Position};
use fascicle_analysis::{Form, Memo, Reading, Stage};
use ropey::Rope;

use crate::course::Course;

/// A version of a document. A file on disk is one, too.
#[derive(Debug)]
pub struct Document {
    /// The version that the client gave; a document on disk has none.
    pub version: Option<i32>,
    /// How it is written.
    pub form: Form,
    growing: Option<usize>,
    has_settled: AtomicBool,
    /// It is no longer what the editor shows.
    is_overtaken: AtomicBool,
    rope: Rope,
    source: OnceLock<Source>,
    reading: OnceLock<(Reading, Times)>,
    shared: Arc<Shared>,
}

/// What the versions of a document share.
#[derive(Debug, Default)]
struct Shared {
    /// What reading the versions before has left. Who has it reads; one reading goes on at a time.
    memo: Mutex<Memo>,
    begun: AtomicUsize,
    given_up: AtomicUsize,
}

/// How many readings of a document there were.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Readings {
    /// All that have begun.
    pub begun: usize,
    /// Those that ended midway, for nobody waited for them any more.
    pub given_up: usize,
}

/// How often who waits for a reading looks whether it is still wanted.
const MOMENT: Duration = Duration::from_millis(1);

/// How long each stage of a reading took.
pub type Times = [(Stage, Duration); Stage::ALL.len()];

/// The text of a version with its lines.
#[derive(Debug)]
pub struct Source {
    /// The text.
    pub text: String,
    /// Where its lines begin.
    pub lines: LineIndex,
}

/// A change to a document, in its own lines and columns; without a range it is the whole text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Change {
    /// What is replaced.
    pub range: Option<(Position, Position)>,
    /// By what.
    pub text: String,
}

/// A change that cannot be: its range ends before it begins.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BadChange;

impl Document {
    /// A document as it was opened.
    pub fn new(version: i32, form: Form, text: &str) -> Self {
        Self::of_rope(Some(version), form, Rope::from_str(text))
    }

    /// A document as it stands on disk.
    pub fn on_disk(form: Form, text: &str) -> Self {
        Self::of_rope(None, form, Rope::from_str(text))
    }

    fn of_rope(version: Option<i32>, form: Form, rope: Rope) -> Self {
        Self {
            version,
            form,
            growing: None,
            has_settled: AtomicBool::new(false),
            is_overtaken: AtomicBool::new(false),
            rope,
            source: OnceLock::new(),
            reading: OnceLock::new(),
            shared: Arc::default(),
        }
    }

    /// The same version, to be read anew (settings or vocabulary have changed).
    pub fn unread(&self) -> Self {
        Self::of_rope(self.version, self.form, self.rope.clone())
    }

    /// The next version. Each change is told in terms of the text that the one before it left.
    ///
    /// # Errors
    /// A change whose range ends before it begins.
    pub fn changed(&self, version: i32, changes: &[Change], encoding: Encoding) -> Result<Self, BadChange> {
        let mut rope = self.rope.clone();
        let mut growing = None;
        for change in changes {
            growing = match change.range {
                None => {
                    rope = Rope::from_str(&change.text);
                    None
                }
                Some((from, to)) => {
                    let (start, end) = (offset(&rope, from, encoding), offset(&rope, to, encoding));
                    if start > end {
                        return Err(BadChange);
                    }
                    let first = rope.byte_to_char(start);
                    rope.remove(first..rope.byte_to_char(end));
                    rope.insert(first, &change.text);
                    let typed = change.text.chars().count() == 1 && change.text.chars().all(char::is_alphanumeric);
                    typed.then_some(start + change.text.len())
                }
            };
        }
        let shared = Arc::clone(&self.shared);
        Ok(Self { growing, shared, ..Self::of_rope(Some(version), self.form, rope) })
    }

    /// Where the last edit ended, so that a word that is still growing is left alone; `None` once the author has paused.
    pub fn growing(&self) -> Option<usize> {
        self.growing.filter(|_| !self.has_settled.load(Ordering::Relaxed))
    }

    /// The author has paused at this version.
    pub fn settle(&self) {
        self.has_settled.store(true, Ordering::Relaxed);
    }

    /// Another version has come, or the document is closed.
    pub fn overtake(&self) {
        self.is_overtaken.store(true, Ordering::Relaxed);
    }

    /// Whether it is no longer what the editor shows.
    pub fn is_overtaken(&self) -> bool {
        self.is_overtaken.load(Ordering::Relaxed)
    }

    /// How many readings of it and of the versions before there were.
    pub fn readings(&self) -> Readings {
        let count = |count: &AtomicUsize| count.load(Ordering::Relaxed);
        Readings { begun: count(&self.shared.begun), given_up: count(&self.shared.given_up) }
    }

    /// Length of the text in bytes.
    pub fn len(&self) -> usize {
        self.rope.len_bytes()
    }

    /// The text and its lines.
    pub fn source(&self) -> &Source {
        self.source.get_or_init(|| {
            let text = self.rope.to_string();
            let lines = LineIndex::new(&text);
            Source { text, lines }
        })
    }

    /// What was read of it; `None` once nobody wants it any more. What was read until then is not read again by who comes
    /// next.
    pub fn reading(&self, course: &Course, is_wanted: &dyn Fn() -> bool) -> Option<&Reading> {
        if let Some((reading, _)) = self.reading.get() {
            return Some(reading);
        }
        // Another version may be at it, or another request for this one. Waiting costs less than reading it all twice: what
        // is left to do of the one is as good as done for the other.
        let mut memo = lock_while(&self.shared.memo, is_wanted)?;
        if self.reading.get().is_none() {
            let reading = self.read(course, &mut memo, is_wanted)?;
            drop(self.reading.set(reading));
        }
        self.reading.get().map(|(reading, _)| reading)
    }

    /// How long each stage of reading it took, once it was read.
    pub fn times(&self) -> Option<&Times> {
        self.reading.get().map(|(_, times)| times)
    }

    fn read(&self, course: &Course, memo: &mut Memo, is_wanted: &dyn Fn() -> bool) -> Option<(Reading, Times)> {
        let (knowledge, settings) = (course.knowledge(), &course.settings.reading);
        let text = &self.source().text;
        self.shared.begun.fetch_add(1, Ordering::Relaxed);
        let mut times = Stage::ALL.map(|stage| (stage, Duration::ZERO));
        let mut from = Instant::now();
        let mut ended = |stage: Stage| {
            let now = Instant::now();
            if let Some((_, time)) = times.iter_mut().find(|(known, _)| *known == stage) {
                *time += now.saturating_duration_since(from);
            }
            from = now;
        };
        let reading =
            fascicle_analysis::read_observed(text, self.form, knowledge, settings, memo, is_wanted, &mut ended);
        if reading.is_none() {
            self.shared.given_up.fetch_add(1, Ordering::Relaxed);
        }
        Some((reading?, times))
    }
}

/// Waits for a lock for as long as that is wanted.
fn lock_while<'a, T>(mutex: &'a Mutex<T>, is_wanted: &dyn Fn() -> bool) -> Option<MutexGuard<'a, T>> {
    while is_wanted() {
        match mutex.try_lock() {
            Ok(guard) => return Some(guard),
            // Who broke off left answers that are whole each for itself.
            Err(TryLockError::Poisoned(broken)) => return Some(broken.into_inner()),
            Err(TryLockError::WouldBlock) => thread::sleep(MOMENT),
        }
    }
    None
}

/// The byte at a position. What lies past the end of a line or of the text means that end.
fn offset(rope: &Rope, position: Position, encoding: Encoding) -> usize {
    let line = position.line as usize;
    if line >= rope.len_lines() {
        return rope.len_bytes();
    }
    let text: std::borrow::Cow<'_, str> = rope.line(line).into();
    let column = Position { line: 0, column: position.column };
    rope.line_to_byte(line) + LineIndex::new(&text).offset(column, &text, encoding)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn at(line: u32, column: u32) -> Position {
        Position { line, column }
    }

    #[test]
    fn applies_changes_one_after_the_other() {
        let document = Document::new(1, Form::Markdown, "a\u{2028}b\r\nc\rd");
        let changes = [
            Change { range: Some((at(1, 0), at(1, 1))), text: "𝔹x".to_owned() },
            Change { range: Some((at(1, 2), at(1, 3))), text: String::new() },
            Change { range: Some((at(9, 9), at(9, 9))), text: "!".to_owned() },
        ];
        let next = document.changed(2, &changes, Encoding::Utf16).unwrap();
        assert_eq!(next.source().text, "a\u{2028}b\r\n𝔹\rd!");
        let backwards = Change { range: Some((at(1, 0), at(0, 0))), text: String::new() };
        assert_eq!(next.changed(3, &[backwards], Encoding::Utf16).map(|document| document.version), Err(BadChange));
    }

    /// The place of a line and column, by the protocol's definition and in no way as [`LineIndex`] does it: the text as
    /// characters, lines cut one by one, columns by what each character encodes to.
    fn independent(text: &[char], line: u32, column: u32, encoding: Encoding) -> usize {
        let mut at = 0;
        for _ in 0..line {
            match text[at..].iter().position(|c| matches!(c, '\n' | '\r')) {
                Some(end) => {
                    at += end + if text[at + end] == '\r' && text.get(at + end + 1) == Some(&'\n') { 2 } else { 1 }
                }
                None => return text.len(),
            }
        }
        let mut units = 0;
        while let Some(c) = text.get(at).filter(|c| !matches!(c, '\n' | '\r')) {
            units += match encoding {
                Encoding::Utf8 => c.to_string().into_bytes().len(),
                Encoding::Utf16 => c.to_string().encode_utf16().collect::<Vec<_>>().len(),
                Encoding::Utf32 => 1,
            };
            if units > column as usize {
                break;
            }
            at += 1;
        }
        at
    }

    #[test]
    fn edits_in_any_encoding_are_those_of_an_independent_implementation() {
        let pieces =
            ["a", "deltoid", "\n", "\r\n", "\r", "é", "𝔹", "e\u{301}", "\u{2028}", "", "\u{85}x", "👩\u{200D}⚕"];
        let mut seed = 1_u64;
        let mut number = |limit: u64| {
            seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (seed >> 33) % limit
        };
        for encoding in [Encoding::Utf8, Encoding::Utf16, Encoding::Utf32] {
            let mut document = Document::new(0, Form::Markdown, "");
            let mut text: Vec<char> = Vec::new();
            for version in 1..3_000 {
                let mut ends = [0, 0].map(|_| at(number(6) as u32, number(9) as u32));
                ends.sort();
                let [from, to] = ends;
                let piece = pieces[number(pieces.len() as u64) as usize];
                let (start, end) = (
                    independent(&text, from.line, from.column, encoding),
                    independent(&text, to.line, to.column, encoding),
                );
                text.splice(start..end, piece.chars());
                let change = Change { range: Some((from, to)), text: piece.to_owned() };
                document = document.changed(version, &[change], encoding).unwrap();
                let expected: String = text.iter().collect();
                assert_eq!(document.source().text, expected, "{from:?} to {to:?}, {encoding:?}, {piece:?}");
                // And back: what we call the position of a character is its position. Within one line end there is none.
                let source = document.source();
                for (at, (byte, c)) in expected.char_indices().enumerate() {
                    if c == '\n' && at > 0 && text[at - 1] == '\r' {
                        continue;
                    }
                    let told = source.lines.position(byte, &source.text, encoding);
                    assert_eq!(independent(&text, told.line, told.column, encoding), at, "{told:?} in {expected:?}");
                    assert_eq!(source.lines.offset(told, &source.text, encoding), byte, "{told:?} in {expected:?}");
                }
                if text.len() > 60 {
                    text.clear();
                    document = Document::new(version, Form::Markdown, "");
                }
            }
        }
    }
}
