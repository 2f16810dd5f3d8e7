/**
 * What the car weighs and where: the stated car and the lines beside it (driver, fuel, ballast) put together, and
 * taken apart again into the sprung mass and what is unsprung at each wheel. In: `MassData`; out: `CarMasses`.
 *
 * m = Σ mᵢ, m c = Σ mᵢ cᵢ; the sprung mass is the car less its unsprung masses, each at its wheel's centre; lines are
 * part of it. Inertias about the sprung mass's own centre by the parallel-axis theorem, I = Σ (Iᵢ + mᵢ dᵢ²) with the
 * lines as masses at their place: roll dᵢ² = Δy² + Δz², pitch Δx² + Δz².
 *
 * Places are told from the front axle line: `behind` it along x, `left` of the plane y = 0, `height` above the ground,
 * m. The cosine of the body's rake is taken as 1 (a hundred-thousandth at 10 mm over a wheelbase).
 *
 * Invariant: a figure is a number, or the reason why there is none, a full clause; nothing is NaN.
 */
import type { Vec3 } from "../maths/vec3.js";
import { inertiaOf, isKnown, type Known, type Part, type Place, plus, together } from "./mass-sum.js";
import type { AxleName, Sides } from "./mechanism.js";

export type { Known, Place } from "./mass-sum.js";

/** A mass that is stated apart from the car's own. */
export interface MassLine {
  /** `driver`, `fuel`, or the ballast's name. */
  readonly name: string;
  readonly mass: number | undefined;
  readonly centre: Vec3 | undefined;
}

export interface WheelPlace {
  readonly centre: Vec3 | undefined;
  readonly unsprungMass: number | undefined;
  /** Of its centre above the ground, where no ride height says it. */
  readonly radius: number | undefined;
}

export interface AxlePlace {
  /** Of the plane z = 0 above the ground: as the car is drawn, and as a set-up puts it. */
  readonly drawnRideHeight: number | undefined;
  readonly rideHeight: number | undefined;
  readonly wheels: Sides<WheelPlace>;
}

/** As written, SI; `mass`, `massFront`, `cgHeight`, `cgLeft` and the inertias are those of the car without its lines. */
export interface MassData {
  readonly mass: number | undefined;
  readonly massFront: number | undefined;
  readonly cgHeight: number | undefined;
  readonly cgLeft: number;
  readonly rollInertia: number | undefined;
  readonly pitchInertia: number | undefined;
  readonly wheelbase: number | undefined;
  readonly lines: readonly MassLine[];
  readonly axles: { readonly [A in AxleName]: AxlePlace | undefined };
}

export interface CarMasses {
  readonly total: Known;
  /** Share of the total on the front wheels. */
  readonly frontShare: Known;
  readonly centre: Place;
  /** In the frame of the car, at design. */
  readonly point: Vec3 | string;
  readonly sprung: SprungMass;
  /** FL, FR, RL, RR. */
  readonly unsprung: readonly [Known, Known, Known, Known];
}

export interface SprungMass {
  readonly mass: Known;
  readonly centre: Place;
  /** About its own centre of gravity, kg·m². */
  readonly rollInertia: Known;
  readonly pitchInertia: Known;
}

/** What the body's height above the ground is along the car, and by how much a set-up raises it. */
interface Ground {
  readonly drawn: (behind: Known) => Known;
  readonly raised: (behind: Known) => Known;
}

/** The x of the front axle line, from whichever wheel is placed. */
function frontLine({ axles, wheelbase }: MassData): Known {
  const front = lineOf(axles.front);
  if (front !== undefined) return front;
  const rear = lineOf(axles.rear);
  return rear === undefined || wheelbase === undefined ? "no wheel has a centre" : rear + wheelbase;
}

function lineOf(axle: AxlePlace | undefined): number | undefined {
  const { left, right } = axle?.wheels ?? {};
  const x = [left, right].flatMap((wheel) => (wheel?.centre === undefined ? [] : [wheel.centre[0]]));
  return x.length === 0 ? undefined : x.reduce((sum, value) => sum + value, 0) / x.length;
}

/** A quantity that is stated at both axle lines, straight in between and beyond. */
function along(front: Known, rear: Known, wheelbase: number | undefined): (behind: Known) => Known {
  return (behind) => {
    if (!isKnown(front)) return front;
    if (!isKnown(rear)) return rear;
    if (front === rear) return front;
    if (!isKnown(behind)) return behind;
    return wheelbase === undefined ? NO_WHEELBASE : front + ((rear - front) * behind) / wheelbase;
  };
}

const NO_WHEELBASE = "the car has no wheelbase";

