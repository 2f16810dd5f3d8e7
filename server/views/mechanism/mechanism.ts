/** A car or set-up as the panel shows it: its axles sampled over their travel and the rack's, with every element. */
import { asItStands } from "../../analyses/as-it-stands.js";
import { bindsReason } from "../../analyses/absent.js";
import type { AxleMechanism } from "../../elements/mechanism.js";
import type { CheckedCar } from "../../findings/context.js";
import type { Corner, Unreachable } from "../../linkage/corner.js";
import type { AxleModel } from "../../model/car.js";
import type { AxleName, Side } from "../../model/origin.js";
import { fromSI } from "../../quantities/index.js";
import { isAbsent, showFigure, showShare } from "../figures.js";
import { unitsOfCar } from "../units-of-car.js";
import { cornerPoints, type PlaceOf } from "./corner-points.js";
import type { PanelAxle, PanelCar, PanelCorner, PanelElement, PanelFigure } from "./data.js";
import { type BuiltAxle, type BuiltAxles, type BuiltSide, panelElement } from "./element.js";
import { sampled, wheelTables } from "./sampled-corner.js";

const AXLES = ["front", "rear"] as const;
/** On each side of design, of the stretch that the links reach. */
const TRAVEL_STEPS = 8;
/** Racks that are looked at, m: the language states no travel of the rack. */
const RACKS = [-0.024, -0.012, 0, 0.012, 0.024];

/** One axle by itself; where elements join the axles, their ends are points of both. */
export function panelAxleOf(car: CheckedCar, name: AxleName, placeOf: PlaceOf): PanelAxle | undefined {
  const names = car.model.elements.length === 0 ? [name] : AXLES;
  return panelCar(car, placeOf, names).axles.find((axle) => axle.name === name);
}

export function panelCar(car: CheckedCar, placeOf: PlaceOf, names: readonly AxleName[] = AXLES): PanelCar {
  const { model } = car;
  const sides = new Map(names.flatMap((name) => sampledAxle(car, name, placeOf)));
  const axles: BuiltAxles = Object.fromEntries([...sides].map(([name, { built }]) => [name, built]));
  const length = unitsOfCar(model)("length");
  const showing = { car: model, axles, placeOf };
  const analysed = (name: AxleName) => car.analysis.axles[name]?.elements ?? [];
  // Elements add the points of their ends to the corners: they come before the corners are read.
  const elements = new Map(
    [...sides.keys()].map((name) => [
      name,
      (model.axles[name]?.elements ?? []).flatMap((element) => {
        // An end on the chassis is put down to the element's own axle.
        const own = { ...showing, axles: ownFirst(axles, name) };
        return (
          panelElement(
            element,
            analysed(name).find(({ path }) => path === element.path),
            own,
          ) ?? []
        );
      }),
    ]),
  );
  const joining = model.elements.flatMap(
    (element) =>
      panelElement(
        element,
        car.analysis.elements.find(({ path }) => path === element.path),
        showing,
      ) ?? [],
  );
  return {
    name: model.setup ?? model.name,
    title: model.title,
    wheelbase: model.wheelbase?.value,
    length: { unit: length, scale: fromSI(1, length) ?? 1000 },
    axles: [...sides].flatMap(([name, axle]) => panelAxle(car, name, axle, elements.get(name) ?? [], placeOf) ?? []),
    elements: joining,
  };
}

const ownFirst = (axles: BuiltAxles, name: AxleName): BuiltAxles => {
  const own = axles[name];
  return own === undefined ? axles : { [name]: own, ...axles };
};

interface SampledAxle {
  readonly mechanism: AxleMechanism;
  readonly built: BuiltAxle;
  readonly ends: Record<Side, readonly [low: string | undefined, high: string | undefined]>;
}

function sampledAxle(car: CheckedCar, name: AxleName, placeOf: PlaceOf): readonly [AxleName, SampledAxle][] {
  const model = car.model.axles[name];
  const written = car.mechanism(name);
  const analysis = car.analysis.axles[name];
  if (model === undefined || written === undefined) return [];
  const mechanism = analysis === undefined ? written : asItStands(written, analysis);
  const steers = steersOf(mechanism);
  const side = (of: Side): BuiltSide => {
    const { from, to } = reached(mechanism, of);
    const samples = sampled(
      of,
      steers.map(({ corners }) => corners[of]),
      travelsOver(from, to),
      steers.map(({ rack }) => rack),
    );
    const drawn = cornerPoints(model.corner[of], samples, model.wheel[of].centre?.value[0] ?? 0, placeOf);
    return { drawn, samples, lines: [] };
  };
  const byPath = new Map(mechanism.elements.filter(({ part }) => part === undefined).map((one) => [one.path, one]));
  const built: BuiltAxle = { name, left: side("left"), right: side("right"), element: (path) => byPath.get(path) };
  return [
    [name, { mechanism, built, ends: { left: endWords(mechanism, "left"), right: endWords(mechanism, "right") } }],
  ];
}

