/** Percentiles of measured times and one way to print a row of the bench. */
export interface Spread {
  readonly p50: number;
  readonly p95: number;
  readonly most: number;
}

export function spread(values: readonly number[]): Spread {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
  return { p50: at(0.5), p95: at(0.95), most: at(1) };
}

/** `limit` is the figure that the project asks of itself; the verdict is told, never enforced here. */
export function row(
  name: string,
  value: number,
  unit: string,
  limit?: { readonly atMost?: number; readonly atLeast?: number },
): string {
  const verdict = limit === undefined ? "" : verdictOf(value, limit);
  return `${name.padEnd(58)} ${value.toPrecision(4).padStart(10)} ${unit.padEnd(12)} ${verdict}`;
}

function verdictOf(
  value: number,
  { atMost, atLeast }: { readonly atMost?: number; readonly atLeast?: number },
): string {
  const asked = atMost === undefined ? `at least ${atLeast}` : `at most ${atMost}`;
  const met = (atMost === undefined || value <= atMost) && (atLeast === undefined || value >= atLeast);
  return `${met ? "within" : "BEYOND"} (${asked})`;
}
