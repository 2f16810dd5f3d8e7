/**
 * An element says that it is for a mode in which its connection hardly moves it: below 2 % of what
 * it moves in the mode that moves it most. It does nothing there, whatever its rate.
 *
 * Most often two ends are on the wrong eyes: between like eyes of the two rockers an element is worked
 * in heave and only swings in roll; from a high eye to the other side's low eye it is the other way about.
 *
 * ```crank wrong
 * use "axle.crank"
 *
 * setup mixed-up from plover {
 *   front.roll-damper.between left.rocker.roll-high and right.rocker.roll-high
 * }
 * ```
 *
 * ```crank right
 * use "axle.crank"
 *
 * setup sorted from plover {
 *   front.roll-damper.between left.rocker.roll-low and right.rocker.roll-high
 * }
 * ```
 */
import { elementAt, elementsOf, type CheckedElement } from "../../axle-parts.js";
import type { CheckedCar, RuleContext } from "../../context.js";
import type { AxleMode } from "../../coupling/motion.js";
import { mends } from "../../coupling/proof.js";
import { rejoined } from "../../coupling/rejoin.js";
import { oneEdit } from "../../edits.js";
import type { Finding, Fix, Rule } from "../../finding.js";
import { isInside } from "../../setup-lines.js";
import { nameOf, placeFor, standsInBase } from "../../where.js";
import { all } from "../../wording.js";

const meta = {
  id: "needless-claim",
  title: "An element is not moved in a mode that it is for",
  cost: "solved",
  severity: "warning",
} as const;

interface Idle {
  readonly car: string;
  readonly path: string;
  readonly mode: string;
}

const modes = ["heave", "roll"] as const;

export const needlessClaim: Rule = { meta, check, fix };

function* check(context: RuleContext): Generator<Finding> {
  const told = new Set<string>();
  for (const car of context.cars) {
    for (const element of elementsOf(car)) {
      for (const mode of element.figures.idleIn) {
        if (standsInBase(car, (base) => idles(base, element.model.path, mode))) continue;
        const finding = findingOf(context, car, element, mode);
        // Left and right of a corner element stand in one place: one finding is enough.
        const key = `${finding.span.start} ${element.model.name} ${mode}`;
        if (told.has(key)) continue;
        told.add(key);
        yield finding;
      }
    }
  }
}

const idles = (car: CheckedCar, path: string, mode: string): boolean =>
  elementAt(car, path)?.figures.idleIn.includes(mode) === true;

function findingOf(context: RuleContext, car: CheckedCar, { model, figures }: CheckedElement, mode: string): Finding {
  const claim = model.forOrigins[model.for.findIndex((one) => one === mode)];
  const joined = model.connection?.origin;
  const places = [claim, joined].filter((place) => place !== undefined);
  const place = placeFor(context, car, { places, element: model });
  const moving = movedIn(figures.sensitivity);
  const instead = moving.length === 0 ? "no mode of its axle moves it" : `it is moved in ${all(moving)}`;
  const data: Idle = { car: nameOf(car), path: model.path, mode };
  return {
    rule: meta.id,
    severity: meta.severity,
    uri: context.uri,
    span: { start: place.start, end: place.end },
    message: `${model.name} is said to be for ${mode}, but ${mode === "corner" ? "its own wheel" : mode} hardly moves it (${instead}), so it does nothing there. Join it to other eyes, or take the claim out.`,
    related: [],
    tags: [],
    data,
  };
}

function movedIn(motion: CheckedElement["figures"]["sensitivity"]): readonly AxleMode[] {
  if ("kind" in motion) return [];
  const largest = Math.max(Math.abs(motion.heave), Math.abs(motion.roll));
  return modes.filter((mode) => largest > 1e-9 && Math.abs(motion[mode]) > 0.02 * largest);
}

/** Joins it so that its mode moves it; else tells the claim as the motion is. */
function fix(finding: Finding, context: RuleContext): readonly Fix[] {
  const { car: name, path, mode } = finding.data as Idle;
  const car = context.cars.find((one) => nameOf(one) === name);
  const element = car && elementAt(car, path);
  if (car === undefined || element === undefined) return [];
  const offered = [...otherEyes(context, car, element), ...otherClaim(car, element, mode)];
  return offered.map((one, index) => ({ ...one, preferred: index === 0 }));
}

/** An element for one mode of its axle that is joined as one for the other mode is. */
function otherEyes(context: RuleContext, car: CheckedCar, element: CheckedElement): readonly Fix[] {
  const [into, more] = modes.filter((mode) => !element.model.for.includes(mode));
  if (into === undefined || more !== undefined) return [];
  return rejoined({ context, car, element, into, proves: (fixed) => mends(context, fixed, car, element.model.path) });
}

/** None where a set-up inherits the claim: what it derives from is moved as it says. */
function otherClaim({ model: car }: CheckedCar, { model, figures }: CheckedElement, mode: string): readonly Fix[] {
  const [first] = model.forOrigins;
  const last = model.forOrigins.at(-1);
  if (first === undefined || last === undefined || !isInside(first, car.origin)) return [];
  const kept = model.for.filter((one) => one !== mode && !figures.idleIn.includes(one));
  const claims = kept.length > 0 ? kept : movedIn(figures.sensitivity);
  if (claims.length === 0) return [];
  const span = { start: first.start, end: last.end };
  return [oneEdit(`Say that ${model.name} is for ${all(claims)}`, first.uri, span, claims.join(" and "))];
}
