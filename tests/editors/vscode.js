// Drives a VS Code workbench in a browser as an author does, with the packaged extension installed: opens the demo note,
// sees the marked misspelling, takes the quick fix, hovers a card, completes a name, opens the branch-tree panel and follows
// it, reads an entry.
//
// node vscode.js, with WORKBENCH (an installed workbench), VSIX (the package), COURSE (a copy of the demo course), HOME (a
// clean one), SERVER (the program), and, to keep pictures, SCREENSHOTS (a folder).

import { execFileSync, spawn } from "node:child_process";
import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";
import { browser, must, until } from "./browser.js";

const step = (text) => console.log(`vscode: ${text}`);
const { WORKBENCH, VSIX, COURSE, HOME } = process.env;
const entry = join(WORKBENCH, "node_modules", "code-server", "out", "node", "entry.js");
const data = join(HOME, "data");
const folders = ["--user-data-dir", data, "--extensions-dir", join(HOME, "extensions")];
mkdirSync(join(data, "User"), { recursive: true });
writeFileSync(join(data, "User", "settings.json"), JSON.stringify({
  "workbench.startupEditor": "none",
  "security.workspace.trust.enabled": false,
  "telemetry.telemetryLevel": "off",
  "editor.minimap.enabled": false,
  "editor.hover.delay": 200,
}));
// The program where `cargo install` puts it: the workbench takes its PATH from the login shell.
mkdirSync(join(HOME, ".cargo", "bin"), { recursive: true });
symlinkSync(process.env.SERVER, join(HOME, ".cargo", "bin", "fascicle"));
execFileSync(process.execPath, [entry, ...folders, "--install-extension", VSIX], { stdio: "pipe" });
step("package installed");

const port = await new Promise((give) => {
  const free = createServer().listen(0, "127.0.0.1", () => {
    const { port } = free.address();
    free.close(() => give(port));
  });
});
const server = spawn(process.execPath, [entry, "--auth", "none", "--bind-addr", `127.0.0.1:${port}`, "--disable-telemetry",
  "--disable-update-check", "--disable-workspace-trust", ...folders, COURSE], { stdio: "pipe", detached: true });
let said = "";
server.stdout.on("data", (text) => (said += text));
server.stderr.on("data", (text) => (said += text));
const chromium = await browser();
let page;

