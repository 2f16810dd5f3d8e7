/**
 * What a person can see and do in a browser with no server behind it: all of it is computed by the worker in the page. The car is
 * the example that the extension copies into the browser's memory; what is typed there is never saved, but by the last checks.
 */
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import type { Locator, Page } from "playwright-core";
import { mendCoupling, moveEyeOff } from "../checks.js";
import { eventually } from "../eventually.js";
import { placeOf } from "../places.js";
import { eyePlace, showMechanism, slide } from "../served/page/panel.js";
import { previewBody } from "../served/page/preview.js";
import { openRows, showTests, testLabels } from "../served/page/testing.js";
import { commandWithChoice, goTo, runCommand } from "../served/page/workbench.js";
import type { PageEditor } from "../served/page-editor.js";

export interface SiteCheck {
  readonly name: string;
  run(editor: PageEditor): Promise<void>;
}

const sample = (name: string): string => readFileSync(`samples/quill/${name}`, "utf8");
const ROLL_LOW = "front.left.rocker.roll-low";
const EXAMPLE = "quill-example";
const FRONT_AXLE = /axle (front)/;

const inExplorer = (page: Page, name: string): Locator =>
  page.locator(".explorer-folders-view .monaco-list-row", { hasText: name }).first();

async function unfold(page: Page): Promise<void> {
  const folder = inExplorer(page, EXAMPLE);
  await folder.waitFor();
  if ((await folder.getAttribute("aria-expanded")) === "false") await folder.click();
  await inExplorer(page, "quill.crank").waitFor();
}

/** With no search behind it, the editor finds no file by its name: through the explorer, as a person would. */
async function openInExplorer(editor: PageEditor, name: string): Promise<string> {
  const { page } = editor;
  await editor.close();
  await unfold(page);
  await inExplorer(page, name).dblclick();
  await page.locator(".tab.active", { hasText: name }).waitFor();
  await page.locator(".editor-instance .view-line").first().waitFor();
  return sample(name);
}

/** @param answer to the question whether the lines that name the file may follow it; undefined where none names it */
async function renameInExplorer(page: Page, from: string, to: string, answer?: "OK" | "Skip Changes"): Promise<void> {
  await inExplorer(page, from).click();
  await page.keyboard.press("F2");
  const box = page.locator(".explorer-folders-view input:visible");
  await box.fill(to);
  await page.keyboard.press("Enter");
  if (answer !== undefined) await page.getByRole("dialog").getByRole("button", { name: answer, exact: true }).click();
  await inExplorer(page, to).waitFor();
}

const rates = (lenses: readonly string[]): boolean => lenses.some((lens) => /^heave [\d.]+ N\/mm/.test(lens));

