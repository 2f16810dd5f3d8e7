/**
 * What a change does: every figure that both cars have, those that moved beyond their threshold told, the rest counted.
 *
 * Invariant: a figure that is there on one side only is told with the reason, unless what it is of came or went itself.
 */
import { type Absent, type Figure } from "../../analyses/results.js";
import type { CheckedCar } from "../../findings/context.js";
import { isAbsent, showFigure } from "../figures.js";
import type { ShowUnit } from "../units-of-car.js";
import type { ChangeGroup } from "./change.js";
import { type FigureRow, figureRows } from "./figure-rows.js";
import type { NewNames } from "./renames.js";
import { thresholdOf } from "./thresholds.js";
import { percent, showDifference, showPoints } from "./value-text.js";

export interface Effect {
  readonly subject: string;
  readonly name: string;
  /** The load case; undefined at rest. */
  readonly at: string | undefined;
  readonly group: ChangeGroup;
  readonly isMain: boolean;
  readonly unit: string;
  readonly old: Figure;
  readonly now: Figure;
  /** SI; undefined where a side has no figure. */
  readonly change: number | undefined;
  /** Of what it was; undefined for places, angles, shares, and what was nought. */
  readonly relative: number | undefined;
  readonly oldText: string;
  readonly nowText: string;
  /** "+6.2 N/mm, +4.1 %", "+0.8 points" */
  readonly difference: string;
}

export interface Effects {
  readonly moved: readonly Effect[];
  /** Figures that moved less than that, or not at all. */
  readonly still: number;
}

export interface EffectsAsked {
  readonly unit: ShowUnit;
  /** Threshold as a fraction. */
  readonly share: number;
  readonly names: NewNames;
  /** Which figures are looked at; all that there are where absent. */
  readonly rows?: (car: CheckedCar, unit: ShowUnit) => readonly FigureRow[];
}

export function effectsBetween(old: CheckedCar, now: CheckedCar, asked: EffectsAsked): Effects {
  const { unit, share, names, rows = figureRows } = asked;
  const before = new Map(rows(old, unit).map((row) => [keyOf(renamed(row, names)), row]));
  const moved: Effect[] = [];
  let still = 0;
  for (const row of rows(now, unit)) {
    const was = before.get(keyOf(row));
    if (was === undefined || was.unit !== row.unit) continue;
    const effect = effectOf(was, row, share, now);
    if (effect === undefined) still += 1;
    else moved.push(effect);
  }
  const merged = bothSides(moved);
  return { moved: merged, still };
}

const renamed = ({ subject, name, at }: FigureRow, names: NewNames) => ({
  subject: names.path(subject),
  name,
  at: at && names.case(at),
});

const keyOf = ({ subject, name, at }: Pick<FigureRow, "subject" | "name" | "at">): string =>
  `${subject}\n${name}\n${at ?? ""}`;

function effectOf(was: FigureRow, row: FigureRow, share: number, { model }: CheckedCar): Effect | undefined {
  const { figure: old } = was;
  const { figure: now } = row;
  if (isAbsent(old) || isAbsent(now)) return isAbsent(old) && isAbsent(now) ? undefined : cameOrWent(row, old, now);
  const change = now - old;
  if (!(Math.abs(change) > thresholdOf(row, old, now, share, model))) return undefined;
  const relative = old === 0 || !isScale(row.unit) ? undefined : change / Math.abs(old);
  return { ...shared(row), old, now, change, relative, ...texts(row, old, now, change, relative) };
}

const shared = ({ subject, name, at, group, isMain, unit }: FigureRow) => ({ subject, name, at, group, isMain, unit });

function texts({ unit }: FigureRow, old: number, now: number, change: number, relative: number | undefined) {
  const shown = unit === "%" ? showPoints(change) : showDifference(change, unit);
  return {
    oldText: showFigure(old, unit),
    nowText: showFigure(now, unit),
    difference: relative === undefined ? shown : `${shown}, ${percent(relative)}`,
  };
}

function cameOrWent(row: FigureRow, old: Figure, now: Figure): Effect {
  const text = (figure: Figure): string => (isAbsent(figure) ? "none" : showFigure(figure, row.unit));
  const why = [old, now].find((figure): figure is Absent => isAbsent(figure))?.reason ?? "";
  return {
    ...shared(row),
    old,
    now,
    change: undefined,
    relative: undefined,
    oldText: text(old),
    nowText: text(now),
    difference: isAbsent(now) ? `no longer there: ${why}` : `was not there: ${why}`,
  };
}

/** Units in which a part in a hundred says something: not places, angles, shares. */
const isScale = (unit: string): boolean => !["mm", "in", "m", "deg", "rad", "%"].includes(unit);

/** Left and right that move alike, as far as anybody reads figures, are told once. */
function bothSides(moved: readonly Effect[]): readonly Effect[] {
  const twins = new Map<string, Effect>();
  for (const effect of moved) if (isSide(effect, "right")) twins.set(twinKey(effect), effect);
  const taken = new Set<Effect>();
  const told = moved.map((effect) => {
    const twin = isSide(effect, "left") ? twins.get(twinKey(effect)) : undefined;
    if (twin === undefined || !isAlike(effect, twin)) return effect;
    taken.add(twin);
    return { ...effect, subject: withoutSide(effect.subject) };
  });
  return told.filter((effect) => !taken.has(effect));
}

const SIDE = /(^|[ .])(left|right)(?=$|\.)/;

const isSide = ({ subject }: Effect, side: "left" | "right"): boolean => SIDE.exec(subject)?.[2] === side;
const withoutSide = (subject: string): string => subject.replace(SIDE, "");
const twinKey = (effect: Effect): string => keyOf({ ...effect, subject: withoutSide(effect.subject) });

/** Digits in which two sides have to agree. */
const READ = 3;

const isAlike = (a: Effect, b: Effect): boolean =>
  showFigure(a.old, a.unit, READ) === showFigure(b.old, b.unit, READ) &&
  showFigure(a.now, a.unit, READ) === showFigure(b.now, b.unit, READ);
