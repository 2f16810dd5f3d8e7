/** What the server answers, asked over the wire. */
import type {
  CodeAction,
  CodeLens,
  CompletionItem,
  CompletionList,
  DocumentLink,
  DocumentSymbol,
  FoldingRange,
  Hover,
  InlayHint,
  Location,
  MarkupKind,
  SelectionRange,
  SignatureHelp,
  SignatureHelpTriggerKind,
  TextEdit,
  WorkspaceEdit,
  WorkspaceSymbol,
} from "vscode-languageserver/node";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Wire } from "../support/wire.js";
import { at, type Club, edited, positionOf, rangeAt, startClub } from "./club.js";

describe("features over the wire", () => {
  let club: Club;
  let car: string;
  let wet: string;
  beforeAll(async () => {
    club = await startClub();
    car = await club.open("quill.crank");
    await club.open("parts.crank");
    wet = await club.open("wet.crank");
  });
  afterAll(async () => {
    expect(await club.close()).toBe(0);
  });

  const ask = async <Result>(method: string, name: string, more: object = {}): Promise<Result> =>
    club.wire.request<Result>(`textDocument/${method}`, { textDocument: { uri: club.uri(name) }, ...more });
  const hoverText = async (name: string, text: string, marker: string, part?: string): Promise<string> => {
    const hover = await ask<Hover | null>("hover", name, { position: at(text, marker, part) });
    return (hover?.contents as { value: string } | undefined)?.value ?? "";
  };
  const whole = (text: string) => ({ start: { line: 0, character: 0 }, end: positionOf(text, text.length) });

  it("hover on an element tells claim, motion, leak and rates", async () => {
    const text = await hoverText("quill.crank", car, "damper roll-damper for roll", "roll-damper");
    expect(text).toMatch(/\*\*front\.roll-damper\*\* · damper for roll/);
    expect(text).toMatch(/leak into heave: [\d.]+ % at design/);
    expect(text).toContain("| heave | roll | pitch | warp |");
  });

  it("hover has plots only for a client that says that it draws them, and takes Markdown", async () => {
    const hoverOf = async (drawsImages: boolean, contentFormat: MarkupKind[]): Promise<string> => {
      const wire = new Wire(process.execPath, ["dist/cli.js", "serve", "--stdio"]);
      await wire.initialize([], {
        capabilities: { textDocument: { hover: { contentFormat } } },
        initializationOptions: { drawsImages },
      });
      await wire.open(club.uri("quill.crank"), car);
      await wire.findings(club.uri("quill.crank"));
      const position = at(car, "damper roll-damper for roll", "roll-damper");
      const asked = { textDocument: { uri: club.uri("quill.crank") }, position };
      const answer = await wire.request<Hover | null>("textDocument/hover", asked);
      await wire.stop();
      return (answer?.contents as { value: string } | undefined)?.value ?? "";
    };
    expect(await hoverOf(true, ["markdown", "plaintext"])).toContain("](data:image/svg+xml;base64,");
    expect(await hoverOf(false, ["markdown", "plaintext"])).not.toContain("data:");
    expect(await hoverOf(true, ["plaintext"])).not.toContain("data:");
  });

  it("hover on a word explains it and on a number converts it", async () => {
    expect(await hoverText("quill.crank", car, "cg-height 285")).toContain("cg-height");
    expect(await hoverText("quill.crank", car, "rate 55 N/mm", "55")).toContain("lbf/in");
  });

  it("hover on an override says what it replaces", async () => {
    expect(await hoverText("wet.crank", wet, "front.third.rate 45 N/mm", "45")).toMatch(/55 N\/mm.*quill\.crank/s);
  });

  it("hover on an expectation gives value and margin", async () => {
    expect(await hoverText("quill.crank", car, "expect front.heave-rate", "expect")).toMatch(
      /front\.heave-rate\*\* is [\d.]+ N\/mm · met · margin [\d.]+ N\/mm · wanted between 150 N\/mm and 190 N\/mm/,
    );
  });

  it("inlays stand behind the lines that set rates", async () => {
    const inlays = await ask<InlayHint[]>("inlayHint", "quill.crank", { range: whole(car) });
    const line = at(car, "rate 55 N/mm").line;
    expect(inlays.find(({ position }) => position.line === line)?.label).toMatch(/→ [\d.]+ N\/mm in heave/);
    expect(inlays.length).toBeGreaterThan(8);
  });

  it("lenses give the rates of each axle", async () => {
    const lenses = await ask<CodeLens[]>("codeLens", "quill.crank");
    const front = lenses.find(({ range }) => range.start.line === at(car, "axle front").line);
    expect(front?.command?.title).toMatch(/heave [\d.]+ N\/mm · roll [\d.]+ N\*m\/deg/);
  });

  it("signature help tells how a line goes on, unasked only where it has several parts", async () => {
    const asked = async (marker: string, triggerKind: SignatureHelpTriggerKind): Promise<SignatureHelp | null> =>
      ask("signatureHelp", "quill.crank", {
        position: positionOf(car, car.indexOf(marker) + marker.length),
        context: { triggerKind, isRetrigger: false },
      });
    const [invoked, typed] = [1, 2] as const;
    const help = await asked("damper roll-damper for ", typed);
    const [way] = help?.signatures ?? [];
    expect(way?.label).toBe("damper NAME for MODE");
    const part = way?.parameters?.[help?.activeParameter ?? 0]?.label;
    expect(way?.label.slice(Number(part?.[0]), Number(part?.[1]))).toBe("MODE");
    expect(await asked("  wheelbase ", typed)).toBeNull();
    expect((await asked("  wheelbase ", invoked))?.signatures[0]?.label).toBe("wheelbase VALUE mm");
    expect(await asked("axle front {", invoked)).toBeNull();
  });

  it("completion offers words with help, units, eyes and parts", async () => {
    const text = car.replace("rate 55 N/mm", "");
    const uri = club.uri("quill.crank");
    await club.wire.change(uri, text);
    const here = at(text, "spring third for heave {\n      ");
    const words = await completions("quill.crank", { line: here.line + 1, character: 6 });
    expect(words.find(({ label }) => label === "rate")?.documentation).toBeDefined();
    expect(words.some(({ label }) => label === "preload")).toBe(false);
    await club.wire.change(uri, car);
    const units = await completions("quill.crank", { ...at(car, "rate 55 N/mm", "N/mm") });
    expect(units.map(({ label }) => label)).toContain("lbf/in");
    const eyes = await completions("quill.crank", at(car, "between left.rocker.third", "left.rocker.third"));
    expect(eyes.map(({ label }) => label)).toEqual(expect.arrayContaining(["left.rocker.third", "chassis"]));
    const parts = await completions("quill.crank", at(car, "fit TB-110", "TB-110"));
    expect(parts.map(({ label }) => label)).toContain("TB-105");
    expect(parts.map(({ label }) => label)).not.toContain("V-24");
  });

  async function completions(name: string, position: object): Promise<CompletionItem[]> {
    const list = await ask<CompletionList>("completion", name, { position });
    return list.items;
  }

  it("definition leads from a set-up to the car and its parts", async () => {
    const part = await ask<Location>("definition", "wet.crank", { position: at(wet, "fit TB-105", "TB-105") });
    expect(part.uri).toBe(club.uri("parts.crank"));
    const base = await ask<Location>("definition", "wet.crank", { position: at(wet, "from quill", "quill") });
    expect(base).toMatchObject({ uri: club.uri("quill.crank"), range: rangeAt(car, "car quill", "quill") });
    const eye = await ask<Location>("definition", "quill.crank", {
      position: at(car, "left.rocker.roll-high", "roll-high"),
    });
    expect(eye.range.start.line).toBe(at(car, "eye roll-high").line);
  });

  it("references and rename reach files that nobody has open", async () => {
    const position = at(car, "spring third", "third");
    const places = await ask<Location[]>("references", "quill.crank", {
      position,
      context: { includeDeclaration: true },
    });
    expect(new Set(places.map(({ uri }) => uri))).toEqual(
      new Set([club.uri("quill.crank"), club.uri("wet.crank"), ...dryIfIt("third")]),
    );
    const prepared = await ask<{ placeholder: string }>("prepareRename", "quill.crank", { position });
    expect(prepared.placeholder).toBe("third");
    const edit = await ask<WorkspaceEdit>("rename", "quill.crank", { position, newName: "centre-spring" });
    const renamed = edited(wet, edit.changes?.[club.uri("wet.crank")] ?? []);
    expect(renamed).toContain("front.centre-spring.rate 45 N/mm");
    await expect(ask("rename", "quill.crank", { position, newName: "left" })).rejects.toThrow(
      /word of the language|reserved/,
    );
  });

  const dryIfIt = (word: string): string[] =>
    club.read("dry.crank").includes(`.${word}`) ? [club.uri("dry.crank")] : [];

  it("symbols outline the file and search the workspace", async () => {
    const outline = await ask<DocumentSymbol[]>("documentSymbol", "quill.crank");
    const axles = outline.find(({ name }) => name === "quill")?.children?.map(({ name }) => name);
    expect(axles).toEqual(expect.arrayContaining(["front axle", "rear axle", "hairpin"]));
    const found = await club.wire.request<WorkspaceSymbol[]>("workspace/symbol", { query: "tb-1" });
    expect(found.length).toBeGreaterThan(2);
  });

  it("folding, selection, tokens and links", async () => {
    const folds = await ask<FoldingRange[]>("foldingRange", "quill.crank");
    expect(folds.some(({ startLine }) => startLine === at(car, "axle front").line)).toBe(true);
    const [selection] = await ask<SelectionRange[]>("selectionRange", "quill.crank", {
      positions: [at(car, "roll-damper")],
    });
    expect(depth(selection)).toBeGreaterThan(3);
    const tokens = await ask<{ data: number[] }>("semanticTokens/full", "quill.crank");
    expect(tokens.data.length % 5).toBe(0);
    expect(tokens.data.length).toBeGreaterThan(500);
    const links = await ask<DocumentLink[]>("documentLink", "quill.crank");
    expect(links.map(({ target }) => target)).toEqual([club.uri("parts.crank")]);
  });

  const depth = (selection: SelectionRange | undefined): number =>
    selection === undefined ? 0 : 1 + depth(selection.parent);

  it("formatting lays a document out and touches nothing more than it must", async () => {
    expect(await ask<TextEdit[]>("formatting", "quill.crank", { options: { tabSize: 2, insertSpaces: true } })).toEqual(
      [],
    );
    const messy = car.replace("  wheelbase 2540 mm", " wheelbase   2540 mm");
    await club.wire.change(club.uri("quill.crank"), messy);
    const edits = await ask<TextEdit[]>("formatting", "quill.crank", { options: { tabSize: 2, insertSpaces: true } });
    expect(edited(messy, edits)).toBe(car);
    await club.wire.change(club.uri("quill.crank"), car);
  });

  it("quick fixes come with their finding, safe ones all at once", async () => {
    const uri = club.uri("quill.crank");
    const broken = car.replace("rate 55 N/mm", "rtae 55 N/mm");
    await club.wire.change(uri, broken);
    await club.wire.findings(uri);
    const range = rangeAt(broken, "rtae");
    const actions = await ask<CodeAction[]>("codeAction", "quill.crank", { range, context: { diagnostics: [] } });
    const fix = actions.find(({ kind }) => kind === "quickfix");
    expect(edited(broken, fix?.edit?.changes?.[uri] ?? [])).toBe(car);
    await club.wire.change(uri, car);
  });

  it("converts a value, or the whole file, to inch units and back", async () => {
    const uri = club.uri("quill.crank");
    const range = rangeAt(car, "wheelbase 2540 mm", "2540");
    const offered = async (): Promise<CodeAction[]> =>
      ask<CodeAction[]>("codeAction", "quill.crank", { range, context: { diagnostics: [], only: ["refactor"] } });
    const applied = async (text: string, title: string): Promise<string> => {
      const action = (await offered()).find((one) => one.title === title);
      return edited(text, action?.edit?.changes?.[uri] ?? []);
    };
    expect(await applied(car, "Convert to inch units here")).toBe(car.replace("wheelbase 2540 mm", "wheelbase 100 in"));
    const inch = await applied(car, "Convert the whole file to inch units");
    expect(inch).toContain("wheelbase 100 in");
    expect(inch.replace(/#.*$/gm, "")).not.toMatch(/\d mm\b/);
    await club.wire.change(uri, inch);
    expect(await club.wire.findings(uri)).toEqual([]);
    expect(await applied(inch, "Convert the whole file to metric units")).toBe(car);
    await club.wire.change(uri, car);
  });

  it("coupling is found and mended so that the check passes", async () => {
    const uri = club.uri("quill.crank");
    const broken = car.replace("eye roll-low (45, 175, 348) mm", "eye roll-low (45, 191, 348) mm");
    expect(broken).not.toBe(car);
    await club.wire.change(uri, broken);
    const found = await club.wire.findings(uri);
    expect(found.map(({ code }) => code)).toContain("coupling");
    const coupling = found.find(({ code }) => code === "coupling");
    const actions = await ask<CodeAction[]>("codeAction", "quill.crank", {
      range: coupling?.range,
      context: { diagnostics: [] },
    });
    const move = actions.find(({ title }) => title.startsWith("Move eye"));
    await club.wire.change(uri, edited(broken, move?.edit?.changes?.[uri] ?? []));
    expect((await club.wire.findings(uri)).filter(({ code }) => code === "coupling")).toEqual([]);
    await club.wire.change(uri, car);
  });
});
