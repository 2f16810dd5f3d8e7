/** What differs between the left and the right one of a corner element: its words, its ends, its being there. */
import { mirror } from "../maths/vec3.js";
import type { Attachment, AxleModel, ElementModel, ResolvedStatement } from "../model/car.js";
import type { Origin, Sides } from "../model/origin.js";
import { isSameStatement } from "../model/same.js";
import { showQuantity } from "../quantities/index.js";
import type { Difference } from "./difference.js";

/** Longer than this is not told in a message. */
const READABLE = 40;
/** Two places closer than this are the same: rounding of units, m. */
const SAME = 1e-9;

export function differencesOfElements(axle: AxleModel): readonly Difference[] {
  const sided = axle.elements.filter(({ side }) => side !== undefined);
  const names = [...new Set(sided.map(({ name }) => name))];
  return names.flatMap((name) => {
    const of = (side: "left" | "right") => sided.find((one) => one.side === side && one.name === name);
    const left = of("left");
    const right = of("right");
    if (left !== undefined && right !== undefined)
      return [...words(axle.name, { left, right }), ...ends(axle.name, { left, right })];
    const only = left ?? right;
    return only === undefined ? [] : [onOneSide(axle.name, only)];
  });
}

function onOneSide(axle: AxleModel["name"], { name, side = "left", nameOrigin }: ElementModel): Difference {
  const shown = side === "left" ? { left: "there", right: "not there" } : { left: "not there", right: "there" };
  return { axle, what: `${axle} ${name}`, shown, side, origin: nameOrigin, statement: nameOrigin, other: undefined };
}

type Pair = Sides<ElementModel>;

/** Where other parts are fitted, what the parts say differs by rights. */
function words(axle: AxleModel["name"], { left, right }: Pair): readonly Difference[] {
  const all = new Set([...left.block.statements, ...right.block.statements].map(({ word }) => word));
  const found = [...all].filter((word) => !isPlace(word)).flatMap((word) => inWord(axle, word, { left, right }) ?? []);
  const fitted = found.filter(({ what }) => what.endsWith(" fit"));
  return fitted.length > 0 ? fitted : found;
}

function inWord(axle: AxleModel["name"], word: string, { left, right }: Pair): Difference | undefined {
  const of = ({ block }: ElementModel) => block.statements.find((statement) => statement.word === word);
  const [l, r] = [of(left), of(right)];
  if (l !== undefined && r !== undefined && isSameStatement(l, r)) return undefined;
  const side = isOneSided(r, l) ? "right" : "left";
  const [own, other] = side === "right" ? [r, l] : [l, r];
  if (own === undefined) return undefined;
  const shown = shownSides(l, r);
  const what = `${axle} ${left.name} ${word}`;
  return { axle, what, shown, side, origin: own.origin, statement: own.origin, other: other?.origin };
}

function isOneSided(a: ResolvedStatement | undefined, b: ResolvedStatement | undefined): boolean {
  if (a === undefined || b === undefined) return a !== undefined;
  if (a.chain.length !== b.chain.length) return a.chain.length > b.chain.length;
  return a.origin.uri !== b.origin.uri || a.origin.start > b.origin.start;
}

function shownSides(left: ResolvedStatement | undefined, right: ResolvedStatement | undefined): Difference["shown"] {
  if ([left, right].some((statement) => (statement?.block?.rows.length ?? 0) > 0)) return undefined;
  const shown = { left: written(left), right: written(right) };
  return shown.left.length > READABLE || shown.right.length > READABLE || shown.left === shown.right
    ? undefined
    : shown;
}

/** Connections mirror, so their coordinates differ by rights. */
const isPlace = (word: string): boolean => word === "between" || word === "twists" || word === "tie";

function written(statement: ResolvedStatement | undefined): string {
  if (statement === undefined) return "not given";
  const { values, block } = statement;
  const own = values.map((value) => {
    if (value.kind === "number") return showQuantity(value.value, value.unit, 6);
    if (value.kind === "word" || value.kind === "text") return value.text;
    return value.kind === "path" ? value.segments.join(".") : "";
  });
  const inside = block?.statements.map((inner) => `${inner.word} ${written(inner)}`) ?? [];
  return [...own, ...inside].filter((part) => part !== "").join(", ");
}

function ends(axle: AxleModel["name"], { left, right }: Pair): readonly Difference[] {
  const [l, r] = [left.connection, right.connection];
  if (l?.kind !== "between" || r?.kind !== "between") return [];
  if (l.ends.every((end, index) => isMirrored(end, r.ends[index]))) return [];
  const side = isLater(r.origin, l.origin) ? "right" : "left";
  const [own, other] = side === "right" ? [r, l] : [l, r];
  const what = `${axle} ${left.name} between`;
  return [{ axle, what, shown: undefined, side, origin: own.origin, statement: own.origin, other: other.origin }];
}

const isLater = (a: Origin, b: Origin): boolean => a.uri !== b.uri || a.start > b.start;

/** Eyes are compared by name: where they are is the linkage's matter. */
function isMirrored(left: Attachment, right: Attachment | undefined): boolean {
  if (left.kind === "eye") return right?.kind === "eye" && left.eye === right.eye;
  if (left.kind === "lever-end" || right === undefined || !("point" in right)) return left.kind === right?.kind;
  const [x, y, z] = mirror(right.point.value);
  const [a, b, c] = left.point.value;
  return left.kind === right.kind && Math.hypot(a - x, b - y, c - z) < SAME;
}
