/**
 * Damping ratio and frequency of each pure motion: one direction p of the seven freedoms, everything else held still.
 *
 *   k = pᵀK p   c = pᵀC p   m = pᵀM p   f = √(k/m)/2π   ζ = c/(2√(k m))
 *
 * Body motions: wheels still. Hop: body still, tyre and suspension both at work. Corner: the wheel still, its share of the
 * sprung mass on its wheel rate. They are yardsticks, not the car's own modes, which mix them.
 * Source: ζ = c/(2√(k m)) of any vibration text.
 */
import { absent } from "../absent.js";
import type { Figure } from "../results.js";
import { applied, inner, type Rows } from "../../maths/rows.js";
import type { WholeCar } from "./car-data.js";
import { carDynamics, FIRST_WHEEL, FREEDOMS } from "./dynamics.js";
import { steadyStiffness } from "./linear-system.js";

export interface PureMode {
  /** N/m, N·s/m, kg; N·m/rad and so on where it is a turn. */
  readonly stiffness: number;
  readonly damping: number;
  readonly mass: number;
  /** Undamped, Hz. */
  readonly frequency: Figure;
  readonly dampingRatio: Figure;
}

export interface PureModes {
  readonly heave: PureMode;
  readonly roll: PureMode;
  readonly pitch: PureMode;
  /** By wheel, FL, FR, RL, RR. */
  readonly corner: readonly PureMode[];
  readonly hop: readonly PureMode[];
  readonly parallelHop: { readonly front: PureMode; readonly rear: PureMode };
  readonly tramp: { readonly front: PureMode; readonly rear: PureMode };
}

export function pureModes(car: WholeCar): PureModes {
  const { mass, damping, ...rest } = carDynamics(car);
  const stiffness = steadyStiffness({ mass, damping, ...rest });
  const along = (entries: Readonly<Record<number, number>>): PureMode => {
    const p = Array.from({ length: FREEDOMS }, (_, i) => entries[i] ?? 0);
    const form = (matrix: Rows): number => inner(p, applied(matrix, p));
    return pureMode(form(stiffness), form(damping), form(mass));
  };
  const axle = (first: number, sign: number): PureMode => along({ [first]: 1, [first + 1]: sign });
  const [front, rear] = [FIRST_WHEEL, FIRST_WHEEL + 2];
  return {
    heave: along({ 0: 1 }),
    roll: along({ 1: 1 }),
    pitch: along({ 2: 1 }),
    corner: corners(car),
    hop: [0, 1, 2, 3].map((i) => along({ [FIRST_WHEEL + i]: 1 })),
    parallelHop: { front: axle(front, 1), rear: axle(rear, 1) },
    tramp: { front: axle(front, -1), rear: axle(rear, -1) },
  };
}

/** Share of the sprung mass over a wheel: by levers along and across. */
function corners(car: WholeCar): PureMode[] {
  const { mass, behindFront, left = 0 } = car.sprung;
  const onRear = behindFront / car.wheelbase;
  return [car.front, car.rear].flatMap((axle, a) => {
    const onAxle = mass * (a === 0 ? 1 - onRear : onRear);
    const onLeft = 0.5 + left / axle.track;
    return [onLeft, 1 - onLeft].map((share, i) => {
      const at = 2 * a + i;
      const own = (of: "stiffness" | "damping" | "inertance"): number =>
        axle[of][i]![i]! + (car.cross === undefined ? 0 : car.cross[of][at]![at]!);
      return pureMode(own("stiffness"), own("damping"), onAxle * share + own("inertance"));
    });
  });
}

function pureMode(stiffness: number, damping: number, mass: number): PureMode {
  if (!(stiffness > 0)) {
    const none = absent("nothing springs this motion, so it has no frequency of its own");
    return { stiffness, damping, mass, frequency: none, dampingRatio: none };
  }
  if (!(mass > 0)) {
    const none = absent("there is no mass in this motion, so it has no frequency of its own");
    return { stiffness, damping, mass, frequency: none, dampingRatio: none };
  }
  const frequency = Math.sqrt(stiffness / mass) / (2 * Math.PI);
  return { stiffness, damping, mass, frequency, dampingRatio: damping / (2 * Math.sqrt(stiffness * mass)) };
}
