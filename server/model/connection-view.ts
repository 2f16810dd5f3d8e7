/**
 * How an element is joined to the car: from its connection lines to what the mechanism needs.
 *
 * Invariant: a connection that is returned is whole; where it is not, a problem says why.
 */
import { findWord } from "../../grammar/vocabulary/index.js";
import { attachmentOf, spokenOf, type Surroundings } from "./attachments.js";
import { hasRocker } from "./axle-sides.js";
import { barOf, teeOf } from "./bar-view.js";
import type { Attachment, ConnectionModel, ResolvedValue } from "./car.js";
import { cylindersOf } from "./cylinders.js";
import { pointIn } from "./given.js";
import type { AxleName, Side } from "./origin.js";
import { ratioOf } from "./ratio-view.js";
import { wordIn, type TreeStatement } from "./tree.js";

type TwistModel = Extract<ConnectionModel, { kind: "twists" }>;

/** Words that each join an element by themselves. */
const ways = ["between", "twists", "ratio", "lever", "tee", "cylinder"] as const;

export function connectionOf(element: TreeStatement, around: Surroundings): ConnectionModel | undefined {
  const { block } = element;
  if (block === undefined) return undefined;
  const written = block.statements.filter((line, index) => isWay(line.word) && isFirst(block.statements, line, index));
  const [first, second] = written;
  if (first === undefined) return reportUnjoined(element, around);
  if (second !== undefined) {
    const problem = { kind: "rivals", word: second.word, other: first.word, first: first.origin } as const;
    around.sink.report({ ...second.origin, ...problem });
  }
  if (first.word !== "twists") checkTie(element, around);
  const here = { ...around, word: first.word };
  switch (first.word) {
    case "between":
      return between(first, here);
    case "twists":
      return twists(element, first, here);
    case "ratio":
      return ratioOf(element, here);
    case "lever":
      return barOf(element, first, here);
    case "tee":
      return teeOf(element, first, here);
    case "cylinder":
      return cylindersOf(element, first, around);
    default:
      return undefined;
  }
}

const isWay = (word: string): boolean => (ways as readonly string[]).includes(word);

/** `ratio` and `cylinder` may stand many times; that is one way to join. */
function isFirst(lines: readonly TreeStatement[], line: TreeStatement, index: number): boolean {
  return lines.findIndex((other) => other.word === line.word) === index;
}

/** Told as a property that is missing: the usual one for the kind of element and of linkage. */
function reportUnjoined(element: TreeStatement, around: Surroundings): undefined {
  const { block } = element;
  const concept = block?.concept ?? element.word;
  const known = ways.filter((way) => findWord(concept, way) !== undefined);
  if (known.some((way) => block?.broken?.has(way) === true)) return undefined;
  const isByRatio = around.axle !== undefined && wordIn(around.axle.blocks.left, "linkage")?.form === 2;
  const word = isByRatio && known.includes("ratio") ? "ratio" : known[0];
  if (word === undefined || element.name === undefined || block === undefined) return undefined;
  around.sink.report({
    ...element.name.origin,
    kind: "missing-property",
    word,
    concept,
    owner: `${element.word} ${element.name.text}`,
    starter: findWord(concept, word)?.starter,
    insertAt: block.origin.end - 1,
  });
  return undefined;
}

function between(line: TreeStatement, around: Surroundings): ConnectionModel | undefined {
  const ends = line.values.flatMap((value): Attachment[] => {
    const end = value.kind === "attachment" ? attachmentOf(value, around) : undefined;
    return end === undefined ? [] : [end];
  });
  const [first, second] = ends;
  return first && second && { kind: "between", ends: [first, second], origin: line.origin };
}

/** A tie joins the free ends of two bars: nowhere else does it do anything. */
function checkTie({ block }: TreeStatement, { sink }: Surroundings): void {
  const tie = wordIn(block, "tie");
  if (tie === undefined) return;
  const expected = ["twists left.rocker against right.rocker"];
  const detail = "A tie joins two bars that twist one rocker against the other, and this element is joined otherwise.";
  sink.report({ ...tie.wordOrigin, kind: "wrong-form", word: "tie", expected, detail });
}

type Turning = { readonly body: "chassis" } | { readonly body: "rocker"; readonly side: Side; readonly axle: AxleName };

function twists(element: TreeStatement, line: TreeStatement, around: Surroundings): TwistModel | undefined {
  const bodies = line.values.map((value) => bodyOf(value, around));
  const [first, second] = bodies;
  if (first === undefined || second === undefined) return undefined;
  const [of, against] = first.body === "rocker" ? [first, second] : [second, first];
  if (of.body !== "rocker") {
    const expected = ["twists rocker against chassis", "twists left.rocker against right.rocker"];
    const detail = "One of the two has to be a rocker.";
    around.sink.report({ ...line.origin, kind: "wrong-form", word: "twists", expected, detail });
    return undefined;
  }
  if (against.body === "chassis") checkTie(element, around);
  const tie = pointIn(wordIn(element.block, "tie")?.block, "arm", "left");
  return { kind: "twists", of: { side: of.side, axle: of.axle }, against, tie, origin: line.origin };
}

function bodyOf(value: ResolvedValue, around: Surroundings): Turning | undefined {
  if (value.kind !== "path") return undefined;
  const { axle, side, written, rest } = spokenOf(value.segments, value.segmentOrigins, around);
  const [body, more] = rest;
  if (around.side !== undefined && written !== undefined) {
    const detail = "An element for corner stands on each side, and twists its own rocker.";
    around.sink.report({ ...value.origin, kind: "wrong-form", word: around.word, expected: [rest.join(".")], detail });
    return undefined;
  }
  if (body === "chassis" && more === undefined) return { body };
  if (body !== "rocker" || more !== undefined) {
    const candidates = around.side === undefined ? ["left.rocker", "right.rocker", "chassis"] : ["rocker", "chassis"];
    const name = value.segments.join(".");
    around.sink.report({ ...value.origin, kind: "unknown-name", name, target: "body", candidates });
    return undefined;
  }
  if (axle === undefined || side === undefined) {
    const before = around.axle === undefined ? "front." : "";
    const expected = [`${before}left.rocker`, `${before}right.rocker`];
    const detail = "Say which side it is on.";
    around.sink.report({ ...value.origin, kind: "wrong-form", word: around.word, expected, detail });
    return undefined;
  }
  if (hasRocker(axle, side)) return { body, side, axle: axle.name };
  if (wordIn(axle.blocks[side], "linkage")?.block?.broken?.has("rocker") !== true) {
    around.sink.report({ ...value.origin, kind: "unknown-name", name: "rocker", target: "body", candidates: [] });
  }
  return undefined;
}
