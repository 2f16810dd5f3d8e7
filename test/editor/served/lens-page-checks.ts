/** The lens above a set-up in the real editor: what it says, that it follows the text, and that a click compares. */
import assert from "node:assert/strict";
import type { Locator, Page } from "playwright-core";
import { eventually } from "../eventually.js";
import { placeOf } from "../places.js";
import type { PageCheck } from "./page-checks.js";
import { previewBody } from "./page/preview.js";
import { lensTexts } from "./page/text.js";
import { goTo, runCommand } from "./page/workbench.js";

const lensOf = (page: Page): Locator => page.locator(".codelens-decoration a", { hasText: /^\d+ changes: / });

const differenceOf = async (page: Page): Promise<string> =>
  (await lensTexts(page)).find((text) => /^\d+ changes: /.test(text)) ?? "";

const told = (page: Page, path: string): Promise<string> =>
  previewBody(page)
    .locator("tr", { has: page.locator(`td:text-is("${path}")`) })
    .first()
    .innerText();

const isBaseAndSetup = (rate: string) => (row: string) => new RegExp(`55 N/mm\\s+${rate} N/mm`).test(row);

const NAME = /setup (quarrow-wet)/;
const RATE = /front\.third\.rate (45)/;

export const lensPageChecks: readonly PageCheck[] = [
  {
    name: "says above a set-up how it differs, follows what is typed, and compares at a click",
    async run(editor, folder) {
      const { page } = editor;
      const wet = folder.car("differs").replace(/quill\.crank$/, "wet.crank");
      await editor.open(wet);
      await goTo(page, placeOf(folder.text(wet), NAME));
      const says = (what: string): Promise<string> =>
        eventually(
          `a lens with ${what}`,
          () => differenceOf(page),
          (text) => text.includes(what),
        );
      assert.match(await says("55 → 45 N/mm"), /^12 changes: front third rate 55 → 45 N\/mm, front corner-bar TB-110/);
      await editor.picture("difference-lens");
      await editor.type(placeOf(folder.text(wet), RATE), 2, "47");
      await says("55 → 47 N/mm");
      await lensOf(page).first().click();
      await eventually("the comparison", () => told(page, "front.third.rate"), isBaseAndSetup("47"));
      await editor.picture("difference-lens-compared");
    },
  },
  {
    name: "compares a set-up with what it derives from by the keyboard alone",
    async run(editor, folder) {
      const { page } = editor;
      const wet = folder.car("derives").replace(/quill\.crank$/, "wet.crank");
      await editor.open(wet);
      await goTo(page, placeOf(folder.text(wet), RATE));
      await runCommand(page, "Bellcrank: Compare with What It Derives From");
      await eventually("the comparison", () => told(page, "front.third.rate"), isBaseAndSetup("45"));
    },
  },
];
