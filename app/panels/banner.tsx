import { useEditor, useSession } from '../hooks.ts';
import { Icon } from './icon.tsx';

/** What could not be done, or what the program chose; nothing is lost by it. */
export function Banner() {
  const { session } = useEditor();
  const text = useSession(({ banner }) => banner);
  return (
    <div role="alert" className="banner-place">
      {text !== null && (
        <p className="banner">
          <span>{text}</span>
          <button
            type="button"
            className="quiet icon"
            aria-label="Put this message away"
            onClick={() => session.setState({ banner: null })}
          >
            <Icon name="close" />
          </button>
        </p>
      )}
    </div>
  );
}

/** What changes are told to those who do not see the drawing. */
export function Spoken() {
  const text = useSession(({ spoken }) => spoken);
  return (
    <div role="status" className="unseen">
      {text}
    </div>
  );
}
