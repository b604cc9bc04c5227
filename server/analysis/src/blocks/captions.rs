//! Captions to blocks: WebVTT (W3C, <https://www.w3.org/TR/webvtt1/>) and SRT (for which no standard exists; its
//! form is common practice).
//!
//! Cues are read as running text: a sentence goes on from one cue to the next, so all cue text is one plain text with a
//! blank between lines and cues. The header, cue identifiers, timings, settings, notes, styles, regions and tags are no
//! text; character references are what they stand for. A pause of a second or more ends a block, for a speaker who pauses
//! that long has ended a sentence.
//!
//! Every piece of the text knows its place in the source, so a change to a word never touches times or structure.

use super::{Block, BlockKind};
use crate::text::{Plain, Span};

/// A silence between two cues, in milliseconds, that ends a block.
const PAUSE: u64 = 1_000;

/// What stands between the times of a cue.
const ARROW: &str = "-->";

/// Cuts captions into blocks.
pub fn blocks(text: &str) -> Vec<Block> {
    let mut list = Vec::new();
    let mut open: Option<(Plain, Span)> = None;
    let mut last_end = None;
    for cue in cues(text) {
        if last_end.is_some_and(|last: u64| cue.start.saturating_sub(last) >= PAUSE) {
            close(&mut open, &mut list);
        }
        last_end = Some(cue.end);
        for (at, line) in cue.lines {
            let (plain, span) = open.get_or_insert_with(|| (Plain::default(), Span::new(at, at)));
            if !plain.text.is_empty() {
                plain.push_as(" ", Span::new(span.end, at));
            }
            cue_text(line, at, plain);
            span.end = at + line.len();
        }
    }
    close(&mut open, &mut list);
    list
}

fn close(open: &mut Option<(Plain, Span)>, list: &mut Vec<Block>) {
    if let Some((plain, span)) = open.take()
        && !plain.text.trim().is_empty()
    {
        list.push(Block {
            kind: BlockKind::Caption,
            span,
            plain: plain.into(),
            heading: None,
            parent: None,
            quoted: false,
            ticked: None,
        });
    }
}

/// A line with its place in the source.
type Line<'t> = (usize, &'t str);

/// A cue: its times in milliseconds and its lines of text.
struct Cue<'t> {
    start: u64,
    end: u64,
    lines: Vec<Line<'t>>,
}

/// Lines, which end in LF, CRLF or CR.
fn lines(text: &str) -> impl Iterator<Item = Line<'_>> {
    let mut at = 0;
    std::iter::from_fn(move || {
        let rest = text.get(at..).filter(|rest| !rest.is_empty())?;
        let end = rest.find(['\n', '\r']).unwrap_or(rest.len());
        let line = (at, rest.get(..end).unwrap_or_default());
        let ending = rest.get(end..).unwrap_or_default();
        at += end + if ending.starts_with("\r\n") { 2 } else { usize::from(!ending.is_empty()) };
        Some(line)
    })
}

/// The cues of a caption file. What has no line of times (header, note, style, region) is none; an empty line or the next
/// line of times ends a cue.
fn cues(text: &str) -> Vec<Cue<'_>> {
    let mut all: Vec<Cue<'_>> = Vec::new();
    let mut open = false;
    for (at, line) in lines(text) {
        if line.trim().is_empty() {
            open = false;
        } else if line.contains(ARROW) {
            if open && let Some(last) = all.last_mut() {
                // No empty line stood between: the number of this cue was taken for text of the one before.
                last.lines.pop_if(|(_, line)| line.trim().bytes().all(|c| c.is_ascii_digit()));
            }
            open = match times(line) {
                Some((start, end)) => {
                    all.push(Cue { start, end, lines: Vec::new() });
                    true
                }
                None => false,
            };
        } else if open && let Some(last) = all.last_mut() {
            last.lines.push((at, line));
        }
    }
    all
}

/// The start and the end of a cue; settings may follow.
fn times(line: &str) -> Option<(u64, u64)> {
    let (start, rest) = line.split_once(ARROW)?;
    Some((milliseconds(start.trim())?, milliseconds(rest.split_whitespace().next()?)?))
}

/// Reads `01:02:03.450`, `02:03.450` (WebVTT) or `01:02:03,450` (SRT).
fn milliseconds(time: &str) -> Option<u64> {
    let (clock, fraction) = time.split_once(['.', ','])?;
    if !(1..=3).contains(&fraction.len()) {
        return None;
    }
    let add = |sum: u64, part: &str| sum.checked_mul(60)?.checked_add(part.parse::<u64>().ok()?);
    let seconds = clock.split(':').try_fold(0u64, add)?;
    seconds.checked_mul(1000)?.checked_add(fraction.parse::<u64>().ok()?)
}

