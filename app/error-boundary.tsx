import { Component, type ReactNode } from 'react';
import type { Layout } from '../src/index.ts';
import { download } from './platform/download.ts';

interface Props {
  readonly layout: () => Layout;
  readonly children: ReactNode;
}

/** Where the screen breaks, the work is still there: it can be taken away as a file. */
export class ErrorBoundary extends Component<Props, { readonly broken: boolean }> {
  override state = { broken: false };

  static getDerivedStateFromError() {
    return { broken: true };
  }

  readonly #rescue = (): void => {
    // Nothing more is loaded for it, and no name that somebody typed is trusted with it.
    download('rescued-layout.ribbonwright.json', JSON.stringify(this.props.layout(), null, 2));
  };

  override render(): ReactNode {
    if (!this.state.broken) return this.props.children;
    return (
      <main className="broken">
        <h1>The screen has stopped working</h1>
        <p>Your layout as it last stood is still in memory. Save it before you load the page again.</p>
        <button type="button" className="do" onClick={this.#rescue}>
          Save the layout as a file
        </button>
        <button type="button" className="quiet label" onClick={() => location.reload()}>
          Load the page again
        </button>
      </main>
    );
  }
}
