/** Set-ups that change what an element is for, and lines for one side of what is there once. */
import { describe, expect, it } from "vitest";
import { runRules } from "../../server/findings/run.js";
import { afterFix } from "../support/check-fixes.js";
import { contextOf } from "../support/context.js";
import { contextOfSetup, sharedCar } from "../support/shared-car.js";

const claimsOf = (...lines: readonly string[]) => {
  const { cars, problems } = contextOfSetup(...lines);
  const elements = cars[0]?.model.axles.front?.elements ?? [];
  return {
    claims: Object.fromEntries(elements.map((element) => [element.path, element.for])),
    kinds: problems.map(({ kind }) => kind),
    elements,
  };
};

describe("what an element is for", () => {
  it.each([
    ["by its path", "front.third for heave and roll"],
    ["in a block of its axle", "front { third for heave and roll }"],
    ["with its kind before it", "front { spring third for heave and roll }"],
  ])("is changed in a set-up %s, and the rest of it stays", (_, line) => {
    const { claims, kinds, elements } = claimsOf(line);
    expect(kinds).toEqual([]);
    expect(claims["front.third"]).toEqual(["heave", "roll"]);
    const third = elements.find(({ name }) => name === "third");
    expect(third?.connection?.kind).toBe("between");
    expect(third?.block.statements.map(({ word }) => word)).toEqual(["rate", "between"]);
  });

  it("is changed together with lines of its block", () => {
    const { claims, kinds, elements } = claimsOf("front { spring third for heave and roll { rate 60 N/mm } }");
    expect(kinds).toEqual([]);
    expect(claims["front.third"]).toEqual(["heave", "roll"]);
    const rate = elements.find(({ name }) => name === "third")?.block.statements.find(({ word }) => word === "rate");
    expect(rate?.values[0]).toMatchObject({ value: 60_000 });
  });

  it("is needless where it is the same", () => {
    expect(claimsOf("front.third for heave").kinds).toEqual(["needless-override"]);
  });

  it("still needs its block where the element is new", () => {
    expect(claimsOf("front { spring fourth for heave }").kinds).toContain("wrong-form");
  });

  it.each(["front.left.side for heave", "front { left { damper side for heave } }"])(
    "is the same on both sides: %s",
    (line) => {
      const { claims, kinds } = claimsOf(line);
      expect(kinds).toEqual(["wrong-form"]);
      expect(claims["front.left.side"]).toEqual(["corner"]);
      expect(claims["front.right.side"]).toEqual(["corner"]);
    },
  );

  it("behind a dot is told where it stands, and put there", () => {
    const context = contextOfSetup("front.third.for heave and roll");
    const [found] = runRules(context);
    expect(found?.rule).toBe("override-without-target");
    expect(found?.message).toContain("Write `front.third for <mode>`");
    const after = afterFix(context, "override-without-target");
    expect(after.text).toContain("  front.third for heave and roll\n");
    expect(after.context.cars[0]?.model.axles.front?.elements.find(({ name }) => name === "third")?.for).toEqual([
      "heave",
      "roll",
    ]);
  });
});

describe("a line for one side", () => {
  it.each([
    ["front.right.third.rate 90 N/mm", "third"],
    ["front.right.third.rate by 90 N/mm", "third"],
    ["front.left.third { rate 90 N/mm }", "third"],
    ["front { right { third { rate 90 N/mm } } }", "third"],
    ["front { right { spring third { rate 90 N/mm } } }", "third"],
    ["front.right.bar.torsion-bar.diameter 20 mm", "bar"],
    ["front.left.ride-height by 2 mm", "ride-height"],
    ["front.left.track 1400 mm", "track"],
    ["remove front.right.third", "third"],
  ])("of what is there once is told, and changes nothing: %s", (line, thing) => {
    const { cars, problems } = contextOfSetup(line);
    expect(problems).toMatchObject([{ kind: "no-sides", thing }]);
    const [car] = cars;
    expect(car?.model.axles.front?.elements).toEqual(contextOfSetup().cars[0]?.model.axles.front?.elements);
  });

  it.each([
    ["front.right.third.rate 90 N/mm", "  front.third.rate 90 N/mm\n"],
    ["front { right.third.rate 90 N/mm }", "  front { third.rate 90 N/mm }\n"],
    ["front.left.ride-height by 2 mm", "  front.ride-height by 2 mm\n"],
  ])("is mended by leaving the side out: %s", (line, mended) => {
    const context = contextOfSetup(line);
    expect(runRules(context)[0]?.message).toMatch(
      /is there once, for both sides of the axle\. Leave "(left|right)" out/,
    );
    const after = afterFix(context, "override-without-target");
    expect(after.text).toContain(mended);
    expect(after.context.problems).toEqual([]);
  });

  it("of something unknown is told as that", () => {
    const { problems } = contextOfSetup("front.right.thrid.rate 90 N/mm");
    expect(problems).toMatchObject([{ kind: "override-without-target", failing: "thrid" }]);
    expect(contextOfSetup("front.right.trak 90 mm").problems).toMatchObject([
      { kind: "override-without-target", failing: "trak" },
    ]);
  });

  it("may bring an element for corner, and no other", () => {
    const damper = (claim: string, name: string) =>
      `front { right { damper ${name} for ${claim} { fit V-14, between rocker.side and chassis (-45, -45, 466) mm } } }`;
    expect(claimsOf(damper("corner", "extra")).claims["front.right.extra"]).toEqual(["corner"]);
    const { claims, kinds } = claimsOf(damper("roll", "extra"));
    expect(kinds).toEqual(["wrong-form"]);
    expect(Object.keys(claims).some((path) => path.endsWith("extra"))).toBe(false);
  });
});

