// The panel with the branch tree of what is under the cursor.

import { randomBytes } from "node:crypto";
import {
  Disposable, Selection, TextDocument, TextEditor, TextEditorRevealType, Uri, WebviewView, WebviewViewProvider, window, workspace,
} from "vscode";
import { LanguageClient } from "vscode-languageclient/node";

import { Tree, entryRequest, treeRequest } from "./requests";

/** How long the cursor must rest, in milliseconds. */
const rest = 120;

export class BranchTree implements WebviewViewProvider, Disposable {
  static readonly id = "fascicle.branchTreeView";

  private view: WebviewView | undefined;
  private shown: Tree | undefined;
  private editor: TextEditor | undefined;
  private timer: NodeJS.Timeout | undefined;
  private asked = 0;
  private readonly listening: Disposable;

  constructor(private readonly client: () => LanguageClient | undefined) {
    this.listening = Disposable.from(
      window.onDidChangeTextEditorSelection((event) => this.soon(event.textEditor)),
      window.onDidChangeActiveTextEditor((editor) => editor && this.soon(editor)),
    );
  }

  dispose(): void {
    clearTimeout(this.timer);
    this.listening.dispose();
  }

  resolveWebviewView(view: WebviewView): void {
    this.view = view;
    view.webview.options = { enableScripts: true, localResourceRoots: [] };
    view.webview.html = page();
    view.webview.onDidReceiveMessage((message: { ready?: true; id?: string }) => {
      if (message.ready) this.show();
      if (typeof message.id === "string") void this.go(message.id);
    });
    view.onDidChangeVisibility(() => view.visible && this.soon(window.activeTextEditor));
    view.onDidDispose(() => (this.view = undefined));
    this.soon(window.activeTextEditor);
  }

  /** Asks for the tree at the cursor once it rests. */
  soon(editor: TextEditor | undefined): void {
    if (!editor || !this.view?.visible || editor.document.uri.scheme === "output") return;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.follow(editor), rest);
  }

  private async follow(editor: TextEditor): Promise<void> {
    const client = this.client();
    if (!client?.isRunning()) return;
    const number = ++this.asked;
    try {
      const tree = await client.sendRequest(treeRequest, {
        textDocument: client.code2ProtocolConverter.asTextDocumentIdentifier(editor.document),
        position: client.code2ProtocolConverter.asPosition(editor.selection.active),
      });
      // Where nothing is named, the last tree stays.
      if (number !== this.asked || !tree) return;
      this.shown = tree;
      this.editor = editor;
      this.show();
    } catch {
      // A document that the server does not read has no tree.
    }
  }

  private show(): void {
    if (!this.view || !this.shown) return;
    this.view.description = this.shown.name;
    void this.view.webview.postMessage({ svg: this.shown.svg });
  }

  /** Goes to the first mention of an entry in the document, or to its own document. */
  private async go(id: string): Promise<void> {
    const range = this.shown?.mentions[id];
    const client = this.client();
    if (range && client && this.editor) {
      const { document } = this.editor;
      const editor = await window.showTextDocument(document, { viewColumn: this.editor.viewColumn ?? 1 });
      const place = client.protocol2CodeConverter.asRange(range);
      editor.selection = new Selection(place.start, place.end);
      editor.revealRange(place, TextEditorRevealType.InCenterIfOutsideViewport);
      return;
    }
    if (client && this.editor) await openEntry(client, id, this.editor.document);
  }

  /** Saves the picture where the author says. */
  async save(): Promise<void> {
    if (!this.shown) {
      void window.showInformationMessage("Put the cursor into the name of a nerve or a muscle first.");
      return;
    }
    const folder = workspace.workspaceFolders?.[0]?.uri;
    const name = `${this.shown.nerve}.svg`;
    const to = await window.showSaveDialog({
      ...(folder ? { defaultUri: Uri.joinPath(folder, name) } : {}),
      filters: { Picture: ["svg"] },
    });
    if (to) await workspace.fs.writeFile(to, new TextEncoder().encode(this.shown.svg));
  }

  /** The entry that the panel shows. */
  get entry(): string | undefined {
    return this.shown?.id;
  }
}

/** Opens the document of an entry that was met in a document, whose course says what the entry is. */
export async function openEntry(client: LanguageClient, id: string, metIn: TextDocument): Promise<void> {
  const textDocument = client.code2ProtocolConverter.asTextDocumentIdentifier(metIn);
  const entry = await client.sendRequest(entryRequest, { id, textDocument });
  if (!entry?.uri) return;
  const document = await workspace.openTextDocument(client.protocol2CodeConverter.asUri(entry.uri));
  await window.showTextDocument(document, { preview: true });
}

function page(): string {
  const nonce = randomBytes(16).toString("base64");
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; script-src 'nonce-${nonce}'">
<style>
  body { padding: 4px 8px; color: var(--vscode-foreground);
    --fascicle-ink: var(--vscode-foreground); --fascicle-faint: var(--vscode-descriptionForeground);
    --fascicle-nerve: var(--vscode-charts-yellow); --fascicle-muscle: var(--vscode-charts-red);
    --fascicle-skin: var(--vscode-charts-blue); --fascicle-mark: var(--vscode-editor-findMatchHighlightBackground); }
  #tree { overflow-x: auto; }
  [data-id]:focus { outline: 1px solid var(--vscode-focusBorder); }
</style></head>
<body><div id="tree">Put the cursor into the name of a nerve, a muscle or a joint.</div>
<script nonce="${nonce}">
  const host = acquireVsCodeApi();
  const tree = document.getElementById("tree");
  const tell = (event) => {
    const name = event.target.closest("[data-id]");
    if (name) host.postMessage({ id: name.dataset.id });
  };
  tree.addEventListener("click", tell);
  tree.addEventListener("keydown", (event) => event.key === "Enter" && tell(event));
  addEventListener("message", ({ data }) => {
    tree.innerHTML = data.svg;
    tree.querySelector(".marked")?.scrollIntoView({ block: "nearest" });
  });
  host.postMessage({ ready: true });
</script></body></html>`;
}
