import type { ReactNode } from 'react';
import type { Side } from '../canvas/model.ts';
import { Icon, type IconName } from '../panels/icon.tsx';
import { TextField } from '../panels/text-field.tsx';
import type { KeptLayout } from './kept-layout.ts';
import { Thumbnail } from './thumbnail.tsx';
import { agoWords } from './words.ts';

export interface Deeds {
  readonly open: (kept: KeptLayout) => void;
  readonly rename: (kept: KeptLayout, title: string) => void;
  readonly duplicate: (kept: KeptLayout) => void;
  readonly earlier: (kept: KeptLayout) => void;
  readonly save: (kept: KeptLayout) => void;
  readonly remove: (kept: KeptLayout) => void;
}

interface Props {
  readonly kept: KeptLayout;
  readonly side: Side;
  readonly isHere: boolean;
  readonly now: number;
  readonly deeds: Deeds;
}

function Deed({
  icon,
  label,
  onDo,
}: {
  readonly icon: IconName;
  readonly label: string;
  readonly onDo: () => void;
}): ReactNode {
  return (
    <button type="button" className="quiet icon" aria-label={label} title={label} onClick={onDo}>
      <Icon name={icon} />
    </button>
  );
}

/** One layout that is kept: what it looks like, when it was changed, and what can be done with it. */
export function LayoutCard({ kept, side, isHere, now, deeds }: Props) {
  const { title } = kept;
  return (
    <li data-layout={kept.id} className={isHere ? 'layout-card here' : 'layout-card'}>
      <button
        type="button"
        className="open"
        aria-label={`Open ${title}`}
        aria-current={isHere}
        onClick={() => deeds.open(kept)}
      >
        <Thumbnail kept={kept} side={side} />
      </button>
      <TextField
        className="card-title"
        label={`Title of ${title}`}
        value={title}
        onCommit={(text) => deeds.rename(kept, text)}
      />
      <div className="card-foot">
        <small>
          {isHere ? (
            <>
              <b>On screen</b> · changed{' '}
            </>
          ) : (
            'Changed '
          )}
          {agoWords(kept.changed, now)}
        </small>
        <Deed icon="earlier" label={`Earlier states of ${title}`} onDo={() => deeds.earlier(kept)} />
        <Deed icon="duplicate" label={`Duplicate ${title}`} onDo={() => deeds.duplicate(kept)} />
        <Deed icon="save" label={`Save ${title} as a file`} onDo={() => deeds.save(kept)} />
        <Deed icon="remove" label={`Delete ${title}`} onDo={() => deeds.remove(kept)} />
      </div>
    </li>
  );
}
