import { describe, expect, it } from "vitest";
import { applyEdits, fittingEdits, oneEdit, removal } from "../../server/findings/edits.js";

const edit = (start: number, end: number, newText: string) => ({ span: { start, end }, newText });

describe("applying edits", () => {
  it("takes all places from the text before any edit", () => {
    expect(applyEdits("one two three", [edit(8, 13, "3"), edit(0, 3, "1")])).toBe("1 two 3");
  });

  it("keeps the order of insertions at one place, before a replacement that begins there", () => {
    expect(applyEdits("ab", [edit(1, 1, "x"), edit(1, 1, "y"), edit(1, 2, "B")])).toBe("axyB");
  });

  it("refuses edits that overlap or leave the text", () => {
    expect(() => applyEdits("abc", [edit(0, 2, ""), edit(1, 3, "")])).toThrow(RangeError);
    expect(() => applyEdits("abc", [edit(2, 4, "")])).toThrow(RangeError);
  });
});

describe("edits that fit together", () => {
  it("takes a fix whole or not at all", () => {
    const first = oneEdit("", "a", { start: 0, end: 4 }, "");
    const clashing = {
      ...first,
      edits: [...oneEdit("", "a", { start: 8, end: 9 }, "").edits, ...oneEdit("", "a", { start: 3, end: 5 }, "").edits],
    };
    const elsewhere = oneEdit("", "b", { start: 0, end: 4 }, "");
    expect(fittingEdits([first, clashing, elsewhere])).toEqual([...first.edits, ...elsewhere.edits]);
  });

  it("takes the same insertion once", () => {
    const insertion = oneEdit("", "a", { start: 3, end: 3 }, " mm");
    expect(fittingEdits([insertion, insertion])).toEqual(insertion.edits);
  });
});

describe("removing a statement", () => {
  const without = (text: string, statement: string) => {
    const start = text.indexOf(statement);
    return applyEdits(text, [{ span: removal(text, { start, end: start + statement.length }), newText: "" }]);
  };

  it("takes its line with it, with the comment that belongs to it", () => {
    expect(without("a 1\n  b 2  # why\nc 3\n", "b 2")).toBe("a 1\nc 3\n");
    expect(without("a 1\n  b 2", "b 2")).toBe("a 1\n");
  });

  it("takes one comma with it in a one-line block", () => {
    expect(without("x { a 1, b 2, c 3 }", "b 2")).toBe("x { a 1, c 3 }");
    expect(without("x { a 1, b 2 }", "b 2")).toBe("x { a 1 }");
    expect(without("x { b 2 }", "b 2")).toBe("x {  }");
  });
});
