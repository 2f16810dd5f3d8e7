/** Where a curve's points, ticks and axes lie in a plot. In: figures in the units shown. Out: px. Finite numbers only. */
import { extent, nice, ticks, tickStep } from "d3-array";
import { line } from "d3-shape";
import type { PanelCurve, PanelSeries } from "../../../server/lsp/protocol-panel.js";

export const PLOT = { width: 340, height: 190, left: 46, right: 10, top: 8, bottom: 34 } as const;

interface Axis {
  readonly from: number;
  readonly to: number;
  /** That a figure on it is told with: one more than its ticks. */
  readonly decimals: number;
  readonly ticks: readonly { readonly at: number; readonly text: string }[];
}

export interface Plotted {
  readonly x: Axis;
  readonly y: Axis;
  readonly px: (x: number) => number;
  readonly py: (y: number) => number;
  readonly path: (series: PanelSeries) => string;
}

/** A curve flatter than this share of its size is drawn as flat as it is. */
const FLAT = 0.04;

function axisOf(values: readonly number[], count: number): Axis {
  const [least = 0, most = 0] = extent(values);
  const size = Math.max(Math.abs(least), Math.abs(most));
  const room = Math.max(0, (FLAT * size - (most - least)) / 2) || (most > least ? 0 : 1);
  const [from, to] = nice(least - room, most + room, count);
  const step = tickStep(from, to, count);
  const decimals = Math.min(6, Math.max(0, -Math.floor(Math.log10(step) + 1e-9)));
  const text = (at: number): string =>
    at
      .toFixed(decimals)
      .replace(/^-(0\.?0*)$/, "$1")
      .replace("-", "\u2212");
  return { from, to, decimals: decimals + 1, ticks: ticks(from, to, count).map((at) => ({ at, text: text(at) })) };
}

export function plotted({ series }: PanelCurve): Plotted {
  const points = series.flatMap(({ points: all }) => all).filter(([x, y]) => Number.isFinite(x) && y !== null);
  const x = axisOf(
    points.map((point) => point[0]),
    5,
  );
  const y = axisOf(
    points.map((point) => point[1] ?? 0),
    4,
  );
  const px = (at: number): number =>
    PLOT.left + ((at - x.from) / (x.to - x.from)) * (PLOT.width - PLOT.left - PLOT.right);
  const py = (at: number): number =>
    PLOT.height - PLOT.bottom - ((at - y.from) / (y.to - y.from)) * (PLOT.height - PLOT.top - PLOT.bottom);
  const draw = line<readonly [number, number | null]>()
    .defined(([, value]) => value !== null)
    .x(([at]) => px(at))
    .y(([, value]) => py(value ?? 0))
    .digits(1);
  return { x, y, px, py, path: ({ points: all }) => draw([...all]) ?? "" };
}

/** On the curve at `x`, between its points; undefined beyond its ends and in its gaps. */
export function valueAt({ points }: PanelSeries, x: number): number | undefined {
  const after = points.findIndex(([at]) => at >= x);
  const [b, a] = [points[after], points[after - 1]];
  if (b === undefined) return undefined;
  if (b[0] === x) return b[1] ?? undefined;
  if (a === undefined || a[1] === null || b[1] === null) return undefined;
  return a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]);
}
