const ENDINGS = {
  layout: '.ribbonwright.json',
  table: '.csv',
  sheet: '.bench-sheet.html',
  svg: '.svg',
  png: '.png',
} as const;
const LONGEST = 80;
/** Systems take 255 for the whole name, ending and a browser's "(1)" included. */
const MOST_BYTES = 200;

/** Names that a widespread system keeps for devices, whatever comes after a dot. */
const DEVICE = /^(con|prn|aux|nul|conin\$|conout\$|clock\$|(com|lpt)[\d¹²³])(?= *(\.|$))/i;

const bytesOf = (text: string): number => new TextEncoder().encode(text).length;

/** A name under which any system keeps a file, made from a title that may hold anything. */
export function fileNameOf(title: string, sort: keyof typeof ENDINGS = 'layout'): string {
  const harmless = title
    .normalize('NFC')
    .replace(/[\p{Cc}\p{Cf}\p{Cs}<>:"/\\|?*]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[ .]+|[ .]+$/g, '');
  const letters = Array.from(harmless).slice(0, LONGEST);
  while (bytesOf(letters.join('')) > MOST_BYTES) letters.pop();
  const short = letters.join('').replace(/[ .]+$/, '');
  const name = short.replace(DEVICE, '$1_');
  return (name || sort) + ENDINGS[sort];
}
