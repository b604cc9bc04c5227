// The page: an editor on the left, what was found and what is under the cursor on the right. All anatomy is in the
// compiled reader; here is only what is shown and what is chosen.

import { autocompletion } from "@codemirror/autocomplete";
import { defaultKeymap, history, historyKeymap } from "@codemirror/commands";
import { HighlightStyle, Language, defineLanguageFacet, syntaxHighlighting } from "@codemirror/language";
import { forceLinting, lintGutter, lintKeymap, linter, setDiagnostics } from "@codemirror/lint";
import { highlightSelectionMatches, searchKeymap } from "@codemirror/search";
import { Compartment, EditorState, StateEffect, StateField } from "@codemirror/state";
import { Decoration, EditorView, drawSelection, hoverTooltip, keymap, lineNumbers, placeholder, tooltips } from "@codemirror/view";
import { tags } from "@lezer/highlight";
import { GFM, parser } from "@lezer/markdown";

import compiled from "../build/fascicle_web_bg.wasm.gz";
import workerSource from "../build/worker.txt";
import example from "../../../tests/course/lectures/02-shoulder.md";

// The page as it came, for those who want to keep it.
const page = `<!doctype html>\n${document.documentElement.outerHTML}`;

const byId = (id) => document.getElementById(id);
const paper = byId("paper");

let found = { findings: [], names: [], claims: 0 };
let foundIn = null; // the text in which that was found
let file = { name: "", handle: null, lineEnd: "\n", mark: "", saved: "", begun: false };
let shown = null; // identifier of the entry on the card
let choice = { text: null }; // the last entry chosen on the card or in the tree, by the text in which that was

// --- the reader ---------------------------------------------------------------------------------------------------

let reader = null; // the worker, once it has started
let waiting = new Map(); // questions that are not answered yet, by number
let questions = 0;

// Starts the compiled reader in its worker. If it fails over a document, a fresh one takes its place.
async function startReader() {
  const stream = new Blob([compiled]).stream().pipeThrough(new DecompressionStream("gzip"));
  const bytes = await new Response(stream).arrayBuffer();
  const address = URL.createObjectURL(new Blob([workerSource], { type: "text/javascript" }));
  const worker = new Worker(address);
  await new Promise((started, failed) => {
    worker.onerror = (event) => failed(new Error(event.message || "the browser allows no worker"));
    worker.onmessage = ({ data }) => {
      if (data.number === 0) return data.error ? failed(new Error(data.error)) : started();
      waiting.get(data.number)?.(data.error ? null : data.answer);
      waiting.delete(data.number);
      if (data.error) restart(worker, data.error);
    };
    worker.postMessage({ compiled: bytes, example }, [bytes]);
  });
  URL.revokeObjectURL(address);
  reader = worker;
}

function restart(worker, why) {
  console.warn(`the reader is started again: ${why}`);
  worker.terminate();
  for (const give of waiting.values()) give(null);
  waiting = new Map();
  reader = null;
  startReader().catch(tellFailure);
}

/** Asks the reader; the answer is `null` if there is none. */
function ask(method, ...input) {
  if (!reader) return Promise.resolve(null);
  return new Promise((give) => {
    questions += 1;
    waiting.set(questions, give);
    reader.postMessage({ number: questions, method, input });
  });
}

function tellFailure(error) {
  byId("nothing").hidden = false;
  byId("nothing").textContent = `The reader did not start: ${error.message}`;
}

// --- names in colour ----------------------------------------------------------------------------------------------

const setNames = StateEffect.define();
const kinds = new Map();

function nameMark(kind) {
  if (!kinds.has(kind)) kinds.set(kind, Decoration.mark({ class: `name ${kind}` }));
  return kinds.get(kind);
}

const names = StateField.define({
  create: () => Decoration.none,
  update(marks, transaction) {
    for (const effect of transaction.effects) {
      if (effect.is(setNames)) return effect.value;
    }
    return marks.map(transaction.changes);
  },
  provide: (field) => EditorView.decorations.from(field),
});

function showNames(view, list) {
  const length = view.state.doc.length;
  const marks = list.filter(({ from, to }) => from < to && to <= length).map(({ from, to, kind }) => nameMark(kind).range(from, to));
  view.dispatch({ effects: setNames.of(Decoration.set(marks)) });
}

// --- findings -----------------------------------------------------------------------------------------------------

const severities = { error: "error", warning: "warning", information: "info", hint: "hint" };

