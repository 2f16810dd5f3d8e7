/**
 * What an element can bear: the parts of it that are stressed by what it carries, the lengths of its coil, and how far
 * it can be moved. Beside the law, which goes on whatever happens to these.
 *
 * Units: Pa, m, rad; a load is the element's own, N or N·m.
 *
 * Invariant: stress is proportional to the load, whatever stages, gaps and preloads are in line with the part.
 */

export interface StressedPart {
  readonly name: "coil" | "torsion bar" | "blade";
  readonly kind: "shear" | "bending";
  /** Stress for each unit of load. */
  readonly perLoad: number;
  readonly allowable: Allowable;
}

export interface Allowable {
  /** As its maker states it. */
  readonly stated: number | undefined;
  /** Usual for what such parts are made of, where it is worked one way only, and where both ways. */
  readonly oneWay: number;
  readonly bothWays: number;
  readonly source: string;
}

/** A coil's lengths without load and with its turns closed up, and its own rate. */
export interface CoilLengths {
  readonly rate: number;
  readonly free: number;
  readonly solid: number;
}

/** Deflections from design between which it can be moved. */
export interface Stroke {
  readonly from: number;
  readonly to: number;
}

export interface Strength {
  readonly parts: readonly StressedPart[];
  readonly coil: CoilLengths | undefined;
  readonly stroke: Stroke | undefined;
  /** True for a spring between two eyes that is taken to pull as well, though nothing is said of it. */
  readonly pullsUnsaid: boolean;
}
