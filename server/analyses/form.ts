/**
 * What a spring or a damper adds at the two wheels of its axle: a symmetric matrix over left and
 * right travel, and what it comes to in heave, in roll and at one wheel.
 */

/** [[LL, LR], [LR, RR]], N/m or N·s/m. */
export interface Form {
  readonly LL: number;
  readonly LR: number;
  readonly RR: number;
}

export const ZERO: Form = { LL: 0, LR: 0, RR: 0 };

export const plus = (a: Form, b: Form): Form => ({ LL: a.LL + b.LL, LR: a.LR + b.LR, RR: a.RR + b.RR });

/** 1ᵀM1: both wheels moved together, N/m of the mean travel. */
export const inHeave = (m: Form): number => m.LL + 2 * m.LR + m.RR;

/** t²/4 · pᵀMp with p = (−1, 1), N·m/rad of body roll. */
export const inRoll = (m: Form, track: number): number => ((track * track) / 4) * (m.LL - 2 * m.LR + m.RR);

/** At one wheel with the other held: mean of both sides. */
export const atWheel = (m: Form): number => (m.LL + m.RR) / 2;

/**
 * Two stiffnesses in series, the second one wheel by wheel: T − T (M + T)⁻¹ T.
 * Undefined where M + T is singular (no tyre, or a spring exactly as negative as the tyre is stiff).
 */
export function inSeriesWith(m: Form, left: number, right: number): Form | undefined {
  const a = m.LL + left;
  const c = m.RR + right;
  const determinant = a * c - m.LR * m.LR;
  const size = Math.abs(a * c) + m.LR * m.LR;
  if (!(Math.abs(determinant) > 1e-12 * size)) return undefined;
  return {
    LL: left - (left * left * c) / determinant,
    LR: (left * right * m.LR) / determinant,
    RR: right - (right * right * a) / determinant,
  };
}
