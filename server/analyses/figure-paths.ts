/**
 * The figure that a dotted path names: `front.heave-rate`, `front.roll-damper.heave-leak`,
 * `roll-stiffness-front`. The names are those of grammar/vocabulary/figures.ts; a test holds both together.
 *
 * Where a figure exists once a wheel and the path names no side, it is the mean of both.
 */
import { absent, isAbsent } from "./absent.js";
import { motionAt, OF_MOVING_CAR } from "./moving-paths.js";
import type {
  Absent,
  AxleAnalysis,
  AxleRates,
  CarAnalysis,
  ElementFigures,
  Figure,
  Leak,
  WheelAtRest,
} from "./results.js";

type Axles = Pick<CarAnalysis, "axles" | "elements">;

const mean = (a: Figure, b: Figure): Figure => (typeof a !== "number" ? a : typeof b !== "number" ? b : (a + b) / 2);

const ON_ROAD = absent("it is told of a car on a road only");

const AXLE: Readonly<Record<string, (rates: AxleRates) => Figure>> = {
  "heave-rate": (rates) => rates.heaveRate,
  "roll-stiffness": (rates) => rates.rollStiffness,
  "wheel-rate": ({ wheelRate }) => mean(wheelRate.left, wheelRate.right),
  "heave-ride-rate": ({ rideRate }) => rideRate.heave,
  "roll-ride-stiffness": ({ rideRate }) => rideRate.roll,
  "wheel-ride-rate": ({ rideRate }) => rideRate.single,
  "heave-frequency": (rates) => rates.heaveFrequency,
  "heave-damping": (rates) => rates.heaveDamping,
  "roll-damping": (rates) => rates.rollDamping,
  contact: () => ON_ROAD,
  platform: () => ON_ROAD,
};

const WHEEL: Readonly<Record<string, (wheel: WheelAtRest) => Figure>> = {
  "wheel-load": ({ load }) => load,
  "wheel-travel": ({ travel }) => travel,
  camber: ({ camber }) => camber,
  toe: ({ toe }) => toe,
};

/** What is measured in swept volume has no figure in newtons. */
const ofVolume = ({ measure, path }: ElementFigures, why: string): Absent | undefined =>
  measure === "volume" ? absent(`${path} works on swept volume: its ${why}`) : undefined;

const ELEMENT: Readonly<Record<string, (element: ElementFigures) => Figure>> = {
  "motion-ratio": ({ motionRatio, path }) => motionRatio ?? absent(`${path} is not a corner element`),
  rate: (element) => ofVolume(element, "rate is a pressure for each volume") ?? element.rate,
  load: (element) => ofVolume(element, "load is its pressure") ?? element.staticLoad,
  pressure: ({ fluid, path }) => fluid?.pressure ?? absent(`${path} has neither gas nor oil that is worked out`),
  deflection: (element) => ofVolume(element, "deflection is a volume of oil") ?? element.deflection,
};

/** Figures that exist under a load only. */
const CASE_ONLY = new Set(["load-transfer-front", "downforce-front", "roll-angle", "roll-gradient", "pitch-angle"]);

const caseOnly = (name: string): Absent => absent(`${name} exists in a load case only`);

const LEAKS = [
  ["-finite-leak", ({ finite }: Leak) => finite],
  ["-rate-leak", ({ rate }: Leak) => rate],
  ["-leak", ({ firstOrder }: Leak): Figure => firstOrder],
] as const;

/** `heave-leak` and its like: of the mode that the element leaks into. */
function leakFigure(element: ElementFigures, name: string): Figure | undefined {
  const ending = LEAKS.find(([text]) => name.endsWith(text));
  if (ending === undefined) return undefined;
  const mode = name.slice(0, -ending[0].length);
  const { leak, path } = element;
  if (element.for.includes(mode)) return absent(`${path} is for ${mode}, so that nothing of it leaks there`);
  if (leak === undefined) return absent(`${path} is for every mode that it could leak into`);
  if (isAbsent(leak)) return leak;
  return leak.mode === mode ? ending[1](leak) : absent(`${mode} is not what ${path} leaks into`);
}

