/** Gas springs, hydraulic links and actuators as written: what they do in each mode, to the weight and to the energy. */
import { describe, expect, it } from "vitest";
import type { CarAnalysis, ElementFigures } from "../../server/analyses/results.js";
import { assembleAxle } from "../../server/assemble/assemble.js";
import { assembleCarElements } from "../../server/assemble/car-elements.js";
import type { Wheels } from "../../server/elements/car-connection.js";
import { ATMOSPHERE } from "../../server/elements/laws/polytropic.js";
import type { AxleMechanism } from "../../server/elements/mechanism.js";
import { CAR_MODES } from "../../server/elements/patterns.js";
import type { AxleMotion } from "../../server/linkage/corner.js";
import type { CarModel } from "../../server/model/car.js";
import { AxleAnalyses } from "../../server/snapshot/axle-analyses.js";
import { expectClose, slopeOf } from "../support/approx.js";
import { CLOSED_FORM, ENERGY_DIFFERENCE, IDENTITY } from "../support/tolerances.js";
import { twoAxles } from "../support/two-axles.js";
import {
  analysisOf,
  carOf,
  carText,
  cornerSpring,
  elementIn,
  frontOf,
  number,
  reason,
} from "../support/written-car.js";

const GRAVITY = 9.80665;

const motionOf = ({ sensitivity }: ElementFigures) => {
  if ("kind" in sensitivity) throw new Error(sensitivity.reason);
  return sensitivity;
};

const gas = (words: string, mode = "heave", ends = "left.rocker.third and right.rocker.third"): string =>
  `${cornerSpring}\n gas-spring tried for ${mode} {\n ${words}\n between ${ends}\n }`;
const charge = "pressure 23.98675 bar\n volume 150 ml\n area 1200 mm^2";

