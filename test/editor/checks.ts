/**
 * What a person must be able to see and do in any editor that has the extension. The same checks run
 * in the served editor, through its page, and in the desktop one, through its programming interface.
 *
 * Each check works on a copy of the sample car of its own.
 */
import assert from "node:assert/strict";
import { renameSync } from "node:fs";
import { dirname, join } from "node:path";
import type { EditorUnderTest, Place, ShownFinding } from "./editor-under-test.js";
import { eventually } from "./eventually.js";
import type { Folder } from "./folder.js";
import { placeOf } from "./places.js";

export interface Check {
  readonly name: string;
  run(editor: EditorUnderTest, folder: Folder): Promise<void>;
}

/** The front axle's lens begins with its heave rate. */
const HEAVE_LENS = /^heave ([\d.]+) N\/mm · roll [\d.]+ N\*m\/deg/;
const FRONT_AXLE = /axle (front)/;
const THIRD_RATE = /spring third for heave \{[^}]*?rate (\d+) N\/mm/;
const ROLL_DAMPER = /damper (roll-damper) for roll/;
export const ROLL_LOW_HEIGHT = /eye roll-low \(45, 175, (\d+)\) mm/;
/** Puts the eye so far off that about 8 % of the damper's roll motion also comes in heave. */
export const ROLL_LOW_OFF = "356";

/** The front axle's heave rate, once its lens is there: from then on the server has answered. */
async function frontRate(editor: EditorUnderTest, axle: Place): Promise<number> {
  const isThere = (lenses: readonly string[]): boolean => heaveRate(lenses) !== undefined;
  const lenses = await eventually("the front axle's lens", () => editor.lenses(axle), isThere);
  return heaveRate(lenses) ?? 0;
}

function heaveRate(lenses: readonly string[]): number | undefined {
  const shown = lenses.map((lens) => HEAVE_LENS.exec(lens)?.[1]).find((rate) => rate !== undefined);
  return shown === undefined ? undefined : Number(shown);
}

