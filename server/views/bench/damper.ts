/**
 * A damper's bench: force against speed, one column or one for each direction and click, points or the loop of a sine.
 * Bump is positive; both directions are written positive from the origin.
 */
import type { Point } from "../../maths/polyline.js";
import { fromSI, toSI } from "../../quantities/index.js";
import type { SheetCurve } from "../curve-sheet.js";
import {
  allowedOff,
  askedColumns,
  type BenchOptions,
  columnsOf,
  figure,
  type Imported,
  NoCurve,
  pointsOf,
  residualWords,
  rowsOf,
  sheetCurve,
  type Variant,
  written,
} from "./bench.js";
import { fitted, straight } from "./fit.js";
import type { BenchColumn, BenchTable } from "./table.js";

type Direction = "bump" | "rebound";
const directions: readonly Direction[] = ["bump", "rebound"];
const origin: Point = { x: 0, y: 0 };

interface Setting {
  readonly label: string;
  readonly clicks: number | undefined;
  readonly sides: Readonly<Record<Direction, readonly Point[]>>;
  /** Force at rest. */
  readonly rest: number;
  readonly turned: boolean;
}

interface Made {
  readonly setting: Setting;
  readonly written: Readonly<Record<Direction, readonly Point[]>>;
}

export function damperOf(table: BenchTable, options: BenchOptions): Imported {
  const [speed] = columnsOf(table, "damper-speed", "angular-speed");
  const forces = askedColumns(table, options.column, "force", "moment");
  if (speed === undefined) throw new NoCurve("a damper needs a column of speed, such as velocity [mm/s]");
  if (forces.length === 0) throw new NoCurve("a damper needs a column of force, such as force [N]");
  const x = table.columns[speed] as BenchColumn;
  const y = table.columns[forces[0] ?? 0] as BenchColumn;
  const settings = settingsOf(table, speed, forces, y);
  const remarks: string[] = [];
  const curves: SheetCurve[] = [];
  const made = settings.map((setting) => madeOf(setting, x, y, options, remarks, curves));
  return { kind: "damper", variants: variantsOf(made, x, y, options, remarks), curves, remarks };
}

const directionIn = (name: string): Direction | undefined =>
  /bump|compress|jounce/i.test(name) ? "bump" : /rebound|extens|droop/i.test(name) ? "rebound" : undefined;

const clicksIn = (name: string): number | undefined => {
  const found = /(\d+)\s*(?:clicks?|c)\b|\bclicks?\s*(\d+)/i.exec(name);
  return found === null ? undefined : Number(found[1] ?? found[2]);
};

/** Columns that differ only in their direction are one setting. */
function settingsOf(table: BenchTable, speed: number, forces: readonly number[], y: BenchColumn): readonly Setting[] {
  const labelOf = (name: string): string =>
    name
      .replace(/bump|compression|jounce|rebound|extension|droop|\bforce\b|\bmoment\b/gi, "")
      .replace(/[\s,;:_-]+/g, " ")
      .trim();
  const labels = [...new Set(forces.map((index) => labelOf(table.columns[index]?.name ?? "")))];
  return labels.map((label) => {
    const own = forces.filter((index) => labelOf(table.columns[index]?.name ?? "") === label);
    const clicks = clicksIn(label);
    const named = own.map((index) => ({ index, direction: directionIn(table.columns[index]?.name ?? "") }));
    const points = (index: number): readonly Point[] => {
      const unit = table.columns[index]?.unit ?? y.unit;
      return pointsOf(table, speed, index).map((point) => ({ x: point.x, y: inUnit(point.y, unit, y.unit) }));
    };
    if (named.every(({ direction }) => direction !== undefined)) {
      const side = (direction: Direction): readonly Point[] =>
        named.filter((one) => one.direction === direction).flatMap(({ index }) => points(index).map(positive));
      return { label, clicks, sides: { bump: side("bump"), rebound: side("rebound") }, rest: 0, turned: false };
    }
    return bothWays(label, clicks, own.flatMap(points));
  });
}

const inUnit = (value: number, from: string, to: string): number =>
  from === to ? value : (fromSI(toSI(value, from) ?? 0, to) ?? value);

const positive = ({ x, y }: Point): Point => ({ x: Math.abs(x), y: Math.abs(y) });

/** One column over speeds of both signs. What it carries at rest is gas, friction or drift, and no damping. */
function bothWays(label: string, clicks: number | undefined, points: readonly Point[]): Setting {
  const turned = points.reduce((sum, { x, y }) => sum + x * y, 0) < 0;
  const upright = points.map(({ x, y }) => ({ x, y: turned ? -y : y }));
  const size = Math.max(...upright.map(({ y }) => Math.abs(y)));
  const found = restOf(upright);
  // Less is what the figures leave open, and no reason to change them.
  const rest = Math.abs(found) > 0.005 * size ? found : 0;
  const level = upright.map(({ x, y }) => ({ x, y: y - rest }));
  const bump = level.filter(({ x }) => x > 0);
  const rebound = level.filter(({ x }) => x < 0).map(({ x, y }) => ({ x: -x, y: -y }));
  return { label, clicks, sides: { bump, rebound }, rest, turned };
}

