/** A workspace that is not on disk: the server asks the client for what no editor has open. */
import { readFileSync } from "node:fs";
import { afterEach, describe, expect, it } from "vitest";
import { Wire } from "../support/wire.js";

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

  async function started(texts: Map<string, string>, readsText = true): Promise<{ wire: Wire; asked: string[] }> {
    const asked: string[] = [];
    wire = new Wire(process.execPath, ["dist/server.cjs", "--stdio"]);
    wire.answers("bellcrank/readText", ({ uri }) => {
      asked.push(uri);
      const text = texts.get(uri);
      return text === undefined ? { missing: "missing" } : { text };
    });
    await wire.initialize([folder], { initializationOptions: { readsText } });
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
    const { wire: client, asked } = await started(new Map([[parts, sample("parts.crank")]]), false);
    await client.open(car, sample("quill.crank"));
    expect((await client.findings(car)).map(({ code }) => code)).toContain("file-not-found");
    expect(asked).toEqual([]);
  });
});
