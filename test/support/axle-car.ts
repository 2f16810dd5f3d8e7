/** Texts about the practice car of samples/broken/axle.crank: the car changed, and set-ups made from it. */
import type { RuleContext } from "../../server/findings/context.js";
import type { Finding } from "../../server/findings/finding.js";
import { runRules } from "../../server/findings/run.js";
import type { ElementFigures } from "../../server/analyses/results.js";
import { contextOf } from "./context.js";
import { brokenSamples } from "./shared-car.js";

export const axle = brokenSamples["axle.crank"] ?? "";

/** The car's text with some of it changed; every `from` has to be there. */
export function carWith(...changes: readonly (readonly [from: string, to: string])[]): string {
  return changes.reduce((text, [from, to]) => {
    if (!text.includes(from)) throw new Error(`the car does not say ${from}`);
    return text.replace(from, to);
  }, axle);
}

/** Lines more at the end of the axle. */
export const axleWith = (...lines: readonly string[]): string =>
  axle.replace(/ {2}\}\n\}\n$/, `${lines.map((line) => `    ${line}\n`).join("")}  }\n}\n`);

/** Lines more at the end of the car. */
export const carAnd = (...lines: readonly string[]): string =>
  axle.replace(/\}\n$/, `${lines.map((line) => `  ${line}\n`).join("")}}\n`);

/** A set-up of the car with these lines. */
export const setup = (...lines: readonly string[]): string =>
  `use "axle.crank"\n\nsetup trial from plover {\n${lines.map((line) => `  ${line}\n`).join("")}}\n`;

/** `car` stands in for axle.crank where a set-up shall be made from another one. */
export const checked = (text: string, car: string = axle): RuleContext =>
  contextOf({ ...brokenSamples, "axle.crank": car, "trial.crank": text }, "trial.crank");

export const found = (text: string, car: string = axle): readonly string[] =>
  runRules(checked(text, car)).map(({ rule, severity }) => `${severity} ${rule}`);

/** What the finding underlines. */
export const underlined = (context: RuleContext, { span }: Finding): string => context.text.slice(span.start, span.end);

/** The figures of an element of the first car or set-up. */
export function figuresOf(context: RuleContext, path: string): ElementFigures {
  const { front, rear } = context.cars[0]?.analysis.axles ?? {};
  const element = [front, rear].flatMap((one) => one?.elements ?? []).find((one) => one.path === path);
  if (element === undefined) throw new Error(`no ${path}`);
  return element;
}

export function motionOf(context: RuleContext, path: string): { readonly heave: number; readonly roll: number } {
  const { sensitivity } = figuresOf(context, path);
  if ("kind" in sensitivity) throw new Error(sensitivity.reason);
  return sensitivity;
}
