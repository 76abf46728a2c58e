/*
 * Keeps the whole program for use without a network. One cache for each build; a build counts once every file of it is
 * there. It never takes over unasked. It imports nothing: the build hands it out as it stands, with the list in front.
 */
export {};

declare const self: ServiceWorkerGlobalScope;

/** Put in front by the build: its name, and every file of it but this one, relative to this one. */
declare const BUILD: { readonly hash: string; readonly files: readonly string[] };

/** Other copies of the program on the same host keep to their own caches. */
const PREFIX = `ribbonwright ${self.registration.scope} `;
const CACHE = PREFIX + BUILD.hash;
const PAGE = 'index.html';

const addressOf = (file: string): string => new URL(file, self.registration.scope).href;

/**
 * Past the browser's own cache, which may hold a file of another build under the same name. Some servers answer with the
 * page for whatever they do not have.
 */
async function fetchWhole(file: string): Promise<Response> {
  const response = await fetch(addressOf(file), { cache: 'reload' });
  const isPage = response.headers.get('content-type')?.startsWith('text/html') === true;
  if (!response.ok || isPage !== (file === PAGE)) throw new Error(`${file}: ${response.status}`);
  if (!response.redirected) return response;
  // Some servers lead from the page to its folder, and no navigation may be answered with what came that way.
  return new Response(await response.blob(), { headers: response.headers });
}

async function keepAll(): Promise<void> {
  try {
    const cache = await caches.open(CACHE);
    await Promise.all(BUILD.files.map(async (file) => cache.put(addressOf(file), await fetchWhole(file))));
  } catch (error) {
    await caches.delete(CACHE);
    throw error;
  }
}

async function dropOlder(): Promise<void> {
  const names = await caches.keys();
  await Promise.all(
    names.filter((name) => name.startsWith(PREFIX) && name !== CACHE).map((name) => caches.delete(name)),
  );
}

async function answer(request: Request): Promise<Response> {
  const cache = await caches.open(CACHE);
  const isPage = request.mode === 'navigate';
  const kept = await cache.match(isPage ? addressOf(PAGE) : request, { ignoreVary: true });
  return kept ?? fetch(request);
}

/** The page itself, whatever follows its address; other pages of the site are none of ours. */
function isOurPage({ url }: Request): boolean {
  const { origin, pathname } = new URL(url);
  return [addressOf('./'), addressOf(PAGE)].includes(origin + pathname);
}

self.addEventListener('install', (event) => event.waitUntil(keepAll()));

self.addEventListener('activate', (event) => event.waitUntil(dropOlder().then(() => self.clients.claim())));

self.addEventListener('message', ({ data }) => {
  if (data === 'switch') void self.skipWaiting();
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const isOurs =
    request.mode === 'navigate' ? isOurPage(request) : request.url.startsWith(self.registration.scope);
  if (request.method === 'GET' && isOurs) event.respondWith(answer(request));
});
