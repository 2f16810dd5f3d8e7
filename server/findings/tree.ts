/**
 * Finding one's way back from a place in the text to the syntax around it, for fixes.
 *
 * Invariant: reads the tree only; depth is bounded by the parser's own limit.
 */
import type { Block, Document, Entry, Item, Name, Quantity, Row, Span, Statement, Unit } from "../../grammar/index.js";

export function contains(outer: Span, inner: Span): boolean {
  return outer.start <= inner.start && inner.end <= outer.end;
}

/** The entry of the list that holds the place. Entries stand in order and apart, so a binary search finds it. */
function holding(entries: readonly Entry[], span: Span): Entry | undefined {
  let low = 0;
  let high = entries.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((entries[middle]?.start ?? 0) <= span.start) low = middle + 1;
    else high = middle;
  }
  const found = entries[low - 1];
  return found && contains(found, span) ? found : undefined;
}

/** The innermost statement around the place. */
export function statementAt(document: Document, span: Span): Statement | undefined {
  let found: Statement | undefined;
  let entries: readonly Entry[] = document.entries;
  for (;;) {
    const inside = holding(entries, span);
    if (inside?.kind !== "statement") return found;
    found = inside;
    if (!inside.block || !contains(inside.block, span)) return found;
    entries = inside.block.entries;
  }
}

/** The innermost block around the place. */
export function blockAt(document: Document, span: Span): Block | undefined {
  const statement = statementAt(document, span);
  if (statement?.block && contains(statement.block, span)) return statement.block;
  return statement && blockAround(document, statement);
}

/** The block that a statement stands in; undefined at the top level. */
function blockAround(document: Document, statement: Statement): Block | undefined {
  let found: Block | undefined;
  let entries: readonly Entry[] = document.entries;
  for (;;) {
    const inside = holding(entries, statement);
    if (inside?.kind !== "statement" || inside === statement || !inside.block) return found;
    found = inside.block;
    entries = inside.block.entries;
  }
}

/** The block whose opening brace stands here. */
export function blockFrom(document: Document, { start }: Span): Block | undefined {
  for (const entry of allEntries(document.entries)) {
    if (entry.kind === "statement" && entry.block?.start === start) return entry.block;
  }
  return undefined;
}

/** The outermost value that begins here. */
export function itemFrom(document: Document, { start }: Span): Item | undefined {
  for (const entry of allEntries(document.entries)) {
    for (const item of itemsOf(entry)) {
      for (const node of inItem(item))
        if (node.start === start && node.kind !== "unit" && node.kind !== "name") return node;
    }
  }
  return undefined;
}

/** The innermost statement or row around the place. */
export function entryAt(document: Document, span: Span): Entry | undefined {
  const entries = blockAt(document, span)?.entries ?? document.entries;
  return holding(entries, span);
}

function itemsOf(entry: Entry): readonly Item[] {
  return entry.kind === "row" ? [entry.key, entry.value] : [entry.head, ...entry.items];
}

/** The item and all that it is made of. A stack instead of recursion: a sum may have ten thousand terms. */
function* inItem(root: Item): Generator<Item | Unit | Name> {
  const pending: (Item | Unit | Name)[] = [root];
  for (let node = pending.pop(); node; node = pending.pop()) {
    yield node;
    pending.push(...childrenOf(node).reverse());
  }
}

function childrenOf(node: Item | Unit | Name): (Item | Unit | Name)[] {
  switch (node.kind) {
    case "quantity":
      return node.unit ? [node.unit] : [];
    case "tuple":
      return node.unit ? [...node.members, node.unit] : [...node.members];
    case "range":
      return [node.from, node.to];
    case "path":
      return [...node.segments];
    case "binary":
      return [node.left, node.right];
    case "negation":
      return [node.operand];
    case "group":
      return node.unit ? [node.inner, node.unit] : [node.inner];
    case "text":
    case "unit":
    case "name":
      return [];
  }
}

/** Everything in the values of the statement or row around the place, blocks left out. */
function* around(document: Document, span: Span): Generator<Item | Unit | Name> {
  const entry = entryAt(document, span);
  if (entry) for (const item of itemsOf(entry)) yield* inItem(item);
}

/** The unit inside the place, if there is exactly one. */
export function unitIn(document: Document, span: Span): Unit | undefined {
  const units: Unit[] = [];
  for (const node of around(document, span)) if (node.kind === "unit" && contains(span, node)) units.push(node);
  return units.length === 1 ? units[0] : undefined;
}

/** The plain number inside the place, if there is exactly one. */
export function quantityIn(document: Document, span: Span): Quantity | undefined {
  const found: Quantity[] = [];
  for (const node of around(document, span)) if (node.kind === "quantity" && contains(span, node)) found.push(node);
  return found.length === 1 ? found[0] : undefined;
}

/** All units in the file, as written, most used first. */
export function unitsUsed(document: Document): readonly string[] {
  const counts = new Map<string, number>();
  for (const entry of allEntries(document.entries)) {
    for (const item of itemsOf(entry)) {
      for (const node of inItem(item)) {
        if (node.kind === "unit") counts.set(node.text, (counts.get(node.text) ?? 0) + 1);
      }
    }
  }
  return [...counts].sort((a, b) => b[1] - a[1]).map(([text]) => text);
}

function* allEntries(entries: readonly Entry[]): Generator<Statement | Row> {
  for (const entry of entries) {
    yield entry;
    if (entry.kind === "statement" && entry.block) yield* allEntries(entry.block.entries);
  }
}
