/** The address that the page was opened with. */
export interface Address {
  /** All of it. */
  readonly whole: () => string;
  /** Takes away what stands behind the sign; the page stays. */
  readonly clear: () => void;
  /** Tells when something else was put behind the sign. */
  readonly listen: (changed: () => void) => () => void;
}

export const browserAddress = (): Address => ({
  whole: () => location.href,
  clear: () => history.replaceState(history.state, '', location.pathname + location.search),
  listen(changed) {
    window.addEventListener('hashchange', changed);
    return () => window.removeEventListener('hashchange', changed);
  },
});

/** The page's own address, without what stands behind its sign. */
export const pageAddress = (): string => location.href.split('#')[0] ?? '';
