/**
 * The check case of a double wishbone with push rod and rocker (check-values.md, WB-1 and WB-2): invented
 * hard points, solved outside this project by two formulations and in 50-digit arithmetic. Tolerances are
 * those stated there: 1e-9 mm, 1e-9 deg, 1e-9 on motion ratios, 1e-7 relative on their slopes and on wheel rates.
 */
import { describe, expect, it } from "vitest";
import { analyseAxle } from "../../server/analyses/analyse-axle.js";
import { kinematics } from "../../server/analyses/kinematics.js";
import type { ByMode, Figure } from "../../server/analyses/results.js";
import type { Connection, Deflection, Element } from "../../server/elements/element.js";
import { expectClose } from "../support/approx.js";
import {
  antiRollBar,
  axle,
  cornerBars,
  damping,
  heaveSpring,
  rollDamper,
  sideSprings,
  spring,
  trackAtContact,
  wishboneCorner,
} from "../support/mechanisms.js";
import { CLOSED_FORM, DEFLECTION_M, DEFLECTION_RAD, ORACLE_RATE } from "../support/tolerances.js";
import { DEGREE, wishbone } from "../support/wishbone-case.js";

const GRAVITY = 9.80665;

function at(connection: Connection | undefined, left: number, right: number): Deflection {
  const l = wishboneCorner.motion(left);
  const r = wishboneCorner.motion(right);
  if (connection === undefined || "kind" in l || "kind" in r) throw new Error("no position");
  const d = connection.deflection({ left: l, right: r });
  if ("kind" in d) throw new Error(d.reason);
  return d;
}

const first = (elements: readonly Element[]): Element => {
  const [element] = elements;
  if (element === undefined) throw new Error("no element");
  return element;
};

const number = (figure: Figure): number => {
  if (typeof figure !== "number") throw new Error(figure.reason);
  return figure;
};

/** Car mass that puts a load on each front wheel's springs, by the virtual work that the trim uses. */
function massFor(load: number): number {
  const design = wishboneCorner.motion(0);
  if ("kind" in design || design.wheel === undefined) throw new Error("no design position");
  return ((load + 18 * GRAVITY) / design.wheel.contact.d[2] / GRAVITY) * 4;
}

describe("WB-1, spring on the rocker", () => {
  const example = wishbone.spring_rate_example;
  const rate = example.k_s_N_per_mm * 1000;
  const law = spring(rate, { preload: example.spring_force_at_design_N });
  const strut = first(sideSprings(law));

  it.each(wishbone.corner_table)("at $travel_mm mm of travel", (row) => {
    const d = at(strut.connection, row.travel_mm / 1000, 0);
    expectClose(d.s, row.spring_compression_mm / 1000, 0, DEFLECTION_M);
    expectClose(d.dL, row.motion_ratio, 0, CLOSED_FORM);
    expectClose(d.dLL, row.dMR_ds_per_mm * 1000, ORACLE_RATE, 1e-7);
    expect(d.dR).toBe(0);
    if (law?.kind !== "spring") throw new Error("no spring");
    expectClose(law.force(d.s), row.spring_force_N, CLOSED_FORM);
    expectClose(law.rate(d.s) * d.dL ** 2, row.wheel_rate_N_per_mm_ksMR2 * 1000, CLOSED_FORM);
    expectClose(law.force(d.s) * d.dLL, row.wheel_rate_N_per_mm_FdMR * 1000, ORACLE_RATE, 1e-2);
    expectClose(law.rate(d.s) * d.dL ** 2 + law.force(d.s) * d.dLL, row.wheel_rate_N_per_mm_total * 1000, ORACLE_RATE);
  });

  it("comes out of the whole analysis, the trim carrying the weight that loads it with 3500 N", () => {
    const row = wishbone.corner_table[3];
    if (row === undefined) throw new Error("no design row");
    const { rates, elements } = analyseAxle(axle(sideSprings(spring(rate)), { carMass: massFor(row.wheel_force_N) }));
    expectClose(number(rates.wheelRate.left), row.wheel_rate_N_per_mm_total * 1000, ORACLE_RATE);
    expectClose(number(rates.heaveRate), 2 * row.wheel_rate_N_per_mm_total * 1000, ORACLE_RATE);
    expectClose(
      number(rates.rollStiffness),
      (trackAtContact ** 2 / 2) * row.wheel_rate_N_per_mm_total * 1000,
      ORACLE_RATE,
    );
    expectClose(number(elements[0]?.staticLoad ?? 0), 3500, CLOSED_FORM);
    expectClose(number(elements[1]?.staticLoad ?? 0), 3500, CLOSED_FORM);
    expectClose(number(elements[0]?.motionRatio ?? 0), row.motion_ratio, CLOSED_FORM);
    expectClose(number(elements[1]?.atWheels ?? 0), row.wheel_rate_N_per_mm_total * 1000, ORACLE_RATE);
    const trim = rates.trim;
    if (!Array.isArray(trim)) throw new Error("no trim");
    for (const { seat } of trim) expectClose(seat, 3500 / rate, CLOSED_FORM);
  });
});

