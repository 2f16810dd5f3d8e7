/** The dotted place of a block in its car, innermost step last; shared from step to step. */
export interface Place {
  readonly segment: string;
  readonly outer: Place | undefined;
}

export function pathOf(place: Place | undefined): string[] {
  const path: string[] = [];
  for (let here = place; here !== undefined; here = here.outer) path.push(here.segment);
  return path.reverse();
}