function apply(fix) {
  if (foundIn !== view.state.doc) return; // the text has changed since; it is being read anew
  view.dispatch({ changes: fix.edits, userEvent: "input.fix" });
  view.focus();
}

// The first stretch of a long document, up to an empty line: it is read first, so that there is something to see at once.
const stretch = 2500;

function head(text) {
  const end = text.indexOf("\n\n", stretch);
  return text.length > 4 * stretch && end > 0 ? text.slice(0, end) : null;
}

async function diagnose(view) {
  const document_ = view.state.doc;
  const text = document_.toString();
  const isStill = () => view.state.doc === document_;
  const first = file.begun ? null : head(text);
  file.begun = true;
  if (first !== null) {
    const early = await ask("read", first, file.name);
    if (early && isStill()) view.dispatch(setDiagnostics(view.state, marks(view, early)));
    await new Promise(requestAnimationFrame); // let it be seen before the rest is read
  }
  const began = performance.now();
  const answer = await ask("read", text, file.name);
  if (!answer || !isStill()) return [];
  document.body.dataset.read = (performance.now() - began).toFixed(1);
  return marks(view, answer);
}

// Keeps what was found, lists it, and gives the marks for the text.
function marks(view, answer) {
  found = answer;
  foundIn = view.state.doc;
  listFindings(view);
  showNames(view, found.names);
  follow(view, true);
  const length = view.state.doc.length;
  return found.findings.map((finding) => ({
    from: Math.min(finding.from, length),
    to: Math.min(finding.to, length),
    severity: severities[finding.severity],
    message: [finding.message, ...finding.reason].join("\n"),
    actions: finding.fixes.slice(0, 4).map((fix) => ({ name: fix.title, apply: () => apply(fix) })),
  }));
}

function element(name, className, text) {
  const made = document.createElement(name);
  if (className) made.className = className;
  if (text !== undefined) made.textContent = text;
  return made;
}

function listFindings(view) {
  const list = byId("findings");
  list.replaceChildren();
  for (const finding of found.findings.slice(0, 500)) {
    const item = element("li", finding.severity);
    item.dataset.from = finding.from;
    item.dataset.to = finding.to;
    const line = view.state.doc.lineAt(Math.min(finding.from, view.state.doc.length));
    const go = element("button", "go");
    go.type = "button";
    go.append(element("span", "where", `line ${line.number} · ${finding.severity} `), finding.message);
    go.onclick = () => {
      view.dispatch({
        selection: { anchor: finding.from, head: finding.to },
        effects: EditorView.scrollIntoView(finding.from, { y: "center" }),
      });
      view.focus();
    };
    item.append(go);
    if (finding.reason.length) {
      const why = element("ul");
      why.append(...finding.reason.map((step) => element("li", "", step)));
      item.append(why);
    }
    for (const fix of finding.fixes.slice(0, 4)) {
      const button = element("button", "fix", fix.title);
      button.type = "button";
      button.onclick = () => apply(fix);
      item.append(button);
    }
    list.append(item);
  }
  const empty = view.state.doc.length === 0;
  const count = found.findings.length;
  byId("count").textContent = empty ? "" : `${count} · ${found.claims} statement${found.claims === 1 ? "" : "s"} checked`;
  byId("nothing").hidden = count > 0;
  if (!empty) byId("nothing").textContent = reader ? "Nothing was found." : "The reader is starting.";
  const safe = safeFixes().length;
  byId("mend").disabled = safe === 0;
  byId("mend").textContent = safe === 0 ? "Take safe fixes" : `Take ${safe} safe fix${safe === 1 ? "" : "es"}`;
}

// From the place of a finding in the text to its line in the list, where its fixes are.
function toFix(view) {
  const at = view.state.selection.main.head;
  const items = [...byId("findings").children];
  const here = items.find((item) => Number(item.dataset.from) <= at && at <= Number(item.dataset.to));
  const target = here?.querySelector(".fix") ?? here?.querySelector(".go");
  if (!target) return false;
  target.focus();
  target.scrollIntoView({ block: "nearest" });
  return true;
}

function safeFixes() {
  return found.findings.map((finding) => finding.fixes.find((fix) => fix.safe)).filter(Boolean);
}

