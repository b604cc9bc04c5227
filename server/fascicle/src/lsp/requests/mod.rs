//! One file a family of requests: a view and the protocol's parameters in, the protocol's answer out.

pub mod code_actions;
pub mod commands;
pub mod completion;
pub mod diagnostics;
pub mod differences;
pub mod hierarchy;
pub mod hover;
pub mod lenses;
pub mod navigation;
pub mod references;
pub mod status;
pub mod structure;
pub mod symbols;
pub mod tokens;
pub mod tree;
pub mod workspace_diagnostics;
