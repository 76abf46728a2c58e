import { fail, ok, type Result } from '../../src/index.ts';

/** How often a page that stays open looks for a new version, ms. */
const HOUR_MS = 3_600_000;

interface Updates {
  /** Lets the new version take over; every open page hears of it through `switched`. */
  switch(): void;
}

export interface UpdateEar {
  /** A new version is here, whole, and waits. */
  ready(updates: Updates): void;
  /** Another version than the one that this page came from answers from now on. */
  switched(): void;
}

/** Keeps the program itself for use without a network, and looks for new versions of it. Never switches unasked. */
export interface Offline {
  start(ear: UpdateEar): Promise<Result<void, string>>;
}

export const browserOffline = (
  container = navigator.serviceWorker as ServiceWorkerContainer | undefined,
): Offline => ({
  async start(ear) {
    if (!container) return fail('the browser has no service workers');
    // With no worker in charge the first one takes charge, which changes nothing for the page.
    const isUpdate = container.controller !== null;
    let hadOne = isUpdate;
    container.addEventListener('controllerchange', () => {
      if (hadOne) ear.switched();
      hadOne = true;
    });
    try {
      const registration = await container.register(new URL('service-worker.js', document.baseURI), {
        updateViaCache: 'none',
      });
      watch(container, registration, ear);
      return ok(undefined);
    } catch (error) {
      return fail(String(error));
    }
  },
});

function watch(
  container: ServiceWorkerContainer,
  registration: ServiceWorkerRegistration | undefined,
  ear: UpdateEar,
): void {
  if (!registration) return;
  const tell = (): void => {
    const { waiting } = registration;
    if (waiting && container.controller) ear.ready({ switch: () => waiting.postMessage('switch') });
  };
  const follow = (): void => {
    const { installing } = registration;
    installing?.addEventListener('statechange', () => {
      if (installing.state === 'installed') tell();
    });
  };
  tell();
  follow();
  registration.addEventListener('updatefound', follow);
  // Offline this fails, which is no news.
  const look = (): void => void registration.update().catch(() => {});
  setInterval(look, HOUR_MS);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') look();
  });
}
