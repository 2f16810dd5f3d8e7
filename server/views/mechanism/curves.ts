/**
 * The curves of a car for the panel: of the wheels over their travel, of each element's motion ratio and force, what it does in
 * modes that it is not for, and of the whole car over speed and lateral acceleration.
 */
import type { CaseFigures, SweepResult } from "../../analyses/equilibrium/results.js";
import { asItStands } from "../../analyses/as-it-stands.js";
import { type RatesAt, ratesOverTravel } from "../../analyses/rates-over-travel.js";
import type { Figure } from "../../analyses/results.js";
import type { AxleMechanism } from "../../elements/mechanism.js";
import type { CheckedCar } from "../../findings/context.js";
import type { CornerMotion } from "../../linkage/corner.js";
import { rollCentreHeight } from "../../linkage/roll-centre.js";
import type { AxleName } from "../../model/origin.js";
import { fromSI, toSI } from "../../quantities/index.js";
import { isAbsent } from "../figures.js";
import { type ElementSubject, everyElement } from "../subject.js";
import { type ShowUnit, unitsOfCar } from "../units-of-car.js";
import type { PlaceOf } from "./corner-points.js";
import type { PanelCurve, PanelSeries } from "./data.js";
import { elementCurves, sentence } from "./element-plots.js";

const AXLES = ["front", "rear"] as const;
const STEPS = 24;
/** A spring that comes off its seat is a step in the rate. */
const RATE_STEPS = 110;

type Points = PanelSeries["points"];

export function panelCurves(car: CheckedCar, placeOf: PlaceOf): readonly PanelCurve[] {
  const unit = unitsOfCar(car.model);
  return [
    ...wheelCurves(car, unit),
    ...rateCurves(car, unit),
    ...elementCurves(car, placeOf),
    ...leakCurves(car, unit, placeOf),
    ...carCurves(car, unit),
  ];
}

const over = (from: number, to: number, steps = STEPS): readonly number[] =>
  Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps);

interface OfWheel {
  readonly id: string;
  readonly title: string;
  readonly dimension: "angle" | "length";
  readonly of: (motion: CornerMotion) => number | undefined;
}

const OF_WHEELS: readonly OfWheel[] = [
  { id: "camber", title: "Camber", dimension: "angle", of: ({ wheel }) => wheel?.camber.value },
  { id: "toe", title: "Toe-in", dimension: "angle", of: ({ wheel }) => wheel?.toe.value },
  {
    id: "roll-centre",
    title: "Roll centre above the road",
    dimension: "length",
    of: ({ wheel }) => {
      const height = wheel && rollCentreHeight(wheel.contact);
      return wheel === undefined || height === undefined ? undefined : height - wheel.contact.p[2];
    },
  },
  {
    id: "half-track",
    title: "Contact point, outwards",
    dimension: "length",
    of: ({ wheel }) => wheel && wheel.contact.p[1],
  },
];

function wheelCurves(car: CheckedCar, unit: ShowUnit): readonly PanelCurve[] {
  return OF_WHEELS.map(({ id, title, dimension, of }): PanelCurve => {
    const [x, y] = [unit("length"), unit(dimension)];
    const series = AXLES.flatMap((name): readonly PanelSeries[] => {
      const mechanism = car.mechanism(name);
      if (mechanism === undefined) return [];
      const relative = id === "half-track" ? valueAt(mechanism, 0, of) : 0;
      const points = over(mechanism.travel.from, mechanism.travel.to).map((travel) => {
        const value = valueAt(mechanism, travel, of);
        return [
          shown(travel, x) ?? 0,
          value === undefined || relative === undefined ? null : shown(value - relative, y),
        ] as const;
      });
      return seriesOf(name, points);
    });
    return overHeave({ id, group: "wheels", title }, [x, y], series, "Neither axle has the geometry for it.");
  });
}

/** None where not one of its points has a value. */
const seriesOf = (axle: (typeof AXLES)[number], points: Points): readonly PanelSeries[] =>
  points.some(([, value]) => value !== null) ? [{ label: axle, axle, place: undefined, points }] : [];

