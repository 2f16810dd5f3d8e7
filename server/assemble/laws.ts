/** The force law of an element, by its kind; a law that cannot be computed says why in plain words. */
import type { Connection, Law } from "../elements/element.js";
import type { ElementModel } from "../model/car.js";
import { actuatorLaw } from "./actuator-law.js";
import { antiRollBarLaw } from "./bar-law.js";
import { damperLawOf } from "./damper-law.js";
import { gasSpringLaw } from "./gas-law.js";
import { inerterLaw } from "./inerter-law.js";
import { type Lawless, lawless } from "./lawless.js";
import { bumpStopLaw, springLawOf } from "./spring-law.js";

/** What a law may ask of a connection, whatever wheels it follows. */
export type Joined = Pick<Connection, "torsional" | "idle" | "levers" | "tee">;

/** What the law may have to know of the connection: whether it twists, and a bar's levers. */
export interface LawContext {
  readonly connection: Joined | undefined;
  /** The element's bars are tied to each other: two of them in series. */
  readonly tied: boolean;
}

export function lawOf(model: ElementModel, context: LawContext): Law | Lawless {
  switch (model.kind) {
    case "spring":
      return springLawOf(model.block, context.connection?.torsional, context.tied);
    case "bump-stop":
      return bumpStopLaw(model.block, context.connection?.torsional);
    case "damper":
      return damperLawOf(model.block, context.connection?.torsional);
    case "anti-roll-bar":
      return antiRollBarLaw(model, context.connection);
    case "inerter":
      return inerterLaw(model.block, context.connection?.torsional);
    case "gas-spring":
      return gasSpringLaw(model.block, context.connection?.torsional);
    case "actuator":
      return actuatorLaw(model.block, context.connection?.torsional);
    case "hydraulic-link":
      return lawless("its cylinders are not joined to anything");
  }
}
