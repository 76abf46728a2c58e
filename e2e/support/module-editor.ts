import { deflateSync } from 'node:zlib';
import { expect, type Locator, type Page } from 'playwright/test';
import type { Spot } from '../app-page.ts';

export const editor = (page: Page): Locator => page.getByRole('dialog', { name: /^(Change|New kind of) / });

/** A kind on the page of modules. */
export const kindRow = (page: Page, name: string): Locator =>
  page
    .getByRole('region', { name: 'Kinds of module' })
    .getByRole('button', { name: new RegExp(`^${name} `) });

/** A header on the drawing, by its name there. */
export const headerOn = (page: Page, name: string): Locator =>
  page.locator('.header-drawing').getByRole('button', { name: new RegExp(`^${name},`) });

/** Where the drawing says that the chosen header is. */
export const said = (page: Page): Locator => page.locator('.drawn .said');

/** Opens the stock by its key, and in it the editor of a kind. */
export async function openEditor(page: Page, kind: string): Promise<void> {
  await page.keyboard.press('s');
  await kindRow(page, kind).click();
  await expect(editor(page)).toBeVisible();
  await expect(page.locator('.header-drawing')).toBeVisible();
}

/** CSS px of 1 mm on the drawing, measured on the panel, which is 128.4 mm high at 3U (n × 44.45 − 4.95). */
export async function pxPerMm(page: Page): Promise<number> {
  const box = await page.locator('.header-drawing .panel').boundingBox();
  return (box?.height ?? 0) / 128.4;
}

export async function middleOf(part: Locator): Promise<Spot> {
  const box = await part.boundingBox();
  if (!box) throw new Error('not drawn');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** The middle of a header's pins: its box, which is symmetrical about them. */
export const pinsOf = (page: Page, name: string): Promise<Spot> =>
  middleOf(headerOn(page, name).locator('.box'));

/** A photograph of a panel, 300 by 600 px, with two dots 400 px apart, as a file. */
export async function photographFile(page: Page) {
  const data = await page.evaluate(() => {
    const canvas = document.createElement('canvas');
    canvas.width = 300;
    canvas.height = 600;
    const ink = canvas.getContext('2d');
    if (!ink) throw new Error('no canvas');
    ink.fillStyle = '#7a8a7a';
    ink.fillRect(0, 0, 300, 600);
    ink.fillStyle = '#111';
    for (const y of [100, 500]) ink.fillRect(145, y - 5, 10, 10);
    return canvas.toDataURL('image/png').split(',')[1] ?? '';
  });
  return { name: 'rear.png', mimeType: 'image/png', buffer: Buffer.from(data, 'base64') };
}

const CRC_TABLE = Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let bit = 0; bit < 8; bit++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c >>> 0;
});

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  let crc = 0xffffffff;
  for (const byte of body) crc = ((CRC_TABLE[(crc ^ byte) & 0xff] ?? 0) ^ (crc >>> 8)) >>> 0;
  const ends = Buffer.alloc(8);
  ends.writeUInt32BE(data.length, 0);
  ends.writeUInt32BE((crc ^ 0xffffffff) >>> 0, 4);
  return Buffer.concat([ends.subarray(0, 4), body, ends.subarray(4)]);
}

/** A small file that says it is a picture of so many px each way, one bit each; it holds the first rows only. */
export function hugePicture(side: number) {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(side, 0);
  header.writeUInt32BE(side, 4);
  header[8] = 1;
  const rows = deflateSync(Buffer.alloc(64 * (Math.ceil(side / 8) + 1)));
  const signature = Buffer.from('89504e470d0a1a0a', 'hex');
  const parts = [chunk('IHDR', header), chunk('IDAT', rows), chunk('IEND', Buffer.alloc(0))];
  return { name: 'huge.png', mimeType: 'image/png', buffer: Buffer.concat([signature, ...parts]) };
}

/** Picks a file where the page asks for one. */
export async function lay(
  page: Page,
  file: { readonly name: string; readonly mimeType: string; readonly buffer: Buffer },
): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Lay a photograph under it' }).click();
  await (await chooser).setFiles(file);
}
