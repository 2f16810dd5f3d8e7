/** Every figure of one axle: puts the analyses of an axle together, each of which knows only its own. */
import type { Deflection, Element } from "../elements/element.js";
import type { AxleMechanism } from "../elements/mechanism.js";
import { absent, bindsReason, isAbsent } from "./absent.js";
import { pathsFromRest } from "./along.js";
import { atRest } from "./at-rest.js";
import { axleRoll } from "./axle-roll.js";
import { contributions } from "./contributions.js";
import { elementFigures, elementWithout } from "./element-figures.js";
import { axleRates } from "./rates.js";
import { reachFigures } from "./reach.js";
import type { Absent, AxleAnalysis, ElementFigures } from "./results.js";
import { axleGrid, type AxleStates, axleStates, type Grid, isBound } from "./states.js";
import { trimmedByRods } from "./rod-trim.js";
import { trimAxle } from "./trim.js";

/** Deflections at rest, of every element that has one. */
function deflectionsAtRest(mechanism: AxleMechanism, { rest }: AxleStates): Map<Element, Deflection> {
  const found = new Map<Element, Deflection>();
  for (const element of mechanism.elements) {
    const d = element.connection?.deflection(rest);
    if (d !== undefined && !("kind" in d)) found.set(element, d);
  }
  return found;
}

/** What stands beside an element of the same path is told with it. */
const told = ({ elements }: AxleMechanism): readonly Element[] => elements.filter(({ part }) => part === undefined);

/** An axle that does not even stand at rest: nothing can be said of it but why. */
function nothing(mechanism: AxleMechanism, why: Absent): AxleAnalysis {
  const parts = { stiffness: new Map(), damping: new Map(), stiffnessSum: why.reason, dampingSum: why.reason };
  return {
    rates: axleRates(mechanism, parts, { results: why, seats: new Map() }),
    elements: told(mechanism).map((element) => elementWithout(element, why)),
    reach: [],
    atRest: atRest(mechanism, undefined),
    problems: mechanism.problems,
  };
}

/** What the points of an axle alone decide, whatever its rates are: for whoever comes back with other ones. */
export interface GeometryFigures {
  readonly grid: Grid;
  readonly reach: AxleAnalysis["reach"];
}

export function geometryFigures(mechanism: AxleMechanism): GeometryFigures {
  const grid = axleGrid(mechanism);
  const states = axleStates(mechanism, grid);
  return { grid, reach: isBound(states) ? [] : reachFigures(mechanism, states) };
}

/** Where stages are used up in roll: there the moment has a knee. */
function rollsOf(elements: readonly ElementFigures[]): readonly number[] {
  return elements.flatMap(({ events }) => {
    if (events === undefined || isAbsent(events)) return [];
    return events.flatMap(({ where }) => (where?.mode === "roll" ? [where.travel] : []));
  });
}

/**
 * Everything computed for one axle at static trim and over its envelope.
 *
 * Positions are solved once a travel and shared by all analyses.
 *
 * @param geometry what an axle of the same geometry gave before
 */
export function analyseAxle(written: AxleMechanism, geometry = geometryFigures(written)): AxleAnalysis {
  const byRods = written.trim.by === "push-rod" ? trimmedByRods(written) : undefined;
  const why = byRods !== undefined && isAbsent(byRods) ? byRods : undefined;
  const set = byRods !== undefined && !isAbsent(byRods) ? byRods : undefined;
  const mechanism = set?.mechanism ?? written;
  const { grid, reach } = mechanism === written ? geometry : geometryFigures(mechanism);
  const states = axleStates(mechanism, grid);
  if (isBound(states)) return nothing(mechanism, absent(bindsReason(states.why, states.side)));
  const rest = deflectionsAtRest(mechanism, states);
  const seated = why === undefined ? trimAxle(mechanism, states.rest, rest) : { results: why, seats: new Map() };
  const trim = { ...seated, rods: set?.set ?? mechanism.kept?.rods };
  const parts = contributions(mechanism, rest, trim);
  const context = { mechanism, states, rest, trim, parts, paths: pathsFromRest(mechanism, states) };
  const elements = told(mechanism).map((element) => elementFigures(element, context));
  return {
    rates: axleRates(mechanism, parts, trim),
    elements,
    roll: axleRoll(mechanism, states, trim, rollsOf(elements)),
    reach,
    atRest: atRest(mechanism, states.rest),
    problems: mechanism.problems,
  };
}
