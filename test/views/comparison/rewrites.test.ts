/**
 * Random rewrites of a sample car that mean the same give no change; each random change of one value gives exactly that
 * change, whatever rewrites are done beside it.
 */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Block, format, parse, type Statement } from "../../../grammar/index.js";
import { fromSI, toSI, unitsOf, dimensionOfUnit } from "../../../server/quantities/index.js";
import { carIn, changesOf, type Version } from "./versions.js";

const beside = Object.fromEntries(["parts.crank"].map((name) => [name, readFileSync(`samples/quill/${name}`, "utf8")]));
const original = readFileSync("samples/quill/quill.crank", "utf8");

interface Text {
  readonly text: string;
  readonly beside: Readonly<Record<string, string>>;
  /** The set-up that is the car now; undefined for the car itself. */
  readonly name: string | undefined;
}

/** One way of writing the same; `seed` chooses where. */
type Rewrite = (of: Text, seed: number) => Text;

const statementsIn = (block: Block): readonly Statement[] =>
  block.entries.flatMap((entry) =>
    entry.kind === "statement" ? [entry, ...(entry.block === undefined ? [] : statementsIn(entry.block))] : [],
  );

const carBlocks = (text: string): readonly Block[] => {
  const blocks: Block[] = [];
  const visit = (block: Block): void => {
    blocks.push(block);
    for (const entry of block.entries) if (entry.kind === "statement" && entry.block !== undefined) visit(entry.block);
  };
  for (const entry of parse(text).document.entries)
    if (entry.kind === "statement" && entry.head.segments[0]?.text === "car" && entry.block !== undefined)
      visit(entry.block);
  return blocks;
};

const pick = <T>(all: readonly T[], seed: number): T | undefined => all[seed % Math.max(1, all.length)];

/** Plain numbers of the car with a unit that has others beside it, alone behind their word. */
const numbers = (text: string) =>
  carBlocks(text)
    .flatMap(statementsOf)
    .flatMap(({ items }) => {
      const [only, more] = items;
      return only?.kind === "quantity" && more === undefined && only.unit !== undefined ? [only] : [];
    });
const statementsOf = (block: Block): readonly Statement[] =>
  block.entries.flatMap((entry) => (entry.kind === "statement" ? [entry] : []));

const replaced = (text: string, { start, end }: { start: number; end: number }, by: string): string =>
  `${text.slice(0, start)}${by}${text.slice(end)}`;

const inAnotherUnit: Rewrite = (of, seed) => {
  const quantity = pick(numbers(of.text), seed);
  const unit = quantity?.unit?.text ?? "";
  const others = unitsOf(dimensionOfUnit(unit) ?? "any").filter((one) => one !== unit);
  const other = pick(others, seed);
  const si = quantity && toSI(quantity.value, unit);
  const value = si === undefined || other === undefined ? undefined : fromSI(si, other);
  if (quantity === undefined || value === undefined || /e/.test(String(value))) return of;
  return { ...of, text: replaced(of.text, quantity, `${value} ${other ?? ""}`) };
};

const swapped: Rewrite = (of, seed) => {
  const block = pick(
    carBlocks(of.text).filter((one) => statementsOf(one).length > 1),
    seed,
  );
  const lines = block === undefined ? [] : statementsOf(block);
  const [first, second] = [
    lines[seed % Math.max(1, lines.length - 1)],
    lines[(seed % Math.max(1, lines.length - 1)) + 1],
  ];
  if (first === undefined || second === undefined) return of;
  // Their notes go with them only where they have none; others stay where they are.
  if (first.notes.length + second.notes.length > 0) return of;
  const [a, b] = [of.text.slice(first.start, first.end), of.text.slice(second.start, second.end)];
  return { ...of, text: replaced(replaced(of.text, second, a), first, b) };
};

const laidOut: Rewrite = (of) => ({ ...of, text: format(of.text) });
const otherLineEnds: Rewrite = (of) => ({ ...of, text: of.text.replaceAll(/\r?\n/g, "\r\n") });
const commented: Rewrite = (of, seed) => ({
  ...of,
  text: of.text.replace("\ncar quill", `\n# remark ${seed}\ncar quill`),
});

const toLet: Rewrite = (of, seed) => {
  const quantity = pick(numbers(of.text), seed);
  if (quantity === undefined) return of;
  const name = `shared-${quantity.start}`;
  const written = of.text.slice(quantity.start, quantity.end);
  return {
    ...of,
    text: replaced(of.text, quantity, name).replace("\ncar quill", `\nlet ${name} = ${written}\ncar quill`),
  };
};

const toAnotherFile: Rewrite = (of) =>
  of.beside["body.crank"] !== undefined || of.name !== undefined
    ? of
    : {
        text: 'use "body.crank"\n\nsetup moved from quill {\n}\n',
        beside: { ...of.beside, "body.crank": of.text },
        name: "moved",
      };

const rewrites: readonly Rewrite[] = [inAnotherUnit, swapped, laidOut, otherLineEnds, commented, toLet];

const version = ({ text, beside: files, name }: Text): Version => carIn(text, name, files);
const start: Text = { text: original, beside, name: undefined };

const anyRewrites = fc.array(fc.tuple(fc.nat(rewrites.length - 1), fc.nat(1000)), { minLength: 1, maxLength: 6 });
const rewritten = (of: Text, steps: readonly (readonly [number, number])[]): Text =>
  steps.reduce((text, [which, seed]) => (rewrites[which] ?? laidOut)(text, seed), of);

/** A value of the car made smaller by a twentieth, which keeps it within every limit. */
function changed(of: Text, seed: number): Text | undefined {
  const quantity = pick(
    numbers(of.text).filter(({ value }) => value !== 0),
    seed,
  );
  return (
    quantity && {
      ...of,
      text: replaced(
        of.text,
        quantity,
        `${Number((quantity.value * 0.95).toPrecision(8))} ${quantity.unit?.text ?? ""}`,
      ),
    }
  );
}

describe("random rewrites", () => {
  it("that mean the same are no change", () => {
    const before = version(start);
    fc.assert(
      fc.property(anyRewrites, fc.boolean(), (steps, moves) => {
        const text = rewritten(start, steps);
        const now = version(moves ? toAnotherFile(text, 0) : text);
        expect(changesOf(before, now).map(({ path, old, now: is }) => [path, old?.text, is?.text])).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it("around one changed value leave exactly that change", () => {
    const before = version(start);
    fc.assert(
      fc.property(fc.nat(10_000), anyRewrites, (seed, steps) => {
        const one = changed(start, seed);
        fc.pre(one !== undefined);
        if (one === undefined) return;
        const found = changesOf(before, version(rewritten(one, steps)));
        expect(found.map(({ kind, of }) => [kind, of])).toEqual([["changed", "property"]]);
        const [change] = found;
        expect(change?.old?.text).not.toBe(change?.now?.text);
      }),
      { numRuns: 60 },
    );
  });

  it("do reach every kind of rewrite", () => {
    for (const [i, rewrite] of rewrites.entries()) {
      const texts = Array.from({ length: 8 }, (_, seed) => rewrite(start, seed).text);
      expect([i, texts.some((text) => text !== original) || rewrite === laidOut]).toEqual([i, true]);
    }
    expect(carBlocks(original).flatMap((block) => statementsIn(block)).length).toBeGreaterThan(100);
  });
});
