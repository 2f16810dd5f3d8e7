/** The tables that the mechanism panel is sent: finite, of one size, and the same as the kinematics say. */
import { describe, expect, it } from "vitest";
import { panelCurves } from "../../../server/views/mechanism/curves.js";
import { carNamed, placesOf } from "../../../server/views/mechanism/of-file.js";
import type { PanelCorner } from "../../../server/views/mechanism/data.js";
import { answerFor, sampleFile } from "../../support/panel-page.js";
import { sampleNames } from "../../support/samples.js";

function numbersIn(value: unknown): readonly number[] {
  if (typeof value === "number") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.values(value).flatMap(numbersIn);
}

function expectWholeTables({ travels, steers, points, wheel, lines, rocker }: PanelCorner): void {
  const entries = travels.length * steers.length;
  for (const { at } of points) expect([3, 3 * entries]).toContain(at.length);
  for (const index of lines.flatMap((line) => line.points)) expect(points[index]).toBeDefined();
  if (wheel !== undefined) expect([wheel.centre.length, wheel.camber.length]).toEqual([3 * entries, entries]);
  if (rocker !== undefined) expect(points[rocker.pivot]?.role).toBe("pivot");
  expect(new Set(points.map(({ id }) => id)).size).toBe(points.length);
  expect([...travels].sort((a, b) => a - b)).toEqual(travels);
}

describe("what the panel is sent", () => {
  it.each(sampleNames)("is whole and finite for %s", (name) => {
    const file = sampleFile(name);
    const answer = answerFor(file);
    for (const number of numbersIn(answer)) expect(Number.isFinite(number)).toBe(true);
    for (const axle of answer.car?.axles ?? []) {
      for (const corner of [axle.left, axle.right]) expectWholeTables(corner);
      for (const { deflection, drawn } of axle.elements) {
        if (deflection?.kind === "both")
          expect(deflection.values.length).toBe(axle.left.travels.length * axle.right.travels.length);
        for (const one of drawn)
          if (one.kind === "between") expect(axle[one.from.side].points[one.from.point]).toBeDefined();
      }
    }
    const car = carNamed(file, undefined);
    if (car === undefined) return;
    for (const { series, missing } of panelCurves(car, placesOf(file))) {
      expect(series.length > 0 || missing !== undefined).toBe(true);
      for (const number of numbersIn(series.map(({ points }) => points))) expect(Number.isFinite(number)).toBe(true);
    }
  });

  it("draws right-hand points on the right, and both sides alike where one mirrors the other", () => {
    const [front] = answerFor(sampleFile("quill/quill.crank")).car!.axles;
    const left = front!.left.points.find(({ id }) => id === "rocker.roll-low")!;
    const right = front!.right.points.find(({ id }) => id === "rocker.roll-low")!;
    expect(left.at.length).toBeGreaterThan(3);
    // With the rack to one side the wheels are no mirror images of each other.
    const { steers, travels } = front!.left;
    const [from, to] = [steers.indexOf(0) * travels.length, (steers.indexOf(0) + 1) * travels.length];
    left.at.slice(3 * from, 3 * to).forEach((value, i) => {
      expect(right.at[3 * from + i]).toBe(i % 3 === 1 ? -value! : value);
    });
    const turned = front!.left.rocker!.angle.slice(from, to).map((angle) => -angle! || 0);
    expect(turned).toEqual(front!.right.rocker!.angle.slice(from, to));
  });

  it("tells the leak of an eye that is off, with its mode", () => {
    const off = sampleFile("quill/quill.crank", (text) => text.replace("(45, 175, 348)", "(45, 175, 356)"));
    const damper = answerFor(off).car!.axles[0]!.elements.find(({ name }) => name === "roll-damper")!;
    expect(damper.leak).toMatchObject({ mode: "heave", level: "warning" });
    expect(damper.leak!.text).toMatch(/^\d+(\.\d+)? % in heave$/);
  });

  it("answers a set-up by its name, and an empty file with nothing", () => {
    expect(answerFor(sampleFile("quill/wet.crank"), "wet").car).toBeDefined();
    expect(answerFor(sampleFile("quill/quill.crank", () => "")).car).toBeUndefined();
  });

  it("names the elements that a plot has no curve of, with the reason", () => {
    const file = sampleFile("dunlin/dunlin.crank");
    const forces = panelCurves(file.cars[0]!, placesOf(file)).find(
      ({ title }) => title === "Force against compression",
    )!;
    expect(forces.series.length).toBeGreaterThan(0);
    expect(forces.missing).toBe("Rear flywheel: the force of an inerter follows its acceleration alone.");
  });

  it("shows a swept volume finer than a cubic centimetre", () => {
    const [front] = answerFor(sampleFile("systems/hydraulic-link.crank")).car!.axles;
    const link = front!.elements.find(({ unit }) => unit === "cm\u00b3")!;
    if (link.deflection?.kind !== "both") throw new Error("it follows both wheels");
    const parts = link.deflection.values.map((value) => 1e6 * (value ?? 0));
    expect(parts.filter((part) => Math.abs(part - Math.round(part)) > 1e-3).length).toBeGreaterThan(10);
  });
});
