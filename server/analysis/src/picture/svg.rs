//! A branch tree as a picture.
//!
//! The picture brings its own colours for light and dark, which a page may override by the custom properties
//! `--fascicle-ink`, `--fascicle-faint`, `--fascicle-nerve`, `--fascicle-muscle`, `--fascicle-skin` and
//! `--fascicle-mark`. Every row that stands for an entry carries its identifier in `data-id`, so that a host can follow
//! a click.

use std::fmt::Write as _;

use fascicle_model::Vocabulary;

use super::{Row, RowKind, Tree};

impl Tree {
    /// The tree as a picture. Identifiers come from `vocabulary`, which must be the one that the tree was gathered from.
    pub fn svg(&self, vocabulary: &Vocabulary) -> String {
        const ROW: usize = 24;
        const STEP: usize = 26;
        const LEFT: usize = 22;
        let middle = |place: usize| 20 + place * ROW;
        let stem = |depth: usize| LEFT + depth * STEP;
        let width = self
            .rows
            .iter()
            .map(|row| stem(row.depth) + 40 + (row.words().chars().count() * 38).div_ceil(5))
            .max()
            .unwrap_or(0)
            .max(240);
        let height = middle(self.rows.len()) - 4;
        let mut out = String::new();
        let title = escaped(vocabulary.name(self.nerve));
        let _ = write!(
            out,
            "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"fascicle-tree\" role=\"img\" width=\"{width}\" \
             height=\"{height}\" viewBox=\"0 0 {width} {height}\"><title>Branch tree of the {title}</title>{STYLE}"
        );
        // Lines first, so that the marks lie on them.
        let mut stems: Vec<Option<usize>> = Vec::new();
        for (place, row) in self.rows.iter().enumerate() {
            let (x, y) = (stem(row.depth), middle(place));
            if row.depth == 0 {
                if place > 0 {
                    let _ = write!(out, "<path class=\"trunk\" d=\"M{x} {}V{y}\"/>", middle(place - 1));
                }
            } else if let Some(from) = stems.get(row.depth - 1).copied().flatten() {
                let class = match (row.kind, row.depth, row.variant) {
                    (_, _, true) => "line at-times",
                    (RowKind::Landmark, ..) => "passing",
                    (RowKind::Nerve, 1, _) => "line thick",
                    _ => "line",
                };
                let parent = stem(row.depth - 1);
                if row.kind == RowKind::Landmark {
                    let _ = write!(out, "<path class=\"trunk\" d=\"M{parent} {from}V{y}\"/>");
                    let _ = write!(out, "<path class=\"{class}\" d=\"M{} {y}H{}\"/>", parent - 5, parent + 5);
                } else {
                    let bend = y - 10;
                    let _ = write!(
                        out,
                        "<path class=\"{}\" d=\"M{parent} {from}V{bend}\"/><path class=\"{class}\" d=\"M{parent} \
                         {bend}C{parent} {y} {parent} {y} {x} {y}\"/>",
                        if row.depth == 1 { "trunk" } else { "line" },
                    );
                }
            }
            stems.truncate(row.depth);
            stems.resize(row.depth, None);
            stems.push((row.kind != RowKind::Landmark).then_some(y));
        }
        for (place, row) in self.rows.iter().enumerate() {
            svg_row(&mut out, row, stem(row.depth), middle(place), vocabulary);
        }
        out.push_str("</svg>");
        out
    }
}

