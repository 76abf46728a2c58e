import { demoLayout } from '../../src/index.ts';
import { type Action, always } from './action.ts';
import { takeLayout } from './take-layout.ts';

export const openDemo: Action = {
  id: 'open-demo',
  label: () => 'Open the demo',
  enabled: always,
  run: (editor) => takeLayout(editor, demoLayout(), 'open the demo'),
};
