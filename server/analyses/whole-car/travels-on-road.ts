/**
 * What the wheels' travels do on a random road when the car is given other stiffness and damping between its wheels and
 * its body, without solving it anew each time.
 *
 * At the nodes of one sum over ln f stand the travels s₀ that the road makes and the travels T that unit forces between body
 * and wheels make, both of the car as it was. With D = ΔK + jωΔC more between them, (I + T D) s = s₀: four by four.
 *
 * Invariant: with nothing more it is the car itself; nodes are those of a first look, good to some parts in a hundred thousand.
 */
import { solvedInPlace } from "../../maths/complex-solve.js";
import { integrate } from "../../maths/quadrature.js";
import { nothing, type Rows, zeros } from "../../maths/rows.js";
import type { WholeCar } from "./car-data.js";
import type { CarDynamics } from "./dynamics.js";
import { ROAD_OPPOSED, ROAD_TOGETHER } from "./halves.js";
import type { LinearSystem } from "./linear-system.js";
import { partOf } from "./parts.js";
import { bandOf, heightsAt, type RoadConditions } from "./road-variances.js";
import { type Responder, responderOf } from "./transfer.js";

const WHEELS = 4;

/** Of one interval with its fifteen nodes. */
const OCTAVES = 3;

/** Mean products of the four travels, m², and of their speeds, (m/s)². */
export interface TravelSquares {
  readonly travel: Rows;
  readonly speed: Rows;
}

export interface TravelsOnRoad {
  /** Undefined where the changed car is not held at some frequency. */
  squares(stiffness: Rows, damping: Rows): TravelSquares | undefined;
}

interface Node {
  readonly omega: number;
  /** Weight by spectrum of heights that are alike left and right, and opposed. */
  readonly weights: readonly [together: number, opposed: number];
  /** Travels by wheel, both kinds of heights. */
  readonly travels: Float64Array;
  /** Travels by wheel and force. */
  readonly give: Float64Array;
}

/** Undefined where the car has no answer in the band, or does not settle. */
export function travelsOnRoad(car: WholeCar, dynamics: CarDynamics, road: RoadConditions): TravelsOnRoad | undefined {
  const part = partOf(pushed(dynamics), undefined);
  if (part === undefined || part.spectrum.re.some((re) => re >= 0)) return undefined;
  const shown = dynamics.travel.map((motion) => ({ motion, road: nothing(2 * WHEELS) }));
  const nodes = nodesOf(responderOf(part, shown), car.wheelbase / road.speed, road);
  return nodes && { squares: (stiffness, damping) => squaresOf(nodes, stiffness, damping) };
}

/** The car with four more inputs: forces that push wheel and body apart. */
function pushed(dynamics: CarDynamics): LinearSystem {
  const beside = (own: Rows, more: (row: number) => readonly number[]): Rows =>
    own.map((row, i) => [...row, ...more(i)]);
  const { air } = dynamics;
  return {
    mass: dynamics.mass,
    damping: dynamics.damping,
    stiffness: dynamics.stiffness,
    roadStiffness: beside(dynamics.roadStiffness, (i) => dynamics.travel.map((row) => row[i]!)),
    roadDamping: beside(dynamics.roadDamping, () => nothing(WHEELS)),
    air: air && { ...air, road: beside(air.road, () => nothing(WHEELS)) },
  };
}

function nodesOf(responder: Responder, delay: number, road: RoadConditions): readonly Node[] | undefined {
  const edges = bandOf(road, OCTAVES);
  if (edges === undefined) return undefined;
  const found: (Omit<Node, "weights"> & { readonly common: number; readonly density: number })[] = [];
  const input = new Float64Array(4 * WHEELS);
  const answer = new Float64Array(2 * WHEELS);
  const answerTo = (into: Float64Array, column: number, width: number, omega: number): boolean => {
    if (!responder.at(omega, input, answer)) return false;
    for (let i = 0; i < WHEELS; i++) into.set(answer.subarray(2 * i, 2 * i + 2), 2 * (i * width + column));
    return true;
  };
  let isWhole = true;
  const { weights } = integrate(
    (u) => {
      const { omega, common, density } = heightsAt(road, u);
      const [travels, give] = [new Float64Array(4 * WHEELS), new Float64Array(2 * WHEELS * WHEELS)];
      for (const [column, heights] of [ROAD_TOGETHER, ROAD_OPPOSED].entries()) {
        input.fill(0);
        for (const [i, [front = 0, rear = 0]] of heights.entries()) {
          input[2 * i] = front + rear * Math.cos(omega * delay);
          input[2 * i + 1] = -rear * Math.sin(omega * delay);
        }
        isWhole = answerTo(travels, column, 2, omega) && isWhole;
      }
      for (let j = 0; j < WHEELS; j++) {
        input.fill(0);
        input[2 * (WHEELS + j)] = 1;
        isWhole = answerTo(give, j, WHEELS, omega) && isWhole;
      }
      found.push({ omega, travels, give, common, density });
    },
    0,
    edges,
    { relative: Infinity },
  );
  if (!isWhole) return undefined;
  return found.map(({ common, density, ...node }, i) => {
    const own = (weights[i]! * density) / 2;
    return { ...node, weights: [own * (1 + common), own * (1 - common)] };
  });
}

function squaresOf(nodes: readonly Node[], stiffness: Rows, damping: Rows): TravelSquares | undefined {
  const [travel, speed] = [zeros(WHEELS, WHEELS), zeros(WHEELS, WHEELS)];
  const matrix = new Float64Array(2 * WHEELS * WHEELS);
  const s = new Float64Array(4 * WHEELS);
  const [k, c] = [Float64Array.from(stiffness.flat()), Float64Array.from(damping.flat())];
  for (const { omega, weights, travels, give } of nodes) {
    s.set(travels);
    looped(matrix, give, k, c, omega);
    if (!solvedInPlace(matrix, s, WHEELS, 2)) return undefined;
    for (let i = 0; i < WHEELS; i++) {
      for (let j = 0; j <= i; j++) {
        let sum = 0;
        for (let h = 0; h < 2; h++) {
          const a = 2 * (2 * i + h);
          const b = 2 * (2 * j + h);
          sum += weights[h]! * (s[a]! * s[b]! + s[a + 1]! * s[b + 1]!);
        }
        travel[i]![j]! += sum;
        speed[i]![j]! += sum * omega * omega;
      }
    }
  }
  for (let i = 0; i < WHEELS; i++) {
    for (let j = 0; j < i; j++) [travel[j]![i], speed[j]![i]] = [travel[i]![j]!, speed[i]![j]!];
  }
  return { travel, speed };
}

/** I + T (ΔK + jωΔC). */
function looped(into: Float64Array, give: Float64Array, k: Float64Array, c: Float64Array, omega: number): void {
  for (let i = 0; i < WHEELS; i++) {
    for (let j = 0; j < WHEELS; j++) {
      let re = i === j ? 1 : 0;
      let im = 0;
      for (let m = 0; m < WHEELS; m++) {
        const at = 2 * (i * WHEELS + m);
        const tRe = give[at]!;
        const tIm = give[at + 1]!;
        const stiff = k[m * WHEELS + j]!;
        const damped = omega * c[m * WHEELS + j]!;
        re += tRe * stiff - tIm * damped;
        im += tRe * damped + tIm * stiff;
      }
      into[2 * (i * WHEELS + j)] = re;
      into[2 * (i * WHEELS + j) + 1] = im;
    }
  }
}
