/**
 * Roll centres and what the links carry under braking.
 * RC-1: construction after Gillespie, Fundamentals of Vehicle Dynamics, ch. 7, and Milliken, Race Car Vehicle Dynamics,
 * ch. 17, from memory; its numbers are our own. The rest: test/data/wishbone-case.json, worked out outside this project.
 */
import { describe, expect, it } from "vitest";
import { antiFraction, supportSlope } from "../../server/linkage/anti.js";
import type { PointMotion } from "../../server/linkage/corner.js";
import { isDegenerate, type WishbonePoints } from "../../server/linkage/geometry.js";
import { hardpointCorner } from "../../server/linkage/hardpoint.js";
import {
  classicalRollCentre,
  frontViewCentre,
  rollCentre,
  rollCentreHeight,
  sideViewCentre,
  slopeTo,
  type ViewPoint,
} from "../../server/linkage/roll-centre.js";
import { steeringFigures } from "../../server/linkage/steering-axis.js";
import { mirror, type Vec3 } from "../../server/maths/vec3.js";
import { expectClose, slopeOf } from "../support/approx.js";
import { parallelogram, planarOf, reachedAt } from "../support/planar-cases.js";
import { CLOSED_FORM, CONSTRUCTION, DIFFERENCED } from "../support/tolerances.js";
import { hardpoint, wishbone, wishboneGeometry } from "../support/wishbone-case.js";

const stated = wishbone.instant_centres_at_design;
const { lower, upper } = wishboneGeometry;
const corner = hardpointCorner(wishboneGeometry);
if (isDegenerate(corner)) throw new Error(corner.reason);

const wheelAt = (travel: number) => {
  const { wheel } = reachedAt(corner, travel);
  if (wheel === undefined) throw new Error("no wheel");
  return wheel;
};
const { contact, centre } = wheelAt(0);
const mirrored = ({ p, d, dd }: PointMotion): PointMotion => ({ p: mirror(p), d: mirror(d), dd: mirror(dd) });

const pointOf = (found: ViewPoint | undefined): ViewPoint => {
  if (found?.kind !== "point") throw new Error("the lines are parallel");
  return found;
};

/** A planar arm as a wishbone with its axis along x. */
const arm = (inner: [number, number], outer: [number, number]): WishbonePoints => ({
  fore: [0.1, ...inner],
  aft: [-0.1, ...inner],
  outer: [0, ...outer],
});

describe("planar construction (RC-1)", () => {
  const found = frontViewCentre(arm([0.25, 0.16], [0.72, 0.15]), arm([0.3, 0.39], [0.7, 0.44]), 0);

  it("meets the stated instant centre and height", () => {
    const ic = pointOf(found);
    expectClose(ic.across * 1000, -1279.63636364, CLOSED_FORM);
    expectClose(ic.z * 1000, 192.545454545, CLOSED_FORM);
    expectClose((classicalRollCentre([0, 0.78, 0], ic) ?? Number.NaN) * 1000, 72.9184322034, CLOSED_FORM);
  });

  it("agrees with virtual work where all joints lie in the plane", () => {
    const flat = planarOf({
      lower: { inner: [0.25, 0.16], outer: [0.72, 0.15] },
      upper: { inner: [0.3, 0.39], outer: [0.7, 0.44] },
      wheel: { centre: [0, 0.78, 0.32], camber: 0, toe: 0, loadedRadius: 0.32 },
    });
    const motion = reachedAt(flat, 0).wheel?.contact;
    if (motion === undefined) throw new Error("no wheel");
    expectClose(rollCentreHeight(motion) ?? Number.NaN, 0.0729184322034, CLOSED_FORM);
  });

  it("knows parallel arms: centre at infinity, roll centre on the ground", () => {
    const level = frontViewCentre(arm([0.3, 0.15], [0.7, 0.15]), arm([0.3, 0.4], [0.7, 0.4]), 0);
    expect(level?.kind).toBe("direction");
    expect(classicalRollCentre([0, 0.75, 0], level ?? { kind: "point", across: 1, z: 1 })).toBeCloseTo(0, 12);
    const flat = reachedAt(planarOf(parallelogram()), 0).wheel?.contact;
    const height = flat === undefined ? Number.NaN : rollCentreHeight(flat);
    expect(height).toBeCloseTo(flat?.p[2] ?? Number.NaN, 12);
  });

  it("says nothing where there is nothing to say", () => {
    const upright: WishbonePoints = { fore: [0, 0.3, 0.2], aft: [0, 0.4, 0.3], outer: [0, 0.7, 0.1] };
    expect(frontViewCentre(upright, upper, 0)).toBeUndefined();
    const sideways: PointMotion = { p: [0, 0.7, 0], d: [0, 1, 0], dd: [0, 0, 0] };
    expect(rollCentreHeight(sideways)).toBeUndefined();
    expect(supportSlope({ ...sideways, d: [1, 0, 0] })).toBeUndefined();
    expect(antiFraction("front", 0.07, 0.6, 2.8, 0)).toBeUndefined();
    expect(slopeTo({ across: 1, z: 0 }, { kind: "point", across: 1, z: 2 })).toBeUndefined();
    expect(steeringFigures([0, 0.7, 0.2], [0.1, 0.6, 0.2], [0, 0.7, 0], [0, 0.7, 0.3])).toBeUndefined();
  });
});

