/** Files called otherwise, over the wire: the editor asks beforehand, and the lines that lead to them come back as edits. */
import { renameSync } from "node:fs";
import { join } from "node:path";
import type { WorkspaceEdit } from "vscode-languageserver/node";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Club, edited, startClub } from "./club.js";

describe("moved files over the wire", () => {
  let club: Club;
  beforeAll(async () => {
    club = await startClub();
    await club.open("wet.crank");
  });
  afterAll(async () => {
    expect(await club.close()).toBe(0);
  });

  const willRename = async (from: string, to: string): Promise<WorkspaceEdit | null> =>
    club.wire.request<WorkspaceEdit | null>("workspace/willRenameFiles", {
      files: [{ oldUri: club.uri(from), newUri: club.uri(to) }],
    });

  it("is announced beside the workspace's folders", () => {
    expect(club.wire.answer?.capabilities.workspace).toMatchObject({
      workspaceFolders: { supported: true },
      fileOperations: { willRename: { filters: [{ pattern: { glob: "**/*.{crank,csv}" } }, {}] } },
    });
  });

  it("changes files that are open and files that nobody has open", async () => {
    const edit = await willRename("quill.crank", "Quill 7.crank");
    expect(Object.keys(edit?.changes ?? {}).sort()).toEqual([club.uri("dry.crank"), club.uri("wet.crank")]);
    for (const name of ["dry.crank", "wet.crank"])
      expect(edited(club.read(name), edit?.changes?.[club.uri(name)] ?? [])).toContain('use "Quill 7.crank"\n');
  });

  it("goes by the text in the editor", async () => {
    const text = `# first\n${club.read("wet.crank")}`;
    await club.wire.change(club.uri("wet.crank"), text);
    const edit = await willRename("quill.crank", "plume.crank");
    expect(edited(text, edit?.changes?.[club.uri("wet.crank")] ?? [])).toContain('use "plume.crank"\n');
  });

  it("leaves no finding behind once the file is there", async () => {
    const uri = club.uri("wet.crank");
    await club.wire.change(uri, club.read("wet.crank"));
    const edit = await willRename("quill.crank", "plume.crank");
    const text = edited(club.read("wet.crank"), edit?.changes?.[uri] ?? []);
    await club.wire.change(uri, text);
    expect((await club.wire.findings(uri)).map(({ code }) => code)).toContain("file-not-found");
    renameSync(join(club.folder, "quill.crank"), join(club.folder, "plume.crank"));
    const changes = [
      { uri: club.uri("quill.crank"), type: 3 },
      { uri: club.uri("plume.crank"), type: 1 },
    ];
    await club.wire.notify("workspace/didChangeWatchedFiles", { changes });
    expect(await club.wire.findings(uri, ({ diagnostics }) => diagnostics.length === 0)).toEqual([]);
    renameSync(join(club.folder, "plume.crank"), join(club.folder, "quill.crank"));
    const back = changes.map((change) => ({ ...change, type: 4 - change.type }));
    await club.wire.notify("workspace/didChangeWatchedFiles", { changes: back });
  });

  it("has nothing to say of a file that no line leads to", async () => {
    expect(await willRename("dry.crank", "drier.crank")).toBeNull();
  });
});
