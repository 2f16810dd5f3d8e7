/**
 * Which editor the suite runs in: VS Code for the desktop where it can be downloaded and shown, else
 * the web-served build. Neither is passed over in silence: the choice and its reason are printed.
 *
 * `BELLCRANK_EDITOR=served` or `desktop` decides instead.
 */
import { downloadAndUnzipVSCode } from "@vscode/test-electron";

const DOWNLOAD_LIMIT_MS = 300_000;

export type Choice =
  | { readonly editor: "desktop"; readonly executable: string; readonly why: string }
  | { readonly editor: "served"; readonly why: string };

export async function chooseEditor(): Promise<Choice> {
  const wish = process.env["BELLCRANK_EDITOR"];
  if (wish === "served") return { editor: "served", why: "BELLCRANK_EDITOR asks for it" };
  if (wish === undefined && !hasDisplay()) return { editor: "served", why: "there is no display for a desktop editor" };
  try {
    return { editor: "desktop", executable: await download(), why: "VS Code could be downloaded" };
  } catch (error) {
    if (wish === "desktop") throw error;
    return { editor: "served", why: `VS Code cannot be downloaded here (${String(error)})` };
  }
}

function hasDisplay(): boolean {
  return (
    process.platform !== "linux" || process.env["DISPLAY"] !== undefined || process.env["WAYLAND_DISPLAY"] !== undefined
  );
}

async function download(): Promise<string> {
  let timer: NodeJS.Timeout | undefined;
  const tooLong = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(`no answer in ${DOWNLOAD_LIMIT_MS / 1000} s`)), DOWNLOAD_LIMIT_MS);
  });
  try {
    return await Promise.race([downloadAndUnzipVSCode({ cachePath: ".cache/vscode" }), tooLong]);
  } finally {
    clearTimeout(timer);
  }
}
