/**
 * The speed at which a car that was stable begins to diverge or to swing up, and which of the two it is.
 *
 * In: the linear car at each speed (its equilibrium solved, its slopes taken there). The range is looked at in steps, the
 * first change then closed in on by halving.
 *
 * Invariant: a speed without an equilibrium is told apart from one with an unstable equilibrium.
 */
import type { WholeCar } from "./car-data.js";
import { type Modes, modesOf, type Stability } from "./modes.js";

export type Onset =
  | { readonly kind: "stable"; readonly to: number }
  /** First unstable speed, m/s, to `width`, and what begins there. */
  | {
      readonly kind: "static-divergence" | "growing-oscillation";
      readonly speed: number;
      readonly mode: Exclude<Stability, { readonly kind: "stable" }>["mode"];
    }
  /** From this speed on there is no equilibrium to be stable about. */
  | { readonly kind: "no-equilibrium"; readonly speed: number };

export interface SpeedRange {
  readonly from: number;
  readonly to: number;
  /** Steps of the first look. */
  readonly steps: number;
  /** How closely the onset is wanted, m/s. */
  readonly width: number;
}

type State = Modes["stability"] | { readonly kind: "no-equilibrium" };

/** @param carAt the car about its equilibrium at a speed, undefined where there is none */
export function onsetOfInstability(carAt: (speed: number) => WholeCar | undefined, range: SpeedRange): Onset {
  const stateAt = (speed: number): State => {
    const car = carAt(speed);
    const modes = car && modesOf(car);
    return modes === undefined || modes.kind === "no-modes" ? { kind: "no-equilibrium" } : modes.stability;
  };
  let calm = range.from;
  for (let i = 0; i <= range.steps; i++) {
    const speed = range.from + ((range.to - range.from) * i) / Math.max(1, range.steps);
    const state = stateAt(speed);
    if (state.kind !== "stable") return closedIn(stateAt, calm, { speed, state }, range.width);
    calm = speed;
  }
  return { kind: "stable", to: range.to };
}

/** Halves between a stable and an unstable speed. What is found last, nearest to the onset, says what begins. */
function closedIn(
  stateAt: (speed: number) => State,
  stable: number,
  first: { readonly speed: number; readonly state: State },
  width: number,
): Onset {
  let calm = stable;
  let { speed, state } = first;
  // Doubles run out of halves long before this.
  for (let i = 0; i < 100 && speed - calm > width; i++) {
    const middle = (speed + calm) / 2;
    const found = stateAt(middle);
    if (found.kind === "stable") calm = middle;
    else [speed, state] = [middle, found];
  }
  if (state.kind === "no-equilibrium" || state.kind === "stable") return { kind: "no-equilibrium", speed };
  return { kind: state.kind, speed, mode: state.mode };
}
