/**
 * `npm run editor`: opens the samples in an editor with the extension. Where VS Code's own `code` is on the
 * path, in that; else in the web-served build, whose address is printed. Ends with Ctrl+C.
 */
import { cpSync, mkdirSync } from "node:fs";
import { resolve } from "node:path";
import { spawnSync } from "node:child_process";
import { packagedExtension } from "./packaged-extension.js";
import { serve } from "./served/server.js";

/** A copy to play with, so that the samples in the repository stay as they are. */
function playground(): string {
  const folder = resolve(".cache/playground");
  mkdirSync(folder, { recursive: true });
  cpSync("samples", folder, { recursive: true });
  return folder;
}

function openInCode(folder: string): boolean {
  const command = ["--new-window", `--extensionDevelopmentPath=${resolve(".")}`, folder];
  const { status } = spawnSync("code", command, { stdio: "inherit", shell: process.platform === "win32" });
  return status === 0;
}

const folder = playground();
if (openInCode(folder)) {
  console.log(`VS Code has opened ${folder} with the extension of this repository.`);
} else {
  const served = await serve(packagedExtension(), folder, resolve(".cache/editor/profile"));
  console.log(`Open this in a browser on this machine, then quill/quill.crank:\n\n  ${served.url}\n\nCtrl+C ends it.`);
  for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => void served.stop());
}
