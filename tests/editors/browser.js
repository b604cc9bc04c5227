// The browser that the drivers use, and small tools.

import { chromium } from "playwright-core";

/** Starts Debian's Chromium (or the one that CHROMIUM names), with nothing of its own going to the network. */
export function browser() {
  return chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    args: ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
      "--disable-background-networking", "--disable-component-update", "--disable-sync"],
  });
}

/** Waits until a question has a truthy answer. */
export async function until(what, question, limit = 40000) {
  const end = Date.now() + limit;
  for (;;) {
    const answer = await question();
    if (answer) return answer;
    if (Date.now() > end) throw new Error(`waited in vain for ${what}`);
    await new Promise((done) => setTimeout(done, 50));
  }
}

/** Fails with a message unless something holds. */
export function must(holds, message) {
  if (!holds) throw new Error(message);
}