describe("what stands beside what it cannot stand beside", () => {
  const wren = (from: string, to: string) => {
    const text = (sharedCar["shared.crank"] ?? "").replace(from, to);
    return contextOf({ ...sharedCar, "shared.crank": text }, "shared.crank");
  };
  const rod = /      push-rod .*\n/.exec(sharedCar["shared.crank"] ?? "")?.[0] ?? "";

  it("is told for two rods on one rocker", () => {
    const { problems } = wren(rod, rod + rod.replace("push-rod", "pull-rod"));
    expect(problems).toMatchObject([{ kind: "rivals", word: "pull-rod", other: "push-rod" }]);
  });

  it("is told for a rocker that no rod works, and mended", () => {
    const context = wren(rod, "");
    expect(context.problems).toMatchObject([{ kind: "missing-property", word: "push-rod", owner: "linkage" }]);
    const after = afterFix(context, "missing-property");
    expect(after.text).toMatch(/push-rod on lower-wishbone \{/);
    expect(after.context.problems).toEqual([]);
  });

  it.each([
    ["between", "rate 55 N/mm\n"],
    ["twists rocker against chassis", "twists rocker against chassis\n"],
  ])("is told for a tie of an element that is joined by %s", (_, line) => {
    const { problems } = wren(line, `${line}      tie { arm (10, 195, 520) mm }\n`);
    expect(problems).toMatchObject([{ kind: "wrong-form", word: "tie" }]);
  });

  it("is told for two ways to be joined", () => {
    const found = runRules(contextOfSetup("front.third.ratio 1"));
    expect(found[0]?.message).toMatch(/^"ratio" stands beside "between", and only one of the two can hold/);
  });

  it("is told for a side in an element that has one on each", () => {
    const { problems } = wren("between rocker.side and chassis", "between right.rocker.side and chassis");
    expect(problems).toMatchObject([{ kind: "wrong-form", word: "between", expected: ["rocker.side"] }]);
    const twisted = wren("twists rocker against chassis", "twists left.rocker against chassis");
    expect(twisted.problems).toMatchObject([{ kind: "wrong-form", word: "twists", expected: ["rocker"] }]);
  });
});

describe("a line that cannot do what it says", () => {
  it.each([
    ["remove front", "A whole axle or side is not taken out."],
    ["remove front.left", "A whole axle or side is not taken out."],
    ["remove front.track", '"front.track" cannot be done without'],
    ["remove front.rocker.third", '"front.rocker.third" is part of the car as it is drawn'],
    ["remove front.toe", 'there is no "toe"'],
    ["drive by 3", 'there is no "drive" in what this derives from'],
    ["front.third by 3 mm", "Only a number or a point can be adjusted"],
    ["front.push-rod by", "Write `push-rod by CHANGE mm`"],
    ["front.third.rate by 10 %", "This is a share in %, but a rate (force per length) is due"],
    ["front.third.rate (1, 2)", "Write `rate VALUE N/mm`"],
    ["front.travel 3 mm", "Write `travel FROM .. TO mm`"],
  ])("is told in words that are true: %s", (line, words) => {
    const messages = runRules(contextOfSetup(line)).map(({ message }) => message);
    expect(messages).toHaveLength(1);
    expect(messages[0]).toContain(words);
  });
});
