export interface Clock {
  /** Does something once, later; the answer calls it off. */
  after(ms: number, then: () => void): () => void;
}

export const browserClock: Clock = {
  after(ms, then) {
    const timer = setTimeout(then, ms);
    return () => clearTimeout(timer);
  },
};
