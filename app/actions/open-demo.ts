import { demoLayout } from '../../src/index.ts';
import { type Action, always } from './action.ts';
import { takeReady } from './take-layout.ts';

export const openDemo: Action = {
  id: 'open-demo',
  label: () => 'Open the demo',
  enabled: always,
  run: (editor) => takeReady(editor, demoLayout(), 'open the demo'),
};
