/**
 * How near each link of a placed corner is to a toggle.
 *
 * Transmission angle μ of a link: between the link and the plane through its arm and the axis that the arm
 * turns about, so that sin μ is the share of the link's force that has a moment about that axis; 0 is a toggle. For a
 * wishbone the arm is the wishbone and the link the upright.
 */
import type { Constants } from "./constants.js";
import type { Pose } from "./position.js";

/** sin μ of every link at one position: 0 is a toggle. */
export interface Transmissions {
  readonly lower: number;
  readonly upper: number;
  readonly trackRod: number | undefined;
  readonly rod: number | undefined;
}

/** sin μ of each link at a placed pose: lower wishbone and upper wishbone against the upright, rods against their arms. */
export function transmissions(k: Constants, p: Pose): Transmissions {
  const lx = p.cosL * k.lvx - p.sinL * k.lux;
  const ly = p.cosL * k.lvy - p.sinL * k.luy;
  const lz = p.cosL * k.lvz - p.sinL * k.luz;
  return {
    lower: Math.abs(p.nx * lx + p.ny * ly + p.nz * lz) / Math.sqrt(k.lux * k.lux + k.luy * k.luy + k.luz * k.luz),
    upper: (Math.abs(p.rootU) * k.overUpright) / Math.sqrt(k.uux * k.uux + k.uuy * k.uuy + k.uuz * k.uuz),
    trackRod: k.steerHeld ? undefined : Math.abs(p.rootT) / k.trackScale,
    rod: k.carrier === 0 ? undefined : Math.abs(p.rootR) / k.rodScale,
  };
}
