/**
 * A function that works each thing out once: asked again of the same object, it gives back what it gave. What
 * was worked out is kept for as long as the object is.
 *
 * @param make must depend on nothing but what it is kept by
 * @param keptBy the part of what is asked with that the answer is made from, where not all of it is
 */
/*#__NO_SIDE_EFFECTS__*/
export function once<Asked extends object, Made>(
  make: (asked: Asked) => Made,
  keptBy: (asked: Asked) => object = (asked) => asked,
): (asked: Asked) => Made {
  const kept = new WeakMap<object, { readonly made: Made }>();
  return (asked) => keptIn(kept, keptBy(asked), () => ({ made: make(asked) })).made;
}

/** A map of any kind, weak ones too. */
interface Keeps<Key, Value> {
  get(key: Key): Value | undefined;
  set(key: Key, value: Value): unknown;
}

/** What a map keeps under a key; made at the first asking. `undefined` is not kept. */
export function keptIn<Key, Value>(map: Keeps<Key, Value>, key: Key, make: () => Value): Value {
  const known = map.get(key);
  if (known !== undefined) return known;
  const made = make();
  map.set(key, made);
  return made;
}
