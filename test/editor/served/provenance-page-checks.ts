/** Where values come from, which set-ups change them, and what set-ups derive from, as lists and peeks of the real editor. */
import assert from "node:assert/strict";
import { dirname, join } from "node:path";
import type { Locator, Page } from "playwright-core";
import { eventually } from "../eventually.js";
import type { Folder } from "../folder.js";
import { placeOf } from "../places.js";
import type { PageCheck } from "./page-checks.js";
import { goTo } from "./page/workbench.js";

const rows = (page: Page): Locator => page.locator(".quick-input-list .monaco-list-row:visible");

const rowTexts = async (page: Page): Promise<readonly string[]> =>
  (await rows(page).allInnerTexts()).map((text) => text.replaceAll(/\s+/g, " ").trim());

/** A command that answers with a list of its own in the place of the palette. */
async function commandToList(page: Page, command: string, title: string | RegExp): Promise<void> {
  await page.locator(".quick-input-widget input:visible").waitFor({ state: "hidden" });
  await page.keyboard.press("F1");
  await page.locator(".quick-input-widget input:visible").fill(`>${command}`);
  await rows(page).filter({ hasText: command }).first().waitFor();
  // A mouse that stays where it clicked would bring up the tooltip of the list's input, over what stands beside it.
  await page.keyboard.press("Enter");
  await listTitled(page, title);
}

const listTitled = (page: Page, title: string | RegExp): Promise<void> =>
  page.locator(".quick-input-titlebar:visible", { hasText: title }).waitFor();

const activeTab = (page: Page, name: string): Promise<void> =>
  page.locator(".tab.active", { hasText: name }).first().waitFor();

const cursorOnLine = (page: Page, line: number): Promise<void> =>
  page
    .locator('.statusbar-item[id*="editor.selection"]')
    .filter({ hasText: new RegExp(`^Ln ${line}, `) })
    .waitFor();

/** The car and its set-up for rain. */
function carAndWet(folder: Folder, check: string): { readonly car: string; readonly wet: string } {
  const car = folder.car(check);
  return { car, wet: join(dirname(car), "wet.crank") };
}

