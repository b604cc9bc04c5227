// The extension: starts the server, says how it is, and offers what only this editor can show.

import { dirname } from "node:path";
import {
  ConfigurationTarget, Disposable, ExtensionContext, LogOutputChannel, QuickPickItem, StatusBarAlignment, StatusBarItem,
  ThemeColor, Uri, commands, languages, window, workspace,
} from "vscode";
import { DocumentSelector, LanguageClient, LanguageClientOptions, ServerOptions, State } from "vscode-languageclient/node";

import { Entries, scheme } from "./entries";
import { findServer } from "./find";
import { statusRequest, treeRequest } from "./requests";
import { BranchTree, openEntry } from "./tree";

const markdown = ["markdown", "mdx", "quarto", "rmd"];

let client: LanguageClient | undefined;
let log: LogOutputChannel;
let status: StatusBarItem;

export async function activate(context: ExtensionContext): Promise<void> {
  log = window.createOutputChannel("fascicle", { log: true });
  status = window.createStatusBarItem("fascicle", StatusBarAlignment.Right, 90);
  status.name = "fascicle";
  status.command = "fascicle.menu";
  const tree = new BranchTree(() => client);
  const entries = new Entries(() => client);
  const settingsFiles = workspace.createFileSystemWatcher("**/fascicle.toml", false, true, false);
  const on = (name: string, run: (...input: never[]) => unknown): Disposable => commands.registerCommand(`fascicle.${name}`, run);
  context.subscriptions.push(
    log,
    status,
    tree,
    workspace.registerTextDocumentContentProvider(scheme, entries),
    window.registerWebviewViewProvider(BranchTree.id, tree, { webviewOptions: { retainContextWhenHidden: true } }),
    on("branchTree", async () => {
      await commands.executeCommand(`${BranchTree.id}.focus`);
      tree.soon(window.activeTextEditor);
    }),
    on("saveBranchTree", () => tree.save()),
    on("readEntry", readEntry),
    on("courseSettings", courseSettings),
    on("restart", () => start(context)),
    on("wellbeing", wellbeing),
    on("log", () => log.show()),
    on("chooseServer", chooseServer),
    on("menu", menu),
    window.onDidChangeActiveTextEditor(tellStatus),
    languages.onDidChangeDiagnostics(tellStatus),
    workspace.onDidChangeConfiguration((change) => {
      if (change.affectsConfiguration("fascicle.server.path")) void start(context);
    }),
    workspace.onDidGrantWorkspaceTrust(() => start(context)),
    // What is a course, and so what is read, has changed.
    workspace.onDidChangeWorkspaceFolders(() => start(context)),
    settingsFiles,
    settingsFiles.onDidCreate(() => start(context)),
    settingsFiles.onDidDelete(() => start(context)),
  );
  await start(context);
}

export async function deactivate(): Promise<void> {
  await client?.dispose();
}

/** Folders below which plain text is part of a course: those that hold a settings file. */
async function courses(): Promise<Uri[]> {
  const files = await workspace.findFiles("**/fascicle.toml", "**/node_modules/**", 100);
  return files.map((file) => file.with({ path: dirname(file.path) }));
}

function selector(folders: Uri[]): DocumentSelector {
  const everywhere = markdown.flatMap((language) => [
    { language, scheme: "file" },
    { language, scheme: "untitled" },
  ]);
  const texts = folders.map((folder) => ({
    scheme: "file",
    pattern: { baseUri: folder.toString(), pattern: "**/*.{txt,text}" },
  }));
  return [...everywhere, { scheme: "file", pattern: "**/*.{srt,vtt}" }, { scheme, language: "markdown" }, ...texts];
}

function isOfCourse(uri: Uri, folders: Uri[]): boolean {
  return !/\.te?xt$/i.test(uri.path) || folders.some((folder) => uri.path.startsWith(`${folder.path}/`));
}

let started: Promise<void> = Promise.resolve();

/** Starts the server, or starts it again; one start after the other. */
function start(context: ExtensionContext): Promise<void> {
  started = started.then(() => startServer(context)).catch((error) => log.error(String(error)));
  return started;
}

async function startServer(context: ExtensionContext): Promise<void> {
  const old = client;
  client = undefined;
  await old?.dispose();
  const command = findServer(context);
  if (!command) {
    tellStatus();
    void offerHelp(context);
    return;
  }
  log.info(`starting ${command}`);
  const folders = await courses();
  const server: ServerOptions = { command, args: ["serve"] };
  const options: LanguageClientOptions = {
    documentSelector: selector(folders),
    // The server looks at all texts of an open folder; plain ones count only where the folder is a course.
    middleware: {
      provideWorkspaceDiagnostics: async (known, token, report, next) => {
        const kept = <T extends { uri: Uri }>(items: T[]) => items.filter(({ uri }) => isOfCourse(uri, folders));
        const all = await next(known, token, (part) => report(part && { ...part, items: kept(part.items) }));
        return all && { ...all, items: kept(all.items) };
      },
    },
    outputChannel: log,
    // Entries are read-only documents here, and a card shows the branches of a nerve as a picture.
    initializationOptions: { entryDocuments: true, pictures: true },
    synchronize: {
      configurationSection: "fascicle",
      fileEvents: workspace.createFileSystemWatcher("**/fascicle.toml"),
    },
    markdown: { supportHtml: false },
  };
  const next = new LanguageClient("fascicle", "fascicle", server, options);
  next.onDidChangeState(({ newState }) => {
    if (client === next) {
      void commands.executeCommand("setContext", "fascicle.running", newState === State.Running);
      tellStatus();
    }
  });
  client = next;
  tellStatus();
  try {
    await next.start();
  } catch (error) {
    log.error(String(error));
    void window.showErrorMessage(`fascicle: ${command} could not be started: ${error instanceof Error ? error.message : error}`);
  }
  void commands.executeCommand("setContext", "fascicle.running", next.isRunning());
  tellStatus();
}

