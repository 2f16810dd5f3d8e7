/**
 * An element that is for one mode is moved in another as well. Three figures say how much: *at design*,
 * its motion in the unclaimed mode over its motion in its own; *over the travel*, the largest deflection
 * that a pure motion in the unclaimed mode causes over its travel in its own; *of the rate*, the share of
 * the unclaimed mode's stiffness or damping that it adds or takes away.
 *
 * A coupled element makes every adjustment of one mode disturb the other: stiffer roll damping that also
 * damps heave costs tyre load over bumps. Above 2 % this is information, above 5 % a warning; `checks` in
 * the car sets other limits.
 *
 * The fixes are computed: the smallest move of an eye in the rocker's plane after which the element only
 * swings in the unclaimed mode, an eye of its own where others share it, the paired eyes swapped, the other
 * side made the mirror image again, or the claim told as it is.
 *
 * ```crank wrong
 * use "axle.crank"
 *
 * setup leaking from plover {
 *   front.rocker.roll-low (45, 183, 348) mm
 * }
 * ```
 *
 * ```crank right
 * use "axle.crank"
 *
 * setup clear from plover {
 *   front.ride-height 31 mm
 * }
 * ```
 */
import type { Leak } from "../../../analyses/results.js";
import type { Origin } from "../../../model/origin.js";
import { type CheckedElement, elementAt, elementsOf } from "../../axle-parts.js";
import type { CheckedCar, RuleContext } from "../../context.js";
import { eyeEndsOf } from "../../coupling/eye-ends.js";
import { isByMotion, leakOf, leakWords, rateWords } from "../../coupling/leak.js";
import { mirrorFixes } from "../../coupling/mirror-side.js";
import { leaksInto } from "../../coupling/motion.js";
import { eyeMoves } from "../../coupling/move-eye.js";
import { mends } from "../../coupling/proof.js";
import { redeclaration } from "../../coupling/redeclare.js";
import { rejoined } from "../../coupling/rejoin.js";
import { type LeakSeverity, severityOf } from "../../coupling/severity.js";
import { placedRocker } from "../../coupling/placed-rocker.js";
import type { Finding, Fix, Rule } from "../../finding.js";
import { nameOf, placeFor, standsInBase } from "../../where.js";
import { all } from "../../wording.js";

const meta = {
  id: "coupling",
  title: "An element is moved in a mode that it is not for",
  cost: "solved",
  severity: "warning",
} as const;

interface Coupled {
  readonly car: string;
  readonly path: string;
}

export const coupling: Rule = { meta, check, fix };

function* check(context: RuleContext): Generator<Finding> {
  const told = new Set<string>();
  for (const car of context.cars) {
    for (const element of elementsOf(car)) {
      const severity = severityOf(car, element);
      const leak = leakOf(element.figures);
      if (severity === undefined || leak === undefined) continue;
      if (standsInBase(car, (base) => isAsBad(base, element.model.path, severity))) continue;
      const place = placeFor(context, car, { places: placesOf(element), element: element.model });
      // Left and right of a corner element stand in one place: one finding is enough.
      const key = `${place.start} ${element.model.name}`;
      if (told.has(key)) continue;
      told.add(key);
      yield findingOf(context, car, element, leak, severity, place);
    }
  }
}

function isAsBad(base: CheckedCar, path: string, severity: LeakSeverity): boolean {
  const element = elementAt(base, path);
  const there = element && severityOf(base, element);
  return there === "warning" || there === severity;
}

/** The element, the lines of the eyes that it is joined to, and those of the rockers that they are on. */
function placesOf({ model, axle }: CheckedElement): readonly Origin[] {
  const ends = eyeEndsOf(model.connection);
  const rockers = ends.flatMap(({ side }) => (axle === undefined ? [] : (placedRocker(axle, side)?.statements ?? [])));
  return [model.nameOrigin, ...ends.map(({ point }) => point.statement), ...rockers];
}

function findingOf(
  context: RuleContext,
  car: CheckedCar,
  element: CheckedElement,
  leak: Leak,
  severity: LeakSeverity,
  place: { readonly start: number; readonly end: number },
): Finding {
  const { model } = element;
  const data: Coupled = { car: nameOf(car), path: model.path };
  return {
    rule: meta.id,
    severity,
    uri: context.uri,
    span: { start: place.start, end: place.end },
    message: messageFor(car, element, leak),
    related: relatedOf(element),
    tags: [],
    data,
  };
}

function messageFor({ model: car }: CheckedCar, { model, figures }: CheckedElement, leak: Leak): string {
  const other = leak.mode === "other-wheel" ? "the other wheel" : leak.mode;
  const own = all(model.for);
  if (!isByMotion(leak, car.leakLimits.information))
    return `${model.name} is for ${own} and ${other} hardly moves it, but it ${rateWords(leak, figures)}${byLoad(leak, figures)}. Count it in where ${other} is set, or say that it is for both.`;
  return `${model.name} is for ${own}, but ${other} moves it too: ${leakWords(leak, figures)}. Adjusting ${own} with it disturbs ${other}. ${wayOut(model)}, or say that it is for both.`;
}

/** What is measured in swept volume is put right by areas as well as by eyes. */
const wayOut = ({ connection }: CheckedElement["model"]): string =>
  connection?.kind === "cylinders" ? "Match the areas and the travels of its cylinders" : "Move an eye";

/** F∇²s: what only swings still pushes sideways with the load that it carries. */
const byLoad = ({ firstOrder }: Leak, { kind }: CheckedElement["figures"]): string =>
  kind !== "damper" && firstOrder < 1e-3 ? ", by the load that it carries as it swings" : "";

function relatedOf({ model }: CheckedElement): Finding["related"] {
  const seen = new Set<number>();
  return eyeEndsOf(model.connection).flatMap(({ eye, point: { origin } }) => {
    if (seen.has(origin.start)) return [];
    seen.add(origin.start);
    return [{ origin, message: `The eye ${eye} that it is joined to` }];
  });
}

/** Sides that differ are made alike first; then the smaller move of an eye comes before the larger one. */
function fix(finding: Finding, context: RuleContext): readonly Fix[] {
  const { car: name, path } = finding.data as Coupled;
  const car = context.cars.find((one) => nameOf(one) === name);
  const element = car && elementAt(car, path);
  if (car === undefined || element === undefined) return [];
  const proves = (fixed: Fix): boolean => mends(context, fixed, car, path);
  const into = leaksInto(element);
  const offered = [
    ...mirrorFixes(context, car, element).filter(proves),
    ...eyeMoves(context, car, element, proves),
    ...(into === undefined ? [] : rejoined({ context, car, element, into, proves })),
    ...redeclaration(car, element).filter(proves),
  ];
  return offered.map((one, index) => ({ ...one, preferred: index === 0 }));
}
