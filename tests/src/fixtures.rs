//! Fixtures: small Markdown texts with what is expected marked in place.
//!
//! What is expected stands in comments right under the lines that it is about, so a case costs three lines:
//!
//! ```text
//! Deltoid is supplied by the radial nerve.
//! <!-- ^ wrong-nerve: "radial nerve" > axillary nerve -->
//!
//! ```
//!
//! A `^` line is a finding: its code, the text that it marks, and what its first fix would put there. In a file whose
//! first line is `<!-- claims -->` the claims are told as well, on `=` lines: kind, verdict, parts. These lines are taken
//! out before the text is read. [`render`] puts them in again from what was found; a fixture passes when that gives the
//! file itself, so whatever is not marked must not be found.
//!
//! What is found and should not be is marked with a `!` before the sign (`<!-- !^ …`), what should be found and is not, by
//! an ordinary comment (`<!-- missed: … -->`). So the file says what is true, and the test still notices every change.

use fascicle_analysis::claims::What;
use fascicle_analysis::{Finding, Form, Settings, Span};
use fascicle_analysis::{Knowledge, reading};

/// First line of a fixture that tells its claims too.
pub const WITH_CLAIMS: &str = "<!-- claims -->";

/// The text without the lines that tell what is expected.
pub fn strip(fixture: &str) -> String {
    fixture.split_inclusive('\n').filter(|line| !is_marker(line)).collect()
}

/// Whether a line tells what is expected.
pub fn is_marker(line: &str) -> bool {
    let line = line.strip_prefix("<!-- ").unwrap_or_default();
    let line = line.strip_prefix('!').unwrap_or(line);
    line.starts_with("^ ") || line.starts_with("= ")
}

/// The fixture as it would be if everything that is found were expected. `fixture` may hold expectations or none.
pub fn render(fixture: &str, knowledge: &Knowledge) -> String {
    let text = strip(fixture);
    let reading = reading::read(&text, Form::Markdown, knowledge, &Settings::default());
    let mut markers: Vec<(usize, String)> = Vec::new();
    if text.starts_with(WITH_CLAIMS) {
        for (claim, judgement) in &reading.claims {
            let parts: Vec<String> = claim
                .parts
                .iter()
                .map(|part| match part.what {
                    What::Word(word) => format!("{} {word}", part.role.word()),
                    _ => format!("{} {}", part.role.word(), quoted(part.span, &text)),
                })
                .collect();
            let line = format!("<!-- = {} {}: {} -->\n", claim.kind.word(), judgement.verdict.word(), parts.join(", "));
            markers.push((block_end(&text, claim.span.end), line));
        }
    }
    for finding in &reading.findings {
        let fix = first_fix(finding).map(|fix| format!(" > {fix}")).unwrap_or_default();
        let line = format!("<!-- ^ {}: {}{fix} -->\n", finding.code, quoted(finding.span, &text));
        markers.push((block_end(&text, finding.span.end), line));
    }
    markers.sort_by_key(|(at, _)| *at);
    let mut out = String::with_capacity(text.len() * 2);
    let mut from = 0;
    for (at, line) in markers {
        let known_to_be_wrong = line.replacen("<!-- ", "<!-- !", 1);
        let line = if fixture.contains(&known_to_be_wrong) { known_to_be_wrong } else { line };
        out.push_str(text.get(from..at).unwrap_or_default());
        if !out.is_empty() && !out.ends_with('\n') {
            out.push('\n');
        }
        out.push_str(&line);
        from = from.max(at);
    }
    out.push_str(text.get(from..).unwrap_or_default());
    out
}

/// The lines of one fixture that the other lacks, a duplicate counted as often as it stands there.
pub fn lacking<'a>(of: &'a str, in_: &str) -> Vec<&'a str> {
    let mut there: Vec<&str> = in_.lines().collect();
    of.lines()
        .filter(|line| match there.iter().position(|other| other == line) {
            Some(at) => {
                there.swap_remove(at);
                false
            }
            None => true,
        })
        .collect()
}

/// What the first fix writes, its edits joined.
fn first_fix(finding: &Finding) -> Option<String> {
    let edits = &finding.fixes.first()?.edits;
    let texts: Vec<String> = edits.iter().map(|edit| escaped(&edit.text)).collect();
    Some(texts.join(" + "))
}

fn quoted(span: Span, text: &str) -> String {
    format!("\"{}\"", escaped(span.of(text)))
}

/// On one line, and without what would end the comment.
fn escaped(text: &str) -> String {
    text.replace('\n', "\\n").replace('\r', "\\r").replace("-->", "--\\>")
}

/// The end of the run of lines that are not empty, from a place on.
fn block_end(text: &str, at: usize) -> usize {
    let mut end = at.min(text.len());
    // A range that ends with its line's end belongs to that line.
    if end > 0 && text.as_bytes().get(end - 1) == Some(&b'\n') {
        end -= 1;
    }
    for line in text.get(end..).unwrap_or_default().split_inclusive('\n') {
        if end > at && line.trim().is_empty() {
            break;
        }
        end += line.len();
    }
    end
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn finds_the_end_of_a_block() {
        let text = "One two\nthree.\n\nFour.\n";
        assert_eq!(block_end(text, 3), 15);
        assert_eq!(block_end(text, 14), 15);
        assert_eq!(block_end(text, 16), text.len());
        assert_eq!(block_end("end", 3), 3);
    }

    #[test]
    fn takes_out_only_its_own_lines() {
        let fixture =
            "A.\n<!-- ^ x: \"A\" -->\n<!-- !^ y: \"B\" -->\n<!-- a comment -->\n<!-- = supply agrees: -->\nB.\n";
        assert_eq!(strip(fixture), "A.\n<!-- a comment -->\nB.\n");
        assert_eq!(
            lacking(fixture, &strip(fixture)),
            ["<!-- ^ x: \"A\" -->", "<!-- !^ y: \"B\" -->", "<!-- = supply agrees: -->"]
        );
    }

    #[test]
    fn renders_what_is_found_and_nothing_else() {
        let knowledge = Knowledge::new(fascicle_vocab::built_in());
        let fixture = "Nothing to see.\n<!-- ^ x: \"see\" -->\n";
        assert_eq!(render(fixture, &knowledge), "Nothing to see.\n");
    }
}
