/** Springs that work both ways, clickers, gas of dampers, T-shaped bars and drop links from their words, and why there is no law. */
import { describe, expect, it } from "vitest";
import { analyseAxle } from "../../server/analyses/analyse-axle.js";
import { assembleAxle } from "../../server/assemble/assemble.js";
import type { DamperLaw, Element, SpringLaw } from "../../server/elements/element.js";
import { expectClose } from "../support/approx.js";
import { contextOf } from "../support/context.js";
import { CLOSED_FORM, IDENTITY } from "../support/tolerances.js";
import { carText, cornerSpring, elementIn, mechanismOf, number, reason } from "../support/written-car.js";

const telescopic = "between left.rocker.third and right.rocker.third";
const twisting = "twists left.rocker against right.rocker";

function elementOf(text: string, more: Readonly<Record<string, string>> = {}): Element {
  const found = mechanismOf(carText({ elements: text }), more).elements[0];
  if (found === undefined) throw new Error("no element");
  return found;
}

const springOf = (words: string, connection = telescopic, more: Readonly<Record<string, string>> = {}): Element =>
  elementOf(`spring tried for heave {\n ${words}\n ${connection}\n }`, more);

function springLawOf({ law, lawMissing }: Element): SpringLaw {
  if (law?.kind !== "spring") throw new Error(lawMissing ?? "no spring");
  return law;
}

function damperLawOf({ law, lawMissing }: Element): DamperLaw {
  if (law?.kind !== "damper") throw new Error(lawMissing ?? "no damper");
  return law;
}

describe("a double-acting spring", () => {
  it.each([
    ["squat { soft 40 N/mm, knee 6 mm, hard 110 N/mm }\n rise { soft 30 N/mm, knee 4 mm, hard 80 N/mm }", 680, -600],
    ["squat { rate 50 N/mm }\n rise { rate 30 N/mm }", 500, -300],
    ["squat { 5 mm: 200 N, 10 mm: 700 N }\n rise { 10 mm: 400 N, 20 mm: 900 N }", 700, -400],
    ['squat { curve from csv "third.csv" }\n rise { rate 30 N/mm }', 650, -300],
  ])("%s", (words, squat, rise) => {
    const law = springLawOf(
      springOf(words, telescopic, { "third.csv": "deflection [mm], force [N]\n0, 0\n10, 650\n20, 1800\n" }),
    );
    expectClose(law.force(0.01), squat, CLOSED_FORM);
    expectClose(law.force(-0.01), rise, CLOSED_FORM);
    expect(law.force(0)).toBe(0);
  });

  it("has play on both sides with a gap, and may twist", () => {
    const loose = springLawOf(springOf("squat { rate 50 N/mm }\n rise { rate 30 N/mm }\n gap 2 mm"));
    expectClose(loose.force(-0.012), -300, CLOSED_FORM);
    expectClose(loose.force(0.012), 500, CLOSED_FORM);
    const bar = springLawOf(springOf("squat { rate 900 N*m/rad }\n rise { rate 700 N*m/rad }", twisting));
    expectClose(bar.force(-0.1), -70, CLOSED_FORM);
  });

  it.each([
    ["squat { rate 50 N/mm }", "it works both ways and has no rise"],
    ["squat { soft 40 N/mm, knee 6 mm }\n rise { rate 30 N/mm }", "its squat needs soft, knee and hard"],
    [
      "squat { soft 40 N/mm, knee 6 mm, hard 30 N/mm }\n rise { rate 30 N/mm }",
      "its squat is softer beyond the knee, which no stage that is used up can make it",
    ],
    ["squat { rate 50 N/mm }\n rise { 5 mm: 200 N, 10 mm: 100 N }", "its rise falls, which would be a negative rate"],
    ["squat { rate 50 N/mm }\n rise { }", "its rise has neither rates nor points"],
    [
      "squat { rate 50 N/mm }\n rise { rate 30 N/mm }\n acts in-compression",
      "it acts in-compression, and has a squat and a rise",
    ],
    [
      "squat { rate 50 N/mm }\n rise { rate 30 N/mm }\n tender { rate 20 N/mm, travel 4 mm }",
      "its tender is a stage in both directions, and its squat and rise have stages of their own",
    ],
    ["squat { rate 50 N/mm }\n rise { rate 30 N*m/rad }", "one of its directions is for twisting, the other is not"],
    [
      "squat { rate 50 N*m/rad }\n rise { rate 30 N*m/rad }",
      "its squat and rise is for twisting, but it is joined so that it is lengthened and shortened",
    ],
  ])("%s: says why there is no law", (words, why) => {
    expect(springOf(words).lawMissing).toBe(why);
  });
});

