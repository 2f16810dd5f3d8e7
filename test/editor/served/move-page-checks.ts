/** A file that is called otherwise in the explorer: the lines that lead to it follow in the real editor. */
import { dirname, join } from "node:path";
import type { Page } from "playwright-core";
import { eventually } from "../eventually.js";
import type { PageCheck } from "./page-checks.js";
import { lensTexts } from "./page/text.js";
import { runCommand } from "./page/workbench.js";

const textShown = async (page: Page): Promise<string> =>
  (await page.locator(".editor-instance .view-lines").first().innerText()).replaceAll("\u00a0", " ");

/** By the keyboard, from the row of the open file to the one above it. */
async function renameFileAbove(page: Page, old: string, name: string): Promise<void> {
  const rows = page.locator(".explorer-folders-view .monaco-list-row");
  await runCommand(page, "File: Reveal Active File in Explorer View");
  await rows.and(page.locator(".focused")).waitFor();
  await page.keyboard.press("ArrowUp");
  await rows.and(page.locator(".focused")).filter({ hasText: old }).waitFor();
  await page.keyboard.press("F2");
  const box = page.locator(".explorer-folders-view input:visible");
  await box.fill(name);
  await box.press("Enter");
  // The editor asks before it lets an extension change other files.
  const asked = page.locator(".monaco-dialog-box", { hasText: "Bellcrank" });
  await asked.getByRole("button", { name: "OK" }).click();
}

export const movePageChecks: readonly PageCheck[] = [
  {
    name: "lets the lines that lead to a file follow when the file is renamed in the explorer",
    async run(editor, folder) {
      const { page } = editor;
      await editor.open(join(dirname(folder.car("moved")), "wet.crank"));
      // Before the server runs, the editor has nobody to ask.
      await eventually(
        "an answer of the server",
        () => lensTexts(page),
        (lenses) => lenses.length > 0,
      );
      // A second try finds the file of the first one.
      const name = `quill-${Date.now().toString(36)}.crank`;
      await renameFileAbove(page, "quill.crank", name);
      await eventually(
        "the new name",
        () => textShown(page),
        (text) => text.includes(`use "${name}"`),
      );
      await editor.picture("moved-file");
      // The other set-up follows a moment later, in a tab behind.
      await page.locator(".tab.dirty", { hasText: "dry.crank" }).waitFor();
      await runCommand(page, "File: Save All");
      await page.locator(".tab.dirty").first().waitFor({ state: "detached" });
    },
  },
];
