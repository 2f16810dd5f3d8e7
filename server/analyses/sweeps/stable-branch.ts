/**
 * The stable branch of a sweep: the equilibrium at each value from the start on, what begins on the way, and where it
 * ends. Each point is solved from the flat patch, so that none rests on the one before.
 */
import type { CaseFigures, CaseResult, Sweep, SweepEvent, SweepPoint } from "../equilibrium/results.js";
import { isAbsent } from "../absent.js";
import type { Absent } from "../results.js";

export interface Along {
  readonly over: Sweep["over"];
  readonly values: readonly number[];
  at(value: number): CaseResult;
  /** True from where on the sweep shall not go. */
  ends?(figures: CaseFigures): boolean;
}

/** Halvings of a step in which something begins. */
const HALVINGS = 30;

/** The largest value, within a step, up to which `holds`. */
function lastOf(low: number, high: number, holds: (value: number) => boolean): number {
  let [from, to] = [low, high];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (from + to) / 2;
    if (holds(middle)) from = middle;
    else to = middle;
  }
  return from;
}

type Mark = Pick<SweepEvent, "what" | "name">;

/** What has begun in a state: lifted wheels and stops that carry. */
function marksOf({ wheels, elements }: CaseFigures): readonly Mark[] {
  return [
    ...wheels.flatMap(({ axle, side, isLifted }): Mark[] =>
      isLifted ? [{ what: "wheel-lifts", name: `${axle} ${side}` }] : [],
    ),
    ...elements.flatMap(({ path, kind, stop }): Mark[] =>
      kind === "bump-stop" && stop?.isReached === true ? [{ what: "stop-reached", name: path }] : [],
    ),
  ];
}

const has = (figures: CaseFigures, mark: Mark): boolean =>
  marksOf(figures).some(({ what, name }) => what === mark.what && name === mark.name);

const solvedAt = (along: Along, value: number): CaseFigures | undefined => {
  const result = along.at(value);
  return result.kind === "equilibrium" ? result : undefined;
};

function eventsBetween(along: Along, before: SweepPoint, after: SweepPoint): readonly SweepEvent[] {
  return marksOf(after.figures)
    .filter((mark) => !has(before.figures, mark))
    .map((mark) => {
      const value = lastOf(before.value, after.value, (middle) => {
        const figures = solvedAt(along, middle);
        return figures !== undefined && !has(figures, mark);
      });
      return { ...mark, value };
    });
}

const endOf = (result: CaseResult): string =>
  result.kind === "no-equilibrium" ? result.words : "the sweep goes no further";

/** @returns absent where not even the start can be asked */
export function stableBranch(along: Along): Sweep | Absent {
  const points: SweepPoint[] = [];
  const events: SweepEvent[] = [];
  let end: Sweep["end"];
  for (const value of along.values) {
    const result = along.at(value);
    if (isAbsent(result)) return result;
    const last = points.at(-1);
    if (result.kind === "no-equilibrium") {
      if (last === undefined)
        return { kind: "absent", reason: `the car has no equilibrium at the start: ${result.words}` };
      const limit = lastOf(last.value, value, (middle) => solvedAt(along, middle) !== undefined);
      const figures = solvedAt(along, limit);
      if (figures !== undefined && limit > last.value) points.push({ value: limit, branch: "stable", figures });
      end = { value: limit, why: endOf(result) };
      break;
    }
    const point: SweepPoint = { value, branch: "stable", figures: result };
    const begun = last === undefined ? [] : eventsBetween(along, last, point);
    if (along.ends?.(result) === true && last !== undefined) {
      const first = begun.filter(({ what }) => what === "wheel-lifts").sort((a, b) => a.value - b.value)[0];
      const limit = first?.value ?? value;
      const figures = solvedAt(along, limit);
      if (figures !== undefined) points.push({ value: limit, branch: "stable", figures });
      events.push(...begun.filter((event) => event.value <= limit));
      end = { value: limit, why: first === undefined ? endOf(result) : `the ${first.name} wheel lifts` };
      break;
    }
    events.push(...begun);
    points.push(point);
  }
  return { kind: "sweep", over: along.over, points, events: events.sort((a, b) => a.value - b.value), end };
}
