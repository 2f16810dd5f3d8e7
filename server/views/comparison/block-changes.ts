/**
 * What differs between two resolved blocks, line by line, whatever order the lines stand in.
 *
 * Invariant: two blocks that say the same give nothing; each property that differs gives one entry.
 */
import type { Concept } from "../../../grammar/vocabulary/word.js";
import type { ResolvedBlock, ResolvedRow, ResolvedStatement } from "../../model/car.js";
import { isSameNumber, isSameStatement, isSameValue } from "../../model/same.js";
import type { TreeStatement } from "../../model/tree.js";
import type { Change, ChangeGroup, Told } from "./change.js";
import { isElement, nameless } from "./renames.js";
import { differenceText, percent, rowText, statementText } from "./value-text.js";

/** Where a block stands: the path to it, and the heading that its lines are told under. */
export interface BlockAt {
  readonly path: readonly string[];
  readonly group: (statement: ResolvedStatement, block: ResolvedBlock) => ChangeGroup;
}

type Pair = readonly [old: ResolvedStatement | undefined, now: ResolvedStatement | undefined];
type Told2 = Pick<Change, "old" | "now">;

const EMPTY = { statements: [], rows: [] } as const;

export function blockChanges(
  old: ResolvedBlock | undefined,
  now: ResolvedBlock | undefined,
  at: BlockAt,
  passOver: (statement: ResolvedStatement) => boolean = () => false,
): readonly Change[] {
  const either = now ?? old;
  if (old === now || either === undefined) return [];
  const keep = (block: ResolvedBlock | undefined) => (block ?? EMPTY).statements.filter((one) => !passOver(one));
  const changes = pairsOf(keep(old), keep(now)).map((pair) => ({
    isOfPart: pair.some(isOfPart),
    isFit: pair.some((statement) => statement?.word === "fit"),
    found: pairChanges(pair, either, at),
  }));
  return underFits(changes);
}

const isOfPart = (statement: ResolvedStatement | undefined): boolean =>
  (statement as Partial<TreeStatement> | undefined)?.part !== undefined;

interface Found {
  readonly isOfPart: boolean;
  readonly isFit: boolean;
  readonly found: readonly Change[];
}

/** What another part brings with it is told under the part. */
function underFits(all: readonly Found[]): readonly Change[] {
  const [fit] = all.flatMap(({ isFit, found }) => (isFit ? found.filter(({ of }) => of === "part") : []));
  if (fit === undefined) return all.flatMap(({ found }) => found);
  const details = all.flatMap((one) => (one.isOfPart ? one.found : []));
  const whole = { ...fit, details, difference: partDifference(fit, details) };
  return all.flatMap((one) => (one.isOfPart ? [] : one.found.map((change) => (change === fit ? whole : change))));
}

/** More figures than that are told by themselves. */
const MOST_FIGURES = 3;

/** "torsion-bar.diameter -0.5 mm" */
function partDifference({ path }: Change, details: readonly Change[]): string | undefined {
  const own = path.slice(0, -"fit".length);
  const told = details.flatMap(({ path: at, difference }) =>
    difference === undefined ? [] : [`${at.slice(own.length)} ${difference}`],
  );
  return told.length === 0 || told.length < details.length || told.length > MOST_FIGURES ? undefined : told.join(", ");
}

/** Lines that belong together: by name, else by word; of several of one word the equal ones, then in their order. */
function pairsOf(old: readonly ResolvedStatement[], now: readonly ResolvedStatement[]): readonly Pair[] {
  const left = new Map<string, ResolvedStatement[]>();
  for (const statement of old) left.set(keyOf(statement), [...(left.get(keyOf(statement)) ?? []), statement]);
  const equal = new Map<ResolvedStatement, ResolvedStatement>();
  for (const statement of now) {
    const candidates = left.get(keyOf(statement)) ?? [];
    const index = candidates.findIndex((other) => isSameStatement(other, statement));
    const [found] = index < 0 ? [] : candidates.splice(index, 1);
    if (found !== undefined) equal.set(statement, found);
  }
  const pairs = now.map((statement): Pair => [equal.get(statement) ?? left.get(keyOf(statement))?.shift(), statement]);
  return [...pairs, ...[...left.values()].flat().map((statement): Pair => [statement, undefined])];
}

const keyOf = ({ word, name }: ResolvedStatement): string => (name === undefined ? word : `name ${name.text}`);

function pairChanges([old, now]: Pair, around: ResolvedBlock, at: BlockAt): readonly Change[] {
  const statement = now ?? old;
  if (statement === undefined || old === now) return [];
  const path = [...at.path, statement.name?.text ?? statement.word];
  const group = at.group(statement, around);
  const inside: BlockAt = { path: isPassedOver(statement, around) ? at.path : path, group: () => group };
  const make = (rest: Partial<Change> & Told2 & Pick<Change, "kind">): Change => ({
    of: kindOf(statement, around),
    path: path.join("."),
    group,
    difference: undefined,
    details: [],
    also: [],
    ...rest,
  });
  if (old === undefined || now === undefined) return [aloneChange(old, now, around.concept, inside, make)];
  return [
    ...valueChange(old, now, around.concept, make),
    ...(hasRows(old) || hasRows(now) ? [] : blockChanges(old.block, now.block, inside)),
    ...noteChange(old, now, make),
  ];
}

type Make = (rest: Partial<Change> & Told2 & Pick<Change, "kind">) => Change;

