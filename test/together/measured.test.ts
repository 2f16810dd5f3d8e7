/**
 * Measured laws and ratios: dampers, bump stops and motion ratios of the Tern from its CSV files. What they say is what is
 * computed with; a row that cannot be read is named by its line, and the rest of the car still has its figures.
 */
import { describe, expect, it } from "vitest";
import { runRules } from "../../server/findings/run.js";
import { expectClose } from "../support/approx.js";
import { contextOf } from "../support/context.js";
import { samples } from "../support/samples.js";
import { CLOSED_FORM, UNIT_ROUND_TRIP } from "../support/tolerances.js";
import { elementIn, number } from "../support/written-car.js";

const INCH = 0.0254;
const POUND = 4.4482216152605;

/** A file of the Tern with one of its tables changed. */
const tern = (file: string, table?: string, csv?: string) =>
  contextOf({ ...samples, ...(table === undefined ? {} : { [`tern/${table}`]: csv ?? "" }) }, `tern/${file}`);
const lineOf = (table: string, line: number, text: string): string =>
  (samples[`tern/${table}`] ?? "")
    .split("\n")
    .map((one, index) => (index === line - 1 ? text : one))
    .join("\n");

describe("a measured law", () => {
  const axles = () => {
    const [car] = tern("weighbridge.crank").cars;
    if (car?.analysis.axles.front === undefined) throw new Error("no car");
    return car.analysis.axles;
  };

  it("of a damper is its first rows' slopes, in the units of the header", () => {
    const { front } = axles();
    if (front === undefined) throw new Error("no front axle");
    // 9 lbf in bump and 13 lbf in rebound at 1 in/s.
    const slow = ((9 + 13) / 2) * (POUND / INCH);
    expectClose(number(elementIn(front, "front.left.side").rate), slow, CLOSED_FORM);
  });

  it("of a ratio is its slope at rest", () => {
    const [car] = tern("tern.crank").cars;
    const rear = car?.analysis.axles.rear;
    if (rear === undefined) throw new Error("no rear axle");
    const ratio = number(elementIn(rear, "rear.left.coil").motionRatio);
    // Between its secants on either side of rest.
    expect(ratio).toBeGreaterThan(0.227 / 0.25);
    expect(ratio).toBeLessThan(0.229 / 0.25);
    expectClose(number(elementIn(rear, "rear.left.side").motionRatio), ratio, UNIT_ROUND_TRIP);
  });

  it("of a stop is met where its gap and packer end", () => {
    const [car] = tern("tern.crank").cars;
    const front = car?.analysis.axles.front;
    const events = front && elementIn(front, "front.left.stop").events;
    if (events === undefined || "kind" in events) throw new Error("no events");
    expectClose(events[0]?.at ?? 0, 0.7 * INCH, CLOSED_FORM);
  });
});

describe("a table with a fault", () => {
  it.each([
    ["damper.csv", "parts.crank", 6, "-1; -13"],
    ["damper.csv", "parts.crank", 6, "-1, many"],
    ["damper.csv", "parts.crank", 9, "1,"],
    ["damper.csv", "parts.crank", 2, "velocity [in/s], force [in]"],
    ["damper.csv", "parts.crank", 2, "velocity, force"],
    ["stop.csv", "parts.crank", 5, "0.1, NaN"],
    ["stop.csv", "parts.crank", 5, "0.02, 16"],
    ["stop.csv", "parts.crank", 2, "deflection [furlong], force [lbf]"],
    ["rear-ratio.csv", "tern.crank", 6, "-0.5, "],
    ["rear-ratio.csv", "tern.crank", 6, "-2, -0.451"],
    ["rear-ratio.csv", "tern.crank", 2, "travel [in], deflection [lbf]"],
  ] as const)("%s named in %s: line %d, %s", (table, file, line, text) => {
    const found = runRules(tern(file, table, lineOf(table, line, text)));
    const told = found.filter(({ rule }) => rule === "measured-table" || rule === "table-order");
    expect(told.length).toBeGreaterThan(0);
    for (const { message } of told) {
      expect(message).toContain(table);
      expect(message).toContain(`line ${line}`);
    }
  });

  it("leaves what does not rest on it its figures", () => {
    const [car] = tern("tern.crank", "rear-ratio.csv", lineOf("rear-ratio.csv", 6, "-0.5, ")).cars;
    const front = car?.analysis.axles.front;
    if (front === undefined) throw new Error("no front axle");
    expect(number(front.rates.heaveRate)).toBeGreaterThan(0);
  });
});
