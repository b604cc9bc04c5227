"""The checker itself: it passes what the protocol allows and nothing else."""

import pytest
from protocol import Violation, check_message


def answer(result, method="textDocument/hover"):
    return check_message({"jsonrpc": "2.0", "id": 1, "result": result}, {"1": method}, {})


RANGE = {"start": {"line": 0, "character": 0}, "end": {"line": 0, "character": 1}}


def test_passes_what_is_right():
    answer(None)
    answer({"contents": {"kind": "markdown", "value": "x"}, "range": RANGE})
    answer({"data": [0, 0, 3, 0, 0], "resultId": "1"}, "textDocument/semanticTokens/full")
    answer({"isIncomplete": False, "items": [{"label": "x", "kind": 1}]}, "textDocument/completion")
    assert check_message(
        {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"uri": "file:///a", "diagnostics": []}},
        {},
        {},
    )


@pytest.mark.parametrize(
    "result",
    [
        {"contents": {"kind": "html", "value": "x"}},
        {"contents": "x", "ranges": RANGE},
        {"contents": "x", "range": {"start": {"line": -1, "character": 0}, "end": RANGE["end"]}},
        {"range": RANGE},
        7,
    ],
)
def test_refuses_what_is_wrong(result):
    with pytest.raises(Violation):
        answer(result)


def test_refuses_messages_that_are_not_the_servers():
    for message in [
        {"jsonrpc": "2.0", "id": 9, "result": None},
        {"id": 1, "result": None},
        {"jsonrpc": "2.0", "method": "textDocument/invented", "params": {}},
        {"jsonrpc": "2.0", "method": "textDocument/didOpen", "params": {}},
    ]:
        with pytest.raises(Violation):
            check_message(message, {"1": "textDocument/hover"}, {})
