/** What a folder without a car and a file without a text offer, and a task that checks what is not open. */
import assert from "node:assert/strict";
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { eventually } from "../eventually.js";
import type { PageCheck } from "./page-checks.js";
import { commandWithChoice } from "./page/workbench.js";

const START = "Start a car here";

/** One mistake in a file that nobody opens, and a task as the README shows it, with this build's command. */
function writeTask(folder: string): void {
  writeFileSync(
    join(folder, "task", "task-typo.crank"),
    'use "quill.crank"\n\nsetup task-typo from quill {\n  front.thrid.rate 45 N/mm\n}\n',
  );
  mkdirSync(join(folder, ".vscode"), { recursive: true });
  const check = {
    label: "check set-ups",
    type: "process",
    command: process.execPath,
    args: [resolve("dist/cli.js"), "check", "task"],
    problemMatcher: "$bellcrank-check",
  };
  writeFileSync(join(folder, ".vscode", "tasks.json"), JSON.stringify({ version: "2.0.0", tasks: [check] }));
}

export const firstFilePageChecks: readonly PageCheck[] = [
  {
    name: "offers a car above an empty file, and writes one that has no findings",
    async run(editor, folder) {
      const { page } = editor;
      const path = join(folder.path, "first", "robin.crank");
      mkdirSync(join(folder.path, "first"));
      writeFileSync(path, "");
      await editor.close();
      await editor.open(path);
      await page.locator(".codelens-decoration a", { hasText: START }).click();
      const save = async (): Promise<string> => {
        await editor.save();
        return folder.text(path);
      };
      const text = await eventually("a car on disk", save, (now) => now !== "");
      assert.match(text, /^car robin "robin" \{$/m);
      await eventually(
        "its rates, and no offer any more",
        () => editor.lenses({ line: 1, column: 1 }),
        (lenses) => !lenses.includes(START),
      );
      assert.deepEqual(await editor.findings(), []);
      await editor.picture("first-file");
    },
  },
  {
    name: "fills the list of problems from a task that runs bellcrank check",
    async run(editor, folder) {
      const { page } = editor;
      folder.car("task");
      writeTask(folder.path);
      await editor.close();
      try {
        await commandWithChoice(page, "Tasks: Run Task", "check set-ups");
        const found = await eventually(
          "the finding of the file that is closed",
          () => editor.findings(),
          (all) => all.some(({ rule }) => rule === "override-without-target"),
        );
        const typo = found.find(({ rule }) => rule === "override-without-target");
        assert.equal(typo?.severity, "error");
        assert.equal(typo?.line, 4);
        assert.match(typo?.message ?? "", /third/);
        await editor.picture("task");
        // Open, it is the server that tells of it, and it is told once.
        await editor.open(join(folder.path, "task", "task-typo.crank"));
        await page.locator('.statusbar-item[id*="bellcrank.findings"]', { hasText: "Bellcrank: 1 finding" }).waitFor();
        assert.equal((await editor.findings()).filter(({ rule }) => rule === "override-without-target").length, 1);
      } finally {
        rmSync(join(folder.path, "task"), { recursive: true });
      }
    },
  },
];
