import { types } from './trusted-types.ts';

const sheet = types?.createPolicy('ribbonwright-sheet', { createHTML: (html) => html });

/** Text whose every name was escaped where it was made (src/sheet/markup.ts). */
const trustedHtml = (html: string): string => sheet?.createHTML(html) ?? html;

/** Shows a document of our own making in a frame that runs no script: the one there is in `host`, or a new one. */
export function showInFrame(host: HTMLElement, html: string, title: string): void {
  const there = host.querySelector('iframe');
  const frame = there ?? document.createElement('iframe');
  frame.title = title;
  frame.setAttribute('sandbox', 'allow-same-origin allow-modals');
  frame.srcdoc = trustedHtml(html);
  if (!there) host.append(frame);
}

/** Prints what the frame in `host` shows, and nothing of the page around it. */
export function printFrame(host: HTMLElement): void {
  const shown = host.querySelector('iframe')?.contentWindow;
  shown?.focus();
  shown?.print();
}