describe("a damper with clicks", () => {
  const damperOf = (bump: string): Element =>
    elementOf(`damper tried for heave {\n bump { ${bump} }\n rebound { 50 mm/s: 400 N }\n ${telescopic}\n }`);
  const settings = "closed { 50 mm/s: 500 N, 100 mm/s: 800 N }\n open { 50 mm/s: 140 N, 100 mm/s: 260 N }";

  it("blends its two settings by where it stands", () => {
    expectClose(damperLawOf(damperOf(`clicks 6 of 18\n ${settings}`)).force(0.05), 380, CLOSED_FORM);
    expectClose(damperLawOf(damperOf(`clicks 0 of 18\n ${settings}`)).force(0.1), 800, CLOSED_FORM);
    expectClose(damperLawOf(damperOf(`clicks 18 of 18\n ${settings}`)).force(0.1), 260, CLOSED_FORM);
  });

  it("stiffens or softens its table by so much a click", () => {
    const at = (clicks: number): number =>
      damperLawOf(damperOf(`50 mm/s: 400 N\n clicks ${clicks}\n measured-at 9\n per-click 4 %`)).force(0.05);
    expectClose(at(9), 400, CLOSED_FORM);
    expectClose(at(4), 480, CLOSED_FORM);
    expectClose(at(14), 320, CLOSED_FORM);
  });

  it("leaves its table as it is where nothing says what a click does", () => {
    expectClose(damperLawOf(damperOf("50 mm/s: 400 N\n clicks 3 of 12")).force(0.05), 400, CLOSED_FORM);
  });

  it("is clicked by a set-up, the number of clicks kept", () => {
    const car = carText({
      elements: `damper tried for heave {\n bump { clicks 6 of 18\n ${settings} }\n rebound { 50 mm/s: 400 N }\n ${telescopic}\n }`,
    });
    const text = 'use "car.crank"\nsetup stiff from tried {\n front.tried.bump.clicks by -6\n}\n';
    const [made] = contextOf(
      { "car.crank": car.replace("car tried", "car club"), "s.crank": text.replace("from tried", "from club") },
      "s.crank",
    ).cars;
    const axle = made?.model.axles.front;
    if (made === undefined || axle === undefined) throw new Error("no set-up");
    const [damper] = assembleAxle(axle, made.model).elements;
    expectClose(damperLawOf(damper as Element).force(0.05), 500, CLOSED_FORM);
  });

  it.each([
    ["clicks 6 of 18\n closed { 50 mm/s: 500 N }", "its bump needs both closed and open"],
    [settings, "its bump does not say at which click of how many it stands (`clicks 6 of 18`)"],
    [`clicks 6\n ${settings}`, "its bump does not say at which click of how many it stands (`clicks 6 of 18`)"],
    [
      "50 mm/s: 400 N\n clicks 4\n per-click 4 %",
      "its bump needs clicks and measured-at to know what per-click makes of the table",
    ],
    ["50 mm/s: 400 N\n clicks 40\n measured-at 9\n per-click 4 %", "its bump would have no force left at 40 clicks"],
    ["clicks 6 of 18\n closed { 50 mm/s: 500 N }\n open { }", "a setting of its bump has no points"],
  ])("%s: says why there is no law", (bump, why) => {
    expect(damperOf(bump).lawMissing).toBe(why);
  });
});

