/**
 * The axle's `travel` asks for more than its links can do: one of them is pulled straight, or binds,
 * before the end. Figures over the travel cannot be had there, and a real car would bend something.
 *
 * The message names the link and the travel at which it binds. Either the travel is wrong, or a
 * point of that link is.
 *
 * ```crank wrong
 * use "axle.crank"
 *
 * setup too-far from plover {
 *   front.travel -150 .. 25 mm
 * }
 * ```
 *
 * ```crank right
 * use "axle.crank"
 *
 * setup enough from plover {
 *   front.travel -28 .. 25 mm
 * }
 * ```
 */
import type { ReachFigures } from "../../../analyses/results.js";
import { fromSI, showQuantity } from "../../../quantities/index.js";
import { axlesOf, type CheckedAxle } from "../../axle-parts.js";
import type { CheckedCar, RuleContext } from "../../context.js";
import { oneEdit } from "../../edits.js";
import type { Finding, Fix, Rule } from "../../finding.js";
import { linkOrigin } from "../../link-origin.js";
import { placeFor, standsInBase } from "../../where.js";

const meta = {
  id: "unreachable-travel",
  title: "A link binds before the end of the travel",
  cost: "solved",
  severity: "error",
} as const;

type Bind = ReachFigures["binds"][number] & { readonly side: ReachFigures["side"] };

interface Data {
  readonly uri: string;
  readonly span: { readonly start: number; readonly end: number };
  readonly unit: string;
  readonly from: number;
  readonly to: number;
}

export const unreachableTravel: Rule = { meta, check, fix };

function* check(context: RuleContext): Generator<Finding> {
  for (const car of context.cars) {
    for (const axle of axlesOf(car)) {
      const bind = bindsOf(axle)[0];
      if (bind === undefined || standsInBase(car, (base) => bindsIn(base, axle.axle.name))) continue;
      const given = axle.axle.travel.given;
      const place = placeFor(context, car, given?.origin ?? axle.axle.nameOrigin);
      if (place !== undefined) yield findingOf(context, axle, bind, place);
    }
  }
}

const bindsIn = (car: CheckedCar, name: string): boolean =>
  axlesOf(car).some((other) => other.axle.name === name && bindsOf(other).length > 0);

/** The one that leaves the least travel first. */
function bindsOf({ analysis }: CheckedAxle): readonly Bind[] {
  return analysis.reach
    .flatMap(({ binds, side }) => binds.map((bind) => ({ ...bind, side })))
    .sort((a, b) => Math.abs(a.limit) - Math.abs(b.limit));
}

function findingOf(
  context: RuleContext,
  checked: CheckedAxle,
  bind: Bind,
  place: { readonly start: number; readonly end: number },
): Finding {
  const { axle } = checked;
  const unit = axle.travel.given?.unit ?? "mm";
  const asked = bind.limit < 0 || bind.travel < 0 ? axle.travel.from : axle.travel.to;
  const shown = (metres: number): string => showQuantity(metres, unit, 4);
  const link = bind.element === undefined ? `${bind.side} ${bind.link}` : `${bind.side} drop link of ${bind.element}`;
  const at = linkOrigin(axle, bind);
  return {
    rule: meta.id,
    severity: meta.severity,
    uri: context.uri,
    span: { start: place.start, end: place.end },
    message: `The ${axle.name} axle's travel goes to ${shown(asked)}, but its ${link} binds at ${shown(bind.limit)}. Nothing can be computed beyond. Shorten the travel, or give the link room.`,
    related: at === undefined ? [] : [{ origin: at, message: "The link that binds" }],
    tags: [],
    data: dataOf(checked, unit),
  };
}

/** The travel that all links of both sides can do. */
function dataOf({ axle, analysis }: CheckedAxle, unit: string): Data | undefined {
  const origin = axle.travel.given?.origin;
  const limits = analysis.reach.flatMap(({ binds }) => binds.map(({ limit }) => limit));
  if (origin === undefined || limits.includes(0)) return undefined;
  const from = Math.max(axle.travel.from, ...limits.filter((limit) => limit < 0));
  const to = Math.min(axle.travel.to, ...limits.filter((limit) => limit > 0));
  return { uri: origin.uri, span: origin, unit, from, to };
}

/** Towards design to the next whole millimetre (or twentieth of an inch), with one more as margin. */
function fix(finding: Finding): readonly Fix[] {
  const data = finding.data as Data | undefined;
  if (data === undefined || data.from >= data.to) return [];
  const step = data.unit === "in" ? 0.05 : 1;
  const inUnit = (metres: number): number => fromSI(metres, data.unit) ?? Number.NaN;
  const inward = (value: number): number =>
    Math.sign(value) * Math.max(0, Math.floor(Math.abs(value) / step - 1) * step);
  const text = `${rounded(inward(inUnit(data.from)))} .. ${rounded(inward(inUnit(data.to)))} ${data.unit}`;
  return text.includes("NaN")
    ? []
    : [oneEdit(`Shorten the travel to ${text}`, data.uri, data.span, text, { preferred: true })];
}

const rounded = (value: number): string => String(Number(value.toFixed(3)) + 0);