describe("WB-1, torsion bar on the rocker's axis", () => {
  const example = wishbone.torsion_bar_example;
  const law = spring(example.k_T_Nm_per_rad, { preload: example.torque_at_design_Nm });

  it.each(wishbone.corner_table)("at $travel_mm mm of travel", (row) => {
    const d = at(first(cornerBars(law)).connection, row.travel_mm / 1000, 0);
    expectClose(d.s, row.rocker_angle_deg * DEGREE, 0, DEFLECTION_RAD);
    expectClose(d.dL, row.rocker_rad_per_mm_wheel * 1000, CLOSED_FORM);
    expectClose(d.dLL, row.rocker_d2_rad_per_mm2 * 1e6, ORACLE_RATE);
    if (law?.kind !== "spring") throw new Error("no spring");
    const wheelRate = law.rate(d.s) * d.dL ** 2 + law.force(d.s) * d.dLL;
    expectClose(wheelRate, row.torsion_bar_wheel_rate_N_per_mm * 1000, ORACLE_RATE);
  });
});

const pairs = {
  third: heaveSpring(spring(120e3)),
  diagonal: rollDamper(damping(5000)),
  arb: antiRollBar(spring(800)),
};

describe("WB-2, elements across the axle", () => {
  it.each(wishbone.axle_states)("at $travel_left_mm and $travel_right_mm mm", (row) => {
    const left = row.travel_left_mm / 1000;
    const right = row.travel_right_mm / 1000;
    expectClose(at(pairs.third.connection, left, right).s, row.heave_spring_compression_mm / 1000, 0, DEFLECTION_M);
    expectClose(at(pairs.diagonal.connection, left, right).s, row.roll_damper_compression_mm / 1000, 0, DEFLECTION_M);
    expectClose(at(pairs.arb.connection, left, right).s, row.arb_twist_deg * DEGREE, 0, DEFLECTION_RAD);
  });

  it("has the stated ratios at design", () => {
    const linear = wishbone.linearised_at_design;
    const { elements } = analyseAxle(axle([...sideSprings(spring(150e3)), ...Object.values(pairs)]));
    const by = (name: string): ByMode => {
      const found = elements.find(({ path }) => path === `front.${name}`)?.sensitivity;
      if (found === undefined || "kind" in found) throw new Error("no sensitivity");
      return found;
    };
    expectClose(by("third").heave, linear.heave_spring_mm_per_mm_heave, CLOSED_FORM);
    expectClose(by("third").roll, linear.heave_spring_mm_per_mm_antisym_travel, 0, 1e-12);
    // The page counts antisymmetric travel with the left wheel up; roll is the other way round.
    expectClose(by("diagonal").roll, -linear.roll_damper_mm_per_mm_antisym_travel, CLOSED_FORM);
    expectClose(by("diagonal").heave, linear.roll_damper_mm_per_mm_heave, CLOSED_FORM);
    expectClose(by("arb").roll, -linear.arb_twist_rad_per_mm_antisym_travel * 1000, CLOSED_FORM);
    expectClose(by("arb").heave, 0, 0, 1e-11);
  });

  it("tells the leak of the diagonal damper: first-order as its ratios, finite over the whole travel", () => {
    const linear = wishbone.linearised_at_design;
    const { elements } = analyseAxle(axle([...sideSprings(spring(150e3)), ...Object.values(pairs)]));
    const leak = elements.find(({ path }) => path === "front.diagonal")?.leak;
    if (leak === undefined || "kind" in leak) throw new Error("no leak");
    expect(leak.mode).toBe("heave");
    expectClose(
      leak.firstOrder,
      linear.roll_damper_mm_per_mm_heave / linear.roll_damper_mm_per_mm_antisym_travel,
      CLOSED_FORM,
    );
    // Own mode: its largest deflection in the table's rows of pure roll at 30 mm (and the mirrored one).
    const own = at(pairs.diagonal.connection, -0.03, 0.03).s;
    const other = at(pairs.diagonal.connection, 0.03, -0.03).s;
    const heave = Math.max(...[-0.03, 0.03].map((z) => Math.abs(at(pairs.diagonal.connection, z, z).s)));
    expectClose(number(leak.finite), heave / Math.max(Math.abs(own), Math.abs(other)), 1e-6);
  });

  it("has the stated roll stiffness from the bar alone", () => {
    const linear = wishbone.linearised_at_design;
    const { rates } = analyseAxle(axle([...sideSprings(spring(1)), pairs.arb]));
    const share = rates.shares.find(({ path }) => path === "front.arb");
    expectClose(share?.roll ?? 0, linear.arb_example_roll_stiffness_Nm_per_rad, CLOSED_FORM);
    expectClose(share?.roll ?? 0, linear.arb_example_roll_stiffness_Nm_per_deg / DEGREE, CLOSED_FORM);
    // K = ½ k t² with the same rate at each wheel in antisymmetric travel.
    const perWheel = linear.arb_example_equiv_wheel_rate_each_wheel_N_per_mm * 1000;
    expectClose(share?.roll ?? 0, 0.5 * perWheel * trackAtContact ** 2, CLOSED_FORM);
  });
});

