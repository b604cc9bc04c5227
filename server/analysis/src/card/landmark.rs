//! The card of a landmark: what passes it, with what each nerve gives before and after, and what is attached to it.

use fascicle_model::{Entry, EntryId, Relation};

use super::Row;
use super::maker::{Maker, is_plain, merge, text};

impl Maker<'_> {
    pub(super) fn landmark(&mut self, id: EntryId) {
        self.course(id);
        self.passengers(id);
        for (title, test) in [
            ("Origin of", (|relation| matches!(relation, Relation::Origin { .. })) as fn(&Relation) -> bool),
            ("Insertion of", |relation| matches!(relation, Relation::Insertion { .. })),
            ("Bone of", |relation| matches!(relation, Relation::Bone { .. })),
            ("Ligament of", |relation| matches!(relation, Relation::Ligament { .. })),
            ("Moved by", |relation| matches!(relation, Relation::Acts { .. })),
        ] {
            let mut ids: Vec<EntryId> = Vec::new();
            let mut sources = Vec::new();
            for (owner, fact) in self.vocabulary.pointing_at(id) {
                if test(&fact.relation) && !fact.variant {
                    merge(&mut sources, &fact.sources);
                    if !ids.contains(&owner) {
                        ids.push(owner);
                    }
                }
            }
            if !ids.is_empty() {
                let row = Row { text: self.names(&ids), sources, ..Row::default() };
                self.section(title, vec![row]);
            }
        }
        self.bonds(id);
        self.family(id);
    }

    /// What a ligament is attached to, and what it keeps its joint from.
    fn bonds(&mut self, id: EntryId) {
        let (mut ends, mut limits) = (Vec::new(), Vec::new());
        for fact in &self.vocabulary.entry(id).facts {
            match &fact.relation {
                Relation::Binds { place } => ends.push(Self::row(fact, vec![self.entry(*place)])),
                Relation::Limits { motion, of } => {
                    let mut pieces = vec![text(motion.clone())];
                    pieces.extend(of.iter().flat_map(|of| [text(" of ".to_owned()), self.entry(*of)]));
                    limits.push(Self::row(fact, pieces));
                }
                _ => {}
            }
        }
        self.add("Attached to", ends, false);
        self.add("Limits", limits, false);
    }

    /// The nerves that pass a landmark, those that pass it as a rule first; what happens to each there; and what it has
    /// given before and gives after, for that is what a lesion there spares and what it takes. Then who is injured there.
    fn passengers(&mut self, id: EntryId) {
        let (mut usual, mut at_times) = (Vec::new(), Vec::new());
        for (owner, entry) in self.vocabulary.iter() {
            let rows = self.passenger(owner, entry, id);
            let Some(first) = rows.first() else { continue };
            if first.variant { at_times.extend(rows) } else { usual.extend(rows) }
        }
        usual.extend(at_times);
        self.section("What passes, with what each gives before and after", usual);
        let mut injured = Vec::new();
        for (owner, fact) in self.vocabulary.pointing_at(id) {
            if let Relation::Injured { cause, .. } = &fact.relation {
                let mut pieces = vec![self.entry(owner)];
                pieces.extend(cause.iter().map(|cause| text(format!(": {cause}"))));
                injured.push(Self::row(fact, pieces));
            }
        }
        self.add("Nerves injured here", injured, true);
    }

    /// What a nerve does at a landmark, nothing if it has nothing to do with it.
    fn passenger(&self, owner: EntryId, entry: &Entry, landmark: EntryId) -> Vec<Row> {
        let mut head: Option<Row> = None;
        let mut place: Option<usize> = None;
        let mut here: Vec<Row> = Vec::new();
        let mut is_told: Vec<EntryId> = Vec::new();
        for (number, fact) in entry.facts.iter().enumerate() {
            match &fact.relation {
                Relation::Passes { landmark: at, how } if *at == landmark => {
                    let how = how.as_ref().map(|how| text(format!(", {how} it")));
                    let row = Self::row(fact, std::iter::once(self.entry(owner)).chain(how).collect());
                    if head.as_ref().is_none_or(|head| head.variant && !row.variant) {
                        (head, place) = (Some(row), Some(number));
                    }
                }
                Relation::ArisesFrom { from, .. } if *from == landmark => {
                    here.push(Self::row(fact, vec![text("arises")]));
                }
                Relation::Gives { nerve: id, at: Some(at) }
                | Relation::ContinuesAs { nerve: id, at: Some(at) }
                | Relation::Supplies { muscle: id, at: Some(at) }
                    if *at == landmark =>
                {
                    let verb = match fact.relation {
                        Relation::Gives { .. } => "gives ",
                        Relation::Supplies { .. } => "supplies ",
                        _ => "continues as ",
                    };
                    is_told.push(*id);
                    let row = Self::row(fact, vec![self.entry(*id)]);
                    match here.last_mut().filter(|last| last.text.first() == Some(&text(verb))) {
                        Some(last) if is_plain(last) && is_plain(&row) => {
                            last.text.push(text(", "));
                            last.text.extend(row.text);
                            merge(&mut last.sources, &row.sources);
                        }
                        _ => here.push(Row { text: std::iter::once(text(verb)).chain(row.text).collect(), ..row }),
                    }
                    let last = matches!(fact.relation, Relation::ContinuesAs { .. });
                    place = place.or(Some(if last { entry.facts.len() } else { number }));
                }
                _ => {}
            }
        }
        if head.is_none() && here.is_empty() {
            return Vec::new();
        }
        let variant = head.is_none() && here.iter().all(|row| row.variant);
        let head = head.unwrap_or_else(|| Row { text: vec![self.entry(owner)], variant, ..Row::default() });
        if variant {
            return here.into_iter().map(|row| Row { label: head.text.clone(), ..row }).collect();
        }
        let mut rows = vec![head];
        let beside = |before: bool| -> Option<Row> {
            let place = place?;
            let mut ids = Vec::new();
            for (number, step) in entry.facts.iter().enumerate().filter(|(_, step)| !step.variant) {
                let (id, is_before) = match step.relation {
                    Relation::Gives { nerve: id, .. }
                    | Relation::Supplies { muscle: id, .. }
                    | Relation::Feels { target: id } => (id, number < place),
                    // Wherever it is written, a nerve goes on as another at its end.
                    Relation::ContinuesAs { nerve: id, .. } => (id, false),
                    _ => continue,
                };
                if is_before == before && !ids.contains(&id) && !is_told.contains(&id) {
                    ids.push(id);
                }
            }
            let label = vec![text(if before { "before" } else { "after" })];
            (!ids.is_empty()).then(|| Row { depth: 1, label, text: self.names(&ids), ..Row::default() })
        };
        rows.extend(beside(true));
        rows.extend(here.into_iter().map(|row| Row { depth: 1, label: vec![text("here")], ..row }));
        rows.extend(beside(false));
        rows
    }
}
