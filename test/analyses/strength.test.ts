/** Stresses, coil lengths, strokes and stages over the travel, against closed forms and against the curves themselves. */
import { describe, expect, it } from "vitest";
import { analyseAxle } from "../../server/analyses/analyse-axle.js";
import { kinematics } from "../../server/analyses/kinematics.js";
import type { ElementFigures, StrengthFigures, Where } from "../../server/analyses/results.js";
import type { AxleMechanism } from "../../server/elements/mechanism.js";
import { expectClose } from "../support/approx.js";
import { CLOSED_FORM, CROSSING } from "../support/tolerances.js";
import { carText, elementIn, mechanismOf, number } from "../support/written-car.js";

const RATIO_LINKAGE = "linkage ratio";
/** An axle by ratios: deflections are what the ratios say, loads are weight over ratio. */
const byRatios = (elements: string): AxleMechanism => mechanismOf(carText({ linkage: RATIO_LINKAGE, elements }));
const WHEEL = 560 * 0.25 * 9.80665 - 18 * 9.80665;

function strengthOf(mechanism: AxleMechanism, path: string): StrengthFigures {
  const { strength } = elementIn(analyseAxle(mechanism), path);
  if (strength === undefined || "kind" in strength) throw new Error(strength?.reason ?? "no strength");
  return strength;
}

const coil = (more: string, words = "") => `spring side for corner {
      coil { ${more} }
      ${words}
      ratio 0.8
    }`;
const wire = "wire 9 mm, mean-diameter 60 mm, active-turns 6, modulus 79.5 GPa";
const RATE = (79.5e9 * 0.009 ** 4) / (8 * 0.06 ** 3 * 6);
const W = 60 / 9;
const PER_NEWTON = (((W + 0.5) / (W - 0.75)) * 8 * 0.06) / (Math.PI * 0.009 ** 3);

describe("a coil", () => {
  const own = strengthOf(byRatios(coil(`${wire}, free-length 150 mm`, "acts in-compression")), "front.left.side");

  it("is stressed by what it carries: at rest, and at full bump", () => {
    const [stress] = own.stresses;
    const rest = WHEEL / 0.8;
    expectClose(stress?.atRest ?? 0, rest * PER_NEWTON, CLOSED_FORM);
    expectClose(stress?.most ?? 0, (rest + RATE * 0.8 * 0.03) * PER_NEWTON, CLOSED_FORM);
    expect(stress?.stated).toBe(false);
    // 65 % of chrome-silicon wire's strength by its size (table of the book, value from memory).
    expectClose(stress?.allowable ?? 0, (0.65 * 1974e6) / 9 ** 0.108, CLOSED_FORM);
  });

  it("has its length at rest, and what is left until its turns touch", () => {
    const rest = WHEEL / 0.8;
    expectClose(own.coil?.atRest ?? 0, 0.15 - rest / RATE, CLOSED_FORM);
    expectClose(own.coil?.solid ?? 0, 8 * 0.009, CLOSED_FORM);
    expectClose(own.coil?.margin ?? 0, 0.15 - rest / RATE - 0.024 - 0.072, CLOSED_FORM);
    expect(own.coil?.binds).toBeUndefined();
  });

  it("closes up where its length is used up, and is overstressed where it is so", () => {
    const short = strengthOf(
      byRatios(coil(`${wire}, free-length 115 mm, bind-length 73 mm, allowable-stress 520 MPa`)),
      "front.left.side",
    );
    const rest = WHEEL / 0.8 / RATE;
    const [stress] = short.stresses;
    expect(short.coil?.margin).toBeLessThan(0);
    expect(short.coil?.binds?.mode).toBe("heave");
    expectClose(short.coil?.binds?.travel ?? 0, (0.115 - 0.073 - rest) / 0.8, 0, CROSSING);
    expect(stress?.stated).toBe(true);
    expectClose(stress?.passed?.travel ?? 0, (520e6 / PER_NEWTON - WHEEL / 0.8) / (RATE * 0.8), 0, CROSSING);
  });

  it("is loose, and no longer than without load, beyond where it carries", () => {
    const late = coil("rate 12 N/mm, free-length 300 mm, bind-length 60 mm", "gap 4 mm").replace("side", "late");
    const axle = byRatios(`spring side for corner {\n rate 100 N/mm\n acts in-compression\n ratio 0.8\n }\n${late}`);
    const { coil: lengths, stresses } = strengthOf(axle, "front.left.late");
    expectClose(lengths?.atRest ?? 0, 0.3, CLOSED_FORM);
    expectClose(lengths?.margin ?? 0, 0.3 - (0.024 - 0.004) - 0.06, CLOSED_FORM);
    expect(stresses).toEqual([]);
  });

  it("in line with a tender has its own deflection only", () => {
    const stacked = strengthOf(
      byRatios(coil(`${wire}, free-length 150 mm`, "tender { rate 15 N/mm, travel 30 mm }")),
      "front.left.side",
    );
    expectClose(stacked.coil?.atRest ?? 0, 0.15 - WHEEL / 0.8 / RATE, CLOSED_FORM);
  });
});

