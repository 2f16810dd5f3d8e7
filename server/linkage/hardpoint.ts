/**
 * A corner from hardpoints: two wishbones, track rod, and a rocker on a push or pull rod where
 * there is one. In: geometry in the frame of a left corner; out: a `Corner`, or what is degenerate.
 *
 * Invariant: immutable; every travel has one position, on the branch that holds at design, or none.
 */
import type { Corner, CornerMotion, Unreachable } from "./corner.js";
import { cornerMotion } from "./corner-motion.js";
import type { Degenerate, HardpointGeometry } from "./geometry.js";
import { type Mechanism, mechanismOf } from "./mechanism.js";
import { PoseRates } from "./pose-rates.js";
import { PLACED, Pose, slope, TRACK_ROD_BINDS, UPPER_BINDS } from "./position.js";
import { bindsBefore, outOfReach, reachOf } from "./reach.js";
import { placeAt } from "./solve-travel.js";

/** The corner of a mechanism, whatever it was drawn from. */
export function cornerOf(m: Mechanism, basis: Corner["basis"]): Corner {
  const { constants } = m.branch;
  // Written anew by every solve, and nothing of them is handed out.
  const p = new Pose();
  const rates = new PoseRates();
  const motion = (travel: number): CornerMotion | Unreachable => {
    const beyond = outOfReach(m.branch.limits, travel);
    if (beyond !== undefined) return beyond;
    const status = placeAt(m.branch, p, travel);
    if (status !== PLACED) return bindsBefore(m, travel, status);
    // In line to the last digit: a position from which no direction leads on.
    if (!Number.isFinite(1 / slope(constants, p)))
      return bindsBefore(m, travel, p.rootT === 0 ? TRACK_ROD_BINDS : UPPER_BINDS);
    return cornerMotion(m.skeleton, constants, p, rates, travel);
  };
  return { basis, motion, reach: (from, to) => reachOf(m, from, to) };
}

/** A corner from hardpoints. */
export function hardpointCorner(geometry: HardpointGeometry): Corner | Degenerate {
  const m = mechanismOf(geometry, false);
  return "kind" in m ? m : cornerOf(m, "hardpoints");
}
