/** The menu of fixes at the cursor. */
import type { Locator, Page } from "playwright-core";

/** The menu opens empty-handed where a finding has only just come, so its rows are waited for. */
async function openMenu(page: Page): Promise<Locator> {
  await page.keyboard.press("Control+.");
  const rows = page.locator(".action-widget:visible .monaco-list-row.action");
  await rows.first().waitFor();
  return rows;
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
