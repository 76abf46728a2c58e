import type { Context } from '../../../app/canvas/draw/paper.ts';

const PAINTING = [
  'fill',
  'stroke',
  'fillRect',
  'strokeRect',
  'clearRect',
  'fillText',
  'strokeText',
  'drawImage',
];

/** One painting call, with what it was painted in. */
export interface Stroke {
  readonly call: string;
  readonly colour: string;
  readonly font: string;
  readonly text: string | undefined;
}

/** A context that paints nothing and remembers each painting call. Letters are 0.6 of their size wide. */
export function fakeContext(): { readonly ctx: Context; readonly strokes: Stroke[] } {
  const strokes: Stroke[] = [];
  const state: Record<string, unknown> = { font: '10px serif', fillStyle: '#000', strokeStyle: '#000' };
  const remember = (call: string, args: readonly unknown[]): void => {
    const text = typeof args[0] === 'string' ? args[0] : undefined;
    const colour = String(call.startsWith('stroke') ? state.strokeStyle : state.fillStyle);
    strokes.push({ call, colour, font: String(state.font), text });
  };
  const measureText = (text: string) => ({ width: text.length * 0.6 * pxOf(String(state.font)) });
  const ctx = new Proxy(state, {
    get: (target, name: string) => {
      if (name === 'measureText') return measureText;
      if (name in target) return target[name];
      if (PAINTING.includes(name)) return (...args: unknown[]) => remember(name, args);
      return () => undefined;
    },
  });
  return { ctx: ctx as unknown as Context, strokes };
}

export const pxOf = (font: string): number => Number(/([\d.]+)px/.exec(font)?.[1]);
