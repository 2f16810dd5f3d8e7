/**
 * Two versions of a text that grew from one, put together statement by statement: what only one of them changed is taken
 * from it, wherever it stands; what both changed differently is a conflict, and both ways of it are kept.
 *
 * Invariant: nothing that either version wrote is lost, unless the other version left it alone and this one took it out.
 * Comments are never a conflict: where both changed one, both stay.
 */
import { type Body, noBody, type Piece, saysSame } from "./pieces.js";

export interface Conflict {
  /** Comments above it that need no decision. */
  readonly lead: readonly string[];
  /** `setup wet from quill > front.third.rate` */
  readonly path: readonly string[];
  /** Undefined where that version does not have it. */
  readonly base: Piece | undefined;
  readonly ours: Piece | undefined;
  readonly theirs: Piece | undefined;
}

export interface MergedPiece extends Omit<Piece, "body"> {
  readonly body: MergedBody | undefined;
}

export interface MergedBody extends Omit<Body, "pieces"> {
  readonly pieces: readonly (MergedPiece | { readonly conflict: Conflict })[];
}

export interface Merged {
  readonly body: MergedBody;
  readonly conflicts: readonly Conflict[];
}

export function threeWay(base: Body, ours: Body, theirs: Body): Merged {
  const conflicts: Conflict[] = [];
  const body = mergeBodies(base, ours, theirs, { path: [], conflicts });
  return { body, conflicts };
}

interface Place {
  readonly path: readonly string[];
  readonly conflicts: Conflict[];
}

function mergeBodies(base: Body, ours: Body, theirs: Body, place: Place): MergedBody {
  const [inBase, inOurs, inTheirs] = [base, ours, theirs].map(({ pieces }) => byKey(pieces));
  const pieces = orderOf(base, ours, theirs).flatMap((key) => {
    const merged = mergePiece(inBase?.get(key), inOurs?.get(key), inTheirs?.get(key), {
      ...place,
      path: [...place.path, key],
    });
    return merged ?? [];
  });
  const open = bothComments([base.open ?? ""], [ours.open ?? ""], [theirs.open ?? ""]).join(" ");
  return { open: open === "" ? undefined : open, pieces, foot: bothComments(base.foot, ours.foot, theirs.foot) };
}

const byKey = (pieces: readonly Piece[]): ReadonlyMap<string, Piece> =>
  new Map(pieces.map((piece) => [piece.key, piece]));

function mergePiece(
  base: Piece | undefined,
  ours: Piece | undefined,
  theirs: Piece | undefined,
  place: Place,
): MergedBody["pieces"][number] | undefined {
  if (ours === undefined && theirs === undefined) return undefined;
  const conflict = (): { conflict: Conflict } => {
    const lead = ours && theirs ? bothComments(base?.lead ?? [], ours.lead, theirs.lead) : [];
    const bare = (piece: Piece | undefined): Piece | undefined =>
      lead.length > 0 && piece ? { ...piece, lead: [] } : piece;
    const found = { path: place.path, lead, base: bare(base), ours: bare(ours), theirs: bare(theirs) };
    place.conflicts.push(found);
    return { conflict: found };
  };
  if (ours === undefined || theirs === undefined) {
    const left = ours ?? theirs;
    if (base === undefined || left === undefined) return left;
    // One took it out: that counts where the other left it alone.
    return saysSame(base, left) ? undefined : conflict();
  }
  const from = picked(base, ours, theirs);
  if (from === undefined || !agreeOnBlock(base, ours, theirs)) return conflict();
  const tails = bothComments([base?.tail ?? ""], [ours.tail ?? ""], [theirs.tail ?? ""]);
  return {
    key: ours.key,
    header: from.header,
    meaning: from.meaning,
    // Two comments cannot stand behind one statement: the second goes above it.
    lead: [...bothComments(base?.lead ?? [], ours.lead, theirs.lead), ...tails.slice(1)],
    tail: tails[0] === "" ? undefined : tails[0],
    body: blockOf(base, ours, theirs, place),
  };
}

/** The one that changed; undefined where both did, and mean something else by it. */
function picked(base: Piece | undefined, ours: Piece, theirs: Piece): Piece | undefined {
  // Where nobody means anything else, a new way to write it is taken from whoever has one.
  const rewritten = base?.header === ours.header ? theirs : ours;
  if (ours.meaning === theirs.meaning) return base?.meaning === ours.meaning ? rewritten : ours;
  if (theirs.meaning === base?.meaning) return ours;
  return ours.meaning === base?.meaning ? theirs : undefined;
}

/** Whether a block comes or goes on one side only, if at all. */
function agreeOnBlock(base: Piece | undefined, ours: Piece, theirs: Piece): boolean {
  if ((ours.body === undefined) === (theirs.body === undefined)) return true;
  return base !== undefined && (saysSame(base, ours) || saysSame(base, theirs));
}

function blockOf(base: Piece | undefined, ours: Piece, theirs: Piece, place: Place): MergedBody | undefined {
  if (ours.body !== undefined && theirs.body !== undefined)
    return mergeBodies(base?.body ?? noBody, ours.body, theirs.body, place);
  return base !== undefined && saysSame(base, ours) ? theirs.body : ours.body;
}

/** The comments that one side changed, or those of both where both did: ours, then what theirs has beyond them. */
function bothComments(base: readonly string[], ours: readonly string[], theirs: readonly string[]): readonly string[] {
  const words = (lines: readonly string[]): string => lines.filter((line) => line !== "").join("\n");
  if (words(theirs) === words(base) || words(ours) === words(theirs)) return ours;
  if (words(ours) === words(base)) return theirs;
  return [...ours.filter((line) => line !== ""), ...theirs.filter((line) => line !== "" && !ours.includes(line))];
}

/** Ours, with what is new in theirs behind its neighbour there; the other way round where only theirs is in another order. */
function orderOf(base: Body, ours: Body, theirs: Body): readonly string[] {
  const keys = [base, ours, theirs].map(({ pieces }) => pieces.map(({ key }) => key));
  const [inBase = [], inOurs = [], inTheirs = []] = keys;
  const [own, others] = [new Set(inOurs), new Set(inTheirs)];
  const common = new Set(inBase.filter((key) => own.has(key) && others.has(key)));
  const order = (all: readonly string[]): string => all.filter((key) => common.has(key)).join("\n");
  const onlyTheirs = order(inOurs) === order(inBase) && order(inTheirs) !== order(inBase);
  return onlyTheirs ? withOthers(inTheirs, inOurs) : withOthers(inOurs, inTheirs);
}

/** Each new one behind its neighbour, and behind what the first put there. */
function withOthers(first: readonly string[], second: readonly string[]): readonly string[] {
  const known = new Set(first);
  const inSecond = new Set(second);
  // Behind each key of the first, in order, what of the second has it as its neighbour.
  const behind = new Map<string | undefined, string[]>();
  let neighbour: string | undefined;
  for (const key of second) {
    if (known.has(key)) neighbour = key;
    else behind.set(neighbour, [...(behind.get(neighbour) ?? []), key]);
  }
  const all = [...(behind.get(undefined) ?? [])];
  let waiting: readonly string[] = [];
  for (const key of first) {
    if (inSecond.has(key)) {
      all.push(...waiting);
      waiting = behind.get(key) ?? [];
    }
    all.push(key);
  }
  return [...all, ...waiting];
}
