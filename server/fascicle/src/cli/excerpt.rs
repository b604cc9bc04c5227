//! Shows a place of a text: its lines, with a mark under what is meant.

use std::fmt::Write as _;

use fascicle_analysis::lines::LineIndex;
use fascicle_analysis::{Severity, Span};
use unicode_width::UnicodeWidthChar;

use super::paint::{Look, Paint, is_unsafe};

/// How many lines of a place that runs over several are shown.
const LINES: usize = 3;
const TAB: &str = "    ";
const CUT: &str = "…";

/// The lines of a place, each with its number and a mark below; long lines are cut around the place.
pub fn excerpt(text: &str, index: &LineIndex, span: Span, severity: Severity, columns: usize, paint: Paint) -> String {
    let first = line_of(index, text, span.start);
    let last = line_of(index, text, span.end.max(span.start + 1) - 1).max(first);
    let shown = last.min(first + LINES - 1);
    let digits = (shown + 1).to_string().len().max(3);
    let room = columns.saturating_sub(digits + 4).max(20);
    let mut out = String::new();
    for line in first..=shown {
        let bytes = index.line(line, text);
        let start = span.start.max(bytes.start).min(bytes.end);
        let end = span.end.clamp(start, bytes.end);
        let (body, mark) = line_and_mark(bytes.of(text), start - bytes.start, end - bytes.start, room);
        let number = paint.paint(Look::Faint, &format!(" {:>digits$} |", line + 1));
        let gutter = paint.paint(Look::Faint, &format!(" {:digits$} |", ""));
        let _ = writeln!(out, "{number} {body}");
        let _ = writeln!(out, "{gutter} {}", paint.paint(Look::Severity(severity), &mark));
    }
    if last > shown {
        let _ = writeln!(out, "  {:digits$}  {CUT} to line {}", "", last + 1);
    }
    // A mark is preceded by blanks that no one needs at the end of an empty line.
    out.lines().fold(String::new(), |all, line| all + line.trim_end() + "\n")
}

fn line_of(index: &LineIndex, text: &str, at: usize) -> usize {
    index.position(at, text, fascicle_analysis::lines::Encoding::Utf8).line as usize
}

/// A line as it is shown, and the marks for `start..end` (bytes of the line) below it.
fn line_and_mark(line: &str, start: usize, end: usize, room: usize) -> (String, String) {
    let mut cells: Vec<(String, usize, bool)> = Vec::new();
    for (at, c) in line.char_indices() {
        let shown = if c == '\t' {
            TAB.to_owned()
        } else if is_unsafe(c) {
            char::REPLACEMENT_CHARACTER.to_string()
        } else {
            c.to_string()
        };
        let width = shown.chars().map(|c| c.width().unwrap_or(0)).sum();
        cells.push((shown, width, at >= start && at < end));
    }
    let total: usize = cells.iter().map(|(_, width, _)| width).sum();
    let before: usize = cells.iter().take_while(|(.., marked)| !marked).map(|(_, width, _)| width).sum();
    // Columns that are shown, from `left` up to `right`.
    let (left, right) = if total <= room {
        (0, total)
    } else {
        let left = before.saturating_sub(room / 3).min(total - room);
        (left, left + room)
    };
    let (mut body, mut mark) = (String::new(), String::new());
    let mut column = 0;
    let mut lead = left > 0;
    for (shown, width, marked) in &cells {
        let next = column + width;
        if column >= left && next <= right && (*width > 0 || column > left || !body.is_empty()) {
            let cut = lead || (right < total && next == right);
            lead = false;
            if cut && *width > 0 {
                body.push_str(CUT);
                mark.push(' ');
                let rest = width.saturating_sub(1);
                body.push_str(&" ".repeat(rest));
                mark.push_str(&" ".repeat(rest));
            } else {
                body.push_str(shown);
                mark.push_str(&(if *marked { "^" } else { " " }).repeat(*width));
            }
        }
        column = next;
    }
    if start == end {
        // A place between two characters is marked at the one behind it.
        let before: usize = line
            .get(..start)
            .unwrap_or_default()
            .chars()
            .map(|c| if c == '\t' { TAB.len() } else { c.width().unwrap_or(0) })
            .sum();
        mark = format!("{}^", " ".repeat(before.saturating_sub(left)));
    }
    (body, mark.trim_end().to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn marked(line: &str, part: &str, room: usize) -> (String, String) {
        let start = line.find(part).unwrap_or(0);
        line_and_mark(line, start, start + part.len(), room)
    }

    #[test]
    fn marks_stand_below_what_they_mark() {
        assert_eq!(marked("the deltiod", "deltiod", 40), ("the deltiod".into(), "    ^^^^^^^".into()));
        assert_eq!(marked("\tab", "b", 40), ("    ab".into(), "     ^".into()));
        assert_eq!(marked("三角筋 deltoid", "deltoid", 40).1, "       ^^^^^^^");
        assert_eq!(marked("mu\u{308}sculus x", "x", 40).1, "         ^");
        assert_eq!(marked("\u{1b}[31m x", "x", 40), ("\u{FFFD}[31m x".into(), "      ^".into()));
    }

    #[test]
    fn a_long_line_is_cut_around_the_place() {
        let line = format!("{} deltiod {}", "word ".repeat(60), "word ".repeat(60));
        let (body, mark) = marked(&line, "deltiod", 60);
        assert_eq!(body.chars().count(), 60);
        assert!(body.starts_with('…') && body.ends_with('…'), "{body}");
        let at = mark.find('^').unwrap_or(0);
        assert_eq!(body.chars().skip(at).take(7).collect::<String>(), "deltiod");
        assert_eq!(mark.trim_start(), "^^^^^^^");
    }
}
