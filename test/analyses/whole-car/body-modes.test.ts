/** Body on its ride rates against published pitch and bounce examples: BP of the check values. */
import { describe, expect, it } from "vitest";
import { bodyModes } from "../../../server/analyses/whole-car/body-modes.js";
import type { WholeCar } from "../../../server/analyses/whole-car/car-data.js";
import { mirroredAxle, mirroredMatrix } from "../../../server/analyses/whole-car/dynamics.js";
import { flatRideRearFrequency } from "../../../server/analyses/whole-car/flat-ride.js";
import { pureModes } from "../../../server/analyses/whole-car/pure-modes.js";
import { expectClose } from "../../support/approx.js";
import { BOOK_FIVE, BOOK_ROUNDING, CLOSED_FORM } from "../../support/tolerances.js";
import { car7 } from "../../support/whole-car.js";

const wheel = { unsprungMass: 1, tyreRate: 1e6, tyreDamping: 0 };
const on = (rate: number) => mirroredAxle(1.5, wheel, { stiffness: mirroredMatrix(rate / 2) });

/** A body on two springs: `front` and `rear` N/m an axle, a and b m before and behind the centre of gravity. */
const plank = (mass: number, radius: number, a: number, b: number, front: number, rear: number): WholeCar => ({
  wheelbase: a + b,
  sprung: { mass, rollInertia: 1, pitchInertia: mass * radius * radius, behindFront: a },
  front: on(front),
  rear: on(rear),
});

/** Bounce and pitch, without the roll mode. */
function planar(car: WholeCar) {
  return bodyModes(car, "rigid")!.modes.filter(({ shape }) => shape[1] === 0);
}

const lbPerInch = (0.45359237 * 9.80665) / 0.0254;

describe("bounce and pitch", () => {
  it("are Rao's, Mechanical Vibrations, Example 5.7 (BP-1; answers from memory)", () => {
    const [first, second] = planar(plank(1000, 0.9, 1.0, 1.5, 18e3, 22e3));
    expectClose(first!.frequency! * 2 * Math.PI, 5.8593, BOOK_FIVE);
    expectClose(second!.frequency! * 2 * Math.PI, 9.4341, BOOK_FIVE);
    expectClose(first!.node!, -2.64610975202, CLOSED_FORM);
    expectClose(second!.node!, 0.306109752017, CLOSED_FORM);
  });

  it("are Gillespie's, ch. 5 (BP-3; inputs from memory)", () => {
    // g = 386 in/s² as the example has it.
    const [mass, base] = [(2 * (957 + 730)) / 386, 100.6];
    const [b, c] = [(base * 730) / 1687, (base * 957) / 1687];
    const [front, rear] = [2 * 127, 2 * 92.3];
    const inch = 0.0254;
    const car = plank(
      mass * lbPerInch,
      Math.sqrt(1.1 * b * c) * inch,
      b * inch,
      c * inch,
      front * lbPerInch,
      rear * lbPerInch,
    );
    const [first, second] = planar(car);
    expectClose(first!.frequency!, 1.06841051637, CLOSED_FORM);
    expectClose(second!.frequency!, 1.13026006541, CLOSED_FORM);
    expectClose(first!.node! / inch, -(-11.6852893577), CLOSED_FORM);
    expectClose(second!.node! / inch, -233.858849193, CLOSED_FORM);
  });

  it("are Wong's, ch. 7 (BP-4; answers from memory)", () => {
    const [first, second] = planar(plank(2120, 1.33, 1.267, 1.548, 35e3, 38e3));
    expectClose(first!.frequency!, 0.888627317514, CLOSED_FORM);
    expectClose(second!.frequency!, 1.03785652767, CLOSED_FORM);
    expectClose(first!.frequency!, 0.89, BOOK_ROUNDING);
    expectClose(second!.frequency!, 1.04, BOOK_ROUNDING);
    expectClose(first!.node!, -2.09533052251, CLOSED_FORM);
    expectClose(second!.node!, 0.8442104866, CLOSED_FORM);
  });

  it("turn about the axles where k² = ab (BP-6)", () => {
    const [first, second] = planar(plank(1200, Math.sqrt(1.25 * 1.45), 1.25, 1.45, 45e3, 52e3));
    expectClose(first!.node!, -1.45, CLOSED_FORM);
    expectClose(second!.node!, 1.25, CLOSED_FORM);
    expectClose(first!.frequency!, 1.3299448941, CLOSED_FORM);
    expectClose(second!.frequency!, 1.53977780775, CLOSED_FORM);
  });

  it("meet a bump of both ends together at Olley's rear frequency (BP-7)", () => {
    expectClose(flatRideRearFrequency(1.2, 2.7, 25, 1.5)!, 1.31348511384, CLOSED_FORM);
    expectClose(flatRideRearFrequency(1.2, 2.7, 40, 1.5)!, 1.26849894292, CLOSED_FORM);
    expect(flatRideRearFrequency(2, 2.7, 1, 1.5)).toBeUndefined();
    expect(flatRideRearFrequency(2, 2.7, 0, 1.5)).toBeUndefined();
  });
});

