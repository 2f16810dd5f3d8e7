import { describe, expect, it } from "vitest";
import { runRules } from "../../../server/findings/run.js";
import { contextOf, type Files } from "../../support/context.js";
import { checkFindings } from "../../support/check-findings.js";
import { sharedCar } from "../../support/shared-car.js";

const found = (files: Files, name: string) =>
  runRules(contextOf(files, name)).map(({ rule, message }) => ({ rule, message }));

describe("a file that is missing", () => {
  it("is told once, and not again at every name that it may hold", () => {
    const fits = ["TB-110", "TB-120"].map((part) => `setup ${part} from wren {\n  front.corner-bar.fit ${part}\n}\n`);
    const files = { "a.crank": `use "part.crank"\n${fits.join("")}` };
    expect(found(files, "a.crank").map(({ rule }) => rule)).toEqual(["file-not-found"]);
  });
});

describe("cycle", () => {
  it("is told at every file of a circle of uses", () => {
    const files = { "a.crank": 'use "b.crank"\n', "b.crank": 'use "c.crank"\n', "c.crank": 'use "a.crank"\n' };
    for (const name of Object.keys(files)) {
      const [first, ...more] = found(files, name);
      expect(first?.rule).toBe("cycle");
      expect(first?.message).toMatch(/"[abc]\.crank" uses "[abc]\.crank", "[abc]\.crank" uses/);
      expect(more).toEqual([]);
    }
  });

  it("is told at every set-up of a circle of bases", () => {
    const files = { ...sharedCar, "a.crank": 'use "shared.crank"\nsetup wet from dry {\n}\nsetup dry from wet {\n}\n' };
    expect(found(files, "a.crank").map(({ rule }) => rule)).toEqual(["cycle", "cycle"]);
    expect(found(files, "a.crank")[0]?.message).toContain('"wet" derives from "dry", "dry" derives from "wet"');
  });

  it("is told of let values", () => {
    const text = "let a = b + 1 mm\nlet b = a * 2\n";
    expect(new Set(found({ "a.crank": text }, "a.crank").map(({ rule }) => rule))).toEqual(new Set(["cycle"]));
  });

  it("is not seen in a file that is used along two ways", () => {
    const files = { "a.crank": 'use "b.crank"\nuse "c.crank"\n', "b.crank": 'use "c.crank"\n', "c.crank": "" };
    expect(found(files, "a.crank")).toEqual([]);
  });
});

describe("file-not-found", () => {
  it("points at the path", () => {
    checkFindings(`use "dampers.crank"
#   ^^^^^^^^^^^^^^^ error file-not-found: There is no file "dampers.crank" beside this one
`);
  });

  it.each([
    ["../../../elsewhere.crank", "outside the folder"],
    ["", "not a path"],
    ["folder\\\\file.crank", "not a path"],
  ])("says what is wrong with %j", (path, words) => {
    const [first, ...more] = found({ "a.crank": `use "${path}"\n` }, "a.crank");
    expect(first?.rule).toBe("file-not-found");
    expect(first?.message).toContain(words);
    expect(more).toEqual([]);
  });

  it("says nothing to a file that is there", () => {
    expect(found({ "a.crank": 'use "parts/b.crank"\n', "parts/b.crank": "" }, "a.crank")).toEqual([]);
  });
});

describe("measured-table", () => {
  const car = (csv: string): Files => ({
    "a.crank":
      'use "shared.crank"\nsetup wet from wren {\n  axle front {\n    damper extra for corner { fit V-22, ratio curve from csv "m.csv" }\n  }\n}\n',
    "m.csv": csv,
    ...sharedCar,
  });

  it("names the file and its line", () => {
    const [first, ...more] = found(car("travel [mm],deflection [mm]\n-10,-9\n0,\n10,9\n"), "a.crank");
    expect(first?.rule).toBe("measured-table");
    expect(first?.message).toContain('The table in "m.csv", line 3 cannot be read');
    expect(first?.message).toContain("Nothing that rests on it is computed; correct the file.");
    expect(more).toEqual([]);
  });

  it("says nothing to a table that reads", () => {
    expect(found(car("travel [mm],deflection [mm]\n-10,-9\n0,0\n10,9\n"), "a.crank")).toEqual([]);
  });
});