describe("check case at design (RC-2, ANTI-2)", () => {
  it("cuts the wishbone planes where stated", () => {
    const front = pointOf(frontViewCentre(lower, upper, hardpoint("WC")[0]));
    expectClose(front.across * 1000, stated.front_view_IC_yz_at_x_wc[0] ?? Number.NaN, CONSTRUCTION);
    expectClose(front.z * 1000, stated.front_view_IC_yz_at_x_wc[1] ?? Number.NaN, CONSTRUCTION);
    const side = pointOf(sideViewCentre(lower, upper, hardpoint("WC")[1]));
    expectClose(side.across * 1000, stated.side_view_IC_xz_at_y_wc[0] ?? Number.NaN, CONSTRUCTION);
    expectClose(side.z * 1000, stated.side_view_IC_xz_at_y_wc[1] ?? Number.NaN, CONSTRUCTION);
  });

  it("gives both roll centres, which differ by half a percent", () => {
    const classical = (x: number): number =>
      (classicalRollCentre(contact.p, pointOf(frontViewCentre(lower, upper, x))) ?? Number.NaN) * 1000;
    expectClose(classical(hardpoint("WC")[0]), stated.roll_centre_height_classical_x_wc, CONSTRUCTION);
    expectClose(classical(contact.p[0]), stated.roll_centre_height_classical_x_cp, CONSTRUCTION);
    const exact = (rollCentreHeight(contact) ?? Number.NaN) * 1000;
    expectClose(exact, stated.roll_centre_height_n_line_exact, CONSTRUCTION);
    expect(exact - classical(0)).toBeGreaterThan(0.25);
  });

  it("meets on the centre plane at equal travels, and elsewhere at unequal ones", () => {
    const level = rollCentre(contact, mirrored(contact));
    expect(level?.y).toBeCloseTo(0, 12);
    expectClose((level?.z ?? Number.NaN) * 1000, stated.roll_centre_height_n_line_exact, CONSTRUCTION);
    const [l, r] = [wheelAt(0.02).contact, wheelAt(-0.02).contact];
    const rolled = rollCentre(l, mirrored(r));
    const swapped = rollCentre(r, mirrored(l));
    expect(rolled?.y).toBeCloseTo(-(swapped?.y ?? Number.NaN), 12);
    expect(rolled?.z).toBeCloseTo(swapped?.z ?? Number.NaN, 12);
    expect(Math.abs(rolled?.y ?? 0)).toBeGreaterThan(0.01);
    expect(rollCentre(contact, contact)).toBeUndefined();
  });

  it("carries braking as stated, outboard and inboard", () => {
    const { anti_dive_inputs: car } = stated;
    const percent = (slope: number | undefined): number =>
      100 *
      (antiFraction("front", slope ?? Number.NaN, car.front_brake_fraction, car.wheelbase_mm, car.cg_height_mm) ??
        Number.NaN);
    expectClose(supportSlope(contact) ?? Number.NaN, stated.tan_phi_exact_contact_point_dx_dz, CONSTRUCTION);
    expectClose(supportSlope(centre) ?? Number.NaN, stated.tan_theta_exact_wheel_centre_dx_dz, CONSTRUCTION);
    expectClose(percent(supportSlope(contact)), stated.anti_dive_pct_exact_outboard_brake, CONSTRUCTION);
    expectClose(percent(supportSlope(centre)), stated.anti_dive_pct_inboard_brake_wheel_centre, CONSTRUCTION);
    // The drawing board's sign: positive where the centre lies ahead and above, or behind and below.
    const side = pointOf(sideViewCentre(lower, upper, hardpoint("WC")[1]));
    const classical = -(slopeTo({ across: contact.p[0], z: contact.p[2] }, side) ?? Number.NaN);
    expectClose(classical, stated.tan_phi_classical_y_wc, CONSTRUCTION);
    expectClose(percent(classical), stated.anti_dive_pct_classical_y_wc, CONSTRUCTION);
  });

  it("turns the sign at the rear axle", () => {
    expect(antiFraction("rear", 0.07, 0.4, 2.8, 0.3)).toBeCloseTo(
      -(antiFraction("front", 0.07, 0.4, 2.8, 0.3) ?? 0),
      15,
    );
  });

  it("places the steering axis against the ground", () => {
    const axis = wishbone.steering_axis_at_design;
    const figures = steeringFigures(lower.outer, upper.outer, contact.p, centre.p);
    const mm = (value: number | undefined): number => (value ?? Number.NaN) * 1000;
    expectClose(mm(figures?.scrubRadius), axis.scrub_radius_mm_positive_contact_outboard, CONSTRUCTION);
    expectClose(mm(figures?.trail), axis.mechanical_trail_mm_positive_contact_behind, CONSTRUCTION);
    expectClose(mm(figures?.kingpinOffset), axis.kingpin_offset_at_wheel_centre_mm, CONSTRUCTION);
  });
});

describe("a roll centre is what virtual work makes it", () => {
  it.each([-0.025, 0, 0.02])("F_y dy/dz by differenced positions, travel %f m", (travel) => {
    const at = (z: number): Vec3 => wheelAt(z).contact.p;
    const slope = slopeOf((z) => at(z)[1], travel, 1e-4) / slopeOf((z) => at(z)[2], travel, 1e-4);
    const height = rollCentreHeight(wheelAt(travel).contact) ?? Number.NaN;
    expectClose(height, at(travel)[2] + at(travel)[1] * slope, DIFFERENCED);
  });
});
