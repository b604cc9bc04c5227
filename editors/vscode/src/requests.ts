// What only this server answers, beside the protocol.

import { Position, Range, RequestType, TextDocumentIdentifier } from "vscode-languageclient/node";

export interface TreeParams {
  textDocument: TextDocumentIdentifier;
  position: Position;
  id?: string;
}

export interface Tree {
  /** The entry at the place. */
  id: string;
  name: string;
  /** The nerve whose tree it is. */
  nerve: string;
  svg: string;
  text: string;
  /** Where the document names entries of the tree first. */
  mentions: { [id: string]: Range };
}

export interface EntryParams {
  uri?: string;
  id?: string;
  textDocument?: TextDocumentIdentifier;
}

export interface Entry {
  id: string;
  uri: string | null;
  text: string;
}

export interface Wellbeing {
  version: string;
  memory: number | null;
  documents: number;
  text: number;
  folders: { path: string; documents: number }[];
  requests: { method: string; count: number; lastMilliseconds: number; longestMilliseconds: number }[];
}

export const treeRequest = new RequestType<TreeParams, Tree | null, void>("fascicle/tree");
export const entryRequest = new RequestType<EntryParams, Entry | null, void>("fascicle/entry");
export const statusRequest = new RequestType<object, Wellbeing, void>("fascicle/status");