const RATE = /spring third for heave \{\s+rate (55)/;
const WET_RATE = /front\.third\.rate (45)/;

export const provenancePageChecks: readonly PageCheck[] = [
  {
    name: "lists where a value comes from, shows each line behind the list and goes to it",
    async run(editor, folder) {
      const { page } = editor;
      const { car, wet } = carAndWet(folder, "whence");
      const [line, inWet] = [placeOf(folder.text(car), RATE).line, placeOf(folder.text(wet), WET_RATE)];
      await editor.open(wet);
      await goTo(page, inWet);
      await commandToList(
        page,
        "Bellcrank: Where Does This Value Come From",
        "front.third.rate of quarrow-wet: 45 N/mm",
      );
      const isWhole = (texts: readonly string[]): boolean => texts.length === 2;
      const [now = "", before = ""] = await eventually("both lines", () => rowTexts(page), isWhole);
      assert.match(
        now,
        new RegExp(`45 N/mm.*set-up quarrow-wet · wet\\.crank:${inWet.line}.*front\\.third\\.rate 45 N/mm`),
      );
      assert.match(before, new RegExp(`55 N/mm.*car quill · quill\\.crank:${line}.*rate 55 N/mm`));
      await page.keyboard.press("ArrowDown");
      await activeTab(page, "quill.crank");
      await editor.picture("where-from");
      // Escape leaves things as they were.
      await page.keyboard.press("Escape");
      await activeTab(page, "wet.crank");
      await cursorOnLine(page, inWet.line);
      await commandToList(page, "Bellcrank: Where Does This Value Come From", "front.third.rate of quarrow-wet");
      await page.keyboard.press("ArrowDown");
      await activeTab(page, "quill.crank");
      await page.keyboard.press("Enter");
      await cursorOnLine(page, line);
    },
  },
  {
    name: "offers all values of a set-up at its name, those that nobody wrote too",
    async run(editor, folder) {
      const { page } = editor;
      const { wet } = carAndWet(folder, "values");
      await editor.open(wet);
      await goTo(page, placeOf(folder.text(wet), /setup (quarrow-wet)/));
      await commandToList(page, "Bellcrank: Where Does This Value Come From", "Which value of quarrow-wet?");
      const first = await eventually(
        "the values",
        () => rowTexts(page),
        (texts) => texts.length > 3,
      );
      assert.match(first[0] ?? "", /front\.\S+ .*set-up quarrow-wet/);
      await editor.picture("values");
      await page.locator(".quick-input-widget input:visible").fill("front.third.gap");
      await rows(page).filter({ hasText: "front.third.gap" }).first().click();
      await listTitled(page, "front.third.gap of quarrow-wet");
      const steps = await eventually(
        "the default",
        () => rowTexts(page),
        (texts) => texts.length === 1,
      );
      assert.match(steps[0] ?? "", /the language, when nothing is written/);
      await page.keyboard.press("Escape");
    },
  },
  {
    name: "lists the set-ups that change a value of the car, and peeks at them",
    async run(editor, folder) {
      const { page } = editor;
      const { car } = carAndWet(folder, "changers");
      await editor.open(car);
      await goTo(page, placeOf(folder.text(car), RATE));
      await commandToList(page, "Bellcrank: Set-ups That Change This Value", "Set-ups that change front.third.rate");
      const both = await eventually(
        "both set-ups",
        () => rowTexts(page),
        (texts) => texts.length === 2,
      );
      const wet = both.find((text) => text.includes("quarrow-wet")) ?? "";
      assert.match(wet, /55 N\/mm → 45 N\/mm \(-10 N\/mm, -18\.2 %\).*wet\.crank:\d+.*front heave rate -\d/);
      await editor.picture("changers");
      await page.locator('.quick-input-titlebar:visible [aria-label="Show all in a peek view"]').press("Enter");
      const peeked = page.locator(".peekview-widget .monaco-list-row");
      await peeked.filter({ hasText: "wet.crank" }).first().waitFor();
      await editor.picture("changers-peek");
      await page.keyboard.press("Escape");
      await page.locator(".peekview-widget").waitFor({ state: "detached" });
    },
  },
  {
    name: "shows set-ups in the type hierarchy of their car",
    async run(editor, folder) {
      const { page } = editor;
      const { car } = carAndWet(folder, "hierarchy");
      await editor.open(car);
      await goTo(page, placeOf(folder.text(car), /car (quill)/));
      await page.keyboard.press("F1");
      await page.locator(".quick-input-widget input:visible").fill(">Peek Type Hierarchy");
      await rows(page).filter({ hasText: "Peek Type Hierarchy" }).first().click();
      const tree = page.locator(".peekview-widget .monaco-list-row");
      const names = async (): Promise<readonly string[]> => tree.allInnerTexts();
      const has = (texts: readonly string[], name: string): boolean => texts.some((text) => text.includes(name));
      await eventually("both set-ups", names, (texts) => has(texts, "quarrow-wet") && has(texts, "quarrow-dry"));
      await editor.picture("hierarchy");
      await page.keyboard.press("Escape");
      await page.locator(".peekview-widget").waitFor({ state: "detached" });
    },
  },
  {
    name: "links from a hover to where the value comes from",
    async run(editor, folder) {
      const { page } = editor;
      const { wet } = carAndWet(folder, "links");
      await editor.open(wet);
      await goTo(page, placeOf(folder.text(wet), WET_RATE));
      const link = page.locator(".monaco-hover:visible a", { hasText: "Where this comes from" });
      const showHover = async (): Promise<boolean> => {
        if (await link.isVisible()) return true;
        await page.keyboard.press("Control+K");
        await page.keyboard.press("Control+I");
        return link.isVisible();
      };
      await eventually("the link in the hover", showHover, (isThere) => isThere);
      await editor.picture("hover-link");
      await link.click();
      await listTitled(page, "front.third.rate of quarrow-wet: 45 N/mm");
      await page.keyboard.press("Escape");
    },
  },
];