/** @param why there is nothing to draw, where there is not */
const overHeave = (
  named: Pick<PanelCurve, "id" | "group" | "title">,
  [x, y]: readonly [x: string, y: string],
  series: readonly PanelSeries[],
  why: string,
): PanelCurve => ({
  ...named,
  x: { name: "heave", unit: x },
  y: { name: named.title.toLowerCase(), unit: y },
  follows: { motion: "heave", scale: fromSI(1, x) ?? 1000 },
  series,
  missing: series.length === 0 ? why : undefined,
});

function valueAt({ corners }: AxleMechanism, travel: number, of: OfWheel["of"]): number | undefined {
  const motion = corners.left.motion(travel);
  return "kind" in motion ? undefined : of(motion);
}

interface OfRates {
  readonly id: string;
  readonly title: string;
  readonly dimension: "rate" | "torsional-rate";
  readonly of: (rates: RatesAt) => number | undefined;
}

const OF_RATES: readonly OfRates[] = [
  { id: "heave-rate", title: "Heave rate", dimension: "rate", of: ({ heave }) => heave },
  { id: "wheel-rate", title: "Wheel rate, the other wheel held", dimension: "rate", of: ({ single }) => single },
  { id: "roll-stiffness", title: "Roll stiffness", dimension: "torsional-rate", of: ({ roll }) => roll },
];

/** Of the whole axle, both wheels moved together. */
function rateCurves(car: CheckedCar, unit: ShowUnit): readonly PanelCurve[] {
  const rates = AXLES.flatMap((name) => {
    const [mechanism, analysis] = [car.mechanism(name), car.analysis.axles[name]];
    if (mechanism === undefined || analysis === undefined || isAbsent(analysis.rates.trim)) return [];
    const { from, to } = mechanism.travel;
    return [
      { name, at: ratesOverTravel(asItStands(mechanism, analysis), analysis.rates.trim, over(from, to, RATE_STEPS)) },
    ];
  });
  const x = unit("length");
  return OF_RATES.map(({ id, title, dimension, of }): PanelCurve => {
    const y = unit(dimension);
    const series = rates.flatMap(({ name, at }): readonly PanelSeries[] => {
      const points = at.map((one) => {
        const value = of(one);
        return [shown(one.travel, x) ?? 0, value === undefined ? null : shown(value, y)] as const;
      });
      return seriesOf(name, points);
    });
    const why = "The static load of neither axle is known, and the rates rest on it.";
    return overHeave({ id, group: "rates", title }, [x, y], series, why);
  });
}

/** Finite, in the unit that is shown; else a gap. */
function shown(value: number, unit: string): number | null {
  const number = fromSI(value, unit);
  return number === undefined || !Number.isFinite(number) ? null : Number(number.toPrecision(7));
}

/** What axle elements do in the pure motion that they are not for, from design. */
function leakCurves(car: CheckedCar, unit: ShowUnit, placeOf: PlaceOf): readonly PanelCurve[] {
  const length = unit("length");
  const modes = [
    { mode: "heave", other: "roll", sign: -1, title: "Elements for heave, in roll" },
    { mode: "roll", other: "heave", sign: 1, title: "Elements for roll, in heave" },
  ] as const;
  return modes.map(({ mode, other, sign, title }): PanelCurve => {
    const series = AXLES.flatMap((name) =>
      spanning(car, name)
        .filter(({ model }) => model.for.includes(mode) && !model.for.includes(other))
        .flatMap(({ model }) => {
          const points = motionIn(car, name, model.path, sign, length);
          return points === undefined
            ? []
            : [{ label: `${name} ${model.name}`, axle: name, place: placeOf(model.origin), points }];
        }),
    );
    return {
      id: `leak-${mode}`,
      group: "leaks",
      title,
      x: { name: other === "heave" ? "heave" : "travel of each wheel in roll", unit: length },
      y: { name: "deflection", unit: length },
      follows: other === "heave" ? { motion: "heave", scale: fromSI(1, length) ?? 1000 } : undefined,
      series,
      missing: series.length === 0 ? `No telescopic element across an axle is for ${mode} alone.` : undefined,
    };
  });
}

const spanning = (car: CheckedCar, name: AxleName): readonly ElementSubject[] =>
  everyElement(car).filter(({ axle, model }) => axle?.name === name && model.side === undefined);

