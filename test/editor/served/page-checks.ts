/** What only a page can show: colours, squiggles, the rendered pages, the status bar. */
import assert from "node:assert/strict";
import { moveEyeOff, ROLL_LOW_HEIGHT, ROLL_LOW_OFF } from "../checks.js";
import { eventually } from "../eventually.js";
import type { Folder } from "../folder.js";
import { placeOf } from "../places.js";
import { hoverText, imageWidths } from "./page/hover.js";
import { previewBody } from "./page/preview.js";
import { type Coloured, colouredPieces, squiggles } from "./page/text.js";
import { openRows, runTestsOfFile, showOnlyTestsOfFile, showTests, testLabels } from "./page/testing.js";
import { goTo, runCommand } from "./page/workbench.js";
import type { PageEditor } from "./page-editor.js";

export interface PageCheck {
  readonly name: string;
  /** Left out where the extension runs in the browser, which has no git. */
  readonly needsGit?: boolean;
  run(editor: PageEditor, folder: Folder): Promise<void>;
}

export const pageChecks: readonly PageCheck[] = [
  {
    name: "colours words, numbers, texts and comments apart",
    async run(editor, folder) {
      const path = folder.car("colours");
      await editor.open(path);
      await goTo(editor.page, placeOf(folder.text(path), /wheelbase/));
      const distinct = (pieces: readonly Coloured[]): boolean => {
        const kinds = [/^wheelbase/, /^2540$/, /^"Quill 7/, /^# ready to run/];
        const colours = kinds.map((pattern) => colourOf(pieces, pattern));
        return !colours.includes(undefined) && new Set(colours).size === colours.length;
      };
      await eventually("four different colours", () => colouredPieces(editor.page), distinct);
    },
  },
  {
    name: "underlines a finding, counts it in the status bar and explains it on its page",
    async run(editor, folder) {
      const path = folder.car("page");
      await editor.open(path);
      const finding = await moveEyeOff(editor, folder.text(path));
      await goTo(editor.page, {
        line: finding.line,
        column: placeOf(folder.text(path), /damper (roll-damper)/).column,
      });
      assert.ok((await squiggles(editor.page)) > 0);
      const status = editor.page.locator('.statusbar-item[id*="bellcrank.findings"]');
      await status.filter({ hasText: /Bellcrank: \d+ findings?/ }).waitFor();
      await runCommand(editor.page, "Bellcrank: Explain the Finding at the Cursor");
      await previewBody(editor.page).getByRole("heading", { name: "coupling" }).waitFor();
      await editor.picture("finding-page");
    },
  },
  {
    name: "draws an element's curves in its hover",
    async run(editor, folder) {
      const path = folder.car("plots");
      await editor.open(path);
      const text = folder.text(path);
      const front = placeOf(text, /axle (front)/);
      const isThere = (lenses: readonly string[]): boolean => lenses.length > 0;
      await eventually("the front axle's lens", () => editor.lenses(front), isThere);
      await goTo(editor.page, placeOf(text, /damper (roll-damper) for roll/));
      let widths: readonly number[] = [];
      await hoverText(editor.page, async () => {
        widths = await imageWidths(editor.page);
        await editor.picture("plots");
      });
      assert.equal(widths.length, 2);
      assert.ok(widths.every((width) => width > 0));
    },
  },
  {
    name: "follows a link on a finding's code to its page",
    async run(editor, folder) {
      const path = folder.car("link");
      await editor.open(path);
      const finding = await moveEyeOff(editor, folder.text(path));
      await goTo(editor.page, { line: finding.line, column: 1 });
      await editor.page.locator(".markers-panel .monaco-link", { hasText: "coupling" }).first().click();
      await previewBody(editor.page).getByRole("heading", { name: "coupling" }).waitFor();
    },
  },
  {
    name: "shows the car's rates as a page that follows the text",
    async run(editor, folder) {
      const path = folder.car("rates");
      await editor.open(path);
      const text = folder.text(path);
      await goTo(editor.page, placeOf(text, /wheelbase/));
      await runCommand(editor.page, "Bellcrank: Show Rates of This Car");
      const body = previewBody(editor.page);
      await body.getByText("heave rate").first().waitFor();
      const before = await body.innerText();
      await editor.picture("rates-page");
      await editor.page.locator(".editor-instance .view-lines").first().click();
      const rate = placeOf(text, /spring third for heave \{[^}]*?rate (\d+) N\/mm/);
      await editor.type(rate, rate.found.length, "95");
      await eventually(
        "other figures on the page",
        () => body.innerText(),
        (now) => now !== before,
      );
    },
  },
  {
    name: "lists expectations in the Testing view, and a run shows the one that is missed",
    async run(editor, folder) {
      const path = folder.car("expectations");
      await editor.open(path);
      const limit = placeOf(folder.text(path), /expect front\.heave-rate between (150) and/);
      await editor.type(limit, limit.found.length, "185");
      await showTests(editor.page);
      await showOnlyTestsOfFile(editor.page);
      await goTo(editor.page, limit);
      await runTestsOfFile(editor.page);
      const failed = (labels: readonly string[]): boolean =>
        labels.some((label) => /front\.heave-rate between 185 N\/mm.*failed/i.test(label)) &&
        labels.some((label) => /rear\.heave-rate between.*passed/i.test(label));
      const opened = async (): Promise<string[]> => {
        await openRows(editor.page);
        return testLabels(editor.page);
      };
      await eventually("one failed and one passed", opened, failed);
      await editor.picture("testing-view");
      await editor.page.keyboard.press("Control+Shift+E");
    },
  },
  {
    name: "goes on checking after the server was restarted",
    async run(editor, folder) {
      const path = folder.car("restart");
      await editor.open(path);
      const text = folder.text(path);
      await moveEyeOff(editor, text);
      await runCommand(editor.page, "Bellcrank: Restart the Language Server");
      const status = editor.page.locator('.statusbar-item[id*="bellcrank.findings"]');
      await status.filter({ hasText: /Bellcrank: \d+ findings?/ }).waitFor();
      // Only a server that was handed the open file again can see this.
      const height = placeOf(text, ROLL_LOW_HEIGHT);
      await editor.type(height, ROLL_LOW_OFF.length, height.found);
      await eventually(
        "no finding any more",
        () => editor.findings(),
        (all) => all.length === 0,
      );
    },
  },
];

function colourOf(pieces: readonly Coloured[], pattern: RegExp): string | undefined {
  return pieces.find(({ text }) => pattern.test(text))?.colour;
}
