/**
 * The whole car at static trim: wheel stiffness over FL, FR, RL, RR from both axles and what joins them, the same in
 * the four patterns of wheel travel, and in the body's own motions about its centre of gravity.
 *
 * K = diag(K_front, K_rear) + Σ k ∇s∇sᵀ + F ∇²s; patterns PᵀKP with unit travel at every wheel, its off-diagonals the
 * coupling of the car; body GᵀKG with G its motions. With tyres in series first: K_t − K_t (K + K_t)⁻¹ K_t.
 *
 * Source: virtual work; the patterns are the Hadamard modes used for interconnected suspensions (from memory).
 */
import type { Wheels } from "../elements/car-connection.js";
import { eachPair, eachWheel } from "../elements/car-connection.js";
import { CAR_MODES, PATTERNS } from "../elements/patterns.js";
import { throughSprings } from "../maths/in-series.js";
import { absent, isAbsent } from "./absent.js";
import type { BodyMotions } from "./car-motions.js";
import type { CarParts } from "./car-parts.js";
import type { CarAxleRates, CarSums } from "./car-sums.js";
import type { Absent, BodyFigures, CarModal, CarShare, Figure, JoiningDamping, ModalFigures } from "./results.js";
import { along, beside, between, type WheelMatrix } from "./wheel-matrix.js";

/** Tyre rates at the four wheels. */
function tyresOf({ front, rear }: CarAxleRates): Wheels | Absent {
  const rates = [front?.tyreRate.left, front?.tyreRate.right, rear?.tyreRate.left, rear?.tyreRate.right];
  const missing = rates.findIndex((rate) => rate === undefined);
  return missing < 0
    ? eachWheel((wheel) => rates[wheel] ?? 0)
    : absent(`the ${missing < 2 ? "front" : "rear"} wheels have no tyre-rate`);
}

function withTyres(stiffness: WheelMatrix | Absent, axles: CarAxleRates): WheelMatrix | Absent {
  if (isAbsent(stiffness)) return stiffness;
  const tyres = tyresOf(axles);
  if (isAbsent(tyres)) return tyres;
  const ride = throughSprings(stiffness, tyres);
  return ride === undefined
    ? absent("springs and tyres cancel each other")
    : eachPair((i, j) => ((ride[i]?.[j] ?? 0) + (ride[j]?.[i] ?? 0)) / 2);
}

/** uᵀMv where both motions are known. */
function figure(matrix: WheelMatrix | Absent, u: Wheels | Absent, v: Wheels | Absent): Figure {
  if (isAbsent(matrix)) return matrix;
  if (isAbsent(u)) return u;
  return isAbsent(v) ? v : along(matrix, u, v);
}

const bodyOf = (matrix: WheelMatrix | Absent, { heave, pitch, roll }: BodyMotions): BodyFigures => ({
  heave: figure(matrix, heave, heave),
  pitch: figure(matrix, pitch, pitch),
  roll: figure(matrix, roll, roll),
  heavePitch: figure(matrix, heave, pitch),
  heaveRoll: figure(matrix, heave, roll),
  pitchRoll: figure(matrix, pitch, roll),
});

const motions = CAR_MODES.map((mode): Wheels => PATTERNS[mode]);

const modalOf = (matrix: WheelMatrix | Absent, body: BodyMotions): ModalFigures => ({
  patterns: isAbsent(matrix) ? matrix : between(matrix, motions),
  body: bodyOf(matrix, body),
});

function shareOf(path: string, matrix: WheelMatrix): CarShare {
  const [heave, pitch, roll, warp] = motions.map((motion) => along(matrix, motion, motion));
  return { path, heave: heave ?? 0, pitch: pitch ?? 0, roll: roll ?? 0, warp: warp ?? 0 };
}

/** What each axle and each element between them adds; nothing where the sum is not known. */
function sharesOf({ front, rear }: CarAxleRates, parts: CarParts, sum: WheelMatrix | Absent): readonly CarShare[] {
  if (isAbsent(sum) || front === undefined || rear === undefined) return [];
  if (isAbsent(front.stiffness) || isAbsent(rear.stiffness)) return [];
  return [
    shareOf("front", beside(front.stiffness, undefined)),
    shareOf("rear", beside(undefined, rear.stiffness)),
    ...[...parts.stiffness].map(([{ path }, matrix]) => shareOf(path, matrix)),
  ];
}

const AXLE_MOTIONS = {
  front: { heave: [1, 1, 0, 0], roll: [-1, 1, 0, 0] },
  rear: { heave: [0, 0, 1, 1], roll: [0, 0, -1, 1] },
} as const;

function joiningDamping({ damping }: CarParts): readonly JoiningDamping[] {
  return [...damping].map(([{ path }, matrix]) => {
    const at = ({ heave, roll }: (typeof AXLE_MOTIONS)["front" | "rear"]) => ({
      heave: along(matrix, heave, heave),
      roll: along(matrix, roll, roll),
    });
    return { path, front: at(AXLE_MOTIONS.front), rear: at(AXLE_MOTIONS.rear) };
  });
}

export function carRates(axles: CarAxleRates, body: BodyMotions, parts: CarParts, sums: CarSums): CarModal {
  return {
    wheels: sums.stiffness,
    springs: modalOf(sums.stiffness, body),
    withTyres: modalOf(withTyres(sums.stiffness, axles), body),
    damping: modalOf(sums.damping, body),
    shares: sharesOf(axles, parts, sums.stiffness),
    joiningDamping: joiningDamping(parts),
  };
}
