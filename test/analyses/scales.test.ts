/** Corner weights backwards: hand figures, the springs solved anew with the turns made, balances, and the mirror. */
import fc from "fast-check";
import { Matrix, solve } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { type CornerAdjuster, scalesFigures, type ScalesQuestion, weigh } from "../../server/analyses/scales.js";
import type { Wheels } from "../../server/elements/car-connection.js";

const G = 9.80665;
const paths = ["front.left.side", "front.right.side", "rear.left.side", "rear.right.side"];
const X: Wheels = [1.4, 1.4, -1.1, -1.1];
const Y: Wheels = [0.75, -0.75, 0.7, -0.7];

/** Four corner springs, front and rear, and a bar on each axle. */
function question(
  changes: Partial<ScalesQuestion> = {},
  bars: readonly [number, number] = [6000, 2000],
): ScalesQuestion {
  const rates = [40e3, 40e3, 55e3, 55e3];
  const stiffness = rates.map((rate, i) =>
    rates.map((_, j) => {
      const bar = bars[i < 2 ? 0 : 1] ?? 0;
      return i === j ? rate + bar : i < 2 === j < 2 ? -bar : 0;
    }),
  );
  const corners = paths.map((path, i): CornerAdjuster => {
    const force = [0, 0, 0, 0].map((_, j) => (i === j ? (rates[i] ?? 0) : 0)) as unknown as Wheels;
    return { path, force, movement: 0.7, torsional: false, perTurn: 0.0015 };
  });
  return {
    readings: [138, 142, 171, 168],
    target: 0.5,
    stiffness,
    tyres: [180e3, 180e3, 200e3, 200e3],
    x: X,
    y: Y,
    corners,
    ...changes,
  };
}

const turnsOf = (asked: ScalesQuestion) => {
  const { turns } = scalesFigures(asked);
  if ("kind" in turns) throw new Error(turns.reason);
  return turns;
};

/** Loads by a second method: body and wheels as seven unknowns, each corner's spring shortened by what it is raised. */
function loadsAfter({ stiffness, tyres, corners, readings }: ScalesQuestion, raise: readonly number[]): number[] {
  if ("kind" in stiffness || "kind" in corners || tyres === undefined) throw new Error("nothing to solve");
  // Unknown: heave, pitch, roll of the body, travel of each wheel. Wheel: T (B − z) − K z − A v = 0. Body: Gᵀ T (B − z) = 0.
  const body = (i: number): number[] => [1, X[i] ?? 0, -(Y[i] ?? 0)];
  const rows: number[][] = [];
  const right: number[] = [];
  for (let i = 0; i < 4; i++) {
    const t = tyres[i] ?? 0;
    rows.push([
      ...body(i).map((g) => t * g),
      ...[0, 1, 2, 3].map((j) => -(stiffness[i]?.[j] ?? 0) - (i === j ? t : 0)),
    ]);
    right.push(corners.reduce((sum, corner, k) => sum + (corner.force[i] ?? 0) * (raise[k] ?? 0), 0));
  }
  for (let m = 0; m < 3; m++) {
    const across = [0, 1, 2].map((n) =>
      [0, 1, 2, 3].reduce((sum, i) => sum + (body(i)[m] ?? 0) * (tyres[i] ?? 0) * (body(i)[n] ?? 0), 0),
    );
    rows.push([...across, ...[0, 1, 2, 3].map((i) => -(body(i)[m] ?? 0) * (tyres[i] ?? 0))]);
    right.push(0);
  }
  const x = solve(new Matrix(rows), Matrix.columnVector(right)).to1DArray();
  return readings.map((load, i) => {
    const drop = body(i).reduce((sum, g, m) => sum + g * (x[m] ?? 0), 0);
    return load + ((tyres[i] ?? 0) * (drop - (x[3 + i] ?? 0))) / G;
  });
}

