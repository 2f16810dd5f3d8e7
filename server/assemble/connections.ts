/**
 * The connection of an element, from what is written to a deflection that follows the wheels.
 *
 * Right-hand points are mirrored into the frame of a left corner here; nothing above knows of it.
 */
import { barTwist } from "../elements/connections/bar.js";
import type { BarLever } from "../elements/connections/bar-lever.js";
import { between } from "../elements/connections/between.js";
import { byRatios, constantRatio, type RatioCurve, tabledRatio } from "../elements/connections/ratio.js";
import { type NoTee, type TeeLink, teeTwist } from "../elements/connections/tee.js";
import { tiedBars, type TieLever } from "../elements/connections/tied-bars.js";
import { rockerToChassis, rockerToRocker } from "../elements/connections/twists.js";
import type { Connection } from "../elements/element.js";
import type { End } from "../elements/ends.js";
import type { Sides } from "../elements/mechanism.js";
import type { Body } from "../linkage/corner.js";
import { leverOf } from "../linkage/lever.js";
import { cross, dot, mirror, sub, type Vec3 } from "../maths/vec3.js";
import type { Attachment, AxleModel, ConnectionModel, ElementModel, RatioModel, RockerModel } from "../model/car.js";
import type { Side } from "../model/origin.js";
import { type BuiltCorner, degenerateReason } from "./corner.js";

/** What is written cannot be built, or rests on something that is missing. */
export interface Unconnected {
  readonly missing: string;
  /** True where the written connection itself is at fault. */
  readonly atFault: boolean;
}

export const isUnconnected = (made: object): made is Unconnected => "missing" in made;

export interface AxleParts {
  readonly axle: AxleModel;
  readonly corners: Sides<BuiltCorner>;
}

const fault = (missing: string): Unconnected => ({ missing, atFault: true });
const rests = (missing: string): Unconnected => ({ missing, atFault: false });

const inLeftFrame = (point: Vec3, side: Side): Vec3 => (side === "left" ? point : mirror(point));

/** Why nothing can be joined to a body of a side. */
function bodyMissing({ axle, corners }: AxleParts, side: Side, body: Body): string | undefined {
  const { missing } = corners[side];
  if (missing !== undefined) return missing;
  const model = axle.corner[side];
  if (model.kind === "ratio")
    return `the ${axle.name} axle is given by ratios, so that nothing can be joined to its ${body}`;
  if (body !== "rocker" || model.kind === "incomplete") return undefined;
  if (model.rocker === undefined) return `the ${axle.name} linkage has no rocker`;
  return model.rod === undefined ? `the ${axle.name} rocker has no push or pull rod that works it` : undefined;
}

function bodyEnd(parts: AxleParts, side: Side, body: Body, point: Vec3): End | Unconnected {
  const missing = bodyMissing(parts, side, body);
  return missing === undefined ? { kind: "body", side, body, point: inLeftFrame(point, side) } : rests(missing);
}

const elsewhere = (axle: string): Unconnected =>
  fault(`it is joined to the ${axle} axle, and an element that joins the axles stands beside them, not in one of them`);

/** An end of an element that is joined to this axle. */
export function endOf(attachment: Attachment, parts: AxleParts): End | Unconnected {
  if (attachment.kind !== "chassis" && attachment.axle !== parts.axle.name) return elsewhere(attachment.axle);
  switch (attachment.kind) {
    case "chassis":
      return { kind: "chassis", point: attachment.point.value };
    case "eye":
      return bodyEnd(parts, attachment.side, "rocker", attachment.point.value);
    case "body":
      return bodyEnd(parts, attachment.side, attachment.body, attachment.point.value);
    case "lever-end": {
      const lever = leverNamed(attachment.bar, attachment.side, parts);
      return isUnconnected(lever) ? lever : { kind: "lever", side: attachment.side, lever };
    }
  }
}

function leverNamed(bar: string, side: Side, parts: AxleParts): BarLever | Unconnected {
  const model = parts.axle.elements.find(({ name, kind }) => name === bar && kind === "anti-roll-bar");
  // Both wheels work the cross arm, by its swing and its twist, and an end here follows one wheel at most.
  if (model?.connection?.kind === "tee")
    return fault(`${bar} is a T-shaped bar, and its cross arm takes its drop links only`);
  if (model?.connection?.kind !== "bar")
    return fault(`there is no anti-roll bar ${bar} with levers on the ${parts.axle.name} axle`);
  const link = model.connection.links[side];
  if (link === undefined) return rests(`the drop link of ${bar} is off on the ${side} side`);
  return leverFor(model.connection, link, side, parts);
}

type BarModel = Extract<ConnectionModel, { kind: "bar" }>;

