//! Checks over a vocabulary that has been read.
//!
//! Reading already tells of unresolved references, unknown keys and missing sources. The checks here need the graph or
//! the whole stock of names: facts entered from both ends must agree ([`ends`]), nothing may go round in a circle and
//! nothing stand alone ([`shape`]), a muscle's segments must reach it through its nerves ([`supply`]), joints must allow
//! what muscles do at them ([`joints`]), and groups be as
//! many as they are said to be ([`counts`]); names must tell entries apart ([`names`]), agree in Latin ([`latin`]) and be
//! spelled in words that the vocabulary knows ([`words`]).

mod counts;
mod ends;
mod joints;
mod latin;
mod names;
mod shape;
mod supply;
mod words;

use std::collections::HashSet;

pub(crate) use names::plain;

use crate::entry::Kind;
use crate::{Entry, EntryId, Problem, Vocabulary};

/// Everything that the checks find wrong, in the order of files and lines.
pub fn check(vocabulary: &Vocabulary) -> Vec<Problem> {
    let facts = vocabulary.entries().iter().flat_map(|entry| &entry.facts);
    let mentioned = facts.flat_map(|fact| fact.relation.mentions()).collect();
    let mut problems = Problems { vocabulary, mentioned, list: Vec::new() };
    for (id, entry) in vocabulary.iter() {
        ends::both_ends(&mut problems, id, entry);
        shape::circles(&mut problems, id, entry);
        shape::alone(&mut problems, id, entry);
        shape::twice(&mut problems, entry);
        shape::identifiers(&mut problems, entry);
        latin::agreement(&mut problems, entry);
        match entry.kind {
            Kind::Muscle => {
                supply::muscle(&mut problems, id, entry);
                joints::actions(&mut problems, entry);
            }
            Kind::Nerve => supply::nerve(&mut problems, id, entry),
            Kind::Joint => joints::joint(&mut problems, entry),
            Kind::Group => counts::members(&mut problems, id, entry),
            _ => {}
        }
        if vocabulary.is_neural(id) {
            supply::segments_of_branch(&mut problems, id, entry);
        }
    }
    names::clashes(&mut problems);
    words::spelling(&mut problems);
    problems.list.sort_by(|a, b| (&a.file, a.line, &a.message).cmp(&(&b.file, b.line, &b.message)));
    problems.list
}

/// The list that the checks write to.
struct Problems<'v> {
    vocabulary: &'v Vocabulary,
    /// Entries of which a fact speaks.
    mentioned: HashSet<EntryId>,
    list: Vec<Problem>,
}

impl Problems<'_> {
    fn say(&mut self, entry: &Entry, line: Option<u32>, what: &str) {
        self.list.push(Problem {
            file: entry.file.clone(),
            line: line.unwrap_or(entry.line),
            message: format!("`{}` {what}", entry.id),
        });
    }
}
