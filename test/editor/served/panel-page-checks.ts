/** The mechanism panel in the real editor: it moves, follows the text, changes the text, and can be used without a pointer. */
import assert from "node:assert/strict";
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Locator, Page } from "playwright-core";
import { eventually } from "../eventually.js";
import type { Folder } from "../folder.js";
import { placeOf } from "../places.js";
import type { PageCheck } from "./page-checks.js";
import type { PageEditor } from "./page-editor.js";
import { eyePlace, heaveRate, said, showMechanism, slide } from "./page/panel.js";
import { goTo, runCommand } from "./page/workbench.js";

const ROLL_LOW = "front.left.rocker.roll-low";
const ROLL_LOW_POINT = /eye roll-low \((45, 175, 348)\) mm/;
const THIRD_RATE = /spring third for heave \{[^}]*?rate (\d+) N\/mm/;

interface Opened {
  readonly page: Page;
  readonly path: string;
  readonly text: string;
  readonly body: Locator;
}

async function opened(editor: PageEditor, folder: Folder, check: string): Promise<Opened> {
  const { page } = editor;
  const path = folder.car(check);
  await editor.open(path);
  const text = folder.text(path);
  await goTo(page, placeOf(text, /axle (front)/));
  return { page, path, text, body: await showMechanism(page) };
}

async function closeUp(body: Locator): Promise<void> {
  await body.getByRole("button", { name: "Close-up" }).click();
  await body.locator(`[data-eye="${ROLL_LOW}"]`).first().waitFor();
}

/** Into the text again, without a click that would move the cursor; the command's own box gives the focus back late. */
async function intoText(page: Page): Promise<void> {
  await runCommand(page, "View: Focus First Editor Group");
  await page.locator(".monaco-editor.focused").first().waitFor();
}

/** The key for the second group of editors; the palette's command is called otherwise from version to version. */
async function intoPanel(page: Page, body: Locator): Promise<void> {
  const pressed = async (): Promise<boolean> => {
    // A key that comes while the focus is on its way elsewhere is lost.
    if (!(await isFocused(body))) await page.keyboard.press("Control+2");
    return isFocused(body);
  };
  await eventually("the panel with the keyboard's focus", pressed, (focused) => focused);
}

const isFocused = (body: Locator): Promise<boolean> => body.evaluate((found) => found.ownerDocument.hasFocus());

async function hasFocus(body: Locator): Promise<void> {
  await eventually(
    "the panel with the keyboard's focus again",
    () => isFocused(body),
    (focused) => focused,
  );
}

const MOST_STOPS = 60;
/** The editor writes down what is open a while after it has changed. */
const STATE_WRITTEN_MS = 8_000;

/** By the tab key alone. */
async function tabTo(page: Page, target: Locator): Promise<void> {
  const has = (): Promise<boolean> => target.evaluate((found) => found.ownerDocument.activeElement === found);
  for (let stops = 0; !(await has()); stops++) {
    assert.ok(stops < MOST_STOPS, "the tab key leads there");
    await page.keyboard.press("Tab");
  }
}

async function savedText(
  editor: PageEditor,
  folder: Folder,
  path: string,
  holds: (text: string) => boolean,
): Promise<void> {
  await intoText(editor.page);
  const save = async (): Promise<string> => {
    await editor.save();
    return folder.text(path);
  };
  await eventually("the text on disk", save, holds);
}

/** How long the editor may take to see a file that has changed before it is changed again. */
const SEEN_MS = 3_000;

/** By the folder's own settings, which the editor follows: not yet, at times, where its window was only just loaded. */
async function useTheme(folder: Folder, theme: string, body: Locator, name: string): Promise<void> {
  const settings = join(folder.path, ".vscode");
  mkdirSync(settings, { recursive: true });
  let written = 0;
  const asked = async (): Promise<string> => {
    if (Date.now() - written > SEEN_MS) {
      writeFileSync(join(settings, "settings.json"), JSON.stringify({ "workbench.colorTheme": theme }));
      written = Date.now();
    }
    return (await body.getAttribute("class")) ?? "";
  };
  await eventually(`the theme ${theme}`, asked, (now) => now.includes(name));
}

/** Tall enough for all that the panel shows; text and panel without what is around them. */
async function pictureForReadme(page: Page): Promise<void> {
  const usual = page.viewportSize();
  await page.setViewportSize({ width: 1500, height: 1190 });
  const editors = await page.locator(".part.editor").boundingBox();
  assert.ok(editors);
  await page.screenshot({ path: "dist/screenshots/panel-for-readme.png", clip: editors });
  if (usual !== null) await page.setViewportSize(usual);
}

type Place = readonly [number, number];
const farFrom = ([x, y]: Place, [nx, ny]: Place): number => Math.hypot(nx - x, ny - y);
const isDrawnElsewhere = (place: Place) => (now: Place) => farFrom(place, now) > 3;
const isDrawnAt = (place: Place) => (now: Place) => farFrom(place, now) < 0.5;

async function dragBy(page: Page, eye: Locator, px: readonly [number, number]): Promise<void> {
  const box = await eye.locator(".dot").first().boundingBox();
  assert.ok(box);
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + px[0] / 2, y + px[1] / 2);
  await page.mouse.move(x + px[0], y + px[1]);
}

