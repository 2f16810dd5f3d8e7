/** Every law as it is assembled from words, on random parameters: what all laws keep, reversed and mirrored too. */
import { readdirSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { DamperLaw, Element, Law, SpringLaw } from "../../server/elements/element.js";
import { expectClose } from "../support/approx.js";
import { between, expectDamps, expectLawful, expectReversed, type Promised } from "../support/lawful.js";
import { IDENTITY } from "../support/tolerances.js";
import { carText, cornerSpring, mechanismOf } from "../support/written-car.js";

const TELESCOPIC = "between left.rocker.third and right.rocker.third";
const TWISTING = "twists left.rocker against right.rocker";
const RUNS = { numRuns: 12 };

type Span = readonly [number, number];
const LENGTH: Span = [-0.025, 0.025];
const ANGLE: Span = [-0.3, 0.3];
const OIL: Span = [-8e-6, 8e-6];

/** A figure as a person writes it. */
const figure = (min: number, max: number, digits = 2): fc.Arbitrary<string> =>
  between(min, max).map((value) => value.toFixed(digits));

/** `rows` of rising abscissae with forces that rise with them, as text. */
const rows = (unit: string, step: number, force: string, rise: number, from = 0): fc.Arbitrary<string> =>
  fc.array(fc.tuple(between(step / 4, step), between(rise / 10, rise)), { minLength: 2, maxLength: 5 }).map((steps) => {
    let [x, y] = [from, 0];
    return steps
      .map(([dx, dy]) => {
        x += dx;
        y += dy;
        return `${x.toFixed(3)} ${unit}: ${y.toFixed(3)} ${force}`;
      })
      .join(", ");
  });

/** Measured curves by the names that the words give them. */
const files: Record<string, string> = {};

function measured(points: string, header: string): string {
  const name = `${Object.keys(files).length}.csv`;
  const lines = points.split(", ").map((row) => row.replace(/ [a-z/]+: /, ", ").replace(/ N$/, ""));
  files[name] = [header, ...lines, ""].join("\n");
  return `curve from csv "${name}"`;
}

const some = <T>(made: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(made, { nil: undefined });

function elementsOf(text: string): readonly Element[] {
  return mechanismOf(carText({ elements: `${cornerSpring}\n${text}` }), files).elements.filter(
    ({ name }) => name === "tried",
  );
}

function lawsOf(kind: string, words: string, connection: string): readonly Law[] {
  const found = elementsOf(
    `${kind} tried for ${kind === "anti-roll-bar" ? "roll" : "heave"} {\n${words}\n${connection}\n}`,
  );
  if (found.length === 0) throw new Error(`nothing is made of ${words}`);
  return found.map(({ law, lawMissing, connectionMissing }) => {
    if (law === undefined) throw new Error(`${words}: ${lawMissing ?? connectionMissing}`);
    return law;
  });
}

function springOf(kind: string, words: string, connection = TELESCOPIC): SpringLaw {
  const [law] = lawsOf(kind, words, connection);
  if (law?.kind !== "spring") throw new Error(`${words} is no spring`);
  return law;
}

function damperOf(words: string, connection = TELESCOPIC): DamperLaw {
  const [law] = lawsOf("damper", words, connection);
  if (law?.kind !== "damper") throw new Error(`${words} is no damper`);
  return law;
}

/** Words with the same law the other way round, where there are any. */
interface Words {
  readonly words: string;
  readonly reversed?: string | undefined;
}

/** One way of writing a law: random words, and what has to hold of what becomes of them. */
type Written = () => void;

const check = <T>(values: fc.Arbitrary<T>, promise: (value: T) => void): void =>
  fc.assert(fc.property(values, promise), RUNS);

function spring(kind: string, words: fc.Arbitrary<Words>, span: Span = LENGTH, promised: Promised = {}): Written {
  return () =>
    check(words, (written) => {
      const connection = span === ANGLE ? TWISTING : TELESCOPIC;
      const law = springOf(kind, written.words, connection);
      expectLawful(law, span, promised);
      if (written.reversed !== undefined) expectReversed(law, springOf(kind, written.reversed, connection), span);
    });
}

function damper(words: fc.Arbitrary<Words>, connection = TELESCOPIC): Written {
  return () =>
    check(words, (written) => {
      const law = damperOf(written.words, connection);
      expectDamps(law, connection === TWISTING ? 20 : 1);
      if (written.reversed === undefined) return;
      const other = damperOf(written.reversed, connection);
      for (const v of [-0.4, -0.06, 0.02, 0.3]) expectClose(law.force(v), -other.force(-v), IDENTITY, 1e-9);
    });
}

/** What gives a spring its force, in compression or as it is reversed. */
const straight = fc.oneof(
  figure(10, 400).map((rate) => `rate ${rate} N/mm`),
  fc.tuple(figure(6, 14), figure(4, 9), figure(3, 10)).map(([wire, index, turns]) => {
    const mean = (Number(wire) * Number(index)).toFixed(2);
    return `coil { wire ${wire} mm, mean-diameter ${mean} mm, active-turns ${turns} }`;
  }),
  figure(20, 300).map((rate) => `coil { rate ${rate} N/mm }`),
);

/** Gap, preload, or neither, acting one way: pushed and pulled. */
const fitting = fc.oneof(
  fc.constant(""),
  figure(0.5, 8).map((gap) => `gap ${gap} mm`),
  figure(1, 600).map((preload) => `preload ${preload} N`),
);

const oneWay: fc.Arbitrary<Words> = fc.tuple(straight, fitting).map(([base, sits]) => ({
  words: `${base}\n${sits}\nacts in-compression`,
  reversed: `${base}\n${sits}\nacts in-tension`,
}));

const bothWays: fc.Arbitrary<Words> = fc
  .tuple(straight, some(figure(0.5, 8)), some(fc.tuple(figure(10, 200), figure(1, 8))))
  .map(([base, gap, tender]) => {
    const words = [
      base,
      gap === undefined ? "" : `gap ${gap} mm`,
      tender === undefined ? "" : `tender { rate ${tender[0]} N/mm, travel ${tender[1]} mm }`,
      "acts both-ways",
    ].join("\n");
    return { words, reversed: words };
  });

const stacked: fc.Arbitrary<Words> = fc
  .tuple(
    fc.oneof(
      straight,
      rows("mm", 6, "N", 900).map((table) => `curve { ${table} }`),
    ),
    figure(10, 200),
    figure(1, 8),
    fitting,
  )
  .map(([base, rate, travel, sits]) => ({
    words: `${base}\n${sits}\ntender { rate ${rate} N/mm, travel ${travel} mm }\nacts in-compression`,
  }));

const table: fc.Arbitrary<Words> = fc
  .tuple(fc.oneof(rows("mm", 6, "N", 900), rows("mm", 6, "N", 900, -10)), fitting)
  .map(([points, sits]) => ({ words: `curve { ${points} }\n${sits}` }));

/** Bar in each rocker, tied by a link. */
const bar: fc.Arbitrary<Words> = fc
  .tuple(figure(10, 25), figure(0, 0.9), figure(150, 500), some(figure(1, 12)))
  .map(([diameter, hollow, length, gap]) => {
    const bore = (Number(diameter) * Number(hollow)).toFixed(2);
    const play = gap === undefined ? "" : `gap ${gap} deg\nacts both-ways`;
    const words = `torsion-bar { diameter ${diameter} mm, bore ${bore} mm, length ${length} mm }\n${play}`;
    return { words, reversed: words };
  });

const way = fc.oneof(
  figure(10, 200).map((rate) => `rate ${rate} N/mm`),
  rows("mm", 6, "N", 900),
  rows("mm", 6, "N", 900).map((points) => measured(points, "deflection [mm], force [N]")),
  fc.tuple(figure(10, 90), figure(1, 9), figure(1, 4)).map(([soft, knee, times]) => {
    const hard = (Number(soft) * Number(times)).toFixed(2);
    return `soft ${soft} N/mm, knee ${knee} mm, hard ${hard} N/mm`;
  }),
);

const squatAndRise: fc.Arbitrary<Words> = fc.tuple(way, way, some(figure(0.5, 5))).map(([squat, rise, gap]) => {
  const play = gap === undefined ? "" : `gap ${gap} mm`;
  return {
    words: `squat { ${squat} }\nrise { ${rise} }\n${play}`,
    reversed: `squat { ${rise} }\nrise { ${squat} }\n${play}`,
  };
});

const foam = fc.oneof(
  fc
    .tuple(figure(100, 4000), figure(5, 25), figure(1, 4))
    .map(
      ([force, deflection, exponent]) =>
        `power-law { force ${force} N, deflection ${deflection} mm, exponent ${exponent} }`,
    ),
  rows("mm", 6, "N", 900).map((points) => `curve { ${points} }`),
  figure(50, 900).map((rate) => `rate ${rate} N/mm`),
);

const stop: fc.Arbitrary<Words> = fc.tuple(foam, figure(0, 15), some(figure(0, 15))).map(([base, gap, packer]) => ({
  words: `${base}\ngap ${gap} mm\n${packer === undefined ? "" : `packer ${packer} mm`}`,
}));

const gas = fc
  .tuple(figure(6, 30), figure(30, 200), figure(1, 2), figure(-10, 40), figure(-10, 120))
  .map(
    ([pressure, volume, exponent, charged, working]) =>
      `pressure ${pressure} bar, volume ${volume} ml, exponent ${exponent}, charge-temperature ${charged} degC, working-temperature ${working} degC`,
  );
const stiff: fc.Arbitrary<Words> = fc.tuple(gas, figure(200, 900), some(figure(0, 8))).map(([charge, area, gap]) => ({
  words: `${charge}\narea ${area} mm^2\n${gap === undefined ? "" : `gap ${gap} mm`}`,
}));
const collapsing: fc.Arbitrary<Words> = fc
  .tuple(gas, figure(500, 900), figure(0.3, 0.9), figure(5, 15))
  .map(([charge, area, falls, step]) => {
    const at = (share: number): string => `${(Number(area) * share).toFixed(2)} mm^2`;
    const share = Number(falls);
    return {
      words: `${charge}\narea-curve { 0 mm: ${at(1)}, ${step} mm: ${at(share)}, ${2 * Number(step)} mm: ${at(share * share)} }`,
    };
  });

/** A damper's side, whose bump and rebound may change places. */
const side = fc.oneof(
  rows("mm/s", 80, "N", 500),
  rows("mm/s", 80, "N", 500).map((points) => measured(points, "speed [mm/s], force [N]")),
  fc
    .tuple(figure(2, 10), figure(20, 200), figure(0.2, 2))
    .map(([slow, knee, fast]) => `slow ${slow} N*s/mm, knee ${knee} mm/s, fast ${fast} N*s/mm`),
  fc
    .tuple(fc.integer({ min: 0, max: 18 }), rows("mm/s", 80, "N", 900), rows("mm/s", 80, "N", 400))
    .map(([click, closed, open]) => `clicks ${click} of 18\nclosed { ${closed} }\nopen { ${open} }`),
  fc
    .tuple(fc.integer({ min: 0, max: 18 }), rows("mm/s", 80, "N", 900), figure(0.5, 5))
    .map(([click, points, step]) => `${points}\nclicks ${click} of 18\nmeasured-at 9\nper-click ${step} %`),
);

const turnedDamper: fc.Arbitrary<Words> = fc.tuple(side, side).map(([bump, rebound]) => ({
  words: `bump { ${bump} }\nrebound { ${rebound} }`,
  reversed: `bump { ${rebound} }\nrebound { ${bump} }`,
}));

const plainDamper: fc.Arbitrary<Words> = figure(0.5, 12).map((damping) => ({
  words: `damping ${damping} N*s/mm`,
  reversed: `damping ${damping} N*s/mm`,
}));

const withGas: fc.Arbitrary<Words> = fc
  .tuple(figure(0, 400), figure(0, 4), figure(0.5, 12))
  .map(([force, rate, damping]) => ({
    words: `damping ${damping} N*s/mm\ngas-force ${force} N\ngas-rate ${rate} N/mm`,
  }));

const wholeCurve: fc.Arbitrary<Words> = fc
  .tuple(rows("mm/s", 80, "N", 500), rows("mm/s", 80, "N", 500))
  .map(([bump, rebound]) => {
    const negated = rebound.split(", ").map((row) => row.replace(/^/, "-").replace(": ", ": -"));
    return { words: measured([...negated.reverse(), "0 mm/s: 0 N", bump].join(", "), "speed [mm/s], force [N]") };
  });

const blades = fc
  .tuple(fc.integer({ min: 1, max: 5 }), figure(4, 9), figure(12, 25))
  .map(
    ([position, thin, high]) =>
      `blade { position ${position} of 5, soft 0 deg, stiff 90 deg, section ${thin} x ${high} mm, length 60 mm }`,
  );
const links = fc
  .tuple(figure(40, 300), figure(0.5, 4))
  .map(([rate, travel]) => `link-spring { rate ${rate} N/mm, travel ${travel} mm }`);
const tube = fc
  .tuple(figure(12, 26), figure(0, 0.8))
  .map(
    ([diameter, hollow]) =>
      `torsion-bar { diameter ${diameter} mm, bore ${(Number(diameter) * Number(hollow)).toFixed(2)} mm, length 400 mm }`,
  );

const LEVER = "lever { pivot (-70, 330, 300) mm, axis (0, 1, 0), end (0, 330, 300) mm }\ndrop-link rocker.bar";

function rollBar(): void {
  check(fc.tuple(tube, some(blades), some(links)), ([torsion, blade, link]) => {
    const law = springOf("anti-roll-bar", [torsion, blade, link].filter((one) => one !== undefined).join("\n"), LEVER);
    expectLawful(law, ANGLE);
    expectReversed(law, law, ANGLE);
    const bare = springOf("anti-roll-bar", torsion, LEVER);
    expect(law.rate(0)).toBeLessThanOrEqual(bare.rate(0) * (1 + IDENTITY));
  });
}

function inerter(): void {
  check(figure(0.1, 60), (inertance) => {
    for (const [unit, connection] of [
      ["kg", TELESCOPIC],
      ["kg*m^2", TWISTING],
    ] as const) {
      const [law] = lawsOf("inerter", `inertance ${inertance} ${unit}`, connection);
      // Its force is b s̈ either way, its energy b ṡ²/2: odd, even, and never negative since b is not.
      expect(law).toEqual({ kind: "inerter", inertance: Number(inertance) });
    }
  });
}

function held(): void {
  check(figure(1, 4000), (force) => {
    const [pushes, pulls] = [springOf("actuator", `hold ${force} N`), springOf("actuator", `hold -${force} N`)];
    expectLawful(pushes, LENGTH, { storesOnly: false });
    expectReversed(pushes, pulls, LENGTH);
    const [length] = lawsOf("actuator", `hold ${force} mm`, TELESCOPIC);
    expect(length).toMatchObject({ kind: "hold", always: { kind: "length", value: Number(force) / 1000 } });
  });
}

/** Cylinders on both sides; crossed lines resist what differs, a parallel one what is alike. */
function oil(): void {
  const filling = fc.oneof(
    fc.tuple(figure(6, 40), figure(20, 200)).map(([p, v]) => `accumulator { pressure ${p} bar, volume ${v} ml }`),
    figure(0, 30).map((p) => `pressure ${p} bar`),
  );
  const cylinders = (area: string) =>
    ["port", "starboard"]
      .map(
        (name, i) =>
          `cylinder ${name} { between ${i === 0 ? "left" : "right"}.rocker.side and chassis (-55, ${i === 0 ? 88 : -88}, 385) mm, area ${area} mm^2 }`,
      )
      .join("\n");
  const properties = fc
    .tuple(figure(1, 60), some(fc.constantFrom("port", "starboard")))
    .map(([resistance, valve]) => ({ resistance, valve }));
  check(
    fc.tuple(filling, figure(150, 600), properties, fc.boolean()),
    ([fill, area, { resistance, valve }, crossed]) => {
      const how = crossed ? "crossed " : "";
      const line = (from: string, to: string): string =>
        `line ${from} to ${to} ${how}{ resistance ${resistance} bar*s/l, bulk-modulus 1.2 GPa, volume 30 ml${valve === undefined ? "" : `, one-way ${valve}`} }`;
      const joined = crossed ? [line("port", "starboard"), line("starboard", "port")] : [line("port", "starboard")];
      const laws = lawsOf("hydraulic-link", [fill, ...joined].join("\n"), cylinders(area));
      expect(laws.some(({ kind }) => kind === "spring")).toBe(true);
      for (const law of laws) {
        if (law.kind === "spring") expectLawful(law, OIL);
        else if (law.kind === "damper") expectDamps(law, 1e-3);
      }
    },
  );
}

/** By the file of server/assemble that reads the words. */
const written: Readonly<Record<string, Readonly<Record<string, Written>>>> = {
  "spring-law": {
    "pushed or pulled, with a gap or a preload": spring("spring", oneWay),
    "both ways, with a gap and a tender": spring("spring", bothWays),
    "stacked with a tender": spring("spring", stacked),
    "by points": spring("spring", table),
    "torsion bar": spring("spring", bar, ANGLE),
    "bump stop with packers": spring("bump-stop", stop),
  },
  "two-way-law": { "squat and rise": spring("spring", squatAndRise) },
  "gas-law": {
    stiff: spring("gas-spring", stiff, [-0.015, 0.015]),
    collapsing: spring("gas-spring", collapsing, [-0.015, 0.03], { rises: false }),
  },
  "damper-law": {
    "bump and rebound, by points, knees and clicks": damper(turnedDamper),
    "one damping": damper(plainDamper),
    "with gas": damper(withGas),
    "one curve": damper(wholeCurve),
    twisting: damper(
      figure(5, 90).map((c) => ({ words: `damping ${c} N*m*s/rad`, reversed: `damping ${c} N*m*s/rad` })),
      TWISTING,
    ),
  },
  "bar-law": { "tube, blades and link springs": rollBar },
  "inerter-law": { inerter },
  "actuator-law": { "a force, and a length": held },
};

describe("every law from words", () => {
  it("has its properties here", () => {
    const readers = readdirSync("server/assemble").filter((file) => file.endsWith("-law.ts"));
    expect(Object.keys(written).sort()).toEqual(readers.map((file) => file.replace(/\.ts$/, "")).sort());
  });

  for (const [file, ways] of Object.entries(written)) {
    it.each(Object.entries(ways))(`${file}: %s`, (_, keeps) => {
      expect(keeps).not.toThrow();
    });
  }

  it("circuits of hydraulic links", () => {
    expect(oil).not.toThrow();
  });
});
