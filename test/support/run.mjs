/**
 * Runs a TypeScript program of the test tree: bundles it into .cache/run/, packages left outside, and starts it.
 *
 *   node test/support/run.mjs test/editor/open.ts [arguments]
 */
import { spawnSync } from "node:child_process";
import { basename } from "node:path";
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
const { status } = spawnSync(process.execPath, [outfile, ...rest], { stdio: "inherit" });
process.exit(status ?? 1);
