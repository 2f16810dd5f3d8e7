/** Camber and toe of the wheels, drawn and wanted, with the shims and the track rod that set them. */
import type { AngleSetting, Shim } from "../elements/alignment.js";
import type { AxleModel, CornerModel, HardpointCorner, ResolvedBlock, Vec3, WheelModel } from "../model/car.js";
import type { Given, Side } from "../model/origin.js";
import { buildCorner, cornerGeometry } from "./corner.js";
import { blockOf, numberOf, quantitiesOf, statementOf } from "./reading.js";

/** An axle of the set-up, and the same one as its car is written. */
export interface AxlePair {
  readonly wanted: AxleModel;
  readonly drawn: AxleModel;
}

function shimOf(adjuster: ResolvedBlock | undefined): Shim | undefined {
  const [angle, thickness] = quantitiesOf(adjuster, "shim");
  return angle === undefined || thickness === undefined || angle.value === 0
    ? undefined
    : { angle: angle.value, thickness: thickness.value };
}

/** A line of one side stands in the axle's block for both: adjusters are written once. */
const adjusterOf = ({ block }: AxleModel, angle: "camber" | "toe"): ResolvedBlock | undefined =>
  statementOf(blockOf(block, "wheel"), angle)?.block;

const pointOn =
  (side: Side) =>
  ({ value: [x, y, z] }: Given<Vec3>): Vec3 =>
    side === "left" ? [x, y, z] : [x, -y, z];

function rodOf({ wanted, drawn }: AxlePair, side: Side): AngleSetting["rod"] {
  const model: CornerModel = drawn.corner[side];
  const wheel: WheelModel = drawn.wheel[side];
  if (model.kind !== "hardpoints" || wheel.centre === undefined) return undefined;
  const { corner, missing } = buildCorner(cornerGeometry(drawn, side));
  if (missing !== undefined) return undefined;
  const [set, at] = [wanted.rideHeight?.value, wanted.drawnRideHeight?.value];
  return {
    corner,
    points: steered(model, wheel, wheel.centre, pointOn(side)),
    travel: set === undefined || at === undefined ? 0 : at - set,
    thread: numberOf(blockOf(blockOf(wanted.block, "linkage"), "track-rod"), "thread"),
  };
}

function steered(model: HardpointCorner, wheel: WheelModel, centre: Given<Vec3>, on: (point: Given<Vec3>) => Vec3) {
  return {
    lower: on(model.lower.outer),
    upper: on(model.upper.outer),
    inner: on(model.trackRod.inner),
    outer: on(model.trackRod.outer),
    centre: on(centre),
    camber: wheel.camber?.value ?? 0,
    toe: wheel.toe?.value ?? 0,
  };
}

export function angleSetting(axles: AxlePair, side: Side, angle: "camber" | "toe"): AngleSetting {
  const adjuster = adjusterOf(axles.wanted, angle);
  return {
    angle,
    drawn: axles.drawn.wheel[side][angle]?.value ?? 0,
    wanted: axles.wanted.wheel[side][angle]?.value ?? 0,
    shim: shimOf(adjuster),
    step: numberOf(adjuster, "step"),
    rod: angle === "toe" ? rodOf(axles, side) : undefined,
  };
}