/** `linkage` and `wheel` of an axle may be left out of a path. */
const isPassedOver = ({ word }: ResolvedStatement, { concept }: ResolvedBlock): boolean =>
  concept === "axle" && (word === "linkage" || word === "wheel");

function kindOf(statement: ResolvedStatement, around: ResolvedBlock): Change["of"] {
  if (isElement(statement, around)) return "element";
  if (statement.word === "eye") return "eye";
  if (statement.word === "case") return "case";
  return statement.word === "fit" ? "part" : "property";
}

const told = (statement: ResolvedStatement | undefined, text: string): Told | undefined =>
  statement && { text, origin: statement.origin };

/** With the word in front, where it is a name that the path ends in. */
function ownText(statement: ResolvedStatement, concept: Concept): string {
  const text = hasRows(statement) ? tableText(statement) : statementText(statement, concept);
  return statement.name === undefined || statement.word === "eye" ? text : `${statement.word} ${text}`.trim();
}

function aloneChange(
  old: ResolvedStatement | undefined,
  now: ResolvedStatement | undefined,
  concept: Concept,
  inside: BlockAt,
  make: Make,
): Change {
  const one = (now ?? old) as ResolvedStatement;
  const details = hasRows(one) ? [] : blockChanges(old?.block, now?.block, inside);
  const text = ownText(one, concept) || linesText(details.length);
  return make({
    kind: now === undefined ? "removed" : "added",
    old: told(old, text),
    now: told(now, text),
    details,
  });
}

const linesText = (count: number): string => (count === 0 ? "yes" : count === 1 ? "1 line" : `${count} lines`);

function valueChange(old: ResolvedStatement, now: ResolvedStatement, concept: Concept, make: Make): readonly Change[] {
  if (hasRows(old) && hasRows(now)) return tableChange(old, now, make);
  const [before, after] = [nameless(old), nameless(now)];
  const isSame =
    old.word === now.word &&
    (old.form === now.form || old.values.length + now.values.length === 0) &&
    before.values.length === after.values.length &&
    before.values.every((value, i) => isSameValue(value, after.values[i] ?? value)) &&
    hasRows(old) === hasRows(now);
  if (isSame) return [];
  const texts = { old: told(old, ownText(old, concept)), now: told(now, ownText(now, concept)) };
  return [make({ kind: "changed", ...texts, difference: differenceText(before.values, after.values) })];
}

const hasRows = ({ block }: ResolvedStatement): boolean => block !== undefined && block.rows.length > 0;

const rowsOf = ({ block }: ResolvedStatement): readonly ResolvedRow[] => block?.rows ?? [];

/** Rows of a table by their keys; where it stands in the text or comes from a file makes no difference. */
function tableChange(old: ResolvedStatement, now: ResolvedStatement, make: Make): readonly Change[] {
  const [before, after] = [rowsOf(old), rowsOf(now)];
  const pairs = after.map((row) => [before.find(({ key }) => isSameValue(key, row.key)), row] as const);
  const gone = before.filter(({ key }) => !after.some((row) => isSameValue(key, row.key)));
  const differing = pairs.filter(([was, row]) => was === undefined || !isSameValue(was.value, row.value));
  if (differing.length === 0 && gone.length === 0) return [];
  const show = (rows: readonly ResolvedRow[]): string => listed(rows.map(rowText));
  const shownOld = [...differing.flatMap(([was]) => was ?? []), ...gone];
  const difference = scaled(pairs);
  return [
    make({
      kind: "changed",
      old: told(old, show(shownOld)),
      now: told(now, show(differing.map(([, row]) => row))),
      difference,
    }),
  ];
}

const MOST_ROWS = 4;

function listed(rows: readonly string[]): string {
  if (rows.length === 0) return "none of these rows";
  const shown = rows.slice(0, MOST_ROWS).join(", ");
  return rows.length > MOST_ROWS ? `${shown} and ${rows.length - MOST_ROWS} more rows` : shown;
}

const tableText = (statement: ResolvedStatement): string => listed(rowsOf(statement).map(rowText));

/** "all +10 %" where every row is the same multiple of what it was; else by how much the most. */
function scaled(pairs: readonly (readonly [ResolvedRow | undefined, ResolvedRow])[]): string | undefined {
  const ratios: number[] = [];
  for (const [was, { value }] of pairs) {
    if (was?.value.kind !== "number" || value.kind !== "number") return undefined;
    if (was.value.value === 0 && value.value === 0) continue;
    if (was.value.value === 0) return undefined;
    ratios.push(value.value / was.value.value - 1);
  }
  const [first] = ratios;
  if (first === undefined) return undefined;
  if (ratios.length > 1 && ratios.every((ratio) => isSameNumber(1 + ratio, 1 + first))) return `all ${percent(first)}`;
  const most = ratios.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a));
  return `up to ${percent(most)}`;
}

function noteChange(old: ResolvedStatement, now: ResolvedStatement, make: Make): readonly Change[] {
  const [before, after] = [noteText(old), noteText(now)];
  if (before === after) return [];
  return [
    make({
      of: "note",
      kind: before === "" ? "added" : after === "" ? "removed" : "changed",
      old: before === "" ? undefined : told(old, before),
      now: after === "" ? undefined : told(now, after),
    }),
  ];
}

export const noteText = ({ notes }: Pick<ResolvedStatement, "notes">): string =>
  notes.join(" ").replaceAll(/\s+/g, " ").trim();
