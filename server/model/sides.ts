/**
 * Left and right: which lines of an axle exist on each side, and how a line written for the right
 * side becomes one in the frame of a left one (y turned round), in which the tree keeps it.
 */
import type { ResolvedRow, ResolvedValue } from "./car.js";
import type { TreeBlock, TreeStatement } from "./tree.js";

/** −0 would be another number than 0 to whoever compares texts. */
const turned = (y: number): number => (y === 0 ? 0 : -y);

/** (x, y, z) or, in a planar linkage, (y, z). */
export function mirrorCoordinates(point: readonly number[]): readonly number[] {
  const y = point.length === 2 ? 0 : 1;
  return point.map((coordinate, index) => (index === y ? turned(coordinate) : coordinate));
}

function mirrorValue(value: ResolvedValue): ResolvedValue {
  if (value.kind === "point") return { ...value, value: mirrorCoordinates(value.value) };
  if (value.kind !== "attachment" || value.point === undefined) return value;
  return { ...value, point: { ...value.point, value: mirrorCoordinates(value.point.value) } };
}

const mirrorRow = (row: ResolvedRow): ResolvedRow => ({
  ...row,
  key: mirrorValue(row.key),
  value: mirrorValue(row.value),
});

export function mirrorStatement(statement: TreeStatement): TreeStatement {
  const { formula } = statement;
  return {
    ...statement,
    values: statement.values.map(mirrorValue),
    block: statement.block && mirrorBlock(statement.block),
    formula: formula && { ...formula, mirrored: !formula.mirrored },
  };
}

function mirrorBlock(block: TreeBlock): TreeBlock {
  return { ...block, statements: block.statements.map(mirrorStatement), rows: block.rows.map(mirrorRow) };
}

const bothEnds: ReadonlySet<string> = new Set(["lever", "drop-link"]);

/** Whether an element exists once a side. */
export function isCornerElement(statement: TreeStatement): boolean {
  return statement.values.some((value) => value.kind === "modes" && value.modes.some((mode) => mode.text === "corner"));
}

/** Whether something inside this statement of an axle may differ between the sides; `inside` is the word within it. */
export function mayDiffer(statement: TreeStatement, inside: string | undefined): boolean {
  if (statement.word === "linkage" || statement.word === "wheel" || isCornerElement(statement)) return true;
  return statement.word === "anti-roll-bar" && inside !== undefined && bothEnds.has(inside);
}
