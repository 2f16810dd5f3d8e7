/** Modes for a machine. The form is described by `schema/modes.json` of the package. */
import type { CheckedCar } from "../../findings/context.js";
import { isAbsent } from "../../views/figures.js";
import { casesAsked, hasLag, pureMotions } from "../../views/modes-page.js";
import { absence, json, quantity, rounded } from "./json.js";

type Ride = Exclude<ReturnType<CheckedCar["ride"]["at"]>, { kind: "absent" }>;
type Mode = Ride["modes"]["modes"][number];

export function modesJson(car: CheckedCar, at: string | undefined): string {
  return json({
    car: car.model.name,
    setup: car.model.setup ?? null,
    porpoisingAssessed: hasLag(car),
    cases: casesAsked(car, at).map((name) => {
      const ride = car.ride.at(name);
      return { name: name ?? null, ...(isAbsent(ride) ? absence(ride) : rideJson(ride)) };
    }),
  });
}

function rideJson(ride: Ride): object {
  const { stability, modes } = ride.modes;
  return {
    stability: stability.kind,
    unstableMode: stability.kind === "stable" ? null : stability.mode.name,
    modes: modes.map(modeJson),
    pure: pureMotions(ride).map(([name, { frequency, dampingRatio }]) => ({
      name,
      frequency: quantity(frequency, "Hz"),
      dampingRatio: isAbsent(dampingRatio) ? absence(dampingRatio) : rounded(dampingRatio),
    })),
  };
}

function modeJson({ name, root, shape, shares }: Mode): object {
  const { heave, roll, pitch, wheels } = shares;
  return {
    name,
    kind: root.kind,
    eigenvalue: { re: rounded(root.re), im: root.kind === "oscillation" ? rounded(root.im) : 0 },
    frequency: root.kind === "oscillation" ? quantity(root.frequency, "Hz") : null,
    dampingRatio: root.kind === "oscillation" ? rounded(root.dampingRatio) : null,
    shares: { heave: rounded(heave), roll: rounded(roll), pitch: rounded(pitch), wheels: wheels.map(rounded) },
    /** Over heave, roll, pitch of the body and the wheels FL, FR, RL, RR, in m and rad. */
    shape: shape.re.map((re, i) => ({ re: rounded(re), im: rounded(shape.im[i] ?? 0) })),
  };
}
