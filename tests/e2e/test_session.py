"""What an author does with a course in an editor, over real standard input and output.

The client is pygls with the capability sets of pytest-lsp; the session checks every message that the server sent.
"""

import json

import pytest
from lsprotocol import types as lsp


def document(uri):
    return lsp.TextDocumentIdentifier(uri=uri)


async def test_findings_are_those_of_the_command_line(session, program):
    checked = program("check", session.root, "--format", "json")
    assert checked.returncode == 1, checked.stderr
    files = {file["path"]: file["findings"] for file in json.loads(checked.stdout)["files"]}
    compared = 0
    for path in sorted(session.root.rglob("*.md")):
        uri, text = session.open(path)
        diagnostics = await session.diagnostics(uri)
        there = sorted(
            (d.code, session.offset(text, d.range.start), session.offset(text, d.range.end)) for d in diagnostics
        )
        findings = next((found for name, found in files.items() if path.as_posix().endswith(name.lstrip("./"))), [])
        bytes_ = text.encode()
        characters = lambda at: len(bytes_[:at].decode())
        assert there == sorted((f["code"], *map(characters, f["bytes"])) for f in findings), path
        compared += len(there)
    assert compared >= 30, "the demo course has more findings than that"


async def test_a_fix_takes_its_finding_away(session):
    path = session.root / "lectures/02-shoulder.md"
    uri, text = session.open(path)
    diagnostics = await session.diagnostics(uri)
    at = text.index("infraspinatous")
    [diagnostic] = [d for d in diagnostics if session.offset(text, d.range.start) == at]
    actions = await session.within(
        session.client.text_document_code_action_async(
            lsp.CodeActionParams(
                text_document=document(uri),
                range=diagnostic.range,
                context=lsp.CodeActionContext(diagnostics=[diagnostic]),
            )
        )
    )
    action = actions[0]
    if action.edit is None:
        action = await session.within(session.client.code_action_resolve_async(action))
    if action.edit.document_changes:
        edits = [edit for change in action.edit.document_changes for edit in change.edits]
    else:
        edits = action.edit.changes[uri]
    fixed = session.apply(text, edits)
    assert fixed == text.replace("infraspinatous", "infraspinatus")
    session.change(uri, fixed)
    assert len(await session.diagnostics(uri)) == len(diagnostics) - 1


async def test_a_card_says_what_supplies_a_muscle(session):
    uri, text = session.open(session.root / "lectures/02-shoulder.md")
    at = text.index("Infraspinatus and teres minor are lateral")
    hover = await session.within(
        session.client.text_document_hover_async(
            lsp.HoverParams(text_document=document(uri), position=session.position(text, at + 3))
        )
    )
    card = hover.contents.value if isinstance(hover.contents, lsp.MarkupContent) else str(hover.contents)
    assert "suprascapular nerve" in card
    assert session.offset(text, hover.range.start) == at
    nothing = await session.within(
        session.client.text_document_hover_async(
            lsp.HoverParams(text_document=document(uri), position=lsp.Position(line=10_000, character=3))
        )
    )
    assert nothing is None


async def test_the_right_nerve_is_offered_first(session):
    path = session.root / "new.md"
    path.write_text("# Arm\n\nThe serratus anterior is supplied by the \n", encoding="utf-8")
    uri, text = session.open(path)
    answer = await session.within(
        session.client.text_document_completion_async(
            lsp.CompletionParams(
                text_document=document(uri), position=session.position(text, text.index("by the ") + len("by the "))
            )
        )
    )
    items = answer.items if isinstance(answer, lsp.CompletionList) else answer
    first = min(items, key=lambda item: item.sort_text or item.label)
    assert first.label == "long thoracic nerve"


async def test_the_oldest_and_the_newest_encoding(session):
    offered = getattr(session.client.capabilities.general, "position_encodings", None) or ["utf-16"]
    assert session.encoding in [lsp.PositionEncodingKind(e) for e in offered]
    path = session.root / "wide.md"
    path.write_text("𝔹é — “𝔹” the flexor pollicus brevis.\n", encoding="utf-8")
    uri, text = session.open(path)
    [diagnostic] = await session.diagnostics(uri)
    marked = text[session.offset(text, diagnostic.range.start) : session.offset(text, diagnostic.range.end)]
    assert "pollicus" in marked and "the" not in marked.split()


