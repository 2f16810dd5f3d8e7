/**
 * An axle has no spring, or no damper, in a mode: nothing holds it there, or nothing calms it.
 *
 * Corner springs and dampers serve heave and roll both; without them, heave and roll elements have to
 * serve each mode on its own, and together they then carry a single wheel. A stop that only works
 * at the end of the travel serves nothing.
 *
 * ```crank wrong
 * use "axle.crank"
 *
 * setup undamped from plover {
 *   remove front.side
 *   remove front.roll-damper
 * }
 * ```
 *
 * ```crank right
 * use "axle.crank"
 *
 * setup lighter from plover {
 *   front.side.damping 2.1 N*s/mm
 * }
 * ```
 */
import type { ElementFigures } from "../../../analyses/results.js";
import type { ElementModel } from "../../../model/car.js";
import { axlesOf, type CheckedAxle } from "../../axle-parts.js";
import type { CheckedCar, RuleContext } from "../../context.js";
import type { Finding, Rule } from "../../finding.js";
import { placeFor, standsInBase } from "../../where.js";

const meta = {
  id: "unserved-mode",
  title: "A mode has no spring or no damper",
  cost: "solved",
  severity: "warning",
} as const;

type Mode = "heave" | "roll";
type Service = "spring" | "damper";

interface Gap {
  readonly axle: "front" | "rear";
  readonly mode: Mode;
  readonly service: Service;
}

/** What serves as a spring: anything that pushes back with travel from design on. */
const springs: ReadonlySet<ElementModel["kind"]> = new Set([
  "spring",
  "anti-roll-bar",
  "gas-spring",
  "hydraulic-link",
  "actuator",
]);
/** A motion below this share of the element's largest one is none that it serves. */
const SERVES = 0.1;

export const unservedMode: Rule = { meta, check };

function* check(context: RuleContext): Generator<Finding> {
  for (const car of context.cars) {
    for (const gap of gapsOf(car)) {
      if (standsInBase(car, (base) => gapsOf(base).some((other) => same(gap, other)))) continue;
      const axle = car.model.axles[gap.axle];
      const place = axle && placeFor(context, car, axle.nameOrigin);
      if (place !== undefined) yield findingOf(context, place, gap);
    }
  }
}

const same = (a: Gap, b: Gap): boolean => a.axle === b.axle && a.mode === b.mode && a.service === b.service;

function gapsOf(car: CheckedCar): readonly Gap[] {
  const joining = car.model.elements;
  return axlesOf(car).flatMap((axle) =>
    (["heave", "roll"] as const).flatMap((mode) =>
      (["spring", "damper"] as const)
        .filter(
          (service) => !isServed(axle, mode, service) && !joining.some((element) => joins(element, mode, service)),
        )
        .map((service) => ({ axle: axle.axle.name, mode, service })),
    ),
  );
}

/** An element between the axles serves both of them in its mode; pitch is heave of either axle. */
function joins({ kind, for: claims }: ElementModel, mode: Mode, service: Service): boolean {
  const modes: readonly string[] = mode === "heave" ? ["heave", "pitch"] : ["roll", "warp"];
  return provides(kind, service) && claims.some((claim) => modes.includes(claim));
}

function isServed({ axle, analysis }: CheckedAxle, mode: Mode, service: Service): boolean {
  return axle.elements.some((element) => {
    if (!provides(element.kind, service)) return false;
    const figures = analysis.elements.find(({ path }) => path === element.path);
    return servesIn(element, figures, mode);
  });
}

function provides(kind: ElementModel["kind"], service: Service): boolean {
  return service === "spring" ? springs.has(kind) : kind === "damper" || kind === "hydraulic-link";
}

/** By its motion where that is known, else by its claim. */
function servesIn(element: ElementModel, figures: ElementFigures | undefined, mode: Mode): boolean {
  const motion = figures?.sensitivity;
  if (motion === undefined || "kind" in motion)
    return element.for.some((claim) => claim === mode || claim === "corner");
  const largest = Math.max(Math.abs(motion.heave), Math.abs(motion.roll));
  return largest > 0 && Math.abs(motion[mode]) >= SERVES * largest;
}

function findingOf(context: RuleContext, place: { readonly start: number; readonly end: number }, gap: Gap): Finding {
  const why =
    gap.service === "spring" ? `so that nothing carries or centres it there` : `so that it swings on undamped there`;
  return {
    rule: meta.id,
    severity: meta.severity,
    uri: context.uri,
    span: { start: place.start, end: place.end },
    message: `The ${gap.axle} axle has no ${gap.service} that works in ${gap.mode}, ${why}. Add one for ${gap.mode}, or one for corner, which serves heave and roll.`,
    related: [],
    tags: [],
    data: gap,
  };
}