function groundOf({ axles, wheelbase }: MassData): Ground {
  const drawn = (name: AxleName): Known => axles[name]?.drawnRideHeight ?? `the ${name} axle has no ride-height`;
  const raised = (name: AxleName): Known => {
    const { rideHeight, drawnRideHeight } = axles[name] ?? {};
    return rideHeight === undefined || drawnRideHeight === undefined ? 0 : rideHeight - drawnRideHeight;
  };
  return {
    drawn: along(drawn("front"), drawn("rear"), wheelbase),
    raised: along(raised("front"), raised("rear"), wheelbase),
  };
}

/** The car without its lines. */
function statedCar({ mass, massFront, cgHeight, cgLeft, wheelbase }: MassData): Part {
  return {
    mass: mass ?? "the car has no mass",
    behind:
      massFront === undefined
        ? "the car has no mass-front"
        : wheelbase === undefined
          ? NO_WHEELBASE
          : wheelbase * (1 - massFront),
    left: cgLeft,
    height: cgHeight ?? "the car has no cg-height",
  };
}

function linePart({ name, mass, centre }: MassLine, front: Known, ground: Ground): Part {
  const known = mass ?? `${name} has no mass`;
  if (centre === undefined) {
    const why = `${name} has no centre`;
    return { mass: known, behind: why, left: why, height: why };
  }
  const behind = isKnown(front) ? front - centre[0] : front;
  return { mass: known, behind, left: centre[1], height: plus(centre[2], ground.drawn(behind)) };
}

function wheelPart(data: MassData, axle: AxleName, side: "left" | "right", front: Known, ground: Ground): Part {
  const { centre, unsprungMass, radius } = data.axles[axle]?.wheels[side] ?? {};
  const why = `the ${axle} ${side} wheel has no centre`;
  const behind = centre === undefined ? why : isKnown(front) ? front - centre[0] : front;
  const drawn = centre === undefined ? why : plus(centre[2], ground.drawn(behind));
  return {
    mass: unsprungMass ?? `the ${axle} ${side} wheel has no unsprung-mass`,
    behind,
    left: centre?.[1] ?? why,
    height: isKnown(drawn) ? drawn : (radius ?? drawn),
  };
}

function sprungOf(data: MassData, stated: Part, lines: readonly Part[], wheels: readonly Part[]): SprungMass {
  const body = together([stated], wheels);
  const parts = [body, ...lines];
  const centre = together(parts);
  return {
    mass: centre.mass,
    centre,
    rollInertia: inertiaOf(data.rollInertia, "roll-inertia", parts, centre, ["left", "height"]),
    pitchInertia: inertiaOf(data.pitchInertia, "pitch-inertia", parts, centre, ["behind", "height"]),
  };
}

/** The place as the car is set: its sprung part goes up and down with the body. */
function asSet({ behind, left, height }: Place, share: Known, sprung: Place, ground: Ground): Place {
  const raised = ground.raised(sprung.behind);
  if (raised === 0) return { behind, left, height };
  const by = isKnown(share) ? (isKnown(raised) ? share * raised : raised) : share;
  return { behind, left, height: plus(height, by) };
}

function pointOf({ behind, left, height }: Place, front: Known, ground: Ground): Vec3 | string {
  if (!isKnown(front)) return front;
  if (!isKnown(behind)) return behind;
  if (!isKnown(left)) return left;
  const drawn = ground.drawn(behind);
  if (!isKnown(height)) return height;
  return isKnown(drawn) ? [front - behind, left, height - drawn] : drawn;
}

function frontShareOf(data: MassData, { behind }: Place): Known {
  // What is stated is not worked out anew.
  if (data.lines.length === 0) return data.massFront ?? "the car has no mass-front";
  if (!isKnown(behind)) return behind;
  return data.wheelbase === undefined ? NO_WHEELBASE : 1 - behind / data.wheelbase;
}

/** The masses of a car. Source: statics; parallel-axis theorem (any mechanics text). */
export function massesOf(data: MassData): CarMasses {
  const front = frontLine(data);
  const ground = groundOf(data);
  const stated = statedCar(data);
  const lines = data.lines.map((line) => linePart(line, front, ground));
  const wheel = (axle: AxleName, side: "left" | "right"): Part => wheelPart(data, axle, side, front, ground);
  const wheels = [
    wheel("front", "left"),
    wheel("front", "right"),
    wheel("rear", "left"),
    wheel("rear", "right"),
  ] as const;
  const whole = together([stated, ...lines]);
  const sprung = sprungOf(data, stated, lines, wheels);
  const share = isKnown(sprung.mass) && isKnown(whole.mass) ? sprung.mass / whole.mass : plus(sprung.mass, whole.mass);
  return {
    total: whole.mass,
    frontShare: frontShareOf(data, whole),
    centre: asSet(whole, share, sprung.centre, ground),
    point: pointOf(whole, front, ground),
    sprung: { ...sprung, centre: asSet(sprung.centre, 1, sprung.centre, ground) },
    unsprung: [wheels[0].mass, wheels[1].mass, wheels[2].mass, wheels[3].mass],
  };
}
