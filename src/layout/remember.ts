/** A function that is asked once for each object, whose answer is kept as long as the object is. */
export function remember<K extends object, V>(make: (key: K) => V): (key: K) => V {
  const kept = new WeakMap<K, V>();
  return (key) => {
    const known = kept.get(key);
    if (known !== undefined || kept.has(key)) return known as V;
    const made = make(key);
    kept.set(key, made);
    return made;
  };
}
