/** A map that forgets what was used longest ago, so that a day of editing does not fill the memory. */
export class BoundedCache<Key, Value> {
  readonly #entries = new Map<Key, Value>();
  readonly #limit: number;

  constructor(limit: number) {
    this.#limit = limit;
  }

  /** The kept value, or the one that `make` gives, kept from now on. */
  get(key: Key, make: () => Value): Value {
    const kept = this.#entries.get(key);
    if (kept !== undefined) {
      this.#entries.delete(key);
      this.#entries.set(key, kept);
      return kept;
    }
    const made = make();
    this.#entries.set(key, made);
    if (this.#entries.size > this.#limit) this.#forgetOldest();
    return made;
  }

  get size(): number {
    return this.#entries.size;
  }

  #forgetOldest(): void {
    for (const oldest of this.#entries.keys()) {
      this.#entries.delete(oldest);
      return;
    }
  }
}
