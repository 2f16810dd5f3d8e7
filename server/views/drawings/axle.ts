/**
 * An axle as seen from behind, from its left and from above, with a numbered tag on every element: for the setup sheet and for
 * comparisons. Black on white: roles are told apart by weight and dashes, kinds of element by their signs.
 *
 * In: a shape, and perhaps an earlier one, which is drawn thin and dashed behind it. Out: one SVG, whose size in pixels is that
 * of its `viewBox`.
 */
import type { AxleShape, DrawnElement, LinkRole, Point } from "./axle-shape.js";
import { elementSign, type Paper } from "./element-sign.js";
import { legendLines, type Tagged } from "./axle-legend.js";
import { escaped, pixel, tag } from "./svg.js";

export type AxleView = "behind" | "left" | "above";

export interface AxleDrawing {
  readonly views?: readonly AxleView[];
  readonly width?: number;
  /** What it was before. */
  readonly before?: AxleShape | undefined;
  /** Paths of elements that are marked. */
  readonly marked?: ReadonlySet<string>;
}

const TITLES: Readonly<Record<AxleView, string>> = {
  behind: "from behind",
  left: "from the left",
  above: "from above, front at the top",
};

/** To the right and down, m. */
const PROJECTIONS: Readonly<Record<AxleView, (point: Point) => Paper>> = {
  behind: ([, y, z]) => [-y, -z],
  left: ([x, , z]) => [-x, -z],
  above: ([x, y]) => [-y, -x],
};

const MARGIN = 14;
const TYRE_SHARE = 0.36;
const INK = "#1a1a1a";
const QUIET = "#6a6a6a";
const FIGURE = 5.3;

const WEIGHTS: Readonly<Record<LinkRole, { readonly width: number; readonly dashes?: string }>> = {
  wishbone: { width: 1.4 },
  "track-rod": { width: 1.2, dashes: "5 2" },
  rod: { width: 2.6 },
  lever: { width: 2.2 },
  "drop-link": { width: 1.1, dashes: "2 2" },
  bar: { width: 2 },
};

/** Undefined where nothing of the axle has a place. */
export function axleDrawing(shape: AxleShape, options: AxleDrawing = {}): string | undefined {
  const { views = ["behind"], width = 640, before, marked = new Set() } = options;
  if (shape.links.length + shape.wheels.length + shape.elements.length === 0) return undefined;
  const tagged = taggedElements(shape.elements);
  const scale = (width - 2 * MARGIN) / Math.max(...views.map((view) => extent(shape, view).width), 0.2);
  const parts: string[] = [];
  let top = 0;
  for (const view of views) {
    const { left, up, height } = extent(shape, view);
    const centred = (width - extent(shape, view).width * scale) / 2;
    const place = (point: Point): Paper => {
      const [x, y] = PROJECTIONS[view](point);
      return [centred + (x - left) * scale, top + MARGIN + 12 + (y - up) * scale];
    };
    parts.push(tag("text", { x: MARGIN, y: top + 12, "font-size": 10, fill: QUIET }, TITLES[view]));
    if (before !== undefined) parts.push(tag("g", { opacity: 0.55 }, ...skeleton(before, view, place, scale, "3 3")));
    parts.push(...skeleton(shape, view, place, scale, undefined), ...tags(tagged, place, marked));
    top += height * scale + 2 * MARGIN + 12;
  }
  const lines = legendLines(tagged, shape.unplaced, width - 2 * MARGIN, FIGURE);
  const legend = lines.map((line, i) =>
    tag("text", { x: MARGIN, y: top + 12 * (i + 1), "font-size": 10, fill: INK }, escaped(line)),
  );
  const height = Math.ceil(top + 12 * lines.length + 6);
  return tag(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      viewBox: `0 0 ${width} ${height}`,
      role: "img",
      "font-family": "sans-serif",
    },
    ...parts,
    ...legend,
  );
}

function extent(shape: AxleShape, view: AxleView) {
  const all = [
    ...shape.links.flatMap(({ from, to }) => [from, to]),
    ...shape.rockers.flat(),
    ...shape.elements.flatMap(({ from, to }) => (to === undefined ? [from] : [from, to])),
    ...shape.wheels.flatMap(({ centre: [x, y, z], radius }): Point[] => {
      const half = TYRE_SHARE * radius;
      return [
        [x - radius, y - half, z - radius],
        [x + radius, y + half, z + radius],
      ];
    }),
  ].map(PROJECTIONS[view]);
  const [xs, ys] = [all.map(([x]) => x), all.map(([, y]) => y)];
  const [left, up] = [Math.min(...xs), Math.min(...ys)];
  return { left, up, width: Math.max(...xs) - left, height: Math.max(...ys) - up };
}

type Place = (point: Point) => Paper;

