/** Rates for a machine. The form is described by `schema/rates.json` of the package. */
import type { AxleAnalysis, ElementFigures, FluidFigures, RateShare } from "../../analyses/results.js";
import type { CheckedCar } from "../../findings/context.js";
import { elementUnits } from "../../views/element-units.js";
import { isAbsent } from "../../views/figures.js";
import { everyElement } from "../../views/subject.js";
import { type ShowUnit, unitsOfCar } from "../../views/units-of-car.js";
import { absence, json, quantity, rounded } from "./json.js";
import { modalJson } from "./modal-json.js";
import { changeOverJson, eventsJson, inertanceJson, strengthJson } from "./strength-json.js";

export function ratesJson(car: CheckedCar): string {
  const unit = unitsOfCar(car.model);
  const { front, rear } = car.analysis.axles;
  return json({
    car: car.model.name,
    setup: car.model.setup ?? null,
    axles: {
      ...(front === undefined ? {} : { front: axleJson(front, unit) }),
      ...(rear === undefined ? {} : { rear: axleJson(rear, unit) }),
    },
    modal: modalJson(car.analysis.modal, unit),
    elements: everyElement(car).flatMap(({ figures }) => (figures === undefined ? [] : [elementJson(figures, unit)])),
    changeOvers: (car.analysis.changeOvers ?? []).map((one) => changeOverJson(one, unit)),
    expectations: car.model.expectations.map((wanted, index) => expectationJson(car, wanted.figure, wanted.at, index)),
  });
}

function axleJson({ rates }: AxleAnalysis, unit: ShowUnit): object {
  const rate = unit("rate");
  const torsional = unit("torsional-rate");
  return {
    heaveRate: quantity(rates.heaveRate, rate),
    rollStiffness: quantity(rates.rollStiffness, torsional),
    wheelRate: quantity(rates.wheelRate.left, rate),
    wheelRateRight: quantity(rates.wheelRate.right, rate),
    stiffnessMatrix: isAbsent(rates.stiffness)
      ? absence(rates.stiffness)
      : rates.stiffness.map((row) => row.map((value) => quantity(value, rate))),
    rideRate: {
      heave: quantity(rates.rideRate.heave, rate),
      roll: quantity(rates.rideRate.roll, torsional),
      single: quantity(rates.rideRate.single, rate),
    },
    heaveFrequency: quantity(rates.heaveFrequency, "Hz"),
    heaveDamping: quantity(rates.heaveDamping, unit("damping")),
    rollDamping: quantity(rates.rollDamping, unit("torsional-damping")),
    rollStiffnessShare: isAbsent(rates.rollStiffnessShare)
      ? absence(rates.rollStiffnessShare)
      : rounded(rates.rollStiffnessShare),
    shares: rates.shares.map((share) => shareJson(share, rate, torsional)),
  };
}

function shareJson(share: RateShare, rate: string, torsional: string): object {
  return {
    path: share.path,
    heave: quantity(share.heave, rate),
    roll: quantity(share.roll, torsional),
    single: quantity(share.single, rate),
  };
}

function elementJson(figures: ElementFigures, unit: ShowUnit): object {
  const units = elementUnits(figures, unit);
  return {
    path: figures.path,
    kind: figures.kind,
    for: figures.for,
    basis: figures.basis,
    /** mm/mm for telescopic elements, rad/m for torsional ones, an area for what works on swept volume. */
    sensitivityUnit: figures.measure === "volume" ? "m^2" : figures.torsional ? "rad/m" : "1",
    sensitivity: isAbsent(figures.sensitivity) ? absence(figures.sensitivity) : roundedAll(figures.sensitivity),
    leak: leakJson(figures.leak),
    rate: quantity(figures.rate, units.rate),
    staticLoad: quantity(figures.staticLoad, units.load),
    ...(figures.strength === undefined ? {} : { strength: strengthJson(figures.strength, unit, units.travel) }),
    ...(figures.events === undefined ? {} : { events: eventsJson(figures.events, unit("length"), units.travel) }),
    ...(figures.inertance === undefined ? {} : { inertance: inertanceJson(figures.inertance, unit) }),
    ...(figures.fluid === undefined ? {} : { fluid: fluidJson(figures.fluid, unit("pressure")) }),
  };
}

function fluidJson({ volumes, pressure, over, used }: FluidFigures, unit: string): object {
  return {
    volumes,
    pressure: quantity(pressure, unit),
    overTravel: isAbsent(over)
      ? absence(over)
      : { lowest: quantity(over.lowest, unit), highest: quantity(over.highest, unit) },
    gasSwept: used === undefined ? null : isAbsent(used) ? absence(used) : rounded(used),
  };
}

function leakJson(leak: ElementFigures["leak"]): object | null {
  if (leak === undefined) return null;
  if (isAbsent(leak)) return absence(leak);
  const share = (figure: typeof leak.finite): unknown => (isAbsent(figure) ? absence(figure) : rounded(figure));
  return { mode: leak.mode, firstOrder: rounded(leak.firstOrder), finite: share(leak.finite), rate: share(leak.rate) };
}

function roundedAll(values: {
  readonly heave: number;
  readonly roll: number;
  readonly pitch: number;
  readonly warp: number;
}): object {
  return {
    heave: rounded(values.heave),
    pitch: rounded(values.pitch),
    roll: rounded(values.roll),
    warp: rounded(values.warp),
  };
}

function expectationJson(car: CheckedCar, figure: string, at: string | undefined, index: number): object {
  const judged = car.analysis.expectations.find((result) => result.index === index);
  return {
    figure,
    at: at ?? null,
    value: judged === undefined ? { absent: "not judged" } : quantity(judged.value, judged.unit),
    met: judged?.met ?? null,
  };
}
