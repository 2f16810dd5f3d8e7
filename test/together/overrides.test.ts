/**
 * `remove`, `by`, `fit` and overrides on one side, over every kind of element and every value that it takes: a line changes what
 * it names and nothing else, and hover says what it did.
 */
import { describe, expect, it } from "vitest";
import { wordsIn } from "../../grammar/vocabulary/index.js";
import { runRules } from "../../server/findings/run.js";
import type { CarModel, ResolvedValue } from "../../server/model/car.js";
import { showNumber } from "../../server/quantities/index.js";
import { fromSI } from "../../server/quantities/index.js";
import { createWorkspace } from "../../server/snapshot/create.js";
import { hoverAt } from "../../server/views/hover.js";
import { contextOf } from "../support/context.js";
import { everyElement } from "./every-element.js";
import { differing, resolvedLines } from "./resolved-lines.js";

const setup = (...lines: readonly string[]): string =>
  `use "every.crank"\n\nsetup trial from every {\n${lines.map((line) => `  ${line}\n`).join("")}}\n`;
const changed = (...lines: readonly string[]) =>
  contextOf({ "every.crank": everyElement, "trial.crank": setup(...lines) }, "trial.crank");
const modelOf = (context: ReturnType<typeof changed>): CarModel => {
  const model = context.cars[0]?.model;
  if (model === undefined) throw new Error("no set-up");
  return model;
};

const base = contextOf({ "every.crank": everyElement }, "every.crank");
const baseModel = base.cars[0]?.model as CarModel;
const lines = resolvedLines(baseModel);

/** What hover says with the pointer on `text` in the set-up. */
function hoverOn(line: string, text: string): string {
  const workspace = createWorkspace({
    read: (uri) => (uri.endsWith("every.crank") ? { text: everyElement } : { missing: "missing" }),
  });
  const written = setup(line);
  workspace.set("memory:///club/trial.crank", written);
  const offset = written.indexOf(text, written.indexOf(line)) + 1;
  return hoverAt(workspace.file("memory:///club/trial.crank"), offset)?.markdown ?? "";
}

/** A value a little larger, as the author would write it in the same unit. */
function larger(value: ResolvedValue): { readonly written: string; readonly step: string } | undefined {
  if (value.kind !== "number") return undefined;
  const own = fromSI(value.value, value.unit) ?? value.value;
  const step = value.dimension === "count" ? 1 : own * 0.03;
  const inUnit = (number: number): string => `${showNumber(number, 6)} ${value.unit}`.trim();
  return { written: inUnit(own + step), step: inUnit(step) };
}

const lineOf = (offset: number): string =>
  everyElement.slice(everyElement.lastIndexOf("\n", offset) + 1, everyElement.indexOf("\n", offset));

/** Every line of one number, by its path without a side; those of corner elements stand on both. */
const numbers = [...lines.values()].flatMap(({ path, statement }) => {
  const [value, second] = statement.values;
  const more = value !== undefined && second === undefined ? larger(value) : undefined;
  if (more === undefined || path.includes(".right.")) return [];
  return [{ path: path.replace("front.left.", "front."), ...more, isOfCorner: path.includes(".left.") }];
});
const sidesOf = (path: string, isOfCorner: boolean): readonly string[] =>
  isOfCorner ? ["left", "right"].map((side) => path.replace("front.", `front.${side}.`)) : [path];

describe("the car of every element", () => {
  it("reads without a problem", () => {
    expect(base.problems).toEqual([]);
  });

  it("has every kind of element, and every word that takes a value", () => {
    const kinds = wordsIn("axle").filter(({ role }) => role === "element");
    const written = new Set([...lines.values()].map(({ statement }) => statement.word));
    const opened = kinds.flatMap(({ word, opens }) => [word, ...wordsIn(opens ?? word).map((inner) => inner.word)]);
    // A part takes the place of what it is a part of; the lines of `fit` are looked at by themselves.
    const missing = opened.filter((word) => !written.has(word) && !kinds.some((kind) => kind.word === word));
    expect([...new Set(missing)]).toEqual(["fit"]);
  });
});