fn svg_row(out: &mut String, row: &Row, x: usize, y: usize, vocabulary: &Vocabulary) {
    let class = match row.kind {
        RowKind::Roots => "roots",
        RowKind::Origin => "origin",
        RowKind::Nerve => "nerve",
        RowKind::Muscle => "muscle",
        RowKind::Sensory => "sensory",
        RowKind::Landmark => "landmark",
    };
    let marked = if row.marked { " marked" } else { "" };
    let head = if row.depth == 0 && row.kind == RowKind::Nerve { " head" } else { "" };
    let _ = write!(out, "<g class=\"row {class}{head}{marked}\">");
    match row.kind {
        RowKind::Roots => {
            let _ = write!(out, "<rect x=\"{}\" y=\"{}\" width=\"12\" height=\"12\" rx=\"3\"/>", x - 6, y - 6);
        }
        RowKind::Origin | RowKind::Nerve => {
            let radius = if row.depth == 0 { 6 } else { 4 };
            let _ = write!(out, "<circle cx=\"{x}\" cy=\"{y}\" r=\"{radius}\"/>");
        }
        RowKind::Muscle => {
            let _ = write!(out, "<ellipse cx=\"{}\" cy=\"{y}\" rx=\"8\" ry=\"4.5\"/>", x + 1);
        }
        RowKind::Sensory => {
            let _ = write!(out, "<rect x=\"{}\" y=\"{}\" width=\"10\" height=\"10\" rx=\"2\"/>", x - 4, y - 5);
        }
        RowKind::Landmark => {}
    }
    let at = if row.kind == RowKind::Landmark { x.saturating_sub(12) } else { x + 15 };
    let _ = write!(out, "<text x=\"{at}\" y=\"{}\">", y + 4);
    if !row.lead.is_empty() {
        let _ = write!(out, "<tspan class=\"lead\">{} </tspan>", escaped(&row.lead));
    }
    for (number, (name, id)) in row.parts.iter().enumerate() {
        if number > 0 {
            out.push_str("<tspan class=\"lead\"> + </tspan>");
        }
        match id {
            Some(id) => {
                let _ = write!(
                    out,
                    "<tspan class=\"name\" tabindex=\"0\" data-id=\"{}\">{}</tspan>",
                    escaped(&vocabulary.entry(*id).id),
                    escaped(name)
                );
            }
            None => {
                let _ = write!(out, "<tspan class=\"name\">{}</tspan>", escaped(name));
            }
        }
    }
    if row.variant {
        out.push_str("<tspan class=\"lead\"> (sometimes)</tspan>");
    }
    if !row.remark.is_empty() {
        let _ = write!(out, "<tspan class=\"remark\" dx=\"8\">{}</tspan>", escaped(&row.remark));
    }
    out.push_str("</text></g>");
}

/// The colours: ink and paper follow the reader's system unless the page says otherwise.
const STYLE: &str = "<style>\
.fascicle-tree{--i:var(--fascicle-ink,#20262c);--f:var(--fascicle-faint,#6b7680);--n:var(--fascicle-nerve,#a8740a);\
--m:var(--fascicle-muscle,#b0413a);--s:var(--fascicle-skin,#3f6f9f);--k:var(--fascicle-mark,#fff0b8)}\
@media(prefers-color-scheme:dark){.fascicle-tree{--i:var(--fascicle-ink,#e4e8ec);--f:var(--fascicle-faint,#98a3ad);\
--n:var(--fascicle-nerve,#e3b04b);--m:var(--fascicle-muscle,#e57f75);--s:var(--fascicle-skin,#83b4e3);\
--k:var(--fascicle-mark,#5a4a14)}}\
.fascicle-tree text{font:13px system-ui,sans-serif;fill:var(--i)}\
.fascicle-tree .head text{font-weight:700;font-size:14px}.fascicle-tree .roots text{font-weight:600}\
.fascicle-tree .lead,.fascicle-tree .remark,.fascicle-tree .landmark text{fill:var(--f);font-size:12px;\
font-weight:400}.fascicle-tree .landmark text{font-style:italic}\
.fascicle-tree path{fill:none;stroke:var(--n);stroke-width:1.5}.fascicle-tree .trunk{stroke-width:4}\
.fascicle-tree .thick{stroke-width:2.5}.fascicle-tree .passing{stroke:var(--f);stroke-width:2}\
.fascicle-tree .at-times{stroke-dasharray:3 3}\
.fascicle-tree .nerve circle,.fascicle-tree .origin circle,.fascicle-tree .roots rect{fill:var(--n)}\
.fascicle-tree .muscle ellipse{fill:var(--m)}.fascicle-tree .sensory rect{fill:var(--s)}\
.fascicle-tree .marked .name{font-weight:700;text-decoration:underline}\
.fascicle-tree [data-id]{cursor:pointer}.fascicle-tree [data-id]:hover{text-decoration:underline}\
</style>";

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}
