/** The five steps of the walkthrough, each done from its page alone, as somebody new would. */
import assert from "node:assert/strict";
import { existsSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { moveEyeOff } from "../checks.js";
import { eventually } from "../eventually.js";
import type { Folder } from "../folder.js";
import type { PageCheck } from "./page-checks.js";
import type { PageEditor } from "./page-editor.js";
import { previewBody } from "./page/preview.js";
import { drawingWidth, isTicked, openStep, openWalkthrough } from "./page/walkthrough.js";

const exampleOf = (folder: Folder): string => join(folder.path, "quill-example", "quill.crank");

/** The example in a tab, and the walkthrough in front of it: where the first step leads, and where one comes back to. */
async function pastFirstStep({ page }: PageEditor, folder: Folder): Promise<void> {
  await openWalkthrough(page);
  const step = await openStep(page, "Open the sample car");
  await step.getByRole("button", { name: "Open Example" }).click();
  await page.locator(".tab.active", { hasText: "quill.crank" }).waitFor();
  assert.ok(existsSync(join(folder.path, "quill-example", "wet.crank")));
}

/** Opens the step, looks at its drawing, and presses its button. */
async function doStep(page: Page, title: string, button: string): Promise<void> {
  await openWalkthrough(page);
  const step = await openStep(page, title);
  await eventually(
    "the drawing of the step",
    () => drawingWidth(page),
    (width) => width > 0,
  );
  await step.getByRole("button", { name: button }).click();
}

async function staysTicked({ page }: PageEditor, title: string): Promise<void> {
  await openWalkthrough(page);
  await isTicked(page.locator(".getting-started-step", { hasText: title })).waitFor();
}

export const walkthroughPageChecks: readonly PageCheck[] = [
  {
    name: "walks through the first step: the example is copied, opened and ticked off",
    async run(editor, folder) {
      await editor.close();
      await pastFirstStep(editor, folder);
      await staysTicked(editor, "Open the sample car");
      await editor.picture("walkthrough");
    },
  },
  {
    name: "shows rates from the walkthrough's second step, and is ticked off",
    async run(editor, folder) {
      await editor.close();
      await pastFirstStep(editor, folder);
      await doStep(editor.page, "Type a rate", "Show Rates of This Car");
      await editor.page.locator(".tab", { hasText: "Preview rates" }).waitFor();
      await previewBody(editor.page).getByText("roll stiffness").first().waitFor();
      await editor.picture("walkthrough-rates");
      await staysTicked(editor, "Type a rate");
    },
  },
  {
    name: "explains the finding from the walkthrough's third step, wherever the cursor was left",
    async run(editor, folder) {
      await editor.close();
      await pastFirstStep(editor, folder);
      await moveEyeOff(editor, folder.text(exampleOf(folder)));
      await doStep(editor.page, "Find a coupling error", "Explain the Finding");
      await previewBody(editor.page).getByRole("heading", { name: "coupling" }).waitFor();
      await staysTicked(editor, "Find a coupling error");
    },
  },
  {
    name: "draws the mechanism from the walkthrough's fourth step",
    async run(editor, folder) {
      await editor.close();
      await pastFirstStep(editor, folder);
      await doStep(editor.page, "See the mechanism", "Show the Mechanism");
      await previewBody(editor.page).locator("svg[data-stage]").first().waitFor();
      await editor.picture("walkthrough-mechanism");
      await staysTicked(editor, "See the mechanism");
    },
  },
  {
    name: "compares set-ups and shows a sheet from the walkthrough's last step",
    async run(editor, folder) {
      const { page } = editor;
      await editor.close();
      await pastFirstStep(editor, folder);
      await doStep(page, "Compare set-ups", "Compare with Another Set-up");
      await page.locator(".quick-input-list .monaco-list-row", { hasText: "quarrow-wet" }).first().click();
      await page.locator(".tab", { hasText: "Compare quill" }).waitFor();
      await previewBody(page).getByText("wet.crank").first().waitFor();
      await doStep(page, "Compare set-ups", "Show the Setup Sheet");
      await previewBody(page).getByRole("heading", { name: "On the flat patch" }).waitFor();
      await staysTicked(editor, "Compare set-ups");
    },
  },
  {
    name: "offers the example where a step needs a car and none is open",
    async run(editor) {
      const { page } = editor;
      await editor.close();
      await doStep(page, "See the mechanism", "Show the Mechanism");
      const message = page.locator(".notifications-toasts .notification-list-item", {
        hasText: "to see its mechanism",
      });
      await message.getByRole("button", { name: "Open Example" }).click();
      await page.locator(".tab.active", { hasText: "quill.crank" }).waitFor();
    },
  },
];
