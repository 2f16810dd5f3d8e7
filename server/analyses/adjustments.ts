/**
 * What one step of each adjuster does to each figure of the car, and how far each keeps to what it is for.
 *
 * In: the figures before and after each step. Out: changes, the independence of each adjuster, the largest changes that
 * nobody asked for.
 *
 * Changes of rates and damping are compared as fractions of what they were, since a rate of an axle in heave and its
 * stiffness in roll have no common unit. Independence = largest change off target / largest change on target: 0 where a
 * step changes its own mode only, 1 where it changes another mode as much.
 *
 * - Of an element of one axle, heave and roll of both axles count; those that it is for, on its own axle, are its target. A
 *   single wheel's rate is K_heave/4 + K_roll/t² of its axle and therefore no mode of its own; of an element `for corner` heave
 *   and roll of its axle are both its target.
 * - Of an element between the axles, heave, pitch and roll of the whole body count.
 */
import { absent, isAbsent } from "./absent.js";
import type { Figure } from "./results.js";

export interface AdjustedFigure {
  /** `front.heave-rate`, `load-transfer-front at hairpin` */
  readonly name: string;
  readonly group: "rate" | "damping" | "height" | "share";
  readonly axle: "front" | "rear" | undefined;
  /** Undefined for single wheels, heights and shares. */
  readonly mode: "heave" | "roll" | "pitch" | undefined;
}

export interface Step {
  readonly path: string;
  /** What it is for; empty for what is no element. */
  readonly for: readonly string[];
  readonly axle: "front" | "rear" | undefined;
  /** One a figure. */
  readonly before: readonly Figure[];
  readonly after: readonly Figure[];
}

export interface StepEffect {
  readonly path: string;
  /** After less before, SI. */
  readonly changes: readonly Figure[];
  /** The same over what it was; absent where that is nought, and for heights and shares. */
  readonly relative: readonly Figure[];
  readonly independence: Figure;
}

export interface OffDiagonal {
  readonly path: string;
  readonly figure: string;
  readonly relative: number;
  /** Over its largest change on target; undefined where there is none. */
  readonly overTarget: number | undefined;
}

/** Changes below this are what rounding leaves. */
const NOTHING = 1e-9;
/** A step that changes less than this, as a fraction, is no way to set a mode: its independence would be that of its bends. */
const FELT = 1e-3;

const isTarget = (figure: AdjustedFigure, step: Step): boolean => {
  if (figure.mode === undefined || figure.axle !== step.axle) return false;
  if (step.for.includes("corner")) return figure.mode !== "pitch";
  return step.for.includes(figure.mode);
};

/** Whether a change of it counts for or against the step. */
const counts = (figure: AdjustedFigure, step: Step): boolean =>
  figure.mode !== undefined && (figure.axle === undefined) === (step.axle === undefined);

function changeOf(before: Figure, after: Figure): Figure {
  if (isAbsent(before)) return before;
  return isAbsent(after) ? after : after - before;
}

function relativeOf(figure: AdjustedFigure, before: Figure, after: Figure): Figure {
  const change = changeOf(before, after);
  if (isAbsent(change) || isAbsent(before)) return change;
  if (figure.group === "height" || figure.group === "share")
    return absent("a height or a share has no scale of its own");
  if (before !== 0) return change / Math.abs(before);
  return change === 0 ? 0 : absent(`${figure.name} was nought`);
}

/** Largest known change of the figures that are picked; undefined where none of them is known. */
function largest(
  figures: readonly AdjustedFigure[],
  relative: readonly Figure[],
  pick: (one: AdjustedFigure) => boolean,
) {
  const sizes = figures.flatMap((figure, i) => {
    const value = relative[i];
    return pick(figure) && typeof value === "number" ? [Math.abs(value)] : [];
  });
  return sizes.length === 0 ? undefined : Math.max(...sizes);
}

function independenceOf(figures: readonly AdjustedFigure[], step: Step, relative: readonly Figure[]): Figure {
  if (step.for.length === 0) return absent("what is no element is for no mode");
  const on = largest(figures, relative, (figure) => isTarget(figure, step));
  const off = largest(figures, relative, (figure) => counts(figure, step) && !isTarget(figure, step)) ?? 0;
  if (on === undefined) return absent("a rate or damping that it is for is not known");
  if (Math.max(on, off) < FELT) return absent("a step of it changes no rate and no damping by a thousandth");
  return on > NOTHING ? off / on : absent("a step of it changes nothing that it is for");
}

export const stepEffects = (figures: readonly AdjustedFigure[], steps: readonly Step[]): readonly StepEffect[] =>
  steps.map((step) => {
    const changes = figures.map((_, i) => changeOf(step.before[i] ?? 0, step.after[i] ?? 0));
    const relative = figures.map((figure, i) => relativeOf(figure, step.before[i] ?? 0, step.after[i] ?? 0));
    return { path: step.path, changes, relative, independence: independenceOf(figures, step, relative) };
  });

/** Largest first; what is no element has no target to be off. */
export function offDiagonals(
  figures: readonly AdjustedFigure[],
  steps: readonly Step[],
  effects: readonly StepEffect[],
): readonly OffDiagonal[] {
  const all = steps.flatMap((step, row) => {
    const relative = effects[row]?.relative ?? [];
    const on = largest(figures, relative, (figure) => isTarget(figure, step)) ?? 0;
    return figures.flatMap((figure, i) => {
      const change = relative[i];
      if (step.for.length === 0 || !counts(figure, step) || isTarget(figure, step)) return [];
      if (typeof change !== "number" || Math.abs(change) <= NOTHING) return [];
      const overTarget = on > NOTHING ? Math.abs(change) / on : undefined;
      return [{ path: step.path, figure: figure.name, relative: change, overTarget }];
    });
  });
  return all.sort((a, b) => Math.abs(b.relative) - Math.abs(a.relative));
}
