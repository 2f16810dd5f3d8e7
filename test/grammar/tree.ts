/** Walks over a tree: its nodes with their parents, for tests of spans and of what is still there. */
import type { Node } from "../../grammar/index.js";

/** Visits every node below `node` with its parent, in text order. */
export function walk(node: Node, visit: (node: Node, parent: Node) => void): void {
  for (const child of childrenOf(node)) {
    visit(child, node);
    walk(child, visit);
  }
}

/** In text order. A statement's notes stand above it and outside of its span, so they are not here. */
export function childrenOf(node: Node): readonly Node[] {
  switch (node.kind) {
    case "document":
    case "block":
      return node.entries;
    case "statement":
      return [node.head, ...node.items, ...(node.block === undefined ? [] : [node.block])];
    case "row":
      return [node.key, node.value];
    case "path":
      return node.segments;
    case "tuple":
      return [...node.members, ...(node.unit === undefined ? [] : [node.unit])];
    case "group":
      return [node.inner, ...(node.unit === undefined ? [] : [node.unit])];
    case "quantity":
      return node.unit === undefined ? [] : [node.unit];
    case "range":
      return [node.from, node.to];
    case "binary":
      return [node.left, node.right];
    case "negation":
      return [node.operand];
    default:
      return [];
  }
}
