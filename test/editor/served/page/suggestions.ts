/** The list of words that may stand at the cursor. */
import type { Page } from "playwright-core";

export async function suggestions(page: Page): Promise<string[]> {
  await page.keyboard.press("Control+Space");
  const rows = page.locator(".suggest-widget.visible .monaco-list-row");
  await rows.first().waitFor();
  const labels = await rows.locator(".label-name").allTextContents();
  await page.keyboard.press("Escape");
  return labels;
}
