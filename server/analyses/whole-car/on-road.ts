/**
 * A car about a case on a random road with the laws that its elements really have: each damper, gap, stop and bent spring
 * counts as the straight line nearest to it for the movements that it meets there, found in rounds; forces that do not
 * mean to nought (a damper firmer in rebound, a stop) move the mean ride height.
 *
 * Left out: that the mean change of a spring's force turns with the linkage, and wheels that leave the road.
 *
 * Invariant: elements that are straight already leave the linear response as it is.
 */
import type { DamperLaw } from "../../elements/element.js";
import { solved } from "../../maths/eigen.js";
import { applied, inner, product, type Rows, zeros } from "../../maths/rows.js";
import { absent } from "../absent.js";
import type { CarrierBalance } from "../equilibrium/balance.js";
import type { Solved } from "../equilibrium/outcome.js";
import type { Standing } from "../equilibrium/standing.js";
import type { Absent } from "../results.js";
import type { WholeCar } from "./car-data.js";
import { type CarDynamics, carDynamics } from "./dynamics.js";
import { steadyStiffness } from "./linear-system.js";
import { movingOf } from "./linearise.js";
import { conditionsOf, type NoRoadResponse, type RoadCase, type RoadResponse, roadResponse } from "./road.js";
import { damperOnRoad, springOnRoad } from "./statistical.js";
import { travelsOnRoad, type TravelSquares } from "./travels-on-road.js";

/** Of a slope from one round to the next; each leaves about a seventh of its step wrong, a third of which is in the figures. */
const SETTLED = 1e-3;
const ROUNDS = 30;

/** What the rounds to come would add to a damper's step: a seventh, a seventh of that, and so on. */
const AHEAD = 1 / 6;

/** An element that is not straight: its deflection over the four travels. */
type Bent = { readonly row: readonly number[] } & (
  | { readonly kind: "damper"; readonly law: DamperLaw }
  | { readonly kind: "spring"; readonly balance: CarrierBalance }
);

/** What takes the place of the bent elements: a slope each, and mean forces that push wheels and body apart. */
interface Guess {
  readonly slopes: readonly number[];
  readonly forces: readonly number[];
}

/** @param car linear about the solution */
export function onRoad(
  standing: Standing,
  solution: Solved,
  car: WholeCar,
  road: RoadCase,
): RoadResponse | NoRoadResponse | Absent {
  const bent = bentOf(standing, solution);
  const dynamics = carDynamics(car);
  const travels = travelsOnRoad(car, dynamics, conditionsOf(car, road));
  const give = giveOf(dynamics);
  if (travels === undefined || give === undefined) return roadResponse(car, road);
  const byForces = product(dynamics.travel, give);
  let guess: Guess = { slopes: bent.map(slopeNow), forces: [0, 0, 0, 0] };
  for (let round = 0; round < ROUNDS; round++) {
    const more = moreOf(bent, guess);
    const squares = travels.squares(more.stiffness, more.damping);
    if (squares === undefined) return { kind: "no-road-response", reason: "unbounded" };
    const next = nextGuess(bent, applied(byForces, guess.forces), squares);
    const isSettled = next.slopes.every((slope, i) => isNear(bent[i]!, slope, guess.slopes[i]!, car));
    if (isSettled) return finished(car, dynamics, road, bent, next, give);
    guess = ahead(bent, guess, next);
  }
  return absent("the elements' rates and damping on this road do not settle");
}

/** Where the dampers' slopes are heading; springs, whose steps may change sign from round to round, go step by step. */
function ahead(bent: readonly Bent[], before: Guess, next: Guess): Guess {
  const slopes = next.slopes.map((slope, i) =>
    bent[i]!.kind === "damper" ? slope + (slope - before.slopes[i]!) * AHEAD : slope,
  );
  return { ...next, slopes };
}

