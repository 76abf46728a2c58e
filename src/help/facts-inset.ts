import { figure, lineName } from '../checks/words.ts';
import type { PlacedModule } from '../geometry/place.ts';
import type { MarkupPart } from '../sheet/markup.ts';
import { FAINT, INK, line, rect, text } from '../sheet/svg.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import { type InsetBody, LETTERS, MARGIN, WIDE } from './inset.ts';

const HEAD = 28;
const ROW = 26;

interface Fact {
  readonly what: string;
  /** Absent: not known. */
  readonly value?: string;
  readonly isDoubtful?: boolean;
}

const ORIGINS = { measured: 'measured', published: 'published', guessed: 'guessed' } as const;

function factsOf({ facts }: PlacedModule): Fact[] {
  const { kind } = facts;
  const draws = Object.entries(kind.draws);
  return [
    { what: 'Width', value: `${figure(kind.widthHp)} HP` },
    { what: 'Depth', ...(kind.depthMm !== undefined && { value: `${figure(kind.depthMm)} mm` }) },
    ...draws.map(([voltage, ma]) => ({
      what: `Current on ${lineName(voltage)}`,
      ...(ma !== null && { value: `${figure(ma)} mA` }),
    })),
    ...(kind.known
      ? [{ what: 'These figures are', value: ORIGINS[kind.known], isDoubtful: kind.known === 'guessed' }]
      : []),
  ];
}

function valueDrawn({ value, isDoubtful }: Fact, y: number): MarkupPart {
  const right = WIDE - MARGIN;
  const said = value ?? '?';
  const letters = { size: LETTERS, anchor: 'middle', bold: true } as const;
  if (value !== undefined && !isDoubtful) return text(said, right - 50, y + 17, { ...letters, bold: false });
  const box = { left: right - 96, right: right - 4, top: y + 3, bottom: y + ROW - 3 };
  return [rect(box, { line: INK, width: 1.6, dash: '4 3' }), text(said, right - 50, y + 17, letters)];
}

/** What is known of each module, and how well. */
export const factsBodies = ({ places }: WholeTake): InsetBody[] =>
  places.modules.map((module) => {
    const facts = factsOf(module);
    return {
      high: HEAD + facts.length * ROW + 6,
      seen: `What is known of ${module.name}: ${facts.map(({ what, value = 'not known' }) => `${what} ${value}`).join('; ')}.`,
      body: [
        text(`What is known of ${module.name}`, MARGIN, 18, { size: LETTERS, bold: true }),
        facts.map((fact, i) => {
          const y = HEAD + i * ROW;
          const ends = [MARGIN, WIDE - MARGIN].map((x) => ({ x, y }));
          return [
            line(ends, { line: FAINT, width: 0.8 }),
            text(fact.what, MARGIN, y + 17, { size: LETTERS }),
            valueDrawn(fact, y),
          ];
        }),
      ],
    };
  });
