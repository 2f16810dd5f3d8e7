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
 *   front.travel -82 .. 25 mm
 * }
 * ```
 *
 * ```crank right
 * use "axle.crank"
 *
 * setup short-legs from plover {
 *   remove front.roll-damper
 *   front.travel -28 .. 25 mm
 * }
 * ```
 */
import type { ReachFigures } from "../../../analyses/results.js";
import { showNumber, showQuantity } from "../../../quantities/index.js";
import { axlesOf, type CheckedAxle } from "../../axle-parts.js";
import type { CheckedCar, RuleContext } from "../../context.js";
import type { Finding, Rule } from "../../finding.js";
import { linkOrigin } from "../../link-origin.js";
import { placeFor, standsInBase } from "../../where.js";

const meta = {
  id: "near-toggle",
  title: "A link comes close to a toggle",
  cost: "solved",
  severity: "warning",
} as const;

const DEGREE = Math.PI / 180;
const WARNING = 10 * DEGREE;
const INFORMATION = 20 * DEGREE;

type Toggle = ReachFigures["toggles"][number] & { readonly side: ReachFigures["side"] };

export const nearToggle: Rule = { meta, check };

function* check(context: RuleContext): Generator<Finding> {
  for (const car of context.cars) {
    for (const checked of axlesOf(car)) {
      for (const toggle of togglesOf(checked)) {
        if (standsInBase(car, (base) => standsNear(base, checked.axle.name, toggle))) continue;
        const origin = linkOrigin(checked.axle, toggle) ?? checked.axle.nameOrigin;
        const place = placeFor(context, car, origin);
        if (place !== undefined) yield findingOf(context, checked, toggle, place);
      }
    }
  }
}

/** Close ones, each link once: mirrored sides tell the same. */
function togglesOf({ analysis }: CheckedAxle): readonly Toggle[] {
  const close = analysis.reach.flatMap(({ side, toggles, binds }) =>
    toggles
      // A link that goes through its toggle binds: that is told as travel that cannot be reached.
      .filter(({ link }) => !binds.some((bind) => bind.link === link))
      .filter(({ angle }) => angle < INFORMATION)
      .map((toggle) => ({ ...toggle, side })),
  );
  return close.filter((toggle, index) => close.findIndex(({ link }) => link === toggle.link) === index);
}

function standsNear(car: CheckedCar, axle: string, { link, angle }: Toggle): boolean {
  return axlesOf(car).some(
    (other) =>
      other.axle.name === axle &&
      togglesOf(other).some((one) => one.link === link && severityOf(one.angle) === severityOf(angle)),
  );
}

const severityOf = (angle: number): "warning" | "information" => (angle < WARNING ? "warning" : "information");

function findingOf(
  context: RuleContext,
  { axle }: CheckedAxle,
  toggle: Toggle,
  place: { readonly start: number; readonly end: number },
): Finding {
  const travel = showQuantity(toggle.travel, axle.travel.given?.unit ?? "mm", 3);
  const angle = showNumber(toggle.angle / DEGREE, 2);
  return {
    rule: meta.id,
    severity: severityOf(toggle.angle),
    uri: context.uri,
    span: { start: place.start, end: place.end },
    message: `The ${axle.name} ${toggle.link} comes within ${angle} deg of a toggle at ${travel} of travel; towards it the ratio runs away and at it nothing moves. Set the link nearer to square with its arm at design.`,
    related: [],
    tags: [],
    data: undefined,
  };
}
