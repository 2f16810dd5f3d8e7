/**
 * The kerbs that a car is taken over, each when it is asked for and kept as long as this is.
 *
 * Invariant: nothing is assembled, solved or integrated for a car whose kerbs nobody asks for.
 */
import { AT_REST, type LoadCase } from "../../elements/loaded-car.js";
import type { KerbAsked } from "../../elements/kerb-asked.js";
import { absent, isAbsent } from "../absent.js";
import type { CaseSolver } from "../equilibrium/case-solver.js";
import { whyNotWords } from "../equilibrium/words.js";
import type { Absent } from "../results.js";
import type { RideNumbers } from "../whole-car/linearise.js";
import { type Shape, SHAPES } from "./bump.js";
import { type StrikeFigures, strikeFigures } from "./figures.js";
import { type Kerb, type Moment, strike } from "./strike.js";

export interface KerbStrike {
  readonly kind: "strike";
  readonly name: string;
  readonly kerb: Kerb;
  /** Undefined for straight ahead. */
  readonly case: string | undefined;
  readonly figures: StrikeFigures;
  readonly moments: readonly Moment[];
  readonly steps: number;
}

export interface CarKerbs {
  readonly names: readonly string[];
  /** Undefined where the car has no kerb of that name. */
  at(name: string): KerbStrike | Absent | undefined;
}

/** Where nothing is written: common practice, no published source. */
const CONTACT = 0.12;
const AFTER = 0.6;

const isShape = (text: string): text is Shape => SHAPES.some((shape) => shape === text);

function kerbOf(asked: KerbAsked, speed: number | undefined): Kerb | Absent {
  const { name, height, length, shape = "half-sine", contact = CONTACT, wheels, axles, after = AFTER } = asked;
  if (height === undefined || length === undefined) return absent(`the kerb ${name} has no height or no length`);
  if (speed === undefined || !(speed > 0)) return absent(`the kerb ${name} has no speed, and no case that has one`);
  if (!isShape(shape)) return absent(`${shape} is no shape of a kerb`);
  return {
    shape,
    height,
    length,
    contact,
    speed,
    wheels: wheels === "left" || wheels === "right" ? wheels : "both",
    axle: axles === "front" || axles === "rear" ? axles : "both",
    after,
  };
}

const STOPPED = {
  field: "a wheel or an element comes to the end of its reach",
  "too-short": "the forces change too sharply to be followed",
  "too-many": "it takes too many steps",
} as const;

export function carKerbs(
  kerbs: readonly KerbAsked[],
  cases: readonly LoadCase[],
  numbers: RideNumbers,
  solver: CaseSolver,
): CarKerbs {
  const known = new Map<string, KerbStrike | Absent>();
  const found = (asked: KerbAsked): KerbStrike | Absent => {
    const own = asked.case === undefined ? undefined : cases.find(({ name }) => name === asked.case);
    if (asked.case !== undefined && own === undefined) return absent(`the car has no case ${asked.case}`);
    const kerb = kerbOf(asked, asked.speed ?? own?.speed);
    if (isAbsent(kerb)) return kerb;
    const ready = solver.ready();
    if (isAbsent(ready)) return ready;
    const outcome = solver.solve({ ...(own ?? AT_REST), speed: kerb.speed });
    if (outcome.kind === "absent") return outcome;
    if (outcome.kind === "not-converged")
      return absent(`the car has no equilibrium before it: ${whyNotWords(outcome.reason)}`);
    const pass = strike(ready, outcome, numbers, kerb);
    if (isAbsent(pass)) return pass;
    if (pass.kind === "not-converged")
      return absent(`the pass cannot be followed beyond ${(1000 * pass.at).toFixed(1)} ms: ${STOPPED[pass.why]}`);
    const { moments, steps } = pass;
    const figures = strikeFigures(ready.standing, moments);
    return { kind: "strike", name: asked.name, kerb, case: asked.case, figures, moments, steps };
  };
  return {
    names: kerbs.map(({ name }) => name),
    at(name) {
      const asked = kerbs.find((kerb) => kerb.name === name);
      if (asked === undefined) return undefined;
      const before = known.get(name);
      if (before !== undefined) return before;
      const result = found(asked);
      known.set(name, result);
      return result;
    },
  };
}
