/** Findings on request: by result id for clients that pull, and of all files where the setting says so. */
import { cpSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import {
  type ClientCapabilities,
  CancellationTokenSource,
  type DocumentDiagnosticReport,
  type PreviousResultId,
  ProgressType,
  RegistrationRequest,
  UnregistrationRequest,
  type WorkspaceDiagnosticReport,
  type WorkspaceDocumentDiagnosticReport,
} from "vscode-languageserver/node";
import { Wire } from "../support/wire.js";
import { rangeAt } from "./club.js";

type Scope = "openFiles" | "allFiles";

const pullsOnly: ClientCapabilities = {
  textDocument: { diagnostic: {} },
  workspace: { didChangeWatchedFiles: { dynamicRegistration: true } },
};
const pullsAndIsTold: ClientCapabilities = {
  textDocument: { diagnostic: { dynamicRegistration: true }, publishDiagnostics: {} },
  workspace: { didChangeWatchedFiles: { dynamicRegistration: true } },
};

let folder: string;
let wire: Wire;
/** The findings by file, as a client that keeps the reports has them. */
let held: Map<string, readonly string[]>;
let registered: { method: string; id: string }[];
let follows = 0;

const uri = (name: string): string => pathToFileURL(join(folder, name)).href;
const read = (name: string): string => readFileSync(join(folder, name), "utf8");
const write = (name: string, text: string): void => writeFileSync(join(folder, name), text);

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "club house "));
  cpSync("samples/quill", folder, { recursive: true });
  held = new Map();
  registered = [];
});
afterEach(async () => {
  expect(await wire.stop()).toBe(0);
  rmSync(folder, { recursive: true, force: true });
});

async function start(capabilities: ClientCapabilities, scope: Scope): Promise<void> {
  wire = new Wire(process.execPath, ["dist/server.cjs", "--stdio"]);
  wire.asked(RegistrationRequest.type, ({ registrations }) => {
    registered.push(...registrations.map(({ method, id }) => ({ method, id })));
  });
  wire.asked(UnregistrationRequest.type, ({ unregisterations }) => {
    registered = registered.filter(({ id }) => !unregisterations.some((one) => one.id === id));
  });
  await wire.initialize([pathToFileURL(folder).href], {
    capabilities,
    initializationOptions: { settings: settings(scope) },
  });
}

const settings = (scope: Scope): object => ({ findings: { scope } });
const configure = async (scope: Scope): Promise<void> =>
  wire.notify("workspace/didChangeConfiguration", { settings: { bellcrank: settings(scope) } });
const onDisk = async (name: string, type: 1 | 2 | 3): Promise<void> =>
  wire.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: uri(name), type }] });

const pull = async (name: string, previousResultId?: string): Promise<DocumentDiagnosticReport> =>
  wire.request("textDocument/diagnostic", {
    textDocument: { uri: uri(name) },
    ...(previousResultId === undefined ? {} : { previousResultId }),
  });
const pullAll = async (previousResultIds: readonly PreviousResultId[] = []): Promise<WorkspaceDiagnosticReport> =>
  wire.request("workspace/diagnostic", { previousResultIds });

function rulesOf(report: DocumentDiagnosticReport | WorkspaceDocumentDiagnosticReport | undefined): readonly string[] {
  if (report?.kind !== "full") throw new Error(`${report?.kind ?? "nothing"} is not a full report`);
  return report.items.map(({ code }) => String(code));
}

const reportOf = ({ items }: WorkspaceDiagnosticReport, name: string): WorkspaceDocumentDiagnosticReport | undefined =>
  items.find((item) => item.uri === uri(name));

const idsOf = ({ items }: WorkspaceDiagnosticReport): PreviousResultId[] =>
  items.flatMap((item) => (item.resultId === undefined ? [] : [{ uri: item.uri, value: item.resultId }]));

/** Holds a request open as an editor does, and keeps what it is told. */
function follow(): { stop: () => Promise<void>; until: (wanted: () => boolean) => Promise<void> } {
  const cancel = new CancellationTokenSource();
  let wake: () => void = () => undefined;
  const partialResultToken = `all ${++follows}`;
  wire.streams(new ProgressType<WorkspaceDiagnosticReport>(), partialResultToken, ({ items }) => {
    for (const item of items) if (item.kind === "full") held.set(item.uri, rulesOf(item));
    wake();
  });
  const parameters = { previousResultIds: [], partialResultToken };
  const answer = wire.request<WorkspaceDiagnosticReport>("workspace/diagnostic", parameters, cancel.token);
  return {
    async stop() {
      cancel.cancel();
      expect((await answer).items).toEqual([]);
    },
    async until(wanted) {
      while (!wanted())
        await new Promise<void>((resolve) => {
          wake = resolve;
        });
    },
  };
}

