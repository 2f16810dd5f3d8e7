import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openWorkshop, type Workshop } from "./run-cli.js";
import { problemsAgainst } from "./schema.js";

const CAR = "quill/quill.crank";

describe("bellcrank modes and road", () => {
  let shop: Workshop;
  beforeAll(() => {
    shop = openWorkshop();
    shop.write("on-road.crank", `use "${CAR}"\n\nsetup on-road from quill {\n  road { class C, speed 90 km/h }\n}\n`);
  });
  afterAll(() => shop.remove());

  it("give JSON that their schemas describe", () => {
    for (const args of [
      ["modes", CAR],
      ["modes", CAR, "--at", "hairpin"],
    ]) {
      const { out, code } = shop.run(...args, "--format", "json");
      expect(code).toBe(0);
      expect(problemsAgainst("modes", out)).toEqual([]);
    }
    const { cases, porpoisingAssessed } = JSON.parse(shop.run("modes", CAR, "--format", "json").out);
    expect(porpoisingAssessed).toBe(true);
    expect(cases.map(({ name }: { name: string | null }) => name)).toEqual([null, "top-speed", "hairpin", "braking"]);
    const { out, code } = shop.run("road", CAR, "--class", "A", "--speed", "150km/h", "--format", "json");
    expect(code).toBe(0);
    expect(problemsAgainst("road", out)).toEqual([]);
  });

  it("tell which cases there are, and how a speed is written", () => {
    const misspelt = shop.run("modes", CAR, "--at", "harpin");
    expect(misspelt.code).toBe(2);
    expect(misspelt.err).toContain("no case harpin; it has top-speed, hairpin, braking");
    const fast = shop.run("road", CAR, "--class", "B", "--speed", "fast");
    expect(fast.code).toBe(2);
    expect(fast.err).toContain("such as 120km/h");
  });

  it("say the same in text, Markdown and CSV", () => {
    const { cases } = JSON.parse(shop.run("modes", CAR, "--format", "json").out);
    const heave = cases[0].modes.find(({ frequency }: { frequency: object | null }) => frequency !== null);
    const shown = `${Number(heave.frequency.value.toPrecision(4))} Hz`;
    for (const format of ["text", "markdown"]) {
      const { out } = shop.run("modes", CAR, "--format", format);
      expect(out).toContain(shown);
      expect(out).toContain("competent person");
    }
    expect(shop.run("modes", CAR, "--format", "csv").out).toContain(String(heave.frequency.value));
    const road = ["road", CAR, "--class", "A", "--speed", "150km/h"];
    const { figures } = JSON.parse(shop.run(...road, "--format", "json").out);
    const contact = figures[0].rms.value as number;
    expect(shop.run(...road).out).toContain(`${Number(contact.toPrecision(4))} %`);
    expect(shop.run(...road, "--format", "csv").out).toContain(`front,contact,${contact},%`);
  });

  it("take the road that is written, or a rougher one: a class is about twice the one before", () => {
    const contactOf = (...more: string[]): number =>
      JSON.parse(shop.run("road", "on-road.crank", ...more, "--format", "json").out).figures[0].rms.value;
    // Twice, but for what digressive dampers give way.
    const rougher = contactOf("--class", "D") / contactOf();
    expect(rougher).toBeGreaterThan(1.6);
    expect(rougher).toBeLessThan(2.4);
    expect(contactOf("--at", "hairpin")).toBeGreaterThan(0);
  });

  it("ask for what they miss", () => {
    expect(shop.run("road", CAR)).toMatchObject({ code: 2 });
    expect(shop.run("road", CAR, "--class", "A", "--speed", "0km/h")).toMatchObject({ code: 2 });
    expect(shop.run("modes", CAR, "--at", "nowhere")).toMatchObject({ code: 2 });
  });
});
