/** The mechanism panel as a person uses it: in its frame beside the text. */
import type { Locator, Page } from "playwright-core";
import { previewBody } from "./preview.js";
import { runCommand } from "./workbench.js";

export async function showMechanism(page: Page): Promise<Locator> {
  await runCommand(page, "Bellcrank: Show the Mechanism");
  const body = previewBody(page);
  await body.locator("svg[data-stage]").first().waitFor();
  return body;
}

/** What the page has and this program does not. */
interface Slider {
  value: string;
  dispatchEvent(event: unknown): boolean;
}
interface InPage {
  Event: new (type: string, init: { bubbles: boolean }) => unknown;
}

/** As a pointer would leave it, in the unit shown. */
export async function slide(body: Locator, motion: string, to: number): Promise<void> {
  await body.locator(`#motion-${motion}`).evaluate((found, value) => {
    const slider = found as unknown as Slider;
    slider.value = String(value);
    slider.dispatchEvent(new (globalThis as unknown as InPage).Event("input", { bubbles: true }));
  }, to);
}

/** Where an eye is drawn, px in its drawing. */
export async function eyePlace(body: Locator, path: string): Promise<readonly [number, number]> {
  const dot = body.locator(`[data-eye="${path}"] .dot`).first();
  return [Number(await dot.getAttribute("cx")), Number(await dot.getAttribute("cy"))];
}

/** What a screen reader was told last. */
export const said = (body: Locator): Promise<string> => body.locator("[data-said]").innerText();

export const heaveRate = (body: Locator): Promise<string> =>
  body.locator('[data-figures="front"] dd').first().innerText();