describe("the body with its wheels let go", () => {
  it("stands on spring and tyre in series", () => {
    const { stiffness } = bodyModes(car7, "in-series")!;
    const ride = (own: number): number => (2 * own * 220e3) / (own + 220e3);
    expectClose(stiffness[0]![0]!, ride(30e3) + ride(32e3), CLOSED_FORM);
    expectClose(stiffness[0]![2]!, 1.45 * ride(32e3) - 1.25 * ride(30e3), CLOSED_FORM);
    const roll = (own: number, track: number): number => (ride(own) * track * track) / 4;
    expectClose(stiffness[1]![1]!, roll(30e3 + 18e3, 1.52) + roll(32e3 + 8e3, 1.5), CLOSED_FORM);
  });

  it("has no modes without a mass, or without anything under a wheel", () => {
    expect(bodyModes({ ...car7, sprung: { ...car7.sprung, mass: 0 } }, "rigid")).toBeUndefined();
    const free = {
      ...car7.front,
      stiffness: [
        [0, 0],
        [0, 0],
      ],
      left: { ...wheel, tyreRate: 0 },
    };
    expect(bodyModes({ ...car7, front: free }, "in-series")).toBeUndefined();
  });
});

describe("pure motions", () => {
  const pure = pureModes(car7);

  it("have the damping ratio c/(2√(km)) of one mass on one spring", () => {
    expectClose(pure.roll.dampingRatio as number, 5697.48 / (2 * Math.sqrt(100449.6 * 450)), CLOSED_FORM);
    expectClose(pure.pitch.dampingRatio as number, 18433 / (2 * Math.sqrt(228310 * 1900)), CLOSED_FORM);
    expectClose(pure.hop[0]!.frequency as number, Math.sqrt(259e3 / 40) / (2 * Math.PI), CLOSED_FORM);
    expectClose(pure.hop[2]!.dampingRatio as number, 2600 / (2 * Math.sqrt(256e3 * 45)), CLOSED_FORM);
    expectClose(pure.tramp.front.frequency as number, Math.sqrt(268e3 / 40) / (2 * Math.PI), CLOSED_FORM);
    expectClose(pure.parallelHop.front.frequency as number, Math.sqrt(250e3 / 40) / (2 * Math.PI), CLOSED_FORM);
    const corner = pure.corner[0]!;
    expectClose(corner.mass, (1200 * 1.45) / 2.7 / 2, CLOSED_FORM);
    expectClose(corner.dampingRatio as number, 2400 / (2 * Math.sqrt(39e3 * corner.mass)), CLOSED_FORM);
  });

  it("critical damping is a ratio of 1 (DMP-1)", () => {
    const alone = plank(300, 1, 1, 1, 15e3, 15e3);
    const damped = (axle: WholeCar["front"]) => ({ ...axle, damping: mirroredMatrix(600) });
    const { heave } = pureModes({ ...alone, front: damped(alone.front), rear: damped(alone.rear) });
    expectClose(heave.dampingRatio as number, 0.4, CLOSED_FORM);
  });

  it("say why there is none where nothing springs them", () => {
    const none = pureModes({ ...car7, rollGravity: 2e5 }).roll;
    expect(none.frequency).toMatchObject({ kind: "absent" });
    expect(none.dampingRatio).toMatchObject({ kind: "absent" });
  });
});