/** Everything but the tags. */
function skeleton(
  { links, rockers, wheels, elements, ground }: AxleShape,
  view: AxleView,
  place: Place,
  scale: number,
  dashes: string | undefined,
): readonly string[] {
  const stroke = { stroke: dashes === undefined ? INK : QUIET, fill: "none" };
  const line = (from: Point, to: Point, width: number, own: string | undefined): string => {
    const [[x1, y1], [x2, y2]] = [place(from), place(to)];
    return tag("line", { x1, y1, x2, y2, ...stroke, "stroke-width": width, "stroke-dasharray": dashes ?? own });
  };
  const [wheel] = wheels;
  const road =
    ground === undefined || view === "above" || wheel === undefined || dashes !== undefined
      ? []
      : [
          roadLine(
            wheels.map(({ centre: [x, y] }) => place([x, y, ground])),
            ROAD_BEYOND,
          ),
        ];
  return [
    ...road,
    ...wheels.map((one) => tyre(one, view, place, scale, { ...stroke, "stroke-dasharray": dashes })),
    ...rockers.map((points) =>
      tag("polygon", {
        points: points
          .map(place)
          .map(([x, y]) => `${pixel(x)},${pixel(y)}`)
          .join(" "),
        stroke: stroke.stroke,
        fill: dashes === undefined ? "#dddddd" : "none",
        "stroke-width": 1.2,
        "stroke-dasharray": dashes,
      }),
    ),
    ...links.map(({ role, from, to }) => line(from, to, WEIGHTS[role].width, WEIGHTS[role].dashes)),
    ...elements.map((element) => sign(element, place, { ...stroke, "stroke-dasharray": dashes })),
  ];
}

function roadLine(contacts: readonly Paper[], beyond: number): string {
  const xs = contacts.map(([x]) => x);
  const y = Math.max(...contacts.map(([, height]) => height));
  return tag("line", {
    x1: Math.min(...xs) - beyond,
    x2: Math.max(...xs) + beyond,
    y1: y,
    y2: y,
    stroke: QUIET,
    "stroke-width": 0.8,
  });
}

/** Of the wheels' centres, px: no further than the tyres. */
const ROAD_BEYOND = 24;

type Stroke = Readonly<Record<string, string | number | undefined>>;

function tyre(
  { centre, radius, camber, side }: AxleShape["wheels"][number],
  view: AxleView,
  place: Place,
  scale: number,
  stroke: Stroke,
): string {
  const [x, y] = place(centre);
  const [r, half] = [radius * scale, TYRE_SHARE * radius * scale];
  if (view === "left") return tag("circle", { cx: x, cy: y, r, ...stroke, "stroke-width": 1 });
  // The top leans outboard with positive camber: to the left of the paper on the left side.
  const lean = view === "behind" ? ((side === "left" ? -camber : camber) * 180) / Math.PI : 0;
  return tag("rect", {
    x: x - half,
    y: y - r,
    width: 2 * half,
    height: 2 * r,
    rx: view === "behind" ? half * 0.4 : 3,
    transform: `rotate(${lean.toFixed(2)} ${pixel(x)} ${pixel(y)})`,
    ...stroke,
    "stroke-width": 1,
  });
}

function sign({ kind, from, to }: DrawnElement, place: Place, stroke: Stroke): string {
  const [x, y] = place(from);
  if (to === undefined) return tag("circle", { cx: x, cy: y, r: 4, ...stroke, "stroke-width": 1.4 });
  return tag("path", { d: elementSign(kind, [x, y], place(to)), ...stroke, "stroke-width": 1.3 });
}

/** One number for all elements that lie between the same two places. */
function taggedElements(elements: readonly DrawnElement[]): readonly Tagged[] {
  const groups = new Map<string, DrawnElement[]>();
  for (const element of elements) {
    const ends = [element.from, element.to ?? element.from].map((point) => point.map((v) => v.toFixed(4)).join());
    const key = ends.sort().join("|");
    groups.set(key, [...(groups.get(key) ?? []), element]);
  }
  return [...groups.values()].map((all, i) => ({ number: i + 1, elements: all }));
}

const TAG = 7;

function tags(tagged: readonly Tagged[], place: Place, marked: ReadonlySet<string>): readonly string[] {
  const taken: Paper[] = [];
  return tagged.flatMap(({ number, elements }) => {
    const [first] = elements;
    if (first === undefined) return [];
    const [a, b] = [place(first.from), place(first.to ?? first.from)];
    const middle: Paper = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const at = free([middle[0], middle[1] - 2 * TAG], taken);
    taken.push(at);
    const isMarked = elements.some(({ path }) => marked.has(path));
    const [cx, cy] = at;
    return [
      tag("line", { x1: middle[0], y1: middle[1], x2: cx, y2: cy, stroke: QUIET, "stroke-width": 0.6 }),
      tag("circle", { cx, cy, r: TAG, fill: isMarked ? INK : "#ffffff", stroke: INK, "stroke-width": 0.9 }),
      tag(
        "text",
        { x: cx, y: cy + 3.2, "font-size": 9, "text-anchor": "middle", fill: isMarked ? "#ffffff" : INK },
        String(number),
      ),
    ];
  });
}

/** The nearest place above, or beside, that no other tag has. */
function free(wanted: Paper, taken: readonly Paper[]): Paper {
  const step = 2 * TAG + 2;
  const isFree = ([x, y]: Paper): boolean => taken.every(([tx, ty]) => Math.hypot(tx - x, ty - y) >= step - 1);
  for (let ring = 0; ring < 8; ring++) {
    for (const [dx, dy] of [
      [0, -ring],
      [ring, 0],
      [-ring, 0],
      [ring, -ring],
      [-ring, -ring],
    ] as const) {
      const at: Paper = [wanted[0] + dx * step, wanted[1] + dy * step];
      if (isFree(at)) return at;
    }
  }
  return wanted;
}
