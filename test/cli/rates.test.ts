import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openWorkshop, type Workshop } from "./run-cli.js";
import { problemsAgainst } from "./schema.js";

interface Quantity {
  readonly value: number;
  readonly unit: string;
}

describe("bellcrank rates", () => {
  let shop: Workshop;
  beforeAll(() => {
    shop = openWorkshop();
  });
  afterAll(() => shop.remove());

  const json = (file: string) => JSON.parse(shop.run("rates", file, "--format", "json").out);

  it("gives JSON that its schema describes, in the stated units", () => {
    const { out, code } = shop.run("rates", "quill/quill.crank", "--format", "json");
    expect(code).toBe(0);
    expect(problemsAgainst("rates", out)).toEqual([]);
    const rates = JSON.parse(out);
    expect(rates).toMatchObject({ schema: 1, car: "quill", setup: null });
    expect(rates.axles.front.heaveRate.unit).toBe("N/mm");
    expect(rates.elements.map(({ path }: { path: string }) => path)).toContain("front.roll-damper");
  });

  it("holds the identity of a mirrored axle: 4 K_LL = heave rate + 4 K_roll / t²", () => {
    const { front } = json("quill/quill.crank").axles as { front: Record<string, Quantity> };
    const track = 1.48;
    const heave = (front.heaveRate?.value ?? 0) * 1000;
    const roll = ((front.rollStiffness?.value ?? 0) * 180) / Math.PI;
    expect(4 * (front.wheelRate?.value ?? 0) * 1000).toBeCloseTo(heave + (4 * roll) / track ** 2, 3);
  });

  it("differs for a set-up as the set-up differs", () => {
    const dry = json("quill/quill.crank").axles.front.heaveRate.value;
    const wet = json("quill/wet.crank");
    expect(wet.setup).toBe("quarrow-wet");
    expect(wet.axles.front.heaveRate.value).toBeLessThan(dry);
  });

  it("gives text, Markdown and CSV of the same figures", () => {
    const figure = json("quill/quill.crank").axles.front.heaveRate.value as number;
    const shown = String(Number(figure.toPrecision(4)));
    const text = shop.run("rates", "quill/quill.crank").out;
    expect(text).toContain(`${shown} N/mm`);
    expect(text).toContain("competent person");
    const markdown = shop.run("rates", "quill/quill.crank", "--format", "markdown").out;
    expect(markdown).toContain(`| heave rate (both wheels) | ${shown} N/mm |`);
    const csv = shop.run("rates", "quill/quill.crank", "--format", "csv").out;
    const row = csv.split("\n").find((line) => line.startsWith("front,heave rate"));
    expect(Number(row?.split(",")[2])).toBeCloseTo(figure, 6);
  });

  it("asks which one where a file declares several, and knows the wrong name", () => {
    shop.write(
      "two.crank",
      'use "quill/quill.crank"\n\nsetup a from quill {\n  front.track 1490 mm\n}\n\nsetup b from quill {\n  front.track 1500 mm\n}\n',
    );
    expect(shop.run("rates", "two.crank")).toMatchObject({
      code: 2,
      err: expect.stringContaining("a, b: choose one with --setup"),
    });
    expect(shop.run("rates", "two.crank", "--setup", "b", "--format", "json").code).toBe(0);
    expect(shop.run("rates", "two.crank", "--setup", "c").err).toContain('has no set-up "c"');
  });

  it("answers about one file, not about whichever of a folder comes first", () => {
    for (const command of ["rates", "adjust", "kinematics"])
      expect(shop.run(command, "quill")).toMatchObject({
        code: 2,
        err: expect.stringContaining("quill is a folder: name the file"),
      });
  });

  it("tells the reason where there is no figure", () => {
    shop.write("bare.crank", 'car bare "Bare" {\n  axle front {\n    track 1480 mm\n  }\n}\n');
    const { out } = shop.run("rates", "bare.crank");
    expect(out).toContain("No figure (-) where:");
    expect(out).not.toMatch(/NaN|Infinity|undefined/);
  });
});

/** To a billionth of a millimetre: what the linkage promises. */
const near = (a: readonly number[], b: readonly number[]): boolean =>
  a.every((value, index) => Math.abs(value - (b[index] ?? 0)) < 1e-9);

describe("bellcrank kinematics", () => {
  let shop: Workshop;
  beforeAll(() => {
    shop = openWorkshop();
  });
  afterAll(() => shop.remove());

  it("gives rows over heave and roll that its schema describes", () => {
    const { out, code } = shop.run(
      "kinematics",
      "quill/quill.crank",
      "--heave",
      "-30..25mm:12",
      "--roll",
      "-1..1deg:3",
      "--format",
      "json",
    );
    expect(code).toBe(0);
    expect(problemsAgainst("kinematics", out)).toEqual([]);
    const { rows } = JSON.parse(out);
    expect(rows).toHaveLength(36);
    const level = rows.find(
      (row: { heave: Quantity; roll: Quantity }) => row.heave.value === 0 && row.roll.value === 0,
    );
    expect(near(level.left.centre.value, [0, 731, 230])).toBe(true);
    expect(near(level.right.centre.value, [0, -731, 230])).toBe(true);
  });

  it("says which link binds where it cannot go", () => {
    const { out } = shop.run("kinematics", "quill/quill.crank", "--heave", "-400..400mm:3", "--format", "json");
    const { rows } = JSON.parse(out);
    expect(rows[0].left.absent).toMatch(/binds|reach/);
  });

  it("writes lengths in the unit that the author works in, exact machine output apart", () => {
    const { out } = shop.run("kinematics", "tern/tern.crank", "--heave", "0..1in:2", "--format", "csv");
    const [heads, , bump] = out.split("\n").map((line) => line.split(","));
    expect(heads?.slice(0, 5)).toEqual(["heave in", "roll deg", "L x in", "L y in", "L z in"]);
    expect(Number(bump?.[0])).toBeCloseTo(1, 12);
    // The wheel centre of tern.crank is drawn at 7.4 in.
    expect(Number(bump?.[4])).toBeCloseTo(8.4, 9);
    const text = shop.run("kinematics", "tern/tern.crank", "--heave", "0..1in:2").out;
    expect(text).toContain("8.4000");
  });

  it("knows units and ranges, and says how to write them", () => {
    expect(shop.run("kinematics", "quill/quill.crank", "--heave", "-1..1in:3").code).toBe(0);
    expect(shop.run("kinematics", "quill/quill.crank", "--heave", "-1..1deg:3").err).toContain("not a unit of length");
    expect(shop.run("kinematics", "quill/quill.crank", "--heave", "a lot").err).toContain("-30..30mm:7");
    expect(shop.run("kinematics", "quill/quill.crank", "--heave", "0..1mm:0").code).toBe(2);
  });
});
