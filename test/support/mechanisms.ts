/** Axles put together from elements, without text: for the analyses' own tests. */
import { barTwist } from "../../server/elements/connections/bar.js";
import { between } from "../../server/elements/connections/between.js";
import { rockerToChassis } from "../../server/elements/connections/twists.js";
import type { Connection, Element, ElementKind, Law, Mode } from "../../server/elements/element.js";
import type { End } from "../../server/elements/ends.js";
import { constantDamping, damperLaw } from "../../server/elements/laws/damper-law.js";
import { linear } from "../../server/elements/laws/linear.js";
import { type Fitting, springLaw } from "../../server/elements/laws/spring-law.js";
import type { AxleMechanism } from "../../server/elements/mechanism.js";
import type { Corner } from "../../server/linkage/corner.js";
import { isDegenerate } from "../../server/linkage/geometry.js";
import { hardpointCorner } from "../../server/linkage/hardpoint.js";
import { leverOf } from "../../server/linkage/lever.js";
import { mirror, type Vec3 } from "../../server/maths/vec3.js";
import { hardpoint, wishbone, wishboneGeometry } from "./wishbone-case.js";

export const spring = (rate: number, fitting: Partial<Fitting> = {}): Law => {
  const law = springLaw(linear(rate), { acts: "both-ways", gap: undefined, preload: undefined, ...fitting });
  if (typeof law === "string") throw new Error(law);
  return law;
};

export const damping = (c: number): Law => damperLaw(constantDamping(c), constantDamping(c));

export interface ElementOptions {
  readonly side?: "left" | "right";
  readonly kind?: ElementKind;
  readonly for: readonly Mode[];
}

export function element(name: string, connection: Connection, law: Law | undefined, options: ElementOptions): Element {
  const { side } = options;
  return {
    path: side === undefined ? `front.${name}` : `front.${side}.${name}`,
    name,
    kind: options.kind ?? (law?.kind === "damper" ? "damper" : "spring"),
    for: options.for,
    side,
    connection,
    connectionMissing: undefined,
    law,
    lawMissing: law === undefined ? "it has no law" : undefined,
  };
}

export const rockerEye = (side: "left" | "right", point: Vec3): End => ({ kind: "body", side, body: "rocker", point });
export const chassis = (point: Vec3): End => ({ kind: "chassis", point });

export function joined(first: End, second: End): Connection {
  const made = between(first, second, "hardpoints");
  if (made.kind === "no-deflection") throw new Error(made.reason);
  return made;
}

function corner(): Corner {
  const made = hardpointCorner(wishboneGeometry);
  if (isDegenerate(made)) throw new Error(`${made.part} ${made.reason}`);
  return made;
}

/** The check case's corner; one object, as the same geometry on both sides makes it. */
export const wishboneCorner = corner();

/** The check case's spring on each side, from its rocker to the chassis. */
export const sideSprings = (law: Law, name = "side"): readonly Element[] => [
  element(name, joined(rockerEye("left", hardpoint("SPR")), chassis(hardpoint("SPC"))), law, {
    side: "left",
    for: ["corner"],
  }),
  element(name, joined(rockerEye("right", hardpoint("SPR")), chassis(mirror(hardpoint("SPC")))), law, {
    side: "right",
    for: ["corner"],
  }),
];

export const cornerBars = (law: Law): readonly Element[] =>
  (["left", "right"] as const).map((side) =>
    element("bar", rockerToChassis(side, "hardpoints"), law, { side, for: ["corner"] }),
  );

export const heaveSpring = (law: Law): Element =>
  element("third", joined(rockerEye("left", hardpoint("HSR")), rockerEye("right", hardpoint("HSR"))), law, {
    for: ["heave"],
  });

export const rollDamper = (law: Law): Element =>
  element("diagonal", joined(rockerEye("left", hardpoint("RDT")), rockerEye("right", hardpoint("RDB"))), law, {
    for: ["roll"],
  });

/** The check case's anti-roll bar: its lever turns about an axis across the car. */
export function antiRollBar(law: Law, on: Corner = wishboneCorner): Element {
  const design = on.motion(0);
  if ("kind" in design) throw new Error("unreachable");
  const linkEnd = hardpoint("DLR");
  const points = { pivot: hardpoint("ABP"), axis: [0, -1, 0] as Vec3, end: hardpoint("DLA") };
  const lever = leverOf(points, design.point("rocker", linkEnd));
  if ("kind" in lever) throw new Error(lever.reason);
  const side = { lever, body: "rocker" as const, linkEnd };
  return element("arb", barTwist({ left: side, right: side }, "hardpoints"), law, {
    kind: "anti-roll-bar",
    for: ["roll"],
  });
}

export const trackAtContact = wishbone.linearised_at_design.track_at_contact_points_mm / 1000;

/** An axle of the check case's corner; 560 kg car with half of it in front. */
export function axle(elements: readonly Element[], overrides: Partial<AxleMechanism> = {}): AxleMechanism {
  return {
    name: "front",
    track: trackAtContact,
    rideHeight: 0.03,
    staticTravel: 0,
    travel: { from: -0.03, to: 0.03 },
    corners: { left: wishboneCorner, right: wishboneCorner },
    cornerMissing: { left: undefined, right: undefined },
    elements,
    wheels: {
      left: { unsprungMass: 18, tyreRate: 200e3 },
      right: { unsprungMass: 18, tyreRate: 200e3 },
    },
    trim: { by: "element", element: elements[0]?.name },
    carMass: 560,
    massFront: 0.5,
    problems: [],
    ...overrides,
  };
}
