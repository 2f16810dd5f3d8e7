/** What a set-up does to the car that it derives from: values, sums, parts, sides, and where each came from. */
import { describe, expect, it } from "vitest";
import type { CarModel, ElementModel } from "../../server/model/car.js";
import { contextOf } from "../support/context.js";
import { brokenSamples } from "../support/shared-car.js";
import { elementAt, Folder, numberAt, statementIn } from "./resolved.js";

const resolved = (...lines: readonly string[]) => {
  const text = `use "shared.crank"\n\nsetup trial from wren {\n${lines.map((line) => `  ${line}\n`).join("")}}\n`;
  return contextOf({ ...brokenSamples, "trial.crank": text }, "trial.crank");
};
const trial = (...lines: readonly string[]): CarModel => resolved(...lines).cars[0]?.model as CarModel;
const element = (car: CarModel, path: string): ElementModel | undefined =>
  car.axles.front?.elements.find((one) => one.path === path);
const numbersOf = (model: ElementModel | undefined, word: string): readonly number[] =>
  model?.block.statements
    .find((statement) => statement.word === word)
    ?.values.flatMap((value) => (value.kind === "number" ? [value.value] : [])) ?? [];

describe("an override", () => {
  it("replaces a value, keeps the author's unit and says what it replaced", () => {
    const track = trial("front.track 58 in").axles.front?.track;
    expect(track?.value).toBeCloseTo(1.4732, 12);
    expect(track?.unit).toBe("in");
    expect(track?.chain).toHaveLength(1);
    expect(track?.chain[0]?.uri).toMatch(/shared\.crank$/);
  });

  it("adds with `by`, in either unit", () => {
    expect(trial("front.ride-height by +2 mm").axles.front?.rideHeight?.value).toBeCloseTo(0.034, 12);
    expect(trial("front.ride-height by -0.1 in").axles.front?.rideHeight?.value).toBeCloseTo(0.032 - 0.00254, 12);
  });

  it("means both sides without a side, and one side with it", () => {
    const both = trial("front.side.fit V-22");
    expect(["left", "right"].map((side) => element(both, `front.${side}.side`)?.part?.name)).toEqual(["V-22", "V-22"]);
    const one = trial("front.left.side.fit V-22");
    expect(["left", "right"].map((side) => element(one, `front.${side}.side`)?.part?.name)).toEqual(["V-22", "V-14"]);
  });

  it("takes an element out, and only that", () => {
    const paths = trial("remove front.roll-damper").axles.front?.elements.map(({ path }) => path) ?? [];
    expect(paths).not.toContain("front.roll-damper");
    expect(paths).toContain("front.third");
  });

  it("of an expectation replaces that of the same figure at the same case, wherever it stands, and adds a new one", () => {
    const text = `use "shared.crank"

setup first from wren {
  case bend { speed 60 km/h, lateral 1 g }
  expect front.heave-frequency between 1 and 6 Hz
  expect front.heave-rate between 100 and 200 N/mm
  expect front.ride-height at bend above 10 mm
  expect front.ride-height above 12 mm
}

setup trial from first {
  expect front.heave-rate between 90 and 150 N/mm
  expect front.ride-height above 11 mm
  expect front.roll-stiffness above 10 N*m/deg
}
`;
    const { cars, problems } = contextOf({ ...brokenSamples, "trial.crank": text }, "trial.crank");
    const told = cars.at(-1)?.model.expectations.map(({ figure, at, wants }) => {
      const [first] = "from" in wants ? [wants.from] : "limit" in wants ? [wants.limit] : [];
      return `${figure}${at === undefined ? "" : ` at ${at}`} ${first?.value}`;
    });
    expect(problems).toEqual([]);
    expect(told).toEqual([
      "front.heave-frequency 1",
      "front.heave-rate 90000",
      "front.ride-height at bend 0.01",
      "front.ride-height 0.011",
      "front.roll-stiffness 572.9577951308232",
    ]);
  });

  it("of a ratio replaces that of the same mode", () => {
    const text = `car plain {
  wheelbase 2500 mm
  mass 500 kg
  mass-front 50 %
  cg-height 300 mm
  axle front {
    track 1400 mm
    wheel { centre (0, 700, 300) mm, unsprung-mass 15 kg }
    linkage ratio
    spring third for heave { rate 50 N/mm, ratio roll 0, ratio heave 1.2 }
  }
}

setup trial from plain {
  front.third.ratio heave 1.3
}
`;
    const { cars } = contextOf({ "trial.crank": text }, "trial.crank");
    const third = cars.at(-1)?.model.axles.front?.elements.find(({ path }) => path === "front.third");
    const ratios = third?.block.statements.filter(({ word }) => word === "ratio");
    expect(
      ratios?.map(({ values }) =>
        values.map((value) => ("text" in value ? value.text : value.kind === "number" ? value.value : "")),
      ),
    ).toEqual([
      ["roll", 0],
      ["heave", 1.3],
    ]);
  });

  it.each([
    [
      "damper",
      "damping 2 N*s/mm",
      "valving P { bump { 50 mm/s: 400 N }, rebound { 50 mm/s: 300 N } }",
      ["bump", "rebound"],
    ],
    ["damper", "bump { 50 mm/s: 400 N }, rebound { 50 mm/s: 300 N }", "valving P { damping 2 N*s/mm }", ["damping"]],
    [
      "bump-stop",
      "rate 200 N/mm",
      "bump-stop P { power-law { force 900 N, deflection 9 mm, exponent 2 } }",
      ["power-law"],
    ],
    ["spring", "rate 60 N/mm", "coil P { wire 9 mm, mean-diameter 50 mm, active-turns 7 }", ["coil"]],
    ["spring", "coil { rate 60 N/mm }", "torsion-bar P { diameter 11 mm, length 300 mm }", ["torsion-bar"]],
    ["spring", "squat { rate 60 N/mm }, rise { rate 50 N/mm }", "coil P { rate 70 N/mm }", ["coil"]],
    [
      "gas-spring",
      "pressure 12 bar, volume 60 ml, area-curve { 0 mm: 400 mm^2, 9 mm: 300 mm^2 }",
      "gas-spring P { pressure 15 bar, volume 70 ml, area 400 mm^2 }",
      ["area", "pressure", "volume"],
    ],
    [
      "gas-spring",
      "pressure 12 bar, volume 60 ml, area 400 mm^2",
      "gas-spring P { curve { 0 mm: 900 N, 9 mm: 1100 N } }",
      ["curve"],
    ],
  ] as const)("that fits a part takes out what the %s said in another way: %s", (kind, law, part, words) => {
    const text = `catalogue {
  ${part}
}

car plain {
  wheelbase 2500 mm
  mass 500 kg
  mass-front 50 %
  cg-height 300 mm
  axle front {
    track 1400 mm
    wheel { centre (0, 700, 300) mm, unsprung-mass 15 kg }
    linkage ratio
    ${kind} held for heave { ${law}, ratio heave 1.2 }
  }
}

setup trial from plain {
  front.held.fit P
}
`;
    const { cars } = contextOf({ "trial.crank": text }, "trial.crank");
    const held = cars.at(-1)?.model.axles.front?.elements.find(({ path }) => path === "front.held");
    const left = held?.block.statements.map(({ word }) => word).filter((word) => word !== "ratio" && word !== "fit");
    expect(left?.sort()).toEqual(words);
  });

  it("that fits blades or link springs to a bar leaves the tube that was fitted before", () => {
    const text = `catalogue {
  torsion-bar T-1 { diameter 16 mm, bore 10 mm, length 400 mm }
  torsion-bar T-2 { diameter 18 mm, bore 12 mm, length 400 mm }
  blade B-1 { section 8 x 20 mm, length 70 mm }
  link-spring L-1 { rate 150 N/mm, travel 3 mm }
}

car plain {
  wheelbase 2500 mm
  mass 500 kg
  mass-front 50 %
  cg-height 300 mm
  axle front {
    track 1400 mm
    wheel { centre (0, 700, 300) mm, unsprung-mass 15 kg }
    linkage ratio
    anti-roll-bar bar for roll { fit T-1, ratio roll 0.5 deg/mm }
  }
}

setup bladed from plain {
  front.bar.fit B-1
}

setup sprung from bladed {
  front.bar.fit L-1
}

setup stiffer from sprung {
  front.bar.fit T-2
}
`;
    const { cars } = contextOf({ "trial.crank": text }, "trial.crank");
    const block = cars.at(-1)?.model.axles.front?.elements.find(({ path }) => path === "front.bar")?.block;
    const words = block?.statements.map(({ word }) => word).filter((word) => word !== "ratio" && word !== "fit");
    expect(words?.sort()).toEqual(["blade", "link-spring", "torsion-bar"]);
    const tube = block?.statements.find(({ word }) => word === "torsion-bar")?.block?.statements;
    expect(tube?.find(({ word }) => word === "diameter")?.values).toMatchObject([{ value: 0.018 }]);
  });

  it("mirrors a point on the other side", () => {
    const car = trial("front.rocker.third (0, 193, 456) mm");
    const eyes = (side: "left" | "right") => {
      const corner = car.axles.front?.corner[side];
      return corner?.kind === "hardpoints" ? corner.rocker?.eyes.get("third")?.value : undefined;
    };
    expect(eyes("left")?.[1]).toBeCloseTo(0.193, 12);
    expect(eyes("right")?.[1]).toBeCloseTo(-0.193, 12);
  });

  it("in a shorter form keeps what it does not speak of: `position 4` of `3 of 5`", () => {
    const blade = (car: CarModel) =>
      element(car, "front.bar")?.block.statements.find(({ word }) => word === "blade")?.block?.statements;
    const withBlade = (brokenSamples["shared.crank"] as string).replace(
      "      drop-link rocker.bar\n",
      "      drop-link rocker.bar\n      blade { position 3 of 5, section 6 x 18 mm, length 70 mm }\n",
    );
    const text = 'use "shared.crank"\n\nsetup trial from wren {\n  front.bar.blade.position 4\n}\n';
    const context = contextOf({ ...brokenSamples, "shared.crank": withBlade, "trial.crank": text }, "trial.crank");
    const position = blade(context.cars[0]?.model as CarModel)?.find(({ word }) => word === "position");
    expect(position?.values.flatMap((value) => (value.kind === "number" ? [value.value] : []))).toEqual([4, 5]);
    expect(context.problems).toEqual([]);
  });

  it("goes through a chain of set-ups, and the nearest wins", () => {
    const text =
      'use "shared.crank"\n\nsetup a from wren {\n  front.third.rate 50 N/mm\n  mass 545 kg\n}\n\nsetup b from a {\n  front.third.rate 45 N/mm\n}\n';
    const context = contextOf({ ...brokenSamples, "trial.crank": text }, "trial.crank");
    const b = context.cars.find(({ model }) => model.setup === "b")?.model as CarModel;
    expect(numbersOf(element(b, "front.third"), "rate")).toEqual([45_000]);
    expect(b.mass?.value).toBe(545);
    expect(b.bases).toEqual(["a", "wren"]);
  });

  it("replaces a case of the same name and keeps the others", () => {
    const car = (brokenSamples["shared.crank"] as string).replace(
      /\}\n$/,
      "\n  case hairpin { speed 70 km/h, lateral 1.5 g }\n  case top-speed { speed 200 km/h }\n}\n",
    );
    const text = 'use "shared.crank"\n\nsetup trial from wren {\n  case hairpin { speed 60 km/h, lateral 1 g }\n}\n';
    const { cars } = contextOf({ ...brokenSamples, "shared.crank": car, "trial.crank": text }, "trial.crank");
    expect(cars[0]?.model.cases.map(({ name }) => name).sort()).toEqual(["hairpin", "top-speed"]);
    const hairpin = cars[0]?.model.cases.find(({ name }) => name === "hairpin");
    expect(hairpin?.lateral?.value).toBeCloseTo(9.80665, 12);
  });

  it("of a circle of set-ups is told, and nothing hangs", () => {
    const text = "setup a from b {\n}\n\nsetup b from a {\n}\n";
    const { problems } = contextOf({ "trial.crank": text }, "trial.crank");
    expect(problems.filter(({ kind }) => kind === "cycle").length).toBeGreaterThan(0);
  });
});

