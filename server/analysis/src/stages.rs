//! The stages of the way from a text to findings, by which who looks on is told how far a reading is.

/// A stage of the way from a text to findings.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Stage {
    /// The text is cut into blocks.
    Blocks,
    /// Names are found in them.
    Mentions,
    /// Misspelled names are found.
    Misspellings,
    /// What a name means by what stands around it, and abbreviations that the document explains.
    Context,
    /// Statements are read.
    Claims,
    /// The graph judges them.
    Verdicts,
    /// What is to be told is put into words, and names are compared over the document.
    Findings,
}

impl Stage {
    /// All of them, in order.
    pub const ALL: [Self; 7] =
        [Self::Blocks, Self::Mentions, Self::Misspellings, Self::Context, Self::Claims, Self::Verdicts, Self::Findings];

    /// Its name.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Blocks => "blocks",
            Self::Mentions => "mentions",
            Self::Misspellings => "misspellings",
            Self::Context => "context",
            Self::Claims => "claims",
            Self::Verdicts => "verdicts",
            Self::Findings => "findings",
        }
    }
}
