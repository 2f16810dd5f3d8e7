/** What only a page can show: colours, squiggles, the rendered pages, the status bar. */
import { eventually } from "../eventually.js";
import type { Folder } from "../folder.js";
import { placeOf } from "../places.js";
import { type Coloured, colouredPieces } from "./page/text.js";
import { goTo } from "./page/workbench.js";
import type { PageEditor } from "./page-editor.js";

export interface PageCheck {
  readonly name: string;
  run(editor: PageEditor, folder: Folder): Promise<void>;
}

export const pageChecks: readonly PageCheck[] = [
  {
    name: "colours words, numbers, texts and comments apart",
    async run(editor, folder) {
      const path = folder.car("colours");
      await editor.open(path);
      await goTo(editor.page, placeOf(folder.text(path), /wheelbase/));
      const distinct = (pieces: readonly Coloured[]): boolean => {
        const colours = [/^wheelbase/, /^2540$/, /^"Quill 7/, /^# ready to run/].map((pattern) =>
          colourOf(pieces, pattern),
        );
        return !colours.includes(undefined) && new Set(colours).size === colours.length;
      };
      await eventually("four different colours", () => colouredPieces(editor.page), distinct);
    },
  },
];

function colourOf(pieces: readonly Coloured[], pattern: RegExp): string | undefined {
  return pieces.find(({ text }) => pattern.test(text))?.colour;
}
