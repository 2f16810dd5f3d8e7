/** Findings of files that nobody has open, each told once; left and right typed as one. */
import assert from "node:assert/strict";
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { ShownFinding } from "../editor-under-test.js";
import { eventually } from "../eventually.js";
import type { Folder } from "../folder.js";
import type { PageCheck } from "./page-checks.js";
import type { PageEditor } from "./page-editor.js";
import { goTo } from "./page/workbench.js";

function setScope(folder: Folder, scope: "openFiles" | "allFiles"): void {
  mkdirSync(join(folder.path, ".vscode"), { recursive: true });
  const path = join(folder.path, ".vscode", "settings.json");
  writeFileSync(path, JSON.stringify({ "bellcrank.findings.scope": scope }));
}

/** The mistake is in this line alone, so that other checks' files cannot be meant. */
const typo = 'use "quill.crank"\n\nsetup typo from quill {\n  front.plover-typo.rate 45 N/mm\n}\n';
const isTypo = ({ message }: ShownFinding): boolean => message.includes("plover-typo");

async function typos(editor: PageEditor, what: string, count: number): Promise<void> {
  await eventually(
    what,
    () => editor.findings(),
    (all) => all.filter(isTypo).length === count,
  );
}

const mirrored = `use "quill.crank"

setup lopsided from quill {
  front.left.rocker.side (-45, 208, 464) mm
  front.right.rocker.side (-45, -208, 464) mm
}
`;

export const allFilesPageChecks: readonly PageCheck[] = [
  {
    name: "tells of files that nobody has open where the setting asks for it, and once of each",
    async run(editor, folder) {
      folder.car("all");
      const path = join(folder.path, "all", "typo.crank");
      writeFileSync(path, typo);
      await editor.open(join(folder.path, "all", "wet.crank"));
      try {
        setScope(folder, "allFiles");
        await typos(editor, "the finding of the closed file", 1);
        await editor.picture("all-files");
        await editor.open(path);
        await editor.page.locator('.statusbar-item[id*="bellcrank.findings"]', { hasText: "1 finding" }).waitFor();
        await typos(editor, "the finding of the open file, once", 1);
        await editor.type({ line: 4, column: 33 }, 0, " # half");
        await typos(editor, "the finding while something is typed, once", 1);
        await editor.close();
        await typos(editor, "the finding of the file that was closed", 1);
        rmSync(path);
        await typos(editor, "no finding of a file that is deleted", 0);
        writeFileSync(path, typo);
        await typos(editor, "the finding of the file that is back", 1);
        setScope(folder, "openFiles");
        await typos(editor, "no finding of a closed file any more", 0);
      } finally {
        setScope(folder, "openFiles");
        rmSync(join(folder.path, "all"), { recursive: true });
      }
    },
  },
  {
    name: "types left and right as one where they mirror each other",
    async run(editor, folder) {
      folder.car("mirrored");
      const path = join(folder.path, "mirrored", "lopsided.crank");
      writeFileSync(path, mirrored);
      await editor.open(path);
      await goTo(editor.page, { line: 5, column: 37 });
      await editor.page.locator(".linked-editing-decoration").first().waitFor();
      await editor.page.keyboard.press("Backspace");
      await editor.page.keyboard.type("9");
      await editor.picture("linked-editing");
      await editor.save();
      assert.equal(folder.text(path), mirrored.replaceAll("208", "209"));
    },
  },
];
