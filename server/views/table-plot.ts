/** A table as a plot: its points, and the curve that is laid through them as the law or the connection lays it. */
import type { Concept } from "../../grammar/vocabulary/word.js";
import { type Interpolant, monotone } from "../maths/monotone.js";
import { type Point, polyline } from "../maths/polyline.js";
import { matchesDimension, parseUnit, showNumber } from "../quantities/index.js";
import type { FileView } from "../snapshot/workspace.js";
import type { Plot } from "./drawings/plot.js";
import { conceptInside, type Place } from "./place.js";
import { tableOf, type WrittenTable } from "./written-table.js";

/** Of these the origin is not understood, and their ends are smooth. */
const FREE: ReadonlySet<Concept> = new Set<Concept>(["area-curve", "ratio-table"]);
const WITHOUT_ORIGIN: ReadonlySet<Concept> = new Set<Concept>([...FREE, "gas-curve", "gas-spring"]);

type Dimension = Parameters<typeof matchesDimension>[1];

function isOf(unit: string, ...dimensions: readonly Dimension[]): boolean {
  const info = parseUnit(unit);
  return info !== undefined && dimensions.some((dimension) => matchesDimension(info, dimension));
}

const NAMES: readonly (readonly [string, ...Dimension[]])[] = [
  ["speed", "speed", "angular-speed"],
  ["force", "force"],
  ["moment", "moment"],
  ["angle", "angle"],
  ["area", "area"],
  ["travel", "length"],
];

function named(unit: string, name?: string): string {
  return name ?? NAMES.find(([, ...dimensions]) => isOf(unit, ...dimensions))?.[0] ?? "";
}

/** One side of a damper or of a spring starts at the origin. */
function fromOrigin(keys: readonly number[], values: readonly number[]): Interpolant {
  return monotone([0, ...keys], [0, ...values], "chord");
}

const linesOf = (through: Interpolant, knots: readonly number[]): readonly Point[] =>
  polyline((x) => through.value(x), through.from, through.to, [...knots]);

interface Laid {
  readonly line: readonly Point[];
  readonly points: readonly Point[];
}

/** Speeds of both signs: bump and rebound each from the origin, rebound forces of either sign. */
function damper({ keys, values }: WrittenTable): Laid {
  const half = (sign: 1 | -1): { keys: number[]; values: number[] } => {
    const own = keys.flatMap((key, i) => (sign * key > 0 ? [[sign * key, Math.abs(values[i] ?? 0)] as const] : []));
    const rising = own.sort((a, b) => a[0] - b[0]);
    return { keys: rising.map(([key]) => key), values: rising.map(([, value]) => value) };
  };
  const side = (sign: 1 | -1): readonly Point[] => {
    const { keys: k, values: v } = half(sign);
    if (k.length === 0) return [];
    const points = linesOf(fromOrigin(k, v), k).map(({ x, y }) => ({ x: sign * x, y: sign * y }));
    return sign === 1 ? points : points.reverse();
  };
  const points = keys.map((x, i) => ({ x, y: x === 0 ? 0 : Math.sign(x) * Math.abs(values[i] ?? 0) }));
  return { line: [...side(-1), ...side(1)], points };
}

function laid(table: WrittenTable, concept: Concept | undefined): Laid {
  const { keys, values, keyUnit, valueUnit } = table;
  if (isOf(keyUnit, "speed", "angular-speed")) return damper(table);
  const points = keys.map((x, i) => ({ x, y: values[i] ?? 0 }));
  const begins = (keys[0] ?? 0) > 0 && isOf(valueUnit, "force", "moment");
  const understood = begins && (concept === undefined || !WITHOUT_ORIGIN.has(concept));
  const ends = concept !== undefined && FREE.has(concept) ? "free" : "chord";
  const through = understood ? fromOrigin(keys, values) : monotone(keys, values, ends);
  return { line: linesOf(through, keys), points };
}

/** The kind of table: that of the rows around the pointer, or of the block that its word opens. */
function conceptAt(place: Place): Concept | undefined {
  if (place.statement === undefined || place.chain.at(-1)?.kind === "row") return place.concept;
  return conceptInside(place.concept, place.statement) ?? place.concept;
}

function describe(word: string, table: WrittenTable, points: readonly Point[]): string {
  const { keyUnit, valueUnit } = table;
  const at = (value: number, unit: string): string => `${showNumber(value, 4)} ${unit}`.trim();
  const told = points.map(({ x, y }) => `${at(y, valueUnit)} at ${at(x, keyUnit)}`);
  return `${word}: a curve through ${told.join(", ")}`;
}

/** More points than these are told by their number. */
const MOST_TOLD = 12;

export function tablePlot(file: FileView, place: Place): Plot | undefined {
  const { statement } = place;
  const table = statement && tableOf(file, statement);
  if (statement === undefined || table === undefined) return undefined;
  const { line, points } = laid(table, conceptAt(place));
  const word = statement.head.segments.at(-1)?.text ?? "table";
  const told = points.filter((_, i) => points.length <= MOST_TOLD || i === 0 || i === points.length - 1);
  return {
    description: describe(word, table, told),
    x: { name: named(table.keyUnit), unit: table.keyUnit },
    y: {
      name: named(table.valueUnit, named(table.valueUnit) === "travel" ? "deflection" : undefined),
      unit: table.valueUnit,
      fromZero: true,
    },
    lines: [{ points: line, style: "main" }],
    marks: [{ points, sign: "dot", label: `${points.length} points` }],
  };
}