describe("kinematics rows", () => {
  it("give wheel, rocker and deflections of the check case, left and right", () => {
    const mechanism = axle([...sideSprings(spring(150e3)), pairs.third]);
    const rows = kinematics(mechanism, [-0.03, 0, 0.02], [0]);
    const expected = wishbone.corner_table.filter(({ travel_mm }) => [-30, 0, 20].includes(travel_mm));
    expect(rows).toHaveLength(3);
    for (const [i, row] of rows.entries()) {
      const truth = expected[i];
      if (truth === undefined || "kind" in row.left || "kind" in row.right) throw new Error("no row");
      for (const axis of [0, 1, 2] as const) {
        expectClose(row.left.centre[axis], (truth.WC[axis] ?? 0) / 1000, 0, DEFLECTION_M);
        expectClose(row.right.centre[axis], ((truth.WC[axis] ?? 0) / 1000) * (axis === 1 ? -1 : 1), 0, DEFLECTION_M);
      }
      expectClose(row.left.camber, truth.camber_deg * DEGREE, 0, DEFLECTION_RAD);
      expectClose(row.right.toe, truth.toe_in_deg * DEGREE, 0, DEFLECTION_RAD);
      expectClose(number(row.left.rocker), truth.rocker_angle_deg * DEGREE, 0, DEFLECTION_RAD);
      expectClose(number(row.elements[1]?.deflection ?? 0), truth.spring_compression_mm / 1000, 0, DEFLECTION_M);
    }
  });

  it("turns a roll angle into travels with ISO's sign: positive roll lifts the left side", () => {
    const [row] = kinematics(axle([pairs.third]), [0.001], [1 * DEGREE]);
    if (row === undefined || "kind" in row.left || "kind" in row.right) throw new Error("no row");
    expectClose(row.right.travel - row.left.travel, DEGREE * trackAtContact, CLOSED_FORM);
    expectClose((row.right.travel + row.left.travel) / 2, 0.001, CLOSED_FORM);
  });

  it("says which link binds where a travel is out of reach, and keeps the other wheel", () => {
    const [row] = kinematics(axle([pairs.third]), [0], [40 * DEGREE]);
    if (row === undefined || !("kind" in row.left)) throw new Error("reached");
    expect(row.left.reason).toMatch(/^the \S+ on the left binds at -?[\d.]+ mm of travel, short of -?[\d.]+ mm$/);
    expect(row.elements[0]?.deflection).toHaveProperty("kind", "absent");
  });
});
