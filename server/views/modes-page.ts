/** Modes of one car or set-up as tables of text: at rest and in its load cases, and its pure motions. */
import type { Mode } from "../analyses/whole-car/modes.js";
import type { PureMode } from "../analyses/whole-car/pure-modes.js";
import type { RideAt } from "../analyses/whole-car/car-ride.js";
import type { CheckedCar } from "../findings/context.js";
import { titleOf } from "./car-title.js";
import { isAbsent, showRatio, showShare } from "./figures.js";
import type { RatesPage } from "./rates-page.js";
import { cell, left, right, type Section } from "./section.js";
import { showQuantity } from "../quantities/index.js";

/** `undefined` for the car at rest. */
type CaseName = string | undefined;

export const nameOfCase = (name: CaseName): string => (name === undefined ? "at rest" : `in ${name}`);

/** At rest and every case, or the one that is asked for. */
export const casesAsked = ({ cases }: CheckedCar, at: string | undefined): readonly CaseName[] =>
  at === undefined ? [undefined, ...cases.names] : [at];

export function modesPage(car: CheckedCar, at: string | undefined): RatesPage {
  const reasons = new Set<string>();
  const sections = casesAsked(car, at).flatMap((name): Section[] => {
    const ride = car.ride.at(name);
    if (isAbsent(ride)) {
      reasons.add(`${nameOfCase(name)}: ${ride.reason}`);
      return [];
    }
    return [modesSection(ride), pureSection(ride, reasons)];
  });
  return { title: titleOf(car.model), sections, reasons: [...reasons], notes: hasLag(car) ? [] : [NOT_ASSESSED] };
}

const NOT_ASSESSED =
  "the aero block states no lag, or there is none: dynamic porpoising, downforce that follows late, was not assessed";

/** Whether some case has air that follows late. */
export const hasLag = (car: CheckedCar): boolean =>
  [undefined, ...car.cases.names].some((name) => {
    const ride = car.ride.at(name);
    return !isAbsent(ride) && (ride.car.air?.lag ?? 0) > 0;
  });

function modesSection({ name, modes }: RideAt): Section {
  return {
    title: `Modes ${nameOfCase(name)}: ${stabilityWords(modes.stability)}`,
    columns: [
      left("mode"),
      right("frequency"),
      right("damping ratio"),
      right("rate of decay"),
      right("heave"),
      right("roll"),
      right("pitch"),
      right("wheels"),
    ],
    rows: modes.modes.map(modeRow),
  };
}

function modeRow({ name, root, shares: { heave, roll, pitch, wheels } }: Mode): readonly string[] {
  const oscillates = root.kind === "oscillation";
  return [
    name,
    oscillates ? showQuantity(root.frequency, "Hz", 4) : "-",
    oscillates ? showRatio(root.dampingRatio) : "-",
    `${Number((-root.re).toPrecision(4))} 1/s`,
    ...[heave, roll, pitch, wheels.reduce((sum, share) => sum + share, 0)].map(showShare),
  ];
}

function stabilityWords(stability: RideAt["modes"]["stability"]): string {
  switch (stability.kind) {
    case "stable":
      return "stable";
    case "static-divergence":
      return `diverges in ${stability.mode.name}`;
    case "growing-oscillation":
      return `swings up in ${stability.mode.name}`;
  }
}

/** The pure motions by name. */
export const pureMotions = ({ pure }: RideAt): readonly (readonly [name: string, motion: PureMode])[] => [
  ["heave", pure.heave],
  ["roll", pure.roll],
  ["pitch", pure.pitch],
  ...pure.corner.map((motion, i) => [`corner ${wheelName(i)}`, motion] as const),
  ...pure.hop.map((motion, i) => [`wheel hop ${wheelName(i)}`, motion] as const),
];

/** Of FL, FR, RL, RR. */
export const wheelName = (wheel: number): string =>
  `${wheel < 2 ? "front" : "rear"} ${wheel % 2 === 0 ? "left" : "right"}`;

function pureSection(ride: RideAt, reasons: Set<string>): Section {
  return {
    title: `Pure motions ${nameOfCase(ride.name)}, everything else held`,
    columns: [left("motion"), right("frequency"), right("damping ratio")],
    rows: pureMotions(ride).map(([name, { frequency, dampingRatio }]) => [
      name,
      cell(frequency, "Hz", reasons),
      isAbsent(dampingRatio) ? "-" : showRatio(dampingRatio),
    ]),
  };
}
