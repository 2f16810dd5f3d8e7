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
import type { AxleModel } from "../../../model/car.js";
import { fromSI, showQuantity } from "../../../quantities/index.js";
import { axlesOf, type CheckedAxle } from "../../axle-parts.js";
import type { CheckedCar, RuleContext } from "../../context.js";
import type { Finding, Fix, Rule } from "../../finding.js";
import { lengthUnit } from "../../length-unit.js";
import { linkPlaces } from "../../link-places.js";
import { valueEdit } from "../../setup-lines.js";
import { nameOf, placeFor, standsInBase } from "../../where.js";

const meta = {
  id: "unreachable-travel",
  title: "A link binds before the end of the travel",
  cost: "solved",
  severity: "error",
} as const;

type Bind = ReachFigures["binds"][number] & { readonly side: ReachFigures["side"]; readonly isOfBoth: boolean };

interface Data {
  readonly car: string;
  readonly axle: AxleModel["name"];
}

export const unreachableTravel: Rule = { meta, check, fix };

function* check(context: RuleContext): Generator<Finding> {
  for (const car of context.cars) {
    for (const axle of axlesOf(car)) {
      const binds = bindsOf(axle).filter((bind) => !standsInBase(car, (base) => bindsIn(base, axle, bind)));
      if (binds.length > 0) yield findingOf(context, car, axle, binds);
    }
  }
}

/** The end of the travel that is not reached. */
const isDroop = ({ travel }: Bind): boolean => travel < 0;

const bindsIn = (car: CheckedCar, { axle }: CheckedAxle, bind: Bind): boolean =>
  axlesOf(car).some(
    (other) => other.axle.name === axle.name && bindsOf(other).some((one) => isDroop(one) === isDroop(bind)),
  );

/** At each end of the travel the one that leaves the least of it. */
function bindsOf({ analysis }: CheckedAxle): readonly Bind[] {
  const all = analysis.reach.flatMap(({ binds, side }) => binds.map((bind) => ({ ...bind, side, isOfBoth: false })));
  return [true, false].flatMap((droop) => {
    const here = all.filter((bind) => isDroop(bind) === droop).sort((a, b) => Math.abs(a.limit) - Math.abs(b.limit));
    return here.slice(0, 1).map((bind) => ({ ...bind, isOfBoth: here.some((other) => isMirrored(bind, other)) }));
  });
}

const isMirrored = (a: Bind, b: Bind): boolean =>
  a.side !== b.side && a.link === b.link && a.element === b.element && Math.abs(a.limit - b.limit) < 1e-6;

function findingOf(context: RuleContext, car: CheckedCar, { axle }: CheckedAxle, binds: readonly Bind[]): Finding {
  const unit = lengthUnit(axle);
  const shown = (metres: number): string => showQuantity(metres, unit, 3);
  const places = [axle.travel.given?.origin, axle.nameOrigin].filter((place) => place !== undefined);
  const place = placeFor(context, car, { places, axle: axle.name });
  const ends = binds.map((bind) => {
    const asked = isDroop(bind) ? axle.travel.from : axle.travel.to;
    return `is to go to ${shown(asked)}, but ${linkWords(bind)} binds at ${shown(bind.limit)}`;
  });
  const data: Data = { car: nameOf(car), axle: axle.name };
  return {
    rule: meta.id,
    severity: meta.severity,
    uri: context.uri,
    span: { start: place.start, end: place.end },
    message: `The ${axle.name} axle ${ends.join(" and ")}. Nothing can be computed beyond. Shorten the travel, or give the link room.`,
    related: relatedOf(axle, binds),
    tags: [],
    data,
  };
}

function linkWords({ link, side, element, isOfBoth }: Bind): string {
  const bar = element?.split(".").at(-1);
  const which = bar === undefined ? link : `drop link of ${bar}`;
  return isOfBoth ? `its ${which}` : `its ${side} ${which}`;
}

function relatedOf(axle: AxleModel, binds: readonly Bind[]): Finding["related"] {
  return binds.flatMap((bind) =>
    linkPlaces(axle, bind)
      .slice(0, 1)
      .map((origin) => ({ origin, message: "The link that binds" })),
  );
}

/** Shortens the travel to what all links of both sides can do. */
function fix(finding: Finding, context: RuleContext): readonly Fix[] {
  const { car: name, axle: which } = finding.data as Data;
  const car = context.cars.find((one) => nameOf(one) === name);
  const checked = car && axlesOf(car).find(({ axle }) => axle.name === which);
  const given = checked?.axle.travel.given;
  const text = checked && reachableText(checked);
  if (car === undefined || given === undefined || text === undefined) return [];
  const edit = valueEdit(context, car.model, { given, path: `${which}.travel`, text });
  return edit === undefined
    ? []
    : [{ title: `Shorten the travel to ${text}`, edits: [edit], preferred: true, safe: false }];
}

function reachableText(checked: CheckedAxle): string | undefined {
  const { travel } = checked.axle;
  const unit = lengthUnit(checked.axle);
  const limits = new Map(bindsOf(checked).map((bind) => [isDroop(bind), bind.limit]));
  const [from, to] = [inward(travel.from, limits.get(true), unit), inward(travel.to, limits.get(false), unit)];
  return from === undefined || to === undefined || !(from < to) ? undefined : `${from} .. ${to} ${unit}`;
}

/** An end as it is, or the limit taken back to the next whole millimetre (or twentieth of an inch) with one more as margin. */
function inward(end: number, limit: number | undefined, unit: string): number | undefined {
  const size = fromSI(unit === "in" ? 0.05 * 0.0254 : 0.001, unit);
  const value = fromSI(limit ?? end, unit);
  if (size === undefined || value === undefined) return undefined;
  const kept =
    limit === undefined ? value : Math.sign(value) * Math.max(0, Math.floor(Math.abs(value) / size - 1) * size);
  return Number(kept.toFixed(4)) + 0;
}
