import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { always } from '../../app/actions/action.ts';
import { heldKeys, turnStripe } from '../../app/actions/held-keys.ts';
import { actions } from '../../app/actions/index.ts';
import { USUAL_KEYS } from '../../app/actions/key-choices.ts';
import { idsOf } from '../../app/actions/selected.ts';
import { actionFor } from '../../app/actions/shortcuts.ts';
import { shortcutsOf, soundKeys } from '../../app/actions/shortcuts-of.ts';
import { shownTake } from '../../app/editor.ts';
import { shortcutFrom, whyNotKey, whyNotUsual, withKey } from '../../app/help/change-keys.ts';
import { GLOSSARY } from '../../app/help/glossary.ts';
import { GUIDE } from '../../app/help/guide.ts';
import { HELP_PAGES } from '../../app/help/help-pages.ts';
import { allKeyed, KEY_GROUPS } from '../../app/help/key-list.ts';
import { OTHER_WORDS } from '../../app/help/other-words.ts';
import { rank } from '../../app/help/rank.ts';
import { WHY_NOT, whyNot } from '../../app/help/why-not.ts';
import { selectionOf } from '../../app/store/selection.ts';
import { createSessionStore } from '../../app/store/session-store.ts';
import { checks } from '../../src/checks/index.ts';
import { catalogue, examplePicture } from '../../src/help.ts';
import { Driver } from './driver.ts';

const pageIds = HELP_PAGES.map(({ id }) => id);
const actionIds = actions.map(({ id }) => id);
const bare = { ctrlKey: false, metaKey: false, shiftKey: false, altKey: false };

describe('the help', () => {
  test.each(checks.map(({ id }) => id))(
    '%s has a page with two pictures; in the good one it finds nothing, in the bad one it does',
    (id) => {
      expect(pageIds).toContain(`check/${id}`);
      const { examples, about } = catalogue[id] ?? expect.fail(id);
      const [good, bad] = [examplePicture(id, examples.good()), examplePicture(id, examples.bad())];
      for (const { svg } of [good, bad]) expect(svg).toMatch(/^<svg .*<\/svg>$/s);
      expect(good.notes).toEqual([]);
      expect(`${good.svg}${good.inset?.svg}`).not.toBe(`${bad.svg}${bad.inset?.svg}`);
      expect(bad.notes[0]?.remedy).toBeTruthy();
      expect(about.why && about.source).toBeTruthy();
    },
  );

  // What a plan of the case shows no difference of: the inset does, by the figures of the very note.
  test.each([
    ['no-clearance', '60 mm needed, 60 mm deep', '60.1 mm needed, 60 mm deep; 0.1 mm too much'],
    ['key-against', 'the stripe lies at pin 1', 'the stripe lies at the far end'],
    ['foreign-voltage', 'on pins 1 and 2', 'no pin carries it'],
    ['split-member', 'one group', 'double (m) hangs on two groups'],
    ['unknown-facts', '+12 V 0 mA', '+12 V not known'],
    ['guessed-data', 'published', 'guessed'],
    ['missing-voltage', '\u221212 V arrives', 'nothing arrives'],
    ['overload', '60 mA drawn, 60 mA rated', '60 mA drawn, 59.9 mA rated; 0.1 mA too much'],
    ['low-headroom', 'just as much as allowed', '0.08 mA too much'],
    ['board-overload', 'just as much as allowed', '0.1 mA too much'],
    ['contact-overload', 'just as much as allowed', '0.05 mA too much'],
    ['too-deep', 'just as much as allowed', '1 mm too much'],
    ['short-ribbon', 'to spare', 'too much'],
    ['tight-bend', 'to spare', 'too little'],
    ['crowded', '0.16 mm to spare', 'too little'],
    ['lead-short', 'to spare', 'too much'],
    ['low-voltage', '0.001 mV to spare', '0.001 mV too much'],
    ['ground-shift', '0.0001 mV to spare', '0.0001 mV too much'],
  ])('%s is told by an inset', (id, good, bad) => {
    const { examples } = catalogue[id] ?? expect.fail(id);
    const seen = [examples.good(), examples.bad()].map((layout) => examplePicture(id, layout).inset?.seen);
    expect(seen[0]).toContain(good);
    expect(seen[0]).not.toContain(bad);
    expect(seen[1]).toContain(bad);
  });

  test('links of the guide lead to pages and commands that there are', () => {
    for (const { action, see = [] } of GUIDE) {
      for (const page of see) expect(pageIds).toContain(page);
      if (action) expect(actionIds).toContain(action);
    }
  });

  test('each picture of the guide is there in light and dark, and no other', () => {
    const named = GUIDE.flatMap(({ picture }) => (picture ? [picture.name] : []));
    const files = readdirSync(new URL('../../app/help/pictures/', import.meta.url));
    expect(files.sort()).toEqual(named.flatMap((name) => [`${name}-dark.webp`, `${name}-light.webp`]).sort());
  });

  test('words stand in their order, each once', () => {
    const words = GLOSSARY.map(({ word }) => word.toLowerCase());
    expect(words).toEqual([...new Set(words)].sort((a, b) => a.localeCompare(b)));
  });
});

