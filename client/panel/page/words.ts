/** What the page says in words, to the eye and to a screen reader: figures with their units, poses, and what a change did. */
import type { PanelAxle, PanelCar, PanelElement } from "../../../server/lsp/protocol-panel.js";
import type { Limit, Motion, Pose } from "./pose.js";

export interface Unit {
  readonly text: string;
  /** Shown = SI × scale. */
  readonly scale: number;
  readonly decimals: number;
}

const DEGREES = 180 / Math.PI;

const ANGLE: Unit = { text: "deg", scale: DEGREES, decimals: 2 };

/** As fine as a tenth of a millimetre in either. */
const lengthOf = ({ length: { unit, scale } }: PanelCar): Unit => ({
  text: unit,
  scale,
  decimals: scale > 500 ? 1 : 3,
});

export const unitOf = (motion: Motion, car: PanelCar): Unit =>
  motion === "roll" || motion === "pitch" ? ANGLE : lengthOf(car);

export function lengthText(metres: number, car: PanelCar): string {
  const { text, scale, decimals } = lengthOf(car);
  return `${(metres * scale).toFixed(decimals)} ${text}`;
}

export const MOTIONS: readonly Motion[] = ["heave", "roll", "pitch", "single", "steer"];

export const MOTION_NAMES: Readonly<Record<Motion, string>> = {
  heave: "Heave",
  roll: "Roll",
  pitch: "Pitch",
  single: "One wheel",
  steer: "Steer",
};

/** What its positive direction is. */
export const DIRECTIONS: Readonly<Record<Motion, string>> = {
  heave: "body down",
  roll: "left side up",
  pitch: "nose down",
  single: "left wheel up",
  steer: "rack, to the left",
};

/** With its sign where it has one, and a real minus. */
export function signed(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  if (Number(text) === 0) return text;
  return `${value < 0 ? "\u2212" : "+"}${text}`;
}

export const shown = (motion: Motion, value: number, car: PanelCar): string => {
  const { text, scale, decimals } = unitOf(motion, car);
  return `${signed(value * scale, decimals)} ${text}`;
};

export const percent = (share: number): string => `${(100 * share).toFixed(share < 0.0995 ? 1 : 0)} %`;

/** A reason told behind another sentence. */
const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** Why a motion goes no further. */
export function stoppedBy({ corner, end }: Limit, car: PanelCar): string | undefined {
  if (corner === undefined || end === undefined) return undefined;
  const axle = car.axles.find(({ name }) => name === corner.axle);
  const data = axle?.[corner.side];
  const reason = end === "bump" ? data?.highEnd : data?.lowEnd;
  const wheel = `${corner.axle} ${corner.side} wheel`;
  if (reason !== undefined) return `The ${wheel} goes no further: ${lower(reason)}.`;
  return `The ${wheel} is at the end of its stated travel in ${end}.`;
}

export const MODE_NAMES: Readonly<Record<string, string>> = {
  heave: "heave",
  roll: "roll",
  pitch: "pitch",
  warp: "warp",
  corner: "one wheel",
};

export const isFor = ({ for: modes }: PanelElement): string =>
  `for ${modes.map((mode) => MODE_NAMES[mode] ?? mode).join(" and ")}`;

/** One clause a motion that is not at rest. */
export function poseInWords(pose: Pose, car: PanelCar): string {
  const moved = MOTIONS.filter((motion) => pose[motion] !== 0);
  if (moved.length === 0) return "The car is at design position.";
  return `${moved.map((motion) => `${MOTION_NAMES[motion]} ${spoken(motion, pose[motion], car)}`).join(", ")}.`;
}

const SPOKEN: Readonly<Record<string, string>> = { mm: "millimetres", in: "inches", deg: "degrees" };

function spoken(motion: Motion, value: number, car: PanelCar): string {
  const { text, scale, decimals } = unitOf(motion, car);
  const figure = Math.abs(value * scale).toFixed(decimals);
  return `${value < 0 ? "minus " : ""}${figure} ${SPOKEN[text] ?? text}`;
}

/** What has changed from one state of the text to the next, for who does not see the drawing move. */
export function changesInWords(before: PanelCar, after: PanelCar): string {
  if (before.name !== after.name) return `Now showing ${after.name}.`;
  const changes = after.axles.flatMap((axle) => {
    const old = before.axles.find(({ name }) => name === axle.name);
    return old === undefined ? [`The ${axle.name} axle is new.`] : axleChanges(old, axle);
  });
  return changes.slice(0, 4).join(" ");
}

function axleChanges(before: PanelAxle, after: PanelAxle): readonly string[] {
  const figures = after.figures.flatMap(({ name, text }) => {
    const old = before.figures.find((figure) => figure.name === name);
    return old === undefined || old.text === text ? [] : [`${capital(after.name)} ${name} ${text}, was ${old.text}.`];
  });
  const leaks = after.elements.flatMap((element) => {
    const old = before.elements.find(({ path }) => path === element.path);
    if (old?.leak?.text === element.leak?.text) return [];
    return [
      element.leak === undefined ? `${element.path} leaks no more.` : `${element.path} leaks ${element.leak.text}.`,
    ];
  });
  return [...leaks, ...figures];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
