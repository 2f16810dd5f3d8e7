/**
 * One corner sampled over travel and steer: every joint, eye and end that is drawn, the wheel, and what turns.
 *
 * In: the corners of one side, one for every steer, in the frame of a left corner. Out: tables in the car's frame.
 */
import type { Body, Corner, CornerMotion, Unreachable } from "../../linkage/corner.js";
import { cross, dot, mirror, sub, unit, type Vec3 } from "../../maths/vec3.js";
import type { Side } from "../../model/origin.js";
import type { PanelPoint, PanelWheel } from "./data.js";

export interface Samples {
  readonly side: Side;
  readonly travels: readonly number[];
  readonly steers: readonly number[];
  /** index = steer index × travels.length + travel index. */
  readonly motions: readonly (CornerMotion | Unreachable)[];
}

/** Finer than any screen; a digit less halves the message. */
const GRAIN = 1e-6;

export const grained = (value: number): number => {
  const steps = Math.round(value / GRAIN);
  return steps === 0 ? 0 : steps * GRAIN === 0 ? 0 : Number((steps * GRAIN).toFixed(6));
};

const isReached = (motion: CornerMotion | Unreachable): motion is CornerMotion => !("kind" in motion);

export function sampled(
  side: Side,
  corners: readonly Corner[],
  travels: readonly number[],
  steers: readonly number[],
): Samples {
  const motions = corners.flatMap((corner) => travels.map((travel) => corner.motion(travel)));
  return { side, travels, steers, motions };
}

type Flat = readonly (number | null)[];

function table(samples: Samples, read: (motion: CornerMotion, index: number) => Vec3 | undefined): Flat {
  return samples.motions.flatMap((motion, index) => {
    const at = isReached(motion) ? read(motion, index) : undefined;
    if (at === undefined || !at.every(Number.isFinite)) return [null, null, null];
    return (samples.side === "left" ? at : mirror(at)).map(grained);
  });
}

function numbers(samples: Samples, read: (motion: CornerMotion) => number | undefined): Flat {
  return samples.motions.map((motion) => {
    const value = isReached(motion) ? read(motion) : undefined;
    return value === undefined || !Number.isFinite(value) ? null : grained(value);
  });
}

/** @param design true place at design, car frame */
export function bodyTable(samples: Samples, body: Body, design: Vec3): PanelPoint["at"] {
  if (body === "chassis") return design.map(grained);
  const own = samples.side === "left" ? design : mirror(design);
  return table(samples, (motion) => motion.point(body, own).p);
}

/** A point that some law of its own moves, given in the frame of a left corner. */
export const movedTable = (samples: Samples, read: (motion: CornerMotion) => Vec3 | undefined): PanelPoint["at"] =>
  table(samples, read);

/** Inner ends of the track rods move with the rack: what is fixed for travel is not for steer. */
export const rackTable = (samples: Samples, design: Vec3, ahead: 1 | -1): PanelPoint["at"] =>
  samples.steers.length === 1
    ? design.map(grained)
    : samples.steers.flatMap((steer) =>
        samples.travels.flatMap(() => [design[0], design[1] + ahead * steer, design[2]].map(grained)),
      );

/** Spin axis from camber and toe, as the upright carries it: outboard, so that it is the wheel's own on both sides. */
export function wheelTables(samples: Samples, radius: number): PanelWheel | undefined {
  const known = samples.motions.some((motion) => isReached(motion) && motion.wheel !== undefined);
  if (!known) return undefined;
  return {
    radius: grained(radius),
    centre: table(samples, ({ wheel }) => wheel?.centre.p),
    contact: table(samples, ({ wheel }) => wheel?.contact.p),
    spin: table(samples, ({ wheel }) => wheel && spinAxis(wheel.camber.value, wheel.toe.value)),
    camber: numbers(samples, ({ wheel }) => wheel?.camber.value),
    toe: numbers(samples, ({ wheel }) => wheel?.toe.value),
  };
}

/** Outboard of a left wheel: top outboard (camber positive) points it down, toe-in points it forward. */
function spinAxis(camber: number, toe: number): Vec3 {
  return [Math.sin(toe) * Math.cos(camber), Math.cos(toe) * Math.cos(camber), -Math.sin(camber)];
}

/**
 * Angle of a body that turns about an axis through `pivot`, rad, right-handed about `axis`, from design: by a point on it.
 *
 * @param on the table of that point, and where it is at design
 */
export function turnOf(on: Flat, design: Vec3, pivot: Vec3, axis: Vec3): Flat {
  const arm = across(sub(design, pivot), axis);
  return Array.from({ length: on.length / 3 }, (_, i) => {
    const [x, y, z] = [on[3 * i], on[3 * i + 1], on[3 * i + 2]];
    if (typeof x !== "number" || typeof y !== "number" || typeof z !== "number") return null;
    const now = across(sub([x, y, z], pivot), axis);
    return grained(Math.atan2(dot(cross(arm, now), axis), dot(arm, now)));
  });
}

function across(arm: Vec3, axis: Vec3): Vec3 {
  const k = dot(arm, axis);
  return [arm[0] - k * axis[0], arm[1] - k * axis[1], arm[2] - k * axis[2]];
}

export const axisOf = (direction: Vec3): Vec3 => unit(direction);
