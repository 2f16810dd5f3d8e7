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
import type { AxleRates, ByMode, ElementFigures } from "../../../analyses/results.js";
import type { AxleModel, ElementModel } from "../../../model/car.js";
import { axlesOf, type CheckedAxle } from "../../axle-parts.js";
import type { CheckedCar, RuleContext } from "../../context.js";
import type { Finding, Rule } from "../../finding.js";
import { removalOf } from "../../setup-lines.js";
import { placeFor, standsInBase } from "../../where.js";
import { all } from "../../wording.js";

const meta = {
  id: "unserved-mode",
  title: "A mode has no spring or no damper",
  cost: "solved",
  severity: "warning",
} as const;

type Mode = "heave" | "roll";
type Service = "spring" | "damper";

/** What an axle is without: one finding, be it in one mode or in both. */
interface Gap {
  readonly axle: AxleModel;
  readonly service: Service;
  readonly modes: readonly Mode[];
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
    for (const { axle, service, modes } of gapsOf(car)) {
      const own = modes.filter((mode) => !standsInBase(car, (base) => isGap(base, axle.name, service, mode)));
      if (own.length > 0) yield findingOf(context, car, { axle, service, modes: own });
    }
  }
}

const isGap = (car: CheckedCar, axle: string, service: Service, mode: Mode): boolean =>
  gapsOf(car).some((gap) => gap.axle.name === axle && gap.service === service && gap.modes.includes(mode));

function gapsOf(car: CheckedCar): readonly Gap[] {
  return axlesOf(car).flatMap((checked) =>
    (["spring", "damper"] as const).flatMap((service) => {
      const modes = (["heave", "roll"] as const).filter(
        (mode) => !servingIn(checked, mode, service).length && !isJoined(car, checked.axle.name, mode, service),
      );
      return modes.length === 0 ? [] : [{ axle: checked.axle, service, modes }];
    }),
  );
}

/** Whether an element between the axles serves one of them: by its motion there, else by its claim. */
function isJoined({ model, analysis }: CheckedCar, axle: "front" | "rear", mode: Mode, service: Service): boolean {
  return model.elements.some((element) => {
    if (!provides(element.kind, service)) return false;
    const { path } = element;
    const motion = analysis.elements.find((figures) => figures.path === path)?.sensitivity;
    if (motion === undefined || "kind" in motion) return claimsOf(element, mode);
    if (service === "damper" && element.kind === "hydraulic-link") {
      return serves(analysis.modal.joiningDamping.find((one) => one.path === path)?.[axle], mode, SERVES * SERVES);
    }
    return serves(atAxle(motion, axle), mode, SERVES);
  });
}

/** Pitch is heave of either axle, warp is roll of either. */
const claimsOf = ({ for: claims }: ElementModel, mode: Mode): boolean =>
  claims.some((claim) => claim === mode || claim === (mode === "heave" ? "pitch" : "warp"));

/** Deflection for unit travel of one axle's wheels: of both axles' modes that are alike there and opposite elsewhere. */
function atAxle({ heave, pitch, roll, warp }: ByMode, axle: "front" | "rear") {
  const sign = axle === "front" ? 1 : -1;
  return { heave: (heave + sign * pitch) / 2, roll: (roll + sign * warp) / 2 };
}

function serves(by: { readonly heave: number; readonly roll: number } | undefined, mode: Mode, share: number): boolean {
  if (by === undefined) return false;
  const largest = Math.max(Math.abs(by.heave), Math.abs(by.roll));
  return largest > 0 && Math.abs(by[mode]) >= share * largest;
}

function servingIn({ axle, analysis }: CheckedAxle, mode: Mode, service: Service): readonly ElementModel[] {
  return axle.elements.filter((element) => {
    if (!provides(element.kind, service)) return false;
    const figures = analysis.elements.find(({ path }) => path === element.path);
    if (service === "damper" && element.kind === "hydraulic-link") return dampsIn(element, analysis.rates, mode);
    return servesIn(element, figures, mode);
  });
}

/** A line damps every motion that makes its oil flow, whatever the link is for; without its figures it is taken at its word. */
function dampsIn(element: ElementModel, { dampingShares, track, damping }: AxleRates, mode: Mode): boolean {
  if ("kind" in damping || track === undefined) return claimsOf(element, mode);
  const share = dampingShares.find(({ path }) => path === element.path);
  // Both for unit travel of both wheels.
  return serves(share && { heave: share.heave, roll: (share.roll * 4) / track ** 2 }, mode, SERVES * SERVES);
}

function provides(kind: ElementModel["kind"], service: Service): boolean {
  return service === "spring" ? springs.has(kind) : kind === "damper" || kind === "hydraulic-link";
}

/** By its motion where that is known, else by its claim. */
function servesIn(element: ElementModel, figures: ElementFigures | undefined, mode: Mode): boolean {
  const motion = figures?.sensitivity;
  if (motion === undefined || "kind" in motion)
    return element.for.some((claim) => claim === mode || claim === "corner");
  return serves(motion, mode, SERVES);
}

function findingOf(context: RuleContext, car: CheckedCar, gap: Gap): Finding {
  const { axle, service, modes } = gap;
  const place = placeFor(context, car, { places: [...removals(context, car, gap), axle.nameOrigin], axle: axle.name });
  const why = service === "spring" ? "nothing carries or centres it there" : "it swings on undamped there";
  const add = modes.length > 1 ? "one for corner, which serves both" : `one for ${all(modes)}, or one for corner`;
  return {
    rule: meta.id,
    severity: meta.severity,
    uri: context.uri,
    span: { start: place.start, end: place.end },
    message: `The ${axle.name} axle has no ${service} that works in ${all(modes)}, so that ${why}. Add ${add}.`,
    related: [],
    tags: [],
    data: undefined,
  };
}

/** The lines of a set-up that take out what served, the last one first: it leaves the mode bare. */
function removals(context: RuleContext, car: CheckedCar, { axle, service, modes }: Gap) {
  const base = car.base === undefined ? undefined : axlesOf(car.base).find((one) => one.axle.name === axle.name);
  const served = base === undefined ? [] : modes.flatMap((mode) => servingIn(base, mode, service));
  return served
    .flatMap(({ name }) => removalOf(context, car.model, axle.name, name) ?? [])
    .sort((a, b) => b.start - a.start);
}
