/**
 * A channel that was measured against a motion, held against the one that the linkage gives: how far off each row is, and what
 * would explain it: an offset, a sign, a scale.
 */
import { readCsv } from "../../model/csv.js";
import { fromSI, matchesDimension, parseUnit, showNumber, toSI } from "../../quantities/index.js";
import type { CheckedCar } from "../../findings/context.js";
import { titleOf } from "../car-title.js";
import { isAbsent } from "../figures.js";
import type { RatesPage } from "../rates-page.js";
import { left, right, type Section } from "../section.js";
import { loggedChannel, type LoggedCurve, type LoggerAsked } from "./logged.js";
import { nameOf } from "./page.js";

export interface PairRow {
  /** Of the file, from 1. */
  readonly line: number;
  /** In the shown units. */
  readonly motion: number;
  readonly measured: number;
  readonly predicted: number;
}

export interface CheckedPairs {
  readonly curve: LoggedCurve;
  readonly rows: readonly PairRow[];
  readonly rms: number;
  readonly worst: PairRow;
  /** measured ≈ offset + scale · predicted. */
  readonly offset: number;
  readonly scale: number;
  /** What is left of the rms with both. */
  readonly left: number;
  readonly likely: string;
}

export type PairsAnswer = { readonly why: string } | { readonly pairs: readonly CheckedPairs[] };

/** @param text motion (travel, heave or roll) in the first column, channel in the second, each with its unit */
export function checkPairs(car: CheckedCar, asked: LoggerAsked, text: string): PairsAnswer {
  const logged = loggedChannel(car, asked);
  if (isAbsent(logged)) return { why: logged.reason };
  const table = readCsv(text);
  if ("troubles" in table) {
    const [first] = table.troubles;
    return {
      why:
        first === undefined || first.line === 0
          ? (first?.detail ?? "it is empty")
          : `line ${first.line}: ${first.detail}`,
    };
  }
  if (table.lines.length < 3) return { why: "three rows or more are needed to tell an offset from a scale" };
  const pairs: CheckedPairs[] = [];
  for (const curve of logged.curves) {
    if (isAbsent(curve)) return { why: curve.reason };
    const found = held(curve, table.keys, table.values, table.lines);
    if (typeof found === "string") return { why: found };
    pairs.push(found);
  }
  return { pairs };
}

interface Column {
  readonly unit: string;
  readonly values: readonly number[];
}

function held(curve: LoggedCurve, motions: Column, channels: Column, lines: readonly number[]): CheckedPairs | string {
  const wrong = wrongUnit(curve, motions.unit, channels.unit);
  if (wrong !== undefined) return wrong;
  const shown = (value: number, from: string, to: string): number => fromSI(toSI(value, from) ?? value, to) ?? value;
  const rows = lines.map((line, i): PairRow => {
    const motion = toSI(motions.values[i] ?? 0, motions.unit) ?? 0;
    // The curve counts motion from design; the file from where the channel is set to nought.
    const predicted = curve.curve.channelAt(motion + curve.curve.motionAt(0));
    return {
      line,
      motion: fromSI(motion, curve.unit) ?? motion,
      measured: shown(channels.values[i] ?? 0, channels.unit, curve.channelUnit),
      predicted: fromSI(predicted, curve.channelUnit) ?? predicted,
    };
  });
  const { offset, scale } = lineThrough(rows);
  const off = ({ measured, predicted }: PairRow): number => Math.abs(measured - predicted);
  const [first] = rows;
  if (first === undefined) return "it is empty";
  const worst = rows.reduce((most, row) => (off(row) > off(most) ? row : most), first);
  const rms = rootMean(rows.map(({ measured, predicted }) => measured - predicted));
  const rest = rootMean(rows.map(({ measured, predicted }) => measured - offset - scale * predicted));
  return {
    curve,
    rows,
    rms,
    worst,
    offset,
    scale,
    left: rest,
    likely: likelyCause(rows, rms, rest, offset, scale, curve),
  };
}

