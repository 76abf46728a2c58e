import { CLIP_FORMAT, type Clip } from './clip.ts';
import { sizeOfJson } from './json-text.ts';
import type { Take } from './layout.ts';
import { describeFailure, openDocument } from './open.ts';
import { OPEN_LIMITS } from './open-limits.ts';
import { fail, ok, type Result } from './result.ts';

/** Why a text cannot be pasted: it is something else altogether, or a clip that is not in order. */
export type ClipFailure =
  | { readonly kind: 'not-a-clip' }
  | { readonly kind: 'unusable'; readonly why: string };

type Data = Readonly<Record<string, unknown>>;

const NOT_A_CLIP = fail<ClipFailure>({ kind: 'not-a-clip' });

const unusable = (why: string) => fail<ClipFailure>({ kind: 'unusable', why });

const isClip = (data: unknown): data is Data =>
  typeof data === 'object' && data !== null && 'format' in data && data.format === CLIP_FORMAT;

/** Anything may lie on a clipboard, so parsing something else is no failure of a clip. */
function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** A clip is judged as a layout of one take, so that nothing gets in by this door that a file may not bring. */
const asDocument = ({ version, kit, rows, modules, ribbons }: Data): unknown => ({
  format: 'ribbonwright',
  version,
  title: '',
  kit,
  takes: [{ id: 'clip', name: 'Clip', rows, supplies: [], modules, ribbons }],
});

const { clipCharacters, clipModules, clipRibbons, depth, values } = OPEN_LIMITS;

/** Opens a text from the clipboard. Never throws; a text made to stop the program is refused. */
export function openClip(text: string): Result<Clip, ClipFailure> {
  if (text.length > clipCharacters.most) return NOT_A_CLIP;
  const size = sizeOfJson(text);
  if (size.depth > depth.most || size.values > values.most) return NOT_A_CLIP;
  const data = parse(text);
  if (!isClip(data)) return NOT_A_CLIP;

  const opened = openDocument(asDocument(data));
  if (!opened.ok) return unusable(describeFailure(opened.error));
  const { kit, takes } = opened.value;
  const { rows, modules, ribbons } = takes[0] as Take;
  if (modules.length === 0) return unusable('there is no module in it');
  if (modules.length > clipModules.most) return unusable(`more than ${clipModules.most} modules at once`);
  if (ribbons.length > clipRibbons.most) return unusable(`more than ${clipRibbons.most} ribbons at once`);
  return ok({ kit, rows, modules, ribbons });
}
