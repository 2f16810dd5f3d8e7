/** What a user meets on a day with the car: a brace deleted by mistake, a branch switched below open files, sheets and drawings saved. */
import assert from "node:assert/strict";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, extname, join } from "node:path";
import type { Page } from "playwright-core";
import { eventually } from "../eventually.js";
import { placeOf } from "../places.js";
import { gitIn } from "./page/git.js";
import type { PageCheck } from "./page-checks.js";
import { showMechanism } from "./page/panel.js";
import { commandThatAsks, goTo } from "./page/workbench.js";

/** In the editor's own dialog for files, by the keyboard; it first offers a name of its own, and looks at what is typed for a while. */
async function saveAs(page: Page, path: string): Promise<Buffer> {
  const input = page.locator(".quick-input-widget input:visible");
  const offered = (): Promise<string> => input.inputValue({ timeout: 5_000 });
  await eventually("the name that is offered", offered, (text) => extname(text) === extname(path));
  await input.fill(path);
  const isWritten = async (): Promise<boolean> => {
    if (existsSync(path) && readFileSync(path).length > 0) return true;
    if (await input.isVisible()) await page.keyboard.press("Enter");
    return false;
  };
  await eventually(`the file ${path}`, isWritten, Boolean);
  return readFileSync(path);
}

const PNG_SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

export const tourPageChecks: readonly PageCheck[] = [
  {
    name: "points at the one line whose opening brace was deleted, and puts it back",
    async run(editor, folder) {
      const path = folder.car("brace");
      await editor.open(path);
      const brace = placeOf(folder.text(path), /spring third for heave( \{)/);
      await editor.type(brace, 2, " ");
      const found = await eventually(
        "one finding",
        () => editor.findings(),
        (all) => all.length === 1 && all[0]?.rule === "unclosed",
      );
      assert.equal(found[0]?.line, brace.line);
      await editor.applyFix({ line: brace.line, column: 8 }, "Open it with {");
      await eventually(
        "no finding",
        () => editor.findings(),
        (all) => all.length === 0,
      );
    },
  },
  {
    name: "checks anew what a switched branch brings, below an open set-up",
    needsGit: true,
    async run(editor, folder) {
      const path = folder.car("branch");
      const setup = join(dirname(path), "wet.crank");
      const git = gitIn(dirname(path));
      git("init", "--quiet", "--initial-branch=main", ".");
      git("add", ".");
      git("commit", "--quiet", "-m", "The car as it stands");
      git("switch", "--quiet", "--create", "renamed");
      writeFileSync(path, folder.text(path).replace("spring third for heave", "spring centre for heave"));
      git("commit", "--quiet", "--all", "-m", "Call it the centre spring");
      git("switch", "--quiet", "main");
      await editor.open(setup);
      await eventually(
        "no finding on the first branch",
        () => editor.findings(),
        (all) => all.length === 0,
      );
      git("switch", "--quiet", "renamed");
      const isMissed = (rule: string): boolean => rule === "override-without-target";
      await eventually(
        "the override that has lost its target",
        () => editor.findings(),
        (all) => all.some(({ rule }) => isMissed(rule)),
      );
      git("switch", "--quiet", "main");
      await eventually(
        "no finding once it is back",
        () => editor.findings(),
        (all) => all.length === 0,
      );
    },
  },
  {
    name: "saves the setup sheet where the dialog says",
    async run(editor, folder) {
      const path = folder.car("save-sheet");
      await editor.open(path.replace("quill.crank", "wet.crank"));
      await commandThatAsks(editor.page, "Bellcrank: Save the Setup Sheet");
      const sheet = await saveAs(editor.page, join(dirname(path), "wet sheet.html"));
      assert.match(sheet.toString("utf8"), /^<!doctype html>[\s\S]*quarrow-wet[\s\S]*<\/html>\s*$/i);
    },
  },
  {
    name: "saves the drawing of the mechanism, as SVG and as PNG",
    async run(editor, folder) {
      const path = folder.car("save-drawing");
      const { page } = editor;
      await editor.open(path);
      await goTo(page, placeOf(folder.text(path), /axle (front)/));
      const body = await showMechanism(page);
      await body.getByRole("button", { name: "Save the drawing as SVG" }).click();
      const svg = await saveAs(page, join(dirname(path), "front.svg"));
      assert.match(svg.toString("utf8"), /^(<\?xml[^>]*>\s*)?<svg [\s\S]*<\/svg>\s*$/);
      await body.getByRole("button", { name: "Save the drawing as PNG" }).click();
      const png = await saveAs(page, join(dirname(path), "front.png"));
      assert.deepEqual(png.subarray(0, PNG_SIGNATURE.length), PNG_SIGNATURE);
    },
  },
];
