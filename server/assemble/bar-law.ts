/** The law of an anti-roll bar: its bar, in series with its blades and the springs in its drop links. */
import { linkMomentArm } from "../elements/connections/bar-lever.js";
import type { Connection, SpringLaw } from "../elements/element.js";
import { antiRollBarRate, teeRate } from "../elements/laws/anti-roll-bar.js";
import { linear } from "../elements/laws/linear.js";
import { inSeries, type Stage } from "../elements/laws/series.js";
import { springLaw } from "../elements/laws/spring-law.js";
import type { ElementModel, ResolvedBlock } from "../model/car.js";
import { bladeOf } from "./blade.js";
import { isLawless, isTorsional, type Lawless, lawless, mismatch } from "./lawless.js";
import { blockOf, numberOf, quantityOf } from "./reading.js";
import { torsionRate } from "./spring-law.js";

/** Torsional rate end against end: as measured, else from the bar's dimensions. */
function barRate(block: ResolvedBlock): number | Lawless {
  const measured = quantityOf(block, "rate");
  if (measured !== undefined) return measured.value;
  const bar = blockOf(block, "torsion-bar");
  return bar === undefined ? lawless("it has neither a rate nor a torsion bar") : torsionRate(bar);
}

/** Of a connection, what the law of a bar rests on. */
type BarJoined = Pick<Connection, "torsional" | "idle" | "levers" | "tee">;

const NO_ARMS = "work on the levers' length, which is not known here";

/**
 * The springs of both drop links as one torsional stage: with the link's moment arm r on each side, twist x/r
 * comes from a deflection x, so that 1/k = 1/(k_l r_L²) + 1/(k_l r_R²); it is used up when both are. The arm is that at
 * design. Under a T both links share the moment: k = 2 k_l r², used up at x/r.
 */
function linkStage(block: ResolvedBlock, { levers, tee }: BarJoined): Stage | Lawless | undefined {
  const spring = blockOf(block, "link-spring");
  if (spring === undefined) return undefined;
  const rate = numberOf(spring, "rate");
  const travel = numberOf(spring, "travel");
  if (rate === undefined || travel === undefined) return lawless("its link-spring needs rate and travel");
  if (!(rate > 0 && travel > 0)) return lawless("its link-spring gives no positive rate", true);
  if (tee !== undefined) return { rate: 2 * rate * tee.linkArm ** 2, travel: travel / tee.linkArm };
  if (levers === undefined) return lawless(`its drop links' springs ${NO_ARMS}`);
  const left = linkMomentArm(levers.left);
  const right = linkMomentArm(levers.right);
  return { rate: rate / (1 / left ** 2 + 1 / right ** 2), travel: travel / left + travel / right };
}

/** Bar and blades as one torsional rate. */
function stiffness(block: ResolvedBlock, { levers, tee }: BarJoined): number | Lawless {
  const bar = barRate(block);
  if (typeof bar !== "number") return bar;
  const blade = bladeOf(block);
  if (blade === undefined) return bar;
  if (isLawless(blade)) return blade;
  if (tee !== undefined) return teeRate(bar, tee.arm, blade);
  if (levers === undefined) return lawless(`its blades ${NO_ARMS}`);
  return antiRollBarRate(bar, [levers.left.lever.arm.radius, levers.right.lever.arm.radius], blade);
}

export function antiRollBarLaw({ block }: ElementModel, connection: BarJoined | undefined): SpringLaw | Lawless {
  if (connection?.idle !== undefined) return lawless(connection.idle);
  const rate = quantityOf(block, "rate");
  const wrong = mismatch("bar", rate === undefined || isTorsional(rate.dimension), connection?.torsional);
  if (wrong !== undefined) return wrong;
  const joined = connection ?? NOT_JOINED;
  const k = stiffness(block, joined);
  if (typeof k !== "number") return k;
  if (!(k > 0 && Number.isFinite(k))) return lawless("its dimensions give no positive rate", true);
  const stage = linkStage(block, joined);
  if (stage !== undefined && isLawless(stage)) return stage;
  const curve = stage === undefined ? linear(k) : inSeries(linear(k), stage);
  const law = springLaw(curve, { acts: "both-ways", gap: undefined, preload: undefined });
  return typeof law === "string" ? lawless("it has no law") : law;
}

const NOT_JOINED: BarJoined = { torsional: true, idle: undefined };
