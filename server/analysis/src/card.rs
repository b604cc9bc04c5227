//! The card of a structure: what a hover or the terminal shows of it.
//!
//! [`card`] gathers what the vocabulary holds into plain data: a title, and sections of rows whose pieces are texts and
//! links to other entries. [`markdown`] writes it for editors; the terminal lays out the same data in its own way. Which
//! sections there are depends on the kind of the entry; none of them names a structure.

use std::fmt::Write as _;

use fascicle_model::graph::RootReading;
use fascicle_model::{
    Citation, Entry, EntryId, Fact, Kind, Modality, Region, Relation, Role, Segments, Standing, Vocabulary,
};

/// What a reader is told wherever the effect of a lesion is shown.
pub const CAUTION: &str = "For teaching, not for diagnosis or treatment: people vary, and the course's adopted \
                           reference, local rules and licensed practice decide.";

/// What stands between the steps of a path.
const ARROW: &str = " → ";

/// Joints, or other targets, with the muscles that move them and how much each does.
type Movers = Vec<(EntryId, Vec<(EntryId, Role)>)>;

/// Facts, each with the entry at which it stands.
type OwnedFacts<'v> = Vec<(EntryId, &'v Fact)>;

/// A stretch of a row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Piece {
    /// Text.
    Text(String),
    /// The preferred name of another entry.
    Entry(EntryId, String),
}

impl Piece {
    /// What a reader sees.
    pub fn text(&self) -> &str {
        match self {
            Self::Text(text) | Self::Entry(_, text) => text,
        }
    }
}

/// One line of a section.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Row {
    /// 0 at the margin, 1 below the row above.
    pub depth: u8,
    /// What the row is about ("Origin", a joint, a part).
    pub label: Vec<Piece>,
    /// What it says.
    pub text: Vec<Piece>,
    /// Another source's reading, or an arrangement that some people have.
    pub variant: bool,
    /// Remarks.
    pub notes: Vec<String>,
    /// Where it was read.
    pub sources: Vec<Citation>,
}

/// Rows under a heading.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Section {
    /// The heading.
    pub title: String,
    /// Its rows, never none.
    pub rows: Vec<Row>,
    /// The section tells what a lesion does, and carries [`CAUTION`].
    pub caution: bool,
}

/// The card of an entry.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Card {
    /// The entry.
    pub id: EntryId,
    /// Its preferred name.
    pub title: String,
    /// What it is and where: "muscle, arm", "variant muscle (not everyone has it), thorax".
    pub what: String,
    /// International Latin name.
    pub latin: Option<String>,
    /// Other names, each with its standing.
    pub names: Vec<(Standing, String)>,
    /// One sentence.
    pub note: Option<String>,
    /// Where a course of its own writes or changes the entry: file and line.
    pub course: Option<(String, u32)>,
    /// The sections.
    pub sections: Vec<Section>,
    /// Short citations of every source of the card, each once.
    pub sources: Vec<String>,
}

/// Gathers the card of an entry.
pub fn card(vocabulary: &Vocabulary, id: EntryId) -> Card {
    let entry = vocabulary.entry(id);
    let mut maker = Maker { vocabulary, sections: Vec::new() };
    match entry.kind {
        Kind::Muscle => maker.muscle(id),
        Kind::Nerve | Kind::Plexus => maker.nerve(id),
        Kind::Joint => maker.joint(id),
        Kind::Root => maker.root(id),
        Kind::Landmark => maker.landmark(id),
        Kind::Skin => maker.skin(id),
        Kind::Group => maker.group(id),
        Kind::Movement => maker.movement(id),
    }
    let sections = maker.sections;
    let rows = sections.iter().flat_map(|section| &section.rows);
    let sources = bibliography(vocabulary, rows.flat_map(|row| &row.sources));
    Card {
        id,
        title: entry.name().to_owned(),
        what: what(entry),
        latin: entry.latin().map(str::to_owned),
        names: other_names(entry),
        note: entry.note.clone(),
        course: vocabulary.course_line(id).map(|(file, line)| (file.to_owned(), line)),
        sections,
        sources,
    }
}

/// The card of an entry as Markdown.
pub fn markdown(vocabulary: &Vocabulary, id: EntryId) -> String {
    let card = card(vocabulary, id);
    let mut out = format!("**{}** · {}\n", escape(&card.title), escape(&card.what));
    if let Some(latin) = &card.latin {
        let _ = write!(out, "\n*{}*\n", escape(latin));
    }
    if !card.names.is_empty() {
        let names: Vec<String> =
            card.names.iter().map(|(standing, text)| name_with_standing(*standing, text)).collect();
        let _ = write!(out, "\nAlso: {}\n", escape(&names.join(", ")));
    }
    if let Some(note) = &card.note {
        let _ = write!(out, "\n{}\n", escape(note));
    }
    for section in &card.sections {
        let _ = write!(out, "\n**{}**\n\n", escape(&section.title));
        for row in &section.rows {
            let indent = if row.depth == 0 { "" } else { "  " };
            let mut line = String::new();
            if !row.label.is_empty() {
                let _ = write!(line, "*{}:* ", escape(&text_of(&row.label)));
            }
            line.push_str(&escape(&text_of(&row.text)));
            line.push_str(&escape(&tail(vocabulary, row)));
            let _ = writeln!(out, "{indent}- {line}");
        }
        if section.caution {
            let _ = write!(out, "\n*{CAUTION}*\n");
        }
    }
    if !card.sources.is_empty() {
        let _ = write!(out, "\nSources: {}\n", escape(&card.sources.join("; ")));
    }
    if let Some((file, line)) = &card.course {
        let _ = write!(out, "\nFrom the course's own `{file}`, line {line}.\n");
    }
    out
}