describe('words of the trade', () => {
  const pages = Object.entries(catalogue).map(([id, { about, examples }]) => {
    const { notes } = examplePicture(id, examples.bad());
    const own = [about.title, about.why, ...notes.map(({ remedy }) => remedy)];
    return { id, own, shown: notes.flatMap(({ headline, detail }) => [headline, detail]) };
  });
  const stemOf = (word: string) =>
    word
      .replace(/ies$/, 'y')
      .replace(/(s|ed|ing)$/, '')
      .replace(/e$/, '');
  const glossed = new Set(GLOSSARY.flatMap(({ word }) => word.toLowerCase().split(' ').map(stemOf)));
  const plain = readFileSync(new URL('../fixtures/plain-words.txt', import.meta.url), 'utf8').split(/\s+/);

  test('each is used in a check, the guide or a command', () => {
    const labels = allKeyed(new Driver().editor).map(({ label }) => label);
    const used = [
      ...pages.flatMap(({ own, shown }) => [...own, ...shown]),
      ...GUIDE.flatMap(({ title, text }) => [title, text]),
      ...labels,
    ].join(' ');
    const idle = GLOSSARY.filter(
      ({ word }) => !new RegExp(`(?<!\\p{L})${word}(s|es|ed|ing)?(?!\\p{L})`, 'iu').test(used),
    );
    expect(idle.map(({ word }) => word)).toEqual([]);
  });

  // A new word of the trade is explained in the glossary; a plain one is added to the list.
  test.each(pages.map(({ id, own }) => [id, own] as const))(
    '%s uses no word that is not explained',
    (_, own) => {
      const words =
        own
          .join(' ')
          .toLowerCase()
          .match(/\p{L}[\p{L}-]+/gu) ?? [];
      expect(words.filter((word) => !glossed.has(stemOf(word)) && !plain.includes(word))).toEqual([]);
    },
  );
});

describe('finding a command', () => {
  const all = [
    { id: 'turn', label: 'Turn the case', words: 'rear flip' },
    { id: 'ribbon', label: 'Turn this ribbon' },
    { id: 'fit', label: 'Show all' },
  ];
  const ids = (typed: string, recent: string[] = []) => rank(all, typed, recent).map(({ id }) => id);

  test('by the starts of its words, other words for it, and letters in order', () => {
    expect(ids('tu')).toEqual(['turn', 'ribbon']);
    expect(ids('rib tu')).toEqual(['ribbon']);
    expect(ids('FLIP')).toEqual(['turn']);
    expect(ids('shwll')).toEqual(['fit']);
    expect(ids('zzz')).toEqual([]);
  });

  test('the recent first where nothing else tells', () => {
    expect(ids('', ['fit'])).toEqual(['fit', 'turn', 'ribbon']);
    expect(ids('turn', ['ribbon'])).toEqual(['ribbon', 'turn']);
  });

  test('other words are for actions that there are', () => {
    for (const id of Object.keys(OTHER_WORDS)) expect(actionIds).toContain(id);
  });

  test('commands before pages of the help that fit as well', () => {
    const page = { id: 'page', label: 'Ribbon', isLater: true } as const;
    expect(rank([page, ...all], 'ribbon', []).map(({ id }) => id)).toEqual(['ribbon', 'page']);
    expect(rank([page, ...all], 'turn', []).map(({ id }) => id)).not.toContain('page');
  });

  test('every command that may be off has a reason, and no other has', () => {
    const mayBeOff = actions.filter(({ enabled, isVariant }) => enabled !== always && !isVariant);
    expect(Object.keys(WHY_NOT).sort()).toEqual(mayBeOff.map(({ id }) => id).sort());
  });

  test('the reason is that of the moment', () => {
    const { editor } = new Driver();
    const reason = (id: string) => whyNot(editor, actions.find((one) => one.id === id) ?? expect.fail(id));
    expect(reason('undo')).toBe('Nothing to undo');
    expect(reason('turn')).toBeUndefined();
    expect(reason('swap')).toBe('Select two modules first');
    const modules = shownTake(editor).modules.slice(0, 3);
    editor.session.setState({ selection: selectionOf('module', idsOf(modules)) });
    expect(reason('swap')).toBe('Select no more than two modules');
    expect(reason('copy')).toBeUndefined();
  });
});