function leverFor(bar: BarModel, link: Attachment, side: Side, parts: AxleParts): BarLever | Unconnected {
  const end = endOf(link, parts);
  if (isUnconnected(end)) return end;
  if (end.kind !== "body") return fault("its drop link is not joined to a rocker, a wishbone or the upright");
  const design = parts.corners[side].drawn.motion(0);
  if ("kind" in design) return rests(`the ${parts.axle.name} linkage does not stand at design position`);
  const { pivot, axis, end: tip } = bar.levers[side];
  const points = {
    pivot: inLeftFrame(pivot.value, side),
    axis: inLeftFrame(axis.value, side),
    end: inLeftFrame(tip.value, side),
  };
  const far = design.point(end.body, end.point);
  const lever = leverOf(points, far, bar.longer[side]?.value);
  if (!("kind" in lever)) return { lever, body: end.body, linkEnd: end.point };
  const isDrawnWell = bar.longer[side] !== undefined && !("kind" in leverOf(points, far));
  return fault(isDrawnWell ? `its drop link does not reach on the ${side} side as it is set` : degenerateReason(lever));
}

export const basisOf = ({ corners }: AxleParts): "hardpoints" | "planar" =>
  corners.left.corner.basis === "planar" || corners.right.corner.basis === "planar" ? "planar" : "hardpoints";

function twoPoint(ends: readonly [Attachment, Attachment], parts: AxleParts): Connection | Unconnected {
  const first = endOf(ends[0], parts);
  if (isUnconnected(first)) return first;
  const second = endOf(ends[1], parts);
  if (isUnconnected(second)) return second;
  const made = between(first, second, basisOf(parts));
  return made.kind === "no-deflection" ? fault("its two ends fall together") : made;
}

/** The cylinders of a hydraulic link of an axle, or what keeps one from being joined. */
export function cylindersOf(
  model: Extract<ConnectionModel, { kind: "cylinders" }>,
  parts: AxleParts,
): ReadonlyMap<string, Connection> | Unconnected {
  const joined = new Map<string, Connection>();
  for (const { name, ends } of model.cylinders) {
    const made = twoPoint(ends, parts);
    if (isUnconnected(made)) return { ...made, missing: `its cylinder ${name} is not joined: ${made.missing}` };
    joined.set(name, made);
  }
  return joined;
}

function barOf(model: BarModel, parts: AxleParts): Connection | Unconnected {
  const side = (name: Side): BarLever | Unconnected | undefined => {
    const link = model.links[name];
    return link && leverFor(model, link, name, parts);
  };
  const left = side("left");
  const right = side("right");
  if (left !== undefined && isUnconnected(left)) return left;
  if (right !== undefined && isUnconnected(right)) return right;
  return barTwist({ left, right }, basisOf(parts));
}

type TeeModel = Extract<ConnectionModel, { kind: "tee" }>;

const NO_TEE: Readonly<Record<NoTee, string>> = {
  "no-stem": "the foot and the head of its stem fall together",
  "no-arm": "an end of its cross arm lies on the stem",
  "no-hold": "its drop links do not reach, or do not hold its cross arm",
};

function teeOf(model: TeeModel, parts: AxleParts): Connection | Unconnected {
  const side = (name: Side): TeeLink | Unconnected | undefined => {
    const link = model.links[name];
    const end = link && endOf(link, parts);
    if (end === undefined || isUnconnected(end)) return end;
    if (end.kind !== "body") return fault("its drop link is not joined to a rocker, a wishbone or the upright");
    const longer = model.longer[name]?.value ?? 0;
    return { end: inLeftFrame(model.ends[name].value, name), body: end.body, far: end.point, longer };
  };
  const [left, right] = [side("left"), side("right")];
  if (left !== undefined && isUnconnected(left)) return left;
  if (right !== undefined && isUnconnected(right)) return right;
  const design = { left: parts.corners.left.drawn.motion(0), right: parts.corners.right.drawn.motion(0) };
  if ("kind" in design.left || "kind" in design.right)
    return rests(`the ${parts.axle.name} linkage does not stand at design position`);
  const points = { foot: model.foot.value, head: model.head.value, left, right };
  const made = teeTwist(points, basisOf(parts), { left: design.left, right: design.right });
  return typeof made === "string" ? fault(NO_TEE[made]) : made;
}

function rockerOf({ axle }: AxleParts, side: Side): { readonly pivot: Vec3; readonly axis: Vec3 } | undefined {
  const model = axle.corner[side];
  if (model.kind === "hardpoints") return drawnRocker(model.rocker, side);
  if (model.kind !== "planar" || model.rocker === undefined) return undefined;
  const [y, z] = model.rocker.pivot.value;
  const x = axle.wheel[side].centre?.value[0] ?? 0;
  return { pivot: inLeftFrame([x, y, z], side), axis: [1, 0, 0] };
}

const drawnRocker = (rocker: RockerModel | undefined, side: Side) =>
  rocker && { pivot: inLeftFrame(rocker.pivot.value, side), axis: inLeftFrame(rocker.axis.value, side) };

type TwistModel = Extract<ConnectionModel, { kind: "twists" }>;

