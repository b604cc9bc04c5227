//! Tests of the built program, end to end; corpora; benches.
