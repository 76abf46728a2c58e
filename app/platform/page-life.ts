/**
 * hidden: another tab or program is in front, and the page may be stopped any time. leaving: it goes now. back: it is in
 * front again, and may have missed what was said meanwhile.
 */
export type Going = 'hidden' | 'leaving' | 'back';

export interface PageLife {
  onGoing(listener: (going: Going) => void): () => void;
}

export const browserPageLife: PageLife = {
  onGoing(listener) {
    const onTurn = (): void => listener(document.visibilityState === 'hidden' ? 'hidden' : 'back');
    const onLeaving = (): void => listener('leaving');
    const onShow = ({ persisted }: PageTransitionEvent): void => {
      if (persisted) listener('back');
    };
    document.addEventListener('visibilitychange', onTurn);
    window.addEventListener('pagehide', onLeaving);
    window.addEventListener('pageshow', onShow);
    return () => {
      document.removeEventListener('visibilitychange', onTurn);
      window.removeEventListener('pagehide', onLeaving);
      window.removeEventListener('pageshow', onShow);
    };
  },
};