export const panelPageChecks: readonly PageCheck[] = [
  {
    name: "draws the mechanism beside the text, and a slider moves what is drawn",
    async run(editor, folder) {
      const { page, body } = await opened(editor, folder, "panel");
      await closeUp(body);
      await editor.picture("panel");
      const before = await eyePlace(body, ROLL_LOW);
      await slide(body, "roll", 1.2);
      await eventually("an eye that has moved", () => eyePlace(body, ROLL_LOW), isDrawnElsewhere(before));
      const damper = body.locator('[data-row="front.roll-damper"]');
      assert.match((await damper.getAttribute("aria-label")) ?? "", /(compressed|extended)/);
      await editor.picture("panel-roll");
      await pictureForReadme(page);
      await slide(body, "roll", 0);
      await slide(body, "heave", 20);
      await eventually(
        "a roll damper that is only carried along",
        async () => (await damper.getAttribute("aria-label")) ?? "",
        (label) => /not worked|0\.\d mm/.test(label) && /ends move \d/.test(label),
      );
      await editor.picture("panel-heave");
    },
  },
  {
    name: "follows what is typed, and keeps the last good drawing while the text cannot be read",
    async run(editor, folder) {
      const { page, text, body } = await opened(editor, folder, "panel-typing");
      const before = await heaveRate(body);
      const rate = placeOf(text, THIRD_RATE);
      await intoText(page);
      await editor.type(rate, rate.found.length, "95");
      await eventually(
        "another heave rate",
        () => heaveRate(body),
        (now) => now !== before && /N\/mm/.test(now),
      );
      await eventually(
        "the change in words",
        () => said(body),
        (now) => now.includes("heave rate"),
      );
      await editor.type({ line: 1, column: 1 }, 0, "car {{ ");
      await body.locator("[data-note]").waitFor();
      assert.equal(await body.locator("svg[data-stage] .tyre").count(), 2);
      await editor.picture("panel-broken");
    },
  },
  {
    name: "changes the text where an eye is dragged, as one step that can be undone",
    async run(editor, folder) {
      const { page, path, text, body } = await opened(editor, folder, "panel-drag");
      await closeUp(body);
      const eye = body.locator(`[data-eye="${ROLL_LOW}"]`).first();
      await dragBy(page, eye, [0, -14]);
      await body.locator('[data-leak="front.roll-damper"]').waitFor();
      await editor.picture("panel-dragging");
      assert.equal(folder.text(path), text);
      await page.mouse.up();
      await savedText(editor, folder, path, (now) => now !== text && !ROLL_LOW_POINT.test(now));
      await editor.picture("panel-dragged");
      await page.keyboard.press("Control+Z");
      await savedText(editor, folder, path, (now) => now === text);
      await dragBy(page, eye, [0, -14]);
      await page.keyboard.press("Escape");
      await page.mouse.up();
      await intoText(page);
      await savedText(editor, folder, path, (now) => now === text);
    },
  },
  {
    name: "goes to an element's line where it is clicked",
    async run(editor, folder) {
      const { page, text, body } = await opened(editor, folder, "panel-line");
      await body.locator('[data-row="front.roll-damper"]').click();
      const { line } = placeOf(text, /(damper roll-damper) for roll/);
      await page
        .locator('.statusbar-item[id*="editor.selection"]')
        .filter({ hasText: `Ln ${line},` })
        .waitFor();
    },
  },
  {
    name: "shows the curves of the car",
    async run(editor, folder) {
      const { body } = await opened(editor, folder, "panel-curves");
      await body.getByRole("tab", { name: "Curves" }).click();
      for (const curve of ["camber", "roll-centre", "height-speed", "balance-lateral"])
        await body.locator(`[data-curve="${curve}"] .curve-line`).first().waitFor();
      await editor.picture("panel-curves");
    },
  },
  {
    name: "moves the car and an eye from the keyboard alone",
    async run(editor, folder) {
      const { page, path, text, body } = await opened(editor, folder, "panel-keys");
      await intoPanel(page, body);
      await page.keyboard.press("Tab");
      await page.keyboard.press("c");
      const eye = body.locator(`[data-eye="${ROLL_LOW}"]`).first();
      await body.getByRole("button", { name: "Close-up", pressed: true }).waitFor();
      const before = await eyePlace(body, ROLL_LOW);
      for (let pressed = 0; pressed < 6; pressed++) await page.keyboard.press("h");
      await eventually("an eye that has moved", () => eyePlace(body, ROLL_LOW), isDrawnElsewhere(before));
      await page.keyboard.press("0");
      await eventually("an eye at rest again", () => eyePlace(body, ROLL_LOW), isDrawnAt(before));
      const atRest = await eyePlace(body, ROLL_LOW);
      await tabTo(page, eye);
      await page.keyboard.press("ArrowUp");
      await savedText(editor, folder, path, (now) => /eye roll-low \(45, 175, 349\) mm/.test(now));
      await intoPanel(page, body);
      await tabTo(page, eye);
      await page.keyboard.press("Control+Z");
      await eventually("the eye where it was", () => eyePlace(body, ROLL_LOW), isDrawnAt(atRest));
      await hasFocus(body);
      await savedText(editor, folder, path, (now) => now === text);
    },
  },
  {
    name: "is there again after the window was loaded anew, and in high contrast",
    async run(editor, folder) {
      const { page, body } = await opened(editor, folder, "panel-reload");
      await slide(body, "roll", 1);
      await eventually(
        "a pose that is kept",
        () => body.locator("#motion-roll").inputValue(),
        (value) => Number(value) > 0.9,
      );
      await useTheme(folder, "Default Dark Modern", body, "vscode-dark");
      await editor.picture("panel-dark");
      await page.waitForTimeout(STATE_WRITTEN_MS);
      await page.reload();
      const back = page.frameLocator("iframe.webview.ready").last().frameLocator("#active-frame").locator("body");
      await back.locator("svg[data-stage]").first().waitFor({ timeout: 60_000 });
      assert.ok(Number(await back.locator("#motion-roll").inputValue()) > 0.9);
      await useTheme(folder, "Default High Contrast", back, "vscode-high-contrast");
      await editor.picture("panel-contrast");
      await useTheme(folder, "Default Light Modern", back, "vscode-light");
    },
  },
];
