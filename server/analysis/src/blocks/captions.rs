//! Captions to blocks: WebVTT (W3C, <https://www.w3.org/TR/webvtt1/>) and SRT.
//!
//! Cues are read as running text: a sentence goes on from one cue to the next, so all cue text is one plain text with a
//! blank between cues. Cue identifiers, timings, settings, notes, styles and tags are no text. A pause of a second or
//! more ends a block, for a speaker who pauses that long has ended a sentence.

use super::{Block, BlockKind};
use crate::text::{Plain, Span};

/// A silence between two cues, in milliseconds, that ends a block.
const PAUSE: u64 = 1_000;

/// Cuts captions into blocks.
pub fn blocks(text: &str) -> Vec<Block> {
    let mut list = Vec::new();
    let mut open: Option<(Plain, Span)> = None;
    let mut last_end = None;
    for (times, lines) in cues(text) {
        let Some((start, end)) = times else { continue };
        if last_end.is_some_and(|last: u64| start.saturating_sub(last) >= PAUSE) {
            close(&mut open, &mut list);
        }
        last_end = Some(end);
        for (at, line) in lines {
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
        list.push(Block { kind: BlockKind::Caption, span, plain, heading: None, parent: None, quoted: false });
    }
}

type Lines<'t> = Vec<(usize, &'t str)>;

/// The cues of a caption file: start and end in milliseconds (`None` for what is no cue) and the lines of text.
fn cues(text: &str) -> Vec<(Option<(u64, u64)>, Lines<'_>)> {
    let mut all = Vec::new();
    let mut group: Lines<'_> = Vec::new();
    let mut at = 0;
    for line in text.split_inclusive('\n') {
        let bare = line.trim_end_matches(['\n', '\r']);
        if bare.trim().is_empty() {
            all.push(cue(std::mem::take(&mut group)));
        } else {
            group.push((at, bare));
        }
        at += line.len();
    }
    all.push(cue(group));
    all
}

fn cue(mut lines: Lines<'_>) -> (Option<(u64, u64)>, Lines<'_>) {
    let Some(place) = lines.iter().position(|(_, line)| line.contains("-->")) else { return (None, Vec::new()) };
    let times = lines.get(place).and_then(|(_, line)| {
        let (start, rest) = line.split_once("-->")?;
        Some((milliseconds(start.trim())?, milliseconds(rest.split_whitespace().next()?)?))
    });
    (times, lines.split_off(place + 1))
}

/// Reads `01:02:03.450`, `02:03.450` (WebVTT) or `01:02:03,450` (SRT).
fn milliseconds(time: &str) -> Option<u64> {
    let (clock, fraction) = time.split_once(['.', ','])?;
    let seconds = clock.split(':').try_fold(0u64, |sum, part| Some(sum * 60 + part.parse::<u64>().ok()?))?;
    Some(seconds * 1000 + fraction.parse::<u64>().ok()?)
}

/// The text of a cue line without tags (`<v Name>`, `<i>`, `{\an8}`).
fn cue_text(line: &str, at: usize, plain: &mut Plain) {
    let mut rest = line;
    let mut from = at;
    while !rest.is_empty() {
        let tag = rest.find(['<', '{']).unwrap_or(rest.len());
        let (text, tail) = rest.split_at(tag);
        plain.push(text, from);
        from += text.len();
        let closing = if tail.starts_with('<') { '>' } else { '}' };
        let end = tail.find(closing).map_or(tail.len(), |end| end + 1);
        from += end;
        rest = tail.get(end..).unwrap_or_default();
    }
}
