/**
 * Holds a log against the published schema of SARIF 2.1.0 (OASIS), as it lies in test/data: taken unchanged from the npm
 * package @microsoft/jest-sarif 1.0.0-beta.0 (MIT licence), where it is lib/schemas/sarif-2.1.0-rtm.5.json. The package
 * itself is not used, since it would bring an older validator with it.
 */
import { readFileSync } from "node:fs";
import { Ajv } from "ajv";

interface Draft04Schema {
  id?: string;
  $schema?: string;
}

/** RFC 3986: what a reference may be written with, and `%` only before two hexadecimal digits. */
const isReference = (text: string): boolean => /^(?:[\w.~:/?#[\]@!$&'()*+,;=-]|%[\dA-F]{2})*$/i.test(text);

export function sarifProblems(output: string): unknown {
  // Draft 4 of JSON Schema: of what differs from later ones the schema uses only these two words.
  const { id, $schema, ...schema } = JSON.parse(
    readFileSync("test/data/sarif-2.1.0-rtm.5.json", "utf8"),
  ) as Draft04Schema;
  if (id === undefined || $schema?.includes("draft-04") !== true) return "not the schema that was expected";
  const ajv = new Ajv({
    allErrors: true,
    strict: false,
    // One of its patterns is none to the stricter reading of regular expressions.
    unicodeRegExp: false,
    formats: {
      uri: (text) => URL.canParse(text) && isReference(text),
      "uri-reference": isReference,
      "date-time": (text) => !Number.isNaN(Date.parse(text)),
    },
  });
  const validate = ajv.compile(schema);
  return validate(JSON.parse(output)) ? [] : validate.errors;
}
