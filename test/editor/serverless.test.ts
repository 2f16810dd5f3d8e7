/** The packaged extension in VS Code for the browser with no server behind it: files over HTTP, the folder in memory. */
import { afterAll, beforeAll, describe, expect, it, onTestFailed } from "vitest";
import { chooseEditor } from "./choose.js";
import { packagedExtension } from "./packaged-extension.js";
import { siteChecks } from "./serverless/checks.js";
import { type Running, startSite } from "./serverless/run.js";
import { PageEditor } from "./served/page-editor.js";

const { editor: chosen } = await chooseEditor();

describe.runIf(chosen === "served")("in VS Code as a site of files, with no server", () => {
  let running: Running;
  let editor: PageEditor;

  beforeAll(async () => {
    running = await startSite(packagedExtension());
    editor = new PageEditor(running.page);
  });
  afterAll(() => running.stop());

  for (const check of siteChecks) {
    it(check.name, async () => {
      onTestFailed(() => editor.picture(`failed site ${check.name.slice(0, 40)}`));
      await check.run(editor);
    });
  }

  it("opened no connection to any server", () => {
    expect(running.sockets).toEqual([]);
  });
});
