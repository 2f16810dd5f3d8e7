/**
 * The last few values by their keys, so that a day of editing does not fill the memory.
 *
 * A list, not a `Map`: for so few it is as fast, and a `Map` whose entries come and go leaves old tables behind that keep
 * the collector from letting go of what they once held.
 */
export class BoundedCache<Key, Value> {
  /** The one used last stands first. */
  readonly #entries: { readonly key: Key; readonly value: Value }[] = [];
  readonly #limit: number;

  constructor(limit: number) {
    this.#limit = limit;
  }

  /** The kept value, or the one that `make` gives, kept from now on. */
  get(key: Key, make: () => Value): Value {
    const at = this.#entries.findIndex((entry) => entry.key === key);
    const kept = this.#entries[at];
    if (kept !== undefined) {
      if (at > 0) this.#entries.splice(at, 1);
      if (at > 0) this.#entries.unshift(kept);
      return kept.value;
    }
    const value = make();
    this.#entries.unshift({ key, value });
    if (this.#entries.length > this.#limit) this.#entries.pop();
    return value;
  }

  get size(): number {
    return this.#entries.length;
  }
}
