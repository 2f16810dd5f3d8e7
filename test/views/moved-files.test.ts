/** Lines that lead to files, after files and folders were moved: each still leads where it led. */
import { describe, expect, it } from "vitest";
import { applyEdits } from "../../server/findings/run.js";
import { createWorkspace } from "../../server/snapshot/create.js";
import type { FileView } from "../../server/snapshot/workspace.js";
import { editsForMoves, type Move } from "../../server/views/moved-files.js";
import { uriOf } from "../support/context.js";

type Texts = Readonly<Record<string, string>>;

const texts: Texts = {
  "cars/quill.crank": 'use "../parts/shelf.crank"  # springs\ncar quill {\n  wheelbase 2.5 m\n}\n',
  "cars/wet.crank": 'use "quill.crank"\nsetup wet from quill { }\n',
  "season/dry.crank": 'use "../cars/quill.crank"\nuse "./../parts/shelf.crank"\nsetup dry from quill { }\n',
  "parts/shelf.crank":
    'catalogue {\n  valving V-1 { bump csv "bench runs/first é.csv", rebound { 50 mm/s: 300 N } }\n}\n',
  "lost.crank": 'use "gone.crank"\nuse "../../outside.crank"\nuse "http://club.example/x.crank"\nuse ""\nuse "half',
};

function viewsOf(of: Texts): readonly FileView[] {
  const workspace = createWorkspace({ read: () => ({ missing: "missing" }) });
  for (const [name, text] of Object.entries(of)) workspace.set(uriOf(name), text);
  return Object.keys(of).map((name) => workspace.file(uriOf(name)));
}

const move = (from: string, to: string): Move => ({ from: uriOf(encodeURI(from)), to: uriOf(encodeURI(to)) });

/** The texts that change, by their name before the move. */
function moved(...moves: readonly Move[]): Texts {
  const edits = editsForMoves(viewsOf(texts), moves);
  const changed = Object.entries(texts).map(([name, text]) => {
    const own = edits.filter(({ uri }) => uri === uriOf(name));
    return [name, own.length === 0 ? undefined : applyEdits(text, own)] as const;
  });
  return Object.fromEntries(changed.flatMap(([name, text]) => (text === undefined ? [] : [[name, text]])));
}

describe("files that are moved", () => {
  it("are followed by every line that leads to them, and by nothing else in the text", () => {
    expect(moved(move("cars/quill.crank", "cars/Quill no 7.crank"))).toEqual({
      "cars/wet.crank": 'use "Quill no 7.crank"\nsetup wet from quill { }\n',
      "season/dry.crank": 'use "../cars/Quill no 7.crank"\nuse "./../parts/shelf.crank"\nsetup dry from quill { }\n',
    });
    expect(moved(move("parts/shelf.crank", "shelf.crank"))).toEqual({
      "cars/quill.crank": (texts["cars/quill.crank"] ?? "").replace("../parts/shelf.crank", "../shelf.crank"),
      "season/dry.crank": (texts["season/dry.crank"] ?? "").replace("./../parts/shelf.crank", "../shelf.crank"),
      "parts/shelf.crank": (texts["parts/shelf.crank"] ?? "").replace("bench runs/", "parts/bench runs/"),
    });
  });

  it("keep leading where they led themselves", () => {
    expect(moved(move("season/dry.crank", "season/2026/spring/dry.crank"))).toEqual({
      "season/dry.crank":
        'use "../../../cars/quill.crank"\nuse "../../../parts/shelf.crank"\nsetup dry from quill { }\n',
    });
  });

  it("may be a whole folder: what is inside it stays as it is", () => {
    expect(moved(move("cars", "machines"))).toEqual({
      "season/dry.crank": 'use "../machines/quill.crank"\nuse "./../parts/shelf.crank"\nsetup dry from quill { }\n',
    });
    expect(Object.keys(moved(move("car", "machines")))).toEqual([]);
  });

  it("may be a table beside the text", () => {
    expect(moved(move("parts/bench runs/first é.csv", "parts/bench runs/second ü.csv"))).toEqual({
      "parts/shelf.crank": (texts["parts/shelf.crank"] ?? "").replace("first é.csv", "second ü.csv"),
    });
  });

  it("may be several at once, each other's neighbours before and after", () => {
    expect(moved(move("cars/quill.crank", "a/quill.crank"), move("cars/wet.crank", "a/wet.crank"))).toEqual({
      "season/dry.crank": 'use "../a/quill.crank"\nuse "./../parts/shelf.crank"\nsetup dry from quill { }\n',
    });
  });

  it("leave paths alone that lead nowhere, out of the folder or to another place altogether", () => {
    expect(moved(move("lost.crank", "found.crank"))).toEqual({});
    expect(moved({ from: uriOf("cars/quill.crank"), to: "other://elsewhere/quill.crank" })).toEqual({});
    expect(moved(move("cars/quill.crank", 'cars/a"b.crank'))).toEqual({});
    expect(moved()).toEqual({});
  });

  it("take a name that is missing with them, so that it is found when it comes", () => {
    expect(moved(move("gone.crank", "cars/here.crank"))["lost.crank"]).toMatch(/^use "cars\/here\.crank"\n/);
  });
});
