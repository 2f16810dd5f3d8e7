/** The page of a comparison: nothing to fetch, nobody's text as markup, and the drawing of what moved. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { compare } from "../../../server/views/comparison/compare.js";
import type { Comparison } from "../../../server/views/comparison/comparison.js";
import { reviewHtml } from "../../../server/views/comparison/html.js";
import { reviewOfTwo } from "../../../server/views/comparison/review.js";
import { carIn } from "./versions.js";

const parts = { "parts.crank": readFileSync("samples/quill/parts.crank", "utf8") };
const quill = readFileSync("samples/quill/quill.crank", "utf8");

const compared = (now: string): Comparison =>
  compare(
    { ...carIn(quill, undefined, parts), label: "old" },
    { ...carIn(now, undefined, parts), label: "<new> & 'here'" },
  );
const page = (found: Comparison): string => reviewHtml(reviewOfTwo(found, "quill.crank"));

describe("the page of a comparison", () => {
  it("draws an axle whose points moved over what it was, and marks what differs", () => {
    const found = compared(
      quill.replace("eye third (0, 192, 456) mm", "eye third (0, 196, 470) mm").replace("rate 55", "rate 60"),
    );
    expect(found.pictures.map(({ axle, marked }) => [axle, marked])).toEqual([["front", ["front.third"]]]);
    expect(found.pictures[0]?.before).toBeDefined();
    const html = page(found);
    expect(html.match(/<svg/g)).toHaveLength(1);
    expect(html).toContain('stroke-dasharray="3 3"');
    expect(html).toContain("dashed: as it was");
  });

  it("lays nothing over where nothing moved, and draws no axle of which nothing differs", () => {
    const found = compared(quill.replace("rate 55", "rate 60"));
    expect(found.pictures.map(({ axle, before }) => [axle, before])).toEqual([["front", undefined]]);
    expect(page(found)).not.toContain("dashed: as it was");
    expect(compared(quill.replace("mass 540", "mass 541")).pictures).toEqual([]);
    const corner = compared(quill.replace("fit V-24", "fit V-18"));
    expect(corner.pictures[0]?.marked).toEqual(["front.left.side", "front.right.side"]);
  });

  it("is whole, fetches nothing, and shows what authors write as text", () => {
    const html = page(compared(quill.replace("  mass 540", "  ## <script>alert(1)</script> & more\n  mass 540")));
    expect(html).toContain("&lt;script&gt;alert(1)&lt;/script&gt; &amp; more");
    expect(html).toContain("Is: &lt;new&gt; &amp; &#39;here&#39;");
    expect(html).not.toMatch(/<script|<link|@import|url\(|src=|href=/);
    for (const tag of ["table", "section", "article", "main", "div", "details", "td", "tr"])
      expect([tag, html.split(`<${tag}`).length]).toEqual([tag, html.split(`</${tag}>`).length]);
  });
});
