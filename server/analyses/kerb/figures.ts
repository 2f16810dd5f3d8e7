/**
 * What a pass over a kerb comes to: peaks of loads, travel and ride height over its moments, and time off the ground.
 *
 * Invariant: every figure is the value at one moment (the largest, the smallest), or a time by trapezes between moments.
 */
import { add, sub } from "../../maths/vec3.js";
import type { StandingWheel, Standing } from "../equilibrium/standing.js";
import type { Moment } from "./strike.js";

/** The largest and the smallest value. */
export interface Span {
  readonly least: number;
  readonly most: number;
}

export interface WheelStrike extends Pick<StandingWheel, "axle" | "side"> {
  /** N; as the car came, and while it passed. */
  readonly before: number;
  readonly load: Span;
  /** From where the wheel was before, m. */
  readonly travel: Span;
  /** Without any load, s. */
  readonly offGround: number;
}

export interface ElementStrike {
  readonly path: string;
  /** What it is measured in. */
  readonly measure: "length" | "angle" | "volume";
  readonly before: number;
  /** N, N·m or Pa; of a damper with its gas. */
  readonly force: Span;
  /** From design, m, rad or m³; undefined for a damper without gas. */
  readonly deflection: Span | undefined;
  /** Of deflection; undefined for anything but a damper. */
  readonly speed: Span | undefined;
  /** Of a bump stop: how long it is pressed, s. */
  readonly onStop: number | undefined;
}

export interface StrikeFigures {
  readonly wheels: readonly WheelStrike[];
  readonly elements: readonly ElementStrike[];
  /** Least height of the body above the level road at both axle lines, m. */
  readonly rideHeight: readonly [front: number, rear: number];
  readonly clearance: readonly { readonly name: string; readonly least: number }[];
  /** Whole time looked at, s. */
  readonly duration: number;
}

function spanOf(values: readonly number[]): Span {
  let [least, most] = [Infinity, -Infinity];
  for (const value of values) [least, most] = [Math.min(least, value), Math.max(most, value)];
  return { least, most };
}

/** How long something holds: half a step at either end of it. */
function timeOf(moments: readonly Moment[], holds: (moment: Moment) => boolean): number {
  let sum = 0;
  for (let i = 1; i < moments.length; i++) {
    const [one, next] = [moments[i - 1]!, moments[i]!];
    sum += ((Number(holds(one)) + Number(holds(next))) / 2) * (next.t - one.t);
  }
  return sum;
}

/** @param moments at least one, as a pass has */
export function strikeFigures(standing: Standing, moments: readonly Moment[]): StrikeFigures {
  const [first, last] = [moments[0]!, moments.at(-1)!];
  const wheels = standing.wheels.map(({ axle, side }, i): WheelStrike => {
    const loads = moments.map(({ state }) => state.balance.wheels[i]!.load);
    const travel = moments.map(({ x }) => x[3 + i]! - first.x[3 + i]!);
    const offGround = timeOf(moments, ({ state }) => state.balance.wheels[i]!.load === 0);
    return { axle, side, before: loads[0]!, load: spanOf(loads), travel: spanOf(travel), offGround };
  });
  const least = (axle: 0 | 1): number => spanOf(moments.map(({ state }) => state.balance.heights[axle])).least;
  const clearance = standing.car.points.map(({ name, point }) => ({
    name,
    least: spanOf(
      moments.map(({ x, state }) => add(state.balance.attitude.turned(sub(point, standing.origin)), [0, 0, x[0]!])[2]),
    ).least,
  }));
  return {
    wheels,
    elements: [...carriersIn(moments), ...dampersIn(moments)],
    rideHeight: [least(0), least(1)],
    clearance,
    duration: last.t - first.t,
  };
}

type Measured = { readonly measure?: "volume" | undefined; readonly torsional: boolean } | undefined;

const measureOf = (connection: Measured): ElementStrike["measure"] =>
  connection?.measure ?? (connection?.torsional === true ? "angle" : "length");

/** All but dampers: those with gas are told as dampers. */
function carriersIn(moments: readonly Moment[]): readonly ElementStrike[] {
  return moments[0]!.state.balance.carriers.flatMap(({ carrier }, i) => {
    const { element } = carrier;
    if (element.law?.kind === "damper") return [];
    const forces = moments.map(({ state }) => state.balance.carriers[i]!.force);
    const isStop = element.kind === "bump-stop";
    return {
      path: pathOf(element),
      measure: measureOf(carrier.connection),
      before: forces[0]!,
      force: spanOf(forces),
      deflection: spanOf(moments.map(({ state }) => state.balance.carriers[i]!.deflection)),
      speed: undefined,
      onStop: isStop ? timeOf(moments, ({ state }) => state.balance.carriers[i]!.force !== 0) : undefined,
    };
  });
}

const pathOf = ({ path, part }: { readonly path: string; readonly part?: string | undefined }): string =>
  part === undefined ? path : `${path} (${part})`;

function dampersIn(moments: readonly Moment[]): readonly ElementStrike[] {
  const { dampers, balance } = moments[0]!.state;
  return dampers.map(({ element }, i) => {
    const gas = balance.carriers.findIndex(({ carrier }) => carrier.element === element);
    const forces = moments.map(
      ({ state }) => state.dampers[i]!.force + (gas < 0 ? 0 : state.balance.carriers[gas]!.force),
    );
    return {
      path: pathOf(element),
      measure: measureOf(element.connection),
      before: forces[0]!,
      force: spanOf(forces),
      deflection: gas < 0 ? undefined : spanOf(moments.map(({ state }) => state.balance.carriers[gas]!.deflection)),
      speed: spanOf(moments.map(({ state }) => state.dampers[i]!.speed)),
      onStop: undefined,
    };
  });
}
