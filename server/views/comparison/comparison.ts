/** What a comparison of two cars or set-ups comes to: plain data, SI and texts in the author's units. */
import type { Finding } from "../../findings/finding.js";
import type { Change } from "./change.js";
import type { Effect } from "./effects.js";
import type { AxlePicture } from "./pictures.js";
import type { VerdictChange } from "./verdicts.js";

export interface SideName {
  /** Of the car or set-up. */
  readonly name: string;
  readonly uri: string;
  readonly label: string;
}

/** A load case that has an equilibrium on one side only. */
export interface CaseChange {
  readonly name: string;
  /** Why it has none; undefined where it has one. */
  readonly old: string | undefined;
  readonly now: string | undefined;
}

export interface Comparison {
  readonly old: SideName;
  readonly now: SideName;
  /** What the newer one derives from, nearest first. */
  readonly bases: readonly string[];
  readonly headline: string;
  /** Whether anything at all is said otherwise. */
  readonly differs: boolean;
  readonly changes: readonly Change[];
  readonly effects: readonly Effect[];
  /** How many further figures moved less than their threshold, and the share that is asked for. */
  readonly still: number;
  readonly threshold: number;
  readonly cases: readonly CaseChange[];
  readonly verdicts: readonly VerdictChange[];
  readonly fresh: readonly ComparedFinding[];
  readonly gone: readonly ComparedFinding[];
  readonly pictures: readonly AxlePicture[];
}

export interface ComparedFinding extends Finding {
  /** From 1. */
  readonly line: number;
}
