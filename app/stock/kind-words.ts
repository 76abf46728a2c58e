import type { Bus, ModuleKind, RibbonKind } from '../../src/index.ts';
import type { KindSort } from '../../src/stock.ts';
import { figure } from '../panels/figures.ts';

type AnyKind = ModuleKind | RibbonKind | Bus;

export const SORT_WORDS: Readonly<Record<KindSort, string>> = {
  module: 'Module',
  ribbon: 'Ribbon',
  bus: 'Bus',
};

export const counted = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;

/** A kind in a few figures. */
export function kindFacts(kind: AnyKind): string {
  if ('pinout' in kind) return counted(kind.pinout.length, 'line');
  if ('lay' in kind) {
    const lengthMm = kind.connectors.at(-1)?.atMm ?? 0;
    return `${counted(kind.connectors.length, 'connector')} · ${figure(lengthMm, 1)} mm`;
  }
  const headers = kind.headers.length > 0 ? ` · ${counted(kind.headers.length, 'header')}` : '';
  return `${figure(kind.widthHp)} HP${headers}`;
}

export const ownedOf = (kind: AnyKind): number | undefined => ('owned' in kind ? kind.owned : undefined);
