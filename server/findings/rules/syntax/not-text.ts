/**
 * The file is not UTF-8 text: it holds bytes that stand for no letter. It was saved in another
 * encoding (often by a spreadsheet or an old editor), or it is no text at all.
 *
 * Letters that were lost may have been part of a name, and a name that reads differently is
 * another part. Save the file again as UTF-8.
 */
import { fromSyntax } from "../../from-problems.js";
import type { Rule } from "../../finding.js";

const meta = { id: "not-text", title: "The file is not UTF-8 text", cost: "syntax", severity: "error" } as const;

export const notText: Rule = {
  meta,
  check: (context) =>
    fromSyntax(meta, context, ["not-utf8"], () => ({
      message:
        "There are bytes here that are no UTF-8 text, so letters are lost and names may not match. Save the file again as UTF-8.",
    })),
};
