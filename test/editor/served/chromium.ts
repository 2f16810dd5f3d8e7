/** Finds and starts Chromium without a window. */
import { existsSync } from "node:fs";
import { type Browser, chromium } from "playwright-core";

const PLACES = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];
const FLAGS = [
  // Containers and CI run as root, where the sandbox cannot start; only pages of this machine are shown.
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** `BELLCRANK_CHROMIUM` names it where it is elsewhere. */
export function chromiumPath(): string | undefined {
  return [process.env["BELLCRANK_CHROMIUM"] ?? "", ...PLACES].find((path) => path !== "" && existsSync(path));
}

export async function startChromium(): Promise<Browser> {
  const executablePath = chromiumPath();
  if (executablePath === undefined) {
    throw new Error(
      "The editor suite needs Chromium: install it (apt-get install chromium) or set BELLCRANK_CHROMIUM.",
    );
  }
  return chromium.launch({ executablePath, args: FLAGS });
}
