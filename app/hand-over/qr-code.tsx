import { useMemo } from 'react';
import { encode } from 'uqr';

/** Light marks around the code that a reader needs to find it (ISO/IEC 18004: four wide). */
const QUIET = 4;

/** A link as a QR code: dark on white whatever the theme, as readers expect it. */
export function QrCode({ link }: { readonly link: string }) {
  const { path, size } = useMemo(() => {
    const { data } = encode(link, { ecc: 'M', border: QUIET });
    const marks = data.flatMap((row, y) => row.flatMap((isDark, x) => (isDark ? `M${x} ${y}h1v1h-1z` : [])));
    return { path: marks.join(''), size: data.length };
  }, [link]);
  return (
    <svg
      className="qr-code"
      viewBox={`0 0 ${size} ${size}`}
      role="img"
      aria-label="QR code of the link"
      shapeRendering="crispEdges"
    >
      <rect width={size} height={size} fill="#fff" />
      <path d={path} fill="#000" />
    </svg>
  );
}
