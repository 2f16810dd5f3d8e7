/** Findings as an editor sees them: at once, after a change, and never stale. */
import { rmSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { type Club, rangeAt, startClub } from "./club.js";

describe("findings over the wire", () => {
  let club: Club;
  beforeEach(async () => {
    club = await startClub();
  });
  afterEach(async () => {
    expect(await club.close()).toBe(0);
  });

  it("has none for the sample", async () => {
    await club.open("quill.crank");
    expect(await club.wire.findings(club.uri("quill.crank"))).toEqual([]);
  });

  it("come with a change and go with its undoing", async () => {
    const text = await club.open("quill.crank");
    const uri = club.uri("quill.crank");
    await club.wire.change(uri, "rtae", rangeAt(text, "rate 55", "rate"));
    const found = await club.wire.findings(uri);
    expect(found.map(({ code, severity }) => ({ code, severity }))).toContainEqual({
      code: "unknown-word",
      severity: 1,
    });
    expect(found.find(({ code }) => code === "unknown-word")?.message).toContain("rate");
    await club.wire.change(uri, "rate", rangeAt(text, "rate 55", "rate"));
    expect(await club.wire.findings(uri)).toEqual([]);
  });

  it("follow a file that another one rests on, opened or changed on disk", async () => {
    await club.open("wet.crank");
    const wet = club.uri("wet.crank");
    const parts = club.read("parts.crank");
    club.write("parts.crank", parts.replace(/TB-105/g, "TB-999"));
    await club.wire.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: club.uri("parts.crank"), type: 2 }] });
    expect(
      await club.wire.findings(wet, ({ diagnostics }) => diagnostics.some(({ code }) => code === "unknown-name")),
    ).toBeDefined();
    await club.wire.open(club.uri("parts.crank"), parts);
    expect(
      await club.wire.findings(wet, ({ diagnostics }) => diagnostics.every(({ code }) => code !== "unknown-name")),
    ).toBeDefined();
  });

  it("name a file that was deleted, and forget it when it is back", async () => {
    await club.open("wet.crank");
    const wet = club.uri("wet.crank");
    const car = club.read("quill.crank");
    rmSync(join(club.folder, "quill.crank"));
    await club.wire.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: club.uri("quill.crank"), type: 3 }] });
    expect(
      await club.wire.findings(wet, ({ diagnostics }) => diagnostics.some(({ code }) => code === "file-not-found")),
    ).toBeDefined();
    club.write("quill.crank", car);
    await club.wire.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: club.uri("quill.crank"), type: 1 }] });
    expect(await club.wire.findings(wet, ({ diagnostics }) => diagnostics.length === 0)).toBeDefined();
  });

  it("are gone with a file that is closed", async () => {
    const uri = club.uri("draft.crank");
    await club.wire.open(uri, "car {");
    expect((await club.wire.findings(uri)).length).toBeGreaterThan(0);
    await club.wire.shut(uri);
    expect(
      await club.wire.findings(uri, ({ version, diagnostics }) => version === undefined && diagnostics.length === 0),
    ).toBeDefined();
  });

  it("survive a branch switch: every file changes at once", async () => {
    await club.open("wet.crank");
    await club.open("dry.crank");
    const car = club.read("quill.crank");
    club.write("quill.crank", car.replaceAll("third", "middle"));
    await club.wire.notify("workspace/didChangeWatchedFiles", {
      changes: ["quill.crank", "parts.crank"].map((name) => ({ uri: club.uri(name), type: 2 })),
    });
    expect(
      await club.wire.findings(club.uri("wet.crank"), ({ diagnostics }) =>
        diagnostics.some(({ code }) => code === "override-without-target"),
      ),
    ).toBeDefined();
    club.write("quill.crank", car);
    await club.wire.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: club.uri("quill.crank"), type: 2 }] });
    for (const name of ["wet.crank", "dry.crank"])
      await club.wire.findings(club.uri(name), ({ diagnostics }) => diagnostics.length === 0);
  });

  it("are given for whatever is typed, and the server lives on", async () => {
    const uri = club.uri("draft.crank");
    await club.wire.open(uri, "");
    const text = club.read("quill.crank");
    for (let end = 0; end < text.length; end += 211) {
      await club.wire.change(uri, text.slice(0, end));
      await club.wire.findings(uri);
    }
    await club.wire.change(uri, text.replace(/^use.*$/m, 'use "parts.crank"'));
    expect(await club.wire.findings(uri)).toEqual([]);
  });
});
