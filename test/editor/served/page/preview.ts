/** A rendered page beside the text: a frame within a frame, as the editor keeps pages apart from itself. */
import type { Locator, Page } from "playwright-core";

export function previewBody(page: Page): Locator {
  return page.frameLocator("iframe.webview.ready").last().frameLocator("#active-frame").locator("body");
}
