/** A workspace that is not on disk: the server asks the client for what no editor has open. */
import { readFileSync } from "node:fs";
import { afterEach, describe, expect, it } from "vitest";
import { NO_FILES } from "../../server/host/workspace-files.js";
import { ClientFiles } from "../../server/lsp/client-files.js";
import type { ReadTextAnswer } from "../../server/lsp/protocol.js";
import { Wire } from "../support/wire.js";
import { at } from "./club.js";

const folder = "memory:/quill";
const car = `${folder}/quill.crank`;
const parts = `${folder}/parts.crank`;
const sample = (name: string): string => readFileSync(`samples/quill/${name}`, "utf8");

describe("files that only the client can read", () => {
  let wire: Wire | undefined;
  afterEach(async () => {
    await wire?.stop();
    wire = undefined;
  });

  async function started(
    texts: Map<string, string>,
    options: object = { readsText: true },
  ): Promise<{ wire: Wire; asked: string[] }> {
    const asked: string[] = [];
    wire = new Wire(process.execPath, ["dist/server.cjs", "--stdio"]);
    wire.answers("bellcrank/readText", ({ uri }) => {
      asked.push(uri);
      const text = texts.get(uri);
      return text === undefined ? { missing: "missing" } : { text };
    });
    await wire.initialize([folder], { initializationOptions: options });
    return { wire, asked };
  }

  it("are asked for once, and what rests on them is published when they are here", async () => {
    const { wire: client, asked } = await started(new Map([[parts, sample("parts.crank")]]));
    await client.open(car, sample("quill.crank"));
    expect(await client.findings(car)).toEqual([]);
    expect(asked).toEqual([parts]);
  });

  it("are missing where the client has none", async () => {
    const { wire: client } = await started(new Map());
    await client.open(car, sample("quill.crank"));
    const rules = (await client.findings(car)).map(({ code }) => code);
    expect(rules).toContain("file-not-found");
  });

  it("are asked for again when they change", async () => {
    const texts = new Map([[parts, sample("parts.crank")]]);
    const { wire: client } = await started(texts);
    await client.open(car, sample("quill.crank"));
    expect(await client.findings(car)).toEqual([]);
    texts.delete(parts);
    await client.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: parts, type: 3 }] });
    const found = await client.findings(car, ({ diagnostics }) => diagnostics.length > 0);
    expect(found.map(({ code }) => code)).toContain("file-not-found");
  });

  it("are missing for a client that cannot be asked", async () => {
    const { wire: client, asked } = await started(new Map([[parts, sample("parts.crank")]]), {});
    await client.open(car, sample("quill.crank"));
    expect((await client.findings(car)).map(({ code }) => code)).toContain("file-not-found");
    expect(asked).toEqual([]);
  });

  it("take a table with them: nothing is published before it is here", async () => {
    const read = (name: string): string => readFileSync(`samples/systems/${name}`, "utf8");
    const table = `${folder}/foam.csv`;
    const { wire: client, asked } = await started(new Map([[table, read("foam.csv")]]));
    await client.open(`${folder}/bump-stops.crank`, read("bump-stops.crank"));
    expect(
      (await client.findings(`${folder}/bump-stops.crank`)).filter(({ message }) =>
        /foam/.test(JSON.stringify(message)),
      ),
    ).toEqual([]);
    expect(asked).toContain(table);
  });

  it("are missing when the folder that they are in is gone, and there again when it is back", async () => {
    const shelf = `${folder}/shelf`;
    const texts = new Map([[`${shelf}/parts.crank`, sample("parts.crank")]]);
    const { wire: client } = await started(texts);
    await client.open(car, sample("quill.crank").replace("parts.crank", "shelf/parts.crank"));
    expect(await client.findings(car)).toEqual([]);
    texts.clear();
    await client.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: shelf, type: 3 }] });
    await client.findings(car, ({ diagnostics }) => diagnostics.some(({ code }) => code === "file-not-found"));
    texts.set(`${shelf}/parts.crank`, sample("parts.crank"));
    await client.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: shelf, type: 1 }] });
    expect(await client.findings(car, ({ diagnostics }) => diagnostics.length === 0)).toEqual([]);
  });

  it("are all looked through for a name, also where the client names them late", async () => {
    const wet = `${folder}/wet.crank`;
    const texts = new Map([wet, car, parts].map((uri) => [uri, sample(uri.slice(folder.length + 1))]));
    const { wire: client } = await started(texts, { readsText: true, namesFiles: true });
    const text = sample("quill.crank");
    await client.open(car, text);
    const asking = client.request<{ uri: string }[]>("textDocument/references", {
      textDocument: { uri: car },
      position: at(text, "car quill", "quill"),
      context: { includeDeclaration: true },
    });
    await client.notify("bellcrank/files", { uris: [...texts.keys(), `${folder}/curve.csv`] });
    expect(new Set((await asking).map(({ uri }) => uri))).toEqual(new Set([car, wet]));
  });
});

describe("a text that changes while it is on its way", () => {
  it("is asked for once more, so that the newest one stays", async () => {
    const files = new ClientFiles(NO_FILES);
    const answers: ((answer: ReadTextAnswer) => void)[] = [];
    files.connect({ ask: () => new Promise((resolve) => answers.push(resolve)), arrived: () => undefined });
    files.read(parts);
    expect(files.changed(parts)).toBe(true);
    answers[0]?.({ text: "old" });
    await expect.poll(() => answers.length).toBe(2);
    expect(files.isAwaited([parts])).toBe(true);
    answers[1]?.({ text: "new" });
    await files.arrivals();
    expect(files.read(parts)).toEqual({ text: "new" });
  });
});
