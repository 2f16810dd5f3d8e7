/** What an element can bear, from its block: stressed parts, lengths of its coil, stroke. */
import type { Connection } from "../elements/element.js";
import { barAllowable, bladeAllowable, coilAllowable } from "../elements/laws/allowable.js";
import { bladeStress } from "../elements/laws/anti-roll-bar.js";
import { coilRate, coilStress } from "../elements/laws/coil.js";
import { torsionBarStress } from "../elements/laws/torsion-bar.js";
import type { CoilLengths, Strength, StressedPart, Stroke } from "../elements/strength.js";
import type { ElementModel, ResolvedBlock } from "../model/car.js";
import { bladeOf } from "./blade.js";
import { isLawless } from "./lawless.js";
import { blockOf, numberOf, rangeOf, statementOf } from "./reading.js";

/** Spring steel, Pa: the vocabulary's fallback for `modulus`. */
const SHEAR_MODULUS = 79.3e9;
const CLOSED_ENDS = 2;

type Joined = Pick<Connection, "torsional" | "levers" | "tee" | "designLength">;

interface Wire {
  readonly wire: number;
  readonly mean: number;
}

function wireOf(coil: ResolvedBlock): Wire | undefined {
  const [wire, mean] = [numberOf(coil, "wire"), numberOf(coil, "mean-diameter")];
  return wire !== undefined && mean !== undefined && wire > 0 && mean > wire ? { wire, mean } : undefined;
}

function coilPart(coil: ResolvedBlock): StressedPart | undefined {
  const section = wireOf(coil);
  if (section === undefined) return undefined;
  const allowable = coilAllowable(section.wire, numberOf(coil, "allowable-stress"));
  return { name: "coil", kind: "shear", perLoad: coilStress(section), allowable };
}

/** Of the rate that its law has: as stated, else from the wire. */
function rateOf(coil: ResolvedBlock): number | undefined {
  const stated = numberOf(coil, "rate");
  const section = wireOf(coil);
  const turns = numberOf(coil, "active-turns");
  if (stated !== undefined || section === undefined || turns === undefined) return stated;
  return coilRate({ ...section, turns, shearModulus: numberOf(coil, "modulus") ?? SHEAR_MODULUS });
}

/** Closed up it is as long as stated, else as all its turns of wire. */
function solidOf(coil: ResolvedBlock): number | undefined {
  const stated = numberOf(coil, "bind-length");
  const wire = numberOf(coil, "wire");
  const active = numberOf(coil, "active-turns");
  const total = numberOf(coil, "total-turns") ?? (active === undefined ? undefined : active + CLOSED_ENDS);
  return stated ?? (wire === undefined || total === undefined ? undefined : wire * total);
}

function lengthsOf(coil: ResolvedBlock): CoilLengths | undefined {
  const [rate, free, solid] = [rateOf(coil), numberOf(coil, "free-length"), solidOf(coil)];
  if (rate === undefined || free === undefined || solid === undefined || !(rate > 0)) return undefined;
  return { rate, free, solid };
}

function barPart(bar: ResolvedBlock): StressedPart | undefined {
  const diameter = numberOf(bar, "diameter");
  const bore = numberOf(bar, "bore") ?? 0;
  if (diameter === undefined || !(bore < diameter)) return undefined;
  const allowable = barAllowable(numberOf(bar, "allowable-stress"));
  return { name: "torsion bar", kind: "shear", perLoad: torsionBarStress({ diameter, bore }), allowable };
}

/** The blade is bent by the moment over the lever's length; under a T each half of the cross arm by half of it. */
function bladePart(block: ResolvedBlock, joined: Joined): StressedPart | undefined {
  const blade = bladeOf(block);
  if (blade === undefined || isLawless(blade)) return undefined;
  const { levers, tee } = joined;
  const arm =
    tee === undefined
      ? Math.min(...[levers?.left, levers?.right].map((lever) => lever?.lever.arm.radius ?? 0))
      : 2 * tee.arm;
  if (!(arm > 0)) return undefined;
  const allowable = bladeAllowable(numberOf(blockOf(block, "blade"), "allowable-stress"));
  return { name: "blade", kind: "bending", perLoad: bladeStress(blade) / arm, allowable };
}

/** The tighter of what is stated from design and what the lengths leave where it is fitted. */
function strokeOf(block: ResolvedBlock, { torsional, designLength }: Joined): Stroke | undefined {
  const stated = rangeOf(block, "stroke");
  const own = stated !== undefined && stated.torsional === torsional ? stated : undefined;
  const lengths = designLength === undefined ? undefined : rangeOf(block, "length");
  if (lengths === undefined || designLength === undefined) return own && { from: own.from, to: own.to };
  const [from, to] = [designLength - lengths.to, designLength - lengths.from];
  return own === undefined ? { from, to } : { from: Math.max(from, own.from), to: Math.min(to, own.to) };
}

const some = (parts: readonly (StressedPart | undefined)[]): readonly StressedPart[] =>
  parts.filter((part) => part !== undefined);

/** A spring between two eyes of which neither direction nor gap is said is taken to pull as well. */
function pullsUnsaid({ kind, block }: ElementModel, { torsional }: Joined): boolean {
  const says = ["acts", "gap", "squat", "rise"].some((word) => statementOf(block, word) !== undefined);
  return kind === "spring" && !torsional && !says;
}

export function strengthOf(model: ElementModel, joined: Joined): Strength {
  const { block } = model;
  const coil = blockOf(block, "coil");
  const bar = blockOf(block, "torsion-bar");
  const isBar = model.kind === "anti-roll-bar";
  return {
    parts: some([coil && coilPart(coil), bar && barPart(bar), isBar ? bladePart(block, joined) : undefined]),
    coil: coil && lengthsOf(coil),
    stroke: strokeOf(block, joined),
    pullsUnsaid: pullsUnsaid(model, joined),
  };
}
