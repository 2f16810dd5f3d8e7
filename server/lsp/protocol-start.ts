/** What client and server say to each other about a new car and about setup sheets. Types only. */

/** Asks what a new car may be: questions for quick picks, the usual answer first. */
export type NewCarQuestionsMethod = "bellcrank/newCarQuestions";

export interface NewCarQuestions {
  readonly choices: readonly {
    readonly of: string;
    readonly asks: string;
    readonly options: readonly { readonly value: string; readonly label: string }[];
    /** Answers to `corner` that make the question needless. */
    readonly notFor: readonly string[];
  }[];
  readonly yesOrNo: readonly { readonly of: string; readonly asks: string; readonly usual: boolean }[];
}

/** Asks for the files of a car; nothing is written by the server. */
export type NewCarMethod = "bellcrank/newCar";

export interface NewCarParams {
  readonly name: string;
  readonly title: string;
  /** By `of` of the questions; what is missing is as usual. */
  readonly answers: Readonly<Record<string, string | boolean>>;
}

export interface NewCarAnswer {
  /** Empty where there is a reason. */
  readonly files: readonly { readonly name: string; readonly text: string }[];
  /** Why a car cannot be called so. */
  readonly why?: string;
}

/** Asks for the setup sheet of a car or set-up as a page of its own: no scripts, nothing to fetch. */
export type SheetMethod = "bellcrank/sheet";

export interface SheetParams {
  readonly uri: string;
  /** The first of the file where absent. */
  readonly name?: string;
}

/** Null: the file declares no car or set-up of that name. */
export interface SheetPage {
  readonly name: string;
  readonly html: string;
}
