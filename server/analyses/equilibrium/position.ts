/**
 * Where everything is at a position of the car, before any load is asked about: the body's attitude, the wheels' points
 * above the road, the deflections of what carries with the forces that their laws have there.
 *
 * x = [height of O, roll, pitch, travels FL FR RL RR, …]: m, rad. Points in the road's frame, from O.
 *
 * Invariant: depends on x and the car alone, so that whoever stands at the same place for several loads works it out once.
 */
import type { CornerMotion, PointMotion, Unreachable } from "../../linkage/corner.js";
import type { NoDeflection } from "../../elements/deflection.js";
import type { Vec3 } from "../../maths/vec3.js";
import { Attitude } from "./attitude.js";
import { type Carrier, forceOf, rateOf } from "./carriers.js";
import type { Standing } from "./standing.js";
import { wheelPoints } from "./wheel-points.js";

/** Body freedoms, then the four wheels. */
export const BODY = 3;
export const FREEDOMS = 7;

export interface PlacedWheel {
  readonly motion: CornerMotion;
  /** With derivatives by the wheel's own travel. */
  readonly contact: PointMotion;
  readonly centre: PointMotion;
}

export interface PlacedCarrier {
  readonly carrier: Carrier;
  /** From design. */
  readonly deflection: number;
  /** What its law gives there, and dF/ds: nothing for one that is held. N, N·m or Pa. */
  readonly force: number;
  readonly rate: number;
  /** ∂s over the travels of the wheels that it follows, and the second derivatives, row by row. */
  readonly d: readonly number[];
  readonly dd: readonly (readonly number[])[];
  /** Place of the first of these wheels in x. */
  readonly from: number;
}

export interface Position {
  readonly kind: "position";
  readonly attitude: Attitude;
  /** Of O, m. */
  readonly height: number;
  /** Both axle lines' places on the plane z = 0, and their heights, m. */
  readonly lines: readonly [front: Vec3, rear: Vec3];
  readonly heights: readonly [front: number, rear: number];
  readonly wheels: readonly PlacedWheel[];
  readonly carriers: readonly PlacedCarrier[];
}

/** Why nothing can be said at a position. */
export type NoPosition =
  | { readonly kind: "beyond-reach"; readonly wheel: number; readonly why: Unreachable }
  | { readonly kind: "no-deflection"; readonly path: string; readonly why: NoDeflection };

export function positionAt(standing: Standing, x: readonly number[]): Position | NoPosition {
  const { origin } = standing;
  const height = x[0]!;
  const attitude = new Attitude(x[1]!, x[2]!);
  const wheels: PlacedWheel[] = [];
  for (let i = 0; i < standing.wheels.length; i++) {
    const { corner, side, place } = standing.wheels[i]!;
    const motion = corner.motion(x[BODY + i]!);
    if ("kind" in motion) return { kind: "beyond-reach", wheel: i, why: motion };
    const { contact, centre } = wheelPoints(motion, side, place)!;
    wheels.push({ motion, contact: onRoad(attitude, contact, origin), centre: onRoad(attitude, centre, origin) });
  }
  const carriers = placedCarriers(standing.carriers, wheels);
  if ("kind" in carriers) return carriers;
  return { kind: "position", attitude, height, ...axleLines(standing, attitude, height), wheels, carriers };
}

/** Of the plane z = 0 at both axle lines. */
export function axleLines(
  { lines }: Standing,
  attitude: Attitude,
  height: number,
): Pick<Position, "lines" | "heights"> {
  const ahead = attitude.turned([lines[0], 0, 0]);
  const behind = attitude.turned([lines[1], 0, 0]);
  return { lines: [ahead, behind], heights: [height + ahead[2], height + behind[2]] };
}

const onRoad = (attitude: Attitude, { p, d, dd }: PointMotion, o: Vec3): PointMotion => ({
  p: attitude.turned([p[0] - o[0], p[1] - o[1], p[2] - o[2]]),
  d: attitude.turned(d),
  dd: attitude.turned(dd),
});

function placedCarriers(
  carriers: readonly Carrier[],
  wheels: readonly PlacedWheel[],
): readonly PlacedCarrier[] | NoPosition {
  const front = { left: wheels[0]!.motion, right: wheels[1]!.motion };
  const rear = { left: wheels[2]!.motion, right: wheels[3]!.motion };
  const found: PlacedCarrier[] = [];
  for (const carrier of carriers) {
    const placed = placedCarrier(carrier, front, rear);
    if ("kind" in placed) return { kind: "no-deflection", path: carrier.element.path, why: placed };
    found.push(placed);
  }
  return found;
}

type AxleMotion = Parameters<Extract<Carrier, { axle: 0 | 1 }>["connection"]["deflection"]>[0];

function placedCarrier(carrier: Carrier, front: AxleMotion, rear: AxleMotion): PlacedCarrier | NoDeflection {
  if (carrier.axle === undefined) {
    const found = carrier.connection.deflection({ front, rear });
    if ("kind" in found) return found;
    const { s, d, dd } = found;
    return { carrier, deflection: s, force: forceOf(carrier, s), rate: rateOf(carrier, s), d, dd, from: BODY };
  }
  const found = carrier.connection.deflection(carrier.axle === 0 ? front : rear);
  if ("kind" in found) return found;
  const { s, dL, dR, dLL, dLR, dRR } = found;
  return {
    carrier,
    deflection: s,
    force: forceOf(carrier, s),
    rate: rateOf(carrier, s),
    d: [dL, dR],
    dd: [
      [dLL, dLR],
      [dLR, dRR],
    ],
    from: BODY + 2 * carrier.axle,
  };
}
