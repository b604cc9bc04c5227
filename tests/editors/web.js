// Drives the web page in a browser as a colleague without any editor does: opens the demo note, sees the marked
// misspelling, takes the fix, hovers a card, completes a name, looks at the branch tree, saves. The same by keyboard alone,
// on a narrow screen, and with the network off. Then measures what the page aims at: first finding under 200 ms after
// opening a document of 100 kB, less than 3 MB to fetch, words that stand out from their ground.
//
// node web.js, with COURSE (a copy of the demo course) and, to keep them, SCREENSHOTS (a folder).

import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import { cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { browser, must, until } from "./browser.js";

const file = fileURLToPath(new URL("../../editors/web/dist/fascicle.html", import.meta.url));
const step = (text) => console.log(`web page: ${text}`);
const chromium = await browser();
const complaints = [];

/** A page that tells everything it complains of, and every request that leaves it. */
async function fresh(context, address = `file://${file}`) {
  const page = await context.newPage();
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => message.type() === "error" && complaints.push(message.text()));
  page.on("request", (request) => {
    if (request.url() !== address && !/^(file|blob|data):/.test(request.url())) complaints.push(`a request to ${request.url()}`);
  });
  await page.goto(address);
  await page.waitForSelector("body[data-ready]");
  return page;
}

const textOf = (page) => page.evaluate(() => document.querySelector(".cm-content").innerText);

/** Where a text stands on the screen. */
const spot = (page, wanted) => page.evaluate((wanted) => {
  const walk = document.createTreeWalker(document.querySelector(".cm-content"), NodeFilter.SHOW_TEXT);
  for (let node = walk.nextNode(); node; node = walk.nextNode()) {
    const at = node.data.indexOf(wanted);
    if (at < 0) continue;
    const range = document.createRange();
    range.setStart(node, at);
    range.setEnd(node, at + wanted.length);
    const box = range.getBoundingClientRect();
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  }
  return null;
}, wanted);

/**
 * The text that stands out least from its ground, and how much, as the Web Content Accessibility Guidelines 2.2 reckon it
 * (criterion 1.4.3: 4.5 for text; what is disabled is left out).
 */
