//! Edit distance: letters dropped, added, replaced, or two neighbours swapped (optimal string alignment).

/// The most letters of a word that is compared; longer ones are no names.
pub const LONGEST: usize = 40;

/// The distance of two words in ASCII letters, if it is at most `most`.
pub fn distance(a: &str, b: &str, most: u32) -> Option<u32> {
    let (a, b) = trim(a.as_bytes(), b.as_bytes());
    if a.len().abs_diff(b.len()) > most as usize || a.len() > LONGEST || b.len() > LONGEST {
        return None;
    }
    if a.is_empty() || b.is_empty() {
        return Some(a.len().max(b.len()) as u32);
    }
    let mut rows = [[0u8; LONGEST + 1]; 3];
    let (mut before, mut last, mut now) = {
        let [one, two, three] = &mut rows;
        (one, two, three)
    };
    for (slot, value) in last.iter_mut().zip(0..=b.len() as u8) {
        *slot = value;
    }
    for (i, x) in a.iter().enumerate() {
        now[0] = i as u8 + 1;
        let mut least = now[0];
        for (j, y) in b.iter().enumerate() {
            let mut best = (last[j + 1] + 1).min(now[j] + 1).min(last[j] + u8::from(x != y));
            if i > 0 && j > 0 && *x == b[j - 1] && a[i - 1] == *y {
                best = best.min(before[j - 1] + 1);
            }
            now[j + 1] = best;
            least = least.min(best);
        }
        if u32::from(least) > most {
            return None;
        }
        (before, last, now) = (last, now, before);
    }
    Some(u32::from(last[b.len()])).filter(|distance| *distance <= most)
}

/// Takes off what both begin and end with.
fn trim<'a>(a: &'a [u8], b: &'a [u8]) -> (&'a [u8], &'a [u8]) {
    let head = a.iter().zip(b).take_while(|(x, y)| x == y).count();
    let (a, b) = (&a[head..], &b[head..]);
    let tail = a.iter().rev().zip(b.iter().rev()).take_while(|(x, y)| x == y).count();
    (&a[..a.len() - tail], &b[..b.len() - tail])
}

#[cfg(test)]
mod tests {
    use super::distance;

    #[test]
    fn counts_edits() {
        for (a, b, expected) in [
            ("pollicus", "pollicis", 1),
            ("radail", "radial", 1),
            ("peroneous", "peroneus", 1),
            ("sternocleidomastiod", "sternocleidomastoid", 1),
            ("anteriro", "anterior", 1),
            ("sytlohyoid", "stylohyoid", 1),
            ("diapgragmatic", "diaphragmatic", 1),
            ("same", "same", 0),
            ("", "abc", 3),
            ("minimus", "minimi", 2),
        ] {
            assert_eq!(distance(a, b, 3), Some(expected), "{a} {b}");
            assert_eq!(distance(b, a, 3), Some(expected), "{b} {a}");
        }
        assert_eq!(distance("scapula", "clavicle", 3), None);
    }
}
