/** The forces of a car at a position against differences, energy and mirror. */
import { describe, expect, it } from "vitest";
import { balanceAt, type Balance } from "../../../server/analyses/equilibrium/balance.js";
import { BODY, FREEDOMS } from "../../../server/analyses/equilibrium/position.js";
import { loadOf } from "../../../server/analyses/equilibrium/load.js";
import { assembleLoadedCar } from "../../../server/assemble/loaded-car.js";
import { monotoneSurface } from "../../../server/maths/monotone-surface.js";
import { expectClose, slopeOf } from "../../support/approx.js";
import { caseOf, readyFor } from "../../support/loaded-car.js";
import { quill } from "../../support/quill.js";
import { DIFFERENCED } from "../../support/tolerances.js";

const surface = monotoneSurface(
  [0.01, 0.02, 0.035, 0.05],
  [0.02, 0.04, 0.07],
  [
    [0.7, 0.95, 0.9, 0.8],
    [0.8, 1, 0.95, 0.85],
    [0.75, 0.9, 0.85, 0.8],
  ],
);
const written = assembleLoadedCar(quill());
const drag = { law: { kind: "table", surface }, height: 0.46 } as const;
const stalling = {
  ...written,
  air: { front: { kind: "table", surface }, rear: { kind: "table", surface }, drag, lag: undefined },
} as const;

const windless = { kind: "slopes", area: 0, byFront: 0, byRear: 0, at: [0, 0] } as const;
const draggy = {
  ...written,
  air: {
    front: windless,
    rear: windless,
    lag: undefined,
    drag: { law: { kind: "slopes", area: 1.1, byFront: -9, byRear: 14, at: [0.03, 0.05] }, height: 0.46 },
  },
} as const;

const everything = caseOf({
  speed: 45,
  lateral: 9,
  longitudinal: -6,
  vertical: 1.5,
  banking: 0.06,
  gradient: 0.04,
});

function at(car: typeof written, x: readonly number[], asked = everything): Balance {
  const { standing, leftOver } = readyFor(car);
  const balance = balanceAt(standing, loadOf(standing, asked), x, leftOver);
  if (balance.kind !== "balance") throw new Error(balance.kind);
  return balance;
}

const SOMEWHERE = [0.0371, 0.006, 0.0085, -0.001, 0.0041, 0.001, 0.0063];

describe("derivatives", () => {
  it.each([
    ["braking, slopes", written, everything],
    ["drive, a stalling table", stalling, caseOf({ speed: 50, lateral: -4, longitudinal: 2 })],
    ["drag by slopes", draggy, everything],
    ["inboard brakes", { ...written, brakes: { front: 0.55, mounting: "inboard" as const } }, everything],
    ["a lifted wheel", written, caseOf({ lateral: 12 })],
  ])("of every residual by every freedom, %s", (name, car, asked) => {
    const x = name === "a lifted wheel" ? SOMEWHERE.map((v, i) => (i === 1 ? 0.03 : v)) : SOMEWHERE;
    const { jacobian, wheels } = at(car, x, asked);
    expect(wheels.some(({ load }) => load === 0)).toBe(name === "a lifted wheel");
    for (let j = 0; j < FREEDOMS; j++) {
      for (let i = 0; i < FREEDOMS; i++) {
        const along = (v: number): number =>
          at(
            car,
            x.map((old, k) => (k === j ? v : old)),
            asked,
          ).residual[i]!;
        const size = Math.max(...jacobian[i]!.map(Math.abs));
        expectClose(jacobian[i]![j]!, slopeOf(along, x[j]!, 1e-5), DIFFERENCED, DIFFERENCED * size);
      }
    }
  });
});

describe("energy", () => {
  it("without horizontal forces and air the residuals are those of a potential: symmetric where the attitude is level", () => {
    const bare = { ...written, air: undefined, drive: undefined, brakes: undefined };
    const { jacobian } = at(
      bare,
      SOMEWHERE.map((v, i) => (i === 1 || i === 2 ? 0 : v)),
      caseOf({}),
    );
    for (let i = BODY; i < FREEDOMS; i++) {
      for (let j = BODY; j < i; j++) expectClose(jacobian[i]![j]!, jacobian[j]![i]!, 1e-12, 1e-6);
      // What a wheel's travel does to the body, and the body's height to the wheel.
      expectClose(jacobian[i]![0]!, jacobian[0]![i]!, 1e-12, 1e-6);
    }
  });
});

describe("mirror", () => {
  it("a right turn is the left one's image", () => {
    const mirrored = SOMEWHERE.map((_, i) => (i === 1 ? -SOMEWHERE[1]! : SOMEWHERE[[0, 1, 2, 4, 3, 6, 5][i]!]!));
    const left = at(written, SOMEWHERE);
    const right = at(written, mirrored, { ...everything, lateral: -9, banking: -0.06 });
    const image = [0, 1, 2, 4, 3, 6, 5].map((k) => (k === 1 ? -1 : 1) * right.residual[k]!);
    for (const [i, value] of left.residual.entries()) expectClose(image[i]!, value, 1e-10, 1e-7);
  });
});
