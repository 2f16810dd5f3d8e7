/**
 * A full double wishbone with push rod and rocker against figures computed outside this project (two formulations,
 * double and 50-digit arithmetic; test/data/wishbone-case.json), to 1e-9 mm, 1e-9 deg and 1e-7 of dMR/dz.
 */
import { describe, expect, it } from "vitest";
import type { CornerMotion, PointMotion } from "../../server/linkage/corner.js";
import { isDegenerate } from "../../server/linkage/geometry.js";
import { hardpointCorner } from "../../server/linkage/hardpoint.js";
import { leverAngle, leverOf } from "../../server/linkage/lever.js";
import { fixedPoint } from "../../server/linkage/rigid-motion.js";
import { add, distance, dot, mirror, norm, sub, type Vec3 } from "../../server/maths/vec3.js";
import { expectClose } from "../support/approx.js";
import { CHECK_CASE, CONSTRUCTION, ORACLE_RATE } from "../support/tolerances.js";
import { DEGREE, hardpoint, wishbone, wishboneGeometry } from "../support/wishbone-case.js";

const corner = hardpointCorner(wishboneGeometry);
if (isDegenerate(corner)) throw new Error(corner.reason);

const at = (travelMm: number): CornerMotion => {
  const motion = corner.motion(travelMm / 1000);
  if ("kind" in motion) throw new Error(`${travelMm} mm is out of reach`);
  return motion;
};

const wheelAt = (travelMm: number) => {
  const { wheel } = at(travelMm);
  if (wheel === undefined) throw new Error("no wheel");
  return wheel;
};

const rockerAt = (travelMm: number) => {
  const { rocker } = at(travelMm);
  if (rocker === undefined) throw new Error("no rocker");
  return rocker;
};

const expectPoint = (p: Vec3, mm: readonly number[]): void =>
  p.forEach((value, i) => {
    expectClose(value * 1000, mm[i] ?? Number.NaN, 0, CHECK_CASE);
  });

const lever = leverOf(
  { pivot: hardpoint("ABP"), axis: [0, 1, 0], end: hardpoint("DLA") },
  at(0).point("rocker", hardpoint("DLR")),
);
if (isDegenerate(lever)) throw new Error(lever.reason);

const leverAt = (motion: CornerMotion) => {
  const angle = leverAngle(lever, motion.point("rocker", hardpoint("DLR")));
  if ("kind" in angle) throw new Error("drop link does not reach");
  return angle;
};

/** Length between two moving points, with its derivatives. */
function lengthJet(a: PointMotion, b: PointMotion): { value: number; d: number; dd: number } {
  const [q, dq, ddq] = [sub(a.p, b.p), sub(a.d, b.d), sub(a.dd, b.dd)];
  const value = norm(q);
  const d = dot(q, dq) / value;
  return { value, d, dd: (dot(dq, dq) + dot(q, ddq) - d * d) / value };
}

describe.each(wishbone.corner_table)("check case at $travel_mm mm", (row) => {
  it("places every joint", () => {
    const motion = at(row.travel_mm);
    expectPoint(motion.point("lower-wishbone", hardpoint("LBJ")).p, row.LBJ);
    expectPoint(motion.point("upright", hardpoint("LBJ")).p, row.LBJ);
    expectPoint(motion.point("upper-wishbone", hardpoint("UBJ")).p, row.UBJ);
    expectPoint(motion.point("upright", hardpoint("UBJ")).p, row.UBJ);
    expectPoint(motion.point("upright", hardpoint("TRO")).p, row.TRO);
    expectPoint(motion.point("track-rod", hardpoint("TRO")).p, row.TRO);
    expectPoint(motion.point("lower-wishbone", hardpoint("PRO")).p, row.PRO);
    expectPoint(motion.point("rocker", hardpoint("PRI")).p, row.PRI);
    expectPoint(motion.point("rocker", hardpoint("SPR")).p, row.SPR);
  });

  it("places the wheel", () => {
    const wheel = wheelAt(row.travel_mm);
    expectPoint(wheel.centre.p, row.WC);
    expectPoint(wheel.contact.p, row.CP_material);
    expectClose(wheel.camber.value / DEGREE, row.camber_deg, 0, CHECK_CASE);
    expectClose(wheel.toe.value / DEGREE, row.toe_in_deg, 0, CHECK_CASE);
    expectClose((wheel.caster ?? Number.NaN) / DEGREE, row.caster_deg, 0, CHECK_CASE);
    expectClose((wheel.kingpin ?? Number.NaN) / DEGREE, row.kingpin_inclination_deg, 0, CHECK_CASE);
  });

  it("turns rocker and lever", () => {
    const rocker = rockerAt(row.travel_mm);
    expectClose(rocker.value / DEGREE, row.rocker_angle_deg, 0, CHECK_CASE);
    expectClose(rocker.d / 1000, row.rocker_rad_per_mm_wheel, CHECK_CASE, 1e-14);
    expectClose(rocker.dd / 1e6, row.rocker_d2_rad_per_mm2, ORACLE_RATE);
    const angle = leverAt(at(row.travel_mm));
    expectClose(angle.value / DEGREE, row.arb_lever_angle_deg, 0, CHECK_CASE);
    expectClose(angle.d / 1000, row.arb_lever_rad_per_mm_wheel, CHECK_CASE, 1e-14);
  });

  it("compresses the spring, with its motion ratio and its change", () => {
    const spring = lengthJet(at(row.travel_mm).point("rocker", hardpoint("SPR")), fixedPoint(hardpoint("SPC")));
    expectClose(spring.value * 1000, row.spring_length_mm, 0, CHECK_CASE);
    expectClose(-spring.d, row.motion_ratio, 0, CHECK_CASE);
    expectClose(-spring.dd / 1000, row.dMR_ds_per_mm, ORACLE_RATE, 1e-12);
  });
});

