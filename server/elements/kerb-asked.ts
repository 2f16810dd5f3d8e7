/** A kerb as the text has it: what `assemble` hands to the analysis. SI. */

/** As it is written; what is undefined is not. */
export interface KerbAsked {
  readonly name: string;
  readonly height: number | undefined;
  readonly length: number | undefined;
  readonly shape: string | undefined;
  readonly contact: number | undefined;
  readonly wheels: string | undefined;
  readonly axles: string | undefined;
  readonly speed: number | undefined;
  readonly case: string | undefined;
  readonly after: number | undefined;
}