describe("a damper's gas", () => {
  const text = (more: string): string =>
    carText({
      elements: `${cornerSpring}
    damper calm for heave {
      damping 2 N*s/mm
      gas-force 300 N
      ${more}
      ${telescopic}
    }`,
    });

  it("takes part of the weight, and its rate is in the axle's", () => {
    const plain = analyseAxle(mechanismOf(text("")));
    const rising = analyseAxle(mechanismOf(text("gas-rate 8 N/mm")));
    const motion = elementIn(rising, "front.calm").sensitivity;
    if ("kind" in motion) throw new Error(motion.reason);
    const more = number(rising.rates.heaveRate) - number(plain.rates.heaveRate);
    expectClose(more, 8000 * motion.heave ** 2, 1e-9);
    expectClose(number(elementIn(rising, "front.calm").staticLoad), 300, CLOSED_FORM);
    const share = rising.rates.shares.find(({ path }) => path === "front.calm");
    expect(share?.heave).toBeGreaterThan(8000 * motion.heave ** 2);
  });
});

describe("an inerter", () => {
  const inerterOf = (inertance: string, connection: string): Element =>
    elementOf(`inerter tried for roll {\n inertance ${inertance}\n ${connection}\n }`);

  it("is two-point or rotary, by what it is joined to", () => {
    expect(inerterOf("60 kg", telescopic).law).toEqual({ kind: "inerter", inertance: 60 });
    expect(inerterOf("0.02 kg*m^2", twisting).law).toEqual({ kind: "inerter", inertance: 0.02 });
    expect(inerterOf("0.02 kg*m^2", telescopic).lawMissing).toBe(
      "its inertance is for twisting, but it is joined so that it is lengthened and shortened",
    );
    expect(inerterOf("60 kg", twisting).lawMissing).toMatch(/^its inertance is for lengthening and shortening/);
  });
});

describe("a T-shaped bar", () => {
  const teeOf = (more: string, link = "rocker.bar"): string =>
    carText({
      elements: `${cornerSpring}
    anti-roll-bar tee for roll {
      torsion-bar { diameter 16 mm, length 200 mm }
      ${more}
      drop-link ${link}
    }`,
    });
  const shape = "tee { foot (-300, 0, 300) mm, head (-300, 0, 475) mm, end (-300, 110, 475) mm }";

  it("works in roll and not in heave, with its stem's rate", () => {
    const analysis = analyseAxle(mechanismOf(teeOf(shape)));
    const tee = elementIn(analysis, "front.tee");
    if ("kind" in tee.sensitivity) throw new Error(tee.sensitivity.reason);
    expectClose(tee.sensitivity.heave, 0, 0, 1e-12);
    // Twist is positive as the left wheel's bump makes it, which roll takes up.
    expect(tee.sensitivity.roll).toBeLessThan(-0.1);
    expectClose(number(tee.rate), (79.3e9 * Math.PI * 0.016 ** 4) / 32 / 0.2, CLOSED_FORM);
    expect(tee.torsional).toBe(true);
  });

  it("is softened by blades of its cross arm and by springs in its links", () => {
    const stem = (79.3e9 * Math.PI * 0.016 ** 4) / 32 / 0.2;
    const bladed = mechanismOf(teeOf(`${shape}\n blade { position 5 of 5, section 6 x 20 mm, length 110 mm }`));
    const bend = 0.11 / (6 * 205e9 * ((0.006 * 0.02 ** 3) / 12));
    expectClose(springLawOf(bladed.elements[2] as Element).rate(0), 1 / (1 / stem + bend), CLOSED_FORM);
    const sprung = mechanismOf(teeOf(`${shape}\n link-spring { rate 90 N/mm, travel 3 mm }`)).elements[2];
    const arm = sprung?.connection?.tee?.linkArm ?? 0;
    const links = 2 * 90e3 * arm ** 2;
    const law = springLawOf(sprung as Element);
    expectClose(law.rate(0.001), (stem * links) / (stem + links), CLOSED_FORM);
    const used = law.marks?.find(({ at }) => at > 0)?.at ?? 0;
    expectClose(used, 0.003 / arm + (links * (0.003 / arm)) / stem, CLOSED_FORM);
    expectClose(law.rate(used + 0.001), stem, CLOSED_FORM);
  });

  it("says what is wrong with it", () => {
    const wrong = (more: string, link?: string): unknown =>
      mechanismOf(teeOf(more, link)).elements[2]?.connectionMissing;
    expect(wrong(shape.replace("head (-300, 0, 475)", "head (-300, 0, 300)"))).toBe(
      "the foot and the head of its stem fall together",
    );
    expect(wrong(shape.replace("(-300, 110, 475)", "(-300, 0, 475)"))).toBe("an end of its cross arm lies on the stem");
    expect(wrong(shape, "rocker.bar { longer -300 mm }")).toBe(
      "its drop links do not reach, or do not hold its cross arm",
    );
    expect(mechanismOf(teeOf(shape, "off")).elements[2]?.connection?.idle).toBe("its drop links are off");
  });
});