describe("a spring's seat", () => {
  const at = (words: string): Where | undefined => {
    const mechanism = byRatios(`spring side for corner {\n rate 100 N/mm\n ${words}\n ratio 0.8\n }`);
    const { strength } = elementIn(analyseAxle(mechanism), "front.left.side");
    return strength === undefined || "kind" in strength ? undefined : strength.unseated;
  };

  it("is lost where the spring would have to pull and nothing says that it may", () => {
    expectClose(at("")?.travel ?? 0, -WHEEL / 0.8 / 100e3 / 0.8, 0, CROSSING);
    for (const words of ["acts in-compression", "acts both-ways", "gap 0 mm"]) expect(at(words)).toBeUndefined();
  });

  it("is no matter of springs that carry nothing at rest, nor of bars", () => {
    const roll = byRatios(
      `spring side for corner {\n rate 100 N/mm\n acts in-compression\n ratio 0.8\n }
       spring across for roll {\n rate 40 N/mm\n ratio roll 0.9\n }
       spring bar for heave {\n rate 900 N*m/rad\n ratio heave 9 rad/m\n }`,
    );
    expect(strengthOf(roll, "front.across").unseated).toBeUndefined();
    expect(elementIn(analyseAxle(roll), "front.bar").strength).toBeUndefined();
  });
});

describe("a torsion bar", () => {
  const bar = (more: string, mode = "corner"): string => `spring bar for ${mode} {
      torsion-bar { diameter 20 mm, length 400 mm, modulus 78.5 GPa${more} }
      ratio ${mode === "corner" ? "" : `${mode} `}12 rad/m
    }`;
  const K = (78.5e9 * Math.PI * 0.02 ** 4) / 32 / 0.4;
  const PER = 16 / (Math.PI * 0.02 ** 3);

  it("is stressed G r/L for each radian that it is wound up, and may be more where it is wound one way only", () => {
    const [stress] = strengthOf(byRatios(bar("")), "front.left.bar").stresses;
    const rest = WHEEL / 12;
    expectClose(stress?.atRest ?? 0, rest * PER, CLOSED_FORM);
    expectClose(stress?.most ?? 0, (rest / K + 0.36) * ((78.5e9 * 0.01) / 0.4), CLOSED_FORM);
    // At full droop it is wound the other way, by more than a tenth.
    expect(stress?.allowable).toBe(700e6);
    const text = carText({ linkage: RATIO_LINKAGE, elements: bar("") }).replace("travel -30", "travel -3");
    const [oneWay] = strengthOf(mechanismOf(text), "front.left.bar").stresses;
    expect(oneWay?.allowable).toBe(1020e6);
  });

  it("passes what is stated where it does so, in heave or in roll", () => {
    const [stress] = strengthOf(byRatios(bar(", allowable-stress 400 MPa")), "front.left.bar").stresses;
    expectClose(stress?.passed?.travel ?? 0, (400e6 / PER - WHEEL / 12) / K / 12, 0, CROSSING);
    const inRoll = byRatios(
      `${bar("")}\n${bar(", allowable-stress 300 MPa", "roll").replace("spring bar", "spring across")}`,
    );
    const [across] = strengthOf(inRoll, "front.across").stresses;
    expect(across?.passed?.mode).toBe("roll");
    expectClose(Math.abs(across?.passed?.travel ?? 0), 300e6 / PER / K / 12, 0, CROSSING);
  });
});

