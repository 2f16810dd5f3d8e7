/**
 * Runs a TypeScript program of the test tree: bundles it into .cache/run/, packages left outside, and runs it in this process.
 *
 *   node test/support/run.mjs test/editor/open.ts [arguments]
 */
import { basename, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";

const [entry, ...rest] = process.argv.slice(2);
if (entry === undefined) {
  console.error("usage: node test/support/run.mjs FILE.ts [arguments]");
  process.exit(2);
}
const outfile = `.cache/run/${basename(entry, ".ts")}.mjs`;
await build({
  entryPoints: [entry],
  outfile,
  bundle: true,
  platform: "node",
  format: "esm",
  packages: "external",
  logLevel: "warning",
});
process.argv.splice(1, process.argv.length - 1, resolve(outfile), ...rest);
await import(pathToFileURL(outfile).href);
