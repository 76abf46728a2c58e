import '../style/help.css';
import { FindCommand } from './find-command.tsx';
import { HelpDesk } from './help-desk.tsx';

/** The help at a page, or the list of commands; both are loaded together, since each leads to the other. */
export function HelpLayer({ page }: { readonly page: string }) {
  return page === 'find' ? <FindCommand /> : <HelpDesk page={page} />;
}