describe("a gas spring on an axle", () => {
  const [figures] = frontOf(carText({ elements: gas(charge) })).elements.filter(({ path }) => path === "front.tried");
  if (figures === undefined) throw new Error("no figures");

  it("reads the gauge above atmosphere: GAS-1 at design", () => {
    expectClose(number(figures.staticLoad), 2878.41, CLOSED_FORM);
    expectClose(number(figures.rate), 31200, CLOSED_FORM);
    expectClose(number(figures.fluid?.pressure), 2.5e6 - ATMOSPHERE, CLOSED_FORM);
  });

  it("tells pressure and swept share over its travel", () => {
    const { fluid, travel } = figures;
    if (fluid === undefined || "kind" in fluid.over || "kind" in travel) throw new Error("absent");
    expectClose(number(fluid.used), (1.2e-3 * travel.to) / 150e-6, CLOSED_FORM);
    const highest = 2.5e6 * (150e-6 / (150e-6 - 1.2e-3 * travel.to)) ** 1.3 - ATMOSPHERE;
    expectClose(fluid.over.highest, highest, CLOSED_FORM);
    expect(fluid.over.lowest).toBeLessThan(number(fluid.pressure));
    expectClose(number(fluid.ends), (0.98 * 150e-6) / 1.2e-3, CLOSED_FORM);
  });

  it("gets warm: absolute pressure with absolute temperature", () => {
    const warm = frontOf(carText({ elements: gas(`${charge}\n working-temperature 60 degC`) }));
    expectClose(
      number(elementIn(warm, "front.tried").fluid?.pressure),
      (2.5e6 * 333.15) / 293.15 - ATMOSPHERE,
      CLOSED_FORM,
    );
    const cold = frontOf(
      carText({ elements: gas(`${charge}\n charge-temperature 333.15 K\n working-temperature 20 degC`) }),
    );
    expectClose(
      number(elementIn(cold, "front.tried").fluid?.pressure),
      (2.5e6 * 293.15) / 333.15 - ATMOSPHERE,
      CLOSED_FORM,
    );
  });

  it("may collapse: its negative rate takes from the axle and is no fault", () => {
    const falling = "pressure 20 bar\n volume 80 ml\n area-curve { 0 mm: 314 mm^2, 20 mm: 150 mm^2 }";
    const analysis = frontOf(carText({ elements: gas(falling) }));
    const collapsing = elementIn(analysis, "front.tried");
    expect(number(collapsing.rate)).toBeLessThan(0);
    expect(number(collapsing.atWheels)).toBeLessThan(0);
    expect(analysis.problems).toEqual([]);
    const measured = frontOf(carText({ elements: gas("curve { 0 mm: 1500 N, 20 mm: 900 N }") }));
    expectClose(number(elementIn(measured, "front.tried").rate), -30e3, CLOSED_FORM);
    expect(elementIn(measured, "front.tried").fluid).toBeUndefined();
  });

  it("carries weight: what it pushes with is off the corner springs", () => {
    const withGas = frontOf(carText({ elements: gas(charge) }));
    const without = frontOf(carText({}));
    const side = (analysis: typeof withGas) => number(elementIn(analysis, "front.left.side").staticLoad);
    const ratio = number(elementIn(without, "front.left.side").motionRatio);
    expectClose(side(without) - side(withGas), (2878.41 * motionOf(figures).heave) / 2 / ratio, CLOSED_FORM);
  });

  it("as the trim element changes its length: pressure rises with the load, its charge is what is written", () => {
    const ends = "rocker.side and chassis (-55, 88, 385) mm";
    const elements = `gas-spring strut for corner {\n ${charge}\n between ${ends}\n }`;
    const analysis = frontOf(carText({ axle: "trim by strut", elements }));
    const strut = elementIn(analysis, "front.left.strut");
    const { trim } = analysis.rates;
    if ("kind" in trim) throw new Error(trim.reason);
    const [seat] = trim;
    const swept = 1.2e-3 * (seat?.seat ?? NaN);
    const pressure = 2.5e6 * (150e-6 / (150e-6 - swept)) ** 1.3 - ATMOSPHERE;
    expectClose(number(strut.staticLoad), pressure * 1.2e-3, CLOSED_FORM);
    expectClose(number(strut.fluid?.pressure), pressure, CLOSED_FORM);
  });

  it("is expected by its pressure; what works on swept volume has no newtons", () => {
    const link = `hydraulic-link line for heave {\n ${cylinder("c", "left.rocker.third and right.rocker.third")}
      accumulator { pressure 5 bar, volume 80 ml }\n }`;
    const wants = [
      "tried.pressure 23.98675 bar within 0.001 bar",
      "line.pressure 5 bar within 0.001 bar",
      "line.load above 3 N",
    ];
    const car = carOf(
      carText({ elements: `${gas(charge)}\n ${link}`, car: wants.map((want) => `expect front.${want}`).join("\n  ") }),
    );
    const [own, line, load] = analysisOf(car).expectations;
    expect([own?.met, line?.met, load?.met]).toEqual([true, true, undefined]);
    expect(reason(load?.value)).toMatch(/works on swept volume: its load is its pressure/);
  });

  it.each([
    ["pressure 20 bar\n volume 80 ml", /no area/],
    ["volume 80 ml\n area 314 mm^2", /needs pressure and volume/],
    ["curve { 0 mm: 100 N }", /fewer than two points/],
    ["pressure 20 bar\n volume 80 ml\n area-curve { 0 mm: 314 mm^2 }", /fewer than two points/],
    ["gap 2 mm\n curve { 0 mm: -100 N, 10 mm: 200 N }", /pulls at nought/],
  ])("without a law says why: %s", (words, why) => {
    const analysis = frontOf(carText({ elements: gas(words) }));
    expect(reason(elementIn(analysis, "front.tried").rate)).toMatch(why);
    expect(reason(analysis.rates.heaveRate)).toMatch(why);
    // What does not rest on it stays.
    expect(number(elementIn(analysis, "front.left.side").motionRatio)).toBeGreaterThan(0);
  });
});

