/** The served editor for a whole suite: server, browser and page, started and taken down together. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { startChromium } from "./chromium.js";
import { type Served, serve } from "./server.js";
import type { ExtensionHost } from "./settings.js";

const START_LIMIT_MS = 90_000;
const WINDOW = { width: 1440, height: 900 };

export interface Running {
  readonly page: Page;
  stop(): Promise<void>;
}

export async function startServed(extension: string, folder: string, host: ExtensionHost = "server"): Promise<Running> {
  const state = mkdtempSync(join(tmpdir(), "bellcrank-served-"));
  const ends: (() => Promise<void>)[] = [async () => rmSync(state, { recursive: true, force: true })];
  const stop = async (): Promise<void> => {
    for (const end of [...ends].reverse()) await end();
  };
  try {
    const browser = await startChromium();
    ends.push(() => browser.close());
    const served = await serve(extension, folder, state, host);
    ends.push(() => served.stop());
    return { page: await openPage(browser, served), stop };
  } catch (error) {
    await stop();
    throw error;
  }
}

async function openPage(browser: Browser, served: Served): Promise<Page> {
  const page = await browser.newPage({ viewport: WINDOW });
  page.setDefaultTimeout(30_000);
  await page.goto(served.url);
  await page.locator(".monaco-workbench").waitFor({ timeout: START_LIMIT_MS });
  // The explorer lists the folder once the editor's server side has answered.
  await page.locator(".explorer-folders-view .monaco-list-row").first().waitFor({ timeout: START_LIMIT_MS });
  return page;
}
