/** Words between the tabs of this program; no tab hears itself. */
export interface Channel {
  post(message: unknown): void;
  listen(ear: (message: unknown) => void): () => void;
}

export function browserChannel(name = 'ribbonwright'): Channel {
  const channel = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel(name);
  return {
    post: (message) => channel?.postMessage(message),
    listen(ear) {
      const onMessage = ({ data }: MessageEvent): void => ear(data);
      channel?.addEventListener('message', onMessage);
      return () => channel?.removeEventListener('message', onMessage);
    },
  };
}
