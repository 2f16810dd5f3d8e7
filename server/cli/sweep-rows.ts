/** Rows of a sweep, a run of them at a time: what a worker does, and the command itself where they are few. */
import { type Cell, type SweptAxis, type SweptFigure, sweepRow } from "../snapshot/sweep.js";
import { carOf, openFile } from "./workspace.js";

/** Plain data: it is sent to workers. */
export interface SweepJob {
  readonly file: string;
  readonly setup: string | undefined;
  readonly axes: readonly SweptAxis[];
  readonly figures: readonly SweptFigure[];
}

let opened: { readonly path: string; readonly file: ReturnType<typeof openFile>["file"] } | undefined;

/** Rows from `from` up to, but without, `to`; the file is read once and kept. */
export function sweepRows(job: SweepJob, from: number, to: number): readonly (readonly Cell[])[] {
  opened = opened?.path === job.file ? opened : { path: job.file, file: openFile(job.file).file };
  const { file } = opened;
  const car = carOf(file, job.setup);
  return Array.from({ length: to - from }, (_, i) => sweepRow(file, car, job.axes, job.figures, from + i));
}