const leastContrast = (page) => page.evaluate(() => {
  const canvas = document.createElement("canvas").getContext("2d", { willReadFrequently: true });
  const channels = (colour) => {
    canvas.clearRect(0, 0, 1, 1);
    canvas.fillStyle = colour;
    canvas.fillRect(0, 0, 1, 1);
    return canvas.getImageData(0, 0, 1, 1).data;
  };
  const light = (colour) => {
    const [r, g, b] = [...channels(colour)].slice(0, 3).map((value) => value / 255)
      .map((value) => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const ground = (element) => {
    for (let at = element; at; at = at.parentElement) {
      const colour = getComputedStyle(at).backgroundColor;
      if (channels(colour)[3] === 255) return colour;
    }
    return "white";
  };
  let least = { ratio: 21, text: "" };
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walk.nextNode(); node; node = walk.nextNode()) {
    const element = node.parentElement;
    if (!node.data.trim() || element.closest(":disabled, script, style, title") || !element.checkVisibility()) continue;
    const style = getComputedStyle(element);
    const [a, b] = [light(element instanceof SVGElement ? style.fill : style.color), light(ground(element))];
    const ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    if (ratio < least.ratio) least = { ratio, text: node.data.trim().slice(0, 40) };
  }
  return least;
});

try {
  step(`Chromium ${chromium.version()}`);
  const context = await chromium.newContext({ viewport: { width: 1200, height: 800 }, acceptDownloads: true });
  const picture = async (name, of = page) => {
    if (process.env.SCREENSHOTS) await of.screenshot({ path: join(process.env.SCREENSHOTS, `web-${name}.png`) });
  };
  const began = Date.now();
  const page = await fresh(context);
  step(`ready after ${Date.now() - began} ms`);
  must(/Nothing leaves this machine/.test(await page.textContent("footer")), "the page does not say that nothing leaves");

  // Open the note. (The browser's own file chooser cannot be driven; the page's second way in is an ordinary input.)
  await page.setInputFiles("#choose", join(process.env.COURSE, "lectures", "02-shoulder.md"));
  await page.waitForSelector("#findings li");
  const text = () => textOf(page);
  const item = page.locator("#findings li", { hasText: "infraspinatous" });
  await item.waitFor();
  must((await page.locator(".cm-lintRange", { hasText: "infraspinatous" }).count()) === 1, "the misspelling is not marked");
  step(`${await page.textContent("#count")}; ${await item.locator(".go").innerText()}`);
  await picture("findings");

  // Take the fix.
  await item.locator("button.fix", { hasText: "infraspinatus" }).first().click();
  await until("the text to change", async () => (await text()).includes("supraspinatus, infraspinatus, teres minor"));
  await item.waitFor({ state: "detached" });
  step("fix taken");

  // A card by hovering.
  await page.mouse.move(5, 5);
  const name = await spot(page, "suprascapular nerve");
  await page.mouse.move(name.x, name.y, { steps: 4 });
  await page.waitForSelector(".cm-tooltip .peek h3");
  must((await page.textContent(".cm-tooltip .peek h3")) === "suprascapular nerve", "another card came");
  step(`card: ${(await page.locator(".cm-tooltip .peek").innerText()).split(/\n+/).slice(0, 2).join(" · ")}`);
  await picture("card");

  // The branch tree of what is under the cursor.
  await page.mouse.click(name.x, name.y);
  await page.mouse.move(5, 5);
  await until("the card beside the text", async () => (await page.textContent("#card h3")) === "suprascapular nerve");
  await page.click("#tab-tree");
  await page.waitForSelector("#tree svg [data-id=infraspinatus]");
  await picture("tree");
  await page.click("#tree svg [data-id=infraspinatus]");
  await until("the card of the muscle that was clicked", async () => (await page.textContent("#card h3")) === "infraspinatus");
  step("branch tree shown, click followed");
  await page.click("#tab-card");

  // A name.
  await page.click(".cm-content");
  await page.keyboard.press("Control+End");
  await page.keyboard.type("\nThe arm is abducted by suprasp", { delay: 15 });
  await page.waitForSelector(".cm-tooltip-autocomplete li");
  await page.waitForTimeout(150); // the menu takes no key in its first moments, lest one be meant for the text
  await page.keyboard.press("Enter");
  await until("the completed name", async () => (await text()).includes("The arm is abducted by supraspinatus"));
  step("completed: supraspinatus");

  // Save: what comes out is what stands there.
  const coming = page.waitForEvent("download");
  await page.evaluate(() => { delete window.showOpenFilePicker; });
  await page.click("#save");
  const saved = readFileSync(await (await coming).path(), "utf8");
  must(saved.includes("supraspinatus, infraspinatus, teres minor") && saved.endsWith("abducted by supraspinatus"), "the saved file differs");
  step("saved");

  // All safe fixes at once.
  await page.setInputFiles("#choose", join(process.env.COURSE, "lectures", "01-brachial-plexus.md"));
  await until("the second note", async () => (await text()).includes("brachial plexus"));
  const offer = await until("safe fixes", async () =>
    await page.locator("#mend:enabled").count() && /Take (\d+) safe fix/.exec(await page.textContent("#mend")));
  const before = await page.locator("#findings > li").count();
  await page.click("#mend");
  await until("no safe fix to be left", async () => (await page.textContent("#mend")) === "Take safe fixes");
  const left = before - (await page.locator("#findings > li").count());
  must(left >= Number(offer[1]), `${offer[1]} safe fixes took ${left} findings away`);
  await page.keyboard.press("Control+Z");
  await until("all of it to be undone in one step", async () => (await page.textContent("#mend")).includes(`Take ${offer[1]} `));
  step(`${offer[1]} safe fixes taken at once, undone at once`);
  await page.close();

  // By keyboard alone: the example, the first finding, its fix, the branch tree, a muscle in it.
  const keys = await fresh(context);
  const focused = () => keys.evaluate(() => document.activeElement.id || document.activeElement.className);
  const tabTo = async (wanted) => {
    for (let press = 0; press < 60; press += 1) {
      if (String(await focused()).includes(wanted)) return;
      await keys.keyboard.press("Tab");
    }
    throw new Error(`the Tab key does not lead to ${wanted}`);
  };
  await tabTo("example");
  await keys.keyboard.press("Enter");
  await keys.waitForSelector("#findings li");
  await until("the text to take the keys", async () => String(await focused()).includes("cm-content"));
  await keys.keyboard.press("F8");
  await keys.keyboard.press("Control+.");
  await until("the fix of the finding", async () => (await focused()) === "fix");
  await keys.keyboard.press("Enter");
  await until("the text to change", async () => (await textOf(keys)).includes("supraspinatus, infraspinatus, teres minor"));
  must(String(await focused()).includes("cm-content"), "the text does not take the keys again");
  await until("the card of the muscle", async () => (await keys.textContent("#card h3")) === "infraspinatus");
  await tabTo("tab-card");
  await keys.keyboard.press("ArrowRight");
  await keys.waitForSelector("#tree svg");
  must((await focused()) === "tab-tree", "the arrow does not lead to the other tab");
  await keys.keyboard.press("Tab");
  await keys.keyboard.press("Tab");
  must(await keys.evaluate(() => document.activeElement.dataset.id), "the Tab key does not lead into the tree");
  const chosen = await keys.evaluate(() => document.activeElement.textContent);
  await keys.keyboard.press("Enter");
  await until("the card of what was chosen", async () => (await keys.textContent("#card h3")) === chosen);
  must(await keys.evaluate(() => Boolean(document.activeElement.dataset.id)), "what was chosen in the tree lost the keys");
  // What was chosen stays when the text that was read meanwhile comes back; what is typed leads to the cursor again.
  await keys.evaluate(() => {
    delete document.body.dataset.read;
    document.querySelector(".cm-content").focus();
  });
  await keys.keyboard.type(" ");
  const wanted = await keys.evaluate(() => {
    const name = document.querySelector("#tree [data-id]");
    name.dispatchEvent(new MouseEvent("click", { bubbles: true }));
    return name.textContent;
  });
  await until("the text to be read anew", () => keys.evaluate(() => document.body.dataset.read));
  await keys.waitForTimeout(200);
  must((await keys.textContent("#card h3")) === wanted, `what was chosen gave way to ${await keys.textContent("#card h3")}`);
  step("by keyboard alone: example, finding, fix, tree");

  // Words stand out from their ground, in light and dark, and on a narrow screen nothing runs over its edge.
  for (const [scheme, width] of [["light", 1120], ["dark", 1120], ["light", 390]]) {
    const narrow = width < 1000;
    const look = await fresh(await chromium.newContext({ viewport: { width, height: narrow ? 844 : 720 }, colorScheme: scheme, hasTouch: narrow, isMobile: narrow }));
    await look.click("#example");
    await look.waitForSelector("#findings li");
    const place = await spot(look, "glenohumeral joint");
    if (narrow) await look.touchscreen.tap(place.x, place.y);
    else await look.mouse.click(place.x, place.y);
    await until("the card", async () => (await look.textContent("#card")).includes("glenohumeral joint"));
    if (narrow) {
      await until("the card on the screen", () => look.evaluate(() => document.querySelector("#card h3").getBoundingClientRect().bottom < innerHeight));
      must(await look.evaluate(() => document.documentElement.scrollWidth <= innerWidth), "the page is wider than the screen");
      await picture("narrow", look);
      step("narrow screen: nothing over the edge, a tap shows the card");
      continue;
    }
    const card = await leastContrast(look);
    await look.click("#tab-tree");
    await look.waitForSelector("#tree svg");
    const tree = await leastContrast(look);
    await picture(scheme, look);
    const least = card.ratio < tree.ratio ? card : tree;
    step(`${scheme}: least contrast ${least.ratio.toFixed(2)} (“${least.text}”)`);
    must(least.ratio >= 4.5, "a text stands out too little from its ground");
  }

  // From a web server, then with the network off and the server gone; and the copy that the page gives of itself.
  const server = createServer((request, answer) => {
    answer.writeHead(200, { "content-type": "text/html; charset=utf-8", "content-encoding": "gzip" });
    answer.end(gzipSync(readFileSync(file)));
  });
  const port = await new Promise((give) => server.listen(0, "127.0.0.1", () => give(server.address().port)));
  const far = await chromium.newContext({ acceptDownloads: true });
  const served = await fresh(far, `http://127.0.0.1:${port}/`);
  await far.setOffline(true);
  server.close();
  server.closeAllConnections();
  must(!(await served.evaluate(() => navigator.onLine)), "the network is still on");
  await served.click("#example");
  await served.locator("#findings li button.fix", { hasText: "infraspinatus" }).first().click();
  await until("the text to change", async () => (await textOf(served)).includes("supraspinatus, infraspinatus, teres minor"));
  const nerve = await spot(served, "suprascapular nerve");
  await served.mouse.click(nerve.x, nerve.y);
  await until("the card", async () => (await served.textContent("#card")).includes("suprascapular nerve"));
  const copying = served.waitForEvent("download");
  await served.click("#keep-page");
  const copy = join(mkdtempSync(join(tmpdir(), "fascicle-")), "fascicle.html");
  await (await copying).saveAs(copy);
  const kept = await fresh(far, `file://${copy}`);
  await kept.click("#example");
  await kept.locator("#findings li", { hasText: "infraspinatous" }).waitFor();
  step("network off: findings, fix, card; the copy that the page gives of itself works too");

  // 100 kB: the demo notes over and over, opened in a fresh page.
  const one = ["01-brachial-plexus", "02-shoulder", "03-hand"].map((note) => readFileSync(join(process.env.COURSE, "lectures", `${note}.md`), "utf8")).join("\n");
  let long = "";
  while (Buffer.byteLength(long) < 100_000) long += `${one}\n`;
  const folder = mkdtempSync(join(tmpdir(), "fascicle-"));
  const big = join(folder, "long.md");
  writeFileSync(big, long);
  const times = [];
  for (let round = 0; round < 5; round += 1) {
    const timed = await fresh(context);
    await timed.evaluate(() => {
      delete document.body.dataset.read;
      // From the moment at which the page gets the file to the frame in which a finding stands on the screen.
      document.getElementById("choose").addEventListener("change", () => {
        window.opened = performance.now();
        const look = () => (document.querySelector(".cm-lintRange") && document.querySelector("#findings li")
          ? (window.seen = performance.now()) : requestAnimationFrame(look));
        requestAnimationFrame(look);
      }, { capture: true });
    });
    await timed.setInputFiles("#choose", big);
    times.push(await until("a finding in the long document", () => timed.evaluate(() => window.seen && window.seen - window.opened)));
    if (round === 0) step(`reading all of it took ${await until("the whole reading", () => timed.evaluate(() => document.body.dataset.read))} ms`);
    await timed.close();
  }
  times.sort((a, b) => a - b);
  const fetched = gzipSync(readFileSync(file), { level: 9 }).length;
  step(`first finding in ${Buffer.byteLength(long)} bytes after ${times.map((time) => time.toFixed(0)).join(", ")} ms (median ${times[2].toFixed(0)}); ${(fetched / 1e6).toFixed(2)} MB to fetch; load ${loadavg()[0].toFixed(1)} on ${cpus().length} processors`);
  must(fetched < 3e6, "the page is larger than 3 MB");

  must(complaints.length === 0, `the page complained: ${complaints.join("; ")}`);
} catch (error) {
  console.error(`web page: FAILED: ${error.stack}`);
  process.exitCode = 1;
} finally {
  await chromium.close();
}
