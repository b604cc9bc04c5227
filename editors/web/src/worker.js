// The compiled reader in a thread of its own, so that typing never waits for it. Takes `{ compiled, example }` once, then
// `{ number, method, input }`; answers `{ number, answer }` or `{ number, error }`.

import start, { Reader } from "../build/fascicle_web.js";

let reader = null;

self.onmessage = async ({ data }) => {
  const { compiled, example, number, method, input } = data;
  try {
    if (compiled) {
      await start({ module_or_path: compiled });
      reader = new Reader();
      reader.read(example, "example.md"); // the browser compiles well only what has run before
      self.postMessage({ number: 0, answer: true });
    } else {
      self.postMessage({ number, answer: JSON.parse(reader[method](...input)) });
    }
  } catch (error) {
    self.postMessage({ number: number ?? 0, error: String(error?.message ?? error) });
  }
};
