/** Words of the linkage: wishbones, track rod, push or pull rod, rocker; in space, planar, or none. */
import { setLength } from "./set-length.js";
import { positive, seen } from "./sources.js";
import { blockOnly, choice, declares, direction, keyword, oneOf, planarPoint, point } from "./slots.js";
import type { Concept, Slot, Word, WordGroup } from "./word.js";

const place = (word: string, concepts: readonly Concept[], slot: Slot, starter: string, help: string): Word => ({
  word,
  in: concepts,
  takes: [[slot]],
  role: "property",
  times: "one",
  needed: true,
  starter,
  help,
});

const wishbone = (level: "lower" | "upper", concept: Concept, opens: Concept, example: string): Word => ({
  word: `${level}-wishbone`,
  in: [concept],
  takes: blockOnly,
  opens,
  block: "required",
  role: "structure",
  times: "one",
  needed: true,
  example,
  help:
    opens === "wishbone"
      ? `The ${level} wishbone: it turns about the line through its two inner joints; its outer joint carries the upright.`
      : `The ${level} wishbone seen from the front: it turns about its inner joint; its outer joint carries the upright.`,
});

const rod = (kind: "push-rod" | "pull-rod", concept: Concept, opens: Concept): Word => ({
  word: kind,
  in: [concept],
  takes: [[keyword("on"), choice("lower-wishbone", "upper-wishbone", "upright")]],
  opens,
  block: "required",
  role: "structure",
  times: "one",
  example:
    opens === "rod"
      ? `${kind} on lower-wishbone { outer (0, 640, 150) mm, inner (10, 262, 470) mm }`
      : `${kind} on lower-wishbone { outer (640, 150) mm, inner (262, 470) mm }`,
  help:
    "The rod that works the rocker: `outer` is its joint on the named body, `inner` its joint on the rocker. The word " +
    `${kind} says how it is loaded; the geometry decides.`,
});

const drawn: readonly Word[] = [
  {
    word: "linkage",
    in: ["axle", "side"],
    takes: [[], [keyword("planar")], [keyword("ratio")]],
    opens: "linkage",
    opensByForm: ["linkage", "linkage-planar", undefined],
    block: "required",
    role: "structure",
    times: "one",
    needed: true,
    help:
      "How the left wheel is guided: joints in space; `planar` with all joints in the transverse plane of the wheel centre, " +
      "points as (y, z); or `ratio` without geometry and without a block, where every element brings its motion ratio.",
  },
  wishbone(
    "lower",
    "linkage",
    "wishbone",
    "lower-wishbone { fore (135, 190, 118) mm, aft (-165, 190, 122) mm, outer (0, 672, 130) mm }",
  ),
  wishbone(
    "upper",
    "linkage",
    "wishbone",
    "upper-wishbone { fore (120, 245, 285) mm, aft (-150, 245, 280) mm, outer (-6, 648, 332) mm }",
  ),
  place(
    "fore",
    ["wishbone"],
    point,
    "(130, 200, 120) mm",
    "Front inner joint, on the chassis. Any two points of the hinge line do.",
  ),
  place(
    "aft",
    ["wishbone"],
    point,
    "(-150, 200, 120) mm",
    "Rear inner joint, on the chassis; not at the same place as `fore`.",
  ),
  place("outer", ["wishbone"], point, "(0, 670, 130) mm", "Outer joint, on the upright."),
  {
    word: "track-rod",
    in: ["linkage"],
    takes: blockOnly,
    opens: "track-rod",
    block: "required",
    role: "structure",
    times: "one",
    needed: true,
    example: "track-rod { inner (82, 205, 150) mm, outer (96, 668, 172) mm }",
    help: "The link that steers the upright, or holds its toe where the axle is not steered.",
  },
  place("inner", ["track-rod"], point, "(90, 205, 150) mm", "Inner joint, on the rack or the chassis."),
  place("outer", ["track-rod"], point, "(100, 668, 170) mm", "Outer joint, on the upright; not on the steering axis."),
  rod("push-rod", "linkage", "rod"),
  rod("pull-rod", "linkage", "rod"),
  place("outer", ["rod"], point, "(0, 640, 150) mm", "Joint on the wishbone or upright that carries the rod."),
  place("inner", ["rod"], point, "(10, 262, 470) mm", "Joint on the rocker."),
  {
    word: "thread",
    in: ["rod", "rod-planar", "drop-link", "track-rod"],
    takes: oneOf("thread"),
    role: "property",
    times: "one",
    fallback: "turns are not shown",
    starter: "1.25 mm/turn",
    usual: seen(0.0003, 0.005),
    limits: positive,
    help: "Change of length for one turn of the adjuster (both ends together, where it has a left and a right thread).",
  },
  setLength(
    ["rod", "rod-planar"],
    "How much longer than drawn the rod is set; in a set-up also `push-rod by -1 turn`, by its `thread`. It turns the " +
      "rocker, and with it every element on it, while the wheel stays where it is.",
  ),
  {
    word: "rocker",
    in: ["linkage"],
    takes: blockOnly,
    opens: "rocker",
    block: "required",
    role: "structure",
    times: "one",
    example: "rocker {\n  pivot (10, 210, 430) mm\n  axis (1, 0, 0)\n  eye side (10, 172, 470) mm\n}",
    help: "The bell crank: worked by the push or pull rod, it turns about its axis and works what is joined to its eyes.",
  },
  place("pivot", ["rocker"], point, "(10, 210, 430) mm", "A point on the rocker's axis, on the chassis."),
  {
    word: "axis",
    in: ["rocker", "lever"],
    takes: [[direction]],
    role: "property",
    times: "one",
    needed: true,
    starter: "(1, 0, 0)",
    help: "Direction of the axis, three plain numbers of any size: (1, 0, 0) points forward. Its sense does not matter.",
  },
  {
    word: "eye",
    in: ["rocker"],
    takes: [[declares("eye"), point]],
    role: "structure",
    times: "named",
    example: "eye third (10, 175, 505) mm",
    help: "A named joint on the rocker. Elements are joined to it as `rocker.NAME`, or `left.rocker.NAME` across the car.",
  },
];

