/**
 * Whatever the text: the parser answers, quickly, with spans that lie in the text and inside each
 * other, and the two ways of reading points agree.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Parsed, parse } from "../../grammar/index.js";
import { read } from "../../grammar/parse.js";
import { programArbitrary, soupArbitrary } from "./program-arbitrary.js";
import { programs } from "./programs.js";
import { showDocument, showProblems } from "./s-expression.js";
import { childrenOf, walk } from "./tree.js";

const anyText = fc.oneof(soupArbitrary, programArbitrary, fc.string({ unit: "binary" }));
/** A program with one piece replaced by rubbish. */
const mutated = fc
  .tuple(fc.constantFrom(...programs.map(([, text]) => text)), fc.nat(), fc.nat(40), soupArbitrary)
  .map(([text, at, length, rubbish]) => {
    const start = at % (text.length + 1);
    return text.slice(0, start) + rubbish + text.slice(start + length);
  });

/** What is wrong with the places; one assertion a text, since a thousand would take longer than the parser. */
function spanFaults({ document, comments, problems, text }: Parsed): readonly string[] {
  const faults: string[] = [];
  const hold = (right: boolean, what: string) => void (right || faults.push(what));
  hold(document.start === 0 && document.end === text.length, "document");
  walk(document, (node, parent) => {
    hold(node.start <= node.end, `${node.kind} from ${node.start} to ${node.end}`);
    hold(node.start >= parent.start && node.end <= parent.end, `${node.kind} at ${node.start} in ${parent.kind}`);
    let behind = node.start;
    for (const child of childrenOf(node)) {
      hold(child.start >= behind, `${child.kind} at ${child.start}, the one before ends at ${behind}`);
      behind = child.end;
    }
  });
  for (const spans of [comments, problems]) {
    let behind = 0;
    for (const { start, end, kind } of spans) {
      hold(start >= behind && start <= end && end <= text.length, `${kind} from ${start} to ${end}`);
      behind = start;
    }
  }
  return faults;
}

/** Where a value is not finite, or a name, unit or text is not what stands at its place. */
function leafFaults({ document, text }: Parsed): readonly string[] {
  const faults: string[] = [];
  walk(document, (node) => {
    const written = text.slice(node.start, node.end);
    if (node.kind === "quantity" && (!Number.isFinite(node.value) || Object.is(node.value, -0))) faults.push(written);
    if ((node.kind === "unit" || (node.kind === "name" && written !== "\u00d7")) && node.text !== written)
      faults.push(written);
    if (node.kind === "text" && !written.startsWith(`"${node.value}`)) faults.push(written);
  });
  return faults;
}

describe("any text", () => {
  it.each([
    ["made of pieces", anyText],
    ["a program with a piece replaced", mutated],
  ])("has a whole tree: %s", (_, arbitrary) => {
    fc.assert(
      fc.property(arbitrary, (text) => {
        const parsed = parse(text);
        expect(spanFaults(parsed)).toEqual([]);
        expect(leafFaults(parsed)).toEqual([]);
      }),
      { numRuns: 1500 },
    );
  });

  it("tells of a missing brace where its line ends, though something unreadable stands below", () => {
    const { problems } = parse("# x\ns\n%  # y\n  fit TB\n}\n");
    const [lost] = problems.filter(({ kind }) => kind === "unopened-block");
    expect(lost).toMatchObject({ start: 4, end: 5 });
  });

  it("reads the same whether points are one token or many", () => {
    fc.assert(
      fc.property(fc.oneof(anyText, mutated), fc.boolean(), (text, byIndentation) => {
        const fast = read(text, { byIndentation }).parsed;
        const slow = read(text, { byIndentation, points: false }).parsed;
        expect(slow.document).toEqual(fast.document);
        // A point that is out of place is told whole, or from its first bracket on.
        const told = ({ problems }: Parsed) => problems.map(({ kind, start }) => `${start} ${kind}`).sort();
        expect(told(slow)).toEqual(told(fast));
      }),
      { numRuns: 1500 },
    );
  });

  it("reads generated programs without a problem", () => {
    fc.assert(
      fc.property(programArbitrary, (text) => {
        expect(showProblems(parse(text))).toBe("");
      }),
      { numRuns: 1500 },
    );
  });

  it.each(programs)("reads every beginning of %s", (_, text) => {
    for (let end = 0; end <= text.length; end++) {
      const parsed = parse(text.slice(0, end));
      expect(spanFaults(parsed)).toEqual([]);
    }
    expect(parse(text).problems).toEqual([]);
  });

  it("reads the same after any other text", () => {
    fc.assert(
      fc.property(anyText, anyText, (first, second) => {
        const before = showDocument(parse(first).document);
        parse(second);
        expect(showDocument(parse(first).document)).toBe(before);
      }),
    );
  });
});
