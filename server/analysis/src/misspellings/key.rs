//! The number under which a word is kept in filters and sets. It is the same on every machine, for filters are made when
//! the program is built and asked when it runs.

/// A 64-bit key of a folded word (the hash is FNV-1a, by words of eight bytes).
pub fn key(word: &str) -> u64 {
    const PRIME: u64 = 0x0000_0100_0000_01b3;
    let mut hash = 0xcbf2_9ce4_8422_2325 ^ word.len() as u64;
    for chunk in word.as_bytes().chunks(8) {
        let mut bytes = [0; 8];
        for (slot, byte) in bytes.iter_mut().zip(chunk) {
            *slot = *byte;
        }
        hash = (hash ^ u64::from_le_bytes(bytes)).wrapping_mul(PRIME);
        hash ^= hash >> 29;
    }
    hash
}
