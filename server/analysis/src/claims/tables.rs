//! Claims of tables.
//!
//! Headers tell what columns hold. A column of muscles and a column of nerves make supply claims, whichever stands first;
//! other columns speak of the row's muscle or nerve. A table may lie on its side: names in the first row, headers in the
//! first column. An empty cell says what the cell above it says; a dash says nothing.

use std::collections::BTreeMap;

use fascicle_model::{EntryId, Kind};

use super::labels;
use super::sentences::{self, Scope, Side, Subject};
use super::subjects::{Above, Subjects};
use super::{Claim, ClaimKind, PartRole, What};
use crate::blocks::{BlockIx, BlockKind, Blocks};
use crate::knowledge::Knowledge;
use crate::lexicon::{self, Label};
use crate::mentions::Mentions;
use crate::text::Span;

/// Reads the tables of a section, without those that exam items have taken.
pub fn read(
    blocks: &Blocks,
    mentions: &[Mentions],
    knowledge: &Knowledge,
    subjects: &Subjects<'_>,
    is_taken: &dyn Fn(BlockIx) -> bool,
) -> Vec<Claim> {
    let mut tables: BTreeMap<u32, Vec<BlockIx>> = BTreeMap::new();
    for (at, block) in blocks.list.iter().enumerate() {
        if let BlockKind::Cell { table, .. } = block.kind
            && !is_taken(at)
        {
            tables.entry(table).or_default().push(at);
        }
    }
    let read = |cells: &Vec<BlockIx>| {
        let grid = Grid::new(blocks, mentions, knowledge, cells);
        let above = cells.first().map(|first| subjects.of(*first)).unwrap_or_default();
        grid.properties(&above).unwrap_or_else(|| grid.turned().claims())
    };
    tables.values().flat_map(read).collect()
}

/// What a column of nerves beside muscles holds.
const SUPPLY: Label = Label { kind: Some(ClaimKind::Supply), value: PartRole::Nerve, subject: PartRole::Muscle };

/// What a column without a header beside joints may hold.
const KIND_OF_JOINT: Label =
    Label { kind: Some(ClaimKind::Joint), value: PartRole::JointKind, subject: PartRole::Joint };

struct Grid<'a> {
    blocks: &'a Blocks,
    mentions: &'a [Mentions],
    knowledge: &'a Knowledge,
    /// Rows of cells, the header first.
    rows: Vec<Vec<Option<BlockIx>>>,
}

impl<'a> Grid<'a> {
    fn new(blocks: &'a Blocks, mentions: &'a [Mentions], knowledge: &'a Knowledge, cells: &[BlockIx]) -> Self {
        let mut rows: Vec<Vec<Option<BlockIx>>> = Vec::new();
        for at in cells.iter().copied() {
            if let Some(BlockKind::Cell { row, column, .. }) = blocks.list.get(at).map(|block| block.kind) {
                let (row, column) = (row as usize, column as usize);
                if rows.len() <= row {
                    rows.resize(row + 1, Vec::new());
                }
                if let Some(cells) = rows.get_mut(row) {
                    if cells.len() <= column {
                        cells.resize(column + 1, None);
                    }
                    if let Some(cell) = cells.get_mut(column) {
                        *cell = Some(at);
                    }
                }
            }
        }
        Self { blocks, mentions, knowledge, rows }
    }

    /// The same with names in the first column, where they stand in the first row.
    fn turned(mut self) -> Self {
        if self.lies_on_its_side() {
            let width = self.rows.iter().map(Vec::len).max().unwrap_or(0);
            self.rows = (0..width)
                .map(|column| self.rows.iter().map(|row| row.get(column).copied().flatten()).collect())
                .collect();
        }
        self
    }

