import '../style/hand-over.css';
import { lazy, type RefObject, Suspense, useMemo, useRef, useState } from 'react';
import { describeLinkFailure, type LeftOut, leaveOut, linkOf } from '../../src/share.ts';
import { useEditor, useLayout } from '../hooks.ts';
import { Dialog } from '../panels/dialog.tsx';
import { pageAddress } from '../platform/address.ts';
import { lengthWords, noQrWords } from './length-words.ts';

const QrCode = lazy(async () => ({ default: (await import('./qr-code.tsx')).QrCode }));

const CHOICES: readonly (readonly [key: keyof LeftOut, label: string])[] = [
  ['prices', 'prices'],
  ['owned', 'how many I own'],
  ['notes', 'notes'],
];

/** The ways to pass the layout on: a link that carries all of it, the same as a QR code, a file. */
export function HandOver() {
  const { session, platform } = useEditor();
  const layout = useLayout((present) => present);
  const [leftOut, setLeftOut] = useState<LeftOut>({});
  const [said, setSaid] = useState('');
  const field = useRef<HTMLTextAreaElement>(null);
  const handed = useMemo(() => leaveOut(layout, leftOut), [layout, leftOut]);
  const link = useMemo(() => linkOf(handed, pageAddress()), [handed]);
  const noQr = link.ok ? noQrWords(link.value) : '';
  const close = (): void => session.setState({ handsOver: false });

  const copy = async (text: string): Promise<void> => {
    (await platform.clipboard()).put(text);
    field.current?.select();
    setSaid('Copied. Paste it wherever you like.');
  };
  const save = async (): Promise<void> => {
    const [{ writeLayout }, files] = await Promise.all([import('../../src/document.ts'), platform.files()]);
    const saved = await files.save(handed.title, writeLayout(handed));
    if (!saved.ok) setSaid(saved.error);
    else if (saved.value) setSaid('Saved.');
  };

  return (
    <Dialog
      name="hand-over"
      state={noQr === undefined ? undefined : 'slim'}
      title={`Hand over ${layout.title || 'this layout'}`}
      first=".do"
      onClose={close}
    >
      <div className="body">
        <div className="ways">
          <fieldset>
            <legend>Leave out</legend>
            {CHOICES.map(([key, label]) => (
              <label key={key} className="tick">
                <input
                  type="checkbox"
                  checked={leftOut[key] ?? false}
                  onChange={({ currentTarget }) => {
                    setSaid('');
                    setLeftOut({ ...leftOut, [key]: currentTarget.checked });
                  }}
                />
                {label}
              </label>
            ))}
          </fieldset>
          {link.ok ? (
            <LinkField link={link.value} field={field} noQr={noQr} />
          ) : (
            <p className="told">This layout has no link: {describeLinkFailure(link.error)}.</p>
          )}
          <p className="deeds">
            {link.ok && (
              <button type="button" className="do" onClick={() => void copy(link.value)}>
                Copy the link
              </button>
            )}
            <button type="button" className="second" onClick={() => void save()}>
              Save as a file…
            </button>
          </p>
          <p role="status" className="said">
            {said}
          </p>
        </div>
        {link.ok && noQr === undefined && <Code link={link.value} />}
      </div>
    </Dialog>
  );
}

interface FieldProps {
  readonly link: string;
  readonly field: RefObject<HTMLTextAreaElement | null>;
  readonly noQr: string | undefined;
}

function LinkField({ link, field, noQr }: FieldProps) {
  const { text, isLong } = lengthWords(link);
  return (
    <div>
      <label className="label" htmlFor="hand-over-link">
        Link
      </label>
      <div className="field link">
        <textarea
          ref={field}
          id="hand-over-link"
          readOnly
          rows={4}
          spellCheck={false}
          aria-describedby="hand-over-length"
          value={link}
          onFocus={({ currentTarget }) => currentTarget.select()}
        />
      </div>
      <p id="hand-over-length" className={isLong ? 'told' : 'aside'}>
        {text} The whole layout is in it; nothing goes to a server.
      </p>
      {noQr && <p className="aside">{noQr}</p>}
    </div>
  );
}

const Code = ({ link }: { readonly link: string }) => (
  <div className="code">
    <Suspense fallback={<div className="qr-code" />}>
      <QrCode link={link} />
    </Suspense>
    <p className="aside">The same link, for a phone’s camera.</p>
  </div>
);
