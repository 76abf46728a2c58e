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
    ['boxed', 'Of a header: with a wall around the pins, so that a connector cannot sit beside them.', USUAL],
    ['bus', 'What each pin of a header carries. Only headers of one bus may be joined.', OURS],
    ['conductor', 'One wire of a ribbon.', USUAL],
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
    ['contact', 'What in a connector grips one pin; its spring carries about 1 A.', USUAL],
    ['depth', 'How far a module reaches behind its panel, with or without the plug on it.', USUAL],
    ['face', 'The side of a ribbon on which a connector is pressed: towards the panel or the floor.', OURS],
    [
      'feed',
      'The one lead by which a module, or a group that shares its supply by a ribbon, gets power.',
      OURS,
    ],
    ['floor', 'What lies behind the modules: the bottom of the case, where boards are screwed down.', OURS],
    [
      'ground shift',
      'By how much the 0 V of a module lies above that of the supply, since its return current flows in thin wire.',
      USUAL,
    ],
    ['group', 'A host and its members, with the ribbons between them.', OURS],
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
    [
      'key',
      'A nose on a connector and a notch in a boxed header, so that it goes on one way round only.',
      USUAL,
    ],
    ['kind', 'A sort of module or ribbon in the stock; the case holds as many of it as you place.', OURS],
    ['lead', 'A loose ribbon that carries power from a board to a module.', USUAL],
    ['link', 'What a ribbon makes of modules that it joins: signals pass from one to the other.', OURS],
    ['member', 'A module that hangs on a host.', OURS],
    ['module', 'A panel with its circuit behind it, one of a kind in the stock.', USUAL],
    ['note', 'What a check has found. Octagon: damage. Diamond: fault. Ring: reminder.', OURS],
    ['panel', 'The front of a module, screwed to the rails.', USUAL],
    ['pin 1', 'The first pin of a header. The marked edge of the ribbon belongs there.', USUAL],
    ['plug', 'A connector with pins, pressed on a ribbon: it goes in a socket, as an extension does.', USUAL],
    ['put away', 'To set a note aside after judging it. It comes back when its facts change.', OURS],
    ['rail', 'The bar that panels are screwed to. A supply line is a voltage here, never a rail.', USUAL],
    ['rating', 'What a supply may give of a voltage without end, mA.', USUAL],
    ['rehearse', 'To try a wrong plug on the drawing and see what it would join.', OURS],
    ['ribbon', 'Flat cable of wires side by side.', USUAL],
    ['row', 'A pair of rails and the room between them.', USUAL],
    ['seat', 'A connector on its header; to seat it is to press it home.', USUAL],
    ['socket', 'A connector with contacts, pressed on a ribbon: it goes on a header.', USUAL],
    ['stock', 'The kinds of module and ribbon that you own or plan with.', OURS],
    ['stripe', 'The marked edge of a ribbon. It goes to pin 1.', USUAL],
    ['supply', 'What makes the voltages for the case, each with a rating in mA.', USUAL],
    ['take', 'One arrangement of the same case. A layout can hold several.', OURS],
    ['twist', 'Half a turn of the ribbon between two connectors: it crosses to its other edge.', USUAL],
    ['U', 'A unit of height: 44.45 mm. A panel of 3 U is 128.5 mm high.', IEC],
    ['voltage', 'One line of the supply: +12 V, −12 V, +5 V.', USUAL],
  ] as const
).map(([word, means, ground]) => ({ word, means, ground }));
