/** The linear car about an equilibrium against that equilibrium's own derivatives (exact turns), and against closed forms. */
import { describe, expect, it } from "vitest";
import { carRide } from "../../../server/analyses/whole-car/car-ride.js";
import { carDynamics } from "../../../server/analyses/whole-car/dynamics.js";
import { linearise } from "../../../server/analyses/whole-car/linearise.js";
import { steadyStiffness } from "../../../server/analyses/whole-car/linear-system.js";
import { equilibrium } from "../../../server/analyses/equilibrium/solve.js";
import { assembleLoadedCar, loadCaseOf } from "../../../server/assemble/loaded-car.js";
import { rideNumbersOf } from "../../../server/assemble/ride.js";
import type { CarUnderLoad, LoadCase } from "../../../server/elements/loaded-car.js";
import { solved } from "../../../server/maths/eigen.js";
import type { Rows } from "../../../server/maths/rows.js";
import { expectClose } from "../../support/approx.js";
import { caseOf, plainCar, readyFor } from "../../support/loaded-car.js";
import { quill } from "../../support/quill.js";
import { CLOSED_FORM } from "../../support/tolerances.js";

const numbers = { rollInertia: 60, pitchInertia: 400, tyreDamping: [0, 0, 0, 0] };
const car = quill();

function linear(under: CarUnderLoad, asked: Partial<LoadCase> = {}) {
  const ready = readyFor(under);
  const outcome = equilibrium(ready, caseOf(asked));
  if (outcome.kind !== "solved") throw new Error(outcome.kind);
  const whole = linearise(ready.standing, outcome, numbers);
  if ("kind" in whole) throw new Error(whole.reason);
  return { whole, jacobian: outcome.balance.jacobian, standing: ready.standing };
}

/** Stiffness of one freedom with all others let go: 1/(K⁻¹)ᵢᵢ. */
function letGo(stiffness: Rows, freedom: number): number {
  const flexible = solved(
    stiffness,
    stiffness.map((_, i) => [i === freedom ? 1 : 0]),
  )!;
  return 1 / flexible[freedom]![0]!;
}

describe("a car of plain rates", () => {
  const axle = {
    track: 1.5,
    wheelRate: 40e3,
    bar: 20e3,
    tyreRate: 200e3,
    unsprung: 15,
    wheelHeight: 0.25,
    rollCentre: 0.05,
    rideHeight: 0.04,
  };
  const under = plainCar({
    front: { ...axle, x: 1.2 },
    rear: { ...axle, x: -1.3 },
    mass: 560,
    massFront: 0.48,
    cgHeight: 0.3,
  });

  it("is its rates, masses and places", () => {
    const { whole } = linear(under);
    expectClose(whole.sprung.mass, 500, CLOSED_FORM);
    expectClose(whole.wheelbase, 2.5, CLOSED_FORM);
    // The sprung centre of gravity: the wheels' 60 kg taken out, half of them at either axle.
    expectClose(whole.sprung.behindFront, (560 * 2.5 * 0.52 - 30 * 2.5) / 500, CLOSED_FORM);
    // Roll stiffness k t²/2 + bar; what a roll of the body does to the path of its wheels is small beside it.
    const { stiffness } = whole.front;
    const roll = (1.5 ** 2 / 4) * (stiffness[0]![0]! + stiffness[1]![1]! - 2 * stiffness[0]![1]!);
    expectClose(roll, (40e3 * 1.5 ** 2) / 2 + 20e3, 0.03);
    const sprungHeight = (560 * 0.3 - 60 * 0.25) / 500;
    expectClose(whole.rollGravity!, 500 * 9.80665 * (sprungHeight - 0.05), 1e-6);
  });

  it("has no air without any, and that of a speed with its slopes times the pressure", () => {
    expect(linear(under, { speed: 50 }).whole.air).toBeUndefined();
    const law = { kind: "slopes", area: 1, byFront: -6, byRear: 2, at: [0, 0] } as const;
    const winged = { ...under, air: { front: law, rear: law, drag: undefined, lag: 0.02 } };
    const { air } = linear(winged, { speed: 20 }).whole;
    expectClose(air!.slopes[0]![0]!, -6 * 0.5 * 1.225 * 400, CLOSED_FORM);
    expectClose(air!.slopes[1]![1]!, 2 * 0.5 * 1.225 * 400, CLOSED_FORM);
    expect(air!.lag).toBe(0.02);
  });

  it("lets a lifted wheel hang", () => {
    const { whole } = linear(
      plainCar({
        front: { ...axle, x: 1.2, bar: 900e3 },
        rear: { ...axle, x: -1.3 },
        mass: 560,
        massFront: 0.3,
        cgHeight: 0.3,
      }),
      { lateral: 16 },
    );
    expect(whole.front.left.tyreRate).toBe(0);
    expect(whole.front.right.tyreRate).toBe(200e3);
  });
});

