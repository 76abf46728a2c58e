import { GND, type ModuleReadings, type Reading, type Readings } from '../../src/index.ts';
import { deadWords, lineName, listWords, pinsAt, readingWords, volts } from './fault-words.ts';

/** A crossed square: dead. An empty one: it works, and reads a little otherwise. The same shapes are on the drawing. */
const StateMark = ({ isDead }: { readonly isDead: boolean }) => (
  <svg className="icon state-mark" viewBox="0 0 16 16" role="img" aria-label={isDead ? 'Dead' : 'Works'}>
    <path d={isDead ? 'M2 2h12v12H2zM2 14 14 2M2 8l6-6M8 14l6-6' : 'M2 2h12v12H2z'} />
  </svg>
);

/** What a meter shows at the header of a module or a board. */
function PinTable({
  readings,
  headers,
  name,
}: {
  readonly readings: readonly Reading[];
  readonly headers: ModuleReadings['module']['headers'];
  readonly name: string;
}) {
  return (
    <table>
      <caption className="unseen">What a meter shows at {name}</caption>
      <thead>
        <tr>
          <th scope="col">Pins</th>
          <th scope="col">Line</th>
          <th scope="col">To its ground</th>
          <th scope="col">To the supply’s</th>
        </tr>
      </thead>
      <tbody>
        {readings.map((reading) => (
          <tr key={reading.line} data-bad={reading.state === 'right' ? undefined : ''}>
            <td>{pinsAt(headers, reading.line)}</td>
            <th scope="row">{lineName(reading.line)}</th>
            <td>{reading.line === GND && reading.state === 'right' ? '–' : readingWords(reading)}</td>
            <td>{reading.volts === undefined ? '–' : volts(reading.volts)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function ModuleRow({ row }: { readonly row: ModuleReadings }) {
  const { module, readings, isDead, wasDead } = row;
  const works = readings
    .filter(({ line }) => line !== GND)
    .map((reading) => readingWords(reading))
    .join(', ');
  return (
    <li>
      <details>
        <summary>
          <StateMark isDead={isDead} />
          <span>
            <b>{module.name}</b> {isDead ? deadWords(row) : works}
            {isDead && wasDead && <small> · as drawn already</small>}
          </span>
        </summary>
        <PinTable readings={readings} headers={module.headers} name={module.name} />
      </details>
    </li>
  );
}

const count = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;

/** What meters would show, the worst first. */
export function ReadingsList({ readings }: { readonly readings: Readings }) {
  const { modules, boards, trips, take } = readings;
  const dead = modules.filter(({ isDead }) => isDead);
  const touched = modules.filter(({ isTouched }) => isTouched);
  const rest = modules.filter(({ isDead, isTouched }) => !isDead && !isTouched);
  const fresh = dead.filter(({ wasDead }) => !wasDead);
  const nameOf = (supply: string): string =>
    take.take.supplies.find(({ id }) => id === supply)?.name ?? supply;
  const tripped = take.take.supplies.flatMap(({ id }) => {
    const lines = trips.filter(({ supply }) => supply === id).map(({ line }) => lineName(line));
    return lines.length > 0 ? [`${listWords(lines)} of ${nameOf(id)}`] : [];
  });
  return (
    <>
      <p role="status" className="found">
        {fresh.length > 0 ? (
          <>
            <b>{count(fresh.length, 'module')} dead</b>: {listWords(fresh.map(({ module }) => module.name))}.
          </>
        ) : (
          <b>No module is dead of it.</b>
        )}
        {touched.length > 0 && ` ${count(touched.length, 'other')} would feel it and work.`}
        {tripped.length > 0 &&
          ` ${listWords(tripped)} is shorted: the supply lets go, and it reads 0 V everywhere.`}
      </p>
      <ul className="readings" aria-label="What meters would show, the worst first">
        {dead.map((row) => (
          <ModuleRow key={row.module.id} row={row} />
        ))}
      </ul>
      {touched.length > 0 && (
        <details open={dead.length === 0}>
          <summary>{count(touched.length, 'module')} that would feel it</summary>
          <ul className="readings">
            {touched.map((row) => (
              <ModuleRow key={row.module.id} row={row} />
            ))}
          </ul>
        </details>
      )}
      {rest.length > 0 && (
        <details>
          <summary>{count(rest.length, 'module')} as before</summary>
          <ul className="readings">
            {rest.map((row) => (
              <ModuleRow key={row.module.id} row={row} />
            ))}
          </ul>
        </details>
      )}
      {boards.length > 0 && (
        <details>
          <summary>At the boards</summary>
          {boards.map(({ board, readings: own }) => (
            <div key={board.id}>
              <b>{board.name}</b>
              <PinTable readings={own} headers={board.headers.slice(0, 1)} name={board.name} />
            </div>
          ))}
        </details>
      )}
    </>
  );
}
