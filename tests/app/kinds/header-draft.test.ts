import { describe, expect, it } from 'vitest';
import {
  type HeaderDraft,
  headerDraftOf,
  headerLike,
  measuredAnew,
  newHeader,
  placedAt,
  placeOf,
  readHeader,
} from '../../../app/kinds/header-draft.ts';
import { reachesBeyond } from '../../../app/kinds/header-shape.tsx';
import { startReading } from '../../../app/kinds/typed.ts';
import { DOCUMENT_EDGES, demoLayout, type Edges, type Header, panelSizeMm } from '../../../src/index.ts';

const { kit } = demoLayout();
const size = panelSizeMm(5, 3);
const rear: Edges = { across: 'rear-left', up: 'bottom' };
const shore: Header = { id: 'shore', bus: 'shore', role: 'member', xMm: 12.7, yMm: 38 };

const read = (draft: HeaderDraft, others: readonly HeaderDraft[] = [draft], edges = DOCUMENT_EDGES) => {
  const reading = startReading<`header ${string}`>();
  const header = readHeader(reading, kit, draft, others, edges, size);
  return { header, problems: reading.problems };
};

describe('a header in the form', () => {
  it('comes back as it is, with what was not said and what is not known of it', () => {
    const strange = { ...shore, later: { deep: 1 } } as Header;
    expect(read(headerDraftOf(strange, DOCUMENT_EDGES, size)).header).toEqual(strange);
    const full: Header = {
      ...shore,
      name: 'In',
      zMm: 25,
      axis: 'horizontal',
      pin1: 'left',
      keyed: false,
      passes: true,
      isolated: false,
      counts: 2,
    };
    for (const edges of [DOCUMENT_EDGES, rear, { across: 'rear-left', up: 'top' } as const]) {
      expect(read(headerDraftOf(full, edges, size), undefined, edges).header).toEqual(full);
    }
  });

  it('keeps more decimals than anybody types, wherever it is measured from', () => {
    const fine: Header = { ...shore, xMm: 12.700000123456, yMm: 1 / 3 };
    const edges: Edges = { across: 'rear-left', up: 'top' };
    expect(read(headerDraftOf(fine, edges, size), undefined, edges).header).toEqual(fine);
  });

  it('is measured from the edge that is chosen', () => {
    // By hand: 25.4 − 12 = 13.4 from the front’s left edge; 128.4 − 90.4 = 38 up.
    const typed = { ...headerDraftOf(shore, rear, size), x: '12 mm', y: '90,4' };
    expect(read(typed, [typed], { across: 'rear-left', up: 'top' }).header).toMatchObject({
      xMm: 13.4,
      yMm: 38,
    });
  });

  it('stays where it is when other edges are chosen, and leaves what is no number', () => {
    const draft = { ...headerDraftOf({ ...shore, xMm: 5.4 }, DOCUMENT_EDGES, size), y: 'high' };
    const turned = measuredAnew(draft, DOCUMENT_EDGES, { across: 'rear-left', up: 'top' }, size);
    expect([turned.x, turned.y]).toEqual(['20', 'high']);
    expect(measuredAnew(turned, { across: 'rear-left', up: 'top' }, DOCUMENT_EDGES, size)).toEqual(draft);
  });

  it.each([
    [{ id: ' ' }, 'id'],
    [{ bus: 'nobody' }, 'bus'],
    [{ x: '' }, 'x'],
    [{ x: 'left' }, 'x'],
    [{ y: '1e9' }, 'y'],
    [{ z: '-1' }, 'z'],
    [{ counts: '-2' }, 'counts'],
    [{ name: 'x'.repeat(1001) }, 'name'],
  ] as const)('names what is wrong with %j', (part, field) => {
    const draft = { ...headerDraftOf(shore, DOCUMENT_EDGES, size), ...part };
    expect(Object.keys(read(draft).problems)).toEqual([`header ${field} shore`]);
  });

  it('will not make two of one id', () => {
    const [a, b] = [headerDraftOf(shore, rear, size), { ...headerDraftOf(shore, rear, size), key: 'b' }];
    expect(read(a, [a, b]).problems).toEqual({ 'header id shore': 'Another header has this id' });
  });

  it('claims nothing of a new one but its bus and place, clear of the others', () => {
    const first = newHeader(kit, [], rear, size);
    const second = newHeader(kit, [first], rear, size);
    expect(read(first, [first, second], rear).header).toEqual({
      id: 'shore',
      bus: 'shore',
      role: 'member',
      xMm: 12.7,
      yMm: 64.2,
    });
    expect(second.bus).toBe('tide');
    const places = [first, second].map((draft) => placeOf(draft, rear, size));
    expect(Math.abs((places[0]?.yMm ?? 0) - (places[1]?.yMm ?? 0))).toBeGreaterThanOrEqual(12);
  });

  it('is copied beside itself under another id, without what only the first had', () => {
    const draft = headerDraftOf({ ...shore, pin1: 'down', later: 1 } as Header, DOCUMENT_EDGES, size);
    const like = headerLike(draft, [draft], DOCUMENT_EDGES, size);
    expect(read(like, [draft, like]).header).toEqual({ ...shore, id: 'shore-2', pin1: 'down', xMm: 17.78 });
  });

  it('is told where it reaches beyond the panel, by its body and its lie', () => {
    // Ten pins without a box: 12.7 by 5.08 mm (one grid cell of 2.54 mm for each pin).
    const at = (part: Partial<HeaderDraft>) => ({ ...headerDraftOf(shore, DOCUMENT_EDGES, size), ...part });
    const beyond = (part: Partial<HeaderDraft>) => reachesBeyond(at(part), DOCUMENT_EDGES, size, 10);
    expect(beyond({})).toBe(false);
    expect(beyond({ x: '2.5' })).toBe(true);
    expect(beyond({ x: '2.54' })).toBe(false);
    expect(beyond({ x: '6', axis: 'horizontal' })).toBe(true);
    expect(beyond({ y: '125' })).toBe(true);
    expect(beyond({ y: 'high' })).toBe(false);
  });

  it('is put at a place by hand', () => {
    const moved = placedAt(headerDraftOf(shore, rear, size), rear, size, { xMm: 2.54, yMm: 10 });
    expect([moved.x, moved.y]).toEqual(['22.86', '10']);
    expect(placeOf(moved, rear, size)).toEqual({ xMm: 2.54, yMm: 10 });
  });
});
