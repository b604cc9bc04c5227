//! The built-in vocabulary: `data/`, read, checked and baked into the program by the build script.
//!
//! [`built_in`] is all there is; everything that one can ask of a vocabulary is in [`fascicle_model`], which is
//! re-exported here.

pub use fascicle_model::*;

/// The vocabulary as the build script left it.
static BAKED: &[u8] = include_bytes!(concat!(env!("OUT_DIR"), "/vocabulary.bin"));

/// The built-in vocabulary. It was read and checked when the program was built; here it is only laid out in memory.
///
/// # Panics
/// Never: the bytes were written by the same types in the same build.
#[allow(clippy::expect_used)]
pub fn built_in() -> Vocabulary {
    let (entries, sources, words) =
        postcard::from_bytes(BAKED).expect("the build script wrote these bytes with these types");
    Vocabulary::new(entries, sources).with_words(words)
}
