import type { Side } from '../../src/index.ts';
import { duplicate } from '../actions/duplicate.ts';
import type { WithKeys } from '../actions/key-choices.ts';
import { remove } from '../actions/remove.ts';
import { undo } from '../actions/undo.ts';
import { useSession } from '../hooks.ts';
import { Icon } from '../panels/icon.tsx';
import type { HeaderHand } from './use-header-hand.ts';

interface Props {
  readonly side: Side;
  readonly look: (from: Side) => void;
  /** How large it is drawn, from 0, where all of it is in sight. */
  readonly zoom: number;
  readonly most: number;
  readonly setZoom: (zoom: number) => void;
  readonly snaps: boolean;
  readonly setSnaps: (snaps: boolean) => void;
  readonly chosen: string | undefined;
  readonly hand: HeaderHand;
  readonly canGoBack: boolean;
  readonly onAdd: () => void;
}

interface ToolProps {
  readonly label: string;
  /** The command whose keys do the same on the drawing. */
  readonly of?: WithKeys;
  readonly icon: Parameters<typeof Icon>[0]['name'];
  readonly enabled: boolean;
  readonly onUse: () => void;
}

function Tool({ label, of, icon, enabled, onUse }: ToolProps) {
  const keys = useSession(({ printKeys }) => of && printKeys?.(of));
  return (
    <button
      type="button"
      className="quiet icon"
      aria-label={label}
      title={keys ? `${label} (${keys} on the drawing)` : label}
      aria-disabled={!enabled}
      onClick={() => enabled && onUse()}
    >
      <Icon name={icon} />
    </button>
  );
}

/** Over the drawing: the side that is looked at, what is done with headers, and how large it is drawn. */
export function DrawingTools({
  side,
  look,
  zoom,
  most,
  setZoom,
  snaps,
  setSnaps,
  chosen,
  hand,
  canGoBack,
  onAdd,
}: Props) {
  const hasChosen = chosen !== undefined;
  return (
    <div className="tools">
      <fieldset className="sides">
        <legend className="unseen">Seen from</legend>
        {(['rear', 'front'] as const).map((each) => (
          <button key={each} type="button" aria-pressed={side === each} onClick={() => look(each)}>
            {each === 'rear' ? 'Rear' : 'Front'}
          </button>
        ))}
      </fieldset>
      <button type="button" className="quiet add-header" onClick={onAdd}>
        <Icon name="plus" />
        Header
      </button>
      <Tool
        label="Duplicate the header"
        of={duplicate}
        icon="duplicate"
        enabled={hasChosen}
        onUse={() => hasChosen && hand.duplicate(chosen)}
      />
      <Tool
        label="Remove the header"
        of={remove}
        icon="remove"
        enabled={hasChosen}
        onUse={() => hasChosen && hand.remove(chosen)}
      />
      <Tool
        label="Take back the last step with headers"
        of={undo}
        icon="undo"
        enabled={canGoBack}
        onUse={hand.stepBack}
      />
      <label
        className="tick"
        title="Catches on the centre line, on other headers, and on a grid of half pins, 1.27 mm"
      >
        <input
          type="checkbox"
          checked={snaps}
          onChange={({ currentTarget: { checked } }) => setSnaps(checked)}
        />
        Snap
      </label>
      <span className="zooms">
        <Tool label="Smaller" icon="minus" enabled={zoom > 0} onUse={() => setZoom(zoom - 1)} />
        <Tool label="Larger" icon="plus" enabled={zoom < most} onUse={() => setZoom(zoom + 1)} />
      </span>
    </div>
  );
}
