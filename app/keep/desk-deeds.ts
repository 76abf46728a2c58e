import { applyEdit, demoLayout, fail, ok, type Result } from '../../src/index.ts';
import { lookAnew, takeReady } from '../actions/take-layout.ts';
import type { Editor } from '../editor.ts';
import type { Keeper } from '../store/keep.ts';
import { writeBundle } from './bundle.ts';
import {
  asCopy,
  firstRecord,
  isKept,
  type KeptLayout,
  lastUsed,
  latestOf,
  rewritten,
} from './kept-layout.ts';
import { openKept } from './open-kept.ts';
import { packPhotographs } from './packed-photographs.ts';
import { faultWords } from './words.ts';

type Done = Result<void, string>;

const idHere = ({ layouts }: Editor): string | undefined => layouts.layout().id;

/** All that is kept, the one worked on last first. */
export async function listKept(keeper: Keeper): Promise<Result<readonly KeptLayout[], string>> {
  await keeper.flush();
  const found = await keeper.shelf.all();
  if (!found.ok) return fail(faultWords(found.error));
  return ok(found.value.filter(isKept).sort((a, b) => lastUsed(b) - lastUsed(a)));
}

export async function openOne(editor: Editor, keeper: Keeper, id: string): Promise<Done> {
  const isOther = id !== idHere(editor);
  const opened = await keeper.open(id);
  if (opened.ok && isOther) lookAnew(editor);
  return opened;
}

/** The one on the screen is renamed as an edit; another one where it is kept. */
export async function renameOne(
  editor: Editor,
  keeper: Keeper,
  kept: KeptLayout,
  title: string,
): Promise<Done> {
  if (kept.id === idHere(editor)) {
    const done = editor.layouts.run({ type: 'rename-layout', title });
    return done.ok ? ok(undefined) : fail(done.error);
  }
  return keeper.alone(kept.id, async () => {
    const opened = await openKept(kept);
    if (!opened.ok) return opened;
    const renamed = applyEdit(opened.value, { type: 'rename-layout', title });
    if (!renamed.ok) return fail(renamed.error.message);
    const now = editor.platform.clock.now();
    const done = await keeper.shelf.change(kept.id, (before) =>
      isKept(before) && before.revision === kept.revision ? rewritten(before, renamed.value, now) : null,
    );
    return done.ok ? ok(undefined) : fail(faultWords(done.error));
  });
}

export async function duplicateOne(editor: Editor, keeper: Keeper, kept: KeptLayout): Promise<Done> {
  const opened = await openKept(kept);
  if (!opened.ok) return opened;
  const { clock, freshId } = editor.platform;
  const copy = asCopy({ ...opened.value, title: `${kept.title}, a copy` }, freshId());
  const record = firstRecord(copy, copy.id ?? '', clock.now());
  const done = await keeper.shelf.change(record.id, () => record);
  return done.ok ? ok(undefined) : fail(faultWords(done.error));
}

/** Takes one off the shelf; where it was on the screen, the one worked on before it comes there, or the demo. */
export async function deleteOne(editor: Editor, keeper: Keeper, kept: KeptLayout): Promise<Done> {
  const take = async (): Promise<Done> => {
    const done = await keeper.shelf.remove(kept.id);
    return done.ok ? ok(undefined) : fail(faultWords(done.error));
  };
  if (kept.id !== idHere(editor)) {
    const done = await keeper.alone(kept.id, take);
    if (done.ok) keeper.forget(kept.id);
    return done;
  }
  if (editor.keep.getState().keeping.is === 'following') return fail('It is open in another tab');
  const done = await take();
  if (!done.ok) return done;
  keeper.forget(kept.id);
  const rest = await keeper.shelf.all();
  const next = rest.ok ? latestOf(rest.value.filter(isKept)) : undefined;
  const opened = next && (await openOne(editor, keeper, next.id));
  if (!opened?.ok) takeReady(editor, demoLayout(), 'open the demo');
  return ok(undefined);
}

export async function putBack(keeper: Keeper, kept: KeptLayout): Promise<Done> {
  const done = await keeper.shelf.change(kept.id, (before) => (before === undefined ? kept : null));
  return done.ok ? ok(undefined) : fail(faultWords(done.error));
}

/** One as a file; what cannot be opened as the very text that is kept. */
export async function saveOne(editor: Editor, kept: KeptLayout): Promise<Done> {
  const [{ writeLayout }, files, opened] = await Promise.all([
    import('../../src/document.ts'),
    editor.platform.files(),
    openKept(kept),
  ]);
  const saved = await files.save(kept.title, opened.ok ? writeLayout(opened.value) : kept.text);
  return saved.ok ? ok(undefined) : saved;
}

/** All in one file, with the photographs of their kinds. */
export async function saveAll(editor: Editor, keeper: Keeper): Promise<Done> {
  const kept = await listKept(keeper);
  if (!kept.ok) return kept;
  const ids = new Set(kept.value.map(({ id }) => id));
  const photographs = await packPhotographs(await editor.platform.photographs(), ids);
  const files = await editor.platform.files();
  const saved = await files.save('All my layouts', writeBundle(kept.value, photographs));
  return saved.ok ? ok(undefined) : saved;
}