const cylinder = (name: string, ends: string, more = ""): string =>
  `cylinder ${name} { between ${ends}, area 300 mm^2${more} }`;
const sides = (more = ""): string =>
  `${cylinder("l", "left.rocker.side and chassis (-55, 88, 385) mm", more)}
   ${cylinder("r", "right.rocker.side and chassis (-55, -88, 385) mm", more)}`;
const link = (mode: string, words: string): string =>
  `${cornerSpring}\n hydraulic-link tried for ${mode} {\n ${words}\n }`;
const oil = "bulk-modulus 1.4 GPa, volume 60 ml";
const stiff = 1.4e9 / 60e-6;

describe("a hydraulic link of an axle", () => {
  const figuresOf = (mode: string, words: string): ElementFigures =>
    elementIn(frontOf(carText({ elements: link(mode, words) })), "front.tried");

  it("parallel serves heave alone, crossed roll alone, with rods through both ends", () => {
    const heave = figuresOf("heave", `${sides()}\n line l to r { ${oil} }`);
    expect(motionOf(heave).roll).toBe(0);
    expect(Math.abs(motionOf(heave).heave)).toBeGreaterThan(1e-4);
    const roll = figuresOf("roll", `${sides()}\n line l to r crossed { ${oil} }`);
    expect(motionOf(roll).heave).toBe(0);
    expect(Math.abs(motionOf(roll).roll)).toBeGreaterThan(1e-4);
  });

  it("adds dp/dq (A ds/dz)² at each wheel, and none of the other mode without a charge", () => {
    const analysis = frontOf(carText({ elements: link("heave", `${sides()}\n line l to r { ${oil} }`) }));
    const ratio = number(elementIn(analysis, "front.left.side").motionRatio);
    const share = analysis.rates.shares.find(({ path }) => path === "front.tried");
    expectClose(share?.heave ?? NaN, stiff * (2 * 300e-6 * ratio) ** 2, CLOSED_FORM);
    expectClose(share?.roll ?? NaN, 0, 0, 1e-6);
    expectClose(number(elementIn(analysis, "front.tried").atWheels), share?.heave ?? NaN, IDENTITY);
  });

  it("with a smaller annulus leaks by (A − A′)/(A + A′)", () => {
    const { leak } = figuresOf("roll", `${sides(", annulus-area 200 mm^2")}\n line l to r crossed { ${oil} }`);
    if (leak === undefined || "kind" in leak) throw new Error("no leak");
    expect(leak.mode).toBe("heave");
    expectClose(leak.firstOrder, 100 / 500, CLOSED_FORM);
  });

  it("crossed both ways has two volumes, which share one path and carry both wheels alike", () => {
    const both = `${sides(", annulus-area 200 mm^2")}\n line l to r crossed\n line r to l crossed
      accumulator { pressure 20 bar, volume 80 ml }`;
    const analysis = frontOf(carText({ elements: link("roll", both) }));
    expect(analysis.elements.filter(({ path }) => path === "front.tried")).toHaveLength(1);
    expect(elementIn(analysis, "front.tried").fluid?.volumes).toBe(2);
    const [left, right] = ["left", "right"].map((side) => elementIn(analysis, `front.${side}.side`));
    expectClose(number(left?.staticLoad), number(right?.staticLoad), IDENTITY);
    // Two volumes of k = n p/V, each with (A + A′) in roll, F ∇²s aside: the charge is the same in every mode.
    const share = analysis.rates.shares.filter(({ path }) => path === "front.tried");
    expect(share).toHaveLength(1);
    const ratio = number(left?.motionRatio);
    const k = (1.3 * (2e6 + ATMOSPHERE)) / 80e-6;
    const track = analysis.rates.track ?? NaN;
    const wheels = (share[0]?.roll ?? NaN) * (4 / track ** 2) - (share[0]?.heave ?? NaN);
    expectClose(wheels, 2 * k * ratio ** 2 * (500e-6 ** 2 - 100e-6 ** 2), CLOSED_FORM);
  });

  it("charged pushes on each wheel with p A ds/dz and stiffens by F ∇²s in every mode", () => {
    const charged = frontOf(
      carText({ elements: link("heave", `pressure 10 bar\n ${sides()}\n line l to r { ${oil} }`) }),
    );
    const side = elementIn(charged, "front.left.side");
    const without = elementIn(frontOf(carText({})), "front.left.side");
    expectClose(number(without.staticLoad) - number(side.staticLoad), 1e6 * 300e-6, CLOSED_FORM);
    expectClose(number(elementIn(charged, "front.tried").staticLoad), 1e6, CLOSED_FORM);
    const leak = elementIn(charged, "front.tried").leak;
    if (leak === undefined || "kind" in leak) throw new Error("no leak");
    expect(leak.firstOrder).toBe(0);
    expect(number(leak.rate)).toBeGreaterThan(0);
  });

  it("loses R v² of flow: all of the line from side to side, a quarter of it each way into an accumulator", () => {
    const damped = (more: string) =>
      frontOf(
        carText({
          elements: link(
            "heave",
            `${sides()}\n line l to r { resistance 40 bar*s/l${more} }\n accumulator { pressure 20 bar, volume 80 ml }`,
          ),
        }),
      );
    const analysis = damped("");
    const ratio = number(elementIn(analysis, "front.left.side").motionRatio);
    const resistance = 40e5 / 1e-3;
    const each = (resistance / 2) * (300e-6 * ratio) ** 2;
    expectClose(number(analysis.rates.heaveDamping), 2 * each, CLOSED_FORM);
    expectClose(number(analysis.rates.rollDamping), ((analysis.rates.track ?? NaN) ** 2 / 4) * 2 * each, CLOSED_FORM);
    const valve = damped(", one-way l");
    expectClose(number(valve.rates.heaveDamping), each, CLOSED_FORM);
  });

  it("of one cylinder is a strut on its own oil", () => {
    const one = figuresOf(
      "heave",
      `${cylinder("c", "left.rocker.third and right.rocker.third")}\n accumulator { pressure 5 bar, volume 80 ml }`,
    );
    expect(motionOf(one).roll).toBe(0);
    expectClose(number(one.rate), (1.3 * (5e5 + ATMOSPHERE)) / 80e-6, CLOSED_FORM);
  });

  it.each([
    [`${sides()}\n line l to r`, /nothing in it gives/],
    [sides(), /no line joins its cylinders/],
    [
      `${sides()}\n ${cylinder("x", "left.rocker.third and right.rocker.third")}\n line l to r { ${oil} }`,
      /no line joins its cylinder x/,
    ],
    [`${sides(", annulus-area 400 mm^2")}\n line l to r crossed { ${oil} }`, /annulus of its cylinder l is larger/],
    [`${sides()}\n line l to r\n line l to l { ${oil} }`, /to itself/],
    [`pressure 3 bar\n ${sides()}\n line l to r\n accumulator { pressure 20 bar, volume 80 ml }`, /stated beside it/],
    [`${sides()}\n line l to r\n accumulator { volume 80 ml }`, /needs pressure and volume/],
    [
      `${cylinder("l", "rear.left.rocker.side and chassis (0, 0, 0) mm")}\n ${cylinder("r", "right.rocker.side and chassis (-55, -88, 385) mm")}\n line l to r { ${oil} }`,
      /./,
    ],
  ])("that cannot work says why: %s", (words, why) => {
    const analysis = frontOf(carText({ elements: link("roll", words) }));
    const { rate } = elementIn(analysis, "front.tried");
    expect(reason(rate)).toMatch(why);
    expect(reason(analysis.rates.rollStiffness)).toMatch(why);
  });
});

