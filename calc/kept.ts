/** A function of one object that never changes: its answer is worked out once and kept as long as the object is. */
export function onceFor<Of extends object, T extends NonNullable<unknown>>(make: (of: Of) => T): (of: Of) => T {
  const kept = new WeakMap<Of, T>();
  return (of) => {
    let found = kept.get(of);
    if (found === undefined) {
      found = make(of);
      kept.set(of, found);
    }
    return found;
  };
}

/** How many answers are kept with one object: what is typed on the way to a value is not kept for ever. */
const most = 64;

/**
 * Keeps what was computed with the object that it was computed of, by a key of everything else that it hangs on. An outline that did not
 * change is the same object from one edit to the next, and so is what follows from it.
 */
export function keptWith<Of extends object, T>(): (of: Of, key: string, compute: () => T) => T {
  const kept = new WeakMap<Of, Map<string, { readonly value: T }>>();
  return (of, key, compute) => {
    let answers = kept.get(of);
    if (answers === undefined) {
      answers = new Map();
      kept.set(of, answers);
    }
    const before = answers.get(key);
    if (before !== undefined) {
      answers.delete(key);
      answers.set(key, before);
      return before.value;
    }
    const value = compute();
    answers.set(key, { value });
    for (const oldest of answers.keys()) {
      if (answers.size <= most) break;
      answers.delete(oldest);
    }
    return value;
  };
}
