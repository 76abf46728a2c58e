import type { Layout } from '../../src/layout/layout.ts';
import { describeFailure, openDocument } from '../../src/layout/open.ts';

/** Why a layout could not be opened again, by the schema and the references; undefined where it could. */
export function whyNotOpened(layout: Layout): string | undefined {
  const opened = openDocument(layout);
  return opened.ok ? undefined : describeFailure(opened.error);
}
