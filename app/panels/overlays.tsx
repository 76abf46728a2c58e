import { lazy, Suspense } from 'react';
import { useSession } from '../hooks.ts';

const Asked = lazy(async () => ({ default: (await import('./asked.tsx')).Asked }));
const BenchSheetDesk = lazy(async () => ({
  default: (await import('../bench-sheet/bench-sheet-desk.tsx')).BenchSheetDesk,
}));
const ChoiceMenu = lazy(async () => ({ default: (await import('../by-list/choice-menu.tsx')).ChoiceMenu }));
const HandOver = lazy(async () => ({ default: (await import('../hand-over/hand-over.tsx')).HandOver }));
const HelpLayer = lazy(async () => ({ default: (await import('../help/help-layer.tsx')).HelpLayer }));
const KindDesk = lazy(async () => ({ default: (await import('../kinds/kind-desk.tsx')).KindDesk }));
const LayoutsDesk = lazy(async () => ({ default: (await import('../keep/layouts-desk.tsx')).LayoutsDesk }));
const LicencesDesk = lazy(async () => ({
  default: (await import('../licences/licences-desk.tsx')).LicencesDesk,
}));
const Offer = lazy(async () => ({ default: (await import('../hand-over/offer.tsx')).Offer }));
const StatesDesk = lazy(async () => ({ default: (await import('../keep/states-desk.tsx')).StatesDesk }));
const StockDesk = lazy(async () => ({ default: (await import('../stock/stock-desk.tsx')).StockDesk }));
const RehearsalDesk = lazy(async () => ({
  default: (await import('../rehearsal/rehearsal-desk.tsx')).RehearsalDesk,
}));

/** Whatever lies over everything else; loaded with the first of it. */
export function Overlays() {
  const asks = useSession(({ asked }) => asked !== null);
  const chooses = useSession(({ choosing }) => choosing !== null);
  const kindDesk = useSession((session) => session.kindDesk);
  const stockDesk = useSession((session) => session.stockDesk);
  const handsOver = useSession((session) => session.handsOver);
  const showsLayouts = useSession((session) => session.showsLayouts);
  const showsLicences = useSession((session) => session.showsLicences);
  const showsSheet = useSession((session) => session.showsSheet);
  const statesOf = useSession((session) => session.statesOf);
  const offered = useSession((session) => session.offered);
  const rehearsing = useSession((session) => session.rehearsing);
  const help = useSession((session) => session.help);
  return (
    <>
      <Suspense>{asks && <Asked />}</Suspense>
      <Suspense>{chooses && <ChoiceMenu />}</Suspense>
      <Suspense>{stockDesk && <StockDesk page={stockDesk} />}</Suspense>
      <Suspense>{kindDesk && <KindDesk desk={kindDesk} />}</Suspense>
      <Suspense>{showsLayouts && <LayoutsDesk />}</Suspense>
      <Suspense>{statesOf && <StatesDesk of={statesOf} />}</Suspense>
      <Suspense>{showsLicences && <LicencesDesk />}</Suspense>
      <Suspense>{handsOver && <HandOver />}</Suspense>
      <Suspense>{showsSheet && <BenchSheetDesk />}</Suspense>
      <Suspense>{help && <HelpLayer page={help} />}</Suspense>
      <Suspense>{offered && <Offer {...offered} />}</Suspense>
      <Suspense>{rehearsing && <RehearsalDesk end={rehearsing} />}</Suspense>
    </>
  );
}