describe.each(wishbone.axle_states)("mirrored axle at $travel_left_mm and $travel_right_mm mm", (row) => {
  const left = at(row.travel_left_mm);
  const right = at(row.travel_right_mm);
  const inCar = (p: PointMotion): Vec3 => mirror(p.p);

  it("compresses what stands between the rockers", () => {
    const heave = distance(left.point("rocker", hardpoint("HSR")).p, inCar(right.point("rocker", hardpoint("HSR"))));
    expectClose(heave * 1000, row.heave_spring_length_mm, 0, CHECK_CASE);
    const roll = distance(left.point("rocker", hardpoint("RDT")).p, inCar(right.point("rocker", hardpoint("RDB"))));
    expectClose(roll * 1000, row.roll_damper_length_mm, 0, CHECK_CASE);
  });

  it("twists the bar", () => {
    const [l, r] = [leverAt(left).value, leverAt(right).value];
    expectClose(l / DEGREE, row.arb_lever_left_deg, 0, CHECK_CASE);
    expectClose(r / DEGREE, row.arb_lever_right_deg, 0, CHECK_CASE);
    expectClose((l - r) / DEGREE, row.arb_twist_deg, 0, CHECK_CASE);
    expectClose(rockerAt(row.travel_left_mm).value / DEGREE, row.rocker_left_deg, 0, CHECK_CASE);
    expectClose(rockerAt(row.travel_right_mm).value / DEGREE, row.rocker_right_mirror_deg, 0, CHECK_CASE);
  });
});

describe("check case, linearised at design", () => {
  it("moves the contact point and the wheel centre as stated", () => {
    const { contact, centre } = wheelAt(0);
    const stated = wishbone.instant_centres_at_design;
    const expectSlopes = (p: Vec3, expected: readonly number[]): void =>
      p.forEach((value, i) => {
        expectClose(value, expected[i] ?? Number.NaN, CONSTRUCTION, 1e-11);
      });
    expectSlopes(contact.d, stated["d(CPmaterial)/ds_xyz"]);
    expectSlopes(centre.d, stated["d(WC)/ds_xyz"]);
  });

  it("works the axle's elements in heave and roll at the stated ratios", () => {
    const stated = wishbone.linearised_at_design;
    const motion = at(0);
    const eye = (name: "HSR" | "RDT" | "RDB"): PointMotion => motion.point("rocker", hardpoint(name));
    const across = (a: PointMotion, b: PointMotion): [number, number] => {
      const line = sub(a.p, mirror(b.p));
      const unit = 1 / norm(line);
      return [-dot(line, a.d) * unit, dot(line, mirror(b.d)) * unit];
    };
    const [heaveL, heaveR] = across(eye("HSR"), eye("HSR"));
    expectClose(heaveL + heaveR, stated.heave_spring_mm_per_mm_heave, CONSTRUCTION);
    expectClose(heaveL - heaveR, 0, 0, 1e-12);
    const [rollL, rollR] = across(eye("RDT"), eye("RDB"));
    expectClose(rollL + rollR, stated.roll_damper_mm_per_mm_heave, CONSTRUCTION);
    expectClose(rollL - rollR, stated.roll_damper_mm_per_mm_antisym_travel, CONSTRUCTION);
    expectClose((2 * leverAt(motion).d) / 1000, stated.arb_twist_rad_per_mm_antisym_travel, CONSTRUCTION);
  });
});

describe("check case, what is outside it", () => {
  it("keeps the design position exactly where it is drawn", () => {
    const motion = at(0);
    expect(norm(sub(motion.point("upright", hardpoint("TRO")).p, hardpoint("TRO")))).toBeLessThan(1e-15);
    expect(norm(add(motion.point("chassis", [1, 2, 3]).p, [-1, -2, -3]))).toBe(0);
  });
});
