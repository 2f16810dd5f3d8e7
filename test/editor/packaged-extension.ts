/** The extension as it is shipped: what `npm run package` made last. */
import { existsSync } from "node:fs";
import { resolve } from "node:path";
import manifest from "../../package.json" with { type: "json" };

export function packagedExtension(): string {
  const path = resolve(`dist/${manifest.name}-${manifest.version}.vsix`);
  if (!existsSync(path)) throw new Error(`There is no ${path}: run npm run package first.`);
  return path;
}
