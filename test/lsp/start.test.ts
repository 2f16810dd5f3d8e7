/** A new car and a setup sheet, asked for over the wire. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { NewCarAnswer, NewCarQuestions, SheetPage } from "../../server/lsp/protocol-start.js";
import type { CodeLens, CompletionItem, WorkspaceEdit } from "vscode-languageserver/node";
import { type Club, startClub } from "./club.js";

describe("over the wire", () => {
  let club: Club;
  beforeEach(async () => {
    club = await startClub();
  });
  afterEach(async () => {
    expect(await club.close()).toBe(0);
  });

  it("a new car is asked about, and comes as files", async () => {
    const { choices, yesOrNo } = await club.wire.request<NewCarQuestions>("bellcrank/newCarQuestions", {});
    expect(choices.map(({ of }) => of)).toContain("corner");
    expect(choices.find(({ of }) => of === "frontRod")?.notFor).toEqual(["ratio"]);
    expect(yesOrNo.every(({ usual }) => usual)).toBe(true);
    const answers = { corner: "planar", springs: "coil", heave: false, downforce: "perhaps", units: "furlongs" };
    const made = await club.wire.request<NewCarAnswer>("bellcrank/newCar", { name: "swift-2", title: "", answers });
    expect(made.why).toBeUndefined();
    expect(made.files.map(({ name }) => name)).toEqual([
      "swift-2.crank",
      "swift-2-parts.crank",
      "swift-2-first-run.crank",
    ]);
    const [car] = made.files;
    expect(car?.text).toContain("linkage planar");
    // What was not offered is as usual.
    expect(car?.text).toContain("aero {");
    expect(car?.text).toContain(" mm");
    expect(await club.wire.request("bellcrank/newCar", { name: "2", title: "", answers: {} })).toHaveProperty("why");
  });

  it("an empty file offers a car: above it, and as the first word", async () => {
    await club.open("robin.crank", "\n");
    const uri = club.uri("robin.crank");
    const lenses = await club.wire.request<CodeLens[]>("textDocument/codeLens", { textDocument: { uri } });
    expect(lenses.map(({ command }) => command?.title)).toEqual(["Start a car here"]);
    let edit: WorkspaceEdit = {};
    club.wire.answers("workspace/applyEdit", (asked) => {
      ({ edit } = asked as unknown as { edit: WorkspaceEdit });
      return { applied: true };
    });
    const [lens] = lenses;
    await club.wire.request("workspace/executeCommand", { ...lens?.command });
    const [written] = edit.changes?.[uri] ?? [];
    expect(written?.range).toEqual({ start: { line: 0, character: 0 }, end: { line: 1, character: 0 } });
    expect(written?.newText).toContain("car robin ");
    const asked = { textDocument: { uri }, position: { line: 0, character: 0 } };
    const items = await club.wire.request<{ items: CompletionItem[] }>("textDocument/completion", asked);
    const [first] = [...items.items].sort((a, b) => ((a.sortText ?? "") < (b.sortText ?? "") ? -1 : 1));
    expect(first?.label).toBe("Start a car here");
    expect(first?.textEdit?.newText).toBe(written?.newText);
    // Once something stands there, nothing of it is left, and nothing is written over.
    await club.wire.change(uri, "let x = 1 mm\n");
    expect(await club.wire.request("textDocument/codeLens", { textDocument: { uri } })).toEqual([]);
    edit = {};
    await club.wire.request("workspace/executeCommand", { ...lens?.command });
    expect(edit).toEqual({});
  });

  it("a setup sheet shows what is typed, not what is saved", async () => {
    const text = club.read("wet.crank").replace("45 N/mm", "47 N/mm");
    await club.open("wet.crank", text);
    const uri = club.uri("wet.crank");
    const page = await club.wire.request<SheetPage | null>("bellcrank/sheet", { uri });
    expect(page?.html).toContain("setup sheet");
    expect(page?.html).toContain("47 N/mm");
    expect(page?.html).toContain("Content-Security-Policy");
    expect(page?.html).not.toContain("<script");
    expect(await club.wire.request("bellcrank/sheet", { uri, name: "nobody" })).toBeNull();
  });
});
