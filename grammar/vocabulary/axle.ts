/** Words of an axle and its wheels. */
import { degrees, lessThanQuarterTurn, notNegative, positive, seen } from "./sources.js";
import { blockOnly, choice, keyword, oneOf, point, quantity, range, refersTo } from "./slots.js";
import type { Word, WordGroup } from "./word.js";

const side = (word: "left" | "right"): Word => ({
  word,
  in: ["axle"],
  takes: blockOnly,
  opens: "side",
  block: "required",
  role: "structure",
  times: "one",
  example: `${word} { camber -2.8 deg }`,
  help:
    `What is different on the ${word} side only: lines as in a set-up (\`camber -2.8 deg\`, \`rocker.pivot (10, 211, 430) mm\`), ` +
    "or the blocks `wheel` and `linkage` with the lines that differ. A line equal to the mirror image is reported as needless.",
});

const axleWords: readonly Word[] = [
  {
    word: "axle",
    in: ["car"],
    takes: [[choice("front", "rear")]],
    opens: "axle",
    block: "required",
    role: "structure",
    times: "named",
    help: "The front or the rear axle: its wheels, its linkage and the elements that carry and damp it.",
  },
  {
    word: "track",
    in: ["axle"],
    takes: oneOf("length"),
    role: "property",
    times: "one",
    needed: true,
    starter: "1450 mm",
    usual: seen(0.9, 2.1),
    limits: positive,
    help: "Distance across the car between the two tyre contacts of this axle, at design ride height.",
  },
  {
    word: "ride-height",
    in: ["axle"],
    takes: oneOf("length"),
    opens: "length-adjuster",
    block: "optional",
    role: "property",
    times: "one",
    fallback: "ground clearance is not judged",
    starter: "35 mm",
    usual: seen(0.01, 0.2),
    limits: positive,
    help:
      "Height above the ground of the plane z = 0, at this axle's line, with the car at rest. All points are given at this " +
      "height; in a set-up it says how high the car is put on the flat patch.",
  },
  {
    word: "travel",
    in: ["axle"],
    takes: [[range("length")]],
    role: "property",
    times: "one",
    fallback: "-25 .. 25 mm",
    starter: "-25 .. 25 mm",
    usual: seen(-0.15, 0.15),
    help: "Wheel travel, from rebound to bump, that every check looks at. Measured from design ride height, bump positive.",
  },
  {
    word: "trim",
    in: ["axle"],
    takes: [
      [keyword("by"), refersTo("element")],
      [keyword("by"), choice("push-rod", "pull-rod")],
    ],
    role: "property",
    times: "one",
    fallback: "by the corner springs, else by the heave spring",
    example: "trim by corner-bar",
    help:
      "What the mechanic turns to bring the axle to its ride height: the seat of a spring, or the length of the push or pull " +
      "rods. Every other gap and preload stays as stated.",
  },
  side("left"),
  side("right"),
];

