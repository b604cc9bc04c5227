//! Claims in sentences.
