/**
 * Reads the figures of a case off its equilibrium.
 *
 * Load transfer front = ΔF/(ΔF + ΔR), Δ the change from rest of right less left load. Rates as at static: springs
 * k∇s∇sᵀ + F∇²s of the axle's own elements over its two wheels, at the positions of the case.
 */
import { isOutside } from "../../elements/air.js";
import type { Connection, Element, SpringLaw } from "../../elements/element.js";
import type { LoadCase } from "../../elements/loaded-car.js";
import { PATTERNS } from "../../elements/patterns.js";
import { absent } from "../absent.js";
import { dampingMissing } from "../carrying.js";
import { atWheel, type Form, inHeave, inRoll, inSeriesWith, plus, ZERO } from "../form.js";
import type { Absent, ByMode, Figure } from "../results.js";
import type { CarrierBalance } from "./balance.js";
import type { Solved } from "./outcome.js";
import type { CaseAir, CaseAxle, CaseElement, CaseFigures, CaseWheel } from "./results.js";
import { AXLES, type Standing } from "./standing.js";

export function caseFigures(standing: Standing, asked: LoadCase, solved: Solved): CaseFigures {
  const { balance, iterations, residual, load, x } = solved;
  const front = axleAt(standing, solved, 0);
  const rear = axleAt(standing, solved, 1);
  const roll = settled(x[1]! - standing.rest[1]!);
  const across = -load.body[1];
  return {
    kind: "equilibrium",
    name: asked.name,
    asked,
    iterations,
    residual,
    front,
    rear,
    wheels: wheelsOf(standing, solved),
    roll,
    pitch: settled(x[2]! - standing.rest[2]!),
    rollGradient: Math.abs(across) > 1e-9 ? roll / across : absent("there is no lateral acceleration along the road"),
    elements: balance.carriers.filter(({ carrier }) => carrier.element.part === undefined).map(elementOf),
    clearances: standing.car.points.map(({ name, point }) => {
      const [dx, dy, dz] = [0, 1, 2].map((axis) => point[axis]! - standing.origin[axis]!);
      return { name, height: balance.attitude.turned([dx!, dy!, dz!])[2] + x[0]! };
    }),
    air: airAt(standing, solved),
    loadTransferFront: loadTransfer(standing, solved),
    rollStiffnessFront: share(front.rollStiffness, rear.rollStiffness, "neither axle has any roll stiffness"),
    downforceFront: share(
      load.pressure * balance.areas.front.area,
      load.pressure * balance.areas.rear.area,
      "there is no downforce",
    ),
  };
}

/** An angle of less than a picoradian is what rounding leaves: a nought is a nought. */
const settled = (angle: number): number => (Math.abs(angle) < 1e-12 ? 0 : angle);

/** A part of a sum; a sum that is next to nothing against its parts has no parts to speak of. */
function share(own: Figure, other: Figure, none: string): Figure {
  if (typeof own !== "number") return own;
  if (typeof other !== "number") return other;
  const sum = own + other;
  return Math.abs(sum) > 1e-9 * (Math.abs(own) + Math.abs(other)) ? own / sum : absent(none);
}

/** Transfers smaller than this, N, are what rounding leaves. */
const NO_TRANSFER = 1e-3;

function loadTransfer({ wheels }: Standing, { balance }: Solved): Figure {
  const change = (i: number): number => balance.wheels[i]!.load - wheels[i]!.load;
  const [front, rear] = [change(1) - change(0), change(3) - change(2)];
  return Math.abs(front + rear) > NO_TRANSFER
    ? front / (front + rear)
    : absent("no load moves from one side to the other in this case");
}

function airAt({ car }: Standing, { balance, load }: Solved): CaseAir {
  const { pressure, air } = load;
  const { front, rear, drag } = balance.areas;
  return {
    density: car.density,
    front: pressure * front.area,
    rear: pressure * rear.area,
    drag: pressure * drag.area,
    slopes: air && [
      [front.byFront, front.byRear],
      [rear.byFront, rear.byRear],
    ],
    outside: air === undefined ? [] : AXLES.filter((axle) => isOutside(air[axle], ...balance.heights)),
  };
}

function wheelsOf({ wheels, car }: Standing, { balance, x }: Solved): readonly CaseWheel[] {
  return wheels.map(({ axle, side }, i) => {
    const { motion, load, lateral, longitudinal } = balance.wheels[i]!;
    const { travel } = motion;
    const { mechanism } = car.axles[AXLES[axle]]!;
    const { wheel } = motion;
    const none = absent("the axle is given by ratios, without geometry");
    const inwards = side === "left" ? -x[1]! : x[1]!;
    return {
      axle: AXLES[axle],
      side,
      travel,
      left: { bump: mechanism.travel.to - travel, rebound: travel - mechanism.travel.from },
      load,
      lateral,
      longitudinal,
      isLifted: load === 0,
      camber: wheel?.camber.value ?? none,
      camberToRoad: wheel === undefined ? none : wheel.camber.value + inwards,
      toe: wheel?.toe.value ?? none,
    };
  });
}