interface AtRack {
  readonly rack: number;
  readonly corners: { readonly left: Corner; readonly right: Corner };
}

/** Racks that both track rods reach with; one entry where nothing steers. */
function steersOf({ corners, steered }: AxleMechanism): readonly AtRack[] {
  if (steered === undefined || typeof steered(0) === "string") return [{ rack: 0, corners }];
  return RACKS.flatMap((rack) => {
    if (rack === 0) return [{ rack, corners }];
    const moved = steered(rack);
    return typeof moved === "string" ? [] : [{ rack, corners: moved }];
  });
}

function reached({ corners, travel, cornerMissing }: AxleMechanism, side: Side) {
  if (cornerMissing[side] !== undefined) return { from: 0, to: 0 };
  const { from, to } = corners[side].reach(Math.min(0, travel.from), Math.max(0, travel.to));
  return { from: Math.min(0, from), to: Math.max(0, to) };
}

/** Design among them, ascending. */
function travelsOver(from: number, to: number): readonly number[] {
  const half = (end: number): readonly number[] =>
    end === 0 ? [] : Array.from({ length: TRAVEL_STEPS }, (_, i) => (end * (i + 1)) / TRAVEL_STEPS);
  return [...[...half(from)].reverse(), 0, ...half(to)];
}

function endWords(
  { corners, travel, cornerMissing }: AxleMechanism,
  side: Side,
): readonly [string | undefined, string | undefined] {
  if (cornerMissing[side] !== undefined) return [undefined, undefined];
  const { bound } = corners[side].reach(Math.min(0, travel.from), Math.max(0, travel.to));
  const words = (why: Unreachable | undefined): string | undefined =>
    why === undefined ? undefined : bindsReason(why, side);
  return [words(bound.low), words(bound.high)];
}

function panelAxle(
  car: CheckedCar,
  name: AxleName,
  { mechanism, built, ends }: SampledAxle,
  elements: readonly PanelElement[],
  placeOf: PlaceOf,
): PanelAxle | undefined {
  const model = car.model.axles[name];
  const place = model === undefined ? undefined : placeOf(model.origin);
  if (model === undefined || place === undefined) return undefined;
  const corner = (side: Side): PanelCorner => panelCorner(model, side, mechanism, built[side], ends[side]);
  return {
    name,
    place,
    track: mechanism.track,
    travel: mechanism.travel,
    staticTravel: mechanism.staticTravel,
    left: corner("left"),
    right: corner("right"),
    elements,
    figures: figuresOf(car, name),
  };
}

function panelCorner(
  model: AxleModel,
  side: Side,
  { cornerMissing }: AxleMechanism,
  { drawn, samples, lines }: BuiltSide,
  [lowEnd, highEnd]: readonly [string | undefined, string | undefined],
): PanelCorner {
  const { kind } = model.corner[side];
  const missing =
    cornerMissing[side] ?? (kind === "ratio" ? "the axle is given by ratios, without geometry" : undefined);
  const { centre, loadedRadius } = model.wheel[side];
  const radius = loadedRadius?.value ?? Math.max(0.1, (centre?.value[2] ?? 0.25) + (model.drawnRideHeight?.value ?? 0));
  return {
    travels: samples.travels,
    steers: samples.steers,
    lowEnd,
    highEnd,
    missing,
    points: missing === undefined ? drawn.list.points : [],
    lines: missing === undefined ? [...drawn.lines, ...lines] : [],
    wheel: missing === undefined ? wheelTables(samples, radius) : undefined,
    rocker: missing === undefined ? drawn.rocker : undefined,
  };
}

function figuresOf(car: CheckedCar, name: AxleName): readonly PanelFigure[] {
  const rates = car.analysis.axles[name]?.rates;
  if (rates === undefined) return [];
  const unit = unitsOfCar(car.model);
  const figure = (called: string, value: typeof rates.heaveRate, shownIn: string, digits?: number): PanelFigure => ({
    name: called,
    text: isAbsent(value) ? value.reason : showFigure(value, shownIn, digits),
    value: isAbsent(value) ? undefined : fromSI(value, shownIn),
  });
  const share = rates.rollStiffnessShare;
  return [
    figure("heave rate", rates.heaveRate, unit("rate")),
    figure("roll stiffness", rates.rollStiffness, unit("torsional-rate")),
    figure("wheel rate", rates.wheelRate.left, unit("rate")),
    figure("heave frequency", rates.heaveFrequency, "Hz", 3),
    { name: "share of roll stiffness", text: showShare(share), value: isAbsent(share) ? undefined : 100 * share },
  ];
}