const corners = (...signs: string[]): string => `
  ${cylinder("fl", "front.left.rocker.side and chassis (-55, 88, 385) mm")}
  ${cylinder("fr", "front.right.rocker.side and chassis (-55, -88, 385) mm")}
  ${cylinder("rl", "rear.left.rocker.side and chassis (-55, 88, 385) mm")}
  ${cylinder("rr", "rear.right.rocker.side and chassis (-55, -88, 385) mm")}
  line fl to fr ${signs[0]} { ${oil} }
  line fl to rl ${signs[1]}
  line fl to rr ${signs[2]}`;

describe("a hydraulic link between the axles", () => {
  const four: Readonly<Record<string, string>> = {
    heave: corners("parallel", "parallel", "parallel"),
    pitch: corners("parallel", "crossed", "crossed"),
    roll: corners("crossed", "parallel", "crossed"),
    warp: corners("crossed", "crossed", "parallel"),
  };

  it.each(CAR_MODES)("of four corners serves %s alone, by its signs", (mode) => {
    const analysis = analysisOf(carOf(twoAxles(`hydraulic-link tried for ${mode} { ${four[mode]} }`)));
    const figures = elementIn(analysis, "tried");
    const motion = motionOf(figures);
    const share = analysis.modal.shares.find(({ path }) => path === "tried");
    const ratio = number(elementIn(analysis.axles.front ?? { elements: [] }, "front.left.side").motionRatio);
    for (const other of CAR_MODES) {
      if (other === mode) continue;
      expect(motion[other]).toBe(0);
      expectClose(share?.[other] ?? NaN, 0, 0, 1e-6);
    }
    expectClose(share?.[mode] ?? NaN, stiff * (4 * 300e-6 * ratio) ** 2, CLOSED_FORM);
    expectClose(Math.abs(motion[mode]), 4 * 300e-6 * ratio, CLOSED_FORM);
    expect(figures.idleIn).toEqual([]);
    const { leak } = figures;
    if (leak === undefined || "kind" in leak) throw new Error("no leak");
    expect(leak.firstOrder).toBe(0);
    expectClose(number(leak.rate), 0, 0, 1e-9);
  });

  it.each(CAR_MODES)("that claims what its signs do not give is found out: %s", (mode) => {
    const other = mode === "pitch" ? "roll" : "pitch";
    const figures = elementIn(
      analysisOf(carOf(twoAxles(`hydraulic-link tried for ${mode} { ${four[other]} }`))),
      "tried",
    );
    expect(figures.idleIn).toEqual([mode]);
    expect(reason(figures.leak)).toMatch(/not moved in/);
  });

  it("of third cylinders, crossed, is pitch alone and its rate is about the centre of gravity", () => {
    const words = `hydraulic-link tried for pitch {
      ${cylinder("nose", "front.left.rocker.third and front.right.rocker.third")}
      ${cylinder("tail", "rear.left.rocker.third and rear.right.rocker.third")}
      line nose to tail crossed { ${oil} }
    }`;
    const analysis = analysisOf(carOf(twoAxles(words)));
    const figures = elementIn(analysis, "tried");
    expect([motionOf(figures).heave, motionOf(figures).roll, motionOf(figures).warp]).toEqual([0, 0, 0]);
    // Mass-front 50 %: the body's pitch is the pattern's, half a wheelbase for each radian.
    const pattern = stiff * motionOf(figures).pitch ** 2;
    expectClose(number(figures.atWheels), pattern * (2.5 / 2) ** 2, CLOSED_FORM);
  });

  it("takes its share of the weight off both axles", () => {
    const words = `hydraulic-link tried for heave { ${four["heave"]}\n pressure 10 bar }`;
    const loads = (joining: string) => {
      const { axles } = analysisOf(carOf(twoAxles(joining)));
      return (["front", "rear"] as const).map((axle) =>
        number(elementIn(axles[axle] ?? { elements: [] }, `${axle}.left.side`).staticLoad),
      );
    };
    const [withGas, without] = [loads(words), loads("")];
    for (const i of [0, 1]) expectClose((without[i] ?? NaN) - (withGas[i] ?? NaN), 1e6 * 300e-6, CLOSED_FORM);
  });

  it("is told apart from the same axle without it, and kept by what it carries", () => {
    const analyses = new AxleAnalyses();
    const loadOf = (joining: string): number => {
      const car = carOf(twoAxles(joining));
      const axle = car.axles.front;
      return axle === undefined ? NaN : number(elementIn(analyses.of(axle, car), "front.left.side").staticLoad);
    };
    const charged = (pressure: number): string =>
      `hydraulic-link tried for heave { ${four["heave"]}\n pressure ${pressure} bar }`;
    expectClose(loadOf("") - loadOf(charged(10)), 300, CLOSED_FORM);
    expectClose(loadOf("") - loadOf(charged(12)), 360, CLOSED_FORM);
  });

  it("that cannot be worked out leaves the axles' weight unknown, and says so", () => {
    const analysis = analysisOf(
      carOf(
        twoAxles(
          `gas-spring tried for pitch {\n volume 80 ml\n area 300 mm^2\n between front.left.rocker.third and rear.left.rocker.low\n }`,
        ),
      ),
    );
    expect(reason(analysis.axles.front?.rates.trim)).toMatch(/tried takes part and its gas needs pressure/);
  });
});

