import '../style/licences.css';
import { useEffect, useState } from 'react';
import { useEditor } from '../hooks.ts';
import { Dialog } from '../panels/dialog.tsx';
import type { Licence } from './licence.ts';

async function read(): Promise<readonly Licence[] | null> {
  try {
    const answer = await fetch(new URL('licences.json', document.baseURI));
    return answer.ok ? ((await answer.json()) as readonly Licence[]) : null;
  } catch {
    return null;
  }
}

/** Whose work is in the program: each package that is in it, with its terms. */
export function LicencesDesk() {
  const { session } = useEditor();
  /** `undefined`: not read yet. */
  const [all, setAll] = useState<readonly Licence[] | null>();
  useEffect(() => void read().then(setAll), []);
  const close = (): void => session.setState({ showsLicences: false });
  return (
    <Dialog name="licences" title="Licences" onClose={close}>
      <p className="aside">
        The program, and the work of others that is in it. It asks for nothing but its own files, and sends
        nothing anywhere.
      </p>
      {all === null && <p>The list is not there: it is written when the program is built.</p>}
      <ul>
        {all?.map(({ name, version, licence, text }) => (
          <li key={name}>
            <details>
              <summary>
                <b>{name}</b> <span>{version}</span> <span>{licence}</span>
              </summary>
              <pre>{text || 'The package brings no text of its terms.'}</pre>
            </details>
          </li>
        ))}
      </ul>
    </Dialog>
  );
}