export const siteChecks: readonly SiteCheck[] = [
  {
    name: "copies the example into the browser's memory and computes its rates there",
    async run(editor) {
      const { page } = editor;
      await runCommand(page, "Bellcrank: Open Example");
      await page.locator(".tab.active", { hasText: "quill.crank" }).waitFor();
      await unfold(page);
      for (const name of ["dry.crank", "parts.crank", "quill.crank", "wet.crank"])
        await inExplorer(page, name).waitFor();
      const axle = placeOf(sample("quill.crank"), FRONT_AXLE);
      await eventually("the front axle's lens", () => editor.lenses(axle), rates);
      assert.deepEqual(await editor.findings(), []);
      const rate = placeOf(sample("quill.crank"), /spring third for heave \{[^}]*?rate (\d+) N\/mm/);
      const isHint = (hint: string): boolean => /→ [\d.]+ N\/mm in heave/.test(hint);
      await eventually(
        "the hint behind a rate",
        () => editor.inlays(rate),
        (hints) => hints.some(isHint),
      );
      const hover = await editor.hover(placeOf(sample("quill.crank"), /damper (roll-damper) for roll/));
      assert.match(hover, /front\.roll-damper[\s\S]*leak/);
      await editor.picture("site-example");
    },
  },
  {
    name: "flags a coupling while it is typed, and mends it with the computed fix",
    async run(editor) {
      const text = await openInExplorer(editor, "quill.crank");
      const finding = await moveEyeOff(editor, text);
      const at = { line: finding.line, column: placeOf(text, /damper (roll-damper) for roll/).column };
      await editor.picture("site-finding");
      await mendCoupling(editor, at);
      assert.deepEqual(await editor.findings(), []);
    },
  },
  {
    name: "draws the mechanism, and a slider moves what is drawn",
    async run(editor) {
      const { page } = editor;
      const text = await openInExplorer(editor, "quill.crank");
      await goTo(page, placeOf(text, FRONT_AXLE));
      const body = await showMechanism(page);
      await body.getByRole("button", { name: "Close-up" }).click();
      await body.locator(`[data-eye="${ROLL_LOW}"]`).first().waitFor();
      const [x, y] = await eyePlace(body, ROLL_LOW);
      await slide(body, "roll", 1.2);
      const hasMoved = ([nx, ny]: readonly [number, number]): boolean => Math.hypot(nx - x, ny - y) > 3;
      await eventually("an eye that has moved", () => eyePlace(body, ROLL_LOW), hasMoved);
      await editor.picture("site-panel");
    },
  },
  {
    name: "compares two set-ups, found without a search, and says that there is no git",
    async run(editor) {
      const { page } = editor;
      await openInExplorer(editor, "wet.crank");
      await commandWithChoice(page, "Bellcrank: Compare with Another Set-up", "quarrow-dry");
      await eventually(
        "both set-ups",
        () => previewBody(page).innerText(),
        (text) => text.includes("Was: dry.crank") && /front\.third\.rate[\s\S]*N\/mm/.test(text),
      );
      await editor.picture("site-compare");
      await openInExplorer(editor, "wet.crank");
      await runCommand(page, "Bellcrank: Compare with the Last Commit");
      const told = page.locator(".notification-toast", { hasText: "here it runs in a browser" });
      await told.waitFor();
      await runCommand(page, "Notifications: Clear All Notifications");
      await told.waitFor({ state: "hidden" });
    },
  },
  {
    name: "lists the expectations of every file in the Testing view",
    async run(editor) {
      const { page } = editor;
      await openInExplorer(editor, "quill.crank");
      await showTests(page);
      await openRows(page);
      const isExpectation = (label: string): boolean => /heave-rate between .* N\/mm/.test(label);
      const labels = await eventually(
        "the expectations",
        () => testLabels(page),
        (all) => all.some(isExpectation),
      );
      assert.ok(
        labels.some((label) => /wet\.crank/.test(label)),
        labels.join("\n"),
      );
      await runCommand(page, "View: Show Explorer");
    },
  },
  {
    name: "shows the setup sheet beside the text",
    async run(editor) {
      const { page } = editor;
      await openInExplorer(editor, "wet.crank");
      await runCommand(page, "Bellcrank: Show the Setup Sheet");
      await previewBody(page).getByRole("heading", { name: "On the flat patch" }).waitFor();
      assert.equal(await previewBody(page).locator("h1").innerText(), "quarrow-wet");
    },
  },
  {
    name: "finds a used file that was renamed missing, nothing once it is back, and lets its users follow it",
    async run(editor) {
      const { page } = editor;
      await openInExplorer(editor, "quill.crank");
      await renameInExplorer(page, "parts.crank", "shelf.crank", "Skip Changes");
      await eventually(
        "a missing file",
        () => editor.findings(),
        (all) => all.some(({ rule }) => rule === "file-not-found"),
      );
      await renameInExplorer(page, "shelf.crank", "parts.crank");
      const isClean = (all: readonly unknown[]): boolean => all.length === 0;
      await eventually("no finding any more", () => editor.findings(), isClean);
      await renameInExplorer(page, "parts.crank", "shelf.crank", "OK");
      await runCommand(page, "File: Save All");
      await openInExplorer(editor, "quill.crank");
      await goTo(page, { line: 2, column: 1 });
      await page.locator(".view-line", { hasText: "shelf.crank" }).waitFor();
      await eventually("no finding in who follows", () => editor.findings(), isClean);
    },
  },
];
