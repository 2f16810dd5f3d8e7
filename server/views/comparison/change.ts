/**
 * What differs between two resolved cars, as plain data: one entry a property, element, eye, case or note, each with the
 * places on both sides. Texts are in the author's units.
 *
 * Invariant: what is written differently but comes to the same (order, layout, unit, `let`, file, base) is no change.
 */
import type { AxleName, Origin } from "../../model/origin.js";

/** What is said on one side, and where. */
export interface Told {
  readonly text: string;
  readonly origin: Origin;
  /** From 1; known once the texts are at hand. */
  readonly line?: number;
}

/** Where a change belongs: the heading that it is told under. */
export interface ChangeGroup {
  /** Undefined for what is of the whole car. */
  readonly axle: AxleName | undefined;
  /** `heave`, `heave and roll` of an element; else `geometry`, `wheels`, `axle`, `car`, `air`, `cases`, `road`, `masses`. */
  readonly topic: string;
}

export interface Change {
  readonly kind: "changed" | "added" | "removed" | "renamed";
  readonly of: "property" | "part" | "element" | "eye" | "case" | "expectation" | "note";
  /** As an override says it: `front.third.rate`; `case hairpin` and `expect …` by what they declare. */
  readonly path: string;
  readonly group: ChangeGroup;
  /** Undefined where it was not there. */
  readonly old: Told | undefined;
  readonly now: Told | undefined;
  /** "+2 mm (1.6 turns)"; undefined where two things have no difference. */
  readonly difference: string | undefined;
  /** What comes with it: the figures of another part, the lines of a new element. */
  readonly details: readonly Change[];
  /** Where the same line of a catalogue is behind several: the other paths that it is fitted as. */
  readonly also: readonly string[];
}
