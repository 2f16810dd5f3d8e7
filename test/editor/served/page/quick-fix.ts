/** The menu of fixes at the cursor. */
import type { Locator, Page } from "playwright-core";

const TRIES = 6;
const TRY_MS = 5000;

/** The menu opens empty-handed, or not at all, where a finding has only just come: then it is asked for again. */
async function openMenu(page: Page): Promise<Locator> {
  const rows = page.locator(".action-widget:visible .monaco-list-row.action");
  for (let left = TRIES; ; left--) {
    await page.keyboard.press("Control+.");
    try {
      await rows.first().waitFor({ timeout: TRY_MS });
      return rows;
    } catch (reason) {
      if (left <= 1) throw reason;
      await page.keyboard.press("Escape");
    }
  }
}

export async function fixTitles(page: Page): Promise<string[]> {
  const rows = await openMenu(page);
  const titles = await rows.locator(".title").allTextContents();
  await page.keyboard.press("Escape");
  return titles;
}

export async function chooseFix(page: Page, title: string): Promise<void> {
  const rows = await openMenu(page);
  await rows.filter({ hasText: title }).first().click();
  await page.locator(".action-widget:visible").first().waitFor({ state: "hidden" });
}
