/**
 * A plot of curves as SVG, small enough for a hover: axes with ticks, lines, marks with their legend below, and the whole
 * of it in words for who does not see it.
 *
 * In: figures in the units that they are shown in. Out: SVG text. Invariant: finite numbers only; what is not finite is
 * left out.
 */
import { line, symbol } from "d3-shape";
import type { Point } from "../../maths/polyline.js";
import { type Entry, entryWidth, legendRows } from "./legend.js";
import { colours, type LineStyleName, lineStyles, PAPER, type SignName, signs } from "./palette.js";
import { type Scale, scaleOf } from "./scale.js";
import { escaped, pixel, tag } from "./svg.js";

export interface PlotAxis {
  /** "deflection". */
  readonly name: string;
  /** As it is written; empty for a plain number. */
  readonly unit: string;
}

export interface PlotLine {
  readonly points: readonly Point[];
  readonly style: LineStyleName;
  /** For the legend; the main line needs none. */
  readonly label?: string | undefined;
}

export interface PlotMarks {
  readonly points: readonly Point[];
  readonly sign: SignName;
  readonly label: string;
}

export interface Plot {
  /** The text alternative. */
  readonly description: string;
  readonly x: PlotAxis;
  readonly y: PlotAxis & { readonly fromZero: boolean };
  readonly lines: readonly PlotLine[];
  readonly marks: readonly PlotMarks[];
}

const WIDTH = 330;
const AREA_HEIGHT = 130;
const TOP = 22;
const RIGHT = 12;
const X_AXIS = 30;
const ROW = 15;
const FONT = 11;
/** A figure's width at that size, wide enough for any usual sans-serif. */
const FIGURE = 6.2;
const SIGN_AREA = 38;

/** Beyond this, differences of figures are no figures any more. */
const LARGEST = 1e99;
const isDrawn = ({ x, y }: Point): boolean => Math.abs(x) <= LARGEST && Math.abs(y) <= LARGEST;

interface Frame {
  readonly x: Scale;
  readonly y: Scale;
  readonly left: number;
  readonly right: (x: number) => number;
  readonly down: (y: number) => number;
}

function frameOf({ lines, marks, y }: Plot): Frame {
  const all = [...lines, ...marks].flatMap(({ points }) => points.filter(isDrawn));
  const xs = scaleOf(
    all.map((point) => point.x),
    5,
    false,
  );
  const ys = scaleOf(
    all.map((point) => point.y),
    4,
    y.fromZero,
  );
  const left = 10 + FIGURE * Math.max(...ys.ticks.map((tick) => ys.text(tick).length), 2);
  const [wide, high] = [WIDTH - left - RIGHT, AREA_HEIGHT];
  return {
    x: xs,
    y: ys,
    left,
    right: (at) => left + (wide * (at - xs.from)) / (xs.to - xs.from),
    down: (at) => TOP + high - (high * (at - ys.from)) / (ys.to - ys.from),
  };
}

function text(at: readonly [number, number], anchor: "start" | "middle" | "end", content: string): string {
  return tag("text", { x: at[0], y: at[1], "text-anchor": anchor, fill: colours.text }, escaped(content));
}

const bottom = TOP + AREA_HEIGHT;

function gridX({ x, right }: Frame): string {
  const down = x.ticks.map((at) => `M${pixel(right(at))} ${TOP}V${bottom + 3}`).join("");
  const labels = x.ticks.map((at) => text([right(at), bottom + 14], "middle", x.text(at)));
  return tag("path", { d: down, stroke: colours.faint, "stroke-opacity": 0.2 }) + labels.join("");
}

function gridY({ y, left, down }: Frame): string {
  const across = y.ticks.map((at) => `M${pixel(left - 3)} ${pixel(down(at))}H${WIDTH - RIGHT}`).join("");
  const labels = y.ticks.map((at) => text([left - 6, down(at) + 4], "end", y.text(at)));
  return tag("path", { d: across, stroke: colours.faint, "stroke-opacity": 0.2 }) + labels.join("");
}

/** Through nought, where it lies inside. */
function noughts({ x, y, left, right, down }: Frame): string {
  const across = y.from <= 0 && y.to >= 0 ? `M${pixel(left)} ${pixel(down(0))}H${WIDTH - RIGHT}` : "";
  const up = x.from <= 0 && x.to >= 0 ? `M${pixel(right(0))} ${TOP}V${bottom}` : "";
  return across + up === "" ? "" : tag("path", { d: across + up, stroke: colours.faint, "stroke-opacity": 0.7 });
}