function twistOf(model: TwistModel, parts: AxleParts): Connection | Unconnected {
  const { of, against } = model;
  const bodies = against.body === "chassis" ? [of] : [of, against];
  const other = bodies.find(({ axle }) => axle !== parts.axle.name);
  if (other !== undefined) return elsewhere(other.axle);
  const sides = bodies.map(({ side }) => side);
  for (const side of sides) {
    const missing = bodyMissing(parts, side, "rocker");
    if (missing !== undefined) return rests(missing);
  }
  if (against.body === "chassis") return rockerToChassis(of.side, basisOf(parts));
  if (against.side === of.side) return fault("both of its ends are on one rocker");
  return model.tie === undefined ? straightBar(parts) : tied(model.tie.value, parts);
}

/**
 * Whether equal bump turns both rockers alike about a line that they share. Mirrored, an axis (x, y, z) with its
 * rotation becomes (−x, y, −z): alike where the axis runs across the car.
 */
function straightBar(parts: AxleParts): Connection | Unconnected {
  const rocker = rockerOf(parts, "left");
  if (rocker === undefined) return rests(`the ${parts.axle.name} linkage has no rocker`);
  const [x, y, z] = rocker.axis;
  return rockerToRocker(y * y >= x * x + z * z ? 1 : -1, basisOf(parts));
}

/** The lever on a bar's free end, with the axis turned so that bump turns the rocker positively about it. */
function tieLever(parts: AxleParts, side: Side, arm: Vec3): TieLever | undefined {
  const rocker = rockerOf(parts, side);
  const design = parts.corners[side].drawn.motion(0);
  if (rocker === undefined || "kind" in design) return undefined;
  const { d } = design.point("rocker", arm);
  const sense = dot(cross(rocker.axis, sub(arm, rocker.pivot)), d) < 0 ? -1 : 1;
  return { pivot: rocker.pivot, axis: [sense * rocker.axis[0], sense * rocker.axis[1], sense * rocker.axis[2]], arm };
}

/**
 * Direction of a side's rocker axis in the car frame, so that bump of its own wheel turns the rocker positively about
 * it; mirrored, an axis with its rotation (x, y, z) becomes (−x, y, −z).
 */
export function rockerAxis(parts: AxleParts, side: Side): Vec3 | Unconnected {
  const missing = bodyMissing(parts, side, "rocker");
  if (missing !== undefined) return rests(missing);
  const lever = rodEnd(parts, side);
  const made = lever && tieLever(parts, side, lever);
  if (made === undefined) return rests(`the ${parts.axle.name} linkage does not stand at design position`);
  const [x, y, z] = made.axis;
  return side === "left" ? made.axis : [-x, y, -z];
}

/** Where the push or pull rod works the rocker, in the frame of a left corner. */
function rodEnd({ axle }: AxleParts, side: Side): Vec3 | undefined {
  const model = axle.corner[side];
  if (model.kind === "hardpoints") return model.rod && inLeftFrame(model.rod.inner.value, side);
  if (model.kind !== "planar" || model.rod === undefined) return undefined;
  const [y, z] = model.rod.inner.value;
  return inLeftFrame([axle.wheel[side].centre?.value[0] ?? 0, y, z], side);
}

function tied(arm: Vec3, parts: AxleParts): Connection | Unconnected {
  const left = tieLever(parts, "left", arm);
  const right = tieLever(parts, "right", arm);
  if (left === undefined || right === undefined) return rests(`the ${parts.axle.name} linkage has no rocker`);
  return (
    tiedBars(left, right, basisOf(parts)) ?? fault("the levers of its tie lie along the link, which cannot hold them")
  );
}

export function ratioCurve(model: RatioModel): RatioCurve | undefined {
  if (model.kind === "constant") return constantRatio(model.value.value);
  const { travel, deflection } = model;
  return travel.length > 1 && travel.length === deflection.length ? tabledRatio(travel, deflection) : undefined;
}

function ratiosOf(
  model: Extract<ConnectionModel, { kind: "ratio" }>,
  side: Side | undefined,
): Connection | Unconnected {
  const curves = new Map<string, RatioCurve>();
  for (const { mode, ratio } of model.ratios) {
    const curve = ratioCurve(ratio);
    if (curve === undefined) return fault(`its ratio table in ${mode} has fewer than two points`);
    curves.set(mode, curve);
  }
  const heave = curves.get("heave");
  // A corner element's own wheel moves alike whether the other one does or not.
  const ratios = side === undefined ? { heave, roll: curves.get("roll") } : { corner: curves.get("corner") ?? heave };
  if (Object.values(ratios).every((curve) => curve === undefined)) {
    return fault(`its ratio names no mode of ${side === undefined ? "its axle" : "its own wheel"}`);
  }
  return byRatios(ratios, model.torsional, side);
}

/** The connection of an element of an axle. */
export function connectionOf({ connection, side }: ElementModel, parts: AxleParts): Connection | Unconnected {
  if (connection === undefined) return rests("it is not connected");
  switch (connection.kind) {
    case "between":
      return twoPoint(connection.ends, parts);
    case "twists":
      return twistOf(connection, parts);
    case "bar":
      return barOf(connection, parts);
    case "tee":
      return teeOf(connection, parts);
    case "ratio":
      return ratiosOf(connection, side);
    case "cylinders":
      return rests("its cylinders are joined one by one");
  }
}