const HEAVE_RATE_BAND = /expect front\.heave-rate between (150) and 190 N\/mm/;
const HAIRPIN = /case (hairpin) \{/;

const isCoupling = ({ rule }: ShownFinding): boolean => rule === "coupling";
const LEAK = /([\d.]+) % of its own motion at design/;

/** Whether the finding is about the eye where it ends up, not about a height that was half typed. */
const isAsTyped = (finding: ShownFinding): boolean => {
  const leak = Number(LEAK.exec(finding.message)?.[1]);
  return isCoupling(finding) && leak > 5 && leak < 15;
};

async function open(editor: EditorUnderTest, folder: Folder, check: string): Promise<{ path: string; text: string }> {
  const path = folder.car(check);
  await editor.open(path);
  return { path, text: folder.text(path) };
}

/** Saves until the file on disk holds what is expected. */
async function savedAs(
  editor: EditorUnderTest,
  folder: Folder,
  path: string,
  holds: (text: string) => boolean,
): Promise<void> {
  const save = async (): Promise<string> => {
    await editor.save();
    return folder.text(path);
  };
  await eventually("the text on disk", save, holds);
}

/** Moves the lower eye of the front roll damper and waits for what the checker says of it. */
export async function moveEyeOff(editor: EditorUnderTest, text: string): Promise<ShownFinding> {
  const height = placeOf(text, ROLL_LOW_HEIGHT);
  await editor.type(height, height.found.length, ROLL_LOW_OFF);
  const findings = await eventually(
    "a coupling finding",
    () => editor.findings(),
    (all) => all.some(isAsTyped),
  );
  const coupling = findings.find(isAsTyped);
  assert.ok(coupling);
  return coupling;
}

/** Takes the fix that moves an eye, and waits until the coupling is gone. */
export async function mendCoupling(editor: EditorUnderTest, at: Place): Promise<void> {
  const titles = await eventually(
    "a fix that moves the eye",
    () => editor.fixes(at),
    (all) => all.some(movesEye),
  );
  await editor.applyFix(at, titles.find(movesEye) ?? "");
  await eventually(
    "no finding after the fix",
    () => editor.findings(),
    (all) => !all.some(isCoupling),
  );
}

export const checks: readonly Check[] = [
  {
    name: "shows each axle's rates above it, and finds nothing wrong with the sample",
    async run(editor, folder) {
      const { text } = await open(editor, folder, "clean");
      assert.ok((await frontRate(editor, placeOf(text, FRONT_AXLE))) > 0);
      assert.deepEqual(await editor.findings(), []);
      await editor.picture("overview");
    },
  },
  {
    name: "shows what a rate comes to in its mode, behind it",
    async run(editor, folder) {
      const { text } = await open(editor, folder, "inlay");
      const place = placeOf(text, THIRD_RATE);
      const holds = (hints: readonly string[]): boolean => hints.some((hint) => /→ [\d.]+ N\/mm in heave/.test(hint));
      await eventually("the hint behind the heave spring's rate", () => editor.inlays(place), holds);
      await editor.picture("inlay");
    },
  },
  {
    name: "explains an element on hover: what it is for, and how it moves in each mode",
    async run(editor, folder) {
      const { text } = await open(editor, folder, "hover");
      await frontRate(editor, placeOf(text, FRONT_AXLE));
      const hover = await editor.hover(placeOf(text, ROLL_DAMPER));
      for (const said of [/front\.roll-damper/, /damper for roll/, /heave/, /leak/, /N\*m\*s\/deg/])
        assert.match(hover, said);
    },
  },
  {
    name: "changes the axle's rate while a spring's rate is typed",
    async run(editor, folder) {
      const { path, text } = await open(editor, folder, "typing");
      const front = placeOf(text, FRONT_AXLE);
      const before = await frontRate(editor, front);
      const rate = placeOf(text, THIRD_RATE);
      await editor.type(rate, rate.found.length, String(Number(rate.found) + 40));
      await eventually(
        "a higher heave rate in the lens",
        () => editor.lenses(front),
        (lenses) => (heaveRate(lenses) ?? 0) > before,
      );
      await editor.picture("rate-typed");
      await savedAs(editor, folder, path, (now) => placeOf(now, THIRD_RATE).found === String(Number(rate.found) + 40));
    },
  },
  {
    name: "flags a roll damper that also moves in heave, and mends it with the computed fix",
    async run(editor, folder) {
      const { path, text } = await open(editor, folder, "coupling");
      const finding = await moveEyeOff(editor, text);
      assert.equal(finding.severity, "warning");
      assert.match(finding.message, /roll-damper/);
      assert.match(finding.message, /\d %/);
      const at = { line: finding.line, column: placeOf(text, ROLL_DAMPER).column };
      await editor.picture("finding");
      await mendCoupling(editor, at);
      await editor.picture("fixed");
      const broken = text.replace("(45, 175, 348)", `(45, 175, ${ROLL_LOW_OFF})`);
      await savedAs(editor, folder, path, (now) => now !== broken && now !== text);
    },
  },
  {
    name: "leaves no finding behind when its file is closed",
    async run(editor, folder) {
      const { path, text } = await open(editor, folder, "closing");
      await moveEyeOff(editor, text);
      await savedAs(editor, folder, path, (now) => now !== text);
      await editor.close();
      await eventually(
        "an empty list of problems",
        () => editor.findings(),
        (all) => all.length === 0,
      );
    },
  },
  {
    name: "offers a value that meets a missed expectation, and finds nothing more once it is taken",
    async run(editor, folder) {
      const { path, text } = await open(editor, folder, "expectation");
      const band = placeOf(text, HEAVE_RATE_BAND);
      await editor.type(band, band.found.length, "180");
      const isMissed = ({ rule, message }: ShownFinding): boolean =>
        rule === "missed-expectation" && /front\.heave-rate.*between 180/.test(message);
      await eventually(
        "a missed expectation",
        () => editor.findings(),
        (all) => all.some(isMissed),
      );
      const at = { line: band.line, column: 3 };
      const sets = (title: string): boolean => /^Set \S+ to /.test(title);
      const titles = await eventually(
        "a fix that sets a value",
        () => editor.fixes(at),
        (all) => all.some(sets),
      );
      await editor.applyFix(at, titles.find(sets) ?? "");
      await eventually(
        "no missed heave rate after the fix",
        () => editor.findings(),
        (all) => !all.some(({ message }) => /front\.heave-rate/.test(message)),
      );
      await editor.picture("expectation-met");
      const onlyTyped = text.replace("between 150 and 190", "between 180 and 190");
      await savedAs(editor, folder, path, (now) => now !== onlyTyped && now !== text);
    },
  },
  {
    name: "tells on hover how the car stands in a load case",
    async run(editor, folder) {
      const { text } = await open(editor, folder, "case");
      await frontRate(editor, placeOf(text, FRONT_AXLE));
      const hover = await editor.hover(placeOf(text, HAIRPIN));
      for (const said of [/hairpin/, /ride height/i, /roll/i, /mm/]) assert.match(hover, said);
    },
  },
  {
    name: "finds a used file that was renamed on disk missing, and nothing once it is back",
    async run(editor, folder) {
      const { path, text } = await open(editor, folder, "renaming");
      await frontRate(editor, placeOf(text, FRONT_AXLE));
      const parts = join(dirname(path), "parts.crank");
      const renamed = join(dirname(path), "shelf.crank");
      renameSync(parts, renamed);
      const isMissing = ({ rule }: ShownFinding): boolean => rule === "file-not-found";
      await eventually(
        "a missing file",
        () => editor.findings(),
        (all) => all.some(isMissing),
      );
      await editor.picture("renamed");
      renameSync(renamed, parts);
      await eventually(
        "no finding any more",
        () => editor.findings(),
        (all) => all.length === 0,
      );
    },
  },
  {
    name: "offers the parts that fit",
    async run(editor, folder) {
      const { text } = await open(editor, folder, "completion");
      const place = placeOf(text, /damper roll-damper for roll \{\s*fit (R-12)/);
      await eventually(
        "the other valving",
        () => editor.completions(place),
        (all) => all.includes("R-16"),
      );
    },
  },
  {
    name: "goes from an attachment to its eye",
    async run(editor, folder) {
      const { text } = await open(editor, folder, "definition");
      const target = await editor.definition(placeOf(text, /left\.rocker\.(roll-high)/));
      assert.equal(target.line, placeOf(text, /eye (roll-high)/).line);
    },
  },
  {
    name: "lays a line out in its canonical form",
    async run(editor, folder) {
      const { path, text } = await open(editor, folder, "format");
      await editor.type(placeOf(text, /track( )1480/), 1, "     ");
      await savedAs(editor, folder, path, (now) => now !== text);
      await editor.format();
      await savedAs(editor, folder, path, (now) => now === text);
    },
  },
];

/** The fix's title names the eye and its new coordinates. */
function movesEye(title: string): boolean {
  return /roll-low/.test(title) && /\(-?[\d.]+, -?[\d.]+, -?[\d.]+\)/.test(title);
}