    fn text(&self, cell: BlockIx) -> &'a str {
        self.blocks.list.get(cell).map_or("", |block| block.plain.text.trim())
    }

    fn label(&self, cell: Option<BlockIx>) -> Option<Label> {
        let header = self.text(cell?);
        // "One muscle", "Main nerve": what the adjective adds changes no relation.
        let bare = lexicon::label_of(header).or_else(|| {
            let (first, rest) = header.split_once(' ')?;
            if lexicon::is_header_adjective(&first.to_lowercase()) { lexicon::label_of(rest) } else { None }
        });
        bare.or_else(|| Self::composite_label(header))
            .or_else(|| self.label_with_name(cell?))
            .or_else(|| of_passage(header))
            .or_else(|| self.phrase(cell?))
    }

    /// "Nerve (roots)", "Innervation / segments": of a header that tells two things, the first, where only one of them is a
    /// relation of names.
    fn composite_label(header: &str) -> Option<Label> {
        let is_joint = |c: char| matches!(c, '(' | ')' | '[' | ']' | '/' | '&' | '+' | ',' | ';');
        let mut parts = header.split(is_joint).flat_map(|part| part.split(" and ")).map(str::trim);
        let first = lexicon::label_of(parts.next()?)?;
        let others: Vec<Label> = parts.filter(|part| !part.is_empty()).filter_map(lexicon::label_of).collect();
        let is_of_segments = |label: &Label| label.value == PartRole::Segments;
        let tells_one = others.is_empty() || others.iter().all(is_of_segments) || is_of_segments(&first);
        tells_one.then(|| if is_of_segments(&first) { others.first().copied().unwrap_or(first) } else { first })
    }

    /// "Leaves the skull through", "Muscles that pass behind it": a header that is a relation phrase of passage.
    fn phrase(&self, cell: BlockIx) -> Option<Label> {
        let scope = self.scope(cell, &[])?;
        let head = labels::head(&scope, 0, scope.mentions.tokens.len(), &[]).filter(|head| head.whole)?;
        let (label, _) = head.label?;
        (label.kind == Some(ClaimKind::Passage) && head.names.is_empty()).then_some(label)
    }

    /// "Branch of the facial nerve": a label with the name that it is of. Whose branches supply, supplies.
    fn label_with_name(&self, cell: BlockIx) -> Option<Label> {
        let scope = self.scope(cell, &[])?;
        let head = labels::head(&scope, 0, scope.mentions.tokens.len(), &[]).filter(|head| head.whole)?;
        let (label, _) = head.label.filter(|(_, words)| words.to_lowercase().starts_with("branch"))?;
        let is_neural = head.names.iter().all(|name| {
            !name.candidates.is_empty() && name.candidates.iter().all(|id| self.knowledge.vocabulary.is_neural(*id))
        });
        (label.kind == Some(ClaimKind::Branching) && !head.names.is_empty() && is_neural).then_some(SUPPLY)
    }

    fn lies_on_its_side(&self) -> bool {
        let header = self.rows.first().map_or(&[][..], Vec::as_slice);
        let named = header
            .iter()
            .skip(1)
            .filter(|cell| cell.is_some_and(|cell| self.mentions.get(cell).is_some_and(|m| !m.list.is_empty())))
            .count();
        let labelled = header.iter().skip(1).filter(|cell| self.label(**cell).is_some()).count();
        let below = self.rows.iter().skip(1).filter(|row| self.label(row.first().copied().flatten()).is_some()).count();
        named > 0 && labelled == 0 && below > 0
    }

    /// What the columns hold. A first column without a header that tells holds what its cells name.
    fn labels(&self) -> Vec<Option<Label>> {
        let mut labels = self.own_labels();
        let has_muscles = labels
            .iter()
            .any(|label| label.is_some_and(|label| label.kind.is_none() && label.value == PartRole::Muscle));
        let has_nerves = labels.iter().any(|label| {
            label.is_some_and(|label| label.value == PartRole::Nerve && label.kind != Some(ClaimKind::Branching))
        });
        for label in labels.iter_mut().flatten().filter(|_| has_muscles && !has_nerves) {
            // Beside muscles alone, a branch is the one that supplies them.
            if label.kind == Some(ClaimKind::Branching) && label.value == PartRole::Nerve {
                *label = SUPPLY;
            }
        }
        labels
    }

    /// What each column holds by itself.
    fn own_labels(&self) -> Vec<Option<Label>> {
        let header = self.rows.first().map_or(&[][..], Vec::as_slice);
        let mut labels: Vec<Option<Label>> = header.iter().map(|cell| self.label(*cell)).collect();
        for (column, label) in labels.iter_mut().enumerate().take(2) {
            let is_name =
                header.get(column).copied().flatten().is_some_and(|cell| lexicon::is_naming_header(self.text(cell)));
            let is_group = label.is_some_and(|label| label.kind == Some(ClaimKind::Membership));
            // "Motor nerve | Targets": what leads the rows is what they are of.
            let is_led = column == 0
                && label.is_some_and(|label| match label.kind {
                    Some(ClaimKind::Supply) => label.value == PartRole::Nerve,
                    Some(ClaimKind::Deficit) => true, // "Injury | Sign"
                    _ => false,
                });
            if is_led && self.holds(0, PartRole::Nerve) {
                *label = Some(Label { kind: None, value: PartRole::Nerve, subject: PartRole::Nerve });
                continue;
            }
            let is_passage = label.filter(|label| label.kind == Some(ClaimKind::Passage));
            if column == 0 && is_passage.is_some() {
                *label = Some(Label { kind: None, value: PartRole::Landmark, subject: PartRole::Landmark });
            } else if (column == 0 && (label.is_none() || is_group)) || is_name {
                let role = self.role_of_column(column);
                *label = role.map(|value| Label { kind: None, value, subject: value });
            }
        }
        labels
    }

    /// What stands above a column.
    fn header(&self, column: usize) -> &'a str {
        let header = self.rows.first().and_then(|row| row.get(column).copied().flatten());
        header.map_or("", |cell| self.text(cell))
    }

    /// "Biceps brachii – musculocutaneous": what the cell that leads a row tells by itself.
    fn told_in_first(&self, cell: Option<BlockIx>) -> Vec<Claim> {
        let Some(scope) = cell.and_then(|cell| self.scope(cell, &[])) else { return Vec::new() };
        let has_sign = [" – ", " — ", ": ", " - ", "→"].iter().any(|sign| scope.plain.text.contains(sign));
        if has_sign { labels::read(&scope, &Above::default()) } else { Vec::new() }
    }

    /// What a cell of notes says of what leads its row, in sentences or in fragments.
    fn notes(&self, cell: BlockIx, first: Option<Label>, lead: Option<BlockIx>) -> Vec<Claim> {
        let Some(lead) = lead else { return Vec::new() };
        // Rows may be led by structures of several kinds.
        let role = first.filter(|label| label.kind.is_none()).map(|label| label.value);
        let roles = role.map_or_else(|| vec![PartRole::Muscle, PartRole::Nerve, PartRole::Joint], |role| vec![role]);
        let found = roles.into_iter().map(|role| self.sides(lead, role)).find(|sides| !sides.is_empty());
        let sides = found.unwrap_or_default();
        let subjects: Vec<Subject> =
            sides.iter().map(|side| Subject { candidates: side.what.entries().to_vec(), span: side.span }).collect();
        let Some(scope) = self.scope(cell, &subjects).filter(|_| subjects.len() == 1) else { return Vec::new() };
        let mut claims = sentences::read(&scope, 0, &mut sentences::Memory::default());
        let above = Above { prose_names: Some(subjects.clone()), ..Above::default() };
        claims.extend(labels::read(&scope, &above));
        claims
    }

    /// Whether the header of a column says that it is of skin. The nerve of a *region* may be that of its muscles.
    fn speaks_of_skin(&self, column: usize) -> bool {
        self.header(column)
            .to_lowercase()
            .split(|c: char| !c.is_alphabetic())
            .any(|word| lexicon::tells_surface(word) || lexicon::tells_feeling(word))
    }

    /// What all cells of a column name.
    fn role_of_column(&self, column: usize) -> Option<PartRole> {
        let roles = [PartRole::Muscle, PartRole::Nerve, PartRole::Joint, PartRole::Skin, PartRole::Landmark];
        roles.into_iter().find(|role| self.holds(column, *role))
    }

    /// Whether each cell of a column that is not empty names something of a role.
    fn holds(&self, column: usize, role: PartRole) -> bool {
        let cells = self.rows.iter().skip(1).filter_map(|row| row.get(column).copied().flatten());
        let mut cells = cells.filter(|cell| !self.text(*cell).is_empty()).peekable();
        cells.peek().is_some() && cells.all(|cell| !self.sides(cell, role).is_empty())
    }

    /// Whether any cell of a column names something of a role.
    fn names_any(&self, column: usize, role: PartRole) -> bool {
        let mut cells = self.rows.iter().skip(1).filter_map(|row| row.get(column).copied().flatten());
        cells.any(|cell| !self.sides(cell, role).is_empty())
    }

    fn scope<'s>(&'s self, cell: BlockIx, subjects: &'s [Subject]) -> Option<Scope<'s>> {
        let block = self.blocks.list.get(cell)?;
        let scope = Scope::new(self.knowledge, &block.plain, self.mentions.get(cell)?, cell).under(subjects);
        Some(Scope { of_vessels: true, ..scope })
    }

    /// What may be the number of a cranial nerve in a cell: a Roman numeral, or a figure below a header of nerves. The rows of a
    /// table may be numbered.
    fn cranial_number(&self, cell: BlockIx) -> &'a str {
        let text = self.text(cell);
        let column = self.rows.iter().find_map(|row| row.iter().position(|own| *own == Some(cell)));
        let header = column.map_or("", |column| self.header(column)).to_lowercase();
        let is_of_nerves = ["cn", "cranial", "nerve"].iter().any(|word| header.contains(word));
        if is_of_nerves || lexicon::is_cranial_number(text) || text == "I" { text } else { "" }
    }

    fn sides(&self, cell: BlockIx, role: PartRole) -> Vec<Side> {
        let Some(scope) = self.scope(cell, &[]) else { return Vec::new() };
        let mut sides = sentences::values(&scope, 0, scope.mentions.tokens.len(), role);
        // "Carpometacarpal of the thumb": the joint is meant, not the thumb.
        let is_joint =
            |side: &Side| side.what.entries().iter().all(|id| self.knowledge.vocabulary.kind(*id) == Kind::Joint);
        if role == PartRole::Joint && !sides.iter().all(is_joint) {
            let named = labels::completed_values(&scope, 0, scope.mentions.tokens.len(), role, &["joint".to_owned()]);
            if !named.is_empty() && named.iter().all(is_joint) {
                sides = named;
            }
        }
        if sides.is_empty() && role == PartRole::Nerve {
            // A column of cranial nerves may hold their numbers only.
            let names = self.knowledge.names.lookup(&format!("CN {}", self.cranial_number(cell)));
            let ids: Vec<EntryId> = names.iter().map(|name| name.entry).collect();
            if let (false, Some(block)) = (ids.is_empty(), self.blocks.list.get(cell)) {
                sides.push(Side {
                    what: What::Entry(ids),
                    span: block.plain.to_source(Span::new(0, block.plain.text.len())),
                });
            }
        }
        if sides.is_empty() && role == PartRole::Joint {
            // A column of joints may leave the noun out, and say it in other words in brackets.
            let nouns = ["joint".to_owned()];
            let all = scope.mentions.tokens.len();
            let word = |at: usize| scope.mentions.tokens.get(at).map_or("", |token| token.span.of(&scope.plain.text));
            let open = (0..all).find(|at| word(*at) == "(").unwrap_or(all);
            let close = (open..all).find(|at| word(*at) == ")").unwrap_or(all);
            sides = labels::completed_values(&scope, open + 1, close, role, &nouns);
            if sides.is_empty() {
                sides = labels::completed_values(&scope, 0, open, role, &nouns);
            }
            if sides.is_empty() && open < close {
                sides = sentences::values(&scope, open + 1, close, role);
            }
        }
        if let [Side { what: What::Entry(whole), .. }, part] = sides.as_slice()
            && let What::Entry(parts) = &part.what
            && parts
                .iter()
                .all(|part| whole.iter().any(|whole| self.knowledge.vocabulary.wholes(*part).contains(whole)))
        {
            return vec![part.clone()]; // "Biceps femoris, short head"
        }
        sides
    }

    /// A row whose first cell tells what the second is: "Heads of gastrocnemius | two", "Hip joint | ball and socket".
    fn row_with_head(&self, row: &[Option<BlockIx>]) -> Vec<Claim> {
        let [Some(first), Some(second)] = row else { return Vec::new() };
        let Some(scope) = self.scope(*first, &[]) else { return Vec::new() };
        let head = labels::head(&scope, 0, scope.mentions.tokens.len(), &[]);
        let Some(head) = head.filter(|head| head.whole && head.names.len() == 1) else { return Vec::new() };
        let (label, word) = match head.label {
            Some((label, word)) if label.kind == Some(ClaimKind::Count) => (label, word),
            None if lexicon::is_joint_kind(self.text(*second)) => (KIND_OF_JOINT, String::new()),
            _ => return Vec::new(),
        };
        let roles: &[PartRole] = if label.kind == Some(ClaimKind::Count) {
            &[PartRole::Muscle, PartRole::Nerve, PartRole::Joint, PartRole::Landmark]
        } else {
            &[PartRole::Joint]
        };
        let vocabulary = &self.knowledge.vocabulary;
        let side = |role: &PartRole| head.names.first().and_then(|name| sentences::side_of(vocabulary, name, *role));
        let subjects: Vec<Side> = roles.iter().find_map(side).into_iter().collect();
        self.values(*second, label, &word, &subjects)
    }

    /// A table of two columns below a heading that names what it is of: labels, and what they tell ("Origin | acromion"). The
    /// row of headers may be such a row itself.
    fn properties(&self, above: &[Subject]) -> Option<Vec<Claim>> {
        let width = self.rows.iter().map(Vec::len).max()?;
        let cells = |row: &[Option<BlockIx>]| row.first().copied().flatten().zip(row.get(1).copied().flatten());
        let told = |cell: BlockIx| {
            let text = self.text(cell);
            // "Which muscles in the hand?"
            let cut = text.match_indices(' ').find(|(at, _)| {
                text.get(at + 1..).and_then(|rest| rest.split(' ').next()).is_some_and(lexicon::begins_where)
            });
            let label = lexicon::label_of(text).or_else(|| lexicon::label_of(text.get(..cut?.0)?));
            label.filter(|label| label.kind.is_some()).map(|label| (label, text))
        };
        let below: Vec<(BlockIx, BlockIx)> = self.rows.iter().skip(1).filter_map(|row| cells(row)).collect();
        let count = below.iter().filter(|(first, _)| told(*first).is_some()).count();
        if width != 2 || above.is_empty() || count < 2 || count * 2 < below.len() {
            return None;
        }
        let first = self.rows.first().and_then(|row| cells(row));
        let names_another = |cell: BlockIx| self.mentions.get(cell).is_some_and(|mentions| !mentions.list.is_empty());
        // "| | Deltoid |": the header names of whom.
        let is_row = first.is_some_and(|(first, _)| told(first).is_some());
        if !is_row && first.is_some_and(|(first, second)| names_another(first) || names_another(second)) {
            return None;
        }
        let first = first.filter(|(_, second)| is_row && told(*second).is_none());
        let rows = first.into_iter().chain(below);
        let read = |(first, second): (BlockIx, BlockIx)| {
            let (Some((label, word)), Some(scope)) = (told(first), self.scope(second, above)) else {
                return Vec::new();
            };
            labels::labelled_value(&scope, label, word)
        };
        Some(rows.flat_map(read).collect())
    }

    fn claims(&self) -> Vec<Claim> {
        let labels = self.labels();
        let has_notes =
            (1..labels.len()).any(|column| lexicon::is_header_of_notes(&self.header(column).to_lowercase()));
        if labels.len() == 2 && labels.iter().all(Option::is_none) && !has_notes {
            return self.rows.iter().skip(1).flat_map(|row| self.row_with_head(row)).collect();
        }
        let column_of = |role: PartRole| labels.iter().position(|label| label.is_some_and(|label| label.value == role));
        let muscle = labels
            .iter()
            .position(|label| label.is_some_and(|label| label.kind.is_none() && label.value == PartRole::Muscle));
        let motor = labels.iter().position(|label| {
            label.is_some_and(|label| label.kind == Some(ClaimKind::Supply) && label.value == PartRole::Muscle)
        });
        let nerve = column_of(PartRole::Nerve);
        // Beside a column of segments: "Dermatome | Landmark".
        let areas = (0..labels.len())
            .find(|column| self.holds(*column, PartRole::Skin) && !self.names_any(*column, PartRole::Muscle));
        // "Sign | Nerve": the nerve is the one whose lesion shows what leads the row.
        let of_loss = labels.iter().flatten().any(|label| label.kind == Some(ClaimKind::Deficit));
        let nerve_leads = nerve.is_some_and(|nerve| muscle.is_some_and(|muscle| nerve < muscle));
        let mut claims = Vec::new();
        let mut above: Vec<Option<BlockIx>> = Vec::new();
        for own_row in self.rows.iter().skip(1) {
            let row = own_row;
            let row: Vec<Option<BlockIx>> = (0..labels.len())
                .map(|column| {
                    let is_blank = row.get(column).copied().flatten().is_some_and(|cell| self.text(cell).is_empty());
                    // A nerve without muscles has none, not those of the nerve above; nor has a joint what another has.
                    let is_of_joint = labels
                        .get(column)
                        .is_some_and(|label| label.is_some_and(|label| label.kind == Some(ClaimKind::Joint)));
                    if is_blank && ((nerve_leads && muscle == Some(column)) || is_of_joint) {
                        None
                    } else {
                        self.cell(row, column, &above)
                    }
                })
                .collect();
            // "As above": what is read there is said here.
            let shown: Vec<Option<BlockIx>> = (0..labels.len())
                .map(|column| {
                    own_row
                        .get(column)
                        .copied()
                        .flatten()
                        .filter(|cell| lexicon::is_ditto(&self.text(*cell).to_lowercase()))
                })
                .collect();
            let first_of_row = claims.len();
            claims.extend(self.told_in_first(own_row.first().copied().flatten()));
            let at = |column: Option<usize>| column.and_then(|column| row.get(column).copied().flatten());
            let area = labels
                .iter()
                .position(|label| label.is_some_and(|label| label.kind.is_none() && label.value == PartRole::Skin));
            let area =
                area.filter(|area| self.speaks_of_skin(*area) || nerve.is_some_and(|nerve| self.speaks_of_skin(nerve)));
            if let (Some(cell), Some(skin)) = (at(nerve).filter(|_| muscle.is_none()), at(area)) {
                let label = Label { kind: Some(ClaimKind::Skin), value: PartRole::Nerve, subject: PartRole::Skin };
                claims.extend(self.values(cell, label, "", &self.sides(skin, PartRole::Skin)));
            }
            let subject = |role: PartRole| -> Vec<Side> {
                let column = match role {
                    PartRole::Muscle => muscle,
                    PartRole::Nerve | PartRole::Parent => nerve.filter(|nerve| {
                        *nerve == 0
                            || (of_loss && muscle.is_none())
                            || labels.get(*nerve).is_some_and(|label| label.is_some_and(|label| label.kind.is_none()))
                    }),
                    PartRole::Joint | PartRole::Landmark => column_of(role).filter(|column| *column == 0),
                    // What is counted is of what the first column names.
                    PartRole::Structure => {
                        let first = labels.first().copied().flatten().filter(|label| label.kind.is_none());
                        return first.and_then(|label| Some(self.sides(at(Some(0))?, label.value))).unwrap_or_default();
                    }
                    _ => None,
                };
                at(column).map(|cell| self.sides(cell, role)).unwrap_or_default()
            };
            for (column, label) in labels.iter().enumerate() {
                // Beside a joint, a word for a kind of joint tells its kind, whatever the header says.
                let joint_kind = label.is_none() && column > 0 && column_of(PartRole::Joint) == Some(0);
                let label = label.as_ref().or_else(|| joint_kind.then_some(&KIND_OF_JOINT));
                let header = self.header(column);
                if label.is_none() && column > 0 && lexicon::is_header_of_notes(&header.to_lowercase()) {
                    let own = own_row.get(column).copied().flatten();
                    claims.extend(
                        own.map(|cell| self.notes(cell, labels.first().copied().flatten(), at(Some(0))))
                            .unwrap_or_default(),
                    );
                    continue;
                }
                let (Some(label), Some(cell)) = (label, at(Some(column))) else { continue };
                if joint_kind && !lexicon::is_joint_kind(self.text(cell)) {
                    continue;
                }
                let Some(kind) = label.kind else {
                    // Muscles behind a column of nerves are what the nerves supply.
                    if label.value == PartRole::Muscle && muscle == Some(column) && nerve_leads {
                        let label =
                            Label { kind: Some(ClaimKind::Supply), value: PartRole::Muscle, subject: PartRole::Nerve };
                        let nerves = at(nerve).map(|cell| self.sides(cell, PartRole::Nerve)).unwrap_or_default();
                        claims.extend(self.values(cell, label, "", &nerves));
                    }
                    continue;
                };
                match kind {
                    ClaimKind::Supply
                        if label.value == PartRole::Nerve
                            && muscle.is_none()
                            && column_of(PartRole::Landmark) == Some(0) =>
                    {
                        let label = Label {
                            kind: Some(ClaimKind::Passage),
                            value: PartRole::Nerve,
                            subject: PartRole::Landmark,
                        };
                        claims.extend(self.values(cell, label, header, &subject(PartRole::Landmark)));
                    }
                    ClaimKind::Supply if label.value == PartRole::Nerve => {
                        if nerve == Some(column) && muscle.is_some() && !nerve_leads {
                            claims.extend(self.values(cell, *label, header, &subject(PartRole::Muscle)));
                        }
                    }
                    ClaimKind::Roots => {
                        // The segments may be the muscle's or the nerve's: both are possible subjects.
                        let muscles = if nerve_leads { Vec::new() } else { subject(PartRole::Muscle) };
                        let nerves = at(nerve).map(|cell| self.sides(cell, PartRole::Nerve)).unwrap_or_default();
                        let felt = if muscle.or(nerve).is_none() {
                            at(areas).map(|cell| self.sides(cell, PartRole::Skin)).unwrap_or_default()
                        } else {
                            Vec::new()
                        };
                        let side = if muscles.len() > 1 || nerves.len() > 1 {
                            None
                        } else {
                            both(muscles.first(), nerves.first()).or_else(|| felt.into_iter().next())
                        };
                        let mut own = self.values(cell, *label, header, side.as_slice());
                        // Where the segments lead the row, it is the name behind them that is told of.
                        let other = nerve.or(muscle).or(areas);
                        if let Some(side) = side.filter(|_| other.is_some_and(|other| other > column)) {
                            for claim in &mut own {
                                claim.span = side.span;
                            }
                        }
                        claims.extend(own);
                    }
                    ClaimKind::Attachment if muscle.is_none() && nerve == Some(0) && !lexicon::is_insertion(header) => {
                        let label = Label {
                            kind: Some(ClaimKind::Branching),
                            value: PartRole::Parent,
                            subject: PartRole::Nerve,
                        };
                        claims.extend(self.values(cell, label, header, &subject(PartRole::Nerve)));
                    }
                    ClaimKind::Supply if motor == Some(column) && nerve != Some(0) => {}
                    // Behind the muscles of a compartment stands what the compartment does, not each of them.
                    ClaimKind::Action
                        if label.value == PartRole::Movement
                            && muscle.is_some_and(|muscle| 0 < muscle && muscle < column)
                            && at(muscle).is_some_and(|cell| self.text(cell).contains([',', ';'])) => {}
                    _ => {
                        // "Muscle (heads) | Number": the noun of the number stands in the other header.
                        let first = self.header(0);
                        let header =
                            if kind == ClaimKind::Count && counts(header).is_empty() { counts(first) } else { header };
                        // "Type" below a column of joints tells their kind.
                        let own = labels::meanings(*label)
                            .into_iter()
                            .map(|meant| self.values(cell, meant, header, &subject(meant.subject)))
                            .find(|claims| !claims.is_empty());
                        let mut own = own.unwrap_or_default();
                        // Where the movement leads the row, it is the muscle behind it that is told of.
                        for claim in own.iter_mut().filter(|_| muscle.is_some_and(|muscle| muscle > column)) {
                            let muscle = claim.part(PartRole::Muscle).map(|part| part.span);
                            claim.span = muscle.unwrap_or(claim.span);
                        }
                        // So it is with the nerve behind a sign.
                        for claim in own.iter_mut().filter(|claim| {
                            claim.kind == ClaimKind::Deficit && nerve.is_some_and(|nerve| nerve > column)
                        }) {
                            let nerve = claim.part(PartRole::Nerve).map(|part| part.span);
                            claim.span = nerve.unwrap_or(claim.span);
                        }
                        claims.extend(own);
                    }
                }
            }
            if !labels.iter().flatten().any(|label| label.kind == Some(ClaimKind::Roots)) {
                claims.extend(self.roots_beside_nerve(at(nerve), &subject(PartRole::Muscle)));
            }
            for (column, cell) in shown.iter().enumerate() {
                let (Some(cell), Some(read)) = (cell, row.get(column).copied().flatten()) else { continue };
                let (Some(own), Some(other)) = (self.blocks.list.get(*cell), self.blocks.list.get(read)) else {
                    continue;
                };
                let here = own.plain.to_source(Span::new(0, own.plain.text.len()));
                for claim in claims.iter_mut().skip(first_of_row) {
                    claim.span = if other.span.contains(claim.span) { here } else { claim.span };
                    for part in claim.parts.iter_mut().filter(|part| other.span.contains(part.span)) {
                        part.span = here;
                    }
                }
            }
            above = row;
        }
        claims
    }

    /// "Radial n. (C6–C8)": the segments in a cell of one nerve are its own or those of the row's muscle.
    fn roots_beside_nerve(&self, nerve: Option<BlockIx>, muscles: &[Side]) -> Vec<Claim> {
        let Some(cell) = nerve else { return Vec::new() };
        let nerves = self.sides(cell, PartRole::Nerve);
        let ([nerve], true) = (nerves.as_slice(), muscles.len() < 2) else { return Vec::new() };
        let label = Label { kind: Some(ClaimKind::Roots), value: PartRole::Segments, subject: PartRole::Structure };
        self.values(cell, label, "", both(muscles.first(), Some(nerve)).as_slice())
    }

    /// The cell of a column: an empty one stands for the cell above, unless it is in the first column.
    fn cell(&self, row: &[Option<BlockIx>], column: usize, above: &[Option<BlockIx>]) -> Option<BlockIx> {
        let cell = row.get(column).copied().flatten()?;
        let text = self.text(cell);
        if text.is_empty() || lexicon::is_ditto(text) {
            return above.get(column).copied().flatten();
        }
        (!lexicon::is_empty_cell(text)).then_some(cell)
    }

    fn values(&self, cell: BlockIx, label: Label, header: &str, subjects: &[Side]) -> Vec<Claim> {
        let Some(scope) = self.scope(cell, &[]) else { return Vec::new() };
        labels::value_claims(&scope, 0, scope.mentions.tokens.len(), label, header, subjects)
    }
}

