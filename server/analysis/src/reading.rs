//! The whole way for one document.

use std::sync::Arc;

use crate::abbreviations;
use crate::allowances::Allowances;
use crate::blocks::{self, Blocks, Form};
use crate::claims::Claim;
use crate::consistency::{self, Usage};
use crate::findings::Finding;
use crate::judging::{self, JudgedSection};
use crate::knowledge::Knowledge;
use crate::memo::{Kept, fingerprint_of};
use crate::mentions::{self, Mentions};
use crate::misspellings::{self, Suspect};
use crate::resolve;
use crate::settings::Settings;
use crate::stages::Stage;
use crate::verdicts::{self, Judgement};

/// What was read before, by what it was read from. It belongs to one document, one vocabulary and one set of settings.
#[derive(Debug, Default)]
pub struct Memo {
    /// The names of a visible text.
    pub mentions: Kept<Arc<Mentions>>,
    /// What may be misspelled in a visible text.
    pub suspects: Kept<Arc<Vec<Suspect>>>,
    /// The claims of a section, judged.
    pub sections: Kept<Arc<JudgedSection>>,
}

impl Memo {
    fn turn(&mut self) {
        self.mentions.turn();
        self.suspects.turn();
        self.sections.turn();
    }
}

/// A document as it was read.
#[derive(Clone, Debug, Default)]
pub struct Reading {
    /// Its blocks.
    pub blocks: Blocks,
    /// The mentions of each block.
    pub mentions: Vec<Mentions>,
    /// Its claims, each with what the graph says of it.
    pub claims: Vec<(Claim, Judgement)>,
    /// What is to be told.
    pub findings: Vec<Finding>,
    /// What it calls things.
    pub usage: Usage,
}

/// Reads a document.
pub fn read(text: &str, form: Form, knowledge: &Knowledge, settings: &Settings) -> Reading {
    read_again(text, form, knowledge, settings, &mut Memo::default())
}

/// Reads a document of which an earlier version was read with the same memo, by the same knowledge and settings. What
/// comes out is what [`read`] makes of the text; what the edit has not touched is not worked out again.
pub fn read_again(text: &str, form: Form, knowledge: &Knowledge, settings: &Settings, memo: &mut Memo) -> Reading {
    read_observed(text, form, knowledge, settings, memo, &|| true, &mut |_| {}).unwrap_or_default()
}

/// As [`read_again`]. `is_wanted` is asked between blocks and between sections; once nobody wants the reading any more it
/// ends with nothing, and what was read until then stays in the memo. `ended` is told of each stage when it ends; a stage that
/// is gone through in parts is told of after each of them, so that who has a clock can add up where the time goes.
pub fn read_observed(
    text: &str,
    form: Form,
    knowledge: &Knowledge,
    settings: &Settings,
    memo: &mut Memo,
    is_wanted: &dyn Fn() -> bool,
    ended: &mut dyn FnMut(Stage),
) -> Option<Reading> {
    let blocks = blocks::blocks(text, form);
    ended(Stage::Blocks);
    let mut mentions: Vec<Mentions> = Vec::with_capacity(blocks.list.len());
    for block in &blocks.list {
        if !is_wanted() {
            return None;
        }
        let text = &block.plain.text;
        let find = || Arc::new(mentions::mentions(text, &knowledge.vocabulary, &knowledge.names));
        mentions.push(Mentions::clone(&memo.mentions.of(fingerprint_of(text, &()), find)));
    }
    ended(Stage::Mentions);
    let repairs = misspellings::repairs_again(&blocks, &mentions, knowledge, settings, &mut memo.suspects, is_wanted)?;
    misspellings::apply(&mut mentions, &repairs);
    ended(Stage::Misspellings);
    resolve::resolve(&blocks, &mut mentions, &knowledge.vocabulary);
    abbreviations::apply(&blocks, &mut mentions, &knowledge.vocabulary);
    ended(Stage::Context);
    let claims = judging::judged(&blocks, &mentions, knowledge, &mut memo.sections, is_wanted, ended)?;
    memo.turn();
    let mut findings: Vec<Finding> = claims
        .iter()
        .filter_map(|(claim, judgement)| verdicts::finding(claim, judgement, &knowledge.vocabulary, text))
        .collect();
    findings.extend(misspellings::findings(&blocks, &repairs));
    let usage = consistency::usage(&blocks, &mentions, knowledge);
    findings.extend(consistency::compare(&[&usage], knowledge, settings).into_iter().flatten());
    let allowed = Allowances::of(text, form);
    let is_off = |finding: &Finding| settings.off.iter().any(|code| code == finding.code) || allowed.allows(finding);
    findings.retain(|finding| !is_off(finding));
    findings.sort_by_key(|finding| (finding.span, finding.code));
    ended(Stage::Findings);
    Some(Reading { blocks, mentions, claims, findings, usage })
}
