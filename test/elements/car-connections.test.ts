/** Connections over all four wheels: derivatives against differences, mirrored inputs, and those of one axle. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CarConnection, Wheels } from "../../server/elements/car-connection.js";
import { between } from "../../server/elements/connections/between.js";
import { carBetween } from "../../server/elements/connections/car-between.js";
import { byCarRatios } from "../../server/elements/connections/car-ratio.js";
import { rockersTwist } from "../../server/elements/connections/car-twists.js";
import { carSweptVolume, sweptVolume } from "../../server/elements/connections/cylinders.js";
import { constantRatio, tabledRatio } from "../../server/elements/connections/ratio.js";
import type { CarEnd } from "../../server/elements/mechanism.js";
import { CAR_MODES, PATTERNS } from "../../server/elements/patterns.js";
import { mirror, type Vec3 } from "../../server/maths/vec3.js";
import { expectClose, slopeOf } from "../support/approx.js";
import { deflected, motionAt } from "../support/car-motion.js";
import { DIFFERENCED, DIFFERENCED_SECOND, IDENTITY } from "../support/tolerances.js";

const coordinate = (from: number, to: number) => fc.double({ min: from, max: to, noNaN: true });
const point = fc.tuple(coordinate(-0.1, 0.1), coordinate(0.1, 0.4), coordinate(0.3, 0.6));
const travel = coordinate(-0.02, 0.02);
const travels: fc.Arbitrary<Wheels> = fc.tuple(travel, travel, travel, travel);

const eye = (axle: "front" | "rear", side: "left" | "right", p: Vec3): CarEnd => ({
  axle,
  end: { kind: "body", side, body: "rocker", point: axle === "front" ? p : [p[0] - 2.5, p[1], p[2]] },
});
const fixed = (p: Vec3): CarEnd => ({ axle: undefined, end: { kind: "chassis", point: p } });
const end: fc.Arbitrary<CarEnd> = fc
  .tuple(fc.constantFrom("front", "rear"), fc.constantFrom("left", "right"), point, fc.boolean())
  .map(([axle, side, p, chassis]) => (chassis ? fixed([p[0] - 1, p[1], p[2]]) : eye(axle, side, p)));

const joined = (a: CarEnd, b: CarEnd): CarConnection | undefined => {
  const made = carBetween(a, b, "hardpoints");
  return made.kind === "no-deflection" ? undefined : made;
};

const moved = (z: Wheels, wheel: number, by: number): Wheels =>
  z.map((value, i) => (i === wheel ? value + by : value)) as unknown as Wheels;

/** Gradient and Hessian against central differences. `size` is what the deflection is measured against. */
function expectDerivatives(connection: CarConnection, z: Wheels, size = 1): void {
  const { d, dd } = deflected(connection, z);
  for (let i = 0; i < 4; i++) {
    const slope = slopeOf((h) => deflected(connection, moved(z, i, h)).s, 0, 1e-4);
    expectClose(d[i] ?? NaN, slope, DIFFERENCED, DIFFERENCED * size);
    for (let j = 0; j < 4; j++) {
      const bend = slopeOf((h) => deflected(connection, moved(z, i, h)).d[j] ?? NaN, 0, 1e-4);
      expectClose(dd[i]?.[j] ?? NaN, bend, DIFFERENCED_SECOND, DIFFERENCED_SECOND * size);
      expect(dd[i]?.[j]).toBe(dd[j]?.[i]);
    }
  }
}

describe("two points anywhere on the car", () => {
  it("have analytic derivatives", () => {
    fc.assert(
      fc.property(end, end, travels, (a, b, z) => {
        const connection = joined(a, b);
        fc.pre(connection !== undefined);
        const apart = connection.deflection(motionAt(z));
        // Ends that come within 50 mm of each other bend too sharply for differences.
        fc.pre(!("kind" in apart) && apart.dd.flat().every((value) => Math.abs(value) < 200));
        expectDerivatives(connection, z);
      }),
      { numRuns: 60 },
    );
  });

  it("on one axle are what they are to the axle", () => {
    fc.assert(
      fc.property(point, point, travels, (p, q, z) => {
        const ofCar = joined(eye("front", "left", p), eye("front", "right", q));
        const ofAxle = between(eye("front", "left", p).end, eye("front", "right", q).end, "hardpoints");
        fc.pre(ofCar !== undefined && ofAxle.kind !== "no-deflection");
        const all = deflected(ofCar, z);
        const own = ofAxle.deflection(motionAt(z).front);
        if ("kind" in own) throw new Error(own.reason);
        expectClose(all.s, own.s, IDENTITY);
        expectClose(all.d[0], own.dL, IDENTITY);
        expectClose(all.d[1], own.dR, IDENTITY);
        expectClose(all.dd[0][0], own.dLL, IDENTITY, 1e-9);
        expectClose(all.dd[0][1], own.dLR, IDENTITY, 1e-9);
        expectClose(all.dd[1][1], own.dRR, IDENTITY, 1e-9);
        expect([all.d[2], all.d[3]]).toEqual([0, 0]);
      }),
    );
  });

  it("mirrored, follow the other wheels", () => {
    fc.assert(
      fc.property(point, point, travels, (p, q, z) => {
        const one = joined(eye("front", "left", p), fixed(q));
        const other = joined(eye("front", "right", p), fixed(mirror(q)));
        fc.pre(one !== undefined && other !== undefined);
        const a = deflected(one, z);
        const b = deflected(other, [z[1], z[0], z[3], z[2]]);
        expectClose(b.s, a.s, IDENTITY);
        expectClose(b.d[1], a.d[0], IDENTITY);
      }),
    );
  });

  it("that fall together are no connection", () => {
    expect(joined(fixed([0, 0, 0]), fixed([0, 0, 0]))).toBeUndefined();
  });
});