const has = (name: string, rule: string): boolean => held.get(uri(name))?.includes(rule) === true;
const hasNone = (name: string): boolean => held.get(uri(name))?.length === 0;

describe("findings of one file on request", () => {
  beforeEach(async () => {
    await start(pullsOnly, "openFiles");
    for (const name of ["quill.crank", "parts.crank", "wet.crank"]) await wire.open(uri(name), read(name));
  });

  it("are announced, and not published besides", async () => {
    expect(wire.answer?.capabilities.diagnosticProvider).toEqual({
      interFileDependencies: true,
      workspaceDiagnostics: true,
    });
    await wire.change(uri("quill.crank"), read("quill.crank").replace("rate 55", "rtae 55"));
    expect(rulesOf(await pull("quill.crank"))).toContain("unknown-word");
    expect(wire.wasPublished(uri("quill.crank"))).toBe(false);
  });

  it("keep their id over an edit that has nothing to do with them", async () => {
    const { resultId } = await pull("quill.crank");
    expect(await pull("quill.crank", resultId)).toEqual({ kind: "unchanged", resultId });
    await wire.change(uri("quill.crank"), `${read("quill.crank")}# a comment at the end\n`);
    expect(await pull("quill.crank", resultId)).toEqual({ kind: "unchanged", resultId });
  });

  it("get another id when they change, by an edit here or in a used file", async () => {
    const { resultId } = await pull("wet.crank");
    await wire.change(uri("parts.crank"), read("parts.crank").replaceAll("TB-105", "TB-999"));
    const changed = await pull("wet.crank", resultId);
    expect(rulesOf(changed)).toContain("unknown-name");
    expect(changed.resultId).not.toBe(resultId);
    await wire.change(uri("parts.crank"), read("parts.crank"));
    expect(rulesOf(await pull("wet.crank", changed.resultId))).toEqual([]);
  });

  it("do not hold for an id that another run gave", async () => {
    expect((await pull("quill.crank", "another-1")).kind).toBe("full");
  });
});

describe("findings of all files on request", () => {
  it("cover files that nobody has open, each by its id", async () => {
    await start(pullsOnly, "allFiles");
    write("draft.crank", "car {");
    const first = await pullAll();
    expect(rulesOf(reportOf(first, "draft.crank"))).toContain("unclosed");
    expect(rulesOf(reportOf(first, "wet.crank"))).toEqual([]);
    write("parts.crank", read("parts.crank").replaceAll("TB-105", "TB-999"));
    await onDisk("parts.crank", 2);
    const second = await pullAll(idsOf(first));
    expect(rulesOf(reportOf(second, "wet.crank"))).toContain("unknown-name");
    expect(reportOf(second, "draft.crank")?.kind).toBe("unchanged");
  });

  it("wait for something new, and take back those of a file that is gone", async () => {
    await start(pullsOnly, "allFiles");
    write("draft.crank", "car {");
    const first = await pullAll();
    const second = pullAll(idsOf(first));
    rmSync(join(folder, "draft.crank"));
    await onDisk("draft.crank", 3);
    expect(rulesOf(reportOf(await second, "draft.crank"))).toEqual([]);
  });

  it("are none where only open files are wanted", async () => {
    await start(pullsOnly, "openFiles");
    write("draft.crank", "car {");
    const answer = pullAll([{ uri: uri("draft.crank"), value: "another-1" }]);
    expect((await answer).items).toEqual([
      { kind: "full", uri: uri("draft.crank"), version: null, resultId: "none", items: [] },
    ]);
  });
});

