import { useEffect, useMemo, useRef, useState } from 'react';
import { useEditor } from '../hooks.ts';
import { Dialog } from '../panels/dialog.tsx';
import { browserHistory } from '../platform/history.ts';
import { CheckPage } from './check-page.tsx';
import { GlossaryPage } from './glossary-page.tsx';
import { GuidePage } from './guide-page.tsx';
import { GROUPS, HELP_PAGES, type HelpPage } from './help-pages.ts';
import { depthOf } from './help-steps.ts';
import { KeysPage } from './keys-page.tsx';
import { rank } from './rank.ts';

interface Go {
  readonly go: (page: string) => void;
}

function Contents({ go }: Go) {
  const [typed, setTyped] = useState('');
  const found = useMemo(() => new Set(rank(HELP_PAGES, typed, [])), [typed]);
  return (
    <nav aria-label="Pages">
      <input
        type="search"
        aria-label="Search the help"
        placeholder="Search the help"
        value={typed}
        onChange={(event) => setTyped(event.target.value)}
      />
      {found.size === 0 && <p role="status">No page has these words.</p>}
      {GROUPS.map((group) => {
        const pages = HELP_PAGES.filter((page) => page.group === group && found.has(page));
        return (
          pages.length > 0 && (
            <section key={group}>
              <h3>{group}</h3>
              <ul>
                {pages.map(({ id, label }) => (
                  <li key={id}>
                    <button type="button" onClick={() => go(id)}>
                      {label}
                    </button>
                  </li>
                ))}
              </ul>
            </section>
          )
        );
      })}
    </nav>
  );
}

function Body({ page, go }: Go & { readonly page: HelpPage | undefined }) {
  if (!page) return <Contents go={go} />;
  if (page.id === 'guide') return <GuidePage go={go} />;
  if (page.id === 'glossary') return <GlossaryPage />;
  if (page.id === 'keys') return <KeysPage />;
  return <CheckPage key={page.id} id={page.id.replace('check/', '')} />;
}

/** The help: its contents, or one page. Escape leads back to where it was opened. */
export function HelpDesk({ page }: { readonly page: string }) {
  const { session } = useEditor();
  const body = useRef<HTMLElement>(null);
  const shown = HELP_PAGES.find(({ id }) => id === page);
  const go = (id: string) => session.setState({ help: id });
  // biome-ignore lint/correctness/useExhaustiveDependencies: another page starts at its top, with its name read
  useEffect(() => {
    body.current?.scrollTo(0, 0);
    if (shown) body.current?.focus();
  }, [page]);
  const ways = (
    <>
      {depthOf(browserHistory) > 1 && (
        <button type="button" className="plain" onClick={() => browserHistory.go(-1)}>
          Back
        </button>
      )}
      {shown && (
        <button type="button" className="plain" onClick={() => go('contents')}>
          Contents
        </button>
      )}
    </>
  );
  return (
    <Dialog
      name="help"
      title={shown?.label ?? 'Help'}
      beside={ways}
      first={shown ? '.help-body' : 'input'}
      onClose={() => session.setState({ help: null })}
    >
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, and keys must reach what is below */}
      <section ref={body} className="help-body" aria-labelledby="help-title" tabIndex={0}>
        <Body page={shown} go={go} />
      </section>
    </Dialog>
  );
}