describe("ratios of the car", () => {
  const ratios = byCarRatios(
    new Map([
      ["pitch", tabledRatio([-0.03, -0.01, 0.02, 0.03], [-0.02, -0.008, 0.015, 0.025])],
      ["warp", constantRatio(0.2)],
    ]),
    false,
  );

  it("deflect by the ratio for unit travel of every wheel in the pattern, and in no other", () => {
    const warped = byCarRatios(new Map([["warp", constantRatio(0.7)]]), false);
    for (const mode of CAR_MODES) {
      const amplitude = PATTERNS[mode].map((sign) => 0.01 * sign) as unknown as Wheels;
      expectClose(deflected(warped, amplitude).s, mode === "warp" ? 0.007 : 0, IDENTITY, 1e-15);
    }
  });

  it("have analytic derivatives between the points of their tables", () => {
    fc.assert(
      fc.property(travels, (z) => {
        const pitch = (z[0] + z[1] - z[2] - z[3]) / 4;
        fc.pre([-0.01, 0].every((knot) => Math.abs(pitch - knot) > 1e-3) && Math.abs(pitch) < 0.019);
        expectDerivatives(ratios, z);
      }),
      { numRuns: 50 },
    );
  });

  it("twist positively as the front left wheel's bump makes it", () => {
    const bar = byCarRatios(new Map([["roll", constantRatio(10)]]), true);
    expect(deflected(bar, [0.01, 0, 0, 0]).s).toBeGreaterThan(0);
    expectClose(deflected(bar, [0.01, -0.01, 0.01, -0.01]).s, 0.1, IDENTITY);
  });
});

describe("a bar between rockers of both axles", () => {
  const along = rockersTwist({ axle: "front", side: "left" }, { axle: "rear", side: "left", sense: 1 }, "hardpoints");

  it("has analytic derivatives and follows its own two wheels", () => {
    expectDerivatives(along, [0.01, -0.005, 0.012, 0.003], 10);
    expect(deflected(along, [0.01, 0.02, 0.01, -0.01]).d.map((value) => value === 0)).toEqual([
      false,
      true,
      false,
      true,
    ]);
  });

  it("is not twisted by rockers that turn alike, and by its own angle against the chassis", () => {
    const { front, rear } = motionAt([0.01, 0, 0.01, 0]);
    const both = (front.left.rocker?.value ?? NaN) - (rear.left.rocker?.value ?? NaN);
    expectClose(deflected(along, [0.01, 0, 0.01, 0]).s, both, IDENTITY);
    const own = rockersTwist({ axle: "front", side: "left" }, undefined, "hardpoints");
    expectClose(deflected(own, [0.01, 0, 0, 0]).s, front.left.rocker?.value ?? NaN, IDENTITY);
  });
});

describe("swept volume", () => {
  const heave = (axle: "front" | "rear") =>
    joined(eye(axle, "left", [0, 0.25, 0.55]), eye(axle, "right", [0, 0.25, 0.55])) as CarConnection;

  it("is the sum of area times compression, far sides counted back", () => {
    const volume = carSweptVolume([
      { cylinder: heave("front"), area: 314e-6 },
      { cylinder: heave("rear"), area: -200e-6 },
    ]);
    fc.assert(
      fc.property(travels, (z) => {
        const expected = 314e-6 * deflected(heave("front"), z).s - 200e-6 * deflected(heave("rear"), z).s;
        expectClose(deflected(volume, z).s, expected, IDENTITY, 1e-18);
        expectDerivatives(volume, z, 1e-3);
      }),
      { numRuns: 20 },
    );
  });

  it("turns round with the signs of its areas", () => {
    const chambers = (sign: number) => [{ cylinder: heave("front"), area: sign * 314e-6 }];
    const z: Wheels = [0.01, 0.004, 0, 0];
    expectClose(deflected(carSweptVolume(chambers(-1)), z).s, -deflected(carSweptVolume(chambers(1)), z).s, IDENTITY);
  });

  it("of an axle is what it is to the car", () => {
    const made = between(eye("front", "left", [0, 0.25, 0.55]).end, fixed([0, 0.05, 0.5]).end, "hardpoints");
    const ofCar = joined(eye("front", "left", [0, 0.25, 0.55]), fixed([0, 0.05, 0.5]));
    if (made.kind === "no-deflection" || ofCar === undefined) throw new Error("no connection");
    const z: Wheels = [0.013, -0.002, 0, 0];
    const own = sweptVolume([{ cylinder: made, area: 2e-4 }]).deflection(motionAt(z).front);
    const all = deflected(carSweptVolume([{ cylinder: ofCar, area: 2e-4 }]), z);
    if ("kind" in own) throw new Error(own.reason);
    expectClose(own.s, all.s, IDENTITY);
    expectClose(own.dLL, all.dd[0][0], IDENTITY);
  });
});