describe("an anti-roll bar", () => {
  const barOf = (blade: string) => `spring side for corner {
      rate 150 N/mm
      acts in-compression
      between rocker.side and chassis (-55, 88, 385) mm
    }
    anti-roll-bar bar for roll {
      torsion-bar { diameter 22 mm, bore 16 mm, length 700 mm }
      lever { pivot (-138, 341, 300) mm, axis (0, 1, 0), end (-18, 341, 300) mm }
      ${blade}
      drop-link rocker.bar
    }`;

  it("is stressed in its tube by the moment, and at the root of its blades by moment over lever", () => {
    const mechanism = mechanismOf(
      carText({ elements: barOf("blade { position 5 of 5, section 8 x 30 mm, length 120 mm }") }),
    );
    const analysis = analyseAxle(mechanism);
    const bar = elementIn(analysis, "front.bar");
    const { stresses } = strengthOf(mechanism, "front.bar");
    if ("kind" in bar.travel) throw new Error(bar.travel.reason);
    const moment = number(bar.rate) * Math.max(-bar.travel.from, bar.travel.to);
    const [tube, blade] = stresses;
    expectClose(tube?.most ?? 0, (moment * 16 * 0.022) / (Math.PI * (0.022 ** 4 - 0.016 ** 4)), CLOSED_FORM);
    // ARB-3: root bending M/(l²·…): the blade is the whole lever of 120 mm, W = 8 · 30²/6 mm³.
    expectClose(blade?.most ?? 0, moment / ((0.008 * 0.03 ** 2) / 6), CLOSED_FORM);
    expect(tube?.allowable).toBe(700e6);
    expect(blade?.allowable).toBe(900e6);
    expect(stresses.map(({ part }) => part)).toEqual(["torsion bar", "blade"]);
  });
});

