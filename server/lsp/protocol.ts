/**
 * What client and server say to each other beyond the language server protocol. Types only: the
 * client may import nothing else of the server, so a method's name is a literal type here.
 */

/** Sent once, with `initialize`. */
export interface InitializationOptions {
  /** The `bellcrank.*` settings, nested as the editor nests them; later changes come as notifications. */
  readonly settings?: unknown;
  /** Address of the page that explains every finding; a finding's id is its anchor there. */
  readonly pages?: string;
  /** Commands that the client answers to, so that a lens may name them. */
  readonly commands?: readonly string[];
  /** Set by a client that answers `bellcrank/readText`. */
  readonly readsText?: boolean;
  /** Set by a client that sends `bellcrank/files` for folders that the server cannot list by itself. */
  readonly namesFiles?: boolean;
  /** Set by a client whose hovers draw SVG images that stand in their Markdown (`data:image/svg+xml`). */
  readonly drawsImages?: boolean;
}

/** Asks for the rates of one car or set-up as a page to read. */
export type RatesMethod = "bellcrank/rates";

export interface RatesParams {
  readonly uri: string;
  /** A car or set-up declared in that file; the first of the file where absent. */
  readonly name?: string;
}

/** `undefined` travels as null: the file declares no car or set-up of that name. */
export interface RatesPage {
  readonly name: string;
  readonly markdown: string;
}

/** Arguments of the client's command `bellcrank.showRates`, as a lens passes them. */
export type ShowRatesArguments = readonly [uri: string, name: string];

/**
 * The client names the language's files and the tables that the server cannot list by itself: those of folders that are not on its
 * disk, all of them in a browser. Sent once the server runs, and again, whole, when one comes or goes.
 */
export type FilesMethod = "bellcrank/files";

export interface FilesParams {
  readonly uris: readonly string[];
}

/** The server asks the client for a file that it cannot read by itself: one that is not on its disk, any file in a browser. */
export type ReadTextMethod = "bellcrank/readText";

export interface ReadTextParams {
  readonly uri: string;
}

export type ReadTextAnswer =
  | { readonly text: string }
  /** `outside`: in no folder of the workspace. */
  | { readonly missing: "missing" | "outside" | "not-text" };

/** Asks how the expectations of every car and set-up of one file stand; answered once all that it rests on is read. */
export type ExpectationsMethod = "bellcrank/expectations";

export interface ExpectationsParams {
  readonly uri: string;
}

export interface ExpectationsOfFile {
  /** Every file that the figures rest on, this one included. */
  readonly uses: readonly string[];
  /** Cars and set-ups with at least one expectation, inherited ones included, in the order of the text. */
  readonly cars: readonly ExpectationsOfCar[];
}

export interface ExpectationsOfCar {
  readonly name: string;
  readonly range: PlainRange;
  readonly expectations: readonly ExpectationAnswer[];
}

export interface ExpectationAnswer {
  /** As it stands behind `expect`, in canonical words; differs among those of one car. */
  readonly text: string;
  /** Where it is written: for an inherited one that may be another file. */
  readonly uri: string;
  readonly range: PlainRange;
  readonly verdict: "met" | "missed" | "not-judged";
  /** Figure, what is wanted, margin or reason in a sentence. */
  readonly message: string;
  /** "171.3 N/mm"; absent where it is not judged. */
  readonly actual?: string;
}

/** As the protocol counts: lines and UTF-16 code units from 0. */
export interface PlainRange {
  readonly start: { readonly line: number; readonly character: number };
  readonly end: { readonly line: number; readonly character: number };
}
