/** Links and hinges of no length: points that fall together where two different ones are due. A wheel on the wrong side. */
import { showQuantity } from "../quantities/index.js";
import type { AxleSides } from "./axle-sides.js";
import { pointOf } from "./given.js";
import type { Given, Side } from "./origin.js";
import type { Sink } from "./sink.js";
import { wordIn, type TreeBlock, type TreeStatement } from "./tree.js";

/** Nearer than this, m, two joints are one: no joint is made to a hundredth of a millimetre. */
const coincidence = 1e-5;

export function checkLinkages({ blocks }: AxleSides, sink: Sink): void {
  checkLinkage(blocks.left, "left", sink);
  if (wordIn(blocks.left, "linkage") !== wordIn(blocks.right, "linkage")) checkLinkage(blocks.right, "right", sink);
}

/** What is written is the left wheel: with a slipped sign everything else would be computed, and nothing of it be right. */
export function checkWheel({ blocks }: AxleSides, base: AxleSides | undefined, sink: Sink): void {
  const written = centreOf(blocks.left);
  if (base !== undefined && written === centreOf(base.blocks.left)) return;
  const centre = pointOf(written, "left");
  const value = centre?.value[1];
  if (centre === undefined || value === undefined || value > 0) return;
  const { unit, origin } = centre;
  const limit = `above ${showQuantity(0, unit)}, since y points left and it is the left wheel that is written`;
  sink.report({
    ...origin,
    kind: "range-violated",
    word: "y of the wheel's centre",
    value,
    unit,
    dimension: "length",
    limit,
  });
}

const centreOf = (axle: TreeBlock): TreeStatement | undefined => wordIn(wordIn(axle, "wheel")?.block, "centre");

/** Pairs of points of one part that must not fall together. */
const pairs: readonly (readonly [part: string, one: string, other: string])[] = [
  ["lower-wishbone", "fore", "aft"],
  ["lower-wishbone", "outer", "fore"],
  ["lower-wishbone", "outer", "aft"],
  ["lower-wishbone", "inner", "outer"],
  ["upper-wishbone", "fore", "aft"],
  ["upper-wishbone", "outer", "fore"],
  ["upper-wishbone", "outer", "aft"],
  ["upper-wishbone", "inner", "outer"],
  ["track-rod", "inner", "outer"],
  ["push-rod", "inner", "outer"],
  ["pull-rod", "inner", "outer"],
];

function checkLinkage(axle: TreeBlock, side: Side, sink: Sink): void {
  const block = wordIn(axle, "linkage")?.block;
  if (block === undefined) return;
  for (const [part, one, other] of pairs) {
    const inner = wordIn(block, part)?.block;
    checkApart(inner, one, inner, other, part, side, sink);
  }
  const lower = wordIn(block, "lower-wishbone")?.block;
  const upper = wordIn(block, "upper-wishbone")?.block;
  checkApart(lower, "outer", upper, "outer", "upright", side, sink);
  checkRocker(block, side, sink);
  if (side === "left") checkRods(block, sink);
}

/** What works the rocker: one rod, and not two. */
function checkRods(linkage: TreeBlock, sink: Sink): void {
  const rocker = wordIn(linkage, "rocker");
  const [push, pull] = [wordIn(linkage, "push-rod"), wordIn(linkage, "pull-rod")];
  if (push !== undefined && pull !== undefined) {
    const [first, second] = push.origin.start < pull.origin.start ? [push, pull] : [pull, push];
    const rivals = { kind: "rivals", word: second.word, other: first.word, first: first.origin } as const;
    sink.report({ ...second.origin, ...rivals });
    return;
  }
  const isUnread = ["push-rod", "pull-rod"].some((word) => linkage.broken?.has(word) === true);
  if (rocker === undefined || push !== undefined || pull !== undefined || isUnread) return;
  sink.report({
    ...rocker.wordOrigin,
    kind: "missing-property",
    word: "push-rod",
    concept: linkage.concept,
    owner: "linkage",
    starter: undefined,
    insertAt: linkage.origin.end - 1,
  });
}

function checkRocker(linkage: TreeBlock, side: Side, sink: Sink): void {
  const rocker = wordIn(linkage, "rocker")?.block;
  if (rocker === undefined) return;
  checkAxis(rocker, "rocker", sink);
  for (const word of ["push-rod", "pull-rod"]) {
    checkApart(rocker, "pivot", wordIn(linkage, word)?.block, "inner", "rocker", side, sink);
  }
}

/** The lever of an anti-roll bar, as one side has it. */
export function checkLever(bar: TreeStatement, sink: Sink): void {
  const lever = wordIn(bar.block, "lever")?.block;
  if (lever === undefined) return;
  checkAxis(lever, "lever", sink);
  checkApart(lever, "pivot", lever, "end", "lever", "left", sink);
}

function checkAxis(block: TreeBlock, part: string, sink: Sink): void {
  const axis = pointOf(wordIn(block, "axis"), "left");
  if (axis === undefined || axis.value.some((coordinate) => coordinate !== 0)) return;
  const shared = { word: `axis of ${part}`, value: 0, unit: "", dimension: "number" } as const;
  sink.report({ ...axis.origin, kind: "range-violated", ...shared, limit: "a direction that is not (0, 0, 0)" });
}

function checkApart(
  first: TreeBlock | undefined,
  one: string,
  second: TreeBlock | undefined,
  other: string,
  part: string,
  side: Side,
  sink: Sink,
): void {
  const a = pointOf(wordIn(first, one), side);
  const b = pointOf(wordIn(second, other), side);
  if (a === undefined || b === undefined) return;
  const value = distance(a, b);
  if (value > coincidence) return;
  const { unit } = b;
  const word = one === other ? part : `${part} from ${one} to ${other}`;
  const limit = `above ${showQuantity(0, unit)}`;
  sink.report({ ...laterOf(a, b), kind: "range-violated", word, value, unit, dimension: "length", limit });
}

const distance = (a: Given<readonly number[]>, b: Given<readonly number[]>): number =>
  Math.hypot(...a.value.map((coordinate, index) => coordinate - (b.value[index] ?? 0)));

/** The one that was changed last is the one to look at. */
const laterOf = (a: Given<readonly number[]>, b: Given<readonly number[]>) =>
  a.chain.length > b.chain.length ? a.origin : b.origin;
