export interface Clock {
  /** The time, ms since 1970. */
  now(): number;
  /** Does something once, later; the answer calls it off. */
  after(ms: number, then: () => void): () => void;
}

export const browserClock: Clock = {
  now: () => Date.now(),
  after(ms, then) {
    const timer = setTimeout(then, ms);
    return () => clearTimeout(timer);
  },
};
