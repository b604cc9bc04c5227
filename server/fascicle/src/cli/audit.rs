//! `fascicle facts --verify`, `--audit` and `--coverage`: whether the vocabulary and a course's overlays hold together, on
//! what the facts rest, and what there is.

use std::io::{self, Write};
use std::path::PathBuf;

use fascicle_vocab::audit::{MEMORY, PRACTICE, Tally};
use fascicle_vocab::read::{File, read};
use fascicle_vocab::{Vocabulary, audit, check, coverage};

use super::check::counted;
use super::paint::{Look, Paint};
use super::{Status, complain};

/// How many of the weakest places are listed.
const WEAKEST: usize = 40;

/// Checks the built-in vocabulary, with overlay files laid over it if there are any.
///
/// # Errors
/// Standard output could not be written.
pub fn verify(vocabulary: &Vocabulary, overlays: &[PathBuf], out: &mut impl Write) -> io::Result<Status> {
    let mut texts = Vec::new();
    for path in overlays {
        match std::fs::read_to_string(path) {
            Ok(text) => texts.push((path.display().to_string(), text)),
            Err(error) => {
                complain(&format!("{}: {error}", path.display()));
                return Ok(Status::Failed);
            }
        }
    }
    let files: Vec<File<'_>> = texts.iter().map(|(name, text)| File { name, text }).collect();
    let (laid, mut problems) = read(&files, Some(vocabulary));
    problems.extend(check::check(&laid));
    for problem in &problems {
        // What a course breaks may show at an entry that it did not touch.
        let own = files.iter().any(|file| file.name == problem.file);
        writeln!(out, "{}{problem}", if own { "" } else { "built in, " })?;
    }
    let facts = counted(laid.fact_count(), "fact", "facts");
    let entries = counted(laid.entries().len(), "structure", "structures");
    writeln!(out, "{} in {facts} about {entries}.", counted(problems.len(), "problem", "problems"))?;
    Ok(if problems.is_empty() { Status::Clean } else { Status::Found })
}

/// Says on what the facts rest.
///
/// # Errors
/// Standard output could not be written.
pub fn audit(vocabulary: &Vocabulary, paint: Paint, out: &mut impl Write) -> io::Result<Status> {
    let audit = audit::audit(vocabulary);
    let Tally { facts, several, one, practice, memory } = audit.all;
    let title = format!("{facts} facts, {} of them read in a work, {memory} from memory alone", audit.all.checked());
    writeln!(out, "{}", paint.paint(Look::Title, &title))?;
    writeln!(out, "\n{}", paint.paint(Look::Heading, "What they rest on"))?;
    let classes = [
        (several, "two or more works"),
        (one, "one work"),
        (practice, "common practice of the trade"),
        (memory, "memory, not yet checked"),
    ];
    for (count, what) in classes {
        writeln!(out, "{count:>7}  {:>3} %  {what}", percent(count, facts))?;
    }
    writeln!(out, "\n{}", paint.paint(Look::Heading, "By kind of fact: all, read in a work, common practice, memory"))?;
    for (word, tally) in &audit.by_kind {
        let checked = tally.checked();
        writeln!(out, "{:>7} {checked:>6} {:>6} {:>6}  {word}", tally.facts, tally.practice, tally.memory)?;
    }
    writeln!(out, "\n{}", paint.paint(Look::Heading, "By source"))?;
    let mut sources: Vec<(&String, &usize)> = audit.by_source.iter().collect();
    sources.sort_by(|a, b| b.1.cmp(a.1).then(a.0.cmp(b.0)));
    for (id, count) in sources {
        let source = vocabulary.sources().iter().find(|source| source.id == *id);
        let title = source.map_or("", |source| &*source.title);
        let open = match &**id {
            MEMORY | PRACTICE => "",
            _ if source.is_some_and(|source| source.open) => " (open)",
            _ => " (not open)",
        };
        writeln!(out, "{count:>7}  {id}: {title}{open}")?;
    }
    let heading = "Weakest: muscles and nerves whose supply, segments or origin rest on memory alone";
    writeln!(out, "\n{}", paint.paint(Look::Heading, heading))?;
    for (id, words) in audit.weakest.iter().take(WEAKEST) {
        writeln!(out, "  {}: {}", vocabulary.name(*id), words.join(", "))?;
    }
    if let Some(more) = audit.weakest.len().checked_sub(WEAKEST).filter(|more| *more > 0) {
        writeln!(out, "  and {more} more")?;
    }
    Ok(Status::Clean)
}

/// Lists what there is, by region, as Markdown.
///
/// # Errors
/// Standard output could not be written.
pub fn coverage(vocabulary: &Vocabulary, out: &mut impl Write) -> io::Result<Status> {
    write!(out, "{}", coverage::page(vocabulary))?;
    Ok(Status::Clean)
}

const fn percent(part: usize, whole: usize) -> usize {
    if whole == 0 { 0 } else { (200 * part + whole) / (2 * whole) }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;

    fn said(overlay: &str) -> (Status, String) {
        let folder = std::env::temp_dir().join(format!("fascicle-verify-{}-{}", std::process::id(), overlay.len()));
        std::fs::create_dir_all(&folder).unwrap();
        let path = folder.join("local.toml");
        std::fs::write(&path, overlay).unwrap();
        let mut out = Vec::new();
        let status = verify(&fascicle_vocab::built_in(), &[path], &mut out).unwrap();
        std::fs::remove_dir_all(&folder).unwrap();
        (status, String::from_utf8(out).unwrap())
    }

    #[test]
    fn verifies_the_vocabulary_and_overlays() {
        let mut out = Vec::new();
        assert_eq!(verify(&fascicle_vocab::built_in(), &[], &mut out).unwrap(), Status::Clean);
        assert!(out.starts_with(b"0 problems in "));
        let (status, text) = said("[[muscle]]\nid = \"deltoid\"\nroots = [{ main = \"C5\", src = \"practice\" }]\n");
        assert_eq!(status, Status::Clean, "{text}");
        let (status, text) =
            said("\n[[muscle]]\nid = \"deltoid\"\nnerves = [{ nerve = \"axilary-nerve\", src = \"memory\" }]\n");
        assert_eq!(status, Status::Found);
        assert!(text.contains("local.toml:4: ") && text.contains("did you mean `axillary-nerve`?"), "{text}");
    }

    #[test]
    fn counts_on_what_the_facts_rest() {
        let vocabulary = fascicle_vocab::built_in();
        let all = audit::audit(&vocabulary).all;
        assert_eq!(all.facts, all.several + all.one + all.practice + all.memory);
        assert_eq!(all.facts, vocabulary.fact_count());
    }
}