describe('keys of my own', () => {
  const all = allKeyed(new Driver().editor);
  const why = (press: Partial<KeyboardEvent>, choices = USUAL_KEYS, id = 'turn') =>
    whyNotKey({
      of: all.find((one) => one.id === id) ?? expect.fail(id),
      all,
      wanted: shortcutFrom({ ...bare, key: '', ...press }) ?? expect.fail('no key'),
      choices,
      apple: false,
    });

  test('are listed by what they are for, each once', () => {
    const listed = KEY_GROUPS.flatMap(([, ids]) => ids);
    const named = [...actions.filter(({ isVariant }) => !isVariant), ...heldKeys].map(({ id }) => id);
    expect([...listed].sort()).toEqual(named.sort());
  });

  test('of a ribbon that is drawn are told apart from commands that rest meanwhile', () => {
    expect(why({ key: 'v' }, USUAL_KEYS, turnStripe.id)).toBeUndefined();
    expect(why({ key: 'c' }, USUAL_KEYS, turnStripe.id)).toContain('next connector');
    expect(why({ key: 'f' }, USUAL_KEYS, turnStripe.id)).toContain('already does this');
    expect(actionFor(heldKeys, { ...bare, key: 'q' }, withKey(USUAL_KEYS, turnStripe.id, { key: 'q' }))).toBe(
      turnStripe,
    );
    expect(actionFor(heldKeys, { ...bare, key: 's' }, { own: {}, noLetters: true })).toBeUndefined();
  });

  test('usual keys that another has taken since do not come back by themselves', () => {
    const given = withKey(withKey(USUAL_KEYS, 'show-help', { key: 'q' }), 'turn', { key: 'F1' });
    const of = all.find(({ id }) => id === 'show-help') ?? expect.fail('no help');
    expect(whyNotUsual({ of, all, choices: given, apple: false })).toContain('F1 already does this');
    expect(whyNotUsual({ of, all, choices: withKey(given, 'turn'), apple: false })).toBeUndefined();
  });

  test('take the place of the usual one', () => {
    const keys = withKey(USUAL_KEYS, 'turn', { key: 'q' });
    expect(actionFor(actions, { ...bare, key: 'q' }, keys)?.id).toBe('turn');
    expect(actionFor(actions, { ...bare, key: 't' }, keys)).toBeUndefined();
    expect(actionFor(actions, { ...bare, key: 't' }, withKey(keys, 'turn'))?.id).toBe('turn');
  });

  test('are refused where another command, the page or the browser has them', () => {
    expect(why({ key: 'q' })).toBeUndefined();
    expect(why({ key: 'z', ctrlKey: true })).toContain('Undo');
    expect(why({ key: 'w', ctrlKey: true })).toContain('browser');
    expect(why({ key: 'Tab' })).toContain('cannot be changed');
    expect(why({ key: 'q' }, { own: {}, noLetters: true })).toContain('turned off');
    expect(shortcutFrom({ ...bare, key: 'Shift', shiftKey: true })).toBeUndefined();
  });

  // WCAG 2.2, 2.1.4: a key of one character without a modifier can be turned off.
  test('no character alone starts anything once they are turned off', () => {
    const off = { own: {}, noLetters: true };
    const left = [...actions, ...heldKeys].flatMap((one) => shortcutsOf(one, off));
    expect(left.filter(({ key, mod, alt }) => key.length === 1 && !mod && !alt)).toEqual([]);
    expect(actionFor(actions, { ...bare, key: 'z', ctrlKey: true }, off)?.id).toBe('undo');
  });

  test('are kept, and what is no choice of keys is not taken', () => {
    const opened = (value: unknown) =>
      soundKeys(
        createSessionStore({
          read: (key) => ({ ok: true, value: key === 'keys' ? value : undefined }),
          write: () => ({ ok: true, value: undefined }),
        }).getState().keys,
      );
    const mine = withKey(USUAL_KEYS, 'turn', { key: 'q' });
    expect(opened(mine)).toEqual(mine);
    for (const bad of [null, 3, { own: null, noLetters: false }, { own: { turn: null }, noLetters: false }])
      expect(opened(bad)).toEqual(USUAL_KEYS);
  });
});
