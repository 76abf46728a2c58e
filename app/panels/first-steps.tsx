import { start } from '../actions/action.ts';
import { newModuleKind } from '../actions/new-kind.ts';
import { showCase } from '../actions/show-case.ts';
import { showStock } from '../actions/show-stock.ts';
import { useEditor } from '../hooks.ts';

/** What to begin with in an empty case; gone with the first module. */
export function FirstSteps({ hasKinds }: { readonly hasKinds: boolean }) {
  const editor = useEditor();
  const steps = hasKinds ? [showCase, showStock] : [showCase, newModuleKind];
  return (
    <section className="first-steps" aria-label="First steps">
      <p>
        {hasKinds
          ? 'Drag a module from the stock onto the rails, or tap it and then a place.'
          : 'Shape the case, then put your own kinds of modules in stock.'}
      </p>
      {steps.map((action) => (
        <button key={action.id} type="button" className="plain" onClick={() => start(editor, action)}>
          {action.label(editor)}
        </button>
      ))}
      <button type="button" className="plain" onClick={() => editor.session.setState({ help: 'guide' })}>
        Guide of the whole job
      </button>
    </section>
  );
}
