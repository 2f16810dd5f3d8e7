/**
 * When the springs in line with an anti-roll bar are used up in a steady turn: at which roll and at which lateral
 * acceleration the bar goes on alone.
 *
 * Both axles share one roll of the body φ = φ_s + M(φ_s)/K_tyre; M_F + M_R = m_s (a_y + g φ) H with H the sprung centre
 * of gravity's height above the roll axis, so that a_y = (M_F + M_R)/(m_s H) − g φ.
 *
 * Left out, and small where a bar changes over: aerodynamic loads, jacking, the shift of roll centres in roll, what
 * dampers do. Source: W. F. Milliken, D. L. Milliken, Race Car Vehicle Dynamics, ch. 18; T. D. Gillespie, Fundamentals of
 * Vehicle Dynamics, ch. 6 (from memory).
 */
import { monotone } from "../maths/monotone.js";
import { absent, isAbsent } from "./absent.js";
import { GRAVITY } from "./loads.js";
import type { Absent, AxleAnalysis, AxleRoll, ChangeOver, Figure } from "./results.js";

export interface RollQuestion {
  readonly front: AxleAnalysis | undefined;
  readonly rear: AxleAnalysis | undefined;
  /** Of the whole car, above the ground, m. */
  readonly cgHeight: number | undefined;
  /** Whether elements between the axles resist roll as well. */
  readonly isJoined: boolean;
}

/** Numbers of a car in a steady turn. */
export interface RollingCar {
  readonly front: AxleRoll;
  readonly rear: AxleRoll;
  readonly sprung: number;
  /** Of the sprung centre of gravity above the roll axis, m. */
  readonly arm: number;
}

function rollOf(axle: AxleAnalysis | undefined, name: string): AxleRoll | Absent {
  if (axle === undefined) return absent(`the car has no ${name} axle`);
  return axle.roll ?? absent(`the ${name} axle does not stand at rest`);
}

/** @returns why it is not known where some number is missing */
export function rollingCar({ front, rear, cgHeight, isJoined }: RollQuestion): RollingCar | Absent {
  const [f, r] = [rollOf(front, "front"), rollOf(rear, "rear")];
  if ("kind" in f) return f;
  if ("kind" in r) return r;
  if (cgHeight === undefined) return absent("the car has no cg-height");
  if (isJoined) return absent("elements between the axles resist roll as well, which is not worked out yet");
  const [mass, unsprung] = [f.mass + r.mass, f.unsprung + r.unsprung];
  const sprung = mass - unsprung;
  if (!(sprung > 0)) return absent("the unsprung masses leave nothing of the car's mass");
  const height = (mass * cgHeight - f.unsprung * f.wheelHeight - r.unsprung * r.wheelHeight) / sprung;
  const onRear = (r.mass - r.unsprung) / sprung;
  const axis = f.rollCentre + (r.rollCentre - f.rollCentre) * onRear;
  const arm = height - axis;
  return arm > 0 ? { front: f, rear: r, sprung, arm } : absent("the roll axis is not below the centre of gravity");
}

const momentOf = ({ samples }: AxleRoll): ((angle: number) => number) => {
  const through = monotone(
    samples.map(({ angle }) => angle),
    samples.map(({ moment }) => moment),
  );
  return (angle) => through.value(angle);
};

const HALVINGS = 60;

/** Roll against an axle's wheels where the body rolls by φ, tyres and springs in series; both rise with it. */
function sharedBy(axle: AxleRoll, moment: (angle: number) => number, body: number): number {
  let [low, high] = [Math.min(0, body), Math.max(0, body)];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (middle + moment(middle) / axle.tyres < body) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Roll of the body and lateral acceleration at which one axle rolls by `angle` against its wheels. */
export function turnAt(
  car: RollingCar,
  own: "front" | "rear",
  angle: number,
): { readonly body: number; readonly lateral: number } {
  const [axle, other] = own === "front" ? [car.front, car.rear] : [car.rear, car.front];
  const moment = momentOf(axle)(angle);
  const body = angle + moment / axle.tyres;
  const otherMoment = momentOf(other);
  const there = otherMoment(sharedBy(other, otherMoment, body));
  return { body, lateral: (moment + there) / (car.sprung * car.arm) - GRAVITY * body };
}

/** The bars whose stage is used up within the travel, with the smaller of both ways. */
function stagesOf(axle: AxleAnalysis | undefined): readonly { readonly path: string; readonly travel: number }[] {
  return (axle?.elements ?? []).flatMap(({ path, kind, events }) => {
    if (kind !== "anti-roll-bar" || events === undefined || isAbsent(events)) return [];
    const travels = events.flatMap(({ what, where }) =>
      what === "stage" && where?.mode === "roll" ? [Math.abs(where.travel)] : [],
    );
    return travels.length === 0 ? [] : [{ path, travel: Math.min(...travels) }];
  });
}

const positive = (value: number, why: string): Figure => (value > 0 ? value : absent(why));

export function changeOvers(question: RollQuestion): readonly ChangeOver[] {
  const car = rollingCar(question);
  return (["front", "rear"] as const).flatMap((name) =>
    stagesOf(question[name]).map(({ path, travel }): ChangeOver => {
      const track = question[name]?.rates.track ?? 0;
      const angle = track > 0 ? (2 * travel) / track : 0;
      if ("kind" in car) return { path, angle, body: car, lateral: car };
      const { body, lateral } = turnAt(car, name, angle);
      return { path, angle, body, lateral: positive(lateral, "the car would roll over by its own weight first") };
    }),
  );
}