/// What follows the text of a row: that it is a variant, who says so, and remarks.
pub fn tail(vocabulary: &Vocabulary, row: &Row) -> String {
    let mut marks: Vec<String> = Vec::new();
    if row.variant {
        let sources: Vec<String> = row.sources.iter().map(|citation| cite(vocabulary, citation)).collect();
        marks.push(format!("variant, {}", sources.join(", ")));
    }
    marks.extend(row.notes.iter().map(|note| note.trim_end_matches('.').to_owned()));
    if marks.is_empty() { String::new() } else { format!(" ({})", marks.join("; ")) }
}

/// The text of pieces, one after the other.
pub fn text_of(pieces: &[Piece]) -> String {
    pieces.iter().map(Piece::text).collect()
}

/// A name with its standing, where the standing says more than that it is a name.
pub fn name_with_standing(standing: Standing, text: &str) -> String {
    match standing {
        Standing::Preferred | Standing::Exact | Standing::Spelling | Standing::Short | Standing::Abbreviation => {
            text.to_owned()
        }
        Standing::Latin | Standing::Eponym | Standing::Former | Standing::Informal => {
            format!("{text} ({})", standing.word())
        }
    }
}

/// A citation in a few words: author and year, or the title, and the place.
pub fn cite(vocabulary: &Vocabulary, citation: &Citation) -> String {
    let work = work(vocabulary, &citation.source);
    citation.place.as_ref().map_or_else(|| work.clone(), |place| format!("{work}, {place}"))
}

/// Every work that is cited, once, each with all its places.
fn bibliography<'a>(vocabulary: &Vocabulary, citations: impl Iterator<Item = &'a Citation>) -> Vec<String> {
    let mut works: Vec<(&str, Vec<&str>)> = Vec::new();
    for citation in citations {
        let at = works.iter().position(|(source, _)| *source == citation.source).unwrap_or_else(|| {
            works.push((&citation.source, Vec::new()));
            works.len() - 1
        });
        if let (Some((_, places)), Some(place)) = (works.get_mut(at), citation.place.as_deref())
            && !places.contains(&place)
        {
            places.push(place);
        }
    }
    let list = works.into_iter().map(|(source, places)| {
        let work = work(vocabulary, source);
        if places.is_empty() { work } else { format!("{work} ({})", places.join(", ")) }
    });
    list.collect()
}

/// A work of the bibliography in a few words.
fn work(vocabulary: &Vocabulary, id: &str) -> String {
    let Some(source) = vocabulary.sources().iter().find(|source| source.id == id) else {
        return id.to_owned();
    };
    let name = match &source.author {
        Some(author) => {
            let first = author.split(", ").next().unwrap_or(author);
            let several = author.contains(", ") && !first.contains(" and ");
            if several { format!("{first} and others") } else { first.to_owned() }
        }
        None => source.title.split([':', '(']).next().unwrap_or_default().trim().to_owned(),
    };
    source.year.map_or_else(|| name.clone(), |year| format!("{name} {year}"))
}

/// Segments, the lesser ones told apart: "C7, C8; lesser C6".
pub fn segments(main: Segments, lesser: Segments) -> String {
    match (main.is_empty(), lesser.is_empty()) {
        (_, true) => main.to_string(),
        (true, false) => format!("lesser {lesser}"),
        (false, false) => format!("{main}; lesser {lesser}"),
    }
}

/// The way of the fibres from the roots (or the brainstem) to a nerve, in steps from above, the nerve last. Where several
/// structures stand side by side, a step holds them all. Only what carries one of `wanted` is followed, if any is wanted.
pub fn path_from_roots(vocabulary: &Vocabulary, nerve: EntryId, wanted: Segments) -> Vec<Vec<EntryId>> {
    let carries = |id: EntryId| {
        let segments = vocabulary.possible_segments(id);
        wanted.is_empty() || segments.is_empty() || !segments.intersection(wanted).is_empty()
    };
    let above = |id: EntryId| -> Vec<EntryId> {
        let mut all: Vec<EntryId> = vocabulary.origins(id, false).collect();
        if all.is_empty() {
            all.extend(vocabulary.entry(id).part_of);
        }
        let some: Vec<EntryId> = all.iter().copied().filter(|id| carries(*id)).collect();
        if some.is_empty() { all } else { some }
    };
    // The depth of a structure is its longest distance from the nerve, so that it stands above all that it gives.
    let mut depth: Vec<(EntryId, usize)> = vec![(nerve, 0)];
    let mut open = vec![nerve];
    let bound = vocabulary.entries().len();
    let mut rounds = 0;
    while let Some(id) = open.pop() {
        rounds += 1;
        if rounds > bound {
            break; // a circle, which the checks of the vocabulary forbid
        }
        let here = depth.iter().find(|(known, _)| *known == id).map_or(0, |(_, depth)| *depth);
        for parent in above(id) {
            match depth.iter_mut().find(|(known, _)| *known == parent) {
                Some((_, known)) if *known > here => {}
                Some((_, known)) => {
                    *known = here + 1;
                    open.push(parent);
                }
                None => {
                    depth.push((parent, here + 1));
                    open.push(parent);
                }
            }
        }
    }
    let deepest = depth.iter().map(|(_, depth)| *depth).max().unwrap_or(0);
    let (roots, others): (Vec<_>, Vec<_>) = depth.into_iter().partition(|(id, _)| vocabulary.kind(*id) == Kind::Root);
    let mut steps: Vec<Vec<EntryId>> = Vec::new();
    let mut first: Vec<EntryId> = roots.into_iter().map(|(id, _)| id).collect();
    first.sort_by_key(|id| vocabulary.possible_segments(*id).0);
    steps.push(first);
    for level in (0..=deepest).rev() {
        let mut step: Vec<EntryId> = others.iter().filter(|(_, depth)| *depth == level).map(|(id, _)| *id).collect();
        step.sort_unstable();
        steps.push(step);
    }
    steps.retain(|step| !step.is_empty());
    steps
}