describe("a damper's stroke", () => {
  const axle = (words: string): string => `spring side for corner {
      rate 150 N/mm
      acts in-compression
      between rocker.side and chassis (-55, 88, 385) mm
    }
    damper side-damper for corner {
      damping 3 N*s/mm
      ${words}
      between rocker.side and chassis (-55, 88, 385) mm
    }`;
  const mechanismWith = (words: string) => mechanismOf(carText({ elements: axle(words) }));

  it("is what its lengths leave where it is fitted", () => {
    const design = Math.hypot(-12 + 55, 238 - 88, 523 - 385) / 1000;
    const { stroke } = strengthOf(mechanismWith("length 180 .. 230 mm"), "front.left.side-damper");
    expectClose(stroke?.bump.atRest ?? 0, design - 0.18, CLOSED_FORM);
    expectClose(stroke?.rebound.atRest ?? 0, 0.23 - design, CLOSED_FORM);
    const figures = elementIn(analyseAxle(mechanismWith("length 180 .. 230 mm")), "front.left.side-damper");
    if ("kind" in figures.travel) throw new Error(figures.travel.reason);
    expectClose(stroke?.bump.least ?? 0, design - 0.18 - figures.travel.to, CLOSED_FORM);
    expectClose(stroke?.rebound.least ?? 0, 0.23 - design + figures.travel.from, CLOSED_FORM);
    expect(stroke?.bump.passed).toBeUndefined();
  });

  it("is passed at the travel where its deflection is all of it", () => {
    const mechanism = mechanismWith("stroke -9 .. 11 mm");
    const { stroke } = strengthOf(mechanism, "front.left.side-damper");
    const deflectionAt = (where: Where | undefined): number => {
      const [row] = kinematics(mechanism, [where?.travel ?? 0], [0]);
      return number(row?.elements.find(({ path }) => path === "front.left.side-damper")?.deflection);
    };
    expectClose(deflectionAt(stroke?.bump.passed), 0.011, 0, CROSSING);
    expectClose(deflectionAt(stroke?.rebound.passed), -0.009, 0, CROSSING);
  });

  it("takes the tighter of both statements, and says where it does not even fit at rest", () => {
    const both = strengthOf(
      mechanismWith("stroke -30 .. 8 mm\n length 170 .. 215 mm"),
      "front.left.side-damper",
    ).stroke;
    expectClose(both?.bump.atRest ?? 0, 0.008, CLOSED_FORM);
    const long = strengthOf(mechanismWith("length 230 .. 300 mm"), "front.left.side-damper").stroke;
    expect(long?.bump.passed).toEqual({ mode: "rest", travel: 0 });
  });

  it("is that of a rotary one in angles, and no length of one", () => {
    const rotary = byRatios(
      `spring side for corner {\n rate 100 N/mm\n acts in-compression\n ratio 0.8\n }
       damper turned for roll {\n damping 20 N*m*s/rad\n stroke -10 .. 10 deg\n ratio roll 9 rad/m\n }`,
    );
    const { stroke } = strengthOf(rotary, "front.turned");
    expectClose(stroke?.bump.atRest ?? 0, (10 * Math.PI) / 180, CLOSED_FORM);
    expect(stroke?.bump.passed?.mode).toBe("roll");
    const mixed = byRatios(
      `spring side for corner {\n rate 100 N/mm\n acts in-compression\n ratio 0.8\n }
       damper turned for roll {\n damping 20 N*m*s/rad\n stroke -10 .. 10 mm\n ratio roll 9 rad/m\n }`,
    );
    expect(elementIn(analyseAxle(mixed), "front.turned").strength).toBeUndefined();
  });
});

describe("stages and stops", () => {
  const side = "spring side for corner {\n rate 100 N/mm\n acts in-compression\n ratio 0.8\n }";
  const eventsOf = (elements: string, path: string): NonNullable<ElementFigures["events"]> => {
    const { events } = elementIn(analyseAxle(byRatios(`${side}\n${elements}`)), path);
    if (events === undefined) throw new Error("no events");
    return events;
  };
  const told = (elements: string, path: string) => {
    const events = eventsOf(elements, path);
    if ("kind" in events) throw new Error(events.reason);
    return events;
  };

  it("a stop engages where its gap less its packers is used up", () => {
    const [stop] = told(
      "bump-stop stop for corner {\n rate 300 N/mm\n gap 12 mm\n packer 2 mm\n ratio 0.8\n }",
      "front.left.stop",
    );
    expect(stop?.what).toBe("free");
    expectClose(stop?.where?.travel ?? 0, 0.01 / 0.8, 0, CROSSING);
  });

  it("one that the travel does not reach says so", () => {
    const [stop] = told("bump-stop stop for corner {\n rate 300 N/mm\n gap 40 mm\n ratio 0.8\n }", "front.left.stop");
    expect(stop?.where).toBeUndefined();
  });

  it("a stop that packers load at rest has engaged in droop, where it lets go", () => {
    const [stop] = told(
      "bump-stop stop for corner {\n rate 300 N/mm\n gap 2 mm\n packer 5 mm\n ratio 0.8\n }",
      "front.left.stop",
    );
    expectClose(stop?.where?.travel ?? 0, -0.003 / 0.8, 0, CROSSING);
  });

  it("a stage of a heave spring is used up in heave, of a roll spring in roll either way", () => {
    const heave = told(
      "spring third for heave {\n squat { soft 40 N/mm, knee 6 mm, hard 110 N/mm }\n rise { rate 30 N/mm }\n ratio heave 0.9\n }",
      "front.third",
    );
    expectClose(heave[0]?.where?.travel ?? 0, 0.006 / 0.9, 0, CROSSING);
    const roll = told(
      "spring across for roll {\n rate 40 N/mm\n tender { rate 20 N/mm, travel 5 mm }\n acts both-ways\n ratio roll 0.9\n }",
      "front.across",
    );
    expect(roll.map(({ where }) => where?.mode)).toEqual(["roll", "roll"]);
    // 5 mm of the tender at 100 N, and 2.5 mm of the main spring.
    expectClose(Math.abs(roll[0]?.where?.travel ?? 0), 0.0075 / 0.9, 0, CROSSING);
  });

  it("of a trim element follow its seat, and are not to be had without a trim", () => {
    const stacked = `spring side for corner {\n rate 100 N/mm\n tender { rate 50 N/mm, travel 50 mm }\n acts in-compression\n ratio 0.8\n }`;
    const { events } = elementIn(analyseAxle(byRatios(stacked)), "front.left.side");
    if (events === undefined || "kind" in events) throw new Error("no events");
    // Both in line are 33.3 N/mm: it lets go that far below what it carries.
    expectClose(events.find(({ what }) => what === "free")?.at ?? 0, -(WHEEL / 0.8) / (100e3 / 3), CLOSED_FORM);
    const bare = analyseAxle({ ...byRatios(stacked), carMass: undefined });
    expect(elementIn(bare, "front.left.side").events).toEqual({
      kind: "absent",
      reason: "the car has no mass, so the load at rest is not known",
    });
  });
});

