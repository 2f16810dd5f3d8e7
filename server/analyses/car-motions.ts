/**
 * The body's own motions as wheel travel, about its centre of gravity: heave (down 1 m), pitch (nose down 1 rad), roll
 * (left side up 1 rad). With x forward and y left from the centre of gravity z = h + x θ − y φ.
 *
 * The centre of gravity lies behind the front axle by the rear's share of the mass, and `cgLeft` of the plane y = 0.
 */
import { eachWheel, type Wheels } from "../elements/car-connection.js";
import { absent } from "./absent.js";
import type { Absent } from "./results.js";

export interface CarGeometry {
  /** m */
  readonly wheelbase: number | undefined;
  /** Share of the mass on the front wheels. */
  readonly massFront: number | undefined;
  /** m; 0 where left out. */
  readonly cgLeft?: number | undefined;
  readonly tracks: { readonly front: number | undefined; readonly rear: number | undefined };
}

export interface BodyMotions {
  readonly heave: Wheels;
  readonly pitch: Wheels | Absent;
  readonly roll: Wheels | Absent;
}

export function bodyMotions({ wheelbase, massFront, cgLeft = 0, tracks }: CarGeometry): BodyMotions {
  const { front, rear } = tracks;
  return {
    heave: [1, 1, 1, 1],
    pitch: pitchOf(wheelbase, massFront),
    roll:
      front === undefined || rear === undefined
        ? absent(`the ${front === undefined ? "front" : "rear"} axle has no track`)
        : [cgLeft - front / 2, cgLeft + front / 2, cgLeft - rear / 2, cgLeft + rear / 2],
  };
}

function pitchOf(wheelbase: number | undefined, massFront: number | undefined): Wheels | Absent {
  if (wheelbase === undefined) return absent("the car has no wheelbase");
  if (massFront === undefined) return absent("the car has no mass-front, so that its centre of gravity is not known");
  return eachWheel((wheel) => (wheel < 2 ? wheelbase * (1 - massFront) : -wheelbase * massFront));
}
