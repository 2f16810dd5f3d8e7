/**
 * Both hardpoint axles of the sample car against an independent solution: constraint equations
 * solved with SciPy and polished to 50 digits (axle.py; checked itself against wishbone-case.json
 * by check_wishbone.py). Own figures, no published source.
 */
import { describe, expect, it } from "vitest";
import { between } from "../../server/elements/connections/between.js";
import type { Deflection } from "../../server/elements/element.js";
import type { End } from "../../server/elements/ends.js";
import type { CornerMotion } from "../../server/linkage/corner.js";
import { type Lever, leverMotion, leverOf } from "../../server/linkage/lever.js";
import { distance, type Vec3 } from "../../server/maths/vec3.js";
import { expectClose } from "../support/approx.js";
import { ORACLE_ANGLE, ORACLE_POSITION, ORACLE_SECOND, ORACLE_SLOPE } from "../support/tolerances.js";
import { cornerOf, type InputElement, metres, radians, type SolvedAxle, solvedAxle } from "./quill-axles.js";

type Side = "left" | "right";

function movedTo(axle: SolvedAxle, millimetres: number): CornerMotion {
  const motion = cornerOf(axle).motion(millimetres * 1e-3);
  if ("kind" in motion) throw new Error(`${motion.link} binds at ${motion.limit}`);
  return motion;
}

function expectAt(actual: Vec3, expected: readonly [number, number, number]): void {
  expect(distance(actual, metres(expected))).toBeLessThan(ORACLE_POSITION);
}

const eye = (axle: SolvedAxle, name: string): Vec3 => metres(axle.input.linkage.rocker.eyes[name] ?? [NaN, NaN, NaN]);

function leverIn(axle: SolvedAxle, element: InputElement): Lever {
  const { lever, "drop-link": link } = element;
  if (lever === undefined || link === undefined) throw new Error("no lever");
  const points = { pivot: metres(lever.pivot), axis: lever.axis, end: metres(lever.end) };
  const found = leverOf(points, movedTo(axle, 0).point("rocker", eye(axle, link)));
  if ("kind" in found) throw new Error(found.reason);
  return found;
}

/** Deflection of an element; of a corner element, the one on `side`. */
function deflected(
  axle: SolvedAxle,
  element: InputElement,
  left: CornerMotion,
  right: CornerMotion,
  side: Side,
): Deflection {
  const cross = !element.for.includes("corner");
  const endOf = (end: { eye: string } | { chassis: Vec3 }, at: Side): End =>
    "eye" in end
      ? { kind: "body", side: at, body: "rocker", point: eye(axle, end.eye) }
      : { kind: "chassis", point: mirroredFor(at, metres(end.chassis)) };
  if (element.between !== undefined) {
    const [a, b] = element.between;
    const connection = between(endOf(a, cross ? "left" : side), endOf(b, cross ? "right" : side), "hardpoints");
    if (connection.kind === "no-deflection") throw new Error(connection.reason);
    const found = connection.deflection({ left, right });
    if ("kind" in found) throw new Error(found.reason);
    return found;
  }
  const jets = [left, right].map((motion) => {
    if (element.twists) return motion.rocker;
    const turned = leverMotion(leverIn(axle, element), motion.point("rocker", eye(axle, element["drop-link"] ?? "")));
    return "kind" in turned ? undefined : turned.angle;
  });
  const [l, r] = jets;
  if (l === undefined || r === undefined) throw new Error("no angle");
  if (cross) return { s: l.value - r.value, dL: l.d, dR: -r.d, dLL: l.dd, dLR: 0, dRR: -r.dd };
  const own = side === "left" ? l : r;
  return side === "left"
    ? { s: own.value, dL: own.d, dR: 0, dLL: own.dd, dLR: 0, dRR: 0 }
    : { s: own.value, dL: 0, dR: own.d, dLL: 0, dLR: 0, dRR: own.dd };
}

const mirroredFor = (side: Side, [x, y, z]: Vec3): Vec3 => (side === "left" ? [x, y, z] : [x, -y, z]);
const torsional = (element: InputElement): boolean => element.between === undefined;

