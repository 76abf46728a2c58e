import { readLink } from './read-link.ts';

/* Reads one link beside the page: a link may be made so that reading it takes seconds. */
addEventListener('message', ({ data }: MessageEvent<string>) => postMessage(readLink(data)));
