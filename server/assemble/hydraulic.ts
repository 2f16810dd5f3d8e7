/**
 * The circuit of a hydraulic link: which sides of its cylinders enclose one volume of oil, what that volume gives
 * into, and what its lines lose. The same for cylinders of one axle and for those between the axles.
 *
 * Sides that a line joins are one volume, and so on along every line. A link of one cylinder without a line is that
 * cylinder's working side.
 *
 * Invariant: never throws; a circuit that holds its volume, since nothing in it gives, has no law but a reason.
 */
import type { Chamber } from "../elements/connections/cylinders.js";
import type { DamperLaw, SpringLaw } from "../elements/element.js";
import { type LineEnd, lineResistance } from "../elements/laws/line-resistance.js";
import { oilLaw } from "../elements/laws/oil.js";
import { ATMOSPHERE, type GasCharge, polytropic } from "../elements/laws/polytropic.js";
import type { ConnectionModel, CylinderModel, LineModel, ResolvedBlock } from "../model/car.js";
import type { Unconnected } from "./connections.js";
import { chargeOf } from "./gas-law.js";
import { isLawless, type Lawless, lawless } from "./lawless.js";
import { blockOf, numberOf } from "./reading.js";

export type CylindersModel = Extract<ConnectionModel, { kind: "cylinders" }>;

interface Part<Joined, L> {
  /** The first cylinder of the volume; the cylinder of a flow. */
  readonly cylinder: string;
  readonly chambers: readonly Chamber<Joined>[];
  readonly law: L;
}

export interface Circuit<Joined> {
  /** One or more. */
  readonly volumes: readonly Part<Joined, SpringLaw | Lawless>[];
  /** Sides of cylinders whose oil meets a resistance. */
  readonly flows: readonly Part<Joined, DamperLaw>[];
}

type Side = "working" | "far";

/** One side of a cylinder that a line, or the lack of lines, makes part of the circuit. */
interface Node {
  readonly cylinder: string;
  readonly side: Side;
}

const keyOf = ({ cylinder, side }: Node): string => `${cylinder} ${side}`;

const endsOf = ({ from, to, crossed }: LineModel): readonly [Node, Node] => [
  { cylinder: from, side: "working" },
  { cylinder: to, side: crossed ? "far" : "working" },
];

interface Enclosed {
  readonly nodes: readonly Node[];
  readonly lines: readonly LineModel[];
}

/** Sides that lines join, along every line. */
function enclosed(lines: readonly LineModel[]): readonly Enclosed[] {
  let volumes: Enclosed[] = [];
  for (const line of lines) {
    const ends = endsOf(line);
    const keys = ends.map(keyOf);
    const touches = ({ nodes }: Enclosed): boolean => nodes.some((node) => keys.includes(keyOf(node)));
    const joined = volumes.filter(touches);
    const nodes = [...joined.flatMap((volume) => volume.nodes), ...ends];
    const merged = {
      nodes: nodes.filter((node, i) => nodes.findIndex((other) => keyOf(other) === keyOf(node)) === i),
      lines: [...joined.flatMap((volume) => volume.lines), line],
    };
    volumes = [...volumes.filter((volume) => !touches(volume)), merged];
  }
  return volumes;
}

const fault = (missing: string): Unconnected => ({ missing, atFault: true });

function volumesOf({ cylinders, lines }: CylindersModel): readonly Enclosed[] | Unconnected {
  const names = new Set(cylinders.map(({ name }) => name));
  const sound = lines.filter(({ from, to }) => names.has(from) && names.has(to));
  const [only, more] = cylinders;
  if (sound.length === 0 && only !== undefined && more === undefined)
    return [{ nodes: [{ cylinder: only.name, side: "working" }], lines: [] }];
  if (sound.length === 0) return { missing: "no line joins its cylinders", atFault: false };
  const alone = cylinders.find(({ name }) => !sound.some(({ from, to }) => from === name || to === name));
  if (alone !== undefined) return fault(`no line joins its cylinder ${alone.name}`);
  const valve = sound.find(({ from, to, oneWay }) => oneWay !== undefined && oneWay !== from && oneWay !== to);
  if (valve !== undefined)
    return fault(`a valve is for its cylinder ${valve.oneWay}, which the valve's line does not join`);
  const loop = sound.find(({ from, to, crossed }) => from === to && !crossed);
  return loop === undefined ? enclosed(sound) : fault(`a line joins a side of its cylinder ${loop.from} to itself`);
}

