/**
 * The axis of a plot: from where to where, and the round values that its ticks stand at.
 *
 * Invariant: it has a width, whatever the values are.
 */
import { extent, nice, ticks, tickStep } from "d3-array";

/** A curve that is flatter than this share of its size is drawn as flat as it is. */
const FLAT = 0.1;
/** Nothing that is measured is smaller, and steps that are much smaller cannot be counted. */
const SMALLEST = 1e-99;

export interface Scale {
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly number[];
  text(value: number): string;
}

/** @param count of ticks, about */
export function scaleOf(values: readonly number[], count: number, fromZero: boolean): Scale {
  const told = fromZero ? [0, ...values] : values;
  const [least = 0, most = 0] = extent(told.map((value) => (Math.abs(value) < SMALLEST ? 0 : value)));
  const size = Math.max(Math.abs(least), Math.abs(most));
  const room = Math.max(0, (FLAT * size - (most - least)) / 2) || (most > least ? 0 : 1);
  const [from, to] = nice(least - room, most + room, count);
  const step = tickStep(from, to, count);
  const decimals = Math.min(12, Math.max(0, -Math.floor(Math.log10(step) + 1e-9)));
  return {
    from,
    to,
    ticks: ticks(from, to, count),
    text: (value) => value.toFixed(decimals).replace(/^-(0\.?0*)$/, "$1"),
  };
}
