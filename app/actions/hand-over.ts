import { type Action, always } from './action.ts';

/** Opens the ways to pass the layout on: link, QR code, file. */
export const handOver: Action = {
  id: 'hand-over',
  label: () => 'Hand over…',
  icon: 'handOver',
  shortcuts: [{ key: 'k' }],
  enabled: always,
  run: ({ session }) => session.setState({ handsOver: true }),
};
