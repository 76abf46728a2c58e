import fc from 'fast-check';
import { expect, test } from 'vitest';
import { markup } from '../../src/sheet/markup.ts';

test('whatever people typed stays text, and what is markup stays markup', () => {
  const name = `<b onclick='x()'>"Cobble" & co</b>`;
  const inner = markup`<i>${name}</i>`;
  expect(markup`<p>${[inner, ' ', 3, null, undefined, false]}</p>`.text).toBe(
    '<p><i>&lt;b onclick=&#39;x()&#39;&gt;&quot;Cobble&quot; &amp; co&lt;/b&gt;</i> 3</p>',
  );
});

test('no text whatever brings a sign of markup, or one that a drawing cannot hold', () => {
  const holds = (text: string): void => {
    const made = markup`${text}`.text;
    expect(made).not.toMatch(/[<>"']/);
    expect(made).not.toMatch(/&(?!(?:amp|lt|gt|quot|#39);)/);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: those are what must be gone.
    expect(made).not.toMatch(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/);
    expect(() => encodeURIComponent(made)).not.toThrow();
  };
  fc.assert(fc.property(fc.string({ unit: 'binary' }), holds));
});

test('a name cannot turn round the words after it, nor heap marks over the lines above', () => {
  expect(markup`${'\u202eabc'} stripe down`.text).toBe('abc stripe down');
  expect(markup`${`e${'\u0301'.repeat(30)}!`}`.text).toBe(`e${'\u0301'.repeat(4)}!`);
});
