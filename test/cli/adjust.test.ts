import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openWorkshop, type Workshop } from "./run-cli.js";
import { problemsAgainst } from "./schema.js";

describe("bellcrank adjust", () => {
  let shop: Workshop;
  beforeAll(() => {
    shop = openWorkshop();
  });
  afterAll(() => shop.remove());

  interface Adjuster {
    readonly path: string;
    readonly step: string;
    readonly independence: number | { readonly absent: string };
    readonly changes: Readonly<Record<string, { readonly by: { readonly value: number }; readonly relative: number }>>;
  }
  const adjusters = (file: string): readonly Adjuster[] =>
    JSON.parse(shop.run("adjust", file, "--format", "json").out).adjusters;

  it("gives JSON that its schema describes", () => {
    const { out, code } = shop.run("adjust", "quill/quill.crank", "--format", "json");
    expect(code).toBe(0);
    expect(problemsAgainst("adjust", out)).toEqual([]);
  });

  it("changes by a step what the step in a set-up changes", () => {
    const rateOf = (file: string) =>
      JSON.parse(shop.run("rates", file, "--format", "json").out).axles.front.heaveRate.value as number;
    const third = adjusters("quill/quill.crank").find(({ path }) => path === "front.third.rate");
    const by = Number.parseFloat(third?.step ?? "");
    shop.write("quill/up.crank", `use "quill.crank"\n\nsetup up from quill {\n  front.third.rate by +${by} N/mm\n}\n`);
    const change = third?.changes["front.heave-rate"];
    expect(change?.by.value).toBeCloseTo(rateOf("quill/up.crank") - rateOf("quill/quill.crank"), 8);
    expect(third?.independence).toBeLessThan(0.001);
  });

  it("counts turns, positions and parts, and steps down where there is no way up", () => {
    const steps = Object.fromEntries(adjusters("quill/quill.crank").map(({ path, step }) => [path, step]));
    expect(steps["front.push-rod.longer"]).toBe("+1.25 mm (1 turn)");
    expect(steps["front.corner-bar.fit"]).toMatch(/^TB-1(05|15)$/);
    expect(steps["front.bar.blade.position"]).toBe("+1");
    shop.write("quill/stiff.crank", 'use "quill.crank"\n\nsetup stiff from quill {\n  front.bar.blade.position 5\n}\n');
    const stiff = adjusters("quill/stiff.crank").find(({ path }) => path === "front.bar.blade.position");
    expect(stiff?.step).toBe("-1");
    expect(stiff?.changes["front.roll-stiffness"]?.relative).toBeLessThan(0);
  });

  it("names the largest off-diagonal of a heave spring that leans on one side", () => {
    const line = "front.third.between left.rocker.third and chassis (0, 40, 456) mm";
    shop.write("quill/lame.crank", `use "quill.crank"\n\nsetup lame from quill {\n  ${line}\n}\n`);
    const { offDiagonals } = JSON.parse(shop.run("adjust", "quill/lame.crank", "--format", "json").out);
    expect(offDiagonals[0]).toMatchObject({ path: "front.third.rate", figure: "front.roll-stiffness" });
  });

  it("says the same in text, Markdown and CSV", () => {
    const text = shop.run("adjust", "quill/quill.crank").out;
    expect(text).toContain("off over on");
    expect(text).toContain("Change at hairpin");
    expect(text).toContain("competent person");
    expect(shop.run("adjust", "quill/quill.crank", "--format", "markdown").out).toContain("| front.third.rate |");
    const [head = "", ...rows] = shop.run("adjust", "quill/quill.crank", "--format", "csv").out.trimEnd().split("\n");
    expect(head).toContain("front.heave-rate (N/mm)");
    expect(rows.every((row) => row.split(",").length === head.split(",").length)).toBe(true);
  });

  it("takes a car in inches", () => {
    expect(shop.run("adjust", "tern/tern.crank").out).toContain("lbf/in");
  });

  it("is a usage error without a file of that name", () => {
    expect(shop.run("adjust", "none.crank").code).toBe(2);
  });
});
