/** The axle as it stands on the flat patch: ride height, wheel loads and wheel angles at static trim. */
import type { AxleMechanism } from "../elements/mechanism.js";
import type { AxleMotion } from "../linkage/corner.js";
import { absent, figureOr } from "./absent.js";
import { tyreLoad } from "./loads.js";
import type { AtRest, WheelAtRest } from "./results.js";

function wheelAtRest(mechanism: AxleMechanism, rest: AxleMotion | undefined, side: "left" | "right"): WheelAtRest {
  const { kept, corners } = mechanism;
  const own = kept === undefined ? rest?.[side] : corners[side].motion(kept.travels[side]);
  const wheel = own === undefined || "kind" in own ? undefined : own.wheel;
  const unknown = (): string => mechanism.cornerMissing[side] ?? "the axle is given by ratios, without geometry";
  return {
    travel: kept?.travels[side] ?? mechanism.staticTravel,
    load: tyreLoad(mechanism, side),
    camber: figureOr(wheel?.camber.value, unknown),
    toe: figureOr(wheel?.toe.value, unknown),
  };
}

/** @param rest both corners there; undefined where the axle does not reach it */
export function atRest(mechanism: AxleMechanism, rest: AxleMotion | undefined): AtRest {
  const { rideHeight, name, keptMissing } = mechanism;
  return {
    rideHeight:
      keptMissing !== undefined
        ? absent(keptMissing)
        : rideHeight === undefined
          ? absent(`the ${name} axle has no ride-height`)
          : rideHeight,
    left: wheelAtRest(mechanism, rest, "left"),
    right: wheelAtRest(mechanism, rest, "right"),
  };
}