describe("findings of all files beside published ones", () => {
  beforeEach(async () => {
    await start(pullsAndIsTold, "allFiles");
    // An answer to this one comes after what the server asked when it was told that the handshake is over.
    await pull("wet.crank");
    expect(registered.map(({ method }) => method)).toContain("textDocument/diagnostic");
    write("draft.crank", "car {");
  });

  it("never come both ways: a file that is opened has its own published, one that is closed is reported again", async () => {
    const following = follow();
    await following.until(() => has("draft.crank", "unclosed"));
    await wire.open(uri("draft.crank"), "car {");
    expect((await wire.findings(uri("draft.crank"))).map(({ code }) => code)).toContain("unclosed");
    await following.until(() => hasNone("draft.crank"));
    expect(rulesOf(await pull("draft.crank"))).toEqual([]);
    await wire.shut(uri("draft.crank"));
    expect(await wire.findings(uri("draft.crank"), ({ diagnostics }) => diagnostics.length === 0)).toEqual([]);
    await following.until(() => has("draft.crank", "unclosed"));
    await following.stop();
  });

  it("follow what is typed in a file that they rest on, and what changes on disk", async () => {
    const following = follow();
    await following.until(() => hasNone("wet.crank") && hasNone("dry.crank"));
    const parts = read("parts.crank");
    await wire.open(uri("parts.crank"), parts);
    await wire.change(uri("parts.crank"), "TB-999", rangeAt(parts, "TB-105"));
    await following.until(() => has("wet.crank", "unknown-name"));
    await wire.change(uri("parts.crank"), parts);
    await following.until(() => hasNone("wet.crank"));
    write("quill.crank", read("quill.crank").replaceAll("third", "middle"));
    await onDisk("quill.crank", 2);
    await following.until(() => has("wet.crank", "override-without-target"));
    expect(has("wet.crank", "unknown-name")).toBe(false);
    await following.stop();
  });

  it("go with a file that is deleted or renamed, and come with a new one", async () => {
    const following = follow();
    await following.until(() => has("draft.crank", "unclosed"));
    renameSync(join(folder, "draft.crank"), join(folder, "later.crank"));
    await onDisk("draft.crank", 3);
    await onDisk("later.crank", 1);
    await following.until(() => hasNone("draft.crank") && has("later.crank", "unclosed"));
    rmSync(join(folder, "later.crank"));
    await onDisk("later.crank", 3);
    await following.until(() => hasNone("later.crank"));
    expect(hasNone("draft.crank")).toBe(true);
    await following.stop();
  });

  it("follow a folder that is moved, of whose files nobody tells each", async () => {
    mkdirSync(join(folder, "shelf"));
    renameSync(join(folder, "parts.crank"), join(folder, "shelf", "parts.crank"));
    write("quill.crank", read("quill.crank").replace('"parts.crank"', '"shelf/parts.crank"'));
    for (const name of ["parts.crank", "quill.crank"]) await onDisk(name, 2);
    const following = follow();
    await following.until(() => hasNone("shelf/parts.crank") && hasNone("wet.crank"));
    renameSync(join(folder, "shelf"), join(folder, "rack"));
    await onDisk("shelf", 3);
    await onDisk("rack", 1);
    await following.until(() => has("quill.crank", "file-not-found") && hasNone("rack/parts.crank"));
    renameSync(join(folder, "rack"), join(folder, "shelf"));
    await onDisk("rack", 3);
    await onDisk("shelf", 1);
    await following.until(() => hasNone("quill.crank"));
    expect(hasNone("rack/parts.crank")).toBe(true);
    await following.stop();
  });

  it("follow the setting while the server runs", async () => {
    const following = follow();
    await following.until(() => has("draft.crank", "unclosed"));
    await configure("openFiles");
    await following.until(() => hasNone("draft.crank"));
    await following.stop();
    await wire.request("textDocument/diagnostic", { textDocument: { uri: uri("wet.crank") } });
    expect(registered.map(({ method }) => method)).not.toContain("textDocument/diagnostic");
    await configure("allFiles");
    const again = follow();
    await again.until(() => has("draft.crank", "unclosed"));
    expect(registered.map(({ method }) => method)).toContain("textDocument/diagnostic");
    await again.stop();
  });
});

it("a client that cannot be told later is told at the start, and has open files published alone", async () => {
  await start({ textDocument: { diagnostic: {}, publishDiagnostics: {} } }, "allFiles");
  expect(wire.answer?.capabilities.diagnosticProvider).toBeDefined();
  write("draft.crank", "car {");
  await wire.open(uri("typed.crank"), "car {");
  expect((await wire.findings(uri("typed.crank"))).map(({ code }) => code)).toContain("unclosed");
  expect(rulesOf(await pull("typed.crank"))).toEqual([]);
  const answer = await pullAll();
  expect(rulesOf(reportOf(answer, "typed.crank"))).toEqual([]);
  expect(rulesOf(reportOf(answer, "draft.crank"))).toContain("unclosed");
});

it("a client that does not pull is told as ever, and nothing of pulling", async () => {
  await start({}, "allFiles");
  expect(wire.answer?.capabilities.diagnosticProvider).toBeUndefined();
  await wire.open(uri("draft.crank"), "car {");
  expect((await wire.findings(uri("draft.crank"))).map(({ code }) => code)).toContain("unclosed");
});
