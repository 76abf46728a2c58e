/** Whether two values of JSON say the same, whatever the order of their keys. */
export function saysTheSame(a: unknown, b: unknown): boolean {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  return keys.every(
    (key) => Object.hasOwn(b, key) && saysTheSame(a[key as keyof typeof a], b[key as keyof typeof b]),
  );
}
