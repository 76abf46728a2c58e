const MINUS = '−';

/** A number as it is written on the sheet: at most so many decimals, with a real minus. */
export const figure = (value: number, decimals = 3): string =>
  String(Number(value.toFixed(decimals))).replace('-', MINUS);

/** A voltage id as people write it. */
export const voltageName = (id: string): string => (/^[+-]?\d/.test(id) ? `${id.replace('-', MINUS)} V` : id);

/** What someone typed as HP; `null` where it is no number. */
export function parseHp(text: string): number | null {
  const value = Number(
    text
      .trim()
      .replace(/\s*hp$/i, '')
      .replace(',', '.')
      .replace(MINUS, '-')
      .replace('½', '.5'),
  );
  return text.trim() !== '' && Number.isFinite(value) ? value : null;
}
