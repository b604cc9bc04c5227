//! Reads anatomy out of text.
//!
//! The data goes one way, and each step is one function with plain data on both sides:
//!
//! ```text
//! text ─ blocks::blocks ─► blocks ─ mentions::mentions ─► mentions ─ claims::claims ─► claims
//!      ─ verdicts::judge ─► verdicts ─ findings ─► findings
//! ```
//!
//! [`read`] does all of it for one document. Nothing here knows a protocol, a terminal, a file or a clock.

pub mod abbreviations;
pub mod allowances;
pub mod blocks;
pub mod card;
pub mod claims;
pub mod consistency;
pub mod course;
pub mod coverage;
mod ellipsis;
pub mod features;
pub mod findings;
pub mod judging;
pub mod knowledge;
pub mod lexicon;
pub mod lines;
pub mod memo;
pub mod mentions;
pub mod misspellings;
pub mod moving;
pub mod names;
pub mod picture;
pub mod reading;
pub mod resolve;
pub mod settings;
pub mod stages;
pub mod tables;
pub mod text;
pub mod verdicts;
pub mod words;

pub use blocks::Form;
pub use findings::{Candidate, Edit, Finding, FindingKind, Fix, Severity};
pub use knowledge::Knowledge;
pub use reading::{Memo, Reading, read, read_again, read_observed};
pub use settings::Settings;
pub use stages::Stage;
pub use text::Span;
