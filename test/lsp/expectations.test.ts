/** How the expectations of a file stand, asked over the wire as the editor's Testing view asks. */
import { readFileSync } from "node:fs";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import type {
  ExpectationAnswer,
  ExpectationsMethod,
  ExpectationsOfFile,
  ExpectationsParams,
} from "../../server/lsp/protocol.js";
import { Wire } from "../support/wire.js";
import { at, type Club, startClub } from "./club.js";

const METHOD: ExpectationsMethod = "bellcrank/expectations";
const asked = (wire: Wire, uri: string): Promise<ExpectationsOfFile> =>
  wire.request<ExpectationsOfFile>(METHOD, { uri } satisfies ExpectationsParams);

describe("expectations over the wire", () => {
  let club: Club;
  beforeAll(async () => {
    club = await startClub();
  });
  afterAll(async () => {
    await club.close();
  });

  const of = async (name: string, car: string): Promise<readonly ExpectationAnswer[]> => {
    const { cars } = await asked(club.wire, club.uri(name));
    return cars.find((one) => one.name === car)?.expectations ?? [];
  };

  it("are judged in a file that nobody opened, each at its line", async () => {
    const all = await of("quill.crank", "quill");
    const heave = all.find(({ text }) => text === "front.heave-rate between 150 N/mm and 190 N/mm");
    expect(heave?.verdict).toBe("met");
    expect(heave?.actual).toMatch(/^1[5-8][\d.]+ N\/mm$/);
    expect(heave?.message).toMatch(/met with a margin of [\d.]+ N\/mm\.$/);
    expect(heave?.range.start).toEqual(at(club.read("quill.crank"), "expect front.heave-rate"));
    expect(new Set(all.map(({ text }) => text)).size).toBe(all.length);
  });

  it("are a set-up's own and inherited ones, those in the file where they are written", async () => {
    const all = await of("wet.crank", "quarrow-wet");
    const uris = new Set(all.map(({ uri }) => uri));
    expect(uris).toEqual(new Set([club.uri("wet.crank"), club.uri("quill.crank")]));
    expect(all.filter(({ text }) => text.startsWith("front.heave-rate "))).toHaveLength(1);
  });

  it("follow what is typed: missed with figure and distance, then not judged with the reason", async () => {
    const text = await club.open("quill.crank");
    const wanted = "front.heave-rate between 150 and 190 N/mm";
    await club.wire.change(club.uri("quill.crank"), text.replace(wanted, "front.heave-rate above 900 N/mm"));
    const missed = (await of("quill.crank", "quill")).find(({ text: one }) => one.includes("900"));
    expect(missed?.verdict).toBe("missed");
    expect(missed?.message).toMatch(/^front\.heave-rate is [\d.]+ N\/mm; wanted above 900 N\/mm: missed by 7\d\d/);
    await club.wire.change(club.uri("quill.crank"), text.replace(wanted, "load-transfer-front at nowhere above 10 %"));
    const unjudged = (await of("quill.crank", "quill")).find(({ text: one }) => one.includes("nowhere"));
    expect(unjudged?.verdict).toBe("not-judged");
    expect(unjudged).not.toHaveProperty("actual");
    expect(unjudged?.message).toContain("the car has no case nowhere");
  });

  it("are none where a file has none, or is none", async () => {
    expect((await asked(club.wire, club.uri("parts.crank"))).cars).toEqual([]);
    expect((await asked(club.wire, club.uri("gone.crank"))).cars).toEqual([]);
  });
});

describe("expectations of a workspace that is not on disk", () => {
  let wire: Wire | undefined;
  afterEach(async () => {
    await wire?.stop();
  });

  it("are answered once the client has read everything that they rest on", async () => {
    wire = new Wire(process.execPath, ["dist/server.cjs", "--stdio"]);
    wire.answers("bellcrank/readText", ({ uri }) => {
      const name = uri.slice(uri.lastIndexOf("/") + 1);
      return { text: readFileSync(`samples/quill/${name}`, "utf8") };
    });
    await wire.initialize(["memory:/quill"], { initializationOptions: { readsText: true } });
    const { cars, uses } = await asked(wire, "memory:/quill/wet.crank");
    expect(uses).toEqual(expect.arrayContaining(["memory:/quill/quill.crank", "memory:/quill/parts.crank"]));
    const verdicts = cars.flatMap(({ expectations }) => expectations.map(({ verdict }) => verdict));
    expect(verdicts.length).toBeGreaterThan(5);
    expect(new Set(verdicts)).toEqual(new Set(["met"]));
  });
});
