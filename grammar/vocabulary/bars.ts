/** Words of the anti-roll bar: levers or a tee, blades and drop links (its tube and springs are in springs.ts). */
import { setLength } from "./set-length.js";
import { degrees, positive, seen } from "./sources.js";
import { attachment, keyword, oneOf, point, quantity } from "./slots.js";
import type { Word, WordGroup } from "./word.js";

const lever: readonly Word[] = [
  {
    word: "lever",
    in: ["anti-roll-bar"],
    takes: [[]],
    opens: "lever",
    block: "required",
    role: "connection",
    times: "one",
    needed: true,
    unless: ["ratio", "tee"],
    example: "lever { pivot (-40, 210, 420) mm, axis (0, 1, 0), end (30, 210, 420) mm }",
    help: "The left lever of the bar: it turns with the bar's end; its own end takes the drop link. The right one mirrors it.",
  },
  {
    word: "pivot",
    in: ["lever"],
    takes: [[point]],
    role: "property",
    times: "one",
    needed: true,
    starter: "(-40, 210, 420) mm",
    help: "A point on the bar's axis, on the chassis.",
  },
  {
    word: "end",
    in: ["lever"],
    takes: [[point]],
    role: "property",
    times: "one",
    needed: true,
    starter: "(30, 210, 420) mm",
    help: "Where the drop link is joined to the lever; not on the axis.",
  },
];

const tee: readonly Word[] = [
  {
    word: "tee",
    in: ["anti-roll-bar"],
    takes: [[]],
    opens: "tee",
    block: "required",
    role: "connection",
    times: "one",
    example: "tee { foot (-60, 0, 300) mm, head (-60, 0, 420) mm, end (-60, 120, 420) mm }",
    help:
      "A T-shaped bar in place of the levers: a stem that swings about a hinge across the car at its foot while both wheels move " +
      "alike, and is twisted by a cross arm at its head where they do not. `torsion-bar` is the stem.",
  },
  {
    word: "foot",
    in: ["tee"],
    takes: [[point]],
    role: "property",
    times: "one",
    needed: true,
    starter: "(-60, 0, 300) mm",
    help: "Where the stem is held: in its swing by a hinge across the car, in its twist firmly.",
  },
  {
    word: "head",
    in: ["tee"],
    takes: [[point]],
    role: "property",
    times: "one",
    needed: true,
    starter: "(-60, 0, 420) mm",
    help: "Where the cross arm sits on the stem; with `foot` it gives the axis that the cross arm turns about.",
  },
  {
    word: "end",
    in: ["tee"],
    takes: [[point]],
    role: "property",
    times: "one",
    needed: true,
    starter: "(-60, 120, 420) mm",
    help: "Where the left drop link is joined to the cross arm; the right one mirrors it.",
  },
];

const blade: readonly Word[] = [
  {
    word: "blade",
    in: ["anti-roll-bar"],
    takes: [[]],
    opens: "blade",
    block: "required",
    role: "law",
    times: "one",
    fallback: "levers are taken as rigid",
    example: "blade { position 3 of 5, soft 0 deg, stiff 90 deg, section 8 x 30 mm, length 70 mm }",
    help: "Levers as blades that are turned between soft and stiff. Their bending is in series with the bar's twist.",
  },
  {
    word: "position",
    in: ["blade"],
    takes: [[quantity("count"), keyword("of"), quantity("count")], [quantity("count")]],
    role: "property",
    times: "one",
    needed: true,
    starter: "3 of 5",
    limits: { atLeast: 1 },
    help: "Which of the adjuster's positions is set: 1 is soft, the last is stiff, equal angles in between.",
  },
  {
    word: "soft",
    in: ["blade", "blade-part"],
    takes: oneOf("angle"),
    role: "property",
    times: "one",
    fallback: "0 deg",
    starter: "0 deg",
    usual: seen(0, degrees(90)),
    limits: { atLeast: 0, atMost: Math.PI / 2 },
    help: "Blade angle at position 1. At 0 deg the section bends about its weak axis, at 90 deg about its strong one.",
  },
  {
    word: "stiff",
    in: ["blade", "blade-part"],
    takes: oneOf("angle"),
    role: "property",
    times: "one",
    fallback: "90 deg",
    starter: "90 deg",
    usual: seen(0, degrees(90)),
    limits: { atLeast: 0, atMost: Math.PI / 2 },
    help: "Blade angle at the last position.",
  },
  {
    word: "section",
    in: ["blade", "blade-part"],
    takes: [[quantity("length"), keyword("x"), quantity("length")]],
    role: "property",
    times: "one",
    needed: true,
    starter: "8 x 30 mm",
    usual: seen(0.002, 0.06),
    limits: positive,
    help: "Thickness by width of the blade.",
  },
  {
    word: "length",
    in: ["blade", "blade-part"],
    takes: oneOf("length"),
    role: "property",
    times: "one",
    needed: true,
    starter: "70 mm",
    usual: seen(0.02, 0.4),
    limits: positive,
    help: "Free length that bends, from the root to the drop link.",
  },
  {
    word: "modulus",
    in: ["blade", "blade-part"],
    takes: oneOf("modulus"),
    role: "property",
    times: "one",
    fallback: "205 GPa, steel",
    starter: "205 GPa",
    usual: seen(60e9, 220e9),
    limits: positive,
    help: "Young's modulus of the blade's material.",
  },
  {
    word: "allowable-stress",
    in: ["blade", "blade-part"],
    takes: oneOf("stress"),
    role: "property",
    times: "one",
    fallback: "900 MPa, quenched and tempered spring steel",
    starter: "900 MPa",
    usual: seen(150e6, 1600e6),
    limits: positive,
    help: "The bending stress that its maker allows at its root. Above it `over-stress` warns.",
  },
];

const longer = setLength(
  ["drop-link"],
  "How much longer than drawn the link is set; in a set-up also `drop-link by +1 turn`, by its `thread`. On one side only, " +
    "or different on both, it twists the bar at rest.",
);

const dropLink: Word = {
  word: "drop-link",
  in: ["anti-roll-bar"],
  takes: [[attachment], [keyword("off")]],
  opens: "drop-link",
  block: "optional",
  role: "connection",
  times: "one",
  needed: true,
  unless: ["ratio"],
  example: "drop-link rocker.bar",
  help:
    "The link from the lever's end to an eye of the rocker (or a point on a wishbone or the upright). `drop-link off` on one " +
    "side takes the bar out of work.",
};

export const barGroup: WordGroup = {
  title: "Anti-roll bar",
  help: "The bar's left half; the right one mirrors it. Its tube is a `torsion-bar`, its drop-link springs a `link-spring`.",
  concepts: [
    { concept: "anti-roll-bar", help: "Tube, levers, blades and drop links of an anti-roll bar." },
    { concept: "lever", help: "The bar's left lever: pivot, axis and end." },
    { concept: "tee", help: "A T-shaped bar: foot and head of its stem, and the left end of its cross arm." },
    { concept: "blade", help: "Levers as blades: section, length and position." },
    { concept: "drop-link", help: "How long the drop link is set, and the thread of its adjuster." },
  ],
  words: [...lever, ...tee, ...blade, dropLink, longer],
};
