/** `bellcrank/rates`: all figures of a car or set-up as a page to read. */
import { ratesMarkdown } from "../../views/rates-markdown.js";
import type { Feature } from "../feature.js";
import type { RatesMethod, RatesPage, RatesParams } from "../protocol.js";

const method: RatesMethod = "bellcrank/rates";

export const rates: Feature = {
  capabilities: {},
  attach(connection, session) {
    connection.onRequest(method, ({ uri, name }: RatesParams): RatesPage | null => {
      const { cars } = session.file(uri);
      const car = name === undefined ? cars[0] : cars.find(({ model }) => (model.setup ?? model.name) === name);
      return car === undefined ? null : { name: car.model.setup ?? car.model.name, markdown: ratesMarkdown(car) };
    });
  },
};
