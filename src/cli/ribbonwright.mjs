#!/usr/bin/env node
// The door for `npm run cli` and for the installed command: it teaches Node to read TypeScript, so no build is needed.
import { register } from 'tsx/esm/api';

register();
await import('./main.ts');
