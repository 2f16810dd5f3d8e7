/** `bellcrank/expectations`: how every expectation of a file stands, for an editor's view of tests. */
import type { LineTable } from "../../../grammar/index.js";
import type { FileView } from "../../snapshot/workspace.js";
import { type JudgedCar, type JudgedExpectation, judgedCars } from "../../views/expectations.js";
import { rangeOf } from "../convert.js";
import type { Feature } from "../feature.js";
import type {
  ExpectationAnswer,
  ExpectationsMethod,
  ExpectationsOfCar,
  ExpectationsOfFile,
  ExpectationsParams,
} from "../protocol.js";

const method: ExpectationsMethod = "bellcrank/expectations";

export const expectations: Feature = {
  capabilities: {},
  attach(connection, session) {
    connection.onRequest(method, async ({ uri }: ExpectationsParams): Promise<ExpectationsOfFile> => {
      const file = await session.arrivedFile(uri);
      return { uses: file.uses, cars: judgedCars(file).map((car) => carAnswer(file, car)) };
    });
  },
};

const carAnswer = (file: FileView, { name, nameOrigin, expectations: judged }: JudgedCar): ExpectationsOfCar => ({
  name,
  range: rangeOf(file.parsed.lines, nameOrigin),
  expectations: judged.flatMap((one) => answerOf(file, one)),
});

/** Nothing is answered for a place that is gone since. */
function answerOf(file: FileView, judged: JudgedExpectation): readonly ExpectationAnswer[] {
  const { text, origin, verdict, message, actual } = judged;
  const lines = linesOf(file, origin.uri);
  if (lines === undefined) return [];
  const said = { text, uri: origin.uri, range: rangeOf(lines, origin), verdict, message };
  return [actual === undefined ? said : { ...said, actual }];
}

const linesOf = (file: FileView, uri: string): LineTable | undefined =>
  (uri === file.uri ? file.parsed : file.parsedOf(uri))?.lines;
