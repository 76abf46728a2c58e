import { describe, expect, it, vi } from 'vitest';
import { handOver } from '../../../app/actions/hand-over.ts';
import { answerOffer, looksLikeLink } from '../../../app/actions/open-link.ts';
import { pasteText } from '../../../app/actions/paste.ts';
import { lengthWords, MOST_IN_QR, noQrWords } from '../../../app/hand-over/length-words.ts';
import { listenToLinks } from '../../../app/stage/listen-to-links.ts';
import { demoLayout, type Layout } from '../../../src/index.ts';
import { linkOf } from '../../../src/share.ts';
import { Driver } from '../driver.ts';

const theirs: Layout = { ...demoLayout(), id: 'b', parent: 'a', title: 'Theirs' };

function fragmentOf(layout: Layout): string {
  const link = linkOf(layout);
  if (!link.ok) throw new Error(link.error.kind);
  return link.value;
}

const session = (driver: Driver) => driver.editor.session.getState();
const titleOf = (driver: Driver): string => driver.editor.layouts.layout().title;

describe('a link in the address', () => {
  it('is offered when the page opens, and kept as a layout of its own in one step', async () => {
    const driver = new Driver();
    driver.address.go(fragmentOf(theirs));
    listenToLinks(driver.editor);
    await vi.waitFor(() => expect(session(driver).offered?.layout.title).toBe('Theirs'));
    expect([titleOf(driver), driver.steps]).toEqual(['Shoreline kit', 0]);

    await answerOffer(driver.editor, true);
    expect(driver.editor.layouts.layout()).toMatchObject({ title: 'Theirs', parent: 'b' });
    expect(driver.editor.layouts.layout().id).toMatch(/^fresh-/);
    expect([driver.steps, driver.address.whole()]).toEqual([1, 'https://example.org/rack/']);
    driver.editor.layouts.undo();
    expect(titleOf(driver)).toBe('Shoreline kit');
  });

  it('is offered when it comes later, and leaves no trace when it is left', async () => {
    const driver = new Driver();
    const end = listenToLinks(driver.editor);
    await Promise.resolve();
    driver.address.go(fragmentOf(theirs));
    await vi.waitFor(() => expect(session(driver).offered).not.toBeNull());
    await answerOffer(driver.editor, false);
    expect([titleOf(driver), driver.steps, session(driver).offered]).toEqual(['Shoreline kit', 0, null]);
    expect(driver.address.whole()).toBe('https://example.org/rack/');
    end();
    driver.address.go(fragmentOf(theirs));
    await Promise.resolve();
    expect(session(driver).offered).toBeNull();
  });

  it('is told of when it is broken, and nothing changes', async () => {
    const driver = new Driver();
    driver.address.go(fragmentOf(theirs).slice(0, 100));
    listenToLinks(driver.editor);
    await vi.waitFor(() =>
      expect(session(driver).banner).toMatch(/^Not opened: the link was cut short.*\.$/),
    );
    expect([titleOf(driver), driver.steps, session(driver).offered]).toEqual(['Shoreline kit', 0, null]);
  });

  it('is none when it is some other place of a page', async () => {
    const driver = new Driver();
    driver.address.go('#chapter-2');
    listenToLinks(driver.editor);
    await Promise.resolve();
    expect([session(driver).banner, session(driver).offered]).toEqual([null, null]);
    expect(looksLikeLink('https://example.org/rw1.html')).toBe(false);
  });
});

describe('a pasted link', () => {
  it('is offered, not taken for a group of modules', async () => {
    const driver = new Driver();
    await pasteText(driver.editor, `see https://example.org/${fragmentOf(theirs)}`, null);
    expect(session(driver).offered?.layout.title).toBe('Theirs');
    expect([driver.steps, session(driver).banner]).toEqual([0, null]);
  });

  it('is not taken while something hangs at the hand', async () => {
    const driver = new Driver();
    driver.down(driver.on('gull-1')).move(40);
    expect(driver.isMoving).toBe(true);
    await pasteText(driver.editor, `see https://example.org/${fragmentOf(theirs)}`, null);
    expect([session(driver).offered, driver.isMoving]).toEqual([null, true]);
  });
});

describe('handing over', () => {
  it('opens by its action', () => {
    const driver = new Driver();
    handOver.run(driver.editor);
    expect(session(driver).handsOver).toBe(true);
  });

  it('says how long the link is, from when on it is long, and when there is no QR code', () => {
    expect(lengthWords('x'.repeat(2000))).toEqual({ text: '2,000 characters.', isLong: false });
    expect(lengthWords('x'.repeat(2001)).text).toMatch(/^2,001 characters\. Some chats cut links this long/);
    expect(noQrWords('x'.repeat(MOST_IN_QR))).toBeUndefined();
    expect(noQrWords('x'.repeat(MOST_IN_QR + 1))).toBe(
      'Too long for a QR code: it holds 997 characters, the link has 998.',
    );
  });
});
