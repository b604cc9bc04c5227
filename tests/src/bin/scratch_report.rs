//! scratch
use fascicle_analysis::Knowledge;
use fascicle_tests::corpus::{self, Document, Truth};
fn main() {
    let knowledge = Knowledge::new(fascicle_vocab::built_in());
    let all = std::env::var("ALL").is_ok();
    let mut t = [[0usize; 3]; 3];
    for path in std::env::args().skip(1) {
        let text = std::fs::read_to_string(&path).unwrap();
        let document = Document::parse(&path, &text).unwrap();
        let scored = corpus::score(&document, &knowledge);
        for (mark, told) in &scored.marks {
            let contra = told.iter().any(|t| t.contradicts());
            let agrees = told.iter().any(|t| t.agrees());
            let (row, ok) = match mark.truth {
                Truth::True => (0, agrees && !contra),
                Truth::False => (1, contra),
                Truth::Silent => (2, !contra),
            };
            t[row][0] += 1;
            t[row][1] += usize::from(ok);
            t[row][2] += usize::from(contra);
            if !ok || all {
                let word = if ok {
                    "ok"
                } else if row == 0 && contra {
                    "ALARM"
                } else if row == 2 {
                    "ALARM0"
                } else {
                    "MISS"
                };
                println!(
                    "{word} {} {} {}:{} «{}»",
                    mark.truth.sign(),
                    mark.kind.word(),
                    path.rsplit('/').next().unwrap(),
                    document.line(mark.span.start),
                    mark.span.of(&document.text)
                );
                for told in told {
                    println!(
                        "      {:?} {:?} {:?} [{}] {}",
                        told.claim.kind,
                        told.judgement.verdict,
                        told.judgement.why,
                        told.claim.span.of(&document.text).replace('\n', "⏎"),
                        told.finding.as_ref().map(|f| f.message.to_string()).unwrap_or_default()
                    );
                }
            }
        }
        for told in scored.unmarked.iter().filter(|t| t.contradicts()) {
            println!(
                "ALARMU {}:{} {}",
                path.rsplit('/').next().unwrap(),
                document.line(told.claim.span.start),
                told.finding.as_ref().map(|f| f.message.to_string()).unwrap_or_default()
            );
        }
    }
    println!(
        "true: {} agreed {} alarm {}\nfalse: {} found {}\nsilent: {} alarm {}",
        t[0][0], t[0][1], t[0][2], t[1][0], t[1][1], t[2][0], t[2][2]
    );
}
