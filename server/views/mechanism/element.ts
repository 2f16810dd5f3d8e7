/**
 * One element as the panel shows it: where its ends are, its deflection over both wheels' travel, what room it has and what it leaks.
 */
import type { ElementFigures, Leak } from "../../analyses/results.js";
import type { Element } from "../../elements/element.js";
import { leverEnd } from "../../elements/connections/bar-lever.js";
import type { AxleMotion, CornerMotion, Unreachable } from "../../linkage/corner.js";
import type { Attachment, CarModel, ConnectionModel, ElementModel } from "../../model/car.js";
import type { AxleName, Side } from "../../model/origin.js";
import { fromSI } from "../../quantities/index.js";
import { isAbsent, showShare } from "../figures.js";
import { unitsOfCar } from "../units-of-car.js";
import type { DrawnCorner, PlaceOf } from "./corner-points.js";
import type { PanelDeflection, PanelDrawn, PanelElement, PanelEnd, PanelLeak, PanelLine, PanelTee } from "./data.js";
import { bodyTable, grained, movedTable, type Samples } from "./sampled-corner.js";

export interface BuiltSide {
  readonly drawn: DrawnCorner;
  readonly samples: Samples;
  /** Lines that elements bring: levers and drop links. */
  readonly lines: PanelLine[];
}

export interface BuiltAxle {
  readonly name: AxleName;
  readonly left: BuiltSide;
  readonly right: BuiltSide;
  /** In the mechanism: its connection and law. */
  element(path: string): Element | undefined;
}

/** Axles by name, since an element of the car may end on either. */
export type BuiltAxles = Partial<Record<AxleName, BuiltAxle>>;

interface Showing {
  readonly car: CarModel;
  readonly axles: BuiltAxles;
  readonly placeOf: PlaceOf;
}

export function panelElement(
  model: ElementModel,
  figures: ElementFigures | undefined,
  showing: Showing,
): PanelElement | undefined {
  const place = showing.placeOf(model.origin);
  if (place === undefined) return undefined;
  const axle = model.axle === undefined ? undefined : showing.axles[model.axle];
  const built = axle?.element(model.path);
  const unit = shownUnit(built, figures, showing.car);
  return {
    path: model.path,
    name: model.name,
    kind: model.kind,
    for: model.for,
    side: model.side,
    place,
    drawn: model.connection === undefined ? [] : drawnOf(model.connection, model, built, showing),
    unit: unit.text,
    scale: unit.scale,
    deflection: axle === undefined ? linear(figures) : deflectionOf(built, model.side, axle),
    travel: figures === undefined || isAbsent(figures.travel) ? undefined : figures.travel,
    stroke: strokeOf(figures),
    leak: leakOf(figures, showing.car),
  };
}

function shownUnit(built: Element | undefined, figures: ElementFigures | undefined, car: CarModel) {
  const volume = (built?.connection?.measure ?? figures?.measure) === "volume";
  const torsional = built?.connection?.torsional ?? figures?.torsional ?? false;
  const text = volume ? "cm^3" : torsional ? "deg" : unitsOfCar(car)("length");
  return { text: volume ? "cm\u00b3" : text, scale: fromSI(1, text) ?? 1 };
}

function strokeOf(figures: ElementFigures | undefined): PanelElement["stroke"] {
  const { strength, deflection } = figures ?? {};
  if (strength === undefined || isAbsent(strength) || strength.stroke === undefined) return undefined;
  if (typeof deflection !== "number") return undefined;
  const { bump, rebound } = strength.stroke;
  const [from, to] = [deflection - rebound.atRest, deflection + bump.atRest];
  return Number.isFinite(from) && Number.isFinite(to) ? { from, to } : undefined;
}

function leakOf(figures: ElementFigures | undefined, { leakLimits }: CarModel): PanelLeak | undefined {
  const leak = figures?.leak;
  if (leak === undefined || isAbsent(leak)) return undefined;
  const share = largest(leak);
  const mode = leak.mode === "other-wheel" ? "the other wheel" : leak.mode;
  const level = share > leakLimits.warning ? "warning" : share > leakLimits.information ? "info" : undefined;
  return { mode, share, text: `${showShare(share)} in ${mode}`, level };
}

const largest = ({ firstOrder, finite }: Leak): number =>
  Math.max(firstOrder, typeof finite === "number" ? Math.abs(finite) : 0);

function linear(figures: ElementFigures | undefined): PanelDeflection | undefined {
  const by = figures?.sensitivity;
  if (by === undefined || isAbsent(by)) return undefined;
  return { kind: "linear", heave: by.heave, roll: by.roll, pitch: by.pitch, warp: by.warp };
}

/** A swept volume is some 1e-5 m³, so that no grain in SI fits every deflection. */
const DIGITS = 7;

type Moved = CornerMotion | Unreachable | undefined;

function deflectionOf(
  built: Element | undefined,
  side: Side | undefined,
  axle: BuiltAxle,
): PanelDeflection | undefined {
  if (built?.connection === undefined) return undefined;
  const { left, right } = axle;
  const at = (l: Moved, r: Moved): number | null => {
    if (l === undefined || r === undefined || "kind" in l || "kind" in r) return null;
    const motion: AxleMotion = { left: l, right: r };
    const deflection = built.connection?.deflection(motion);
    if (deflection === undefined || "kind" in deflection || !Number.isFinite(deflection.s)) return null;
    return Number(deflection.s.toPrecision(DIGITS));
  };
  const straight = ({ samples }: BuiltSide): readonly Moved[] => rowAtRest(samples);
  const [ls, rs] = [straight(left), straight(right)];
  if (side === "left") return { kind: "own", values: ls.map((l) => at(l, middle(rs, right.samples))) };
  if (side === "right") return { kind: "own", values: rs.map((r) => at(middle(ls, left.samples), r)) };
  return { kind: "both", values: ls.flatMap((l) => rs.map((r) => at(l, r))) };
}