/** As far as speeds are slow: this share of the fastest. */
const slow = 0.1;

/**
 * What both directions come to when they are followed straight down to nought, half of each: friction falls out of it. 0
 * where slow speeds were not measured, since a damper need not be alike both ways.
 */
function restOf(points: readonly Point[]): number {
  const still = points.filter(({ x }) => x === 0);
  if (still.length > 0) return still.reduce((sum, { y }) => sum + y, 0) / still.length;
  const fastest = Math.max(...points.map(({ x }) => Math.abs(x)));
  const ends = [1, -1].flatMap((sign) => {
    const side = points.filter(({ x }) => x * sign > 0 && x * sign <= slow * fastest);
    return new Set(side.map(({ x }) => x)).size < 2 ? [] : [straight(side).offset];
  });
  const [above, below] = ends;
  return above === undefined || below === undefined ? 0 : (above + below) / 2;
}

function madeOf(
  setting: Setting,
  x: BenchColumn,
  y: BenchColumn,
  { tolerance }: BenchOptions,
  remarks: string[],
  curves: SheetCurve[],
): Made {
  const named = setting.label === "" ? "" : `${setting.label}, `;
  if (setting.turned) remarks.push(`${named}force is entered against the speed; it is turned round`);
  const all = [...setting.sides.bump, ...setting.sides.rebound];
  const allowed = allowedOff(tolerance, all, y.unit);
  const side = (direction: Direction): readonly Point[] => {
    const raw = setting.sides[direction];
    if (raw.length === 0) return [];
    const fit = fitted(raw, allowed, "chord", origin);
    const points = fit === undefined ? [] : written(fit.points).filter((point) => point.x > 0 && point.y >= 0);
    if (fit === undefined || (points.at(-1)?.y ?? 0) <= 0)
      throw new NoCurve(`${named}${direction}: no force that rises with speed`);
    remarks.push(residualWords(`${named}${direction}`, fit, raw.length, allowed, y.unit));
    curves.push(sheetCurve(`${named}${direction}`, { points: [origin, ...points] }, raw, x, y, ["speed", "force"]));
    return points;
  };
  const [bump, rebound] = directions.map(side) as [readonly Point[], readonly Point[]];
  if (bump.length === 0 && rebound.length === 0) throw new NoCurve(`${named}no speed above or below nought`);
  if (bump.length === 0 || rebound.length === 0)
    remarks.push(`${named}only ${bump.length > 0 ? "bump" : "rebound"} is measured: a damper needs both`);
  return { setting, written: { bump, rebound } };
}

const replaces = ["bump", "rebound", "curve", "damping", "fit"];

/** Two settings whose clicks are told, the first one closed, are one valving with a clicker; others are one each. */
function variantsOf(
  made: readonly Made[],
  x: BenchColumn,
  y: BenchColumn,
  { clicks }: BenchOptions,
  remarks: string[],
): readonly Variant[] {
  const sorted = [...made].sort((a, b) => (a.setting.clicks ?? 0) - (b.setting.clicks ?? 0));
  const [closed, open, more] = sorted;
  const last = open?.setting.clicks;
  if (closed?.setting.clicks === 0 && open !== undefined && last !== undefined && last > 0 && more === undefined) {
    const at = clicks ?? 0;
    if (at > last) throw new NoCurve(`--clicks ${at}: the table goes to ${last}`);
    if (clicks === undefined)
      remarks.push(`the clicker is entered closed, 0 of ${last}; --clicks says where it stands`);
    const lines = directions
      .filter((side) => closed.written[side].length > 0 && open.written[side].length > 0)
      .map((side) =>
        [
          `${side} {`,
          `clicks ${at} of ${last}`,
          rowsOf("closed", closed.written[side], x, y),
          rowsOf("open", open.written[side], x, y),
          "}",
        ].join("\n"),
      );
    return [{ label: "", ...withGas(lines, closed, y, remarks) }];
  }
  return made.map((one) => {
    const lines = directions
      .filter((side) => one.written[side].length > 0)
      .map((side) => rowsOf(side, one.written[side], x, y));
    return { label: one.setting.label, ...withGas(lines, one, y, remarks) };
  });
}

/** What pushes the damper apart at rest is gas. */
function withGas(
  lines: readonly string[],
  { setting: { rest, label } }: Made,
  y: BenchColumn,
  remarks: string[],
): Pick<Variant, "lines" | "replaces"> {
  if (rest === 0) return { lines, replaces };
  const named = label === "" ? "" : `${label}, `;
  const told = figure(Math.abs(rest), y.unit);
  if (rest < 0 || y.dimension !== "force") {
    remarks.push(`${named}at rest it measures -${told}, which is taken off as drift`);
    return { lines, replaces };
  }
  remarks.push(`${named}at rest it carries ${told}, which is taken off and entered as the force of its gas`);
  return { lines: [...lines, `gas-force ${told}`], replaces: [...replaces, "gas-force"] };
}
