/** Offsets, lines and columns, for every kind of line end. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { LineTable } from "../../grammar/index.js";

const text = fc.array(fc.constantFrom("a", "é", "😀", "\n", "\r", "\r\n", "")).map((pieces) => pieces.join(""));

describe("line table", () => {
  it("counts lines and columns as the language server protocol does", () => {
    const table = new LineTable("ab\ncd\r\ne\rf");
    expect([0, 2, 3, 6, 7, 8, 9, 10].map((offset) => table.position(offset))).toEqual([
      { line: 0, character: 0 },
      { line: 0, character: 2 },
      { line: 1, character: 0 },
      { line: 1, character: 2 }, // between \r and \n: the end of the line
      { line: 2, character: 0 },
      { line: 2, character: 1 },
      { line: 3, character: 0 },
      { line: 3, character: 1 },
    ]);
    expect([0, 1, 2, 3].map((line) => [table.lineStart(line), table.lineEnd(line)])).toEqual([
      [0, 2],
      [3, 5],
      [7, 8],
      [9, 10],
    ]);
    expect(table.lineCount).toBe(4);
  });

  it("leads from an offset to its place and back", () => {
    fc.assert(
      fc.property(text, fc.nat(), (content, any) => {
        const table = new LineTable(content);
        const offset = any % (content.length + 1);
        const insideLineEnd = content.charAt(offset - 1) === "\r" && content.charAt(offset) === "\n";
        expect(table.offset(table.position(offset))).toBe(insideLineEnd ? offset - 1 : offset);
      }),
    );
  });

  it("has as many lines as the text split at its line ends", () => {
    fc.assert(
      fc.property(text, (content) => {
        const table = new LineTable(content);
        const lines = content.split(/\r\n|\r|\n/);
        expect(table.lineCount).toBe(lines.length);
        expect(lines.map((_, line) => content.slice(table.lineStart(line), table.lineEnd(line)))).toEqual(lines);
      }),
    );
  });

  it("moves places outside of the text to its edge", () => {
    fc.assert(
      fc.property(
        text,
        fc.integer({ min: -9, max: 99 }),
        fc.integer({ min: -9, max: 99 }),
        (content, line, character) => {
          const table = new LineTable(content);
          const offset = table.offset({ line, character });
          expect(offset >= 0 && offset <= content.length).toBe(true);
          const position = table.position(line * 100);
          expect(position.line >= 0 && position.line < table.lineCount && position.character >= 0).toBe(true);
        },
      ),
    );
    const table = new LineTable("ab\ncd");
    expect(table.offset({ line: 0, character: 99 })).toBe(2);
    expect(table.offset({ line: 99, character: 0 })).toBe(5);
    expect(table.offset({ line: -1, character: 3 })).toBe(0);
  });
});
