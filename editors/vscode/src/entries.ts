// Entries of the vocabulary as read-only documents, under addresses of the scheme `fascicle:`.

import { CancellationToken, EventEmitter, TextDocumentContentProvider, Uri } from "vscode";
import { LanguageClient } from "vscode-languageclient/node";

import { entryRequest } from "./requests";

export const scheme = "fascicle";

export class Entries implements TextDocumentContentProvider {
  private readonly changed = new EventEmitter<Uri>();
  readonly onDidChange = this.changed.event;

  constructor(private readonly client: () => LanguageClient | undefined) {}

  async provideTextDocumentContent(uri: Uri, token: CancellationToken): Promise<string> {
    const client = this.client();
    if (!client) return "The server of fascicle does not run.";
    const entry = await client.sendRequest(entryRequest, { uri: uri.toString() }, token);
    return entry?.text ?? `The vocabulary has no entry at ${uri.path}.`;
  }

  /** Reads a document again, after the server has been started again. */
  refresh(uri: Uri): void {
    this.changed.fire(uri);
  }
}
