/**
 * Builds what is shipped into dist/: the editor's client, the language server and the command line,
 * each one bundled and minified file without source maps, so that no path of a machine gets in, and the
 * licences of all packages that are bundled.
 *
 *   node esbuild.mjs [FOLDER]
 *
 * Invariant: a bundle takes nothing from node_modules at run time; the editor alone supplies `vscode`.
 * The same sources give the same bytes.
 */
import { writeFileSync } from "node:fs";
import { build } from "esbuild";
import { noticesOf } from "./test/support/notices.mjs";

const [folder = "dist"] = process.argv.slice(2);

/** Bundled CommonJS packages still ask for Node's own modules by `require`, which a module file has to make itself. */
const requireInModules = 'import { createRequire } from "node:module"; const require = createRequire(import.meta.url);';

/** A worker that the pool would start where it is given none: we always give ours, and its text names a source map. */
const withoutDefaultWorker = {
  name: "without-default-worker",
  setup({ onLoad }) {
    onLoad({ filter: /workerpool[\\/]src[\\/]generated[\\/]embeddedWorker\.js$/ }, () => ({
      contents: 'module.exports = "";',
    }));
  },
};

const shared = {
  bundle: true,
  minify: true,
  legalComments: "none",
  platform: "node",
  target: "node20",
  // Some packages wrap their CommonJS build so that a bundler cannot see into it; their module build has no such wrap.
  mainFields: ["module", "main"],
  logLevel: "warning",
  plugins: [withoutDefaultWorker],
};

const bundles = [
  { entryPoints: ["client/extension.ts"], outfile: `${folder}/extension.cjs`, format: "cjs", external: ["vscode"] },
  { entryPoints: ["server/lsp/main.ts"], outfile: `${folder}/server.cjs`, format: "cjs" },
  // Client and server where the editor runs in a browser: nothing of Node is to be had there, and asking for it ends the build.
  {
    entryPoints: ["client/web/extension.ts"],
    outfile: `${folder}/extension-web.cjs`,
    format: "cjs",
    platform: "browser",
    target: "es2022",
    external: ["vscode"],
  },
  {
    entryPoints: ["server/lsp/main-web.ts"],
    outfile: `${folder}/server-web.js`,
    format: "iife",
    platform: "browser",
    target: "es2022",
  },
  {
    entryPoints: ["server/cli/main.ts"],
    outfile: `${folder}/cli.js`,
    format: "esm",
    banner: { js: `#!/usr/bin/env node\n${requireInModules}` },
  },
  {
    // The panel's page: a browser's world, and `preact` by the settings that lie beside it.
    entryPoints: ["client/panel/page/main.tsx"],
    outfile: `${folder}/panel.js`,
    format: "iife",
    platform: "browser",
    target: "es2022",
  },
  { entryPoints: ["client/panel/page/panel.css"], outfile: `${folder}/panel.css` },
];

const built = await Promise.all(bundles.map((bundle) => build({ ...shared, ...bundle, metafile: true })));
const inputs = built.flatMap(({ metafile }) => Object.keys(metafile.inputs));
writeFileSync(`${folder}/THIRD-PARTY-NOTICES.txt`, noticesOf(inputs));
