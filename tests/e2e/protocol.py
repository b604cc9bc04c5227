"""Checks messages of the server against the language server protocol.

The types come from `lsprotocol`, which its authors generate from the protocol's published meta-model. Its own reader is
lenient: it drops properties that it does not know. This one is not: every property must be known, required ones present,
and every value of one of the declared types.
"""

import enum
import json
import types as python_types
import typing
from collections import Counter

import attrs
from lsprotocol import types as lsp
from lsprotocol import converters

converters.get_converter()  # resolves the forward references of the types


class Violation(Exception):
    """What is wrong, and where."""


def property_name(name: str) -> str:
    first, *rest = name.rstrip("_").split("_")
    return first + "".join(part.capitalize() for part in rest)


def check(value, kind, where: str) -> None:
    """Checks a value against a type; raises `Violation`."""
    if kind is typing.Any or kind is lsp.LSPAny or kind is object:
        return
    origin, arguments = typing.get_origin(kind), typing.get_args(kind)
    if origin is typing.Union or origin is python_types.UnionType:
        problems = []
        for option in arguments:
            try:
                return check(value, option, where)
            except Violation as problem:
                problems.append(str(problem))
        raise Violation(f"{where}: none of the declared types fits: " + " | ".join(problems))
    if origin is typing.Literal:
        if value not in arguments:
            raise Violation(f"{where}: {value!r} is none of {arguments}")
        return
    if origin is tuple:
        if not isinstance(value, list) or len(value) != len(arguments):
            raise Violation(f"{where}: no list of {len(arguments)}")
        for at, (item, argument) in enumerate(zip(value, arguments)):
            check(item, argument, f"{where}[{at}]")
        return
    if origin is not None and isinstance(origin, type) and issubclass(origin, typing.Mapping):
        if not isinstance(value, dict):
            raise Violation(f"{where}: {value!r} is no object")
        for key, item in value.items():
            check(item, arguments[1], f"{where}.{key}")
        return
    if origin is not None:  # a sequence
        if not isinstance(value, list):
            raise Violation(f"{where}: {value!r} is no list")
        for at, item in enumerate(value):
            check(item, arguments[0], f"{where}[{at}]")
        return
    if kind is None or kind is type(None):
        if value is not None:
            raise Violation(f"{where}: {value!r} is not null")
        return
    if isinstance(kind, type) and issubclass(kind, enum.Enum):
        try:
            kind(value)
        except ValueError:
            raise Violation(f"{where}: {value!r} is no {kind.__name__}") from None
        return
    if attrs.has(kind):
        return check_object(value, kind, where)
    if kind is float:
        kind = (int, float)
    if not isinstance(value, kind) or (isinstance(value, bool) and kind is not bool):
        raise Violation(f"{where}: {value!r} is no {kind}")


def check_object(value, kind, where: str) -> None:
    if not isinstance(value, dict):
        raise Violation(f"{where}: {value!r} is no {kind.__name__}")
    fields = {property_name(field.name): field for field in attrs.fields(kind)}
    if unknown := value.keys() - fields.keys():
        raise Violation(f"{where}: {kind.__name__} has no {sorted(unknown)}")
    for name, field in fields.items():
        if name not in value:
            if field.default is attrs.NOTHING:
                raise Violation(f"{where}: {kind.__name__} needs {name}")
            continue
        check(value[name], field.type, f"{where}.{name}")
        if field.validator is not None and isinstance(value[name], int):
            try:
                field.validator(None, field, value[name])
            except (TypeError, ValueError) as error:
                raise Violation(f"{where}.{name}: {error}") from None


def check_message(message, sent_by_client: dict, sent_by_server: dict) -> str:
    """Checks a message of the server; says which method it belongs to."""
    if "unreadable" in message:
        raise Violation(f"unreadable: {message['unreadable']}")
    if message.get("jsonrpc") != "2.0":
        raise Violation(f"no JSON-RPC 2.0: {message}")
    if "method" in message:
        method = message["method"]
        if method.startswith("fascicle/"):
            return method  # our own, documented in editors/README.md
        if method not in lsp.METHOD_TO_TYPES:
            raise Violation(f"the protocol has no {method}")
        if lsp.message_direction(method) not in ("serverToClient", "both"):
            raise Violation(f"{method} is not the server's to send")
        kind = lsp.METHOD_TO_TYPES[method][0]
        check_object(message, kind, method)
        if "id" in message:
            sent_by_server[json.dumps(message["id"])] = method
        return method
    if "error" in message:
        check_object(message, lsp.ResponseErrorMessage, "error")
        return "error"
    request = sent_by_client.pop(json.dumps(message.get("id")), None)
    if request is None:
        raise Violation(f"an answer to no request: {message}")
    if "result" not in message:
        raise Violation(f"{request}: an answer without a result")
    if request in lsp.METHOD_TO_TYPES:
        check_object(message, lsp.METHOD_TO_TYPES[request][1], f"answer to {request}")
    return f"answer to {request}"


def check_log(path) -> Counter:
    """Checks all that the server sent in a log of `tap.py`; says how many messages of each method there were."""
    by_client, by_server, seen, problems = {}, {}, Counter(), []
    with open(path, encoding="utf-8") as log:
        for line in log:
            entry = json.loads(line)
            message = entry["message"]
            if entry["from"] == "client":
                if isinstance(message, dict) and "method" in message and "id" in message:
                    by_client[json.dumps(message["id"])] = message["method"]
                continue
            try:
                seen[check_message(message, by_client, by_server)] += 1
            except Violation as problem:
                problems.append(str(problem))
    if problems:
        raise Violation(f"{len(problems)} messages are not of the protocol:\n" + "\n".join(problems[:20]))
    return seen
