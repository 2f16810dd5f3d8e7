/**
 * Everything computed for one car or set-up: its axles' figures, which are shared with every car that
 * has the same axle, and what takes both axles.
 */
import type { CarMasses } from "../elements/masses.js";
import type { CarElement } from "../elements/mechanism.js";
import { absent, isAbsent } from "./absent.js";
import { carElementFigures } from "./car-elements.js";
import { bodyMotions } from "./car-motions.js";
import { type CarParts, carParts } from "./car-parts.js";
import { type CarAxles, carPositions } from "./car-positions.js";
import { carRates } from "./car-rates.js";
import { carSums } from "./car-sums.js";
import type { CarRide } from "./whole-car/car-ride.js";
import { changeOvers } from "./change-over.js";
import { type Expectation, judge } from "./expectations.js";
import type { CarCases } from "./equilibrium/results.js";
import type { AssemblyProblem, AxleAnalysis, AxleRates, CarAnalysis, ElementFigures, Figure } from "./results.js";

/** What is read of a car; `Axle` is whatever the caller computes an axle's analysis from. */
export interface CarQuestion<Axle> {
  readonly axles: { readonly front: Axle | undefined; readonly rear: Axle | undefined };
  readonly expectations: readonly Expectation[];
  readonly wheelbase?: { readonly value: number } | undefined;
  /** As stated; `masses` say what holds with driver, fuel and ballast. */
  readonly massFront?: { readonly value: number } | undefined;
  readonly cgHeight?: { readonly value: number } | undefined;
}

/** The elements between the axles, with the mechanisms that they follow. */
export interface CarJoining {
  readonly elements: readonly CarElement[];
  readonly axles: CarAxles;
  readonly problems: readonly AssemblyProblem[];
}

const NOTHING_JOINS: CarJoining = { elements: [], axles: { front: undefined, rear: undefined }, problems: [] };

const NO_CASES: CarCases = { names: [], at: () => undefined, sweep: () => absent("no load cases were given") };

/** Share of `own` in the car's roll stiffness, tyres left out. */
function rollShare(own: AxleRates, other: AxleRates | undefined): Figure {
  if (isAbsent(own.rollStiffness)) return own.rollStiffness;
  if (other === undefined) return absent("the car has one axle only");
  if (isAbsent(other.rollStiffness)) return other.rollStiffness;
  const sum = own.rollStiffness + other.rollStiffness;
  return Math.abs(sum) > 0 ? own.rollStiffness / sum : absent("neither axle has any roll stiffness");
}

function withShare(analysis: AxleAnalysis | undefined, other: AxleAnalysis | undefined): AxleAnalysis | undefined {
  if (analysis === undefined) return undefined;
  return { ...analysis, rates: { ...analysis.rates, rollStiffnessShare: rollShare(analysis.rates, other?.rates) } };
}

/** Where the centre of gravity is: of the masses put together, else as it is stated. */
function centreOf<Axle>(car: CarQuestion<Axle>, masses: CarMasses | undefined) {
  if (masses === undefined) return { massFront: car.massFront?.value, cgHeight: car.cgHeight?.value, cgLeft: 0 };
  const known = (value: number | string): number | undefined => (typeof value === "number" ? value : undefined);
  const { left, height } = masses.centre;
  return { massFront: known(masses.frontShare), cgHeight: known(height), cgLeft: known(left) };
}

interface Whole {
  readonly modal: CarAnalysis["modal"];
  readonly elements: readonly ElementFigures[];
}

function wholeCar<Axle>(
  car: CarQuestion<Axle>,
  axles: CarAnalysis["axles"],
  joining: CarJoining,
  { massFront, cgLeft }: ReturnType<typeof centreOf>,
): Whole {
  const rates = { front: axles.front?.rates, rear: axles.rear?.rates };
  const positions = carPositions(joining.axles);
  const parts: CarParts = carParts(joining.elements, positions);
  const sums = carSums(rates, parts);
  const body = bodyMotions({
    wheelbase: car.wheelbase?.value,
    massFront,
    cgLeft,
    tracks: { front: rates.front?.track, rear: rates.rear?.track },
  });
  return {
    modal: carRates(rates, body, parts, sums),
    elements: carElementFigures({ ...joining, positions, parts, sums, body }),
  };
}

/**
 * @param analysisOf the analysis of one axle, remembered or computed
 * @param joining the elements that join the axles; most cars have none
 * @param masses of the car with its lines; without them what is stated holds
 * @param ride how it moves on a road, likewise
 * @param cases what its load cases come to; asked only where an expectation is about one
 */
export function analyseCar<Axle>(
  car: CarQuestion<Axle>,
  analysisOf: (axle: Axle) => AxleAnalysis,
  joining: CarJoining = NOTHING_JOINS,
  masses?: CarMasses,
  cases: CarCases = NO_CASES,
  ride?: CarRide,
): CarAnalysis {
  const centre = centreOf(car, masses);
  const front = car.axles.front && analysisOf(car.axles.front);
  const rear = car.axles.rear && analysisOf(car.axles.rear);
  const axles = { front: withShare(front, rear), rear: withShare(rear, front) };
  const { modal, elements } = wholeCar(car, axles, joining, centre);
  const changes = changeOvers({
    front,
    rear,
    cgHeight: centre.cgHeight,
    isJoined: joining.elements.length > 0,
  });
  const expectations = judge(car.expectations, { axles, elements }, cases, ride);
  return { axles, elements, modal, changeOvers: changes, problems: joining.problems, expectations };
}
