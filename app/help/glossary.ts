/** How well a meaning is founded. */
type Ground = 'IEC 60297-3-101, as quoted in secondary texts' | 'common practice, no source' | 'this program';

/** A word of the trade, or one that this program uses in a meaning of its own. */
export interface Word {
  readonly word: string;
  readonly means: string;
  readonly ground: Ground;
}

const IEC: Ground = 'IEC 60297-3-101, as quoted in secondary texts';
const USUAL: Ground = 'common practice, no source';
const OURS: Ground = 'this program';

export const GLOSSARY: readonly Word[] = (
  [
    ['accept', 'To put a note away after judging it. It comes back when its facts change.', OURS],
    [
      'arch',
      'The bow in which a ribbon stands between two connectors that are nearer than its length.',
      OURS,
    ],
    [
      'AWG',
      'A gauge of wire. The smaller the figure, the thicker the wire; flat ribbon is usually AWG 28.',
      USUAL,
    ],
    ['board', 'A strip of headers that passes the supply on to the modules.', USUAL],
    ['bus', 'What each pin of a header carries. Only headers of one bus may be joined.', OURS],
    [
      'connector',
      'What is pressed on a ribbon: a socket, which goes on a header, or a plug, which goes in a socket.',
      USUAL,
    ],
    [
      'connector pitch',
      'From the middle of one connector of a ribbon to the middle of the next, mm or HP.',
      USUAL,
    ],
    ['depth', 'How far a module reaches behind its panel, with or without the plug on it.', USUAL],
    [
      'feed',
      'The one lead by which a module, or a group that shares its supply by a ribbon, gets power.',
      OURS,
    ],
    [
      'ground shift',
      'By how much the 0 V of a module lies above that of the supply, since its return current flows in thin wire.',
      USUAL,
    ],
    ['harness', 'Ribbons that are joined to each other, plug in socket.', USUAL],
    ['header', 'Pins on a circuit board, on which a connector is seated.', USUAL],
    ['headroom', 'What is left of a supply’s rating, in mA or per cent.', USUAL],
    ['host', 'The module that a group of members hangs on.', USUAL],
    ['HP', 'A panel’s unit of width: 5.08 mm.', IEC],
    ['in the case', 'The take that stands built in the case today.', OURS],
    [
      'island',
      'All modules whose supply pins a ribbon joins: one feed is enough for all, and two are too many.',
      OURS,
    ],
    ['keyed', 'With a nose and a notch, so that a connector goes on one way round only.', USUAL],
    ['kind', 'A sort of module or ribbon in the stock; the case holds as many of it as you place.', OURS],
    ['lead', 'A loose ribbon that carries power from a board to a module.', USUAL],
    ['member', 'A module that hangs on a host.', OURS],
    ['note', 'What a check has found. Octagon: damage. Diamond: fault. Ring: reminder.', OURS],
    ['pin 1', 'The first pin of a header. The marked edge of the ribbon belongs there.', USUAL],
    ['rail', 'The bar that panels are screwed to. A supply line is a voltage here, never a rail.', USUAL],
    ['rehearse', 'To try a wrong plug on the drawing and see what it would join.', OURS],
    ['ribbon', 'Flat cable of wires side by side.', USUAL],
    ['row', 'A pair of rails and the room between them.', USUAL],
    ['seat', 'A connector on its header; to seat it is to press it home.', USUAL],
    ['shrouded', 'With a wall around the pins, so that a connector cannot sit beside them.', USUAL],
    ['stock', 'The kinds of module and ribbon that you own or plan with.', OURS],
    ['stripe', 'The marked edge of a ribbon. It goes to pin 1.', USUAL],
    ['supply', 'What makes the voltages for the case, each with a rating in mA.', USUAL],
    ['take', 'One arrangement of the same case. A layout can hold several.', OURS],
    ['twist', 'Half a turn of the ribbon between two connectors: it crosses to its other edge.', USUAL],
    ['U', 'A unit of height: 44.45 mm. A panel of 3 U is 128.5 mm high.', IEC],
    ['voltage', 'One line of the supply: +12 V, −12 V, +5 V.', USUAL],
  ] as const
).map(([word, means, ground]) => ({ word, means, ground }));
