/** The real-editor suite: the packaged extension in a real VS Code, desktop or served. */
import { resolve } from "node:path";
import { afterAll, beforeAll, describe, it, onTestFailed } from "vitest";
import { checks } from "./checks.js";
import { chooseEditor } from "./choose.js";
import type { Result } from "./desktop/results.js";
import { runInDesktop } from "./desktop/run.js";
import { Folder } from "./folder.js";
import { packagedExtension } from "./packaged-extension.js";
import { allFilesPageChecks } from "./served/all-files-page-checks.js";
import { browserPageChecks } from "./served/browser-page-checks.js";
import { comparePageChecks } from "./served/compare-page-checks.js";
import { lensPageChecks } from "./served/lens-page-checks.js";
import { movePageChecks } from "./served/move-page-checks.js";
import { panelPageChecks } from "./served/panel-page-checks.js";
import { provenancePageChecks } from "./served/provenance-page-checks.js";
import { firstFilePageChecks } from "./served/first-file-page-checks.js";
import { PageEditor } from "./served/page-editor.js";
import { type PageCheck, pageChecks } from "./served/page-checks.js";
import { refactorPageChecks } from "./served/refactor-page-checks.js";
import { startPageChecks } from "./served/start-page-checks.js";
import { tourPageChecks } from "./served/tour-page-checks.js";
import { walkthroughPageChecks } from "./served/walkthrough-page-checks.js";
import { type Running, startServed } from "./served/run.js";
import type { ExtensionHost } from "./served/settings.js";

const choice = await chooseEditor();
console.log(`Editor suite in the ${choice.editor} VS Code: ${choice.why}.`);

const servedChecks: readonly PageCheck[] = [
  ...checks,
  ...pageChecks,
  ...comparePageChecks,
  ...lensPageChecks,
  ...movePageChecks,
  ...panelPageChecks,
  ...provenancePageChecks,
  ...refactorPageChecks,
  ...startPageChecks,
  ...tourPageChecks,
  ...walkthroughPageChecks,
  ...firstFilePageChecks,
  ...allFilesPageChecks,
];

function servedSuite(host: ExtensionHost, asked: readonly PageCheck[]): void {
  let running: Running;
  let editor: PageEditor;
  const folder = new Folder(resolve("samples/quill"));

  beforeAll(async () => {
    folder.car("quill");
    running = await startServed(packagedExtension(), folder.path, host);
    editor = new PageEditor(running.page);
  });
  afterAll(async () => {
    await running.stop();
    folder.remove();
  });

  for (const check of asked) {
    it(check.name, async () => {
      onTestFailed(() => editor.picture(`failed ${check.name.slice(0, 40)}`));
      await check.run(editor, folder);
    });
  }
}

function desktopSuite(executable: string): void {
  let results: readonly Result[] = [];

  beforeAll(async () => {
    results = await runInDesktop(executable, packagedExtension());
  });

  for (const check of checks) {
    it(check.name, ({ expect }) => {
      const result = results.find(({ name }) => name === check.name);
      expect(result, "the check was run").toBeDefined();
      expect(result?.error).toBeUndefined();
    });
  }
}

if (choice.editor === "served") {
  describe("in the web-served VS Code", () => servedSuite("server", servedChecks));
  const inBrowser = [...servedChecks.filter(({ needsGit }) => needsGit !== true), ...browserPageChecks];
  describe("in the web-served VS Code, with the extension in the browser", () => servedSuite("browser", inBrowser));
} else describe("in the desktop VS Code", () => desktopSuite(choice.executable));
