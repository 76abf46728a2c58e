import { mmToHp } from '../geometry/rack.ts';
import type { Joint, JointTarget, LaidRibbon } from '../wiring/laid-ribbon.ts';
import type { Neighbours } from '../wiring/neighbours.ts';
import type { Subject } from './check.ts';

const MINUS = '\u2212';

/** A figure with at most so many decimals, without trailing zeros. */
export function figure(value: number, decimals = 2): string {
  const text = String(Number(value.toFixed(decimals)));
  return text.startsWith('-') ? MINUS + text.slice(1) : text;
}

export const mm = (value: number): string => `${figure(value)} mm`;
export const hp = (value: number): string => `${figure(value, 3)} HP`;

/** A line as people write it: voltages with their unit, an open pin in words. */
export function lineName(line: string): string {
  if (line === '') return 'an open pin';
  return /^[+-]?\d/.test(line) ? `${line.replace('-', MINUS)} V` : line;
}

/** "A", "A and B", "A, B and C"; long lists are cut. */
export function list(names: readonly string[], most = 8): string {
  if (names.length > most) return `${names.slice(0, most).join(', ')} and ${names.length - most} more`;
  const last = names[names.length - 1] ?? '';
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} and ${last}`;
}

export const count = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;

/** Things of several parts of a take as the document lists them. */
export const inDocumentOrder = <T extends { readonly index: number }>(things: readonly T[]): T[] =>
  things.toSorted((a, b) => a.index - b.index);

export const namesOf = (things: readonly { readonly name: string }[]): string =>
  list(things.map(({ name }) => name));

/** Connectors count from 1 for people. */
export const connectorName = ({ ribbon, connector }: { ribbon: LaidRibbon; connector: number }): string =>
  `${ribbon.name}, connector ${connector + 1}`;

/** What a connector sits on, with the header named where its owner has several on that bus. */
export function targetName(on: JointTarget): string {
  if (on.type === 'connector') return `connector ${on.connector + 1} of ${on.ribbon.name}`;
  const { owner, bus } = on.header;
  return owner.headers.filter((other) => other.bus === bus).length > 1 ? targetInFull(on) : owner.name;
}

/** What a connector sits on, with the header named where its owner has any other: it may be the wrong one. */
export function targetInFull(on: JointTarget): string {
  if (on.type === 'connector') return targetName(on);
  const { owner, name } = on.header;
  return owner.headers.length > 1 ? `${owner.name}, header ${name}` : owner.name;
}

export const moduleSubject = ({ id }: { readonly id: string }): Subject => ({ type: 'module', id });
export const ribbonSubject = ({ id }: { readonly id: string }): Subject => ({ type: 'ribbon', id });
export const ribbonSubjects = (ribbons: readonly LaidRibbon[]): Subject[] => ribbons.map(ribbonSubject);

export const targetSubject = (on: JointTarget): Subject =>
  on.type === 'connector' ? ribbonSubject(on.ribbon) : { type: on.header.owner.type, id: on.header.owner.id };

/** Ribbon and what it sits on: the subjects of every rule on a single seat. */
export const seatSubjects = ({ ribbon, on }: Joint): Subject[] => [ribbonSubject(ribbon), targetSubject(on)];

/** Ribbons on the way and the owners of both headers: the subjects of every rule on neighbours. */
export const neighbourSubjects = ({ a, b, ribbons }: Neighbours): Subject[] => [
  ...ribbonSubjects(ribbons),
  targetSubject(a.on),
  targetSubject(b.on),
];

/** Tells findings on the same subjects apart. */
export const neighbourPart = ({ a, b }: Neighbours): string =>
  `${a.ribbon.id} ${a.connector} ${b.ribbon.id} ${b.connector}`;

export const seatPart = ({ ribbon, connector }: Joint): string => `${ribbon.id} ${connector}`;

/** A place on the rail to a thousandth of an HP, as edits keep it. */
export const atHpOf = (mmFromLeft: number): number => Math.round(mmToHp(mmFromLeft) * 1000) / 1000;
