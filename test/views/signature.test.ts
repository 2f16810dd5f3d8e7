/** How a half-typed line goes on: `|` is the cursor, `[…]` in the answer the part that is due. */
import { describe, expect, it } from "vitest";
import { type SignatureHelp, signatureAt } from "../../server/views/signature.js";
import { createWorkspace } from "../../server/snapshot/create.js";

function helpFor(marked: string): SignatureHelp | undefined {
  const offset = marked.indexOf("|");
  const uri = "file:///a.crank";
  const workspace = createWorkspace({ read: () => ({ missing: "missing" }) });
  workspace.set(uri, marked.replace("|", ""));
  return signatureAt(workspace.file(uri), offset);
}

const waysAt = (marked: string): readonly string[] =>
  (helpFor(marked)?.ways ?? []).map(({ label, parts, due }) => {
    const { from, to } = parts[due] ?? { from: 0, to: 0 };
    return `${label.slice(0, from)}[${label.slice(from, to)}]${label.slice(to)}`;
  });

/** Of the part that is due. */
function helpAt(marked: string): string {
  const [way] = helpFor(marked)?.ways ?? [];
  return way?.parts[way.due]?.help ?? "";
}

const inAxle = (line: string): readonly string[] => waysAt(`car lark {\n  axle front {\n    ${line}\n  }\n}\n`);
const inSpring = (line: string): readonly string[] => inAxle(`spring third for heave {\n ${line}\n }`);
const inCar = (line: string): readonly string[] => waysAt(`car lark {\n  ${line}\n}\n`);

describe("signature help", () => {
  it.each([
    ["spring |", ["spring [NAME] for MODE"]],
    ["spring thi|", ["spring [NAME] for MODE"]],
    ["spring third |", ["spring NAME [for] MODE"]],
    ["spring third for |", ["spring NAME for [MODE]"]],
    ["spring third for heave and r|", ["spring NAME for [MODE]"]],
    ["spring third for heave |", []],
    ["spring third for heave { |}", []],
    ["spri|", []],
    ["# spring |", []],
    ["nonsense |", []],
  ])("of an element: %s", (line, ways) => {
    expect(inAxle(line)).toEqual(ways);
  });

  it.each([
    ["between |", ["between [END] and END"]],
    ["between rocker.side |", ["between END [and] END"]],
    ["between rocker.side and |", ["between END and [END]"]],
    ["between rocker.side and chassis (1, 2, 3) mm |", []],
    ["rate 55 N/mm |", []],
  ])("of a connection: %s", (line, ways) => {
    expect(inSpring(line)).toEqual(ways);
  });

  it("stays with a number until its unit is there", () => {
    expect(inSpring("rate 55 |")[0]).toMatch(/^rate \[/);
  });

  it("keeps only the ways that what is written still fits", () => {
    expect(inCar("expect |").length).toBeGreaterThan(4);
    expect(inCar("expect front.heave-rate between |")).toEqual(["expect FIGURE between [VALUE] and VALUE"]);
    expect(inCar("expect front.heave-rate between 150 N/mm and |")).toEqual([
      "expect FIGURE between VALUE and [VALUE]",
    ]);
  });

  it("goes on where closing braces are still to come", () => {
    expect(waysAt("car lark {\n  axle front {\n    spring third for |")).toEqual(["spring NAME for [MODE]"]);
  });

  it("tells units, what is usual, and which modes there are", () => {
    expect(helpAt("car lark {\n  axle front {\n    track |\n  }\n}\n")).toMatch(
      /^Units: `mm`.*\. Usual: \d+ mm to \d+ mm\.$/,
    );
    expect(helpAt("car lark {\n  axle front {\n    spring a for |\n  }\n}\n")).toBe(
      "One of `corner`, `heave`, `roll`; several are joined by `and`.",
    );
    expect(helpAt("car lark {\n  hydraulic-link a for |\n}\n")).toContain("`warp`");
  });
});
