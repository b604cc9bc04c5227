//! One file a family of requests: a view and the protocol's parameters in, the protocol's answer out.

pub mod code_actions;
pub mod completion;
pub mod diagnostics;
pub mod entry;
pub mod hover;
pub mod status;
pub mod tree;