/// The steps of [`path_from_roots`] in one line.
pub fn path_pieces(vocabulary: &Vocabulary, steps: &[Vec<EntryId>]) -> Vec<Piece> {
    let mut pieces = Vec::new();
    for (number, step) in steps.iter().enumerate() {
        if number > 0 {
            pieces.push(text(ARROW));
        }
        if step.iter().all(|id| vocabulary.kind(*id) == Kind::Root) && step.len() > 1 {
            let all = step.iter().fold(Segments::EMPTY, |all, id| all.union(vocabulary.possible_segments(*id)));
            pieces.push(text(all.to_string()));
        } else {
            for (place, id) in step.iter().enumerate() {
                if place > 0 {
                    pieces.push(text(" + "));
                }
                pieces.push(Piece::Entry(*id, short_name(vocabulary, *id).to_owned()));
            }
        }
    }
    pieces
}

/// The facts of an entry that an edge's test accepts, with their owner: its own and those of its parts; where there are
/// none that hold as a rule, those of the nearest whole that has any.
pub fn family_facts(vocabulary: &Vocabulary, id: EntryId, test: impl Fn(&Relation) -> bool) -> OwnedFacts<'_> {
    let own = |owner: EntryId| {
        let facts = vocabulary.entry(owner).facts.iter().filter(|fact| test(&fact.relation));
        facts.map(|fact| (owner, fact)).collect::<Vec<_>>()
    };
    let mut list = own(id);
    for part in vocabulary.all_parts(id) {
        list.extend(own(part));
    }
    if !list.iter().any(|(_, fact)| !fact.variant)
        && let Some(found) = vocabulary.wholes(id).into_iter().map(own).find(|found| !found.is_empty())
    {
        list.extend(found);
    }
    list
}

/// The muscles that a nerve supplies as a rule, itself and through the branches that it has as a rule, each once, in order.
pub fn usual_muscles(vocabulary: &Vocabulary, nerve: EntryId) -> Vec<EntryId> {
    let mut list = Vec::new();
    for branch in std::iter::once(nerve).chain(vocabulary.usual_descendants(nerve)) {
        for supply in vocabulary.twigs(branch) {
            if !supply.variant && !list.contains(&supply.muscle) {
                list.push(supply.muscle);
            }
        }
    }
    list
}

/// How a part is called where its whole is known; the preferred name of anything else.
pub fn short_name(vocabulary: &Vocabulary, id: EntryId) -> &str {
    let entry = vocabulary.entry(id);
    if entry.part_of.is_none() {
        return entry.name();
    }
    let listed = entry.names.iter().find(|name| name.standing == Standing::Short);
    entry.short.as_deref().or(listed.map(|name| &*name.text)).unwrap_or_else(|| entry.name())
}

fn what(entry: &Entry) -> String {
    let mut what = match (entry.kind, entry.class.as_deref()) {
        (Kind::Skin, Some("area") | None) => "area of skin".to_owned(),
        (Kind::Skin, Some("point")) => "key sensory point".to_owned(),
        (Kind::Plexus | Kind::Landmark | Kind::Group | Kind::Skin, Some(class)) => class.to_owned(),
        (Kind::Root, _) => "spinal segment".to_owned(),
        (kind, _) => kind.word().to_owned(),
    };
    if entry.kind == Kind::Muscle && entry.part_of.is_some() {
        "part of a muscle".clone_into(&mut what);
    }
    if entry.region.word() != "body" {
        let _ = write!(what, ", {}", entry.region.word());
    }
    if entry.variant {
        what.push_str(", not in everyone");
    }
    what
}

fn other_names(entry: &Entry) -> Vec<(Standing, String)> {
    let latin = entry.latin();
    let names = entry.names.iter().skip(1).filter(|name| Some(&*name.text) != latin);
    let mut list: Vec<(Standing, String)> = names.map(|name| (name.standing, name.text.clone())).collect();
    list.sort_by_key(|(standing, _)| *standing);
    list
}

fn text(text: impl Into<String>) -> Piece {
    Piece::Text(text.into())
}

fn joined(vocabulary: &Vocabulary, ids: &[EntryId], between: &str) -> Vec<Piece> {
    let mut pieces = Vec::new();
    for id in ids {
        if !pieces.is_empty() {
            pieces.push(text(between));
        }
        pieces.push(Piece::Entry(*id, vocabulary.name(*id).to_owned()));
    }
    pieces
}

fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        if matches!(c, '\\' | '*' | '_' | '`' | '[' | ']' | '<' | '>' | '|' | '#' | '~') {
            out.push('\\');
        }
        out.push(c);
    }
    out
}

struct Maker<'v> {
    vocabulary: &'v Vocabulary,
    sections: Vec<Section>,
}

