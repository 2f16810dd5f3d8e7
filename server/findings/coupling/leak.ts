/** The leak of an element as one figure to judge and as words. */
import type { ElementFigures, Figure, Leak } from "../../analyses/results.js";
import { showNumber } from "../../quantities/index.js";

export function leakOf({ leak }: ElementFigures): Leak | undefined {
  return leak === undefined || "kind" in leak ? undefined : leak;
}

/** The largest of the three, as a fraction; what is absent does not count. */
export function largestLeak({ firstOrder, finite, rate }: Leak): number {
  return Math.max(firstOrder, sizeOf(finite), sizeOf(rate));
}

const sizeOf = (figure: Figure): number => (typeof figure === "number" ? Math.abs(figure) : 0);

/** "12.3 % of its own motion at design, 12.9 % over the travel, 1.5 % of the damping in heave". */
export function leakWords(leak: Leak, { kind }: ElementFigures): string {
  const parts = [`${percent(leak.firstOrder)} of its own motion at design`];
  if (typeof leak.finite === "number") parts.push(`${percent(leak.finite)} over the travel`);
  if (typeof leak.rate === "number") {
    const what = kind === "damper" ? "damping" : "stiffness";
    parts.push(
      `${percent(leak.rate)} of the ${what} ${leak.mode === "other-wheel" ? "at that wheel" : `in ${leak.mode}`}`,
    );
  }
  return parts.join(", ");
}

const percent = (share: number): string => `${showNumber(share * 100, 3)} %`;
