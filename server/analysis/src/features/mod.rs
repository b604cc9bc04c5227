//! What an editor can show, one file a feature: plain data in, plain data out, bytes of the source throughout.

pub mod completion;
pub mod context;
pub mod hover;
pub mod places;