impl Maker<'_> {
    fn entry(&self, id: EntryId) -> Piece {
        Piece::Entry(id, self.vocabulary.name(id).to_owned())
    }

    fn section(&mut self, title: &str, rows: Vec<Row>) {
        self.add(title, rows, false);
    }

    fn add(&mut self, title: &str, rows: Vec<Row>, caution: bool) {
        if !rows.is_empty() {
            self.sections.push(Section { title: title.to_owned(), rows, caution });
        }
    }

    fn row(fact: &Fact, pieces: Vec<Piece>) -> Row {
        Row {
            text: pieces,
            variant: fact.variant,
            notes: fact.note.iter().cloned().collect(),
            sources: fact.sources.clone(),
            ..Row::default()
        }
    }

    /// The label of a fact that stands at a part, or at the whole of a part.
    fn owner_label(&self, card: EntryId, owner: EntryId) -> Vec<Piece> {
        if owner == card {
            Vec::new()
        } else if self.vocabulary.entry(owner).part_of.is_some() && !self.vocabulary.wholes(card).contains(&owner) {
            vec![Piece::Entry(owner, short_name(self.vocabulary, owner).to_owned())]
        } else {
            vec![text("whole muscle")]
        }
    }

    fn names(&self, ids: &[EntryId]) -> Vec<Piece> {
        joined(self.vocabulary, ids, ", ")
    }

    fn muscle(&mut self, id: EntryId) {
        self.muscle_nerves(id);
        self.segments(id);
        self.attachments(id);
        self.actions(id);
        let members = family_facts(self.vocabulary, id, |relation| matches!(relation, Relation::Member { .. }));
        let mut rows: Vec<Row> = Vec::new();
        for (owner, fact) in members {
            if let Relation::Member { of } = fact.relation {
                let label = if owner == id { Vec::new() } else { self.owner_label(id, owner) };
                let row = Row { label, ..Self::row(fact, vec![self.entry(of)]) };
                if !rows.iter().any(|known| known.text == row.text) {
                    rows.push(row);
                }
            }
        }
        self.section("Compartment or group", rows);
        self.course(id);
        self.family(id);
    }

    fn muscle_nerves(&mut self, id: EntryId) {
        let facts = family_facts(self.vocabulary, id, |relation| matches!(relation, Relation::SuppliedBy { .. }));
        // Parts that share a nerve share a row.
        let mut groups: Vec<(EntryId, bool, OwnedFacts<'_>)> = Vec::new();
        for (owner, fact) in facts {
            let Relation::SuppliedBy { nerve } = fact.relation else { continue };
            match groups.iter_mut().find(|(known, variant, _)| *known == nerve && *variant == fact.variant) {
                Some((.., list)) => list.push((owner, fact)),
                None => groups.push((nerve, fact.variant, vec![(owner, fact)])),
            }
        }
        groups.sort_by_key(|(_, variant, _)| *variant);
        let wanted = self.vocabulary.roots_of(id).first().map_or(Segments::EMPTY, RootReading::all);
        let mut rows = Vec::new();
        for (nerve, variant, facts) in groups {
            let mut row = Row { text: vec![self.entry(nerve)], variant, ..Row::default() };
            let parts = self.vocabulary.parts(id);
            let whole = facts.iter().any(|(owner, _)| *owner == id)
                || (!parts.is_empty() && parts.iter().all(|part| facts.iter().any(|(owner, _)| owner == part)));
            for (owner, fact) in &facts {
                row.notes
                    .extend(fact.note.iter().filter(|note| !row.notes.contains(note)).cloned().collect::<Vec<_>>());
                merge(&mut row.sources, &fact.sources);
                if !whole {
                    if !row.label.is_empty() {
                        row.label.push(text(", "));
                    }
                    row.label.extend(self.owner_label(id, *owner));
                }
            }
            rows.push(row);
            let steps = path_from_roots(self.vocabulary, nerve, wanted);
            if steps.len() > 1 && !variant {
                rows.push(Row { depth: 1, text: path_pieces(self.vocabulary, &steps), ..Row::default() });
            }
        }
        self.section("Nerve", rows);
    }

    fn segments(&mut self, id: EntryId) {
        let mut rows: Vec<Row> = Vec::new();
        for reading in self.vocabulary.roots_of(id) {
            rows.push(Self::row(reading.fact, vec![text(segments(reading.main, reading.lesser))]));
        }
        let preferred = self.vocabulary.roots_of(id).first().map(|reading| (reading.main, reading.lesser));
        for part in self.vocabulary.all_parts(id) {
            for fact in &self.vocabulary.entry(part).facts {
                if let Relation::Roots { main, lesser } = fact.relation
                    && Some((main, lesser)) != preferred
                {
                    let label = self.owner_label(id, part);
                    rows.push(Row { label, ..Self::row(fact, vec![text(segments(main, lesser))]) });
                }
            }
        }
        self.section("Segments", rows);
    }

    fn attachments(&mut self, id: EntryId) {
        let mut rows: Vec<Row> = Vec::new();
        for (title, is_origin) in [("Origin", true), ("Insertion", false)] {
            let facts = family_facts(self.vocabulary, id, |relation| match relation {
                Relation::Origin { .. } => is_origin,
                Relation::Insertion { .. } => !is_origin,
                _ => false,
            });
            for (owner, fact) in facts {
                let (Relation::Origin { from: at } | Relation::Insertion { on: at }) = fact.relation else { continue };
                let mut label = vec![text(title)];
                let part = self.owner_label(id, owner);
                if !part.is_empty() {
                    label.push(text(", "));
                    label.extend(part);
                }
                let mut row = Row { label, ..Self::row(fact, vec![self.entry(at)]) };
                let notes = std::mem::take(&mut row.notes);
                if let Some(note) = notes.first().filter(|_| !fact.variant) {
                    row.text.push(text(format!(" ({})", note.trim_end_matches('.'))));
                } else {
                    row.notes = notes;
                }
                match rows.iter_mut().find(|known| known.label == row.label && !known.variant && !row.variant) {
                    Some(known) => {
                        known.text.push(text("; "));
                        known.text.extend(row.text);
                        merge(&mut known.sources, &row.sources);
                    }
                    None => rows.push(row),
                }
            }
        }
        self.section("Attachments", rows);
    }

    fn actions(&mut self, id: EntryId) {
        let is_action = |relation: &Relation| matches!(relation, Relation::Acts { .. });
        let mut facts = family_facts(self.vocabulary, id, is_action);
        // A part says only what it adds to its whole.
        for whole in self.vocabulary.wholes(id) {
            for fact in self.vocabulary.entry(whole).facts.iter().filter(|fact| is_action(&fact.relation)) {
                if !facts.iter().any(|(_, known)| known.relation == fact.relation) {
                    facts.push((whole, fact));
                }
            }
        }
        let mut rows: Vec<Row> = Vec::new();
        for (owner, fact) in facts {
            let Relation::Acts { movement, target, role } = fact.relation else { continue };
            let mut marks: Vec<String> = Vec::new();
            if owner != id {
                marks.push(text_of(&self.owner_label(id, owner)));
            }
            if role == Role::Assistant {
                marks.push(role.word().to_owned());
            }
            if fact.variant {
                marks.push("variant".to_owned());
            }
            marks.extend(fact.note.iter().map(|note| note.trim_end_matches('.').to_owned()));
            let mut pieces = vec![self.entry(movement)];
            if !marks.is_empty() {
                pieces.push(text(format!(" ({})", marks.join("; "))));
            }
            let label = vec![self.entry(target)];
            match rows.iter_mut().find(|row| row.label == label) {
                Some(row) => {
                    row.text.push(text(", "));
                    row.text.extend(pieces);
                    merge(&mut row.sources, &fact.sources);
                }
                None => rows.push(Row { label, text: pieces, sources: fact.sources.clone(), ..Row::default() }),
            }
        }
        self.section("Actions by joint", rows);
    }

    /// Wholes and parts, and for a part of the body the joints at which it is moved.
    fn family(&mut self, id: EntryId) {
        let counts = self.vocabulary.entry(id).facts.iter().filter_map(|fact| match &fact.relation {
            Relation::Count { of, number } => Some(Self::row(fact, vec![text(format!("{number} {of}"))])),
            _ => None,
        });
        let counts = counts.collect();
        self.section("How many", in_one_row(counts));
        let mut rows = Vec::new();
        let mut is_itself = false;
        for fact in &self.vocabulary.entry(id).facts {
            match fact.relation {
                Relation::MovedAt { joint } if joint == id => is_itself = true,
                Relation::MovedAt { joint } => rows.push(Self::row(fact, vec![self.entry(joint)])),
                _ => {}
            }
        }
        self.section(if is_itself { "Moved together with" } else { "Moved at" }, in_one_row(rows));
        let wholes = self.vocabulary.wholes(id);
        if !wholes.is_empty() {
            let row = Row { text: joined(self.vocabulary, &wholes, ", of "), ..Row::default() };
            self.section("Part of", vec![row]);
        }
        let parts = self.vocabulary.parts(id).to_vec();
        if !parts.is_empty() {
            let row = Row { text: self.names(&parts), ..Row::default() };
            self.section("Parts", vec![row]);
        }
    }

    fn nerve(&mut self, id: EntryId) {
        let facts = &self.vocabulary.entry(id).facts;
        let own = self.vocabulary.roots_of(id).first().map_or(Segments::EMPTY, RootReading::all);
        let steps = path_from_roots(self.vocabulary, id, own);
        if steps.len() > 1 {
            self.section("Path", vec![Row { text: path_pieces(self.vocabulary, &steps), ..Row::default() }]);
        }
        self.segments(id);
        let mut rows = Vec::new();
        for fact in facts {
            match &fact.relation {
                Relation::Modality { is } => rows.push(Self::row(fact, vec![text(modality(*is))])),
                Relation::Carries { fibres } => {
                    rows.push(Self::row(fact, vec![text(format!("carries {fibres} fibres"))]));
                }
                _ => {}
            }
        }
        self.section("Carries", rows);
        let mut rows = Vec::new();
        for fact in facts {
            if let Relation::ArisesFrom { from, at } = fact.relation {
                rows.push(Self::row(fact, self.with_place(vec![self.entry(from)], at, "at")));
            }
        }
        self.section("Arises from", rows);
        self.course(id);
        self.muscles_by_branch(id);
        for (title, kind) in [("Skin and mucosa", Kind::Skin), ("Joints", Kind::Joint)] {
            let mut felt = Vec::new();
            for nerve in std::iter::once(id).chain(self.vocabulary.usual_descendants(id)) {
                for fact in self.vocabulary.entry(nerve).facts.iter().filter(|fact| !fact.variant) {
                    if let Relation::Feels { target } = fact.relation
                        && self.vocabulary.kind(target) == kind
                        && !felt.contains(&target)
                    {
                        felt.push(target);
                    }
                }
                for (owner, fact) in self.vocabulary.pointing_at(nerve) {
                    if matches!(fact.relation, Relation::FeltBy { .. })
                        && self.vocabulary.kind(owner) == kind
                        && !fact.variant
                        && !felt.contains(&owner)
                    {
                        felt.push(owner);
                    }
                }
            }
            if !felt.is_empty() {
                let row = Row { text: self.names(&felt), ..Row::default() };
                self.section(title, vec![row]);
            }
        }
        self.injuries(id);
        self.family(id);
    }

    /// The muscles that a nerve supplies as a rule: its own, then those of each of its branches. Those of a plexus are told
    /// by its branches alone.
    fn muscles_by_branch(&mut self, id: EntryId) {
        let all = usual_muscles(self.vocabulary, id);
        let mut told: Vec<EntryId> = Vec::new();
        let mut rows = Vec::new();
        let twigs = self.vocabulary.twigs(id);
        let own: Vec<EntryId> = twigs.iter().filter(|twig| !twig.variant).map(|twig| twig.muscle).collect();
        for (branch, muscles) in std::iter::once((id, own)).chain(
            self.vocabulary.branches(id).into_iter().map(|branch| (branch, usual_muscles(self.vocabulary, branch))),
        ) {
            let news: Vec<EntryId> =
                muscles.into_iter().filter(|muscle| all.contains(muscle) && !told.contains(muscle)).collect();
            if !news.is_empty() {
                told.extend(&news);
                let label = if branch == id { Vec::new() } else { vec![self.entry(branch)] };
                rows.push(Row { label, text: self.names(&news), ..Row::default() });
            }
        }
        let others: Vec<EntryId> = all.into_iter().filter(|muscle| !told.contains(muscle)).collect();
        if !others.is_empty() {
            rows.push(Row { text: self.names(&others), ..Row::default() });
        }
        self.section("Muscles", rows);
    }

    /// The branches of a plexus, by the part of it from which they come.
    fn branches_of_parts(&mut self, id: EntryId) {
        let parts = self.vocabulary.all_parts(id);
        let mut rows = Vec::new();
        for part in &parts {
            let branches: Vec<EntryId> =
                self.vocabulary.branches(*part).into_iter().filter(|branch| !parts.contains(branch)).collect();
            if !branches.is_empty() {
                let label = vec![Piece::Entry(*part, short_name(self.vocabulary, *part).to_owned())];
                rows.push(Row { label, text: self.names(&branches), ..Row::default() });
            }
        }
        self.section("Branches, by part", rows);
    }

    /// The steps of a course, proximal to distal, then what no step names.
    fn course(&mut self, id: EntryId) {
        let mut rows = Vec::new();
        let mut named = Vec::new();
        for fact in &self.vocabulary.entry(id).facts {
            let pieces = match &fact.relation {
                Relation::Passes { landmark, how } => {
                    let how = how.as_deref().unwrap_or("by");
                    vec![text(format!("passes {how} ")), self.entry(*landmark)]
                }
                Relation::Gives { nerve, at } => {
                    named.push(*nerve);
                    self.with_place(vec![text("gives "), self.entry(*nerve)], *at, "at")
                }
                Relation::Supplies { muscle, at } => {
                    self.with_place(vec![text("supplies "), self.entry(*muscle)], *at, "at")
                }
                Relation::Feels { target } => vec![text("sensory to "), self.entry(*target)],
                Relation::Joins { with } => vec![text("communicates with "), self.entry(*with)],
                Relation::ContinuesAs { nerve, at } => {
                    named.push(*nerve);
                    self.with_place(vec![text("continues as "), self.entry(*nerve)], *at, "at")
                }
                _ => continue,
            };
            let continues = matches!(fact.relation, Relation::ContinuesAs { .. });
            rows.push((continues, Self::row(fact, pieces)));
        }
        rows.sort_by_key(|(continues, _)| *continues);
        let mut rows: Vec<Row> = rows.into_iter().map(|(_, row)| row).collect();
        let others: Vec<EntryId> =
            self.vocabulary.branches(id).into_iter().filter(|branch| !named.contains(branch)).collect();
        if !others.is_empty() {
            let mut pieces = vec![text("gives ")];
            pieces.extend(self.names(&others));
            rows.push(Row { text: pieces, ..Row::default() });
        }
        let title = if self.vocabulary.is_neural(id) { "Course and branches, in order" } else { "Course, in order" };
        self.section(title, rows);
        if self.vocabulary.kind(id) == Kind::Plexus {
            self.branches_of_parts(id);
        }
    }

    fn injuries(&mut self, id: EntryId) {
        let mut rows = Vec::new();
        for fact in &self.vocabulary.entry(id).facts {
            let (label, pieces) = match &fact.relation {
                Relation::Injured { at, cause } => {
                    let mut pieces = vec![self.entry(*at)];
                    if let Some(cause) = cause {
                        pieces.push(text(format!(": {cause}")));
                    }
                    ("Site", pieces)
                }
                Relation::Sign { sign, at } => ("Sign", self.with_place(vec![text(sign)], *at, "with a lesion at")),
                _ => continue,
            };
            rows.push(Row { label: vec![text(label)], ..Self::row(fact, pieces) });
        }
        self.add("Usual injury and its signs", rows, true);
    }

    fn with_place(&self, mut pieces: Vec<Piece>, at: Option<EntryId>, word: &str) -> Vec<Piece> {
        if let Some(at) = at {
            pieces.push(text(format!(" {word} ")));
            pieces.push(self.entry(at));
        }
        pieces
    }

    fn joint(&mut self, id: EntryId) {
        let facts = &self.vocabulary.entry(id).facts;
        let collect = |test: &dyn Fn(&Relation) -> Option<Vec<Piece>>| -> Vec<Row> {
            facts.iter().filter_map(|fact| Some(Self::row(fact, test(&fact.relation)?))).collect()
        };
        let kind = collect(&|relation| match relation {
            Relation::JointKind { class, subtype: Some(subtype) } => Some(vec![text(format!("{class}, {subtype}"))]),
            Relation::JointKind { class, subtype: None } => Some(vec![text(class)]),
            _ => None,
        });
        let bones = in_one_row(collect(&|relation| match relation {
            Relation::Bone { bone } => Some(vec![self.entry(*bone)]),
            _ => None,
        }));
        let ligaments = in_one_row(collect(&|relation| match relation {
            Relation::Ligament { ligament } => Some(vec![self.entry(*ligament)]),
            _ => None,
        }));
        let nerves = in_one_row(collect(&|relation| match relation {
            Relation::FeltBy { nerve } => Some(vec![self.entry(*nerve)]),
            _ => None,
        }));
        let movements = self.movements(id);
        self.section("Kind", kind);
        self.section("Bones", bones);
        self.section("Movements, with the muscles that carry them", movements);
        self.section("Ligaments", ligaments);
        self.section("Nerves", nerves);
        let mut member = Vec::new();
        for fact in &self.vocabulary.entry(id).facts {
            if let Relation::Member { of } = fact.relation {
                member.push(Self::row(fact, vec![self.entry(of)]));
            }
        }
        self.section("Group", member);
        self.family(id);
    }

    /// The movements of a joint with their range, each with its movers below.
    fn movements(&self, joint: EntryId) -> Vec<Row> {
        let movers = self.movers(joint);
        let mut rows = Vec::new();
        let mut told = Vec::new();
        for fact in &self.vocabulary.entry(joint).facts {
            let Relation::Allows { movement, degrees } = fact.relation else { continue };
            let mut row = Self::row(fact, vec![self.entry(movement)]);
            if let Some(degrees) = degrees {
                row.text.push(text(format!(" to {degrees}°")));
                if !fact.variant {
                    let sources: Vec<String> = fact.sources.iter().map(|at| cite(self.vocabulary, at)).collect();
                    row.notes.insert(0, sources.join(", "));
                }
            }
            rows.push(row);
            if !told.contains(&movement) {
                told.push(movement);
                let list = movers.iter().find(|(known, _)| *known == movement);
                rows.extend(list.into_iter().flat_map(|(_, list)| self.mover_rows(list)));
            }
        }
        for (movement, list) in movers.iter().filter(|(movement, _)| !told.contains(movement)) {
            rows.push(Row { text: vec![self.entry(*movement)], ..Row::default() });
            rows.extend(self.mover_rows(list));
        }
        rows
    }

    /// The muscles that act on a joint, by movement; a part is left out where its whole does the same.
    fn movers(&self, joint: EntryId) -> Movers {
        let mut list: Movers = Vec::new();
        for (muscle, fact) in self.vocabulary.pointing_at(joint) {
            let Relation::Acts { movement, role, .. } = fact.relation else { continue };
            if fact.variant {
                continue;
            }
            match list.iter_mut().find(|(known, _)| *known == movement) {
                Some((_, muscles)) => muscles.push((muscle, role)),
                None => list.push((movement, vec![(muscle, role)])),
            }
        }
        for (_, muscles) in &mut list {
            self.wholes_first(muscles);
        }
        list
    }

    /// Leaves out parts whose whole is there too; prime movers first.
    fn wholes_first(&self, muscles: &mut Vec<(EntryId, Role)>) {
        let all: Vec<EntryId> = muscles.iter().map(|(muscle, _)| *muscle).collect();
        muscles.retain(|(muscle, _)| !self.vocabulary.wholes(*muscle).iter().any(|whole| all.contains(whole)));
        muscles.sort_by_key(|(_, role)| *role);
    }

    /// Muscles with their nerves, those that do most in one row, those that help in the next.
    fn mover_rows(&self, muscles: &[(EntryId, Role)]) -> Vec<Row> {
        let mut rows = Vec::new();
        for (wanted, label) in [(Role::Prime, "prime movers"), (Role::Assistant, "assistants")] {
            let mut pieces = Vec::new();
            for (muscle, _) in muscles.iter().filter(|(_, role)| *role == wanted) {
                if !pieces.is_empty() {
                    pieces.push(text("; "));
                }
                pieces.push(self.entry(*muscle));
                let mut nerves: Vec<&str> = Vec::new();
                for supply in self.vocabulary.nerves_of(*muscle).iter().filter(|supply| !supply.variant) {
                    let name = self.vocabulary.name(supply.nerve);
                    if !nerves.contains(&name) {
                        nerves.push(name);
                    }
                }
                if !nerves.is_empty() {
                    pieces.push(text(format!(" ({})", nerves.join(", "))));
                }
            }
            if !pieces.is_empty() {
                rows.push(Row { depth: 1, label: vec![text(label)], text: pieces, ..Row::default() });
            }
        }
        rows
    }

    fn root(&mut self, id: EntryId) {
        let segment = self.vocabulary.possible_segments(id);
        let mut rows = Vec::new();
        for fact in &self.vocabulary.entry(id).facts {
            let (label, pieces) = match &fact.relation {
                Relation::KeyMuscle { muscle, movement } => {
                    let acts = |fact: &&Fact| {
                        !fact.variant
                            && matches!(fact.relation, Relation::Acts { movement: known, .. } if known == *movement)
                    };
                    let at = self.vocabulary.entry(*muscle).facts.iter().find(acts);
                    let pieces = vec![self.entry(*muscle), text(", tested by "), self.entry(*movement)];
                    ("Key muscle", self.with_place(pieces, at.and_then(|fact| fact.relation.target()), "at"))
                }
                Relation::KeyPoint { skin } => ("Key sensory point", vec![self.entry(*skin)]),
                Relation::Reflex { reflex } => ("Reflex", vec![text(reflex)]),
                _ => continue,
            };
            rows.push(Row { label: vec![text(label)], ..Self::row(fact, pieces) });
        }
        self.section("Tested by", in_one_row(rows));
        let mut main = Vec::new();
        let mut lesser = Vec::new();
        let mut dermatomes = Vec::new();
        let mut areas = Vec::new();
        for (owner, entry) in self.vocabulary.iter() {
            let roots = entry.facts.iter().filter(|fact| !fact.variant).find_map(|fact| match fact.relation {
                Relation::Roots { main, lesser } => Some((main, lesser)),
                _ => None,
            });
            let Some((in_main, in_lesser)) = roots else { continue };
            match (entry.kind, entry.class.as_deref()) {
                (Kind::Muscle, _) if segment.within(in_main) => main.push(owner),
                (Kind::Muscle, _) if segment.within(in_lesser) => lesser.push(owner),
                (Kind::Skin, Some("point")) => {}
                (Kind::Skin, Some("dermatome")) if segment.within(in_main) => dermatomes.push(owner),
                (Kind::Skin, _) if segment.within(in_main) => areas.push(owner),
                _ => {}
            }
        }
        for (title, muscles) in [("Myotome", main), ("Myotome, lesser segment", lesser)] {
            let rows = self.by_region(&muscles);
            self.section(title, rows);
        }
        let mut rows = Vec::new();
        for (label, list) in [("Dermatome", &dermatomes), ("Skin", &areas)] {
            if !list.is_empty() {
                rows.push(Row { label: vec![text(label)], text: self.names(list), ..Row::default() });
            }
        }
        self.section("Dermatome and skin", rows);
        let branches = self.vocabulary.branches(id);
        if !branches.is_empty() {
            let row = Row { text: self.names(&branches), ..Row::default() };
            self.section("Gives rise to", vec![row]);
        }
    }

    /// Muscles in one row a region, from above; a part is left out where its whole is there.
    fn by_region(&self, muscles: &[EntryId]) -> Vec<Row> {
        let is_told = |id: &EntryId| self.vocabulary.wholes(*id).iter().any(|whole| muscles.contains(whole));
        let mut regions: Vec<(Region, Vec<EntryId>)> = Vec::new();
        for id in muscles.iter().filter(|id| !is_told(id)) {
            let region = self.vocabulary.entry(*id).region;
            match regions.iter_mut().find(|(known, _)| *known == region) {
                Some((_, list)) => list.push(*id),
                None => regions.push((region, vec![*id])),
            }
        }
        regions.sort_by_key(|(region, _)| *region);
        let row = |(region, list): (Region, Vec<EntryId>)| Row {
            label: vec![text(region.word())],
            text: self.names(&list),
            ..Row::default()
        };
        regions.into_iter().map(row).collect()
    }

    fn landmark(&mut self, id: EntryId) {
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
        self.family(id);
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

    fn skin(&mut self, id: EntryId) {
        let mut rows = Vec::new();
        for (owner, fact) in self.vocabulary.pointing_at(id) {
            match fact.relation {
                Relation::Feels { .. } => {
                    rows.push(Self::row(fact, vec![self.entry(owner)]));
                    let wanted = self.vocabulary.roots_of(owner).first().map_or(Segments::EMPTY, RootReading::all);
                    let steps = path_from_roots(self.vocabulary, owner, wanted);
                    if steps.len() > 1 && !fact.variant {
                        rows.push(Row { depth: 1, text: path_pieces(self.vocabulary, &steps), ..Row::default() });
                    }
                }
                Relation::KeyPoint { .. } => {
                    let row = Self::row(fact, vec![self.entry(owner)]);
                    rows.push(Row { label: vec![text("Key point of")], ..row });
                }
                _ => {}
            }
        }
        self.section("Nerves", rows);
        self.segments(id);
        self.family(id);
    }

    fn group(&mut self, id: EntryId) {
        let mut rows: Vec<Row> = Vec::new();
        for member in self.vocabulary.members(id) {
            let mut row = Row { text: vec![self.entry(member)], ..Row::default() };
            let mut nerves = Vec::new();
            for supply in self.vocabulary.nerves_of(member).iter().filter(|supply| !supply.variant) {
                if !nerves.contains(&supply.nerve) {
                    nerves.push(supply.nerve);
                }
            }
            if !nerves.is_empty() {
                row.text.push(text(": "));
                row.text.extend(self.names(&nerves));
            }
            if let Some(reading) = self.vocabulary.roots_of(member).first() {
                row.text.push(text(format!(" ({})", segments(reading.main, reading.lesser))));
            }
            for (_, fact) in self.vocabulary.pointing_at(id).filter(|(owner, _)| *owner == member) {
                merge(&mut row.sources, &fact.sources);
                row.notes.extend(fact.note.iter().cloned());
            }
            rows.push(row);
        }
        self.section("Members", rows);
        self.family(id);
    }

    fn movement(&mut self, id: EntryId) {
        let entry = self.vocabulary.entry(id);
        let mut rows = Vec::new();
        if let Some((verb, agent)) = &entry.verb {
            rows.push(Row { text: vec![text(format!("to {verb}; {agent}"))], ..Row::default() });
        }
        if let Some(opposite) = entry.opposite {
            rows.push(Row { label: vec![text("Opposite")], text: vec![self.entry(opposite)], ..Row::default() });
        }
        self.section("Words", rows);
        let mut by_target: Movers = Vec::new();
        for (muscle, entry) in self.vocabulary.iter() {
            for fact in entry.facts.iter().filter(|fact| !fact.variant) {
                let Relation::Acts { movement, target, role } = fact.relation else { continue };
                if movement != id {
                    continue;
                }
                match by_target.iter_mut().find(|(known, _)| *known == target) {
                    Some((_, list)) => list.push((muscle, role)),
                    None => by_target.push((target, vec![(muscle, role)])),
                }
            }
        }
        by_target.sort_by_key(|(target, _)| self.vocabulary.entry(*target).region);
        let mut rows = Vec::new();
        for (target, mut list) in by_target {
            self.wholes_first(&mut list);
            rows.push(Row { text: vec![self.entry(target)], ..Row::default() });
            rows.extend(self.mover_rows(&list));
        }
        self.section("Muscles, by what they move", rows);
    }
}

fn modality(modality: Modality) -> &'static str {
    match modality {
        Modality::Motor => "motor",
        Modality::Sensory => "sensory",
        Modality::Mixed => "motor and sensory",
    }
}