async def test_every_request_that_is_offered_is_answered(session):
    """Each request whose capability the server told, at several places of a note. The answers are checked at the end."""
    uri, text = session.open(session.root / "lectures/03-hand.md")
    places = [session.position(text, text.index(word) + 2) for word in ("median nerve", "Two nerves", "adductor pollicis")]
    places.append(lsp.Position(line=100_000, character=100_000))
    whole = lsp.Range(start=lsp.Position(line=0, character=0), end=lsp.Position(line=40, character=0))
    told = session.client.protocol._converter.unstructure(session.initialized.capabilities)
    requests = {
        "hoverProvider": ["textDocument/hover"],
        "completionProvider": ["textDocument/completion"],
        "definitionProvider": ["textDocument/definition"],
        "declarationProvider": ["textDocument/declaration"],
        "typeDefinitionProvider": ["textDocument/typeDefinition"],
        "documentHighlightProvider": ["textDocument/documentHighlight"],
        "linkedEditingRangeProvider": ["textDocument/linkedEditingRange"],
        "callHierarchyProvider": ["textDocument/prepareCallHierarchy"],
        "typeHierarchyProvider": ["textDocument/prepareTypeHierarchy"],
        "renameProvider": ["textDocument/prepareRename"],
        "referencesProvider": ["textDocument/references"],
        "selectionRangeProvider": ["textDocument/selectionRange"],
        "codeActionProvider": ["textDocument/codeAction"],
        "inlayHintProvider": ["textDocument/inlayHint"],
        "documentSymbolProvider": ["textDocument/documentSymbol"],
        "codeLensProvider": ["textDocument/codeLens"],
        "documentLinkProvider": ["textDocument/documentLink"],
        "foldingRangeProvider": ["textDocument/foldingRange"],
        "semanticTokensProvider": ["textDocument/semanticTokens/full", "textDocument/semanticTokens/range"],
        "workspaceSymbolProvider": ["workspace/symbol"],
        "diagnosticProvider": ["textDocument/diagnostic"],
    }
    at_place = {"textDocument": {"uri": uri}}
    extra = {
        "textDocument/references": {"context": {"includeDeclaration": True}},
        "textDocument/codeAction": {"range": whole, "context": {"diagnostics": []}},
        "textDocument/inlayHint": {"range": whole},
        "textDocument/semanticTokens/range": {"range": whole},
    }
    unstructure = session.client.protocol._converter.unstructure
    answered = 0
    for capability, methods in requests.items():
        if not told.get(capability):
            continue
        for method in methods:
            if method == "textDocument/semanticTokens/range" and not told[capability].get("range"):
                continue
            for place in places:
                params = {**at_place, "position": unstructure(place), **unstructure(extra.get(method, {}))}
                if method == "textDocument/selectionRange":
                    params = {**at_place, "positions": [unstructure(place)]}
                if method == "workspace/symbol":
                    params = {"query": "median"}
                kind = lsp.METHOD_TO_TYPES[method][2]
                params = session.client.protocol._converter.structure(params, kind)
                try:
                    await session.within(session.client.protocol.send_request_async(method, params))
                except Exception as error:  # an error is an answer too: prepareRename where there is no name
                    assert "Internal" not in str(error), f"{method}: {error}"
                answered += 1
    assert answered >= 4 * 3


