//! Findings as SARIF 2.1.0 (Static Analysis Results Interchange Format, OASIS Standard, 27 March 2020).

use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, utf8_percent_encode};
use serde_json::{Value, json};

use super::report::{CheckReport, FindingOut, RangeOut};

/// What a path may hold in a URI as it is (RFC 3986, unreserved characters and the slash).
const PATH: &AsciiSet = &NON_ALPHANUMERIC.remove(b'-').remove(b'.').remove(b'_').remove(b'~').remove(b'/');

/// The log of one run. `troubles` are what could not be read.
pub fn log(report: &CheckReport, troubles: &[String]) -> Value {
    let mut codes: Vec<(&str, &str)> =
        report.files.iter().flat_map(|file| &file.findings).map(|finding| (&*finding.code, finding.kind)).collect();
    codes.sort_unstable();
    codes.dedup_by_key(|(code, _)| *code);
    let rules: Vec<Value> = codes
        .iter()
        .map(|(code, kind)| json!({ "id": code, "shortDescription": { "text": description(code) }, "properties": { "kind": kind } }))
        .collect();
    let results: Vec<Value> = report
        .files
        .iter()
        .flat_map(|file| file.findings.iter().map(|finding| result(&file.path, finding, &codes)))
        .collect();
    let notifications: Vec<Value> =
        troubles.iter().map(|trouble| json!({ "level": "error", "message": { "text": trouble } })).collect();
    json!({
        "$schema": "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json",
        "version": "2.1.0",
        "runs": [{
            "tool": { "driver": {
                "name": "fascicle",
                "version": env!("CARGO_PKG_VERSION"),
                "semanticVersion": env!("CARGO_PKG_VERSION"),
                "rules": rules,
            }},
            "columnKind": "utf16CodeUnits",
            "invocations": [{
                "executionSuccessful": troubles.is_empty(),
                "toolExecutionNotifications": notifications,
            }],
            "artifacts": report.files.iter().map(|file| json!({ "location": location(&file.path) })).collect::<Vec<_>>(),
            "results": results,
        }],
    })
}

/// A code in words: its parts, as a sentence.
fn description(code: &str) -> String {
    let mut words = code.replace('-', " ");
    if let Some(first) = words.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    words + "."
}

fn result(path: &str, finding: &FindingOut, codes: &[(&str, &str)]) -> Value {
    let level = match finding.severity {
        "error" => "error",
        "warning" => "warning",
        _ => "note",
    };
    let mut text = finding.message.clone();
    for step in &finding.reason {
        text.push('\n');
        text.push_str(step);
    }
    let mut result = json!({
        "ruleId": finding.code,
        "level": level,
        "message": { "text": text },
        "locations": [{ "physicalLocation": {
            "artifactLocation": location(path),
            "region": region(finding.range, finding.bytes),
        }}],
        "properties": { "kind": finding.kind, "reason": finding.reason },
    });
    if let Some(at) = codes.iter().position(|(code, _)| *code == finding.code) {
        result["ruleIndex"] = json!(at);
    }
    if !finding.candidates.is_empty() {
        result["properties"]["candidates"] = json!(finding.candidates);
    }
    if !finding.fixes.is_empty() {
        result["fixes"] = finding
            .fixes
            .iter()
            .filter(|fix| !fix.edits.is_empty())
            .map(|fix| {
                let replacements: Vec<Value> = fix
                    .edits
                    .iter()
                    .map(|edit| {
                        json!({
                            "deletedRegion": { "byteOffset": edit.bytes[0], "byteLength": edit.bytes[1] - edit.bytes[0] },
                            "insertedContent": { "text": edit.text },
                        })
                    })
                    .collect();
                json!({
                    "description": { "text": fix.title },
                    "artifactChanges": [{ "artifactLocation": location(path), "replacements": replacements }],
                })
            })
            .collect();
    }
    let here = finding.related.iter().map(|one| (path, one.range, one.bytes, &one.message));
    let elsewhere = finding.elsewhere.iter().map(|one| (&*one.path, one.range, one.bytes, &one.message));
    let related: Vec<Value> = here
        .chain(elsewhere)
        .map(|(path, range, bytes, message)| {
            json!({
                "physicalLocation": { "artifactLocation": location(path), "region": region(range, bytes) },
                "message": { "text": message },
            })
        })
        .collect();
    if !related.is_empty() {
        result["relatedLocations"] = related.into();
    }
    result
}

/// SARIF counts lines and columns from 1.
fn region(range: RangeOut, bytes: [usize; 2]) -> Value {
    json!({
        "startLine": range.start.line + 1,
        "startColumn": range.start.character + 1,
        "endLine": range.end.line + 1,
        "endColumn": range.end.character + 1,
        "byteOffset": bytes[0],
        "byteLength": bytes[1] - bytes[0],
    })
}

/// A path as a URI reference; an absolute one as a `file` URI.
fn location(path: &str) -> Value {
    if path == "-" {
        return json!({ "uri": "stdin", "description": { "text": "Standard input" } });
    }
    let encoded = utf8_percent_encode(path, PATH).to_string();
    let uri = if path.starts_with('/') { format!("file://{encoded}") } else { encoded };
    json!({ "uri": uri })
}
