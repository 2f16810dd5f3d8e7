/** The canonical layout, case by case. */
import { describe, expect, it } from "vitest";
import { format, formatEdits, formatRange } from "../../grammar/index.js";
import { program, programs } from "./programs.js";

const lines = (...text: string[]) => text.map((line) => `${line}\n`).join("");

describe("layout", () => {
  it.each(programs)("leaves %s as the language page has it", (_, text) => {
    expect(format(text)).toBe(text);
  });

  it.each<[what: string, before: string, after: string]>([
    ["nothing", "", ""],
    ["nothing but empty lines", "\n\n  \n", ""],
    ["blanks", "  mass   545kg  ", "mass 545 kg\n"],
    ["the end of the file", "mass 545 kg", "mass 545 kg\n"],
    ["points", "fore (135,190 ,118)mm", "fore (135, 190, 118) mm\n"],
    ["a point over several lines", "fore (\n  135,\n  190,\n  118,\n) mm", "fore (135, 190, 118) mm\n"],
    ["ranges", "travel -30..25mm", "travel -30 .. 25 mm\n"],
    ["a section", "section 8x30 mm", "section 8 x 30 mm\n"],
    ["expressions", "let a=(b+2 mm)*3 -  c/4", "let a = (b + 2 mm) * 3 - c / 4\n"],
    ["signs", "by + 2 mm", "by + 2 mm\n"],
    ["rows", "bump{50mm/s:320N,100mm/s:470N,}", "bump { 50 mm/s: 320 N, 100 mm/s: 470 N }\n"],
    ["a trailing comma", "brakes { front 58 %, mounting outboard, }", "brakes { front 58 %, mounting outboard }\n"],
    ["a short leaf over several lines", "brakes {\n  front 58 %\n}", "brakes { front 58 % }\n"],
    ["an empty block", "linkage {\n\n}", "linkage {}\n"],
    ["a brace on the line below", "brakes\n{ front 58 % }", "brakes { front 58 % }\n"],
    ["many empty lines", "a 1\n\n\n\nb 2\n\n", "a 1\n\nb 2\n"],
    [
      "empty lines at the edges of a block",
      "aero {\n\n  drag { area 1 m^2 }\n\n}",
      "aero {\n  drag { area 1 m^2 }\n}\n",
    ],
    ["a note", "##  far\n##near\n##\na 1", "##  far\n## near\n##\na 1\n"],
    ["a comment behind a statement", "a 1 # why", "a 1  # why\n"],
    ["a comment behind a brace", "aero{# why\nlag 15 ms\n}# done", "aero {  # why\n  lag 15 ms\n}  # done\n"],
    [
      "a comment behind a comma",
      "aero { lag 15 ms, # why\ndrag { area 1 m^2 } }",
      "aero {\n  lag 15 ms  # why\n  drag { area 1 m^2 }\n}\n",
    ],
    [
      "a comment inside a point, with its lines",
      "a { fore (1, # x\n  2, 3) mm\n}",
      "a {\n  fore (1, # x\n  2, 3) mm\n}\n",
    ],
    ["Windows' line ends", "a 1\r\n\r\nb   2", "a 1\r\n\r\nb 2\r\n"],
    ["the byte order mark", "\ufeffa  1", "\ufeffa 1\n"],
  ])("settles %s", (_, before, after) => {
    expect(format(before)).toBe(after);
    expect(format(after)).toBe(after);
  });

  it("gives an element's statements a line each even where they would fit one", () => {
    const car =
      "car q { axle front { damper side for corner { fit V-14, between rocker.side and chassis (10, 40, 360) mm } } }";
    expect(format(car)).toBe(
      lines(
        "car q {",
        "  axle front {",
        "    damper side for corner {",
        "      fit V-14",
        "      between rocker.side and chassis (10, 40, 360) mm",
        "    }",
        "  }",
        "}",
      ),
    );
  });

  it("breaks a block that does not fit the line", () => {
    const point = "(-1000.25, -1000.25, -1000.25) mm";
    expect(format(`lower-wishbone { fore ${point}, aft ${point}, outer ${point} }`)).toBe(
      lines("lower-wishbone {", `  fore ${point}`, `  aft ${point}`, `  outer ${point}`, "}"),
    );
  });
});

describe("text that cannot be read", () => {
  it.each<[what: string, before: string, after: string]>([
    ["keeps the line and lays out the others", "a   1\n  b  (2,\nc   3", "a 1\n  b  (2,\nc 3\n"],
    [
      "keeps a statement whose brace shares its line",
      "x   1\nwheel { camber  -2..  }\ny   2",
      "x 1\nwheel { camber  -2..  }\ny 2\n",
    ],
    [
      "lays out the other lines of a block",
      "aero {\nlag   15 ms\n  drag  @ 3\n}",
      "aero {\n  lag 15 ms\n  drag  @ 3\n}\n",
    ],
    ["keeps everything where braces do not match", "aero {\nlag   15 ms\n", "aero {\nlag   15 ms\n"],
  ])("%s", (_, before, after) => {
    expect(format(before)).toBe(after);
    expect(format(after)).toBe(after);
  });
});

describe("edits", () => {
  it("are none for a text in canonical layout", () => {
    expect(formatEdits(program("quill.crank"))).toEqual([]);
  });

  it("touch only what changes", () => {
    expect(formatEdits("a 1\nb   2\nc 3\n")).toEqual([{ span: { start: 5, end: 8 }, newText: " " }]);
    expect(formatEdits("a 1")).toEqual([{ span: { start: 3, end: 3 }, newText: "\n" }]);
  });

  it("of a range stay within its lines", () => {
    const text = "a   1\nb   2\nc   3\n";
    expect(formatRange(text, { start: 7, end: 8 })).toEqual({ span: { start: 7, end: 10 }, newText: " " });
    expect(formatRange(text, { start: 2, end: 8 })).toEqual({ span: { start: 1, end: 10 }, newText: " 1\nb " });
    expect(formatRange("a 1\n", { start: 0, end: 1 })).toBeUndefined();
  });
});
