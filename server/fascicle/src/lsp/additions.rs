//! What the protocol has and the crate's types lack: the offer of a type hierarchy, and defaults for the items of a
//! completion. Both are written into the finished answers.

use serde_json::{Value, json};

use super::state::Session;

/// Completes the result of a method.
pub fn complete(session: &Session, method: &str, result: &mut Value) {
    match method {
        "initialize" => {
            if let Some(capabilities) = result.get_mut("capabilities") {
                capabilities["typeHierarchyProvider"] = json!(true);
            }
        }
        "textDocument/completion" if session.state().can.default_range => share_range(result),
        _ => {}
    }
}

/// Says the range that all items share once, for the list.
fn share_range(list: &mut Value) {
    let Some(items) = list.get("items").and_then(Value::as_array) else { return };
    let Some(range) = items.first().and_then(|item| item.pointer("/textEdit/range")).cloned() else { return };
    if items.iter().any(|item| item.pointer("/textEdit/range") != Some(&range)) {
        return;
    }
    for item in list.get_mut("items").and_then(Value::as_array_mut).into_iter().flatten() {
        if let Some(item) = item.as_object_mut()
            && let Some(edit) = item.remove("textEdit")
        {
            let text = edit.get("newText").cloned().unwrap_or_default();
            if item.get("label") != Some(&text) {
                item.insert("textEditText".to_owned(), text);
            }
        }
    }
    list["itemDefaults"] = json!({ "editRange": range });
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_shared_range_is_said_once() {
        let edit = |text: &str| json!({ "range": { "start": 1 }, "newText": text });
        let mut list =
            json!({ "items": [{ "label": "a", "textEdit": edit("a") }, { "label": "b", "textEdit": edit("c") }] });
        share_range(&mut list);
        let items = json!([{ "label": "a" }, { "label": "b", "textEditText": "c" }]);
        assert_eq!(list, json!({ "items": items, "itemDefaults": { "editRange": { "start": 1 } } }));
    }
}
