/**
 * An element from what its connection and its law have come to, with what is to be told of it: the same for one of an
 * axle and for one between the axles.
 */
import type { Chamber } from "../elements/connections/cylinders.js";
import type { Element, Law } from "../elements/element.js";
import type { AssemblyProblem } from "../elements/mechanism.js";
import type { ElementModel } from "../model/car.js";
import { isUnconnected, type Unconnected } from "./connections.js";
import type { Circuit } from "./hydraulic.js";
import { isLawless, type Lawless } from "./lawless.js";

export interface Built<C> {
  /** The element, and what stands beside it under its path. */
  readonly elements: readonly (Omit<Element, "connection"> & { readonly connection: C | undefined })[];
  readonly problems: readonly AssemblyProblem[];
}

function elementOf<C>(model: ElementModel, made: C | Unconnected, law: Law | Lawless | undefined, part?: string) {
  const { path, name, kind, for: modes, side } = model;
  const missing = unconnected(made);
  return {
    path,
    name,
    kind,
    for: modes,
    side,
    part,
    connection: missing === undefined ? (made as C) : undefined,
    connectionMissing: missing?.missing,
    law: law === undefined || isLawless(law) ? undefined : law,
    lawMissing: law !== undefined && isLawless(law) ? law.lawless : undefined,
  };
}

const unconnected = (made: unknown): Unconnected | undefined =>
  typeof made === "object" && made !== null && isUnconnected(made) ? made : undefined;

function problemsOf({ path }: ElementModel, made: unknown, law: Law | Lawless | undefined): readonly AssemblyProblem[] {
  const problems: AssemblyProblem[] = [];
  const missing = unconnected(made);
  if (missing?.atFault === true) problems.push({ kind: "connection", path, reason: missing.missing });
  if (law !== undefined && isLawless(law) && law.atFault) {
    problems.push({ kind: "law", path, reason: law.lawless, lines: law.lines });
  }
  return problems;
}

export const builtElement = <C>(model: ElementModel, made: C | Unconnected, law: Law | Lawless): Built<C> => ({
  elements: [elementOf(model, made, law)],
  problems: problemsOf(model, made, law),
});

/**
 * A hydraulic link: its first volume of oil has the claim and the figures; further volumes and the flows stand beside it
 * as its parts. What is wrong with it is told once.
 *
 * @param swept the connection of the sides of cylinders that enclose one volume
 */
export function builtLink<C>(
  model: ElementModel,
  circuit: Circuit<C> | Unconnected,
  swept: (chambers: readonly Chamber<C>[]) => C,
): Built<C> {
  if (isUnconnected(circuit)) {
    const law = { lawless: circuit.missing, atFault: false };
    return { elements: [elementOf<C>(model, circuit, law)], problems: problemsOf(model, circuit, law) };
  }
  const volumes = circuit.volumes.map(({ cylinder, chambers, law }, i) =>
    elementOf(model, swept(chambers), law, i === 0 ? undefined : `volume of ${cylinder}`),
  );
  const flows = circuit.flows.map(({ cylinder, chambers, law }) =>
    elementOf(model, swept(chambers), law, `flow of ${cylinder}`),
  );
  const wrong = circuit.volumes.map(({ law }) => law).find(isLawless);
  return { elements: [...volumes, ...flows], problems: problemsOf(model, undefined, wrong) };
}