describe("a value", () => {
  it("is the same in either unit", () => {
    expect(trial("front.track 25.4 mm").axles.front?.track?.value).toBe(
      trial("front.track 1 in").axles.front?.track?.value,
    );
  });

  it("can be calculated with names, checked for dimension", () => {
    const context = resolved("let step = 5 N/mm", "front.third.rate 40 N/mm + 2 * step");
    expect(numbersOf(element(context.cars[0]?.model as CarModel, "front.third"), "rate")).toEqual([50_000]);
    expect(context.problems).toEqual([]);
    const wrong = resolved("let step = 5 mm", "front.third.rate 40 N/mm + step");
    expect(wrong.problems.map(({ kind }) => kind)).toContain("dimension");
  });

  it("in brackets is covered by the unit behind them, sums too", () => {
    const eye = (text: string) => {
      const corner = trial(`front.rocker.third ${text}`).axles.front?.corner.left;
      return corner?.kind === "hardpoints" ? corner.rocker?.eyes.get("third")?.value : undefined;
    };
    expect(eye("(0, 180 + 13, 456) mm")?.[1]).toBeCloseTo(0.193, 12);
  });
});

/** A car of motion ratios alone: nothing in it but what the overrides below speak of. */
const linnet = `
car linnet "Linnet, the hill-climb club's loan car" {
  wheelbase 2450 mm
  mass 480 kg
  axle front {
    track 1400 mm
    ride-height 30 mm { step 1 mm }
    spring main for corner { rate 40 N/mm, ratio 0.8 }
    damper side for corner { damping 3 N*s/mm, ratio 0.8 }
    damper roll-damper for roll { fit V-5, ratio 0.7 }
    anti-roll-bar bar for roll {
      torsion-bar { diameter 18 mm, bore 12 mm, length 380 mm }
      blade { position 3 of 5, soft 0 deg, stiff 90 deg, section 6 x 18 mm, length 70 mm }
      ratio 0.5 deg/mm
    }
  }
  case hairpin { speed 70 km/h, lateral 1.5 g }
}
catalogue {
  valving V-5 { damping 5 N*s/mm }
  valving V-9 { damping 9 N*s/mm }
}
`;