describe("other elements between the axles", () => {
  const figuresOf = (words: string): { figures: ElementFigures; analysis: CarAnalysis } => {
    const analysis = analysisOf(carOf(twoAxles(words)));
    return { analysis, figures: elementIn(analysis, "tried") };
  };

  it("a spring by its ratios: k r² at unit travel of every wheel", () => {
    const { figures, analysis } = figuresOf("spring tried for warp {\n rate 30 N/mm\n ratio warp 0.8\n }");
    expectClose(number(figures.atWheels), 30e3 * 0.64, CLOSED_FORM);
    const share = analysis.modal.shares.find(({ path }) => path === "tried");
    expectClose(share?.warp ?? NaN, 30e3 * 0.64, CLOSED_FORM);
    expect([share?.heave, share?.pitch, share?.roll]).toEqual([0, 0, 0]);
    expect(reason(figures.leak)).toMatch(/says nothing of other modes/);
  });

  it("a damper adds to the damping alone", () => {
    const { figures, analysis } = figuresOf("damper tried for pitch {\n damping 2 N*s/mm\n ratio pitch 0.5\n }");
    expectClose(number(figures.rate), 2000, CLOSED_FORM);
    const { patterns } = analysis.modal.damping;
    if ("kind" in patterns) throw new Error(patterns.reason);
    expectClose(patterns[1]?.[1] ?? NaN, 2000 * 0.25, CLOSED_FORM);
    expect(patterns[0]?.[0]).toBe(0);
  });

  it("an inerter has neither rate nor damping", () => {
    const { figures } = figuresOf("inerter tried for pitch {\n inertance 40 kg\n ratio pitch 0.5\n }");
    expect(reason(figures.rate)).toMatch(/inerter has neither/);
    expect(number(figures.staticLoad)).toBe(0);
  });

  it("a bar from front to rear rocker twists where they turn against each other", () => {
    const { figures } = figuresOf(
      "spring tried for pitch and warp {\n rate 300 N*m/rad\n twists front.left.rocker against rear.left.rocker\n }",
    );
    expect(figures.torsional).toBe(true);
    expect(motionOf(figures).heave).toBe(0);
    expect(motionOf(figures).roll).toBe(0);
    expectClose(Math.abs(motionOf(figures).pitch), Math.abs(motionOf(figures).warp), IDENTITY);
    const across = figuresOf(
      "spring tried for roll {\n rate 300 N*m/rad\n twists front.left.rocker against rear.right.rocker\n }",
    ).figures;
    // Mirrored rockers with axes along the car turn against each other where their wheels move alike.
    expect(Math.abs(motionOf(across).heave)).toBeGreaterThan(1);
    expect(motionOf(across).warp + motionOf(across).pitch).not.toBe(0);
  });

  it("one that names the other axle from inside an axle is a fault", () => {
    const inside = "spring tried for heave {\n rate 30 N/mm\n between left.rocker.third and rear.left.rocker.third\n }";
    const analysis = analysisOf(carOf(twoAxles("", `${cornerSpring}\n ${inside}`, cornerSpring)));
    expect(analysis.axles.front?.problems.map((problem) => problem.reason)).toEqual([
      expect.stringMatching(/joined to the rear axle/),
    ]);
  });

  it("what is wrong with one is a problem of the car", () => {
    const analysis = analysisOf(carOf(twoAxles("spring tried for pitch {\n rate 30 N*m/rad\n ratio pitch 0.4\n }")));
    expect(analysis.problems).toEqual([{ kind: "law", path: "tried", reason: expect.stringMatching(/for twisting/) }]);
  });
});