// Takes every safe fix, in one step that can be undone; of fixes that overlap, the first.
function mend() {
  if (foundIn !== view.state.doc) return;
  const changes = [];
  let end = -1;
  const edits = safeFixes().map((fix) => [...fix.edits].sort((a, b) => a.from - b.from));
  for (const list of edits.sort((a, b) => a[0].from - b[0].from)) {
    if (!list.length || list[0].from < end) continue;
    changes.push(...list);
    end = list[list.length - 1].to;
  }
  view.dispatch({ changes, userEvent: "input.fix" });
  forceLinting(view);
  view.focus();
}

// --- cards and pictures -------------------------------------------------------------------------------------------

function pieces(list) {
  return list.map((piece) => {
    if (!piece.id) return piece.text;
    const link = element("a", "entry", piece.text);
    link.href = "#";
    link.onclick = (event) => {
      event.preventDefault();
      chooseEntry(piece.id);
    };
    return link;
  });
}

async function cardOf(id, most = Infinity) {
  const card = await ask("card", id);
  const box = element("div");
  if (!card) return box;
  box.append(element("h3", "", card.title), element("p", "faint", card.what));
  if (card.latin) {
    const latin = element("p", "faint", card.latin);
    latin.lang = "la";
    box.append(latin);
  }
  if (most === Infinity && card.names.length) {
    box.append(element("p", "faint", `Also: ${card.names.map((name) => `${name.text} (${name.standing})`).join(", ")}`));
  }
  if (card.note) box.append(element("p", "", card.note));
  for (const section of card.sections.slice(0, most)) {
    box.append(element("h4", "", section.title));
    const list = element("ul");
    for (const row of section.rows.slice(0, most === Infinity ? rowLimit : 6)) {
      const item = element("li", row.depth ? "inner" : "");
      if (row.label.length) item.append(...pieces(row.label), ": ");
      item.append(...pieces(row.text));
      if (row.variant) item.append(element("span", "faint", " (variant)"));
      for (const note of row.notes) item.append(element("span", "faint", ` ${note}`));
      list.append(item);
    }
    box.append(list);
    if (section.caution) box.append(element("p", "caution", card.caution));
  }
  if (most === Infinity && card.sources.length) {
    box.append(element("h4", "", "Sources"), element("p", "faint", card.sources.join("; ")));
  }
  return box;
}
const rowLimit = 200;

async function showEntry(id) {
  shown = id;
  const [card, branches] = await Promise.all([cardOf(id), ask("branches", id)]);
  if (shown !== id) return; // another one was asked for in the meantime
  byId("card").replaceChildren(card);
  const tree = byId("tree");
  const keys = tree.contains(document.activeElement) ? document.activeElement.dataset.id : null;
  if (branches) tree.innerHTML = branches.svg; // made by the reader, which escapes every name
  else tree.replaceChildren(element("p", "faint", "No nerve belongs to this."));
  // Whoever walks the tree by keyboard stays on the name, or near it.
  if (keys) (tree.querySelector(`[data-id="${CSS.escape(keys)}"]`) ?? byId("tab-tree")).focus();
  byId("keep").disabled = !branches;
}

// What the author chose stays until the cursor or the text changes.
function chooseEntry(id) {
  choice = { text: view.state.doc };
  showEntry(id);
}

// Shows what is under the cursor; `again` once the text has been read anew, which is no reason to leave what was chosen.
async function follow(view, again = false, tapped = false) {
  const before = choice;
  const place = await ask("place", view.state.selection.main.head);
  const id = place?.entries[0];
  if (!id || choice !== before) return;
  if (again && (id === shown || choice.text === view.state.doc)) return;
  await showEntry(id);
  // On a narrow screen the card stands below the findings.
  if (tapped && matchMedia("(max-width: 52rem)").matches) byId("card-title").scrollIntoView({ block: "start" });
}

function choose(tab) {
  for (const name of ["card", "tree"]) {
    byId(name).hidden = name !== tab;
    byId(`tab-${name}`).setAttribute("aria-selected", String(name === tab));
    byId(`tab-${name}`).tabIndex = name === tab ? 0 : -1;
  }
}

const peek = hoverTooltip(async (view, at) => {
  const place = await ask("place", at);
  if (!place?.entries.length) return null;
  const cards = await Promise.all(place.entries.slice(0, 2).map((id) => cardOf(id, 4)));
  return {
    pos: place.from,
    end: place.to,
    create() {
      const dom = element("div", "peek");
      dom.append(...cards);
      return { dom };
    },
  };
}, { hoverTime: 250 });

// --- completion ---------------------------------------------------------------------------------------------------

