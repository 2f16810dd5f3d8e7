/** A law that is not to be had, and whether what is written is to blame. */
import type { DimensionName } from "../../grammar/vocabulary/word.js";

export interface Lawless {
  readonly lawless: string;
  /** True where what is written contradicts itself; false where something is left out or not computed yet. */
  readonly atFault: boolean;
  /** The lines that are to blame, as dotted words in the element's block (`torsion-bar.bore`), the likeliest first. */
  readonly lines?: readonly string[] | undefined;
}

export const lawless = (reason: string, atFault = false, ...lines: readonly string[]): Lawless =>
  lines.length === 0 ? { lawless: reason, atFault } : { lawless: reason, atFault, lines };

export const isLawless = (made: object): made is Lawless => "lawless" in made;

const TORSIONAL: ReadonlySet<DimensionName> = new Set<DimensionName>([
  "torsional-rate",
  "torsional-damping",
  "moment",
  "angle",
  "angular-speed",
  "inertia",
]);

export const isTorsional = (dimension: DimensionName): boolean => TORSIONAL.has(dimension);

/** What is wrong where a law is for the other kind of motion than the connection's. */
export function mismatch(
  what: string,
  lawIsTorsional: boolean,
  connectionIsTorsional: boolean | undefined,
): Lawless | undefined {
  if (connectionIsTorsional === undefined || connectionIsTorsional === lawIsTorsional) return undefined;
  const reason = lawIsTorsional
    ? `its ${what} is for twisting, but it is joined so that it is lengthened and shortened`
    : `its ${what} is for lengthening and shortening, but it is joined so that it twists`;
  return lawless(reason, true);
}
