import { describe, expect, it } from "vitest";
import { parse } from "../../grammar/index.js";
import { applyEdits } from "../../server/findings/edits.js";
import { insertionInto } from "../../server/findings/insertion.js";

/** The text with `c 3` put into its one block, where `a` and `b` usually stand before it. */
function inserted(text: string, statement = "c 3 mm"): string {
  const [first] = parse(text).document.entries;
  const block = first?.kind === "statement" ? first.block : undefined;
  if (!block) throw new Error("no block");
  return applyEdits(text, [insertionInto(text, block, statement, new Set(["a", "b"]))]);
}

describe("inserting a statement", () => {
  it("keeps a one-line block on one line", () => {
    expect(inserted("x { a 1 mm, d 4 mm }\n")).toBe("x { a 1 mm, c 3 mm, d 4 mm }\n");
    expect(inserted("x { d 4 mm }\n")).toBe("x { c 3 mm, d 4 mm }\n");
  });

  it("gives it a line of its own behind the comment of the line above", () => {
    expect(inserted("x {\n  a 1 mm  # why\n  d 4 mm\n}\n")).toBe("x {\n  a 1 mm  # why\n  c 3 mm\n  d 4 mm\n}\n");
    expect(inserted("x {\n  d 4 mm\n}\n")).toBe("x {\n  c 3 mm\n  d 4 mm\n}\n");
  });

  it("opens up an empty block", () => {
    expect(inserted("x {}\n")).toBe("x {\n  c 3 mm\n}\n");
    expect(inserted("x {\n}\n")).toBe("x {\n  c 3 mm\n}\n");
  });

  it("indents every line of a statement with a block", () => {
    expect(inserted("x {\n  a 1 mm\n}\n", "c {\n  e 1 mm\n}")).toBe("x {\n  a 1 mm\n  c {\n    e 1 mm\n  }\n}\n");
  });
});
