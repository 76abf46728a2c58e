import '../style/ribbon-pictures.css';
import type { ReactNode } from 'react';

/** One word of the trade with a small picture of it. */
function Picture({ title, words, children }: { title: string; words: string; children: ReactNode }) {
  return (
    <figure>
      <svg width="148" height="96" viewBox="0 0 148 96" aria-hidden="true">
        {children}
      </svg>
      <figcaption>
        <b>{title}</b>
        <small>{words}</small>
      </figcaption>
    </figure>
  );
}

/** A connector from the side, pressed on a ribbon that runs along a height. */
const Socket = ({ x, y, up = false }: { x: number; y: number; up?: boolean }) => (
  <g>
    <rect className="connector" x={x - 9} y={up ? y - 22 : y + 3} width="18" height="19" rx="2" />
    <path
      className="hole"
      d={up ? `M${x - 4} ${y - 22}v9M${x + 4} ${y - 22}v9` : `M${x - 4} ${y + 22}v-9M${x + 4} ${y + 22}v-9`}
    />
  </g>
);

const Band = ({ d }: { d: string }) => (
  <>
    <path className="band-edge" d={d} />
    <path className="band-core" d={d} />
  </>
);

/** The words of the ribbon editor, each with a picture. From the side the panel is above, the floor of the case below. */
export function RibbonPictures() {
  return (
    <div className="pictures">
      <Picture
        title="Socket and plug"
        words="A socket sits on the pins of a header. A plug has pins of its own and sits in another ribbon’s socket: so ribbons are extended."
      >
        <rect className="board" x="8" y="6" width="56" height="10" />
        <path className="pins" d="M32 16v12M40 16v12" />
        <rect className="connector" x="26" y="28" width="20" height="20" rx="2" />
        <path className="hole" d="M32 28v8M40 28v8" />
        <Band d="M6 52H84" />
        <path className="pins" d="M108 42v-12M116 42v-12" />
        <rect className="connector plug" x="102" y="42" width="20" height="16" rx="2" />
        <Band d="M86 62H142" />
        <text x="36" y="78">
          socket
        </text>
        <text x="112" y="82">
          plug
        </text>
      </Picture>
      <Picture
        title="Face"
        words="To which side it opens while the ribbon lies with its stripe down: to the panel for a header, to the rear for a plug to come."
      >
        <rect className="panel" x="4" y="4" width="140" height="5" />
        <Band d="M6 48H142" />
        <Socket x={42} y={48} up />
        <Socket x={104} y={48} />
        <text x="42" y="70">
          to the panel
        </text>
        <text x="104" y="88">
          to the rear
        </text>
      </Picture>
      <Picture
        title="Bump"
        words="The key of a connector. Only in the notch of a boxed header it guards against a turned connector; on open pins nothing does."
      >
        <path className="box" d="M20 14h40v68H20V58h5V38h-5z" />
        <path
          className="pin-dots"
          d="M34 30v.01M46 30v.01M34 42v.01M46 42v.01M34 54v.01M46 54v.01M34 66v.01M46 66v.01"
        />
        <path className="one" d="M10 72l7 -4v8z" />
        <rect className="connector" x="92" y="18" width="28" height="60" rx="2" />
        <rect className="connector" x="86" y="40" width="7" height="16" />
        <rect className="stripe" x="76" y="80" width="60" height="4" />
        <path className="arrow" d="M82 48H68M72 44l-5 4 5 4" />
      </Picture>
      <Picture
        title="Ways"
        words="Its contacts, on the conductors from the stripe on. A lead of 16 with an end of 10 leaves the last six free."
      >
        {Array.from({ length: 16 }, (_, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a conductor is its number.
          <path key={i} className={i === 0 ? 'conductor first' : 'conductor'} d={`M10 ${86 - i * 5}H138`} />
        ))}
        <rect className="connector" x="18" y="7" width="14" height="84" rx="2" />
        <rect className="connector" x="116" y="37" width="14" height="54" rx="2" />
        <text x="48" y="10">
          16
        </text>
        <text x="104" y="32">
          10
        </text>
      </Picture>
      <Picture
        title="Half-twist"
        words="Turns over both: the stripe comes to the other edge, and the face to the other side. Two undo each other. Made where it is laid, with W."
      >
        <path className="flat" d="M6 30H52L96 66H142V36H96L52 60H6z" />
        <path className="stripe-line" d="M6 60H52L74 48M74 48L96 36H142" />
        <path className="fold" d="M52 30L96 66" />
        <text x="40" y="78">
          stripe below
        </text>
        <text x="118" y="26">
          above
        </text>
      </Picture>
      <Picture
        title="Fixed, bending, loose"
        words="Fixed lies straight and must meet each header. Bending arches between them. Loose hangs any way: leads, and links to another row."
      >
        <rect className="panel" x="4" y="4" width="140" height="4" />
        <Band d="M10 22H138" />
        <path className="knobs" d="M20 14v8M74 14v8M128 14v8" />
        <Band d="M10 46H24C40 46 36 62 49 62S58 46 74 46 90 62 100 62 112 46 128 46h10" />
        <path className="knobs" d="M20 38v8M74 38v8M128 38v8" />
        <Band d="M20 70C20 96 60 92 80 88S128 92 128 74" />
        <path className="knobs" d="M20 64v8M128 66v8" />
      </Picture>
    </div>
  );
}
