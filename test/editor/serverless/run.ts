/** The site and a browser that shows it, started and taken down together. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { startChromium } from "../served/chromium.js";
import { unpack } from "../served/server.js";
import { openSite } from "./site.js";

const START_LIMIT_MS = 90_000;
const WINDOW = { width: 1440, height: 900 };

export interface Running {
  readonly page: Page;
  /** Connections that the page has opened to anybody: a site of files has none to offer. */
  readonly sockets: readonly string[];
  stop(): Promise<void>;
}

export async function startSite(extension: string): Promise<Running> {
  const state = mkdtempSync(join(tmpdir(), "bellcrank-site-"));
  const ends: (() => Promise<void>)[] = [async () => rmSync(state, { recursive: true, force: true })];
  const stop = async (): Promise<void> => {
    for (const end of [...ends].reverse()) await end();
  };
  try {
    const site = await openSite(unpack(extension, state));
    ends.push(() => site.stop());
    const browser = await startChromium();
    ends.push(() => browser.close());
    const page = await browser.newPage({ viewport: WINDOW });
    const sockets: string[] = [];
    page.on("websocket", (socket) => sockets.push(socket.url()));
    page.setDefaultTimeout(30_000);
    await page.goto(site.url);
    await page.locator(".explorer-folders-view .monaco-list-row").first().waitFor({ timeout: START_LIMIT_MS });
    return { page, sockets, stop };
  } catch (error) {
    await stop();
    throw error;
  }
}