try {
  await until("the workbench's server", () => said.includes("HTTP server listening"), 60000);
  const context = await chromium.newContext({ viewport: { width: 1280, height: 820 } });
  page = await context.newPage();
  const picture = async (name) => {
    if (process.env.SCREENSHOTS) await page.screenshot({ path: join(process.env.SCREENSHOTS, `vscode-${name}.png`) });
  };
  await page.goto(`http://127.0.0.1:${port}/?folder=${encodeURIComponent(COURSE)}`);
  await page.waitForSelector(".monaco-workbench", { timeout: 60000 });
  const command = async (title) => {
    await page.keyboard.press("F1");
    await page.waitForSelector(".quick-input-widget input");
    await page.keyboard.type(title);
    await page.locator(".quick-input-list .monaco-list-row", { hasText: title.replace(/^fascicle: /, "") }).first().waitFor();
    await page.keyboard.press("Enter");
  };
  const note = join(COURSE, "lectures", "02-shoulder.md");
  const lines = page.locator(".view-lines").first();
  const text = async () => (await lines.innerText()).replaceAll("\u00a0", " ");

  // Open the note.
  await page.keyboard.press("Control+P");
  await page.waitForSelector(".quick-input-widget input");
  await page.keyboard.type("02-shoulder.md");
  await page.locator(".quick-input-list .monaco-list-row", { hasText: "02-shoulder.md" }).first().waitFor();
  await page.keyboard.press("Enter");
  const began = Date.now();
  await until("the note", async () => (await text().catch(() => "")).includes("Four muscles make up"), 60000);
  const item = page.locator("#fascicle\\.fascicle\\.fascicle, [id*='fascicle'].statusbar-item").first();
  await until("the findings in the status bar", async () => /fascicle: \d+/.test(await item.innerText().catch(() => "")), 60000);
  step(`status item "${(await item.innerText()).trim()}" ${Date.now() - began} ms after the note`);
  must((await page.locator(".squiggly-warning, .squiggly-error").count()) > 0, "nothing is underlined");
  await picture("findings");

  // Where a text stands on the screen.
  const spot = (wanted) => page.evaluate((wanted) => {
    const walk = document.createTreeWalker(document.querySelector(".view-lines"), NodeFilter.SHOW_TEXT);
    for (let node = walk.nextNode(); node; node = walk.nextNode()) {
      const at = node.data.replaceAll("\u00a0", " ").indexOf(wanted);
      if (at < 0) continue;
      const range = document.createRange();
      range.setStart(node, at);
      range.setEnd(node, at + wanted.length);
      const box = range.getBoundingClientRect();
      return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    }
    return null;
  }, wanted);

  // Take the quick fix.
  const wrong = await until("the misspelling on the screen", () => spot("infraspinatous"));
  await page.mouse.click(wrong.x, wrong.y);
  await page.keyboard.press("Control+.");
  await page.locator(".action-widget .monaco-list-row", { hasText: "infraspinatus" }).first().waitFor();
  await picture("fix");
  await page.locator(".action-widget .monaco-list-row.focused", { hasText: "infraspinatus" }).waitFor();
  await page.keyboard.press("Enter");
  await until("the text to change", async () => (await text()).includes("supraspinatus, infraspinatus, teres minor"));
  step("quick fix taken");

  // Hover a card.
  const name = await until("the nerve on the screen", () => spot("suprascapular nerve"));
  await page.mouse.move(name.x, name.y, { steps: 5 });
  const hover = page.locator(".monaco-hover .hover-contents", { hasText: "suprascapular nerve" }).filter({ hasText: "C5" }).first();
  await hover.waitFor();
  const card = await hover.innerText();
  step(`card: ${card.trim().split("\n")[0]}`);
  await picture("card");

  // The branch tree follows the cursor.
  await page.mouse.click(name.x, name.y);
  await page.mouse.move(5, 5);
  await command("fascicle: Show the Branch Tree");
  const inTree = async (selector) => {
    for (const frame of page.frames()) {
      const found = await frame.$(selector).catch(() => null);
      if (found) return found;
    }
    return null;
  };
  await until("the branch tree", () => inTree("svg.fascicle-tree [data-id=infraspinatus]"), 30000);
  await picture("tree");
  await page.mouse.click((await spot("subscapularis")).x, (await spot("subscapularis")).y);
  await until("the tree of the next muscle", () => inTree("svg.fascicle-tree [data-id=upper-subscapular-nerve]"), 15000);
  step("branch tree follows the cursor");

  // A click in it goes to the entry of what the note does not name.
  await (await inTree("svg.fascicle-tree [data-id=posterior-cord-of-brachial-plexus]")).click();
  await until("the entry", async () => (await page.locator(".tab.active").innerText()).includes("posterior-cord-of-brachial-plexus"));
  await until("the entry's text", async () => (await page.locator(".editor-instance .view-lines").first().innerText()).includes("posterior"));
  step("entry opened, read only");
  await picture("entry");
  await page.keyboard.press("Control+F4");

  // Complete a name.
  await page.locator(".tab", { hasText: "02-shoulder.md" }).first().click();
  await page.locator(".view-lines").first().click();
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
} catch (error) {
  console.error(`vscode: FAILED: ${error.stack}`);
  console.error(said.slice(-2000));
  if (page && process.env.SCREENSHOTS) await page.screenshot({ path: join(process.env.SCREENSHOTS, "vscode-failed.png") }).catch(() => {});
  process.exitCode = 1;
} finally {
  await chromium.close();
  try {
    process.kill(-server.pid);
  } catch {
    // it has ended
  }
}