function wrongUnit({ unit, channelUnit }: LoggedCurve, motion: string, channel: string): string | undefined {
  for (const [given, wanted, what] of [
    [motion, unit, "first"],
    [channel, channelUnit, "second"],
  ] as const) {
    const [info, like] = [parseUnit(given), parseUnit(wanted)];
    const dimension = wanted === "deg" ? "angle" : "length";
    if (info === undefined || like === undefined || !matchesDimension(info, dimension))
      return `the ${what} column is in "${given}", and ${wanted} or another unit of ${dimension} is wanted`;
  }
  return undefined;
}

/** Least squares of measured over predicted. */
function lineThrough(rows: readonly PairRow[]): { readonly offset: number; readonly scale: number } {
  const mean = (of: (row: PairRow) => number): number => rows.reduce((sum, row) => sum + of(row), 0) / rows.length;
  const [x, y] = [mean(({ predicted }) => predicted), mean(({ measured }) => measured)];
  const square = mean(({ predicted }) => (predicted - x) ** 2);
  const scale = square === 0 ? 1 : mean(({ predicted, measured }) => (predicted - x) * (measured - y)) / square;
  return { offset: y - scale * x, scale };
}

const rootMean = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);

/** A share of what is off that an explanation has to take away. */
const EXPLAINS = 0.25;
/** Of the channel's range: nobody calibrates better. */
const GOOD = 0.005;

function likelyCause(
  rows: readonly PairRow[],
  rms: number,
  rest: number,
  offset: number,
  scale: number,
  { channelUnit }: LoggedCurve,
): string {
  const predicted = rows.map((row) => row.predicted);
  const range = Math.max(...predicted) - Math.min(...predicted);
  if (rms <= GOOD * range) return "it agrees";
  const withOffset = rootMean(rows.map((row) => row.measured - row.predicted - meanOff(rows)));
  if (scale < 0 && rest <= EXPLAINS * rms) return "the sign is turned round: the sensor grows the other way";
  if (withOffset <= EXPLAINS * rms)
    return `an offset of ${showNumber(meanOff(rows), 3)} ${channelUnit}: it was not set to nought there`;
  if (rest <= EXPLAINS * rms)
    return `a scale of ${showNumber(scale, 4)}${Math.abs(offset) > GOOD * range ? ` and an offset of ${showNumber(offset, 3)} ${channelUnit}` : ""}: the calibration, or another eye than the one that is written`;
  return "neither an offset nor a scale explains it: another eye, a bent bracket, or rows that were mixed up";
}

const meanOff = (rows: readonly PairRow[]): number =>
  rows.reduce((sum, { measured, predicted }) => sum + measured - predicted, 0) / rows.length;

export function pairsPage(car: CheckedCar, asked: LoggerAsked, pairs: readonly CheckedPairs[]): RatesPage {
  return {
    title: `${titleOf(car.model)}: measured ${asked.axle} ${asked.channel}`,
    sections: pairs.flatMap((one) => [verdictSection(one), rowSection(one)]),
    reasons: [],
  };
}

function verdictSection({ curve, rms, worst, offset, scale, left: rest, likely }: CheckedPairs): Section {
  const { channelUnit: unit } = curve;
  const inUnit = (value: number): string => `${showNumber(value, 3)} ${unit}`;
  return {
    title: `Against ${nameOf(curve)}: ${likely}`,
    columns: [left(""), right("")],
    rows: [
      ["root mean square", inUnit(rms)],
      ["worst", `${inUnit(worst.measured - worst.predicted)} in line ${worst.line}`],
      ["offset and scale that fit best", `${inUnit(offset)}, ${showNumber(scale, 5)}`],
      ["left with both", inUnit(rest)],
    ],
  };
}

function rowSection({ curve, rows }: CheckedPairs): Section {
  const { unit, channelUnit } = curve;
  return {
    title: "Row by row",
    columns: [
      right("line"),
      right(`motion, ${unit}`),
      right(`measured, ${channelUnit}`),
      right("by the linkage"),
      right("off"),
    ],
    rows: rows.map(({ line, motion, measured, predicted }) => [
      String(line),
      ...[motion, measured, predicted, measured - predicted].map((value) => showNumber(value, 4)),
    ]),
  };
}
