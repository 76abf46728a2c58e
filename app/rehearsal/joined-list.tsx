import { lineName } from '../../src/index.ts';
import type { Group } from './groups.ts';
import { Bead } from './pin-map.tsx';
import { groupTitle, groupWords, unbroken } from './verdict-words.ts';

const CHIP = { width: 76, height: 20, gap: 4, between: 46 } as const;

const chipY = (i: number, of: number, most: number): number =>
  (i + (most - of) / 2) * (CHIP.height + CHIP.gap);

function Chips({
  lines,
  most,
  x,
  side,
}: {
  lines: readonly string[];
  most: number;
  x: number;
  side: string;
}) {
  return lines.map((line, i) => (
    <g key={line} className={side} transform={`translate(${x} ${chipY(i, lines.length, most)})`}>
      <rect width={CHIP.width} height={CHIP.height} rx="3" />
      <text x={CHIP.width / 2} y="14">
        {lineName(line)}
      </text>
    </g>
  ));
}

/** Lines of the ribbon left, of the module right, and what touches what between them: why they are one. */
function Joins({ group }: { readonly group: Group }) {
  const { ribbon, module, links } = group;
  const most = Math.max(ribbon.length, module.length);
  const width = 2 * CHIP.width + CHIP.between;
  const height = most * (CHIP.height + CHIP.gap) - CHIP.gap;
  const middle = (line: string, of: readonly string[]): number =>
    chipY(of.indexOf(line), of.length, most) + CHIP.height / 2;
  return (
    <svg
      className="joins"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      aria-hidden="true"
    >
      {links.map((link) => (
        <path
          key={`${link.ribbon} ${link.module}`}
          className="link"
          d={`M${CHIP.width} ${middle(link.ribbon, ribbon)}L${CHIP.width + CHIP.between} ${middle(link.module, module)}`}
        />
      ))}
      <Chips lines={ribbon} most={most} x={0} side="of-ribbon" />
      <Chips lines={module} most={most} x={CHIP.width + CHIP.between} side="of-module" />
    </svg>
  );
}

interface Props {
  readonly groups: readonly Group[];
  /** "the module's" */
  readonly whose: string;
  readonly focus: string | null;
  readonly onFocus: (letter: string | null) => void;
}

/** Everything that would be one and belongs apart; touching one lets it stand out on the map. */
export function JoinedList({ groups, whose, focus, onFocus }: Props) {
  return (
    <ul className="joined">
      {groups.map((group) => (
        <li key={group.letter} data-focus={focus === group.letter || undefined}>
          <button
            type="button"
            aria-pressed={focus === group.letter}
            onClick={() => onFocus(focus === group.letter ? null : group.letter)}
          >
            <svg className="letter" width="24" height="24" viewBox="-12 -12 24 24" aria-hidden="true">
              <Bead group={group} />
            </svg>
            <span>
              <b>
                <span className="unseen">{group.letter}, </span>
                {groupTitle(group)}
              </b>
              <span className="words">{unbroken(groupWords(group, whose))}</span>
            </span>
          </button>
          <Joins group={group} />
        </li>
      ))}
    </ul>
  );
}
