import { canRehearse, type JointTarget, type LaidRibbon, seatedOnOf } from '../../src/index.ts';
import { perform } from '../actions/action.ts';
import { rehearseSeat } from '../actions/rehearse.ts';
import { useEditor, useSession, useTake } from '../hooks.ts';
import { ownSeat, plugIn } from '../store/aim.ts';
import { placeWords, type SeatState } from '../store/seat-words.ts';
import { Icon } from './icon.tsx';

/** So many of the places that a connector could go to are offered, the nearest. */
const MOST_OFFERED = 40;

const FREE = 'free';
const HERE = 'here';

interface Props {
  readonly ribbon: LaidRibbon;
  readonly connector: number;
  readonly state: SeatState;
  /** What else it could sit on, the nearest first. */
  readonly places: readonly JointTarget[];
}

/** One connector: its number, what it sits on, whether it lands there, and how it comes off. */
export function ConnectorRow({ ribbon, connector, state, places }: Props) {
  const editor = useEditor();
  const take = useTake();
  const isChosen = useSession(
    ({ connector: chosen }) => chosen?.ribbon === ribbon.id && chosen.connector === connector,
  );
  const plug = plugIn({ ribbon, connector });
  const own = ownSeat({ ribbon, connector });
  const joint = ribbon.uses[connector]?.[0];
  const end = plug ?? { ribbon, connector };
  const isLocked = end.ribbon.ribbon.locked === true;
  const offered = places.slice(0, MOST_OFFERED);
  const at = { take: take.id, ribbon: end.ribbon.id, connector: end.connector };
  const lift = () => perform(editor, { type: 'unseat', ...at });
  const seat = (value: string) => {
    const place = offered[Number(value)];
    if (value === FREE) lift();
    else if (place) perform(editor, { type: 'seat-connector', ...at, on: seatedOnOf(place) });
  };
  const choose = () => editor.session.setState({ connector: { ribbon: ribbon.id, connector } });

  return (
    <div className="end" data-chosen={isChosen || undefined}>
      <button
        type="button"
        className="number"
        aria-label={`Choose connector ${connector + 1}`}
        aria-pressed={isChosen}
        onClick={choose}
      >
        {connector + 1}
      </button>
      {plug ? (
        <span className="carries">
          carries {plug.ribbon.name}, connector {plug.connector + 1}
        </span>
      ) : (
        <select
          className="field"
          aria-label={`Connector ${connector + 1} sits on`}
          value={own ? HERE : FREE}
          disabled={isLocked}
          onFocus={choose}
          onChange={(event) => seat(event.currentTarget.value)}
        >
          <option value={FREE}>free</option>
          {own && <option value={HERE}>{placeWords(own)}</option>}
          {offered.length > 0 && (
            <optgroup label="It also fits, nearest first">
              {offered.map((place, i) => (
                <option key={placeWords(place)} value={i}>
                  {placeWords(place)}
                </option>
              ))}
            </optgroup>
          )}
        </select>
      )}
      <span className={state.isGood ? 'state' : 'state bad'}>{own || plug ? state.words : ''}</span>
      {joint && canRehearse(joint) && (
        <button
          type="button"
          className="quiet icon"
          aria-label={`Rehearse connector ${connector + 1}`}
          title={`Rehearse connector ${connector + 1}: what a wrong plug would join`}
          onClick={() => rehearseSeat(editor, joint)}
        >
          <Icon name="rehearse" />
        </button>
      )}
      {(own || plug) && (
        <button
          type="button"
          className="quiet icon"
          aria-label={`Lift connector ${connector + 1}`}
          title={`Lift connector ${connector + 1}`}
          aria-disabled={isLocked}
          onClick={lift}
        >
          <Icon name="lift" />
        </button>
      )}
    </div>
  );
}
