import { type Edit, type JointTarget, seatedOnOf } from '../../src/index.ts';
import { type Editor, shownTake } from '../editor.ts';
import type { RibbonEnd } from './aim.ts';

/** The edit that puts a connector onto something, or off everything. */
export function seatEdit(editor: Editor, { ribbon, connector }: RibbonEnd, place?: JointTarget): Edit {
  const end = { take: shownTake(editor).id, ribbon: ribbon.id, connector };
  return place ? { type: 'seat-connector', ...end, on: seatedOnOf(place) } : { type: 'unseat', ...end };
}
