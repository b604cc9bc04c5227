//! The numbers by which words are found that are one letter apart: a word has something in common with each of them when it,
//! or the other, or both are without one letter.

use smallvec::SmallVec;

/// Keys of a word and of what it is without each of its letters. The key of a word is the sum of its letters, each times the
/// factor of its place, so that those without a letter are found from what stands before it and behind it.
pub fn without_one(word: &str) -> SmallVec<[u64; 32]> {
    const FACTOR: u64 = 0x9e37_79b9_7f4a_7c15;
    const MOVED: u64 = inverse(FACTOR);
    let mut power = 1_u64;
    let mut whole = 0_u64;
    for letter in word.bytes() {
        power = power.wrapping_mul(FACTOR);
        whole = whole.wrapping_add(power.wrapping_mul(u64::from(letter)));
    }
    let mut keys = SmallVec::new();
    keys.push(whole);
    let (mut power, mut before) = (1_u64, 0_u64);
    for letter in word.bytes() {
        power = power.wrapping_mul(FACTOR);
        let own = power.wrapping_mul(u64::from(letter));
        let behind = whole.wrapping_sub(before).wrapping_sub(own);
        keys.push(before.wrapping_add(behind.wrapping_mul(MOVED)));
        before = before.wrapping_add(own);
    }
    keys
}

/// What an odd number has to be multiplied with to make one.
const fn inverse(number: u64) -> u64 {
    let mut found = number;
    let mut round = 0;
    while round < 6 {
        found = found.wrapping_mul(2_u64.wrapping_sub(number.wrapping_mul(found)));
        round += 1;
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_key_without_a_letter_is_the_key_of_the_shorter_word() {
        let key = |word: &str| without_one(word)[0];
        let keys = without_one("ulnar");
        for (at, shorter) in [(1, "lnar"), (2, "unar"), (3, "ular"), (4, "ulnr"), (5, "ulna")] {
            assert_eq!(keys[at], key(shorter), "{shorter}");
        }
        assert_ne!(key("ulna"), key("luna"));
    }
}
