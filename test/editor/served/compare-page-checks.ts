/** The comparison in the real editor: what is on its page, that it follows the text, and where its lines lead. */
import assert from "node:assert/strict";
import { dirname } from "node:path";
import type { Locator, Page } from "playwright-core";
import { eventually } from "../eventually.js";
import { placeOf } from "../places.js";
import type { PageCheck } from "./page-checks.js";
import { gitIn } from "./page/git.js";
import { previewBody } from "./page/preview.js";
import { commandWithChoice, runCommand } from "./page/workbench.js";

/** The sample's folder as a repository of its own with one commit. */
function commitAll(folder: string): void {
  const git = gitIn(folder);
  git("init", "--quiet", "--initial-branch=main", ".");
  git("add", "--all");
  git("commit", "--quiet", "--message=Bring the car");
  git("branch", "wet-work");
}

const rowOf = (page: Page, what: string): Locator =>
  previewBody(page).locator("tr", { has: page.locator(`td:text-is("${what}")`) });

const told = (row: Locator): Promise<string> => row.first().innerText();

/** In a browser the editor writes down every five seconds what it shows, since it cannot when it is closed. */
const STATE_WRITTEN_MS = 8_000;

export const comparePageChecks: readonly PageCheck[] = [
  {
    name: "compares with the last commit beside the text, follows it, and leads to the line",
    needsGit: true,
    async run(editor, folder) {
      const { page } = editor;
      const path = folder.car("compared");
      commitAll(dirname(path));
      await editor.open(path);
      const rate = placeOf(folder.text(path), /spring third for heave \{\s+rate (55)/);
      await editor.type(rate, 2, "70");
      await editor.type(placeOf(folder.text(path), /eye third \(0, 192, (456)\)/), 3, "468");
      await runCommand(page, "View: Toggle Primary Side Bar Visibility");
      await runCommand(page, "Bellcrank: Compare with the Last Commit");
      await eventually(
        "the changed rate",
        () => told(rowOf(page, "front.third.rate")),
        (row) => /55 N\/mm\s+70 N\/mm/.test(row),
      );
      const body = previewBody(page);
      assert.match(await body.locator("h1").innerText(), /^Front heave (rate|damping) \+\d/);
      assert.match(await told(rowOf(page, "front.rocker.third")), /\(0, 192, 456\) mm\s+\(0, 192, 468\) mm/);
      // What moved is dashed where it was, the front axle alone.
      assert.equal(await body.locator("figure svg").count(), 1);
      assert.ok((await body.locator('figure svg [stroke-dasharray="3 3"]').count()) > 5);
      assert.match(await told(rowOf(page, "heave rate (both wheels)")), /N\/mm.*\+/s);
      await editor.picture("compare");
      await runCommand(page, "View: Toggle Primary Side Bar Visibility");
      await editor.type(rate, 2, "66");
      await eventually(
        "what was typed",
        () => told(rowOf(page, "front.third.rate")),
        (row) => /55 N\/mm\s+66 N\/mm/.test(row),
      );
      // By the keyboard alone, as by the mouse.
      await rowOf(page, "front.third.rate").first().locator("a.place").press("Enter");
      const status = page.locator('.statusbar-item[id*="editor.selection"]');
      await status.filter({ hasText: `Ln ${rate.line}, Col 1` }).waitFor();
    },
  },
  {
    name: "compares with another set-up that is chosen",
    async run(editor, folder) {
      const { page } = editor;
      const wet = folder.car("chosen").replace(/quill\.crank$/, "wet.crank");
      await editor.open(wet);
      await commandWithChoice(page, "Bellcrank: Compare with Another Set-up", "quarrow-dry");
      await eventually(
        "both set-ups",
        () => previewBody(page).innerText(),
        (text) => text.includes("Was: dry.crank"),
      );
      assert.match(await told(rowOf(page, "front.third.rate")), /45 N\/mm/);
    },
  },
  {
    name: "compares with a branch",
    needsGit: true,
    async run(editor, folder) {
      const { page } = editor;
      const path = folder.car("branched");
      commitAll(dirname(path));
      const wet = path.replace(/quill\.crank$/, "wet.crank");
      await editor.open(wet);
      await commandWithChoice(page, "Bellcrank: Compare with a Branch", "wet-work");
      await eventually(
        "nothing new",
        () => previewBody(page).innerText(),
        (text) => text.includes("Nothing differs."),
      );
    },
  },
  {
    name: "shows a comparison again after the window was loaded anew",
    async run(editor, folder) {
      const { page } = editor;
      const path = folder.car("anew");
      const wet = path.replace(/quill\.crank$/, "wet.crank");
      await editor.open(wet);
      await commandWithChoice(page, "Bellcrank: Compare with Another Set-up", "quarrow-dry");
      await rowOf(page, "front.third.rate").first().waitFor();
      await page.waitForTimeout(STATE_WRITTEN_MS);
      await page.reload();
      await page.locator(".monaco-workbench").waitFor();
      await eventually(
        "the comparison that was there",
        () => told(rowOf(page, "front.third.rate")),
        (row) => /45 N\/mm/.test(row),
      );
    },
  },
];