const ownOf = (carriers: readonly CarrierBalance[], axle: 0 | 1): readonly CarrierBalance[] =>
  carriers.filter(({ carrier }) => carrier.axle === axle);

const formOf = ({ d, dd, rate, force }: Pick<CarrierBalance, "d" | "dd" | "rate" | "force">): Form => ({
  LL: rate * d[0]! * d[0]! + force * dd[0]![0]!,
  LR: rate * d[0]! * d[1]! + force * dd[0]![1]!,
  RR: rate * d[1]! * d[1]! + force * dd[1]![1]!,
});

function axleAt({ car, wheels }: Standing, { balance }: Solved, axle: 0 | 1): CaseAxle {
  const { mechanism } = car.axles[AXLES[axle]]!;
  const stiffness = ownOf(balance.carriers, axle).map(formOf).reduce(plus, ZERO);
  const { track, rideHeight, name } = mechanism;
  const noTrack = absent(`the ${name} axle has no track`);
  const ride = inSeriesWith(stiffness, wheels[2 * axle]!.tyreRate, wheels[2 * axle + 1]!.tyreRate);
  const cancel = absent("springs and tyres cancel each other");
  const damping = dampingAt(mechanism.elements, balance.wheels[2 * axle]!.motion, balance.wheels[2 * axle + 1]!.motion);
  return {
    rideHeight: rideHeight === undefined ? absent(`the ${name} axle has no ride-height`) : balance.heights[axle],
    heaveRate: inHeave(stiffness),
    rollStiffness: track === undefined ? noTrack : inRoll(stiffness, track),
    wheelRate: { left: stiffness.LL, right: stiffness.RR },
    rideRate: {
      heave: ride === undefined ? cancel : inHeave(ride),
      roll: ride === undefined ? cancel : track === undefined ? noTrack : inRoll(ride, track),
      single: ride === undefined ? cancel : atWheel(ride),
    },
    heaveDamping: "kind" in damping ? damping : inHeave(damping),
    rollDamping: "kind" in damping ? damping : track === undefined ? noTrack : inRoll(damping, track),
  };
}

type Motion = Parameters<Connection["deflection"]>[0];

function dampingAt(elements: readonly Element[], left: Motion["left"], right: Motion["right"]): Form | Absent {
  const missing = dampingMissing(elements);
  if (missing !== undefined) return absent(missing);
  let sum = ZERO;
  for (const { law, connection } of elements) {
    const d = law?.kind === "damper" ? connection?.deflection({ left, right }) : undefined;
    if (d === undefined || "kind" in d || law?.kind !== "damper") continue;
    const { dL, dR } = d;
    sum = plus(sum, { LL: law.lowSpeed * dL * dL, LR: law.lowSpeed * dL * dR, RR: law.lowSpeed * dR * dR });
  }
  return sum;
}

/** What a unit of each pattern at every wheel does to it. */
function sensitivityOf({ carrier, d }: CarrierBalance): ByMode {
  const four = carrier.axle === undefined ? d : carrier.axle === 0 ? [...d, 0, 0] : [0, 0, ...d];
  const along = (pattern: readonly number[]): number =>
    pattern.reduce((sum, amplitude, wheel) => sum + amplitude * four[wheel]!, 0);
  return {
    heave: along(PATTERNS.heave),
    roll: along(PATTERNS.roll),
    pitch: along(PATTERNS.pitch),
    warp: along(PATTERNS.warp),
  };
}

function elementOf(part: CarrierBalance): CaseElement {
  const { carrier, deflection, force, rate } = part;
  const { element, connection, hold, seat } = carrier;
  const { strength, law, path, kind } = element;
  const stroke = strength?.stroke;
  return {
    path,
    kind,
    torsional: connection.torsional,
    measure: connection.measure,
    force,
    deflection,
    sensitivity: sensitivityOf(part),
    rate: hold === undefined ? rate : undefined,
    pressure: law?.kind === "spring" ? law.fluid?.gauge(deflection + seat) : undefined,
    stroke: stroke && { bump: stroke.to - deflection, rebound: deflection - stroke.from },
    stresses: (strength?.parts ?? []).map(({ name, perLoad }) => ({ part: name, stress: Math.abs(force) * perLoad })),
    stop: law?.kind === "spring" ? stopOf(law, deflection + seat, force) : undefined,
  };
}

/** The next place upwards from which on it carries. */
function stopOf({ marks = [] }: SpringLaw, s: number, force: number): CaseElement["stop"] {
  const free = marks.filter(({ what }) => what === "free").map(({ at }) => at);
  if (free.length === 0) return undefined;
  const next = free.find((at) => at > s);
  return { isReached: force !== 0, left: force !== 0 || next === undefined ? 0 : next - s };
}
