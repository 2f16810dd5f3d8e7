/**
 * What differs between the left and the right side of the axles of a car: points of the linkage,
 * figures of the wheel, and the words of corner elements. Each with the line that makes it so.
 */
import { mirror } from "../maths/vec3.js";
import type {
  AxleModel,
  CarModel,
  CornerModel,
  ElementModel,
  HardpointCorner,
  ResolvedStatement,
  Vec3,
  WheelModel,
} from "../model/car.js";
import type { Given, Origin } from "../model/origin.js";
import { fromSI, showNumber, showQuantity } from "../quantities/index.js";

export interface Difference {
  /** "front rocker eye third", "front side damping". */
  readonly what: string;
  readonly left: string;
  readonly right: string;
  /** The one-sided line. */
  readonly origin: Origin;
  readonly other: Origin | undefined;
}

export function differencesOf(car: CarModel): readonly Difference[] {
  return [car.axles.front, car.axles.rear].flatMap((axle) =>
    axle === undefined ? [] : [...points(axle), ...wheels(axle), ...elements(axle)],
  );
}

/** Two places closer than this are the same: rounding of units, m. */
const SAME = 1e-9;

function points({ name, corner }: AxleModel): readonly Difference[] {
  if (corner.left.kind !== "hardpoints" || corner.right.kind !== "hardpoints")
    return kinds(name, corner.left, corner.right);
  const right = new Map(pointsOf(corner.right));
  return pointsOf(corner.left).flatMap(([what, point]) => {
    const other = right.get(what);
    if (other === undefined || near(point.value, mirror(other.value))) return [];
    return [difference(`${name} ${what}`, point, other, coordinates)];
  });
}

function kinds(name: string, left: CornerModel, right: CornerModel): readonly Difference[] {
  if (left.kind === right.kind) return [];
  return [
    { what: `The ${name} linkage`, left: left.kind, right: right.kind, origin: right.origin, other: left.origin },
  ];
}

function pointsOf(corner: HardpointCorner): readonly (readonly [string, Given<Vec3>])[] {
  const wishbone = (name: string, { fore, aft, outer }: HardpointCorner["lower"]) =>
    [
      [`${name} fore`, fore],
      [`${name} aft`, aft],
      [`${name} outer`, outer],
    ] as const;
  const { rod, rocker, trackRod } = corner;
  return [
    ...wishbone("lower-wishbone", corner.lower),
    ...wishbone("upper-wishbone", corner.upper),
    ["track-rod inner", trackRod.inner],
    ["track-rod outer", trackRod.outer],
    ...(rod === undefined
      ? []
      : ([
          [`${rod.kind} outer`, rod.outer],
          [`${rod.kind} inner`, rod.inner],
        ] as const)),
    ...(rocker === undefined ? [] : [["rocker pivot", rocker.pivot] as const]),
    ...[...(rocker?.eyes ?? [])].map(([eye, point]) => [`rocker eye ${eye}`, point] as const),
  ];
}

const near = (a: Vec3, b: Vec3): boolean => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) < SAME;

function coordinates({ value, unit }: Given<Vec3>): string {
  const numbers = value.map((metres) => showNumber(fromSI(metres, unit) ?? metres, 6));
  return `(${numbers.join(", ")}) ${unit}`;
}

function wheels({ name, wheel }: AxleModel): readonly Difference[] {
  const words: readonly (readonly [string, keyof WheelModel])[] = [
    ["camber", "camber"],
    ["toe", "toe"],
    ["loaded-radius", "loadedRadius"],
    ["unsprung-mass", "unsprungMass"],
    ["tyre-rate", "tyreRate"],
    ["tyre-damping", "tyreDamping"],
  ];
  return words.flatMap(([word, key]) => {
    const left = wheel.left[key] as Given | undefined;
    const right = wheel.right[key] as Given | undefined;
    if (left === undefined || right === undefined || close(left.value, right.value)) return [];
    return [difference(`${name} ${word}`, left, right, ({ value, unit }) => showQuantity(value, unit))];
  });
}

const close = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b));

/** The line of the side that was set later, and so by itself, is the one to look at. */
function difference<T>(what: string, left: Given<T>, right: Given<T>, shown: (given: Given<T>) => string): Difference {
  const own = isOneSided(right, left) ? right : left;
  const other = own === right ? left : right;
  return { what, left: shown(left), right: shown(right), origin: own.origin, other: other.origin };
}

/** The one with the longer history was overridden; with equal ones the later line. */
function isOneSided<T>(a: Given<T>, b: Given<T>): boolean {
  if (a.chain.length !== b.chain.length) return a.chain.length > b.chain.length;
  return a.origin.uri !== b.origin.uri || a.origin.start > b.origin.start;
}

function elements(axle: AxleModel): readonly Difference[] {
  const lefts = axle.elements.filter(({ side }) => side === "left");
  return lefts.flatMap((left) => {
    const right = axle.elements.find(({ side, name }) => side === "right" && name === left.name);
    return right === undefined ? [] : words(axle.name, left, right);
  });
}

function words(axle: string, left: ElementModel, right: ElementModel): readonly Difference[] {
  return left.block.statements.flatMap((statement) => {
    const other = right.block.statements.find(({ word }) => word === statement.word);
    if (other === undefined || isPlace(statement.word) || written(statement) === written(other)) return [];
    const own = other.chain.length > statement.chain.length ? other : statement;
    return [
      {
        what: `${axle} ${left.name} ${statement.word}`,
        left: written(statement),
        right: written(other),
        origin: own.origin,
        other: (own === other ? statement : other).origin,
      },
    ];
  });
}

/** Connections mirror, so their coordinates differ by rights; the points are compared with the linkage. */
const isPlace = (word: string): boolean =>
  word === "between" || word === "twists" || word === "lever" || word === "drop-link" || word === "tie";

function written({ values, block }: ResolvedStatement): string {
  const own = values.map((value) => {
    if (value.kind === "number") return showQuantity(value.value, value.unit);
    if (value.kind === "word" || value.kind === "text") return value.text;
    return value.kind === "path" ? value.segments.join(".") : "";
  });
  const inside = block?.statements.map((statement) => `${statement.word} ${written(statement)}`) ?? [];
  return [...own, ...inside].filter((part) => part !== "").join(", ");
}
