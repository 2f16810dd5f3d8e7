/**
 * The curves of an element in the author's units, with axes and marks in words: what hovers draw and the command line
 * writes.
 */
import type { CurveData, CurveMark, ElementCurves, LawCurve, MarkKind } from "../analyses/curve-data.js";
import { asItStands } from "../analyses/as-it-stands.js";
import { curvesInCar, curvesOnAxle } from "../analyses/element-curves.js";
import type { Absent } from "../analyses/results.js";
import { assembleCarElements } from "../assemble/car-elements.js";
import type { Point } from "../maths/polyline.js";
import { fromSI } from "../quantities/index.js";
import { againstAxis, atWheelsAxis, forceAxis, MARK_WORDS, motionAxis, travelAxis } from "./curve-words.js";
import type { PlotAxis } from "./drawings/plot.js";
import { isAbsent } from "./figures.js";
import type { ElementSubject } from "./subject.js";
import { type ShowUnit, unitsOfCar } from "./units-of-car.js";

export interface SheetMark extends Point {
  readonly what: MarkKind;
  readonly label: string;
}

export interface SheetCurve {
  /** "force against compression": its name among those of the element. */
  readonly title: string;
  readonly kind: "law" | "motion-ratio" | "at-wheels";
  readonly x: PlotAxis;
  readonly y: PlotAxis;
  /** Undefined where there is a reason instead. */
  readonly points: readonly Point[];
  readonly marks: readonly SheetMark[];
  readonly beside: readonly { readonly label: string; readonly points: readonly Point[] }[];
  /** Why there is no curve. */
  readonly reason: string | undefined;
}

export interface CurveSheet {
  readonly path: string;
  readonly kind: string;
  readonly curves: readonly SheetCurve[];
}

const BESIDE_WORDS = {
  "with-gas": "with its gas at rest",
  closed: "clickers closed",
  open: "clickers open",
} as const;

type Head = Pick<SheetCurve, "title" | "kind" | "x" | "y">;

function inUnits<P extends Point>(points: readonly P[], { x, y }: Head): readonly P[] {
  return points.flatMap((point) => {
    const [a, b] = [fromSI(point.x, x.unit), fromSI(point.y, y.unit)];
    return a === undefined || b === undefined ? [] : [{ ...point, x: a, y: b }];
  });
}

/** What is next to nought beside all that is drawn is nought: rounding. */
const NOUGHT = 1e-9;

function cleared<P extends Point>(points: readonly P[], all: readonly Point[]): readonly P[] {
  const size = (of: (point: Point) => number): number => Math.max(0, ...all.map((point) => Math.abs(of(point))));
  const [wide, high] = [NOUGHT * size(({ x }) => x), NOUGHT * size(({ y }) => y)];
  return points.map((point) => ({
    ...point,
    x: Math.abs(point.x) <= wide ? 0 : point.x,
    y: Math.abs(point.y) <= high ? 0 : point.y,
  }));
}

/** Each once; and that a part which carries nothing at rest carries nothing there need not be said. */
function worthTelling(marks: readonly SheetMark[]): readonly SheetMark[] {
  const rest = marks.find(({ what }) => what === "static");
  const isFirst = (mark: SheetMark, i: number): boolean =>
    marks.findIndex(({ what, x }) => what === mark.what && x === mark.x) === i;
  return marks.filter((mark, i) => isFirst(mark, i) && (mark.what !== "no-load" || mark.x !== rest?.x));
}

function sheetCurve(head: Head, data: CurveData | Absent): SheetCurve {
  if (isAbsent(data)) return { ...head, points: [], marks: [], beside: [], reason: data.reason };
  const named = (mark: CurveMark): SheetMark => ({ ...mark, label: MARK_WORDS[mark.what] });
  const own = inUnits(data.points, head);
  return {
    ...head,
    points: cleared(own, own),
    marks: worthTelling(cleared(inUnits(data.marks.map(named), head), own)),
    beside: data.beside.map(({ what, points }) => ({ label: BESIDE_WORDS[what], points: inUnits(points, head) })),
    reason: undefined,
  };
}

function lawCurve(law: LawCurve, curves: ElementCurves, unit: ShowUnit): SheetCurve {
  const [x, y] = [againstAxis(law, curves, unit), forceAxis(curves, unit)];
  const plain = `${y.name} against ${law.against === "speed" ? "speed" : x.name}`;
  const title = law.part === undefined ? plain : `${plain}, ${law.part}`;
  return sheetCurve({ title, kind: "law", x, y }, law.curve);
}

/** The curves of an element as they are worked out; undefined where its axle is not there. */
function curvesOf({ car, axle, model, figures }: ElementSubject): ElementCurves | undefined {
  if (axle === undefined) {
    const { elements, axles } = assembleCarElements(car.model);
    return curvesInCar(elements, axles, model.path);
  }
  const analysis = car.analysis.axles[axle.name];
  const written = car.mechanism(axle.name);
  if (analysis === undefined || written === undefined) return undefined;
  return curvesOnAxle(asItStands(written, analysis), model.path, { trim: analysis.rates.trim, figures });
}

/** Curves that nobody has drawn yet. */
interface Undrawn {
  readonly path: string;
  readonly laws: readonly (() => SheetCurve)[];
  readonly modes: readonly Readonly<Record<"motionRatio" | "atWheels", () => SheetCurve>>[];
}

function undrawn(subject: ElementSubject): Undrawn | undefined {
  const curves = curvesOf(subject);
  if (curves === undefined) return undefined;
  const unit = unitsOfCar(subject.car.model);
  const whose = subject.axle === undefined ? "car" : "axle";
  const modes = curves.modes.map((mode) => {
    const x = travelAxis(mode, unit);
    const [ratio, given] = [motionAxis(curves, unit), atWheelsAxis(mode, unit, whose)];
    const head = (y: PlotAxis, kind: SheetCurve["kind"]): Head => ({
      title: `${y.name} against ${x.name}`,
      kind,
      x,
      y,
    });
    return {
      motionRatio: () => sheetCurve(head(ratio, "motion-ratio"), mode.motionRatio),
      atWheels: () => sheetCurve(head(given, "at-wheels"), mode.atWheels),
    };
  });
  return { path: curves.path, laws: curves.laws.map((law) => () => lawCurve(law, curves, unit)), modes };
}

export function curveSheet(subject: ElementSubject): CurveSheet | undefined {
  const sheet = undrawn(subject);
  if (sheet === undefined) return undefined;
  const overTravel = sheet.modes.flatMap(({ motionRatio, atWheels }) => [motionRatio(), atWheels()]);
  return {
    path: sheet.path,
    kind: subject.model.kind,
    curves: [...sheet.laws.map((make) => make()), ...overTravel],
  };
}

function firstThere(curves: readonly (() => SheetCurve)[]): SheetCurve | undefined {
  for (const make of curves) {
    const curve = make();
    if (curve.reason === undefined && curve.points.length > 1) return curve;
  }
  return undefined;
}

/** Its law, and what it gives at the wheels in the first mode that has it; nothing else is worked out. */
export function leadingCurves(subject: ElementSubject): readonly SheetCurve[] {
  const sheet = undrawn(subject);
  if (sheet === undefined) return [];
  const found = [firstThere(sheet.laws), firstThere(sheet.modes.map(({ atWheels }) => atWheels))];
  return found.filter((curve) => curve !== undefined);
}
