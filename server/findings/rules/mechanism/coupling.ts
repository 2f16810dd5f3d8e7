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
import { type CheckedElement, elementAt, elementsOf } from "../../axle-parts.js";
import type { CheckedCar, RuleContext } from "../../context.js";
import type { Finding, Fix, Rule } from "../../finding.js";
import { eyeMoves } from "../../coupling/move-eye.js";
import { mirrorFixes } from "../../coupling/mirror-side.js";
import { redeclaration } from "../../coupling/redeclare.js";
import { swappedEyes } from "../../coupling/swap-eyes.js";
import { largestLeak, leakOf, leakWords } from "../../coupling/leak.js";
import { placeFor, standsInBase } from "../../where.js";
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
  const told = new Set<number>();
  for (const car of context.cars) {
    for (const element of elementsOf(car)) {
      const severity = severityOf(car, element);
      const leak = leakOf(element.figures);
      if (severity === undefined || leak === undefined) continue;
      if (standsInBase(car, (base) => asBad(base, element.model.path, severity))) continue;
      const place = placeFor(context, car, element.model.nameOrigin, element.model);
      // Left and right of a corner element stand in one place: one finding is enough.
      if (place === undefined || told.has(place.start)) continue;
      told.add(place.start);
      yield findingOf(context, car, element, leak, severity, place);
    }
  }
}

type Severity = "information" | "warning";

function severityOf({ model }: CheckedCar, { figures }: CheckedElement): Severity | undefined {
  const leak = leakOf(figures);
  // An element that its own mode does not move at all is wrongly claimed rather than coupled.
  if (leak === undefined || figures.idleIn.length === figures.for.length) return undefined;
  const largest = largestLeak(leak);
  if (largest > model.leakLimits.warning) return "warning";
  return largest > model.leakLimits.information ? "information" : undefined;
}

function asBad(base: CheckedCar, path: string, severity: Severity): boolean {
  const element = elementAt(base, path);
  const there = element && severityOf(base, element);
  return there === "warning" || there === severity;
}

function findingOf(
  context: RuleContext,
  car: CheckedCar,
  element: CheckedElement,
  leak: Leak,
  severity: Severity,
  place: { readonly start: number; readonly end: number },
): Finding {
  const { model } = element;
  const data: Coupled = { car: nameOf(car), path: model.path };
  return {
    rule: meta.id,
    severity,
    uri: context.uri,
    span: { start: place.start, end: place.end },
    message: messageFor(element, leak),
    related: relatedOf(element),
    tags: [],
    data,
  };
}

function messageFor({ model, figures }: CheckedElement, leak: Leak): string {
  const other = leak.mode === "other-wheel" ? "the other wheel" : leak.mode;
  const own = all(model.for);
  return `${model.name} is for ${own}, but ${other} moves it too (${leakWords(leak, figures)}), so adjusting it for ${own} disturbs ${other}. Move an eye so that ${other} only swings it, or say that it is for both.`;
}

function relatedOf({ model }: CheckedElement): Finding["related"] {
  const ends = model.connection?.kind === "between" ? model.connection.ends : [];
  const seen = new Set<number>();
  return ends.flatMap((end) => {
    if (end.kind !== "eye" || seen.has(end.point.origin.start)) return [];
    seen.add(end.point.origin.start);
    return [{ origin: end.point.origin, message: `The eye ${end.eye} that it is joined to` }];
  });
}

function fix(finding: Finding, context: RuleContext): readonly Fix[] {
  const { car: name, path } = finding.data as Coupled;
  const car = context.cars.find((one) => nameOf(one) === name);
  const element = car && elementAt(car, path);
  if (car === undefined || element === undefined) return [];
  const proves = (fixed: Fix): boolean => isMended(context, fixed, name, path);
  const offered = [
    ...eyeMoves(context, car, element, proves),
    ...[...mirrorFixes(context, element), ...swappedEyes(context, element)].filter(proves),
    ...redeclaration(context, element),
  ];
  return offered.map((one, index) => ({ ...one, preferred: index === 0 }));
}

/** A fix is offered only if the check really passes with it, and no travel is lost by it. */
function isMended(context: RuleContext, { edits }: Fix, name: string, path: string): boolean {
  const before = context.cars.find((one) => nameOf(one) === name);
  const after = context
    .retry(edits.map(({ uri, span, newText }) => ({ uri, start: span.start, end: span.end, newText })))
    .cars.find((one) => nameOf(one) === name);
  const element = after && elementAt(after, path);
  if (before === undefined || after === undefined || element === undefined) return false;
  return (
    severityOf(after, element) === undefined && leakOf(element.figures) !== undefined && binds(after) <= binds(before)
  );
}

function binds({ analysis }: CheckedCar): number {
  const { front, rear } = analysis.axles;
  return [front, rear].flatMap((axle) => axle?.reach ?? []).reduce((sum, reach) => sum + reach.binds.length, 0);
}

const nameOf = ({ model }: CheckedCar): string => model.setup ?? model.name;
