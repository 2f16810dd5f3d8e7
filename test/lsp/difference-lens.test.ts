/** The lens above a set-up over the wire: what it says, and what a click on it asks of the client. */
import { pathToFileURL } from "node:url";
import type { CodeLens } from "vscode-languageserver/node";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Wire } from "../support/wire.js";
import { at, type Club, startClub } from "./club.js";

describe("the lens of differences over the wire", () => {
  let club: Club;
  let wet: string;
  beforeAll(async () => {
    club = await startClub();
    wet = await club.open("wet.crank");
  });
  afterAll(async () => {
    expect(await club.close()).toBe(0);
  });

  const lensesOf = async (wire: Wire): Promise<CodeLens[]> =>
    wire.request<CodeLens[]>("textDocument/codeLens", { textDocument: { uri: club.uri("wet.crank") } });

  /** A server of its own for a client that answers to these commands. */
  async function askedBy(commands: readonly string[]): Promise<CodeLens | undefined> {
    const wire = new Wire(process.execPath, ["dist/cli.js", "serve", "--stdio"]);
    await wire.initialize([pathToFileURL(club.folder).href], { initializationOptions: { commands } });
    await wire.open(club.uri("wet.crank"), wet);
    const [lens] = await lensesOf(wire);
    await wire.stop();
    return lens;
  }

  it("stands above the set-up, its car open or not", async () => {
    const [lens] = await lensesOf(club.wire);
    expect(lens?.range.start).toEqual(at(wet, "setup quarrow-wet", "quarrow-wet"));
    expect(lens?.command?.title).toMatch(/^12 changes: front third rate 55 → 45 N\/mm, /);
  });

  it("names the comparison for a client that has it, and nothing for another", async () => {
    const lens = await askedBy(["bellcrank.showRates", "bellcrank.compareWithBase"]);
    expect(lens?.command?.command).toBe("bellcrank.compareWithBase");
    expect(lens?.command?.arguments).toEqual([club.uri("wet.crank"), "quarrow-wet", club.uri("quill.crank"), "quill"]);
    expect((await askedBy(["bellcrank.showRates"]))?.command?.command).toBe("");
  });

  it("follows what is typed in the set-up and in its car", async () => {
    const uri = club.uri("wet.crank");
    await club.wire.change(uri, wet.replace("rate 45 N/mm", "rate 47.5 N/mm"));
    expect((await lensesOf(club.wire))[0]?.command?.title).toContain("front third rate 55 → 47.5 N/mm");
    const car = await club.open("quill.crank");
    await club.wire.change(club.uri("quill.crank"), car.replace("rate 55 N/mm", "rate 47.5 N/mm"));
    expect((await lensesOf(club.wire))[0]?.command?.title).toMatch(/^11 changes: front corner-bar /);
    await club.wire.change(uri, wet);
  });
});