/// Whether a row says no more than its text.
fn is_plain(row: &Row) -> bool {
    !row.variant && row.notes.is_empty()
}

/// Rows of one label in one row, but for those that say more than a name.
fn in_one_row(rows: Vec<Row>) -> Vec<Row> {
    let mut list: Vec<Row> = Vec::new();
    for row in rows {
        match list.last_mut().filter(|last| is_plain(last) && is_plain(&row) && last.label == row.label) {
            Some(last) => {
                last.text.push(text(", "));
                last.text.extend(row.text);
                merge(&mut last.sources, &row.sources);
            }
            None => list.push(row),
        }
    }
    list
}

fn merge(into: &mut Vec<Citation>, more: &[Citation]) {
    for citation in more {
        if !into.contains(citation) {
            into.push(citation.clone());
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;

    #[test]
    fn every_entry_has_a_card_that_tells_its_facts() {
        let vocabulary = fascicle_vocab::built_in();
        for (id, entry) in vocabulary.iter() {
            let card = card(&vocabulary, id);
            let told = entry.facts.iter().filter(|fact| !matches!(fact.relation, Relation::Member { .. }));
            for fact in told {
                for citation in &fact.sources {
                    let here = cite(&vocabulary, &Citation { place: None, ..citation.clone() });
                    assert!(card.sources.iter().any(|source| source.starts_with(&here)), "{}: {here}", entry.id);
                }
            }
            assert!(card.sections.iter().all(|section| !section.rows.is_empty()), "{}", entry.id);
            assert!(markdown(&vocabulary, id).starts_with("**"), "{}", entry.id);
        }
    }

    #[test]
    fn a_path_begins_at_the_roots_that_the_muscle_has() {
        let vocabulary = fascicle_vocab::built_in();
        let nerve = vocabulary.find("axillary-nerve").unwrap();
        let steps = path_from_roots(&vocabulary, nerve, Segments::parse("C5 C6").unwrap());
        let path = text_of(&path_pieces(&vocabulary, &steps));
        assert_eq!(path, "C5, C6 → upper trunk → posterior division of upper trunk → posterior cord → axillary nerve");
    }
}
