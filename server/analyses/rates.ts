/**
 * The rates of one axle at static trim, from the stiffness and damping that its elements add up to.
 *
 * K = ∂²U/∂z² = Σ k ∇s∇sᵀ + F ∇²s over left and right wheel travel; heave rate 1ᵀK1; roll stiffness
 * t²/4 · pᵀKp with p = (−1, 1); single wheel K_LL, the other one held. Ride rates have the tyres in
 * series: K_t − K_t (K + K_t)⁻¹ K_t, the tyre's rate being taken at the wheel centre's travel.
 *
 * Source: virtual work; W. F. Milliken, D. L. Milliken, Race Car Vehicle Dynamics, ch. 16 (from memory).
 */
import type { AxleMechanism } from "../elements/mechanism.js";
import { absent } from "./absent.js";
import type { Contributions } from "./contributions.js";
import { atWheel, type Form, inHeave, inRoll, inSeriesWith } from "./form.js";
import { sprungMass } from "./loads.js";
import type { Absent, AxleRates, Figure, RateShare } from "./results.js";
import type { Trim } from "./trim.js";

/** A figure of a sum that may be missing; `needs` names what else it takes. */
function figure<T>(sum: T | string, compute: (sum: T) => Figure): Figure {
  return typeof sum === "string" ? absent(sum) : compute(sum);
}

const noTrack = ({ name }: AxleMechanism): Absent => absent(`the ${name} axle has no track`);

const rollOf = (mechanism: AxleMechanism, sum: Form | string): Figure =>
  figure(sum, (form) => (mechanism.track === undefined ? noTrack(mechanism) : inRoll(form, mechanism.track)));

/** The stiffness with the tyres in series, or why there is none. */
function withTyres(mechanism: AxleMechanism, stiffness: Form | string): Form | string {
  if (typeof stiffness === "string") return stiffness;
  const { left, right } = mechanism.wheels;
  if (left.tyreRate === undefined || right.tyreRate === undefined) {
    return `the ${mechanism.name} wheels have no tyre-rate`;
  }
  const ride = inSeriesWith(stiffness, left.tyreRate, right.tyreRate);
  return ride ?? "springs and tyres cancel each other";
}

/**
 * Undamped frequency of the axle's sprung mass on its ride rate, Hz: √(K_heave / m_s) / 2π with m_s the
 * mass on the axle less what is unsprung. The body is taken to move at this axle alone.
 */
function heaveFrequency(mechanism: AxleMechanism, rideHeave: Figure): Figure {
  if (typeof rideHeave !== "number") return rideHeave;
  const sprung = sprungMass(mechanism);
  if (typeof sprung !== "number") return sprung;
  if (rideHeave < 0) return absent(`the ${mechanism.name} axle's ride rate is negative, so that it does not oscillate`);
  return Math.sqrt(rideHeave / sprung) / (2 * Math.PI);
}

/** Shares of every element in the stiffness; empty where the sum or the track is not known. */
function sharesOf(mechanism: AxleMechanism, forms: Contributions["stiffness"], sum: Form | string): RateShare[] {
  const { track } = mechanism;
  if (track === undefined || typeof sum === "string") return [];
  return [...forms].map(([{ path }, form]) => ({
    path,
    heave: inHeave(form),
    roll: inRoll(form, track),
    single: atWheel(form),
  }));
}

/** Over left and right wheel. */
const matrixOf = (sum: Form | string): AxleRates["stiffness"] =>
  typeof sum === "string"
    ? absent(sum)
    : [
        [sum.LL, sum.LR],
        [sum.LR, sum.RR],
      ];

export function axleRates(mechanism: AxleMechanism, parts: Contributions, trim: Trim): AxleRates {
  const { stiffnessSum: k, dampingSum: c } = parts;
  const ride = withTyres(mechanism, k);
  const rideHeave = figure(ride, inHeave);
  return {
    axle: mechanism.name,
    stiffness: matrixOf(k),
    heaveRate: figure(k, inHeave),
    rollStiffness: rollOf(mechanism, k),
    wheelRate: { left: figure(k, ({ LL }) => LL), right: figure(k, ({ RR }) => RR) },
    rideRate: { heave: rideHeave, roll: rollOf(mechanism, ride), single: figure(ride, atWheel) },
    heaveFrequency: heaveFrequency(mechanism, rideHeave),
    heaveDamping: figure(c, inHeave),
    rollDamping: rollOf(mechanism, c),
    damping: matrixOf(c),
    track: mechanism.track,
    tyreRate: { left: mechanism.wheels.left.tyreRate, right: mechanism.wheels.right.tyreRate },
    shares: sharesOf(mechanism, parts.stiffness, k),
    dampingShares: sharesOf(mechanism, parts.damping, c),
    trim: trim.results,
    rods: trim.rods,
    rollStiffnessShare: absent("it takes both axles"),
  };
}
