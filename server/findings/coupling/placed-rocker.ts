/** The rocker of a side with its eyes in space, whether it is drawn in space or in the plane of the wheel. */
import type { Vec3 } from "../../maths/vec3.js";
import type { AxleModel } from "../../model/car.js";
import type { Given, Origin, Side } from "../../model/origin.js";

export interface PlacedEye {
  readonly given: Given<readonly number[]>;
  readonly point: Vec3;
}

export interface PlacedRocker {
  readonly pivot: Vec3;
  readonly axis: Vec3;
  readonly eyes: ReadonlyMap<string, PlacedEye>;
  /** The lines that place it. */
  readonly statements: readonly Origin[];
}

/** The thinnest pin in use, and the shortest lever that has room for its bearing, m (common practice, no published source). */
export const PIN = 5e-3;
export const SHORTEST_LEVER = 8e-3;

export function placedRocker(axle: AxleModel, side: Side): PlacedRocker | undefined {
  const corner = axle.corner[side];
  if (corner.kind === "hardpoints" && corner.rocker !== undefined) {
    const { pivot, axis, eyes } = corner.rocker;
    const placed = [...eyes].map(([name, given]) => [name, { given, point: given.value }] as const);
    const statements = [pivot.statement, axis.statement];
    return { pivot: pivot.value, axis: axis.value, eyes: new Map(placed), statements };
  }
  if (corner.kind !== "planar" || corner.rocker === undefined) return undefined;
  const x = axle.wheel[side].centre?.value[0] ?? 0;
  const inSpace = ([y, z]: readonly [number, number]): Vec3 => [x, y, z];
  const placed = [...corner.rocker.eyes].map(
    ([name, given]) => [name, { given, point: inSpace(given.value) }] as const,
  );
  const { pivot } = corner.rocker;
  return { pivot: inSpace(pivot.value), axis: [1, 0, 0], eyes: new Map(placed), statements: [pivot.statement] };
}

/** Whether two values are written by one and the same text: a side that mirrors the other, not one of its own. */
export function sameText(a: PlacedEye | undefined, b: PlacedEye | undefined): boolean {
  return (
    a !== undefined &&
    b !== undefined &&
    a.given.origin.uri === b.given.origin.uri &&
    a.given.origin.start === b.given.origin.start
  );
}
