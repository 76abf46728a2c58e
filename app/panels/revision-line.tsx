import { useCallback } from 'react';
import { revisionOf } from '../../src/index.ts';
import { useAnalysis } from '../hooks.ts';
import { useSearch } from '../power/use-search.ts';

/** The code of what is in the case, as it stands on paper: another one as soon as a hand has something to do. */
export function RevisionLine() {
  const { derived } = useAnalysis();
  const search = useCallback(
    function* (): Generator<undefined, string> {
      yield undefined;
      return revisionOf(derived);
    },
    [derived],
  );
  const code = useSearch(search);
  return (
    <p
      className="revision-line"
      title="As on the bench sheet. It changes with what is in the case and how it is wired."
    >
      <small>Revision</small> <b>{code ?? '…'}</b>
    </p>
  );
}
