/**
 * The figure that a dotted path names in a load case: `load-transfer-front`, `front.ride-height`, `front.left.wheel-load`.
 * The names are those of grammar/vocabulary/figures.ts; a test holds both together.
 *
 * Where a figure exists once a wheel or side and the path names none, it is the mean of both.
 */
import { absent } from "./absent.js";
import { motionAt, OF_MOVING_CAR } from "./moving-paths.js";
import type { CaseAxle, CaseElement, CaseFigures, CaseResult, CaseWheel } from "./equilibrium/results.js";
import type { Figure } from "./results.js";

const mean = (a: Figure, b: Figure): Figure => (typeof a !== "number" ? a : typeof b !== "number" ? b : (a + b) / 2);

const CAR: Readonly<Record<string, (found: CaseFigures) => Figure>> = {
  "load-transfer-front": ({ loadTransferFront }) => loadTransferFront,
  "roll-stiffness-front": ({ rollStiffnessFront }) => rollStiffnessFront,
  "downforce-front": ({ downforceFront }) => downforceFront,
  "roll-angle": ({ roll }) => roll,
  "roll-gradient": ({ rollGradient }) => rollGradient,
  "pitch-angle": ({ pitch }) => pitch,
};

const ON_ROAD = absent("it is told of a car on a road only");

const AXLE: Readonly<Record<string, (axle: CaseAxle) => Figure>> = {
  "ride-height": ({ rideHeight }) => rideHeight,
  "heave-rate": ({ heaveRate }) => heaveRate,
  "roll-stiffness": ({ rollStiffness }) => rollStiffness,
  "wheel-rate": ({ wheelRate }) => mean(wheelRate.left, wheelRate.right),
  "heave-ride-rate": ({ rideRate }) => rideRate.heave,
  "roll-ride-stiffness": ({ rideRate }) => rideRate.roll,
  "wheel-ride-rate": ({ rideRate }) => rideRate.single,
  "heave-damping": ({ heaveDamping }) => heaveDamping,
  "roll-damping": ({ rollDamping }) => rollDamping,
  contact: () => ON_ROAD,
  platform: () => ON_ROAD,
};

const WHEEL: Readonly<Record<string, (wheel: CaseWheel) => Figure>> = {
  "wheel-load": ({ load }) => load,
  "wheel-travel": ({ travel }) => travel,
  camber: ({ camber }) => camber,
  toe: ({ toe }) => toe,
};

const ofVolume = ({ path, measure }: CaseElement, figure: Figure): Figure =>
  measure === "volume" ? absent(`${path} works on swept volume: it has a pressure instead`) : figure;

const ELEMENT: Readonly<Record<string, (element: CaseElement) => Figure>> = {
  load: (element) => ofVolume(element, element.force),
  deflection: (element) => ofVolume(element, element.deflection),
  rate: (element) => ofVolume(element, element.rate ?? absent(`${element.path} holds its length`)),
  pressure: ({ pressure, path }) => pressure ?? absent(`${path} has neither gas nor oil that is worked out`),
  "heave-sensitivity": (element) => ofVolume(element, element.sensitivity.heave),
  "roll-sensitivity": (element) => ofVolume(element, element.sensitivity.roll),
  "pitch-sensitivity": (element) => ofVolume(element, element.sensitivity.pitch),
  "warp-sensitivity": (element) => ofVolume(element, element.sensitivity.warp),
};

const of = <T>(table: Readonly<Record<string, T>>, name: string): T | undefined =>
  Object.hasOwn(table, name) ? table[name] : undefined;

/** Both sides of a corner element, where the path names none. */
function ofElements({ elements }: CaseFigures, paths: readonly string[], name: string): Figure | undefined {
  const read = of(ELEMENT, name);
  if (read === undefined) return undefined;
  const [first, second] = elements.filter(({ path }) => paths.includes(path)).map(read);
  return first === undefined || second === undefined ? first : mean(first, second);
}

function ofAxle(found: CaseFigures, axle: "front" | "rear", rest: readonly string[]): Figure | undefined {
  const [first = "", second, third] = rest;
  const wheels = found.wheels.filter((wheel) => wheel.axle === axle);
  if ((first === "left" || first === "right") && second !== undefined) {
    if (third !== undefined) return ofElements(found, [`${axle}.${first}.${second}`], third);
    const wheel = wheels.find(({ side }) => side === first);
    return wheel && of(WHEEL, second)?.(wheel);
  }
  if (second !== undefined)
    return ofElements(found, [`${axle}.${first}`, `${axle}.left.${first}`, `${axle}.right.${first}`], second);
  const read = of(WHEEL, first);
  const [left, right] = wheels;
  if (read !== undefined && left !== undefined && right !== undefined) return mean(read(left), read(right));
  return of(AXLE, first)?.(found[axle]);
}

/** The figure that a path names in a case, SI; absent with the reason where there is none. */
export function figureAtCase(result: CaseResult, path: string): Figure {
  if (result.kind === "absent") return result;
  if (result.kind === "no-equilibrium") return absent(`the car has no equilibrium in ${result.name}: ${result.words}`);
  if (motionAt(path) !== undefined) return OF_MOVING_CAR;
  const segments = path.split(".");
  const [first = "", ...rest] = segments;
  const isAxle = first === "front" || first === "rear";
  const found = isAxle
    ? ofAxle(result, first, rest)
    : rest.length === 0
      ? of(CAR, first)?.(result)
      : rest[0] === "clearance"
        ? result.clearances.find(({ name }) => name === first)?.height
        : ofElements(result, [first], rest[0] ?? "");
  return found ?? absent(`${path} is a figure at rest, without a case`);
}