/** Resolves set-ups that stand in a file of their own, beside the car's. */
const setups = (text: string) =>
  new Folder({ "linnet.crank": linnet, "day.crank": `use "linnet.crank"\n${text}` }).resolve("day.crank");
const wet = (lines: string) => {
  const { cars, problems } = setups(`setup wet from linnet {\n${lines}\n}`);
  const [car] = cars;
  if (car === undefined) throw new Error("the set-up is not there");
  return { car, kinds: problems.map(({ kind }) => kind) };
};
const bladePosition = (car: CarModel) =>
  statementIn(elementAt(car, "front.bar").block, "blade", "position")?.values.map((value) =>
    value.kind === "number" ? value.value : value,
  );
const dampingOf = (car: CarModel, path: string) => numberAt(elementAt(car, path).block, "damping");

describe("a set-up, through the resolver", () => {
  it("leads from each value back to the words it replaced, nearest last", () => {
    const text = `
setup damp from linnet {
  front.ride-height 32 mm
}
setup wet from damp {
  front.ride-height by +0.1 in
}`;
    const { cars, problems } = setups(text);
    expect(problems).toEqual([]);
    const height = cars.find(({ setup }) => setup === "wet")?.axles.front?.rideHeight;
    expect(height?.value).toBeCloseTo(0.03454, 12);
    expect(height?.unit).toBe("mm");
    const day = `use "linnet.crank"\n${text}`;
    const words = height?.chain.map(({ uri, start, end }) =>
      (uri.endsWith("linnet.crank") ? linnet : day).slice(start, end),
    );
    expect(words).toEqual(["30 mm", "32 mm"]);
  });

  it("leaves the car that it derives from as it was", () => {
    const { car } = wet("front.track 1410 mm\nremove front.roll-damper\nfront.left.side.damping 4 N*s/mm");
    expect(car.baseModel?.axles.front?.track).toMatchObject({ value: 1.4, unit: "mm", chain: [] });
    expect(dampingOf(car.baseModel as CarModel, "front.left.side")).toBe(3000);
    expect(elementAt(car.baseModel as CarModel, "front.roll-damper").name).toBe("roll-damper");
  });

  it("sets the damping of one side, and of both without a side", () => {
    const sides = (lines: string) => {
      const { car, kinds } = wet(lines);
      expect(kinds).toEqual([]);
      return ["front.left.side", "front.right.side"].map((path) => dampingOf(car, path));
    };
    expect(sides("front.left.side.damping 4 N*s/mm")).toEqual([4000, 3000]);
    expect(sides("front.right.side.damping 4 N*s/mm")).toEqual([3000, 4000]);
    expect(sides("front.side.damping 4 N*s/mm")).toEqual([4000, 4000]);
    expect(sides("front.side.damping 4 N*s/mm\nfront.left.side.damping by +1 N*s/mm")).toEqual([5000, 4000]);
  });

  it("swaps the part, with the figures that came with it", () => {
    const { car, kinds } = wet("front.roll-damper.fit V-9");
    expect(kinds).toEqual([]);
    expect(dampingOf(car, "front.roll-damper")).toBe(9000);
    const part = elementAt(car, "front.roll-damper").part;
    expect(part?.name).toBe("V-9");
    expect(part?.origin.uri).toMatch(/day\.crank$/);
    expect(numberAt(elementAt(car, "front.roll-damper").block, "ratio")).toBe(0.7);
    expect(wet("front.roll-damper.fit V-10").kinds).toEqual(["unknown-name"]);
  });

  it("keeps the `of 5` that a blade's new position does not speak of", () => {
    expect(bladePosition(wet("front.bar.blade.position 4").car)).toEqual([4, 5]);
    expect(bladePosition(wet("front.bar.blade.position by 1").car)).toEqual([4, 5]);
    expect(bladePosition(wet("front.bar.blade.position 4 of 6").car)).toEqual([4, 6]);
    const { car, kinds } = wet("front.bar.blade.position 4");
    expect(kinds).toEqual([]);
    expect(numberAt(elementAt(car, "front.bar").block, "blade", "length")).toBeCloseTo(0.07, 12);
  });

  it("keeps the `of 5` through a chain of set-ups", () => {
    const { cars } = setups(`
setup damp from linnet {
  front.bar.blade.position 4
}
setup wet from damp {
  front.bar.blade.position 2
}`);
    expect(cars.map((car) => [car.setup, bladePosition(car)])).toEqual([
      ["damp", [4, 5]],
      ["wet", [2, 5]],
    ]);
  });

  it("takes out what is there, on both sides, and tells what is not", () => {
    const paths = (lines: string) => wet(lines).car.axles.front?.elements.map(({ path }) => path);
    expect(paths("remove front.side")).toEqual([
      "front.left.main",
      "front.right.main",
      "front.roll-damper",
      "front.bar",
    ]);
    expect(wet("remove front.third").kinds).toEqual(["override-without-target"]);
    expect(wet("remove front.side\nfront.side.damping 4 N*s/mm").kinds).toContain("override-without-target");
  });

  it("replaces a case of the same name whole", () => {
    const { car } = wet("case hairpin { speed 60 km/h }");
    expect(car.cases.map(({ name, lateral }) => [name, lateral?.value])).toEqual([["hairpin", undefined]]);
    expect(car.cases[0]?.speed?.value).toBeCloseTo(60 / 3.6, 12);
  });

  it("tells a circle in every file that is part of it, and of a set-up from itself", () => {
    const folder = new Folder({
      "a.crank": 'use "b.crank"\nsetup a from b {\n}\n',
      "b.crank": 'use "a.crank"\nsetup b from a {\n}\n',
      "self.crank": "setup own from own {\n}\n",
    });
    for (const name of ["a.crank", "b.crank"]) {
      const told = folder.resolve(name).problems.filter(({ kind }) => kind === "cycle");
      expect(told.map((problem) => problem.kind === "cycle" && problem.what)).toContain("from");
      expect(told.every(({ uri }) => uri.endsWith(name))).toBe(true);
    }
    const { cars, problems } = folder.resolve("self.crank");
    expect(cars).toEqual([]);
    expect(problems.map(({ kind }) => kind)).toEqual(["cycle"]);
  });
});
