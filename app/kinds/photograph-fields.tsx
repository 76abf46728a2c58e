import { type KeyboardEvent, useState } from 'react';
import {
  type Known,
  mapped,
  mirroredAbout,
  type PanelSize,
  type PlanePoint,
  scaledTo,
  scaleOf,
  shiftedTo,
} from '../../src/index.ts';
import { figure } from '../panels/figures.ts';
import { Icon } from '../panels/icon.tsx';
import { Problem, TextRow } from './field.tsx';
import { mmIn } from './header-draft.ts';
import type { Photograph } from './photograph.ts';
import type { PhotographState } from './use-photograph.ts';

/** What the hand holds on the drawing: headers, two points of the photograph, or the photograph itself. */
export type InHand = 'headers' | 'points' | 'fit';

export interface Laying {
  readonly inHand: InHand;
  readonly points: readonly [PlanePoint, PlanePoint];
  readonly anchor: Known | null;
}

export const NOT_LAYING: Laying = {
  inHand: 'headers',
  points: [
    { x: 0, y: 0 },
    { x: 0, y: 0 },
  ],
  anchor: null,
};

/** Two points to begin with, in the middle of its upper and lower halves. */
const firstPoints = ({ widthPx, heightPx }: Photograph): Laying['points'] => [
  { x: widthPx / 2, y: heightPx / 4 },
  { x: widthPx / 2, y: (3 * heightPx) / 4 },
];

const middleOf = ({ widthPx, heightPx }: Photograph): PlanePoint => ({ x: widthPx / 2, y: heightPx / 2 });

const degreesOf = ({ laid: { a, b } }: Photograph): number => (Math.atan2(b, a) * 180) / Math.PI;

/** Turned about its middle to an angle. */
function turnedTo(photo: Photograph, degrees: number): Photograph {
  const middle = middleOf(photo);
  const size = scaleOf(photo.laid);
  const angle = (degrees * Math.PI) / 180;
  const laid = { ...photo.laid, a: size * Math.cos(angle), b: size * Math.sin(angle) };
  return { ...photo, laid: shiftedTo(laid, middle, mapped(photo.laid, middle)) };
}

interface Props {
  readonly state: PhotographState;
  readonly size: PanelSize;
  readonly laying: Laying;
  readonly onLaying: (laying: Laying) => void;
}

/** A photograph of the rear: taken, laid to scale by two points, and put away. */
export function PhotographFields({ state, size, laying, onLaying }: Props) {
  const { photo, problem, change, pick } = state;
  const [distance, setDistance] = useState('');
  const [angle, setAngle] = useState<string | null>(null);
  const [told, setTold] = useState<string>();
  if (!photo) {
    return (
      <div className="photograph">
        <button type="button" className="plain" onClick={() => void pick(size)}>
          Lay a photograph under it…
        </button>
        <p className="aside">
          Of the rear, straight from behind; drop or paste one as well. It stays in this browser, unless all
          layouts are saved in one file: that takes it along.
        </p>
        <Problem id="photograph-problem" words={problem?.replace(/\.$/, '')} />
      </div>
    );
  }
  const { inHand, points } = laying;
  const take = (hand: InHand): void =>
    onLaying({
      inHand: inHand === hand ? 'headers' : hand,
      points: hand === 'points' && inHand !== hand ? firstPoints(photo) : points,
      anchor: null,
    });
  const scale = (): void => {
    const mm = mmIn(distance);
    const laid = mm === undefined ? undefined : scaledTo(photo.laid, points[0], points[1], mm);
    if (!laid) {
      setTold('Say how many mm lie between the two points, which must not be one');
      return;
    }
    setTold(undefined);
    change({ ...photo, laid });
  };
  /** It scales the photograph, and does not keep the kind. */
  const onEnter = (event: KeyboardEvent): void => {
    if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement)) return;
    event.preventDefault();
    scale();
  };
  return (
    <div className="photograph">
      <label className="row slide">
        <span>Shines through</span>
        <input
          type="range"
          min={0}
          max={100}
          value={Math.round(photo.opacity * 100)}
          onChange={({ currentTarget: { value } }) => change({ ...photo, opacity: Number(value) / 100 })}
        />
      </label>
      <div className="deeds">
        <button
          type="button"
          className="plain"
          aria-pressed={inHand === 'points'}
          onClick={() => take('points')}
        >
          Scale by two points
        </button>
        <button type="button" className="plain" aria-pressed={inHand === 'fit'} onClick={() => take('fit')}>
          Drag it to fit
        </button>
        <button
          type="button"
          className="quiet icon"
          aria-label="Take the photograph away"
          title="Take the photograph away"
          onClick={() => {
            change(null);
            onLaying(NOT_LAYING);
          }}
        >
          <Icon name="remove" />
        </button>
      </div>
      {inHand === 'points' && (
        <fieldset className="two-points" onKeyDown={onEnter}>
          <legend className="unseen">Scale by two points</legend>
          <p className="aside">
            Put points 1 and 2 on two things whose distance you know, such as two holes or two pins far apart.
          </p>
          <TextRow
            label="Between them"
            unit="mm"
            decimal
            size={6}
            value={distance}
            problem={told}
            onText={setDistance}
          />
          <button type="button" className="plain" onClick={scale}>
            Scale it so
          </button>
        </fieldset>
      )}
      {inHand === 'fit' && (
        <>
          <p className="aside">
            {laying.anchor
              ? 'Now drag a second feature to where it belongs: the photograph turns and grows about the first.'
              : 'Drag a feature, such as a hole or a corner, to where it belongs. It catches on those of the panel.'}
          </p>
          {laying.anchor && (
            <button type="button" className="plain" onClick={() => onLaying({ ...laying, anchor: null })}>
              Begin again with the first
            </button>
          )}
        </>
      )}
      <div className="pair">
        <TextRow
          label="Turned by"
          unit="°"
          decimal
          size={5}
          value={angle ?? figure(degreesOf(photo), 1)}
          onText={(text) => {
            setAngle(text);
            const degrees = mmIn(text);
            if (degrees !== undefined) change(turnedTo(photo, degrees));
          }}
          onLeave={() => setAngle(null)}
        />
        <label className="tick">
          <input
            type="checkbox"
            checked={photo.laid.mirrored}
            onChange={() =>
              change({ ...photo, laid: mirroredAbout(photo.laid, mapped(photo.laid, middleOf(photo)).x) })
            }
          />
          mirrored
        </label>
      </div>
      <p className="aside">
        It stays in this browser, unless all layouts are saved in one file: that takes it along.
      </p>
    </div>
  );
}
