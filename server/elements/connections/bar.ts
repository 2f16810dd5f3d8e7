/**
 * The twist of an anti-roll bar: angle of its left lever less that of its right one, both as bump
 * of their own wheel turns them (the right one in the mirrored frame), rad from where they are drawn.
 * 0 at design, unless a drop link is set longer than drawn.
 *
 * A bar with a drop link off hangs on one side only and is never twisted.
 */
import type { AxleMotion } from "../../linkage/corner.js";
import type { Connection, Deflection, NoDeflection } from "../element.js";
import { type BarLever, barLeverAngle } from "./bar-lever.js";
import { STILL } from "./still.js";

const offReason = (left: BarLever | undefined, right: BarLever | undefined): string | undefined => {
  if (left !== undefined && right !== undefined) return undefined;
  if (left === undefined && right === undefined) return "its drop links are off";
  return `its drop link is off on the ${left === undefined ? "left" : "right"} side`;
};

function twist(left: BarLever, right: BarLever, motion: AxleMotion): Deflection | NoDeflection {
  const l = barLeverAngle(left, motion.left, "left");
  if ("kind" in l) return l;
  const r = barLeverAngle(right, motion.right, "right");
  if ("kind" in r) return r;
  return {
    s: l.value - r.value,
    dL: l.d,
    dR: -r.d,
    dLL: l.dd,
    dLR: 0,
    dRR: -r.dd,
  };
}

/** @param levers `undefined` on a side where the drop link is off */
export function barTwist(
  levers: { readonly left: BarLever | undefined; readonly right: BarLever | undefined },
  basis: "hardpoints" | "planar",
): Connection {
  const { left, right } = levers;
  return {
    kind: "bar",
    basis,
    torsional: true,
    idle: offReason(left, right),
    statedFor: undefined,
    levers: left === undefined || right === undefined ? undefined : { left, right },
    deflection: (motion) => (left === undefined || right === undefined ? STILL : twist(left, right, motion)),
  };
}
