/**
 * How camber and toe get from where they are drawn to where they are wanted: shims (angle over angle of one), steps of
 * the adjuster, and for toe the track rod's change of length and its turns.
 *
 * The rod is taken straight about its length as drawn; `camber` tells what it does to camber besides.
 */
import type { AngleSetting } from "../elements/alignment.js";
import { byTrackRod } from "../linkage/track-rod.js";
import { absent } from "./absent.js";
import type { Figure } from "./results.js";

export interface AngleChange {
  readonly angle: "camber" | "toe";
  readonly drawn: number;
  readonly wanted: number;
  /** Shims to add; negative: to take out. Undefined where none are written. */
  readonly shims: { readonly count: number; readonly thickness: number } | undefined;
  readonly steps: number | undefined;
  /** Undefined where no track rod sets the angle. */
  readonly rod:
    | {
        /** m, positive longer. */
        readonly longer: Figure;
        readonly turns: Figure | undefined;
        /** What camber changes by with it, rad. */
        readonly camber: Figure;
      }
    | undefined;
}

function rodChange({ rod, drawn, wanted }: AngleSetting): AngleChange["rod"] {
  if (rod === undefined) return undefined;
  const motion = rod.corner.motion(rod.travel);
  const by = "kind" in motion ? undefined : byTrackRod(motion, rod.points);
  if (by === undefined || by.toe === 0) {
    const none = absent("the track rod does not turn the wheel where it stands");
    return { longer: none, turns: none, camber: none };
  }
  const longer = (wanted - drawn) / by.toe;
  const turns = rod.thread === undefined ? undefined : longer / rod.thread;
  return { longer, turns, camber: longer * by.camber };
}

export function angleChange(setting: AngleSetting): AngleChange {
  const { angle, drawn, wanted, shim, step } = setting;
  const change = wanted - drawn;
  return {
    angle,
    drawn,
    wanted,
    shims: shim && { count: change / shim.angle, thickness: shim.thickness },
    steps: step === undefined ? undefined : change / step,
    rod: rodChange(setting),
  };
}