async def test_every_request_is_answered_and_its_answer_is_of_the_protocol(session):
    """All requests of the server's table, one after the other as an editor sends them: what is offered is worked out, what
    is prepared is followed. The answers are checked at the end."""
    uri, text = session.open(session.root / "lectures/03-hand.md")
    client, this = session.client, document(uri)
    nerve, muscle = (session.position(text, text.index(word) + 2) for word in ("median nerve", "adductor pollicis"))
    whole = lsp.Range(start=lsp.Position(line=0, character=0), end=lsp.Position(line=200, character=0))
    ask = session.within

    listed = await ask(client.text_document_completion_async(lsp.CompletionParams(this, nerve)))
    item = (listed.items if isinstance(listed, lsp.CompletionList) else listed)[0]
    assert (await ask(client.completion_item_resolve_async(item))).documentation

    actions = await ask(
        client.text_document_code_action_async(
            lsp.CodeActionParams(this, lsp.Range(start=nerve, end=nerve), lsp.CodeActionContext(diagnostics=[]))
        )
    )
    assert actions
    for action in actions:
        resolved = action if action.edit else await ask(client.code_action_resolve_async(action))
        assert resolved.edit is not None, action.title

    lenses = await ask(client.text_document_code_lens_async(lsp.CodeLensParams(this)))
    for lens in lenses:
        if lens.command.command:
            command = lsp.ExecuteCommandParams(command=lens.command.command, arguments=lens.command.arguments)
            await ask(client.workspace_execute_command_async(command))

    hints = await ask(client.text_document_inlay_hint_async(lsp.InlayHintParams(this, whole)))
    for hint in (hints or [])[:3]:
        await ask(client.inlay_hint_resolve_async(hint))

    [caller, *_] = await ask(
        client.text_document_prepare_call_hierarchy_async(lsp.CallHierarchyPrepareParams(this, nerve))
    )
    assert await ask(client.call_hierarchy_incoming_calls_async(lsp.CallHierarchyIncomingCallsParams(caller)))
    assert await ask(client.call_hierarchy_outgoing_calls_async(lsp.CallHierarchyOutgoingCallsParams(caller)))
    [kind, *_] = await ask(
        client.text_document_prepare_type_hierarchy_async(lsp.TypeHierarchyPrepareParams(this, muscle))
    )
    above = await ask(client.type_hierarchy_supertypes_async(lsp.TypeHierarchySupertypesParams(kind)))
    for group in above or []:
        await ask(client.type_hierarchy_subtypes_async(lsp.TypeHierarchySubtypesParams(group)))

    for method, kind in [
        ("definition", lsp.DefinitionParams),
        ("declaration", lsp.DeclarationParams),
        ("type_definition", lsp.TypeDefinitionParams),
        ("document_highlight", lsp.DocumentHighlightParams),
        ("linked_editing_range", lsp.LinkedEditingRangeParams),
        ("prepare_rename", lsp.PrepareRenameParams),
        ("hover", lsp.HoverParams),
    ]:
        answer = await ask(getattr(client, f"text_document_{method}_async")(kind(this, nerve)))
        assert answer is not None or method in ("linked_editing_range", "type_definition"), method
    found = await ask(
        client.text_document_references_async(lsp.ReferenceParams(lsp.ReferenceContext(True), this, nerve))
    )
    assert len(found) > 1
    edit = await ask(client.text_document_rename_async(lsp.RenameParams(this, muscle, "musculus adductor pollicis")))
    assert edit.changes or edit.document_changes

    full = await ask(client.text_document_semantic_tokens_full_async(lsp.SemanticTokensParams(this)))
    session.change(uri, text + "\nThe ulnar nerve.\n")
    delta = lsp.SemanticTokensDeltaParams(this, full.result_id)
    assert await ask(client.text_document_semantic_tokens_full_delta_async(delta))
    assert await ask(client.text_document_semantic_tokens_range_async(lsp.SemanticTokensRangeParams(this, whole)))

    assert await ask(client.text_document_document_symbol_async(lsp.DocumentSymbolParams(this)))
    assert await ask(client.text_document_folding_range_async(lsp.FoldingRangeParams(this)))
    assert await ask(client.text_document_selection_range_async(lsp.SelectionRangeParams(this, [nerve, muscle])))
    await ask(client.text_document_document_link_async(lsp.DocumentLinkParams(this)))
    assert await ask(client.workspace_symbol_async(lsp.WorkspaceSymbolParams("median nerve")))

    first = await ask(client.text_document_diagnostic_async(lsp.DocumentDiagnosticParams(this)))
    again = lsp.DocumentDiagnosticParams(this, previous_result_id=first.result_id)
    assert (await ask(client.text_document_diagnostic_async(again))).kind == "unchanged"
    report = await ask(client.workspace_diagnostic_async(lsp.WorkspaceDiagnosticParams([])))
    assert any(item.uri == uri for item in report.items)


async def test_the_server_survives_what_no_client_should_send(session):
    uri, text = session.open(session.root / "lectures/03-hand.md")
    nowhere = "file:///nowhere/at/all.md"
    for method, params in [
        ("textDocument/hover", lsp.HoverParams(document(nowhere), lsp.Position(0, 0))),
        ("textDocument/completion", lsp.CompletionParams(document(nowhere), lsp.Position(2**31 - 1, 2**31 - 1))),
    ]:
        try:
            await session.within(session.client.protocol.send_request_async(method, params))
        except Exception as error:
            assert "Internal" not in str(error)
    with pytest.raises(Exception, match="(?i)method"):
        await session.within(session.client.protocol.send_request_async("fascicle/noSuchThing", {}))
    session.change(uri, text + "\nDeltoid.\n")
    hover = await session.within(
        session.client.text_document_hover_async(
            lsp.HoverParams(document(uri), session.position(text + "\nDeltoid.\n", len(text) + 3))
        )
    )
    assert hover is not None
