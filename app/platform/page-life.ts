/** hidden: another tab or program is in front, and the page may be stopped any time. leaving: it goes now. */
export type Going = 'hidden' | 'leaving';

export interface PageLife {
  onGoing(listener: (going: Going) => void): () => void;
}

export const browserPageLife: PageLife = {
  onGoing(listener) {
    const onHidden = (): void => {
      if (document.visibilityState === 'hidden') listener('hidden');
    };
    const onLeaving = (): void => listener('leaving');
    document.addEventListener('visibilitychange', onHidden);
    window.addEventListener('pagehide', onLeaving);
    return () => {
      document.removeEventListener('visibilitychange', onHidden);
      window.removeEventListener('pagehide', onLeaving);
    };
  },
};