function sensitivityFigure(element: ElementFigures, name: string): Figure | undefined {
  const { sensitivity, path } = element;
  if (!name.endsWith("-sensitivity")) return undefined;
  if (isAbsent(sensitivity)) return sensitivity;
  const swept = ofVolume(element, "sensitivity is an area");
  if (swept !== undefined) return swept;
  const mode = name.slice(0, -"-sensitivity".length);
  const found = Object.entries(sensitivity).find(([word]) => word === mode);
  return found?.[1] ?? absent(`${path} has no sensitivity of the name ${mode}`);
}

const elementFigure = (element: ElementFigures, name: string): Figure | undefined =>
  Object.hasOwn(ELEMENT, name)
    ? ELEMENT[name]?.(element)
    : (sensitivityFigure(element, name) ?? leakFigure(element, name));

const unknown = (path: readonly string[]): Absent => absent(`${path.join(".")} is no figure that is computed`);

function ofElement(elements: readonly ElementFigures[], paths: readonly string[], name: string): Figure | undefined {
  const values = elements.filter(({ path }) => paths.includes(path)).map((element) => elementFigure(element, name));
  const [first, second] = values;
  return first === undefined || second === undefined ? first : mean(first, second);
}

/** A figure of one axle; `rest` is what follows `front.` or `rear.`. */
function ofAxle(analysis: AxleAnalysis, axle: string, rest: readonly string[]): Figure | undefined {
  const [first, second, third] = rest;
  const side = first === "left" || first === "right" ? first : undefined;
  if (side !== undefined && second !== undefined) {
    if (third !== undefined) return ofElement(analysis.elements, [`${axle}.${side}.${second}`], third);
    return Object.hasOwn(WHEEL, second) ? WHEEL[second]?.(analysis.atRest[side]) : undefined;
  }
  if (first === undefined || third !== undefined) return undefined;
  if (second !== undefined) {
    return ofElement(
      analysis.elements,
      [`${axle}.${first}`, `${axle}.left.${first}`, `${axle}.right.${first}`],
      second,
    );
  }
  if (first === "ride-height") return analysis.atRest.rideHeight;
  if (Object.hasOwn(AXLE, first)) return AXLE[first]?.(analysis.rates);
  const wheel = Object.hasOwn(WHEEL, first) ? WHEEL[first] : undefined;
  return wheel === undefined ? undefined : mean(wheel(analysis.atRest.left), wheel(analysis.atRest.right));
}

/** Front right and rear left over all four. */
function crossWeight({ axles: { front, rear } }: Axles): Figure {
  if (front === undefined || rear === undefined) return absent("the car has one axle only");
  const loads: number[] = [];
  for (const { load } of [front.atRest.left, front.atRest.right, rear.atRest.left, rear.atRest.right]) {
    if (isAbsent(load)) return load;
    loads.push(load);
  }
  const [fl = 0, fr = 0, rl = 0, rr = 0] = loads;
  return (fr + rl) / (fl + fr + rl + rr);
}

/** The figure that a path names at static trim, SI; absent with the reason where there is none. */
export function figureAtPath(car: Axles, path: string): Figure {
  const segments = path.split(".");
  const [first = "", ...rest] = segments;
  if (CASE_ONLY.has(first)) return caseOnly(first);
  if (motionAt(path) !== undefined) return OF_MOVING_CAR;
  if (first === "roll-stiffness-front")
    return car.axles.front?.rates.rollStiffnessShare ?? absent("the car has no front axle");
  if (first === "cross-weight" && rest.length === 0) return crossWeight(car);
  if (first === "front" || first === "rear") {
    const analysis = car.axles[first];
    return analysis === undefined
      ? absent(`the car has no ${first} axle`)
      : (ofAxle(analysis, first, rest) ?? unknown(segments));
  }
  const [name] = rest;
  if (name === "clearance") return caseOnly(path);
  return (name === undefined ? undefined : ofElement(car.elements, [first], name)) ?? unknown(segments);
}