/// "Opening in the skull base", "Site of entrapment at the elbow": a label of passage, and behind it where.
fn of_passage(header: &str) -> Option<Label> {
    let words: Vec<&str> = header.split_whitespace().collect();
    let cut = (1..words.len()).rev().filter(|at| words.get(*at).is_some_and(|word| lexicon::begins_where(word)));
    let mut labels = cut.filter_map(|at| lexicon::label_of(&words.get(..at)?.join(" ")));
    labels.find(|label| label.kind == Some(ClaimKind::Passage))
}

/// The noun of what is counted in a header; nothing where it has none.
fn counts(header: &str) -> &str {
    let mut words = header.split(|c: char| !c.is_alphabetic()).filter(|word| !word.is_empty());
    let is_counted = |word: &&str| {
        let lower = word.to_lowercase();
        lexicon::counted_noun(&lower).is_some() && lexicon::label_of(word).is_some_and(|label| label.kind.is_some())
    };
    words.find(is_counted).unwrap_or_default()
}

/// Two sides as one that can be either.
fn both(a: Option<&Side>, b: Option<&Side>) -> Option<Side> {
    let ids = |side: Option<&Side>| -> Vec<EntryId> {
        match side.map(|side| &side.what) {
            Some(What::Entry(ids)) => ids.clone(),
            _ => Vec::new(),
        }
    };
    let mut all = ids(a);
    all.extend(ids(b));
    let first = a.or(b)?;
    (!all.is_empty()).then_some(Side { what: What::Entry(all), span: first.span })
}
