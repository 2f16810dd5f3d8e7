/**
 * From what a logger records (a rocker's angle, a spring's or a damper's length) to wheel travel, heave and roll: tables and
 * polynomials in the author's units, one for each side or one for the axle.
 */
import { absent } from "../../analyses/absent.js";
import { kinematics } from "../../analyses/kinematics.js";
import { type ChannelCurve, channelCurve, type Sample } from "../../analyses/logged-channel.js";
import type { Absent, KinematicsRow } from "../../analyses/results.js";
import type { CheckedCar } from "../../findings/context.js";
import { polynomialAt, polynomialFit } from "../../maths/polynomial.js";
import type { ElementModel } from "../../model/car.js";
import type { AxleName, Side } from "../../model/origin.js";
import { fromSI } from "../../quantities/index.js";
import { isAbsent } from "../figures.js";
import { unitsOfCar } from "../units-of-car.js";

export interface LoggerAsked {
  readonly axle: AxleName;
  /** `rocker`, or the name of an element. */
  readonly channel: string;
  /** Where the channel is set to nought: as the car stands, or as its linkage is drawn. */
  readonly zero: "rest" | "drawn";
  /** Whether it grows as the element is compressed (a rocker: as bump turns it), or as it grows longer. */
  readonly reads: "compression" | "extension";
  /** Rows of the table. */
  readonly points: number;
  /** The largest error that a polynomial may have, of wheel travel, m. */
  readonly within: number;
}

export type Gives = "travel" | "heave" | "roll";

export interface Polynomial {
  readonly degree: number;
  /** From the constant upwards, shown unit over shown unit. */
  readonly coefficients: readonly number[];
  /** Of the motion, in its unit. */
  readonly largestError: number;
}

export interface LoggedCurve {
  readonly side: Side | undefined;
  readonly gives: Gives;
  readonly channelUnit: string;
  readonly unit: string;
  readonly curve: ChannelCurve;
  /** In the shown units, evenly spaced in the channel. */
  readonly rows: readonly { readonly channel: number; readonly motion: number }[];
  readonly polynomial: Polynomial | Absent;
}

export interface Logged {
  readonly kind: "logged";
  readonly curves: readonly (LoggedCurve | Absent)[];
}

/** What may be asked of an axle, in the order of the text. */
export function channelsOf({ model }: CheckedCar, axle: AxleName): readonly string[] {
  const written = model.axles[axle];
  if (written === undefined) return [];
  const corner = written.corner.left;
  const rocker = "rocker" in corner && corner.rocker !== undefined ? ["rocker"] : [];
  return [...rocker, ...new Set(written.elements.map(({ name }) => name))];
}

export function loggedChannel(car: CheckedCar, asked: LoggerAsked): Logged | Absent {
  const mechanism = car.mechanism(asked.axle);
  const analysis = car.analysis.axles[asked.axle];
  if (mechanism === undefined || analysis === undefined) return absent(`the car has no ${asked.axle} axle`);
  if (!channelsOf(car, asked.axle).includes(asked.channel))
    return absent(`the ${asked.axle} axle has no ${asked.channel}`);
  const elements = (car.model.axles[asked.axle]?.elements ?? []).filter(({ name }) => name === asked.channel);
  const rest = asked.zero === "drawn" ? 0 : (analysis.atRest.left.travel + analysis.atRest.right.travel) / 2;
  const { from, to } = mechanism.travel;
  const isSided = asked.channel === "rocker" || elements.some(({ side }) => side !== undefined);
  if (isSided || !isForRoll(elements)) {
    const heaves = spread(from, to, rest);
    const rows = kinematics(mechanism, heaves, [0]);
    const sides: readonly (Side | undefined)[] = isSided ? ["left", "right"] : [undefined];
    const curves = sides.map((side) =>
      curveOf(car, asked, rows, { side, gives: isSided ? "travel" : "heave", zero: rest }),
    );
    return { kind: "logged", curves };
  }
  const { track } = mechanism;
  if (track === undefined) return absent(`the ${asked.axle} axle has no track, so that travels give no roll angle`);
  const most = (2 * Math.min(to - rest, rest - from)) / track;
  const rows = kinematics(mechanism, [rest], spread(-most, most, 0));
  return { kind: "logged", curves: [curveOf(car, asked, rows, { side: undefined, gives: "roll", zero: 0 })] };
}

const isForRoll = (elements: readonly ElementModel[]): boolean =>
  elements.some((element) => element.for.includes("roll") && !element.for.includes("heave"));

