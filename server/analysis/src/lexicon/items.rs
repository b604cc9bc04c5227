//! Words of exam items and of other text that asserts nothing: keys, instructions, frames.

/// Words with which the line of an exam item that gives its key begins; of two that fit, the first is read.
pub const KEY_HEADS: &[&str] = &[
    "correct answers",
    "correct answer",
    "correct option",
    "correct response",
    "correct choice",
    "answer key",
    "key answer",
    "right answer",
    "best answer",
    "best option",
    "model answer",
    "suggested answer",
    "sample answer",
    "expected answer",
    "answer(s)",
    "answers",
    "answer",
    "marking scheme",
    "mark scheme",
    "solution",
    "soln",
    "response",
    "correct",
    "right",
    "key",
    "ans",
];

/// Verbs with which a stem asks in the imperative.
pub const ASKING_VERBS: &[&str] = &[
    "name",
    "state",
    "give",
    "list",
    "identify",
    "select",
    "choose",
    "tick",
    "mark",
    "pick",
    "circle",
    "check",
    "underline",
    "mention",
    "write down",
    "specify",
    "indicate",
    "recall",
    "enumerate",
];

/// Words behind the verb of such a stem that tell how many are wanted.
pub const ASKED_FOR: &[&str] =
    &["all", "the", "one", "two", "three", "four", "five", "any", "each", "every", "correct", "of", "a", "an"];

/// Words with which a stem begins that only instruct.
pub const INSTRUCTIONS: &[&str] =
    &["true or false", "true/false", "t/f", "complete", "complete the sentence", "fill in"];

/// Phrases in a heading or before a list that take back what stands below ("*True or false?*", "*What they wrote:*").
pub const FRAMES: &[&str] = &[
    "true or false",
    "true/false",
    "true / false",
    "t/f",
    "t / f",
    "true – false",
    "t or f",
    "right or wrong",
    "correct or incorrect",
    "which of",
    "decide whether",
    "say whether",
    "state whether",
    "judge whether",
    "each statement",
    "these statements",
    "following statements",
    "statements to",
    "false statements",
    "do not write",
    "never write",
    "don't write",
    "don’t write",
    "do not say",
    "never say",
    "students wrote",
    "they wrote",
    "people wrote",
    "candidates wrote",
    "students say",
    "to discuss",
    "for discussion",
    "to correct",
    "correct the",
    "find the",
    "spot the",
    "agree or disagree",
    "not true",
    "last year's answers",
    "read in scripts",
];

/// Whether a paragraph tells to judge the statements below it: "For each statement, say whether it is true or false."
pub fn instructs_to_judge(text: &str) -> bool {
    let lower = text.to_lowercase();
    let first = lower.split(|c: char| !c.is_alphabetic()).find(|word| !word.is_empty()).unwrap_or_default();
    let is_told = ASKING_VERBS.contains(&first)
        || matches!(first, "for" | "say" | "decide" | "judge" | "read" | "each" | "are" | "is" | "which" | "consider")
        || matches!(
            first,
            "correct" | "strike" | "cross" | "answer" | "write" | "put" | "assess" | "evaluate" | "label"
        );
    let judges = ["true", "false", "wrong", "incorrect", "t or f", "t/f", "(t)", "mistake", "error"];
    let is_judged = ["statement", "whether", "following", "sentence", "item", "claim", "line"];
    is_told && judges.iter().any(|word| lower.contains(word)) && is_judged.iter().any(|word| lower.contains(word))
}

/// What a stem says of the option that it asks for, where it says nothing else of it: "Which statement *is not correct*?"
/// `Some(false)` for one that is wrong.
pub fn verdict_asked(stem: &str) -> Option<bool> {
    let lower = stem.to_lowercase();
    let words: Vec<&str> = lower.split(|c: char| !c.is_alphabetic()).filter(|word| !word.is_empty()).collect();
    let (is_right, before) = match words.as_slice() {
        [before @ .., "not", "true" | "correct" | "right" | "accurate"]
        | [before @ .., "false" | "wrong" | "incorrect" | "untrue" | "inaccurate"] => (false, before),
        [before @ .., "true" | "correct" | "right" | "accurate"] => (true, before),
        _ => return None,
    };
    matches!(before.last(), Some(&("is" | "are"))).then_some(is_right)
}

/// Adjectives of a statement that is asked for: "Choose the *incorrect* statement".
pub fn asks_for_wrong(stem: &str) -> bool {
    let lower = stem.to_lowercase();
    let words: Vec<&str> = lower.split(|c: char| !c.is_alphabetic()).filter(|word| !word.is_empty()).collect();
    words.windows(2).any(|pair| {
        matches!(pair, ["false" | "wrong" | "incorrect" | "untrue" | "inaccurate", noun] if noun.starts_with("statement") || *noun == "one" || *noun == "option")
    }) || words.windows(2).any(|pair| matches!(pair, ["least", "likely"] | ["odd", "one"]))
}

/// What stands before a statement that is judged wrong.
pub const TAKEN_BACK_BEFORE: &[&str] = &[
    "❌",
    "✗",
    "✘",
    "✖",
    "☒",
    "🚫",
    "t/f:",
    "[f]",
    "(f)",
    "(false)",
    "[false]",
    "false:",
    "false –",
    "false —",
    "wrong:",
    "wrong –",
    "wrong —",
    "incorrect:",
    "not true:",
    "myth:",
    "mistake:",
    "error:",
];

/// What stands behind a statement that is to be judged or is judged wrong.
pub const TAKEN_BACK_BEHIND: &[&str] = &[
    "t/f",
    "t / f",
    "true/false",
    "true / false",
    "true or false?",
    "t or f",
    "right or wrong?",
    "correct or incorrect?",
    "yes or no?",
    "agree or disagree?",
    "false",
    "wrong",
    "incorrect",
    "f",
    "✗",
    "✘",
    "❌",
];

/// Signs at an option that is the right one.
pub const RIGHT_MARKS: &[&str] =
    &["✓", "✔", "✔️", "✅", "☑", "*", "(correct)", "[correct]", "(right)", "← correct", "(x)", "(✓)"];

/// Words of a heading below which the keys of the questions above it stand.
const HEADINGS_OF_ANSWERS: &[&str] =
    &["answer", "answers", "key", "keys", "solution", "solutions", "overleaf", "marking"];

/// Whether a heading announces answers: "Answers", "Key to paper C", "Overleaf". "Answer all questions" asks.
pub fn is_heading_of_answers(heading: &str) -> bool {
    let lower = heading.to_lowercase();
    let words: Vec<&str> = lower.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()).collect();
    let asks = words.iter().any(|word| {
        matches!(*word, "the" | "all" | "any" | "one" | "each" | "best" | "single" | "short" | "choose" | "following")
    });
    // "Short answers", "Questions and answers": below them both stand.
    let has_questions =
        words.first() == Some(&"short") || words.iter().take(2).any(|word| word.starts_with("question"));
    let leads = !has_questions && words.iter().take(3).any(|word| HEADINGS_OF_ANSWERS.contains(word));
    leads
        && !lower.trim_end().ends_with('?')
        && (!asks || words.iter().take(2).any(|word| matches!(*word, "key" | "keys" | "answers" | "solutions")))
}

/// Words behind a key with which an explanation begins.
pub const EXPLANATIONS: &[&str] = &["explanation:", "rationale:", "reason:", "comment:", "feedback:", "why:", "note:"];
