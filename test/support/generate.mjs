/**
 * Writes the files that are made from the vocabulary: the TextMate grammar, the language
 * configuration, the snippets and the reference page.
 *
 *   npm run generate
 *
 * Invariant: it writes what `generatedFiles` returns and nothing else; a test proves the files fresh.
 */
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const root = new URL("../../", import.meta.url);

const entry = `
  export { generatedFiles } from "./grammar/highlighting/generate.js";
  export { showQuantity } from "./server/quantities/index.js";
`;
const { outputFiles } = await build({
  stdin: { contents: entry, resolveDir: fileURLToPath(root), loader: "ts" },
  bundle: true,
  format: "esm",
  platform: "node",
  write: false,
});
const bundle = await import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString("base64")}`);

for (const [path, text] of bundle.generatedFiles(bundle.showQuantity)) {
  writeFileSync(new URL(path, root), text);
}
