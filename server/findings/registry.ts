/**
 * Every rule there is, in the order in which the pages list them. Adding a rule is a file under
 * `rules/<group>/` and a line here.
 *
 * Invariant: ids are unique, kebab-case and the file's name.
 */
import type { Rule } from "./finding.js";
import { beyondLimits } from "./rules/syntax/beyond-limits.js";
import { decimalComma } from "./rules/syntax/decimal-comma.js";
import { notText } from "./rules/syntax/not-text.js";
import { tightMinus } from "./rules/syntax/tight-minus.js";
import { unclosed } from "./rules/syntax/unclosed.js";
import { unreadableLine } from "./rules/syntax/unreadable-line.js";
import { overrideWithoutTarget } from "./rules/words/override-without-target.js";
import { reservedName } from "./rules/words/reserved-name.js";
import { unknownName } from "./rules/words/unknown-name.js";
import { unknownWord } from "./rules/words/unknown-word.js";
import { missingUnit } from "./rules/units/missing-unit.js";
import { unknownUnit } from "./rules/units/unknown-unit.js";
import { wrongDimension } from "./rules/units/wrong-dimension.js";
import { duplicateName } from "./rules/shape/duplicate-name.js";
import { duplicateProperty } from "./rules/shape/duplicate-property.js";
import { missingProperty } from "./rules/shape/missing-property.js";
import { tableOrder } from "./rules/shape/table-order.js";
import { wrongForm } from "./rules/shape/wrong-form.js";
import { implausibleValue } from "./rules/values/implausible-value.js";
import { rangeViolated } from "./rules/values/range-violated.js";
import { needlessOverride } from "./rules/unused/needless-override.js";
import { unusedLet } from "./rules/unused/unused-let.js";
import { unusedPart } from "./rules/unused/unused-part.js";
import { cycle } from "./rules/files/cycle.js";
import { fileNotFound } from "./rules/files/file-not-found.js";
import { measuredTable } from "./rules/files/measured-table.js";
import { coilBind } from "./rules/strength/coil-bind.js";
import { gapBeyondTravel } from "./rules/strength/gap-beyond-travel.js";
import { overStress } from "./rules/strength/over-stress.js";
import { overTravel } from "./rules/strength/over-travel.js";
import { rockerEye } from "./rules/strength/rocker-eye.js";
import { staticTwist } from "./rules/strength/static-twist.js";
import { unseated } from "./rules/strength/unseated.js";
import { beyondTravel } from "./rules/cases/beyond-travel.js";
import { groundContact } from "./rules/cases/ground-contact.js";
import { aeroDivergence } from "./rules/cases/aero-divergence.js";
import { caseNotSolved } from "./rules/cases/case-not-solved.js";
import { noEquilibrium } from "./rules/cases/no-equilibrium.js";
import { porpoising } from "./rules/cases/porpoising.js";
import { wheelLifts } from "./rules/cases/wheel-lifts.js";
import { asymmetry } from "./rules/mechanism/asymmetry.js";
import { coupling } from "./rules/mechanism/coupling.js";
import { gasExhausted } from "./rules/mechanism/gas-exhausted.js";
import { crossWeight } from "./rules/masses/cross-weight.js";
import { measuredResidual } from "./rules/masses/measured-residual.js";
import { massOutside } from "./rules/masses/mass-outside.js";
import { missedExpectation } from "./rules/mechanism/missed-expectation.js";
import { nearToggle } from "./rules/mechanism/near-toggle.js";
import { needlessClaim } from "./rules/mechanism/needless-claim.js";
import { pressureBelowAmbient } from "./rules/mechanism/pressure-below-ambient.js";
import { unbuildable } from "./rules/mechanism/unbuildable.js";
import { unreachableTravel } from "./rules/mechanism/unreachable-travel.js";
import { unservedMode } from "./rules/mechanism/unserved-mode.js";

export const rules: readonly Rule[] = [
  unreadableLine,
  unclosed,
  decimalComma,
  tightMinus,
  beyondLimits,
  notText,
  unknownWord,
  unknownName,
  reservedName,
  overrideWithoutTarget,
  unknownUnit,
  missingUnit,
  wrongDimension,
  missingProperty,
  duplicateProperty,
  duplicateName,
  wrongForm,
  tableOrder,
  rangeViolated,
  implausibleValue,
  needlessOverride,
  unusedPart,
  unusedLet,
  cycle,
  fileNotFound,
  measuredTable,
  coupling,
  needlessClaim,
  unservedMode,
  unreachableTravel,
  nearToggle,
  unbuildable,
  gasExhausted,
  pressureBelowAmbient,
  overStress,
  coilBind,
  unseated,
  gapBeyondTravel,
  overTravel,
  staticTwist,
  rockerEye,
  asymmetry,
  caseNotSolved,
  noEquilibrium,
  aeroDivergence,
  porpoising,
  groundContact,
  wheelLifts,
  beyondTravel,
  crossWeight,
  massOutside,
  measuredResidual,
  missedExpectation,
];
