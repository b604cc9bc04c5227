// Where the server program is.

import { accessSync, constants } from "node:fs";
import { homedir } from "node:os";
import { delimiter, isAbsolute, join } from "node:path";
import { ExtensionContext, workspace } from "vscode";

const program = process.platform === "win32" ? "fascicle.exe" : "fascicle";

function runs(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** The program to start: what the settings name, what came with the extension, what the system knows; else nothing. */
export function findServer(context: ExtensionContext): string | undefined {
  const named = workspace.getConfiguration("fascicle").get<string>("server.path")?.trim();
  if (named) return named.startsWith("~") ? join(homedir(), named.slice(1)) : named;
  const places = [
    context.asAbsolutePath(join("server", program)),
    ...(process.env["PATH"] ?? "").split(delimiter).filter(isAbsolute).map((folder) => join(folder, program)),
    join(homedir(), ".cargo", "bin", program),
  ];
  return places.find(runs);
}
