//! The analysis behind the web page.
//!
//! A [`Reader`] holds one document. The page gives it the text and asks about places; answers are JSON. Places are counted
//! in UTF-16 units from the beginning of the text, as the page's editor counts them.

#![forbid(unsafe_code)]

mod answers;
mod units;

use fascicle_analysis::blocks::blocks;
use fascicle_analysis::features::completion::{Draft, Names, complete};
use fascicle_analysis::mentions::mentions;
use fascicle_analysis::{Form, Settings, picture};
use fascicle_analysis::{Knowledge, Reading, read};
use serde::Serialize;
use wasm_bindgen::prelude::wasm_bindgen;

use crate::answers::{Branches, Card, Completion, Place, Read};
use crate::units::Units;

/// One document and what is known of anatomy.
#[wasm_bindgen]
#[derive(Debug)]
pub struct Reader {
    knowledge: Knowledge,
    names: Names,
    settings: Settings,
    form: Form,
    text: String,
    units: Units,
    reading: Reading,
}

#[wasm_bindgen]
impl Reader {
    /// A reader with the built-in vocabulary and an empty document.
    #[wasm_bindgen(constructor)]
    pub fn new() -> Self {
        let knowledge = Knowledge::new(fascicle_vocab::built_in());
        let names = Names::new(&knowledge.vocabulary);
        Self {
            knowledge,
            names,
            settings: Settings::default(),
            form: Form::Markdown,
            text: String::new(),
            units: Units::default(),
            reading: Reading::default(),
        }
    }

    /// Reads a document; its form is told by the file's name, Markdown if the name tells nothing. Answers with
    /// [`Read`].
    pub fn read(&mut self, text: String, name: &str) -> String {
        self.form = Form::of_name(name).unwrap_or(Form::Markdown);
        self.text = text;
        self.units = Units::new(&self.text);
        self.reading = read(&self.text, self.form, &self.knowledge, &self.settings);
        json(&Read::new(&self.reading, &self.units, &self.knowledge.vocabulary))
    }

    /// The entries that are named at a place: [`Place`], or `null`.
    pub fn place(&self, at: usize) -> String {
        json(&Place::new(&self.reading, self.units.byte(at), &self.units, &self.knowledge))
    }

    /// What can be completed at a place of a text, which may be newer than what was read: [`Completion`], or `null` if
    /// nothing.
    pub fn complete(&self, text: &str, at: usize) -> String {
        let units = Units::new(text);
        let newer = (text != self.text).then(|| self.outline(text));
        let reading = newer.as_ref().unwrap_or(&self.reading);
        let (knowledge, names, settings) = (&self.knowledge, &self.names, &self.settings);
        let completion =
            complete(&Draft { text, form: self.form, reading, knowledge, names, settings }, units.byte(at));
        let vocabulary = &self.knowledge.vocabulary;
        json(&(!completion.items.is_empty()).then(|| Completion::new(completion, &units, vocabulary)))
    }

    /// The card of an entry: [`Card`], or `null` if there is no such entry.
    pub fn card(&self, id: &str) -> String {
        let vocabulary = &self.knowledge.vocabulary;
        json(&vocabulary.find(id).map(|id| Card::new(vocabulary, id)))
    }

    /// The branch tree in which an entry stands: [`Branches`], or `null` if no nerve belongs to it.
    pub fn branches(&self, id: &str) -> String {
        let vocabulary = &self.knowledge.vocabulary;
        let tree = vocabulary.find(id).and_then(|id| picture::branch_tree(vocabulary, id));
        json(&tree.map(|tree| Branches { nerve: vocabulary.name(tree.nerve).to_owned(), svg: tree.svg(vocabulary) }))
    }
}

impl Reader {
    /// What completion needs of a text, its blocks and names, without its claims: that is quick enough to wait for.
    fn outline(&self, text: &str) -> Reading {
        let Knowledge { vocabulary, names, .. } = &self.knowledge;
        let blocks = blocks(text, self.form);
        let mentions = blocks.list.iter().map(|block| mentions(&block.plain.text, vocabulary, names)).collect();
        Reading { blocks, mentions, ..Reading::default() }
    }
}

impl Default for Reader {
    fn default() -> Self {
        Self::new()
    }
}

fn json(answer: &impl Serialize) -> String {
    serde_json::to_string(answer).unwrap_or_else(|_| "null".to_owned())
}