/** @param sign of the left wheel's travel against the right one's */
function motionIn(car: CheckedCar, name: AxleName, path: string, sign: 1 | -1, unit: string): Points | undefined {
  const mechanism = car.mechanism(name);
  const connection = mechanism?.elements.find((one) => one.path === path && one.part === undefined)?.connection;
  if (mechanism === undefined || connection === undefined || connection.torsional || connection.measure === "volume")
    return undefined;
  const { from, to } = mechanism.travel;
  const reach = sign === 1 ? { from, to } : { from: -Math.min(-from, to), to: Math.min(-from, to) };
  return over(reach.from, reach.to).map((travel) => {
    const [left, right] = [mechanism.corners.left.motion(sign * travel), mechanism.corners.right.motion(travel)];
    if ("kind" in left || "kind" in right) return [shown(travel, unit) ?? 0, null] as const;
    const deflection = connection.deflection({ left, right });
    return [shown(travel, unit) ?? 0, "kind" in deflection ? null : shown(deflection.s, unit)] as const;
  });
}

const TOP_SPEED = toSI(250, "km/h") ?? 70;
const MOST_LATERAL = 3 * 9.80665;
const SWEEP_STEPS = 20;

type OfCase = readonly [label: string, of: (figures: CaseFigures) => Figure];

const HEIGHTS: readonly OfCase[] = [
  ["front", ({ front }) => front.rideHeight],
  ["rear", ({ rear }) => rear.rideHeight],
];
const BALANCE: readonly OfCase[] = [
  ["load transfer front", ({ loadTransferFront }) => loadTransferFront],
  ["roll stiffness front", ({ rollStiffnessFront }) => rollStiffnessFront],
  ["downforce front", ({ downforceFront }) => downforceFront],
];

function carCurves(car: CheckedCar, unit: ShowUnit): readonly PanelCurve[] {
  const speeds = car.cases.sweep({ over: "speed", from: undefined, to: topSpeed(car), steps: SWEEP_STEPS });
  const corners = car.cases.sweep({ over: "lateral", from: undefined, to: MOST_LATERAL, steps: SWEEP_STEPS });
  const [length, speed] = [unit("length"), unit("speed")];
  const plot = (id: string, title: string, sweep: SweepResult, x: string, y: string, of: readonly OfCase[]) =>
    sweepCurve(id, title, sweep, { name: id.endsWith("speed") ? "speed" : "lateral acceleration", unit: x }, y, of);
  return [
    plot("height-speed", "Ride height", speeds, speed, length, HEIGHTS),
    plot("balance-speed", "Balance", speeds, speed, "%", BALANCE),
    plot("height-lateral", "Ride height, cornering", corners, "g", length, HEIGHTS),
    plot("balance-lateral", "Balance, cornering", corners, "g", "%", BALANCE),
  ];
}

/** A little beyond the fastest case, so that its figures stand inside. */
function topSpeed({ model }: CheckedCar): number {
  const fastest = Math.max(0, ...model.cases.map(({ speed }) => speed?.value ?? 0));
  return fastest === 0 ? TOP_SPEED : 1.15 * fastest;
}

function sweepCurve(
  id: string,
  title: string,
  sweep: SweepResult,
  x: PanelCurve["x"],
  y: string,
  of: readonly OfCase[],
): PanelCurve {
  const head = { id, group: "speed", title, x, y: { name: title.toLowerCase(), unit: y }, follows: undefined };
  if (isAbsent(sweep)) return { ...head, series: [], missing: `${sentence(sweep.reason)}.` };
  const stable = sweep.points.filter(({ branch }) => branch === "stable");
  const series = of.flatMap(([label, read]): readonly PanelSeries[] => {
    const points = stable.map(({ value, figures }) => {
      const figure = read(figures);
      return [shown(value, x.unit) ?? 0, typeof figure === "number" ? shown(figure, y) : null] as const;
    });
    return points.some(([, value]) => value !== null) ? [{ label, axle: undefined, place: undefined, points }] : [];
  });
  const why = series.length === 0 ? "None of it is known: see the figures of the car." : undefined;
  return { ...head, series, missing: sweep.end === undefined ? why : `Ends where ${sweep.end.why}.` };
}
