//! What an editor can show, one file a feature: plain data in, plain data out, bytes of the source throughout.

pub mod completion;
pub mod context;
pub mod coverage;
pub mod entry_document;
pub mod folding;
pub mod hierarchy;
pub mod hints;
pub mod hover;
pub mod index;
pub mod insert;
pub mod links;
pub mod outline;
pub mod places;
pub mod rename;
pub mod selection;
pub mod tokens;
