import { Icon, type IconName } from '../icon.tsx';

interface Props {
  readonly icon: IconName;
  readonly label: string;
  readonly enabled?: boolean;
  readonly className?: string;
  readonly onClick: () => void;
}

/** A small button that says in words what it does to which part. */
export const IconButton = ({ icon, label, enabled = true, className = '', onClick }: Props) => (
  <button
    type="button"
    className={`quiet icon ${className}`}
    aria-label={label}
    title={label}
    aria-disabled={!enabled}
    onClick={() => enabled && onClick()}
  >
    <Icon name={icon} />
  </button>
);
