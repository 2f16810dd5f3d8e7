/**
 * What client and server say to each other about comparisons. Types only: a method's name is a literal type here.
 */

/** What a car or set-up is held against. */
export type CompareWith =
  | { readonly kind: "setup"; readonly uri: string; readonly name: string }
  /** The same one as it was committed: `HEAD`, a branch, a tag. */
  | { readonly kind: "revision"; readonly revision: string };

/** Asks for the comparison as a page to show; answered from the text as it stands in the editor. */
export type CompareMethod = "bellcrank/compare";

export interface CompareParams {
  readonly uri: string;
  /** The car or set-up; the one around `offset`, else the first of the file, where absent. */
  readonly name?: string;
  readonly offset?: number;
  readonly with: CompareWith;
  /** Set where only a text was changed since the last question: what is committed is taken as it was then. */
  readonly again?: boolean;
}

export type CompareAnswer =
  | {
      readonly kind: "page";
      /** Of the car or set-up that is compared. */
      readonly name: string;
      readonly headline: string;
      /** What stands inside the page, and how it is laid out; colours are the client's. */
      readonly body: string;
      readonly style: string;
      /** Files that it rests on: when one of them changes, it is another page. */
      readonly uses: readonly string[];
    }
  /** A sentence for the user. */
  | { readonly kind: "none"; readonly why: string };

/** Asks what a car or set-up can be held against. */
export type CompareChoicesMethod = "bellcrank/compareChoices";

export interface CompareChoicesParams {
  readonly uri: string;
  readonly name?: string;
  readonly offset?: number;
}

export interface CompareChoices {
  /** Undefined where the file declares no car. */
  readonly name: string | undefined;
  /** Other set-ups of the same car, what it derives from first. */
  readonly setups: readonly { readonly uri: string; readonly name: string; readonly isBase: boolean }[];
  readonly revisions:
    | { readonly kind: "git"; readonly branches: readonly string[]; readonly tags: readonly string[] }
    | { readonly kind: "none"; readonly why: string };
}

/** Asks for a file as it was committed, so that a line of the older side can be shown. */
export type CommittedTextMethod = "bellcrank/committedText";

export interface CommittedTextParams {
  readonly uri: string;
  readonly revision: string;
}

export type CommittedTextAnswer = { readonly text: string } | { readonly why: string };

/** Arguments of the client's command `bellcrank.compareWithBase`, as a lens passes them. */
export type CompareWithBaseArguments = readonly [uri: string, name: string, baseUri: string, baseName: string];
