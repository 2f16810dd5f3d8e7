/** When springs in line with a bar are used up in a steady turn: against a worked load transfer and the linear rates. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { rollingCar, turnAt } from "../../server/analyses/change-over.js";
import type { AxleAnalysis, AxleRoll, ChangeOver } from "../../server/analyses/results.js";
import { expectClose } from "../support/approx.js";
import { contextOf } from "../support/context.js";
import { CLOSED_FORM } from "../support/tolerances.js";
import { analysisOf, carOf, carText, number, reason } from "../support/written-car.js";

const DEGREE = Math.PI / 180;

/** One axle of the check value ROLL-1, springs and bar linear. */
function axleOf(stiffness: number, rest: Omit<AxleRoll, "samples">): AxleRoll {
  const angles = [-3, -2, -1, 0, 1, 2, 3].map((degrees) => degrees * DEGREE);
  return { ...rest, samples: angles.map((angle) => ({ angle, moment: stiffness * angle })) };
}

const front = axleOf(68238.4, {
  track: 1.56,
  tyres: 279864,
  mass: (880 * 1.25) / 2.7 + 80,
  unsprung: 80,
  rollCentre: 0.03,
  wheelHeight: 0.31,
});
const rear = axleOf(49587.2, {
  track: 1.52,
  tyres: 288800,
  mass: (880 * 1.45) / 2.7 + 90,
  unsprung: 90,
  rollCentre: 0.08,
  wheelHeight: 0.32,
});
const cgHeight = (880 * 0.49 + 80 * 0.31 + 90 * 0.32) / 1050;
const withRoll = (roll: AxleRoll): AxleAnalysis => ({ roll }) as AxleAnalysis;
const question = { front: withRoll(front), rear: withRoll(rear), cgHeight, isJoined: false };

describe("a car in a steady turn: ROLL-1 (Milliken ch. 18, Gillespie ch. 6, formula from memory; own numbers)", () => {
  const car = rollingCar(question);
  if ("kind" in car) throw new Error(car.reason);

  it("has its sprung centre of gravity above the roll axis", () => {
    expectClose(car.sprung, 880, CLOSED_FORM);
    expectClose(car.arm, 0.433148148148, CLOSED_FORM);
  });

  it.each(["front", "rear"] as const)(
    "rolls by 2.293 deg at 9.81 m/s², tyres in series; seen from the %s axle",
    (own) => {
      const body = 2.292786866 * DEGREE;
      const [springs, tyres] = own === "front" ? [68238.4, 279864] : [49587.2, 288800];
      const angle = (body * tyres) / (springs + tyres);
      const turn = turnAt(car, own, angle);
      expectClose(turn.body, body, CLOSED_FORM);
      // The check value takes g = 9.81 in the weight's own moment, the tool standard gravity.
      expectClose(turn.lateral, 9.81 + (9.81 - 9.80665) * body, 1e-8);
      expectClose(turnAt(car, own, -angle).lateral, -turn.lateral, CLOSED_FORM);
    },
  );

  it("says what is missing", () => {
    const why = (change: Partial<typeof question>): string => reason(rollingCar({ ...question, ...change }));
    expect(why({ cgHeight: undefined } as never)).toBe("the car has no cg-height");
    expect(why({ isJoined: true })).toMatch(/^elements between the axles resist roll as well/);
    expect(why({ rear: undefined } as never)).toBe("the car has no rear axle");
    expect(why({ cgHeight: 0.01 })).toBe("the roll axis is not below the centre of gravity");
  });
});

const folder = new URL("../../samples/quill/", import.meta.url);
const quill = Object.fromEntries(
  ["quill.crank", "parts.crank"].map((name) => [name, readFileSync(new URL(name, folder), "utf8")]),
);

describe("the sample car's rear bar", () => {
  const analysis = contextOf(quill, "quill.crank").cars[0]?.analysis;
  const [rearBar] = analysis?.changeOvers ?? [];
  const changed = (): ChangeOver => {
    if (rearBar === undefined) throw new Error("no changeover");
    return rearBar;
  };

  it("goes on alone where the twist has used up the springs of its links", () => {
    expect(changed().path).toBe("rear.bar");
    const events = analysis?.axles.rear?.elements.find(({ path }) => path === "rear.bar")?.events;
    if (events === undefined || "kind" in events) throw new Error("no events");
    const travel = Math.min(...events.map(({ where }) => Math.abs(where?.travel ?? Infinity)));
    expectClose(changed().angle, (2 * travel) / 1.44, 1e-6);
  });

  it("does so at what the linear rates say, since all else is nearly linear in roll", () => {
    const [f, r] = [analysis?.axles.front, analysis?.axles.rear];
    if (f?.roll === undefined || r?.roll === undefined || "kind" in f.roll || "kind" in r.roll)
      throw new Error("no roll");
    const car = rollingCar({ front: f, rear: r, cgHeight: 0.285, isJoined: false });
    if ("kind" in car) throw new Error(car.reason);
    const own = number(r.rates.rollStiffness);
    const body = changed().angle * (1 + own / r.roll.tyres);
    const ride = number(f.rates.rideRate.roll) + number(r.rates.rideRate.roll);
    const lateral = (body * (ride - car.sprung * 9.80665 * car.arm)) / (car.sprung * car.arm);
    expectClose(number(changed().body), body, 0.01);
    expectClose(number(changed().lateral), lateral, 0.02);
    // Its comment says that the springs still work at 2 g.
    expect(number(changed().lateral)).toBeGreaterThan(2 * 9.80665);
  });

  it("has the roll stiffness as the slope of its moment", () => {
    for (const axle of [analysis?.axles.front, analysis?.axles.rear]) {
      if (axle?.roll === undefined || "kind" in axle.roll) throw new Error("no roll");
      const { samples } = axle.roll;
      const at = samples.findIndex(({ angle }) => angle === 0);
      const [before, after] = [samples[at - 1], samples[at + 1]];
      if (before === undefined || after === undefined) throw new Error("no samples");
      const slope = (after.moment - before.moment) / (after.angle - before.angle);
      expectClose(slope, number(axle.rates.rollStiffness), 5e-3);
    }
  });
});

describe("a car of which something is missing", () => {
  const bar = `spring side for corner {
      rate 150 N/mm
      acts in-compression
      between rocker.side and chassis (-55, 88, 385) mm
    }
    anti-roll-bar bar for roll {
      rate 800 N*m/rad
      lever { pivot (-138, 341, 300) mm, axis (0, 1, 0), end (-18, 341, 300) mm }
      drop-link rocker.bar
      link-spring { rate 90 N/mm, travel 1 mm }
    }`;

  it("still has the roll angle, and says why there is no acceleration", () => {
    const [found] = analysisOf(carOf(carText({ elements: bar }))).changeOvers ?? [];
    expect(found?.angle).toBeGreaterThan(0.001);
    expect(reason(found?.lateral)).toBe("the car has no rear axle");
  });

  it("has none where the travel ends before, nor without such a stage", () => {
    expect(analysisOf(carOf(carText({ elements: bar.replace("travel 1 mm", "travel 30 mm") }))).changeOvers).toEqual(
      [],
    );
    expect(analysisOf(carOf(carText({ elements: bar.replace(/link-spring.*/, "") }))).changeOvers).toEqual([]);
  });
});
