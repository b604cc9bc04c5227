// Puts the settings of the server into package.json, from the JSON Schema that the server makes of its own types:
//
//   fascicle generate schema settings | node settings.js          writes them
//   fascicle generate schema settings | node settings.js --check  fails if they are not as the server has them

const { readFileSync, writeFileSync } = require("node:fs");
const { join } = require("node:path");

const file = join(__dirname, "package.json");
const schema = JSON.parse(readFileSync(0, "utf8"));
const manifest = JSON.parse(readFileSync(file, "utf8"));
const configuration = manifest.contributes.configuration;
const own = Object.entries(configuration.properties).filter(([key]) => /^fascicle\.(server|trace)\./.test(key));
const theirs = Object.entries(schema.properties).map(([key, { description, ...rest }]) => [
  `fascicle.${key}`,
  { ...rest, scope: "resource", markdownDescription: description },
]);
const properties = Object.fromEntries([...own, ...theirs]);

if (process.argv.includes("--check")) {
  if (JSON.stringify(properties) !== JSON.stringify(configuration.properties)) {
    console.error("editors/vscode/package.json has other settings than the server: run `fascicle generate schema settings | node editors/vscode/settings.js`");
    process.exit(1);
  }
} else {
  configuration.properties = properties;
  writeFileSync(file, `${JSON.stringify(manifest, null, 2)}\n`);
}
