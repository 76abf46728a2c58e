import type { Layout, PanelSize, Similarity } from '../../src/index.ts';
import type { Picture } from '../platform/photographs.ts';

/**
 * A photograph of a kind's rear, and how it lies under the drawing: from its px to mm as seen from the rear, x from the
 * left edge, y down from the upper edge. It stays in this browser; the layout knows nothing of it.
 */
export interface Photograph extends Picture {
  readonly laid: Similarity;
  /** From 0 to 1. */
  readonly opacity: number;
}

/** As it stands on the shelf. */
export interface KeptPhotograph extends Photograph {
  readonly id: string;
}

/** Kinds are told by id within their layout; the layout by its own. */
export const photographId = ({ id = '' }: Pick<Layout, 'id'>, kind: string): string => `${id} ${kind}`;

const isNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);

const isSimilarity = (value: unknown): value is Similarity => {
  if (typeof value !== 'object' || value === null) return false;
  const { mirrored, a, b, dx, dy } = value as Record<string, unknown>;
  return typeof mirrored === 'boolean' && [a, b, dx, dy].every(isNumber) && (a !== 0 || b !== 0);
};

/** What stands on the shelf may be of any age and make. */
export function isKeptPhotograph(value: unknown): value is KeptPhotograph {
  if (typeof value !== 'object' || value === null) return false;
  const { id, image, widthPx, heightPx, laid, opacity } = value as Record<string, unknown>;
  return (
    typeof id === 'string' &&
    image instanceof Blob &&
    [widthPx, heightPx].every((px) => isNumber(px) && px > 0) &&
    isNumber(opacity) &&
    isSimilarity(laid)
  );
}

/** Share of a panel's height that a photograph fills at first, so that its ends can be taken hold of. */
const FIRST_SHARE = 0.94;

/** A picture laid over the middle of the panel, as high as it; what is known of it is still to be said. */
export function firstLaid(picture: Picture, { widthMm, heightMm }: PanelSize): Photograph {
  const a = (FIRST_SHARE * heightMm) / picture.heightPx;
  return {
    ...picture,
    opacity: 0.6,
    laid: {
      mirrored: false,
      a,
      b: 0,
      dx: (widthMm - a * picture.widthPx) / 2,
      dy: (heightMm * (1 - FIRST_SHARE)) / 2,
    },
  };
}
