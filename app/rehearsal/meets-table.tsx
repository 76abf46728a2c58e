import { lineName, type Rehearsal } from '../../src/index.ts';
import type { Group } from './groups.ts';
import { meetsOf, ranges } from './meets.ts';
import { Bead } from './pin-map.tsx';

interface Props {
  readonly rehearsal: Rehearsal;
  readonly groups: readonly Group[];
  /** What the ribbon sits on: "Module". */
  readonly under: string;
}

/** What meets what, by name and number. */
export function MeetsTable({ rehearsal, groups, under }: Props) {
  const groupOf = (ribbon: string, module: string): Group | undefined =>
    groups.find(({ links }) => links.some((link) => link.ribbon === ribbon && link.module === module));
  return (
    <table className="meets">
      <caption>What meets what</caption>
      <thead>
        <tr>
          <th scope="col">Ribbon</th>
          <th scope="col">Contact</th>
          <th scope="col">
            <span className="unseen">how</span>
          </th>
          <th scope="col">{under}</th>
          <th scope="col">Pin</th>
        </tr>
      </thead>
      <tbody>
        {meetsOf(rehearsal).map(({ ribbon, module, contacts, pins }) => {
          const group = groupOf(ribbon, module);
          const isSame = ribbon === module;
          return (
            <tr key={`${ribbon} ${module}`} className={isSame ? undefined : 'wrong'}>
              <td>{lineName(ribbon)}</td>
              <td className="numbers">{ranges(contacts)}</td>
              <td className="how">
                {group ? (
                  <svg
                    width="18"
                    height="18"
                    viewBox="-12 -12 24 24"
                    role="img"
                    aria-label={`joined in ${group.letter}`}
                  >
                    <Bead group={group} />
                  </svg>
                ) : (
                  <span role="img" aria-label={isSame ? 'agrees with' : 'on'}>
                    {isSame ? '=' : '○'}
                  </span>
                )}
              </td>
              <td>{lineName(module)}</td>
              <td className="numbers">{ranges(pins)}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
