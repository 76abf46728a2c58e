import { useEffect, useState } from 'react';
import type { PanelSize, Result } from '../../src/index.ts';
import { useEditor } from '../hooks.ts';
import { faultWords } from '../keep/words.ts';
import type { Picture } from '../platform/photographs.ts';
import { untouched } from '../store/untouched.ts';
import { firstLaid, isKeptPhotograph, type Photograph } from './photograph.ts';

/** An address under which the page can draw a picture, as long as it needs it. */
function useAddress(image: Blob | undefined): string | undefined {
  const [address, setAddress] = useState<string>();
  useEffect(() => {
    if (!image) return;
    const made = URL.createObjectURL(image);
    setAddress(made);
    return () => {
      URL.revokeObjectURL(made);
      setAddress(undefined);
    };
  }, [image]);
  return address;
}

/** The photograph under the drawing: taken off the shelf, changed in the form, and put back when the kind is kept. */
export function usePhotograph(id: string | null) {
  const { layouts, platform, session } = useEditor();
  const [photo, setPhoto] = useState<Photograph | null>(null);
  const [problem, setProblem] = useState<string>();
  const [isTouched, setTouched] = useState(false);
  const address = useAddress(photo?.image);

  useEffect(() => {
    if (id === null) return;
    let isOver = false;
    void platform.photographs().then(async ({ shelf }) => {
      const found = await shelf.read(id);
      if (isOver || !found.ok || !isKeptPhotograph(found.value)) return;
      const { value } = found;
      setPhoto((laid) => laid ?? value);
    });
    return () => {
      isOver = true;
    };
  }, [platform, id]);

  const change = (next: Photograph | null): void => {
    setPhoto(next);
    setTouched(true);
    setProblem(undefined);
  };
  const lay = async (size: PanelSize, bring: Promise<Result<Picture | null, string>>): Promise<void> => {
    const brought = await bring;
    if (!brought.ok) setProblem(brought.error);
    else if (brought.value) change(firstLaid(brought.value, size));
  };

  return {
    photo,
    address,
    problem,
    isTouched,
    change,
    pick: async (size: PanelSize) => lay(size, (await platform.photographs()).pick()),
    read: async (size: PanelSize, file: Blob) => lay(size, (await platform.photographs()).read(file)),
    /** Under the id of the kind that was kept. */
    async keep(as: string): Promise<void> {
      if (!isTouched) return;
      // A layout that nothing was done to is not kept, and would come back under another id.
      if (photo) untouched.delete(layouts.layout());
      const { shelf } = await platform.photographs();
      const done = photo ? await shelf.change(as, () => ({ ...photo, id: as })) : await shelf.remove(as);
      if (!done.ok)
        session.setState({ banner: `The photograph could not be kept: ${faultWords(done.error)}.` });
    },
  };
}

export type PhotographState = ReturnType<typeof usePhotograph>;