const wheelWords: readonly Word[] = [
  {
    word: "wheel",
    in: ["axle", "side"],
    takes: blockOnly,
    opens: "wheel",
    block: "required",
    spread: true,
    role: "structure",
    times: "one",
    needed: true,
    help: "The left wheel of the axle with its tyre; the right one is its mirror image.",
  },
  {
    word: "centre",
    in: ["wheel"],
    takes: [[point]],
    role: "property",
    times: "one",
    needed: true,
    starter: "(0, 725, 290) mm",
    help: "Centre of the left wheel, (x, y, z), at design ride height.",
  },
  {
    word: "camber",
    in: ["wheel"],
    takes: oneOf("angle"),
    opens: "angle-adjuster",
    block: "optional",
    role: "property",
    times: "one",
    fallback: "0 deg",
    starter: "-2 deg",
    usual: seen(degrees(-6), degrees(2)),
    limits: lessThanQuarterTurn,
    help: "Static inclination of the wheel against the vertical, positive with its top outboard.",
  },
  {
    word: "toe",
    in: ["wheel"],
    takes: oneOf("angle"),
    opens: "angle-adjuster",
    block: "optional",
    role: "property",
    times: "one",
    fallback: "0 deg",
    starter: "0 deg",
    usual: seen(degrees(-1), degrees(1)),
    limits: lessThanQuarterTurn,
    help: "Static toe of each wheel, positive for toe-in (its front edge towards the centre line). Twice this is the total.",
  },
  {
    word: "loaded-radius",
    in: ["wheel"],
    takes: oneOf("length"),
    role: "property",
    times: "one",
    fallback: "the centre's height above the ground",
    starter: "280 mm",
    usual: seen(0.18, 0.42),
    limits: positive,
    help: "From the ground to the wheel centre with the tyre under its static load.",
  },
  {
    word: "unsprung-mass",
    in: ["wheel"],
    takes: oneOf("mass"),
    role: "property",
    times: "one",
    needed: true,
    starter: "18 kg",
    usual: seen(4, 70),
    limits: notNegative,
    help: "Mass that moves with one wheel: tyre, rim, hub, upright, outboard brake, and half of the links.",
  },
  {
    word: "tyre-rate",
    in: ["wheel"],
    takes: oneOf("rate"),
    role: "property",
    times: "one",
    fallback: "ride rates are not worked out",
    starter: "180 N/mm",
    usual: seen(60_000, 400_000),
    limits: positive,
    help: "Vertical stiffness of one tyre, at its running pressure and load.",
  },
  {
    word: "tyre-damping",
    in: ["wheel"],
    takes: oneOf("damping"),
    role: "property",
    times: "one",
    fallback: "0 N*s/mm",
    starter: "0.2 N*s/mm",
    usual: seen(0, 2000),
    limits: notNegative,
    help: "Vertical damping of one rolling tyre.",
  },
];

const adjusters = [
  { concept: "length-adjuster", step: "length", starter: "1 mm" },
  { concept: "angle-adjuster", step: "angle", starter: "0.1 deg" },
  { concept: "share-adjuster", step: "share", starter: "0.5 %" },
] as const;

const adjusterWords: readonly Word[] = [
  ...adjusters.map(
    ({ concept, step, starter }): Word => ({
      word: "step",
      in: [concept],
      takes: oneOf(step),
      role: "property",
      times: "one",
      fallback: "adjusted freely",
      starter,
      limits: positive,
      help: "The smallest change that the adjuster can make. Comparison, solver and setup sheet count in it.",
    }),
  ),
  {
    word: "shim",
    in: ["angle-adjuster"],
    takes: [[quantity("angle"), keyword("per"), quantity("length")]],
    role: "property",
    times: "one",
    fallback: "shims are not counted",
    example: "shim 0.2 deg per 1 mm",
    help:
      "What one shim more makes of the angle, and how thick it is; negative where it makes the angle more negative. Hover of a " +
      "set-up's angle counts the shims from the drawn to the wanted one.",
  },
  {
    word: "thread",
    in: ["length-adjuster"],
    takes: oneOf("thread"),
    role: "property",
    times: "one",
    fallback: "turns are not shown",
    starter: "1.5 mm/turn",
    usual: seen(0.0003, 0.005),
    limits: positive,
    help: "Change for one turn of the adjuster, so that `by -1 turn` can be said and the sheet can count turns.",
  },
];

export const axleGroup: WordGroup = {
  title: "Axle and wheel",
  help: "Positions are those of the left side, at design ride height; the right side mirrors them (y → −y).",
  concepts: [
    { concept: "axle", help: "One axle: dimensions, wheels, linkage and elements." },
    {
      concept: "side",
      help: "Lines that hold on one side of the axle only, written as in a set-up.",
      overrides: "axle",
    },
    { concept: "wheel", help: "Wheel position and alignment, unsprung mass and tyre." },
    { concept: "length-adjuster", help: "How a length is adjusted, in braces behind its value." },
    { concept: "angle-adjuster", help: "How an angle is adjusted, in braces behind its value." },
    { concept: "share-adjuster", help: "How a share is adjusted, in braces behind its value." },
  ],
  words: [...axleWords, ...wheelWords, ...adjusterWords],
};
