// Builds the page: `dist/fascicle.html`, one file with everything in it, so that it opens by a double click and needs no
// network. `node build.js` after `npm ci`; Rust with the WebAssembly target, or the packages that README.md names.

import { execFileSync } from "node:child_process";
import { copyFileSync, existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, "..", "..");
const target = process.env.CARGO_TARGET_DIR ?? join(root, "target");
const made = join(here, "build");
const dist = join(here, "dist");
const triple = "wasm32-unknown-unknown";

function run(command, parts, extra = {}) {
  execFileSync(command, parts, { cwd: root, stdio: "inherit", env: { ...process.env, ...extra } });
}

// The ordinary toolchain if it has the target, else Debian's Rust for the web, which builds the standard library itself.
function compile() {
  const package_ = ["-p", "fascicle-web", "--profile", "web", "--target", triple];
  const library = execFileSync("rustc", ["--print", "target-libdir", "--target", triple], { cwd: root }).toString().trim();
  if (existsSync(library)) return run("cargo", ["build", "--locked", ...package_]);
  run("/usr/bin/cargo", ["build", "--locked", "-Zbuild-std=std,panic_abort", ...package_], {
    RUSTC: "/usr/bin/rustc",
    RUSTC_BOOTSTRAP: "1",
    CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER: "/usr/lib/llvm-19/bin/wasm-ld",
    CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS: "-Clinker-flavor=wasm-ld",
  });
}

mkdirSync(made, { recursive: true });
mkdirSync(dist, { recursive: true });
compile();
run("cargo", ["run", "--quiet", "--locked", "--manifest-path", join(here, "glue", "Cargo.toml"), "--target-dir",
  join(target, "glue"), "--", join(target, triple, "web", "fascicle_web.wasm"), made]);
const wasm = readFileSync(join(made, "fascicle_web_bg.wasm"));
writeFileSync(join(made, "fascicle_web_bg.wasm.gz"), gzipSync(wasm, { level: 9 }));

const bundled = (name) => build({
  entryPoints: [join(here, "src", name)],
  bundle: true,
  minify: true,
  write: false,
  format: "iife",
  target: "es2022",
  // The way by which the glue would fetch the compiled reader is never taken: it is handed over as bytes.
  define: { "import.meta.url": "\"\"" },
  loader: { ".gz": "binary", ".md": "text", ".txt": "text" },
  logLevel: "warning",
});
writeFileSync(join(made, "worker.txt"), (await bundled("worker.js")).outputFiles[0].text);
const bundle = await bundled("page.js");
const script = bundle.outputFiles[0].text.replaceAll("</script", "<\\/script");
const page = readFileSync(join(here, "src", "page.html"), "utf8")
  .replace("/*STYLE*/", () => readFileSync(join(here, "src", "page.css"), "utf8"))
  .replace("/*SCRIPT*/", () => script);
const out = join(dist, "fascicle.html");
writeFileSync(out, page);
copyFileSync(join(root, "LICENSE-MIT"), join(dist, "LICENSE-MIT"));
const kilobytes = (bytes) => `${Math.round(bytes.length / 1000)} kB`;
console.log(`compiled reader ${kilobytes(wasm)}, page ${kilobytes(Buffer.from(page))}, to fetch ${kilobytes(gzipSync(page, { level: 9 }))} (gzip)`);
