/**
 * Positions of one corner, many times over: wheel centre and rocker for a sweep of travels, into an
 * array of the caller's. The same algebra as `Corner.motion`, which adds derivatives to it.
 *
 * A solve depends on its travel alone, not on the one before; the scratch space that it reuses makes a solver
 * one caller's at a time.
 */
import type { Degenerate, HardpointGeometry } from "./geometry.js";
import { type Mechanism, mechanismOf } from "./mechanism.js";
import { PLACED, Pose } from "./position.js";
import { placeAt } from "./solve-travel.js";

/** How many numbers a solve writes. */
export const POSITION_LENGTH = 5;

export interface PositionSolver {
  /**
   * Writes wheel centre x, y, z (m) and cos, sin of the rocker's angle from design (1, 0 without a rocker);
   * false, and nothing written, where `travel` (m, bump positive) cannot be reached.
   */
  solve(travel: number, out: Float64Array): boolean;
}

/** A position solver on an existing mechanism. */
export function positionsOf({ branch }: Mechanism): PositionSolver {
  const p = new Pose();
  const low = branch.limits.low.travel;
  const high = branch.limits.high.travel;
  const solve = (travel: number, out: Float64Array): boolean => {
    if (!(travel >= low && travel <= high)) return false;
    if (placeAt(branch, p, travel) !== PLACED) return false;
    out[0] = p.wx;
    out[1] = p.wy;
    out[2] = p.wz;
    out[3] = p.cosR;
    out[4] = p.sinR;
    return true;
  };
  return { solve };
}

/** A position solver for a corner from hardpoints. */
export function positionSolver(geometry: HardpointGeometry): PositionSolver | Degenerate {
  const m = mechanismOf(geometry, false);
  return "kind" in m ? m : positionsOf(m);
}
