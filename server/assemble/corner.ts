/**
 * A side's linkage as a solvable corner, in the frame of a left corner; what is missing or cannot be
 * built is said, and the corner then only knows the wheel's travel.
 */
import { type Degenerate, isDegenerate, type PlanarGeometry, type HardpointGeometry } from "../linkage/geometry.js";
import type { Sides } from "../elements/mechanism.js";
import type { Corner } from "../linkage/corner.js";
import { hardpointCorner } from "../linkage/hardpoint.js";
import { planarCorner } from "../linkage/planar.js";
import { ratioCorner } from "../linkage/ratio.js";
import type { AxleModel, CornerModel, HardpointCorner, PlanarCorner, Vec2, Vec3, WheelModel } from "../model/car.js";
import type { Given, Side } from "../model/origin.js";
import { showQuantity } from "../quantities/index.js";

export interface BuiltCorner {
  readonly corner: Corner;
  /** With the rod as long as it is drawn: what has its length or its angle from the drawing is measured on it. */
  readonly drawn: Corner;
  /** Why there is no position. */
  readonly missing: string | undefined;
  /** Set where the linkage is complete but cannot stand as it is written. */
  readonly degenerate: boolean;
}

/** A geometry with its kind, to be compared with the other side's before anything is solved. */
export type CornerGeometry =
  | { readonly kind: "hardpoints"; readonly geometry: HardpointGeometry }
  | { readonly kind: "planar"; readonly geometry: PlanarGeometry }
  | { readonly kind: "ratio" }
  | { readonly kind: "missing"; readonly reason: string };

type Flip = (point: Given<Vec3>) => Vec3;
type Flip2 = (point: Given<Vec2>) => Vec2;

const flipOf = (side: Side): Flip => (side === "left" ? ({ value }) => value : ({ value: [x, y, z] }) => [x, -y, z]);
const flip2Of = (side: Side): Flip2 => (side === "left" ? ({ value }) => value : ({ value: [y, z] }) => [-y, z]);

/**
 * Wheel centre to contact point in the wheel's plane. By default the centre's height above the ground, which is
 * at z = −ride height as it is drawn; upright wheels where no ride height is given stand on z = 0.
 */
function loadedRadius(wheel: WheelModel, centre: Vec3, camber: number, axle: AxleModel): number {
  if (wheel.loadedRadius !== undefined) return wheel.loadedRadius.value;
  return Math.max(0, centre[2] + (axle.drawnRideHeight?.value ?? 0)) / Math.cos(camber);
}

function wheelOf(axle: AxleModel, side: Side): HardpointGeometry["wheel"] | undefined {
  const wheel = axle.wheel[side];
  if (wheel.centre === undefined) return undefined;
  const centre = flipOf(side)(wheel.centre);
  const camber = wheel.camber?.value ?? 0;
  return { centre, camber, toe: wheel.toe?.value ?? 0, loadedRadius: loadedRadius(wheel, centre, camber, axle) };
}

const rodOf = ({ kind, on, longer }: NonNullable<HardpointCorner["rod"] | PlanarCorner["rod"]>) => ({
  kind,
  on,
  lengthen: longer?.value ?? 0,
});

function hardpoints(model: HardpointCorner, wheel: HardpointGeometry["wheel"], at: Flip): HardpointGeometry {
  const { lower, upper, trackRod, rod, rocker } = model;
  return {
    lower: { fore: at(lower.fore), aft: at(lower.aft), outer: at(lower.outer) },
    upper: { fore: at(upper.fore), aft: at(upper.aft), outer: at(upper.outer) },
    trackRod: { inner: at(trackRod.inner), outer: at(trackRod.outer) },
    rod: rod && { ...rodOf(rod), outer: at(rod.outer), inner: at(rod.inner) },
    rocker: rocker && { pivot: at(rocker.pivot), axis: at(rocker.axis) },
    wheel,
  };
}

function planar(model: PlanarCorner, wheel: PlanarGeometry["wheel"], at: Flip2): PlanarGeometry {
  const { lower, upper, rod, rocker } = model;
  return {
    lower: { inner: at(lower.inner), outer: at(lower.outer) },
    upper: { inner: at(upper.inner), outer: at(upper.outer) },
    rod: rod && { ...rodOf(rod), outer: at(rod.outer), inner: at(rod.inner) },
    rocker: rocker && { pivot: at(rocker.pivot) },
    wheel,
  };
}

