/** Modes as CSV: one a row. */
import type { CheckedCar } from "../../findings/context.js";
import { isAbsent } from "../../views/figures.js";
import { casesAsked } from "../../views/modes-page.js";
import { csv } from "./csv.js";
import { rounded } from "./json.js";

export function modesCsv(car: CheckedCar, at: string | undefined): string {
  const rows = casesAsked(car, at).flatMap((name) => {
    const ride = car.ride.at(name);
    if (isAbsent(ride)) return [];
    return ride.modes.modes.map(({ name: mode, root, shares: { heave, roll, pitch, wheels } }) => {
      const [frequency, ratio] =
        root.kind === "oscillation" ? [rounded(root.frequency), rounded(root.dampingRatio)] : ["", ""];
      const shares = [heave, roll, pitch, ...wheels].map(rounded);
      return [name ?? "", mode, root.kind, frequency, ratio, rounded(-root.re), ...shares];
    });
  });
  const head = ["case", "mode", "kind", "frequency Hz", "damping ratio", "decay 1/s", "heave", "roll", "pitch"];
  return csv([[...head, "front left", "front right", "rear left", "rear right"], ...rows]);
}
