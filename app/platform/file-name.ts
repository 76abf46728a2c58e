const LAYOUT_ENDING = '.ribbonwright.json';
const LONGEST = 80;

/** Names that a widespread system keeps for devices, whatever their ending. */
const DEVICE = /^(con|prn|aux|nul|com\d|lpt\d)$/i;

/** A name under which any system keeps a file, made from a title that may hold anything. */
export function fileNameOf(title: string, ending = LAYOUT_ENDING): string {
  const harmless = title
    .normalize('NFC')
    .replace(/[\p{Cc}\p{Cf}\p{Cs}<>:"/\\|?*]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[ .]+|[ .]+$/g, '');
  const short = Array.from(harmless).slice(0, LONGEST).join('').trim();
  const name = DEVICE.test(short) ? `${short}_` : short;
  return (name || 'layout') + ending;
}
