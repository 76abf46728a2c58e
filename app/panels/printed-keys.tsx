import type { WithKeys } from '../actions/key-choices.ts';
import { useSession } from '../hooks.ts';

/** The first key of something, as it is now; nothing where it has none. */
export function PrintedKeys({ of }: { readonly of: WithKeys }) {
  const keys = useSession(({ printKeys }) => printKeys?.(of));
  return keys && <kbd>{keys}</kbd>;
}
