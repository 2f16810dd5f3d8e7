/** A page as a PDF through a browser that is installed: no such thing is shipped. */
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { UsageError } from "../usage-error.js";

const NAMES = [
  "chromium",
  "chromium-browser",
  "google-chrome",
  "google-chrome-stable",
  "microsoft-edge",
  "chrome.exe",
  "msedge.exe",
];
const LIMIT = 60_000;

/** `BELLCRANK_CHROMIUM` names it where it is not on the path. */
export function browserPath(): string | undefined {
  const named = process.env["BELLCRANK_CHROMIUM"];
  if (named !== undefined && named !== "") return existsSync(named) ? named : undefined;
  const folders = (process.env["PATH"] ?? "").split(delimiter).filter((folder) => folder !== "");
  return folders.flatMap((folder) => NAMES.map((name) => join(folder, name))).find((path) => existsSync(path));
}

/** Writes the page to `target`; a `UsageError` says what is missing. */
export function printPdf(html: string, target: string): void {
  const browser = browserPath();
  if (browser === undefined)
    throw new UsageError(
      "a PDF is printed by Chromium, Chrome or Edge, and none is on the path: name one in BELLCRANK_CHROMIUM, or print the HTML",
    );
  const folder = mkdtempSync(join(tmpdir(), "bellcrank-sheet-"));
  try {
    const page = join(folder, "sheet.html");
    writeFileSync(page, html);
    const printed = spawnSync(browser, flags(join(folder, "profile"), resolve(target), pathToFileURL(page).href), {
      encoding: "utf8",
      timeout: LIMIT,
    });
    if (printed.status !== 0 || !existsSync(target))
      throw new UsageError(`${browser} did not print ${target}: ${reason(printed.stderr, printed.error)}`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function flags(profile: string, target: string, address: string): readonly string[] {
  return [
    "--headless",
    "--disable-gpu",
    "--no-first-run",
    // The superuser of a container cannot have the sandbox; the page is our own, without scripts.
    ...(process.getuid?.() === 0 ? ["--no-sandbox"] : []),
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    `--user-data-dir=${profile}`,
    "--no-pdf-header-footer",
    `--print-to-pdf=${target}`,
    address,
  ];
}

const reason = (said: string | null, error: Error | undefined): string =>
  error?.message ?? said?.trim().split("\n").at(-1) ?? "it gave no reason";
