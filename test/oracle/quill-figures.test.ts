/**
 * The sample car as it is written, through parser, resolver and analyses, against the independent
 * solution of its axles (axle.py): rates by second differences of energy, derivatives by central
 * differences in 50 digits. This also holds the points in quill.crank against those in the files.
 * Own figures, no published source.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { AxleAnalysis, Figure } from "../../server/analyses/results.js";
import { createWorkspace } from "../../server/snapshot/create.js";
import { expectClose } from "../support/approx.js";
import {
  ENERGY_DIFFERENCE,
  IDENTITY,
  ORACLE_ANGLE,
  ORACLE_POSITION,
  ORACLE_SLOPE,
  SAMPLED_EXTREME,
} from "../support/tolerances.js";
import { metres, radians, solvedAxle, solvedCar, solvedDry } from "./quill-axles.js";

const folder = new URL("../../samples/quill/", import.meta.url);
const base = "memory:///quill/";
const workspace = createWorkspace({
  read: (uri) =>
    uri.startsWith(base)
      ? { text: readFileSync(new URL(uri.slice(base.length), folder), "utf8") }
      : { missing: "outside" },
});

const files = ["parts.crank", "quill.crank", "dry.crank", "wet.crank"];
const quill = workspace.file(`${base}quill.crank`).cars[0];

function value(figure: Figure | undefined): number {
  if (typeof figure === "number") return figure;
  throw new Error(figure?.reason ?? "no figure");
}

function analysisOf(axle: "front" | "rear"): AxleAnalysis {
  const found = quill?.analysis.axles[axle];
  if (found === undefined) throw new Error(`no ${axle} axle`);
  return found;
}

describe("samples/quill", () => {
  it.each(files)("%s is without a finding", (name) => {
    expect(workspace.file(base + name).findings()).toEqual([]);
  });

  it.each(["quill.crank", "dry.crank", "wet.crank"])("%s meets every expectation that can be computed", (name) => {
    const [car] = workspace.file(base + name).cars;
    const judged = car?.analysis.expectations.filter(({ met }) => met !== undefined) ?? [];
    expect(judged.length).toBeGreaterThan(8);
    expect(judged.filter(({ met }) => met !== true)).toEqual([]);
  });

  it("shares its roll stiffness as the independent solution does", () => {
    const share = value(analysisOf("front").rates.rollStiffnessShare);
    expectClose(share * 100, solvedCar().roll_stiffness_front_share_percent, ENERGY_DIFFERENCE);
  });
});

describe.each(["front", "rear"] as const)("%s axle of dry.crank", (name) => {
  it("has the rates of the differenced energy after its overrides", () => {
    const rates = workspace.file(`${base}dry.crank`).cars[0]?.analysis.axles[name]?.rates;
    const solved = solvedDry()[name];
    expectClose(value(rates?.heaveRate), solved.rates.heave_N_per_mm * 1e3, ENERGY_DIFFERENCE);
    expectClose(value(rates?.rollStiffness), solved.rates.roll_Nm_per_rad, ENERGY_DIFFERENCE);
    expectClose(value(rates?.rideRate.roll), solved.ride.roll_Nm_per_rad, ENERGY_DIFFERENCE);
    expectClose(value(rates?.rideRate.single), solved.ride.single_N_per_mm * 1e3, ENERGY_DIFFERENCE);
  });
});

describe.each(["front", "rear"] as const)("%s axle of quill.crank", (name) => {
  const solved = solvedAxle(name);
  const analysis = () => analysisOf(name);

  it("has the wheel stiffness matrix of the differenced energy", () => {
    const found = analysis().rates.stiffness;
    if ("kind" in found) throw new Error(found.reason);
    const [[LL, LR], [, RR]] = solved.stiffness_N_per_mm;
    expectClose(found[0][0], LL * 1e3, ENERGY_DIFFERENCE);
    expectClose(found[0][1], LR * 1e3, ENERGY_DIFFERENCE);
    expectClose(found[1][0], LR * 1e3, ENERGY_DIFFERENCE);
    expectClose(found[1][1], RR * 1e3, ENERGY_DIFFERENCE);
  });

  it("has its rates, ride rates, damping and frequency", () => {
    const { rates } = analysis();
    expectClose(value(rates.heaveRate), solved.rates.heave_N_per_mm * 1e3, ENERGY_DIFFERENCE);
    expectClose(value(rates.rollStiffness), solved.rates.roll_Nm_per_rad, ENERGY_DIFFERENCE);
    expectClose(value(rates.wheelRate.left), solved.rates.single_N_per_mm * 1e3, ENERGY_DIFFERENCE);
    expectClose(value(rates.rideRate.heave), solved.ride.heave_N_per_mm * 1e3, ENERGY_DIFFERENCE);
    expectClose(value(rates.rideRate.roll), solved.ride.roll_Nm_per_rad, ENERGY_DIFFERENCE);
    expectClose(value(rates.rideRate.single), solved.ride.single_N_per_mm * 1e3, ENERGY_DIFFERENCE);
    expectClose(value(rates.heaveDamping), solved.damping.heave_Ns_per_mm * 1e3, ENERGY_DIFFERENCE);
    expectClose(value(rates.rollDamping), solved.damping.roll_Nms_per_rad, ENERGY_DIFFERENCE);
    expectClose(value(rates.heaveFrequency), solved.heave_frequency_Hz, ENERGY_DIFFERENCE);
  });

  it("holds 4 K_LL = heave rate + 4 K_roll / t²", () => {
    const { rates } = analysis();
    const track = solved.input.track * 1e-3;
    const sum = value(rates.heaveRate) + (4 * value(rates.rollStiffness)) / track ** 2;
    expectClose(4 * value(rates.wheelRate.left), sum, IDENTITY);
  });

  it("is trimmed by the seat that carries the weight", () => {
    const { trim } = analysis().rates;
    if ("kind" in trim) throw new Error(trim.reason);
    expect(trim.map(({ path }) => path)).toEqual([`${name}.left.corner-bar`, `${name}.right.corner-bar`]);
    for (const { seat, load } of trim) {
      expectClose(load, solved.trim.load * 1e-3, ENERGY_DIFFERENCE);
      expectClose(seat, solved.trim.seat, ENERGY_DIFFERENCE);
    }
  });

  it.each(Object.entries(solved.elements))("moves %s and takes its share of the rates as solved", (path, element) => {
    const corner = element.for.includes("corner");
    const found = analysis().elements.find((figures) => figures.path === `${name}.${corner ? "left." : ""}${path}`);
    if (found === undefined) throw new Error(`no ${path}`);
    const scale = found.torsional ? 1e3 : 1;
    if (corner) expectClose(value(found.motionRatio), element.gradient[0] * scale, ORACLE_SLOPE);
    if (found.sensitivity === undefined || "kind" in found.sensitivity) throw new Error("no sensitivity");
    const [left, right] = corner ? [element.gradient[0], 0] : element.gradient;
    expectClose(found.sensitivity.heave, (left + right) * scale, ORACLE_SLOPE, 1e-11);
    expectClose(found.sensitivity.roll, (right - left) * scale, ORACLE_SLOPE, 1e-11);
    if (element.share === undefined) return;
    const sides = analysis().rates.shares.filter((share) => share.path.endsWith(`.${path}`));
    const sum = (of: "heave" | "roll" | "single") => sides.reduce((total, share) => total + share[of], 0);
    expectClose(sum("heave"), element.share.heave_N_per_mm * 1e3, ENERGY_DIFFERENCE, 1e-6);
    expectClose(sum("roll"), element.share.roll_Nm_per_rad, ENERGY_DIFFERENCE, 1e-6);
  });

  it.each(Object.entries(solved.elements).filter(([, { leak }]) => leak !== undefined))(
    "has the leak of %s",
    (path, element) => {
      const found = analysis().elements.find((figures) => figures.path === `${name}.${path}`)?.leak;
      if (found === undefined || "kind" in found || element.leak === undefined) throw new Error("no leak");
      expect(found.mode).toBe(element.leak.mode);
      expectClose(found.firstOrder, element.leak.first_order, ORACLE_SLOPE, 1e-10);
      // Sampled at some positions of the envelope, so never above the true extreme.
      expect(value(found.finite)).toBeLessThanOrEqual(element.leak.finite * (1 + ORACLE_SLOPE) + ORACLE_POSITION);
      expect(value(found.finite)).toBeGreaterThanOrEqual(element.leak.finite * (1 - SAMPLED_EXTREME) - ORACLE_POSITION);
      if (element.leak.rate !== undefined) expectClose(value(found.rate), element.leak.rate, ENERGY_DIFFERENCE, 1e-10);
    },
  );

  it("lists kinematics as the constraint equations have them", () => {
    const car = quill?.model;
    if (car === undefined) throw new Error("no car");
    for (const row of solved.corner) {
      const [found] = workspace.kinematics(car, name, [row.travel_mm * 1e-3], [0]);
      if (found === undefined || "kind" in found.left) throw new Error("no row");
      for (const axis of [0, 1, 2] as const) {
        expectClose(found.left.centre[axis], metres(row.centre_mm)[axis], 0, ORACLE_POSITION);
        expectClose(found.left.contact[axis], metres(row.contact_mm)[axis], 0, ORACLE_POSITION);
      }
      expectClose(found.left.camber, radians(row.camber_deg), 0, ORACLE_ANGLE);
      expectClose(found.left.toe, radians(row.toe_deg), 0, ORACLE_ANGLE);
      expectClose(value(found.left.rocker), radians(row.rocker_deg), 0, ORACLE_ANGLE);
    }
  });
});