describe.each(["front", "rear"] as const)("%s axle of the sample car", (name) => {
  const axle = solvedAxle(name);

  it.each(axle.corner)("has every joint where the constraint equations put it, at $travel_mm mm", (row) => {
    const motion = movedTo(axle, row.travel_mm);
    const { linkage, wheel } = axle.input;
    expectAt(motion.wheel?.centre.p ?? [NaN, NaN, NaN], row.centre_mm);
    expectAt(motion.wheel?.contact.p ?? [NaN, NaN, NaN], row.contact_mm);
    expectAt(motion.point("lower-wishbone", metres(linkage["lower-wishbone"].outer)).p, row.lower_outer_mm);
    expectAt(motion.point("upright", metres(linkage["lower-wishbone"].outer)).p, row.lower_outer_mm);
    expectAt(motion.point("upper-wishbone", metres(linkage["upper-wishbone"].outer)).p, row.upper_outer_mm);
    expectAt(motion.point("upright", metres(linkage["track-rod"].outer)).p, row.track_rod_outer_mm);
    expectAt(motion.point("upright", metres(wheel.centre)).p, row.centre_mm);
    expectAt(motion.point(linkage.rod.on, metres(linkage.rod.outer)).p, row.rod_outer_mm);
    expectAt(motion.point("rocker", metres(linkage.rod.inner)).p, row.rod_inner_mm);
    for (const [eyeName, place] of Object.entries(row.eyes_mm))
      expectAt(motion.point("rocker", eye(axle, eyeName)).p, place);
  });

  it.each(axle.corner)("has the angles and their derivatives of the differenced solution, at $travel_mm mm", (row) => {
    const motion = movedTo(axle, row.travel_mm);
    const { wheel, rocker } = motion;
    expectClose(wheel?.camber.value ?? NaN, radians(row.camber_deg), 0, ORACLE_ANGLE);
    expectClose(wheel?.toe.value ?? NaN, radians(row.toe_deg), 0, ORACLE_ANGLE);
    expectClose(rocker?.value ?? NaN, radians(row.rocker_deg), 0, ORACLE_ANGLE);
    expectClose(rocker?.d ?? NaN, row.rocker_rad_per_mm * 1e3, ORACLE_SLOPE);
    expectClose(rocker?.dd ?? NaN, row.rocker_rad_per_mm2 * 1e6, ORACLE_SECOND, 1e-6);
    expectClose(wheel?.contact.d[0] ?? NaN, row.d_contact_x, ORACLE_SLOPE);
    expectClose(wheel?.contact.d[1] ?? NaN, row.d_contact_y, ORACLE_SLOPE);
    expectClose(wheel?.contact.d[2] ?? NaN, row.d_contact_z, ORACLE_SLOPE);
    expectClose(wheel?.contact.dd[1] ?? NaN, row.dd_contact_y_per_mm * 1e3, ORACLE_SECOND, 1e-6);
  });

  it.each(axle.corner)("turns the bar's lever alike, at $travel_mm mm", (row) => {
    const bar = Object.values(axle.input.elements).find((element) => element.lever !== undefined) as InputElement;
    const link = movedTo(axle, row.travel_mm).point("rocker", eye(axle, bar["drop-link"] ?? ""));
    const turned = leverMotion(leverIn(axle, bar), link);
    if ("kind" in turned) throw new Error("the drop link does not reach");
    expectAt(turned.end.p, row.lever_end_mm);
    expectClose(turned.angle.value, radians(row.lever_deg), 0, ORACLE_ANGLE);
    expectClose(turned.angle.d, row.lever_rad_per_mm * 1e3, ORACLE_SLOPE);
    expectClose(turned.angle.dd, row.lever_rad_per_mm2 * 1e6, ORACLE_SECOND, 1e-6);
  });

  it.each(Object.entries(axle.input.elements))("deflects %s alike in every heave and roll", (path, element) => {
    const unit = torsional(element) ? 1 : 1e-3;
    const tolerance = torsional(element) ? ORACLE_ANGLE : ORACLE_POSITION;
    for (const state of axle.states) {
      const left = movedTo(axle, state.left_mm);
      const right = movedTo(axle, state.right_mm);
      const solved = state.elements[path];
      if (solved === undefined) throw new Error(`no ${path}`);
      const pair = typeof solved === "number" ? [solved] : solved;
      for (const [i, expected] of pair.entries()) {
        const { s } = deflected(axle, element, left, right, i === 0 ? "left" : "right");
        expectClose(s, expected * unit, 0, tolerance);
      }
    }
  });

  it.each(Object.entries(axle.elements))("has the first and second derivatives of %s at design", (path, solved) => {
    const element = axle.input.elements[path] as InputElement;
    const still = movedTo(axle, 0);
    const found = deflected(axle, element, still, still, "left");
    const first = torsional(element) ? 1e3 : 1;
    const second = torsional(element) ? 1e6 : 1e3;
    expectClose(found.dL, solved.gradient[0] * first, ORACLE_SLOPE, 1e-12);
    expectClose(found.dR, solved.gradient[1] * first, ORACLE_SLOPE, 1e-12);
    expectClose(found.dLL, solved.hessian_per_mm[0] * second, ORACLE_SECOND, 1e-7);
    expectClose(found.dLR, solved.hessian_per_mm[1] * second, ORACLE_SECOND, 1e-7);
    expectClose(found.dRR, solved.hessian_per_mm[2] * second, ORACLE_SECOND, 1e-7);
  });
});
