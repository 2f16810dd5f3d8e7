/**
 * Starting linkages, in mm from the axle's own line: invented, and close enough to what such cars have that every check is clean.
 *
 * Invariant: left side only; the right one mirrors it.
 */
import type { NewCar } from "./answers.js";

export interface StartingLinkage {
  readonly text: string;
  /** Chassis end of the corner's damper and spring. */
  readonly mount: string;
  /** Where the lever of an anti-roll bar is. */
  readonly lever: string;
}

type Rod = NewCar["frontRod"];

const at = (x: number, [dx, y, z]: readonly [number, number, number]): string => `(${x + dx}, ${y}, ${z}) mm`;

/** @param x of the axle's line, mm */
export function hardpoints(rod: Rod, x: number): StartingLinkage {
  const p = (...point: readonly [number, number, number]): string => at(x, point);
  if (rod === "push-rod")
    return {
      text: `linkage {
        lower-wishbone { fore ${p(150, 195, 104)}, aft ${p(-160, 195, 106)}, outer ${p(5, 680, 110)} }
        upper-wishbone { fore ${p(130, 240, 302)}, aft ${p(-145, 240, 294)}, outer ${p(-10, 652, 342)} }
        track-rod { inner ${p(95, 190, 153)}, outer ${p(105, 670, 170)} }
        push-rod on lower-wishbone { outer ${p(0, 634, 130)}, inner ${p(0, 230, 438)}, thread 1.25 mm/turn }
        rocker {
          pivot ${p(0, 195, 402)}
          axis (1, 0, 0)
          eye side ${p(-45, 212, 464)}
          eye third ${p(0, 196, 458)}
          eye bar ${p(0, 226, 398)}
        }
      }`,
      mount: p(-45, 50, 468),
      lever: `lever { pivot ${p(70, 226, 298)}, axis (0, 1, 0), end ${p(0, 226, 298)} }`,
    };
  return {
    text: `linkage {
        lower-wishbone { fore ${p(180, 215, 90)}, aft ${p(-160, 218, 76)}, outer ${p(4, 668, 94)} }
        upper-wishbone { fore ${p(165, 262, 273)}, aft ${p(-150, 262, 281)}, outer ${p(-14, 640, 330)} }
        track-rod { inner ${p(-150, 203, 127.5)}, outer ${p(-124, 654, 152)} }
        pull-rod on upper-wishbone { outer ${p(18, 618, 318)}, inner ${p(140, 222, 84)}, thread 1.25 mm/turn }
        rocker {
          pivot ${p(140, 195, 108)}
          axis (1, 0, 0)
          eye side ${p(95, 212, 170)}
          eye third ${p(140, 191, 162)}
          eye bar ${p(140, 229, 108)}
        }
      }`,
    mount: p(95, 52, 172),
    lever: `lever { pivot ${p(210, 229, 216)}, axis (0, 1, 0), end ${p(140, 229, 216)} }`,
  };
}

/** The same as seen from the front. */
export function planar(rod: Rod, x: number): StartingLinkage {
  const p = (y: number, z: number): string => at(x, [0, y, z]);
  if (rod === "push-rod")
    return {
      text: `linkage planar {
        lower-wishbone { inner (195, 105) mm, outer (680, 110) mm }
        upper-wishbone { inner (240, 298) mm, outer (652, 342) mm }
        push-rod on lower-wishbone { outer (634, 130) mm, inner (230, 438) mm, thread 1.25 mm/turn }
        rocker {
          pivot (195, 402) mm
          eye side (212, 464) mm
          eye third (196, 458) mm
          eye bar (226, 398) mm
        }
      }`,
      mount: p(50, 468),
      lever: `lever { pivot ${at(x, [70, 226, 298])}, axis (0, 1, 0), end ${p(226, 298)} }`,
    };
  return {
    text: `linkage planar {
        lower-wishbone { inner (216, 84) mm, outer (668, 94) mm }
        upper-wishbone { inner (262, 276) mm, outer (640, 330) mm }
        pull-rod on upper-wishbone { outer (618, 318) mm, inner (222, 84) mm, thread 1.25 mm/turn }
        rocker {
          pivot (195, 108) mm
          eye side (212, 170) mm
          eye third (191, 162) mm
          eye bar (229, 108) mm
        }
      }`,
    mount: p(52, 172),
    lever: `lever { pivot ${at(x, [70, 229, 216])}, axis (0, 1, 0), end ${p(229, 216)} }`,
  };
}
