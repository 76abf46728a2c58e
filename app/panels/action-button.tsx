import { memo } from 'react';
import { type Action, start } from '../actions/action.ts';
import { useAction, useEditor, useSession } from '../hooks.ts';
import { Icon } from './icon.tsx';

interface Props {
  readonly action: Action;
  readonly shows?: 'icon' | 'label' | 'both';
  readonly className?: string;
}

/** A button for an action: named, titled with its keys, and off when it cannot be done. */
export const ActionButton = memo(function ActionButton({
  action,
  shows = 'icon',
  className = 'quiet',
}: Props) {
  const editor = useEditor();
  const { enabled, label } = useAction(action);
  const keys = useSession(({ printKeys }) => printKeys?.(action));
  return (
    <button
      type="button"
      className={`${className} ${shows}`}
      aria-label={shows === 'icon' ? label : undefined}
      title={keys ? `${label} (${keys})` : label}
      aria-disabled={!enabled}
      onClick={() => start(editor, action)}
    >
      {shows !== 'label' && action.icon && <Icon name={action.icon} />}
      {shows !== 'icon' && <span>{label}</span>}
    </button>
  );
});
