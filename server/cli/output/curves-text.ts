/** Curves of an element for the terminal: each as a plot of characters, with its marks as a table below. */
import pc from "picocolors";
import { plot } from "simple-ascii-chart";
import type { CarModel } from "../../model/car.js";
import { showNumber } from "../../quantities/index.js";
import type { CurveSheet, SheetCurve } from "../../views/curve-sheet.js";
import type { PlotAxis } from "../../views/drawings/plot.js";
import { scaleOf } from "../../views/drawings/scale.js";
import { table } from "./table.js";

const WIDTH = 60;
const HEIGHT = 12;
const DIGITS = 4;

const titled = ({ name, unit }: PlotAxis): string => (unit === "" ? name : `${name}, ${unit}`);

/** Evenly spaced in x, as the plot of characters has its columns; where the curve jumps the upper piece counts. */
function columns({ points }: SheetCurve): [number, number][] {
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return [];
  const step = (last.x - first.x) / (WIDTH - 1);
  return Array.from({ length: WIDTH }, (_, i) => {
    const x = i === WIDTH - 1 ? last.x : first.x + i * step;
    const next = points.findIndex((point) => point.x > x);
    const [a, b] = next < 0 ? [last, last] : [points[next - 1] ?? first, points[next] ?? last];
    return [x, b.x > a.x ? a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x) : b.y];
  });
}

function drawn(curve: SheetCurve): string {
  const points = columns(curve);
  if (points.length === 0) return "";
  const [x, y] = [
    scaleOf(
      points.map((point) => point[0]),
      5,
      false,
    ),
    scaleOf(
      points.map((point) => point[1]),
      4,
      curve.kind === "law",
    ),
  ];
  const chart = plot(points, {
    width: WIDTH,
    height: HEIGHT,
    yRange: [y.from, y.to],
    customXAxisTicks: x.ticks.filter((tick) => tick >= (points[0]?.[0] ?? tick)),
    customYAxisTicks: [...y.ticks],
    formatter: (value, { axis }) => (axis === "x" ? x : y).text(value),
  });
  return chart
    .split("\n")
    .map((line) => line.trimEnd())
    .join("\n");
}

function marksOf({ marks, x, y }: SheetCurve): string {
  if (marks.length === 0) return "";
  const columnsOf = [
    { head: "", align: "left" as const },
    { head: titled(x), align: "right" as const },
    { head: titled(y), align: "right" as const },
  ];
  const rows = marks.map((mark) => [mark.label, showNumber(mark.x, DIGITS), showNumber(mark.y, DIGITS)]);
  return table(columnsOf, rows);
}

export function curveText(curve: SheetCurve): string {
  const title = pc.bold(curve.title);
  if (curve.reason !== undefined) return `${title}\n  none: ${curve.reason}\n`;
  return `${title}\n${titled(curve.y)} over ${titled(curve.x)}\n${drawn(curve)}\n${marksOf(curve)}`;
}

export function curvesText(model: CarModel, sheet: CurveSheet): string {
  const head = pc.bold(`${model.setup ?? model.name}, ${sheet.path}`);
  return [head, ...sheet.curves.map(curveText)].join("\n\n");
}
