/** What sets a spring in its place, changed for room or for work: its gap and its preload. */
import type { Fix } from "../finding.js";
import { lineEdit, numberIn, onGrid } from "./line-edits.js";
import { clearedBy, type Mending } from "./proof.js";

const MILLIMETRE = 1e-3;
const TEN_NEWTONS = 10;

/** @param short by how much its room is too small, m */
export function moreGap(mending: Mending, short: number): readonly Fix[] {
  const [gap, preload] = [numberIn(mending, "gap"), numberIn(mending, "preload")];
  const { rate } = mending.element.figures;
  if (gap !== undefined) {
    const text = onGrid(gap.si + short, gap.unit, MILLIMETRE, "up");
    return offered(mending, "gap", text, "Open its gap to");
  }
  if (preload === undefined || typeof rate !== "number" || !(preload.si > rate * short)) return [];
  const text = onGrid(preload.si - rate * short, preload.unit, TEN_NEWTONS, "down");
  return offered(mending, "preload", text, "Lower its preload to");
}

/** Half of what is left of the gap once the travel takes it up at its very end. @param excess by how much it is too long */
export function lessGap(mending: Mending, excess: number): readonly Fix[] {
  const gap = numberIn(mending, "gap");
  if (gap === undefined || mending.element.figures.torsional || !(gap.si > excess)) return [];
  const text = onGrid((gap.si - excess) / 2, gap.unit, MILLIMETRE, "down");
  return offered(mending, "gap", text, "Close its gap to").map((fix) => ({ ...fix, preferred: true }));
}

/** Preload that keeps it seated. @param pull what it would have to pull, N */
export function morePreload(mending: Mending, pull: number): readonly Fix[] {
  const preload = numberIn(mending, "preload");
  const text = preload && onGrid(preload.si + pull, preload.unit, TEN_NEWTONS, "up");
  return offered(mending, "preload", text, "Raise its preload to");
}

function offered(mending: Mending, line: string, text: string | undefined, title: string): readonly Fix[] {
  const edit = text === undefined ? undefined : lineEdit(mending, line, text);
  if (edit === undefined || clearedBy(mending, { edits: [edit] }) === undefined) return [];
  return [{ title: `${title} ${text}`, edits: [edit], preferred: false, safe: false }];
}
