//! What a section says of the muscles of the nerve that its heading names, and what it leaves out.

use fascicle_model::{EntryId, Kind, Vocabulary};

use super::outline::{self, Section};
use super::places;
use crate::reading::Reading;
use crate::tables;

/// What a section covers of a nerve.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Coverage {
    /// The section.
    pub section: Section,
    /// The nerve or group that its heading names.
    pub subject: EntryId,
    /// Its muscles that the section names.
    pub covered: Vec<EntryId>,
    /// Its muscles that it does not name.
    pub missing: Vec<EntryId>,
}

impl Coverage {
    /// One line: "9 of 12 muscles; missing: …". No more than four are named.
    pub fn line(&self, vocabulary: &Vocabulary) -> String {
        let all = self.covered.len() + self.missing.len();
        let count = format!("{} of {all} {}", self.covered.len(), if all == 1 { "muscle" } else { "muscles" });
        if self.missing.is_empty() {
            return count;
        }
        let names: Vec<&str> = self.missing.iter().take(4).map(|id| vocabulary.name(*id)).collect();
        let more = self.missing.len().saturating_sub(4);
        let tail = if more > 0 { format!(" and {more} more") } else { String::new() };
        format!("{count}; missing: {}{tail}", names.join(", "))
    }
}

/// What the sections of a document cover.
pub fn coverage(reading: &Reading, len: usize, vocabulary: &Vocabulary) -> Vec<Coverage> {
    let named: Vec<(usize, EntryId)> = places::all(reading)
        .flat_map(|place| place.entries.into_iter().map(move |id| (place.span.start, id)))
        .collect();
    outline::outline(reading, len)
        .into_iter()
        .filter_map(|section| {
            let subject = *section.entries.first()?;
            let is_taught = matches!(vocabulary.kind(subject), Kind::Nerve | Kind::Group);
            let muscles = if is_taught { tables::muscles(vocabulary, subject) } else { Vec::new() };
            if muscles.is_empty() || section.entries.len() > 1 {
                return None;
            }
            let within: Vec<EntryId> = named
                .iter()
                .filter(|(at, _)| section.span.start <= *at && *at < section.span.end)
                .map(|(_, id)| *id)
                .collect();
            let is_named = |muscle: &EntryId| {
                let family =
                    std::iter::once(*muscle).chain(vocabulary.all_parts(*muscle)).chain(vocabulary.wholes(*muscle));
                family.into_iter().any(|id| within.contains(&id))
            };
            let (covered, missing) = muscles.into_iter().partition(is_named);
            Some(Coverage { section, subject, covered, missing })
        })
        .collect()
}
