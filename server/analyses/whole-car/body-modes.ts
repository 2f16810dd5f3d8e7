/**
 * The body as a rigid plate on its ride rates: stiffnesses about the sprung centre of gravity, and its bounce and pitch
 * with the points about which it turns.
 *
 * q = [z, φ, θ]. Wheels held still (`rigid` tyres), or let go onto their tyres, statically condensed:
 * K = K_bb − K_bw K_ww⁻¹ K_wb.
 *
 * Node of a mode without roll: x = z/θ forward of the centre of gravity, where z − xθ = 0; none where it does not pitch.
 * Source: S. S. Rao, Mechanical Vibrations, ch. 5; T. D. Gillespie, Fundamentals of Vehicle Dynamics, ch. 5 (from memory).
 */
import { solved, undampedSpectrum } from "../../maths/eigen.js";
import { product, type Rows } from "../../maths/rows.js";
import type { WholeCar } from "./car-data.js";
import { carDynamics, FIRST_WHEEL } from "./dynamics.js";
import { steadyStiffness } from "./linear-system.js";

export interface BodyMode {
  /** ω², (rad/s)²; negative where the body falls over. */
  readonly square: number;
  /** Hz; undefined where ω² is negative. */
  readonly frequency: number | undefined;
  /** z, φ, θ with qᵀM q = 1. */
  readonly shape: readonly number[];
  /** m forward of the centre of gravity. */
  readonly node: number | undefined;
}

export interface BodyModes {
  /** 3 × 3 over [z, φ, θ]: N/m, N·m/rad; what couples them off the diagonal. */
  readonly stiffness: Rows;
  readonly modes: readonly BodyMode[];
}

/** Undefined where wheels have nothing to stand on, or a mass is not above zero. */
export function bodyModes(car: WholeCar, tyres: "rigid" | "in-series"): BodyModes | undefined {
  const stiffness = bodyStiffness(car, tyres);
  if (stiffness === undefined) return undefined;
  const { mass, rollInertia, pitchInertia } = car.sprung;
  const masses = [
    [mass, 0, 0],
    [0, rollInertia, 0],
    [0, 0, pitchInertia],
  ];
  const spectrum = undampedSpectrum(masses, stiffness);
  if (spectrum === undefined) return undefined;
  const modes = spectrum.squares.map((square, k) =>
    modeOf(
      square,
      spectrum.shapes.map((row) => row[k]!),
    ),
  );
  return { stiffness, modes };
}

function bodyStiffness(car: WholeCar, tyres: "rigid" | "in-series"): Rows | undefined {
  const whole = steadyStiffness(carDynamics(car));
  const part = (rows: readonly [number, number?], columns: readonly [number, number?]): number[][] =>
    whole.slice(...rows).map((row) => row.slice(...columns));
  const body = part([0, FIRST_WHEEL], [0, FIRST_WHEEL]);
  if (tyres === "rigid") return body;
  const follow = solved(part([FIRST_WHEEL], [FIRST_WHEEL]), part([FIRST_WHEEL], [0, FIRST_WHEEL]));
  if (follow === undefined) return undefined;
  const taken = product(part([0, FIRST_WHEEL], [FIRST_WHEEL]), follow);
  return body.map((row, i) => row.map((value, j) => value - taken[i]![j]!));
}

function modeOf(square: number, shape: readonly number[]): BodyMode {
  const node = shape[0]! / shape[2]!;
  return {
    square,
    frequency: square >= 0 ? Math.sqrt(square) / (2 * Math.PI) : undefined,
    shape,
    node: Number.isFinite(node) ? node : undefined,
  };
}
