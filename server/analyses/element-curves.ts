/**
 * The curves of one element: force against deflection or speed, and over the travel of each of its modes its motion
 * ratio and what it gives at the wheels.
 *
 * Absent with a reason where a law, a connection or the trim is missing. Nothing is kept.
 */
import type { DamperLaw, Element, SpringLaw } from "../elements/element.js";
import type { AxleMechanism, CarElement } from "../elements/mechanism.js";
import { absent, isAbsent } from "./absent.js";
import { type CarAxles, carPositions } from "./car-positions.js";
import { HELD } from "./carrying.js";
import type { ElementCurves, LawCurve } from "./curve-data.js";
import { damperCurve, gasCurve, type Reached, springCurve } from "./law-curve.js";
import { type Place, placesOf } from "./law-places.js";
import { motionsInCar, motionsOnAxle, type OwnMotion } from "./own-motion.js";
import type { Absent, AxleRates, ElementFigures, StressFigures } from "./results.js";
import { axlePositions } from "./states.js";
import { modeCurves, rangeOf } from "./travel-curves.js";
import { trimElements } from "./trim.js";

/** An element, whatever wheels it follows, with how it is moved and how it sits. */
interface Subject {
  readonly element: Omit<Element, "connection" | "side"> & {
    readonly connection: { readonly idle: string | undefined } | undefined;
  };
  readonly motions: readonly OwnMotion[];
  readonly seat: number | Absent;
  readonly places: readonly Place[];
}

/** Deflections that the modes make, and at rest; the reason where it has none there. */
function reachedBy(motions: readonly OwnMotion[]): (Reached & { readonly perWheel: number }) | Absent {
  let reached: (Reached & { readonly perWheel: number }) | undefined;
  for (const motion of motions) {
    const rest = motion.at(motion.rest);
    if (isAbsent(rest)) return rest;
    const range = rangeOf(motion);
    const ends = [range.from, range.to].flatMap((q) => {
      const along = motion.at(q);
      return isAbsent(along) ? [] : [along.s];
    });
    reached = {
      from: Math.min(reached?.from ?? rest.s, rest.s, ...ends),
      to: Math.max(reached?.to ?? rest.s, rest.s, ...ends),
      rest: rest.s,
      perWheel: reached?.perWheel || rest.ds,
    };
  }
  return reached ?? absent("it is for no mode that its wheels can be moved in");
}

const UNMOVED = "it is not moved in its own modes, so that there is no deflection to draw its force over";

function springLaw(law: SpringLaw, { seat, places }: Subject, reached: Reached): LawCurve["curve"] {
  if (typeof seat !== "number") return seat;
  return reached.from < reached.to ? springCurve(law, seat, reached, places) : absent(UNMOVED);
}

function damperLaws(law: DamperLaw, subject: Subject, reached: Reached & { readonly perWheel: number }) {
  const curve = damperCurve(law, reached.perWheel, reached.rest);
  const force: LawCurve = { part: undefined, against: "speed", curve };
  const gas = reached.from < reached.to ? gasCurve(law, reached, subject.places) : undefined;
  return gas === undefined ? [force] : [force, { part: "its gas", against: "deflection" as const, curve: gas }];
}

function lawsOf(subject: Subject): readonly LawCurve[] {
  const { law, lawMissing, part, connection, connectionMissing } = subject.element;
  const against = law?.kind === "damper" ? "speed" : "deflection";
  const none = (why: Absent): readonly LawCurve[] => [{ part, against, curve: why }];
  if (law === undefined) return none(absent(lawMissing ?? "it has no law"));
  if (law.kind === "hold") return none(absent(HELD));
  if (law.kind === "inerter") return none(absent("the force of an inerter follows its acceleration alone"));
  if (connection === undefined) return none(absent(connectionMissing ?? "it is not connected"));
  if (connection.idle !== undefined) return none(absent(connection.idle));
  const reached = reachedBy(subject.motions);
  if (isAbsent(reached)) return none(reached);
  if (law.kind === "damper")
    return damperLaws(law, subject, reached).map((one) => ({ ...one, part: part ?? one.part }));
  return [{ part, against, curve: springLaw(law, subject, reached) }];
}

function modesOf({ element, motions, seat, places }: Subject): ElementCurves["modes"] {
  const { law, lawMissing, connection } = element;
  if (connection?.idle === undefined) {
    return motions.map((motion) => modeCurves(motion, { law, lawMissing, seat, places }));
  }
  const idle = absent(connection.idle);
  return motions.map(({ mode, turns }) => ({ mode, turns, gives: "rate", motionRatio: idle, atWheels: idle }));
}

/** @param subjects the element itself first, then what stands beside it under its path */
function curvesOf(subjects: readonly Subject[], whole: Pick<ElementCurves, "torsional" | "measure">) {
  const [own] = subjects;
  if (own === undefined) return undefined;
  return { path: own.element.path, ...whole, laws: subjects.flatMap(lawsOf), modes: modesOf(own) };
}

const stressesOf = (figures: ElementFigures | undefined): readonly StressFigures[] => {
  const strength = figures?.strength;
  return strength === undefined || isAbsent(strength) ? [] : strength.stresses;
};

function seatOf(element: Element, mechanism: AxleMechanism, trim: AxleRates["trim"]): number | Absent {
  if (!isAbsent(trim)) return trim.find(({ path }) => path === element.path)?.seat ?? 0;
  return mechanism.trim.by === "push-rod" || trimElements(mechanism).includes(element) ? trim : 0;
}

/** What was worked out of the axle before: its trim, and the figures of the element. */
export interface Known {
  readonly trim: AxleRates["trim"];
  readonly figures: ElementFigures | undefined;
}

/** @returns undefined where the axle has no such element */
export function curvesOnAxle(mechanism: AxleMechanism, path: string, known: Known): ElementCurves | undefined {
  const positions = axlePositions(mechanism);
  const elements = mechanism.elements.filter((element) => element.path === path);
  const connection = elements[0]?.connection;
  const subjects = elements.map((element): Subject => {
    const seat = seatOf(element, mechanism, known.trim);
    const places = placesOf(element, typeof seat === "number" ? seat : 0, stressesOf(known.figures));
    return { element, motions: motionsOnAxle(element, mechanism, positions), seat, places };
  });
  return curvesOf(subjects, { torsional: connection?.torsional ?? false, measure: connection?.measure });
}

/** The same of an element between the axles, which nothing trims. */
export function curvesInCar(elements: readonly CarElement[], axles: CarAxles, path: string): ElementCurves | undefined {
  const positions = carPositions(axles);
  const own = elements.filter((element) => element.path === path);
  const connection = own[0]?.connection;
  const subjects = own.map((element): Subject => {
    const motions = motionsInCar(element, axles, positions);
    return { element, motions, seat: 0, places: placesOf(element, 0, []) };
  });
  return curvesOf(subjects, { torsional: connection?.torsional ?? false, measure: connection?.measure });
}
