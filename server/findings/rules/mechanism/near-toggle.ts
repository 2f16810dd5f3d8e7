/**
 * A link comes close to lying in line with the arm that it works, somewhere in the travel. At the
 * toggle itself it cannot move the arm any more, and on the way there the ratio runs away.
 *
 * Below 20° from the toggle this is information, below 10° a warning (common practice, no published
 * source). Turn the arm or move the link's far end so that the two stand nearer to square at design.
 *
 * ```crank wrong
 * use "axle.crank"
 *
 * setup long-legs from plover {
 *   remove front.roll-damper
 *   front.corner-bar.torsion-bar.allowable-stress 1200 MPa
 *   front.travel -82 .. 25 mm
 * }
 * ```
 *
 * ```crank right
 * use "axle.crank"
 *
 * setup short-legs from plover {
 *   remove front.roll-damper
 *   front.corner-bar.torsion-bar.allowable-stress 1200 MPa
 *   front.travel -28 .. 25 mm
 * }
 * ```
 */
import type { ReachFigures } from "../../../analyses/results.js";
import { showNumber, showQuantity } from "../../../quantities/index.js";
import { axlesOf, type CheckedAxle } from "../../axle-parts.js";
import type { CheckedCar, RuleContext } from "../../context.js";
import type { Finding, Rule } from "../../finding.js";
import { linkPlaces } from "../../link-places.js";
import { placeFor, standsInBase } from "../../where.js";
import { lengthUnit } from "../../length-unit.js";

const meta = {
  id: "near-toggle",
  title: "A link comes close to a toggle",
  cost: "solved",
  severity: "warning",
} as const;

const DEGREE = Math.PI / 180;
const WARNING = 10 * DEGREE;
const INFORMATION = 20 * DEGREE;

type Link = Pick<ReachFigures["toggles"][number], "link" | "element">;
type Sided = ReachFigures["toggles"][number] & { readonly side: ReachFigures["side"] };
type Toggle = Sided & { readonly isOfBoth: boolean };

export const nearToggle: Rule = { meta, check };

function* check(context: RuleContext): Generator<Finding> {
  for (const car of context.cars) {
    for (const checked of axlesOf(car)) {
      for (const toggle of togglesOf(checked)) {
        if (standsInBase(car, (base) => standsNear(base, checked.axle.name, toggle))) continue;
        yield findingOf(context, car, checked, toggle);
      }
    }
  }
}

/** Close ones, each link once: of both sides the one that comes closer. */
function togglesOf({ analysis }: CheckedAxle): readonly Toggle[] {
  const close = analysis.reach.flatMap(({ side, toggles, binds }) =>
    toggles
      // A link that goes through its toggle binds: that is told as travel that cannot be reached.
      .filter((toggle) => toggle.angle < INFORMATION && !binds.some((bind) => isSameLink(bind, toggle)))
      .map((toggle) => ({ ...toggle, side })),
  );
  const closest = close.filter(
    (toggle) => !close.some((other) => isSameLink(other, toggle) && isBefore(other, toggle)),
  );
  return closest.map((toggle) => ({
    ...toggle,
    isOfBoth: close.some((other) => isSameLink(other, toggle) && other.side !== toggle.side),
  }));
}

/** A drop link is that of its bar. */
const isSameLink = (a: Link, b: Link): boolean => a.link === b.link && a.element === b.element;

const isBefore = (a: Sided, b: Sided): boolean => a.angle < b.angle || (a.angle === b.angle && a.side < b.side);

function standsNear(car: CheckedCar, axle: string, toggle: Toggle): boolean {
  return axlesOf(car).some(
    (other) =>
      other.axle.name === axle &&
      togglesOf(other).some((one) => isSameLink(one, toggle) && (isClose(one.angle) || !isClose(toggle.angle))),
  );
}

const isClose = (angle: number): boolean => angle < WARNING;

function findingOf(context: RuleContext, car: CheckedCar, { axle }: CheckedAxle, toggle: Toggle): Finding {
  const places = [...linkPlaces(axle, toggle), axle.nameOrigin];
  const place = placeFor(context, car, { places, axle: axle.name });
  const travel = showQuantity(toggle.travel, lengthUnit(axle), 3);
  const angle = showNumber(toggle.angle / DEGREE, 2);
  const bar = toggle.element?.split(".").at(-1);
  const link = bar === undefined ? toggle.link : `drop link of ${bar}`;
  return {
    rule: meta.id,
    severity: isClose(toggle.angle) ? "warning" : "information",
    uri: context.uri,
    span: { start: place.start, end: place.end },
    message: `The ${axle.name} ${toggle.isOfBoth ? link : `${toggle.side} ${link}`} comes within ${angle} deg of a toggle at ${travel} of travel; towards it the ratio runs away and at it nothing moves. Set the link nearer to square with its arm at design, or shorten the travel.`,
    related: [],
    tags: [],
    data: undefined,
  };
}
