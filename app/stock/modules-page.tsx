import { useEditor, useLayout } from '../hooks.ts';
import { figure } from '../panels/figures.ts';

/** Every kind of module in this layout's kit. */
export function ModulesPage() {
  const { session } = useEditor();
  const kinds = useLayout((layout) => layout.kit.modules);
  return (
    <ul className="stock-list">
      {kinds.map(({ id, name, widthHp }) => (
        <li key={id}>
          <button
            type="button"
            className="kind"
            onClick={() => session.setState({ kindDesk: { sort: 'module', kind: id } })}
          >
            <b>{name}</b>
            <small>{figure(widthHp)} HP</small>
          </button>
        </li>
      ))}
    </ul>
  );
}
