import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openWorkshop, type Workshop } from "./run-cli.js";
import { problemsAgainst } from "./schema.js";

const setup = `use "quill/quill.crank"

setup weighed from quill {
  ballast nose { mass 4 kg, centre (500, 0, 60) mm }
  scales { front-left 120 kg, front-right 123 kg, rear-left 154 kg, rear-right 152 kg }
}
`;

describe("bellcrank weights", () => {
  let shop: Workshop;
  beforeAll(() => {
    shop = openWorkshop();
    shop.write("weighed.crank", setup);
  });
  afterAll(() => shop.remove());

  it("gives JSON that its schema describes, with and without readings", () => {
    for (const file of ["quill/quill.crank", "weighed.crank"]) {
      const { out, code } = shop.run("weights", file, "--format", "json");
      expect(code).toBe(0);
      expect(problemsAgainst("weights", out)).toEqual([]);
    }
    const bare = JSON.parse(shop.run("weights", "quill/quill.crank", "--format", "json").out);
    expect(bare).toMatchObject({ schema: 1, car: "quill", setup: null, scales: null, target: 0.5 });
    expect(bare.atTrim.shares.cross).toBeCloseTo(0.5, 10);
  });

  it("asks for turns whose pads show the wanted cross weight", () => {
    const { scales, masses } = JSON.parse(shop.run("weights", "weighed.crank", "--format", "json").out);
    // 540 kg and the ballast.
    expect(masses.total).toEqual({ value: 544, unit: "kg" });
    const after = scales.turns.map((turn: { after: { value: number } }) => turn.after.value);
    expect((after[1] + after[2]) / (120 + 123 + 154 + 152)).toBeCloseTo(0.5, 9);
    expect(after.reduce((sum: number, value: number) => sum + value, 0)).toBeCloseTo(549, 9);
  });

  it("tells text and Markdown of the same figures, with the cautions", () => {
    const { scales } = JSON.parse(shop.run("weights", "weighed.crank", "--format", "json").out);
    const shown = `${Number(scales.turns[0].after.value.toPrecision(4))} kg`;
    for (const format of ["text", "markdown"]) {
      const { out } = shop.run("weights", "weighed.crank", "--format", format);
      expect(out).toContain(shown);
      expect(out).toContain("competent person");
    }
  });

  it("knows the wrong name and the wrong file", () => {
    expect(shop.run("weights", "weighed.crank", "--setup", "other").code).toBe(2);
    expect(shop.run("weights", "missing.crank").code).toBe(2);
  });
});