/** The rack in the middle. */
export function rowAtRest({ steers, travels, motions }: Samples): readonly Moved[] {
  const row = Math.max(0, steers.indexOf(0));
  return motions.slice(row * travels.length, (row + 1) * travels.length);
}

const middle = (row: readonly Moved[], { travels }: Samples): Moved => row[Math.max(0, travels.indexOf(0))];

function drawnOf(
  connection: ConnectionModel,
  model: ElementModel,
  built: Element | undefined,
  showing: Showing,
): readonly PanelDrawn[] {
  switch (connection.kind) {
    case "between":
      return between(connection.ends, showing);
    case "cylinders":
      return connection.cylinders.flatMap(({ ends }) => between(ends, showing));
    case "twists":
      return [{ kind: "about", axle: connection.of.axle, side: connection.of.side }];
    case "bar":
      return barOf(connection, model, built, showing);
    case "tee":
      return teeOf(connection, model, built, showing);
    case "ratio":
      return [];
  }
}

function between([a, b]: readonly [Attachment, Attachment], showing: Showing): readonly PanelDrawn[] {
  const [from, to] = [endOf(a, showing), endOf(b, showing)];
  return from === undefined || to === undefined ? [] : [{ kind: "between", from, to }];
}

const SIDES = ["left", "right"] as const;

/** The bar between its levers' pivots; each lever and drop link is a line of its corner. */
function barOf(
  { levers, links }: Extract<ConnectionModel, { kind: "bar" }>,
  { axle: name, path }: ElementModel,
  built: Element | undefined,
  showing: Showing,
): readonly PanelDrawn[] {
  const axle = name === undefined ? undefined : showing.axles[name];
  if (name === undefined || axle === undefined) return [];
  const ends = SIDES.map((side): PanelEnd => {
    const { drawn, samples, lines } = axle[side];
    const { pivot, end } = levers[side];
    const at = drawn.list.add(`${path}.pivot`, "pivot", () => ({
      at: pivot.value.map(grained),
      place: showing.placeOf(pivot.origin),
    }));
    const lever = built?.connection?.levers?.[side];
    if (lever !== undefined) {
      const tip = drawn.list.add(`${path}.end`, "end", () => ({
        at: movedTable(samples, (motion) => {
          const moved = leverEnd(lever, motion, side);
          return "kind" in moved ? undefined : moved.p;
        }),
        place: showing.placeOf(end.origin),
      }));
      lines.push({ role: "lever", points: [at, tip] });
      const link = links[side];
      const head = link === undefined ? undefined : endOf(link, showing);
      if (head !== undefined && head.side === side) lines.push({ role: "drop-link", points: [tip, head.point] });
    }
    return { axle: name, side, point: at };
  });
  const [from, to] = ends;
  return from === undefined || to === undefined ? [] : [{ kind: "between", from, to }];
}

function teeOf(
  { foot, ends, links }: Extract<ConnectionModel, { kind: "tee" }>,
  { axle: name }: ElementModel,
  built: Element | undefined,
  showing: Showing,
): readonly PanelDrawn[] {
  const axle = name === undefined ? undefined : showing.axles[name];
  if (name === undefined || axle === undefined) return [];
  const link = (side: Side) => (links[side] === undefined ? undefined : endOf(links[side], showing));
  const moved = armEnds(built, axle);
  const [x, y, z] = foot.value;
  return [
    {
      kind: "tee",
      axle: name,
      foot: [grained(x), grained(y), grained(z)],
      links: { left: link("left"), right: link("right") },
      ends: moved ?? { left: ends.left.value.map(grained), right: ends.right.value.map(grained) },
    },
  ];
}

/** Undefined where its drop links do not hold it. */
function armEnds(built: Element | undefined, { left, right }: BuiltAxle): PanelTee["ends"] | undefined {
  const tee = built?.connection?.tee;
  if (tee === undefined) return undefined;
  const rights = rowAtRest(right.samples);
  const places = rowAtRest(left.samples).flatMap((l) =>
    rights.map((r) =>
      l === undefined || r === undefined || "kind" in l || "kind" in r ? undefined : tee.ends({ left: l, right: r }),
    ),
  );
  const of = (side: Side) => places.flatMap((one) => one?.[side].map(grained) ?? [null, null, null]);
  return { left: of("left"), right: of("right") };
}

/** A chassis point belongs to the side that it lies on, of the element's axle or else the first that there is. */
function endOf(attachment: Attachment, { axles, placeOf }: Showing): PanelEnd | undefined {
  const name = attachment.kind === "chassis" ? Object.values(axles)[0]?.name : attachment.axle;
  const axle = name === undefined ? undefined : axles[name];
  if (name === undefined || axle === undefined) return undefined;
  if (attachment.kind === "lever-end") {
    const point = axle[attachment.side].drawn.list.indexOf(`${name}.${attachment.bar}.end`);
    return point === undefined ? undefined : { axle: name, side: attachment.side, point };
  }
  const { value, origin } = attachment.point;
  const side = attachment.kind === "chassis" ? (value[1] < 0 ? "right" : "left") : attachment.side;
  const { drawn, samples } = axle[side];
  const body = attachment.kind === "chassis" ? "chassis" : attachment.kind === "eye" ? "rocker" : attachment.body;
  const id = attachment.kind === "eye" ? `rocker.${attachment.eye}` : `${body} ${value.map(grained).join(" ")}`;
  const point = drawn.list.add(id, attachment.kind === "chassis" ? "chassis" : "end", () => ({
    at: bodyTable(samples, body, value),
    place: placeOf(origin),
  }));
  return { axle: name, side, point };
}