async function complete(context) {
  const answer = await ask("complete", context.state.doc.toString(), context.pos);
  if (!answer || (!context.explicit && context.pos - answer.from < 2)) return null;
  return {
    from: answer.from,
    filter: false,
    options: answer.items.map((item) => ({
      label: item.text,
      detail: item.matched ?? item.kind,
      ...(item.id ? { info: () => cardOf(item.id, 3) } : {}),
    })),
  };
}

// --- the editor ---------------------------------------------------------------------------------------------------

const look = HighlightStyle.define([
  { tag: tags.heading, fontWeight: "700" },
  { tag: tags.strong, fontWeight: "700" },
  { tag: tags.emphasis, fontStyle: "italic" },
  { tag: tags.link, color: "var(--act)" },
  { tag: tags.monospace, fontFamily: "ui-monospace, monospace" },
  { tag: [tags.processingInstruction, tags.meta], color: "var(--faint)" },
]);

const colours = EditorView.theme({
  "&": { color: "var(--ink)", backgroundColor: "var(--paper)" },
  ".cm-content": { fontFamily: "Georgia, 'Times New Roman', serif", lineHeight: "1.6", caretColor: "var(--ink)" },
  ".cm-cursor": { borderLeftColor: "var(--ink)" },
  ".cm-gutters": { backgroundColor: "var(--ground)", color: "var(--faint)", border: "none" },
  "&.cm-focused .cm-selectionBackground, .cm-selectionBackground": { backgroundColor: "var(--mark) !important" },
  ".cm-tooltip": { backgroundColor: "var(--paper)", color: "var(--ink)", border: "1px solid var(--edge)" },
  ".cm-panels": { backgroundColor: "var(--ground)", color: "var(--ink)" },
  ".cm-placeholder": { color: "var(--faint)" },
  ".cm-diagnostic": { whiteSpace: "pre-wrap" },
  ".cm-diagnosticAction": { backgroundColor: "var(--act)", color: "var(--paper)" },
});

// The head of a document, between two lines of dashes, is no Markdown.
const frontMatter = {
  defineNodes: [{ name: "FrontMatter", block: true, style: tags.meta }],
  parseBlock: [{
    name: "FrontMatter",
    before: "HorizontalRule",
    parse(context, line) {
      const fence = /^---\s*$/;
      const isHead = context.lineStart === 0 && fence.test(line.text) && /\n---\s*(\n|$)/.test(context.input.read(0, 4000));
      if (!isHead) return false;
      while (context.nextLine() && !fence.test(line.text));
      context.addElement(context.elt("FrontMatter", 0, context.lineStart + line.text.length));
      context.nextLine();
      return true;
    },
  }],
};

const markdown = new Language(defineLanguageFacet(), parser.configure([GFM, frontMatter]), [], "markdown");
const language = new Compartment();

const extensions = [
  lineNumbers(),
  history(),
  drawSelection(),
  EditorView.lineWrapping,
  EditorView.contentAttributes.of({ "aria-label": "Document", spellcheck: "false" }),
  highlightSelectionMatches(),
  placeholder("Paste a handout here, drop a file on the page, or press Open."),
  keymap.of([
    { key: "Mod-s", run: () => (save(), true) },
    { key: "Mod-o", run: () => (openFile(), true) },
    { key: "Mod-.", run: toFix },
    ...defaultKeymap,
    ...historyKeymap,
    ...searchKeymap,
    ...lintKeymap,
  ]),
  language.of([markdown.extension]),
  syntaxHighlighting(look),
  colours,
  linter(diagnose, { delay: 150 }),
  lintGutter(),
  names,
  peek,
  tooltips({ tooltipSpace: (view) => view.dom.getBoundingClientRect() }), // never over the findings
  autocompletion({ override: [complete] }),
  EditorView.updateListener.of((update) => {
    if (update.selectionSet && !update.docChanged) {
      follow(update.view, false, update.transactions.some((transaction) => transaction.isUserEvent("select.pointer")));
    }
    if (update.docChanged) {
      byId("mend").disabled = true; // until the new text is read
      nameFile();
    }
  }),
];

const view = new EditorView({ parent: paper, state: EditorState.create({ extensions }) });

// --- files --------------------------------------------------------------------------------------------------------

const isChanged = () => view.state.doc.toString() !== file.saved;

function nameFile() {
  const changed = isChanged();
  byId("file").textContent = (file.name || "handout.md") + (changed ? " · not saved" : "");
  byId("save").disabled = view.state.doc.length === 0;
  document.body.classList.toggle("empty", view.state.doc.length === 0);
}