function bentOf(standing: Standing, { balance }: Solved): readonly Bent[] {
  const wide = (d: readonly number[], from: number): number[] => [0, 1, 2, 3].map((wheel) => d[wheel - from] ?? 0);
  const dampers = movingOf(standing, balance).flatMap(({ element, from, d }): Bent[] =>
    element.law?.kind === "damper" ? [{ kind: "damper", law: element.law, row: wide(d, from) }] : [],
  );
  const springs = balance.carriers.flatMap((one): Bent[] => {
    const { law } = one.carrier.element;
    if (law?.kind !== "spring" || law.constantRate !== undefined) return [];
    const from = one.carrier.axle === undefined ? 0 : 2 * one.carrier.axle;
    return [{ kind: "spring", balance: one, row: wide(one.d, from) }];
  });
  return [...dampers, ...springs];
}

const slopeNow = (one: Bent): number => (one.kind === "damper" ? one.law.lowSpeed : one.balance.rate);

/** What the slopes add to those that the linear car has. */
function moreOf(
  bent: readonly Bent[],
  { slopes }: Guess,
): { readonly stiffness: number[][]; readonly damping: number[][] } {
  const more = { stiffness: zeros(4, 4), damping: zeros(4, 4) };
  for (const [k, one] of bent.entries()) {
    const into = one.kind === "damper" ? more.damping : more.stiffness;
    const by = slopes[k]! - slopeNow(one);
    for (const [i, a] of one.row.entries()) for (const [j, b] of one.row.entries()) into[i]![j]! += by * a * b;
  }
  return more;
}

/** @param mean travels of the wheels */
function nextGuess(bent: readonly Bent[], mean: readonly number[], squares: TravelSquares): Guess {
  const forces = [0, 0, 0, 0];
  const slopes = bent.map((one) => {
    const line = lineOf(one, mean, squares);
    for (const [i, a] of one.row.entries()) forces[i]! -= a * line.mean;
    return line.slope;
  });
  return { slopes, forces };
}

/** Its slope, and the mean force that the linear car does not have. */
function lineOf(
  one: Bent,
  mean: readonly number[],
  { travel, speed }: TravelSquares,
): { readonly mean: number; readonly slope: number } {
  const rms = (squares: Rows): number => Math.sqrt(inner(one.row, applied(squares, one.row)));
  if (one.kind === "damper") return damperOnRoad(one.law, rms(speed));
  const { carrier, deflection, force, rate } = one.balance;
  const moved = inner(one.row, mean);
  const line = springOnRoad(carrier, deflection + moved, rms(travel));
  return { mean: line.mean - force - rate * moved, slope: line.slope };
}

/** Springs against the tyres, since those of a gap or a stop may be next to nothing. */
function isNear(one: Bent, slope: number, before: number, { front, rear }: WholeCar): boolean {
  if (one.kind === "damper") return Math.abs(slope - before) <= SETTLED * Math.abs(slope);
  const tyres = Math.max(...[front, rear].flatMap(({ left, right }) => [left.tyreRate, right.tyreRate]));
  return Math.abs(slope - before) * inner(one.row, one.row) <= SETTLED * tyres;
}

/** K⁻¹ times the travels' rows: q by unit forces that push wheels and body apart. */
const giveOf = (dynamics: CarDynamics): Rows | undefined =>
  solved(
    steadyStiffness(dynamics),
    dynamics.mass.map((_, i) => dynamics.travel.map((row) => row[i]!)),
  );

function finished(
  car: WholeCar,
  { heights }: CarDynamics,
  road: RoadCase,
  bent: readonly Bent[],
  guess: Guess,
  give: Rows,
): RoadResponse | NoRoadResponse {
  const { stiffness, damping } = moreOf(bent, guess);
  const found = roadResponse(withMore(car, stiffness, damping), road);
  if (found.kind !== "road-response") return found;
  const [front = 0, rear = 0] = applied(product(heights, give), guess.forces);
  return {
    ...found,
    front: { ...found.front, raised: front },
    rear: { ...found.rear, raised: rear },
  };
}

/** With more stiffness and damping over the travels of the four wheels. */
function withMore(car: WholeCar, stiffness: Rows, damping: Rows): WholeCar {
  const plus = (a: Rows, b: Rows): Rows => a.map((row, i) => row.map((value, j) => value + b[i]![j]!));
  const none = zeros(4, 4);
  const cross = car.cross ?? { stiffness: none, damping: none, inertance: none };
  return {
    ...car,
    cross: {
      ...cross,
      stiffness: plus(cross.stiffness, stiffness),
      damping: plus(cross.damping, damping),
    },
  };
}
