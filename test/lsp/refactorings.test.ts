/** Refactorings as an editor asks for them: their kinds, edits over files, a file made, and the rename that follows. */
import type { CodeAction, Position, TextDocumentEdit } from "vscode-languageserver/node";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { carText, cornerSpring } from "../support/written-car.js";
import { Wire } from "../support/wire.js";
import { at, edited, positionOf } from "./club.js";

const car = carText({
  elements: `${cornerSpring}
    spring third for heave {
      coil { rate 90 N/mm, free-length 150 mm }
      between left.rocker.third and right.rocker.third
    }`,
});

const able = {
  capabilities: {
    workspace: { workspaceEdit: { documentChanges: true, resourceOperations: ["create" as const] } },
  },
  initializationOptions: { commands: ["bellcrank.renameHere"] },
};

describe("refactorings over the wire", () => {
  let wire: Wire;
  let folder: string;
  const uri = (name: string): string => pathToFileURL(join(folder, name)).href;

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), "refactor house "));
    wire = new Wire(process.execPath, ["dist/cli.js", "serve", "--stdio"]);
  });
  afterEach(async () => {
    expect(await wire.stop()).toBe(0);
    rmSync(folder, { recursive: true, force: true });
  });

  async function started(client: object, texts: Readonly<Record<string, string>>): Promise<void> {
    for (const [name, text] of Object.entries(texts)) writeFileSync(join(folder, name), text);
    await wire.initialize([pathToFileURL(folder).href], client);
    await wire.open(uri("car.crank"), texts["car.crank"] ?? "");
  }

  const actions = async (
    start: Position,
    only: readonly string[],
    triggerKind?: 1 | 2,
  ): Promise<readonly CodeAction[]> =>
    wire.request("textDocument/codeAction", {
      textDocument: { uri: uri("car.crank") },
      range: { start, end: start },
      context: { diagnostics: [], only, ...(triggerKind && { triggerKind }) },
    });

  it("name a value; the rename that follows starts on the new name", async () => {
    await started(able, { "car.crank": car });
    const [first] = await actions(at(car, "unsprung-mass 18 kg", "18"), ["refactor.extract"]);
    expect(first?.kind).toBe("refactor.extract");
    const text = edited(car, first?.edit?.changes?.[uri("car.crank")] ?? []);
    expect(text).toContain("let front-unsprung-mass = 18 kg\n");
    expect(text).toContain("unsprung-mass front-unsprung-mass\n");
    const position = positionOf(text, text.indexOf("front-unsprung-mass ="));
    expect(first?.command).toMatchObject({ command: "bellcrank.renameHere", arguments: [uri("car.crank"), position] });
    await wire.change(uri("car.crank"), text);
    const renamed = await wire.request<CodeAction["edit"]>("textDocument/rename", {
      textDocument: { uri: uri("car.crank") },
      position,
      newName: "hub",
    });
    const last = edited(text, renamed?.changes?.[uri("car.crank")] ?? []);
    expect(last).toContain("let hub = 18 kg\n");
    expect(last).toContain("unsprung-mass hub\n");
    const [back] = await actions(at(text, "front-unsprung-mass ="), ["refactor.inline"]);
    const inline = edited(text, back?.edit?.changes?.[uri("car.crank")] ?? []);
    expect(inline).toContain("unsprung-mass 18 kg\n");
    expect(inline).not.toContain("let ");
  });

  it("give another client the edit alone, and no file that it cannot make", async () => {
    await started({ capabilities: {} }, { "car.crank": car });
    const [first] = await actions(at(car, "unsprung-mass 18 kg", "18"), ["refactor"]);
    expect(first?.edit).toBeDefined();
    expect(first?.command).toBeUndefined();
    expect(await actions(at(car, "coil { rate"), ["refactor.move"])).toEqual([]);
  });

  it("move a part to a file that is made for it", async () => {
    await started(able, { "car.crank": car });
    const [first] = await actions(at(car, "coil { rate"), ["refactor.move"]);
    expect(first?.title).toBe("Move the coil of third to the catalogue in parts.crank");
    const [made, parts, changed] = first?.edit?.documentChanges ?? [];
    expect(made).toEqual({ kind: "create", uri: uri("parts.crank") });
    expect((parts as TextDocumentEdit).edits[0]).toMatchObject({
      newText: expect.stringContaining("coil third-coil {"),
    });
    const text = edited(car, (changed as TextDocumentEdit).edits as { range: never; newText: string }[]);
    expect(text).toContain("fit third-coil\n");
    expect(text).toContain('use "parts.crank"\n');
  });

  it("prove themselves on set-ups that nobody has open", async () => {
    const parts =
      "catalogue {\n  valving V-1 { damping 2 N*s/mm, gas-force 40 N }\n  valving V-2 { damping 3 N*s/mm }\n}\n";
    const fitted = carText({
      before: 'use "parts.crank"\n',
      elements: `${cornerSpring}
    damper third for heave {
      fit V-1
      between left.rocker.third and right.rocker.third
    }`,
    });
    const files = { "car.crank": fitted, "parts.crank": parts };
    await started(able, files);
    expect(await actions(at(fitted, "fit V-1"), ["refactor.inline"])).toHaveLength(1);
    writeFileSync(
      join(folder, "other.crank"),
      'use "car.crank"\n\nsetup other from tried {\n  front.third.fit V-2\n}\n',
    );
    expect(await actions(at(fitted, "fit V-1"), ["refactor.inline"])).toEqual([]);
  });

  it("are offered among all others where nobody asks for a kind, and only by kind where somebody does", async () => {
    await started(able, { "car.crank": car });
    const kinds = async (only: readonly string[]) => [
      ...new Set((await actions(at(car, "coil { rate 90", "90"), only, 2)).map(({ kind }) => kind)),
    ];
    expect(await kinds(["refactor"])).toEqual(["refactor.rewrite", "refactor.extract", "refactor.move"]);
    expect(await kinds(["refactor.extract"])).toEqual(["refactor.extract"]);
    expect(wire.answer?.capabilities.codeActionProvider).toMatchObject({
      codeActionKinds: expect.arrayContaining([
        "refactor.extract",
        "refactor.inline",
        "refactor.move",
        "refactor.rewrite",
      ]),
    });
  });
});
