//! Applies fixes to a text, and writes the text back so that nothing can be lost.

use std::fs;
use std::io::Write;
use std::path::Path;

use fascicle_analysis::{Edit, Finding};

use super::files::reason;

/// How often a text is read anew after fixes, for fixes that touched each other.
pub const ROUNDS: usize = 8;

/// The edits of the safe fixes of the findings: of each finding the likeliest fix that is safe, whole or not at all. A fix
/// that would touch what an earlier one changes waits for the next round. Returns the edits in order, and how many fixes
/// they make.
pub fn safe_edits(findings: &[Finding]) -> (Vec<Edit>, usize) {
    let mut chosen: Vec<Edit> = Vec::new();
    let mut count = 0;
    for finding in findings {
        let Some(fix) = finding.fixes.iter().find(|fix| fix.safe && !fix.edits.is_empty()) else { continue };
        let mut trial = chosen.clone();
        trial.extend(fix.edits.iter().cloned());
        trial.sort_by_key(|edit| edit.span);
        if disjoint(&trial) {
            chosen = trial;
            count += 1;
        }
    }
    (chosen, count)
}

/// Whether sorted edits touch different places. Two insertions at one place do not, for their order would be a guess.
fn disjoint(edits: &[Edit]) -> bool {
    edits.windows(2).all(|pair| match pair {
        [first, second] => {
            first.span.end < second.span.start
                || first.span.end == second.span.start && !(first.span.is_empty() || second.span.is_empty())
        }
        _ => true,
    })
}

/// The text with edits applied. `None` if they overlap, are out of order or do not fit the text.
pub fn apply(text: &str, edits: &[Edit]) -> Option<String> {
    if !disjoint(edits) {
        return None;
    }
    let mut out = String::with_capacity(text.len());
    let mut at = 0;
    for edit in edits {
        out.push_str(text.get(at..edit.span.start)?);
        text.get(edit.span.start..edit.span.end)?;
        out.push_str(&edit.text);
        at = edit.span.end;
    }
    out.push_str(text.get(at..)?);
    Some(out)
}

/// Puts `new` in the place of the file that held `old`. The text is written to a temporary file beside it, forced to the
/// disk, and takes the file's name in one step: at every moment the file is whole, old or new. Permissions stay; a symbolic
/// link stays one.
///
/// # Errors
/// One line that says why the file was left as it was.
pub fn replace(path: &Path, old: &str, new: &str) -> Result<(), String> {
    let say = |error: &std::io::Error| format!("not changed: {}", reason(error));
    let path = path.canonicalize().map_err(|error| say(&error))?;
    let permissions = fs::metadata(&path).map_err(|error| say(&error))?.permissions();
    if permissions.readonly() {
        return Err("not changed: it is read-only".to_owned());
    }
    let folder = path.parent().unwrap_or_else(|| Path::new("."));
    let mut file = tempfile::Builder::new()
        .prefix(".fascicle-")
        .suffix(".tmp")
        .tempfile_in(folder)
        .map_err(|error| format!("not changed: no new file can be made beside it ({error})"))?;
    file.write_all(new.as_bytes()).map_err(|error| say(&error))?;
    file.as_file().set_permissions(permissions).map_err(|error| say(&error))?;
    file.as_file().sync_all().map_err(|error| say(&error))?;
    if fs::read(&path).map_err(|error| say(&error))? != old.as_bytes() {
        return Err("not changed: somebody else changed it meanwhile; run again".to_owned());
    }
    file.persist(&path).map_err(|error| say(&error.error))?;
    // The new name is safe once the folder is on the disk too; not every system can do that.
    let _ = fs::File::open(folder).and_then(|folder| folder.sync_all());
    Ok(())
}

#[cfg(test)]
mod tests {
    use fascicle_analysis::{Edit, Span};

    use super::*;

    fn edit(start: usize, end: usize, text: &str) -> Edit {
        Edit { span: Span::new(start, end), text: text.to_owned() }
    }

    #[test]
    fn edits_apply_in_order_and_never_overlap() {
        assert_eq!(
            apply("the deltiod and bicpes", &[edit(4, 11, "deltoid"), edit(16, 22, "biceps")]).as_deref(),
            Some("the deltoid and biceps")
        );
        assert_eq!(apply("abc", &[edit(0, 2, "x"), edit(1, 3, "y")]), None);
        assert_eq!(apply("abc", &[edit(1, 2, "x"), edit(0, 1, "y")]), None);
        assert_eq!(apply("abc", &[edit(1, 9, "x")]), None);
        assert_eq!(apply("aä", &[edit(1, 2, "x")]), None, "inside a character");
        assert_eq!(apply("abc", &[edit(1, 1, "x"), edit(1, 1, "y")]), None, "two insertions at one place");
        assert_eq!(apply("abc", &[edit(0, 1, "x"), edit(1, 2, "y")]).as_deref(), Some("xyc"));
    }
}
