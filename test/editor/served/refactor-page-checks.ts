/** Refactorings in the real editor: a value named and renamed at once. */
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import type { Locator, Page } from "playwright-core";
import { eventually } from "../eventually.js";
import { placeOf } from "../places.js";
import type { PageCheck } from "./page-checks.js";
import { fixTitles } from "./page/quick-fix.js";
import { goTo, runCommand } from "./page/workbench.js";

const renameBox = (page: Page): Locator => page.locator(".rename-box input:visible");

async function renameAndSave(page: Page, name: string): Promise<void> {
  await renameBox(page).fill(name);
  await page.keyboard.press("Enter");
  await renameBox(page).waitFor({ state: "hidden" });
  await runCommand(page, "File: Save All");
}

/** Text of a file on disk, once it is what is waited for. */
const saved = (what: string, path: string, wanted: (text: string) => boolean): Promise<string> =>
  eventually(what, () => Promise.resolve(textOf(path)), wanted);

function textOf(path: string): string {
  try {
    return readFileSync(path, "utf8");
  } catch {
    return "";
  }
}

export const refactorPageChecks: readonly PageCheck[] = [
  {
    name: "gives a value a name wherever it stands, and asks for a better one at once",
    async run(editor, folder) {
      const { page } = editor;
      const path = folder.car("named");
      await editor.open(path);
      const text = folder.text(path);
      const place = placeOf(text, /section 8 x 20 mm, length (70) mm/);
      await goTo(page, place);
      const titles = await fixTitles(page);
      const title = titles.find((one) => /^(Give 70 mm a name|Name 70 mm in all)/.test(one)) ?? "";
      await editor.applyFix(place, title);
      await renameBox(page).waitFor();
      await editor.picture("refactor-rename");
      await renameAndSave(page, "blade-length");
      const after = await saved("the new name", path, (now) => now.includes("let blade-length = 70 mm"));
      assert.match(after, /section 8 x 20 mm, length blade-length/);
      assert.deepEqual(await editor.findings(), []);
    },
  },
];
