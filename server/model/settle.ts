/**
 * Puts values that rest on each other into an order in which each comes after what it needs, and
 * finds the circles. Works on its own stack: a chain of ten thousand steps is no deeper than one.
 */
export interface Knot {
  readonly name: string;
  /** What has to be known first. Asked once. */
  needs(): readonly Knot[];
  /** Called once, after everything that it needs; not called for members of a circle. */
  settle(): void;
  /** Called for each member of a circle, with the names round it from this one on. */
  circle(names: readonly string[]): void;
}

interface Frame {
  readonly knot: Knot;
  readonly needs: readonly Knot[];
  next: number;
}

export type Progress = Map<Knot, "open" | "done">;

export function settle(start: Knot, progress: Progress): void {
  if (progress.has(start)) return;
  const stack: Frame[] = [enter(start, progress)];
  const circular = new Set<Knot>();
  for (let frame = stack.at(-1); frame !== undefined; frame = stack.at(-1)) {
    const need = frame.needs[frame.next++];
    if (need === undefined) {
      stack.pop();
      progress.set(frame.knot, "done");
      if (!circular.has(frame.knot)) frame.knot.settle();
    } else if (!progress.has(need)) stack.push(enter(need, progress));
    else if (progress.get(need) === "open") closeCircle(stack, need, circular);
  }
}

function enter(knot: Knot, progress: Progress): Frame {
  progress.set(knot, "open");
  return { knot, needs: knot.needs(), next: 0 };
}

function closeCircle(stack: readonly Frame[], back: Knot, circular: Set<Knot>): void {
  const from = stack.findIndex((frame) => frame.knot === back);
  const members = stack.slice(from).map((frame) => frame.knot);
  members.forEach((member, index) => {
    if (circular.has(member)) return;
    circular.add(member);
    const round = [...members.slice(index), ...members.slice(0, index), member];
    member.circle(round.map(({ name }) => name));
  });
}
