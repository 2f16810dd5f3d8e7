/**
 * Road response against the time domain: the seven freedoms on a road of many waves with random phases, integrated by
 * Runge and Kutta's fourth order, against the sums over frequencies. Both wheels of an axle meet the same road.
 */
import { inverse, Matrix } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { carDynamics } from "../../../server/analyses/whole-car/dynamics.js";
import { roadResponse } from "../../../server/analyses/whole-car/road.js";
import { car7 } from "../../support/whole-car.js";

const [roughness, speed] = [16e-6, 40];
const band = { from: 0.02, to: 1 };
const [STEP, SECONDS, SETTLING, WAVES] = [1e-3, 60, 3, 160];
/** What one minute of one road with these waves says of all. */
const ONE_ROAD = 0.03;

function random(seed: number): () => number {
  let state = seed;
  return () => (state = (state * 48271) % 2147483647) / 2147483647;
}

/** Height and its rate of a road with G(n) = G₀ (n₀/n)², n₀ = 0.1 cycle/m, by waves of one share of ln n each. */
function roadOf(seed: number): (t: number) => readonly [number, number] {
  const next = random(seed);
  const width = Math.log(band.to / band.from) / WAVES;
  const waves = Array.from({ length: WAVES }, (_, i) => {
    const n = band.from * Math.exp((i + next()) * width);
    const omega = 2 * Math.PI * n * speed;
    return { omega, phase: 2 * Math.PI * next(), height: Math.sqrt(2 * roughness * (0.1 / n) ** 2 * n * width) };
  });
  return (t) => {
    let [value, rate] = [0, 0];
    for (const { omega, phase, height } of waves) {
      value += height * Math.cos(omega * t + phase);
      rate -= height * omega * Math.sin(omega * t + phase);
    }
    return [value, rate];
  };
}

/** Squares of tyre load, travel and ride height at the front left and rear left, in the mean. */
function inTime(seed: number): readonly number[] {
  const { mass, damping, stiffness, roadStiffness, roadDamping, travel, heights, tyres } = carDynamics(car7);
  const over = inverse(new Matrix(mass.map((row) => [...row])));
  const [m, c, kr, cr] = [stiffness, damping, roadStiffness, roadDamping].map((a) =>
    over.mmul(new Matrix(a.map((row) => [...row]))).to2DArray(),
  );
  const road = roadOf(seed);
  const delay = car7.wheelbase / speed;
  const dot = (row: readonly number[], x: readonly number[]): number => row.reduce((sum, a, i) => sum + a * x[i]!, 0);
  const roads = (t: number) => {
    const [[f, fv], [r, rv]] = [road(t), road(t - delay)];
    return { r: [f, f, r, r], v: [fv, fv, rv, rv] };
  };
  const rate = (x: readonly number[], { r, v }: ReturnType<typeof roads>): number[] => {
    const [q, qv] = [x.slice(0, 7), x.slice(7)];
    return [...qv, ...q.map((_, i) => dot(kr![i]!, r) + dot(cr![i]!, v) - dot(m![i]!, q) - dot(c![i]!, qv))];
  };
  const plus = (x: readonly number[], k: readonly number[], by: number): number[] => x.map((a, i) => a + by * k[i]!);
  let x = Array.from({ length: 14 }, () => 0);
  const squares = [0, 0, 0, 0, 0, 0];
  const [steps, settled] = [SECONDS / STEP, SETTLING / STEP];
  let here = roads(0);
  for (let n = 0; n < steps; n++) {
    const t = n * STEP;
    const [middle, there] = [roads(t + STEP / 2), roads(t + STEP)];
    const k1 = rate(x, here);
    const k2 = rate(plus(x, k1, STEP / 2), middle);
    const k3 = rate(plus(x, k2, STEP / 2), middle);
    const k4 = rate(plus(x, k3, STEP), there);
    x = x.map((a, i) => a + (STEP / 6) * (k1[i]! + 2 * k2[i]! + 2 * k3[i]! + k4[i]!));
    here = there;
    if (n < settled) continue;
    const q = x.slice(0, 7);
    const shown = [0, 2].flatMap((wheel) => [
      tyres.rate[wheel]! * (here.r[wheel]! - q[3 + wheel]!) + tyres.damping[wheel]! * (here.v[wheel]! - x[10 + wheel]!),
      dot(travel[wheel]!, q),
      dot(heights[wheel / 2]!, q) - here.r[wheel]!,
    ]);
    for (const [i, value] of shown.entries()) squares[i]! += (value * value) / (steps - settled);
  }
  return squares;
}

describe("a car on a road in time", () => {
  it("shakes as much as the sums over frequencies say", () => {
    const found = roadResponse(car7, { roughness, speed, sides: "same", band, staticLoads: [1, 1, 1, 1] });
    if (found.kind !== "road-response") throw new Error(found.reason);
    const { wheels, front, rear } = found;
    const expected = [
      wheels[0]!.load,
      wheels[0]!.travel,
      front.platform,
      wheels[2]!.load,
      wheels[2]!.travel,
      rear.platform,
    ];
    for (const [i, square] of inTime(20_011).entries())
      expect(Math.abs(Math.sqrt(square) / expected[i]! - 1), `figure ${i}`).toBeLessThan(ONE_ROAD);
  });
});
