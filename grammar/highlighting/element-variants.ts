/**
 * Elements that are built in more than one way: a snippet for each way, beside the one of the word's row. The first line begins
 * with the word, its name and what it is for, as every element does.
 *
 * Invariant: put into an axle whose rocker has the eyes named here, each checks without errors (test/vocabulary/snippets.test.ts).
 */
interface ElementVariant {
  readonly title: string;
  readonly word: string;
  readonly description: string;
  readonly text: string;
}

export const elementVariants: readonly ElementVariant[] = [
  {
    title: "spring, a torsion bar on the rocker",
    word: "spring",
    description: "A torsion bar from the rocker to the chassis, for one wheel.",
    text: `spring corner-bar for corner {
  torsion-bar { diameter 19.5 mm, length 290 mm }
  twists rocker against chassis
}`,
  },
  {
    title: "spring, a coil",
    word: "spring",
    description: "A coil spring worked out from its wire, for one wheel.",
    text: `spring coil for corner {
  coil { wire 9.5 mm, mean-diameter 46 mm, active-turns 9, free-length 165 mm }
  between rocker.side and chassis (10, 40, 360) mm
}`,
  },
  {
    title: "damper with its own curve",
    word: "damper",
    description: "A damper by its force over its speed, for one wheel.",
    text: `damper side for corner {
  bump { 50 mm/s: 160 N, 200 mm/s: 410 N }
  rebound { 50 mm/s: 230 N, 200 mm/s: 580 N }
  between rocker.side and chassis (10, 40, 360) mm
}`,
  },
  {
    title: "damper across the car",
    word: "damper",
    description: "From one rocker's upper eye to the other's lower eye: roll works it, heave only swings it.",
    text: `damper roll-damper for roll {
  bump { 50 mm/s: 160 N, 200 mm/s: 410 N }
  rebound { 50 mm/s: 230 N, 200 mm/s: 580 N }
  between left.rocker.roll-high and right.rocker.roll-low
}`,
  },
  {
    title: "anti-roll-bar with blades",
    word: "anti-roll-bar",
    description: "A bar whose levers are blades that are turned to set its rate.",
    text: `anti-roll-bar bar for roll {
  torsion-bar { diameter 14 mm, bore 9 mm, length 380 mm }
  lever { pivot (70, 222, 296) mm, axis (0, 1, 0), end (0, 222, 296) mm }
  blade { position 3 of 5, soft 0 deg, stiff 90 deg, section 7 x 20 mm, length 70 mm }
  drop-link rocker.bar
}`,
  },
  {
    title: "anti-roll-bar shaped like a T",
    word: "anti-roll-bar",
    description: "A stem along the car that swings in heave, with a cross arm that twists it in roll.",
    text: `anti-roll-bar tee for roll {
  torsion-bar { diameter 20 mm, length 160 mm }
  tee { foot (-160, 0, 300) mm, head (0, 0, 300) mm, end (0, 150, 300) mm }
  drop-link rocker.bar
}`,
  },
];
