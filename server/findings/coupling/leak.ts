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

/** The motion counts where it is beyond the limit; else it is what the element's load does as it swings. */
export const isByMotion = ({ firstOrder, finite }: Leak, limit: number): boolean =>
  Math.max(firstOrder, sizeOf(finite)) > limit;

/** "12.3 % of its own motion at design, 12.9 % over the travel, 1.5 % of the damping in heave". */
export function leakWords(leak: Leak, figures: ElementFigures): string {
  const parts = [`${times(leak.firstOrder)} its own motion at design`];
  if (typeof leak.finite === "number") parts.push(`${times(leak.finite).replace(/ of$/, "")} over the travel`);
  if (sizeOf(leak.rate) >= TOLD) parts.push(rateShare(leak, figures));
  return parts.join(", ");
}

/** A share of a rate below this is none to speak of. */
const TOLD = 5e-4;

/** "gives 6.1 % of the stiffness in roll", "takes 6.1 % of the stiffness in roll away". */
export function rateWords(leak: Leak, figures: ElementFigures): string {
  const share = rateShare(leak, figures);
  return typeof leak.rate === "number" && leak.rate < 0 ? `takes ${share} away` : `gives ${share}`;
}

/** "1.5 % of the damping in heave". */
function rateShare({ rate, mode }: Leak, { kind }: ElementFigures): string {
  const what = kind === "damper" ? "damping" : "stiffness";
  return `${percent(sizeOf(rate))} of the ${what} ${mode === "other-wheel" ? "at that wheel" : `in ${mode}`}`;
}

/** "12.3 % of", "26 times". */
const times = (part: number): string => (part < 2 ? `${percent(part)} of` : `${showNumber(part, 2)} times`);

/** A tenth of a per cent is the smallest that counts. */
const percent = (part: number): string => `${showNumber(Math.round(part * 1000) / 10, 3)} %`;
