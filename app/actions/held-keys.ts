import type { WithKeys } from './key-choices.ts';

/** A key that means something while a ribbon is drawn, and nothing else then. */
export interface HeldKey extends WithKeys {
  readonly label: string;
}

export const turnStripe: HeldKey = {
  id: 'held-turn-stripe',
  label: 'Turn the stripe to the other side',
  shortcuts: [{ key: 's' }],
};

export const nextConnector: HeldKey = {
  id: 'held-next-connector',
  label: 'Begin with the next connector',
  shortcuts: [{ key: 'c' }],
};

/** The drawing has these before all commands while a ribbon is drawn. */
export const heldKeys: readonly HeldKey[] = [turnStripe, nextConnector];
