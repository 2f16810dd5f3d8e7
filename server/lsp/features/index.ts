/** Everything that the server can do, in one list. */
import type { Feature } from "../feature.js";
import { codeActions } from "./code-actions.js";
import { codeLens } from "./code-lens.js";
import { compare } from "./compare.js";
import { completion } from "./completion.js";
import { definition } from "./definition.js";
import { documentLinks } from "./document-links.js";
import { expectations } from "./expectations.js";
import { folding } from "./folding.js";
import { formatting } from "./formatting.js";
import { hover } from "./hover.js";
import { inlayHints } from "./inlay-hints.js";
import { linkedEditing } from "./linked-editing.js";
import { provenance } from "./provenance.js";
import { rates } from "./rates.js";
import { mechanism } from "./mechanism.js";
import { moveEye } from "./move-eye.js";
import { moveFiles } from "./move-files.js";
import { newCar } from "./new-car.js";
import { panelCurves } from "./panel-curves.js";
import { references } from "./references.js";
import { rename } from "./rename.js";
import { selectionRanges } from "./selection-ranges.js";
import { semanticTokens } from "./semantic-tokens.js";
import { sheet } from "./sheet.js";
import { signatureHelp } from "./signature-help.js";
import { startHere } from "./start-here.js";
import { symbols } from "./symbols.js";
import { typeHierarchy } from "./type-hierarchy.js";

export const features: readonly Feature[] = [
  hover,
  inlayHints,
  codeLens,
  codeActions,
  completion,
  signatureHelp,
  definition,
  references,
  provenance,
  rename,
  moveFiles,
  linkedEditing,
  symbols,
  typeHierarchy,
  folding,
  selectionRanges,
  semanticTokens,
  formatting,
  documentLinks,
  rates,
  mechanism,
  moveEye,
  panelCurves,
  compare,
  newCar,
  startHere,
  sheet,
  expectations,
];