/** Says that there is no program, and what can be done. */
async function offerHelp(context: ExtensionContext): Promise<void> {
  const choice = await window.showWarningMessage(
    "fascicle: the program that reads your notes was not found.", "How to install it", "Choose it…");
  if (choice === "Choose it…") await chooseServer();
  if (choice === "How to install it") {
    await commands.executeCommand("workbench.action.openWalkthrough", `${context.extension.id}#start`);
  }
}

/** The status item: whether the server runs, and what it found in the document at hand. */
function tellStatus(): void {
  const editor = window.activeTextEditor;
  const ours = editor && (markdown.includes(editor.document.languageId) || /\.(srt|vtt|te?xt)$/.test(editor.document.fileName));
  if (!ours) {
    status.hide();
    return;
  }
  status.backgroundColor = undefined;
  if (client?.isRunning()) {
    const found = languages.getDiagnostics(editor.document.uri).filter((one) => one.source === "fascicle").length;
    status.text = found === 0 ? "$(pass) fascicle" : `$(book) fascicle: ${found}`;
    status.tooltip = found === 0 ? "fascicle found nothing here" : `fascicle has ${found} finding${found === 1 ? "" : "s"} here`;
  } else if (client?.state === State.Starting) {
    status.text = "$(loading~spin) fascicle";
    status.tooltip = "fascicle is starting";
  } else {
    status.text = "$(warning) fascicle";
    status.tooltip = "fascicle does not run";
    status.backgroundColor = new ThemeColor("statusBarItem.warningBackground");
  }
  status.show();
}

async function menu(): Promise<void> {
  const items: (QuickPickItem & { run: string })[] = [
    { label: "$(type-hierarchy-sub) Show the branch tree", run: "fascicle.branchTree" },
    { label: "$(book) Read the entry under the cursor", run: "fascicle.readEntry" },
    { label: "$(list-unordered) Show all findings", run: "workbench.actions.view.problems" },
    { label: "$(gear) Open the settings file of this course", run: "fascicle.courseSettings" },
    { label: "$(pulse) Tell how the server is doing", run: "fascicle.wellbeing" },
    { label: "$(debug-restart) Start the server again", run: "fascicle.restart" },
    { label: "$(output) Show the log", run: "fascicle.log" },
  ];
  const chosen = await window.showQuickPick(items, { placeHolder: "fascicle" });
  if (chosen) await commands.executeCommand(chosen.run);
}

async function readEntry(): Promise<void> {
  const editor = window.activeTextEditor;
  if (!editor || !client?.isRunning()) return;
  const at = await client.sendRequest(treeRequest, {
    textDocument: client.code2ProtocolConverter.asTextDocumentIdentifier(editor.document),
    position: client.code2ProtocolConverter.asPosition(editor.selection.active),
  });
  if (at) await openEntry(client, at.id, editor.document);
  else await commands.executeCommand("editor.action.revealDefinition");
}

async function courseSettings(): Promise<void> {
  const folder = workspace.workspaceFolders?.[0]?.uri;
  if (!folder) {
    void window.showInformationMessage("Open the folder of your course first.");
    return;
  }
  const [there] = await workspace.findFiles("**/fascicle.toml", "**/node_modules/**", 1);
  const file = there ?? Uri.joinPath(folder, "fascicle.toml");
  if (!there) {
    const text = "# What this course decides. Delete the # before a line to use it.\n# words = []   # right in this course, whatever they look like\n# off = []     # codes of findings that are not wanted\n";
    await workspace.fs.writeFile(file, new TextEncoder().encode(text));
  }
  await window.showTextDocument(file);
}

async function wellbeing(): Promise<void> {
  if (!client?.isRunning()) {
    void window.showInformationMessage("fascicle does not run.");
    return;
  }
  const told = await client.sendRequest(statusRequest, {});
  const megabytes = told.memory === null ? "unknown" : `${(told.memory / 1e6).toFixed(0)} MB`;
  log.info(`version ${told.version}, memory ${megabytes}, ${told.documents} open documents (${told.text} bytes), ${told.folders.length} courses`);
  for (const one of told.requests) {
    log.info(`${one.method}: ${one.count} times, last ${one.lastMilliseconds.toFixed(1)} ms, longest ${one.longestMilliseconds.toFixed(1)} ms`);
  }
  log.show();
}

/** Lets the author choose the program; the change of the setting starts it. */
async function chooseServer(): Promise<void> {
  const [chosen] = (await window.showOpenDialog({ title: "The program fascicle", canSelectMany: false })) ?? [];
  if (!chosen) return;
  await workspace.getConfiguration("fascicle").update("server.path", chosen.fsPath, ConfigurationTarget.Global);
}
