/** Words of what the car weighs: masses, centre of gravity, inertias, driver, fuel, ballast; and what the scales say. */
import { aShare, notNegative, positive, seen } from "./sources.js";
import { blockOnly, declares, keyword, oneOf, point, quantity } from "./slots.js";
import type { Slot, Word, WordGroup } from "./word.js";

const apart = "Lines of their own (`driver`, `fuel`, `ballast`) are not in it: they are added to it.";

const wholeCar: readonly Word[] = [
  {
    word: "mass",
    in: ["car"],
    takes: oneOf("mass"),
    role: "property",
    times: "one",
    needed: true,
    starter: "600 kg",
    usual: seen(150, 2000),
    limits: positive,
    help:
      "Car ready to run, wheels included, with everything that has no line of its own: where `driver`, `fuel` or `ballast` are " +
      "written, `mass` is the car without them, and they are added to it; where none is, it holds driver and fuel too. Hover " +
      "shows the sum.",
  },
  {
    word: "mass-front",
    in: ["car"],
    takes: oneOf("share"),
    role: "property",
    times: "one",
    needed: true,
    starter: "45 %",
    usual: seen(0.3, 0.65),
    limits: aShare,
    help: `Share of \`mass\` that the front wheels carry at rest on the flat patch, from 0 to 100 %. ${apart}`,
  },
  {
    word: "cg-height",
    in: ["car"],
    takes: oneOf("length"),
    role: "property",
    times: "one",
    needed: true,
    starter: "300 mm",
    usual: seen(0.15, 0.65),
    limits: positive,
    help: `Height of the centre of gravity of \`mass\` above the ground, at design ride height. ${apart}`,
  },
  {
    word: "cg-left",
    in: ["car"],
    takes: oneOf("length"),
    role: "property",
    times: "one",
    fallback: "0 mm",
    starter: "10 mm",
    usual: seen(-0.15, 0.15),
    help:
      `How far left of the centre plane y = 0 the centre of gravity of \`mass\` lies; negative to the right. ${apart} Where the ` +
      "car has been on the scales, hover of `scales` shows what they make of it.",
  },
  {
    word: "roll-inertia",
    in: ["car"],
    takes: oneOf("inertia"),
    role: "property",
    times: "one",
    fallback: "modes that need it are not worked out",
    starter: "60 kg*m^2",
    usual: seen(15, 900),
    limits: positive,
    help:
      "Moment of inertia of the sprung mass about the x axis through the sprung mass's own centre of gravity. Lines of their own " +
      "(`driver`, `fuel`, `ballast`) are added to it as masses at their place.",
  },
  {
    word: "pitch-inertia",
    in: ["car"],
    takes: oneOf("inertia"),
    role: "property",
    times: "one",
    fallback: "modes that need it are not worked out",
    starter: "400 kg*m^2",
    usual: seen(40, 3500),
    limits: positive,
    help:
      "Moment of inertia of the sprung mass about the y axis through the sprung mass's own centre of gravity. Lines of their own " +
      "(`driver`, `fuel`, `ballast`) are added to it as masses at their place.",
  },
];

const lines: readonly Word[] = [
  {
    word: "driver",
    in: ["car"],
    takes: blockOnly,
    opens: "mass-line",
    block: "required",
    role: "property",
    times: "one",
    fallback: "in `mass`",
    example: "driver { mass 75 kg, centre (-1150, 0, 250) mm }",
    help:
      "The driver with helmet and suit, apart from `mass`: what it weighs and where its centre of gravity is, as a part of the " +
      "sprung mass. In a set-up `driver.mass 82 kg`, or `remove driver`.",
  },
  {
    word: "fuel",
    in: ["car"],
    takes: blockOnly,
    opens: "mass-line",
    block: "required",
    role: "property",
    times: "one",
    fallback: "in `mass`",
    example: "fuel { mass 12 kg, centre (-1500, 0, 200) mm }",
    help:
      "The fuel in the tank, apart from `mass`: what it weighs and where its centre of gravity is, as a part of the sprung mass. " +
      "In a set-up `fuel.mass by -4 kg`.",
  },
  {
    word: "ballast",
    in: ["car"],
    takes: [[declares("element")]],
    opens: "mass-line",
    block: "required",
    role: "property",
    times: "named",
    fallback: "none",
    example: "ballast nose { mass 6 kg, centre (480, 0, 60) mm }",
    help:
      "A weight that is bolted to the body, apart from `mass`: what it weighs and where. Any number, each with its name; in a " +
      "set-up `nose.mass 4 kg`, `remove nose`, or one more.",
  },
  {
    word: "mass",
    in: ["mass-line"],
    takes: oneOf("mass"),
    role: "property",
    times: "one",
    needed: true,
    starter: "75 kg",
    usual: seen(0, 150),
    limits: notNegative,
    help: "What it weighs.",
  },
  {
    word: "centre",
    in: ["mass-line"],
    takes: [[point]],
    role: "property",
    times: "one",
    needed: true,
    starter: "(-1150, 0, 250) mm",
    help: "Its centre of gravity, (x, y, z), at design ride height.",
  },
];

const pad = (word: string, where: string): Word => ({
  word,
  in: ["scales"],
  takes: oneOf("mass"),
  role: "property",
  times: "one",
  needed: true,
  starter: "140 kg",
  usual: seen(15, 700),
  limits: notNegative,
  help: `What the pad under the ${where} wheel shows, with the driver on board and the car settled.`,
});

const tolerance: Slot = { kind: "quantity", dimension: "share", usual: seen(0, 0.05), limits: aShare };

const scales: readonly Word[] = [
  {
    word: "cross-weight",
    in: ["car"],
    takes: [[quantity("share")], [quantity("share"), keyword("within"), tolerance]],
    role: "property",
    times: "one",
    fallback: "50 % within 0.5 %",
    starter: "50 %",
    usual: seen(0.4, 0.6),
    limits: aShare,
    help:
      "What the mechanic brings the cross weight to on the flat patch: the share that the front right and the rear left wheel " +
      "carry together. Trim shares the weight by it, and turns at the corners are worked out from `scales` to meet it; `within` " +
      "says from which distance on a check speaks.",
  },
  {
    word: "scales",
    in: ["car"],
    takes: blockOnly,
    opens: "scales",
    block: "required",
    spread: true,
    role: "property",
    times: "one",
    fallback: "turns to the wanted cross weight are not worked out",
    example: "scales { front-left 138 kg, front-right 142 kg, rear-left 171 kg, rear-right 168 kg }",
    help:
      "What the four pads show under the car as it stands. Hover and `bellcrank weights` answer with shares, cross weight, and " +
      "the turns at each corner that bring it to `cross-weight` with the ride heights left as they are.",
  },
  pad("front-left", "front left"),
  pad("front-right", "front right"),
  pad("rear-left", "rear left"),
  pad("rear-right", "rear right"),
];

export const massGroup: WordGroup = {
  title: "Masses and scales",
  help:
    "What the car weighs and where. `mass`, `mass-front`, `cg-height`, `cg-left` and the inertias are those of the car without " +
    "the lines that are stated beside them; the tool adds those up.",
  concepts: [
    { concept: "mass-line", help: "What it weighs and where its centre of gravity is." },
    { concept: "scales", help: "What the pad under each wheel shows." },
  ],
  words: [...wholeCar, ...lines, ...scales],
};