describe("an actuator", () => {
  const actuator = (hold: string): string =>
    `${cornerSpring}\n actuator tried for heave {\n between left.rocker.third and right.rocker.third\n ${hold}\n }`;
  const lawOf = (hold: string) =>
    assembled(carText({ elements: actuator(hold), car: "case braking { speed 100 km/h }" })).elements.find(
      ({ name }) => name === "tried",
    )?.law;

  it("that holds case by case adds nothing at static trim, and says so", () => {
    const analysis = frontOf(
      carText({ elements: actuator("hold { braking: -2 mm }"), car: "case braking { speed 100 km/h }" }),
    );
    const figures = elementIn(analysis, "front.tried");
    expect(reason(figures.rate)).toMatch(/static trim is no case/);
    expect(reason(figures.staticLoad)).toMatch(/static trim is no case/);
    expectClose(number(analysis.rates.heaveRate), number(frontOf(carText({})).rates.heaveRate), IDENTITY);
  });

  it("keeps its rows by case, lengths and forces", () => {
    const law = lawOf("hold { braking: -2 mm }");
    if (law?.kind !== "hold") throw new Error("no hold");
    expect(law.cases.get("braking")).toEqual({ kind: "length", value: -0.002 });
    expect(lawOf("hold 4 mm")).toMatchObject({ kind: "hold", always: { kind: "length", value: 0.004 } });
  });

  it("that holds one force in all cases carries it at static too", () => {
    const figures = elementIn(frontOf(carText({ elements: actuator("hold 300 N") })), "front.tried");
    expect([figures.staticLoad, figures.rate]).toEqual([300, 0]);
  });
});

