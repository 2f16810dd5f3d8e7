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
import { elementsOf, type CheckedElement } from "../../axle-parts.js";
import type { CheckedCar, RuleContext } from "../../context.js";
import { oneEdit } from "../../edits.js";
import type { Finding, Fix, Rule } from "../../finding.js";
import { placeFor, standsInBase } from "../../where.js";
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

export const needlessClaim: Rule = { meta, check, fix };

function* check(context: RuleContext): Generator<Finding> {
  const told = new Set<string>();
  for (const car of context.cars) {
    for (const element of elementsOf(car)) {
      for (const mode of element.figures.idleIn) {
        if (standsInBase(car, (base) => idles(base, element.model.path, mode))) continue;
        const claim = element.model.forOrigins[element.model.for.findIndex((one) => one === mode)];
        const place = claim && placeFor(context, car, claim, element.model);
        if (place === undefined || told.has(`${place.start} ${mode}`)) continue;
        told.add(`${place.start} ${mode}`);
        yield findingOf(context, car, element, mode, place);
      }
    }
  }
}

const idles = (car: CheckedCar, path: string, mode: string): boolean =>
  elementsOf(car).some(({ model, figures }) => model.path === path && figures.idleIn.includes(mode));

function findingOf(
  context: RuleContext,
  car: CheckedCar,
  { model, figures }: CheckedElement,
  mode: string,
  place: { readonly start: number; readonly end: number },
): Finding {
  const moving = movedIn(figures.sensitivity);
  const instead = moving.length === 0 ? "no mode of its axle moves it" : `it is moved in ${all(moving)}`;
  const data: Idle = { car: car.model.setup ?? car.model.name, path: model.path, mode };
  return {
    rule: meta.id,
    severity: meta.severity,
    uri: context.uri,
    span: { start: place.start, end: place.end },
    message: `${model.name} is said to be for ${mode}, but ${mode} hardly moves it (${instead}), so it does nothing there. Join it to other eyes, or take the claim out.`,
    related: [],
    tags: [],
    data,
  };
}

function movedIn(motion: CheckedElement["figures"]["sensitivity"]): readonly string[] {
  if ("kind" in motion) return [];
  const largest = Math.max(Math.abs(motion.heave), Math.abs(motion.roll));
  return (["heave", "roll"] as const).filter((mode) => largest > 1e-9 && Math.abs(motion[mode]) > 0.02 * largest);
}

/** Takes the claim out, or says instead what it is moved in where it is the only one. */
function fix(finding: Finding, context: RuleContext): readonly Fix[] {
  const { car: name, path, mode } = finding.data as Idle;
  const car = context.cars.find(({ model }) => (model.setup ?? model.name) === name);
  const element = car && elementsOf(car).find(({ model }) => model.path === path);
  if (element === undefined) return [];
  const { model, figures } = element;
  const [first] = model.forOrigins;
  const last = model.forOrigins.at(-1);
  if (first === undefined || last === undefined || context.textOf(first.uri) === undefined) return [];
  const kept = model.for.filter((one) => one !== mode && !figures.idleIn.includes(one));
  const claims = kept.length > 0 ? kept : movedIn(figures.sensitivity);
  if (claims.length === 0) return [];
  const span = { start: first.start, end: last.end };
  return [
    oneEdit(`Say that ${model.name} is for ${all(claims)}`, first.uri, span, claims.join(" and "), { preferred: true }),
  ];
}