describe("drop links that are not as long as drawn", () => {
  const bar = (link: string): string =>
    carText({
      elements: `${cornerSpring}
    anti-roll-bar bar for roll {
      rate 800 N*m/rad
      lever { pivot (-138, 341, 300) mm, axis (0, 1, 0), end (-18, 341, 300) mm }
      drop-link ${link}
    }`,
    });
  const base = bar("rocker.bar { longer 0 mm, thread 1.25 mm/turn }").replace("car tried", "car club");
  const setupOf = (line: string) => {
    const [made] = contextOf(
      { "car.crank": base, "s.crank": `use "car.crank"\nsetup twisted from club {\n ${line}\n}\n` },
      "s.crank",
    ).cars;
    const axle = made?.model.axles.front;
    if (made === undefined || axle === undefined) throw new Error("no set-up");
    return assembleAxle(axle, made.model);
  };

  it("twist the bar at rest by turns on one side, and not where both are alike", () => {
    const twisted = elementIn(analyseAxle(setupOf("front.left.bar.drop-link.longer by +1 turn")), "front.bar");
    // The link stands square on a lever of 120 mm.
    expectClose(Math.abs(number(twisted.deflection)), 1.25 / 120, 1e-2);
    expectClose(number(twisted.staticLoad), 800 * number(twisted.deflection), CLOSED_FORM);
    const other = elementIn(analyseAxle(setupOf("front.right.bar.drop-link.longer by +1 turn")), "front.bar");
    expectClose(number(other.staticLoad), -number(twisted.staticLoad), IDENTITY);
    const alike = elementIn(analyseAxle(setupOf("front.bar.drop-link.longer by +1 turn")), "front.bar");
    expectClose(number(alike.staticLoad), 0, 0, 1e-9);
  });

  it("change the loads that the trim gives each side", () => {
    const { rates } = analyseAxle(setupOf("front.left.bar.drop-link.longer by +1 turn"));
    if ("kind" in rates.trim) throw new Error(rates.trim.reason);
    const [left, right] = rates.trim;
    expect(Math.abs((left?.load ?? 0) - (right?.load ?? 0))).toBeGreaterThan(100);
  });

  it("say where one is too short to reach", () => {
    const { connectionMissing } = setupOf("front.left.bar.drop-link.longer -150 mm").elements[2] as Element;
    expect(connectionMissing).toBe("its drop link does not reach on the left side as it is set");
    const axle = analyseAxle(setupOf("front.left.bar.drop-link.longer -150 mm"));
    expect(reason(axle.rates.rollStiffness)).toBe(`front.bar takes part and ${connectionMissing}`);
    expect(axle.problems).toContainEqual({ kind: "connection", path: "front.bar", reason: connectionMissing });
  });
});
