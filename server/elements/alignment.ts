/** One angle of a wheel as it is drawn and as it is wanted, and what sets it. Plain data, built by `assemble`. */
import type { Corner } from "../linkage/corner.js";
import type { SteeredPoints } from "../linkage/track-rod.js";

/** One shim more changes the angle by `angle`, rad, signed. */
export interface Shim {
  readonly thickness: number;
  readonly angle: number;
}

export interface AngleSetting {
  readonly angle: "camber" | "toe";
  /** rad */
  readonly drawn: number;
  readonly wanted: number;
  readonly shim: Shim | undefined;
  /** Smallest change that the adjuster makes, rad. */
  readonly step: number | undefined;
  /** Of the track rod, which sets toe where hardpoints are given; undefined elsewhere. */
  readonly rod:
    | {
        readonly corner: Corner;
        readonly points: SteeredPoints;
        /** Travel at rest, m. */
        readonly travel: number;
        /** m for one turn. */
        readonly thread: number | undefined;
      }
    | undefined;
}
