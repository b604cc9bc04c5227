"""Starts the built program behind the tap, with the capabilities of real editors, and checks what it sent."""

import asyncio
import json
import os
import pathlib
import shutil
import subprocess
import sys

import pytest
import pytest_asyncio
import pytest_lsp
from lsprotocol import types as lsp
from protocol import check_log
from pytest_lsp import ClientServerConfig, client_capabilities

HERE = pathlib.Path(__file__).parent
TESTS = HERE.parent
PROGRAM = os.environ.get("FASCICLE", str(TESTS.parent / "target/debug/fascicle"))
"""Editors whose capabilities the tests take on: old and new, push and pull, all position encodings."""
EDITORS = ["neovim@v0.7", "neovim@v0.11", "visual-studio-code", "emacs"]


@pytest.fixture(scope="session")
def program():
    def run(*arguments, stdin=None, cwd=None):
        return subprocess.run(
            [PROGRAM, *map(str, arguments)], input=stdin, capture_output=True, text=True, timeout=120, cwd=cwd
        )

    return run


@pytest.fixture
def course(tmp_path):
    """A copy of the demo course, to be changed at will."""
    return pathlib.Path(shutil.copytree(TESTS / "course", tmp_path / "course"))


class Session:
    """A client that has opened a course. Every request goes through `ask`, so that none hangs a test."""

    def __init__(self, client, root, log):
        self.client, self.root, self.log = client, root, log
        self.initialized = None
        self.versions = {}

    async def start(self, editor):
        params = lsp.InitializeParams(
            capabilities=client_capabilities(editor),
            process_id=os.getpid(),
            root_uri=self.root.as_uri(),
            workspace_folders=[lsp.WorkspaceFolder(uri=self.root.as_uri(), name=self.root.name)],
        )
        self.initialized = await self.within(self.client.initialize_session(params))
        return self

    async def within(self, awaitable, seconds=30):
        return await asyncio.wait_for(awaitable, seconds)

    @property
    def encoding(self):
        return self.initialized.capabilities.position_encoding or lsp.PositionEncodingKind.Utf16

    def open(self, path):
        uri, text = path.as_uri(), path.read_text(encoding="utf-8")
        self.versions[uri] = 1
        self.client.text_document_did_open(
            lsp.DidOpenTextDocumentParams(
                text_document=lsp.TextDocumentItem(uri=uri, language_id="markdown", version=1, text=text)
            )
        )
        return uri, text

    def change(self, uri, text):
        self.versions[uri] += 1
        self.client.text_document_did_change(
            lsp.DidChangeTextDocumentParams(
                text_document=lsp.VersionedTextDocumentIdentifier(uri=uri, version=self.versions[uri]),
                content_changes=[lsp.TextDocumentContentChangeWholeDocument(text=text)],
            )
        )

    async def diagnostics(self, uri):
        """The findings of the newest version of a document, pulled where the client can, else as they are pushed."""
        if getattr(self.client.capabilities.text_document, "diagnostic", None):
            report = await self.within(
                self.client.text_document_diagnostic_async(
                    lsp.DocumentDiagnosticParams(text_document=lsp.TextDocumentIdentifier(uri=uri))
                )
            )
            return report.items
        while not self.pushed(uri):
            await self.within(self.client.wait_for_notification("textDocument/publishDiagnostics"))
        return self.pushed(uri)[-1]

    def pushed(self, uri):
        """What was pushed for the newest version, in order."""
        found = []
        for line in self.log.read_text(encoding="utf-8").splitlines():
            entry = json.loads(line)
            message = entry["message"]
            if entry["from"] == "server" and message.get("method") == "textDocument/publishDiagnostics":
                params = message["params"]
                if params["uri"] == uri and params.get("version", self.versions[uri]) == self.versions[uri]:
                    found.append(self.client.protocol._converter.structure(params, lsp.PublishDiagnosticsParams))
        return [params.diagnostics for params in found]

    def position(self, text, at):
        """The position of a character of a text, in the encoding that was agreed."""
        before = text[:at]
        line = before.count("\n")
        column = before[before.rfind("\n") + 1 :]
        width = {"utf-8": lambda s: len(s.encode()), "utf-32": len}.get(
            str(getattr(self.encoding, "value", self.encoding)), lambda s: len(s.encode("utf-16-le")) // 2
        )
        return lsp.Position(line=line, character=width(column))

    def offset(self, text, position):
        """The character of a text at a position: the way back, by trying."""
        start = sum(len(line) for line in text.splitlines(keepends=True)[: position.line])
        at = start
        while self.position(text, at).character < position.character:
            at += 1
        return at

    def apply(self, text, edits):
        """A text after the edits of a fix."""
        places = [(self.offset(text, e.range.start), self.offset(text, e.range.end), e.new_text) for e in edits]
        for start, end, new in sorted(places, reverse=True):
            text = text[:start] + new + text[end:]
        return text


@pytest_asyncio.fixture(params=EDITORS)
async def session(request, course, tmp_path):
    """A session of each editor. At its end the server must leave as the protocol says, and all that it sent be right."""
    log = tmp_path / "messages.jsonl"
    log.touch()
    config = ClientServerConfig(server_command=[sys.executable, str(HERE / "tap.py"), str(log), PROGRAM, "serve"])
    client = await config.start()
    session = await Session(client, course, log).start(request.param)
    yield session
    await session.within(client.shutdown_session())
    check_log(log)