describe("the sample car", () => {
  it.each([{}, { speed: 55 }, { speed: 30, lateral: 10 }])(
    "in %o is stiff as the exact equilibrium's derivatives say",
    (asked) => {
      const { whole, jacobian, standing } = linear(assembleLoadedCar(car), asked);
      const exact = jacobian.map((row) => row.map((value) => -value));
      const stiffness = steadyStiffness(carDynamics(whole));
      // Heave about O and about the centre of gravity is the same movement; roll is, as the car is level.
      expectClose(letGo(stiffness, 0), letGo(exact, 0), 0.02);
      expectClose(letGo(stiffness, 1), letGo(exact, 1), 0.02);
      for (let i = 0; i < 4; i++) {
        // Tyre and springs at one wheel; a contact point rises a little more than its wheel, and lateral forces have a part.
        expectClose(stiffness[3 + i]![3 + i]!, exact[3 + i]![3 + i]!, 0.03);
      }
      expect(standing.wheels.length).toBe(4);
    },
  );

  const ride = carRide(() => assembleLoadedCar(car), car.cases.map(loadCaseOf), rideNumbersOf(car));

  it("settles at rest and in its cases, with the same modes whenever it is asked", () => {
    for (const name of [undefined, ...car.cases.map((one) => one.name)]) {
      const at = ride.at(name);
      if (at.kind !== "ride") throw new Error(at.reason);
      expect(at.modes.stability.kind).toBe("stable");
      expect(ride.at(name)).toBe(at);
    }
  });

  it("meets a road at rest's springs with the air of its speed, or in a case", () => {
    const [straight, hairpin] = [undefined, "hairpin"].map((name) =>
      ride.road(name, { class: "A", speed: 40, sides: "isotropic" }),
    );
    if (straight!.kind !== "road-response" || hairpin!.kind !== "road-response") throw new Error("no response");
    expect(straight!.front.contact).toBeGreaterThan(0.01);
    // The inner wheel carries less, and varies by as much.
    expect(hairpin!.wheels[0]!.contact).toBeGreaterThan(hairpin!.wheels[1]!.contact as number);
  });

  it("says what is missing", () => {
    const without = carRide(() => assembleLoadedCar(car), [], {
      ...rideNumbersOf(car),
      pitchInertia: "there is no pitch-inertia",
    });
    expect(without.at(undefined)).toEqual({ kind: "absent", reason: "there is no pitch-inertia" });
    expect(ride.at("nowhere")).toMatchObject({ kind: "absent", reason: "the car has no case nowhere" });
    expect(ride.road(undefined, { class: "J", speed: 9, sides: "same" })).toMatchObject({ kind: "absent" });
    expect(ride.road(undefined, { class: "A", speed: 9, sides: "odd" })).toMatchObject({ kind: "absent" });
    expect(ride.road(undefined, { class: "A", speed: 0, sides: "isotropic" })).toMatchObject({ kind: "absent" });
  });
});
