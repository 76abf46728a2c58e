/** As far as it is used here. Where the page's policy asks for them, text may reach a sink only by way of a policy. */
interface TrustedTypes {
  createPolicy(name: string, rules: Rules): { createHTML(html: string): string };
}

interface Rules {
  /** `null` refuses. */
  readonly createHTML?: (html: string) => string | null;
  readonly createScriptURL?: (url: string) => string | null;
}

export const types = (globalThis as { readonly trustedTypes?: TrustedTypes }).trustedTypes;

/** The program's own files. */
const isOwn = (url: string): boolean =>
  new URL(url, document.baseURI).href.startsWith(new URL('./', document.baseURI).href);

// What comes to a sink as plain text: the canvas empties its host so, and threads and the service worker are started so.
types?.createPolicy('default', {
  createHTML: (html) => (html === '' ? html : null),
  createScriptURL: (url) => (isOwn(url) ? url : null),
});
