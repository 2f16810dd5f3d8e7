/** Linked editing: left and right lines of their own that mirror each other are typed as one. */
import { linkedPlaces } from "../../refactorings/both-sides.js";
import { rangeOf } from "../convert.js";
import type { Feature } from "../feature.js";

/** What may be typed and still be one value or name; a sign is not, since the other side may have the other one. */
const PIECE = "[\\w.-]*";

export const linkedEditing: Feature = {
  capabilities: { linkedEditingRangeProvider: true },
  attach(connection, session) {
    connection.languages.onLinkedEditingRange(({ textDocument, position }) => {
      const file = session.file(textDocument.uri);
      const { lines } = file.parsed;
      const places = linkedPlaces(file, lines.offset(position));
      return places.length === 0 ? null : { ranges: places.map((place) => rangeOf(lines, place)), wordPattern: PIECE };
    });
  },
};
