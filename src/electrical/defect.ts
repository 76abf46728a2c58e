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
  /** Two lines of a ribbon touch at a connector. */
  | {
      readonly type: 'short';
      readonly ribbon: string;
      readonly connector: number;
      readonly lines: readonly [string, string];
      /** Of the touch, default that of one contact. */
      readonly milliohm?: number;
    };

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
