/**
 * How a connector sits on pins: displaced by pin rows across the header and pairs from the pin-1 end (0, 0 is
 * right), or turned end for end, and then perhaps displaced besides.
 */
export type Misplug =
  | { readonly type: 'shifted'; readonly rows: number; readonly pairs: number }
  | { readonly type: 'reversed'; readonly rows?: number; readonly pairs?: number };

/** A place on the grid of a header, on its pins or beside them: row 0 holds the odd pins, pair 0 pins 1 and 2. */
interface GridPlace {
  readonly row: number;
  readonly pair: number;
}

/** Where a contact (from 0) comes to lie. Pins run in pairs along the long side. */
export function contactPlace(contact: number, pins: number, misplug: Misplug): GridPlace {
  const { rows = 0, pairs = 0 } = misplug;
  const place = misplug.type === 'reversed' ? pins - 1 - contact : contact;
  const pair = Math.floor(place / 2);
  return { row: place - 2 * pair + rows, pair: pair + pairs };
}

/** Which pin (from 0) each contact touches, contact 1 first; `undefined`: it hangs free. */
export const pinMap = (contacts: number, pins: number, misplug: Misplug): readonly (number | undefined)[] =>
  Array.from({ length: contacts }, (_, contact) => {
    const { row, pair } = contactPlace(contact, pins, misplug);
    const pin = 2 * pair + row;
    return (row === 0 || row === 1) && pin >= 0 && pin < pins ? pin : undefined;
  });