describe("a value", () => {
  it.each(numbers)("$path $written changes that line and no other", ({ path, written, isOfCorner }) => {
    const context = changed(`${path} ${written}`);
    expect(context.problems).toEqual([]);
    expect(differing(lines, resolvedLines(modelOf(context)))).toEqual(sidesOf(path, isOfCorner));
  });

  it.each(numbers)("$path: hover on the override says what it replaced, and where", ({ path, written, isOfCorner }) => {
    const line = `${path} ${written}`;
    const said = hoverOn(line, written);
    const [first = path] = sidesOf(path, isOfCorner);
    const old = lines.get(first)?.statement.values[0]?.origin;
    const oldText = old === undefined ? "" : everyElement.slice(old.start, old.end);
    const place = everyElement.slice(0, old?.start).split("\n").length;
    expect(said).toContain(`Replaces, oldest first:\n- \``);
    expect(said).toContain(`in every.crank, line ${place}`);
    expect(said).toContain(oldText.split("\n")[0] ?? "");
  });

  it.each(numbers.filter(({ isOfCorner }) => isOfCorner))(
    "$path on one side leaves the other side",
    ({ path, written }) => {
      const left = path.replace("front.", "front.left.");
      const context = changed(`${left} ${written}`);
      expect(context.problems).toEqual([]);
      expect(differing(lines, resolvedLines(modelOf(context)))).toEqual([left]);
    },
  );

  // A drop link is set on either side by itself.
  it.each(numbers.filter(({ path, isOfCorner }) => !isOfCorner && !path.includes(".drop-link.")))(
    "$path has no side of its own, and that is told",
    ({ path, written }) => {
      const context = changed(`${path.replace("front.", "front.right.")} ${written}`);
      expect(runRules(context).map(({ rule }) => rule)).toContain("override-without-target");
      expect(differing(lines, resolvedLines(modelOf(context)))).toEqual([]);
    },
  );

  it.each(numbers)("$path by +$step adds to what is inherited", ({ path, step, isOfCorner }) => {
    const context = changed(`${path} by +${step}`);
    const after = resolvedLines(modelOf(context));
    expect(context.problems).toEqual([]);
    for (const one of sidesOf(path, isOfCorner)) {
      const [was, is] = [lines.get(one), after.get(one)].map((line) => line?.statement.values[0]);
      if (was?.kind !== "number" || is?.kind !== "number") throw new Error(`no number at ${one}`);
      const [own, now] = [fromSI(was.value, was.unit) ?? Number.NaN, fromSI(is.value, was.unit) ?? Number.NaN];
      expect(now).toBeCloseTo(own + Number.parseFloat(step), 4);
    }
  });
});

describe("hover", () => {
  it("says what a sum comes to", () => {
    expect(hoverOn("front.stated.preload by +20 N", "by")).toContain("Comes to `320 N`.");
    expect(hoverOn("front.gas.working-temperature by +5 degC", "by")).toContain("Comes to `60 degC`.");
    expect(hoverOn("front.left.foam.packer by -1 mm", "by")).toContain("Comes to `2 mm`.");
  });

  it("says what is taken off", () => {
    const said = hoverOn("remove front.foam", "front.foam");
    expect(said).toContain("Takes off:\n- `bump-stop foam for corner {` in every.crank, line");
  });

  it.each([
    ["twisted", "TB-10", ["torsion-bar { diameter 11 mm"]],
    ["kneed", "V-3", ["bump { knee 50 mm/s", "rebound { knee 60 mm/s"]],
    ["gas", "GS-2", ["pressure 15 bar", "volume 60 ml", "area 400 mm^2"]],
  ] as const)("says what a part stands in place of: %s", (name, part, gone) => {
    const said = hoverOn(`front.${name}.fit ${part}`, part);
    expect(said).toContain("Stands in place of:");
    for (const line of gone) expect(said).toContain(`- \`${line}`);
    expect(said.match(/ in every\.crank, line /g)).toHaveLength(gone.length);
  });

  it("says which table a table replaces", () => {
    const line = "front.curved.curve { 0 mm: 0 N, 10 mm: 700 N }";
    const said = hoverOn(line, "curved.curve");
    expect(said).toContain("- `curve { 0 mm: 0 N, 10 mm: 600 N, 20 mm: 1500 N }` in every.crank, line");
  });
});

describe("remove", () => {
  const elements = baseModel.axles.front?.elements ?? [];
  const names = [...new Set(elements.map(({ name }) => name))];

  it.each(names)("front.%s takes it out on both sides, and nothing else", (name) => {
    const context = changed(`remove front.${name}`);
    expect(context.problems).toEqual([]);
    const left = modelOf(context).axles.front?.elements.map(({ path }) => path);
    expect(left).toEqual(elements.filter((one) => one.name !== name).map(({ path }) => path));
  });
});

describe("fit", () => {
  it.each([
    ["twisted", "TB-10", ["torsion-bar"]],
    ["coiled", "C-60", ["coil"]],
    ["straight", "V-3", ["damping", "gas-force", "gas-rate"]],
    ["kneed", "V-3", ["damping", "gas-force", "gas-rate"]],
    ["clicked", "V-3", ["damping", "gas-force", "gas-rate"]],
    ["flywheel", "I-9", ["inertance"]],
    ["foam", "BS-4", ["power-law"]],
    ["bar", "TB-10", ["torsion-bar"]],
    ["bar", "BL-7", ["blade"]],
    ["bar", "LS-9", ["link-spring"]],
    ["gas", "GS-2", ["pressure", "volume", "area"]],
    ["tapered", "GS-2", ["pressure", "volume", "area"]],
  ] as const)("puts into %s the part %s", (name, part, words) => {
    const context = changed(`front.${name}.fit ${part}`);
    expect(context.problems).toEqual([]);
    const fitted = modelOf(context).axles.front?.elements.filter((one) => one.name === name) ?? [];
    for (const one of fitted) {
      expect(one.part?.name).toBe(part);
      for (const word of words) {
        const statement = one.block.statements.find((line) => line.word === word);
        expect(statement).toBeDefined();
        expect(lineOf(statement?.origin.start ?? 0)).toContain(` ${part} {`);
      }
    }
    const others = differing(lines, resolvedLines(modelOf(context))).filter((path) => !path.includes(`.${name}.`));
    expect(others).toEqual([]);
    expect(hoverOn(`front.${name}.fit ${part}`, `${name}.fit`)).toContain(`part ${part}`);
  });
});
