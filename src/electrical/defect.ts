import type { Joint } from '../wiring/laid-ribbon.ts';

/** Something broken or bridged that a drawing does not show, to ask what would follow from it. */
export type Defect =
  /** One contact of a seat does not touch; contacts count from 0. */
  | {
      readonly type: 'open-contact';
      readonly ribbon: string;
      readonly connector: number;
      readonly contact: number;
    }
  /** One conductor is broken between a connector and the next; conductors count from 0. */
  | {
      readonly type: 'open-conductor';
      readonly ribbon: string;
      readonly from: number;
      readonly conductor: number;
    }
  /** The wire of one line in a board's lead is broken, or a lead of no resistance is off. */
  | { readonly type: 'open-lead'; readonly board: string; readonly line: string }
  /** A connector is off what it sits on, and what sits in it is off: every contact there at once. */
  | { readonly type: 'unplugged'; readonly ribbon: string; readonly connector: number }
  /** A supply gives nothing on a line: its output, or a fuse behind it, is open. */
  | { readonly type: 'open-output'; readonly supply: string; readonly line: string }
  | Short;

/** Two lines touch: in a ribbon at a connector, inside a module, or on a board. */
export type Short = {
  readonly lines: readonly [string, string];
  /** Of the touch, default that of one contact. */
  readonly milliohm?: number;
} & (
  | { readonly type: 'short'; readonly ribbon: string; readonly connector: number }
  | { readonly type: 'module-short'; readonly module: string }
  | { readonly type: 'board-short'; readonly board: string }
);

export const isShort = (defect: Defect): defect is Short =>
  defect.type === 'short' || defect.type === 'module-short' || defect.type === 'board-short';

/** Those that concern one ribbon. */
export const defectsOf = (defects: readonly Defect[], ribbon: string): readonly Defect[] =>
  defects.filter((defect) => 'ribbon' in defect && defect.ribbon === ribbon);

/** Pins without those that are open at a connector. */
export const touching = (
  pins: readonly number[],
  defects: readonly Defect[],
  ribbon: string,
  connector: number,
): readonly number[] =>
  pins.filter(
    (pin) =>
      !defects.some(
        (defect) =>
          defect.type === 'open-contact' &&
          defect.ribbon === ribbon &&
          defect.connector === connector &&
          defect.contact === pin,
      ),
  );

/** Whether a connector was pulled, or what it is joined to was pulled off it. */
export const isUnplugged = ({ ribbon, connector, on }: Joint, defects: readonly Defect[]): boolean =>
  defects.some(
    (defect) =>
      defect.type === 'unplugged' &&
      ((defect.ribbon === ribbon.id && defect.connector === connector) ||
        (on.type === 'connector' && defect.ribbon === on.ribbon.id && defect.connector === on.connector)),
  );
