import { neutralised } from '../table/neutral.ts';
import type { PartsList } from './parts.ts';

/** A cell as RFC 4180 has it; what people typed is never a formula. */
function cell(value: string | number | undefined): string {
  if (value === undefined) return '';
  if (typeof value === 'number') return String(value);
  const text = neutralised(value);
  return /["',\r\n;]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

const line = (cells: readonly (string | number | undefined)[]): string => `${cells.map(cell).join(',')}\r\n`;

/** A parts list as a table of text; an empty cell is not known. */
export function partsCsv({ lines, materials }: PartsList): string {
  const head = ['Sort', 'Name', 'Needed', 'Owned', 'To buy', 'Instead', 'Price', 'Cost'];
  const parts = lines.map(({ sort, name, needed, owned, toBuy, substitutes, price, cost }) => {
    const instead = substitutes.map((each) => `${each.count} × ${each.name}`).join('; ');
    return line([sort, name, needed, owned, toBuy, instead, price, cost]);
  });
  const stuff = materials.map(({ name, amount, unit }) =>
    line(['to make ribbons', unit === 'mm' ? `${name}, m` : name, unit === 'mm' ? amount / 1000 : amount]),
  );
  return [line(head), ...parts, ...stuff].join('');
}
