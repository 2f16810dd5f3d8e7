/** The box that explains what the cursor is on. */
import type { Page } from "playwright-core";

/** Opens it, reads it, and closes it again; `whileShown` is done in between. */
export async function hoverText(page: Page, whileShown: () => Promise<void>): Promise<string> {
  await page.keyboard.press("Control+K");
  await page.keyboard.press("Control+I");
  const box = page.locator(".monaco-hover:visible .hover-contents").first();
  await box.waitFor();
  const texts = await page.locator(".monaco-hover:visible .hover-contents").allInnerTexts();
  await whileShown();
  await page.keyboard.press("Escape");
  await page.keyboard.press("Escape");
  return texts.join("\n").replace(/\u00a0/g, " ");
}

/** Of an image, as the page has it. */
interface ImageInPage {
  readonly naturalWidth: number;
  decode(): Promise<void>;
}

/** How wide the images in the open box are by themselves, once they are drawn; fails where one cannot be. */
export function imageWidths(page: Page): Promise<readonly number[]> {
  return page.locator(".monaco-hover:visible .hover-contents img").evaluateAll((images) =>
    Promise.all(
      images.map(async (found) => {
        const image = found as unknown as ImageInPage;
        await image.decode();
        return image.naturalWidth;
      }),
    ),
  );
}