const titled = ({ name, unit }: PlotAxis): string => (unit === "" ? name : `${name}, ${unit}`);

function axes(plot: Plot, frame: Frame): string {
  const names =
    text([4, 13], "start", titled(plot.y)) + text([WIDTH - RIGHT, bottom + X_AXIS - 3], "end", titled(plot.x));
  return gridX(frame) + gridY(frame) + noughts(frame) + names;
}

function drawnLine({ points, style }: PlotLine, { right, down }: Frame): string {
  const path = line<Point>(
    (point) => pixel(right(point.x)),
    (point) => pixel(down(point.y)),
  ).defined(isDrawn)(points);
  const { colour, width, dashes } = lineStyles[style];
  if (path === null) return "";
  return tag("path", { d: path, stroke: colour, "stroke-width": width, "stroke-dasharray": dashes });
}

/** Symbols are drawn about the origin and put where they belong. */
function drawnSign(name: SignName, x: number, y: number): string {
  const { shape, colour, filled } = signs[name];
  const d = symbol(shape, SIGN_AREA).digits(1)() ?? "";
  const transform = `translate(${pixel(x)} ${pixel(y)})`;
  return tag("path", { d, transform, stroke: colour, "stroke-width": 1.4, fill: filled ? colour : undefined });
}

const drawnMarks = ({ points, sign }: PlotMarks, { right, down }: Frame): string =>
  points
    .filter(isDrawn)
    .map(({ x, y }) => drawnSign(sign, right(x), down(y)))
    .join("");

function drawnEntry(entry: Entry, x: number, y: number): string {
  const style = entry.style && lineStyles[entry.style];
  const sample =
    style === undefined
      ? drawnSign(entry.sign ?? "dot", x + 6, y - 4)
      : tag("path", {
          d: `M${pixel(x)} ${pixel(y - 4)}h13`,
          stroke: style.colour,
          "stroke-width": style.width,
          "stroke-dasharray": style.dashes,
        });
  return sample + text([x + 16, y], "start", entry.label);
}

function legend(rows: readonly (readonly Entry[])[]): string {
  return rows
    .map((row, i) => {
      let x = 6;
      return row
        .map((entry) => {
          const drawn = drawnEntry(entry, x, bottom + X_AXIS + ROW * (i + 1) - 3);
          x += entryWidth(entry, FIGURE);
          return drawn;
        })
        .join("");
    })
    .join("");
}

export interface Drawing {
  readonly width: number;
  readonly height: number;
  /** What stands inside of the `svg` element. */
  readonly content: string;
}

/** The plot without its outermost element, for putting several below each other. */
export function drawPlot(plot: Plot): Drawing {
  const frame = frameOf(plot);
  const entries: Entry[] = [
    ...plot.lines.flatMap(({ label, style }) => (label === undefined ? [] : [{ label, style }])),
    ...plot.marks.map(({ label, sign }) => ({ label, sign })),
  ];
  const rows = legendRows(entries, WIDTH - 6, FIGURE);
  const content = [
    tag("desc", {}, escaped(plot.description)),
    axes(plot, frame),
    ...plot.lines.map((one) => drawnLine(one, frame)),
    ...plot.marks.map((marks) => drawnMarks(marks, frame)),
    legend(rows),
  ];
  return { width: WIDTH, height: bottom + X_AXIS + ROW * rows.length + 4, content: content.join("") };
}

/** Paths are lines unless they say what fills them. */
const GROUP = {
  fill: "none",
  "font-family": "system-ui, 'Segoe UI', 'Helvetica Neue', Arial, sans-serif",
  "font-size": FONT,
  "stroke-linejoin": "round",
};

/** One image of drawings below each other. */
export function svgOf(drawings: readonly Drawing[], title: string): string {
  const width = Math.max(...drawings.map((drawing) => drawing.width), 1);
  const height = Math.max(
    drawings.reduce((sum, drawing) => sum + drawing.height, 0),
    1,
  );
  let y = 0;
  const placed = drawings.map((drawing) => {
    const transform = `translate(0 ${pixel(y)})`;
    y += drawing.height;
    return tag("g", { transform }, drawing.content);
  });
  return tag(
    "svg",
    { xmlns: "http://www.w3.org/2000/svg", width, height, viewBox: `0 0 ${width} ${pixel(height)}`, role: "img" },
    tag("title", {}, escaped(title)),
    tag("rect", { width, height, rx: 3, fill: PAPER }),
    tag("g", GROUP, ...placed),
  );
}