function assembled(text: string): AxleMechanism {
  const car = carOf(text);
  if (car.axles.front === undefined) throw new Error("no front axle");
  return assembleAxle(car.axles.front, car);
}

/** Everything that stores energy, and the weight, over the four wheels: the second way to every figure above. */
describe("a car with all of them, against its energy", () => {
  const axleElements = `${cornerSpring}
    gas-spring third for heave {\n pressure 3 bar\n volume 90 ml\n area 400 mm^2\n between left.rocker.third and right.rocker.third\n }
    hydraulic-link roll-line for roll {
      ${sides(", annulus-area 250 mm^2")}
      line l to r crossed\n line r to l crossed { ${oil} }
      accumulator { pressure 8 bar, volume 60 ml }
    }`;
  const joining = `
    hydraulic-link pitch-line for pitch {
      ${cylinder("nose", "front.left.rocker.third and front.right.rocker.third")}
      ${cylinder("tail", "rear.left.rocker.third and rear.right.rocker.third")}
      line nose to tail crossed { ${oil} }
      accumulator { pressure 6 bar, volume 50 ml, exponent 1.4 }
    }
    gas-spring left-gas for pitch {\n pressure 2 bar\n volume 60 ml\n area 200 mm^2\n between front.left.rocker.third and rear.left.rocker.low\n }
    spring warping for warp {\n rate 40 N/mm\n ratio warp { -30 mm: -12 mm, 0 mm: 0 mm, 30 mm: 15 mm }\n }`;
  const car: CarModel = carOf(twoAxles(joining, axleElements));
  const analysis = analysisOf(car);

  const mechanisms = (["front", "rear"] as const).map((name) => {
    const axle = car.axles[name];
    if (axle === undefined) throw new Error("no axle");
    return assembleAxle(axle, car);
  }) as [AxleMechanism, AxleMechanism];
  const { elements } = assembleCarElements(car);

  const motion = ({ corners: c }: AxleMechanism, left: number, right: number): AxleMotion => {
    const [l, r] = [c.left.motion(left), c.right.motion(right)];
    if ("kind" in l || "kind" in r) throw new Error("unreachable");
    return { left: l, right: r };
  };

  const seatOf = (axle: "front" | "rear", path: string): number => {
    const trim = analysis.axles[axle]?.rates.trim;
    if (trim === undefined || "kind" in trim) throw new Error("no trim");
    return trim.find((result) => result.path === path)?.seat ?? 0;
  };

  function energy(z: Wheels): number {
    let sum = 0;
    const both = { front: motion(mechanisms[0], z[0], z[1]), rear: motion(mechanisms[1], z[2], z[3]) };
    for (const { name, elements: own } of mechanisms) {
      for (const { connection, law, path } of own) {
        const d = connection?.deflection(both[name]);
        if (law?.kind !== "spring" || d === undefined || "kind" in d) continue;
        sum += law.energy(d.s + seatOf(name, path));
      }
    }
    for (const { connection, law } of elements) {
      const d = connection?.deflection(both);
      if (law?.kind === "spring" && d !== undefined && !("kind" in d)) sum += law.energy(d.s);
    }
    return sum;
  }

  const moved = (i: number, h: number, j = -1, g = 0): Wheels =>
    [0, 1, 2, 3].map((wheel) => (wheel === i ? h : 0) + (wheel === j ? g : 0)) as unknown as Wheels;

  it("stands at design: its slope is what each wheel carries", () => {
    const [front] = mechanisms;
    const design = motion(front, 0, 0);
    const load = ((560 * 0.5 * GRAVITY) / 2) * (design.left.wheel?.contact.d[2] ?? NaN) - 18 * GRAVITY;
    for (const wheel of [0, 1, 2, 3]) {
      expectClose(
        slopeOf((h) => energy(moved(wheel, h)), 0, 1e-4),
        load,
        ENERGY_DIFFERENCE,
      );
    }
  });

  it("has the stiffness that its energy bends by, over all four wheels", () => {
    const { wheels } = analysis.modal;
    if ("kind" in wheels) throw new Error(wheels.reason);
    const largest = Math.max(...wheels.flat().map(Math.abs));
    for (const i of [0, 1, 2, 3]) {
      for (const j of [0, 1, 2, 3]) {
        const bend = slopeOf((g) => slopeOf((h) => energy(moved(i, h, j, g)), 0, 5e-4), 0, 5e-4);
        expectClose(wheels[i]?.[j] ?? NaN, bend, 1e-5, 1e-5 * largest);
      }
    }
  });

  it("mirrored has mirrored figures", () => {
    const other = analysisOf(
      carOf(
        twoAxles(
          joining.replace("front.left.rocker.third and rear.left", "front.right.rocker.third and rear.right"),
          // Its two volumes are not alike: their oil changes sides.
          axleElements.replace(
            "line l to r crossed\n line r to l crossed",
            "line r to l crossed\n line l to r crossed",
          ),
        ),
      ),
    );
    const { wheels } = analysis.modal;
    const mirrored = other.modal.wheels;
    if ("kind" in wheels || "kind" in mirrored) throw new Error("absent");
    const swap = [1, 0, 3, 2];
    for (const i of [0, 1, 2, 3]) {
      for (const j of [0, 1, 2, 3]) {
        expectClose(mirrored[i]?.[j] ?? NaN, wheels[swap[i] ?? 0]?.[swap[j] ?? 0] ?? NaN, IDENTITY, 1e-6);
      }
    }
  });
});
