/** The law of an anti-roll bar: its bar, in series with its blades and the springs in its drop links. */
import { linkMomentArm, type BarLever } from "../elements/connections/bar-lever.js";
import type { Connection, SpringLaw } from "../elements/element.js";
import { antiRollBarRate, bladeAngle, type BladeGeometry } from "../elements/laws/anti-roll-bar.js";
import { linear } from "../elements/laws/linear.js";
import { inSeries, type Stage } from "../elements/laws/series.js";
import { springLaw } from "../elements/laws/spring-law.js";
import type { Sides } from "../elements/mechanism.js";
import type { ElementModel, ResolvedBlock } from "../model/car.js";
import { isLawless, isTorsional, type Lawless, lawless, mismatch } from "./lawless.js";
import { blockOf, numberOf, quantitiesOf, quantityOf } from "./reading.js";
import { torsionRate } from "./spring-law.js";

/** Steel, Pa: the vocabulary's fallback for a blade's `modulus`. */
const YOUNGS_MODULUS = 205e9;
const FLAT = 0;
const ON_EDGE = Math.PI / 2;

/** Torsional rate end against end: as measured, else from the bar's dimensions. */
function barRate(block: ResolvedBlock): number | Lawless {
  const measured = quantityOf(block, "rate");
  if (measured !== undefined) return measured.value;
  const bar = blockOf(block, "torsion-bar");
  return bar === undefined ? lawless("it has neither a rate nor a torsion bar") : torsionRate(bar);
}

function bladeOf(block: ResolvedBlock): BladeGeometry | Lawless | undefined {
  const blade = blockOf(block, "blade");
  if (blade === undefined) return undefined;
  const [thickness, width] = quantitiesOf(blade, "section");
  const [position, of] = quantitiesOf(blade, "position");
  const length = numberOf(blade, "length");
  if (thickness === undefined || width === undefined || length === undefined || position === undefined) {
    return lawless("its blade needs position, section and length");
  }
  if (of === undefined) return lawless("the position of its blade does not say out of how many (`position 3 of 5`)");
  const set = Math.min(Math.max(position.value, 1), of.value);
  return {
    section: [thickness.value, width.value],
    length,
    modulus: numberOf(blade, "modulus") ?? YOUNGS_MODULUS,
    angle: bladeAngle(set, of.value, numberOf(blade, "soft") ?? FLAT, numberOf(blade, "stiff") ?? ON_EDGE),
  };
}

/**
 * The springs of both drop links as one torsional stage: with the link's moment arm r on each side, twist x/r
 * comes from a deflection x, so that 1/k = 1/(k_l r_L²) + 1/(k_l r_R²); it is used up when both are. The arm is that at design.
 */
function linkStage(block: ResolvedBlock, levers: Sides<BarLever>): Stage | Lawless | undefined {
  const spring = blockOf(block, "link-spring");
  if (spring === undefined) return undefined;
  const rate = numberOf(spring, "rate");
  const travel = numberOf(spring, "travel");
  if (rate === undefined || travel === undefined) return lawless("its link-spring needs rate and travel");
  if (!(rate > 0 && travel > 0)) return lawless("its link-spring gives no positive rate", true);
  const left = linkMomentArm(levers.left);
  const right = linkMomentArm(levers.right);
  return { rate: rate / (1 / left ** 2 + 1 / right ** 2), travel: travel / left + travel / right };
}

/** Bar and blades as one torsional rate. */
function stiffness(block: ResolvedBlock, levers: Sides<BarLever> | undefined): number | Lawless {
  const bar = barRate(block);
  if (isLawlessRate(bar)) return bar;
  const blade = bladeOf(block);
  if (blade === undefined) return bar;
  if (isLawless(blade)) return blade;
  if (levers === undefined) return lawless("its blades bend with the levers' length, which a ratio does not say");
  return antiRollBarRate(bar, [levers.left.lever.arm.radius, levers.right.lever.arm.radius], blade);
}

const isLawlessRate = (rate: number | Lawless): rate is Lawless => typeof rate !== "number";

export function antiRollBarLaw(
  model: ElementModel,
  connection: Pick<Connection, "torsional" | "idle" | "levers"> | undefined,
): SpringLaw | Lawless {
  const { block } = model;
  if (connection?.idle !== undefined) return lawless(connection.idle);
  const rate = quantityOf(block, "rate");
  const wrong = mismatch("bar", rate === undefined || isTorsional(rate.dimension), connection?.torsional);
  if (wrong !== undefined) return wrong;
  const levers = connection?.levers;
  const k = stiffness(block, levers);
  if (typeof k !== "number") return k;
  if (!(k > 0 && Number.isFinite(k))) return lawless("its dimensions give no positive rate", true);
  const stage = blockOf(block, "link-spring") === undefined ? undefined : levers && linkStage(block, levers);
  if (stage !== undefined && isLawless(stage)) return stage;
  if (stage === undefined && blockOf(block, "link-spring") !== undefined) {
    return lawless("its drop links' springs work on the levers' length, which is not known here");
  }
  const curve = stage === undefined ? linear(k) : inSeries(linear(k), stage);
  const law = springLaw(curve, { acts: "both-ways", gap: undefined, preload: undefined });
  return typeof law === "string" ? lawless("it has no law") : law;
}
