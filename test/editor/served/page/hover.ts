/** The box that explains what the cursor is on. */
import type { Page } from "playwright-core";

export async function hoverText(page: Page): Promise<string> {
  await page.keyboard.press("Control+K");
  await page.keyboard.press("Control+I");
  const box = page.locator(".monaco-hover:visible .hover-contents").first();
  await box.waitFor();
  const texts = await page.locator(".monaco-hover:visible .hover-contents").allInnerTexts();
  await page.keyboard.press("Escape");
  await page.keyboard.press("Escape");
  return texts.join("\n").replace(/\u00a0/g, " ");
}
