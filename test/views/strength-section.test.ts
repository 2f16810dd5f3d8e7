/** The tables of strength, room and stages on the page of rates. */
import { describe, expect, it } from "vitest";
import { ratesPage, type Section } from "../../server/views/rates-page.js";
import { ratesMarkdown } from "../../server/views/rates-markdown.js";
import { sampleCar } from "../support/samples.js";

const TITLE = "Strength and room";
const STAGES = "Stages, and inertance at the wheels";

const section = (sample: string, title: string, car?: string): Section | undefined =>
  ratesPage(sampleCar(`systems/${sample}.crank`, car)).sections.find((one) => one.title === title);
const rowsOf = (sample: string, title: string): readonly (readonly string[])[] => section(sample, title)?.rows ?? [];
const megapascals = (text: string | undefined): number => Number(/^([\d.]+) MPa/.exec(text ?? "")?.[1]);

describe("strength and room", () => {
  it("holds a bar's stress at rest and at the worst against what is usual, as the load and its dimensions give it", () => {
    const car = sampleCar("systems/torsion-bar.crank");
    const bar = car.analysis.axles.front?.elements.find(({ path }) => path === "front.left.corner-bar");
    const row = rowsOf("torsion-bar", TITLE).find(([path]) => path === "front.left.corner-bar");
    expect(row?.slice(1, 2)).toEqual(["torsion bar in shear"]);
    expect(row?.[4]).toMatch(/^[\d.]+ MPa usual$/);
    const block = car.model.axles.front?.elements.find(({ path }) => path === bar?.path)?.block;
    const lines = block?.statements.find(({ word }) => word === "torsion-bar")?.block?.statements ?? [];
    const first = (word: string): number => {
      const value = lines.find((line) => line.word === word)?.values[0];
      return value?.kind === "number" ? value.value : 0;
    };
    // τ = 16 T d / (π (d⁴ − b⁴)), S. Timoshenko, Strength of Materials, part I, from memory.
    const [d, b] = [first("diameter"), first("bore")];
    const shear = (16 * Math.abs(bar?.staticLoad as number) * d) / (Math.PI * (d ** 4 - b ** 4));
    expect(megapascals(row?.[2]) / (shear / 1e6)).toBeCloseTo(1, 2);
    expect(megapascals(row?.[3])).toBeGreaterThan(megapascals(row?.[2]));
  });

  it("says how long a coil is, how short it gets and where it closes up", () => {
    const row = rowsOf("coil", TITLE).find(([path, what]) => path === "front.left.coil" && what === "coil's length");
    const [rest, least, solid] = (row ?? []).slice(2).map((text) => Number.parseFloat(text));
    expect(rest).toBeGreaterThan(least ?? 0);
    expect(least).toBeGreaterThan(solid ?? 0);
    // 9 turns and two closed ends of 9.5 mm wire, shown with three digits.
    expect(solid).toBe(Math.round(11 * 9.5));
  });

  it("says what stroke is left both ways", () => {
    const rows = rowsOf("heave-together", TITLE).filter(([path]) => path === "front.heave-damper");
    expect(rows.map(([, what]) => what)).toEqual(["stroke left in bump", "stroke left in rebound"]);
    // At rest where it is drawn: the whole stroke of 40 mm each way.
    expect(rows.map(([, , atRest]) => atRest)).toEqual(["40 mm", "40 mm"]);
  });

  it("is left out where nothing of it is known", () => {
    expect(section("heave-together", STAGES)).toBeDefined();
    expect(section("roll-elements", STAGES)).toBeUndefined();
  });
});

describe("stages and inertance", () => {
  it("tells when link springs are used up, in roll and in lateral acceleration or why not", () => {
    const lines = rowsOf("link-springs", STAGES).filter(([path]) => path === "front.bar");
    const words = lines.map(([, line]) => line).join("\n");
    expect(words).toMatch(/a stage is used up at [\d.]+ deg/);
    expect(words).toMatch(/link springs used up at [\d.]+ deg of roll/);
    expect(words).toMatch(/lateral acceleration: none \(the car has no rear axle\)/);
  });

  it("tells what an inerter adds at the wheels", () => {
    const [line] = rowsOf("inerters", STAGES).filter(([path]) => path === "front.flywheel");
    expect(line?.[1]).toMatch(/^adds as mass at the wheels [\d.]+ kg in heave/);
  });

  it("stand in the Markdown page too", () => {
    const text = ratesMarkdown(sampleCar("systems/link-springs.crank"));
    expect(text).toContain(`## ${TITLE}`);
    expect(text).toContain(`## ${STAGES}`);
  });
});
