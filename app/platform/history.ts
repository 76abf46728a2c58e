/** The browser's steps back and forth within the page. */
export interface History {
  /** What the step on which the page stands was made with. */
  readonly state: () => unknown;
  /** Makes a step; those ahead are gone. */
  readonly push: (state: unknown) => void;
  /** Goes so many steps, in its own time; `listen` tells of the arrival. */
  readonly go: (steps: number) => void;
  /** Tells when the user, or `go`, has come to another step. */
  readonly listen: (arrived: () => void) => void;
}

export const browserHistory: History = {
  state: () => history.state,
  push: (state) => history.pushState(state, ''),
  go: (steps) => history.go(steps),
  listen: (arrived) => window.addEventListener('popstate', arrived),
};