/** Plain geometry of one side, the right one mirrored into the frame of a left corner. */
export function cornerGeometry(axle: AxleModel, side: Side): CornerGeometry {
  const model: CornerModel = axle.corner[side];
  if (model.kind === "ratio") return { kind: "ratio" };
  if (model.kind === "incomplete") {
    return { kind: "missing", reason: `the ${axle.name} linkage has no ${model.missing.join(", no ")}` };
  }
  const wheel = wheelOf(axle, side);
  if (wheel === undefined) return { kind: "missing", reason: `the ${axle.name} ${side} wheel has no centre` };
  return model.kind === "planar"
    ? { kind: "planar", geometry: planar(model, wheel, flip2Of(side)) }
    : { kind: "hardpoints", geometry: hardpoints(model, wheel, flipOf(side)) };
}

/** In plain words, why a linkage cannot be built. */
export function degenerateReason({ part, reason }: Degenerate): string {
  switch (reason) {
    case "not-finite":
      return `a coordinate of the ${part} is no number`;
    case "coincident":
      return `the ends of the ${part} fall together`;
    case "no-axis":
      return `the axis of the ${part} has no direction`;
    case "on-axis":
      return `the outer end of the ${part} lies on the axis that it turns about`;
    case "in-line":
      return `the ${part} stands in line at design position, or does not reach`;
    case "no-travel":
      return "the wheel centre cannot move up and down at design position";
  }
}

function unsolved(missing: string | undefined, isFault: boolean): BuiltCorner {
  const corner = ratioCorner();
  return { corner, drawn: corner, missing, degenerate: isFault };
}

type Drawn = Extract<CornerGeometry, { geometry: object }>;

const solved = (from: Drawn) => (from.kind === "planar" ? planarCorner(from.geometry) : hardpointCorner(from.geometry));

function asDrawn(from: Drawn): Drawn {
  const rod = from.geometry.rod && { ...from.geometry.rod, lengthen: 0 };
  return { ...from, geometry: { ...from.geometry, rod } } as Drawn;
}

export function buildCorner(from: CornerGeometry): BuiltCorner {
  if (from.kind === "missing") return unsolved(from.reason, false);
  if (from.kind === "ratio") return unsolved(undefined, false);
  const lengthen = from.geometry.rod?.lengthen ?? 0;
  const drawn = solved(lengthen === 0 ? from : asDrawn(from));
  if (isDegenerate(drawn)) return unsolved(degenerateReason(drawn), true);
  if (lengthen === 0) return { corner: drawn, drawn, missing: undefined, degenerate: false };
  const corner = solved(from);
  return isDegenerate(corner)
    ? unsolved(tooLong(from.geometry.rod?.kind ?? "push-rod", lengthen), true)
    : { corner, drawn, missing: undefined, degenerate: false };
}

/** What stands as it is drawn, and no longer does with the rod as it is set. */
const tooLong = (rod: string, lengthen: number): string =>
  `the ${rod} is set ${showQuantity(Math.abs(lengthen), "mm")} ${lengthen < 0 ? "shorter" : "longer"} than drawn, and so the rocker does not reach it`;

/**
 * Both corners with the rack moved by `rack`, m, positive as it turns the wheels to the left: the inner ends of both
 * track rods move alike across the car, to the left where the steering arms are ahead of the lower ball joints.
 */
export function steeredCorners(left: CornerGeometry, right: CornerGeometry, rack: number): Sides<Corner> | string {
  if (left.kind !== "hardpoints" || right.kind !== "hardpoints")
    return "the front axle is not given by hardpoints, so that it cannot be steered";
  const built = [left, right].map(({ geometry }, i) => {
    const { trackRod, lower } = geometry;
    const ahead = trackRod.outer[0] > lower.outer[0] ? 1 : -1;
    const moved = ahead * rack * (i === 0 ? 1 : -1);
    return hardpointCorner({ ...geometry, trackRod: { ...trackRod, moved } });
  });
  const [one, other] = built;
  if (one === undefined || other === undefined || isDegenerate(one) || isDegenerate(other))
    return `the track rods do not reach with the rack moved by ${showQuantity(rack, "mm")}`;
  return { left: one, right: other };
}

/** Equal to the last digit, whatever depth; 0 and −0 are the same. */
export function same(a: unknown, b: unknown): boolean {
  if (typeof a !== "object" || a === null || typeof b !== "object" || b === null) return a === b;
  const left = Object.entries(a);
  const other: Readonly<Record<string, unknown>> = { ...b };
  return left.length === Object.keys(other).length && left.every(([key, value]) => same(value, other[key]));
}
