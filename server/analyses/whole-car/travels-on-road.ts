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
import { OPPOSED, TOGETHER } from "./channels.js";
import type { CarDynamics } from "./dynamics.js";
import type { LinearSystem } from "./linear-system.js";
import { bandOf, entered, heightsAt, type RoadConditions } from "./road-variances.js";
import { whyUnsettled } from "./settling.js";
import { flat, swingingOf } from "./swinging.js";

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

/** Of each node, one after the other; complex numbers re and im by turns. */
interface Nodes {
  readonly omegas: readonly number[];
  /** Weight by spectrum of heights that are alike left and right, and opposed. */
  readonly weights: readonly (readonly [together: number, opposed: number])[];
  /** Travels by wheel and kind of heights. */
  readonly travels: Float64Array;
  /** Travels by wheel and force. */
  readonly give: Float64Array;
}

/** Undefined where the car has no answer in the band, or does not settle. */
export function travelsOnRoad(car: WholeCar, dynamics: CarDynamics, road: RoadConditions): TravelsOnRoad | undefined {
  if (whyUnsettled([dynamics]) !== undefined) return undefined;
  const nodes = nodesOf(dynamics, car.wheelbase / road.speed, road);
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

/** Numbers of a node: two kinds of heights, or four forces, for each wheel. */
const OF_ROAD = 2 * 2 * WHEELS;
const OF_FORCES = 2 * WHEELS * WHEELS;

/** Two kinds of heights and four forces, in one elimination. */
const COLUMNS = 2 + WHEELS;
const BOTH = [TOGETHER, OPPOSED];

const NOTHING = (): void => {};

function nodesOf(dynamics: CarDynamics, delay: number, road: RoadConditions): Nodes | undefined {
  const edges = bandOf(road, OCTAVES);
  if (edges === undefined) return undefined;
  const rule = integrate(NOTHING, 0, edges, { relative: Infinity });
  const count = rule.nodes.length;
  const [travels, give] = [new Float64Array(OF_ROAD * count), new Float64Array(OF_FORCES * count)];
  const swinging = swingingOf(pushed(dynamics));
  const motion = flat(dynamics.travel);
  const input = new Float64Array(2 * swinging.inputs * COLUMNS);
  for (let j = 0; j < WHEELS; j++) input[2 * ((WHEELS + j) * COLUMNS + 2 + j)] = 1;
  const q = new Float64Array(2 * swinging.freedoms * COLUMNS);
  const omegas: number[] = [];
  const weights: [number, number][] = [];
  for (let node = 0; node < count; node++) {
    const { omega, common, density } = heightsAt(road, rule.nodes[node]!);
    const own = (rule.weights[node]! * density) / 2;
    omegas.push(omega);
    weights.push([own * (1 + common), own * (1 - common)]);
    entered(BOTH, omega * delay, input, COLUMNS);
    if (!swinging.at(omega, input, q, COLUMNS)) return undefined;
    told(motion, q, travels, OF_ROAD * node, 0, 2);
    told(motion, q, give, OF_FORCES * node, 2, WHEELS);
  }
  return { omegas, weights, travels, give };
}

/** Travels of the four wheels in some of the columns. */
function told(motion: Float64Array, q: Float64Array, into: Float64Array, at: number, first: number, width: number) {
  const freedoms = motion.length / WHEELS;
  for (let wheel = 0; wheel < WHEELS; wheel++) {
    for (let c = 0; c < width; c++) {
      let re = 0;
      let im = 0;
      for (let i = 0; i < freedoms; i++) {
        const from = 2 * (i * COLUMNS + first + c);
        re += motion[wheel * freedoms + i]! * q[from]!;
        im += motion[wheel * freedoms + i]! * q[from + 1]!;
      }
      into[at + 2 * (wheel * width + c)] = re;
      into[at + 2 * (wheel * width + c) + 1] = im;
    }
  }
}

function squaresOf(nodes: Nodes, stiffness: Rows, damping: Rows): TravelSquares | undefined {
  const [travel, speed] = [zeros(WHEELS, WHEELS), zeros(WHEELS, WHEELS)];
  const matrix = new Float64Array(OF_FORCES);
  const s = new Float64Array(OF_ROAD);
  const [k, c] = [Float64Array.from(stiffness.flat()), Float64Array.from(damping.flat())];
  const isChanged = [...k, ...c].some((value) => value !== 0);
  for (let node = 0; node < nodes.omegas.length; node++) {
    const omega = nodes.omegas[node]!;
    for (let i = 0; i < OF_ROAD; i++) s[i] = nodes.travels[OF_ROAD * node + i]!;
    if (isChanged) {
      looped(matrix, nodes.give, OF_FORCES * node, k, c, omega);
      if (!solvedInPlace(matrix, s, WHEELS, 2)) return undefined;
    }
    const [together, opposed] = nodes.weights[node]!;
    for (let i = 0; i < WHEELS; i++) {
      const a = 4 * i;
      for (let j = 0; j <= i; j++) {
        const b = 4 * j;
        const sum =
          together * (s[a]! * s[b]! + s[a + 1]! * s[b + 1]!) +
          opposed * (s[a + 2]! * s[b + 2]! + s[a + 3]! * s[b + 3]!);
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
function looped(
  into: Float64Array,
  give: Float64Array,
  from: number,
  k: Float64Array,
  c: Float64Array,
  omega: number,
): void {
  for (let i = 0; i < WHEELS; i++) {
    for (let j = 0; j < WHEELS; j++) {
      let re = i === j ? 1 : 0;
      let im = 0;
      for (let m = 0; m < WHEELS; m++) {
        const at = from + 2 * (i * WHEELS + m);
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
