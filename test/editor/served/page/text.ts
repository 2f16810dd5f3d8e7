/** What is drawn in and between the lines of the text: colours, hints, lenses, squiggles. */
import type { Page } from "playwright-core";

const NO_BREAK_SPACES = /\u00a0/g;

/** Puts ordinary spaces where the page has spaces that do not break. */
function plain(text: string): string {
  return text.replace(NO_BREAK_SPACES, " ");
}

/** Hints are drawn in spans whose style rules the editor makes up as it goes. */
export async function inlayTexts(page: Page): Promise<string[]> {
  const texts = await page.locator('.view-line span[class*="dyn-rule"]').allTextContents();
  return texts.map((text) => plain(text).trim()).filter((text) => text !== "");
}

export async function lensTexts(page: Page): Promise<string[]> {
  const texts = await page.locator(".codelens-decoration a, .codelens-decoration > span").allTextContents();
  return texts.map((text) => plain(text).trim());
}

export interface Coloured {
  readonly text: string;
  readonly colour: string;
}

/** What the page has and this program does not. */
interface InPage {
  getComputedStyle(element: unknown): { readonly color: string };
}

/** The pieces of the visible lines, each with the colour that it is drawn in. */
export async function colouredPieces(page: Page): Promise<Coloured[]> {
  const pieces = await page.locator(".view-line > span > span").evaluateAll((spans) =>
    spans.map((span) => ({
      text: span.textContent ?? "",
      colour: (globalThis as unknown as InPage).getComputedStyle(span).color,
    })),
  );
  return pieces.map(({ text, colour }) => ({ text: plain(text).trim(), colour }));
}

/** How many squiggles of a warning or an error are drawn. */
export async function squiggles(page: Page): Promise<number> {
  return page.locator(".squiggly-warning, .squiggly-error, .squiggly-info").count();
}
