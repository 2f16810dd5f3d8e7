/**
 * Whether two readings of a file describe the same cars. How a part comes to its element (`fit`) is left out: that is what
 * some refactorings change, and the figures that it brings are compared.
 */
import type { CheckedCar } from "../findings/context.js";
import type { AxleModel, CarModel, ResolvedBlock, ResolvedStatement } from "../model/car.js";
import { isSameBlock } from "../model/same.js";

type Cars = readonly Pick<CheckedCar, "model">[];

export function areSameCars(before: Cars, after: Cars): boolean {
  return (
    before.length === after.length &&
    before.every(({ model }, index) => {
      const other = after[index]?.model;
      return other !== undefined && isSameCar(model, other);
    })
  );
}

function isSameCar(a: CarModel, b: CarModel): boolean {
  return (
    a.name === b.name &&
    a.setup === b.setup &&
    a.bases.join(" ") === b.bases.join(" ") &&
    isSameBlock(withoutFits(a.block), withoutFits(b.block)) &&
    isSameRight(a.axles.front, b.axles.front) &&
    isSameRight(a.axles.rear, b.axles.rear)
  );
}

function isSameRight(a: AxleModel | undefined, b: AxleModel | undefined): boolean {
  return isSameBlock(rightOf(a), rightOf(b));
}

function rightOf(axle: AxleModel | undefined): ResolvedBlock | undefined {
  const block = axle?.rightBlock ?? axle?.block;
  return block && withoutFits(block);
}

function withoutFits(block: ResolvedBlock): ResolvedBlock {
  const statements = block.statements.filter(({ word }) => word !== "fit").map(inside);
  return { ...block, statements };
}

const inside = (statement: ResolvedStatement): ResolvedStatement =>
  statement.block === undefined ? statement : { ...statement, block: withoutFits(statement.block) };
