/** Rename over the wire, from one open file into those that nobody has open: the texts after it are checked by the server again. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { WorkspaceEdit } from "vscode-languageserver/node";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Wire } from "../support/wire.js";
import { at, type Club, edited, startClub } from "./club.js";

const dusk = `use "wet.crank"

setup quarrow-dusk from quarrow-wet {
  front {
    third {
      rate 42 N/mm
    }
  }
  front.rocker.third (0, 192, 460) mm
  rear.corner-bar.fit TB-110
  case hairpin { speed 60 km/h }
  expect front.third.load at hairpin below 3 kN
}
`;

const second = `use "parts.crank"
use "quill.crank"

car heron {
  axle front {
    track 1400 mm
    linkage ratio
    wheel { centre (0, 700, 230) mm, unsprung-mass 15 kg }
    spring corner-bar for corner {
      fit TB-110
      ratio 0.4 deg/mm
    }
  }
}
`;

describe("rename over the wire", () => {
  let club: Club;
  let car: string;
  let was: readonly string[];
  beforeAll(async () => {
    club = await startClub();
    club.write("dusk.crank", dusk);
    club.write("heron.crank", second);
    car = await club.open("quill.crank");
    was = await found(original());
  });
  afterAll(async () => {
    expect(await club.close()).toBe(0);
  });

  const names = ["quill.crank", "parts.crank", "wet.crank", "dry.crank", "dusk.crank", "heron.crank"];

  /** Every file of the folder after the rename, by name. */
  async function renamed(name: string, marker: string, part: string, newName: string): Promise<Map<string, string>> {
    const position = at(club.read(name), marker, part);
    const asked = { textDocument: { uri: club.uri(name) }, position, newName };
    const { changes = {} } = await club.wire.request<WorkspaceEdit>("textDocument/rename", asked);
    return new Map(names.map((one) => [one, edited(club.read(one), changes[club.uri(one)] ?? [])]));
  }

  /** What a server that begins anew finds in such files. */
  async function found(texts: ReadonlyMap<string, string>): Promise<readonly string[]> {
    const folder = mkdtempSync(join(tmpdir(), "club house "));
    const uri = (name: string): string => pathToFileURL(join(folder, name)).href;
    for (const [name, text] of texts) writeFileSync(join(folder, name), text);
    const wire = new Wire(process.execPath, ["dist/cli.js", "serve", "--stdio"]);
    await wire.initialize([pathToFileURL(folder).href]);
    const rules: string[] = [];
    for (const [name, text] of texts) {
      await wire.open(uri(name), text);
      for (const { code } of await wire.findings(uri(name))) rules.push(`${name} ${String(code)}`);
    }
    await wire.stop();
    rmSync(folder, { recursive: true });
    return rules;
  }

  const original = (): Map<string, string> => new Map(names.map((name) => [name, club.read(name)]));

  it.each([
    ["an element", "quill.crank", "spring third", "third", "centre-spring"],
    ["an eye", "quill.crank", "eye third (0, 192, 456)", "third", "top-eye"],
    ["a car", "quill.crank", "car quill", "quill", "plume"],
    ["a case", "quill.crank", "case hairpin", "hairpin", "kiln"],
    ["a part, from where it is fitted", "quill.crank", "fit TB-110", "TB-110", "TB-long"],
    ["a part, where it is declared", "parts.crank", "torsion-bar TB-110", "TB-110", "TB-short"],
    ["a set-up, from another's line", "dusk.crank", "from quarrow-wet", "quarrow-wet", "rain"],
  ])("takes %s with it into every file", async (_what, name, marker, part, newName) => {
    const before = original();
    const now = await renamed(name, marker, part, newName);
    expect([...now].filter(([one, text]) => text !== before.get(one)).length).toBeGreaterThan(1);
    expect(await found(now)).toEqual(was);
  });

  it("writes a set-up's braces, paths, cases and expectations anew", async () => {
    const element = await renamed("quill.crank", "spring third", "third", "centre-spring");
    expect(element.get("dusk.crank")).toContain("    centre-spring {\n      rate 42 N/mm");
    expect(element.get("dusk.crank")).toContain("expect front.centre-spring.load at hairpin");
    expect(element.get("dusk.crank")).toContain("front.rocker.third (0, 192, 460) mm");
    const eye = await renamed("quill.crank", "eye third (0, 192, 456)", "third", "top-eye");
    expect(eye.get("dusk.crank")).toContain("front.rocker.top-eye (0, 192, 460) mm");
    expect(eye.get("dusk.crank")).toContain("    third {\n");
    const hairpin = await renamed("quill.crank", "case hairpin", "hairpin", "kiln");
    expect(hairpin.get("dusk.crank")).toContain("case kiln { speed 60 km/h }");
    expect(hairpin.get("dusk.crank")).toContain("at kiln below");
  });

  it("takes a part with it into both cars that it is fitted to", async () => {
    const now = await renamed("parts.crank", "torsion-bar TB-110", "TB-110", "TB-short");
    for (const name of ["parts.crank", "quill.crank", "dusk.crank", "heron.crank"]) {
      expect(now.get(name)).toContain("TB-short");
      expect(now.get(name)).not.toContain("TB-110");
    }
    expect(now.get("wet.crank")).toBe(club.read("wet.crank"));
  });

  it("goes by the text in the editor where one is open", async () => {
    const typed = car.replace("spring third", "# a note\n    spring third");
    await club.wire.change(club.uri("quill.crank"), typed);
    const asked = { textDocument: { uri: club.uri("quill.crank") }, newName: "centre-spring" };
    const { changes } = await club.wire.request<WorkspaceEdit>("textDocument/rename", {
      ...asked,
      position: at(typed, "spring third", "third"),
    });
    expect(edited(typed, changes?.[club.uri("quill.crank")] ?? [])).toContain("spring centre-spring for heave");
    await club.wire.change(club.uri("quill.crank"), car);
  });

  it("is refused with the reason, by the name of the file that has the name", async () => {
    await expect(renamed("quill.crank", "car quill", "quill", "quarrow-dry")).rejects.toThrow(
      '"quarrow-dry" already names a set-up in dry.crank.',
    );
    await expect(renamed("quill.crank", "spring third", "third", "a b")).rejects.toThrow(/is not a name/);
  });

  it("offers nothing in a comment, on a word and on a value", async () => {
    for (const [marker, part] of [
      ["# ready to run", "ready"],
      ["wheelbase 2540", "wheelbase"],
      ["wheelbase 2540", "2540"],
    ] as const) {
      const position = at(car, marker, part);
      const asked = { textDocument: { uri: club.uri("quill.crank") }, position };
      expect(await club.wire.request("textDocument/prepareRename", asked)).toBeNull();
    }
  });

  it("still reaches what can be read of a broken set-up, and leaves a set-up without its car alone", async () => {
    club.write(
      "dusk.crank",
      dusk.replace("rate 42 N/mm", "rate").replace("TB-110", "TB-").replace("third.load at", "third.lo at"),
    );
    club.write("heron.crank", 'use "gone.crank"\nsetup lost from nobody {\n  front.third.rate 3 N/mm\n}\n');
    const uris = ["dusk.crank", "heron.crank"].map((name) => ({ uri: club.uri(name), type: 2 }));
    await club.wire.notify("workspace/didChangeWatchedFiles", { changes: uris });
    const now = await renamed("quill.crank", "spring third", "third", "centre-spring");
    expect(now.get("dusk.crank")).toContain("    centre-spring {\n      rate\n");
    expect(now.get("dusk.crank")).toContain("expect front.centre-spring.lo at hairpin");
    expect(now.get("heron.crank")).toContain("front.third.rate 3 N/mm");
  });
});