function show(name, text, handle = null) {
  if (isChanged() && view.state.doc.length && !confirm("The document has changes that are not saved. Leave it?")) return;
  const mark = text.startsWith("\uFEFF") ? "\uFEFF" : "";
  const lineEnd = /\r\n/.test(text) ? "\r\n" : "\n";
  const body = text.slice(mark.length).replace(/\r\n?/g, "\n");
  file = { name, handle, lineEnd, mark, saved: body, begun: false };
  shown = null;
  choice = { text: null };
  view.setState(EditorState.create({ doc: body, extensions }));
  byId("mend").disabled = true;
  view.dispatch({
    effects: [
      language.reconfigure(/\.(vtt|srt|te?xt)$/i.test(name) ? [] : [markdown.extension]),
      EditorView.scrollIntoView(0),
    ],
  });
  nameFile();
  forceLinting(view);
  view.focus();
}

async function openFile() {
  if (!window.showOpenFilePicker) return byId("choose").click();
  try {
    const [handle] = await window.showOpenFilePicker();
    await take(await handle.getFile(), handle);
  } catch (error) {
    if (error.name !== "AbortError") byId("choose").click();
  }
}

async function take(blob, handle = null) {
  try {
    const text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(await blob.arrayBuffer());
    show(blob.name, text, handle);
  } catch {
    alert(`${blob.name} is no text in UTF-8. Save it as plain text or Markdown in UTF-8 and open it again.`);
  }
}

function hand(name, parts, type) {
  const link = element("a");
  link.href = URL.createObjectURL(new Blob(parts, { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10000);
}

async function save() {
  const body = view.state.doc.toString();
  const text = file.mark + body.replace(/\n/g, file.lineEnd);
  if (file.handle) {
    try {
      const out = await file.handle.createWritable();
      await out.write(text);
      await out.close();
    } catch {
      file.handle = null;
    }
  }
  if (!file.handle) hand(file.name || "handout.md", [text], "text/markdown");
  file.saved = body;
  nameFile();
}

byId("open").onclick = openFile;
byId("choose").onchange = (event) => {
  const [chosen] = event.target.files;
  if (chosen) take(chosen);
  event.target.value = "";
};
byId("example").onclick = () => show("example.md", example);
byId("save").onclick = save;
byId("mend").onclick = mend;
byId("tab-card").onclick = () => choose("card");
byId("tab-tree").onclick = () => choose("tree");
byId("keep").onclick = () => hand(`${shown}.svg`, [byId("tree").innerHTML], "image/svg+xml");
byId("tree").addEventListener("click", (event) => {
  const name = event.target.closest("[data-id]");
  if (name) chooseEntry(name.dataset.id);
});
byId("tree").addEventListener("keydown", (event) => {
  if (event.key === "Enter" && event.target.dataset.id) chooseEntry(event.target.dataset.id);
});
byId("keep-page").onclick = () => hand("fascicle.html", [page], "text/html");
byId("tabs").addEventListener("keydown", (event) => {
  if (event.key !== "ArrowLeft" && event.key !== "ArrowRight") return;
  const other = byId("card").hidden ? "card" : "tree";
  choose(other);
  byId(`tab-${other}`).focus();
});
byId("findings").addEventListener("keydown", (event) => {
  if (event.key === "Escape") return view.focus();
  if (event.key !== "ArrowDown" && event.key !== "ArrowUp") return;
  const item = event.target.closest("li[data-from]");
  const next = event.key === "ArrowDown" ? item.nextElementSibling : item.previousElementSibling;
  next?.querySelector(".go").focus();
  event.preventDefault();
});
byId("colours").onchange = (event) => document.body.classList.toggle("plain", !event.target.checked);
addEventListener("dragover", (event) => {
  if (!event.dataTransfer.types.includes("Files")) return;
  event.preventDefault();
  paper.classList.add("over");
});
addEventListener("dragleave", () => paper.classList.remove("over"));
addEventListener("drop", (event) => {
  paper.classList.remove("over");
  const [dropped] = event.dataTransfer.files;
  if (!dropped) return;
  event.preventDefault();
  event.stopPropagation();
  take(dropped);
}, true);
addEventListener("beforeunload", (event) => {
  if (view.state.doc.length && isChanged()) event.preventDefault();
});

startReader().then(() => {
  document.body.dataset.ready = "yes";
  forceLinting(view);
}).catch(tellFailure);
