//! How a name sounds: a key that is the same for spellings that English speakers say alike when they speak Latin.
//!
//! Captions and dictation write what was heard: *flexor policis*, *sternoclydomastoyd*, *soleous*, *kwadratus*. The key
//! keeps consonants by sound and forgets most of the vowels:
//! `c` is `k` or, before a front vowel, `s`; `ae`, `oe` are `e`; `ph` is `f`; `rh`, `th`, `kh` lose their `h`; `x` is `ks`;
//! `qu` is `kw`; a doubled letter is one; a silent first letter (`pt`, `ps`, `pn`, `gn`) goes; vowels inside become one mark.

/// The key of a folded word.
pub fn sound(word: &str) -> String {
    let letters: Vec<u8> = word.bytes().filter(u8::is_ascii_alphabetic).collect();
    let mut key = String::with_capacity(letters.len());
    let at = |place: usize| letters.get(place).copied().unwrap_or(b' ');
    let mut i = match (at(0), at(1)) {
        (b'p', b't' | b's' | b'n') | (b'g', b'n') => 1,
        _ => 0,
    };
    while i < letters.len() {
        let (c, next, third) = (at(i), at(i + 1), at(i + 2));
        let mut step = 1;
        let sound: &str = match c {
            b'a' | b'e' | b'i' | b'o' | b'u' | b'y' => {
                while matches!(at(i + step), b'a' | b'e' | b'i' | b'o' | b'u' | b'y') {
                    step += 1;
                }
                "a"
            }
            b'p' if next == b'h' => {
                step = 2;
                "f"
            }
            b'c' if next == b'h' => {
                step = 2;
                "k"
            }
            b's' if next == b'c' && matches!(third, b'e' | b'i' | b'y') => {
                step = 2;
                "s"
            }
            b'c' if matches!(next, b'e' | b'i' | b'y') || next == b'a' && third == b'e' => "s",
            b'c' if next == b'k' => {
                step = 2;
                "k"
            }
            b'c' | b'k' => "k",
            b'q' => {
                step = 1 + usize::from(next == b'u');
                "kw"
            }
            b'x' if i == 0 => "s",
            b'x' => "ks",
            b'z' => "s",
            b'g' if matches!(next, b'e' | b'i' | b'y') => "j",
            b'h' if i > 0 => "",
            b't' | b'd' => "t",
            b'v' => "f",
            _ => {
                key.push(c as char);
                ""
            }
        };
        key.push_str(sound);
        i += step;
    }
    let mut out = String::with_capacity(key.len());
    for c in key.chars() {
        if !out.ends_with(c) {
            out.push(c);
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::sound;

    #[test]
    fn hears_alike() {
        for (heard, meant) in [
            ("policis", "pollicis"),
            ("pollisis", "pollicis"),
            ("sternoclydomastoyd", "sternocleidomastoid"),
            ("kwadratus", "quadratus"),
            ("soleous", "soleus"),
            ("fibyular", "fibular"),
            ("terygoid", "pterygoid"),
            ("frenic", "phrenic"),
        ] {
            assert_eq!(sound(heard), sound(meant), "{heard} {meant}");
        }
        assert_ne!(sound("radial"), sound("ulnar"));
        assert_ne!(sound("longus"), sound("brevis"));
    }
}