/** Samples between two ends, one of them exactly where the channel is set to nought. */
const SAMPLES = 241;

function spread(from: number, to: number, zero: number): readonly number[] {
  const even = Array.from({ length: SAMPLES }, (_, i) => from + ((to - from) * i) / (SAMPLES - 1));
  const apart = (to - from) / (4 * SAMPLES);
  return [...even.filter((value) => Math.abs(value - zero) > apart), zero].sort((a, b) => a - b);
}

interface Wanted {
  readonly side: Side | undefined;
  readonly gives: Gives;
  readonly zero: number;
}

function curveOf(
  car: CheckedCar,
  asked: LoggerAsked,
  rows: readonly KinematicsRow[],
  wanted: Wanted,
): LoggedCurve | Absent {
  const { side, gives, zero } = wanted;
  const samples: Sample[] = [];
  let why: Absent | undefined;
  for (const row of rows) {
    const channel = channelIn(row, asked, side);
    if (isAbsent(channel)) why ??= channel;
    else
      samples.push({
        motion: gives === "roll" ? row.roll : row.heave,
        channel: asked.reads === "extension" ? -channel : channel,
      });
  }
  if (samples.length < 3) return why ?? absent("there are too few positions");
  const curve = channelCurve(samples, zero);
  return isAbsent(curve) ? curve : shownCurve(car, asked, curve, wanted);
}

function channelIn(row: KinematicsRow, { axle, channel }: LoggerAsked, side: Side | undefined): number | Absent {
  if (channel === "rocker") {
    const wheel = row[side ?? "left"];
    return isAbsent(wheel) ? wheel : wheel.rocker;
  }
  const path = side === undefined ? `${axle}.${channel}` : `${axle}.${side}.${channel}`;
  return row.elements.find((element) => element.path === path)?.deflection ?? absent(`there is no ${path}`);
}

function shownCurve(
  car: CheckedCar,
  asked: LoggerAsked,
  curve: ChannelCurve,
  { side, gives, zero }: Wanted,
): LoggedCurve {
  const unit = unitsOfCar(car.model);
  const channelUnit = unit(isTurning(car, asked) ? "angle" : "length");
  const motionUnit = unit(gives === "roll" ? "angle" : "length");
  const shown = (channel: number): { readonly channel: number; readonly motion: number } => ({
    channel: fromSI(channel, channelUnit) ?? channel,
    motion: fromSI(curve.motionAt(channel) - zero, motionUnit) ?? 0,
  });
  const ends = [curve.samples[0]?.channel ?? 0, curve.samples.at(-1)?.channel ?? 0] as const;
  const { points } = asked;
  const even = Array.from({ length: points }, (_, i) => ends[0] + ((ends[1] - ends[0]) * i) / Math.max(1, points - 1));
  const track = car.model.axles[asked.axle]?.track?.value ?? 1;
  const within = fromSI(gives === "roll" ? (2 * asked.within) / track : asked.within, motionUnit) ?? asked.within;
  return {
    side,
    gives,
    channelUnit,
    unit: motionUnit,
    curve,
    rows: even.map(shown),
    polynomial: polynomialOf(nodes(ends).map(shown), within),
  };
}

const isTurning = (car: CheckedCar, { axle, channel }: LoggerAsked): boolean =>
  channel === "rocker" ||
  car.analysis.axles[axle]?.elements.find(({ path }) => path.split(".").at(-1) === channel)?.torsional === true;

/** Crowded towards the ends, where polynomials go astray. */
function nodes([from, to]: readonly [number, number]): readonly number[] {
  const count = 81;
  return Array.from(
    { length: count },
    (_, i) => (from + to) / 2 - ((to - from) / 2) * Math.cos((Math.PI * i) / (count - 1)),
  );
}

const MOST_DEGREE = 9;

/** The lowest degree that keeps within. */
function polynomialOf(points: LoggedCurve["rows"], within: number): Polynomial | Absent {
  const [x, y] = [points.map(({ channel }) => channel), points.map(({ motion }) => motion)];
  for (let degree = 1; degree <= MOST_DEGREE; degree++) {
    const coefficients = polynomialFit(x, y, degree);
    if (coefficients === undefined) break;
    const largestError = Math.max(
      ...points.map(({ channel, motion }) => Math.abs(polynomialAt(coefficients, channel) - motion)),
    );
    if (largestError <= within) return { degree, coefficients, largestError };
  }
  return absent(`no polynomial up to the ${MOST_DEGREE}th degree keeps within that error; take the table`);
}