const planar: readonly Word[] = [
  wishbone("lower", "linkage-planar", "wishbone-planar", "lower-wishbone { inner (190, 120) mm, outer (672, 130) mm }"),
  wishbone("upper", "linkage-planar", "wishbone-planar", "upper-wishbone { inner (245, 283) mm, outer (648, 332) mm }"),
  place("inner", ["wishbone-planar"], planarPoint, "(200, 120) mm", "Inner joint (y, z), on the chassis."),
  place("outer", ["wishbone-planar"], planarPoint, "(670, 130) mm", "Outer joint (y, z), on the upright."),
  rod("push-rod", "linkage-planar", "rod-planar"),
  rod("pull-rod", "linkage-planar", "rod-planar"),
  place(
    "outer",
    ["rod-planar"],
    planarPoint,
    "(640, 150) mm",
    "Joint (y, z) on the wishbone or upright that carries the rod.",
  ),
  place("inner", ["rod-planar"], planarPoint, "(262, 470) mm", "Joint (y, z) on the rocker."),
  {
    word: "rocker",
    in: ["linkage-planar"],
    takes: blockOnly,
    opens: "rocker-planar",
    block: "required",
    role: "structure",
    times: "one",
    example: "rocker {\n  pivot (210, 430) mm\n  eye side (172, 470) mm\n}",
    help: "The bell crank, turning about an axis along x in the plane of the wheel centre.",
  },
  place("pivot", ["rocker-planar"], planarPoint, "(210, 430) mm", "The rocker's pivot (y, z), on the chassis."),
  {
    word: "eye",
    in: ["rocker-planar"],
    takes: [[declares("eye"), planarPoint]],
    role: "structure",
    times: "named",
    example: "eye third (175, 505) mm",
    help: "A named joint (y, z) on the rocker.",
  },
];

export const linkageGroup: WordGroup = {
  title: "Linkage",
  help:
    "The left side, at design ride height; the right one is its mirror image (y → −y). Points of joints, bush or spherical " +
    "bearing centres alike.",
  concepts: [
    { concept: "linkage", help: "Double wishbone with track rod, and what works the rocker, in space." },
    { concept: "wishbone", help: "Two inner joints and an outer one." },
    { concept: "track-rod", help: "Inner and outer joint of the track rod, and the thread of its adjuster." },
    { concept: "rod", help: "Joints of the push or pull rod, how long it is set, and the thread of its adjuster." },
    { concept: "rocker", help: "Pivot, axis and named eyes." },
    {
      concept: "linkage-planar",
      help: "All joints in the transverse plane of the wheel centre, points as (y, z); steer and caster do not change.",
    },
    { concept: "wishbone-planar", help: "Inner and outer joint, (y, z)." },
    {
      concept: "rod-planar",
      help: "Joints of the push or pull rod, (y, z), how long it is set, and the thread of its adjuster.",
    },
    { concept: "rocker-planar", help: "Pivot and named eyes, (y, z)." },
  ],
  words: [...drawn, ...planar],
};
