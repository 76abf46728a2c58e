/** Carries a search that stops in between through to its end, for those who can wait. */
export function allAtOnce<T>(search: Iterator<unknown, T>): T {
  for (;;) {
    const { done, value } = search.next();
    if (done) return value;
  }
}
