/**
 * What each element adds to its axle's stiffness and damping at static trim: a step that rates and
 * coupling share.
 *
 * Stiffness k ∇s∇sᵀ + F ∇²s, both terms always together; damping c ∇s∇sᵀ at low speed.
 *
 * Invariant: where the force at trim is not known, the part that it has in the stiffness is not left
 * out in silence: the element has no entry, unless nothing of it could depend on that force.
 */
import type { Deflection, Element } from "../elements/element.js";
import type { AxleMechanism } from "../elements/mechanism.js";
import { dampingMissing, staticForce, staticRate, stiffnessMissing } from "./carrying.js";
import { type Form, plus, ZERO } from "./form.js";
import { isAbsent } from "./absent.js";
import { type Standing, type Trim, trimElements } from "./trim.js";

export interface Contributions {
  /** By element; none for those whose force at trim is not known. */
  readonly stiffness: ReadonlyMap<Element, Form>;
  readonly damping: ReadonlyMap<Element, Form>;
  /** Sums over the axle, or why there is none. */
  readonly stiffnessSum: Form | string;
  readonly dampingSum: Form | string;
}

function stiffnessOf(d: Deflection, k: number, force: number): Form {
  return {
    LL: k * d.dL * d.dL + force * d.dLL,
    LR: k * d.dL * d.dR + force * d.dLR,
    RR: k * d.dR * d.dR + force * d.dRR,
  };
}

/** True where the element's stiffness is the same whatever it carries: one rate, and a deflection without bend. */
function indifferent(element: Element, d: Deflection): boolean {
  const straight = d.dLL === 0 && d.dLR === 0 && d.dRR === 0;
  return straight && element.law?.kind === "spring" && element.law.constantRate !== undefined;
}

const sumOf = (forms: ReadonlyMap<Element, Form>): Form => [...forms.values()].reduce(plus, ZERO);

/** What stands beside an element of the same path is told with it. */
function withTheirParts(forms: ReadonlyMap<Element, Form>, elements: readonly Element[]): ReadonlyMap<Element, Form> {
  const whole = new Map<Element, Form>();
  for (const [element, form] of forms) {
    const owner =
      element.part === undefined
        ? element
        : elements.find(({ path, part }) => path === element.path && part === undefined);
    const key = owner ?? element;
    whole.set(key, plus(whole.get(key) ?? ZERO, form));
  }
  return whole;
}

/** Elements whose force at trim is not known. */
function unsettled(mechanism: AxleMechanism, trim: Trim): readonly Element[] {
  if (!isAbsent(trim.results)) return [];
  return mechanism.trim.by === "push-rod" ? mechanism.elements : trimElements(mechanism);
}

const carries = ({ law }: Element): boolean =>
  law?.kind === "spring" || (law?.kind === "damper" && (law.gasForce !== 0 || law.gasRate !== undefined));

export function contributions(mechanism: AxleMechanism, standing: Standing, trim: Trim): Contributions {
  const { elements } = mechanism;
  const open = unsettled(mechanism, trim);
  const stiffness = new Map<Element, Form>();
  const damping = new Map<Element, Form>();
  let unknown = stiffnessMissing(elements);
  for (const element of elements) {
    const d = standing.get(element);
    if (d === undefined) continue;
    if (element.law?.kind === "damper") damping.set(element, stiffnessOf(d, element.law.lowSpeed, 0));
    if (!carries(element)) continue;
    if (open.includes(element) && !indifferent(element, d)) {
      unknown ??= isAbsent(trim.results) ? trim.results.reason : undefined;
      continue;
    }
    const s = d.s + (trim.seats.get(element) ?? 0);
    stiffness.set(element, stiffnessOf(d, staticRate(element, s), staticForce(element, s)));
  }
  return {
    stiffness: withTheirParts(stiffness, elements),
    damping: withTheirParts(damping, elements),
    stiffnessSum: unknown ?? sumOf(stiffness),
    dampingSum: dampingMissing(elements) ?? sumOf(damping),
  };
}