describe("an inerter", () => {
  const inertance = (words: string): NonNullable<ElementFigures["inertance"]> => {
    const found = elementIn(
      analyseAxle(byRatios(`spring side for corner {\n rate 100 N/mm\n ratio 0.8\n }\n${words}`)),
      "front.fly",
    );
    if (found.inertance === undefined) throw new Error("no inertance");
    return found.inertance;
  };

  it("adds mass at the wheels by the square of its motion in each mode", () => {
    const heave = inertance("inerter fly for heave {\n inertance 60 kg\n ratio heave 0.9\n }");
    expectClose(heave.heave, 60 * 0.81, CLOSED_FORM);
    expectClose(number(heave.roll), 0, 0, 1e-12);
    // One wheel of two moves it half as far.
    expectClose(heave.single, (60 * 0.81) / 4, CLOSED_FORM);
    const roll = inertance("inerter fly for roll {\n inertance 0.02 kg*m^2\n ratio roll 20 rad/m\n }");
    const track = 1.571171173495033;
    // Opposed wheels at ±q turn it by 20 q, and the body by 2q/t.
    expectClose(number(roll.roll), 0.02 * (20 * (track / 2)) ** 2, CLOSED_FORM);
  });

  it("of a corner is b MR² at its own wheel, and moves both in heave", () => {
    const mechanism = byRatios(
      "spring side for corner {\n rate 100 N/mm\n ratio 0.8\n }\ninerter fly for corner {\n inertance 60 kg\n ratio 0.7\n }",
    );
    const { inertance: left } = elementIn(analyseAxle(mechanism), "front.left.fly");
    expectClose(left?.single ?? 0, 60 * 0.49, CLOSED_FORM);
    expectClose(left?.heave ?? 0, 60 * 0.49, CLOSED_FORM);
  });

  it("on a spring's own mass makes INR-1: it lowers the frequency as a mass would (Smith 2002, formula published)", () => {
    const k = 30e3;
    const b = inertance("inerter fly for heave {\n inertance 60 kg\n ratio heave 1\n }").heave;
    expectClose(Math.sqrt(k / 300) / (2 * Math.PI), 1.59154943092, CLOSED_FORM);
    expectClose(Math.sqrt(k / (300 + b)) / (2 * Math.PI), 1.45287920783, CLOSED_FORM);
    expectClose(Math.sqrt(k / b) / (2 * Math.PI), 3.55881271709, CLOSED_FORM);
  });
});
