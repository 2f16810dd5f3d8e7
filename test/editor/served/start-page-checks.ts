/** A new car and a setup sheet in the real editor, by the keyboard alone. */
import assert from "node:assert/strict";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { eventually } from "../eventually.js";
import type { PageCheck } from "./page-checks.js";
import { previewBody } from "./page/preview.js";
import { runCommand } from "./page/workbench.js";

/** Five choices and three times yes or no. */
const QUESTIONS = 8;

export const startPageChecks: readonly PageCheck[] = [
  {
    name: "asks for a new car and writes one that has no findings",
    async run(editor, folder) {
      const { page } = editor;
      const input = page.locator(".quick-input-widget input:visible");
      await page.keyboard.press("F1");
      await input.fill(">Bellcrank: New Car");
      const row = page.locator(".quick-input-list .monaco-list-row.focused", { hasText: "Bellcrank: New Car" });
      await row.waitFor();
      await page.keyboard.press("Enter");
      await page.locator(".quick-input-title", { hasText: "New car" }).waitFor();
      await input.fill("wren-9");
      await page.keyboard.press("Enter");
      const title = page.locator(".quick-input-title:visible");
      let asked = await title.innerText();
      for (let i = 0; i < QUESTIONS; i++) {
        asked = await eventually(
          "the next question",
          () => title.innerText(),
          (text) => text !== asked && text !== "",
        );
        await page.locator(".quick-input-list .monaco-list-row.focused").waitFor();
        await page.keyboard.press("Enter");
      }
      const path = join(folder.path, "wren-9.crank");
      await eventually("the files", () => Promise.resolve(existsSync(path)), Boolean);
      await page.locator(".tab.active", { hasText: "wren-9.crank" }).waitFor();
      assert.match(readFileSync(path, "utf8"), /^car wren-9 "wren-9" \{$/m);
      assert.deepEqual(await editor.findings(), []);
      await editor.picture("new-car");
    },
  },
  {
    name: "shows the setup sheet of what is typed, beside the text",
    async run(editor, folder) {
      const path = folder.car("sheet").replace("quill.crank", "wet.crank");
      await editor.open(path);
      await runCommand(editor.page, "Bellcrank: Show the Setup Sheet");
      const body = previewBody(editor.page);
      await body.getByRole("heading", { name: "On the flat patch" }).waitFor();
      assert.equal(await body.locator("h1").innerText(), "quarrow-wet");
      assert.ok((await body.locator("figure svg").count()) === 2);
      assert.equal(await body.locator("script").count(), 0);
      await editor.picture("sheet");
    },
  },
];
