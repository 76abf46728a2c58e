const ENDINGS = {
  layout: '.ribbonwright.json',
  table: '.csv',
  sheet: '.bench-sheet.html',
  svg: '.svg',
  png: '.png',
} as const;
const LONGEST = 80;

/** Names that a widespread system keeps for devices, whatever their ending. */
const DEVICE = /^(con|prn|aux|nul|com\d|lpt\d)$/i;

/** A name under which any system keeps a file, made from a title that may hold anything. */
export function fileNameOf(title: string, sort: keyof typeof ENDINGS = 'layout'): string {
  const harmless = title
    .normalize('NFC')
    .replace(/[\p{Cc}\p{Cf}\p{Cs}<>:"/\\|?*]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[ .]+|[ .]+$/g, '');
  const short = Array.from(harmless).slice(0, LONGEST).join('').trim();
  const name = DEVICE.test(short) ? `${short}_` : short;
  return (name || sort) + ENDINGS[sort];
}
