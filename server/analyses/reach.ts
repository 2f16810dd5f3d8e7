/**
 * How far the links of each side go across the envelope, and where they come near to a toggle: the
 * corner's own links and the drop links of its anti-roll bars.
 *
 * A drop link is looked at with its own wheel moved; those of a T-shaped bar, which both wheels work, with the other wheel
 * at design, alike and opposed as well. A limit is closed in on by halving.
 */
import { type BarLever, barLeverMotion } from "../elements/connections/bar-lever.js";
import type { Connection, Element } from "../elements/element.js";
import type { AxleMechanism } from "../elements/mechanism.js";
import type { CornerMotion, Reach, Unreachable } from "../linkage/corner.js";
import { closedIn } from "../maths/closing-in.js";
import type { ReachFigures } from "./results.js";
import type { AxlePositions } from "./states.js";

type Side = "left" | "right";
type Binds = ReachFigures["binds"][number];
type Toggle = ReachFigures["toggles"][number];

/** Halvings that bring a limit from a quarter of the envelope to below a micrometre. */
const HALVINGS = 16;
const STEPS = 4;

const moving = (motion: CornerMotion | Unreachable): motion is CornerMotion => !("kind" in motion);

/** Angle of a drop link from its toggle at a travel; undefined where it, or the corner, does not reach. */
type LinkAngle = (travel: number) => number | undefined;

function linkAngle(element: Element, side: Side, positions: AxlePositions, reach: Reach): LinkAngle | undefined {
  const { levers, tee } = element.connection ?? {};
  if (tee !== undefined) return teeAngle(tee, side, positions, reach);
  return levers === undefined ? undefined : leverAngle(levers[side], side, positions[side]);
}

/** The smallest of its angles over what the other wheel may do meanwhile. */
function teeAngle(
  tee: NonNullable<Connection["tee"]>,
  side: Side,
  positions: AxlePositions,
  { from, to }: Reach,
): LinkAngle {
  const other = side === "left" ? "right" : "left";
  return (travel) => {
    const own = positions[side](travel);
    if (!moving(own)) return undefined;
    let smallest = Math.PI / 2;
    for (const beside of [0, travel, -travel]) {
      const far = positions[other](beside);
      if (beside < from || beside > to || !moving(far)) continue;
      const angle = tee.transmission(side === "left" ? { left: own, right: far } : { left: far, right: own });
      if (angle === undefined) return undefined;
      smallest = Math.min(smallest, angle);
    }
    return smallest;
  };
}

function leverAngle(lever: BarLever, side: Side, at: (travel: number) => CornerMotion | Unreachable): LinkAngle {
  return (travel) => {
    const motion = at(travel);
    if (!moving(motion)) return undefined;
    const turned = barLeverMotion(lever, motion, side);
    return "kind" in turned ? undefined : turned.transmission;
  };
}

/** The furthest travel towards `end` that the drop link reaches. */
function limitOf(angle: LinkAngle, reached: number, end: number): number {
  return closedIn(reached, end, (travel) => angle(travel) !== undefined, HALVINGS).holding;
}

interface Found {
  readonly binds: readonly Binds[];
  readonly toggle: Toggle;
}

function alongDropLink(element: Element, angle: LinkAngle, ends: readonly number[]): Found | undefined {
  const atDesign = angle(0);
  if (atDesign === undefined) return undefined;
  const binds: Binds[] = [];
  const { path } = element;
  let toggle: Toggle = { link: "drop-link", travel: 0, angle: atDesign, element: path };
  for (const end of ends) {
    let reached = 0;
    for (let i = 1; i <= STEPS; i++) {
      const travel = (end * i) / STEPS;
      const here = angle(travel);
      if (here === undefined) {
        binds.push({ link: "drop-link", travel: end, limit: limitOf(angle, reached, travel), element: path });
        break;
      }
      if (here < toggle.angle) toggle = { link: "drop-link", travel, angle: here, element: path };
      reached = travel;
    }
  }
  return { binds, toggle };
}

const bindsOf = (bound: Unreachable | undefined): readonly Binds[] =>
  bound === undefined ? [] : [{ link: bound.link, travel: bound.travel, limit: bound.limit, element: undefined }];

function reachOf(mechanism: AxleMechanism, side: Side, reach: Reach, positions: AxlePositions): ReachFigures {
  const { bound, toggles } = reach;
  const ends = [bound.low?.limit ?? reach.from, bound.high?.limit ?? reach.to].filter((end) => end !== 0);
  const links = mechanism.elements.flatMap((element) => {
    const angle = linkAngle(element, side, positions, reach);
    return angle === undefined ? [] : (alongDropLink(element, angle, ends) ?? []);
  });
  return {
    axle: mechanism.name,
    side,
    from: reach.from,
    to: reach.to,
    binds: [...bindsOf(bound.low), ...bindsOf(bound.high), ...links.flatMap(({ binds }) => binds)],
    toggles: [...toggles.map((toggle) => ({ ...toggle, element: undefined })), ...links.map(({ toggle }) => toggle)],
  };
}

/** Reach of both sides over the axle's envelope; a side whose linkage cannot be built has none. */
export function reachFigures(mechanism: AxleMechanism, positions: AxlePositions): readonly ReachFigures[] {
  const { corners, travel, cornerMissing } = mechanism;
  const left = corners.left.reach(travel.from, travel.to);
  const right = corners.right === corners.left ? left : corners.right.reach(travel.from, travel.to);
  const sides = [
    { side: "left", reach: left },
    { side: "right", reach: right },
  ] as const;
  return sides
    .filter(({ side }) => cornerMissing[side] === undefined)
    .map(({ side, reach }) => reachOf(mechanism, side, reach, positions));
}
