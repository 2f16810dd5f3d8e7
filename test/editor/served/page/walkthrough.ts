/** The walkthrough's page: its steps, and the drawing beside the one that is open. */
import type { Frame, Locator, Page } from "playwright-core";
import { commandWithChoice } from "./workbench.js";

export const openWalkthrough = (page: Page): Promise<void> =>
  commandWithChoice(page, "Welcome: Open Walkthrough", "Get to know Bellcrank");

/** Opens the step of this title and answers it. */
export async function openStep(page: Page, title: string): Promise<Locator> {
  const step = page.locator(".getting-started-step", { hasText: title });
  await step.waitFor();
  if (!(await step.locator(".button-container").first().isVisible())) await step.locator(".step-title").first().click();
  await step.locator(".button-container").first().waitFor();
  return step;
}

export const isTicked = (step: Locator): Locator => step.locator(".codicon-getting-started-step-checked:visible");

/** Of an image, as the page has it. */
interface ImageInPage {
  readonly naturalWidth: number;
}

/** How wide the drawing of the open step is by itself; 0 while it is not there, or where it could not be loaded. */
export async function drawingWidth(page: Page): Promise<number> {
  const widths = await Promise.all(page.frames().map(widthIn));
  return Math.max(...widths);
}

async function widthIn(frame: Frame): Promise<number> {
  try {
    const widths = await frame
      .locator('img[src*="/client/walkthrough/"]')
      .evaluateAll((images) => images.map((image) => (image as unknown as ImageInPage).naturalWidth));
    return Math.max(0, ...widths);
  } catch (error) {
    // Pages come and go while they are looked at: one that has gone has no drawing.
    if (frame.isDetached()) return 0;
    throw error;
  }
}
