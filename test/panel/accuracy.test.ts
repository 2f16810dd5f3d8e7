/** What the page reads between the entries of its tables, anywhere on them, against the corners that they were sampled from. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cornerWeights, pointAt, vectorAt } from "../../client/panel/page/tables.js";
import { asItStands } from "../../server/analyses/as-it-stands.js";
import type { CheckedCar } from "../../server/findings/context.js";
import type { Corner } from "../../server/linkage/corner.js";
import { mirror, type Vec3 } from "../../server/maths/vec3.js";
import type { PanelCorner } from "../../server/views/mechanism/data.js";
import { bodyTable, sampled, wheelTables } from "../../server/views/mechanism/sampled-corner.js";
import { answerFor, sampleFile } from "../support/panel-page.js";
import { cornerOrSkip, motionOrSkip, randomGeometry } from "../support/random-corner.js";
import { sampleNames } from "../support/samples.js";
import { PANEL_READ } from "../support/tolerances.js";

const SIDES = ["left", "right"] as const;
type Axis = { readonly from: number; readonly to: number };

const off = (a: readonly number[] | undefined, b: Vec3): number =>
  a === undefined ? Number.POSITIVE_INFINITY : Math.hypot(...b.map((value, i) => value - (a[i] ?? Number.NaN)));

const share = ({ from, to }: Axis, part: number): number => from + part * (to - from);
const ends = (axis: readonly number[]): Axis => ({ from: axis[0] ?? 0, to: axis.at(-1) ?? 0 });

/** Between the entries: a prime number of steps meets none of them. */
const PARTS = Array.from({ length: 38 }, (_, i) => i / 37);
const RACKS = Array.from({ length: 12 }, (_, i) => i / 11);

function cornerAt(car: CheckedCar, axle: "front" | "rear", side: "left" | "right", rack: number): Corner | undefined {
  const mechanism = asItStands(car.mechanism(axle)!, car.analysis.axles[axle]!);
  if (rack === 0) return mechanism.corners[side];
  const moved = mechanism.steered?.(rack);
  return moved === undefined || typeof moved === "string" ? undefined : moved[side];
}

/** A link that ends the travel turns ever faster towards its end: there no table is fine enough, and a finding says it. */
const isOpen = ({ missing, lowEnd, highEnd }: PanelCorner): boolean =>
  missing === undefined && lowEnd === undefined && highEnd === undefined;

function worstOf(car: CheckedCar, axle: "front" | "rear", side: "left" | "right", data: PanelCorner): number {
  const inCar = (p: Vec3): Vec3 => (side === "left" ? p : mirror(p));
  const eyes = data.points.filter(({ role }) => role === "eye");
  const misses = (data.steers.length === 1 ? [0] : RACKS).flatMap((part) => {
    const rack = share(ends(data.steers), part);
    const corner = cornerAt(car, axle, side, rack);
    if (corner === undefined) return [];
    return PARTS.flatMap((at) => {
      const travel = share(ends(data.travels), at);
      const motion = corner.motion(travel);
      if ("kind" in motion || motion.wheel === undefined) return [];
      const weights = cornerWeights(data, travel, rack);
      const rocker = car.model.axles[axle]!.corner[side];
      const moved = eyes.map((point) => {
        const eye = rocker.kind === "hardpoints" ? rocker.rocker?.eyes.get(point.id.slice(7))?.value : undefined;
        return eye === undefined ? 0 : off(pointAt(point, weights), inCar(motion.point("rocker", inCar(eye)).p));
      });
      const { camber, toe } = motion.wheel;
      const spin: Vec3 = [
        Math.sin(toe.value) * Math.cos(camber.value),
        Math.cos(toe.value) * Math.cos(camber.value),
        -Math.sin(camber.value),
      ];
      const wheel = data.wheel!;
      return [
        ...moved,
        off(vectorAt(wheel.centre, weights), inCar(motion.wheel.centre.p)),
        off(vectorAt(wheel.contact, weights), inCar(motion.wheel.contact.p)),
        wheel.radius * off(vectorAt(wheel.spin, weights), inCar(spin)),
      ];
    });
  });
  return Math.max(0, ...misses);
}

describe("the page between the entries", () => {
  it.each(sampleNames)("meets eyes, wheel and rim over all travel and steer of %s", (name) => {
    const file = sampleFile(name);
    const car = file.cars[0];
    const misses = (answerFor(file).car?.axles ?? []).flatMap((axle) =>
      SIDES.map((side) => (isOpen(axle[side]) ? worstOf(car!, axle.name, side, axle[side]) : 0)),
    );
    expect(Math.max(0, ...misses)).toBeLessThan(PANEL_READ);
  });

  it("meets random corners", () => {
    fc.assert(
      fc.property(randomGeometry, fc.double({ min: -0.03, max: 0.025, noNaN: true }), (geometry, travel) => {
        const corner = cornerOrSkip(geometry);
        const { bound } = corner.reach(-0.035, 0.03);
        fc.pre(bound.low === undefined && bound.high === undefined);
        const travels = Array.from({ length: 17 }, (_, i) => (i < 8 ? (-0.03 * (8 - i)) / 8 : (0.025 * (i - 8)) / 8));
        const samples = sampled("left", [corner], travels, [0]);
        const motion = motionOrSkip(corner, travel);
        const weights = cornerWeights({ travels, steers: [0] } as unknown as PanelCorner, travel, 0);
        const eye: Vec3 = geometry.rod?.inner ?? [0, 0, 0];
        const inner = bodyTable(samples, "rocker", eye);
        expect(off(vectorAt(inner, weights), motion.point("rocker", eye).p)).toBeLessThan(PANEL_READ);
        const wheel = wheelTables(samples, 0.26)!;
        expect(off(vectorAt(wheel.contact, weights), motion.wheel!.contact.p)).toBeLessThan(PANEL_READ);
      }),
      { numRuns: 300 },
    );
  });

  it("reads the stretch beside what is not reached on a straight line", () => {
    const data = { travels: [0, 1, 2, 3, 4], steers: [0] } as unknown as PanelCorner;
    const table = [0, 0, 0, 1, 0, 0, 2, 0, 0, null, null, null, null, null, null];
    expect(vectorAt(table, cornerWeights(data, 1.5, 0))).toEqual([1.5, 0, 0]);
    expect(vectorAt(table, cornerWeights(data, 2, 0))).toEqual([2, 0, 0]);
    expect(vectorAt(table, cornerWeights(data, 2.5, 0))).toBeUndefined();
  });
});