/// The text of a cue line without tags (`<v Name>`, `<i>`, `<00:19.000>`, `{\an8}`), with character references read.
fn cue_text(line: &str, at: usize, plain: &mut Plain) {
    let mut rest = line;
    let mut from = at;
    while !rest.is_empty() {
        let mark = rest.find(['<', '{', '&']).unwrap_or(rest.len());
        let (text, tail) = rest.split_at(mark);
        plain.push(text, from);
        from += text.len();
        let (shown, taken) = special(tail);
        let source = Span::new(from, from + taken);
        if tail.get(..taken) == Some(shown) {
            plain.push(shown, from);
        } else {
            plain.push_as(shown, source);
        }
        from += taken;
        rest = tail.get(taken..).unwrap_or_default();
    }
}

/// What a `<`, `{` or `&` at the beginning of a text shows, and how many bytes of the source it takes.
fn special(text: &str) -> (&str, usize) {
    const REFERENCES: &[(&str, &str)] = &[
        ("&amp;", "&"),
        ("&lt;", "<"),
        ("&gt;", ">"),
        ("&nbsp;", "\u{A0}"),
        ("&shy;", "\u{AD}"),
        ("&lrm;", ""),
        ("&rlm;", ""),
        ("&quot;", "\""),
        ("&apos;", "'"),
        ("&#39;", "'"),
    ];
    let second = text.get(1..).and_then(|rest| rest.chars().next());
    match text.chars().next() {
        Some('<') if second.is_some_and(|c| c.is_alphanumeric() || matches!(c, '/' | '.')) => {
            ("", text.find('>').map_or(text.len(), |end| end + 1))
        }
        Some('{') if second == Some('\\') => ("", text.find('}').map_or(text.len(), |end| end + 1)),
        Some('&') => match REFERENCES.iter().find(|(name, _)| text.starts_with(name)) {
            Some((name, shown)) => (shown, name.len()),
            None => ("&", 1),
        },
        Some(c) => (text.get(..c.len_utf8()).unwrap_or_default(), c.len_utf8()),
        None => ("", 0),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn read(text: &str) -> Vec<String> {
        blocks(text).into_iter().map(|block| block.plain.text.clone()).collect()
    }

    /// The parts of a file that the WebVTT specification describes: header text, comment, style, region, identifiers,
    /// settings, spans, timestamps inside, character references (sections 1.2 to 1.9 and 4; the text is ours).
    #[test]
    fn webvtt() {
        let text = "\u{FEFF}WEBVTT - Kettlemoor, week 3\nKind: captions\n\nSTYLE\n::cue(b) { color: peachpuff }\n\nREGION\nid:left\nwidth:40%\n\nNOTE\nradail nerve in a note\n\nintro\n00:01.000 --> 00:04.000 align:start line:0\n<v Ines Marlow>The <i.loud>radial</i> nerve\nruns <00:02.500>behind\n\n00:04.000 --> 00:06.500\nthe humerus &amp; on&nbsp;it, 3 < 4.\n\n2\n00:00:09.000 --> 00:00:11.000\nA new {thought}.\n";
        assert_eq!(read(text), ["The radial nerve runs behind the humerus & on\u{A0}it, 3 < 4.", "A new {thought}."]);
    }

    /// SRT: numbers, commas in times, tags of fonts and places, any line ending, cues without an empty line between.
    #[test]
    fn srt() {
        let text = "1\r\n00:00:01,000 --> 00:00:02,000 X1:40 X2:600\r\n{\\an8}<font color=\"#fff\">The median</font>\r\nnerve\r\n\r\n2\r\n00:00:02,100 --> 00:00:03,000\r\npasses\r\n3\r\n00:00:03,100 --> 00:00:04,000\r\nthe 12\r\n";
        assert_eq!(read(text), ["The median nerve passes the 12"]);
        assert_eq!(read("1\r00:00:01,000 --> 00:00:02,000\rone\r\r2\r00:00:02,000 --> 00:00:03,000\rtwo"), ["one two"]);
    }

    #[test]
    fn the_way_back_is_exact() {
        let text =
            "WEBVTT\n\n00:01.000 --> 00:04.000\nthe flexor\n\n00:04.000 --> 00:05.000\n<b>pollicis</b> &amp; brevis\n";
        let block = blocks(text).pop().unwrap();
        for word in ["flexor", "pollicis", "brevis"] {
            let at = block.plain.text.find(word).unwrap();
            let span = Span::new(at, at + word.len());
            assert!(block.plain.is_verbatim(span));
            assert_eq!(block.plain.to_source(span).of(text), word);
        }
    }

    #[test]
    fn broken_files_are_read_as_far_as_they_go() {
        for text in [
            "",
            "WEBVTT",
            "-->",
            "00:00 --> x\nno cue",
            "1\n00:00:01,000 --> 00:00:02,000",
            "99999999999999999999:00.000 --> 1:00.000\nx",
        ] {
            assert!(read(text).is_empty(), "{text:?}");
        }
        assert_eq!(read("00:01.000 --> 00:02.000\nan <open tag"), ["an "]);
        assert_eq!(read("00:01.000 --> 00:02.000\n&unknown; & more <"), ["&unknown; & more <"]);
    }
}
