import { existsSync } from 'node:fs';
import { builtApp, serveFolder } from './serve.ts';

const USUAL_PORT = 4810;

if (existsSync(builtApp)) {
  const { origin } = await serveFolder(builtApp, USUAL_PORT);
  console.log(`Ribbonwright is at ${origin}/`);
} else {
  console.error('There is no built app yet: run `npm run build` first, or `npm start`, which does both.');
  process.exitCode = 1;
}
