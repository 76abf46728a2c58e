import { start } from '../actions/action.ts';
import { actions } from '../actions/index.ts';
import { useEditor } from '../hooks.ts';
import { useThemeName } from '../style/use-theme.ts';
import { GUIDE, type Step } from './guide.ts';
import { HELP_PAGES } from './help-pages.ts';

const titleOf = (page: string): string => HELP_PAGES.find(({ id }) => id === page)?.label ?? page;

/** A step as it looks in the program, in the shade of the page. */
function StepPicture({ name, seen }: NonNullable<Step['picture']>) {
  const shade = useThemeName() === 'light' ? 'light' : 'dark';
  const address = new URL(`./pictures/${name}-${shade}.webp`, import.meta.url).href;
  return <img src={address} alt={seen} width={680} height={390} loading="lazy" />;
}

/** The whole job in order, each step with the command for it. */
export function GuidePage({ go }: { readonly go: (page: string) => void }) {
  const editor = useEditor();
  return (
    <ol className="guide">
      {GUIDE.map(({ title, text, picture, action: id, see = [] }) => {
        const action = actions.find((one) => one.id === id);
        return (
          <li key={title}>
            <h3>{title}</h3>
            <p>{text}</p>
            {picture && <StepPicture {...picture} />}
            <p className="links">
              {action?.enabled(editor) && (
                <button
                  type="button"
                  className="do"
                  onClick={() => {
                    editor.session.setState({ help: null });
                    setTimeout(() => start(editor, action));
                  }}
                >
                  {action.label(editor)}
                </button>
              )}
              {see.map((page) => (
                <button key={page} type="button" className="plain" onClick={() => go(page)}>
                  {titleOf(page)}
                </button>
              ))}
            </p>
          </li>
        );
      })}
    </ol>
  );
}
