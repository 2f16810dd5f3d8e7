/**
 * Work that is done in pieces by workers, handed on in the order of the pieces.
 *
 * Invariant: no more pieces are under way than there are places, so that memory does not grow with their number.
 */

/** @param run does one piece; @param take gets what came of each, in order, and is awaited */
export async function inOrder<Piece, Result>(
  pieces: Iterable<Piece>,
  places: number,
  run: (piece: Piece) => Promise<Result>,
  take: (result: Result, piece: Piece) => Promise<void> | void,
): Promise<void> {
  const waiting: { readonly piece: Piece; readonly result: Promise<Result> }[] = [];
  const next = async (): Promise<void> => {
    const first = waiting.shift();
    if (first !== undefined) await take(await first.result, first.piece);
  };
  for (const piece of pieces) {
    const result = run(piece);
    // Whoever fails while an earlier one is awaited is told when its turn comes.
    result.catch(() => undefined);
    waiting.push({ piece, result });
    if (waiting.length >= places) await next();
  }
  while (waiting.length > 0) await next();
}