describe("the scales", () => {
  it("are read by hand", () => {
    const weighed = weigh([138, 142, 171, 168], X, Y);
    if ("kind" in weighed) throw new Error(weighed.reason);
    expect(weighed.total).toBe(619);
    expect(weighed.front).toBeCloseTo(280 / 619, 14);
    expect(weighed.left).toBeCloseTo(309 / 619, 14);
    expect(weighed.cross).toBeCloseTo(313 / 619, 14);
    expect(weighed.centre[1]).toBeCloseTo((0.75 * (138 - 142) + 0.7 * (171 - 168)) / 619, 14);
  });

  it("ask for turns that bring the cross weight to the target, with the loads of a second method", () => {
    const asked = question();
    const turns = turnsOf(asked);
    const after = loadsAfter(
      asked,
      turns.map(({ raise }) => raise),
    );
    expect(((after[1] ?? 0) + (after[2] ?? 0)) / 619).toBeCloseTo(0.5, 12);
    for (const [i, { after: shown }] of turns.entries()) expect(shown).toBeCloseTo(after[i] ?? 0, 9);
  });

  it("raise diagonal corners alike and lower the others, as a mechanic does on a symmetrical square car", () => {
    // Hand calculation: four equal springs k and nothing else, equal tracks: raising two corners by v and lowering the other
    // two by v warps the car, and every load changes by k v.
    const k = 50e3;
    const square = question({
      readings: [150, 154, 154, 150],
      tyres: undefined,
      x: [1.2, 1.2, -1.2, -1.2],
      y: [0.7, -0.7, 0.7, -0.7],
      stiffness: [0, 1, 2, 3].map((i) => [0, 1, 2, 3].map((j) => (i === j ? k : 0))),
      corners: paths.map((path, i) => ({
        path,
        force: [0, 1, 2, 3].map((j) => (i === j ? k : 0)) as unknown as Wheels,
        movement: 0.7,
        torsional: false,
        perTurn: 0.0015,
      })),
    });
    const v = (2 * G) / k;
    for (const [i, sign] of [1, -1, -1, 1].entries()) {
      expect(turnsOf(square)[i]?.raise).toBeCloseTo(sign * v, 14);
      expect(turnsOf(square)[i]?.after).toBeCloseTo(152, 11);
      expect(turnsOf(square)[i]?.turns).toBeCloseTo((sign * v) / 0.0015, 10);
      expect(turnsOf(square)[i]?.movement).toBeCloseTo(0.7 * sign * v, 14);
    }
  });

  it("keep weight, both moments and the ride heights, whatever the readings", () => {
    const reading = fc.double({ min: 60, max: 300, noNaN: true });
    const share = fc.double({ min: 0.4, max: 0.6, noNaN: true });
    fc.assert(
      fc.property(reading, reading, reading, reading, share, (a, b, c, d, target) => {
        const asked = question({ readings: [a, b, c, d], target });
        const turns = turnsOf(asked);
        const total = a + b + c + d;
        const moment = (loads: readonly number[], arm: Wheels): number =>
          loads.reduce((sum, load, i) => sum + load * (arm[i] ?? 0), 0);
        const after = turns.map((turn) => turn.after);
        const one: Wheels = [1, 1, 1, 1];
        for (const arm of [one, X, Y]) {
          expect(Math.abs(moment(after, arm) - moment([a, b, c, d], arm))).toBeLessThan(1e-9 * total);
        }
        expect(((after[1] ?? 0) + (after[2] ?? 0)) / total).toBeCloseTo(target, 9);
      }),
    );
  });

  it("turn the other way round in the mirror", () => {
    const [fl, fr, rl, rr] = turnsOf(question()).map(({ raise }) => raise);
    const mirrored = turnsOf(question({ readings: [142, 138, 168, 171] })).map(({ raise }) => raise);
    for (const [i, raise] of [fr, fl, rr, rl].entries()) expect(mirrored[i]).toBeCloseTo(raise ?? 0, 12);
  });

  it("say why there are none", () => {
    expect(scalesFigures(question({ readings: [0, 0, 0, 0] })).turns).toMatchObject({
      reason: "the scales show nothing",
    });
    const slack = [0, 1, 2, 3].map(() => [0, 0, 0, 0]);
    expect(scalesFigures(question({ stiffness: slack, tyres: undefined })).turns).toMatchObject({ kind: "absent" });
    const idle = question();
    if ("kind" in idle.corners) throw new Error("no corners");
    const corners = idle.corners.map((corner): CornerAdjuster => ({ ...corner, force: [0, 0, 0, 0] }));
    expect(scalesFigures({ ...idle, corners }).turns).toMatchObject({ kind: "absent" });
  });
});
