// Drives a VS Code workbench in a browser as an author does, with the packaged extension installed: opens the demo note,
// sees the marked misspelling, takes the quick fix, hovers a card, completes a name, opens the branch-tree panel and follows
// it, reads an entry; then settings, colours by theme, the walkthrough, captions, and a folder that is not trusted.
//
// node vscode.js, with WORKBENCH (an installed workbench), VSIX (the package), COURSE (a copy of the demo course), HOME (a
// clean one), SERVER (the program; none where the package brings its own), and, to keep pictures, SCREENSHOTS (a folder).

import { execFileSync, spawn } from "node:child_process";
import { chmodSync, cpSync, existsSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";
import { browser, must, until } from "./browser.js";

const step = (text) => console.log(`vscode: ${text}`);
const { WORKBENCH, VSIX, COURSE, HOME, SERVER, SCREENSHOTS } = process.env;
const entry = join(WORKBENCH, "node_modules", "code-server", "out", "node", "entry.js");
const data = join(HOME, "data");
const folders = ["--user-data-dir", data, "--extensions-dir", join(HOME, "extensions")];
mkdirSync(join(data, "User"), { recursive: true });
const settings = (more = {}) => writeFileSync(join(data, "User", "settings.json"), JSON.stringify({
  "workbench.startupEditor": "none",
  "security.workspace.trust.enabled": false,
  "telemetry.telemetryLevel": "off",
  "editor.minimap.enabled": false,
  "editor.hover.delay": 200,
  "workbench.colorTheme": "Default Light Modern",
  ...more,
}));
settings();
// Those of the folder, which the workbench watches.
const course = (settings) => writeFileSync(join(COURSE, ".vscode", "settings.json"), JSON.stringify(settings));
mkdirSync(join(COURSE, ".vscode"));
course({});
if (SERVER) {
  // The program where `cargo install` puts it: the workbench takes its PATH from the login shell.
  mkdirSync(join(HOME, ".cargo", "bin"), { recursive: true });
  symlinkSync(SERVER, join(HOME, ".cargo", "bin", "fascicle"));
}
// Nothing is counted or reported: the bundle has no way to the network.
const packaged = readFileSync(new URL("../../editors/vscode/dist/extension.js", import.meta.url), "utf8");
must(!/require\("(node:)?(http|https|http2|dns|tls|dgram)"\)|\bfetch\(|https?:\/\//.test(packaged), "the extension can reach the network");
execFileSync(process.execPath, [entry, ...folders, "--install-extension", VSIX], { stdio: "pipe" });
step("package installed");

const chromium = await browser();
const servers = [];
let said = "";
let page;

/** Starts a workbench on a folder and opens it in the browser. */
async function workbench(folder, ...options) {
  const port = await new Promise((give) => {
    const free = createServer().listen(0, "127.0.0.1", () => {
      const { port } = free.address();
      free.close(() => give(port));
    });
  });
  const server = spawn(process.execPath, [entry, "--auth", "none", "--bind-addr", `127.0.0.1:${port}`, "--disable-telemetry",
    "--disable-update-check", ...options, ...folders, folder], { stdio: "pipe", detached: true });
  servers.push(server);
  said = "";
  server.stdout.on("data", (text) => (said += text));
  server.stderr.on("data", (text) => (said += text));
  await until("the workbench's server", () => said.includes("HTTP server listening"), 60000);
  const context = await chromium.newContext({ viewport: { width: 1200, height: 760 } });
  page = await context.newPage();
  await page.goto(`http://127.0.0.1:${port}/?folder=${encodeURIComponent(folder)}`);
  await page.waitForSelector(".monaco-workbench", { timeout: 60000 });
}

const picture = async (name) => {
  if (SCREENSHOTS) await page.screenshot({ path: join(SCREENSHOTS, `vscode-${name}.png`) });
};

async function command(title) {
  await page.keyboard.press("F1");
  await page.waitForSelector(".quick-input-widget input");
  await page.keyboard.type(title);
  await page.locator(".quick-input-list .monaco-list-row.focused", { hasText: title.replace(/^.*?: /, "") }).first().waitFor();
  await page.keyboard.press("Enter");
}

async function open(name) {
  await page.keyboard.press("Control+P");
  await page.waitForSelector(".quick-input-widget input");
  await page.keyboard.type(name);
  await page.locator(".quick-input-list .monaco-list-row.focused", { hasText: name }).first().waitFor();
  await page.keyboard.press("Enter");
  await page.locator(".tab.active", { hasText: name }).first().waitFor();
}

const lines = () => page.locator(".editor-instance .view-lines").first();
const text = async () => (await lines().innerText().catch(() => "")).replaceAll("\u00a0", " ");
const item = () => page.locator("[id*='fascicle'].statusbar-item").first();

/** How many findings the status item tells, once it tells any; -1 before. */
const count = async () => {
  const told = await item().innerText().catch(() => "");
  return /fascicle: \d+/.test(told) ? Number(/fascicle: (\d+)/.exec(told)[1]) : -1;
};

/** Where a text stands on the screen, and in which colour. */
const spot = (wanted) => page.evaluate((wanted) => {
  const walk = document.createTreeWalker(document.querySelector(".editor-instance .view-lines"), NodeFilter.SHOW_TEXT);
  for (let node = walk.nextNode(); node; node = walk.nextNode()) {
    const at = node.data.replaceAll("\u00a0", " ").indexOf(wanted);
    if (at < 0) continue;
    const range = document.createRange();
    range.setStart(node, at);
    range.setEnd(node, at + wanted.length);
    const box = range.getBoundingClientRect();
    return { x: box.x + box.width / 2, y: box.y + box.height / 2, colour: getComputedStyle(node.parentElement).color };
  }
  return null;
}, wanted);

/** What stands in a frame of the workbench, such as the panel. */
async function inFrames(selector) {
  for (const frame of page.frames()) {
    const found = await frame.$(selector).catch(() => null);
    if (found) return found;
  }
  return null;
}

async function asAnAuthor() {
  const note = join(COURSE, "lectures", "02-shoulder.md");
  mkdirSync(join(COURSE, "taped"));
  writeFileSync(join(COURSE, "taped", "week-3.vtt"), "WEBVTT\n\n00:00.000 --> 00:04.000\nThe infraspinatous turns the arm.\n");
  writeFileSync(join(COURSE, "taped", "week-3.txt"), "The infraspinatous turns the arm.\n");
  await workbench(COURSE, "--disable-workspace-trust");

  // Open the note, see what is marked.
  await open("02-shoulder.md");
  const began = Date.now();
  await until("the note", async () => (await text()).includes("Four muscles make up"), 60000);
  const found = await until("the findings in the status bar", async () => Math.max(0, await count()), 60000);
  step(`status item tells ${found} findings ${Date.now() - began} ms after the note`);
  await until("the misspelling on the screen", () => spot("infraspinatous"));
  const isMarked = async () => {
    const wrong = await spot("infraspinatous");
    return wrong && page.evaluate(({ x, y }) => [...document.querySelectorAll(".squiggly-warning, .squiggly-error")]
      .some((mark) => {
        const box = mark.getBoundingClientRect();
        return box.left <= x && x <= box.right && Math.abs(box.top + box.height / 2 - y) < 14;
      }), wrong);
  };
  await until("the mark below the misspelling", isMarked);
  step("the misspelling is underlined");
  await picture("findings");

  // A setting reaches the server; its keys are those of fascicle.toml.
  course({ "fascicle.off": ["misspelled-name"] });
  await until("the finding to go by a setting", async () => (await count()) < found && !(await isMarked()));
  course({});
  await until("the finding to come again", async () => (await count()) === found && (await isMarked()));
  step("a setting took the finding away and gave it back");

  // Take the quick fix.
  const wrong = await spot("infraspinatous");
  await page.mouse.click(wrong.x, wrong.y);
  await page.keyboard.press("Control+.");
  await page.locator(".action-widget .monaco-list-row", { hasText: "infraspinatus" }).first().waitFor();
  await picture("fix");
  await page.locator(".action-widget .monaco-list-row.focused", { hasText: "infraspinatus" }).waitFor();
  await page.keyboard.press("Enter");
  await until("the text to change", async () => (await text()).includes("supraspinatus, infraspinatus, teres minor"));
  await until("one finding less", async () => (await count()) === found - 1);
  step("quick fix taken");

  // Hover a card.
  const name = await until("the nerve on the screen", () => spot("suprascapular nerve"));
  await page.mouse.move(name.x, name.y, { steps: 5 });
  const hover = page.locator(".monaco-hover .hover-contents", { hasText: "suprascapular nerve" }).filter({ hasText: "C5" }).first();
  await hover.waitFor();
  step(`card: ${(await hover.innerText()).trim().split("\n")[0]}`);
  const drawn = await until("the branch tree in the card", () => hover.evaluate((card) => {
    const [picture] = card.querySelectorAll("img[src^='data:image/svg+xml']");
    return picture?.complete && picture.naturalWidth > 0 && `${picture.naturalWidth} x ${picture.naturalHeight}`;
  }));
  step(`the card has its picture, ${drawn}`);
  await page.waitForTimeout(300);
  await picture("card");

  // The branch tree follows the cursor.
  await page.mouse.click(name.x, name.y);
  await page.mouse.move(5, 5);
  await command("fascicle: Show the Branch Tree");
  await until("the branch tree", () => inFrames("svg.fascicle-tree [data-id=infraspinatus]"), 30000);
  await page.waitForTimeout(300);
  await picture("tree");
  // A click goes to where the note names the muscle first.
  await (await inFrames("svg.fascicle-tree [data-id=infraspinatus]")).click();
  await until("the mention", async () => /Ln 15, Col \d+ \(13 selected\)/.test(await page.locator(".statusbar").innerText()));
  step("branch tree: a click went to the mention");
  await page.mouse.click((await spot("subscapularis")).x, (await spot("subscapularis")).y);
  await until("the tree of the next muscle", () => inFrames("svg.fascicle-tree [data-id=upper-subscapular-nerve]"), 15000);
  step("branch tree follows the cursor");

  // A click goes to the entry of what the note does not name; it can only be read.
  await (await inFrames("svg.fascicle-tree [data-id=posterior-cord-of-brachial-plexus]")).click();
  await until("the entry", async () => (await page.locator(".tab.active").innerText()).includes("posterior-cord-of-brachial-plexus"));
  const before = await until("the entry's text", async () => (await text()).includes("posterior") && text());
  await picture("entry");
  await lines().click();
  await page.keyboard.type("x");
  await page.locator(".monaco-editor-overlaymessage", { hasText: /read-only/ }).waitFor();
  must((await text()) === before, "the entry could be changed");
  step("entry opened, read only");
  await page.keyboard.press("Escape");
  await page.keyboard.press("Control+F4");

  // Complete a name.
  await open("02-shoulder.md");
  await lines().click();
  await page.keyboard.press("Control+End");
  await page.keyboard.type("\nThe arm is abducted by suprasp");
  await page.keyboard.press("Control+Space");
  await page.locator(".suggest-widget .monaco-list-row", { hasText: "supraspinatus" }).first().waitFor();
  await picture("completion");
  await page.keyboard.press("Enter");
  await until("the completed name", async () => (await text()).includes("The arm is abducted by supraspinatus"));
  step("completed: supraspinatus");
  await page.keyboard.press("Control+S");
  await until("the saved file", () => readFileSync(note, "utf8").includes("abducted by supraspinatus"));
  step("saved");

  // Names have the colours of the theme, whatever it is.
  await page.keyboard.press("Control+Home");
  const looks = async () => {
    const [nerve, muscle, plain] = [await spot("suprascapular nerve"), await spot("teres minor"), await spot("innervated")];
    return nerve && muscle && plain && { nerve: nerve.colour, muscle: muscle.colour, plain: plain.colour };
  };
  const apart = ({ nerve, muscle, plain }) => new Set([nerve, muscle, plain]).size === 3;
  const light = await until("names in the colours of the light theme", async () => {
    const now = await looks();
    return now && apart(now) && now;
  });
  course({ "workbench.colorTheme": "Default Dark Modern" });
  const dark = await until("names in the colours of the dark theme", async () => {
    const now = await looks();
    return now && ["nerve", "muscle", "plain"].every((kind) => now[kind] !== light[kind]) && apart(now) && now;
  });
  await page.waitForTimeout(500);
  await picture("dark");
  course({});
  await until("the light theme", async () => JSON.stringify(await looks()) === JSON.stringify(light));
  step(`colours by theme: nerve ${light.nerve} and ${dark.nerve}, muscle ${light.muscle} and ${dark.muscle}`);

  // Captions are always read, plain text once the folder is a course.
  await open("week-3.vtt");
  await until("the finding in the captions", async () => (await count()) === 1);
  await open("week-3.txt");
  await page.waitForTimeout(500);
  must((await count()) < 1, "a plain text outside a course is read");
  await command("fascicle: Open the Settings File of This Course");
  await page.locator(".tab.active", { hasText: "fascicle.toml" }).waitFor();
  must(existsSync(join(COURSE, "fascicle.toml")), "no settings file was made");
  await open("week-3.txt");
  await until("the finding in the plain text", async () => (await count()) === 1, 30000);
  step("captions read; plain text read once the folder is a course");

  // The walkthrough.
  await command("Welcome: Open Walkthrough");
  await page.locator(".quick-input-list .monaco-list-row", { hasText: "Write an anatomy course with fascicle" }).waitFor();
  await page.keyboard.type("anatomy course");
  await page.keyboard.press("Enter");
  const steps = JSON.parse(readFileSync(new URL("../../editors/vscode/package.json", import.meta.url)))
    .contributes.walkthroughs[0].steps.map((one) => one.title);
  for (const title of steps) await page.locator(".gettingStartedContainer .getting-started-step", { hasText: title }).waitFor();
  await until("the picture beside a step", () => inFrames("table, pre, p"));
  await page.waitForTimeout(500);
  await picture("walkthrough");
  step(`walkthrough of ${steps.length} steps`);
}

/** A folder that nobody trusts says which program is to be started: it is started only once the folder is trusted. */
async function inAFolderThatIsNotTrusted() {
  const folder = join(HOME, "stranger");
  cpSync(COURSE, folder, { recursive: true });
  writeFileSync(join(folder, "trap"), `#!/bin/sh\ntouch '${folder}/started'\nexec '${join(HOME, ".cargo", "bin", "fascicle")}' "$@"\n`);
  chmodSync(join(folder, "trap"), 0o755);
  writeFileSync(join(folder, ".vscode", "settings.json"), JSON.stringify({ "fascicle.server.path": join(folder, "trap") }));
  settings({ "security.workspace.trust.enabled": true, "security.workspace.trust.startupPrompt": "never", "security.workspace.trust.banner": "never" });
  await workbench(folder);
  await open("02-shoulder.md");
  await until("the findings in the status bar", async () => (await count()) > 0, 60000);
  must(!existsSync(join(folder, "started")), "the program that the folder names was started though nobody trusts the folder");
  await command("Workspaces: Manage Workspace Trust");
  await page.locator(".workspace-trust-editor .monaco-button", { hasText: /^Trust/ }).first().click();
  await until("the program that the folder names", () => existsSync(join(folder, "started")), 30000);
  step("the folder's own program is started only once the folder is trusted");
}

try {
  await asAnAuthor();
  if (SERVER) await inAFolderThatIsNotTrusted();
} catch (error) {
  console.error(`vscode: FAILED: ${error.stack}`);
  console.error(said.slice(-2000));
  if (page && SCREENSHOTS) await page.screenshot({ path: join(SCREENSHOTS, "vscode-failed.png") }).catch(() => {});
  process.exitCode = 1;
} finally {
  await chromium.close();
  for (const server of servers) {
    try {
      process.kill(-server.pid);
    } catch {
      // it has ended
    }
  }
}
