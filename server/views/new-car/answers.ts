/** What is asked for a new car, and what may be answered: one list for the command line and the editor. */

export interface NewCar {
  /** As set-ups say it: `swift-2`. */
  readonly name: string;
  /** As people say it. */
  readonly title: string;
  readonly corner: "hardpoints" | "planar" | "ratio";
  readonly frontRod: "push-rod" | "pull-rod";
  readonly rearRod: "push-rod" | "pull-rod";
  /** What carries a single wheel. */
  readonly springs: "torsion-bar" | "coil";
  /** A spring and a damper that only heave works. */
  readonly heave: boolean;
  readonly bars: boolean;
  readonly downforce: boolean;
  readonly units: "si" | "inch";
}

type Choice = { [K in keyof NewCar]: NewCar[K] extends string ? K : never }[keyof NewCar];
type Words = Exclude<Choice, "name" | "title">;

export interface Question<K extends Words = Words> {
  readonly of: K;
  readonly asks: string;
  readonly options: readonly { readonly value: NewCar[K]; readonly label: string }[];
}

/** The first of each is the usual one. */
export const questions: readonly Question[] = [
  {
    of: "corner",
    asks: "How is the linkage known?",
    options: [
      { value: "hardpoints", label: "hardpoints in space" },
      { value: "planar", label: "points in one plane, from a drawing seen from the front" },
      { value: "ratio", label: "measured motion ratios only" },
    ],
  },
  {
    of: "frontRod",
    asks: "What works the front rockers?",
    options: [
      { value: "push-rod", label: "push rods" },
      { value: "pull-rod", label: "pull rods" },
    ],
  },
  {
    of: "rearRod",
    asks: "What works the rear rockers?",
    options: [
      { value: "push-rod", label: "push rods" },
      { value: "pull-rod", label: "pull rods" },
    ],
  },
  {
    of: "springs",
    asks: "What carries each wheel?",
    options: [
      { value: "torsion-bar", label: "torsion bars on the rockers" },
      { value: "coil", label: "coil springs" },
    ],
  },
  {
    of: "units",
    asks: "Which units?",
    options: [
      { value: "si", label: "mm, N, kg" },
      { value: "inch", label: "in, lbf, lb" },
    ],
  },
];

export interface YesOrNo {
  readonly of: "heave" | "bars" | "downforce";
  readonly asks: string;
}

export const yesOrNo: readonly YesOrNo[] = [
  { of: "heave", asks: "A spring and a damper for heave between the rockers?" },
  { of: "bars", asks: "Anti-roll bars?" },
  { of: "downforce", asks: "Does it have downforce?" },
];

/** Questions about rods and springs mean nothing where only ratios are known. */
export const isAsked = (of: Words, corner: NewCar["corner"]): boolean =>
  corner !== "ratio" || !(["frontRod", "rearRod", "springs"] as const).some((one) => one === of);

export const usual: Omit<NewCar, "name" | "title"> = {
  corner: "hardpoints",
  frontRod: "push-rod",
  rearRod: "push-rod",
  springs: "torsion-bar",
  heave: true,
  bars: true,
  downforce: true,
  units: "si",
};

/** Why a car cannot be called so; undefined where it can. */
export function whyNoName(name: string): string | undefined {
  return /^[A-Za-z][A-Za-z0-9]*(-[A-Za-z0-9]+)*$/.test(name)
    ? undefined
    : "a name is letters, digits and single hyphens, and begins with a letter: swift-2";
}