/** Area of a side with its sign, or what is wrong with it. */
function areaOf({ name, block }: CylinderModel, side: Side): number | Unconnected {
  const piston = numberOf(block, "area");
  if (piston === undefined) return { missing: `its cylinder ${name} has no area`, atFault: false };
  const annulus = numberOf(block, "annulus-area") ?? piston;
  if (!(piston > 0 && annulus > 0)) return fault(`its cylinder ${name} has an area that is not positive`);
  if (annulus > piston) return fault(`the annulus of its cylinder ${name} is larger than its piston`);
  return side === "working" ? piston : -annulus;
}

/** Σ V/B of the lines; one that does not state both is taken as incompressible. */
function complianceOf(lines: readonly LineModel[]): number {
  return lines.reduce((sum, { block }) => {
    const modulus = numberOf(block, "bulk-modulus");
    const volume = numberOf(block, "volume");
    return modulus !== undefined && volume !== undefined && modulus > 0 && volume > 0 ? sum + volume / modulus : sum;
  }, 0);
}

interface Filling {
  readonly charge: GasCharge | undefined;
  /** Above atmosphere, at design. */
  readonly pressure: number;
}

function fillingOf(block: ResolvedBlock): Filling | Lawless {
  const stated = numberOf(block, "pressure");
  const accumulator = blockOf(block, "accumulator");
  if (accumulator === undefined) return { charge: undefined, pressure: stated ?? 0 };
  const charge = chargeOf(accumulator, "its accumulator");
  if (isLawless(charge)) return charge;
  if (stated !== undefined) return lawless("its pressure is that of its accumulator, and is stated beside it", true);
  return { charge, pressure: charge.pressure - ATMOSPHERE };
}

const RIGID =
  "nothing in it gives: its oil is taken as incompressible and it has no accumulator. State bulk-modulus and volume of a line, or an accumulator";

function pressureLaw(lines: readonly LineModel[], filling: Filling | Lawless): SpringLaw | Lawless {
  if (isLawless(filling)) return filling;
  const { charge, pressure } = filling;
  const gas = charge === undefined ? undefined : polytropic(charge);
  return oilLaw({ pressure, compliance: complianceOf(lines), gas }) ?? lawless(RIGID, true);
}

/** The lines at a side of a cylinder as that side sees them. */
function lineEnds(node: Node, lines: readonly LineModel[]): readonly LineEnd[] {
  return lines.flatMap((line) => {
    const here = endsOf(line).findIndex((end) => keyOf(end) === keyOf(node));
    if (here < 0) return [];
    const resistance = numberOf(line.block, "resistance") ?? 0;
    const valve = line.oneWay === undefined ? undefined : line.oneWay === line.from ? 0 : 1;
    const free = valve === undefined ? undefined : valve === here ? "out" : "in";
    return [{ resistance, free } as const];
  });
}

/** @param joined each cylinder's own compression, by its name */
export function circuitOf<Joined>(
  model: CylindersModel,
  block: ResolvedBlock,
  joined: ReadonlyMap<string, Joined>,
): Circuit<Joined> | Unconnected {
  const volumes = volumesOf(model);
  if ("missing" in volumes) return volumes;
  const filling = fillingOf(block);
  const made: Circuit<Joined>["volumes"][number][] = [];
  const flows: Circuit<Joined>["flows"][number][] = [];
  for (const { nodes, lines } of volumes) {
    const chambers: Chamber<Joined>[] = [];
    for (const node of nodes) {
      const chamber = chamberOf(node, model, joined);
      if ("missing" in chamber) return chamber;
      chambers.push(chamber);
      const law = lineResistance(lineEnds(node, lines));
      if (law !== undefined) flows.push({ cylinder: node.cylinder, chambers: [chamber], law });
    }
    made.push({ cylinder: nodes[0]?.cylinder ?? "", chambers, law: pressureLaw(lines, filling) });
  }
  return { volumes: made, flows };
}

function chamberOf<Joined>(
  { cylinder, side }: Node,
  { cylinders }: CylindersModel,
  joined: ReadonlyMap<string, Joined>,
): Chamber<Joined> | Unconnected {
  const model = cylinders.find(({ name }) => name === cylinder);
  const connection = joined.get(cylinder);
  if (model === undefined || connection === undefined) return fault(`there is no cylinder ${cylinder}`);
  const area = areaOf(model, side);
  return typeof area === "number" ? { cylinder: connection, area } : area;
}
