/** What is otherwise where the extension runs in the browser: there is no git, and it says so. */
import type { PageCheck } from "./page-checks.js";
import { runCommand } from "./page/workbench.js";

export const browserPageChecks: readonly PageCheck[] = [
  {
    name: "says that there is no git where a comparison with the last commit is asked for",
    async run(editor, folder) {
      const { page } = editor;
      await editor.open(folder.car("no-git"));
      await runCommand(page, "Bellcrank: Compare with the Last Commit");
      await page.locator(".notification-toast", { hasText: "here it runs in a browser" }).waitFor();
      await editor.picture("no-git");
      await page.keyboard.press("Escape");
    },
  },
];
