/** A measured table is watched: what it says on disk is what the open file that rests on it says, at once. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Hover, MarkupContent } from "vscode-languageserver/node";
import { samples } from "../support/samples.js";
import { at, type Club, startClub } from "./club.js";

describe("a measured table over the wire", () => {
  let club: Club;
  const table = samples["tern/rear-ratio.csv"] ?? "";

  beforeEach(async () => {
    club = await startClub();
    for (const name of ["parts.crank", "tern.crank", "damper.csv", "stop.csv", "rear-ratio.csv"]) {
      club.write(name, samples[`tern/${name}`] ?? "");
    }
  });
  afterEach(async () => {
    expect(await club.close()).toBe(0);
  });

  const rewrite = async (text: string): Promise<void> => {
    club.write("rear-ratio.csv", text);
    const changes = [{ uri: club.uri("rear-ratio.csv"), type: 2 }];
    await club.wire.notify("workspace/didChangeWatchedFiles", { changes });
  };

  it("has its bad row named when it is saved, and forgiven when it is mended", async () => {
    await club.open("tern.crank");
    const uri = club.uri("tern.crank");
    expect(await club.wire.findings(uri)).toEqual([]);
    await rewrite(table.replace("0.25, 0.229", "0.25, "));
    const found = await club.wire.findings(uri, ({ diagnostics }) => diagnostics.length > 0);
    expect(found.map(({ code }) => code)).toContain("measured-table");
    expect(found[0]?.message).toContain('"rear-ratio.csv", line 9');
    await rewrite(table);
    expect(await club.wire.findings(uri, ({ diagnostics }) => diagnostics.length === 0)).toEqual([]);
  });

  it("changes the figures that hover tells", async () => {
    const text = await club.open("tern.crank");
    const uri = club.uri("tern.crank");
    const rear = text.slice(text.indexOf("axle rear"));
    const inRear = at(rear, "spring coil", "coil");
    const line = text.slice(0, text.indexOf("axle rear")).split("\n").length - 1 + inRear.line;
    const told = async (): Promise<string> => {
      const hover = await club.wire.request<Hover | null>("textDocument/hover", {
        textDocument: { uri },
        position: { line, character: inRear.character },
      });
      return (hover?.contents as MarkupContent | undefined)?.value ?? "";
    };
    expect(await told()).toContain("motion ratio (element per wheel travel) 0.912");
    // Every deflection measured on a damper that moves by a tenth more.
    const longer = table.replaceAll(
      /^(-?[\d.]+), (-?[\d.]+)$/gm,
      (_, z: string, s: string) => `${z}, ${Number(s) * 1.1}`,
    );
    await rewrite(longer);
    expect(await told()).toContain("motion ratio (element per wheel travel) 1.003");
  });
});
