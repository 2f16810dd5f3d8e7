/**
 * Which elements carry load or stiffness, and what is missing where one cannot be computed: a sum
 * with an unknown part is unknown.
 */
import type { Element } from "../elements/element.js";
import { gasForceAt, gasRateAt } from "../elements/laws/damper-law.js";

/** What is read of an element here, whatever wheels it follows. */
export interface Carrying extends Pick<Element, "path" | "kind" | "law" | "lawMissing" | "connectionMissing"> {
  readonly connection: { readonly idle: string | undefined } | undefined;
}

const CARRY: ReadonlySet<string> = new Set([
  "spring",
  "bump-stop",
  "anti-roll-bar",
  "gas-spring",
  "hydraulic-link",
  "actuator",
]);
const DAMP: ReadonlySet<string> = new Set(["damper", "hydraulic-link"]);

/** Of an actuator, whose settings are those of cases. */
export const HELD = "it holds a length or a force case by case, and static trim is no case: it adds nothing there";

function missingOf(elements: readonly Carrying[], kinds: ReadonlySet<string>): string | undefined {
  for (const element of elements) {
    if (!kinds.has(element.kind) || element.connection?.idle !== undefined) continue;
    const what = element.connectionMissing ?? element.lawMissing;
    if (what !== undefined) return `${element.path} takes part and ${what}`;
  }
  return undefined;
}

/** Why the axle's static forces and stiffness are not to be had; undefined where every part is known. */
export const stiffnessMissing = (elements: readonly Carrying[]): string | undefined => missingOf(elements, CARRY);

/** The same for its damping. */
export const dampingMissing = (elements: readonly Carrying[]): string | undefined => missingOf(elements, DAMP);

/** Force of an element at a deflection with nothing moving, N or N·m. */
export function staticForce(element: Pick<Element, "law">, deflection: number): number {
  const { law } = element;
  if (law?.kind === "spring") return law.force(deflection);
  return law?.kind === "damper" ? gasForceAt(law, deflection) : 0;
}

/** dF/ds at a deflection with nothing moving. */
export function staticRate(element: Pick<Element, "law">, deflection: number): number {
  const { law } = element;
  if (law?.kind === "spring") return law.rate(deflection);
  return law?.kind === "damper" ? gasRateAt(law, deflection) : 0;
}
