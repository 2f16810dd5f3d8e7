/** Olley's flat ride: the rear frequency with which both ends meet again after a bump that the front met first. */

/**
 * N/f_f = N/f_r + L/v, so f_r = 1/(1/f_f − L/(N v)), Hz.
 *
 * @param cycles N, how many of its own cycles the front makes until then; 1.5 is a convention
 * @returns undefined where the rear would have to be infinitely fast: L/(N v) is not below 1/f_f
 * Source: rule from Olley as told in Milliken & Milliken and Gillespie (from memory).
 */
export function flatRideRearFrequency(
  front: number,
  wheelbase: number,
  speed: number,
  cycles: number,
): number | undefined {
  const period = 1 / front - wheelbase / (cycles * speed);
  const frequency = 1 / period;
  return period > 0 && Number.isFinite(frequency) ? frequency : undefined;
}
