/**
 * Finding spans in lists of them. In: spans in text order, none overlapping another. Each search is
 * binary, so that a file full of faults takes no longer than one without.
 */
import type { Span } from "./span.js";

/** The index of the first that starts at or behind `offset`. */
export function indexFrom(spans: readonly Span[], offset: number): number {
  let low = 0;
  let high = spans.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (spans[middle]!.start < offset) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Those that start inside `span`. */
export function within<T extends Span>(spans: readonly T[], { start, end }: Span): readonly T[] {
  return spans.slice(indexFrom(spans, start), indexFrom(spans, end));
}

export function holdsAny(spans: readonly Span[], { start, end }: Span): boolean {
  const first = spans[indexFrom(spans, start)];
  return first !== undefined && first.start < end;
}

/** The one that holds all of `inner`, edges included. */
export function holderOf<T extends Span>(spans: readonly T[], inner: Span): T | undefined {
  const last = spans[indexFrom(spans, inner.start + 1) - 1];
  return last !== undefined && inner.end <= last.end ? last : undefined;
}

/** The smallest span that holds `span` and every one of them that touches it. */
export function hull(spans: readonly Span[], span: Span): Span {
  let first = indexFrom(spans, span.start);
  while (first > 0 && spans[first - 1]!.end >= span.start) first--;
  const last = spans[indexFrom(spans, span.end + 1) - 1];
  return {
    start: Math.min(span.start, spans[first]?.start ?? span.start),
    end: Math.max(span.end, last?.end ?? span.end),
  };
}
